//! Legal places: what would be in the way of a lot on a surface, and where it can be pushed against something.

use super::board::{Board, Place, footprint};
use super::lot::{Form, Home, Lot, answers, at, home, needed};
use super::surface::{Kind, SpaceKind, Surface, local};
use super::{Site, lot};
use crate::domain::{Entry, Face};
use crate::geometry::{Axis, Box3};
use crate::units::Length;

/// What is in the way of a lot on one surface: rectangles over the two axes in which it can be moved there.
#[derive(Clone, Debug, Default)]
pub struct Clearing {
    rects: Vec<[Length; 4]>,
    axes: [Axis; 2],
    /// Least and greatest coordinate of the lot's least corner, along both axes.
    range: [[Length; 2]; 2],
    extents: [Length; 3],
    rest: (Axis, Length),
    /// Room to work in: corners, things abreast of a coordinate, things that touch it.
    free: Vec<Length>,
    abreast: Vec<[Length; 2]>,
    beside: Vec<[Length; 2]>,
}

impl Clearing {
    /// Looks at a surface for a lot, which is itself not counted. `false` where it can be nowhere there.
    pub fn look(&mut self, board: &Board, lot: usize, home: &Home) -> bool {
        self.look_past(board, lot, lot, home)
    }

    /// The same as if another lot were not there either.
    pub fn look_past(&mut self, board: &Board, lot: usize, other: usize, home: &Home) -> bool {
        carries(board, [lot, other], home) && self.survey(board, [lot, other], home)
    }

    /// The same as [`Clearing::look`] whatever the surface may carry: how things lie that a person has put there.
    pub fn look_anyhow(&mut self, board: &Board, lot: usize, home: &Home) -> bool {
        self.survey(board, [lot, lot], home)
    }

    fn survey(&mut self, board: &Board, past: [usize; 2], home: &Home) -> bool {
        let site = board.site();
        let s = home.surface as usize;
        let (surface, free) = (&site.surfaces[s], board.free(s));
        self.rects.clear();
        self.axes = surface.free_axes();
        self.extents = home.extents;
        self.rest = (surface.rest.axis, surface.touch(free, home.extents));
        let headroom = board.headroom(past[0], s);
        if home.extents[surface.rest.axis] > free.extent(surface.rest.axis)
            || home.extents[2] + headroom > free.extent(2)
        {
            return false;
        }
        for (k, &axis) in self.axes.iter().enumerate() {
            self.range[k] = [free.min[axis], free.max[axis] - home.extents[axis]];
            if self.range[k][0] > self.range[k][1] {
                return false;
            }
        }
        self.gather(board, past, surface, headroom);
        true
    }

    fn gather(&mut self, board: &Board, past: [usize; 2], surface: &Surface, headroom: Length) {
        let site = board.site();
        let space = &site.spaces[surface.space];
        for &other in std::iter::once(&surface.space).chain(&space.near) {
            for &m in board.members(other) {
                if past.contains(&(m as usize)) {
                    continue;
                }
                if let Some(place) = board.place(m as usize) {
                    self.note(&place.space, board.over(m as usize), headroom);
                }
            }
        }
        for &b in &space.boards {
            self.note(board.board(b), Length::ZERO, headroom);
        }
    }

    /// Notes a box that needs `over` free above it, for a lot that itself needs `headroom`.
    #[inline]
    fn note(&mut self, b: &Box3, over: Length, headroom: Length) {
        let (axis, low) = self.rest;
        let high = low + self.extents[axis];
        let [p, q] = self.axes;
        if axis == 2 {
            let mine = low < b.max[2] && b.min[2] < high + headroom;
            let its = low < b.max[2] + over && b.min[2] < high;
            if mine || its {
                self.rects.push([b.min[p], b.max[p], b.min[q], b.max[q]]);
            }
        } else if low < b.max[axis] && b.min[axis] < high {
            // A hung thing needs no headroom itself, but must leave it to what stands below.
            let raise = |a: Axis| if a == 2 { b.max[a] + over } else { b.max[a] };
            self.rects.push([b.min[p], raise(p), b.min[q], raise(q)]);
        }
    }

