//! Random trial moves on a leash.

use super::Held;
use super::walk::Tethered;
use crate::solve::Watch;
use crate::solve::anneal::{Count, Heat, Walk, cool};
use crate::solve::search::energy;
use rand::rngs::Xoshiro256PlusPlus;

/// How warm a run begins and ends.
const HEAT: Heat = Heat { from: 0.1, to: 0.001 };

/// Makes so many trial moves and keeps the best layout met.
pub(super) fn anneal(
    tethered: &mut Tethered,
    rng: &mut Xoshiro256PlusPlus,
    moves: u64,
    best: &mut Held,
    watch: &Watch,
) -> Count {
    cool(&mut Annealed { tethered, best }, rng, moves, HEAT, watch)
}

/// A board on a leash in a run, with the best that it met.
struct Annealed<'a, 's, 'o> {
    tethered: &'a mut Tethered<'s, 'o>,
    best: &'a mut Held,
}

impl Walk for Annealed<'_, '_, '_> {
    fn step(&mut self, rng: &mut Xoshiro256PlusPlus) -> Option<i64> {
        let after = self.tethered.step(rng)?;
        Some(energy(after) - energy(self.tethered.before()))
    }
    fn take_back(&mut self) {
        self.tethered.take_back();
    }
    fn stay(&mut self) {
        let score = self.tethered.ledger.score();
        if score < self.best.score {
            let places = self.tethered.board.places().to_vec();
            *self.best = Held { places, score, moved: self.tethered.moved() };
        }
    }
}
