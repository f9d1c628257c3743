//! What is drilled into: a board, with its edges as its maker sees them standing before it.

use super::hole::Hole;
use crate::domain::Face;
use crate::geometry::{Axis, Box3, Point3};
use crate::physics::fasteners::Ground;
use crate::units::{Length, Mass, Unit};

/// What kind of board.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum MountKind {
    /// A panel outside a face.
    Panel,
    /// A wall of a bay.
    Wall,
    /// What closes a bay above, seen from below.
    Ceiling,
    /// A shelf or the floor of a bay, seen from above.
    Deck,
    /// The front edge of a shelf.
    Edge,
    /// The top of the cart, seen from above with its front nearest.
    Bench,
}

/// A line of measure along an axis, from one end of a board.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Measure {
    /// The axis.
    pub axis: Axis,
    /// Whether it counts towards greater coordinates.
    pub rising: bool,
    /// Where it begins.
    pub from: Length,
}

impl Measure {
    /// How far along it a point is.
    pub fn of(&self, coordinate: Length) -> Length {
        if self.rising { coordinate - self.from } else { self.from - coordinate }
    }
    /// The coordinate so far along it.
    pub fn at(&self, far: Length) -> Length {
        if self.rising { self.from + far } else { self.from - far }
    }
    /// From where to where a box reaches along it.
    pub fn range(&self, b: &Box3) -> [Length; 2] {
        let (a, b) = (self.of(b.min[self.axis]), self.of(b.max[self.axis]));
        [a.min(b), a.max(b)]
    }
}

/// One board of what a screw goes through.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Layer {
    /// What it is.
    pub what: String,
    /// How thick.
    pub thickness: Length,
}

/// A board that is drilled.
#[derive(Clone, Debug)]
pub struct Mount {
    /// The face it belongs to.
    pub face: Face,
    /// The bay, drawer or panel; `bench` on top.
    pub bay: String,
    /// The surface, as files and reports name it.
    pub surface: String,
    /// What kind of board.
    pub kind: MountKind,
    /// Its width and height as seen by one who stands before it.
    pub size: [Length; 2],
    /// Across it from the left edge.
    pub across: Measure,
    /// Up it from the lower edge.
    pub up: Measure,
    /// Into it: where its near side is.
    pub into: Measure,
    /// How thick it is by itself; what lies behind it may be more.
    pub thick: Length,
    /// What screws go into.
    pub ground: Ground,
    /// What one of the user's hooks there carries, where the carcass file says it.
    pub hook: Option<Mass>,
    /// What its left, right, lower and upper edges are called.
    pub edges: [&'static str; 4],
    /// Its holes from the top down, then from the left.
    pub holes: Vec<Hole>,
    /// Outlines of what hangs or stands on it, as left, right, lower and upper distance, with the placement.
    pub outlines: Vec<(usize, [Length; 4])>,
    /// What lies behind its holes, in words, each once.
    pub behind: Vec<String>,
}

impl Mount {
    /// Its name: face, bay and surface; a panel by itself.
    pub fn name(&self) -> String {
        let (face, bay) = (self.face.name(), &self.bay);
        match self.kind {
            MountKind::Panel => format!("{face} / {bay}"),
            MountKind::Bench => "bench".to_owned(),
            MountKind::Edge => format!("{face} / {bay} / front edge of {}", self.surface),
            _ => format!("{face} / {bay} / {}", self.surface),
        }
    }
    /// A place on it as a point of the cart.
    pub fn point(&self, at: [Length; 2]) -> Point3 {
        let mut point = [Length::ZERO; 3];
        point[self.across.axis] = self.across.at(at[0]);
        point[self.up.axis] = self.up.at(at[1]);
        point[self.into.axis] = self.into.from;
        point
    }
    /// The outline of a box on it: left, right, lower, upper.
    pub fn outline(&self, b: &Box3) -> [Length; 4] {
        let (p, q) = (self.across.range(b), self.up.range(b));
        [p[0], p[1], q[0], q[1]]
    }
    /// The nearest place that a tape shows whole from the nearer edges.
    pub fn snapped(&self, at: [Length; 2], unit: Unit) -> [Length; 2] {
        let along = |k: usize| {
            let (far, size) = (at[k], self.size[k]);
            if far + far <= size { on_tape(far, unit) } else { size - on_tape(size - far, unit) }
        };
        [along(0), along(1)]
    }
    /// The nearer edge in each direction with the distance from it.
    pub fn from_edges(&self, at: [Length; 2]) -> [(&'static str, Length); 2] {
        [0, 1].map(|k| {
            let other = self.size[k] - at[k];
            match at[k] <= other {
                true => (self.edges[2 * k], at[k]),
                false => (self.edges[2 * k + 1], other),
            }
        })
    }
    /// How near a place is to the nearest edge.
    pub fn margin(&self, at: [Length; 2]) -> Length {
        let [a, b] = self.from_edges(at);
        a.1.min(b.1)
    }
}

/// What a tape shows: a millimetre, or a sixteenth of an inch.
pub fn tape_step(unit: Unit) -> Length {
    if unit.imperial() { Length::nm(1_587_500) } else { Length::mm(1) }
}

/// The nearest length that a tape shows.
pub fn on_tape(length: Length, unit: Unit) -> Length {
    let step = tape_step(unit).as_nm();
    Length::nm((length.as_nm() + step / 2).div_euclid(step) * step)
}

/// The viewer's right before a face: an axis and whether it rises.
pub fn right_of(face: Face) -> (Axis, bool) {
    match face {
        Face::Front | Face::Top => (0, true),
        Face::Back => (0, false),
        Face::Left => (1, false),
        Face::Right => (1, true),
    }
}

/// The way in from a face; on top, from the front to the back.
pub fn into(face: Face) -> (Axis, bool) {
    match face {
        Face::Top => (1, true),
        _ => (face.axis(), !face.rising()),
    }
}

/// A measure across a box along an axis.
pub fn along(b: &Box3, (axis, rising): (Axis, bool)) -> Measure {
    Measure { axis, rising, from: if rising { b.min[axis] } else { b.max[axis] } }
}