    /// The range of the lot's least corner along one of its two axes.
    pub fn range(&self, k: usize) -> [Length; 2] {
        self.range[k]
    }
    /// Things in the way.
    pub fn len(&self) -> usize {
        self.rects.len()
    }
    /// Whether nothing is in the way.
    pub fn is_empty(&self) -> bool {
        self.rects.is_empty()
    }
    /// A coordinate at which the lot touches the n-th thing along an axis: beyond it, or before it.
    #[inline]
    pub fn edge(&self, n: usize, k: usize, beyond: bool) -> Length {
        let r = &self.rects[n];
        if beyond { r[2 * k + 1] } else { r[2 * k] - self.extents[self.axes[k]] }
    }
    /// Whether a coordinate lies in the range along one of the two axes.
    #[inline]
    pub fn within(&self, k: usize, c: Length) -> bool {
        self.range[k][0] <= c && c <= self.range[k][1]
    }

    /// The first free coordinate along axis `k`, from `from` upwards or downwards, with the other coordinate given.
    #[inline]
    pub fn slide(&self, k: usize, other: Length, from: Length, up: bool) -> Option<Length> {
        let (mine, its) = (self.extents[self.axes[k]], self.extents[self.axes[1 - k]]);
        let mut c = from;
        'again: loop {
            if !self.within(k, c) {
                return None;
            }
            for r in &self.rects {
                let [o0, o1] = [r[2 * (1 - k)], r[2 * (1 - k) + 1]];
                let [m0, m1] = [r[2 * k], r[2 * k + 1]];
                if other < o1 && o0 < other + its && c < m1 && m0 < c + mine {
                    c = if up { m1 } else { m0 - mine };
                    continue 'again;
                }
            }
            return Some(c);
        }
    }

    /// Any free place: pushed along the first axis against something, then along the second as far as it goes.
    ///
    /// Where there is none, there is no free place at all: any could be pushed to one of these.
    pub fn any(&self, mut fits: impl FnMut(&Box3) -> bool) -> Option<Box3> {
        let mut at_edge = |p: Length| {
            let q = self.slide(1, p, self.range[1][0], true)?;
            Some(self.at(p, q)).filter(|b| fits(b))
        };
        if let Some(b) = at_edge(self.range[0][0]) {
            return Some(b);
        }
        (0..self.rects.len()).find_map(|n| {
            let p = self.edge(n, 0, true);
            self.within(0, p).then(|| at_edge(p)).flatten()
        })
    }

    /// Whether the lot is free of everything with its least corner there.
    pub fn is_free(&self, p: Length, q: Length) -> bool {
        self.within(0, p) && self.within(1, q) && self.slide(1, p, q, true) == Some(q)
    }

    /// Whether it touches something on both axes there: an edge of the surface, a board or another thing.
    pub fn is_corner(&self, p: Length, q: Length) -> bool {
        self.touches(0, p, q) && self.touches(1, q, p)
    }

    fn touches(&self, k: usize, c: Length, other: Length) -> bool {
        let its = self.extents[self.axes[1 - k]];
        self.range[k].contains(&c)
            || (0..self.rects.len()).any(|n| {
                let r = &self.rects[n];
                (self.edge(n, k, true) == c || self.edge(n, k, false) == c)
                    && other < r[2 * (1 - k) + 1]
                    && r[2 * (1 - k)] < other + its
            })
    }

    /// The second coordinates at which the lot stands free in a corner with its first one given, rising.
    fn corners_at(&mut self, p: Length, free: &mut Vec<Length>) {
        let [wide, high] = self.axes.map(|a| self.extents[a]);
        self.abreast.clear();
        self.beside.clear();
        for r in &self.rects {
            if p < r[1] && r[0] < p + wide {
                self.abreast.push([r[2], r[3]]);
            } else if p == r[1] || p + wide == r[0] {
                self.beside.push([r[2], r[3]]);
            }
        }
        let at_end = self.range[0].contains(&p);
        free.clear();
        if !at_end && self.beside.is_empty() {
            return;
        }
        free.extend(self.range[1]);
        free.extend(self.abreast.iter().flat_map(|r| [r[1], r[0] - high]));
        let meets = |q: Length, r: &[Length; 2]| q < r[1] && r[0] < q + high;
        free.retain(|&q| {
            self.within(1, q)
                && !self.abreast.iter().any(|r| meets(q, r))
                && (at_end || self.beside.iter().any(|r| meets(q, r)))
        });
        free.sort_unstable();
        free.dedup();
    }

    /// All coordinates along an axis at which the lot touches something, rising.
    pub fn edges(&self, k: usize) -> Vec<Length> {
        let mut all = self.range[k].to_vec();
        for n in 0..self.rects.len() {
            all.push(self.edge(n, k, true));
            all.push(self.edge(n, k, false));
        }
        all.retain(|&c| self.within(k, c));
        all.sort_unstable();
        all.dedup();
        all
    }

    /// The box of the lot with its least corner there.
    #[inline]
    pub fn at(&self, p: Length, q: Length) -> Box3 {
        let mut min = [Length::ZERO; 3];
        min[self.rest.0] = self.rest.1;
        min[self.axes[0]] = p;
        min[self.axes[1]] = q;
        at(min, self.extents)
    }
}

