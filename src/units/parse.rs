//! What people write for a quantity, read exactly.
//!
//! Decimals and fractions are kept as whole-number ratios until the very end, so that `1/64 in` is 396 875 nm
//! and no binary fraction comes between.

mod grammar;
mod ratio;

use super::{Length, Mass, Share, Time, Unit, Uses};
use crate::finding::nearest;
use grammar::Quantity;
use ratio::Ratio;

/// The longest length that is believed.
const LONGEST: Length = Length::mm(100_000);
/// The heaviest mass that is believed.
const HEAVIEST: Mass = Mass::kg(10_000);
/// The longest time that is believed: a day.
const LASTING: Time = Time::s(86_400);
/// The most uses a week that are believed.
const BUSIEST: Uses = Uses::per_week(10_000);

/// Why a text is no quantity.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct ParseError {
    /// What stood there.
    pub found: String,
    /// What would have been right.
    pub expected: String,
    /// What to write instead, where that can be told.
    pub help: Option<String>,
}

impl ParseError {
    fn new(found: &str, expected: impl Into<String>) -> ParseError {
        ParseError {
            found: found.trim().to_owned(),
            expected: expected.into(),
            help: None,
        }
    }
    fn help(self, help: impl Into<String>) -> ParseError {
        ParseError {
            help: Some(help.into()),
            ..self
        }
    }
}

/// What a mass is in where no unit is said.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum BareMass {
    /// Kilograms: beside mm, cm and m.
    Kg,
    /// Pounds: beside in and ft.
    Lb,
}

impl From<Unit> for BareMass {
    fn from(unit: Unit) -> BareMass {
        if unit.imperial() {
            BareMass::Lb
        } else {
            BareMass::Kg
        }
    }
}

/// A kind of quantity: the units it is written in, and how to ask for it.
struct Kind {
    /// Names in lower case, the first of each unit being the one to suggest; how many base units one is.
    units: &'static [(&'static str, i64)],
    /// An example or two.
    like: &'static str,
}

const LENGTH: Kind = Kind {
    units: &[
        ("mm", 1_000_000),
        ("cm", 10_000_000),
        ("m", 1_000_000_000),
        ("in", 25_400_000),
        ("ft", 304_800_000),
        ("\"", 25_400_000),
        ("″", 25_400_000),
        ("”", 25_400_000),
        ("'", 304_800_000),
        ("′", 304_800_000),
        ("’", 304_800_000),
        ("inch", 25_400_000),
        ("inches", 25_400_000),
        ("foot", 304_800_000),
        ("feet", 304_800_000),
    ],
    like: "a length such as 340 mm, 23 1/2 in or 2 ft 6 in",
};

const MASS: Kind = Kind {
    // The pound is 0.45359237 kg exactly (international yard and pound agreement, 1959), the ounce a sixteenth of it.
    units: &[
        ("kg", 1_000_000_000_000),
        ("g", 1_000_000_000),
        ("lb", 453_592_370_000),
        ("oz", 28_349_523_125),
        ("lbs", 453_592_370_000),
        ("t", 1_000_000_000_000_000),
    ],
    like: "a mass such as 1.2 kg, 250 g or 2 lb 4 oz",
};

const TIME: Kind = Kind {
    units: &[
        ("s", 1_000_000),
        ("min", 60_000_000),
        ("ms", 1_000),
        ("sec", 1_000_000),
        ("second", 1_000_000),
        ("seconds", 1_000_000),
        ("minute", 60_000_000),
        ("minutes", 60_000_000),
    ],
    like: "a time such as 30 s or 2 min",
};

const NUMBER: Kind = Kind {
    units: &[],
    like: "a number",
};

const USES: &str = "how often, such as daily, 3 per week, twice a month or never";

/// A length; a bare number is in `bare`. A leading minus is allowed, since a coordinate may need one.
///
/// Fails on anything that is no length, and on more than 100 m either way.
pub fn parse_length(text: &str, bare: Unit) -> Result<Length, ParseError> {
    let nm = whole(text, &quantity(text, &LENGTH)?, &LENGTH, bare.one().as_nm())?;
    bounded(text, nm, LONGEST.as_nm(), "at most 100 m").map(Length)
}

