//! Shelves that may be moved, in JSON.

use super::part::mm;
use crate::tasks::outcome::{ShelfHeight, Shelves};
use serde::Serialize;

/// All of them, against the same search with every shelf as drawn.
#[derive(Serialize)]
pub(super) struct ShelvesRow<'a> {
    set: Vec<ShelfRow<'a>>,
    as_drawn: DrawnRow,
}

#[derive(Serialize)]
struct ShelfRow<'a> {
    face: &'static str,
    bay: &'a str,
    surface: &'a str,
    /// Its top above the bay's floor.
    height: f64,
    drawn: f64,
    row: usize,
    rows: usize,
}

#[derive(Serialize)]
struct DrawnRow {
    seconds_per_week: f64,
    off_cart: f64,
    broken: usize,
}

impl<'a> ShelvesRow<'a> {
    pub(super) fn of(shelves: &'a Shelves) -> ShelvesRow<'a> {
        ShelvesRow {
            set: shelves.set.iter().map(ShelfRow::of).collect(),
            as_drawn: DrawnRow {
                seconds_per_week: shelves.as_drawn.as_s(),
                off_cart: shelves.off_cart.as_s(),
                broken: shelves.broken,
            },
        }
    }
}

impl<'a> ShelfRow<'a> {
    fn of(set: &'a ShelfHeight) -> ShelfRow<'a> {
        ShelfRow {
            face: set.face.name(),
            bay: &set.bay,
            surface: &set.surface,
            height: mm(set.height),
            drawn: mm(set.drawn),
            row: set.row[0],
            rows: set.row[1],
        }
    }
}
