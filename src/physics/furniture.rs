//! The tip-over test of clothing chests: a case borrowed for a cart with drawers where children come in.

use crate::units::Length;

/// Weight hung on the front of an open drawer, in kilograms: a child's (60 lb; ASTM F2057-23, read as summarised by a test
/// laboratory).
pub const ON_DRAWER: f64 = 27.2;

/// Block under the rear in the same test: a carpet's edge (the same summary).
pub const BLOCK: Length = Length::nm(10_900_000);

/// The least height that the standard is about (ASTM F2057-23 1.1, read in a standards catalogue).
pub const SCOPE_HEIGHT: Length = Length::mm(686);

/// The least mass that the standard is about, in kilograms (the same).
pub const SCOPE_MASS: f64 = 13.6;

/// The least enclosed volume that the standard is about, in litres (the same).
pub const SCOPE_LITRES: f64 = 90.6;

/// How far the block tilts a unit whose feet are so far apart from front to rear, in degrees: the tangent is block / depth,
/// the front feet being the pivot.
pub fn tilt(depth: Length) -> f64 {
    libm::atan2(BLOCK.as_mm(), depth.as_mm()).to_degrees()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_unit_as_deep_as_the_block_is_high_leans_by_half_a_right_angle() {
        assert!((tilt(BLOCK) - 45.0).abs() < 1e-12);
        let twice = Length::nm(2 * BLOCK.as_nm());
        // Half the tangent: tan 2a = 2 tan a / (1 - tan² a) makes 4/3 of a half.
        assert!(((2.0 * tilt(twice)).to_radians().tan() - 4.0 / 3.0).abs() < 1e-12);
    }
}
