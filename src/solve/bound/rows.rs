//! Shelves that may be moved: all that stands on one stands at one height, and what a shelf gains in height another loses.
//!
//! For this the choices of the lots are parted by bays: each lot has a price at which any bay may take it, and every bay
//! takes, with its shelves on the rows where this is worth most, what costs it less than that price.

use crate::geometry::Box3;
use crate::site::{Kind, ShelfBoard, Site};
use crate::units::Length;

/// Most ways of setting the shelves of one bay that are looked at one by one.
const MOST: usize = 4000;

/// A bay with shelves that may be moved.
pub struct Bay {
    /// The space.
    pub space: usize,
    /// Its decks.
    pub decks: Vec<Deck>,
    /// Every way of setting its shelves: for each deck the number of its level and of the free height over it.
    pub settings: Vec<Vec<[usize; 2]>>,
}

/// A deck of such a bay.
pub struct Deck {
    /// The surface.
    pub surface: usize,
    /// How many levels it has.
    pub levels: usize,
    /// The free heights that it may have, rising.
    pub rooms: Vec<Length>,
}

/// All bays whose shelves may be moved, as far as their settings are few enough to be looked at.
pub fn bays(site: &Site) -> Vec<Bay> {
    (0..site.spaces.len()).filter_map(|space| bay(site, space)).collect()
}

fn bay(site: &Site, space: usize) -> Option<Bay> {
    let boards: Vec<&ShelfBoard> =
        site.spaces[space].boards.iter().map(|&b| &site.boards[b]).collect();
    let count = boards.iter().try_fold(1usize, |n, b| n.checked_mul(b.rows.len()))?;
    if count == 1 || count > MOST {
        return None;
    }
    let surfaces = site.spaces[space].surfaces.iter().copied();
    let surfaces: Vec<usize> = surfaces.filter(|&s| site.surfaces[s].kind == Kind::Deck).collect();
    let mut told: Vec<Vec<(usize, Length)>> = Vec::new();
    for mut n in 0..count {
        let set: Vec<(usize, Box3)> = boards
            .iter()
            .map(|board| {
                let row = n % board.rows.len();
                n /= board.rows.len();
                (row, board.at(board.rows[row]))
            })
            .collect();
        let clear = |(k, board): (usize, &&ShelfBoard)| {
            let above = set.iter().zip(&site.spaces[space].boards);
            let mut above = above.filter(|(_, b)| board.over.contains(b));
            above.all(|((_, over), _)| set[k].1.max[2] <= over.min[2])
        };
        if boards.iter().enumerate().all(clear) {
            told.push(surfaces.iter().map(|&s| room(site, space, s, &boards, &set)).collect());
        }
    }
    let decks: Vec<Deck> = surfaces
        .iter()
        .enumerate()
        .map(|(k, &surface)| {
            let mut rooms: Vec<Length> = told.iter().map(|t| t[k].1).collect();
            rooms.sort_unstable();
            rooms.dedup();
            Deck { surface, levels: site.surfaces[surface].levels.len(), rooms }
        })
        .collect();
    let number = |k: usize, (level, high): (usize, Length)| {
        [level, decks[k].rooms.partition_point(|r| *r < high)]
    };
    let settings =
        told.iter().map(|t| t.iter().enumerate().map(|(k, &one)| number(k, one)).collect());
    let settings = settings.collect();
    Some(Bay { space, decks, settings })
}

/// The level of a deck and the free height over it up to the next board that covers it.
fn room(
    site: &Site,
    space: usize,
    surface: usize,
    boards: &[&ShelfBoard],
    set: &[(usize, Box3)],
) -> (usize, Length) {
    let deck = &site.surfaces[surface];
    let own = boards.iter().position(|b| b.surface == surface);
    let level = own.map_or(0, |k| set[k].0);
    let low = deck.levels[level];
    let covers =
        |b: &Box3| (0..2).all(|a| b.min[a] <= deck.free.min[a] && b.max[a] >= deck.free.max[a]);
    let over = set.iter().map(|(_, b)| b).filter(|b| b.max[2] > low && covers(b));
    let top = over.map(|b| b.min[2]).min().unwrap_or(site.spaces[space].volume.max[2]);
    (level, top - low)
}
