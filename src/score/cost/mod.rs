//! The costs, one file each, and the only list of them.

mod access;
mod balance;
mod blocked;
mod family;
mod jobs;
mod reach;
mod reserve;
mod sight;
mod together;
mod wish;

use super::{Scope, View};
use crate::site::{Home, Site};
use crate::units::Price;

/// Something that a layout costs, in seconds a week.
pub trait Cost {
    /// Its name, in every report.
    const NAME: &'static str;
    /// Whose cost it is.
    const SCOPE: Scope;
    /// What is measured.
    type Fact;
    /// Measures the subject; nothing where it is off the cart.
    fn measure(view: &View) -> Option<Self::Fact>;
    /// What that costs.
    fn price(view: &View, fact: &Self::Fact) -> Price;
    /// The same in words.
    fn tell(view: &View, fact: &Self::Fact) -> String;
    /// What it cannot cost less than with a lot on a surface, wherever on it.
    fn least(_: &Site, _lot: usize, _home: &Home) -> Price {
        Price::ZERO
    }
}

/// A row of the table of costs.
pub struct CostCard {
    /// Its name.
    pub name: &'static str,
    /// Whose cost it is.
    pub scope: Scope,
    /// What the subject costs.
    pub weigh: fn(&View) -> Price,
    /// Why.
    pub tell: fn(&View) -> String,
    /// What it cannot cost less than.
    pub least: fn(&Site, usize, &Home) -> Price,
}

const fn card<C: Cost>() -> CostCard {
    CostCard {
        name: C::NAME,
        scope: C::SCOPE,
        weigh: |v| C::measure(v).map_or(Price::ZERO, |fact| C::price(v, &fact)),
        tell: |v| C::measure(v).map_or_else(String::new, |fact| C::tell(v, &fact)),
        least: C::least,
    }
}

/// Every cost, in the order in which they are told.
pub const COSTS: &[CostCard] = &[
    card::<access::Access>(),
    card::<reach::Reach>(),
    card::<blocked::Blocked>(),
    card::<balance::Balance>(),
    card::<together::Together>(),
    card::<jobs::Jobs>(),
    card::<family::Family>(),
    card::<sight::Sight>(),
    card::<reserve::Reserve>(),
    card::<wish::Wish>(),
];
