//! Room kept free on purpose, for things not bought yet.
//!
//! It is kept from what the layout leaves over: a free place for each further thing of a family that the shop file asks
//! for, of the family's typical size, mass and use, where it breaks no rule.

use super::mass;
use crate::domain::{Item, Workspace};
use crate::finding::Finding;
use crate::site::{Board, Change};
use crate::tasks::check;
use crate::tasks::offer::Fitter;
use crate::tasks::outcome::{CasterLoad, Kept, Placement, Zone};
use crate::tasks::room::typical;
use crate::units::Share;

/// What is kept, and what is to be said about it.
pub(super) struct Reserve {
    /// The kept room.
    pub kept: Vec<Kept>,
    /// What the casters carry when it is filled.
    pub casters: Vec<CasterLoad>,
    /// What is short.
    pub notes: Vec<Finding>,
}

/// Keeps the room that the shop file asks for.
pub(super) fn keep(board: &Board, workspace: &Workspace, placements: &[Placement]) -> Reserve {
    let mut reserve =
        Reserve { kept: Vec::new(), casters: mass::casters(board), notes: Vec::new() };
    reserve.notes.extend(share(board, workspace, placements));
    let wanted = wanted(workspace);
    if wanted.is_empty() {
        return reserve;
    }
    let site = board.site();
    let wider = site.with_more(workspace, wanted);
    let mut places = board.places().to_vec();
    places.resize(wider.lots.len(), None);
    let mut fitter = Fitter::new(Board::with(&wider, &places));
    for lot in site.lots.len()..wider.lots.len() {
        put(&mut fitter, lot, &mut reserve);
    }
    fill(&mut reserve.casters, mass::casters(&fitter.board));
    reserve
}

/// One further thing for each that the shop file asks for, by family.
fn wanted(workspace: &Workspace) -> Vec<Item> {
    let families = workspace.shop.reserve.families.iter();
    families
        .filter_map(|(family, n, _)| Some((typical(workspace, family)?, *n)))
        .flat_map(|(item, n)| {
            (1..=n).map(move |k| Item {
                name: format!("room for {}, thing {k}", item.name),
                ..item.clone()
            })
        })
        .collect()
}

fn put(fitter: &mut Fitter, lot: usize, reserve: &mut Reserve) {
    let site = fitter.board.site();
    let item = &site.items[site.lots[lot].item];
    let family = item.family.clone();
    let Some(place) = fitter.first_free(lot) else {
        let name = family.unwrap_or_default();
        let text = format!("no room is left for a further {name} thing of the typical size");
        reserve.notes.push(Finding::note(text).help("`room` tells what would fit"));
        return;
    };
    fitter.make(&[Change { lot, to: Some(place) }]);
    let surface = &site.surfaces[place.home.surface as usize];
    let space = &site.spaces[surface.space];
    reserve.kept.push(Kept {
        family,
        face: space.face,
        bay: space.name.clone(),
        surface: surface.name.clone(),
        space: place.space,
        mass: item.weight,
    });
}

/// The worst load of each caster, with the kept room filled where that is worse.
fn fill(casters: &mut [CasterLoad], filled: Vec<CasterLoad>) {
    for (caster, full) in casters.iter_mut().zip(filled) {
        if full.worst > caster.worst {
            caster.worst = full.worst;
            caster.worst_case = format!("{}, kept room filled", full.worst_case);
        }
    }
}

/// How much of the room in easy and bend reach is to stay free, and how much is.
fn share(board: &Board, workspace: &Workspace, placements: &[Placement]) -> Option<Finding> {
    let share = workspace.shop.reserve.share;
    if share <= Share::ZERO {
        return None;
    }
    let near = |zone: Zone| zone <= Zone::Bend;
    let all: f64 = check::room(board).iter().filter(|r| near(r.zone)).map(|r| r.litres).sum();
    let taken: f64 = placements
        .iter()
        .filter(|p| near(p.zone) && !matches!(p.surface.as_str(), "panel" | "bench"))
        .map(|p| p.space.litres())
        .sum();
    let (asked, free) = (all * share.as_fraction(), (all - taken).max(0.0));
    let short = if free < asked { ", which is too little" } else { "" };
    Some(Finding::note(format!(
        "of {all:.0} litres in easy and bend reach {asked:.0} are to stay free for growth; {free:.0} are free{short}"
    )))
}
