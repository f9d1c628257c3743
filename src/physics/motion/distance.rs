//! Reaching and moving by distance, from the tables in inches (read on two online copies of one sheet).

use super::TENTH;
use crate::units::{Length, Mass, Time, Unit};

/// Reaching to a thing with an empty hand.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Reach {
    /// Case A: to a thing in a fixed place, in the other hand, or on which the other hand rests.
    Fixed,
    /// Case B: to a single thing whose place varies a little.
    Single,
    /// Cases C and D: to a thing jumbled with others, or very small, or to be taken with care.
    Jumbled,
    /// Case E: out of the way.
    Aside,
}

/// Moving a thing in the hand.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Move {
    /// Case A: against a stop, or to the other hand.
    Stop,
    /// Case B: to an approximate place.
    Near,
    /// Case C: to an exact place.
    Exact,
}

/// Time by distance: rows at ¾, 1, 2 … 10, 12, 14 … 30 in, then so much for each further inch.
struct Table {
    /// Tenths of a TMU at each row.
    rows: [i64; ROWS],
    /// Hundredths of a TMU for each inch beyond the last row.
    further: i64,
}

/// How many rows a table has.
const ROWS: usize = 21;

#[rustfmt::skip]
const REACHES: [Table; 4] = [
    Table { rows: [20, 25, 40, 53, 61, 65, 70, 74, 79, 83, 87, 96, 105, 114, 123, 131, 140, 149, 158, 167, 175], further: 40 },
    Table { rows: [20, 25, 40, 53, 64, 78, 86, 93, 101, 108, 115, 129, 144, 158, 172, 186, 201, 215, 229, 244, 258], further: 70 },
    Table { rows: [20, 36, 59, 73, 84, 94, 101, 108, 115, 122, 129, 142, 156, 170, 184, 198, 212, 225, 239, 253, 267], further: 70 },
    Table { rows: [20, 24, 38, 53, 68, 74, 80, 87, 93, 99, 105, 118, 130, 142, 155, 167, 180, 192, 204, 217, 229], further: 60 },
];

#[rustfmt::skip]
const MOVES: [Table; 3] = [
    Table { rows: [20, 25, 36, 49, 61, 73, 81, 89, 97, 105, 113, 129, 144, 160, 176, 192, 208, 224, 240, 255, 271], further: 80 },
    Table { rows: [20, 29, 46, 57, 69, 80, 89, 97, 106, 115, 122, 134, 146, 158, 170, 182, 194, 206, 218, 231, 243], further: 60 },
    Table { rows: [20, 34, 52, 67, 80, 92, 103, 111, 118, 127, 135, 152, 169, 187, 204, 221, 238, 255, 273, 290, 307], further: 85 },
];

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
                    + nearest((nm - 30 * INCH) * self.further * (TENTH / 10), INCH);
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

/// Reach so far with an empty hand.
pub fn reach(case: Reach, distance: Length) -> Time {
    Time::us(REACHES[case as usize].at(distance.as_nm()))
}

/// Move a thing of some mass so far in one hand: constant + factor × table time.
///
/// The mass is per hand: give half of it for two hands.
pub fn moved(case: Move, distance: Length, in_hand: Mass) -> Time {
    let (factor, constant) = weight(in_hand);
    let free = MOVES[case as usize].at(distance.as_nm());
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
