//! Times of hand and body motions, from the MTM-1 tables.
//!
//! Estimates with MTM-1 elements, for trained work at a steady pace without allowances: good for comparing places,
//! no promise of seconds, and no MTM analysis. One time measurement unit (TMU) is 0.036 s = 36 000 µs (MTM-1 data
//! card 2019, read). Tables in inches as read on two online copies of one sheet. Values that were recalled and not
//! read say `from memory`; [`FROM_MEMORY`] names them.

use crate::units::{Length, Mass, Time, Unit};

/// A tenth of a TMU in microseconds: table times are whole tenths.
const TENTH: i64 = 3_600;

/// Grasp G1A, easy pick-up: 2.0 TMU (read, poor scan of a textbook's table).
pub const GRASP: Time = tenths(20);
/// Release RL1: 2.0 TMU (from memory).
pub const RELEASE: Time = tenths(20);
/// Position P1SE, a loose fit placed easily: 5.6 TMU (from memory).
pub const POSITION: Time = tenths(56);
/// Turn of the body by 45 to 90°, case 1: 18.6 TMU (MTM-1 data card 2019, read).
pub const TURN_BODY: Time = tenths(186);
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

/// The length of a pace, common practice, no source.
///
/// With [`PACE`] this is 1.39 m/s, a discount of 13 % on the 1.60 m/s of the tables' 5.3 TMU a foot (from memory),
/// which is a trained pace in a clear aisle.
pub const STEP: Length = Length::mm(750);

/// How far a seated person wheels in a second on a shop floor, common practice, no source.
pub const WHEELED_PER_SECOND: Length = Length::mm(800);

/// What is recalled and not read in a source, in words for reports.
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

/// A distance at so much time for each `unit` of it, to the nearest microsecond.
fn per_length(distance: Length, time: Time, unit: Length) -> Time {
    let product = i128::from(distance.as_nm().max(0)) * i128::from(time.as_us());
    Time::us(((product + i128::from(unit.as_nm() / 2)) / i128::from(unit.as_nm())) as i64)
}

/// Time by distance: rows at ¾, 1, 2 … 10, 12, 14 … 30 in, then so much for each further inch.
struct Table {
    /// Tenths of a TMU at each row.
    rows: [i64; ROWS],
    /// Tenths of a TMU for each inch beyond the last row.
    further: i64,
}

/// How many rows a table has.
const ROWS: usize = 21;

/// Reach, case B: to a single thing whose place varies a little (read).
const REACH_B: Table = Table {
    rows: [
        20, 25, 40, 53, 64, 78, 86, 93, 101, 108, 115, 129, 144, 158, 172, 186, 201, 215, 229, 244,
        258,
    ],
    further: 7,
};

/// Move, case B: to an approximate place (read).
const MOVE_B: Table = Table {
    rows: [
        20, 29, 46, 57, 69, 80, 89, 97, 106, 115, 122, 134, 146, 158, 170, 182, 194, 206, 218, 231,
        243,
    ],
    further: 6,
};

/// One inch in nanometres.
const INCH: i64 = Unit::In.one().as_nm();

/// No arm goes farther, and no product overflows up to it.
const FARTHEST: i64 = Length::mm(100_000).as_nm();

impl Table {
    /// Microseconds for a distance in nanometres: linear between rows, to the nearest microsecond.
    fn at(&self, distance: i64) -> i64 {
        let nm = distance.clamp(0, FARTHEST);
        let inches = nm / INCH;
        let (row, from, long) = match inches {
            0 if nm * 4 <= INCH * 3 => return self.rows[0] * TENTH,
            0 => (0, INCH * 3 / 4, INCH / 4),
            1..10 => (inches as usize, inches * INCH, INCH),
            10..30 => (5 + inches as usize / 2, inches / 2 * 2 * INCH, 2 * INCH),
            _ => {
                return self.rows[ROWS - 1] * TENTH
                    + nearest((nm - 30 * INCH) * self.further * TENTH, INCH);
            }
        };
        let rise = (self.rows[row + 1] - self.rows[row]) * TENTH;
        self.rows[row] * TENTH + nearest((nm - from) * rise, long)
    }
}

/// A quotient of numbers that are not under nought, to the nearest whole one.
const fn nearest(number: i64, by: i64) -> i64 {
    (number + by / 2) / by
}

/// Reach to a single thing whose place varies a little (case B).
pub fn reach_b(distance: Length) -> Time {
    Time::us(REACH_B.at(distance.as_nm()))
}

/// Move a thing of some mass in one hand to an approximate place (case B): constant + factor × table time.
///
/// The weight is per hand: give half of it for two hands.
pub fn move_b(distance: Length, mass: Mass) -> Time {
    let (factor, constant) = weight(mass);
    let free = MOVE_B.at(distance.as_nm());
    Time::us(nearest(free * factor, 100) + constant * TENTH)
}

/// Weight factors (hundredths) and constants (tenths of a TMU) up to 2.5, 7.5, 12.5 … 47.5 lb (read).
const WEIGHT: [(i64, i64); 10] = [
    (100, 0),
    (106, 22),
    (111, 39),
    (117, 56),
    (122, 74),
    (128, 91),
    (133, 108),
    (139, 125),
    (144, 143),
    (150, 160),
];

/// Half a pound in nanograms.
const HALF_POUND: i64 = 453_592_370_000 / 2;

/// The heaviest that a hand is reckoned with; no product overflows up to it.
const HEAVIEST: i64 = Mass::kg(1_000).as_ng();

/// Factor and constant of the first row that holds a mass. Beyond the last row each further 5 lb adds what the last
/// row adds to the one before it (our own continuation: the sheet ends there).
fn weight(mass: Mass) -> (i64, i64) {
    let over = mass.as_ng().clamp(0, HEAVIEST) - 5 * HALF_POUND;
    if over <= 0 {
        return WEIGHT[0];
    }
    let row = (over + 10 * HALF_POUND - 1) / (10 * HALF_POUND);
    let last = WEIGHT.len() - 1;
    let beyond = (row - last as i64).max(0);
    let (factor, constant) = WEIGHT[(row as usize).min(last)];
    let rise = (WEIGHT[last].0 - WEIGHT[last - 1].0, WEIGHT[last].1 - WEIGHT[last - 1].1);
    (factor + beyond * rise.0, constant + beyond * rise.1)
}
