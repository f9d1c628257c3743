//! Finding things: by name, by what is in them, by family; and what is shown and printed.

use super::drawings::titles;
use super::shading;
use crate::report::sheet::Sheet;
use crate::tasks::outcome::Plan;
use maud::{Markup, html};
use std::collections::BTreeSet;

/// The bar at the top, with the way to every part of the page.
pub fn bar(plan: &Plan, sheets: &[Sheet]) -> Markup {
    html! {
        div.bar {
            (search(plan))
            (parts(plan, sheets))
            (choices())
            (shading::legend(plan))
        }
    }
}

/// The search is the script's: without one, the lists hold the same.
fn search(plan: &Plan) -> Markup {
    html! {
        search.scripted {
            label for="query" { "Find" }
            input #query type="search" autocomplete="off" spellcheck="false"
                placeholder="name, or what is in it" aria-describedby="found" aria-controls="hits";
            label for="family" { "Family" }
            select #family {
                option value="" { "all" }
                @for family in families(plan) { option { (family) } }
            }
            p #found role="status" {}
            ul #hits aria-label="Found" hidden {}
        }
    }
}

fn families(plan: &Plan) -> BTreeSet<&str> {
    plan.placements.iter().filter_map(|p| p.family.as_deref()).collect()
}

/// The parts of the page, in their order.
fn parts(plan: &Plan, sheets: &[Sheet]) -> Markup {
    const LISTS: [(&str, &str); 8] = [
        ("cost", "Cost"),
        ("where", "Where everything is"),
        ("first", "What to move first"),
        ("loading", "Loading"),
        ("faces", "Face by face"),
        ("cart", "Casters and tipping"),
        ("ways", "Ways and reach"),
        ("stories", "Thing by thing"),
    ];
    html! {
        nav aria-label="Drawings and lists" {
            ul {
                @for (sheet, title) in sheets.iter().zip(titles(plan, sheets)) { li { a href={ "#" (sheet.id) } { (title) } } }
                @for (id, name) in LISTS { li { a href={ "#" (id) } { (name) } } }
            }
        }
    }
}

/// Plain boxes that the style sheet asks: they work without a script.
fn choices() -> Markup {
    let choice = |id: &str, text: &str, on: bool| {
        html! { label { input id=(id) type="checkbox" checked[on]; " " (text) } }
    };
    html! {
        fieldset.choices {
            legend { "Shown and printed" }
            (choice("shade", "shade things by seconds a week", true))
            (choice("print-drawings", "print drawings", true))
            (choice("print-lists", "print lists", true))
            (choice("print-stories", "print thing by thing", false))
        }
    }
}
