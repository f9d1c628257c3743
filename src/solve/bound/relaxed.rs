//! The relaxed question under one division of the faces, and the climb to good prices.

use super::choice::{FACES, Table, Writer, homes};
use super::share::Take;
use super::ties::{Tie, all};
use crate::site::Site;
use crate::solve::zoning::Zoning;
use crate::units::Price;

/// The relaxed question.
pub struct Relaxed {
    table: Table,
    ties: Vec<Tie>,
    /// For each lot of the table, the ties it is in and its place in them.
    bonds: Vec<Vec<(u32, u32)>>,
    /// For each tie the faces that its lots can have, as bits.
    may: Vec<Vec<u8>>,
    shares: usize,
    /// Whether some lot can do nothing at all under this division: then no layout keeps to it.
    pub impossible: bool,
}

/// Prices of all that is shared, and what lots pay to their ties.
#[derive(Clone)]
struct Prices {
    shares: Vec<f64>,
    ties: Vec<Vec<[f64; FACES]>>,
}

/// What was found for some prices.
struct Found {
    value: f64,
    used: Vec<f64>,
    ties: Vec<Vec<[f64; FACES]>>,
}

impl Relaxed {
    /// Of a site under a division, for layouts that leave out no more than so much.
    pub fn new(site: &Site, zoning: &Zoning, off_cart: Price) -> Relaxed {
        let mut allowance = off_cart.as_us();
        let housed = |l: &usize| !homes(site, zoning, *l).is_empty();
        for l in (0..site.lots.len()).filter(|l| !housed(l)) {
            // What has no home is left out in every layout of this division.
            allowance -= site.lots[l].off_cart.as_us();
        }
        let mut writer = Writer::new(site, zoning);
        let mut impossible = allowance < 0;
        for l in (0..site.lots.len()).filter(housed) {
            impossible |= !writer.lot(l, allowance);
        }
        let (shares, table) = (writer.shares.count(), writer.table);
        let mut relaxed = Relaxed {
            table,
            ties: Vec::new(),
            bonds: Vec::new(),
            may: Vec::new(),
            shares,
            impossible,
        };
        relaxed.drop_ample();
        relaxed.tie(site);
        relaxed
    }

    /// Forgets what is shared but can never be too little.
    fn drop_ample(&mut self) {
        let mut most = vec![0.0; self.shares];
        for (_, groups) in &self.table.lots {
            let mut own = vec![0.0f64; self.shares];
            for group in &self.table.groups[groups.start as usize..groups.end as usize] {
                let all = &self.table.takes;
                let range = |r: &std::ops::Range<u32>| r.start as usize..r.end as usize;
                let choices = &self.table.choices[range(&group.choices)];
                let takes = choices.iter().flat_map(|c| &all[range(&c.takes)]);
                for take in takes.chain(&all[range(&group.takes)]) {
                    let own = &mut own[take.share as usize];
                    *own = own.max(take.amount);
                }
            }
            most.iter_mut().zip(&own).for_each(|(m, o)| *m += o);
        }
        let mut kept = 0;
        let number: Vec<Option<u32>> = most
            .iter()
            .map(|&m| {
                (m > 1.0).then(|| {
                    kept += 1;
                    kept - 1
                })
            })
            .collect();
        let old = std::mem::take(&mut self.table.takes);
        let mut takes = Vec::with_capacity(old.len());
        let mut keep = |range: &mut std::ops::Range<u32>| {
            let from = takes.len() as u32;
            for take in &old[range.start as usize..range.end as usize] {
                if let Some(share) = number[take.share as usize] {
                    takes.push(Take { share, amount: take.amount });
                }
            }
            *range = from..takes.len() as u32;
        };
        self.table.groups.iter_mut().for_each(|g| keep(&mut g.takes));
        self.table.choices.iter_mut().for_each(|c| keep(&mut c.takes));
        self.table.takes = takes;
        self.shares = kept as usize;
    }

    /// Finds the ties of the lots.
    fn tie(&mut self, site: &Site) {
        let lots = &self.table.lots;
        self.bonds = vec![Vec::new(); lots.len()];
        let number = |l: u32| lots.iter().position(|(lot, _)| *lot == l);
        let may: Vec<u8> = lots
            .iter()
            .map(|(_, groups)| {
                let groups = &self.table.groups[groups.start as usize..groups.end as usize];
                let choices = groups.iter().flat_map(|g| {
                    &self.table.choices[g.choices.start as usize..g.choices.end as usize]
                });
                choices.fold(0, |bits, c| bits | 1 << c.face)
            })
            .collect();
        for mut tie in all(site) {
            // What is left out in every layout has no say.
            if tie.lots.len() == 2 && tie.lots.iter().any(|&l| number(l).is_none()) {
                continue;
            }
            tie.lots.retain(|&l| number(l).is_some());
            let numbers: Vec<usize> = tie.lots.iter().filter_map(|&l| number(l)).collect();
            for (k, &n) in numbers.iter().enumerate() {
                self.bonds[n].push((self.ties.len() as u32, k as u32));
            }
            self.may.push(numbers.iter().map(|&n| may[n]).collect());
            self.ties.push(tie);
        }
    }

