//! The shape of a written quantity: numbers, words and signs, before anything is looked up.
//!
//! Each function takes what it can from the front of the text and leaves the rest; `None` leaves all of it.

use super::ratio::{Ratio, decimal_ratio};

/// A number with the word or sign after it.
pub(super) struct Part<'s> {
    /// The number; `None` where it is too large, or divided by nought.
    pub(super) number: Option<Ratio>,
    /// As written; empty where there is none.
    pub(super) word: &'s str,
    /// How many base units one of it is, once it has been looked up.
    pub(super) unit: Option<i64>,
}

/// A sign and one or more parts, such as `2 ft 6 1/2 in`.
pub(super) struct Quantity<'s> {
    /// Whether it begins with a minus.
    pub(super) negative: bool,
    /// At least one.
    pub(super) parts: Vec<Part<'s>>,
}

/// How often by an adverb: its name, and so many a week as over and under.
pub(super) const ADVERBS: [(&str, i128, i128); 8] = [
    ("daily", 7, 1),
    ("weekly", 1, 1),
    ("fortnightly", 1, 2),
    ("monthly", 12, 52),
    ("quarterly", 4, 52),
    ("yearly", 1, 52),
    ("annually", 1, 52),
    ("never", 0, 1),
];

/// What a use may be counted by, in the same way.
const PERIODS: [(&str, i128, i128); 6] = [
    ("day", 7, 1),
    ("week", 1, 1),
    ("fortnight", 1, 2),
    ("month", 12, 52),
    ("quarter", 4, 52),
    ("year", 1, 52),
];

const COUNTS: [(&str, i128); 8] = [
    ("once", 1),
    ("one", 1),
    ("an", 1),
    ("a", 1),
    ("twice", 2),
    ("two", 2),
    ("thrice", 3),
    ("three", 3),
];

const VULGAR: [(char, i128, i128); 9] = [
    ('½', 1, 2),
    ('¼', 1, 4),
    ('¾', 3, 4),
    ('⅛', 1, 8),
    ('⅜', 3, 8),
    ('⅝', 5, 8),
    ('⅞', 7, 8),
    ('⅓', 1, 3),
    ('⅔', 2, 3),
];

const UNIT_SIGNS: [char; 6] = ['"', '″', '”', '\'', '′', '’'];

/// The whole text as a quantity, or `None` where it has another shape.
pub(super) fn quantity(text: &str) -> Option<Quantity<'_>> {
    let mut rest = Rest(text);
    rest.blank();
    let sign = rest.one(|c| matches!(c, '-' | '−' | '+'));
    let mut parts = vec![rest.part()?];
    while !rest.0.is_empty() {
        parts.push(rest.part()?);
    }
    Some(Quantity { negative: matches!(sign, Some('-' | '−')), parts })
}

/// The whole text (in lower case, single blanks) as how often a week: `daily`, `3 times a week`, `every 2 months`.
///
/// The outer `None` means another shape, the inner one too large a number.
pub(super) fn rate(text: &str) -> Option<Option<Ratio>> {
    if let Some((_, over, under)) = ADVERBS.iter().find(|(name, _, _)| *name == text) {
        return Some(Some(Ratio::new(*over, *under)));
    }
    let rest = Rest(text);
    if rest.starts_with_one_of(&["every ", "each "]) {
        return rest.rest_of_rate(Some(Ratio::new(1, 1)));
    }
    // `6/2 weeks` is six in two weeks, `1/2 per week` is half a one: the plain number is tried first.
    [Rest::decimal, Rest::number].into_iter().find_map(|number| {
        let mut ahead = rest;
        let times = ahead.times(number)?;
        ahead.rest_of_rate(times)
    })
}

/// What is left of a text.
#[derive(Clone, Copy)]
struct Rest<'s>(&'s str);

