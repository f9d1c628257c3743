//! What no layout can cost less than, by this model's prices.
//!
//! The bound is a Lagrangian relaxation. Every lot chooses by itself, the cheapest of: off the cart; in one of its homes,
//! taken by one of the ways with nothing before it; the same with something before it. A choice costs what the place
//! costs at best, wherever on the surface, and for something before it at least the cheapest handling of any other lot.
//! What the lots must share is priced by multipliers instead of being kept:
//!
//! - the area of each surface: things on one surface have disjoint footprints on it;
//! - the length of each deck of a bay, way by way: of two things on one deck with overlapping lengths the one in front
//!   is in the other's way, so those with nothing before them have disjoint lengths;
//! - the volume of each space, and what each surface carries;
//! - what may be left out: no more than the layout that is to be beaten leaves out.
//!
//! For any multipliers that are not negative, the sum of the cheapest choices less multipliers times what there is never
//! exceeds the cost of a layout that keeps the rules and leaves out no more; subgradient steps look for good ones
//! (Held, Wolfe and Crowder 1974, from memory). Where sparks must be kept from what burns, the bound is the least over all
//! divisions of the faces. Balance and all further terms are bounded by nought.

use super::zoning::{Zoning, all_zonings};
use crate::score::way_prices;
use crate::site::{Home, Kind, Place, Site, SpaceKind, best_spots};
use crate::units::{Price, Time};

/// Steps that look for good multipliers.
const STEPS: usize = 160;
/// What is taken off against rounding, in microseconds a week.
const ROUNDING: f64 = 1000.0;

/// One thing that a lot can do.
struct Choice {
    /// What it costs at least.
    cost: f64,
    /// What it takes of what is shared: resource and amount, as a share of what there is.
    takes: Vec<(u32, f64)>,
}

/// The lower bound for all layouts that break no rule and whose left-out value is at most `off_cart`; `cost` is the cost of
/// a known one.
pub fn bound(site: &Site, off_cart: Price, cost: Price) -> Price {
    let least = all_zonings(site)
        .iter()
        .map(|zoning| Relaxed::new(site, zoning, off_cart).best(cost.as_us() as f64))
        .fold(f64::INFINITY, f64::min);
    let least = (least - ROUNDING).max(0.0).min(cost.as_us() as f64);
    Price::us(least as i64)
}

/// Which resources there are, as ranges of indices: areas, lengths (two ways a surface), volumes, loads, and left-out value.
struct Resources {
    surfaces: usize,
    spaces: usize,
}

impl Resources {
    fn area(&self, s: usize) -> u32 {
        s as u32
    }
    fn length(&self, s: usize, way: usize) -> u32 {
        (self.surfaces * (1 + way) + s) as u32
    }
    fn load(&self, s: usize) -> u32 {
        (self.surfaces * 3 + s) as u32
    }
    fn volume(&self, space: usize) -> u32 {
        (self.surfaces * 4 + space) as u32
    }
    fn left_out(&self) -> u32 {
        (self.surfaces * 4 + self.spaces) as u32
    }
    fn count(&self) -> usize {
        self.surfaces * 4 + self.spaces + 1
    }
}

/// The relaxed question under one division of the faces.
struct Relaxed {
    lots: Vec<Vec<Choice>>,
    resources: usize,
    /// Whether some lot can do nothing at all under this division: then no layout keeps to it.
    impossible: bool,
}

impl Relaxed {
    fn new(site: &Site, zoning: &Zoning, off_cart: Price) -> Relaxed {
        let resources = Resources { surfaces: site.surfaces.len(), spaces: site.spaces.len() };
        let mut allowance = off_cart.as_us();
        for l in (0..site.lots.len()).filter(|&l| homes(site, zoning, l).is_empty()) {
            // What has no home is left out in every layout of this division.
            allowance -= site.lots[l].off_cart.as_us();
        }
        let lots = (0..site.lots.len())
            .filter(|&l| !homes(site, zoning, l).is_empty())
            .map(|l| choices(site, zoning, l, &resources, allowance))
            .collect::<Vec<_>>();
        let impossible = allowance < 0 || lots.iter().any(Vec::is_empty);
        Relaxed { lots, resources: resources.count(), impossible }
    }

    /// The best bound over the multipliers that the steps come to.
    fn best(&self, known: f64) -> f64 {
        if self.impossible {
            return f64::INFINITY;
        }
        let mut price = vec![0.0; self.resources];
        let mut used = vec![0.0; self.resources];
        let (mut best, mut eager, mut since) = (0.0f64, 1.0, 0);
        for _ in 0..STEPS {
            let value = self.value(&price, &mut used);
            if value > best * 1.0001 {
                (best, since) = (value, 0);
            } else {
                since += 1;
                if since >= 8 {
                    (eager, since) = (eager * 0.6, 0);
                }
            }
            let norm: f64 =
                used.iter().zip(&price).map(|(u, p)| slope(*u, *p)).map(|s| s * s).sum();
            if norm < 1e-12 || known <= value {
                return best.max(value);
            }
            let step = eager * (known - value) / norm;
            for (p, u) in price.iter_mut().zip(&used) {
                *p = (*p + step * slope(*u, *p)).max(0.0);
            }
        }
        best
    }

