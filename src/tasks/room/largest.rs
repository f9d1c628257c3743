//! The largest free box on a surface.
//!
//! Exact, not only among corners: the largest empty box lies against something on every side, so that each of its sides
//! is a side of the free box, of a thing or of a board. Every pair of such coordinates along one axis of the surface and
//! every depth away from it is tried; along the other axis the gaps between what is then in the way are read off.

use crate::geometry::{Axis, Box3, Way};
use crate::site::{Board, SpaceKind};
use crate::units::Length;

/// The largest free box that rests on a surface (hangs on it, on a wall), with a way out that no board crosses;
/// `None` where nothing is free.
///
/// The free height that things ask for above themselves counts as taken; the box's own is not taken off.
pub fn largest_free(board: &Board, surface: usize) -> Option<Box3> {
    let site = board.site();
    let s = &site.surfaces[surface];
    let space = &site.spaces[s.space];
    let taken = taken(board, surface);
    let boards: Vec<Box3> = space.boards.iter().map(|&b| *board.board(b)).collect();
    let ways = if space.kind == SpaceKind::Bay { &space.ways[..] } else { &[] };
    let found = |shadows: Vec<Box3>| {
        let all: Vec<Box3> = taken.iter().copied().chain(shadows).collect();
        largest(board.free(surface), &all, s.rest.axis, s.rest.greater)
    };
    if boards.is_empty() || ways.is_empty() {
        return found(boards);
    }
    let by_way = ways.iter().filter_map(|&way| {
        found(boards.iter().map(|b| shadow(b, way, board.free(surface))).collect())
    });
    // The first of equals: ties go to the declaring face.
    by_way.fold(None, |best: Option<Box3>, b| match best {
        Some(a) if volume(&a) >= volume(&b) => Some(a),
        _ => Some(b),
    })
}

/// Boxes of all things that may reach into a surface's free box, with the free height that they need.
fn taken(board: &Board, surface: usize) -> Vec<Box3> {
    let site = board.site();
    let space = site.surfaces[surface].space;
    let near = std::iter::once(space).chain(site.spaces[space].near.iter().copied());
    near.flat_map(|s| board.members(s))
        .filter_map(|&l| {
            let mut b = board.place(l as usize)?.space;
            b.max[2] += board.over(l as usize);
            Some(b)
        })
        .collect()
}

/// A board with all that lies behind it on a way out: nothing there can be taken out that way.
fn shadow(board: &Box3, way: Way, free: &Box3) -> Box3 {
    let (mut b, axis) = (*board, way.axis());
    if way.rising() {
        b.min[axis] = b.min[axis].min(free.min[axis]);
    } else {
        b.max[axis] = b.max[axis].max(free.max[axis]);
    }
    b
}

/// Cubic nanometres of a box.
pub fn volume(b: &Box3) -> i128 {
    (0..3).map(|a| i128::from(b.extent(a).as_nm())).product()
}

/// The largest box within `free` that meets none of `taken` and lies against one end of the axis `rest`.
pub fn largest(free: &Box3, taken: &[Box3], rest: Axis, greater: bool) -> Option<Box3> {
    let taken: Vec<&Box3> = taken.iter().filter(|t| t.overlaps(free)).collect();
    let [p, q] = [(rest + 1) % 3, (rest + 2) % 3];
    let mut best: Option<Box3> = None;
    for far in fars(free, &taken, rest, greater) {
        let mut slab = *free;
        *(if greater { &mut slab.min[rest] } else { &mut slab.max[rest] }) = far;
        let met: Vec<&&Box3> = taken.iter().filter(|t| t.meets_along(&slab, rest)).collect();
        let starts = sides(free, &met, p, true);
        let ends = sides(free, &met, p, false);
        for &from in &starts {
            for &to in ends.iter().filter(|e| **e > from) {
                (slab.min[p], slab.max[p]) = (from, to);
                let most = |b: &Box3| best.as_ref().is_none_or(|a| volume(b) > volume(a));
                if let Some(b) = widest_gap(&slab, free, &met, p, q).filter(most) {
                    best = Some(b);
                }
            }
        }
    }
    best.filter(Box3::is_solid)
}

/// How far a box may reach from the plane that it rests on: to the far end, or to where something begins.
fn fars(free: &Box3, taken: &[&Box3], rest: Axis, greater: bool) -> Vec<Length> {
    let side = |b: &Box3| if greater { b.max[rest] } else { b.min[rest] };
    let end = if greater { free.min[rest] } else { free.max[rest] };
    let mut all: Vec<Length> = taken.iter().map(|t| side(t)).collect();
    all.retain(|c| free.min[rest] < *c && *c < free.max[rest]);
    all.push(end);
    all.sort_unstable();
    all.dedup();
    all
}

/// Where a box may begin (or end) along an axis: at an end of the free box, or where a thing ends (begins).
fn sides(free: &Box3, met: &[&&Box3], axis: Axis, begins: bool) -> Vec<Length> {
    let mut all = vec![if begins { free.min[axis] } else { free.max[axis] }];
    all.extend(met.iter().map(|t| if begins { t.max[axis] } else { t.min[axis] }));
    all.retain(|c| free.min[axis] <= *c && *c <= free.max[axis]);
    all.sort_unstable();
    all.dedup();
    all
}

/// The widest gap along `q` between the things that meet a slab along `p`.
fn widest_gap(slab: &Box3, free: &Box3, met: &[&&Box3], p: Axis, q: Axis) -> Option<Box3> {
    let mut between: Vec<[Length; 2]> =
        met.iter().filter(|t| t.meets_along(slab, p)).map(|t| [t.min[q], t.max[q]]).collect();
    between.sort_unstable();
    between.push([free.max[q]; 2]);
    let mut from = free.min[q];
    let mut best: Option<Box3> = None;
    for [begin, end] in between {
        let begin = begin.min(free.max[q]);
        if begin > from && best.as_ref().is_none_or(|b| begin - from > b.extent(q)) {
            let mut gap = *slab;
            (gap.min[q], gap.max[q]) = (from, begin);
            best = Some(gap);
        }
        from = from.max(end);
    }
    best
}
