//! Trial moves: each is legal in its geometry before anything is priced.

use super::zoning::Zoning;
use crate::site::{Board, Change, Clearing, Home, Place, Touched, has_way_out};
use crate::units::Length;
use rand::RngExt;
use rand::rngs::Xoshiro256PlusPlus;

/// Makes trial moves on a board.
#[derive(Clone, Debug, Default)]
pub struct Mover {
    clearing: Clearing,
    /// What undoes the changes made so far, in the order of making.
    pub undo: Vec<Change>,
    /// Lots that may be moved.
    movable: Vec<u32>,
}

/// Shares of the kinds of move, in hundredths: what a bench on packed carts showed to help.
const RELOCATE: u32 = 40;
const SWAP: u32 = 75;
const NUDGE: u32 = 94;

impl Mover {
    /// For a board's lots that are not fixed and have a home at all.
    pub fn new(board: &Board, zoning: &Zoning) -> Mover {
        let lots = &board.site().lots;
        let movable = (0..lots.len() as u32)
            .filter(|&l| lots[l as usize].fixed.is_none() && !zoning.homes[l as usize].is_empty())
            .collect();
        Mover { movable, ..Mover::default() }
    }

    /// Whether nothing can be moved at all.
    pub fn is_idle(&self) -> bool {
        self.movable.is_empty()
    }

    /// Makes one random legal move on the board; `false` where the draw was not legal and nothing changed.
    pub fn step(
        &mut self,
        board: &mut Board,
        zoning: &Zoning,
        rng: &mut Xoshiro256PlusPlus,
        touched: &mut Touched,
    ) -> bool {
        self.undo.clear();
        touched.clear();
        let lot = self.any(rng);
        let kind = rng.random_range(0..100u32);
        let done = if board.place(lot).is_none() {
            if kind < 50 {
                self.relocate(board, zoning, lot, rng, touched)
            } else {
                self.eject(board, zoning, lot, rng, touched)
            }
        } else if kind < RELOCATE {
            self.relocate(board, zoning, lot, rng, touched)
        } else if kind < SWAP {
            self.swap(board, zoning, lot, rng, touched)
        } else if kind < NUDGE {
            self.nudge(board, zoning, lot, rng, touched)
        } else {
            self.cycle(board, zoning, lot, rng, touched)
        };
        if !done {
            self.take_back(board, touched);
        }
        done
    }

    /// Undoes what the last step did.
    pub fn take_back(&mut self, board: &mut Board, touched: &mut Touched) {
        while let Some(change) = self.undo.pop() {
            board.apply(change, touched);
        }
    }

    fn any(&self, rng: &mut Xoshiro256PlusPlus) -> usize {
        self.movable[rng.random_range(0..self.movable.len() as u32) as usize] as usize
    }

    fn change(&mut self, board: &mut Board, lot: usize, to: Option<Place>, touched: &mut Touched) {
        let undo = board.apply(Change { lot, to }, touched);
        self.undo.push(undo);
    }

    /// One lot to a corner place anywhere.
    fn relocate(
        &mut self,
        board: &mut Board,
        zoning: &Zoning,
        lot: usize,
        rng: &mut Xoshiro256PlusPlus,
        touched: &mut Touched,
    ) -> bool {
        let homes = &zoning.homes[lot];
        let home = homes[rng.random_range(0..homes.len() as u32) as usize];
        self.settle(board, lot, &home, rng, touched)
    }

    /// One lot to another corner place, pose or turn on its own surface.
    fn nudge(
        &mut self,
        board: &mut Board,
        zoning: &Zoning,
        lot: usize,
        rng: &mut Xoshiro256PlusPlus,
        touched: &mut Touched,
    ) -> bool {
        let Some(place) = board.place(lot) else { return false };
        let homes = zoning.on_surface(lot, place.home.surface);
        if homes.is_empty() {
            return false;
        }
        let home = homes[rng.random_range(0..homes.len() as u32) as usize];
        self.settle(board, lot, &home, rng, touched)
    }

    fn settle(
        &mut self,
        board: &mut Board,
        lot: usize,
        home: &Home,
        rng: &mut Xoshiro256PlusPlus,
        touched: &mut Touched,
    ) -> bool {
        let Some(space) = self.corner(board, lot, home, rng) else { return false };
        let place = Place { home: *home, space };
        if board.place(lot) == Some(&place) {
            return false;
        }
        self.change(board, lot, Some(place), touched);
        true
    }

    /// Draws an edge on one axis and slides to contact on the other.
    fn corner(
        &mut self,
        board: &Board,
        lot: usize,
        home: &Home,
        rng: &mut Xoshiro256PlusPlus,
    ) -> Option<crate::geometry::Box3> {
        if !self.clearing.look(board, lot, home) {
            return None;
        }
        let k = rng.random_range(0..2u32) as usize;
        let drawn = self.edge(k, rng)?;
        let up = rng.random_range(0..2u32) == 0;
        let from = if rng.random_range(0..4u32) == 0 {
            self.edge(1 - k, rng)?
        } else {
            self.clearing.range(1 - k)[usize::from(!up)]
        };
        let slid = self.clearing.slide(1 - k, drawn, from, up)?;
        let (p, q) = if k == 0 { (drawn, slid) } else { (slid, drawn) };
        let space = self.clearing.at(p, q);
        has_way_out(board, home.surface as usize, &space).then_some(space)
    }

