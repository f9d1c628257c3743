//! The main job: where each tool lives.

mod shelves;

use super::outcome::{Effort, Plan, Start};
use super::tell;
use crate::domain::Workspace;
use crate::finding::Finding;
use crate::score::{Ledger, Score};
use crate::site::{Board, ShelfBoard, Site};
use crate::solve::{Found, Settings, Watch, bound, solve, start};
use crate::units::Price;

/// How many items are tried in single copies where a pile or a row of them found no place.
const SPLITS: usize = 4;

/// Plans a workspace.
///
/// # Errors
/// Every way in which the carcass contradicts itself.
pub fn plan(
    workspace: &Workspace,
    settings: &Settings,
    watch: &Watch,
) -> Result<Plan, Vec<Finding>> {
    let workspace = &begun(workspace);
    let free = search(workspace, settings, watch)?;
    let mut plan = if free.site.boards.iter().any(ShelfBoard::moves) {
        shelves::plan(workspace, free, settings, watch)?
    } else {
        outcome(&free.site, &free.site, workspace, &free.found)
    };
    plan.seed = settings.seed;
    plan.layout.shelves = plan.shelves.iter().flat_map(shelves::entries).collect();
    Ok(plan)
}

/// Where things are fixed, the shelves begin where the layout has them.
fn begun(workspace: &Workspace) -> Workspace {
    let fixed = workspace.items.iter().any(|item| item.fixed);
    match &workspace.layout {
        Some(layout) if fixed => workspace.begun(&layout.shelves),
        _ => workspace.clone(),
    }
}

/// What a search worked on and what it found.
struct Searched {
    site: Site,
    found: Found,
    /// The items whose piles and rows were taken apart.
    apart: Vec<usize>,
}

/// Searches; piles and rows that find no place are tried in single copies.
fn search(
    workspace: &Workspace,
    settings: &Settings,
    watch: &Watch,
) -> Result<Searched, Vec<Finding>> {
    let mut site = Site::new(workspace)?;
    let mut found = solve(&site, settings, watch);
    let mut apart = Vec::new();
    for item in left_out_piles(&site, &found).into_iter().take(SPLITS) {
        let finer = site.split(item, workspace);
        let again = solve(&finer, settings, watch);
        let (moves, priced) = (found.moves + again.moves, found.priced + again.priced);
        let restarts = found.restarts + again.restarts;
        if again.score < found.score {
            found = again;
            site = finer;
            apart.push(item);
        }
        found = Found { moves, priced, restarts, ..found };
    }
    Ok(Searched { site, found, apart })
}

/// The items of which a pile or a row is left out, the most valuable first.
fn left_out_piles(site: &Site, found: &Found) -> Vec<usize> {
    let lots = &site.lots;
    let mut piles: Vec<usize> = (0..lots.len())
        .filter(|&l| found.places[l].is_none() && lots[l].copies > 1 && lots[l].fixed.is_none())
        .collect();
    piles.sort_by_key(|&l| (std::cmp::Reverse(lots[l].off_cart), l));
    let mut items: Vec<usize> = Vec::new();
    for l in piles {
        if !items.contains(&lots[l].item) {
            items.push(lots[l].item);
        }
    }
    items
}

/// What was found, in words and figures: told on its own site, judged against that on which it was searched for.
fn outcome(told: &Site, searched: &Site, workspace: &Workspace, found: &Found) -> Plan {
    let board = Board::with(told, &found.places);
    let ledger = Ledger::new(&board);
    let mut plan = tell::plan(&board, &ledger, workspace);
    plan.start = compare(searched, &board);
    plan.bound = proof(searched, ledger.score(), plan.handling, plan.worth.broken.is_empty());
    plan.effort = Effort {
        moves: found.moves,
        priced: found.priced,
        seconds: 0.0,
        restarts: found.restarts,
        ended_early: found.ended_early,
    };
    plan
}

pub(super) fn compare(site: &Site, board: &Board) -> Start {
    let begin = start(site);
    let ledger = Ledger::new(&begin);
    let both = board.places().iter().zip(begin.places());
    Start {
        cost: Price::us(ledger.score().cost),
        off_cart: Price::us(ledger.score().off_cart),
        broken: crate::score::broken(&begin, &ledger).len(),
        same_items: both.clone().all(|(a, b)| a.is_some() == b.is_some()),
    }
}

pub(super) fn proof(
    site: &Site,
    score: Score,
    handling: Price,
    kept: bool,
) -> super::outcome::Bound {
    // For an unsafe layout the bound would have to hold for unsafe ones too: none is told.
    let cost = kept.then(|| bound(site, Price::us(score.off_cart), Price::us(score.cost)));
    let gap = |over: Price| {
        let bound = cost?;
        let over = over.as_s();
        let short = (Price::us(score.cost) - bound).as_s();
        Some(if over > 0.0 { short / over } else { 0.0 })
    };
    let all = Price::us(score.cost);
    super::outcome::Bound { cost, gap: gap(all), gap_with_handling: gap(all + handling) }
}
