//! Which faces may hold sparks and heat.
//!
//! Single moves cannot carry a whole family of hazards across to another face through states that break no rule, so the
//! few ways of dividing the faces are enumerated, and each run of the search keeps to one of them.

use crate::score::least_price;
use crate::site::{FIRE, FUEL, Home, Lot, Site};
use crate::units::Price;
use std::ops::Range;

/// Most divisions that are tried.
const MOST: usize = 12;

/// The homes that each lot may use, under one division of the faces.
#[derive(Clone, Debug)]
pub struct Zoning {
    /// For each lot, its allowed homes, surface by surface.
    pub homes: Vec<Vec<Home>>,
    /// For each lot and surface, from where to where its homes there are in that list.
    ranges: Vec<[u32; 2]>,
    surfaces: usize,
    /// For each lot, how many homes all lots before it have.
    first: Vec<usize>,
    /// For each lot, its homes as places in that list, the one of least price first.
    cheap: Vec<Vec<u32>>,
    /// For each lot, the least prices of its homes.
    least: Vec<Vec<Price>>,
}

impl Zoning {
    /// No division: every home is allowed.
    pub fn none(site: &Site) -> Zoning {
        Zoning::of(site, site.lots.iter().map(|l| l.homes.clone()).collect())
    }

    fn of(site: &Site, homes: Vec<Vec<Home>>) -> Zoning {
        let surfaces = site.surfaces.len();
        let least = |(lot, all): (usize, &Vec<Home>)| {
            all.iter().map(|home| least_price(site, lot, home)).collect()
        };
        let least: Vec<Vec<Price>> = homes.iter().enumerate().map(least).collect();
        let cheap = least.iter().map(|all| by_price(all)).collect();
        let mut ranges = Vec::with_capacity(homes.len() * surfaces);
        for all in &homes {
            for s in 0..surfaces as u32 {
                let from = all.partition_point(|h| h.surface < s) as u32;
                let to = all.partition_point(|h| h.surface <= s) as u32;
                ranges.push([from, to]);
            }
        }
        let mut first = Vec::with_capacity(homes.len());
        let mut before = 0;
        for all in &homes {
            first.push(before);
            before += all.len();
        }
        Zoning { homes, ranges, surfaces, first, cheap, least }
    }

    /// The number of a lot's n-th home among all homes of all lots.
    #[inline]
    pub fn number(&self, lot: usize, n: usize) -> usize {
        self.first[lot] + n
    }

    /// A lot's homes, as places in the list of all that it has, the one of least price first.
    #[inline]
    pub fn by_price(&self, lot: usize) -> &[u32] {
        &self.cheap[lot]
    }

    /// What a lot's n-th home costs at least.
    #[inline]
    pub fn least(&self, lot: usize, n: usize) -> Price {
        self.least[lot][n]
    }

    /// How many homes all lots have.
    pub fn count(&self) -> usize {
        self.homes.iter().map(Vec::len).sum()
    }

    /// The homes of a lot on one surface.
    #[inline]
    pub fn on_surface(&self, lot: usize, surface: u32) -> &[Home] {
        &self.homes[lot][self.there(lot, surface)]
    }

    /// Which of a lot's homes are on one surface.
    #[inline]
    pub fn there(&self, lot: usize, surface: u32) -> Range<usize> {
        let [from, to] = self.ranges[lot * self.surfaces + surface as usize];
        from as usize..to as usize
    }
}

fn by_price(least: &[Price]) -> Vec<u32> {
    let mut all: Vec<u32> = (0..least.len() as u32).collect();
    all.sort_by_key(|&n| (least[n as usize], n));
    all
}

/// Fire, fuel, both or neither.
fn side(lot: &Lot) -> Option<bool> {
    match (lot.hazards.meets(FIRE), lot.hazards.meets(FUEL)) {
        (true, false) => Some(true),
        (false, true) => Some(false),
        _ => None,
    }
}

/// The divisions worth trying, under which everything that has a home keeps one, the most promising first; never empty.
pub fn zonings(site: &Site) -> Vec<Zoning> {
    let mut all = all_zonings(site);
    all.retain(|zoning| {
        site.lots.iter().zip(&zoning.homes).all(|(lot, h)| lot.homes.is_empty() == h.is_empty())
    });
    all.truncate(MOST);
    if all.is_empty() {
        all.push(Zoning::none(site));
    }
    all
}

/// All divisions of the faces, those too under which something must be left out, by the least prices of what they
/// concern; never empty. Every layout that keeps sparks from what burns is a layout of one of them.
pub fn all_zonings(site: &Site) -> Vec<Zoning> {
    let sides: Vec<Option<bool>> = site.lots.iter().map(side).collect();
    if !sides.contains(&Some(true)) || !sides.contains(&Some(false)) {
        return vec![Zoning::none(site)];
    }
    let mut all: Vec<(Price, u8, Zoning)> = Vec::new();
    for fire in 0..1u8 << 6 {
        let (price, zoning) = divide(site, &sides, fire);
        if !all.iter().any(|(_, _, z)| z.homes == zoning.homes) {
            all.push((price, fire, zoning));
        }
    }
    all.sort_by_key(|(price, fire, _)| (*price, *fire));
    all.into_iter().map(|(_, _, z)| z).collect()
}

/// One division with the sum of the least prices of the lots that it concerns, as far as they keep a home.
fn divide(site: &Site, sides: &[Option<bool>], fire: u8) -> (Price, Zoning) {
    let mut homes: Vec<Vec<Home>> = site.lots.iter().map(|l| l.homes.clone()).collect();
    let mut total = Price::ZERO;
    for (lot, side) in sides.iter().enumerate() {
        let Some(is_fire) = *side else { continue };
        let allowed = |h: &Home| {
            let z = site.faces(h.surface as usize);
            if is_fire { z & !fire == 0 } else { z & fire == 0 }
        };
        homes[lot].retain(allowed);
        let least = homes[lot].iter().map(|h| least_price(site, lot, h)).min();
        total += least.unwrap_or(Price::ZERO);
    }
    (total, Zoning::of(site, homes))
}
