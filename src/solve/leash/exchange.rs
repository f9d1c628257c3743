//! The best exchange of two lots' places, by looking at every pair.

use super::walk::Crew;
use super::{BRANCHES, Held, trial};
use crate::score::{COSTS, Ledger, Score, least_price};
use crate::site::{Board, Change, Clearing, Place, Site, Touched, fits_at};
use rayon::prelude::*;

/// The least price of each lot on each surface, in microseconds a week; nothing where it has no home there.
#[derive(Clone, Debug)]
pub(super) struct Least {
    prices: Vec<Option<i64>>,
    surfaces: usize,
}

impl Least {
    /// For all lots and surfaces.
    pub fn new(site: &Site) -> Least {
        let surfaces = site.surfaces.len();
        let mut prices = vec![None; site.lots.len() * surfaces];
        for (l, lot) in site.lots.iter().enumerate() {
            for home in &lot.homes {
                let price = least_price(site, l, home).as_us();
                let least = &mut prices[l * surfaces + home.surface as usize];
                *least = Some(least.map_or(price, |p: i64| p.min(price)));
            }
        }
        Least { prices, surfaces }
    }
    fn of(&self, lot: usize, place: &Place) -> Option<i64> {
        self.prices[lot * self.surfaces + place.home.surface as usize]
    }
}

/// The best layouts that come of two lots changing places, with at most so many elsewhere than they were; none that is
/// no better.
pub(super) fn exchange(
    site: &Site,
    old: &[Option<Place>],
    crew: &Crew,
    least: &Least,
    most: usize,
    from: &Held,
) -> Vec<Held> {
    let board = Board::with(site, &from.places);
    let ledger = Ledger::new(&board);
    let own: Vec<i64> = (0..site.lots.len()).map(|l| own_price(site, &ledger, l)).collect();
    let is_new_move = |l: usize| usize::from(old[l].is_some() && old[l] == from.places[l]);
    let worth_a_look = |x: usize, y: usize| {
        let (Some(a), Some(b)) = (&from.places[x], &from.places[y]) else { return false };
        let (Some(to_b), Some(to_a)) = (least.of(x, b), least.of(y, a)) else { return false };
        // Where a rule is broken a dearer exchange may mend it.
        from.score.broken > 0 || to_b + to_a < own[x] + own[y]
    };
    let mut pairs = Vec::new();
    for (k, &x) in crew.movable.iter().enumerate() {
        for &y in &crew.movable[k + 1..] {
            let (x, y) = (x as usize, y as usize);
            if from.moved + is_new_move(x) + is_new_move(y) <= most && worth_a_look(x, y) {
                pairs.push((x, y));
            }
        }
    }
    let mut swaps: Vec<Swap> = pairs
        .into_par_iter()
        .map_with((board, ledger), |(board, ledger), (x, y)| swapped(board, ledger, x, y))
        .flatten()
        .filter(|swap| swap.0 < from.score)
        .collect();
    swaps.sort_by_key(|(score, x, _, y, _)| (*score, *x, *y));
    swaps.truncate(BRANCHES);
    let made = |(_, x, to_x, y, to_y): Swap| from.with(site, old, &[(x, to_x), (y, to_y)]);
    swaps.into_iter().map(made).collect()
}

/// What a lot's place costs now, and all ties that it has a part in.
fn own_price(site: &Site, ledger: &Ledger, lot: usize) -> i64 {
    let cards = COSTS.iter().enumerate().filter(|(_, card)| card.scope.is_of_a_fetch());
    let own = cards.map(|(c, _)| (c, lot)).chain(ledger.ties(site, lot));
    own.map(|(c, subject)| ledger.cost(c, subject).as_us()).sum()
}

type Swap = (Score, usize, Place, usize, Place);

/// The best way for two lots to change places, each in a corner of the other's.
fn swapped(board: &mut Board, ledger: &mut Ledger, x: usize, y: usize) -> Option<Swap> {
    let (a, b) = (*board.place(x)?, *board.place(y)?);
    let (mut touched, mut clearing) = (Touched::default(), Clearing::default());
    let mut put = |board: &mut Board, lot: usize, to: Option<Place>| {
        board.apply(Change { lot, to }, &mut touched);
    };
    put(board, x, None);
    put(board, y, None);
    let mut all = Vec::new();
    for to_x in corners_of(board, x, &b, &mut clearing) {
        put(board, x, Some(to_x));
        all.extend(corners_of(board, y, &a, &mut clearing).into_iter().map(|to_y| (to_x, to_y)));
        put(board, x, None);
    }
    put(board, x, Some(a));
    put(board, y, Some(b));
    all.into_iter()
        .map(|(to_x, to_y)| {
            let changes = [Change { lot: x, to: Some(to_x) }, Change { lot: y, to: Some(to_y) }];
            (trial(board, ledger, &changes), x, to_x, y, to_y)
        })
        .min_by_key(|swap| swap.0)
}

/// The free places of a lot at the four corners of a place that another one left, as far as the surface goes.
fn corners_of(board: &Board, lot: usize, there: &Place, clearing: &mut Clearing) -> Vec<Place> {
    let site = board.site();
    let axes = site.surfaces[there.home.surface as usize].free_axes();
    let mut all: Vec<Place> = Vec::new();
    for home in site.lots[lot].homes.iter().filter(|h| h.surface == there.home.surface) {
        if !clearing.look(board, lot, home) {
            continue;
        }
        let ends = [0, 1].map(|k| {
            let (axis, [low, high]) = (axes[k], clearing.range(k));
            [there.space.min[axis], there.space.max[axis] - home.extents[axis]]
                .map(|c| c.clamp(low, high))
        });
        let four = [[0, 0], [0, 1], [1, 0], [1, 1]]
            .map(|[i, j]| Place { home: *home, space: clearing.at(ends[0][i], ends[1][j]) });
        for place in four {
            if !all.contains(&place) && fits_at(board, lot, &place, clearing) {
                all.push(place);
            }
        }
    }
    all
}
