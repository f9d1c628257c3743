//! The cart as a whole: casters, tipping, kept room, what earns its place least, notes.

use super::link::{self, DOT};
use super::table::{Column, Kind, table};
use crate::finding::Finding;
use crate::report::figure::{length, mass, seconds};
use crate::report::sentence;
use crate::tasks::outcome::{CasterLoad, Kept, Plan, Tip};
use crate::units::Mass;
use maud::{Markup, html};

/// All of it.
pub fn cart(plan: &Plan) -> Markup {
    html! {
        section #cart aria-labelledby="cart-head" {
            h2 #cart-head { "Casters and tipping" }
            (casters(plan))
            (tipping(plan))
            (reserve(plan))
            (earning(plan))
            (notes(plan))
        }
    }
}

fn casters(plan: &Plan) -> Markup {
    const COLUMNS: [Column; 6] = [
        ("caster at", Kind::Name),
        ("level", Kind::Figure),
        ("worst", Kind::Figure),
        ("when", Kind::Words),
        ("one hanging", Kind::Figure),
        ("may carry", Kind::Figure),
    ];
    let load = |load: Option<Mass>, none: &str| match load {
        Some(load) => html! { (mass(load, plan.units)) },
        None => html! { (none) },
    };
    let row = |c: &CasterLoad| {
        let at = c.at.map(|at| length(at, plan.units)).join(", ");
        vec![
            html! { (at) },
            load(c.load, "tips"),
            load(c.worst, "-"),
            html! { (c.worst_case) },
            load(c.hanging, "-"),
            load(c.limit, "not said"),
        ]
    };
    html! {
        (table("What each caster carries", &COLUMNS, plan.casters.iter().map(row).collect()))
        p { "Everything together: " (mass(plan.balance.total, plan.units)) "." }
        @if !plan.balance.assumed.is_empty() {
            ul { @for assumed in &plan.balance.assumed { li { "Assumed: " (assumed) } } }
        }
    }
}

fn tipping(plan: &Plan) -> Markup {
    const COLUMNS: [Column; 4] = [
        ("drawers", Kind::Name),
        ("goes over its", Kind::Words),
        ("at", Kind::Figure),
        ("at least", Kind::Figure),
    ];
    let angle = |degrees: f64| html! { (format!("{degrees:.1}°")) };
    let row = |tip: &Tip| {
        let out = if tip.case == "closed" { "" } else { " out" };
        let case = html! { (tip.case) (out) };
        vec![case, html! { (tip.side) }, angle(tip.degrees), angle(tip.limit)]
    };
    table("How far it may lean", &COLUMNS, plan.tips.iter().map(row).collect())
}

fn reserve(plan: &Plan) -> Markup {
    const COLUMNS: [Column; 4] = [
        ("for", Kind::Name),
        ("place", Kind::Words),
        ("width × depth × height", Kind::Words),
        ("allowed mass", Kind::Figure),
    ];
    let row = |kept: &Kept| {
        let size = [0, 1, 2].map(|axis| length(kept.space.extent(axis), plan.units)).join(" × ");
        let place = sentence::place(&kept.bay, &kept.surface, DOT);
        vec![
            html! { (kept.family.as_deref().unwrap_or("anything")) },
            html! { (kept.face.name()) (DOT) (place) },
            html! { (size) },
            html! { (mass(kept.mass, plan.units)) },
        ]
    };
    html! {
        @if !plan.reserve.is_empty() {
            (table("Room kept free", &COLUMNS, plan.reserve.iter().map(row).collect()))
        }
    }
}

fn earning(plan: &Plan) -> Markup {
    html! {
        @if !plan.earning_least.is_empty() {
            h3 { "Earning their place least" }
            ul {
                @for &(k, price) in &plan.earning_least {
                    li { (link::thing(plan, k)) ": kept elsewhere it would cost " (seconds(price)) " s a week" }
                }
            }
        }
    }
}

/// Faults stand at the top of the page.
fn notes(plan: &Plan) -> Markup {
    let notes: Vec<&Finding> = plan.notes.iter().filter(|note| !note.is_fault()).collect();
    html! {
        @if !notes.is_empty() {
            h3 { "Notes" }
            ul { @for note in notes { li { (sentence::noted(note)) } } }
        }
    }
}
