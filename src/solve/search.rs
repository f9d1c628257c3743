//! The search: a board with its ledger, on which moves are tried and the best layout is kept apart.

use super::Watch;
use super::anneal::{Count, Heat, NEVER, Walk, cool};
use super::propose::Mover;
use super::zoning::Zoning;
use crate::score::{Ledger, Score, Undo};
use crate::site::{Board, Place, Touched};
use crate::units::Length;
use rand::rngs::Xoshiro256PlusPlus;

/// What a broken rule weighs in the search, in microseconds.
const PER_BROKEN: i64 = 30_000_000;
/// What each thousandth of its excess weighs besides.
const PER_EXCESS: i64 = 30_000;
/// How much dearer a copy off the cart is in the search than in the score.
const PER_OFF_CART: i64 = 50;

/// A board with its ledger, on which moves are tried.
#[derive(Clone, Debug)]
pub struct Search<'s> {
    /// Where everything is.
    pub board: Board<'s>,
    /// What that costs.
    pub ledger: Ledger,
    touched: Touched,
    undo: Undo,
    mover: Mover,
}

/// The best layout of a run and what it took.
#[derive(Clone, Debug)]
pub struct Run {
    /// The best layout by `Score`.
    pub best: Vec<Option<Place>>,
    /// The heights of its shelves.
    pub shelves: Vec<Length>,
    /// Its value.
    pub score: Score,
    /// Trial moves that it took.
    pub count: Count,
}

impl<'s> Search<'s> {
    /// A search that begins from a board.
    pub fn new(board: Board<'s>, zoning: &Zoning) -> Search<'s> {
        let ledger = Ledger::new(&board);
        let mover = Mover::new(&board, zoning);
        Search { board, ledger, touched: Touched::default(), undo: Undo::default(), mover }
    }

    /// Makes one random move and prices it; `None` where the draw was not legal. [`Search::take_back`] undoes it.
    pub fn step(&mut self, zoning: &Zoning, rng: &mut Xoshiro256PlusPlus) -> Option<Score> {
        if !self.mover.step(&mut self.board, zoning, rng, &mut self.touched) {
            return None;
        }
        self.ledger.follow(&self.board, &self.touched, &mut self.undo);
        Some(self.ledger.score())
    }

    /// Undoes the last move.
    pub fn take_back(&mut self) {
        self.mover.take_back(&mut self.board, &mut self.touched);
        self.ledger.undo(&self.undo);
    }

    /// Anneals for so many trial moves.
    pub fn anneal(
        &mut self,
        zoning: &Zoning,
        rng: &mut Xoshiro256PlusPlus,
        moves: u64,
        heat: Heat,
        watch: &Watch,
    ) -> Run {
        let best = Run {
            best: self.board.places().to_vec(),
            shelves: self.board.shelves().collect(),
            score: self.ledger.score(),
            count: Count::default(),
        };
        let moves = if self.mover.is_idle() { 0 } else { moves };
        let mut annealed = Annealed { search: self, zoning, best, strict: false };
        let count = cool(&mut annealed, rng, moves, heat, watch);
        Run { count, ..annealed.best }
    }
}

/// A search in a run, with the best that it met.
struct Annealed<'a, 's> {
    search: &'a mut Search<'s>,
    zoning: &'a Zoning,
    best: Run,
    /// Whether nothing more may be broken or left out than is already.
    strict: bool,
}

impl Walk for Annealed<'_, '_> {
    fn step(&mut self, rng: &mut Xoshiro256PlusPlus) -> Option<i64> {
        let after = self.search.step(self.zoning, rng)?;
        let before = self.search.undo.score();
        let worse = (after.broken, after.off_cart) > (before.broken, before.off_cart);
        let refused = self.strict && worse;
        Some(if refused { NEVER } else { energy(after) - energy(before) })
    }
    fn take_back(&mut self) {
        self.search.take_back();
    }
    fn stay(&mut self) {
        let score = self.search.ledger.score();
        if score < self.best.score {
            self.search.mover.note_useful();
            let board = &self.search.board;
            self.best.score = score;
            self.best.best.copy_from_slice(board.places());
            self.best.shelves.clear();
            self.best.shelves.extend(board.shelves());
        }
    }
    fn grow_strict(&mut self) {
        self.strict = true;
    }
}

/// One number for the acceptance test, in microseconds a week: what is broken and off the cart counts far more than it
/// costs, but finitely, so that a run gets past a state that is worse for a moment.
pub fn energy(score: Score) -> i64 {
    score.cost
        + PER_OFF_CART * score.off_cart
        + PER_BROKEN * score.broken
        + PER_EXCESS * score.excess
}
