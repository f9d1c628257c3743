//! Runs of the search side by side, in cycles of three rounds.
//!
//! A cycle goes from warm to cold: first every division of the faces, then the best ones again, then cooler. A round has a
//! fixed number of runs of a fixed number of moves, each with a generator of its own; bests are exchanged only where a
//! round ends, in the order of the runs. So the result is the same for any number of threads. A further cycle begins
//! anew, and the best of those before it joins its later rounds.

mod order;

use super::bound;
use super::cycles::{Cycle, End, cycles};
use super::finish::{squeeze, tidy};
use super::floor::Floor;
use super::search::Run;
use super::start::start;
use super::zoning::{Zoning, zonings};
use super::{Count, Heat, Settings, Watch};
use crate::score::{Ledger, Score};
use crate::site::{Board, Place, Site};
use crate::units::{Length, Price};
use order::{Leg, Order};
use rayon::prelude::*;

/// Trial moves of a usual search on a cart of [`USUAL_LOTS`] lots, all runs together.
const MOVES: u64 = 2_000_000;
const USUAL_LOTS: u64 = 60;
/// From how many thousandths of the usual moves on a cycle is long enough that a better floor is looked for.
const LONG: u64 = 200;
/// A long run is worth more than several short ones: so many moves of a cycle ask for one more run of each round, up to
/// the most.
const PER_RUN: u64 = 300_000;
const MOST_RUNS: usize = 8;
/// The rounds of a cycle: of those tried, what gave the cheapest plans in the same time. Only a hot beginning undoes what
/// the start does badly, and at the end nothing happens below a hundredth of a usual rise.
const FIRST: Round = Round { tenths: 2, heat: Heat { from: 3.0, to: 0.05 }, number: 0 };
const AGAIN: Round = Round { tenths: 7, heat: Heat { from: 3.0, to: 0.02 }, number: 1000 };
const COOL: Round = Round { tenths: 1, heat: Heat { from: 0.15, to: 0.01 }, number: 2000 };
/// What the numbers of the runs of two cycles differ by.
const STRIDE: u64 = 10_000;

/// The best layout found and what it took.
#[derive(Clone, Debug)]
pub struct Found {
    /// Where everything is.
    pub places: Vec<Option<Place>>,
    /// How high the top of each shelf board is.
    pub shelves: Vec<Length>,
    /// Its value.
    pub score: Score,
    /// What no layout on the site costs less than; nothing where the search was made beside another.
    pub floor: Option<Floor>,
    /// What it took.
    pub spent: Spent,
    /// Why it ended.
    pub end: End,
}

/// What a search took.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub struct Spent {
    /// Trial moves proposed.
    pub moves: u64,
    /// Those whose whole price reached the acceptance test.
    pub priced: u64,
    /// Runs.
    pub restarts: u32,
    /// Cycles, with the one in which it ended.
    pub cycles: u32,
}

impl Spent {
    /// One run more.
    pub(super) fn run(&mut self, count: Count) {
        self.moves += count.moves;
        self.priced += count.priced;
        self.restarts += 1;
    }

    /// Takes over what another search took in the same cycles.
    pub fn add(&mut self, other: Spent) {
        self.moves += other.moves;
        self.priced += other.priced;
        self.restarts += other.restarts;
        self.cycles = self.cycles.max(other.cycles);
    }
}

/// A third of a cycle.
#[derive(Clone, Copy)]
struct Round {
    /// Its share of the moves of the cycle.
    tenths: u64,
    heat: Heat,
    /// The number of its first run.
    number: u64,
}

/// Searches.
pub fn solve(site: &Site, settings: &Settings, watch: &Watch) -> Found {
    let mut restarts = Restarts::new(site, settings);
    for cycle in cycles(settings.effort, watch) {
        restarts.cycle(site, cycle, watch);
        if restarts.is_best() {
            break;
        }
    }
    restarts.found(watch)
}

/// A search that can go on: each cycle begins where the ones before it ended.
#[derive(Clone, Debug)]
pub struct Restarts {
    settings: Settings,
    zonings: Vec<Zoning>,
    floor: Floor,
    /// The value left out that a better floor was last looked for with.
    raised_for: Option<Price>,
    best: Leg,
    /// The best legs of the cycles before.
    elite: Vec<Leg>,
    spent: Spent,
    /// Whether nothing is left that could be moved.
    idle: bool,
    /// Whether it searches beside the question.
    aside: bool,
}

impl Restarts {
    /// A search on a site, which begins from the fixed start.
    pub fn new(site: &Site, settings: &Settings) -> Restarts {
        let zonings = zonings(site);
        let best = Leg::standing(&start(site), &zonings);
        let (elite, spent) = (Vec::new(), Spent::default());
        let floor = Floor::of(site);
        let (settings, raised_for, idle, aside) = (*settings, None, false, false);
        Restarts { settings, zonings, floor, raised_for, best, elite, spent, idle, aside }
    }

    /// The same, where it is not the question itself that is searched but something narrower or finer: what costs least
    /// there is not told to who watches.
    pub fn aside(self, aside: bool) -> Restarts {
        Restarts { aside, ..self }
    }

    /// Makes one more cycle on the same site.
    pub fn cycle(&mut self, site: &Site, cycle: Cycle, watch: &Watch) {
        self.tell_floor(watch);
        watch.found(self.best.run.score);
        watch.expect(cycle.moves(usual(site)));
        self.spent.cycles += 1;
        // A pool of our own: the number of threads is the user's, and must not change anything but the time it takes.
        match rayon::ThreadPoolBuilder::new().num_threads(self.settings.threads).build() {
            Ok(pool) => pool.install(|| self.rounds(site, cycle, watch)),
            Err(_) => self.rounds(site, cycle, watch),
        }
    }

