//! What would have to leave for a thing that finds no place.

use super::{Shape, Standing, same_lot};
use crate::score::Ledger;
use crate::site::{Board, Change, Touched};
use crate::solve::{corners, trial};
use crate::tasks::outcome::Copy;
use crate::units::Price;

/// A thing that finds no place, and the least valuable that would make room for it.
#[derive(Clone, Debug)]
pub struct Leaving {
    /// What finds no place.
    pub item: Copy,
    /// What would have to leave for it, all of them together.
    pub leave: Vec<Copy>,
    /// What it would cost a week to fetch those from elsewhere.
    pub price: Price,
}

/// For each new thing that is left out and could be on the cart: what would have to leave.
pub(super) fn leaving(old: &Standing, end: Shape) -> Vec<Leaving> {
    let board = Board::with(end.site, end.places);
    let is_new =
        |l: usize| same_lot(&old.site, &end.site.lots[l]).is_none_or(|o| old.places[o].is_none());
    (0..end.places.len())
        .filter(|&l| end.places[l].is_none() && is_new(l))
        .filter_map(|l| one(&board, l))
        .collect()
}

fn one(board: &Board, lot: usize) -> Option<Leaving> {
    let site = board.site();
    let leave = cheapest(board, lot)?;
    let copy = |l: usize| Copy {
        item: site.items[site.lots[l].item].name.clone(),
        copy: site.lots[l].first,
    };
    let price = leave.iter().map(|&l| site.lots[l].off_cart).sum();
    Some(Leaving { item: copy(lot), leave: leave.into_iter().map(copy).collect(), price })
}

/// The single lot of least value that makes room; where none does, the least valuable of one space, as many as it takes.
fn cheapest(board: &Board, lot: usize) -> Option<Vec<usize>> {
    let site = board.site();
    let mut others: Vec<usize> = (0..site.lots.len())
        .filter(|&o| board.place(o).is_some() && site.lots[o].fixed.is_none())
        .collect();
    others.sort_by_key(|&o| (site.lots[o].off_cart, o));
    if let Some(&o) = others.iter().find(|&&o| admits(board, lot, &[o])) {
        return Some(vec![o]);
    }
    let in_turn = |space: usize| {
        let here: Vec<usize> =
            others.iter().copied().filter(|&o| board.space_of(o) == Some(space)).collect();
        (2..=here.len()).map(|n| here[..n].to_vec()).find(|some| admits(board, lot, some))
    };
    let all = (0..site.spaces.len()).filter_map(in_turn);
    all.min_by_key(|some| some.iter().map(|&o| site.lots[o].off_cart).sum::<Price>())
}

/// Whether a lot finds a corner place that breaks no further rule, once those are gone.
fn admits(board: &Board, lot: usize, gone: &[usize]) -> bool {
    let broken = Ledger::new(board).score().broken;
    let mut without = board.clone();
    for &o in gone {
        without.apply(Change { lot: o, to: None }, &mut Touched::default());
    }
    let mut ledger = Ledger::new(&without);
    let places = corners(&without, lot, &board.site().lots[lot].homes);
    places.into_iter().any(|place| {
        trial(&mut without, &mut ledger, &[Change { lot, to: Some(place) }]).broken <= broken
    })
}
