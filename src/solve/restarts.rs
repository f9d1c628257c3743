//! Runs of the search side by side: first every division of the faces, then the best ones again and cooler.
//!
//! Each round has a fixed number of runs of a fixed number of moves, each with a generator of its own; the best is taken
//! in the order of the runs. So the result is the same for any number of threads.

use super::anneal::Heat;
use super::finish::{fill, settle, squeeze, tidy};
use super::search::{Run, Search};
use super::start::start;
use super::zoning::{Zoning, zonings};
use super::{Effort, Settings, Watch};
use crate::score::{Ledger, Score};
use crate::site::{Board, Place, Site};
use crate::units::Length;
use rand::SeedableRng;
use rand::rngs::Xoshiro256PlusPlus;
use rayon::prelude::*;
use std::sync::atomic::Ordering;

/// Trial moves of a usual search on a cart of [`USUAL_LOTS`] lots, all runs together.
const MOVES: u64 = 2_400_000;
const USUAL_LOTS: u64 = 60;
/// Runs of the later rounds.
const RUNS: usize = 8;

/// The best layout found and what it took.
#[derive(Clone, Debug)]
pub struct Found {
    /// Where everything is.
    pub places: Vec<Option<Place>>,
    /// How high the top of each shelf board is.
    pub shelves: Vec<Length>,
    /// Its value.
    pub score: Score,
    /// Trial moves proposed.
    pub moves: u64,
    /// Those whose whole price reached the acceptance test.
    pub priced: u64,
    /// Runs.
    pub restarts: u32,
    /// Whether it was stopped from outside.
    pub ended_early: bool,
}

/// A run to be made.
struct Order<'a> {
    zoning: &'a Zoning,
    from: Vec<Option<Place>>,
    shelves: Vec<Length>,
    moves: u64,
    heat: Heat,
    number: u64,
}

/// Searches.
pub fn solve(site: &Site, settings: &Settings, watch: &Watch) -> Found {
    let begin = start(site);
    let first = Found {
        places: begin.places().to_vec(),
        shelves: begin.shelves().collect(),
        score: Ledger::new(&begin).score(),
        moves: 0,
        priced: 0,
        restarts: 0,
        ended_early: false,
    };
    let work = || rounds(site, settings, watch, first.clone());
    // A pool of our own: the number of threads is the user's, and must not change anything but the time it takes.
    match rayon::ThreadPoolBuilder::new().num_threads(settings.threads).build() {
        Ok(pool) => pool.install(work),
        Err(_) => work(),
    }
}

fn budget(site: &Site, effort: Effort) -> u64 {
    let lots = site.lots.len() as u64;
    let usual = MOVES * lots.clamp(USUAL_LOTS / 6, USUAL_LOTS * 4) / USUAL_LOTS;
    match effort {
        Effort::Quick => usual / 10,
        Effort::Normal => usual,
        Effort::Thorough => usual * 10,
    }
}

fn rounds(site: &Site, settings: &Settings, watch: &Watch, mut found: Found) -> Found {
    let all = zonings(site);
    let total = budget(site, settings.effort);
    watch.planned.fetch_add(total, Ordering::Relaxed);
    // First round: every division, at least eight runs, from the start where it keeps to the division.
    let copies = RUNS.div_ceil(all.len());
    let orders: Vec<(usize, Order)> = (0..all.len() * copies)
        .map(|k| {
            let zoning = &all[k % all.len()];
            let moves = total * 3 / 10 / (all.len() * copies) as u64;
            let from = allowed(&found.places, zoning);
            let heat = Heat { from: 1.0, to: 0.002 };
            let shelves = found.shelves.clone();
            (k % all.len(), Order { zoning, from, shelves, moves, heat, number: k as u64 })
        })
        .collect();
    let runs = make(site, settings.seed, watch, &mut found, orders);
    // Second and third round: from the best so far, warm and then cool.
    let best = ranked(runs, 4);
    let orders = again(&all, &best, total * 5 / 10, Heat { from: 1.0, to: 0.001 }, 1000);
    let runs = make(site, settings.seed, watch, &mut found, orders);
    let mut best = ranked(runs, 2);
    best.extend(ranked(best.clone(), 1));
    let orders = again(&all, &best, total * 2 / 10, Heat { from: 0.15, to: 0.0005 }, 2000);
    make(site, settings.seed, watch, &mut found, orders);
    found.ended_early = watch.stop.load(Ordering::Relaxed);
    complete(site, &mut found);
    found
}

