//! Spaces, the surfaces in them and the boards across them.

use super::carry::{Hold, Span};
use crate::domain::{Dims, Face};
use crate::geometry::{Axis, Box3, Way};
use crate::units::{Length, Mass, Time};

/// What kind of volume a space is.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum SpaceKind {
    /// An opening in a face.
    Bay,
    /// A drawer: closed it blocks nothing, its things are lifted out.
    Drawer,
    /// What hangs outside a face.
    Panel,
    /// The top of the cart.
    Bench,
}

/// What shares one volume: a bay with all its shelves and walls, a drawer, a panel, the bench.
#[derive(Clone, Debug)]
pub struct Space {
    /// What kind of volume.
    pub kind: SpaceKind,
    /// The face that it belongs to.
    pub face: Face,
    /// The name of the bay, drawer or panel; `bench` on top.
    pub name: String,
    /// Its volume.
    pub volume: Box3,
    /// The ways out: its face, and the opposite one where it goes through.
    pub ways: Vec<Way>,
    /// Its surfaces, as indices.
    pub surfaces: Vec<usize>,
    /// Its shelf boards, as indices.
    pub boards: Vec<usize>,
    /// Other spaces whose things may share volume with its own.
    pub near: Vec<usize>,
    /// For each way out, the other spaces whose things may stand in the way.
    pub ahead: Vec<Vec<usize>>,
    /// For each other space that has this one ahead: that space and the index of its way.
    pub behind: Vec<(usize, usize)>,
    /// For each way out, what one fetch costs in walking, over all stations.
    pub access: Vec<Time>,
    /// What is added to each fetch for pulling it out and pushing it in again.
    pub pull: Time,
    /// How far it comes out; nought where it is no drawer.
    pub extends: Length,
    /// Its own moving mass; nought where it is no drawer.
    pub own_mass: Mass,
    /// For each way out, whether some station has that face at a wall.
    pub walled: Vec<bool>,
}

impl Space {
    /// Whether it opens to two opposite faces.
    pub fn through(&self) -> bool {
        self.ways.len() > 1
    }
    /// Whether things kept here stand in the way of others.
    pub fn blocks(&self) -> bool {
        matches!(self.kind, SpaceKind::Bay | SpaceKind::Panel)
    }
    /// The index of the way that things of this space take when something is fetched along `way`.
    #[inline]
    pub fn own_way(&self, way: Way) -> usize {
        usize::from(self.ways.len() > 1 && self.ways[1] == way)
    }
    /// Least price of walking to it, over its ways.
    pub fn least_access(&self) -> Time {
        self.access.iter().copied().min().unwrap_or(Time::ZERO)
    }
}

/// What kind of surface.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Kind {
    /// Things stand or lie on it.
    Deck,
    /// Things hang on it.
    Wall,
    /// A deck that is pulled out.
    Drawer,
}

impl Kind {
    /// The word for it in reports.
    pub const fn name(self) -> &'static str {
        match self {
            Kind::Deck => "deck",
            Kind::Wall => "wall",
            Kind::Drawer => "drawer",
        }
    }
}

/// The plane that things rest on or touch: one side of the free box.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Rest {
    /// The axis across the plane.
    pub axis: Axis,
    /// Whether it is the greater end of the free box.
    pub greater: bool,
}

/// How width, depth and height of a thing lie along the cart's axes.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Lie {
    /// Width along the face, depth into it, height up: decks, ceilings, far walls, panels.
    Along,
    /// Depth along the face, width into it, height up: side walls.
    Across,
}

/// Anything that carries items.
#[derive(Clone, Debug)]
pub struct Surface {
    /// The space it is in.
    pub space: usize,
    /// `floor`, `shelf 1`, …, `back`, `left`, `right`, `ceiling`, `drawer`, `panel` or `bench`.
    pub name: String,
    /// What kind.
    pub kind: Kind,
    /// Where things may be, with the shelves at their stated heights.
    pub free: Box3,
    /// The plane they rest on or touch.
    pub rest: Rest,
    /// How things lie on it.
    pub lie: Lie,
    /// The axis along its face as seen: 0 or 1.
    pub along: Axis,
    /// Its area in square micrometres, rounded up.
    pub area: i64,
    /// What it carries, where the file says so.
    pub limit: Option<Mass>,
    /// Whether free height is needed above things.
    pub needs_clearance: bool,
    /// The most free height that it can have, wherever shelves that may be moved stand.
    pub tallest: Length,
    /// Where its plane may lie, rising; one height only, unless it is a shelf that may be moved.
    pub levels: Vec<Length>,
    /// The board under it, where it is a shelf or a floor of a known material.
    pub span: Option<Span>,
    /// How it holds what hangs on it, where that is known.
    pub hold: Option<Hold>,
}

