//! Trial moves on a leash: no more than so many lots may be elsewhere than they were.

use crate::score::{Ledger, Score, Undo};
use crate::site::{Board, Change, Clearing, Home, Place, Touched, fits_at, has_way_out};
use crate::units::Length;
use rand::RngExt;
use rand::rngs::Xoshiro256PlusPlus;

/// Most lots that one may turn out of their places.
const MOST_TURNED_OUT: usize = 4;
/// How many homes a lot that lost its place tries.
const TRIES: u32 = 6;
/// Shares of the kinds of place that a lot is moved to, in hundredths: a free corner, another's place, a corner that
/// may be taken, and the rest is where it was.
const FREE: u32 = 40;
const OTHERS: u32 = 70;
const TAKEN: u32 = 90;

/// Which lots may be moved, and which of them count.
#[derive(Clone, Debug)]
pub(super) struct Crew {
    /// All that are not fixed and have a home.
    pub movable: Vec<u32>,
    /// Those of them that were not on the cart: placing them is no move.
    pub new: Vec<u32>,
}

/// A board on which at most `most` lots are elsewhere than they were.
#[derive(Clone, Debug)]
pub(super) struct Tethered<'s, 'a> {
    /// Where everything is.
    pub board: Board<'s>,
    /// What that costs.
    pub ledger: Ledger,
    old: &'a [Option<Place>],
    crew: &'a Crew,
    most: usize,
    /// Lots that are elsewhere now.
    moved: Vec<u32>,
    /// What undoes the changes of this step, in the order of making.
    changes: Vec<Change>,
    turned_out: Vec<u32>,
    clearing: Clearing,
    touched: Touched,
    undo: Undo,
}

impl<'s, 'a> Tethered<'s, 'a> {
    /// A walk that begins from a board.
    pub fn new(
        board: Board<'s>,
        old: &'a [Option<Place>],
        crew: &'a Crew,
        most: usize,
    ) -> Tethered<'s, 'a> {
        let ledger = Ledger::new(&board);
        let moved = (0..old.len() as u32).filter(|&l| away(old, &board, l as usize)).collect();
        Tethered {
            board,
            ledger,
            old,
            crew,
            most,
            moved,
            changes: Vec::new(),
            turned_out: Vec::new(),
            clearing: Clearing::default(),
            touched: Touched::default(),
            undo: Undo::default(),
        }
    }

    /// How many lots are elsewhere than they were.
    pub fn moved(&self) -> usize {
        self.moved.len()
    }
    /// The score before the last step.
    pub fn before(&self) -> Score {
        self.undo.score()
    }

    /// Makes one random move within the leash and prices it; `None` where the draw was not legal and nothing changed.
    pub fn step(&mut self, rng: &mut Xoshiro256PlusPlus) -> Option<Score> {
        self.changes.clear();
        self.touched.clear();
        if !(self.go(rng) && self.tether(rng)) {
            self.back();
            return None;
        }
        self.ledger.follow(&self.board, &self.touched, &mut self.undo);
        Some(self.ledger.score())
    }

    /// Undoes the last step.
    pub fn take_back(&mut self) {
        self.back();
        self.ledger.undo(&self.undo);
    }

    /// Puts one lot somewhere else for good, or off the cart.
    pub fn keep(&mut self, lot: usize, to: Option<Place>) {
        self.changes.clear();
        self.touched.clear();
        self.change(lot, to);
        self.ledger.follow(&self.board, &self.touched, &mut self.undo);
    }

    fn back(&mut self) {
        while let Some(change) = self.changes.pop() {
            self.board.apply(change, &mut self.touched);
            self.count(change.lot);
        }
    }

    fn change(&mut self, lot: usize, to: Option<Place>) {
        let back = self.board.apply(Change { lot, to }, &mut self.touched);
        self.changes.push(back);
        self.count(lot);
    }

    fn count(&mut self, lot: usize) {
        let at = self.moved.iter().position(|&m| m as usize == lot);
        match (away(self.old, &self.board, lot), at) {
            (true, None) => self.moved.push(lot as u32),
            (false, Some(k)) => drop(self.moved.swap_remove(k)),
            _ => {}
        }
    }

