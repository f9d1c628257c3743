//! What things cost together by the faces that they are fetched from: families, companions, jobs.
//!
//! Each tie gets a copy of its lots' choice of a face, and every lot pays a price for each of its faces that the tie gets
//! back for the same one. Where the tie's copy is the lots' own choice, the prices cancel out; so for any prices, the
//! cheapest choices of the lots and the cheapest copies of the ties together cost no more than any layout.

use super::choice::{FACES, OFF};
use crate::site::{Faces, Site};
use crate::units::{Price, Uses};

/// What belongs together.
pub struct Tie {
    /// Its lots.
    pub lots: Vec<u32>,
    kind: Kind,
}

enum Kind {
    /// By the set of their faces.
    Set(Vec<f64>),
    /// By the faces of two.
    Two(Vec<[f64; FACES]>),
}

/// All ties that can cost something.
pub fn all(site: &Site) -> Vec<Tie> {
    let lots_of = |item: u32| -> Vec<u32> {
        (0..site.lots.len())
            .filter(|&l| site.lots[l].item == item as usize)
            .map(|l| l as u32)
            .collect()
    };
    let cost = |price: Price| price.as_us() as f64;
    let mut ties = Vec::new();
    for family in &site.ties.families {
        let lots: Vec<u32> = family.items.iter().flat_map(|&i| lots_of(i)).collect();
        let price = |faces: Faces| {
            let further = faces.sides().count().saturating_sub(1) as i64;
            cost(Uses::per_week(further).cost(site.rates.family))
        };
        ties.push(Tie { lots, kind: Kind::Set(Faces::all().map(price).collect()) });
    }
    for job in &site.ties.jobs {
        // Of an item in several places the nearest serves, unless all of them are fetched: it is left aside.
        let lots = job.items.iter().map(|&i| (i, lots_of(i)));
        let lots = lots.filter(|(i, l)| l.len() == 1 || site.items[*i as usize].take_all);
        let lots: Vec<u32> = lots.flat_map(|(_, l)| l).collect();
        let price = |faces: Faces| cost(job.uses.cost(site.tours.further(faces)));
        ties.push(Tie { lots, kind: Kind::Set(Faces::all().map(price).collect()) });
    }
    for pair in &site.ties.companions {
        let (one, other) = (lots_of(pair.one), lots_of(pair.other));
        if let ([one], [other]) = (one.as_slice(), other.as_slice()) {
            let set =
                |f: usize| Faces::all().nth(if f == OFF { 0 } else { 1 << f }).unwrap_or_default();
            let price = |a, b| cost(pair.uses.cost(site.tours.apart(set(a), set(b))));
            let table = (0..FACES).map(|a| std::array::from_fn(|b| price(a, b))).collect();
            ties.push(Tie { lots: vec![*one, *other], kind: Kind::Two(table) });
        }
    }
    ties.retain(|tie| tie.lots.len() > 1 && tie.kind.most() > 0.0);
    ties
}

impl Kind {
    fn most(&self) -> f64 {
        let all: Vec<f64> = match self {
            Kind::Set(by_set) => by_set.clone(),
            Kind::Two(table) => table.iter().flatten().copied().collect(),
        };
        all.into_iter().fold(0.0, f64::max)
    }
}

impl Tie {
    /// The least that it costs less what its lots pay it, lot by lot and face by face; and which faces it would have.
    ///
    /// `may` tells for each lot the faces that it can have, as bits.
    pub fn least(&self, paid: &[[f64; FACES]], may: &[u8], copy: &mut [u8]) -> f64 {
        match &self.kind {
            Kind::Set(by_set) => least_set(by_set, paid, may, copy),
            Kind::Two(table) => least_two(table, paid, may, copy),
        }
    }
}

fn least_set(by_set: &[f64], paid: &[[f64; FACES]], may: &[u8], copy: &mut [u8]) -> f64 {
    let best_in = |paid: &[f64; FACES], allowed: u8| {
        let faces = (0..FACES).filter(|f| allowed & 1 << f != 0);
        faces.map(|f| (-paid[f], f as u8)).min_by(|a, b| a.0.total_cmp(&b.0))
    };
    let mut best = (f64::INFINITY, 0);
    for (set, price) in by_set.iter().enumerate() {
        let allowed = set as u8 | 1 << OFF;
        let mut sum = *price;
        for (paid, may) in paid.iter().zip(may) {
            sum += best_in(paid, allowed & may).map_or(f64::INFINITY, |b| b.0);
        }
        if sum < best.0 {
            best = (sum, allowed);
        }
    }
    for ((copy, paid), may) in copy.iter_mut().zip(paid).zip(may) {
        *copy = best_in(paid, best.1 & may).map_or(OFF as u8, |b| b.1);
    }
    best.0
}

fn least_two(table: &[[f64; FACES]], paid: &[[f64; FACES]], may: &[u8], copy: &mut [u8]) -> f64 {
    let mut best = f64::INFINITY;
    for a in (0..FACES).filter(|a| may[0] & 1 << a != 0) {
        for b in (0..FACES).filter(|b| may[1] & 1 << b != 0) {
            let sum = table[a][b] - paid[0][a] - paid[1][b];
            if sum < best {
                best = sum;
                copy.copy_from_slice(&[a as u8, b as u8]);
            }
        }
    }
    best
}
