//! What no layout can cost less than, by this model's prices.
//!
//! The bound is a Lagrangian relaxation. Every lot chooses by itself, the cheapest of: off the cart; in one of its homes,
//! taken by one of the ways with nothing before it; the same with something before it, so deep in. A choice costs what it
//! costs at best (`choice.rs`). What the lots must share is priced instead of being kept (`share.rs`), lengths folded so
//! that what cannot stand side by side is seen (`fold.rs`). What things cost together by their faces is split off with
//! prices of its own (`ties.rs`). For any prices the sum of the cheapest choices less the prices of all that there is
//! never exceeds the cost of a layout that keeps the rules and leaves out no more; `relaxed.rs` climbs to good ones. Where
//! sparks must be kept from what burns, the bound is the least over all divisions of the faces.

mod before;
mod choice;
mod climb;
mod fold;
mod relaxed;
mod rows;
mod share;
mod ties;

use super::zoning::{Zoning, all_zonings};
use crate::site::Site;
use crate::units::Price;
use climb::Climb;
use relaxed::{Dearer, Relaxed};

/// Steps at a time.
const STRETCH: usize = 50;
/// What is taken off against rounding, in microseconds a week: so much for each lot.
const ROUNDING: f64 = 20.0;

/// The lower bound for all layouts that break no rule and whose left-out value is at most `off_cart`; `cost` is the cost of
/// a known one.
pub fn bound(site: &Site, off_cart: Price, cost: Price) -> Price {
    let known = cost.as_us() as f64;
    let zonings = all_zonings(site);
    let (_, least) = climbed(site, &zonings, off_cart, known);
    Price::us((least - rounding(site)).max(0.0).min(known) as i64)
}

/// What is left to be looked at where everything is to be placed and the shelves stand: for each division of the faces
/// the bound, and the homes of each lot with how much dearer each makes any layout.
pub fn left_to_try(site: &Site, cost: Price) -> Vec<(f64, Vec<(usize, Dearer)>)> {
    let known = cost.as_us() as f64;
    let left_out: Price = site.lots.iter().filter(|l| l.homes.is_empty()).map(|l| l.off_cart).sum();
    let zonings = all_zonings(site);
    let (climbs, _) = climbed(site, &zonings, left_out, known);
    let both = climbs.iter().zip(&zonings);
    let left = both.filter(|(climb, _)| climb.best() - rounding(site) < known);
    left.map(|(climb, zoning)| (climb.best() - rounding(site), climb.dearer(site, zoning)))
        .collect()
}

fn rounding(site: &Site) -> f64 {
    1000.0 + ROUNDING * site.lots.len() as f64
}

fn climbed(site: &Site, zonings: &[Zoning], off_cart: Price, known: f64) -> (Vec<Climb>, f64) {
    let foot = |zoning| Climb::new(Relaxed::new(site, zoning, off_cart));
    let mut climbs: Vec<Climb> = zonings.iter().map(foot).collect();
    let least = climb_all(&mut climbs, known);
    (climbs, least)
}

/// Climbs where the bound is lowest, a stretch at a time, until that climb has made all its steps.
fn climb_all(climbs: &mut [Climb], known: f64) -> f64 {
    loop {
        let lowest = climbs.iter_mut().min_by(|a, b| a.best().total_cmp(&b.best()));
        let Some(lowest) = lowest else { return 0.0 };
        if lowest.ended() {
            return lowest.best();
        }
        lowest.go(STRETCH, known);
    }
}