    /// The best bound over the prices that the steps come to.
    pub fn best(&self, known: f64, steps: usize) -> f64 {
        if self.impossible {
            return f64::INFINITY;
        }
        let nought =
            || self.ties.iter().map(|t| vec![[0.0; FACES]; t.lots.len()]).collect::<Vec<_>>();
        let mut at = Prices { shares: vec![0.0; self.shares], ties: nought() };
        let mut found = Found { value: 0.0, used: vec![0.0; self.shares], ties: nought() };
        let (mut best, mut eager, mut since) = (0.0f64, 1.0, 0);
        for _ in 0..steps {
            self.value(&at, &mut found);
            if found.value > best * 1.00005 {
                since = 0;
            } else {
                since += 1;
                if since >= 10 {
                    (eager, since) = (eager * 0.7, 0);
                }
            }
            best = best.max(found.value);
            let shares = found.used.iter().zip(&at.shares).map(|(u, p)| slope(*u, *p));
            let ties = found.ties.iter().flatten().flatten().copied();
            let norm: f64 = shares.chain(ties).map(|s| s * s).sum();
            if norm < 1e-12 || known <= found.value {
                return best;
            }
            let step = eager * (known - found.value) / norm;
            for (p, u) in at.shares.iter_mut().zip(&found.used) {
                *p = (*p + step * slope(*u, *p)).max(0.0);
            }
            let paid = at.ties.iter_mut().flatten().flatten();
            for (p, s) in paid.zip(found.ties.iter().flatten().flatten()) {
                *p += step * s;
            }
        }
        best
    }

    /// The bound for these prices, how much of each share the cheapest choices take, and where lots and ties differ.
    fn value(&self, at: &Prices, found: &mut Found) {
        found.used.fill(0.0);
        found.ties.iter_mut().flatten().for_each(|f| f.fill(0.0));
        found.value = -at.shares.iter().sum::<f64>();
        for n in 0..self.table.lots.len() {
            found.value += self.cheapest(n, at, found);
        }
        let mut copy = [0u8; 256];
        for (t, tie) in self.ties.iter().enumerate() {
            let copy = &mut copy[..tie.lots.len()];
            found.value += tie.least(&at.ties[t], &self.may[t], copy);
            for (k, face) in copy.iter().enumerate() {
                found.ties[t][k][usize::from(*face)] -= 1.0;
            }
        }
    }

    fn cheapest(&self, n: usize, at: &Prices, found: &mut Found) -> f64 {
        let table = &self.table;
        let priced = |range: &std::ops::Range<u32>| -> f64 {
            let takes = &table.takes[range.start as usize..range.end as usize];
            takes.iter().map(|t| at.shares[t.share as usize] * t.amount).sum()
        };
        let mut pays = [0.0; FACES];
        for &(t, k) in &self.bonds[n] {
            let paid = &at.ties[t as usize][k as usize];
            pays.iter_mut().zip(paid).for_each(|(p, q)| *p += q);
        }
        let mut best = (f64::INFINITY, 0, 0);
        let (_, groups) = &table.lots[n];
        for g in groups.clone() {
            let group = &table.groups[g as usize];
            let base = priced(&group.takes);
            for c in group.choices.clone() {
                let choice = &table.choices[c as usize];
                let cost = base + choice.cost + pays[usize::from(choice.face)];
                if cost >= best.0 {
                    continue;
                }
                let cost = cost + priced(&choice.takes);
                if cost < best.0 {
                    best = (cost, g, c);
                }
            }
        }
        let (group, choice) = (&table.groups[best.1 as usize], &table.choices[best.2 as usize]);
        for range in [&group.takes, &choice.takes] {
            for take in &table.takes[range.start as usize..range.end as usize] {
                found.used[take.share as usize] += take.amount;
            }
        }
        for &(t, k) in &self.bonds[n] {
            found.ties[t as usize][k as usize][usize::from(choice.face)] += 1.0;
        }
        best.0
    }
}

/// How far a share is overdrawn; nothing where it is unused and free of charge.
fn slope(used: f64, price: f64) -> f64 {
    if used <= 1.0 && price == 0.0 { 0.0 } else { used - 1.0 }
}
