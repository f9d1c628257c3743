//! Random trial moves on a leash, fewer and fewer of which may make things worse.

use super::Held;
use super::walk::Walk;
use crate::score::Score;
use crate::solve::Watch;
use rand::RngExt;
use rand::rngs::Xoshiro256PlusPlus;
use std::sync::atomic::Ordering;

/// Trial moves at one temperature.
const BLOCK: u64 = 512;
/// Trial moves that find out what is warm.
const WARMTH: u64 = 200;
/// How warm a run begins and ends, as shares of the mean rise of a random move.
const HEAT: [f64; 2] = [0.1, 0.001];
/// What a broken rule, a thousandth of its excess, and off the cart weigh in the search: far more than what a place
/// costs, but finite, so that a run gets past a state that is worse for a moment.
const PER_BROKEN: i64 = 30_000_000;
const PER_EXCESS: i64 = 30_000;
const PER_OFF_CART: i64 = 50;
/// Makes so many trial moves and keeps the best layout met; tells how many were priced.
pub(super) fn anneal(
    walk: &mut Walk,
    rng: &mut Xoshiro256PlusPlus,
    moves: u64,
    best: &mut Held,
    watch: &Watch,
) -> u64 {
    let warm = warmth(walk, rng, WARMTH.min(moves));
    let blocks = moves.div_ceil(BLOCK).max(1);
    let cooling = libm::pow(HEAT[1] / HEAT[0], 1.0 / blocks as f64);
    let (mut temperature, mut priced) = (warm * HEAT[0], 0);
    for n in 0..moves {
        if n % BLOCK == 0 {
            if watch.stop.load(Ordering::Relaxed) {
                break;
            }
            watch.done.fetch_add(BLOCK, Ordering::Relaxed);
            temperature *= cooling;
        }
        let Some(after) = walk.step(rng) else { continue };
        priced += 1;
        let rise = energy(after) - energy(walk.before());
        if rise > 0 && !lucky(rise, temperature, rng) {
            walk.take_back();
        } else if after < best.score {
            let (places, moved) = (walk.board.places().to_vec(), walk.moved());
            *best = Held { places, score: after, moved };
        }
    }
    priced
}

/// The mean rise over random moves that rise: what is warm for this cart on this leash.
fn warmth(walk: &mut Walk, rng: &mut Xoshiro256PlusPlus, tries: u64) -> f64 {
    let (mut sum, mut n) = (0.0, 0u32);
    for _ in 0..tries {
        let Some(after) = walk.step(rng) else { continue };
        let rise = after.cost - walk.before().cost;
        if rise > 0 {
            sum += rise as f64;
            n += 1;
        }
        walk.take_back();
    }
    if n == 0 { 1.0 } else { sum / f64::from(n) }
}

/// One number for the acceptance test.
fn energy(score: Score) -> i64 {
    score.cost
        + PER_OFF_CART * score.off_cart
        + PER_BROKEN * score.broken
        + PER_EXCESS * score.excess
}

fn lucky(rise: i64, temperature: f64, rng: &mut Xoshiro256PlusPlus) -> bool {
    let x = rise as f64 / temperature;
    x < 30.0 && libm::exp(-x) > rng.random_range(0.0..1.0)
}
