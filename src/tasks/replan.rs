//! The old layout and a new inventory: what each further move would gain, and the moves in an order that works by hand.

mod leaving;
mod steps;

use super::outcome::{Effort, Plan};
use super::plan::{self, Searched, proof};
use super::standing::{EntryFinding, Standing, standing};
use super::tell;
use crate::domain::{Layout, Workspace};
use crate::finding::Finding;
use crate::score::{Ledger, Score};
use crate::site::{Board, Lot, Place, Site};
use crate::solve::{End, Held, Leashed, Settings, Watch, cycles, homing, leash};
use crate::units::Price;

pub use leaving::Leaving;
pub use steps::{Spot, Step};

/// The curve goes up to so many moves before everything is free to move.
const MOST: usize = 8;

/// The best that at most so many moves can do.
#[derive(Clone, Debug)]
pub struct Point {
    /// How many things may be moved; placing a new one is no move.
    pub moves: usize,
    /// What the layout costs a week.
    pub cost: Price,
    /// Its whole value.
    pub score: Score,
    /// What it gains a week over the point before: what is left out counts with what fetching it from elsewhere costs.
    pub gain: Price,
    /// What it costs a week to fetch from elsewhere what was on the cart before and is so no more.
    pub given_up: Price,
}

/// What to do after buying or selling.
#[derive(Clone, Debug)]
pub struct Replan {
    /// The chosen layout.
    pub plan: Plan,
    /// The best with at most 0, 1, 2, … moves; the last one is free to move everything.
    pub curve: Vec<Point>,
    /// The point after which a further move gains least: an index into the curve.
    pub knee: usize,
    /// The point that the plan and the steps are of: an index into the curve.
    pub chosen: usize,
    /// What to do with the hands, one after the other.
    pub steps: Vec<Step>,
    /// What was found in the old layout: things that are gone, that are new, slips in the file.
    pub findings: Vec<EntryFinding>,
    /// For what finds no place: what would have to leave.
    pub leaving: Vec<Leaving>,
}

/// A layout with the division of copies that it is told by.
#[derive(Clone, Copy)]
struct Shape<'a> {
    site: &'a Site,
    places: &'a [Option<Place>],
}

impl Shape<'_> {
    /// The copies that have no place: item and copy.
    fn left_out(&self) -> Vec<(usize, u32)> {
        let lots = self.site.lots.iter().zip(self.places).filter(|(_, place)| place.is_none());
        let copies = |lot: &Lot| {
            let item = lot.item;
            (lot.first..lot.first + lot.copies).map(move |copy| (item, copy))
        };
        let mut all: Vec<(usize, u32)> = lots.flat_map(|(lot, _)| copies(lot)).collect();
        all.sort_unstable();
        all
    }
}

/// The layout that is free to move everything, where it beats the rest of the curve.
enum Free {
    /// On the old division of copies.
    Same(Held),
    /// On a division of its own, with its value and how many of the old places it gives up.
    Other(Score, usize, Price),
}

impl Free {
    fn worth(&self, old: &Standing) -> (Score, usize, Price) {
        match self {
            Free::Same(held) => (held.score, held.moved, given_up(old, &old.site, &held.places)),
            Free::Other(score, moves, given_up) => (*score, *moves, *given_up),
        }
    }
}