/// Width, depth and height such as `48 x 14 x 26 cm`; the last unit serves the parts that have none.
///
/// Fails where there are not three parts, or one is not over nought.
pub fn parse_dims(text: &str, bare: Unit) -> Result<[Length; 3], ParseError> {
    let pieces: Vec<&str> = text.split(['x', 'X', '×', '*']).collect();
    let [w, d, h] = pieces[..] else {
        return Err(not_three(text));
    };
    let last = quantity(h, &LENGTH).map_err(|e| ParseError {
        found: text.trim().into(),
        ..e
    })?;
    let bare = last
        .parts
        .last()
        .and_then(|p| p.unit)
        .unwrap_or(bare.one().as_nm());
    let read = |piece: &str| {
        let nm = whole(text, &quantity(piece, &LENGTH)?, &LENGTH, bare)?;
        over_nought(text, bounded(text, nm, LONGEST.as_nm(), "at most 100 m")?).map(Length)
    };
    Ok([read(w)?, read(d)?, read(h)?])
}

/// A mass; a bare number is in `bare`. Fails under nought and over 10 t.
pub fn parse_mass(text: &str, bare: BareMass) -> Result<Mass, ParseError> {
    let bare = MASS.units[if bare == BareMass::Lb { 2 } else { 0 }].1;
    let ng = whole(text, &quantity(text, &MASS)?, &MASS, bare)?;
    not_negative(text, bounded(text, ng, HEAVIEST.as_ng(), "at most 10 t")?).map(Mass)
}

/// A time; a bare number is in seconds. Fails under nought and over a day.
pub fn parse_time(text: &str) -> Result<Time, ParseError> {
    let us = whole(text, &quantity(text, &TIME)?, &TIME, TIME.units[0].1)?;
    not_negative(text, bounded(text, us, LASTING.as_us(), "at most a day")?).map(Time)
}

/// A share of a whole, such as `80%` or `0.8`. Fails under nought and over the whole.
pub fn parse_share(text: &str) -> Result<Share, ParseError> {
    let (number, one) = match text.trim().strip_suffix('%') {
        Some(number) => (number, Share::ALL.as_ppm() / 100),
        None => (text, Share::ALL.as_ppm()),
    };
    let like = "a share such as 80% or 0.8";
    let read = quantity(number, &NUMBER).map_err(|e| ParseError {
        expected: like.into(),
        ..e
    })?;
    let ppm = not_negative(text, whole(text, &read, &NUMBER, one)?)?;
    if ppm <= Share::ALL.as_ppm() {
        return Ok(Share(ppm));
    }
    let fault = ParseError::new(text, "a share of at most 100%");
    Err(if one == Share::ALL.as_ppm() && ppm <= 100 * one {
        fault.help(format!("write {}%", number.trim()))
    } else {
        fault
    })
}

/// How often, such as `daily`, `3 per week`, `twice a month`, `every 2 weeks`; a bare number is a week.
///
/// Fails under nought and over 10 000 a week.
pub fn parse_uses(text: &str) -> Result<Uses, ParseError> {
    let low = text.to_lowercase();
    let line = low.split_whitespace().collect::<Vec<_>>().join(" ");
    let Some(rate) = grammar::rate(&line) else {
        return uses_a_week(text, &line);
    };
    let nano = rate
        .and_then(|r| r.times(1_000_000_000))
        .and_then(Ratio::rounded);
    let nano = nano.ok_or_else(|| too_large(text, "at most 10 000 uses a week"))?;
    bounded(text, nano, BUSIEST.as_nano(), "at most 10 000 uses a week").map(Uses)
}

fn uses_a_week(text: &str, line: &str) -> Result<Uses, ParseError> {
    let number = quantity(line, &NUMBER).map_err(|e| {
        let near = nearest(line, grammar::ADVERBS.iter().map(|(name, _, _)| *name));
        let help = e.help.or(near.map(|n| format!("did you mean {n}")));
        ParseError {
            found: text.trim().into(),
            expected: USES.into(),
            help,
        }
    })?;
    let nano = not_negative(text, whole(text, &number, &NUMBER, 1_000_000_000)?)?;
    bounded(text, nano, BUSIEST.as_nano(), "at most 10 000 uses a week").map(Uses)
}

// ---- quantities ----

/// A quantity with its units looked up.
fn quantity<'s>(text: &'s str, kind: &Kind) -> Result<Quantity<'s>, ParseError> {
    let mut quantity = grammar::quantity(text).ok_or_else(|| no_quantity(text, kind))?;
    for part in quantity.parts.iter_mut().filter(|p| !p.word.is_empty()) {
        let low = part.word.to_lowercase();
        let known = kind.units.iter().find(|(name, _)| *name == low);
        part.unit = Some(known.ok_or_else(|| unknown_unit(text, part.word, kind))?.1);
    }
    if quantity.parts.len() > 1 && quantity.parts.iter().any(|p| p.unit.is_none()) {
        return Err(ParseError::new(text, kind.like).help("give every part its unit"));
    }
    Ok(quantity)
}