    /// A lot that may be moved: as often one that costs no move as any other.
    fn any(&self, rng: &mut Xoshiro256PlusPlus) -> Option<usize> {
        let (new, moved) = (self.crew.new.len() as u32, self.moved.len() as u32);
        if new + moved > 0 && (self.most == 0 || rng.random_range(0..2u32) == 0) {
            let k = rng.random_range(0..new + moved);
            let lot =
                if k < new { self.crew.new[k as usize] } else { self.moved[(k - new) as usize] };
            return Some(lot as usize);
        }
        let all = self.crew.movable.len() as u32;
        (self.most > 0 && all > 0)
            .then(|| self.crew.movable[rng.random_range(0..all) as usize] as usize)
    }

    /// One lot goes somewhere; what stood there looks for another place.
    fn go(&mut self, rng: &mut Xoshiro256PlusPlus) -> bool {
        let Some(lot) = self.any(rng) else { return false };
        let before = self.board.place(lot).copied();
        let kind = rng.random_range(0..100u32);
        let target = if kind < FREE {
            self.free_corner(lot, rng)
        } else if kind < OTHERS {
            self.place_of_another(lot, rng)
        } else if kind < TAKEN {
            self.taken_corner(lot, rng)
        } else {
            self.old[lot]
        };
        let Some(place) = target.filter(|p| before.as_ref() != Some(p)) else { return false };
        self.change(lot, None);
        if !self.make_room(lot, &place) || !fits_at(&self.board, lot, &place, &mut self.clearing) {
            return false;
        }
        self.change(lot, Some(place));
        let turned_out = std::mem::take(&mut self.turned_out);
        for &other in &turned_out {
            self.resettle(other as usize, before.as_ref(), rng);
        }
        self.turned_out = turned_out;
        true
    }

    /// Sends lots back to where they were until no more than allowed are elsewhere; `false` where that cannot be.
    fn tether(&mut self, rng: &mut Xoshiro256PlusPlus) -> bool {
        while self.moved.len() > self.most {
            let made: Vec<usize> = self.changes.iter().map(|c| c.lot).collect();
            let mut idle: Vec<u32> =
                self.moved.iter().copied().filter(|&m| !made.contains(&(m as usize))).collect();
            if idle.len() + self.most < self.moved.len() {
                return false;
            }
            let mut sent = false;
            while !sent && !idle.is_empty() {
                let lot =
                    idle.swap_remove(rng.random_range(0..idle.len() as u32) as usize) as usize;
                sent = self.send_home(lot);
            }
            if !sent {
                return false;
            }
        }
        true
    }

    fn send_home(&mut self, lot: usize) -> bool {
        let Some(place) = self.old[lot] else { return false };
        let fits = fits_at(&self.board, lot, &place, &mut self.clearing);
        if fits {
            self.change(lot, Some(place));
        }
        fits
    }

    /// Looks for a place for a lot that lost its own: where it was, where the other came from, or anywhere.
    fn resettle(&mut self, lot: usize, first: Option<&Place>, rng: &mut Xoshiro256PlusPlus) {
        if self.old[lot] != self.board.place(lot).copied()
            && rng.random_range(0..2u32) == 0
            && self.send_home(lot)
        {
            return;
        }
        if let Some(there) = first
            && let Some(place) = self.beside(lot, there, rng)
        {
            return self.change(lot, Some(place));
        }
        for _ in 0..TRIES {
            if let Some(place) = self.free_corner(lot, rng) {
                return self.change(lot, Some(place));
            }
        }
    }

    /// Lifts what is in the way of a lot at a place; `false` where that is too much or may not be moved.
    fn make_room(&mut self, lot: usize, place: &Place) -> bool {
        let site = self.board.site();
        let s = place.home.surface as usize;
        let space = &site.spaces[site.surfaces[s].space];
        let mut need = place.space;
        need.max[2] += self.board.headroom(lot, s);
        self.turned_out.clear();
        for &other in std::iter::once(&site.surfaces[s].space).chain(&space.near) {
            for &m in self.board.members(other) {
                let Some(there) = self.board.place(m as usize) else { continue };
                let mut its = there.space;
                its.max[2] += self.board.headroom(m as usize, there.home.surface as usize);
                if need.overlaps(&there.space) || its.overlaps(&place.space) {
                    self.turned_out.push(m);
                }
            }
        }
        let nailed = |&m: &u32| !self.crew.movable.contains(&m);
        if self.turned_out.len() > MOST_TURNED_OUT || self.turned_out.iter().any(nailed) {
            return false;
        }
        // Neighbours are kept in no order that means anything; moves must be made in one that does.
        self.turned_out
            .sort_unstable_by_key(|&m| (std::cmp::Reverse(site.lots[m as usize].mass), m));
        for k in 0..self.turned_out.len() {
            self.change(self.turned_out[k] as usize, None);
        }
        true
    }

