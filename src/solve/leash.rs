//! The best layouts that can be had by moving at most so many things.
//!
//! One point after the other: each begins from the best few of those before it, with one move more found by looking at
//! every lot and every corner place, or an exchange found by looking at every pair; then come runs of trial moves within
//! the leash. So the curve never rises, and it is the same for any number of threads.

mod anneal;
mod exchange;
mod homing;
mod walk;

use super::anneal::Count;
use super::finish::{corners, fill, trial};
use super::zoning::Zoning;
use super::{Cycle, Floor, Settings, Spent, Watch};
use crate::score::{Ledger, Score};
use crate::site::{Board, Change, Place, Site};
use anneal::anneal;
use exchange::{Least, exchange};
use rand::SeedableRng;
use rand::rngs::Xoshiro256PlusPlus;
use rayon::prelude::*;
use walk::{Crew, Tethered};

pub use homing::homing;

/// Trial moves for each point on a cart of [`USUAL_LOTS`] lots, all runs together.
const MOVES: u64 = 60_000;
const USUAL_LOTS: u64 = 60;
/// The fewest trial moves for each point on a cart of at most [`SMALL`] lots, where they cost little and leave little to
/// chance; an eighth of it on others.
const FEWEST: u64 = 80_000;
const SMALL: u64 = 12;
/// Runs for each point.
const RUNS: usize = 4;
/// Layouts that are kept for each point, and how many each is followed by, of each kind.
const BEAM: usize = 4;
const BRANCHES: usize = 4;
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
    /// The same with some lots elsewhere.
    fn with(&self, site: &Site, old: &[Option<Place>], changes: &[(usize, Place)]) -> Held {
        let mut places = self.places.clone();
        for &(lot, place) in changes {
            places[lot] = Some(place);
        }
        Held::new(site, old, places)
    }
    /// The better by score; of equals the one with fewer moves, of equals there the first.
    fn or(self, other: Held) -> Held {
        if (other.score, other.moved) < (self.score, self.moved) { other } else { self }
    }
}

/// The points of the curve and what they took.
#[derive(Clone, Debug, Default)]
pub struct Leashed {
    /// The best with at most so many moved lots, one for each number asked.
    pub points: Vec<Held>,
    /// What they took.
    pub spent: Spent,
}

/// How many lots that were on the cart are elsewhere; placing a new one is no move.
pub fn moved(old: &[Option<Place>], places: &[Option<Place>]) -> usize {
    old.iter().zip(places).filter(|(was, is)| was.is_some() && was != is).count()
}

/// The best layouts with at most so many lots elsewhere than in `old`, one for each of the rising numbers. Offers are
/// layouts that were found otherwise; each is taken where it needs few enough moves. A further cycle takes the points of
/// the one before it as offers.
pub fn leash(
    site: &Site,
    old: &[Option<Place>],
    numbers: &[usize],
    offers: &[Held],
    settings: &Settings,
    cycle: Cycle,
    watch: &Watch,
) -> Leashed {
    let work = || points(site, old, numbers, offers, settings, cycle, watch);
    match rayon::ThreadPoolBuilder::new().num_threads(settings.threads).build() {
        Ok(pool) => pool.install(work),
        Err(_) => work(),
    }
}

fn points(
    site: &Site,
    old: &[Option<Place>],
    numbers: &[usize],
    offers: &[Held],
    settings: &Settings,
    cycle: Cycle,
    watch: &Watch,
) -> Leashed {
    let movable: Vec<u32> = (0..site.lots.len() as u32)
        .filter(|&l| {
            site.lots[l as usize].fixed.is_none() && !site.lots[l as usize].homes.is_empty()
        })
        .collect();
    let new = movable.iter().copied().filter(|&l| old[l as usize].is_none()).collect();
    let crew = Crew { movable, new };
    let (least, moves) = (Least::new(site), budget(site, cycle));
    let (floor, seed) = (Floor::of(site), settings.seed.wrapping_add(cycle.number << 56));
    watch.expect(moves * numbers.len() as u64);
    let mut all = Leashed::default();
    let mut beams: Vec<Vec<Held>> = Vec::new();
    for &most in numbers {
        let point = Point { site, old, crew: &crew, least: &least, floor, most, seed, watch };
        let mut begin = beams.last().cloned().unwrap_or_else(|| vec![point.first()]);
        begin.extend(offers.iter().filter(|o| o.moved <= most).cloned());
        let earlier = beams.len().checked_sub(2).map_or(&[][..], |j| &beams[j]);
        let found = point.search(best_of(begin), earlier, moves / RUNS as u64, &mut all);
        all.points.extend(found.first().cloned());
        beams.push(found);
    }
    all
}