impl<'s> Rest<'s> {
    fn while_(&mut self, belongs: impl Fn(char) -> bool) -> &'s str {
        let end = self.0.find(|c| !belongs(c)).unwrap_or(self.0.len());
        let (taken, rest) = self.0.split_at(end);
        self.0 = rest;
        taken
    }
    fn one(&mut self, belongs: impl Fn(char) -> bool) -> Option<char> {
        let first = self.0.chars().next().filter(|c| belongs(*c))?;
        self.0 = &self.0[first.len_utf8()..];
        Some(first)
    }
    fn word(&mut self, word: &str) -> bool {
        let rest = self.0.strip_prefix(word);
        self.0 = rest.unwrap_or(self.0);
        rest.is_some()
    }
    /// Whether one of the words comes next, without taking it.
    fn starts_with_one_of(&self, words: &[&str]) -> bool {
        words.iter().any(|w| self.0.starts_with(w))
    }
    /// What `read` takes, or nothing at all.
    fn attempt<T>(&mut self, read: impl FnOnce(&mut Rest<'s>) -> Option<T>) -> Option<T> {
        let mut ahead = *self;
        let taken = read(&mut ahead)?;
        *self = ahead;
        Some(taken)
    }
    fn blank(&mut self) -> usize {
        self.while_(char::is_whitespace).len()
    }
    fn digits(&mut self) -> Option<&'s str> {
        Some(self.while_(|c| c.is_ascii_digit())).filter(|d| !d.is_empty())
    }

    /// A number with its unit, if it has one, and the blanks around them.
    fn part(&mut self) -> Option<Part<'s>> {
        let number = self.number()?;
        self.blank();
        let mut word = self.while_(char::is_alphabetic);
        if word.is_empty() {
            let sign = self.0;
            word = self.one(|c| UNIT_SIGNS.contains(&c)).map_or("", |c| &sign[..c.len_utf8()]);
        }
        self.blank();
        Some(Part { number, word, unit: None })
    }
    fn number(&mut self) -> Option<Option<Ratio>> {
        self.attempt(Rest::mixed)
            .or_else(|| self.attempt(Rest::vulgar))
            .or_else(|| self.attempt(Rest::fraction))
            .or_else(|| self.attempt(Rest::decimal))
    }
    /// `23 1/2` or `23½`.
    fn mixed(&mut self) -> Option<Option<Ratio>> {
        let whole = decimal_ratio(self.digits()?, 0, 0);
        let apart = self.blank() > 0;
        let tail = match self.attempt(Rest::vulgar) {
            Some(tail) => tail,
            None => apart.then(|| self.fraction()).flatten()?,
        };
        Some(whole.zip(tail).and_then(|(w, t)| w.plus(t)))
    }
    /// `½` and its like.
    fn vulgar(&mut self) -> Option<Option<Ratio>> {
        let sign = self.one(|c| VULGAR.iter().any(|(v, _, _)| *v == c))?;
        Some(
            VULGAR
                .iter()
                .find(|(v, _, _)| *v == sign)
                .map(|(_, over, under)| Ratio::new(*over, *under)),
        )
    }
    /// `5/8`.
    fn fraction(&mut self) -> Option<Option<Ratio>> {
        let over = self.digits()?;
        self.blank();
        self.one(|c| matches!(c, '/' | '⁄'))?;
        self.blank();
        let under = self.digits()?;
        let pair = over.parse().ok().zip(under.parse().ok().filter(|u: &i128| *u > 0));
        Some(pair.map(|(over, under)| Ratio::new(over, under)))
    }
    /// `340`, `12.7`, `.5`, `1e3`.
    fn decimal(&mut self) -> Option<Option<Ratio>> {
        let whole = self.digits();
        let part = self.attempt(|r| r.one(|c| c == '.').and_then(|_| r.digits()));
        if whole.is_none() && part.is_none() {
            return None;
        }
        let (whole, part) = (whole.unwrap_or(""), part.unwrap_or(""));
        let power = self.attempt(Rest::power).unwrap_or(0);
        Some(decimal_ratio(&format!("{whole}{part}"), part.len(), power))
    }
    /// `e3` or `E-3`.
    fn power(&mut self) -> Option<i32> {
        self.one(|c| matches!(c, 'e' | 'E'))?;
        let sign = self.one(|c| matches!(c, '+' | '-'));
        let size = self.digits()?.parse().unwrap_or(i32::MAX / 2);
        Some(if sign == Some('-') { -size } else { size })
    }

    /// `twice`, `3`, `5 times`.
    fn times(
        &mut self,
        number: impl FnOnce(&mut Rest<'s>) -> Option<Option<Ratio>>,
    ) -> Option<Option<Ratio>> {
        let word = COUNTS.iter().find(|(name, _)| self.0.starts_with(&format!("{name} ")));
        let count = match word {
            Some((name, count)) => {
                self.word(name);
                Some(Ratio::new(*count, 1))
            }
            None => number(self)?,
        };
        let _ = ["x", " times", " time"].into_iter().any(|w| self.word(w));
        Some(count)
    }
    /// The period that ends the text, times so many.
    fn rest_of_rate(mut self, times: Option<Ratio>) -> Option<Option<Ratio>> {
        let period = self.every()?;
        self.0.is_empty().then(|| times.zip(period).and_then(|(t, p)| t.by(p)))
    }
    /// ` per week`, `/ day`, ` every 2 weeks`: so many a week.
    fn every(&mut self) -> Option<Option<Ratio>> {
        self.blank();
        ["per ", "an ", "a ", "each ", "every ", "/ ", "/"].into_iter().find(|w| self.word(w))?;
        let several = self.attempt(|r| r.digits().filter(|_| r.blank() > 0));
        let (name, over, under) = PERIODS.iter().find(|(name, _, _)| self.0.starts_with(name))?;
        self.word(name);
        self.word("s");
        let each: i128 = several.map_or(Some(1), |d| d.parse().ok()).filter(|n| *n > 0)?;
        Some(Ratio::new(*over, *under).by(Ratio::new(1, each)))
    }
}
