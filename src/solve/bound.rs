//! What no layout can cost less than, by this model's prices.
//!
//! Every lot on the cart costs at least its least price over all its homes, wherever on them; blocking and balance cost
//! at least nothing. A layout whose left-out value is no greater than `off_cart` leaves out at most so much: the bound
//! drops the least prices that could be saved that way, by the fractional knapsack, which never underrates the saving.

use crate::score::COSTS;
use crate::site::{Home, Site};
use crate::units::Price;

/// The lower bound for all layouts whose left-out value is at most `off_cart`.
pub fn bound(site: &Site, off_cart: Price) -> Price {
    let mut lots: Vec<(Price, Price)> = (0..site.lots.len())
        .filter(|&l| !homes(site, l).is_empty())
        .map(|l| (least(site, l), site.lots[l].off_cart))
        .collect();
    let all: Price = lots.iter().map(|l| l.0).sum();
    // Left out anyhow: what has no home at all.
    let homeless: Price = (0..site.lots.len())
        .filter(|&l| homes(site, l).is_empty())
        .map(|l| site.lots[l].off_cart)
        .sum();
    let mut allowance = (off_cart - homeless).max(Price::ZERO).as_us() as f64;
    lots.sort_by(|a, b| {
        let left = i128::from(b.0.as_us()) * i128::from(a.1.as_us());
        let right = i128::from(a.0.as_us()) * i128::from(b.1.as_us());
        left.cmp(&right)
    });
    let mut saved = 0.0;
    for (least, value) in lots {
        let (least, value) = (least.as_us() as f64, value.as_us().max(1) as f64);
        let part = (allowance / value).min(1.0);
        saved += least * part;
        allowance -= value * part;
        if allowance <= 0.0 {
            break;
        }
    }
    (all - Price::us(libm::ceil(saved) as i64)).max(Price::ZERO)
}

fn homes(site: &Site, lot: usize) -> Vec<Home> {
    match &site.lots[lot].fixed {
        Some((home, _)) => vec![*home],
        None => site.lots[lot].homes.clone(),
    }
}

fn least(site: &Site, lot: usize) -> Price {
    let sum = |home: &Home| COSTS.iter().map(|c| (c.least)(site, lot, home)).sum::<Price>();
    homes(site, lot).iter().map(sum).min().unwrap_or(Price::ZERO)
}
