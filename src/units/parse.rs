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
        ParseError { found: found.trim().to_owned(), expected: expected.into(), help: None }
    }
    fn help(self, help: impl Into<String>) -> ParseError {
        ParseError { help: Some(help.into()), ..self }
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
        if unit.imperial() { BareMass::Lb } else { BareMass::Kg }
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

const NUMBER: Kind = Kind { units: &[], like: "a number" };

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
    let last = quantity(h, &LENGTH).map_err(|e| ParseError { found: text.trim().into(), ..e })?;
    let bare = last.parts.last().and_then(|p| p.unit).unwrap_or(bare.one().as_nm());
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
    let read = quantity(number, &NUMBER).map_err(|e| ParseError { expected: like.into(), ..e })?;
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
    let nano = rate.and_then(|r| r.times(1_000_000_000)).and_then(Ratio::rounded);
    let nano = nano.ok_or_else(|| too_large(text, "at most 10 000 uses a week"))?;
    bounded(text, nano, BUSIEST.as_nano(), "at most 10 000 uses a week").map(Uses)
}

fn uses_a_week(text: &str, line: &str) -> Result<Uses, ParseError> {
    let number = quantity(line, &NUMBER).map_err(|e| {
        let near = nearest(line, grammar::ADVERBS.iter().map(|(name, _, _)| *name));
        let help = e.help.or(near.map(|n| format!("did you mean {n}")));
        ParseError { found: text.trim().into(), expected: USES.into(), help }
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
    let sum = quantity.parts.iter().try_fold(Ratio::new(0, 1), |sum, part| {
        sum.plus(part.number?.times(part.unit.unwrap_or(bare))?)
    });
    let size = sum.and_then(Ratio::rounded).ok_or_else(|| too_large(text, kind.like))?;
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
    let whole: String = before.chars().rev().take_while(char::is_ascii_digit).collect();
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
    let names: Vec<&str> =
        kind.units.iter().map(|(name, _)| *name).filter(|n| n.len() > 1 || n.is_ascii()).collect();
    let fault = ParseError::new(text, kind.like);
    match nearest(word, names.iter().copied().filter(|n| n.chars().all(char::is_alphabetic))) {
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
    if value >= 0 { Ok(value) } else { Err(ParseError::new(text, "nothing under nought")) }
}

fn over_nought(text: &str, value: i64) -> Result<i64, ParseError> {
    if value > 0 { Ok(value) } else { Err(ParseError::new(text, "sizes over nought")) }
}

#[cfg(test)]
mod tests;
