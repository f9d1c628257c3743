//! Room kept free on purpose, for things not bought yet.
//!
//! It is kept from what the layout leaves over: a free place for each further thing of a family that the shop file asks
//! for, of the family's typical size, mass and use, where it breaks no rule.

use super::mass;
use crate::domain::{Item, Workspace, typical};
use crate::finding::Finding;
use crate::score::{COSTS, Ledger, Part, Scope, subject};
use crate::site::{Board, Change, For, Near, Wanted};
use crate::tasks::offer::Fitter;
use crate::tasks::outcome::{CasterLoad, Growth, Kept, Zone};

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
pub(super) fn keep(board: &Board, ledger: &Ledger, workspace: &Workspace) -> Reserve {
    let mut reserve =
        Reserve { kept: Vec::new(), casters: mass::casters(board), notes: Vec::new() };
    reserve.notes.extend(growth(board, ledger).into_iter().map(|g| Finding::note(g.told)));
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
        .filter_map(|(family, n, _)| Some((typical(&workspace.items, family)?, *n)))
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

/// Room that is to stay free, and how much of it is.
pub(super) fn growth(board: &Board, ledger: &Ledger) -> Vec<Growth> {
    let site = board.site();
    let card = COSTS.iter().position(|c| c.scope == Scope::Growth);
    let one = |(n, wanted): (usize, &Wanted)| {
        let (family, zone) = match &wanted.what {
            For::Anything(Near::Easy) => (None, Some(Zone::Easy)),
            For::Anything(Near::Bend) => (None, Some(Zone::Bend)),
            For::Family(f, _) => (Some(site.ties.families[*f].name.clone()), None),
        };
        let Part { price, told, .. } = subject(board, ledger, card?, n);
        let litres = |volume: i64| volume as f64 / 1e6;
        let free = litres(ledger.tally().free(site, &wanted.what));
        Some(Growth { family, zone, wanted: litres(wanted.volume), free, price, told })
    };
    site.growth.wanted.iter().enumerate().filter_map(one).collect()
}
