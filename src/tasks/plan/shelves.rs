//! Plans of a cart whose shelves may be moved.

use super::{Searched, outcome};
use crate::domain::{Bay, ShelfEntry, Workspace};
use crate::finding::{Finding, Span};
use crate::site::{ShelfBoard, Site};
use crate::solve::{Settings, Watch, cycles};
use crate::tasks::outcome::{Plan, ShelfHeight, Shelves};
use crate::units::{Length, Price};

/// Sets the shelves where the search has them, or as drawn where that was found to be no worse, and tells the plan.
///
/// # Errors
/// Every way in which the carcass contradicts itself.
pub(super) fn plan(
    workspace: &Workspace,
    mut free: Searched,
    settings: &Settings,
    watch: &Watch,
) -> Result<Plan, Vec<Finding>> {
    let drawn = workspace.as_stands(&[]);
    let mut nailed = Searched::new(&drawn, settings)?.aside();
    for cycle in cycles(settings.effort, watch) {
        free.cycle(workspace, cycle, watch);
        nailed.cycle(&drawn, cycle, watch);
        if free.is_best() && nailed.is_best() {
            break;
        }
    }
    let mut found = [free.found(watch), nailed.found(watch)];
    let drawn = found[1].score;
    let (best, apart) = if drawn <= found[0].score { (1, nailed.apart) } else { (0, free.apart) };
    let spent = found[1 - best].spent;
    found[best].spent.add(spent);
    let found = &found[best];
    let set = heights(workspace, &free.site, &found.shelves);
    let entries: Vec<ShelfEntry> = set.iter().map(entry).collect();
    let built = workspace.as_stands(&entries);
    let mut site = Site::new(&built)?;
    let mut searched = Site::new(workspace)?;
    for &item in &apart {
        site = site.split(item, &built);
        searched = searched.split(item, workspace);
    }
    let mut plan = outcome(&site, &searched, &built, found, settings);
    plan.shelves = Some(Shelves {
        set,
        as_drawn: Price::us(drawn.cost),
        off_cart: Price::us(drawn.off_cart),
        broken: drawn.broken as usize,
    });
    Ok(plan)
}

/// The heights of the shelves that may be moved.
fn heights(workspace: &Workspace, site: &Site, tops: &[Length]) -> Vec<ShelfHeight> {
    let boards = site.boards.iter().zip(tops).filter(|(board, _)| board.moves());
    boards.filter_map(|(board, top)| height(workspace, site, board, *top)).collect()
}

fn height(
    workspace: &Workspace,
    site: &Site,
    board: &ShelfBoard,
    top: Length,
) -> Option<ShelfHeight> {
    let space = &site.spaces[board.space];
    let is_it = |bay: &&Bay| bay.face == space.face && bay.name == space.name;
    let bay = workspace.carcass.bays.iter().find(is_it)?;
    let floor = space.volume.min[2];
    Some(ShelfHeight {
        face: bay.face,
        bay: bay.name.clone(),
        surface: site.surfaces[board.surface].name.clone(),
        height: top - floor,
        drawn: board.solid.max[2] - floor,
        row: [board.rows.iter().position(|r| *r == top)? + 1, board.rows.len()],
    })
}

/// The same for a layout.
pub(super) fn entries(shelves: &Shelves) -> Vec<ShelfEntry> {
    shelves.set.iter().map(entry).collect()
}

fn entry(set: &ShelfHeight) -> ShelfEntry {
    ShelfEntry {
        face: Some(set.face),
        bay: set.bay.clone(),
        surface: set.surface.clone(),
        height: set.height,
        span: Span::none(),
    }
}
