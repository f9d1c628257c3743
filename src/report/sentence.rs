//! Sentences that every report says alike, and the names of things and places.

use super::figure::{TIE, at_least, at_most, copies, count, seconds};
use crate::finding::{Finding, Severity};
use crate::tasks::outcome::{
    Bound, Copy, Effort, End, LeftOut, Placement, Plan, Proof, Start, Status,
};

/// Whether the plan may be used as it is.
pub fn status(status: Status) -> &'static str {
    match status {
        Status::Unsafe => "unsafe: a rule is broken",
        Status::Partial => "no rule is broken, but not everything has a place",
        Status::Complete => "everything has a place and no rule is broken",
    }
}

/// What it costs, what it gains over the start, the bound, and what is from memory.
///
/// Of a layout as it stands only the first and the last: it was compared with nothing.
pub fn cost(plan: &Plan) -> Vec<String> {
    let mut told = match plan.effort.restarts {
        0 => vec![
            format!("This layout costs {}{TIE}s a week.", seconds(plan.worth.cost)),
            terms(plan),
        ],
        _ => vec![gain(plan), bound(plan), terms(plan)],
    };
    told.extend(ended(&plan.effort));
    if !plan.from_memory.is_empty() {
        let memory = plan.from_memory.join(", ");
        told.push(format!("From memory, not from a source that was read: {memory}."));
    }
    told
}

/// A copy that has no place, by name, and why.
pub fn left_out(left: &LeftOut) -> (String, String) {
    let name = copies(&left.copy.item, left.copy.copy, 1, left.copy.copy);
    let price = seconds(left.price);
    (name, format!("{}. Fetching it from elsewhere: {price}{TIE}s a week.", left.why))
}

/// A thing that has a place, with its copies.
pub fn name(placed: &Placement) -> String {
    copies(&placed.item, placed.copy, placed.copies, placed.of)
}

/// The place where a copy is; nothing where it has none.
pub fn placed<'a>(plan: &'a Plan, copy: &Copy) -> Option<&'a Placement> {
    plan.placements.iter().find(|p| p.item == copy.item && p.copy == copy.copy)
}

/// A bay and its surface, told once where both have one name.
pub fn place(bay: &str, surface: &str, dot: &str) -> String {
    if bay == surface { bay.to_owned() } else { format!("{bay}{dot}{surface}") }
}

/// A copy by the name that the tables give it.
pub fn called(plan: &Plan, copy: &Copy) -> String {
    placed(plan, copy).map_or_else(|| copies(&copy.item, copy.copy, 1, 2), name)
}

/// A note with its place in the file and what helps.
pub fn noted(note: &Finding) -> String {
    let grave = if note.severity == Severity::Note { "" } else { "warning: " };
    let at = note
        .at
        .first()
        .map_or_else(String::new, |span| format!(" ({}:{})", span.source.name, span.line()));
    let help = note.help.as_ref().map_or_else(String::new, |help| format!(": {help}"));
    format!("{grave}{}{help}{at}", note.text)
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
        Bound { cost: Some(least), gap_with_handling, proof, .. } => {
            let gap = gap_with_handling.map_or_else(String::new, |gap| {
                format!(
                    " Of all fetching, handling included, that is at most {} too much.",
                    at_most(gap)
                )
            });
            let least = seconds(least);
            let corners = match proof {
                Proof::Corners => {
                    " Every corner place was tried: this one is optimal among corner places."
                }
                Proof::Bound | Proof::Optimal => "",
            };
            format!(
                "By this model's prices no layout on this cart can cost less than {least}{TIE}s a week; this one costs {cost}{TIE}s.{gap}{corners}"
            )
        }
    }
}

/// Why the search ended before all its moves were made, where it did.
fn ended(effort: &Effort) -> Option<String> {
    let when = match effort.cycles {
        Some(cycle) => format!("in cycle {cycle}"),
        None => "before all its moves were made".to_owned(),
    };
    let why = match effort.end {
        End::Moves => return None,
        End::Best => {
            return Some("The search ended by itself: nothing could get better.".to_owned());
        }
        End::Time => {
            let given = effort.allowed.map_or_else(String::new, |s| format!("{s}{TIE}s of "));
            format!("The {given}time for the search was up {when}")
        }
        End::Interrupt => format!("The search was interrupted {when}"),
    };
    Some(format!("{why}: with more time the plan may get better."))
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
