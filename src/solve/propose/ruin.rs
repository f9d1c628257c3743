//! Taking a few things out that stand together, and putting each back where it costs least.

use super::{Mover, sort_roughly};
use crate::score::way_prices;
use crate::site::{Board, Home, Place, Space, Touched, for_each_corner};
use crate::solve::zoning::Zoning;
use crate::units::Price;
use rand::RngExt;
use rand::rngs::Xoshiro256PlusPlus;

/// Most things that are taken out besides the first.
const MOST: u32 = 5;
/// One place in so many is passed over, so that the same things do not always go back to the same places.
const BLINK: u32 = 8;

impl Mover {
    /// Takes out a thing and a few of a space where it could be, and puts them back one after the other.
    pub(super) fn ruin(
        &mut self,
        board: &mut Board,
        zoning: &Zoning,
        lot: usize,
        rng: &mut Xoshiro256PlusPlus,
        touched: &mut Touched,
    ) -> bool {
        let site = board.site();
        let home = zoning.homes[lot][super::cheap_home(zoning, lot, rng)];
        let space = site.surfaces[home.surface as usize].space;
        let mut out = vec![lot];
        let mut others: Vec<usize> = board.members(space).iter().map(|&m| m as usize).collect();
        others.retain(|&m| m != lot && site.lots[m].fixed.is_none());
        others.sort_unstable();
        for _ in 0..rng.random_range(1..=MOST) {
            if others.is_empty() {
                break;
            }
            out.push(others.swap_remove(rng.random_range(0..others.len() as u32) as usize));
        }
        for &l in &out {
            if board.place(l).is_some() {
                self.change(board, l, None, touched);
            }
        }
        sort_roughly(board, &mut out, rng);
        for &l in &out {
            if let Some(place) = self.cheapest(board, zoning, l, rng) {
                self.change(board, l, Some(place), touched);
            }
        }
        true
    }

    /// The free corner place of a lot that costs least: its own fetches with what stands directly before it, and those of
    /// the things that it stands directly before.
    pub(super) fn cheapest(
        &mut self,
        board: &Board,
        zoning: &Zoning,
        lot: usize,
        rng: &mut Xoshiro256PlusPlus,
    ) -> Option<Place> {
        let mut best: Option<(Price, Place)> = None;
        let homes = zoning.by_price(lot);
        let begin = super::near_the_first(homes.len(), rng);
        for &n in homes[begin..].iter().take(super::LOOKS) {
            let home = &zoning.homes[lot][n as usize];
            if best.is_some_and(|b| b.0 <= zoning.least(lot, n as usize)) {
                break;
            }
            let left = board.left(home.surface as usize);
            if left < home.area {
                continue;
            }
            for_each_corner(board, lot, home, &mut self.clearing, |place| {
                if rng.random_range(0..BLINK) > 0 {
                    let most = best.as_ref().map(|b| b.0);
                    let price = price(board, lot, home, &place, most);
                    if most.is_none_or(|most| price < most) {
                        best = Some((price, place));
                    }
                }
                true
            });
        }
        best.map(|b| b.1)
    }
}

/// What a lot would cost at a place, and what it would cost others there by standing directly before them.
fn price(board: &Board, lot: usize, home: &Home, place: &Place, most: Option<Price>) -> Price {
    let site = board.site();
    let space = site.surfaces[home.surface as usize].space;
    let s: &Space = &site.spaces[space];
    let own = &site.lots[lot];
    let alone = way_prices(site, lot, place).map(|(_, t)| own.uses.cost(t)).min();
    let alone = alone.unwrap_or(Price::from_s(1e6));
    if !s.blocks() || most.is_some_and(|m| alone >= m) {
        return alone;
    }
    let mut before = [Price::ZERO; 2];
    let mut behind = Price::ZERO;
    for &m in board.members(space) {
        let Some(there) = board.place(m as usize) else { continue };
        let other = &site.lots[m as usize];
        let mut both = true;
        for (w, &way) in s.ways.iter().enumerate() {
            if place.space.swept_meets(way, &there.space) {
                before[w] += own.uses.cost(other.aside);
            }
            both &= there.space.swept_meets(way, &place.space);
        }
        if both {
            behind += other.uses.cost(own.aside);
        }
    }
    let mine = way_prices(site, lot, place).map(|(w, t)| own.uses.cost(t) + before[w]).min();
    mine.unwrap_or(alone) + behind
}