    /// An end of the surface, or a coordinate at which the lot touches another thing.
    fn edge(&self, k: usize, rng: &mut Xoshiro256PlusPlus) -> Option<Length> {
        let n = self.clearing.len() as u32;
        let draw = rng.random_range(0..2 * n + 2);
        let c = match draw {
            0 => self.clearing.range(k)[0],
            1 => self.clearing.range(k)[1],
            _ => self.clearing.edge((draw as usize - 2) / 2, k, draw % 2 == 0),
        };
        self.clearing.within(k, c).then_some(c)
    }

    /// Two lots change places.
    fn swap(
        &mut self,
        board: &mut Board,
        zoning: &Zoning,
        one: usize,
        rng: &mut Xoshiro256PlusPlus,
        touched: &mut Touched,
    ) -> bool {
        let other = self.any(rng);
        let (Some(a), Some(b)) = (board.place(one).copied(), board.place(other).copied()) else {
            return false;
        };
        if one == other || board.site().lots[one].item == board.site().lots[other].item {
            return false;
        }
        let (Some(to_b), Some(to_a)) =
            (Self::form_on(zoning, one, &b, rng), Self::form_on(zoning, other, &a, rng))
        else {
            return false;
        };
        self.change(board, one, None, touched);
        self.change(board, other, None, touched);
        self.stand_in(board, one, &to_b, &b, rng, touched)
            && self.stand_in(board, other, &to_a, &a, rng, touched)
    }

    /// Three lots change places in a ring.
    fn cycle(
        &mut self,
        board: &mut Board,
        zoning: &Zoning,
        one: usize,
        rng: &mut Xoshiro256PlusPlus,
        touched: &mut Touched,
    ) -> bool {
        let ring = [one, self.any(rng), self.any(rng)];
        if ring[0] == ring[1] || ring[1] == ring[2] || ring[0] == ring[2] {
            return false;
        }
        let mut places = [None; 3];
        for k in 0..3 {
            places[k] = board.place(ring[k]).copied();
        }
        let [Some(a), Some(b), Some(c)] = places else { return false };
        let targets = [b, c, a];
        let mut homes = [None; 3];
        for k in 0..3 {
            homes[k] = Self::form_on(zoning, ring[k], &targets[k], rng);
        }
        let [Some(x), Some(y), Some(z)] = homes else { return false };
        for lot in ring {
            self.change(board, lot, None, touched);
        }
        [x, y, z]
            .iter()
            .enumerate()
            .all(|(k, home)| self.stand_in(board, ring[k], home, &targets[k], rng, touched))
    }

    /// A lot from off the cart takes the place of one of lesser value, which looks for another.
    fn eject(
        &mut self,
        board: &mut Board,
        zoning: &Zoning,
        lot: usize,
        rng: &mut Xoshiro256PlusPlus,
        touched: &mut Touched,
    ) -> bool {
        let other = self.any(rng);
        let Some(there) = board.place(other).copied() else { return false };
        let Some(home) = Self::form_on(zoning, lot, &there, rng) else { return false };
        self.change(board, other, None, touched);
        if !self.stand_in(board, lot, &home, &there, rng, touched) {
            return false;
        }
        for _ in 0..4 {
            let homes = &zoning.homes[other];
            let home = homes[rng.random_range(0..homes.len() as u32) as usize];
            if self.settle(board, other, &home, rng, touched) {
                break;
            }
        }
        true
    }

    fn form_on(
        zoning: &Zoning,
        lot: usize,
        place: &Place,
        rng: &mut Xoshiro256PlusPlus,
    ) -> Option<Home> {
        let homes = zoning.on_surface(lot, place.home.surface);
        (!homes.is_empty()).then(|| homes[rng.random_range(0..homes.len() as u32) as usize])
    }

    /// Puts a lot where another stood: at one of its corners, slid free along one axis.
    fn stand_in(
        &mut self,
        board: &mut Board,
        lot: usize,
        home: &Home,
        there: &Place,
        rng: &mut Xoshiro256PlusPlus,
        touched: &mut Touched,
    ) -> bool {
        if !self.clearing.look(board, lot, home) {
            return false;
        }
        let surface = &board.site().surfaces[home.surface as usize];
        let axes = surface.free_axes();
        let draw = rng.random_range(0..8u32);
        let mut at = [Length::ZERO; 2];
        for (k, &axis) in axes.iter().enumerate() {
            at[k] = if draw >> k & 1 == 0 {
                there.space.min[axis]
            } else {
                there.space.max[axis] - home.extents[axis]
            };
            let [low, high] = self.clearing.range(k);
            at[k] = at[k].clamp(low, high);
        }
        let k = (draw >> 2) as usize;
        let up = draw >> (1 - k) & 1 == 0;
        let Some(slid) = self.clearing.slide(1 - k, at[k], at[1 - k], up) else { return false };
        at[1 - k] = slid;
        let space = self.clearing.at(at[0], at[1]);
        if !has_way_out(board, home.surface as usize, &space) {
            return false;
        }
        self.change(board, lot, Some(Place { home: *home, space }), touched);
        true
    }
}
