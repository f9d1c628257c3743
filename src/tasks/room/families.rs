//! Further things of the typical size of each family.

use super::{FamilyRoom, MOST_ALIKE, lots_from, standing_with, zone_of};
use crate::domain::{CLOSED_METAL_CAN, Dims, Hazard, Hazards, Item, Layout, Workspace};
use crate::finding::{Finding, Span};
use crate::site::{Board, Change};
use crate::tasks::offer::{Fitter, Spot};
use crate::units::{Length, Mass, Uses};

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
    let typical: Vec<Item> = names.iter().filter_map(|f| typical(workspace, f)).collect();
    let mut all = Vec::new();
    for item in typical {
        all.push(family(workspace, now, &item)?);
    }
    Ok(all)
}

/// A thing of the typical size, mass and use of a family, with every hazard of the family, that stands or lies.
pub fn typical(workspace: &Workspace, family: &str) -> Option<Item> {
    let of: Vec<&Item> =
        workspace.items.iter().filter(|i| i.family.as_deref() == Some(family)).collect();
    of.first()?;
    let median_of = |figure: fn(&Item) -> i64| median(of.iter().map(|i| figure(i)).collect());
    let length = |side: fn(&Item) -> i64| Length::nm(median_of(side));
    let size = Dims {
        w: length(|i| i.size.w.as_nm()),
        d: length(|i| i.size.d.as_nm()),
        h: length(|i| i.size.h.as_nm()),
    };
    // As the inventory has it where nothing is said: what is over three times as high as its foot does not stand.
    let stands = size.h <= size.w.min(size.d) * 3;
    // Nobody knows which it will be, so the room keeps every rule that any of the family has to keep.
    let hazards = of.iter().fold(Hazards::default(), |all, i| all.or(i.hazards));
    let lying = Dims { w: size.w, d: size.h, h: size.d };
    Some(Item {
        name: family.to_owned(),
        span: Span::none(),
        size,
        weight: Mass::ng(median_of(|i| i.weight.as_ng())),
        uses: Uses::nano(median_of(|i| i.uses.as_nano())),
        count: 1,
        take_all: false,
        stack: 1,
        pitch: None,
        poses: [stands.then_some(size), Some(lying), None],
        turn: true,
        family: Some(family.to_owned()),
        with: Vec::new(),
        hazards,
        hazards_said: true,
        guarded: true,
        inside: hazards.has(Hazard::SelfHeating).then(|| CLOSED_METAL_CAN.to_owned()),
        hands: 1,
        handles: None,
        grip: None,
        fetched: true,
        urgent: false,
        place: Vec::new(),
        prefer: Vec::new(),
        fixed: false,
        holds: Vec::new(),
        clearance: None,
    })
}

/// The median of some values: the mean of the two middle ones where their number is even.
fn median(mut all: Vec<i64>) -> i64 {
    all.sort_unstable();
    match all.len() {
        0 => 0,
        n => (all[(n - 1) / 2] + all[n / 2]) / 2,
    }
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