/// Makes runs side by side and takes over the best.
fn make<'a>(
    site: &Site,
    seed: u64,
    watch: &Watch,
    found: &mut Found,
    orders: Vec<(usize, Order<'a>)>,
) -> Vec<(usize, Run)> {
    let runs: Vec<(usize, Run)> =
        orders.into_par_iter().map(|(z, o)| (z, one(site, seed, watch, o))).collect();
    for (_, run) in &runs {
        found.moves += run.count.moves;
        found.priced += run.count.priced;
        found.restarts += 1;
        if run.score < found.score {
            found.score = run.score;
            found.places.clone_from(&run.best);
            found.shelves.clone_from(&run.shelves);
        }
    }
    runs
}

fn one(site: &Site, seed: u64, watch: &Watch, order: Order) -> Run {
    let mut rng = Xoshiro256PlusPlus::seed_from_u64(mix(seed, order.number));
    let mut board = Board::set_up(site, &order.shelves, &order.from);
    fill(&mut board, order.zoning);
    let mut search = Search::new(board, order.zoning);
    let mut run = search.anneal(order.zoning, &mut rng, order.moves, order.heat, watch);
    // What the run left loose is pushed to where it costs least.
    let mut board = Board::set_up(site, &run.shelves, &run.best);
    settle(&mut board, order.zoning);
    let score = Ledger::new(&board).score();
    if score < run.score {
        run.score = score;
        run.best = board.places().to_vec();
    }
    run
}

/// The best runs, in the order of their value; ties in the order of the runs.
fn ranked(mut runs: Vec<(usize, Run)>, most: usize) -> Vec<(usize, Run)> {
    runs.sort_by_key(|(_, run)| run.score);
    runs.dedup_by(|a, b| a.1.best == b.1.best && a.1.shelves == b.1.shelves);
    runs.truncate(most);
    runs
}

fn again<'a>(
    all: &'a [Zoning],
    best: &[(usize, Run)],
    moves: u64,
    heat: Heat,
    number: u64,
) -> Vec<(usize, Order<'a>)> {
    (0..RUNS)
        .filter_map(|k| {
            let (z, run) = best.get(k % best.len().max(1))?;
            let order = Order {
                zoning: &all[*z],
                from: run.best.clone(),
                shelves: run.shelves.clone(),
                moves: moves / RUNS as u64,
                heat,
                number: number + k as u64,
            };
            Some((*z, order))
        })
        .collect()
}

/// The same places without those that a division does not allow.
fn allowed(places: &[Option<Place>], zoning: &Zoning) -> Vec<Option<Place>> {
    let keeps = |lot: usize, place: &Place| {
        zoning.homes[lot].is_empty()
            || zoning.homes[lot].iter().any(|h| h.surface == place.home.surface)
    };
    places.iter().enumerate().map(|(lot, p)| p.filter(|p| keeps(lot, p))).collect()
}

/// Puts what is still off the cart wherever it can go without breaking anything.
fn complete(site: &Site, found: &mut Found) {
    let mut board = Board::set_up(site, &found.shelves, &found.places);
    squeeze(&mut board);
    tidy(&mut board);
    let score = Ledger::new(&board).score();
    if score <= found.score {
        found.score = score;
        found.places = board.places().to_vec();
    }
}

/// A seed for each run, by SplitMix64's finaliser.
fn mix(seed: u64, number: u64) -> u64 {
    let mut z = seed.wrapping_add(number.wrapping_add(1).wrapping_mul(0x9e37_79b9_7f4a_7c15));
    z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    z ^ (z >> 31)
}
