//! Quantities as people read them.

use super::{Length, Mass, Unit, Uses};

/// A length with its unit: `340 mm`, `12.7 mm`, `23 1/2 in`, `2 ft 6 in`.
///
/// Metric lengths are rounded to a thousandth of a millimetre, inches to a sixteenth.
pub fn show_length(length: Length, unit: Unit) -> String {
    match unit {
        Unit::Ft => feet(length),
        _ => format!("{} {}", show_length_in(length, unit), unit.name()),
    }
}

/// The same as a bare number in that unit, for tables whose head names it; feet are decimal there.
pub fn show_length_in(length: Length, unit: Unit) -> String {
    match unit {
        Unit::In => inches(length),
        Unit::Mm => decimal(length.as_nm(), 1_000_000, 3),
        Unit::Cm => decimal(length.as_nm(), 10_000_000, 4),
        Unit::M => decimal(length.as_nm(), 1_000_000_000, 6),
        Unit::Ft => decimal(length.as_nm(), 304_800_000, 2),
    }
}

/// A mass: `2.6 kg`, `250 g`, `2 lb 4 oz`, `3.5 oz`.
///
/// Rounded to what a kitchen or bathroom scale shows: 1 g, 10 g over 1 kg, 100 g over 10 kg; ounces to a whole one
/// over 1 lb and to a tenth below.
pub fn show_mass(mass: Mass, imperial: bool) -> String {
    if imperial { pounds(mass.as_ng()) } else { kilograms(mass.as_ng()) }
}

/// A time in seconds: `2.4 s`, `350 s`; tenths are shown under 100 s.
pub fn show_seconds(seconds: f64) -> String {
    let tenths = (seconds * 10.0).round() as i64;
    if tenths.abs() < 1000 {
        format!("{} s", decimal(tenths, 10, 1))
    } else {
        format!("{} s", decimal(tenths, 10, 0))
    }
}

/// How often: `7 a week`, `2 a month`, `3 a year`, `never`.
pub fn show_uses(uses: Uses) -> String {
    const ONE: i64 = 1_000_000_000;
    let nano = uses.as_nano();
    let (yearly, monthly) = (nano * 52, nano * 52 / 12);
    if nano == 0 {
        "never".into()
    } else if nano >= ONE {
        format!("{} a week", decimal(nano, ONE, 1))
    } else if nearly_whole(monthly, ONE) {
        format!("{} a month", decimal(monthly, ONE, 0))
    } else {
        format!("{} a year", decimal(yearly, ONE, if yearly >= ONE { 0 } else { 2 }))
    }
}

/// Whether it is one or more whole `one`s but for what rounding to billionths a week leaves.
fn nearly_whole(value: i64, one: i64) -> bool {
    let (_, count) = nearest_whole(value, one);
    count > 0 && (value - count * one).abs() <= 100
}

/// So many small units as a decimal number of large ones, with at most so many places and no needless nought.
fn decimal(value: i64, one: i64, places: u32) -> String {
    let scale = 10i128.pow(places);
    let scaled = value.unsigned_abs() as i128 * scale;
    let rounded = (scaled * 2 + one as i128) / (2 * one as i128);
    let sign = if value < 0 && rounded > 0 { "-" } else { "" };
    let (whole, part) = (rounded / scale, rounded % scale);
    if part == 0 {
        return format!("{sign}{whole}");
    }
    let part = format!("{part:0width$}", width = places as usize);
    format!("{sign}{whole}.{}", part.trim_end_matches('0'))
}

/// The nearest number of `one`s, halves away from nought, and whether it is under nought.
fn nearest_whole(value: i64, one: i64) -> (bool, i64) {
    let count = (value.abs() * 2 + one) / (2 * one);
    (value < 0 && count > 0, count)
}

/// Sixteenths as a mixed number.
fn sixteenths(count: i64) -> String {
    let (whole, mut over, mut under) = (count / 16, count % 16, 16);
    while over > 0 && over % 2 == 0 {
        (over, under) = (over / 2, under / 2);
    }
    match (whole, over) {
        (whole, 0) => format!("{whole}"),
        (0, over) => format!("{over}/{under}"),
        (whole, over) => format!("{whole} {over}/{under}"),
    }
}