impl Surface {
    /// How far a thing of this size reaches along the three axes.
    pub fn extents(&self, dims: Dims) -> [Length; 3] {
        let (along, into) = match self.lie {
            Lie::Along => (dims.w, dims.d),
            Lie::Across => (dims.d, dims.w),
        };
        if self.along == 0 { [along, into, dims.h] } else { [into, along, dims.h] }
    }
    /// Whether turning swaps width and depth here (and not width and height).
    pub fn turns_flat(&self) -> bool {
        self.rest.axis == 2
    }
    /// The two axes in which a thing can be moved on it.
    pub fn free_axes(&self) -> [Axis; 2] {
        match self.rest.axis {
            0 => [1, 2],
            1 => [0, 2],
            _ => [self.along, 1 - self.along],
        }
    }
    /// Where a thing that reaches so far touches or rests, within that free box.
    #[inline]
    pub fn touch(&self, free: &Box3, extents: [Length; 3]) -> Length {
        let axis = self.rest.axis;
        if self.rest.greater { free.max[axis] - extents[axis] } else { free.min[axis] }
    }
}

/// A shelf: a board across a bay that no thing or sweep may cross.
#[derive(Clone, Debug)]
pub struct ShelfBoard {
    /// What it is, for reports.
    pub name: String,
    /// Its box at the stated height.
    pub solid: Box3,
    /// The space it is in.
    pub space: usize,
    /// The surface on top of it.
    pub surface: usize,
    /// Heights of its top in the cart's frame at which it may stand, rising; one only where it may not be moved.
    pub rows: Vec<Length>,
    /// The boards of its bay over it, as indices, that reach over it.
    pub over: Vec<usize>,
}

impl ShelfBoard {
    /// Whether it may be moved.
    pub fn moves(&self) -> bool {
        self.rows.len() > 1
    }
    /// Its box when its top is so high.
    pub fn at(&self, top: Length) -> Box3 {
        let mut solid = self.solid;
        solid.min[2] += top - self.solid.max[2];
        solid.max[2] = top;
        solid
    }
}

/// The box between these distances from the viewer's left, the floor and the face, of a cart of that size.
pub fn world(
    face: Face,
    size: [Length; 3],
    u: [Length; 2],
    v: [Length; 2],
    d: [Length; 2],
) -> Box3 {
    let [w, deep, high] = size;
    match face {
        Face::Front => Box3::new([u[0], d[0], v[0]], [u[1], d[1], v[1]]),
        Face::Back => Box3::new([w - u[1], deep - d[1], v[0]], [w - u[0], deep - d[0], v[1]]),
        Face::Left => Box3::new([d[0], deep - u[1], v[0]], [d[1], deep - u[0], v[1]]),
        Face::Right => Box3::new([w - d[1], u[0], v[0]], [w - d[0], u[1], v[1]]),
        Face::Top => Box3::new([u[0], v[0], high - d[1]], [u[1], v[1], high - d[0]]),
    }
}

/// A box as seen from a face: ranges from the viewer's left, from the floor (on top: from the front) and from the face.
pub fn local(face: Face, size: [Length; 3], b: &Box3) -> [[Length; 2]; 3] {
    let [w, deep, high] = size;
    let (x, y, z) = ([b.min[0], b.max[0]], [b.min[1], b.max[1]], [b.min[2], b.max[2]]);
    let from = |end: Length, r: [Length; 2]| [end - r[1], end - r[0]];
    match face {
        Face::Front => [x, z, y],
        Face::Back => [from(w, x), z, from(deep, y)],
        Face::Left => [from(deep, y), z, x],
        Face::Right => [y, z, from(w, x)],
        Face::Top => [x, y, from(high, z)],
    }
}

/// How deep in from the face of a way the middle of a box is; never under nought.
pub fn depth_from(way: Way, size: [Length; 3], b: &Box3) -> Length {
    let axis = way.axis();
    let middle = b.middle(axis);
    (if way.rising() { size[axis] - middle } else { middle }).max(Length::ZERO)
}
