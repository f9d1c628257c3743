//! Moving a shelf to another of its heights, with all that stands on it.

use super::{MOST_TURNED_OUT, Mover, Undo, is_clear};
use crate::site::{Board, Touched};
use crate::solve::zoning::Zoning;
use crate::units::Length;
use rand::RngExt;
use rand::rngs::Xoshiro256PlusPlus;

/// How many rows up or down a small shift goes at most.
const SMALL: usize = 3;

/// The shelves that may be moved: not those on which something is fixed.
pub(super) fn movable(board: &Board) -> Vec<usize> {
    let site = board.site();
    let nailed = |surface: usize| {
        let mut fixed = site.lots.iter().filter_map(|l| l.fixed.as_ref());
        fixed.any(|(home, _)| home.surface as usize == surface)
    };
    let shelves = site.boards.iter().enumerate();
    shelves.filter(|(_, b)| b.moves() && !nailed(b.surface)).map(|(k, _)| k).collect()
}

impl Mover {
    /// Moves one shelf; what is then in a wrong place looks for another. `false` where it finds none.
    pub(super) fn shift(
        &mut self,
        board: &mut Board,
        zoning: &Zoning,
        rng: &mut Xoshiro256PlusPlus,
        touched: &mut Touched,
    ) -> bool {
        let shelf = self.shelves[rng.random_range(0..self.shelves.len() as u32) as usize];
        let Some(top) = row(board, shelf, rng) else { return false };
        if !keeps_order(board, shelf, top) {
            return false;
        }
        let before = board.shift(shelf, top, touched);
        self.undo.push(Undo::Shelf(shelf, before));
        self.turned_out.clear();
        self.turned_out.extend(misplaced(board, shelf));
        let nailed = |&m: &u32| board.site().lots[m as usize].fixed.is_some();
        if self.turned_out.len() > MOST_TURNED_OUT || self.turned_out.iter().any(nailed) {
            return false;
        }
        let mut turned_out = std::mem::take(&mut self.turned_out);
        turned_out.sort_by_key(|&o| (std::cmp::Reverse(board.site().lots[o as usize].mass), o));
        for &lot in &turned_out {
            self.change(board, lot as usize, None, touched);
        }
        let seated = turned_out
            .iter()
            .all(|&lot| self.resettle(board, zoning, lot as usize, None, rng, touched));
        self.turned_out = turned_out;
        seated
    }
}

/// Another height for a shelf: mostly near by, now and then any.
fn row(board: &Board, shelf: usize, rng: &mut Xoshiro256PlusPlus) -> Option<Length> {
    let rows = &board.site().boards[shelf].rows;
    let now = rows.iter().position(|r| *r == board.board(shelf).max[2])?;
    let next = if rng.random_range(0..2u32) == 0 {
        rng.random_range(0..rows.len() as u32) as usize
    } else {
        let away = rng.random_range(0..=2 * SMALL as u32) as usize;
        (now + away).checked_sub(SMALL)?
    };
    rows.get(next).copied().filter(|_| next != now)
}

/// Whether a shelf at that height stays within its bay and between the shelves next to it.
fn keeps_order(board: &Board, shelf: usize, top: Length) -> bool {
    let site = board.site();
    let solid = site.boards[shelf].at(top);
    let space = &site.spaces[site.boards[shelf].space];
    let inside = space.volume.min[2] <= solid.min[2] && top <= space.volume.max[2];
    inside
        && space.boards.iter().all(|&other| match other.cmp(&shelf) {
            std::cmp::Ordering::Less => {
                clear_of(board, other, shelf, board.board(other).max[2], top, solid.min[2])
            }
            std::cmp::Ordering::Equal => true,
            std::cmp::Ordering::Greater => {
                let it = board.board(other);
                clear_of(board, shelf, other, top, it.max[2], it.min[2])
            }
        })
}

/// Whether a lower shelf's top lies under a higher one's, and under its underside where one reaches over the other.
fn clear_of(
    board: &Board,
    low: usize,
    high: usize,
    top: Length,
    over: Length,
    under: Length,
) -> bool {
    let covered = board.site().boards[low].over.contains(&high);
    top < over && (!covered || top <= under)
}

/// The lots that cannot stay where they are now that a shelf has been moved; rising.
fn misplaced(board: &Board, shelf: usize) -> Vec<u32> {
    let site = board.site();
    let moved = &site.boards[shelf];
    let stays = |&m: &u32| {
        let lot = m as usize;
        let rides = board.place(lot).is_some_and(|p| p.home.surface as usize == moved.surface);
        !(rides && board.tangles(lot) > 0) && is_clear(board, lot)
    };
    let mut all: Vec<u32> =
        board.members(moved.space).iter().copied().filter(|m| !stays(m)).collect();
    all.sort_unstable();
    all
}
