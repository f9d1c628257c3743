//! Times of hand and body motions, from the MTM-1 tables.
//!
//! Estimates with MTM-1 elements, for trained work at a steady pace without allowances: good for comparing places,
//! no promise of seconds, and no MTM analysis. One time measurement unit (TMU) is 0.036 s = 36 000 µs (MTM-1 data
//! card 2019, read). Values that were recalled and not read say `from memory`; [`FROM_MEMORY`] names those that prices
//! are made of. There is no element for looking for a thing: that has a rate of its own.

mod distance;
mod hand;

pub use distance::{Move, Reach, moved, reach};
pub use hand::{Grasp, Symmetry, grasp, position, turn};

use crate::units::{Length, Time};

/// A tenth of a TMU in microseconds: table times are whole tenths.
const TENTH: i64 = 3_600;

/// Release RL1: 2.0 TMU (from memory).
pub const RELEASE: Time = tenths(20);
/// Bend down: 29.0 TMU (from memory; a rounded 29 read in two public tables for garment work).
pub const BEND: Time = tenths(290);
/// Up again from a bend: 31.9 TMU (from memory; a rounded 32, and 61 for both, read in the same two tables).
pub const ARISE: Time = tenths(319);
/// Kneel on both knees: 69.4 TMU (from memory, backed by nothing read).
pub const KNEEL: Time = tenths(694);
/// Up again from both knees: 76.7 TMU (from memory, backed by nothing read).
pub const ARISE_FROM_KNEES: Time = tenths(767);
/// One pace on a free floor: 15.0 TMU (from memory, backed by nothing read).
pub const PACE: Time = tenths(150);
/// Focus of the eye on one thing: 7.3 TMU (read on a course page about the tables).
pub const EYE_FOCUS: Time = tenths(73);

/// The length of a pace, common practice, no source.
///
/// With [`PACE`] this is 1.39 m/s, a discount of 13 % on the 1.60 m/s of the tables' 5.3 TMU a foot (from memory),
/// which is a trained pace in a clear aisle.
pub const STEP: Length = Length::mm(750);

/// How far a seated person wheels in a second on a shop floor, common practice, no source.
pub const WHEELED_PER_SECOND: Length = Length::mm(800);

/// What prices are made of that is recalled and not read in a source, in words for reports.
pub const FROM_MEMORY: &[&str] =
    &["release", "position", "bend and arise", "kneel on both knees and arise", "walk per pace"];

/// So many tenths of a TMU.
const fn tenths(n: i64) -> Time {
    Time::us(n * TENTH)
}

/// Down and up again by bending: 60.9 TMU.
pub fn bend_and_arise() -> Time {
    BEND + ARISE
}

/// Down on both knees and up again: 146.1 TMU.
pub fn kneel_and_arise() -> Time {
    KNEEL + ARISE_FROM_KNEES
}

/// A walk of some length, by the pace and in proportion, so that a longer way never costs less; nought for none.
pub fn walk(distance: Length) -> Time {
    per_length(distance, PACE, STEP)
}

/// The same way in a wheelchair.
pub fn wheel(distance: Length) -> Time {
    per_length(distance, Time::s(1), WHEELED_PER_SECOND)
}

/// A step aside, the other leg left behind or brought after: 17.0 or 34.1 TMU up to 30 cm, and 0.2 or 0.4 for each further
/// centimetre (MTM-1 data card 2019, read).
pub fn side_step(distance: Length, other_leg: bool) -> Time {
    let (first, further) = if other_leg { (341, 4) } else { (170, 2) };
    let beyond = (distance - Length::mm(300)).max(Length::ZERO);
    tenths(first) + per_length(beyond, tenths(further), Length::mm(10))
}

/// A turn of the body by 45 to 90°, the other leg left behind or brought after: 18.6 or 37.2 TMU (MTM-1 data card 2019,
/// read).
pub fn turn_body(other_leg: bool) -> Time {
    tenths(if other_leg { 372 } else { 186 })
}

/// The eye's travel between two points so far apart, seen from a distance: 15.2 TMU times their ratio, at most 20 (from
/// memory).
pub fn eye_travel(apart: Length, away: Length) -> Time {
    per_length(apart, tenths(152), away.max(Length::nm(1))).min(tenths(200))
}