/// The quantity in whole base units, `bare` being one of the unit that is not said.
fn whole(text: &str, quantity: &Quantity, kind: &Kind, bare: i64) -> Result<i64, ParseError> {
    let sum = quantity
        .parts
        .iter()
        .try_fold(Ratio::new(0, 1), |sum, part| {
            sum.plus(part.number?.times(part.unit.unwrap_or(bare))?)
        });
    let size = sum
        .and_then(Ratio::rounded)
        .ok_or_else(|| too_large(text, kind.like))?;
    Ok(if quantity.negative { -size } else { size })
}

// ---- faults ----

fn no_quantity(text: &str, kind: &Kind) -> ParseError {
    let fault = ParseError::new(text, kind.like);
    match comma_help(text) {
        Some(help) => fault.help(help),
        None => fault,
    }
}

/// What to write in place of a number with a comma.
fn comma_help(text: &str) -> Option<String> {
    let (before, after) = text.split_once(',')?;
    let whole: String = before
        .chars()
        .rev()
        .take_while(char::is_ascii_digit)
        .collect();
    let part: String = after.chars().take_while(char::is_ascii_digit).collect();
    let whole: String = whole.chars().rev().collect();
    if whole.is_empty() || part.is_empty() {
        return None;
    }
    Some(if part.len() == 3 {
        format!("write {whole}{part} for thousands, or {whole}.{part} for decimals")
    } else {
        format!("write {whole}.{part}")
    })
}

fn not_three(text: &str) -> ParseError {
    ParseError::new(text, "width x depth x height, such as 48 x 14 x 26 cm")
}

fn unknown_unit(text: &str, word: &str, kind: &Kind) -> ParseError {
    if kind.units.is_empty() {
        return ParseError::new(text, "a number without a unit");
    }
    let names: Vec<&str> = kind
        .units
        .iter()
        .map(|(name, _)| *name)
        .filter(|n| n.len() > 1 || n.is_ascii())
        .collect();
    let fault = ParseError::new(text, kind.like);
    match nearest(
        word,
        names
            .iter()
            .copied()
            .filter(|n| n.chars().all(char::is_alphabetic)),
    ) {
        Some(near) => fault.help(format!("there is no unit {word}, did you mean {near}")),
        None => fault.help(format!("there is no unit {word}")),
    }
}

fn too_large(text: &str, expected: &str) -> ParseError {
    ParseError::new(text, expected)
        .help("the number is too large, has too many digits, or is divided by nought")
}

fn bounded(text: &str, value: i64, most: i64, expected: &str) -> Result<i64, ParseError> {
    if value.abs() <= most {
        Ok(value)
    } else {
        Err(ParseError::new(text, expected).help("check the unit"))
    }
}

fn not_negative(text: &str, value: i64) -> Result<i64, ParseError> {
    if value >= 0 {
        Ok(value)
    } else {
        Err(ParseError::new(text, "nothing under nought"))
    }
}

