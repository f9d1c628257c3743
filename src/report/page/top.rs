//! The title block, what is wrong, what to mind and what it costs.

use super::link;
use crate::finding::Finding;
use crate::report::figure::{capital, count, mass};
use crate::report::sentence;
use crate::report::sheet::Sheet;
use crate::tasks::outcome::{Plan, Status};
use maud::{Markup, html};

/// The title block, as a drawing has it.
pub fn title_block(plan: &Plan, sheets: &[Sheet]) -> Markup {
    let total = mass(plan.balance.total, plan.units);
    html! {
        header.title {
            h1 { (plan.name) }
            dl {
                div { dt { "Status" } dd { (plan.status.name()) } }
                div { dt { "Things" } dd { (plan.placements.len()) " placed, " (plan.left_out.len()) " left out" } }
                div { dt { "Loaded" } dd { (total) } }
                div { dt { "Sheets" } dd { (sheets.len()) } }
                div { dt { "Lengths in" } dd { (plan.units.name()) } }
            }
        }
    }
}

/// What is wrong, and what there is to mind.
pub fn verdict(plan: &Plan) -> Markup {
    html! {
        section #verdict aria-labelledby="verdict-head" {
            h2 #verdict-head { (capital(sentence::status(plan.status))) }
            (broken(plan))
            (faults(plan))
            (left_out(plan))
            p {
                @if !plan.cautions.is_empty() {
                    "Mind the " a href="#cautions" { (count(plan.cautions.len(), "caution")) } ". "
                }
                "What it costs stands under " a href="#cost" { "cost" } "."
            }
        }
    }
}

/// What to mind, and what it costs.
pub fn reckoning(plan: &Plan) -> Markup {
    html! {
        @if !plan.cautions.is_empty() {
            section #cautions aria-labelledby="cautions-head" {
                h2 #cautions-head { "Cautions" }
                (cautions(plan))
            }
        }
        section #cost aria-labelledby="cost-head" {
            h2 #cost-head { "Cost" }
            @for told in sentence::cost(plan) { p { (told) } }
        }
    }
}

fn broken(plan: &Plan) -> Markup {
    let rules = &plan.worth.broken;
    html! {
        @if plan.status == Status::Unsafe {
            h3.alarm { (capital(&count(rules.len(), "rule"))) " broken" }
            ul.findings {
                @for rule in rules {
                    li {
                        strong.alarm { (rule.rule) } ": " (link::items(plan, &rule.items)) ". "
                        (capital(&rule.told)) " " small { "(" (rule.source) ")" }
                    }
                }
            }
        }
    }
}

/// Where the layout as it is written does not agree with the inventory or the cart.
fn faults(plan: &Plan) -> Markup {
    let faults: Vec<&Finding> = plan.notes.iter().filter(|note| note.is_fault()).collect();
    html! {
        @if !faults.is_empty() {
            h3.alarm { "The layout as it is written" }
            ul.findings { @for fault in faults { li { (sentence::noted(fault)) } } }
        }
    }
}

fn left_out(plan: &Plan) -> Markup {
    html! {
        @if !plan.left_out.is_empty() {
            h3 { "Left out: " (count(plan.left_out.len(), "item")) }
            ul.findings {
                @for (k, left) in plan.left_out.iter().enumerate() {
                    @let (name, why) = sentence::left_out(left);
                    li { a href={ "#" (link::off(k)) } { (name) } ": " (why) }
                }
            }
        }
    }
}

fn cautions(plan: &Plan) -> Markup {
    html! {
        ul.findings {
            @for caution in &plan.cautions {
                li {
                    @if caution.items.is_empty() { "The cart" } @else { (link::items(plan, &caution.items)) }
                    ": " (caution.text) " " small { "(" (caution.source) ")" }
                }
            }
        }
    }
}
