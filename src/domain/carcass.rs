//! The box as its maker describes it.

use super::board::{Along, Ends, Fixing, Material};
use super::{Face, ShelfEntry};
use crate::finding::Span;
use crate::units::{Length, Mass, Share, Unit};

/// The cart.
#[derive(Clone, Debug)]
pub struct Carcass {
    /// What it is called.
    pub name: String,
    /// The unit of bare numbers and of the reports.
    pub units: Unit,
    /// Outside width (x).
    pub width: Length,
    /// Outside depth (y).
    pub depth: Length,
    /// Height from the floor to the bench top (z).
    pub height: Length,
    /// Empty carcass without its drawers, where the file says it.
    pub mass: Option<Mass>,
    /// The board it is built of.
    pub board: Option<Board>,
    /// What it rolls on.
    pub casters: Casters,
    /// Openings, in the order of the file.
    pub bays: Vec<Bay>,
    /// Drawers, in the order of the file.
    pub drawers: Vec<Drawer>,
    /// Outside panels, in the order of the file.
    pub panels: Vec<Panel>,
    /// The top.
    pub bench: Bench,
    /// Where the file says its size.
    pub span: Span,
}

/// Sheet material.
#[derive(Clone, PartialEq, Debug)]
pub struct Board {
    /// What it is, where the file says so.
    pub material: Option<Material>,
    /// Its thickness.
    pub thickness: Length,
}

/// What the cart rolls on.
#[derive(Clone, Debug)]
pub struct Casters {
    /// Floor to the underside of the carcass.
    pub height: Length,
    /// What one may carry; the least, where they differ.
    pub rating: Option<Mass>,
    /// What each may carry, in the order of `at`, where they differ; else empty.
    pub ratings: Vec<Mass>,
    /// How far the wheel may trail its swivel.
    pub trail: Length,
    /// How many of them lock.
    pub locks: u32,
    /// Diameter of a wheel, where the file says it.
    pub wheel: Option<Length>,
    /// How far one corner of the cart sinks under 10 kg, least and most, where the file says it.
    pub gives: Option<[Length; 2]>,
    /// Swivel axes, x and y.
    pub at: Vec<[Length; 2]>,
    /// Where the file says so.
    pub span: Span,
}

/// How deep a bay goes.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Depth {
    /// So deep from its face.
    Deep(Length),
    /// To the opposite face, open at both.
    Through,
    /// What a bay of the opposite face leaves over: its columns and heights, seen from this face.
    Behind {
        /// The bay of the opposite face.
        name: String,
        /// Board between the two.
        gap: Length,
    },
}

/// An opening in a face.
#[derive(Clone, Debug)]
pub struct Bay {
    /// The face it opens to.
    pub face: Face,
    /// What it is called; unique on its face.
    pub name: String,
    /// Lower left corner of the opening, u and v, seen from its face. Nought for a bay behind another.
    pub at: [Length; 2],
    /// Clear width and height. Nought for a bay behind another.
    pub opening: [Length; 2],
    /// How deep it goes.
    pub depth: Depth,
    /// What its floor carries.
    pub limit: Option<Mass>,
    /// Its shelves, in the order of the file.
    pub shelves: Vec<Shelf>,
    /// Walls that take hooks, with what they carry.
    pub hang: Vec<(Wall, Option<Mass>)>,
    /// How things are hung on those walls.
    pub fixing: Fixing,
    /// How the ends of its floor are held.
    pub ends: Ends,
    /// Where the file says its name.
    pub span: Span,
}

impl Bay {
    /// Its shelves as indices, from the bottom up: `shelf 1`, `shelf 2`, …
    pub fn shelves_rising(&self) -> Vec<usize> {
        let mut order: Vec<usize> = (0..self.shelves.len()).collect();
        order.sort_by_key(|&k| self.shelves[k].height);
        order
    }

    /// Sets its shelves where these entries say.
    pub(super) fn set_shelves(&mut self, entries: &[ShelfEntry]) {
        for (n, k) in self.shelves_rising().into_iter().enumerate() {
            let name = format!("shelf {}", n + 1);
            let is_it = |e: &&ShelfEntry| e.is_in(self) && e.surface.trim() == name;
            if let Some(entry) = entries.iter().find(is_it) {
                self.shelves[k].height = entry.height;
                self.shelves[k].span = entry.span.clone();
            }
        }
    }
}

