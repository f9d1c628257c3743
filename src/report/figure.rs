//! Figures in words, rounded to what a person can use.

use crate::units::{Length, Mass, Price, Unit, show_length, show_mass};

/// The blank at which no line is broken: between a figure and its sign.
pub const TIE: char = '\u{a0}';

/// A length in the user's unit, to the millimetre or the sixteenth of an inch.
pub fn length(length: Length, unit: Unit) -> String {
    let grain = if unit.imperial() { 1 } else { Length::mm(1).as_nm() };
    let whole = (length.as_nm() + grain / 2).div_euclid(grain) * grain;
    show_length(Length::nm(whole), unit)
}

/// A mass in kilograms or pounds, whichever goes with the unit of length.
pub fn mass(mass: Mass, unit: Unit) -> String {
    show_mass(mass, unit.imperial())
}

/// Seconds a week as a bare figure: tenths under 100.
pub fn seconds(price: Price) -> String {
    let seconds = price.as_s();
    // A hair under nought is not told as minus nought.
    let seconds = if seconds.abs() < 0.05 { 0.0 } else { seconds };
    if seconds.abs() < 99.95 { format!("{seconds:.1}") } else { format!("{seconds:.0}") }
}

/// A part of one in per cent, rounded down so that a gain is never told greater than it is.
pub fn at_least(part: f64) -> String {
    let tenths = libm::floor(part * 1000.0);
    if tenths < 100.0 {
        per_cent(tenths / 10.0, 1)
    } else {
        per_cent(libm::floor(tenths / 10.0), 0)
    }
}

/// A part of one in per cent, rounded up so that a gap is never told smaller than it is.
pub fn at_most(part: f64) -> String {
    per_cent(libm::ceil(part * 1000.0) / 10.0, 1)
}

fn per_cent(number: f64, places: usize) -> String {
    format!("{number:.places$}{TIE}%")
}

/// A number of things: `1 rule`, `3 rules`.
pub fn count(number: usize, one: &str) -> String {
    format!("{number} {one}{}", if number == 1 { "" } else { "s" })
}

/// An item with its copies: `clamp`, `clamp 2`, `clamp, all 4`, `clamp 2 to 3`; the number is told only where there are several.
pub fn copies(item: &str, copy: u32, copies: u32, of: u32) -> String {
    match (copies, of) {
        (_, 0 | 1) => item.to_owned(),
        (0 | 1, _) => format!("{item} {copy}"),
        (many, all) if many == all => format!("{item}, all {many}"),
        (many, _) => format!("{item} {copy} to {}", copy + many - 1),
    }
}

/// A word with a capital first letter.
pub fn capital(word: &str) -> String {
    let mut letters = word.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_are_rounded_for_people() {
        assert_eq!(length(Length::from_mm(823.46), Unit::Mm), "823 mm");
        assert_eq!(length(Length::from_mm(38.1), Unit::In), "1 1/2 in");
        assert_eq!(seconds(Price::from_s(99.96)), "100");
        assert_eq!(seconds(Price::from_s(1.26)), "1.3");
        assert_eq!(at_least(0.2399), "23\u{a0}%");
        assert_eq!(at_least(0.0579), "5.7\u{a0}%");
        assert_eq!(at_most(0.0571), "5.8\u{a0}%");
    }

    #[test]
    fn copies_are_told_where_there_are_several() {
        assert_eq!(copies("clamp", 1, 1, 1), "clamp");
        assert_eq!(copies("clamp", 2, 1, 4), "clamp 2");
        assert_eq!(copies("clamp", 1, 4, 4), "clamp, all 4");
        assert_eq!(copies("clamp", 2, 2, 4), "clamp 2 to 3");
    }
}
