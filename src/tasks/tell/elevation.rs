//! The faces to scale, as seen by someone standing before them.

use super::super::outcome::{Elevation, Part, Placement, Rect};
use crate::domain::{Face, Workspace};
use crate::geometry::Box3;
use crate::site::{Board, Site, SpaceKind, local};
use crate::units::Length;

/// Every face that has something to show.
pub(super) fn elevations(
    board: &Board,
    workspace: &Workspace,
    order: &[(usize, u32)],
    placements: &[Placement],
) -> Vec<Elevation> {
    Face::ALL
        .into_iter()
        .filter_map(|face| one(board, workspace, order, placements, face))
        .collect()
}

fn one(
    board: &Board,
    workspace: &Workspace,
    order: &[(usize, u32)],
    placements: &[Placement],
    face: Face,
) -> Option<Elevation> {
    let site = board.site();
    let parts = parts(board, face);
    let mut slots: Vec<(usize, Rect, Length)> = Vec::new();
    for (n, &(l, _)) in order.iter().enumerate() {
        if placements[n].face == face
            && let Some(place) = board.place(l)
        {
            let depth = local(face, site.size, &place.space)[2][0];
            slots.push((n, rect(site, face, &place.space), depth));
        }
    }
    if parts.is_empty() && slots.is_empty() {
        return None;
    }
    slots.sort_by_key(|(n, _, depth)| (std::cmp::Reverse(*depth), *n));
    Some(Elevation {
        face,
        theme: theme(site, order, placements, face),
        outline: outline(workspace, face),
        parts,
        slots: slots.into_iter().map(|(n, r, _)| (n, r)).collect(),
    })
}

fn rect(site: &Site, face: Face, b: &Box3) -> Rect {
    let [u, v, _] = local(face, site.size, b);
    Rect { u0: u[0], u1: u[1], v0: v[0], v1: v[1] }
}

fn outline(workspace: &Workspace, face: Face) -> Rect {
    let c = &workspace.carcass;
    let (u1, v0, v1) = match face {
        Face::Top => (c.width, Length::ZERO, c.depth),
        Face::Left | Face::Right => (c.depth, c.casters.height, c.height),
        Face::Front | Face::Back => (c.width, c.casters.height, c.height),
    };
    Rect { u0: Length::ZERO, u1, v0, v1 }
}

fn parts(board: &Board, face: Face) -> Vec<(Part, String, Rect)> {
    let site = board.site();
    let mut parts = Vec::new();
    for space in site.spaces.iter().filter(|s| s.ways.contains(&face)) {
        let seen = if space.face == face {
            space.name.clone()
        } else {
            format!("{} (through, told at the {})", space.name, space.face.name())
        };
        let kind = match space.kind {
            SpaceKind::Bay => Part::Bay,
            SpaceKind::Drawer => Part::Drawer,
            SpaceKind::Panel => Part::Panel,
            SpaceKind::Bench => Part::Bench,
        };
        if kind == Part::Bench {
            for &s in &space.surfaces {
                parts.push((kind, seen.clone(), rect(site, face, board.free(s))));
            }
            continue;
        }
        parts.push((kind, seen, rect(site, face, &space.volume)));
        for &b in &space.boards {
            let name = site.surfaces[site.boards[b].surface].name.clone();
            parts.push((Part::Shelf, name, rect(site, face, board.board(b))));
        }
    }
    parts
}

/// The two families with the most lots on a face.
fn theme(site: &Site, order: &[(usize, u32)], placements: &[Placement], face: Face) -> String {
    let mut families: Vec<(usize, &str)> = Vec::new();
    for (n, &(l, _)) in order.iter().enumerate() {
        let family = site.items[site.lots[l].item].family.as_deref();
        if let Some(family) = family.filter(|_| placements[n].face == face) {
            match families.iter_mut().find(|(_, f)| *f == family) {
                Some((count, _)) => *count += 1,
                None => families.push((1, family)),
            }
        }
    }
    families.sort_by_key(|(count, _)| std::cmp::Reverse(*count));
    let names: Vec<&str> = families.iter().take(2).map(|(_, f)| *f).collect();
    names.join(", ")
}