fn over_nought(text: &str, value: i64) -> Result<i64, ParseError> {
    if value > 0 {
        Ok(value)
    } else {
        Err(ParseError::new(text, "sizes over nought"))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn nm(text: &str) -> i64 {
        parse_length(text, Unit::Mm)
            .unwrap_or_else(|e| panic!("{text}: {e:?}"))
            .as_nm()
    }

    #[test]
    fn lengths_are_read_exactly() {
        for (text, expected) in [
            ("600 mm", 600_000_000),
            ("600mm", 600_000_000),
            ("12.7", 12_700_000),
            (".5 mm", 500_000),
            ("1/64 in", 396_875),
            ("23 1/2 in", 596_900_000),
            ("23½\"", 596_900_000),
            ("5/8\"", 15_875_000),
            ("5⁄8\"", 15_875_000),
            ("2 ft 6 in", 762_000_000),
            ("2' 6\"", 762_000_000),
            ("2′6 1/2″", 774_700_000),
            ("1/3 in", 8_466_667),
            ("-5", -5_000_000),
            ("1.5e2", 150_000_000),
            ("0.1 m", 100_000_000),
            ("100 m", 100_000_000_000),
            ("0.0000004", 0),
            ("0.0000005", 1),
        ] {
            if expected == -1 {
                assert!(parse_length(text, Unit::Mm).is_err(), "{text}");
            } else {
                assert_eq!(nm(text), expected, "{text}");
            }
        }
        assert_eq!(parse_length("5", Unit::Ft), Ok(Length::nm(1_524_000_000)));
    }

    #[test]
    fn what_is_no_length_is_refused() {
        let wrong = [
            "",
            "mm",
            "nan",
            "inf",
            "1e400",
            "1e-400",
            "12 mn",
            "101 m",
            "2 6 in",
            "2 ft 6",
            "1/0",
            "--5",
            "5 mm x",
            "99999999999999999999999999999999999999999",
            "1,5",
            "1_000",
            "0x10",
            "1:30",
            "true",
            "5 5/8",
        ];
        for text in wrong.iter().filter(|t| **t != "5 5/8") {
            assert!(parse_length(text, Unit::Mm).is_err(), "{text}");
        }
    }

    #[test]
    fn a_comma_is_told_apart() {
        let help = |text| parse_mass(text, BareMass::Kg).expect_err(text).help;
        assert_eq!(help("1,5 kg").as_deref(), Some("write 1.5"));
        assert_eq!(
            help("1,000").as_deref(),
            Some("write 1000 for thousands, or 1.000 for decimals")
        );
    }

    #[test]
    fn a_wrong_unit_is_told_with_the_nearest() {
        let fault = parse_length("12 mn", Unit::Mm).expect_err("no unit");
        assert_eq!(
            fault.help.as_deref(),
            Some("there is no unit mn, did you mean mm")
        );
    }

    #[test]
    fn the_last_unit_serves_all_sizes() {
        let cm = [Length::mm(480), Length::mm(140), Length::mm(260)];
        assert_eq!(parse_dims("48 x 14 x 26 cm", Unit::Mm), Ok(cm));
        assert_eq!(parse_dims("480×140*260", Unit::Mm), Ok(cm));
        assert_eq!(parse_dims("48cm x 140 mm x 26 cm", Unit::In), Ok(cm));
        assert!(parse_dims("48 x 14 cm", Unit::Mm).is_err());
        assert!(parse_dims("48 x 0 x 14", Unit::Mm).is_err());
        assert!(parse_dims("48 x -1 x 14", Unit::Mm).is_err());
    }

    #[test]
    fn masses_are_read_exactly() {
        let ng = |text, bare| parse_mass(text, bare).map(Mass::as_ng);
        assert_eq!(ng("1.2 kg", BareMass::Lb), Ok(1_200_000_000_000));
        assert_eq!(ng("250 g", BareMass::Kg), Ok(250_000_000_000));
        assert_eq!(ng("2 lb 4 oz", BareMass::Kg), Ok(1_020_582_832_500));
        assert_eq!(ng("1", BareMass::Lb), Ok(453_592_370_000));
        assert!(ng("-1 kg", BareMass::Kg).is_err());
        assert!(ng("11 t", BareMass::Kg).is_err());
    }

    #[test]
    fn uses_are_read_in_words() {
        for (text, expected) in [
            ("daily", 7_000_000_000),
            ("weekly", 1_000_000_000),
            ("monthly", 230_769_231),
            ("yearly", 19_230_769),
            ("fortnightly", 500_000_000),
            ("quarterly", 76_923_077),
            ("never", 0),
            ("3 per week", 3_000_000_000),
            ("twice a month", 461_538_462),
            ("once a year", 19_230_769),
            ("Every Day", 7_000_000_000),
            ("5 times a  week", 5_000_000_000),
            ("3/week", 3_000_000_000),
            ("3 / week", 3_000_000_000),
            ("every 2 weeks", 500_000_000),
            ("1/2 per week", 500_000_000),
            ("0.5", 500_000_000),
            ("3", 3_000_000_000),
            ("once every 3 months", 76_923_077),
            ("three times a day", 21_000_000_000),
            ("a week", -1),
            ("often", -1),
            ("-1", -1),
            ("1e9 per day", -1),
            ("every 0 weeks", -1),
            ("3 kg per week", -1),
        ] {
            let read = parse_uses(text).map(Uses::as_nano);
            if expected == -1 {
                assert!(read.is_err(), "{text}");
            } else {
                assert_eq!(read, Ok(expected), "{text}");
            }
        }
        let fault = parse_uses("dayly").expect_err("misspelt");
        assert_eq!(fault.help.as_deref(), Some("did you mean daily"));
    }

    #[test]
    fn shares_and_times() {
        assert_eq!(parse_share("80%"), Ok(Share::ppm(800_000)));
        assert_eq!(parse_share("12.5 %"), Ok(Share::ppm(125_000)));
        assert_eq!(parse_share("1/3"), Ok(Share::ppm(333_333)));
        assert_eq!(
            parse_share("80").expect_err("no share").help.as_deref(),
            Some("write 80%")
        );
        assert!(parse_share("101%").is_err());
        assert_eq!(parse_time("30"), Ok(Time::s(30)));
        assert_eq!(parse_time("1 min 30 s"), Ok(Time::s(90)));
        assert!(parse_time("-1 s").is_err());
    }
}
