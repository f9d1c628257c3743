//! Pushes, presses and work on a cart that stands: what it takes to tip it or to make it slide.
//!
//! Plain f64: forces in newtons, lengths in mm, angles in degrees. Rigid body, moments about the line between two
//! casters that it goes over; Coulomb friction on what does not roll.

/// Weight of a kilogram in newtons: standard gravity, a convention (from memory; 9.81 in most textbooks).
pub const GRAVITY: f64 = 9.806_65;

/// The level push at a height that tips a body of some weight over a line `distance` from its plumb line:
/// W·d / height (moment balance). Nought where it goes over by itself.
pub fn push_that_tips(weight: f64, distance: f64, height: f64) -> f64 {
    weight * distance.max(0.0) / height
}

/// The force straight down, `overhang` outside that line, that tips it: W·d / overhang (moment balance). Infinite where
/// the force comes down on the line or inside it.
pub fn press_that_tips(weight: f64, distance: f64, overhang: f64) -> f64 {
    if overhang > 0.0 { weight * distance.max(0.0) / overhang } else { f64::INFINITY }
}

/// The level force that starts to slide what stands on locked casters with so much load on them: friction × load
/// (Coulomb). Those that are not locked roll and hold nothing.
pub fn hold(friction: f64, on_locked: f64) -> f64 {
    friction * on_locked
}

/// The slope in degrees on which a body slides when only a share of its load is on locked casters: atan(friction ×
/// share) (Coulomb).
pub fn slope_that_slides(friction: f64, share: f64) -> f64 {
    libm::atan(friction * share).to_degrees()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_push_tips_by_its_lever() {
        assert_eq!(push_that_tips(1000.0, 250.0, 500.0), 500.0);
        assert_eq!(push_that_tips(1000.0, -1.0, 500.0), 0.0);
    }

    #[test]
    fn a_press_inside_the_casters_tips_nothing() {
        assert_eq!(press_that_tips(600.0, 200.0, 400.0), 300.0);
        assert_eq!(press_that_tips(600.0, -5.0, 400.0), 0.0);
        assert_eq!(press_that_tips(600.0, 200.0, 0.0), f64::INFINITY);
        assert_eq!(press_that_tips(600.0, 0.0, 0.0), f64::INFINITY);
        assert_eq!(press_that_tips(600.0, 200.0, -1.0), f64::INFINITY);
    }

    #[test]
    fn only_what_is_locked_holds() {
        assert_eq!(hold(0.5, 300.0), 150.0);
        assert!((slope_that_slides(0.5, 0.5) - 14.036_243).abs() < 1e-5);
        assert_eq!(slope_that_slides(0.5, 0.0), 0.0);
    }
}