/// Whether limit and bench share allow the first lot there, both lots lifted.
fn carries(board: &Board, past: [usize; 2], home: &Home) -> bool {
    let (site, s) = (board.site(), home.surface as usize);
    let surface = &site.surfaces[s];
    let bench = site.spaces[surface.space].kind == SpaceKind::Bench;
    if surface.limit.is_none() && !bench {
        return true;
    }
    let mut load = board.load(s) + site.lots[past[0]].mass;
    let mut area = footprint(&at([Length::ZERO; 3], home.extents));
    let lifted = if past[0] == past[1] { &past[..1] } else { &past[..] };
    for &l in lifted {
        if let Some(there) = board.place(l).filter(|p| p.home.surface as usize == s) {
            load -= site.lots[l].mass;
            area -= footprint(&there.space);
        }
    }
    surface.limit.is_none_or(|limit| load <= limit)
        && (!bench || board.bench_area() + area as f64 / 1e12 <= site.bench_area)
}

/// Whether a box leaves some way out that no board crosses.
pub fn has_way_out(board: &Board, surface: usize, b: &Box3) -> bool {
    let site = board.site();
    let space = &site.spaces[site.surfaces[surface].space];
    space.boards.is_empty()
        || space
            .ways
            .iter()
            .any(|&way| !space.boards.iter().any(|&k| b.swept_meets(way, board.board(k))))
}

/// Whether a lot may be at a place as the board is now: inside, free of things and boards, carried, with a way out.
pub fn fits_at(board: &Board, lot: usize, place: &Place, clearing: &mut Clearing) -> bool {
    if !clearing.look(board, lot, &place.home) {
        return false;
    }
    let [p, q] = clearing.axes;
    place.space.min[clearing.rest.0] == clearing.rest.1
        && clearing.is_free(place.space.min[p], place.space.min[q])
        && has_way_out(board, place.home.surface as usize, &place.space)
}

/// Tells every free corner place of a lot on a surface, with the coordinates along both axes rising; `false` where it
/// can be nowhere there, whatever else is there.
pub fn for_each_corner(
    board: &Board,
    lot: usize,
    home: &Home,
    clearing: &mut Clearing,
    tell: impl FnMut(Place) -> bool,
) -> bool {
    let looked = clearing.look(board, lot, home);
    if looked {
        tell_corners(board, home, clearing, tell);
    }
    looked
}

/// The same whatever the surface may carry.
pub fn for_each_corner_anyhow(
    board: &Board,
    lot: usize,
    home: &Home,
    clearing: &mut Clearing,
    tell: impl FnMut(Place) -> bool,
) {
    if clearing.look_anyhow(board, lot, home) {
        tell_corners(board, home, clearing, tell);
    }
}

fn tell_corners(
    board: &Board,
    home: &Home,
    clearing: &mut Clearing,
    mut tell: impl FnMut(Place) -> bool,
) {
    let ps = clearing.edges(0);
    let mut qs = std::mem::take(&mut clearing.free);
    for &p in &ps {
        clearing.corners_at(p, &mut qs);
        for &q in &qs {
            let space = clearing.at(p, q);
            let open = has_way_out(board, home.surface as usize, &space);
            if open && !tell(Place { home: *home, space }) {
                return;
            }
        }
    }
    clearing.free = qs;
}

