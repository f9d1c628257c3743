//! Further things of the typical size of each family.

use super::{FamilyRoom, MOST_ALIKE, lots_from, standing_with, zone_of};
use crate::domain::{Item, Layout, Workspace, typical};
use crate::finding::Finding;
use crate::site::{Board, Change};
use crate::tasks::offer::{Fitter, Spot};

/// How many further things of each family fit, in the order in which the inventory first names the families.
pub(super) fn families(
    workspace: &Workspace,
    now: &Layout,
) -> Result<Vec<FamilyRoom>, Vec<Finding>> {
    let mut names: Vec<&str> = Vec::new();
    for family in workspace.items.iter().filter_map(|i| i.family.as_deref()) {
        if !names.contains(&family) {
            names.push(family);
        }
    }
    let typical: Vec<Item> = names.iter().filter_map(|f| typical(&workspace.items, f)).collect();
    let mut all = Vec::new();
    for item in typical {
        all.push(family(workspace, now, &item)?);
    }
    Ok(all)
}

fn family(workspace: &Workspace, now: &Layout, typical: &Item) -> Result<FamilyRoom, Vec<Finding>> {
    let name = typical.name.clone();
    let alike = (1..=MOST_ALIKE)
        .map(|n| Item { name: format!("{name}, further thing {n}"), ..typical.clone() })
        .collect::<Vec<_>>();
    let stands = standing_with(workspace, now, &alike)?;
    let mut fitter = Fitter::new(Board::with(&stands.site, &stands.places));
    let mut spots = Vec::new();
    for lot in lots_from(&stands, workspace.items.len()) {
        let Some(place) = fitter.first_free(lot) else { break };
        fitter.make(&[Change { lot, to: Some(place) }]);
        let s = place.home.surface as usize;
        let zone = zone_of(&fitter.board, s, &place.space);
        spots.push((Spot::of(&fitter.board, lot, &place), zone));
    }
    let wanted = workspace.shop.reserve.families.iter();
    let wanted = wanted.filter(|(f, _, _)| *f == name).map(|(_, n, _)| *n).reduce(|a, b| a + b);
    let (size, mass, fit) = (typical.size, typical.weight, spots.len() as u32);
    Ok(FamilyRoom { family: name, size, mass, fit, wanted, spots })
}
