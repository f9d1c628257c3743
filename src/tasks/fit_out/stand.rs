//! Racks, straps and bolts for what stands or lies but would not stay.

use super::hang::{self, PLATE};
use super::hole::place;
use super::screw::{GAUGES, Screw, holding, joining};
use super::work::Work;
use super::{Holder, Holding, Kind};
use crate::domain::{Face, Item, Pose};
use crate::geometry::Box3;
use crate::physics::fasteners::{Ground, share_below};
use crate::site::SpaceKind;
use crate::tasks::outcome::Placement;
use crate::units::{Length, Mass, show_length};

/// A thing higher than so many times the smaller side of its foot does not stand by itself: as the inventory's default has
/// it; common practice, no source.
pub const SLENDER: i64 = 3;
/// Thickness of a cheek: an offcut of the usual board; common practice, no source.
pub const CHEEK: Length = Length::mm(15);
/// A wall or neighbour so near keeps a thing as a cheek does: design choice, ours.
const NEAR: Length = Length::mm(5);
/// A wall farther away takes no strap: design choice, ours.
const FAR: Length = Length::mm(200);

/// Whether a thing on a deck does not stand flat by itself: it lies because it cannot stand, or it is slender.
pub fn is_unsteady(item: &Item, p: &Placement) -> bool {
    let foot = item.pose(Pose::Stand).unwrap_or(item.size);
    match p.pose {
        Pose::Hang => false,
        Pose::Lie => item.pose(Pose::Stand).is_none(),
        Pose::Stand => {
            item.pose(Pose::Stand).is_none() || p.space.extent(2) > foot.w.min(foot.d) * SLENDER
        }
    }
}

/// Finds what keeps a placement in its place, where it needs anything.
pub fn keep(work: &mut Work, placement: usize) {
    let p = &work.plan.placements[placement];
    let Some(item) = work.workspace.items.iter().find(|i| i.name == p.item) else { return };
    if p.pose == Pose::Hang {
        hang::hang(work, placement);
    } else if p.face == Face::Top && !item.fetched {
        bolts(work, placement);
    } else if is_unsteady(item, p) && !rack(work, placement) && !strap(work, placement) {
        foot(work, placement);
    }
}

fn bolts(work: &mut Work, placement: usize) {
    let of = work.name_of(placement);
    let bolt = "coach bolt with washer and nut, to suit the holes of its own foot".to_owned();
    work.holders.push(Holder {
        kind: Kind::Bolts,
        placement: Some(placement),
        told: format!("bolts through the foot of {of} and the bench; its foot is the template"),
        of,
        parts: vec![(bolt, 4)],
        mount: None,
        screw: None,
        holding: None,
    });
}

/// The boxes of the two cheeks of a thing, where there is room; `None` at a side where a wall or neighbour keeps it.
fn cheeks(work: &Work, placement: usize) -> Option<[Option<Box3>; 2]> {
    let p = &work.plan.placements[placement];
    let s = work.surface_of(placement)?;
    let axis = work.site().surfaces[s].along;
    let high = (p.space.extent(2).half()).max(Length::mm(40)).min(p.space.extent(2));
    let side = |rising: bool| {
        let mut cheek = p.space;
        cheek.max[2] = cheek.min[2] + high;
        let grown = |far: Length| {
            let mut b = cheek;
            if rising {
                (b.min[axis], b.max[axis]) = (p.space.max[axis], p.space.max[axis] + far);
            } else {
                (b.min[axis], b.max[axis]) = (p.space.min[axis] - far, p.space.min[axis]);
            }
            b
        };
        match is_free(work, s, placement, &grown(CHEEK)) {
            true => Some(Some(grown(CHEEK))),
            false if !is_free(work, s, placement, &grown(NEAR)) => Some(None),
            false => None,
        }
    };
    Some([side(false)?, side(true)?])
}

/// Whether something may be built there: inside the space, clear of all things and shelves, and in nobody's way out.
pub fn is_free(work: &Work, surface: usize, but: usize, b: &Box3) -> bool {
    let site = work.site();
    let space = site.surfaces[surface].space;
    let inside = site.spaces[space].volume.contains(b);
    let boards = &site.spaces[space].boards;
    let solid = boards.iter().any(|&k| work.board.board(k).overlaps(b));
    let things = work.plan.placements.iter().enumerate();
    let met = |(k, p): (usize, &Placement)| {
        k != but && (p.space.overlaps(b) || p.space.swept_meets(p.way, b))
    };
    inside && !solid && !things.into_iter().any(met)
}

