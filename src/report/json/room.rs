//! The document of `room`.

use super::part::{Corners, mm, text};
use super::placement::ReserveRow;
use super::spot::{NamedRow, SpotRow};
use crate::tasks::offer::{Named, Spot};
use crate::tasks::outcome::Zone;
use crate::tasks::room::{BayRoom, FamilyRoom, Room, Sum, Wish};
use crate::units::Mass;
use serde::Serialize;

/// Growth room as one document, ending with a line break.
pub fn room(room: &Room) -> String {
    text(&RoomDoc::of(room))
}

#[derive(Serialize)]
struct RoomDoc<'a> {
    name: &'a str,
    broken: usize,
    findings: &'a [String],
    bays: Vec<BayRoomRow<'a>>,
    zones: Vec<SumRow<'a>>,
    faces: Vec<SumRow<'a>>,
    families: Vec<FamilyRow<'a>>,
    wishes: Vec<WishRow<'a>>,
    reserve: Vec<ReserveRow<'a>>,
}

impl<'a> RoomDoc<'a> {
    fn of(room: &'a Room) -> RoomDoc<'a> {
        RoomDoc {
            name: &room.name,
            broken: room.broken,
            findings: &room.findings,
            bays: room.bays.iter().map(BayRoomRow::of).collect(),
            zones: room.zones.iter().map(|s| SumRow::of(s, room)).collect(),
            faces: room.faces.iter().map(|s| SumRow::of(s, room)).collect(),
            families: room.families.iter().map(FamilyRow::of).collect(),
            wishes: room.wishes.iter().map(WishRow::of).collect(),
            reserve: room.kept.iter().map(ReserveRow::of).collect(),
        }
    }
}

/// The largest free box of a bay; `surface_left` is `null` where no limit is stated, `casters_left` is at most 100 kg.
#[derive(Serialize)]
struct BayRoomRow<'a> {
    face: &'static str,
    bay: &'a str,
    surface: &'a str,
    kind: &'static str,
    #[serde(flatten)]
    corners: Corners,
    litres: f64,
    reach_zone: &'static str,
    surface_left: Option<f64>,
    casters_left: f64,
    mass: f64,
}

impl<'a> BayRoomRow<'a> {
    fn of(bay: &'a BayRoom) -> BayRoomRow<'a> {
        BayRoomRow {
            face: bay.face.name(),
            bay: &bay.bay,
            surface: &bay.surface,
            kind: bay.kind.name(),
            corners: Corners::of(&bay.space),
            litres: bay.space.litres(),
            reach_zone: bay.zone.name(),
            surface_left: bay.surface_left.map(Mass::as_kg),
            casters_left: bay.casters_left.as_kg(),
            mass: bay.mass().as_kg(),
        }
    }
}

#[derive(Serialize)]
struct SumRow<'a> {
    what: &'a str,
    litres: f64,
    things: u32,
    largest: Option<BayRoomRow<'a>>,
}

impl<'a> SumRow<'a> {
    fn of(sum: &'a Sum, room: &'a Room) -> SumRow<'a> {
        let largest = sum.largest.and_then(|k| room.bays.get(k)).map(BayRoomRow::of);
        SumRow { what: &sum.what, litres: sum.litres, things: sum.things, largest }
    }
}

#[derive(Serialize)]
struct FamilyRow<'a> {
    family: &'a str,
    size: [f64; 3],
    mass: f64,
    fit: u32,
    wanted: Option<u32>,
    spots: Vec<ReachedRow<'a>>,
}

impl<'a> FamilyRow<'a> {
    fn of(family: &'a FamilyRoom) -> FamilyRow<'a> {
        let reached = |(spot, zone): &'a (Spot, Zone)| ReachedRow {
            spot: SpotRow::of(spot),
            reach_zone: zone.name(),
        };
        FamilyRow {
            family: &family.family,
            size: [family.size.w, family.size.d, family.size.h].map(mm),
            mass: family.mass.as_kg(),
            fit: family.fit,
            wanted: family.wanted,
            spots: family.spots.iter().map(reached).collect(),
        }
    }
}

#[derive(Serialize)]
struct ReachedRow<'a> {
    #[serde(flatten)]
    spot: SpotRow<'a>,
    reach_zone: &'static str,
}

/// A wish: `to` is `null` where it does not fit, and `why` then says what is nearest.
#[derive(Serialize)]
struct WishRow<'a> {
    #[serde(flatten)]
    named: NamedRow<'a>,
    value: f64,
    to: Option<SpotRow<'a>>,
    moves: usize,
    moved: Vec<WishMoveRow<'a>>,
    difference: f64,
    why: Option<&'a str>,
}

impl<'a> WishRow<'a> {
    fn of(wish: &'a Wish) -> WishRow<'a> {
        let moved = |(named, to): &'a (Named, Spot)| WishMoveRow {
            named: NamedRow::of(named),
            to: SpotRow::of(to),
        };
        WishRow {
            named: NamedRow::of(&wish.named),
            value: wish.value.as_s(),
            to: wish.to.as_ref().map(SpotRow::of),
            moves: wish.moved.len(),
            moved: wish.moved.iter().map(moved).collect(),
            difference: wish.costs.as_s(),
            why: wish.miss.as_deref(),
        }
    }
}

#[derive(Serialize)]
struct WishMoveRow<'a> {
    #[serde(flatten)]
    named: NamedRow<'a>,
    to: SpotRow<'a>,
}
