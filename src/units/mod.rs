//! Quantities in whole numbers of small units, so that a sum is the same in any order.
//!
//! Lengths are whole nanometres (1/64 in is 396 875 nm), masses whole nanograms (an ounce is 28 349 523 125 ng),
//! times whole microseconds, uses whole billionths a week, prices whole microseconds a week.

mod parse;
mod show;

pub use parse::{
    BareMass, ParseError, parse_dims, parse_length, parse_mass, parse_share, parse_time, parse_uses,
};
pub use show::{show_length, show_length_in, show_mass, show_seconds, show_uses};

use std::iter::Sum;
use std::ops::{Add, AddAssign, Mul, Neg, Sub, SubAssign};

/// Writes the arithmetic that every quantity shares.
macro_rules! quantity {
    ($name:ident) => {
        impl $name {
            /// Nothing of it.
            pub const ZERO: $name = $name(0);
        }
        impl Add for $name {
            type Output = $name;
            fn add(self, other: $name) -> $name {
                $name(self.0 + other.0)
            }
        }
        impl Sub for $name {
            type Output = $name;
            fn sub(self, other: $name) -> $name {
                $name(self.0 - other.0)
            }
        }
        impl Neg for $name {
            type Output = $name;
            fn neg(self) -> $name {
                $name(-self.0)
            }
        }
        impl Mul<i64> for $name {
            type Output = $name;
            fn mul(self, times: i64) -> $name {
                $name(self.0 * times)
            }
        }
        impl AddAssign for $name {
            fn add_assign(&mut self, other: $name) {
                self.0 += other.0;
            }
        }
        impl SubAssign for $name {
            fn sub_assign(&mut self, other: $name) {
                self.0 -= other.0;
            }
        }
        impl Sum for $name {
            fn sum<I: Iterator<Item = $name>>(all: I) -> $name {
                $name(all.map(|q| q.0).sum())
            }
        }
    };
}

/// A length in whole nanometres; a coordinate is the length from the frame's origin.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug, Default)]
pub struct Length(i64);
quantity!(Length);

impl Length {
    /// So many whole nanometres.
    pub const fn nm(nanometres: i64) -> Length {
        Length(nanometres)
    }
    /// So many whole millimetres.
    pub const fn mm(millimetres: i64) -> Length {
        Length(millimetres * 1_000_000)
    }
    /// The nearest whole nanometre to a number of millimetres.
    pub fn from_mm(millimetres: f64) -> Length {
        Length((millimetres * 1e6).round() as i64)
    }
    /// In whole nanometres.
    pub const fn as_nm(self) -> i64 {
        self.0
    }
    /// In millimetres.
    pub fn as_mm(self) -> f64 {
        self.0 as f64 / 1e6
    }
    /// The smaller half (towards nought).
    pub const fn half(self) -> Length {
        Length(self.0 / 2)
    }
}

/// A mass in whole nanograms.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug, Default)]
pub struct Mass(i64);
quantity!(Mass);

impl Mass {
    /// So many whole nanograms.
    pub const fn ng(nanograms: i64) -> Mass {
        Mass(nanograms)
    }
    /// So many whole kilograms.
    pub const fn kg(kilograms: i64) -> Mass {
        Mass(kilograms * 1_000_000_000_000)
    }
    /// The nearest whole nanogram to a number of kilograms.
    pub fn from_kg(kilograms: f64) -> Mass {
        Mass((kilograms * 1e12).round() as i64)
    }
    /// In whole nanograms.
    pub const fn as_ng(self) -> i64 {
        self.0
    }
    /// In kilograms.
    pub fn as_kg(self) -> f64 {
        self.0 as f64 / 1e12
    }
}

/// A stretch of time in whole microseconds.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug, Default)]
pub struct Time(i64);
quantity!(Time);

impl Time {
    /// So many whole microseconds.
    pub const fn us(microseconds: i64) -> Time {
        Time(microseconds)
    }
    /// So many whole seconds.
    pub const fn s(seconds: i64) -> Time {
        Time(seconds * 1_000_000)
    }
    /// The nearest whole microsecond to a number of seconds.
    pub fn from_s(seconds: f64) -> Time {
        Time((seconds * 1e6).round() as i64)
    }
    /// In whole microseconds.
    pub const fn as_us(self) -> i64 {
        self.0
    }
    /// In seconds.
    pub fn as_s(self) -> f64 {
        self.0 as f64 / 1e6
    }
}

