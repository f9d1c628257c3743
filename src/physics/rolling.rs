//! Rolling a cart: what it asks of the person who pushes and turns it, and what moves on it when it stops.
//!
//! Plain f64: forces in newtons, moments in newton metres, lengths in mm, speeds in metres a second.

use super::leaning::GRAVITY;

/// A pound-force in newtons (from memory; the conversion of the source's figures).
const LBF: f64 = 4.448_222;
/// A foot-pound-force in newton metres (from memory; the same).
const FT_LBF: f64 = 1.355_818;
/// An inch in mm.
const INCH: f64 = 25.4;

/// The push that keeps a weight rolling on level floor: coefficient × weight.
///
/// No sourced coefficient is known for a cart: it is the user's figure.
pub fn push(weight: f64, coefficient: f64) -> f64 {
    weight * coefficient
}

/// The level push at the axle, for each newton on the wheel, that starts a wheel over a step: the tangent of the angle
/// whose cosine is (radius − step) / radius (textbook statics, rigid wheel). Nothing where the step is as high as the
/// axle: no push gets the wheel over it.
pub fn over_step(radius: f64, step: f64) -> Option<f64> {
    let rise = radius - step.max(0.0);
    (rise > 0.0).then(|| (radius * radius - rise * rise).sqrt() / rise)
}

/// The moment that turns a cart on the spot about a plumb line, its casters all rolling round it: the sum of coefficient
/// × load × distance. Loads in newtons at places in mm; the swivelling itself is not in it.
pub fn turning(loads: &[f64], at: &[[f64; 2]], about: [f64; 2], coefficient: f64) -> f64 {
    let arm = |p: &[f64; 2]| {
        let [x, y] = [p[0] - about[0], p[1] - about[1]];
        (x * x + y * y).sqrt() / 1000.0
    };
    loads.iter().zip(at).map(|(load, p)| coefficient * load * arm(p)).sum()
}

/// How far in mm a thing slides on its deck when the cart under it stops dead: v² / (2·friction·g). Infinite without
/// friction.
pub fn slide(speed: f64, friction: f64) -> f64 {
    speed * speed / (2.0 * friction * GRAVITY) * 1000.0
}

/// How far in mm a hung thing can swing up when the cart stops dead: v² / (2·g), whatever its length.
pub fn swing(speed: f64) -> f64 {
    speed * speed / (2.0 * GRAVITY) * 1000.0
}

/// What a person does with a cart.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Effort {
    /// Push straight with two hands.
    Push,
    /// Pull straight with two hands.
    Pull,
    /// Pull with one hand.
    OneHand,
    /// Turn with two hands, in newton metres.
    Turn,
}

/// Hand heights of the table, in inches.
const HEIGHTS: [f64; 5] = [32.0, 36.0, 40.0, 44.0, 48.0];

/// By effort: what protects 80 % of people, and above which fewer than half are protected; pounds-force, turning in
/// foot-pounds-force (Ohio BWC / Ohio State University push-pull guidelines, 2018, read in a public transcription).
const PROTECTS: [[[f64; 5]; 2]; 4] = [
    [[48.0, 52.0, 54.0, 62.0, 68.0], [61.0, 63.0, 64.0, 73.0, 79.0]],
    [[41.0, 52.0, 62.0, 69.0, 73.0], [57.0, 68.0, 74.0, 80.0, 83.0]],
    [[38.0, 43.0, 44.0, 44.0, 42.0], [46.0, 51.0, 52.0, 53.0, 52.0]],
    [[60.0, 67.0, 73.0, 77.0, 80.0], [74.0, 82.0, 90.0, 94.0, 97.0]],
];

/// The highest force (or moment) that protects 80 % of people with their hands at a height in mm; linear between rows
/// and held beyond the first and last (both our own: the source has rows only).
pub fn protects_most(effort: Effort, height: f64) -> f64 {
    looked_up(effort, height, 0)
}

/// The force (or moment) above which fewer than half of all people are protected; looked up alike.
pub fn protects_half(effort: Effort, height: f64) -> f64 {
    looked_up(effort, height, 1)
}

fn looked_up(effort: Effort, height: f64, share: usize) -> f64 {
    let rows = &PROTECTS[effort as usize][share];
    let unit = if effort == Effort::Turn { FT_LBF } else { LBF };
    let steps = ((height / INCH - HEIGHTS[0]) / 4.0).clamp(0.0, 4.0);
    let row = (steps as usize).min(3);
    (rows[row] + (rows[row + 1] - rows[row]) * (steps - row as f64)) * unit
}

#[cfg(test)]
mod tests {
    use super::*;

    fn near(found: f64, expected: f64) {
        assert!((found - expected).abs() < 1e-3, "{found} for {expected}");
    }

    #[test]
    fn a_step_as_high_as_the_axle_stops_the_wheel() {
        near(over_step(50.0, 5.0).unwrap(), 0.484_322);
        assert_eq!(over_step(50.0, 0.0), Some(0.0));
        assert_eq!(over_step(50.0, -3.0), Some(0.0));
        assert_eq!(over_step(50.0, 50.0), None);
        assert_eq!(over_step(50.0, 60.0), None);
    }

    #[test]
    fn rolling_and_turning_grow_with_the_load() {
        near(push(1000.0, 0.03), 30.0);
        near(turning(&[100.0, 200.0], &[[300.0, 400.0], [-100.0, 0.0]], [0.0, 0.0], 0.02), 1.4);
        near(turning(&[100.0], &[[310.0, 420.0]], [10.0, 20.0], 0.02), 1.0);
    }

    #[test]
    fn things_slide_and_swing_with_the_square_of_the_speed() {
        near(slide(0.8, 0.4), 81.577);
        near(slide(1.6, 0.4), 326.309);
        near(swing(0.8), 32.631);
    }

    #[test]
    fn the_table_is_linear_between_its_rows_and_held_beyond_them() {
        near(protects_most(Effort::Push, 1016.0), 54.0 * LBF);
        near(protects_most(Effort::Push, 38.0 * INCH), 53.0 * LBF);
        near(protects_half(Effort::Pull, 46.0 * INCH), 81.5 * LBF);
        near(protects_most(Effort::OneHand, 500.0), 38.0 * LBF);
        near(protects_most(Effort::OneHand, 2000.0), 42.0 * LBF);
        near(protects_half(Effort::Turn, 48.0 * INCH), 97.0 * FT_LBF);
    }
}