fn inches(length: Length) -> String {
    let (negative, count) = nearest_whole(length.as_nm() * 16, Unit::In.one().as_nm());
    format!("{}{}", if negative { "-" } else { "" }, sixteenths(count))
}

fn feet(length: Length) -> String {
    let (negative, count) = nearest_whole(length.as_nm() * 16, Unit::In.one().as_nm());
    let sign = if negative { "-" } else { "" };
    match (count / 192, count % 192) {
        (0, rest) => format!("{sign}{} in", sixteenths(rest)),
        (feet, 0) => format!("{sign}{feet} ft"),
        (feet, rest) => format!("{sign}{feet} ft {} in", sixteenths(rest)),
    }
}

fn kilograms(ng: i64) -> String {
    const KG: i64 = 1_000_000_000_000;
    match ng.abs() {
        0 => "0 kg".into(),
        n if n < 10_000_000_000 => format!("{} g", decimal(ng, KG / 1000, 1)),
        n if n < KG - KG / 2000 => format!("{} g", decimal(ng, KG / 1000, 0)),
        n if n < 10 * KG => format!("{} kg", decimal(ng, KG, 2)),
        _ => format!("{} kg", decimal(ng, KG, 1)),
    }
}

fn pounds(ng: i64) -> String {
    const OUNCE: i64 = 28_349_523_125;
    let (negative, ounces) = nearest_whole(ng, OUNCE);
    let sign = if negative { "-" } else { "" };
    match (ounces / 16, ounces % 16) {
        _ if ng == 0 => "0 lb".into(),
        (0, _) => format!("{} oz", decimal(ng, OUNCE, 1)),
        (pounds, 0) => format!("{sign}{pounds} lb"),
        (pounds, rest) => format!("{sign}{pounds} lb {rest} oz"),
    }
}

#[cfg(test)]
mod tests {
    use super::super::{BareMass, parse_length, parse_mass, parse_uses};
    use super::*;

    #[test]
    fn lengths() {
        let show = |text, unit| show_length(parse_length(text, unit).expect(text), unit);
        assert_eq!(show("340", Unit::Mm), "340 mm");
        assert_eq!(show("12.70", Unit::Mm), "12.7 mm");
        assert_eq!(show("-0.0001", Unit::Mm), "0 mm");
        assert_eq!(show("-1.5", Unit::Mm), "-1.5 mm");
        assert_eq!(show("4.25", Unit::Cm), "4.25 cm");
        assert_eq!(show("23 1/2", Unit::In), "23 1/2 in");
        assert_eq!(show("5/8", Unit::In), "5/8 in");
        assert_eq!(show("1/64", Unit::In), "0 in");
        assert_eq!(show("2 ft 6 in", Unit::Ft), "2 ft 6 in");
        assert_eq!(show("11.99 in", Unit::Ft), "1 ft");
        assert_eq!(show_length_in(Length::mm(25), Unit::M), "0.025");
    }

    #[test]
    fn masses() {
        let show =
            |text, imperial| show_mass(parse_mass(text, BareMass::Kg).expect(text), imperial);
        assert_eq!(show("2.6", false), "2.6 kg");
        assert_eq!(show("250 g", false), "250 g");
        assert_eq!(show("999.9 g", false), "1 kg");
        assert_eq!(show("23.456", false), "23.5 kg");
        assert_eq!(show("2 lb 4 oz", true), "2 lb 4 oz");
        assert_eq!(show("1 lb", true), "1 lb");
        assert_eq!(show("3.5 oz", true), "3.5 oz");
    }

    #[test]
    fn times_and_uses() {
        assert_eq!(show_seconds(2.44), "2.4 s");
        assert_eq!(show_seconds(99.96), "100 s");
        assert_eq!(show_seconds(-0.01), "0 s");
        assert_eq!(show_seconds(350.4), "350 s");
        let show = |text| show_uses(parse_uses(text).expect(text));
        assert_eq!(show("daily"), "7 a week");
        assert_eq!(show("monthly"), "1 a month");
        assert_eq!(show("twice a month"), "2 a month");
        assert_eq!(show("3 a year"), "3 a year");
        assert_eq!(show("fortnightly"), "26 a year");
        assert_eq!(show("0.01"), "0.52 a year");
        assert_eq!(show("never"), "never");
    }
}