/// How often a thing is fetched, in whole billionths of a use a week.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug, Default)]
pub struct Uses(i64);
quantity!(Uses);

impl Uses {
    /// So many billionths of a use a week.
    pub const fn nano(nano: i64) -> Uses {
        Uses(nano)
    }
    /// So many whole uses a week.
    pub const fn per_week(times: i64) -> Uses {
        Uses(times * 1_000_000_000)
    }
    /// The nearest billionth to a number of uses a week.
    pub fn from_week(times: f64) -> Uses {
        Uses((times * 1e9).round() as i64)
    }
    /// In billionths of a use a week.
    pub const fn as_nano(self) -> i64 {
        self.0
    }
    /// In uses a week.
    pub fn as_week(self) -> f64 {
        self.0 as f64 / 1e9
    }
    /// What so many seconds at each use come to in a week, rounded to the nearest microsecond.
    pub fn cost(self, each: Time) -> Price {
        const HALF: i64 = 500_000_000;
        const ONE: i64 = 1_000_000_000;
        // Nearly always within 64 bits, which is several times quicker.
        match self.0.checked_mul(each.0).and_then(|product| product.checked_add(HALF)) {
            Some(product) => Price(product.div_euclid(ONE)),
            None => {
                let product = i128::from(self.0) * i128::from(each.0) + i128::from(HALF);
                Price(product.div_euclid(i128::from(ONE)) as i64)
            }
        }
    }
}

/// What something costs in whole microseconds a week.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug, Default)]
pub struct Price(i64);
quantity!(Price);

impl Price {
    /// So many whole microseconds a week.
    pub const fn us(microseconds: i64) -> Price {
        Price(microseconds)
    }
    /// The nearest whole microsecond to a number of seconds a week.
    pub fn from_s(seconds: f64) -> Price {
        Price((seconds * 1e6).round() as i64)
    }
    /// In whole microseconds a week.
    pub const fn as_us(self) -> i64 {
        self.0
    }
    /// In seconds a week.
    pub fn as_s(self) -> f64 {
        self.0 as f64 / 1e6
    }
}

/// A part of a whole in millionths.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug, Default)]
pub struct Share(i64);
quantity!(Share);

impl Share {
    /// The whole.
    pub const ALL: Share = Share(1_000_000);
    /// So many millionths.
    pub const fn ppm(millionths: i64) -> Share {
        Share(millionths)
    }
    /// In millionths.
    pub const fn as_ppm(self) -> i64 {
        self.0
    }
    /// As a fraction of one.
    pub fn as_fraction(self) -> f64 {
        self.0 as f64 / 1e6
    }
}

/// A unit that people write lengths in.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, Default)]
pub enum Unit {
    /// Millimetre.
    #[default]
    Mm,
    /// Centimetre.
    Cm,
    /// Metre.
    M,
    /// Inch.
    In,
    /// Foot.
    Ft,
}

impl Unit {
    /// All units with the names they go by in a file's `units`.
    pub const ALL: [(&'static str, Unit); 5] =
        [("mm", Unit::Mm), ("cm", Unit::Cm), ("m", Unit::M), ("in", Unit::In), ("ft", Unit::Ft)];

    /// One of this unit.
    pub const fn one(self) -> Length {
        match self {
            Unit::Mm => Length(1_000_000),
            Unit::Cm => Length(10_000_000),
            Unit::M => Length(1_000_000_000),
            Unit::In => Length(25_400_000),
            Unit::Ft => Length(304_800_000),
        }
    }
    /// Whether masses beside it are pounds where nothing is said.
    pub const fn imperial(self) -> bool {
        matches!(self, Unit::In | Unit::Ft)
    }
    /// The name it goes by in a file.
    pub fn name(self) -> &'static str {
        Unit::ALL.iter().find(|(_, u)| *u == self).map_or("mm", |(n, _)| n)
    }
}
