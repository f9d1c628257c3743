//! What every document is made of: numbers, boxes and the names of copies.

use crate::geometry::{Box3, Point3};
use crate::tasks::outcome::{Copy, Plan};
use crate::units::Length;
use serde::Serialize;

pub(super) fn text(document: &impl Serialize) -> String {
    // Every key is a string and every number is cleaned, so that writing cannot fail.
    let mut text = serde_json::to_string_pretty(document).unwrap_or_else(|_| String::from("null"));
    text.push('\n');
    text
}

/// A number as JSON can say it: nothing for what is no number, and no negative nought.
pub(super) fn clean(number: f64) -> Option<f64> {
    number.is_finite().then_some(number + 0.0)
}

pub(super) fn mm(length: Length) -> f64 {
    length.as_mm()
}

pub(super) fn point(at: Point3) -> [f64; 3] {
    at.map(mm)
}

#[derive(Serialize)]
pub(super) struct Corners {
    min: [f64; 3],
    max: [f64; 3],
}

impl Corners {
    pub(super) fn of(space: &Box3) -> Corners {
        Corners { min: point(space.min), max: point(space.max) }
    }
}

#[derive(Serialize)]
pub(super) struct CopyRow<'a> {
    item: &'a str,
    copy: u32,
}

impl<'a> CopyRow<'a> {
    pub(super) fn of(copy: &'a Copy) -> CopyRow<'a> {
        CopyRow { item: &copy.item, copy: copy.copy }
    }
    pub(super) fn placed(plan: &'a Plan, index: usize) -> Option<CopyRow<'a>> {
        plan.placements.get(index).map(|p| CopyRow { item: &p.item, copy: p.copy })
    }
}