/// Finds the curve from a layout as it stands, and the steps to the point with at most so many moves; to the knee where
/// nothing is asked.
///
/// # Errors
/// Every way in which the carcass contradicts itself.
pub fn replan(
    workspace: &Workspace,
    layout: &Layout,
    settings: &Settings,
    most_moves: Option<usize>,
    watch: &Watch,
) -> Result<Replan, Vec<Finding>> {
    let old = standing(workspace, layout)?;
    let workspace = &old.workspace;
    let numbers = numbers(most_moves, can_move(&old));
    let mut fresh = Searched::new(workspace, settings)?;
    let mut found = Leashed::default();
    let (mut anew, mut offer, mut best) = (None, None, false);
    for cycle in cycles(settings.effort, watch) {
        fresh.cycle(workspace, cycle, watch);
        let told = anew.insert(standing(workspace, &fresh.layout(workspace, watch))?);
        offer = translate(told, &old).map(|places| homing(&old.site, &old.places, places));
        let offers: Vec<Held> = offer.iter().chain(&found.points).cloned().collect();
        let before = found.spent;
        found = leash(&old.site, &old.places, &numbers, &offers, settings, cycle, watch);
        best = found.spent.moves == 0 && fresh.is_best() && !watch.is_over();
        found.spent.add(before);
        if best {
            break;
        }
    }
    let Some(anew) = anew else { unreachable!("there is at least one cycle") };
    let free = free(&found, offer, &old, &anew);
    let curve = curve(&old, &numbers, &found.points, free.as_ref());
    let knee = knee(&curve);
    let chosen = most_moves.map_or(knee, |n| curve.partition_point(|p| p.moves <= n).max(1) - 1);
    let end = match (found.points.get(chosen), &free) {
        (Some(held), _) | (None, Some(Free::Same(held))) => {
            Shape { site: &old.site, places: &held.places }
        }
        _ => Shape { site: &anew.site, places: &anew.places },
    };
    let searched = fresh.found(watch);
    let made_anew = Shape { site: &fresh.site, places: &searched.places };
    let mut plan = outcome(workspace, end, made_anew);
    let mut spent = searched.spent;
    spent.add(found.spent);
    plan.seed = settings.seed;
    plan.effort = Effort::of(spent, End::of(best, watch), settings);
    let steps = steps::steps(&old, end);
    let leaving = leaving::leaving(&old, end);
    Ok(Replan { plan, curve, knee, chosen, steps, findings: old.findings, leaving })
}

/// The numbers of moves that the curve looks at: 0, 1, 2, … and what is asked beyond; never more than there are to move.
fn numbers(asked: Option<usize>, movable: usize) -> Vec<usize> {
    let mut all: Vec<usize> = (0..=MOST.min(movable)).collect();
    all.extend(asked.map(|n| n.min(movable)).filter(|n| *n > MOST));
    all
}

/// How many things have a place that they could leave.
fn can_move(old: &Standing) -> usize {
    let lots = old.site.lots.iter().zip(&old.places);
    lots.filter(|(lot, place)| place.is_some() && lot.fixed.is_none() && !lot.homes.is_empty())
        .count()
}

/// The lot of a site that is the same copies of the same item.
fn same_lot(site: &Site, lot: &Lot) -> Option<usize> {
    site.lots.iter().position(|o| (o.item, o.first, o.copies) == (lot.item, lot.first, lot.copies))
}

/// A layout told on the lots of another one; `None` where its copies are divided otherwise. What is fixed stays.
fn translate(from: &Standing, to: &Standing) -> Option<Vec<Option<Place>>> {
    let mut places: Vec<Option<Place>> = vec![None; to.places.len()];
    for (lot, place) in from.site.lots.iter().zip(&from.places) {
        if place.is_some() {
            places[same_lot(&to.site, lot)?] = *place;
        }
    }
    for (l, lot) in to.site.lots.iter().enumerate() {
        if lot.fixed.is_some() {
            places[l] = to.places[l];
        }
    }
    Some(places)
}

/// The layout made afresh, where it is better than the last point.
fn free(found: &Leashed, offer: Option<Held>, old: &Standing, anew: &Standing) -> Option<Free> {
    let last = found.points.last()?.score;
    match offer {
        Some(held) => (held.score < last).then_some(Free::Same(held)),
        None => {
            let score = Ledger::new(&Board::with(&anew.site, &anew.places)).score();
            (score < last).then(|| {
                let out = given_up(old, &anew.site, &anew.places);
                Free::Other(score, not_kept(old, anew), out)
            })
        }
    }
}

