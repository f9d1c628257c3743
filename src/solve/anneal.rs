//! Simulated annealing, whatever is annealed: random moves, fewer and fewer of which may make things worse.

use super::Watch;
use rand::RngExt;
use rand::rngs::Xoshiro256PlusPlus;

/// Trial moves between two looks at the outside, at one temperature.
const GLANCE: u64 = 1024;
/// Most trial moves that find out what is warm, and the share of all moves that they may be.
const TRIES: u64 = 400;
const SHARE: u64 = 20;
/// A rise that is never accepted.
pub const NEVER: i64 = i64::MAX;

/// A state on which random moves are made and taken back.
pub trait Walk {
    /// Makes one random move and tells by how much the energy rises; `None` where the draw was not legal and nothing
    /// changed.
    fn step(&mut self, rng: &mut Xoshiro256PlusPlus) -> Option<i64>;
    /// Undoes the last move.
    fn take_back(&mut self);
    /// The last move stays.
    fn stay(&mut self);
    /// Half of the moves are made.
    fn grow_strict(&mut self) {}
}

/// How warm a run begins and ends, as a share of the usual rise of a random move.
#[derive(Clone, Copy, Debug)]
pub struct Heat {
    /// At the beginning.
    pub from: f64,
    /// At the end.
    pub to: f64,
}

/// Trial moves of a run.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub struct Count {
    /// All that were proposed.
    pub moves: u64,
    /// Those whose whole price reached the acceptance test.
    pub priced: u64,
}

/// Makes so many trial moves, from warm to cool.
pub fn cool<W: Walk>(
    walk: &mut W,
    rng: &mut Xoshiro256PlusPlus,
    moves: u64,
    heat: Heat,
    watch: &Watch,
) -> Count {
    let mut count = Count::default();
    if moves == 0 {
        return count;
    }
    let mut temperature = warmth(walk, rng, (moves / SHARE).min(TRIES)) * heat.from;
    let blocks = moves.div_ceil(GLANCE);
    let cooling = libm::pow(heat.to / heat.from, 1.0 / blocks as f64);
    for block in 0..blocks {
        if watch.is_over() {
            break;
        }
        if block == blocks / 2 {
            walk.grow_strict();
        }
        let so_many = GLANCE.min(moves - count.moves);
        count.priced += stretch(walk, rng, so_many, temperature);
        count.moves += so_many;
        watch.add(so_many);
        temperature *= cooling;
    }
    count
}

/// A stretch of moves at one temperature; tells how many were priced.
fn stretch<W: Walk>(
    walk: &mut W,
    rng: &mut Xoshiro256PlusPlus,
    moves: u64,
    temperature: f64,
) -> u64 {
    let mut priced = 0;
    for _ in 0..moves {
        let Some(rise) = walk.step(rng) else { continue };
        priced += 1;
        if accepted(rise, temperature, rng) {
            walk.stay();
        } else {
            walk.take_back();
        }
    }
    priced
}

/// The usual rise of a random move that rises, the middle one of those tried: what is warm for this question.
fn warmth<W: Walk>(walk: &mut W, rng: &mut Xoshiro256PlusPlus, tries: u64) -> f64 {
    let mut rises = Vec::new();
    for _ in 0..tries {
        let Some(rise) = walk.step(rng) else { continue };
        if rise > 0 {
            rises.push(rise);
        }
        walk.take_back();
    }
    rises.sort_unstable();
    rises.get(rises.len() / 2).map_or(1.0, |&rise| rise as f64)
}

#[inline]
fn accepted(rise: i64, temperature: f64, rng: &mut Xoshiro256PlusPlus) -> bool {
    if rise <= 0 {
        return true;
    }
    let x = rise as f64 / temperature;
    x < 30.0 && libm::exp(-x) > rng.random_range(0.0..1.0)
}
