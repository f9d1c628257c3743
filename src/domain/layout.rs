//! Where things are, as `layout.yaml` says it.

use super::{Bay, Face, Pose};
use crate::finding::Span;
use crate::units::Length;

/// The entries of a `layout.yaml`, in the order of the file.
#[derive(Clone, Debug, Default)]
pub struct Layout {
    /// One entry per placement.
    pub entries: Vec<Entry>,
    /// How high shelves stand that may be moved; the others stand as the carcass says.
    pub shelves: Vec<ShelfEntry>,
}

/// How high one shelf stands.
#[derive(Clone, Debug)]
pub struct ShelfEntry {
    /// The face of its bay, where the file says it.
    pub face: Option<Face>,
    /// Its bay as written.
    pub bay: String,
    /// Its name in the bay as written: `shelf 1`, …
    pub surface: String,
    /// Its top above the bay's floor.
    pub height: Length,
    /// Where the file says so.
    pub span: Span,
}

impl ShelfEntry {
    /// Whether a bay is the one that it names.
    pub fn is_in(&self, bay: &Bay) -> bool {
        self.face.is_none_or(|face| face == bay.face)
            && self.bay.trim().eq_ignore_ascii_case(bay.name.trim())
    }
}

/// Where one copy, pile or row is.
#[derive(Clone, Debug)]
pub struct Entry {
    /// The item's name as written.
    pub item: String,
    /// The copy, or the first of a pile or row; from 1.
    pub copy: u32,
    /// How many copies of a pile or row; 1 where nothing is said.
    pub copies: u32,
    /// The face, where the file says it.
    pub face: Option<Face>,
    /// The bay, drawer or panel as written; `bench` on top.
    pub bay: String,
    /// The surface as written, where the file says it.
    pub surface: Option<String>,
    /// The pose, where the file says it.
    pub pose: Option<Pose>,
    /// Whether it is turned, where the file says it.
    pub turned: Option<bool>,
    /// Its corner in the free box of the surface, where the file says it.
    pub at: Option<[Length; 2]>,
    /// Where the file says so.
    pub span: Span,
}
