//! What is usual in a family.

use super::{CLOSED_METAL_CAN, Dims, Hazard, Hazards, Item};
use crate::finding::Span;
use crate::units::{Length, Mass, Uses};

/// A thing of the typical size, mass and use of a family, with every hazard of the family, that stands or lies.
pub fn typical(items: &[Item], family: &str) -> Option<Item> {
    let of: Vec<&Item> = items.iter().filter(|i| i.family.as_deref() == Some(family)).collect();
    of.first()?;
    let median_of = |figure: fn(&Item) -> i64| median(of.iter().map(|i| figure(i)).collect());
    let length = |side: fn(&Item) -> i64| Length::nm(median_of(side));
    let size = Dims {
        w: length(|i| i.size.w.as_nm()),
        d: length(|i| i.size.d.as_nm()),
        h: length(|i| i.size.h.as_nm()),
    };
    // As the inventory has it where nothing is said: what is over three times as high as its foot does not stand.
    let stands = size.h <= size.w.min(size.d) * 3;
    // Nobody knows which it will be, so the room keeps every rule that any of the family has to keep.
    let hazards = of.iter().fold(Hazards::default(), |all, i| all.or(i.hazards));
    let lying = Dims { w: size.w, d: size.h, h: size.d };
    Some(Item {
        name: family.to_owned(),
        span: Span::none(),
        size,
        weight: Mass::ng(median_of(|i| i.weight.as_ng())),
        uses: Uses::nano(median_of(|i| i.uses.as_nano())),
        count: 1,
        take_all: false,
        stack: 1,
        pitch: None,
        poses: [stands.then_some(size), Some(lying), None],
        turn: true,
        family: Some(family.to_owned()),
        with: Vec::new(),
        hazards,
        hazards_said: true,
        guarded: true,
        inside: hazards.has(Hazard::SelfHeating).then(|| CLOSED_METAL_CAN.to_owned()),
        hands: 1,
        handles: None,
        grip: None,
        fetched: true,
        urgent: false,
        place: Vec::new(),
        prefer: Vec::new(),
        fixed: false,
        holds: Vec::new(),
        clearance: None,
    })
}

/// The median of some values: the mean of the two middle ones where their number is even.
fn median(mut all: Vec<i64>) -> i64 {
    all.sort_unstable();
    match all.len() {
        0 => 0,
        n => (all[(n - 1) / 2] + all[n / 2]) / 2,
    }
}
