//! Pushing things along their surface to make room for another.

use super::{Mover, Undo, is_clear};
use crate::geometry::Axis;
use crate::site::{Board, Change, Home, Place, SpaceKind, Touched};
use crate::solve::zoning::Zoning;
use crate::units::Length;
use rand::RngExt;
use rand::rngs::Xoshiro256PlusPlus;

/// Most pushes in one move.
const MOST: usize = 10;

/// Along which axis things are pushed, and whether towards greater coordinates.
#[derive(Clone, Copy, Debug)]
struct Push {
    axis: Axis,
    up: bool,
}

impl Mover {
    /// One lot into a place anywhere, against an edge on both axes as if nobody were there; who is there is pushed on.
    pub(super) fn push_in(
        &mut self,
        board: &mut Board,
        zoning: &Zoning,
        lot: usize,
        rng: &mut Xoshiro256PlusPlus,
        touched: &mut Touched,
    ) -> bool {
        let home = zoning.homes[lot][super::cheap_home(zoning, lot, rng)];
        let surface = home.surface as usize;
        let own = board.place(lot).copied();
        let spared = own.filter(|p| p.home.surface == home.surface).map_or(0, |p| p.home.area);
        if home.area > board.left(surface) + spared || !self.clearing.look(board, lot, &home) {
            return false;
        }
        let (Some(p), Some(q)) = (self.edge(0, rng), self.edge(1, rng)) else { return false };
        let place = Place { home, space: self.clearing.at(p, q) };
        if own == Some(place) {
            return false;
        }
        let push = any_push(board, &home, rng);
        self.squeeze_in(board, lot, &place, push, touched)
    }

    /// Two lots change places, each in a corner of the other's; who is in the way of the larger one is pushed on.
    pub(super) fn trade(
        &mut self,
        board: &mut Board,
        zoning: &Zoning,
        one: usize,
        rng: &mut Xoshiro256PlusPlus,
        touched: &mut Touched,
    ) -> bool {
        let Some((other, to_b, to_a)) = self.partner(board, zoning, one, rng) else {
            return false;
        };
        let (Some(a), Some(b)) = (board.place(one).copied(), board.place(other).copied()) else {
            return false;
        };
        self.change(board, one, None, touched);
        self.change(board, other, None, touched);
        let (here, push) = stand_in(board, &to_b, &b, rng);
        if !self.squeeze_in(board, one, &here, push, touched) {
            return false;
        }
        let (there, push) = stand_in(board, &to_a, &a, rng);
        self.squeeze_in(board, other, &there, push, touched)
    }

    /// Puts a lot into a place and pushes on whoever is there, and whoever is then in their way; `false` where that does
    /// not go.
    fn squeeze_in(
        &mut self,
        board: &mut Board,
        lot: usize,
        place: &Place,
        push: Push,
        touched: &mut Touched,
    ) -> bool {
        let surface = place.home.surface;
        let free = *board.free(surface as usize);
        if !free.contains(&place.space) {
            return false;
        }
        let from = self.undo.len();
        self.change(board, lot, Some(*place), touched);
        let mut next = from;
        while next < self.undo.len() {
            let Undo::Lot(Change { lot: here, .. }) = self.undo[next] else { return false };
            next += 1;
            while board.tangles(here) > 0 {
                let (Some(m), Some(there)) = (board.tangled(here), board.place(here)) else {
                    return false;
                };
                let (m, there) = (m as usize, there.space);
                let Some(mut to) = board.place(m).copied() else { return false };
                let fixed = board.site().lots[m].fixed.is_some();
                if m == lot || fixed || to.home.surface != surface || self.undo.len() > from + MOST
                {
                    return false;
                }
                let by = match push.up {
                    true => there.max[push.axis] - to.space.min[push.axis],
                    false => there.min[push.axis] - to.space.max[push.axis],
                };
                to.space.min[push.axis] += by;
                to.space.max[push.axis] += by;
                if !free.contains(&to.space) {
                    return false;
                }
                self.change(board, m, Some(to), touched);
            }
        }
        (from..self.undo.len()).all(|k| match self.undo[k] {
            Undo::Lot(Change { lot, .. }) => board.tangles(lot) == 0 && is_clear(board, lot),
            Undo::Shelf(..) => false,
        }) && carried(board, surface as usize)
    }
}

fn any_push(board: &Board, home: &Home, rng: &mut Xoshiro256PlusPlus) -> Push {
    let axes = board.site().surfaces[home.surface as usize].free_axes();
    let draw = rng.random_range(0..4u32);
    Push { axis: axes[(draw & 1) as usize], up: draw > 1 }
}

/// One of the corners of another's place, and a push away from it.
fn stand_in(
    board: &Board,
    home: &Home,
    there: &Place,
    rng: &mut Xoshiro256PlusPlus,
) -> (Place, Push) {
    let surface = &board.site().surfaces[home.surface as usize];
    let free = board.free(home.surface as usize);
    let axes = surface.free_axes();
    let draw = rng.random_range(0..8u32);
    let mut min = [Length::ZERO; 3];
    min[surface.rest.axis] = surface.touch(free, home.extents);
    for (k, &axis) in axes.iter().enumerate() {
        let most = free.max[axis] - home.extents[axis];
        let at = match draw >> k & 1 == 0 {
            true => there.space.min[axis],
            false => there.space.max[axis] - home.extents[axis],
        };
        min[axis] = at.min(most).max(free.min[axis]);
    }
    let k = (draw >> 2) as usize;
    let push = Push { axis: axes[k], up: draw >> k & 1 == 0 };
    (super::rooms::place_at(home, min), push)
}

/// Whether a surface carries what is on it now, and the bench has no more on it than its share.
fn carried(board: &Board, surface: usize) -> bool {
    let site = board.site();
    let s = &site.surfaces[surface];
    s.limit.is_none_or(|limit| board.load(surface) <= limit)
        && (site.spaces[s.space].kind != SpaceKind::Bench || board.bench_area() <= site.bench_area)
}
