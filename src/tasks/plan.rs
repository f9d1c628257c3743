//! The main job: where each tool lives.

use super::outcome::{Effort, Plan, Start};
use super::tell;
use crate::domain::Workspace;
use crate::finding::Finding;
use crate::score::{Ledger, Score};
use crate::site::{Board, Site};
use crate::solve::{Found, Settings, Watch, bound, solve, start};
use crate::units::Price;

/// How often piles and rows that found no place are split into single copies.
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
    let mut site = Site::new(workspace)?;
    let mut found = solve(&site, settings, watch);
    for _ in 0..SPLITS {
        let Some(item) = left_out_pile(&site, &found) else { break };
        let finer = site.split(item, workspace);
        let again = solve(&finer, settings, watch);
        let better = again.score < found.score;
        (found.moves, found.priced) = (found.moves + again.moves, found.priced + again.priced);
        found.restarts += again.restarts;
        if !better {
            break;
        }
        found = Found {
            moves: found.moves,
            priced: found.priced,
            restarts: found.restarts,
            ..again
        };
        site = finer;
    }
    Ok(outcome(&site, workspace, &found, settings.seed))
}

/// The most valuable item of which a pile or a row is left out.
fn left_out_pile(site: &Site, found: &Found) -> Option<usize> {
    (0..site.lots.len())
        .filter(|&l| {
            let lot = &site.lots[l];
            found.places[l].is_none() && lot.copies > 1 && lot.fixed.is_none()
        })
        .max_by_key(|&l| (site.lots[l].off_cart, std::cmp::Reverse(l)))
        .map(|l| site.lots[l].item)
}

fn outcome(site: &Site, workspace: &Workspace, found: &Found, seed: u64) -> Plan {
    let board = Board::with(site, &found.places);
    let ledger = Ledger::new(&board);
    let mut plan = tell::plan(&board, &ledger, workspace);
    plan.seed = seed;
    plan.start = compare(site, &board);
    plan.bound = proof(site, ledger.score(), plan.handling, plan.worth.broken.is_empty());
    plan.effort = Effort {
        moves: found.moves,
        priced: found.priced,
        seconds: 0.0,
        restarts: found.restarts,
        ended_early: found.ended_early,
    };
    plan
}

fn compare(site: &Site, board: &Board) -> Start {
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

fn proof(site: &Site, score: Score, handling: Price, kept: bool) -> super::outcome::Bound {
    // For an unsafe layout the bound would have to hold for unsafe ones too: none is told.
    let cost = kept.then(|| bound(site, Price::us(score.off_cart)));
    let gap = |over: Price| {
        let bound = cost?;
        let over = over.as_s();
        let short = (Price::us(score.cost) - bound).as_s();
        Some(if over > 0.0 { short / over } else { 0.0 })
    };
    let all = Price::us(score.cost);
    super::outcome::Bound { cost, gap: gap(all), gap_with_handling: gap(all + handling) }
}
