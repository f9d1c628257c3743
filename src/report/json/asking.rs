//! The documents of `why`, `compare` and `room`.

use super::{BrokenRow, Corners, LeftOutRow, ReserveRow, ScoreRow, TermRow, mm, text};
use crate::tasks::compare::{Compare, Gain, Moved, Side};
use crate::tasks::offer::{Named, Spot};
use crate::tasks::outcome::Zone;
use crate::tasks::room::{BayRoom, FamilyRoom, Room, Sum, Wish};
use crate::tasks::why::{Alone, Differ, Slot, WhatIf, Why, WhyLot};
use crate::units::Mass;
use serde::Serialize;

/// The answer of `why` as one document, ending with a line break.
pub fn why(why: &Why) -> String {
    text(&WhyDoc { asked: &why.asked, lots: why.lots.iter().map(WhyRow::of).collect() })
}

/// Two layouts side by side as one document, ending with a line break.
pub fn compare(compare: &Compare) -> String {
    text(&CompareDoc::of(compare))
}

/// Growth room as one document, ending with a line break.
pub fn room(room: &Room) -> String {
    text(&RoomDoc::of(room))
}

#[derive(Serialize)]
struct NamedRow<'a> {
    item: &'a str,
    copy: u32,
    copies: u32,
}

impl<'a> NamedRow<'a> {
    fn of(named: &'a Named) -> NamedRow<'a> {
        NamedRow { item: &named.item, copy: named.copy, copies: named.copies }
    }
}

/// A place: what an entry of a layout says, and the box.
#[derive(Serialize)]
struct SpotRow<'a> {
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
    fn of(spot: &'a Spot) -> SpotRow<'a> {
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

#[derive(Serialize)]
struct WhyDoc<'a> {
    asked: &'a str,
    lots: Vec<WhyRow<'a>>,
}

#[derive(Serialize)]
struct WhyRow<'a> {
    #[serde(flatten)]
    named: NamedRow<'a>,
    holds_it: bool,
    fixed: bool,
    /// `null` off the cart.
    at: Option<SpotRow<'a>>,
    uses_per_week: f64,
    seconds_per_week: f64,
    terms: Vec<TermRow<'a>>,
    ties: Vec<TermRow<'a>>,
    broken_rules: Vec<BrokenRow<'a>>,
    off_cart: Option<&'a str>,
    slots: Vec<SlotRow<'a>>,
    alone: Option<AloneRow<'a>>,
    changes: Vec<WhatIfRow<'a>>,
}

impl<'a> WhyRow<'a> {
    fn of(lot: &'a WhyLot) -> WhyRow<'a> {
        WhyRow {
            named: NamedRow::of(&lot.named),
            holds_it: lot.holds_it,
            fixed: lot.fixed,
            at: lot.at.as_ref().map(SpotRow::of),
            uses_per_week: lot.uses.as_week(),
            seconds_per_week: lot.price.as_s(),
            terms: lot.terms.iter().map(TermRow::of).collect(),
            ties: lot.ties.iter().map(TermRow::of).collect(),
            broken_rules: lot.broken.iter().map(BrokenRow::of).collect(),
            off_cart: lot.off.as_deref(),
            slots: lot.slots.iter().map(SlotRow::of).collect(),
            alone: lot.alone.as_ref().map(AloneRow::of),
            changes: lot.changes.iter().map(WhatIfRow::of).collect(),
        }
    }
}

/// By how much the whole score changes: seconds a week, those of what is off the cart, rules mended.
#[derive(Serialize)]
struct DifferRow {
    seconds_per_week: f64,
    off_cart: f64,
    mends: i64,
}

impl DifferRow {
    fn of(differ: &Differ) -> DifferRow {
        let (cost, off_cart) = (differ.cost.as_s(), differ.off_cart.as_s());
        DifferRow { seconds_per_week: cost, off_cart, mends: differ.mends }
    }
}

/// Another slot: what the place itself costs, the change of the whole score, and the same without what those who make
/// room gain by themselves.
#[derive(Serialize)]
struct SlotRow<'a> {
    #[serde(flatten)]
    spot: SpotRow<'a>,
    seconds_per_week: f64,
    all: DifferRow,
    own: DifferRow,
    displaced: Vec<DisplacedRow<'a>>,
}

impl<'a> SlotRow<'a> {
    fn of(slot: &'a Slot) -> SlotRow<'a> {
        SlotRow {
            spot: SpotRow::of(&slot.spot),
            seconds_per_week: slot.price.as_s(),
            all: DifferRow::of(&slot.all),
            own: DifferRow::of(&slot.own),
            displaced: slot.displaced.iter().map(DisplacedRow::of).collect(),
        }
    }
}

#[derive(Serialize)]
struct DisplacedRow<'a> {
    #[serde(flatten)]
    named: NamedRow<'a>,
    /// `null` where it leaves the cart.
    to: Option<SpotRow<'a>>,
}

impl<'a> DisplacedRow<'a> {
    fn of((named, to): &'a (Named, Option<Spot>)) -> DisplacedRow<'a> {
        DisplacedRow { named: NamedRow::of(named), to: to.as_ref().map(SpotRow::of) }
    }
}

#[derive(Serialize)]
struct AloneRow<'a> {
    #[serde(flatten)]
    spot: SpotRow<'a>,
    seconds_per_week: f64,
    there: Vec<NamedRow<'a>>,
    text: &'a str,
}

impl<'a> AloneRow<'a> {
    fn of(alone: &'a Alone) -> AloneRow<'a> {
        AloneRow {
            spot: SpotRow::of(&alone.spot),
            seconds_per_week: alone.price.as_s(),
            there: alone.there.iter().map(NamedRow::of).collect(),
            text: &alone.told,
        }
    }
}

#[derive(Serialize)]
struct WhatIfRow<'a> {
    suppose: &'a str,
    /// `null` where no other slot would be better.
    slot: Option<SlotRow<'a>>,
    /// Whether that is the answer as it stands.
    same: bool,
}

impl<'a> WhatIfRow<'a> {
    fn of(change: &'a WhatIf) -> WhatIfRow<'a> {
        WhatIfRow {
            suppose: &change.suppose,
            slot: change.slot.as_ref().map(SlotRow::of),
            same: change.same,
        }
    }
}

#[derive(Serialize)]
struct CompareDoc<'a> {
    name: &'a str,
    a: SideRow<'a>,
    b: SideRow<'a>,
    moved: Vec<MovedRow<'a>>,
    stayed: u32,
    terms: Vec<GainRow<'a>>,
    items: Vec<GainRow<'a>>,
    whole: GainRow<'a>,
}

impl<'a> CompareDoc<'a> {
    fn of(c: &'a Compare) -> CompareDoc<'a> {
        CompareDoc {
            name: &c.name,
            a: SideRow::of(&c.a),
            b: SideRow::of(&c.b),
            moved: c.moved.iter().map(MovedRow::of).collect(),
            stayed: c.stayed,
            terms: c.terms.iter().map(GainRow::of).collect(),
            items: c.items.iter().map(GainRow::of).collect(),
            whole: GainRow::of(&c.whole),
        }
    }
}

#[derive(Serialize)]
struct SideRow<'a> {
    score: ScoreRow<'a>,
    left_out: Vec<LeftOutRow<'a>>,
    findings: &'a [String],
}

impl<'a> SideRow<'a> {
    fn of(side: &'a Side) -> SideRow<'a> {
        SideRow {
            score: ScoreRow::of(&side.worth),
            left_out: side.left_out.iter().map(LeftOutRow::of).collect(),
            findings: &side.findings,
        }
    }
}

#[derive(Serialize)]
struct MovedRow<'a> {
    item: &'a str,
    copy: u32,
    copies: u32,
    /// `null` off the cart.
    from: Option<SpotRow<'a>>,
    /// `null` off the cart.
    to: Option<SpotRow<'a>>,
}

impl<'a> MovedRow<'a> {
    fn of(moved: &'a Moved) -> MovedRow<'a> {
        MovedRow {
            item: &moved.item,
            copy: moved.copy,
            copies: moved.copies,
            from: moved.from.as_ref().map(SpotRow::of),
            to: moved.to.as_ref().map(SpotRow::of),
        }
    }
}

/// Seconds a week in both, and what the second saves.
#[derive(Serialize)]
struct GainRow<'a> {
    what: &'a str,
    a: f64,
    b: f64,
    gain: f64,
}

impl<'a> GainRow<'a> {
    fn of(gain: &'a Gain) -> GainRow<'a> {
        let Gain { what, a, b } = gain;
        GainRow { what, a: a.as_s(), b: b.as_s(), gain: gain.gain().as_s() }
    }
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

#[derive(Serialize)]
struct ReachedRow<'a> {
    #[serde(flatten)]
    spot: SpotRow<'a>,
    reach_zone: &'static str,
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

#[derive(Serialize)]
struct WishMoveRow<'a> {
    #[serde(flatten)]
    named: NamedRow<'a>,
    to: SpotRow<'a>,
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
