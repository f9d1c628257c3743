//! What has a place, what has none, and the room that is kept.

use super::part::{CopyRow, Corners, mm};
use crate::tasks::outcome::{Kept, LeftOut, Placement, TermPart};
use serde::Serialize;

#[derive(Serialize)]
pub(super) struct PlacementRow<'a> {
    item: &'a str,
    copy: u32,
    copies: u32,
    of: u32,
    face: &'static str,
    way: &'static str,
    bay: &'a str,
    surface: &'a str,
    slot: u32,
    pose: &'static str,
    turned: bool,
    #[serde(flatten)]
    corners: Corners,
    grip_height: f64,
    reach_zone: &'static str,
    moved_first: Vec<CopyRow<'a>>,
    weight: f64,
    uses_per_week: f64,
    seconds_per_fetch: f64,
    seconds_per_week: f64,
    terms: Vec<TermRow<'a>>,
    holds: &'a [String],
}

impl<'a> PlacementRow<'a> {
    pub(super) fn of(placed: &'a Placement) -> PlacementRow<'a> {
        PlacementRow {
            item: &placed.item,
            copy: placed.copy,
            copies: placed.copies,
            of: placed.of,
            face: placed.face.name(),
            way: placed.way.name(),
            bay: &placed.bay,
            surface: &placed.surface,
            slot: placed.slot,
            pose: placed.pose.name(),
            turned: placed.turned,
            corners: Corners::of(&placed.space),
            grip_height: mm(placed.grip_height),
            reach_zone: placed.zone.name(),
            moved_first: placed.moved_first.iter().map(CopyRow::of).collect(),
            weight: placed.weight.as_kg(),
            uses_per_week: placed.uses.as_week(),
            seconds_per_fetch: placed.per_fetch.as_s(),
            seconds_per_week: placed.per_week.as_s(),
            terms: placed.terms.iter().map(TermRow::of).collect(),
            holds: &placed.holds,
        }
    }
}

#[derive(Serialize)]
pub(super) struct TermRow<'a> {
    term: &'static str,
    seconds_per_week: f64,
    text: &'a str,
}

impl<'a> TermRow<'a> {
    pub(super) fn of(part: &'a TermPart) -> TermRow<'a> {
        TermRow { term: part.term, seconds_per_week: part.price.as_s(), text: &part.told }
    }
}

#[derive(Serialize)]
pub(super) struct LeftOutRow<'a> {
    item: &'a str,
    copy: u32,
    why: &'a str,
    seconds_per_week: f64,
}

impl<'a> LeftOutRow<'a> {
    pub(super) fn of(left: &'a LeftOut) -> LeftOutRow<'a> {
        LeftOutRow {
            item: &left.copy.item,
            copy: left.copy.copy,
            why: &left.why,
            seconds_per_week: left.price.as_s(),
        }
    }
}

#[derive(Serialize)]
pub(super) struct ReserveRow<'a> {
    family: Option<&'a str>,
    face: &'static str,
    bay: &'a str,
    surface: &'a str,
    #[serde(flatten)]
    corners: Corners,
    mass: f64,
}

impl<'a> ReserveRow<'a> {
    pub(super) fn of(kept: &'a Kept) -> ReserveRow<'a> {
        ReserveRow {
            family: kept.family.as_deref(),
            face: kept.face.name(),
            bay: &kept.bay,
            surface: &kept.surface,
            corners: Corners::of(&kept.space),
            mass: kept.mass.as_kg(),
        }
    }
}