/// A distance at so much time for each `unit` of it, to the nearest microsecond.
fn per_length(distance: Length, time: Time, unit: Length) -> Time {
    let product = i128::from(distance.as_nm().max(0)) * i128::from(time.as_us());
    let half = i128::from(unit.as_nm() / 2);
    Time::us(i64::try_from((product + half) / i128::from(unit.as_nm())).unwrap_or(i64::MAX))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Mass;

    #[test]
    fn farther_and_heavier_never_take_less() {
        let mut last = [Time::ZERO; 5];
        for mm in 0..1500 {
            let far = Length::mm(mm);
            let now = [
                reach(Reach::Single, far),
                moved(Move::Near, far, Mass::kg(3)),
                walk(far),
                wheel(far),
                side_step(far, true),
            ];
            assert!(now.iter().zip(last).all(|(now, last)| *now >= last), "at {mm} mm");
            last = now;
        }
        let by_mass =
            |grams: i64| moved(Move::Near, Length::mm(600), Mass::ng(grams * 1_000_000_000));
        assert!((1..60_000).step_by(50).all(|g| by_mass(g + 50) >= by_mass(g)));
    }

    /// What is out of all measure neither overflows nor turns cheap.
    #[test]
    fn absurd_distances_and_masses_stay_finite() {
        let far = Length::mm(1_000_000_000);
        assert!(reach(Reach::Single, far) > reach(Reach::Single, Length::mm(10_000)));
        let moved = |kg| moved(Move::Near, far, Mass::kg(kg));
        assert!(moved(1_000_000) > moved(10));
        assert!(walk(far) > walk(Length::mm(10_000)));
        assert_eq!(eye_travel(far, Length::ZERO), tenths(200));
    }

    #[test]
    fn no_way_costs_nothing() {
        for none in [Length::ZERO, Length::mm(-10)] {
            assert_eq!((walk(none), wheel(none)), (Time::ZERO, Time::ZERO));
        }
        assert_eq!(side_step(Length::mm(300), false), tenths(170));
        assert_eq!(side_step(Length::mm(310), false), tenths(172));
        assert_eq!(side_step(Length::mm(350), true), tenths(361));
    }

    /// 800 mm are wheeled in a second.
    #[test]
    fn wheeling_takes_its_time() {
        assert_eq!(wheel(Length::mm(800)), Time::s(1));
        assert_eq!(wheel(Length::mm(2_000)), Time::us(2_500_000));
    }

    /// A pace is 540 000 µs for 750 mm, so a micrometre of it takes 0.72 µs. Reach B goes from 90 000 µs at 1 in to 144 000
    /// at 2 in, so 2125.98 µs for the first millimetre beyond 1 in and 425.20 for a fifth of that. Move B at 10 in takes
    /// 439 200 µs: with 1.5 kg 1.06 times that and 79 200. At 1.2 mm beyond 1 in it takes 104 400 and 2891.34 µs; 107 291
    /// times 1.06 is 113 728.46.
    #[test]
    fn times_are_to_the_nearest_microsecond() {
        let us = |time: Time| time.as_us();
        let paces = [1_000, 2_000, 3_000].map(|nm| us(walk(Length::nm(nm))));
        assert_eq!(paces, [1, 1, 2], "0.72, 1.44 and 2.16 µs");
        let beyond = |nm: i64| Length::nm(25_400_000 + nm);
        let reached = [1_000_000, 200_000].map(|nm| us(reach(Reach::Single, beyond(nm))));
        assert_eq!(reached, [92_126, 90_425]);
        let carried = |distance| us(moved(Move::Near, distance, Mass::ng(1_500_000_000_000)));
        assert_eq!(carried(Length::mm(254)), 465_552 + 79_200);
        assert_eq!(carried(beyond(1_200_000)), 113_728 + 79_200);
    }

    #[test]
    fn classes_end_where_the_tables_say() {
        let cylinder = |mm| grasp(Grasp::Cylinder(Length::mm(mm)));
        assert_eq!([14, 13, 6, 5].map(cylinder), [73, 87, 87, 108].map(tenths));
        let jumbled = |mm| grasp(Grasp::Jumbled(Length::mm(mm)));
        assert_eq!([26, 25, 6, 5].map(jumbled), [73, 91, 91, 129].map(tenths));
        let gram = Mass::ng(1_000_000_000);
        let quarter = |mass| turn(90, mass);
        assert_eq!([Mass::kg(1), Mass::kg(1) + gram].map(quarter), [54, 85].map(tenths));
        assert_eq!([Mass::kg(5), Mass::kg(5) + gram].map(quarter), [85, 162].map(tenths));
        assert_eq!([0, 29, 180, 400].map(|d| turn(d, gram)), [28, 28, 94, 94].map(tenths));
        assert_eq!(turn(35, gram), Time::us(109_200));
    }
}