/// A board across a bay.
#[derive(Clone, Debug)]
pub struct Shelf {
    /// Its top above the bay's floor.
    pub height: Length,
    /// How deep it is; `None` means as deep as the bay lets it.
    pub depth: Option<Length>,
    /// How far in it begins, where it does not stand against the rear.
    pub front: Option<Length>,
    /// Thickness of the board, where the file says it.
    pub thickness: Option<Length>,
    /// What it is made of, where the file says so.
    pub material: Option<Material>,
    /// How its ends are held.
    pub ends: Ends,
    /// Which way it spans.
    pub span_along: Along,
    /// What it carries.
    pub limit: Option<Mass>,
    /// Lowest, highest and step of its height, where it may be moved.
    pub adjust: Option<[Length; 3]>,
    /// Where the file says so.
    pub span: Span,
}

/// A wall of a bay that takes hooks, as seen from its face.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Wall {
    /// The far wall.
    Back,
    /// The wall on the viewer's left.
    Left,
    /// The wall on the viewer's right.
    Right,
    /// The underside of what closes the bay above.
    Ceiling,
}

impl Wall {
    /// All of them, in the order in which they are told.
    pub const ALL: [Wall; 4] = [Wall::Back, Wall::Left, Wall::Right, Wall::Ceiling];
    /// The word for it in files and reports.
    pub const fn name(self) -> &'static str {
        match self {
            Wall::Back => "back",
            Wall::Left => "left",
            Wall::Right => "right",
            Wall::Ceiling => "ceiling",
        }
    }
}

/// A drawer; closed it blocks nothing.
#[derive(Clone, Debug)]
pub struct Drawer {
    /// The face it opens to.
    pub face: Face,
    /// What it is called; unique on its face.
    pub name: String,
    /// Lower left corner, u and v, seen from its face.
    pub at: [Length; 2],
    /// Clear inside width and height.
    pub opening: [Length; 2],
    /// Clear inside depth.
    pub depth: Length,
    /// What it carries.
    pub limit: Option<Mass>,
    /// How far it comes out; items lie within that much of its depth.
    pub extends: Option<Length>,
    /// Its own mass, where the file says it.
    pub mass: Option<Mass>,
    /// Whether something keeps it shut while the cart rolls.
    pub catch: bool,
    /// Where the file says its name.
    pub span: Span,
}

/// A board outside a face that takes hooks.
#[derive(Clone, Debug)]
pub struct Panel {
    /// The face it hangs on.
    pub face: Face,
    /// What it is called; unique on its face.
    pub name: String,
    /// Lower left corner, u and v, seen from its face.
    pub at: [Length; 2],
    /// Width and height.
    pub size: [Length; 2],
    /// How far things on it may stand out.
    pub room: Length,
    /// What it is made of, where the file says so.
    pub material: Option<Material>,
    /// Its thickness, where the file says it.
    pub thickness: Option<Length>,
    /// How things are hung on it.
    pub fixing: Fixing,
    /// What it carries.
    pub limit: Option<Mass>,
    /// How far hung things may pass its edges.
    pub overhang: Overhang,
    /// Where the file says its name.
    pub span: Span,
}

/// How far hung things may pass the edges of a panel.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub struct Overhang {
    /// Below.
    pub down: Length,
    /// Above.
    pub up: Length,
    /// Past the viewer's left.
    pub left: Length,
    /// Past the viewer's right.
    pub right: Length,
}

/// The top of the cart.
#[derive(Clone, Debug)]
pub struct Bench {
    /// The share of the top that stays clear.
    pub keep_clear: Share,
    /// Where things may stand, if the file says so; otherwise along the back edge.
    pub zones: Vec<Zone>,
    /// What it carries.
    pub limit: Option<Mass>,
    /// Where the file says so.
    pub span: Span,
}

/// A rectangle of the bench, seen from the front: u to the right, v to the back.
#[derive(Clone, Debug)]
pub struct Zone {
    /// Its corner at the front left.
    pub at: [Length; 2],
    /// Width and depth.
    pub size: [Length; 2],
    /// Where the file says so.
    pub span: Span,
}
