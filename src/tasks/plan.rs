//! The main job: where each tool lives.

mod searched;
mod shelves;

use super::outcome::{Effort, Plan, Proof, Start};
use super::tell;
use crate::domain::Workspace;
use crate::finding::Finding;
use crate::score::{Ledger, Score};
use crate::site::{Board, ShelfBoard, Site};
use crate::solve::{Effort as Pace, Floor, Found, Settings, Watch, bound, cycles, exact, start};
use crate::units::Price;
pub(super) use searched::Searched;

/// Nodes that the exact search of a small cart may take: a tenth of a second, about one, about thirty.
const fn nodes(effort: Pace) -> u64 {
    match effort {
        Pace::Quick => 20_000,
        Pace::Normal | Pace::UntilEnded => 200_000,
        Pace::Thorough => 5_000_000,
    }
}

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
    let mut free = Searched::new(workspace, settings)?;
    let mut plan = if free.site.boards.iter().any(ShelfBoard::moves) {
        shelves::plan(workspace, free, settings, watch)?
    } else {
        for cycle in cycles(settings.effort, watch) {
            free.cycle(workspace, cycle, watch);
            if free.is_best() {
                break;
            }
        }
        let mut found = free.found(watch);
        let exhausted = exhaust(&free.site, &mut found, nodes(settings.effort));
        let mut plan = outcome(&free.site, &free.site, workspace, &found, settings);
        if exhausted && plan.bound.proof == Proof::Bound {
            plan.bound.proof = Proof::Corners;
        }
        plan
    };
    plan.seed = settings.seed;
    plan.layout.shelves = plan.shelves.iter().flat_map(shelves::entries).collect();
    Ok(plan)
}

/// Tries every corner place of a small cart; what is better than what was found takes its place. Says whether all were
/// tried.
fn exhaust(site: &Site, found: &mut Found, nodes: u64) -> bool {
    let Some(exact) = exact(site, &found.score, nodes) else { return false };
    if let Some((places, score)) = exact.better {
        (found.places, found.score) = (places, score);
    }
    exact.exhausted
}

/// Where things are fixed, the shelves begin where the layout has them.
fn begun(workspace: &Workspace) -> Workspace {
    let fixed = workspace.items.iter().any(|item| item.fixed);
    match &workspace.layout {
        Some(layout) if fixed => workspace.begun(&layout.shelves),
        _ => workspace.clone(),
    }
}

/// What was found, in words and figures: told on its own site, judged against that on which it was searched for.
fn outcome(
    told: &Site,
    searched: &Site,
    workspace: &Workspace,
    found: &Found,
    settings: &Settings,
) -> Plan {
    let board = Board::with(told, &found.places);
    let ledger = Ledger::new(&board);
    let mut plan = tell::plan(&board, &ledger, workspace);
    plan.start = compare(searched, &board);
    let kept = plan.worth.broken.is_empty();
    plan.bound = proof(searched, ledger.score(), plan.handling, kept, found.floor);
    plan.effort = Effort::of(found.spent, found.end, settings);
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

/// How near to the best there can be a layout of this value is; nothing where it does not keep the rules. What the search
/// proved itself counts too.
pub(super) fn proof(
    site: &Site,
    score: Score,
    handling: Price,
    kept: bool,
    floor: Option<Floor>,
) -> super::outcome::Bound {
    // For an unsafe layout the bound would have to hold for unsafe ones too: none is told.
    let cost = kept.then(|| least(site, &score, floor));
    let gap = |over: Price| {
        let bound = cost?;
        let over = over.as_s();
        let short = (Price::us(score.cost) - bound).as_s();
        Some(if over > 0.0 { short / over } else { 0.0 })
    };
    let all = Price::us(score.cost);
    let met = cost == Some(all);
    let proof = if met { Proof::Optimal } else { Proof::Bound };
    super::outcome::Bound { cost, gap: gap(all), gap_with_handling: gap(all + handling), proof }
}

/// What no layout that leaves out no more can cost less than.
fn least(site: &Site, score: &Score, floor: Option<Floor>) -> Price {
    let floor = floor.unwrap_or_else(|| Floor::of(site));
    let cost = Price::us(score.cost);
    // Where there is nothing to place there is one layout and no more.
    if site.lots.is_empty() || floor.is_met(score) {
        return cost;
    }
    let bound = bound(site, Price::us(score.off_cart), cost);
    if floor.holds_for(score) { bound.max(floor.cost) } else { bound }
}
