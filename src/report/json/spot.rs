//! Names and places as `why`, `compare` and `room` tell them.

use super::part::{Corners, mm};
use crate::tasks::offer::{Named, Spot};
use serde::Serialize;

#[derive(Serialize)]
pub(super) struct NamedRow<'a> {
    item: &'a str,
    copy: u32,
    copies: u32,
}

impl<'a> NamedRow<'a> {
    pub(super) fn of(named: &'a Named) -> NamedRow<'a> {
        NamedRow { item: &named.item, copy: named.copy, copies: named.copies }
    }
}

/// A place: what an entry of a layout says, and the box.
#[derive(Serialize)]
pub(super) struct SpotRow<'a> {
    face: &'static str,
    bay: &'a str,
    surface: &'a str,
    pose: &'static str,
    turned: bool,
    at: [f64; 2],
    #[serde(flatten)]
    corners: Corners,
}

impl<'a> SpotRow<'a> {
    pub(super) fn of(spot: &'a Spot) -> SpotRow<'a> {
        SpotRow {
            face: spot.face.name(),
            bay: &spot.bay,
            surface: &spot.surface,
            pose: spot.pose.name(),
            turned: spot.turned,
            at: spot.at.map(mm),
            corners: Corners::of(&spot.space),
        }
    }
}
