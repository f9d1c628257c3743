//! How heavy a lift with both hands may be: the revised NIOSH lifting equation.
//!
//! Source of all formulas, tables and bounds: NIOSH Pub. 94-110, Applications Manual for the Revised NIOSH Lifting
//! Equation (1994, revised 9/2021, public domain), chapter 1, pp. 7–18, read in a public transcription. The metric form
//! alone is used. The US form is the same with an inch taken as 2.5 cm and 51 lb as 23 kg: no conversion, so the two
//! differ by up to 2 %.
//!
//! Where the manual's printed tables and its formulas disagree, the formula counts, as the manual says: it prints .86 for
//! a travel of 130 cm where the formula gives .85 (and .46 and .44 at 22 and 23 in where it gives .45 and .43). Its worked
//! examples multiply rounded factors; here nothing is rounded.
//!
//! The equation does not hold for one hand, sitting or kneeling, restricted space, or loads whose contents shift
//! (section 1.2, p. 6): whoever asks must leave those out.

use crate::units::{Length, Mass};

/// The heaviest load under the best conditions, in kilograms (p. 7).
pub const CONSTANT: f64 = 23.0;
/// An index above this puts nearly everyone at risk, in the view of some experts that the manual cites (p. 20).
pub const HIGHEST_INDEX: f64 = 3.0;
/// The index to stay at or under (p. 20); an aim, no proof of safety.
pub const GOOD_INDEX: f64 = 1.0;

/// Nearest and farthest that hands are reckoned with before the ankles (pp. 8–9).
const HORIZONTAL: [Length; 2] = [Length::mm(250), Length::mm(630)];
/// The best height of the hands, and the highest (pp. 9–10). At the best height frequency and coupling change over too.
const HEIGHTS: [Length; 2] = [Length::mm(750), Length::mm(1750)];
/// The least travel that counts, and the farthest (pp. 10–11).
const TRAVEL: [Length; 2] = [Length::mm(250), Length::mm(1750)];
/// The farthest twist, in degrees (p. 12).
const TWIST: f64 = 135.0;

/// How well the hands hold the load (table 7, p. 18).
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Coupling {
    /// Handles or cut-outs that the hand closes round comfortably.
    Good,
    /// Lesser handles, or fingers bent by 90° under the load.
    Fair,
    /// Bulky, slippery or without a hold.
    Poor,
}

impl Coupling {
    /// The word for it in files and reports.
    pub const fn name(self) -> &'static str {
        match self {
            Coupling::Good => "good",
            Coupling::Fair => "fair",
            Coupling::Poor => "poor",
        }
    }
}

/// For how long lifting goes on in a day (pp. 13–14).
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Duration {
    /// Up to one hour.
    Short,
    /// Up to two hours.
    Moderate,
    /// Up to eight hours.
    Long,
}

/// One end of a lift with both hands: where the hands take the load, or where they guide it into place.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Lift {
    /// H: from the middle of the ankles forward to the large knuckles.
    pub horizontal: Length,
    /// V: height of the knuckles over the floor at the end that is judged.
    pub height: Length,
    /// V at the origin, which the frequency factor asks for even where the destination is judged.
    pub origin: Length,
    /// D: how far the load travels up or down between origin and destination.
    pub travel: Length,
    /// A: by how many degrees the load lies out of the middle plane of the body.
    pub twist: f64,
    /// F: lifts a minute.
    pub per_minute: f64,
    /// For how long a day.
    pub duration: Duration,
    /// How well the hands hold it.
    pub coupling: Coupling,
}

impl Lift {
    /// The recommended weight limit in kilograms: the constant times six factors, none above one.
    pub fn limit(&self) -> f64 {
        CONSTANT
            * horizontal_factor(self.horizontal)
            * height_factor(self.height)
            * travel_factor(self.travel)
            * twist_factor(self.twist)
            * frequency_factor(self.per_minute, self.duration, self.origin)
            * coupling_factor(self.coupling, self.height)
    }

    /// The lifting index of a load: its weight as a share of the limit; nothing where no load at all may be lifted so (the
    /// manual is silent on that case).
    pub fn index(&self, load: Mass) -> Option<f64> {
        let limit = self.limit();
        (limit > 0.0).then(|| load.as_kg() / limit)
    }
}

/// H where it is not measured: the load held against the body (p. 8), `depth` being how far behind its front the hands
/// hold it; half its depth where they hold its middle. Low down the body is farther off.
pub fn estimated_horizontal(depth: Length, height: Length) -> Length {
    let ankles_to_front = if height < Length::mm(250) { 250 } else { 200 };
    Length::mm(ankles_to_front) + depth
}

