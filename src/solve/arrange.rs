//! Where things may be on a surface that is already chosen: what a layout without positions means.
//!
//! Things are put in one after the other by several plain orders; where none of them fits everything, all orders are
//! tried. A thing on one surface can always be pushed against its lower and left neighbours without losing a fit, so an
//! exhausted search over such places is a proof.

use super::finish::trial;
use crate::score::{Ledger, Score, Undo, way_prices};
use crate::site::{Board, Change, Clearing, Home, Place, Touched, for_each_corner_anyhow};
use crate::units::Time;
use std::cmp::Reverse;

/// Places looked at in trying all orders of one space.
const NODES: u32 = 30_000;
/// Times that every thing is moved to its best place.
const ROUNDS: usize = 3;

/// A lot with the homes that it may be put in: all on one surface or on those of one space.
#[derive(Clone, Debug)]
pub struct Wanted {
    /// The lot.
    pub lot: usize,
    /// Where it may be.
    pub homes: Vec<Home>,
}

/// What found no room.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Unplaced {
    /// The lot.
    pub lot: usize,
    /// Whether no arrangement on its surface takes everything that is wanted there: else none was found.
    pub proven: bool,
}

/// Puts the wanted lots on the board, each into one of its homes, whatever the surfaces may carry; then moves them within
/// their homes to where they cost least. Lots that are there already stay.
pub fn arrange(board: &mut Board, wanted: &[Wanted]) -> Vec<Unplaced> {
    let mut left = Vec::new();
    let mut spaces: Vec<usize> = wanted.iter().filter_map(|w| space_of(board, w)).collect();
    spaces.sort_unstable();
    spaces.dedup();
    for space in spaces {
        let here: Vec<&Wanted> =
            wanted.iter().filter(|w| space_of(board, w) == Some(space)).collect();
        left.extend(fill_space(board, &here));
    }
    left.extend(
        wanted.iter().filter(|w| w.homes.is_empty()).map(|w| Unplaced { lot: w.lot, proven: true }),
    );
    improve(board, wanted);
    left.sort_unstable_by_key(|u| u.lot);
    left
}

fn space_of(board: &Board, wanted: &Wanted) -> Option<usize> {
    wanted.homes.first().map(|h| board.site().surfaces[h.surface as usize].space)
}

/// Fills one space, by plain orders first.
fn fill_space(board: &mut Board, here: &[&Wanted]) -> Vec<Unplaced> {
    let mut best: Option<(usize, Vec<Change>)> = None;
    for order in 0..4 {
        for cheap in [true, false] {
            let made = in_turn(board, &in_order(board, here, order), cheap);
            lift_all(board, &made);
            if best.as_ref().is_none_or(|b| made.len() > b.0) {
                best = Some((made.len(), made));
            }
            if best.as_ref().is_some_and(|b| b.0 == here.len()) {
                return take(board, here, best, false);
            }
        }
    }
    let area = too_much_area(board, here);
    let mut search = All { nodes: NODES, made: Vec::new() };
    if !area && search.fill(board, &mut here.to_vec()) {
        return Vec::new();
    }
    let one_surface = here
        .iter()
        .flat_map(|w| &w.homes)
        .all(|h| Some(h.surface) == here[0].homes.first().map(|f| f.surface));
    let proven = area || (search.nodes > 0 && one_surface);
    take(board, here, best, proven)
}

fn take(
    board: &mut Board,
    here: &[&Wanted],
    best: Option<(usize, Vec<Change>)>,
    proven: bool,
) -> Vec<Unplaced> {
    let mut touched = Touched::default();
    best.into_iter().flat_map(|b| b.1).for_each(|change| {
        board.apply(change, &mut touched);
    });
    here.iter()
        .filter(|w| board.place(w.lot).is_none())
        .map(|w| Unplaced { lot: w.lot, proven })
        .collect()
}

/// The lots in one of the plain orders: greatest area, longest side, height or use first.
fn in_order<'w>(board: &Board, here: &[&'w Wanted], order: usize) -> Vec<&'w Wanted> {
    let mut all = here.to_vec();
    all.sort_by_cached_key(|w| {
        let most = |of: &dyn Fn(&Home) -> i64| w.homes.iter().map(of).min().unwrap_or(0);
        let side = |h: &Home| h.extents.iter().map(|e| e.as_nm()).max().unwrap_or(0);
        let key = match order {
            0 => most(&|h| h.area),
            1 => most(&side),
            2 => most(&|h| h.extents[2].as_nm()),
            _ => board.site().lots[w.lot].uses.as_nano(),
        };
        (Reverse(key), w.lot)
    });
    all
}

