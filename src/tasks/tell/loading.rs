//! In which order to load the cart: heavy and low first, what stands behind before what stands in front.

use super::super::outcome::{Placement, Step};
use crate::site::{Board, SpaceKind, TIP_OPEN};
use crate::units::{Length, Mass};

/// What counts as heavy when loading: common practice, no source.
const HEAVY: Mass = Mass::kg(5);

/// The steps.
pub(super) fn loading(
    board: &Board,
    order: &[(usize, u32)],
    placements: &[Placement],
) -> Vec<Step> {
    let mut steps = vec![Step {
        text: "Stand the empty cart on level floor and keep it from rolling.".to_owned(),
        placements: Vec::new(),
    }];
    steps.extend(warning(board));
    let mut left: Vec<usize> = (0..placements.len()).collect();
    let heavy = heavy_ones(placements);
    let mut first: Vec<usize> = Vec::new();
    for n in heavy {
        // What stands behind a heavy thing goes in before it.
        for m in behind(board, order, placements, n) {
            if !first.contains(&m) {
                first.push(m);
            }
        }
        if !first.contains(&n) {
            first.push(n);
        }
    }
    left.retain(|n| !first.contains(n));
    if !first.is_empty() {
        steps.push(Step {
            text: "First the heavy things, lowest first, each with what stands behind it:"
                .to_owned(),
            placements: first,
        });
    }
    steps.extend(by_space(board, order, placements, &left));
    steps
}

/// Which drawers not to pull while the rest of the cart is empty.
fn warning(board: &Board) -> Option<Step> {
    let site = board.site();
    let footprint = site.statics.footprint.as_ref()?;
    let alone = |space: usize| {
        let mut empty = Board::new(site);
        let mut touched = crate::site::Touched::default();
        for l in 0..site.lots.len() {
            if board.space_of(l) == Some(space) {
                let to = board.place(l).copied();
                empty.apply(crate::site::Change { lot: l, to }, &mut touched);
            }
        }
        let case = empty.drawer_out(&empty.closed(), space);
        case.tip(footprint).1
    };
    let drawers = site.statics.drawers.iter().copied();
    let names: Vec<String> =
        drawers.filter(|&d| alone(d) < TIP_OPEN).map(|d| site.spaces[d].name.clone()).collect();
    (!names.is_empty()).then(|| Step {
        text: format!(
            "Do not pull {} when only that drawer is loaded: the cart could go over. Load the low bays before.",
            names.join(" or ")
        ),
        placements: Vec::new(),
    })
}

fn heavy_ones(placements: &[Placement]) -> Vec<usize> {
    let mut heavy: Vec<usize> =
        (0..placements.len()).filter(|&n| placements[n].weight > HEAVY).collect();
    heavy
        .sort_by_key(|&n| (placements[n].space.min[2], std::cmp::Reverse(placements[n].weight), n));
    heavy
}

/// What can only be reached when this one is moved.
fn behind(board: &Board, order: &[(usize, u32)], placements: &[Placement], n: usize) -> Vec<usize> {
    let lot = &board.site().lots[order[n].0];
    let name = &board.site().items[lot.item].name;
    (0..placements.len())
        .filter(|&m| {
            placements[m].moved_first.iter().any(|c| c.item == *name && c.copy == lot.first)
        })
        .collect()
}

/// The rest bay by bay, the lowest first; in each what stands behind first; drawers and panels last.
fn by_space(
    board: &Board,
    order: &[(usize, u32)],
    placements: &[Placement],
    left: &[usize],
) -> Vec<Step> {
    let site = board.site();
    let rank = |s: usize| match site.spaces[s].kind {
        SpaceKind::Bay => 0,
        SpaceKind::Drawer => 1,
        SpaceKind::Panel => 2,
        SpaceKind::Bench => 3,
    };
    let mut spaces: Vec<(u8, Length, usize)> =
        (0..site.spaces.len()).map(|s| (rank(s), site.spaces[s].volume.min[2], s)).collect();
    spaces.sort_unstable();
    let mut steps = Vec::new();
    for (_, _, s) in spaces {
        let mut here: Vec<usize> =
            left.iter().copied().filter(|&n| board.space_of(order[n].0) == Some(s)).collect();
        here.sort_by_key(|&n| {
            (std::cmp::Reverse(placements[n].moved_first.len()), placements[n].space.min[2], n)
        });
        if !here.is_empty() {
            let space = &site.spaces[s];
            let what = if space.kind == SpaceKind::Drawer { ", then shut it" } else { "" };
            steps.push(Step {
                text: format!("{} / {}{what}:", space.face.name(), space.name),
                placements: here,
            });
        }
    }
    steps
}
