//! The best layouts that can be had by moving at most so many things.
//!
//! One point after the other: each begins from the best of those before it, with one move more found by looking at every
//! lot and every corner place, then runs of trial moves within the leash. So the curve never rises, and it is the same
//! for any number of threads.

mod homing;
mod walk;

use super::finish::{corners, fill, trial};
use super::zoning::Zoning;
use super::{Effort, Settings, Watch};
use crate::score::{Ledger, Score};
use crate::site::{Board, Change, Place, Site};
use rand::rngs::Xoshiro256PlusPlus;
use rand::{RngExt, SeedableRng};
use rayon::prelude::*;
use std::sync::atomic::Ordering;
use walk::{Crew, Walk};

pub use homing::homing;

/// Trial moves for each point on a cart of [`USUAL_LOTS`] lots, all runs together.
const MOVES: u64 = 80_000;
const USUAL_LOTS: u64 = 60;
/// Runs for each point.
const RUNS: usize = 4;
/// Trial moves at one temperature.
const BLOCK: u64 = 512;
/// Trial moves that find out what is warm.
const WARMTH: u64 = 200;
/// How warm a run begins and ends, as shares of the mean rise of a random move.
const HEAT: [f64; 2] = [0.3, 0.0005];
/// What a broken rule, a thousandth of its excess, and off the cart weigh in the search: far more than what a place
/// costs, but finite, so that a run gets past a state that is worse for a moment.
const PER_BROKEN: i64 = 30_000_000;
const PER_EXCESS: i64 = 30_000;
const PER_OFF_CART: i64 = 50;
/// Rounds of looking at every corner place of what was moved.
const ROUNDS: usize = 3;

/// A layout with at most so many lots moved.
#[derive(Clone, Debug)]
pub struct Held {
    /// Where everything is.
    pub places: Vec<Option<Place>>,
    /// Its value.
    pub score: Score,
    /// How many lots are elsewhere than they were.
    pub moved: usize,
}

impl Held {
    /// A layout as it stands, seen from where things were.
    pub fn new(site: &Site, old: &[Option<Place>], places: Vec<Option<Place>>) -> Held {
        let score = Ledger::new(&Board::with(site, &places)).score();
        let moved = moved(old, &places);
        Held { places, score, moved }
    }
    /// The better by score; of equals the one with fewer moves, of equals there the first.
    fn or(self, other: Held) -> Held {
        if (other.score, other.moved) < (self.score, self.moved) { other } else { self }
    }
}

/// The points of the curve and what they took.
#[derive(Clone, Debug, Default)]
pub struct Leashed {
    /// The best with at most 0, 1, 2, … moved lots.
    pub points: Vec<Held>,
    /// Trial moves proposed.
    pub moves: u64,
    /// Those whose whole price reached the acceptance test.
    pub priced: u64,
    /// Runs.
    pub restarts: u32,
}

/// How many lots that were on the cart are elsewhere; placing a new one is no move.
pub fn moved(old: &[Option<Place>], places: &[Option<Place>]) -> usize {
    old.iter().zip(places).filter(|(was, is)| was.is_some() && was != is).count()
}

/// The best layouts with at most 0, 1, 2, … `most` lots elsewhere than in `old`. Offers are layouts that were found
/// otherwise; each is taken where it needs few enough moves.
pub fn leash(
    site: &Site,
    old: &[Option<Place>],
    most: usize,
    offers: &[Held],
    settings: &Settings,
    watch: &Watch,
) -> Leashed {
    let work = || points(site, old, most, offers, settings, watch);
    match rayon::ThreadPoolBuilder::new().num_threads(settings.threads).build() {
        Ok(pool) => pool.install(work),
        Err(_) => work(),
    }
}

fn points(
    site: &Site,
    old: &[Option<Place>],
    most: usize,
    offers: &[Held],
    settings: &Settings,
    watch: &Watch,
) -> Leashed {
    let movable: Vec<u32> = (0..site.lots.len() as u32)
        .filter(|&l| {
            site.lots[l as usize].fixed.is_none() && !site.lots[l as usize].homes.is_empty()
        })
        .collect();
    let new = movable.iter().copied().filter(|&l| old[l as usize].is_none()).collect();
    let crew = Crew { movable, new };
    let moves = budget(site, settings.effort);
    watch.planned.fetch_add(moves * (most as u64 + 1), Ordering::Relaxed);
    let mut all = Leashed::default();
    for k in 0..=most {
        let point = Point { site, old, crew: &crew, most: k, seed: settings.seed, watch };
        let begin = match all.points.last() {
            Some(last) => last.clone(),
            None => point.first(),
        };
        let offered = offers.iter().filter(|o| o.moved <= k).cloned();
        let begin = offered.fold(begin, Held::or);
        let earlier = k.checked_sub(2).map(|j| all.points[j].clone());
        let best = point.search(begin, earlier, moves / RUNS as u64, &mut all);
        all.points.push(best);
    }
    all
}

fn budget(site: &Site, effort: Effort) -> u64 {
    let lots = site.lots.len() as u64;
    let usual = MOVES * lots.clamp(USUAL_LOTS / 3, USUAL_LOTS * 4) / USUAL_LOTS;
    match effort {
        Effort::Quick => usual / 4,
        Effort::Normal => usual,
        Effort::Thorough => usual * 10,
    }
}

