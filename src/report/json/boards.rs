//! Shelves and fixings.

use super::part::clean;
use crate::tasks::outcome::{BoardLoad, FixingLoad};
use serde::Serialize;

#[derive(Serialize)]
pub(super) struct BoardRow<'a> {
    face: &'static str,
    bay: &'a str,
    surface: &'a str,
    material: &'static str,
    thickness: f64,
    span: f64,
    ends: &'static str,
    load: f64,
    sag: Option<f64>,
    sag_later: Option<f64>,
    limit: f64,
    strength_used: Option<f64>,
    most_by: Option<MostRow<'a>>,
    from_memory: &'a [&'static str],
}

#[derive(Serialize)]
struct MostRow<'a> {
    item: &'a str,
    sag_later: f64,
}

impl<'a> BoardRow<'a> {
    pub(super) fn of(board: &'a BoardLoad) -> BoardRow<'a> {
        BoardRow {
            face: board.face.name(),
            bay: &board.bay,
            surface: &board.surface,
            material: board.material,
            thickness: board.thickness.as_mm(),
            span: board.span.as_mm(),
            ends: board.ends,
            load: board.load.as_kg(),
            sag: clean(board.sag),
            sag_later: clean(board.sag_later),
            limit: board.limit,
            strength_used: clean(board.strength_used),
            most_by: board
                .most_by
                .as_ref()
                .map(|(item, sag_later)| MostRow { item, sag_later: *sag_later }),
            from_memory: &board.from_memory,
        }
    }
}

#[derive(Serialize)]
pub(super) struct FixingRow<'a> {
    face: &'static str,
    bay: &'a str,
    surface: &'a str,
    item: &'a str,
    copy: u32,
    mass: f64,
    pull: Option<f64>,
    by: &'a str,
    used: f64,
    from_memory: &'a [&'static str],
}

impl<'a> FixingRow<'a> {
    pub(super) fn of(fixing: &'a FixingLoad) -> FixingRow<'a> {
        FixingRow {
            face: fixing.face.name(),
            bay: &fixing.bay,
            surface: &fixing.surface,
            item: &fixing.item,
            copy: fixing.copy,
            mass: fixing.mass.as_kg(),
            pull: clean(fixing.pull),
            by: &fixing.by,
            used: fixing.used,
            from_memory: &fixing.from_memory,
        }
    }
}
