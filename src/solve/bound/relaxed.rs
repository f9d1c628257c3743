//! The relaxed question under one division of the faces: what it comes to at given prices.

use super::choice::{FACES, Group, Table, Writer, homes};
use super::rows::{Bay, bays};
use super::share::Take;
use super::ties::{Tie, all};
use crate::site::{Home, Site};
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
    /// The space of each surface.
    spaces: Vec<usize>,
    /// The bays whose shelves may be moved.
    bays: Vec<Bay>,
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
            spaces: site.surfaces.iter().map(|s| s.space).collect(),
            bays: bays(site),
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

    /// How many prices there are: of all that is shared, what lots pay to their ties, and the price of each lot.
    pub fn prices(&self) -> usize {
        self.lot_prices() + self.table.lots.len()
    }

    /// Where the prices of the lots begin.
    fn lot_prices(&self) -> usize {
        self.shares + self.ties.iter().map(|t| t.lots.len() * FACES).sum::<usize>()
    }

    /// Whether anything is gained by parting the choices by bays.
    pub fn parts(&self) -> bool {
        !self.bays.is_empty()
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
        value + self.tied(prices, slopes)
    }

    /// What the ties come to.
    fn tied(&self, prices: &[f64], slopes: &mut [f64]) -> f64 {
        let mut value = 0.0;
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

    fn priced(&self, range: &Range<u32>, prices: &[f64]) -> f64 {
        self.taken(range).iter().map(|t| prices[t.share as usize] * t.amount).sum()
    }

    /// What a lot pays to its ties, face by face.
    fn pays(&self, n: usize, prices: &[f64]) -> [f64; FACES] {
        let mut pays = [0.0; FACES];
        for &from in &self.bonds[n] {
            let paid = &prices[from as usize..][..FACES];
            pays.iter_mut().zip(paid).for_each(|(p, q)| *p += q);
        }
        pays
    }

    /// The cheapest choice of a group where it costs less than so much.
    fn cheapest_of(
        &self,
        group: &Group,
        prices: &[f64],
        pays: &[f64; FACES],
        most: f64,
    ) -> Option<(f64, u32)> {
        let base = self.priced(&group.takes, prices);
        let mut best = (most, None);
        for c in group.choices.clone() {
            let choice = &self.table.choices[c as usize];
            let cost = base + choice.cost + pays[usize::from(choice.face)];
            if cost >= best.0 {
                continue;
            }
            let cost = cost + self.priced(&choice.takes, prices);
            if cost < best.0 {
                best = (cost, Some(c));
            }
        }
        Some((best.0, best.1?))
    }

    /// The cheapest choice of a lot, and what it takes.
    fn cheapest(&self, n: usize, prices: &[f64], slopes: &mut [f64]) -> f64 {
        let pays = self.pays(n, prices);
        let mut best = (f64::INFINITY, 0, 0);
        for g in self.table.lots[n].1.clone() {
            let group = &self.table.groups[g as usize];
            if let Some((cost, c)) = self.cheapest_of(group, prices, &pays, best.0) {
                best = (cost, g, c);
            }
        }
        self.note(n, best.1, best.2, slopes);
        best.0
    }

    /// Notes what a choice takes.
    fn note(&self, n: usize, g: u32, c: u32, slopes: &mut [f64]) {
        let (group, choice) = (&self.table.groups[g as usize], &self.table.choices[c as usize]);
        for take in self.taken(&group.takes).iter().chain(self.taken(&choice.takes)) {
            slopes[take.share as usize] += take.amount;
        }
        for &from in &self.bonds[n] {
            slopes[from as usize + usize::from(choice.face)] += 1.0;
        }
    }
}

/// Homes with how much dearer each is at least than the cheapest choice of its lot.
pub type Dearer = Vec<(Home, f64)>;

impl Relaxed {
    /// The lots, each with its homes and how much dearer each of them makes any layout, at some prices.
    pub fn dearer(&self, site: &Site, zoning: &Zoning, prices: &[f64]) -> Vec<(usize, Dearer)> {
        let one = |n: usize| {
            let (lot, groups) = &self.table.lots[n];
            let pays = self.pays(n, prices);
            let cheapest = |g: u32| {
                let group = &self.table.groups[g as usize];
                let (cost, _) = self.cheapest_of(group, prices, &pays, f64::INFINITY)?;
                Some((group, cost))
            };
            let all: Vec<(&Group, f64)> = groups.clone().filter_map(cheapest).collect();
            let least = all.iter().map(|(_, cost)| *cost).fold(f64::INFINITY, f64::min);
            let homes = homes(site, zoning, *lot as usize);
            let of = |home: Home| {
                let here = |g: &Group| g.surface == Some(home.surface) && g.form == home.form;
                let cost = all.iter().find(|(g, _)| here(g))?.1;
                Some((home, cost - least))
            };
            (*lot as usize, homes.into_iter().filter_map(of).collect())
        };
        (0..self.table.lots.len()).map(one).collect()
    }
}

/// A choice that is worth taking at the price of its lot.
struct Offer {
    lot: u32,
    group: u32,
    choice: u32,
    /// What it costs less that price: under nought.
    worth: f64,
}