/// One point of the curve to be found.
#[derive(Clone, Copy)]
struct Point<'s, 'a> {
    site: &'s Site,
    old: &'a [Option<Place>],
    crew: &'a Crew,
    most: usize,
    seed: u64,
    watch: &'a Watch,
}

impl<'s> Point<'s, '_> {
    fn held(&self, board: &Board) -> Held {
        Held::new(self.site, self.old, board.places().to_vec())
    }

    /// Everything where it was, and the new things in their best free places.
    fn first(&self) -> Held {
        let mut board = Board::with(self.site, self.old);
        fill(&mut board, &Zoning::none(self.site));
        self.held(&board).or(Held::new(self.site, self.old, self.old.to_vec()))
    }

    /// The best that is found from the best so far, and from one with two moves less.
    fn search(&self, begin: Held, earlier: Option<Held>, moves: u64, all: &mut Leashed) -> Held {
        let further = self.one_more(&begin);
        let from = |run: usize| match run % RUNS {
            1 => earlier.as_ref().unwrap_or(&begin),
            2 => &begin,
            _ => &further,
        };
        let runs: Vec<(Held, u64, u64)> =
            (0..RUNS).into_par_iter().map(|run| self.run(from(run), run, moves)).collect();
        let mut best = begin.or(further.clone());
        for (held, tried, priced) in runs {
            all.moves += tried;
            all.priced += priced;
            all.restarts += 1;
            best = best.or(held);
        }
        best
    }

    /// The best layout that one lot in another corner place makes of this one.
    fn one_more(&self, begin: &Held) -> Held {
        let board = Board::with(self.site, &begin.places);
        let ledger = Ledger::new(&board);
        let full = begin.moved >= self.most;
        let away = |l: usize| self.old[l] != begin.places[l];
        let lots = self.crew.movable.par_iter().map(|&l| l as usize);
        let found: Vec<Option<(Score, usize, Place)>> = lots
            .map_with((board, ledger), |(board, ledger), l| {
                let free = self.old[l].is_none() || away(l);
                (free || !full).then(|| best_corner(board, ledger, l)).flatten()
            })
            .collect();
        let best = found.into_iter().flatten().min_by_key(|(score, lot, _)| (*score, *lot));
        let mut places = begin.places.clone();
        if let Some((score, lot, place)) = best
            && score < begin.score
        {
            places[lot] = Some(place);
        }
        Held::new(self.site, self.old, places)
    }

    fn run(&self, from: &Held, number: usize, moves: u64) -> (Held, u64, u64) {
        let mix = (self.most as u64) << 32 | (number as u64) << 1 | 1;
        let mut rng = Xoshiro256PlusPlus::seed_from_u64(self.seed.wrapping_add(mix << 8));
        let board = Board::with(self.site, &from.places);
        let mut walk = Walk::new(board, self.old, self.crew, self.most);
        let mut best = from.clone();
        let idle = self.crew.movable.is_empty() || self.most == 0 && self.crew.new.is_empty();
        let moves = if idle { 0 } else { moves };
        let priced = self.anneal(&mut walk, &mut rng, moves, &mut best);
        (self.polish(best), moves, priced)
    }

    /// Trial moves, ever fewer of which may make things worse.
    fn anneal(
        &self,
        walk: &mut Walk,
        rng: &mut Xoshiro256PlusPlus,
        moves: u64,
        best: &mut Held,
    ) -> u64 {
        let warm = warmth(walk, rng, WARMTH.min(moves));
        let blocks = moves.div_ceil(BLOCK).max(1);
        let cooling = libm::pow(HEAT[1] / HEAT[0], 1.0 / blocks as f64);
        let (mut temperature, mut priced) = (warm * HEAT[0], 0);
        for n in 0..moves {
            if n % BLOCK == 0 {
                if self.watch.stop.load(Ordering::Relaxed) {
                    break;
                }
                self.watch.done.fetch_add(BLOCK, Ordering::Relaxed);
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

    /// Looks at every corner place of what is new or moved, until nothing gets better by itself.
    fn polish(&self, held: Held) -> Held {
        let board = Board::with(self.site, &held.places);
        let mut walk = Walk::new(board, self.old, self.crew, self.most);
        for _ in 0..ROUNDS {
            let before = walk.ledger.score();
            for &l in &self.crew.movable {
                let l = l as usize;
                if self.old[l].as_ref() == walk.board.place(l) && self.old[l].is_some() {
                    continue;
                }
                let now = walk.ledger.score();
                let found = best_corner(&mut walk.board, &mut walk.ledger, l);
                if let Some((_, _, place)) = found.filter(|f| f.0 < now) {
                    walk.keep(l, Some(place));
                }
            }
            if walk.ledger.score() >= before {
                break;
            }
        }
        held.or(self.held(&walk.board))
    }
}

/// The best of all corner places of a lot.
fn best_corner(
    board: &mut Board,
    ledger: &mut Ledger,
    lot: usize,
) -> Option<(Score, usize, Place)> {
    let homes = board.site().lots[lot].homes.clone();
    let places = corners(board, lot, &homes).into_iter();
    places
        .map(|place| (trial(board, ledger, &[Change { lot, to: Some(place) }]), lot, place))
        .min_by_key(|(score, ..)| *score)
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
