//! The worst of each kind: what a maker looks at before loading the cart.

use crate::physics::leaning::GRAVITY;
pub use crate::physics::source::Mark;
use crate::units::{Length, Mass};

/// The mass that weighs so many newtons, as a luggage scale shows it.
pub fn weighing(newtons: f64) -> Mass {
    Mass::from_kg(newtons / GRAVITY)
}

/// A figure with its unit.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Amount {
    /// A mass.
    Mass(Mass),
    /// A length.
    Length(Length),
    /// An angle in degrees.
    Degrees(f64),
    /// A force in newtons.
    Force(f64),
    /// A moment in newton metres.
    Moment(f64),
    /// A stress in newtons a square millimetre.
    Stress(f64),
    /// A number without a unit.
    Bare(f64),
}

/// What a figure may come to.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Limit {
    /// So much or less.
    AtMost(Amount),
    /// So much or more.
    AtLeast(Amount),
    /// No limit is known.
    Unknown,
}

/// The worst figure of one kind over everything on the cart and every case that is looked at.
#[derive(Clone, PartialEq, Debug)]
pub struct Extreme {
    /// What kind: `least tip margin`, `heaviest caster`, …
    pub kind: &'static str,
    /// How bad it gets.
    pub value: Amount,
    /// Where and when, in words.
    pub case: String,
    /// What it may come to.
    pub limit: Limit,
    /// Where the limit comes from.
    pub source: String,
    /// How the limit was come by.
    pub mark: Mark,
}
