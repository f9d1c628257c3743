//! What is wrong comes first, then what the plan costs and how far that is from the best there can be.

use super::figure::count;
use super::page::{Ink, Page};
use super::sentence;
use crate::tasks::outcome::{Plan, Status};

/// The cart's name, what breaks a rule and what has no place.
pub fn wrong(page: &mut Page, plan: &Plan) {
    let ink = match plan.status {
        Status::Unsafe => Ink::Alarm,
        Status::Partial => Ink::Mind,
        Status::Complete => Ink::Bold,
    };
    page.heading(ink, &format!("{}: {}", plan.name, sentence::status(plan.status)));
    if !plan.worth.broken.is_empty() {
        page.heading(
            Ink::Alarm,
            &format!("Unsafe: {} broken", count(plan.worth.broken.len(), "rule")),
        );
    }
    for broken in &plan.worth.broken {
        page.named(Ink::Alarm, broken.rule, &format!("{} ({})", broken.told, broken.source));
    }
    if !plan.left_out.is_empty() {
        page.heading(Ink::Mind, &format!("Left out: {}", count(plan.left_out.len(), "item")));
    }
    for left in &plan.left_out {
        let (name, text) = sentence::left_out(left);
        page.named(Ink::Mind, &name, &text);
    }
}

/// What it costs, what it gains over the start, the bound, and what is from memory.
pub fn cost(page: &mut Page, plan: &Plan) {
    page.heading(Ink::Bold, "Cost");
    for sentence in sentence::cost(plan) {
        page.paragraph(&sentence);
    }
}
