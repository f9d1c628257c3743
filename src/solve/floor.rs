//! What a cart costs at the very least, were each thing alone on it: a bound that is cheap and exact, and weak.

use crate::score::{Score, least_price};
use crate::site::{Lot, Site};
use crate::units::Price;

/// No layout that breaks no rule and leaves out no more than what has no home costs less.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Floor {
    /// The value of what has no home.
    pub off_cart: Price,
    /// The sum of the least prices of all other lots; all further costs are not under nought.
    pub cost: Price,
}

impl Floor {
    /// The floor of a site.
    pub fn of(site: &Site) -> Floor {
        let mut floor = Floor { off_cart: Price::ZERO, cost: Price::ZERO };
        for (l, lot) in site.lots.iter().enumerate() {
            match least(site, l, lot) {
                Some(price) => floor.cost += price,
                None => floor.off_cart += lot.off_cart,
            }
        }
        floor
    }

    /// Whether it says anything of a layout of this value.
    pub fn holds_for(&self, score: &Score) -> bool {
        score.broken == 0 && score.off_cart <= self.off_cart.as_us()
    }

    /// Whether nothing can be better than a layout of this value.
    pub fn is_met(&self, score: &Score) -> bool {
        self.holds_for(score) && score.cost <= self.cost.as_us()
    }
}

/// The least that a lot costs in any of its homes; nothing where it has none.
fn least(site: &Site, l: usize, lot: &Lot) -> Option<Price> {
    match &lot.fixed {
        Some((home, _)) => Some(least_price(site, l, home)),
        None => lot.homes.iter().map(|home| least_price(site, l, home)).min(),
    }
}
