//! What slides, swings or rolls open when the rolling cart stops dead.

use crate::domain::{Hazard, Pose, Workspace};
use crate::site::{Board, Place, SpaceKind};
use crate::units::{Length, Mass};

/// A hung thing from so much on is worth a word: design choice.
const HEAVY: Mass = Mass::kg(1);

/// Loaded drawers without a catch.
pub(super) fn opens(board: &Board, workspace: &Workspace) -> Vec<String> {
    let site = board.site();
    let loaded = |name: &str| {
        let drawer =
            |s: &usize| site.spaces[*s].kind == SpaceKind::Drawer && site.spaces[*s].name == name;
        (0..site.spaces.len()).filter(drawer).any(|s| !board.members(s).is_empty())
    };
    let drawers = workspace.carcass.drawers.iter();
    drawers.filter(|d| !d.catch && loaded(&d.name)).map(|d| d.name.clone()).collect()
}

/// Things on open decks whose middle is nearer to the edge than they slide, with nothing before them.
pub(super) fn slides(board: &Board, slide: Length) -> Vec<String> {
    named(board, |lot, place| {
        let site = board.site();
        let space = &site.spaces[site.surfaces[place.home.surface as usize].space];
        let stands = site.lots[lot].forms[place.home.form as usize].pose != Pose::Hang;
        let bay = stands && space.kind == SpaceKind::Bay;
        bay && (0..space.ways.len()).any(|way| {
            let out = space.ways[way];
            let (axis, middle) = (out.axis(), place.space.middle(out.axis()));
            let edge = match out.rising() {
                true => space.volume.max[axis] - middle,
                false => middle - space.volume.min[axis],
            };
            axis < 2 && edge < slide && board.blockers(lot, way).is_empty()
        })
    })
}

/// Hung things that are heavy, or sharp and not covered.
pub(super) fn swings(board: &Board) -> Vec<String> {
    named(board, |lot, place| {
        let one = &board.site().lots[lot];
        let bare = one.hazards.has(Hazard::Sharp) && one.bare_edge;
        one.forms[place.home.form as usize].pose == Pose::Hang && (one.unit >= HEAVY || bare)
    })
}

/// Names of the items of which some copy is so placed, in the order of the inventory.
fn named(board: &Board, is: impl Fn(usize, &Place) -> bool) -> Vec<String> {
    let site = board.site();
    let mut names: Vec<String> = Vec::new();
    for (lot, one) in site.lots.iter().enumerate() {
        let name = &site.items[one.item].name;
        if board.place(lot).is_some_and(|place| is(lot, place)) && !names.contains(name) {
            names.push(name.clone());
        }
    }
    names
}