/// The question parted by bays.
impl Relaxed {
    /// Sets the price of each lot to what its cheapest choice costs at the other prices: the parted bound is then no
    /// less than the whole one.
    pub fn price_lots(&self, prices: &mut [f64]) {
        let (from, mut slopes) = (self.lot_prices(), vec![0.0; self.prices()]);
        for n in 0..self.table.lots.len() {
            prices[from + n] = self.cheapest(n, prices, &mut slopes);
        }
    }

    /// The bound at some prices where every bay takes what it wants for the price of each lot; and its slopes.
    pub fn parted(&self, prices: &[f64], slopes: &mut [f64]) -> f64 {
        let from = self.lot_prices();
        slopes[..self.shares].fill(-1.0);
        slopes[self.shares..from].fill(0.0);
        slopes[from..].fill(1.0);
        let mut value =
            prices[from..].iter().sum::<f64>() - prices[..self.shares].iter().sum::<f64>();
        let mut wanted: Vec<Vec<Offer>> = self.bays.iter().map(|_| Vec::new()).collect();
        for n in 0..self.table.lots.len() {
            value += self.taken_by_others(n, prices, slopes, &mut wanted);
        }
        for (bay, offers) in self.bays.iter().zip(&wanted) {
            value += self.taken_by(bay, offers, slopes);
        }
        value + self.tied(prices, slopes)
    }

    /// What a lot is worth to the spaces whose shelves do not move; the offers for the others are noted.
    fn taken_by_others(
        &self,
        n: usize,
        prices: &[f64],
        slopes: &mut [f64],
        wanted: &mut [Vec<Offer>],
    ) -> f64 {
        let (pays, price) = (self.pays(n, prices), prices[self.lot_prices() + n]);
        let mut value = 0.0;
        let mut best: Option<(Option<usize>, Offer)> = None;
        for g in self.table.lots[n].1.clone() {
            let group = &self.table.groups[g as usize];
            let Some((cost, choice)) = self.cheapest_of(group, prices, &pays, price) else {
                continue;
            };
            let offer = Offer { lot: n as u32, group: g, choice, worth: cost - price };
            let space = group.surface.map(|s| self.spaces[s as usize]);
            let moving = self.bays.iter().position(|bay| {
                let decks = bay.decks.iter().any(|d| group.surface == Some(d.surface as u32));
                space == Some(bay.space) && decks
            });
            if let Some(bay) = moving {
                wanted[bay].push(offer);
                continue;
            }
            match &mut best {
                Some((here, least)) if *here == space => {
                    if offer.worth < least.worth {
                        *least = offer;
                    }
                }
                _ => {
                    let before = best.replace((space, offer));
                    value += before.map_or(0.0, |(_, offer)| self.take(&offer, slopes));
                }
            }
        }
        value + best.map_or(0.0, |(_, offer)| self.take(&offer, slopes))
    }

    fn take(&self, offer: &Offer, slopes: &mut [f64]) -> f64 {
        self.note(offer.lot as usize, offer.group, offer.choice, slopes);
        slopes[self.lot_prices() + offer.lot as usize] -= 1.0;
        offer.worth
    }

    /// What a bay takes with its shelves where that is worth most.
    fn taken_by(&self, bay: &Bay, offers: &[Offer], slopes: &mut [f64]) -> f64 {
        // For each deck, level and free height: what all lots are worth there.
        let worth: Vec<Vec<f64>> =
            bay.decks.iter().map(|deck| self.worth_on(deck, offers)).collect();
        let value = |setting: &Vec<[usize; 2]>| -> f64 {
            let cells = setting.iter().zip(&bay.decks).zip(&worth);
            cells.map(|(([level, room], deck), worth)| worth[level * deck.rooms.len() + room]).sum()
        };
        let mut best: Option<(f64, &Vec<[usize; 2]>)> = None;
        for setting in &bay.settings {
            let value = value(setting);
            if best.is_none_or(|b| value < b.0) {
                best = Some((value, setting));
            }
        }
        let Some((_, setting)) = best else { return 0.0 };
        let mut value = 0.0;
        for (&[level, room], deck) in setting.iter().zip(&bay.decks) {
            for some in offers.chunk_by(|a, b| a.lot == b.lot) {
                let here = some.iter().filter(|o| {
                    let group = &self.table.groups[o.group as usize];
                    group.surface == Some(deck.surface as u32)
                        && group.level as usize == level
                        && group.tall <= deck.rooms[room]
                });
                let least = here.min_by(|a, b| a.worth.total_cmp(&b.worth));
                value += least.map_or(0.0, |offer| self.take(offer, slopes));
            }
        }
        value
    }

    fn worth_on(&self, deck: &super::rows::Deck, offers: &[Offer]) -> Vec<f64> {
        let rooms = deck.rooms.len();
        let mut all = vec![0.0; deck.levels * rooms];
        let mut own: Vec<f64> = all.clone();
        for some in offers.chunk_by(|a, b| a.lot == b.lot) {
            for offer in some {
                let group = &self.table.groups[offer.group as usize];
                if group.surface != Some(deck.surface as u32) {
                    continue;
                }
                let row = &mut own[group.level as usize * rooms..][..rooms];
                for (room, cell) in deck.rooms.iter().zip(row) {
                    if group.tall <= *room {
                        *cell = f64::min(*cell, offer.worth);
                    }
                }
            }
            for (all, own) in all.iter_mut().zip(&mut own) {
                *all += std::mem::take(own);
            }
        }
        all
    }
}