    /// Whether nothing can be better than what was found.
    pub fn is_best(&self) -> bool {
        self.idle || self.floor.is_met(&self.best.run.score)
    }

    /// The value of what was found.
    pub fn score(&self) -> Score {
        self.best.run.score
    }

    /// Takes over what another search took in the same cycle.
    pub fn add(&mut self, other: &Restarts) {
        self.spent.add(other.spent);
    }

    /// What was found.
    pub fn found(&self, watch: &Watch) -> Found {
        let Run { best, shelves, score, .. } = self.best.run.clone();
        let end = End::of(self.is_best(), watch);
        let floor = (!self.aside).then_some(self.floor);
        Found { places: best, shelves, score, floor, spent: self.spent, end }
    }

    fn rounds(&mut self, site: &Site, cycle: Cycle, watch: &Watch) {
        let before = self.spent.moves;
        let runs = runs(site, cycle);
        let legs = self.round(site, cycle, FIRST, self.everywhere(), runs, watch);
        self.idle = self.spent.moves == before && !watch.is_over();
        if cycle.moves(usual(site)) >= LONG * usual(site) / 1000 && !watch.is_over() {
            self.raise_floor(site, watch);
        }
        // From as many layouts as there are pairs of runs, then from half as many.
        let best = ranked(self.joined(legs), runs.div_ceil(2));
        let legs = self.round(site, cycle, AGAIN, best, runs, watch);
        let best = ranked(self.joined(legs), runs.div_ceil(4));
        let legs = self.round(site, cycle, COOL, best, runs.div_ceil(2), watch);
        self.complete(site);
        watch.found(self.best.run.score);
        let legs = std::iter::once(self.best.clone()).chain(legs).collect();
        self.elite = ranked(legs, runs.div_ceil(4));
    }

    /// Proves a better floor, once for as much as is left out; a cycle that ends because it is met is worth the while.
    fn raise_floor(&mut self, site: &Site, watch: &Watch) {
        let score = self.best.run.score;
        let off_cart = Price::us(score.off_cart);
        if score.broken > 0 || self.is_best() || self.raised_for == Some(off_cart) {
            return;
        }
        self.raised_for = Some(off_cart);
        let cost = bound(site, off_cart, Price::us(score.cost));
        // The floor of a search that leaves out more holds too, and may be the higher one.
        if cost > self.floor.cost || !self.floor.holds_for(&score) {
            self.floor = Floor { off_cart, cost };
        }
        self.tell_floor(watch);
    }

    fn tell_floor(&self, watch: &Watch) {
        if !self.aside {
            watch.at_least(self.floor);
        }
    }

    /// What was found so far under every division, so far as it keeps to it.
    fn everywhere(&self) -> Vec<Leg> {
        let leg = |zoning: usize| Leg { zoning, run: self.best.run.clone() };
        (0..self.zonings.len()).map(leg).collect()
    }

    fn joined(&self, legs: Vec<Leg>) -> Vec<Leg> {
        legs.into_iter().chain(self.elite.iter().cloned()).collect()
    }

    /// Makes so many runs side by side from these legs in turn, at least one from each, and takes over the best; none where
    /// the search is to end.
    fn round(
        &mut self,
        site: &Site,
        cycle: Cycle,
        round: Round,
        from: Vec<Leg>,
        runs: usize,
        watch: &Watch,
    ) -> Vec<Leg> {
        let count = from.len().max(runs);
        let moves = cycle.moves(usual(site)) * round.tenths / 10 / count as u64;
        if from.is_empty() || self.is_best() {
            watch.add(moves * count as u64);
            return Vec::new();
        }
        let number = cycle.number * STRIDE + round.number;
        let order = |k: usize| Order {
            leg: &from[k % from.len()],
            moves,
            heat: round.heat,
            seed: order::mix(self.settings.seed, number + k as u64),
        };
        let legs: Vec<Option<Leg>> = (0..count)
            .into_par_iter()
            .map(|k| order(k).carry_out(site, &self.zonings, watch))
            .collect();
        let legs: Vec<Leg> = legs.into_iter().flatten().collect();
        legs.iter().for_each(|leg| self.take_over(leg));
        legs
    }

    fn take_over(&mut self, leg: &Leg) {
        self.spent.run(leg.run.count);
        if leg.run.score < self.best.run.score {
            self.best = leg.clone();
        }
    }

    /// Puts what is still off the cart wherever it can go without breaking anything.
    fn complete(&mut self, site: &Site) {
        let run = &mut self.best.run;
        let mut board = Board::set_up(site, &run.shelves, &run.best);
        squeeze(&mut board);
        tidy(&mut board);
        let score = Ledger::new(&board).score();
        if score <= run.score {
            run.score = score;
            run.best = board.places().to_vec();
        }
    }
}

/// The moves of a usual search.
fn usual(site: &Site) -> u64 {
    let lots = site.lots.len() as u64;
    MOVES * lots.clamp(USUAL_LOTS / 6, USUAL_LOTS * 4) / USUAL_LOTS
}

/// How many runs a round of a cycle has.
fn runs(site: &Site, cycle: Cycle) -> usize {
    let runs = cycle.moves(usual(site)) / PER_RUN;
    (runs as usize).clamp(1, MOST_RUNS)
}

/// The best legs, in the order of their value; ties in the order of the runs.
fn ranked(mut legs: Vec<Leg>, most: usize) -> Vec<Leg> {
    legs.sort_by_key(|leg| leg.run.score);
    legs.dedup_by(|a, b| a.run.best == b.run.best && a.run.shelves == b.run.shelves);
    legs.truncate(most);
    legs
}
