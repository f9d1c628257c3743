//! How far the cart is from going over or sliding, case by case, and what would help.

use super::{Amount, Mark};
use crate::units::{Length, Mass};

/// One way of trying to tip or slide the cart.
#[derive(Clone, PartialEq, Debug)]
pub struct Trial {
    /// What is done, in words.
    pub case: String,
    /// The side that it goes over; nothing where it slides.
    pub side: Option<&'static str>,
    /// The angle or force that it takes.
    pub value: Amount,
    /// The least that it should take.
    pub limit: Amount,
    /// Value over limit: under one it does not hold.
    pub margin: f64,
    /// Whether a rule asks for it; else it is only told.
    pub rule: bool,
    /// Where the limit comes from.
    pub source: String,
    /// How the limit was come by.
    pub mark: Mark,
}

/// The heaviest caster in a case that no rule asks for.
#[derive(Clone, PartialEq, Debug)]
pub struct CasterTrial {
    /// What is done, in words.
    pub case: String,
    /// The caster.
    pub at: [Length; 2],
    /// What it carries.
    pub load: Mass,
    /// What it may carry, where the file says so.
    pub rating: Option<Mass>,
}

/// Something that makes the cart harder to tip, tried through the same statics.
#[derive(Clone, PartialEq, Debug)]
pub struct Raise {
    /// What to do.
    pub text: String,
    /// The least margin before and after.
    pub margin: [f64; 2],
}

/// Everything about tipping and sliding.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Stability {
    /// Case by case.
    pub trials: Vec<Trial>,
    /// The worst thing to take away, where there is a heavy one.
    pub casters: Vec<CasterTrial>,
    /// The least margin while the cart is loaded in the order that the plan tells.
    pub loading: Option<Trial>,
    /// What would raise the least margin most, best first.
    pub raise: Vec<Raise>,
    /// What the empty cart does not hold by itself.
    pub empty: Option<Trial>,
    /// Figures that no file states, each with where it comes from.
    pub assumed: Vec<String>,
}

impl Stability {
    /// The tipping case with the least margin.
    pub fn least(&self) -> Option<&Trial> {
        let tips = self.trials.iter().filter(|t| t.side.is_some());
        tips.min_by(|a, b| a.margin.total_cmp(&b.margin))
    }
}
