//! What is wrong comes first, then what the plan costs and how far that is from the best there can be.

use super::figure::{at_least, at_most, copies, count, seconds};
use super::page::{Ink, Page};
use super::wrap::TIE;
use crate::tasks::outcome::{Bound, Plan, Start, Status};

/// The cart's name, what breaks a rule and what has no place.
pub fn wrong(page: &mut Page, plan: &Plan) {
    let (ink, told) = match plan.status {
        Status::Unsafe => (Ink::Alarm, "unsafe: a rule is broken"),
        Status::Partial => (Ink::Mind, "no rule is broken, but not everything has a place"),
        Status::Complete => (Ink::Bold, "everything has a place and no rule is broken"),
    };
    page.heading(ink, &format!("{}: {told}", plan.name));
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
        let name = copies(&left.copy.item, left.copy.copy, 1, left.copy.copy);
        let text = format!(
            "{}. Fetching it from elsewhere: {}{TIE}s a week.",
            left.why,
            seconds(left.price)
        );
        page.named(Ink::Mind, &name, &text);
    }
}

/// What it costs, what it gains over the start, the bound, and what is from memory.
pub fn cost(page: &mut Page, plan: &Plan) {
    page.heading(Ink::Bold, "Cost");
    page.paragraph(&gain(plan));
    page.paragraph(&bound(plan));
    page.paragraph(&terms(plan));
    if plan.effort.ended_early {
        page.paragraph("The search was ended early: with more time the plan may get better.");
    }
    if !plan.from_memory.is_empty() {
        let told = plan.from_memory.join(", ");
        page.paragraph(&format!("From memory, not from a source that was read: {told}."));
    }
}

/// The cost against the start's; a saving only where both place the same items and the start breaks no rule.
fn gain(plan: &Plan) -> String {
    let cost = seconds(plan.worth.cost);
    let Start { cost: before, broken, same_items, .. } = plan.start;
    let start = seconds(before);
    let saved = 1.0 - plan.worth.cost.as_s() / before.as_s();
    match (broken, same_items) {
        (0, true) if before == plan.worth.cost => format!(
            "This plan costs {cost}{TIE}s a week, as much as going through the list item by item."
        ),
        (0, true) if saved > 0.0 && saved.is_finite() => format!(
            "This plan costs {cost}{TIE}s a week, {} less than going through the list item by item ({start}{TIE}s).",
            at_least(saved)
        ),
        _ => format!(
            "This plan costs {cost}{TIE}s a week. Going through the list item by item costs {start}{TIE}s, but {}; so no saving is told.",
            unlike(plan)
        ),
    }
}

/// Why the start and the plan do not compare.
fn unlike(plan: &Plan) -> String {
    let mut why = Vec::new();
    if plan.start.broken > 0 {
        why.push(format!("breaks {}", count(plan.start.broken, "rule")));
    }
    if !plan.start.same_items {
        let (left, here) = (seconds(plan.start.off_cart), seconds(plan.worth.off_cart));
        why.push(format!(
            "leaves out other things (fetching those from elsewhere: {left}{TIE}s a week; in this plan {here}{TIE}s)"
        ));
    }
    if why.is_empty() {
        String::from("is not what the plan is better than")
    } else {
        why.join(" and ")
    }
}

fn bound(plan: &Plan) -> String {
    let cost = seconds(plan.worth.cost);
    match plan.bound {
        Bound { cost: None, .. } => String::from("No bound is told: none was proven."),
        Bound { cost: Some(least), .. } if least == plan.worth.cost => String::from(
            "By this model's prices no layout on this cart can cost less: this one is proven optimal.",
        ),
        Bound { cost: Some(least), gap_with_handling, .. } => {
            let gap = gap_with_handling.map_or_else(String::new, |gap| {
                format!(
                    " Of all fetching, handling included, that is at most {} too much.",
                    at_most(gap)
                )
            });
            let least = seconds(least);
            format!(
                "By this model's prices no layout on this cart can cost less than {least}{TIE}s a week; this one costs {cost}{TIE}s.{gap}"
            )
        }
    }
}

fn terms(plan: &Plan) -> String {
    let priced = plan.worth.terms.iter().filter(|(_, price)| price.as_us() != 0);
    let told: Vec<String> =
        priced.map(|(term, price)| format!("{term} {}", seconds(*price))).collect();
    let of = if told.is_empty() { String::from("nothing") } else { told.join(", ") };
    format!(
        "Its terms, in s a week: {of}. Handling, alike in every place, comes on top: {}{TIE}s.",
        seconds(plan.handling)
    )
}
