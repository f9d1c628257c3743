//! Simulated annealing: random legal moves, fewer and fewer of which may make things worse.

use super::Watch;
use super::propose::Mover;
use super::zoning::Zoning;
use crate::score::{Ledger, Score, Undo};
use crate::site::{Board, Place, Touched};
use crate::units::Length;
use rand::RngExt;
use rand::rngs::Xoshiro256PlusPlus;
use std::sync::atomic::Ordering;

/// What a broken rule weighs in the search, in microseconds.
const PER_BROKEN: i64 = 30_000_000;
/// What each thousandth of its excess weighs besides.
const PER_EXCESS: i64 = 30_000;
/// How much dearer a copy off the cart is in the search than in the score.
const PER_OFF_CART: i64 = 50;
/// Trial moves between two looks at the outside.
const GLANCE: u64 = 1024;

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
    /// Trial moves proposed.
    pub moves: u64,
    /// Those whose whole price reached the acceptance test.
    pub priced: u64,
}

/// How warm a run begins and ends, as a share of the mean rise of a random move.
#[derive(Clone, Copy, Debug)]
pub struct Heat {
    /// At the beginning.
    pub from: f64,
    /// At the end.
    pub to: f64,
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

    /// The mean rise of energy over random moves that rise: what is warm for this cart.
    fn warmth(&mut self, zoning: &Zoning, rng: &mut Xoshiro256PlusPlus, tries: u64) -> f64 {
        let (mut sum, mut n) = (0.0, 0u32);
        for _ in 0..tries {
            let cost = self.ledger.score().cost;
            if let Some(after) = self.step(zoning, rng) {
                let rise = after.cost - cost;
                let before = self.undo.score();
                if rise > 0 && after.broken <= before.broken && after.off_cart <= before.off_cart {
                    sum += rise as f64;
                    n += 1;
                }
                self.take_back();
            }
        }
        if n == 0 { 1.0 } else { sum / f64::from(n) }
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
        let mut run = Run {
            best: self.board.places().to_vec(),
            shelves: self.board.shelves().collect(),
            score: self.ledger.score(),
            moves: 0,
            priced: 0,
        };
        if self.mover.is_idle() || moves == 0 {
            return run;
        }
        let tries = (moves / 20).min(400);
        let warm = self.warmth(zoning, rng, tries);
        let mut temperature = warm * heat.from;
        let blocks = (moves / GLANCE).max(1);
        let cooling = libm::pow(heat.to / heat.from, 1.0 / blocks as f64);
        for block in 0..blocks {
            if watch.stop.load(Ordering::Relaxed) {
                break;
            }
            let strict = block * 2 >= blocks;
            self.block(zoning, rng, GLANCE.min(moves), temperature, strict, &mut run);
            watch.done.fetch_add(GLANCE.min(moves), Ordering::Relaxed);
            temperature *= cooling;
        }
        run
    }

    /// A stretch of moves at one temperature.
    fn block(
        &mut self,
        zoning: &Zoning,
        rng: &mut Xoshiro256PlusPlus,
        moves: u64,
        temperature: f64,
        strict: bool,
        run: &mut Run,
    ) {
        for _ in 0..moves {
            run.moves += 1;
            let before = self.ledger.score();
            let Some(after) = self.step(zoning, rng) else { continue };
            run.priced += 1;
            let refused =
                strict && (after.broken, after.off_cart) > (before.broken, before.off_cart);
            if refused || !accepted(energy(after) - energy(before), temperature, rng) {
                self.take_back();
            } else if after < run.score {
                run.score = after;
                run.best.copy_from_slice(self.board.places());
                run.shelves.clear();
                run.shelves.extend(self.board.shelves());
            }
        }
    }
}

/// One number for the acceptance test.
fn energy(score: Score) -> i64 {
    score.cost
        + PER_OFF_CART * score.off_cart
        + PER_BROKEN * score.broken
        + PER_EXCESS * score.excess
}

#[inline]
fn accepted(rise: i64, temperature: f64, rng: &mut Xoshiro256PlusPlus) -> bool {
    if rise <= 0 {
        return true;
    }
    let x = rise as f64 / temperature;
    x < 30.0 && libm::exp(-x) > rng.random_range(0.0..1.0)
}