/// HM = 25 / H, H in cm and at least 25; nought beyond 63 cm (p. 8).
pub fn horizontal_factor(horizontal: Length) -> f64 {
    let [nearest, farthest] = HORIZONTAL;
    if horizontal > farthest {
        return 0.0;
    }
    nearest.as_mm() / horizontal.max(nearest).as_mm()
}

/// VM = 1 − 0.003 · |V − 75|, V in cm; nought above 175 cm (p. 9).
pub fn height_factor(height: Length) -> f64 {
    let [best, highest] = HEIGHTS;
    if height > highest {
        return 0.0;
    }
    1.0 - 0.000_3 * (height.as_mm() - best.as_mm()).abs()
}

/// DM = 0.82 + 4.5 / D, D in cm and at least 25; nought beyond 175 cm (p. 10).
pub fn travel_factor(travel: Length) -> f64 {
    let [least, farthest] = TRAVEL;
    if travel > farthest {
        return 0.0;
    }
    0.82 + 45.0 / travel.max(least).as_mm()
}

/// AM = 1 − 0.0032 · A in degrees to either side; nought beyond 135° (p. 12).
pub fn twist_factor(degrees: f64) -> f64 {
    let twist = degrees.abs();
    if twist > TWIST { 0.0 } else { 1.0 - 0.003_2 * twist }
}

/// CM (table 7, p. 18): V is that of the end being judged.
pub fn coupling_factor(coupling: Coupling, height: Length) -> f64 {
    match coupling {
        Coupling::Good => 1.0,
        Coupling::Fair if height < HEIGHTS[0] => 0.95,
        Coupling::Fair => 1.0,
        Coupling::Poor => 0.90,
    }
}

/// Lifts a minute of each row of [`FREQUENCIES`].
const ROWS: [f64; 17] =
    [0.2, 0.5, 1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0, 11.0, 12.0, 13.0, 14.0, 15.0];

/// FM in hundredths (table 5, p. 15): up to one, two and eight hours, each with V at the origin below 75 cm, then from
/// 75 cm up.
#[rustfmt::skip]
const FREQUENCIES: [[u8; 6]; 17] = [
    [100, 100, 95, 95, 85, 85],
    [ 97,  97, 92, 92, 81, 81],
    [ 94,  94, 88, 88, 75, 75],
    [ 91,  91, 84, 84, 65, 65],
    [ 88,  88, 79, 79, 55, 55],
    [ 84,  84, 72, 72, 45, 45],
    [ 80,  80, 60, 60, 35, 35],
    [ 75,  75, 50, 50, 27, 27],
    [ 70,  70, 42, 42, 22, 22],
    [ 60,  60, 35, 35, 18, 18],
    [ 52,  52, 30, 30,  0, 15],
    [ 45,  45, 26, 26,  0, 13],
    [ 41,  41,  0, 23,  0,  0],
    [ 37,  37,  0, 21,  0,  0],
    [  0,  34,  0,  0,  0,  0],
    [  0,  31,  0,  0,  0,  0],
    [  0,  28,  0,  0,  0,  0],
];

/// FM: rarer than 0.2 a minute counts as 0.2; linear between rows (p. 7); nought above 15 a minute.
///
/// Towards a row of nought the manual is silent: here nothing may be lifted beyond the last row above nought.
pub fn frequency_factor(per_minute: f64, duration: Duration, origin: Length) -> f64 {
    let column = 2 * duration as usize + usize::from(origin >= HEIGHTS[0]);
    let factor = |row: usize| f64::from(FREQUENCIES[row][column]) / 100.0;
    let Some(next) = ROWS.iter().position(|&row| per_minute <= row) else { return 0.0 };
    if next == 0 || per_minute == ROWS[next] || factor(next) == 0.0 {
        return factor(next);
    }
    let share = (per_minute - ROWS[next - 1]) / (ROWS[next] - ROWS[next - 1]);
    factor(next - 1) + share * (factor(next) - factor(next - 1))
}

#[cfg(test)]
mod tests {
    use super::*;

    const IDEAL: Lift = Lift {
        horizontal: Length::mm(250),
        height: Length::mm(750),
        origin: Length::mm(750),
        travel: Length::mm(250),
        twist: 0.0,
        per_minute: 0.2,
        duration: Duration::Short,
        coupling: Coupling::Good,
    };

