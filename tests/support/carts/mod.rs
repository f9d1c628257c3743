//! Carts drawn at random from a seed: valid, of all shapes, the same for the same seed.
//!
//! [`cart`] makes odd little worlds that try every rule of the model; [`packed`] makes a full cart of plain bays;
//! [`workshop`] makes one with everything that a workshop has; [`sections`] makes a cart as long as asked of sections
//! alike, to see how effort grows with its length.

mod box_work;
mod full;
mod shop;
mod things;
mod workshop;

pub use box_work::empty;
pub use full::{packed, sections};
pub use shop::plain as plain_shop;
pub use things::plain;
pub use workshop::{Fill, workshop};

use rand::rngs::Xoshiro256PlusPlus;
use rand::{RngExt, SeedableRng};
use toolberth::domain::Workspace;
use toolberth::units::Length;

/// How many things there are to be placed.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Size {
    /// Three to eight.
    Small,
    /// Ten to twenty.
    Middle,
    /// Thirty to sixty.
    Large,
}

impl Size {
    fn names(self) -> std::ops::RangeInclusive<u32> {
        match self {
            Size::Small => 3..=8,
            Size::Middle => 10..=20,
            Size::Large => 30..=60,
        }
    }
}

/// A valid workspace of any shape.
pub fn cart(seed: u64, size: Size) -> Workspace {
    let mut dice = Dice::new(seed);
    let carcass = box_work::carcass(&mut dice);
    let items = things::items(&mut dice, &carcass, size.names());
    let shop = shop::shop(&mut dice, &carcass, &items);
    Workspace { carcass, items, shop, layout: None }
}

/// Draws from one stream of random numbers.
pub struct Dice(Xoshiro256PlusPlus);

impl Dice {
    /// A stream of its own for each seed.
    pub fn new(seed: u64) -> Dice {
        Dice(Xoshiro256PlusPlus::seed_from_u64(seed))
    }
    /// A whole number within bounds, both included; the lower one where they cross.
    pub fn whole(&mut self, low: i64, high: i64) -> i64 {
        if high <= low { low } else { self.0.random_range(low..=high) }
    }
    /// Yes in so many cases of a hundred.
    pub fn luck(&mut self, percent: u32) -> bool {
        self.0.random_range(0..100) < percent
    }
    /// A number within bounds.
    pub fn real(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.0.random::<f64>()
    }
    /// A whole number of millimetres within bounds.
    pub fn mm(&mut self, low: i64, high: i64) -> Length {
        Length::mm(self.whole(low, high))
    }
    /// One of several.
    pub fn one<T: Clone>(&mut self, of: &[T]) -> T {
        of[self.0.random_range(0..of.len())].clone()
    }
    /// A number whose logarithm is evenly spread.
    pub fn spread(&mut self, low: f64, high: f64) -> f64 {
        low * (high / low).powf(self.real(0.0, 1.0))
    }
    /// A value in so many cases of a hundred.
    pub fn perhaps<T>(&mut self, percent: u32, make: impl FnOnce(&mut Dice) -> T) -> Option<T> {
        self.luck(percent).then(|| make(self))
    }
}
