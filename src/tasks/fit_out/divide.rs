//! Dividers for drawers, and lips along the front edges of shelves.

use super::hole::FROM_EDGE;
use super::mount::{Measure, Mount, MountKind, along, into, on_tape, right_of};
use super::screw::{GAUGES, LENGTHS, Screw, in_edge};
use super::work::Work;
use super::{Holder, Kind};
use crate::geometry::Box3;
use crate::site::{Kind as SurfaceKind, SpaceKind};
use crate::units::{Length, Mass, show_length};

/// Thickness of dividers and lips: common practice, no source.
pub const THIN: Length = Length::mm(6);
/// How far a lip stands over its shelf: common practice, no source.
pub const LIP: Length = Length::mm(15);
/// What is lifted over a lip needs that much more free height over it: design choice, ours.
const OVER: Length = Length::mm(2);
/// Heavier things are not to be lifted over a lip: design choice, ours.
const HEAVY: Mass = Mass::kg(10);
/// A drawer whose things cover more of its bottom keeps them by itself: design choice, ours.
const FULL: f64 = 0.97;
/// The screws of a lip stand no farther apart: common practice, no source.
const PITCH: Length = Length::mm(250);

/// Dividers for each drawer that holds something: one where things leave room beside one another.
pub fn drawers(work: &mut Work) {
    for s in 0..work.site().spaces.len() {
        let space = &work.site().spaces[s];
        if space.kind != SpaceKind::Drawer {
            continue;
        }
        let across = along(&space.volume, right_of(space.face));
        let (volume, name) = (space.volume, format!("{} / {}", space.face.name(), space.name));
        let inside: Vec<Box3> = work
            .plan
            .placements
            .iter()
            .filter(|p| p.face == space.face && p.bay == space.name)
            .map(|p| p.space)
            .collect();
        if !inside.is_empty() {
            divide(work, &name, &volume, across, &inside);
        }
    }
}

fn divide(work: &mut Work, name: &str, volume: &Box3, across: Measure, inside: &[Box3]) {
    let wide = volume.extent(across.axis);
    let lanes = lanes(across, inside);
    let ends = lanes.iter().skip(1).map(|l| l[0]).chain([wide]);
    let gaps: Vec<Length> = lanes.iter().zip(ends).map(|(l, next)| next - l[1]).collect();
    let n = gaps.iter().filter(|g| **g >= THIN).count() as u32;
    let unit = work.unit();
    let (kind, part) = if n > 0 {
        let tallest = inside.iter().map(|b| b.extent(2)).max().unwrap_or_default();
        let high = tallest.half().max(Length::mm(30)).min(volume.extent(2) - Length::mm(5));
        let long = volume.extent(1 - across.axis);
        let size = [long, high, THIN].map(|l| show_length(on_tape(l, unit), unit));
        (Kind::Divider, format!("divider {} × {}, {} thick", size[0], size[1], size[2]))
    } else if is_loose(volume, inside) {
        let size = [0, 1].map(|a| show_length(volume.extent(a), unit));
        (Kind::Lining, format!("non-slip lining {} × {}", size[0], size[1]))
    } else {
        return;
    };
    let told = match kind {
        Kind::Divider => format!(
            "{n} × {part}, from front to rear close beside the things on its left, glued to the sides"
        ),
        _ => format!("{part}: no divider fits between its things"),
    };
    work.holders.push(Holder {
        kind,
        placement: None,
        of: name.to_owned(),
        told,
        parts: vec![(part, n.max(1))],
        mount: None,
        screw: None,
        holding: None,
    });
}

/// Whether things in a drawer leave so much of its bottom free that they slide about.
fn is_loose(volume: &Box3, inside: &[Box3]) -> bool {
    let area = |b: &Box3| b.extent(0).as_mm() * b.extent(1).as_mm();
    inside.iter().map(area).fold(0.0, |a, b| a + b) < FULL * area(volume)
}

/// Where things are across a drawer: ranges that no lengthwise board can cross, from the left.
fn lanes(across: Measure, inside: &[Box3]) -> Vec<[Length; 2]> {
    let mut ranges: Vec<[Length; 2]> = inside.iter().map(|b| across.range(b)).collect();
    ranges.sort_unstable();
    let mut lanes: Vec<[Length; 2]> = Vec::new();
    for r in ranges {
        match lanes.last_mut() {
            Some(last) if r[0] < last[1] + THIN => last[1] = last[1].max(r[1]),
            _ => lanes.push(r),
        }
    }
    lanes
}

