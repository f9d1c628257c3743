//! The fixed start that every plan is compared with: what a careful person does who goes through the list.
//!
//! Fixed things first, then by uses falling, each into the corner place of least walking and reaching, blind to what it
//! will block. Legal is what fits, can be reached, keeps the stated limits and keeps hazards apart; casters and tipping
//! are not looked at. What finds no place is left out. This definition is kept as it is, so that savings stay honest.

use crate::score::way_prices;
use crate::site::{
    Board, Change, Clearing, Place, Site, Touched, box_at, fits_at, for_each_corner, local,
};
use crate::units::{Length, Time};

/// Makes the start.
pub fn start(site: &Site) -> Board<'_> {
    let mut board = Board::new(site);
    let mut touched = Touched::default();
    let mut clearing = Clearing::default();
    for lot in order(site) {
        let place = match site.lots[lot].fixed {
            Some(_) => fixed_place(&board, lot, &mut clearing),
            None => best_corner(&board, lot, &mut clearing),
        };
        if place.is_some() {
            board.apply(Change { lot, to: place }, &mut touched);
        }
    }
    board
}

/// Fixed lots, then the others by uses falling; ties in the order of the file.
fn order(site: &Site) -> Vec<usize> {
    let mut lots: Vec<usize> = (0..site.lots.len()).collect();
    lots.sort_by_key(|&l| {
        let lot = &site.lots[l];
        (lot.fixed.is_none(), std::cmp::Reverse(lot.uses), l)
    });
    lots
}

/// Where a fixed lot stays: the corner that the layout says, else the best one on its surface.
fn fixed_place(board: &Board, lot: usize, clearing: &mut Clearing) -> Option<Place> {
    let (home, corner) = board.site().lots[lot].fixed?;
    let Some(corner) = corner else {
        return best_of(board, lot, &[home], clearing);
    };
    let free = board.free(home.surface as usize);
    let place = Place { home, space: box_at(board.site(), &home, free, corner) };
    fits_at(board, lot, &place, clearing).then_some(place)
}

fn best_corner(board: &Board, lot: usize, clearing: &mut Clearing) -> Option<Place> {
    let homes = &board.site().lots[lot].homes;
    best_of(board, lot, homes, clearing)
}

/// The corner place of least price; ties by surface, depth and distance from the viewer's left.
fn best_of(
    board: &Board,
    lot: usize,
    homes: &[crate::site::Home],
    clearing: &mut Clearing,
) -> Option<Place> {
    let site = board.site();
    let mut best: Option<(Time, u32, Length, Length, Place)> = None;
    for home in homes {
        if !promising(site, lot, home, best.as_ref().map(|b| b.0)) {
            continue;
        }
        for_each_corner(board, lot, home, clearing, |place| {
            let Some(price) = way_prices(site, lot, &place).map(|(_, t)| t).min() else {
                return true;
            };
            let s = &site.surfaces[home.surface as usize];
            let seen = local(site.spaces[s.space].face, site.size, &place.space);
            let key = (price, home.surface, seen[2][0], seen[0][0]);
            let better = best.as_ref().is_none_or(|b| key < (b.0, b.1, b.2, b.3));
            if better && keeps_apart(board, lot, &place) {
                best = Some((key.0, key.1, key.2, key.3, place));
            }
            true
        });
    }
    best.map(|b| b.4)
}

/// Whether a surface can still beat the best price found.
fn promising(site: &Site, lot: usize, home: &crate::site::Home, best: Option<Time>) -> bool {
    let Some(best) = best else { return true };
    let uses = site.lots[lot].uses;
    crate::score::least_price(site, lot, home) <= uses.cost(best)
}

/// Whether a lot at a place keeps its distance from all that it must be apart from.
pub(super) fn keeps_apart(board: &Board, lot: usize, place: &Place) -> bool {
    let site = board.site();
    site.pairs_of[lot].iter().all(|&p| {
        let pair = &site.pairs[p as usize];
        let other = if pair.one as usize == lot { pair.other } else { pair.one };
        let Some(there) = board.place(other as usize) else { return true };
        let places = if pair.one as usize == lot { [place, there] } else { [there, place] };
        !site.clash(pair.clash, places[0], places[1])
    })
}
