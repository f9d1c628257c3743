//! Where everything is from A to Z, what to move first, and how to load the cart.

use super::link;
use super::table::{Column, Kind, table};
use crate::tasks::outcome::{Plan, Step};
use maud::{Markup, html};

/// The lists that are read on the way to a thing.
pub fn lists(plan: &Plan) -> Markup {
    html! { (whereabouts(plan)) (first(plan)) (loading(plan)) }
}

/// Every thing, and everything that is in one, from A to Z.
fn whereabouts(plan: &Plan) -> Markup {
    const COLUMNS: [Column; 4] = [
        ("thing", Kind::Name),
        ("where", Kind::Words),
        ("slot", Kind::Figure),
        ("family", Kind::Words),
    ];
    let mut rows: Vec<(String, Vec<Markup>)> = Vec::new();
    for (k, placed) in plan.placements.iter().enumerate() {
        let slot = || html! { (placed.slot) };
        let place = || html! { (link::place(placed)) };
        let family = html! { (placed.family.as_deref().unwrap_or("")) };
        rows.push((
            placed.item.to_lowercase(),
            vec![link::thing(plan, k), place(), slot(), family],
        ));
        for held in &placed.holds {
            let inside = html! { "in " (link::thing(plan, k)) ", " (place()) };
            rows.push((held.to_lowercase(), vec![html! { (held) }, inside, slot(), html! {}]));
        }
    }
    for (k, left) in plan.left_out.iter().enumerate() {
        let name = html! { a href={ "#" (link::off(k)) } { (left.copy.item) } };
        let off = html! { "off the cart" };
        rows.push((left.copy.item.to_lowercase(), vec![name, off, html! {}, html! {}]));
    }
    // The order of the placements stays where names are alike.
    rows.sort_by(|a, b| a.0.cmp(&b.0));
    let rows = rows.into_iter().map(|(_, row)| row).collect();
    section("where", "Where everything is", table("From A to Z", &COLUMNS, rows))
}

/// What stands behind what.
fn first(plan: &Plan) -> Markup {
    const COLUMNS: [Column; 3] = [
        ("to take", Kind::Name),
        ("move first, in this order", Kind::Words),
        ("where", Kind::Words),
    ];
    let behind = (0..plan.placements.len()).filter(|&k| !plan.placements[k].moved_first.is_empty());
    let row = |k: usize| {
        let placed = &plan.placements[k];
        let moved = link::copies(plan, &placed.moved_first);
        vec![link::thing(plan, k), moved, html! { (link::place(placed)) }]
    };
    let rows: Vec<Vec<Markup>> = behind.map(row).collect();
    let told = match rows.is_empty() {
        true => html! { p { "Nothing stands before anything else." } },
        false => table("What stands behind something", &COLUMNS, rows),
    };
    section("first", "What to move first", told)
}

fn loading(plan: &Plan) -> Markup {
    let told = html! {
        ol { @for step in &plan.loading { li { (step.text) (things(plan, step)) } } }
    };
    section("loading", "Loading, in this order", told)
}

fn things(plan: &Plan, step: &Step) -> Markup {
    html! {
        @if !step.placements.is_empty() {
            " " (link::listed(step.placements.iter().map(|&k| link::thing(plan, k))))
        }
    }
}

fn section(id: &str, head: &str, told: Markup) -> Markup {
    let named = format!("{id}-head");
    html! {
        section id=(id) aria-labelledby=(named) { h2 id=(named) { (head) } (told) }
    }
}