/// Two cheeks on the deck, screwed from below; in a drawer glued in.
fn rack(work: &mut Work, placement: usize) -> bool {
    let Some(sides) = cheeks(work, placement) else { return false };
    let boards: Vec<Box3> = sides.into_iter().flatten().collect();
    let Some(s) = work.surface_of(placement) else { return false };
    let (of, unit) = (work.name_of(placement), work.unit());
    let Some(first) = boards.first() else { return false };
    let axis = 1 - work.site().surfaces[s].along;
    let part = format!(
        "cheek {} × {}, {} thick",
        show_length(first.extent(axis), unit),
        show_length(first.extent(2), unit),
        show_length(CHEEK, unit)
    );
    let n = boards.len() as u32;
    let (told, keeps) = match n {
        2 => ("two cheeks", ""),
        _ => ("one cheek", "; what is beside it keeps its other side"),
    };
    let mut holder = Holder {
        kind: Kind::Rack,
        placement: Some(placement),
        told: format!("{told} on either side of it{keeps}: {n} × {part}"),
        of,
        parts: vec![(part, n)],
        mount: None,
        screw: None,
        holding: None,
    };
    if n == 1 {
        holder.told = format!("one cheek beside it{keeps}: {}", holder.parts[0].0);
    }
    if work.site().spaces[work.site().surfaces[s].space].kind == SpaceKind::Bay {
        return screwed(work, s, holder, &boards);
    }
    holder.told += ", glued in";
    work.holders.push(holder);
    true
}

/// Finds the holes for cheeks through their deck; `false` where there is no place for them.
fn screwed(work: &mut Work, surface: usize, mut holder: Holder, cheeks: &[Box3]) -> bool {
    let Some(mount) = work.mount_at(surface) else { return false };
    let m = &work.mounts[mount];
    let mut taken: Vec<[Length; 2]> = m.holes.iter().map(|h| h.at).collect();
    let mut holes = Vec::new();
    for cheek in cheeks {
        let [l, r, f, b] = m.outline(cheek);
        let quarter = Length::nm((b - f).as_nm() / 4);
        let spots = [[(l + r).half(), f + quarter], [(l + r).half(), b - quarter]];
        // Only along the cheek may they be moved, and one of them is enough for a short one.
        let reach = [Length::ZERO, quarter];
        let found = place(m, &spots, reach, &taken, work.unit())
            .or_else(|| place(m, &[[(l + r).half(), (f + b).half()]], reach, &taken, work.unit()));
        let Some(found) = found else { return false };
        taken.extend(&found);
        holes.extend(found);
    }
    let deck = holes.iter().map(|at| work.behind(mount, *at).0).min().unwrap_or_default();
    let high = cheeks[0].extent(2);
    let Some(sold) = joining(&[deck, high]).first().copied() else { return false };
    let screw = Screw { gauge: GAUGES[0], sold };
    holder.screw = Some((screw, holes.len() as u32));
    holder.mount = Some(mount);
    holder.told += ", screwed from below into half their thickness";
    if let Some(p) = holder.placement {
        let outline = work.mounts[mount].outline(&work.plan.placements[p].space);
        work.mounts[mount].outlines.push((p, outline));
    }
    let index = work.holders.len();
    for at in holes {
        work.drill(mount, index, at, screw, deck, true);
    }
    work.holders.push(holder);
    true
}

/// A strap round a thing, with both ends screwed to the nearest wall of its bay.
fn strap(work: &mut Work, placement: usize) -> bool {
    let Some(s) = work.surface_of(placement) else { return false };
    let space = &work.site().spaces[work.site().surfaces[s].space];
    if space.kind != SpaceKind::Bay {
        return false;
    }
    let (face, bay, volume) = (space.face, space.name.clone(), space.volume);
    let through = space.through();
    let walls = ["back", "left", "right"].into_iter().filter(|w| *w != "back" || !through);
    let b = work.plan.placements[placement].space;
    let mut near: Vec<(Length, &str)> = walls
        .map(|wall| {
            let m = work.wall(face, &bay, wall, &volume);
            let range = m.into.range(&b);
            (-range[1], wall)
        })
        .filter(|(far, _)| *far <= FAR)
        .collect();
    near.sort_unstable();
    near.into_iter().any(|(_, wall)| {
        let m = work.wall(face, &bay, wall, &volume);
        strapped(work, placement, m)
    })
}

