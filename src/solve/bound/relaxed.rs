//! The relaxed question under one division of the faces: what it comes to at given prices.

use super::choice::{FACES, Table, Writer, homes};
use super::share::Take;
use super::ties::{Tie, all};
use crate::site::Site;
use crate::solve::zoning::Zoning;
use crate::units::Price;
use std::ops::Range;

/// The relaxed question.
pub struct Relaxed {
    table: Table,
    ties: Vec<Tie>,
    /// For each lot of the table, where among the prices those begin that it pays to a tie.
    bonds: Vec<Vec<u32>>,
    /// The same for each tie and its first lot; those of its other lots follow.
    paid: Vec<u32>,
    /// For each tie the faces that its lots can have, as bits.
    may: Vec<Vec<u8>>,
    shares: usize,
    /// Whether some lot can do nothing at all under this division: then no layout keeps to it.
    pub impossible: bool,
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
            paid: Vec::new(),
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
        let mut next = self.shares as u32;
        for mut tie in all(site) {
            // What is left out in every layout has no say.
            if tie.lots.len() == 2 && tie.lots.iter().any(|&l| number(l).is_none()) {
                continue;
            }
            tie.lots.retain(|&l| number(l).is_some());
            let numbers: Vec<usize> = tie.lots.iter().filter_map(|&l| number(l)).collect();
            self.paid.push(next);
            for &n in &numbers {
                self.bonds[n].push(next);
                next += FACES as u32;
            }
            self.may.push(numbers.iter().map(|&n| may[n]).collect());
            self.ties.push(tie);
        }
    }

    /// How many prices there are: of all that is shared, then what lots pay to their ties.
    pub fn prices(&self) -> usize {
        self.shares + self.ties.iter().map(|t| t.lots.len() * FACES).sum::<usize>()
    }

    /// How many of them are of what is shared; these are never under nought.
    pub fn shares(&self) -> usize {
        self.shares
    }

    /// The bound at some prices; and how it would change with each of them: by how much more is taken of what is shared
    /// than there is, and where lots and ties differ.
    pub fn value(&self, prices: &[f64], slopes: &mut [f64]) -> f64 {
        let (shared, ties) = slopes.split_at_mut(self.shares);
        shared.fill(-1.0);
        ties.fill(0.0);
        let mut value = -prices[..self.shares].iter().sum::<f64>();
        for n in 0..self.table.lots.len() {
            value += self.cheapest(n, prices, slopes);
        }
        let mut copy = Vec::new();
        for (t, tie) in self.ties.iter().enumerate() {
            let from = self.paid[t] as usize;
            let (paid, _) = prices[from..from + tie.lots.len() * FACES].as_chunks::<FACES>();
            copy.resize(tie.lots.len(), 0);
            value += tie.least(paid, &self.may[t], &mut copy);
            for (k, face) in copy.iter().enumerate() {
                slopes[from + k * FACES + usize::from(*face)] -= 1.0;
            }
        }
        value
    }

    fn taken(&self, range: &Range<u32>) -> &[Take] {
        &self.table.takes[range.start as usize..range.end as usize]
    }

    fn cheapest(&self, n: usize, prices: &[f64], slopes: &mut [f64]) -> f64 {
        let table = &self.table;
        let priced = |range: &Range<u32>| -> f64 {
            self.taken(range).iter().map(|t| prices[t.share as usize] * t.amount).sum()
        };
        let mut pays = [0.0; FACES];
        for &from in &self.bonds[n] {
            let paid = &prices[from as usize..][..FACES];
            pays.iter_mut().zip(paid).for_each(|(p, q)| *p += q);
        }
        let mut best = (f64::INFINITY, 0, 0);
        for g in table.lots[n].1.clone() {
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
        for take in self.taken(&group.takes).iter().chain(self.taken(&choice.takes)) {
            slopes[take.share as usize] += take.amount;
        }
        for &from in &self.bonds[n] {
            slopes[from as usize + usize::from(choice.face)] += 1.0;
        }
        best.0
    }
}
