//! Problems akin to planning a cart, as walks for the annealing core: its cooling, its acceptance, its growing cycles.

use crate::clock::Clock;
use rand::SeedableRng;
use rand::rngs::Xoshiro256PlusPlus;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::Duration;
use toolberth::solve::{Effort, Heat, Stop, Walk, Watch, cool, cycles};

/// Trial moves of a usual cycle, for each thing that is to be placed.
const USUAL: u64 = 40_000;
/// Between two looks at the clock.
const GLANCE: Duration = Duration::from_millis(5);

/// A problem with the state that is annealed and the best one met.
pub trait Puzzle: Walk {
    /// How warm a cycle begins and ends, from anywhere and again from the best.
    const HEATS: [Heat; 2];
    /// How many things are to be placed.
    fn size(&self) -> u64;
    /// Anything, drawn at random.
    fn shuffle(&mut self, rng: &mut Xoshiro256PlusPlus);
    /// The state becomes the best one met.
    fn resume(&mut self);
    /// What the best state met costs, where a legal one was met.
    fn least(&self) -> Option<i64>;
}

/// Does something that ends by itself or when that much time of a processor was spent on it.
pub fn timed<T>(time: Duration, work: impl FnOnce(&Watch) -> T) -> T {
    let (watch, clock, done) = (Watch::default(), Clock::start(), AtomicBool::new(false));
    std::thread::scope(|scope| {
        scope.spawn(|| {
            while !done.load(Ordering::Relaxed) && clock.spent() < time {
                std::thread::sleep(GLANCE);
            }
            watch.end(Stop::Time);
        });
        let result = work(&watch);
        done.store(true, Ordering::Relaxed);
        result
    })
}

/// Anneals a problem for that long, in growing cycles, each once from anywhere and once from the best; ends where that
/// costs no more than `goal`.
pub fn search<P: Puzzle>(puzzle: &mut P, seed: u64, time: Duration, goal: i64) -> Option<i64> {
    let mut rng = Xoshiro256PlusPlus::seed_from_u64(seed);
    timed(time, |watch| {
        for cycle in cycles(Effort::UntilEnded, watch) {
            let moves = cycle.moves(USUAL * puzzle.size());
            puzzle.shuffle(&mut rng);
            for heat in P::HEATS {
                cool(puzzle, &mut rng, moves / 2, heat, watch);
                puzzle.resume();
            }
            if puzzle.least().is_some_and(|least| least <= goal) {
                break;
            }
        }
    });
    puzzle.least()
}
