//! Names of things and places, and the links between them.

use crate::report::sentence;
use crate::report::sheet::address;
use crate::tasks::outcome::{Copy, Placement, Plan};
use maud::{Markup, html};

/// Between the parts of a place.
pub const DOT: &str = " · ";

/// The address of a placement's story.
pub fn story(index: usize) -> String {
    address(index)
}

/// The address of the story of a copy that has no place, by its number among those left out.
pub fn off(index: usize) -> String {
    format!("off-{index}")
}

/// A placement by name, leading to its story.
pub fn thing(plan: &Plan, index: usize) -> Markup {
    let name = plan.placements.get(index).map(sentence::name).unwrap_or_default();
    html! { a href={ "#" (story(index)) } { (name) } }
}

/// A copy by name, leading to its story where it has one.
pub fn copy(plan: &Plan, copy: &Copy) -> Markup {
    match plan.placements.iter().position(|p| p.item == copy.item && p.copy == copy.copy) {
        Some(index) => thing(plan, index),
        None => html! { (sentence::called(plan, copy)) },
    }
}

/// Several copies, in their order.
pub fn copies(plan: &Plan, copies: &[Copy]) -> Markup {
    listed(copies.iter().map(|c| copy(plan, c)))
}

/// Every place of an item by name; the bare name where it has none.
pub fn item(plan: &Plan, item: &str) -> Markup {
    let at = |(k, p): (usize, &Placement)| (p.item == item).then_some(k);
    let places: Vec<usize> = plan.placements.iter().enumerate().filter_map(at).collect();
    if !places.is_empty() {
        return listed(places.into_iter().map(|k| thing(plan, k)));
    }
    match plan.left_out.iter().position(|l| l.copy.item == item) {
        Some(k) => html! { a href={ "#" (off(k)) } { (item) } },
        None => html! { (item) },
    }
}

/// Every place of several items.
pub fn items(plan: &Plan, items: &[String]) -> Markup {
    listed(items.iter().map(|name| item(plan, name)))
}

/// Pieces with commas between them.
pub fn listed(pieces: impl Iterator<Item = Markup>) -> Markup {
    html! { @for (k, piece) in pieces.enumerate() { @if k > 0 { ", " } (piece) } }
}

/// Where a thing is: `front · upper left · shelf 1`.
pub fn place(placed: &Placement) -> String {
    let within = sentence::place(&placed.bay, &placed.surface, DOT);
    format!("{}{DOT}{within}", placed.face.name())
}

/// How it is kept: `stand, turned`.
pub fn pose(placed: &Placement) -> String {
    let turned = if placed.turned { ", turned" } else { "" };
    format!("{}{turned}", placed.pose.name())
}