    /// A free place against an edge on one axis, slid to contact on the other.
    fn free_corner(&mut self, lot: usize, rng: &mut Xoshiro256PlusPlus) -> Option<Place> {
        let home = self.home(lot, rng)?;
        if !self.clearing.look(&self.board, lot, &home) {
            return None;
        }
        let k = rng.random_range(0..2u32) as usize;
        let drawn = self.edge(k, rng)?;
        let up = rng.random_range(0..2u32) == 0;
        let from = if rng.random_range(0..3u32) == 0 {
            self.edge(1 - k, rng)?
        } else {
            self.clearing.range(1 - k)[usize::from(!up)]
        };
        let slid = self.clearing.slide(1 - k, drawn, from, up)?;
        let (p, q) = if k == 0 { (drawn, slid) } else { (slid, drawn) };
        let space = self.clearing.at(p, q);
        has_way_out(&self.board, home.surface as usize, &space).then_some(Place { home, space })
    }

    /// A place against edges on both axes, whoever is there.
    fn taken_corner(&mut self, lot: usize, rng: &mut Xoshiro256PlusPlus) -> Option<Place> {
        let home = self.home(lot, rng)?;
        if !self.clearing.look(&self.board, lot, &home) {
            return None;
        }
        let (p, q) = (self.edge(0, rng)?, self.edge(1, rng)?);
        Some(Place { home, space: self.clearing.at(p, q) })
    }

    fn home(&self, lot: usize, rng: &mut Xoshiro256PlusPlus) -> Option<Home> {
        let homes = &self.board.site().lots[lot].homes;
        (!homes.is_empty()).then(|| homes[rng.random_range(0..homes.len() as u32) as usize])
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

    /// A place at one of the corners of another lot's place, as if that one were not there.
    fn place_of_another(&mut self, lot: usize, rng: &mut Xoshiro256PlusPlus) -> Option<Place> {
        let other = self.any(rng).filter(|&o| o != lot)?;
        let there = self.board.place(other).copied()?;
        let home = self.home_on(lot, there.home.surface, rng)?;
        self.clearing.look(&self.board, lot, &home).then(|| {
            let at = self.aligned(&home, &there, rng);
            Place { home, space: self.clearing.at(at[0], at[1]) }
        })
    }

    /// A free place at one of the corners of another lot's former place, slid free along one axis.
    fn beside(&mut self, lot: usize, there: &Place, rng: &mut Xoshiro256PlusPlus) -> Option<Place> {
        let home = self.home_on(lot, there.home.surface, rng)?;
        if !self.clearing.look(&self.board, lot, &home) {
            return None;
        }
        let mut at = self.aligned(&home, there, rng);
        let k = rng.random_range(0..2u32) as usize;
        at[k] = self.clearing.slide(k, at[1 - k], at[k], rng.random_range(0..2u32) == 0)?;
        let space = self.clearing.at(at[0], at[1]);
        has_way_out(&self.board, home.surface as usize, &space).then_some(Place { home, space })
    }

    fn home_on(&self, lot: usize, surface: u32, rng: &mut Xoshiro256PlusPlus) -> Option<Home> {
        // Homes stand surface by surface.
        let homes = &self.board.site().lots[lot].homes;
        let from = homes.partition_point(|h| h.surface < surface);
        let to = homes.partition_point(|h| h.surface <= surface);
        (from < to).then(|| homes[rng.random_range(from as u32..to as u32) as usize])
    }

    /// The least corner of a lot put into one of the corners of another's place, as far as the surface goes.
    fn aligned(&self, home: &Home, there: &Place, rng: &mut Xoshiro256PlusPlus) -> [Length; 2] {
        let axes = self.board.site().surfaces[home.surface as usize].free_axes();
        [0, 1].map(|k| {
            let axis = axes[k];
            let [low, high] = self.clearing.range(k);
            let c = match rng.random_range(0..2u32) {
                0 => there.space.min[axis],
                _ => there.space.max[axis] - home.extents[axis],
            };
            c.clamp(low, high)
        })
    }
}

/// Whether a lot that was on the cart is elsewhere now.
fn away(old: &[Option<Place>], board: &Board, lot: usize) -> bool {
    old[lot].is_some() && old[lot].as_ref() != board.place(lot)
}