/// Puts the lots in one after the other, each where it is cheapest or as low and far left as it goes; what finds no room is
/// passed over.
fn in_turn(board: &mut Board, order: &[&Wanted], cheap: bool) -> Vec<Change> {
    let (mut touched, mut made) = (Touched::default(), Vec::new());
    for w in order {
        let places = rooms(board, w);
        let first = |p: &&Place| (p.space.min[2], p.space.min[1], p.space.min[0]);
        let place = if cheap { places.first() } else { places.iter().min_by_key(first) };
        if let Some(place) = place {
            let change = Change { lot: w.lot, to: Some(*place) };
            board.apply(change, &mut touched);
            made.push(change);
        }
    }
    made
}

fn lift_all(board: &mut Board, made: &[Change]) {
    let mut touched = Touched::default();
    made.iter().for_each(|c| {
        board.apply(Change { lot: c.lot, to: None }, &mut touched);
    });
}

/// The free corner places of a lot in its homes, the easiest to walk and reach to first.
fn rooms(board: &Board, wanted: &Wanted) -> Vec<Place> {
    let (mut places, mut clearing) = (Vec::new(), Clearing::default());
    for home in &wanted.homes {
        for_each_corner_anyhow(board, wanted.lot, home, &mut clearing, |place| {
            places.push(place);
            true
        });
    }
    places.sort_by_cached_key(|p| {
        way_prices(board.site(), wanted.lot, p).map(|(_, t)| t).min().unwrap_or(Time::s(1_000_000))
    });
    places
}

/// Whether the smallest areas of those that have one surface only are already more than it has left.
fn too_much_area(board: &Board, here: &[&Wanted]) -> bool {
    let surfaces = board.site().surfaces.len();
    (0..surfaces as u32).any(|s| {
        let need: i64 = here
            .iter()
            .filter(|w| w.homes.iter().all(|h| h.surface == s))
            .map(|w| w.homes.iter().map(|h| h.area).min().unwrap_or(0))
            .sum();
        need > 0 && need > board.left(s as usize)
    })
}

/// All orders and all places pushed low and left.
struct All {
    nodes: u32,
    made: Vec<Change>,
}

impl All {
    /// Whether all that is left was put in; else the board is as before.
    fn fill(&mut self, board: &mut Board, left: &mut Vec<&Wanted>) -> bool {
        if left.is_empty() {
            return true;
        }
        let mut touched = Touched::default();
        for k in 0..left.len() {
            let w = left.remove(k);
            for place in pushed(board, w) {
                if self.nodes == 0 {
                    break;
                }
                self.nodes -= 1;
                let change = Change { lot: w.lot, to: Some(place) };
                board.apply(change, &mut touched);
                self.made.push(change);
                if self.fill(board, left) {
                    return true;
                }
                self.made.pop();
                board.apply(Change { lot: w.lot, to: None }, &mut touched);
            }
            left.insert(k, w);
        }
        false
    }
}

/// The places of a lot with its lower end on each axis at an end of the surface or at another thing.
fn pushed(board: &Board, wanted: &Wanted) -> Vec<Place> {
    let (mut places, mut clearing) = (Vec::new(), Clearing::default());
    for home in &wanted.homes {
        if !clearing.look_anyhow(board, wanted.lot, home) {
            continue;
        }
        let lower = |k: usize| {
            let mut all = vec![clearing.range(k)[0]];
            all.extend((0..clearing.len()).map(|n| clearing.edge(n, k, true)));
            all.sort_unstable();
            all.dedup();
            all
        };
        let (ps, qs) = (lower(0), lower(1));
        for &p in &ps {
            for &q in &qs {
                if clearing.is_free(p, q) {
                    places.push(Place { home: *home, space: clearing.at(p, q) });
                }
            }
        }
    }
    places
}

/// Moves every lot to the place of least score in its homes, and again while that helps.
fn improve(board: &mut Board, wanted: &[Wanted]) {
    let mut ledger = Ledger::new(board);
    for _ in 0..ROUNDS {
        let before = ledger.score();
        for w in wanted.iter().filter(|w| board.place(w.lot).is_some()).collect::<Vec<_>>() {
            best_room(board, &mut ledger, w);
        }
        if ledger.score() >= before {
            return;
        }
    }
}

fn best_room(board: &mut Board, ledger: &mut Ledger, wanted: &Wanted) {
    let mut best: (Score, Option<Place>) = (ledger.score(), None);
    for place in rooms(board, wanted) {
        let score = trial(board, ledger, &[Change { lot: wanted.lot, to: Some(place) }]);
        if score < best.0 {
            best = (score, Some(place));
        }
    }
    if best.1.is_some() {
        let (mut touched, mut undo) = (Touched::default(), Undo::default());
        board.apply(Change { lot: wanted.lot, to: best.1 }, &mut touched);
        ledger.follow(board, &touched, &mut undo);
    }
}
