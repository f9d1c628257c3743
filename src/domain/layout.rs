//! Where things are, as `layout.yaml` says it.

use super::{Face, Pose};
use crate::finding::Span;
use crate::units::Length;

/// The entries of a `layout.yaml`, in the order of the file.
#[derive(Clone, Debug, Default)]
pub struct Layout {
    /// One entry per placement.
    pub entries: Vec<Entry>,
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