    /// The bound for these multipliers, and how much of each resource the cheapest choices take.
    fn value(&self, price: &[f64], used: &mut [f64]) -> f64 {
        used.fill(0.0);
        let mut value = -price.iter().sum::<f64>();
        for choices in &self.lots {
            let mut best = (f64::INFINITY, 0);
            for (k, choice) in choices.iter().enumerate() {
                let shared: f64 = choice.takes.iter().map(|&(r, a)| price[r as usize] * a).sum();
                if choice.cost + shared < best.0 {
                    best = (choice.cost + shared, k);
                }
            }
            value += best.0;
            for &(r, a) in &choices[best.1].takes {
                used[r as usize] += a;
            }
        }
        value
    }
}

/// How far a resource is overdrawn; nothing where it is unused and free of charge.
fn slope(used: f64, price: f64) -> f64 {
    if used <= 1.0 && price == 0.0 { 0.0 } else { used - 1.0 }
}

fn homes(site: &Site, zoning: &Zoning, lot: usize) -> Vec<Home> {
    match &site.lots[lot].fixed {
        Some((home, _)) => vec![*home],
        None => zoning.homes[lot].clone(),
    }
}

fn choices(
    site: &Site,
    zoning: &Zoning,
    l: usize,
    resources: &Resources,
    allowance: i64,
) -> Vec<Choice> {
    let mut all = Vec::new();
    let value = site.lots[l].off_cart.as_us();
    if value <= allowance && site.lots[l].fixed.is_none() {
        let part = value as f64 / allowance.max(1) as f64;
        all.push(Choice { cost: 0.0, takes: vec![(resources.left_out(), part)] });
    }
    for home in homes(site, zoning, l) {
        for (way, each) in least_by_way(site, l, &home).into_iter().enumerate() {
            if let Some(each) = each {
                place_choices(site, l, &home, way, each, resources, &mut all);
            }
        }
    }
    all
}

/// In a home by a way: with nothing before it, and where things can stand before it, with something.
fn place_choices(
    site: &Site,
    l: usize,
    home: &Home,
    way: usize,
    each: Time,
    resources: &Resources,
    all: &mut Vec<Choice>,
) {
    let (lot, s) = (&site.lots[l], home.surface as usize);
    let surface = &site.surfaces[s];
    let space = &site.spaces[surface.space];
    let cost = lot.uses.cost(each).as_us() as f64;
    let mut takes = vec![(resources.area(s), home.area as f64 / surface.area as f64)];
    if let Some(limit) = surface.limit {
        let limit = limit.as_ng().max(1) as f64;
        takes.push((resources.load(s), lot.mass.as_ng() as f64 / limit));
    }
    if space.kind == SpaceKind::Bay {
        let volume = |e: [crate::units::Length; 3]| e.iter().map(|l| l.as_mm()).product::<f64>();
        let there = [0, 1, 2].map(|a| space.volume.extent(a));
        takes.push((resources.volume(surface.space), volume(home.extents) / volume(there)));
    }
    // What is lifted out of the top passes over its neighbours.
    let level = space.ways[way].axis() < 2;
    let deck = space.kind == SpaceKind::Bay && surface.kind == Kind::Deck && level;
    if !deck || !lot.is_fetched(&site.items) {
        all.push(Choice { cost, takes });
        return;
    }
    let aside = cheapest_aside(site, l);
    all.push(Choice { cost: cost + lot.uses.cost(aside).as_us() as f64, takes: takes.clone() });
    // Seen along the way, the deck is as long as its free box across it.
    let across = if space.ways[way].axis() == 0 { 1 } else { 0 };
    let length = home.extents[across].as_mm() / surface.free.extent(across).as_mm();
    takes.push((resources.length(s, way), length));
    all.push(Choice { cost, takes });
}

fn cheapest_aside(site: &Site, l: usize) -> Time {
    let others = (0..site.lots.len()).filter(|&o| o != l);
    others.map(|o| site.lots[o].aside).min().unwrap_or(Time::ZERO)
}

/// The least time of a fetch by each way out of a home, wherever on the surface.
fn least_by_way(site: &Site, l: usize, home: &Home) -> [Option<Time>; 2] {
    let mut least: [Option<Time>; 2] = [None; 2];
    for space in best_spots(site, home) {
        for (way, each) in way_prices(site, l, &Place { home: *home, space }) {
            let best = least[way].map_or(each, |t| t.min(each));
            least[way] = Some(best);
        }
    }
    least
}
