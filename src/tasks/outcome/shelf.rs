//! Shelves that may be moved, and what moving them gained.

use crate::domain::Face;
use crate::units::{Length, Price};

/// Where one shelf that may be moved is to stand.
#[derive(Clone, PartialEq, Debug)]
pub struct ShelfHeight {
    /// The face of its bay.
    pub face: Face,
    /// Its bay.
    pub bay: String,
    /// Its name: `shelf 1`, …
    pub surface: String,
    /// Its top above the bay's floor: the height to drill for.
    pub height: Length,
    /// The same as the carcass file draws it.
    pub drawn: Length,
    /// Its row, counted from the lowest as 1, and how many rows there are.
    pub row: [usize; 2],
}

/// All of them, against the same search with every shelf as drawn.
#[derive(Clone, PartialEq, Debug)]
pub struct Shelves {
    /// The shelves that may be moved, in the order of the file; none where all are nailed.
    pub set: Vec<ShelfHeight>,
    /// What the best layout found with the shelves as drawn costs.
    pub as_drawn: Price,
    /// What it leaves out is worth.
    pub off_cart: Price,
    /// How many rules it breaks.
    pub broken: usize,
}