/// The best few, each once.
fn best_of(mut held: Vec<Held>) -> Vec<Held> {
    // Stable, so that of equals the first stays.
    held.sort_by_key(|h| (h.score, h.moved));
    let mut best: Vec<Held> = Vec::new();
    for one in held {
        if best.len() < BEAM && !best.iter().any(|b| b.places == one.places) {
            best.push(one);
        }
    }
    best
}

fn budget(site: &Site, cycle: Cycle) -> u64 {
    let lots = site.lots.len() as u64;
    let usual = MOVES * lots.clamp(1, USUAL_LOTS * 4) / USUAL_LOTS;
    let moves = cycle.moves(usual).max(usual / 4);
    if lots <= SMALL { moves.max(FEWEST) } else { moves.max(FEWEST / 8) }
}

/// One point of the curve to be found.
#[derive(Clone, Copy)]
struct Point<'s, 'a> {
    site: &'s Site,
    old: &'a [Option<Place>],
    crew: &'a Crew,
    least: &'a Least,
    floor: Floor,
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

    /// The best few that are found from the best few so far, and from those with fewer moves.
    fn search(
        &self,
        begin: Vec<Held>,
        earlier: &[Held],
        moves: u64,
        all: &mut Leashed,
    ) -> Vec<Held> {
        if self.watch.is_over() {
            return best_of(begin);
        }
        let mut found = begin.clone();
        for held in &begin {
            found.extend(self.one_more(held));
        }
        for held in begin.iter().chain(earlier) {
            let (site, old) = (self.site, self.old);
            found.extend(exchange(site, old, self.crew, self.least, self.most, held));
        }
        let found = best_of(found);
        let runs: Vec<(Held, Count)> = (0..RUNS)
            .into_par_iter()
            .map(|run| self.run(&found[run % found.len()], run, moves))
            .collect();
        let mut last = found;
        for (held, count) in runs {
            all.spent.run(count);
            last.push(held);
        }
        best_of(last)
    }

    /// The best layouts that one lot in another corner place makes of this one; none that is no better.
    fn one_more(&self, begin: &Held) -> Vec<Held> {
        let board = Board::with(self.site, &begin.places);
        let ledger = Ledger::new(&board);
        let full = begin.moved >= self.most;
        let lots = self.crew.movable.par_iter().map(|&l| l as usize);
        let mut found: Vec<(Score, usize, Place)> = lots
            .map_with((board, ledger), |(board, ledger), l| {
                let free = self.old[l].is_none() || self.old[l] != begin.places[l];
                (free || !full).then(|| best_corner(board, ledger, l)).flatten()
            })
            .flatten()
            .filter(|found| found.0 < begin.score)
            .collect();
        found.sort_by_key(|(score, lot, _)| (*score, *lot));
        found.truncate(BRANCHES);
        let made = |(_, lot, place): (Score, usize, Place)| {
            begin.with(self.site, self.old, &[(lot, place)])
        };
        found.into_iter().map(made).collect()
    }

    fn run(&self, from: &Held, number: usize, moves: u64) -> (Held, Count) {
        let mix = (self.most as u64) << 32 | (number as u64) << 1 | 1;
        let mut rng = Xoshiro256PlusPlus::seed_from_u64(self.seed.wrapping_add(mix << 8));
        let board = Board::with(self.site, &from.places);
        let mut walk = Tethered::new(board, self.old, self.crew, self.most);
        let mut best = from.clone();
        let idle = self.crew.movable.is_empty() || self.most == 0 && self.crew.new.is_empty();
        let idle = idle || self.floor.is_met(&from.score);
        let moves = if idle { 0 } else { moves };
        let count = anneal(&mut walk, &mut rng, moves, &mut best, self.watch);
        (self.polish(best), count)
    }

    /// Looks at every corner place of what is new or moved, until nothing gets better by itself.
    fn polish(&self, held: Held) -> Held {
        let board = Board::with(self.site, &held.places);
        let mut walk = Tethered::new(board, self.old, self.crew, self.most);
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
