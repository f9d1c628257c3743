//! A run that is to be made, and what comes of it.

use crate::score::Ledger;
use crate::site::{Board, Place, Site};
use crate::solve::finish::{fill, settle};
use crate::solve::search::{Run, Search};
use crate::solve::zoning::Zoning;
use crate::solve::{Count, Heat, Watch};
use rand::SeedableRng;
use rand::rngs::Xoshiro256PlusPlus;

/// A layout on its way through the rounds: the best of a run, under one of the divisions.
#[derive(Clone, Debug)]
pub(super) struct Leg {
    /// The number of the division.
    pub zoning: usize,
    pub run: Run,
}

impl Leg {
    /// A layout as it stands, under the first division that allows it.
    pub fn standing(board: &Board, zonings: &[Zoning]) -> Leg {
        let allows = |z: &Zoning| allowed(board.places(), z) == board.places();
        Leg {
            zoning: zonings.iter().position(allows).unwrap_or(0),
            run: Run {
                best: board.places().to_vec(),
                shelves: board.shelves().collect(),
                score: Ledger::new(board).score(),
                count: Count::default(),
            },
        }
    }
}

/// A run to be made.
pub(super) struct Order<'a> {
    /// Where it begins.
    pub leg: &'a Leg,
    pub moves: u64,
    pub heat: Heat,
    /// What its generator begins with.
    pub seed: u64,
}

impl Order<'_> {
    /// Makes the run; nothing where the search is to end.
    pub fn carry_out(&self, site: &Site, zonings: &[Zoning], watch: &Watch) -> Option<Leg> {
        if watch.is_over() {
            return None;
        }
        let zoning = &zonings[self.leg.zoning];
        let mut rng = Xoshiro256PlusPlus::seed_from_u64(self.seed);
        let from = &self.leg.run;
        let mut board = Board::set_up(site, &from.shelves, &allowed(&from.best, zoning));
        fill(&mut board, zoning);
        let mut search = Search::new(board, zoning);
        let mut run = search.anneal(zoning, &mut rng, self.moves, self.heat, watch);
        // What the run left loose is pushed to where it costs least.
        let mut board = Board::set_up(site, &run.shelves, &run.best);
        settle(&mut board, zoning);
        let score = Ledger::new(&board).score();
        if score < run.score {
            run.score = score;
            run.best = board.places().to_vec();
        }
        watch.found(run.score);
        Some(Leg { zoning: self.leg.zoning, run })
    }
}

/// The same places without those that a division does not allow.
fn allowed(places: &[Option<Place>], zoning: &Zoning) -> Vec<Option<Place>> {
    let keeps = |lot: usize, place: &Place| {
        zoning.homes[lot].is_empty()
            || zoning.homes[lot].iter().any(|h| h.surface == place.home.surface)
    };
    places.iter().enumerate().map(|(lot, p)| p.filter(|p| keeps(lot, p))).collect()
}

/// A seed for each run, by SplitMix64's finaliser.
pub(super) fn mix(seed: u64, number: u64) -> u64 {
    let mut z = seed.wrapping_add(number.wrapping_add(1).wrapping_mul(0x9e37_79b9_7f4a_7c15));
    z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    z ^ (z >> 31)
}