/// The surface that an entry of a layout names; `None` where there is none or more than one.
pub fn surface_of_entry(site: &Site, entry: &Entry) -> Option<usize> {
    let mut all = surfaces_of_entry(site, entry).into_iter();
    let first = all.next()?;
    let same = |s: usize| site.surfaces[s].space == site.surfaces[first].space;
    let bench = site.spaces[site.surfaces[first].space].kind == SpaceKind::Bench;
    all.all(|s| bench && same(s)).then_some(first)
}

/// All surfaces that the words of an entry may mean.
pub fn surfaces_of_entry(site: &Site, entry: &Entry) -> Vec<usize> {
    let mut parts = Vec::new();
    let face = entry.face.map(Face::name);
    parts.extend(face.map(str::to_owned));
    parts.push(entry.bay.trim().to_lowercase());
    let on_bench = entry.bay.trim().is_empty() && entry.face == Some(Face::Top);
    let named = |s: &usize| {
        let surface = &site.surfaces[*s];
        let right =
            entry.surface.as_ref().is_none_or(|n| surface.name.eq_ignore_ascii_case(n.trim()));
        let bench = site.spaces[surface.space].kind == SpaceKind::Bench;
        right && (answers(&parts, site, *s) || on_bench && bench)
    };
    (0..site.surfaces.len()).filter(named).collect()
}

/// Where a fixed lot stays: the surface and form of its entry, and the corner where the entry says it.
pub(super) fn home_of_entry(
    site: &Site,
    lot: &Lot,
    entry: &Entry,
) -> Option<(Home, Option<[Length; 2]>)> {
    let s = surface_of_entry(site, entry)?;
    let told = |form: &Form| {
        entry.pose.is_none_or(|p| p == form.pose) && entry.turned.is_none_or(|t| t == form.turned)
    };
    (0..lot.forms.len())
        .filter(|&f| told(&lot.forms[f]))
        .filter_map(|f| home(site, lot, s, f))
        .find(|h| {
            (0..3).all(|a| needed(lot, &site.surfaces[s], h, a) <= site.surfaces[s].free.extent(a))
        })
        .map(|h| (h, entry.at))
}

/// The corner of a box as a layout says it: from the viewer's left and the face, on a wall from the lower left,
/// measured in the free box of the surface; on a bench with several zones, from its front-left corner.
pub fn corner_of(site: &Site, surface: usize, free: &Box3, b: &Box3) -> [Length; 2] {
    let s = &site.surfaces[surface];
    let face = site.spaces[s.space].face;
    let (inner, outer) = (local(face, site.size, b), local(face, site.size, free));
    let from = |k: usize| inner[k][0] - outer[k][0];
    match (s.kind, s.rest.axis) {
        _ if face == Face::Top && site.spaces[s.space].surfaces.len() > 1 => {
            [inner[0][0], inner[1][0]]
        }
        _ if face == Face::Top => [from(0), from(1)],
        (Kind::Wall, 0 | 1) if s.lie == super::Lie::Across => [from(2), from(1)],
        (Kind::Wall, 0 | 1) => [from(0), from(1)],
        _ => [from(0), from(2)],
    }
}

/// The box of a lot whose corner a layout says.
pub fn box_at(site: &Site, home: &Home, free: &Box3, corner: [Length; 2]) -> Box3 {
    let s = home.surface as usize;
    let surface = &site.surfaces[s];
    let mut min = free.min;
    min[surface.rest.axis] = surface.touch(free, home.extents);
    let here = |min: [Length; 3]| lot::at(min, home.extents);
    // What is measured from the viewer's left may run against the axis: move by the difference, with its sign found out.
    let [p, q] = surface.free_axes();
    for axis in [p, q] {
        let before = corner_of(site, s, free, &here(min));
        let mut step = min;
        step[axis] += Length::mm(1);
        let after = corner_of(site, s, free, &here(step));
        let k = usize::from(before[0] == after[0]);
        let away = corner[k] - before[k];
        min[axis] += if after[k] > before[k] { away } else { -away };
    }
    here(min)
}