/// A lip for each shelf that holds something, where its things can be lifted over it and nothing stands before it.
pub fn shelves(work: &mut Work) {
    for b in 0..work.site().boards.len() {
        lip(work, b);
    }
}

fn lip(work: &mut Work, board: usize) {
    let site = work.site();
    let shelf = &site.boards[board];
    let (surface, space) = (&site.surfaces[shelf.surface], &site.spaces[shelf.space]);
    let solid = *work.board.board(board);
    let face = space.face;
    let strip = strip(&solid, face);
    let on: Vec<usize> = (0..work.plan.placements.len())
        .filter(|&k| work.surface_of(k) == Some(shelf.surface))
        .collect();
    let free = work.board.free(shelf.surface).max[2];
    let lifted = |&k: &usize| {
        let p = &work.plan.placements[k];
        free - p.space.max[2] >= LIP + OVER && p.weight <= HEAVY
    };
    let thick = solid.extent(2);
    let clear = space.volume.contains(&strip)
        && !work.plan.placements.iter().any(|p| p.space.overlaps(&strip));
    let deck = surface.kind == SurfaceKind::Deck;
    if on.is_empty() || !deck || !on.iter().all(lifted) || !clear {
        return;
    }
    let Some(edge) = in_edge(thick, &GAUGES[0]) else { return };
    let mount = edge_mount(work, &space.name.clone(), &surface.name.clone(), &solid, face);
    screw_lip(work, mount, edge.from_face);
}

/// The strip before the front edge of a shelf, and as far over it as a lip stands.
fn strip(solid: &Box3, face: crate::domain::Face) -> Box3 {
    let (axis, rising) = into(face);
    let mut strip = *solid;
    if rising {
        (strip.min[axis], strip.max[axis]) = (solid.min[axis] - THIN, solid.min[axis]);
    } else {
        (strip.min[axis], strip.max[axis]) = (solid.max[axis], solid.max[axis] + THIN);
    }
    strip.max[2] += LIP;
    strip
}

fn edge_mount(
    work: &Work,
    bay: &str,
    surface: &str,
    solid: &Box3,
    face: crate::domain::Face,
) -> Mount {
    let (axis, rising) = into(face);
    let near = if rising { solid.min[axis] } else { solid.max[axis] };
    let right = right_of(face);
    let flat = work.deck(face, bay, surface, solid);
    Mount {
        kind: MountKind::Edge,
        size: [solid.extent(right.0), solid.extent(2)],
        across: along(solid, right),
        up: along(solid, (2, true)),
        into: Measure { axis, rising, from: near },
        edges: ["left end", "right end", "lower face", "upper face"],
        ..flat
    }
}

fn screw_lip(work: &mut Work, mount: Mount, half: Length) {
    let unit = work.unit();
    let [wide, thick] = mount.size;
    let n = (wide.as_nm() / PITCH.as_nm()).max(1) as u32 + 1;
    let inset = (FROM_EDGE * 2).min(Length::nm(wide.as_nm() / 4));
    let step = (wide - inset * 2).as_nm() / i64::from(n - 1);
    let holes: Vec<[Length; 2]> = (0..n)
        .map(|k| {
            let x = inset + Length::nm(step * i64::from(k));
            [mount.snapped([x, half], unit)[0], half]
        })
        .collect();
    // The screw goes three times as far into the edge as the lip is thick.
    let Some(sold) = LENGTHS.into_iter().find(|s| s.length() >= THIN * 4) else { return };
    let screw = Screw { gauge: GAUGES[0], sold };
    let size = [wide, thick + LIP, THIN].map(|l| show_length(on_tape(l, unit), unit));
    let part = format!("lip {} × {}, {} thick", size[0], size[1], size[2]);
    let (of, over) = (mount.name(), show_length(LIP, unit));
    let at = work.enter(mount);
    let index = work.holders.len();
    for spot in holes {
        work.drill(at, index, spot, screw, screw.sold.length() - THIN, false);
    }
    work.holders.push(Holder {
        kind: Kind::Lip,
        placement: None,
        of,
        told: format!("{part}, {over} over the shelf, so that nothing walks off as the cart rolls"),
        parts: vec![(part, 1)],
        mount: Some(at),
        screw: Some((screw, n)),
        holding: None,
    });
}