    #[test]
    fn every_factor_counts_and_none_is_above_one() {
        assert_eq!(IDEAL.limit(), CONSTANT);
        let worse = [
            Lift { horizontal: Length::mm(300), ..IDEAL },
            Lift { height: Length::mm(740), ..IDEAL },
            Lift { height: Length::mm(760), ..IDEAL },
            Lift { travel: Length::mm(300), ..IDEAL },
            Lift { twist: 10.0, ..IDEAL },
            Lift { twist: -10.0, ..IDEAL },
            Lift { per_minute: 1.0, ..IDEAL },
            Lift { duration: Duration::Moderate, ..IDEAL },
            Lift { duration: Duration::Long, ..IDEAL },
            Lift { coupling: Coupling::Poor, ..IDEAL },
            Lift { coupling: Coupling::Fair, height: Length::mm(740), ..IDEAL },
        ];
        for lift in worse {
            assert!(lift.limit() < CONSTANT && lift.limit() > 0.0, "{lift:?}");
        }
        let easier = Lift { horizontal: Length::ZERO, travel: Length::ZERO, ..IDEAL };
        assert_eq!(easier.limit(), CONSTANT);
    }

    #[test]
    fn what_is_out_of_range_has_no_index() {
        let hair = Length::nm(1);
        let edge = [
            Lift { horizontal: HORIZONTAL[1], ..IDEAL },
            Lift { height: HEIGHTS[1], ..IDEAL },
            Lift { travel: TRAVEL[1], ..IDEAL },
            Lift { twist: -TWIST, ..IDEAL },
            Lift { per_minute: 15.0, ..IDEAL },
        ];
        let beyond = [
            Lift { horizontal: HORIZONTAL[1] + hair, ..IDEAL },
            Lift { height: HEIGHTS[1] + hair, ..IDEAL },
            Lift { travel: TRAVEL[1] + hair, ..IDEAL },
            Lift { twist: -TWIST - 0.001, ..IDEAL },
            Lift { per_minute: 15.001, ..IDEAL },
        ];
        for (edge, beyond) in edge.into_iter().zip(beyond) {
            assert!(edge.index(Mass::kg(1)).is_some_and(|i| i > 1.0 / CONSTANT), "{edge:?}");
            assert_eq!((beyond.limit(), beyond.index(Mass::kg(1))), (0.0, None), "{beyond:?}");
        }
    }

    #[test]
    fn an_index_is_the_weight_as_a_share_of_the_limit() {
        assert_eq!(IDEAL.index(Mass::kg(23)), Some(1.0));
        assert_eq!(IDEAL.index(Mass::kg(69)), Some(HIGHEST_INDEX));
    }

    #[test]
    fn the_frequency_looks_at_the_origin_and_the_coupling_at_the_end_judged() {
        let low = Length::mm(749);
        let fast = Lift { per_minute: 14.0, ..IDEAL };
        assert_eq!(Lift { origin: low, ..fast }.limit(), 0.0);
        assert!(Lift { height: low, ..fast }.limit() > 0.0);
        let fair = Lift { coupling: Coupling::Fair, ..IDEAL };
        assert_eq!(Lift { origin: low, ..fair }.limit(), CONSTANT);
        assert!(Lift { height: low, ..fair }.limit() < 0.96 * CONSTANT);
    }

    #[test]
    fn beyond_the_last_row_above_nought_nothing_may_be_lifted() {
        let low = Length::mm(500);
        assert_eq!(frequency_factor(12.0, Duration::Short, low), 0.37);
        assert_eq!(frequency_factor(12.001, Duration::Short, low), 0.0);
        assert!((frequency_factor(13.5, Duration::Short, Length::mm(750)) - 0.325).abs() < 1e-12);
        // Halfway between rows that are not one apart.
        assert!((frequency_factor(0.35, Duration::Short, low) - 0.985).abs() < 1e-12);
        assert!((frequency_factor(0.75, Duration::Short, low) - 0.955).abs() < 1e-12);
        assert_eq!(frequency_factor(0.0, Duration::Long, low), 0.85);
    }

    #[test]
    fn every_coupling_has_its_word() {
        let words = [Coupling::Good, Coupling::Fair, Coupling::Poor].map(Coupling::name);
        assert_eq!(words, ["good", "fair", "poor"]);
    }

    #[test]
    fn low_down_the_hands_are_farther_from_the_ankles() {
        assert_eq!(estimated_horizontal(Length::mm(150), Length::mm(250)), Length::mm(350));
        assert_eq!(estimated_horizontal(Length::mm(150), Length::mm(249)), Length::mm(400));
    }
}