/// How many of the old places another layout does not keep.
fn not_kept(old: &Standing, anew: &Standing) -> usize {
    let lots = old.site.lots.iter().zip(&old.places).filter(|(_, place)| place.is_some());
    lots.filter(|(lot, place)| same_lot(&anew.site, lot).is_none_or(|l| anew.places[l] != **place))
        .count()
}

/// The price of what a layout leaves out that was on the cart before.
fn given_up(old: &Standing, site: &Site, places: &[Option<Place>]) -> Price {
    let was_on = |lot: &Lot| {
        let lots = old.site.lots.iter().zip(&old.places).filter(|(_, place)| place.is_some());
        lots.map(|(o, _)| o)
            .any(|o| o.item == lot.item && (o.first..o.first + o.copies).contains(&lot.first))
    };
    let out = site.lots.iter().zip(places).filter(|(_, place)| place.is_none());
    out.filter(|(lot, _)| was_on(lot)).map(|(lot, _)| lot.off_cart).sum()
}

fn curve(old: &Standing, numbers: &[usize], points: &[Held], free: Option<&Free>) -> Vec<Point> {
    let told = |(moves, held): (&usize, &Held)| {
        (*moves, held.score, given_up(old, &old.site, &held.places))
    };
    let mut all: Vec<(usize, Score, Price)> = numbers.iter().zip(points).map(told).collect();
    // Piles that are divided otherwise may give up fewer places than the numbers before; still the moves rise.
    let most = numbers.last().map_or(0, |n| n + 1);
    all.extend(free.map(|f| f.worth(old)).map(|(score, moves, out)| (moves.max(most), score, out)));
    let mut before = all.first().map_or(0, |first| value(&first.1));
    all.into_iter()
        .map(|(moves, score, given_up)| {
            let gain = Price::us(before - value(&score));
            before = value(&score);
            Point { moves, cost: Price::us(score.cost), score, gain, given_up }
        })
        .collect()
}

/// Seconds a week in all: what is left out counts with what fetching it from elsewhere costs.
fn value(score: &Score) -> i64 {
    score.cost + score.off_cart
}

/// The point farthest below the chord from the first to the last; of equals the one with fewer moves. The chord begins
/// after the points that break more rules than the last. Where the last keeps everything on the cart that was there, a
/// point that does not is asked only if no other one lies below the chord.
fn knee(curve: &[Point]) -> usize {
    let Some(last) = curve.last() else { return 0 };
    let first = curve.iter().position(|p| p.score.broken == last.score.broken).unwrap_or(0);
    let begin = &curve[first];
    let (rise, run) =
        (i128::from(value(&last.score) - value(&begin.score)), (last.moves - begin.moves) as i128);
    // How far below the chord, times the length of the run: whole numbers decide.
    let below = |p: &Point| {
        rise * (p.moves - begin.moves) as i128
            - i128::from(value(&p.score) - value(&begin.score)) * run
    };
    let farthest = |asked: &dyn Fn(&Point) -> bool| {
        (first..curve.len())
            .filter(|&k| asked(&curve[k]))
            .max_by_key(|&k| (below(&curve[k]), std::cmp::Reverse(k)))
            .unwrap_or(first)
    };
    let kind = farthest(&|p| last.given_up > Price::ZERO || p.given_up == Price::ZERO);
    if below(&curve[kind]) > 0 { kind } else { farthest(&|_| true) }
}

/// The chosen layout in words and figures, compared with the start that a layout made afresh is compared with.
fn outcome(workspace: &Workspace, end: Shape, fresh: Shape) -> Plan {
    let board = Board::with(end.site, end.places);
    let ledger = Ledger::new(&board);
    let mut plan = tell::plan(&board, &ledger, workspace);
    plan.start = plan::compare(fresh.site, &Board::with(fresh.site, fresh.places));
    plan.start.same_items &= end.left_out() == fresh.left_out();
    let kept = plan.worth.broken.is_empty();
    plan.bound = proof(end.site, ledger.score(), plan.handling, kept, None);
    plan
}