fn strapped(work: &mut Work, placement: usize, wall: super::Mount) -> bool {
    let (p, unit) = (&work.plan.placements[placement], work.unit());
    let (b, mass) = (p.space, p.weight);
    let mount = work.enter(wall);
    let m = &work.mounts[mount];
    let [l, r, low, high] = m.outline(&b);
    let y = low + Length::nm((high - low).as_nm() * 2 / 3);
    let in_from = |x: Length| x.max(super::FROM_EDGE).min(m.size[0] - super::FROM_EDGE);
    let taken: Vec<[Length; 2]> = m.holes.iter().map(|h| h.at).collect();
    let spots = [[in_from(l), y], [in_from(r), y]];
    let Some(holes) = place(m, &spots, [Length::mm(30), Length::mm(60)], &taken, unit) else {
        return false;
    };
    let boards = holes.iter().map(|at| work.behind(mount, *at).0).min().unwrap_or_default();
    let round = (b.extent(0) + b.extent(1)) * 2;
    let Some((screw, share)) = strap_screw(&m.ground, mass, boards) else { return false };
    let part = format!("strap with two end plates, {} long", show_length(round, unit));
    let held = Holding { load: mass, reach: Length::ZERO, share, wire: None, rated: mass };
    let (of, wall) = (work.name_of(placement), work.mounts[mount].name());
    let holder = Holder {
        kind: Kind::Strap,
        placement: Some(placement),
        told: format!("a strap round it at two thirds of its height, to {wall}"),
        of,
        parts: vec![(part, 1)],
        mount: Some(mount),
        screw: Some((screw, 2)),
        holding: Some(held),
    };
    let outline = work.mounts[mount].outline(&b);
    work.mounts[mount].outlines.push((placement, outline));
    work.screw_on(mount, holder, &holes);
    true
}

/// The thinnest screw of two that holds a thing's whole weight pulled straight out, as if the cart lay on its side.
fn strap_screw(ground: &Ground, mass: Mass, boards: Length) -> Option<(Screw, f64)> {
    GAUGES
        .into_iter()
        .flat_map(|gauge| holding(PLATE, boards).into_iter().map(move |sold| Screw { gauge, sold }))
        .find_map(|screw| {
            let wood = crate::physics::fasteners::Screw {
                diameter: screw.gauge.diameter.as_mm(),
                thread: (screw.sold.length() - PLATE).as_mm(),
            };
            let share = share_below(mass.as_kg() / 2.0, &wood.holds(ground));
            (share <= 1.0).then_some((screw, share))
        })
}

/// A loose foot with a collar: it needs room about the thing, and no wall.
fn foot(work: &mut Work, placement: usize) {
    let (b, unit) = (work.plan.placements[placement].space, work.unit());
    let of = work.name_of(placement);
    let wide = [0, 1].map(|a| show_length(b.extent(a) + CHEEK * 2, unit));
    let high = show_length((b.extent(2).half()).max(Length::mm(40)), unit);
    let part = format!("foot of board {} × {} with a collar {high} high", wide[0], wide[1]);
    let mut about = b;
    for a in 0..2 {
        about.min[a] -= CHEEK;
        about.max[a] += CHEEK;
    }
    let meets = |k: usize| k != placement && work.plan.placements[k].space.overlaps(&about);
    let bay = work.plan.placements[placement].face != Face::Top;
    if bay || (0..work.plan.placements.len()).any(meets) {
        let p = &work.plan.placements[placement];
        let at = format!("{} / {} / {}", p.face.name(), p.bay, p.surface);
        work.wants.push(format!("{of} does not stand by itself, and on {at} there is no room for a rack and no wall for a strap: wedge it with foam cut to its shape, or keep it elsewhere"));
        return;
    }
    work.holders.push(Holder {
        kind: Kind::Rack,
        placement: Some(placement),
        told: format!("a {part}, standing loose"),
        of,
        parts: vec![(part, 1)],
        mount: None,
        screw: None,
        holding: None,
    });
}
