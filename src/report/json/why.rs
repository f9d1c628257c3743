//! The document of `why`.

use super::part::text;
use super::placement::TermRow;
use super::spot::{NamedRow, SpotRow};
use super::worth::BrokenRow;
use crate::tasks::offer::{Named, Spot};
use crate::tasks::why::{Alone, Differ, Slot, WhatIf, Why, WhyLot};
use serde::Serialize;

/// The answer of `why` as one document, ending with a line break.
pub fn why(why: &Why) -> String {
    text(&WhyDoc { asked: &why.asked, lots: why.lots.iter().map(WhyRow::of).collect() })
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
