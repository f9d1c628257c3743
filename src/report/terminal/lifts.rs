//! Lifts with both hands, and how many others the equation says nothing of.

use super::cart::section;
use super::figure::{count, length, mass};
use super::page::Page;
use super::table::Set;
use crate::tasks::outcome::{Assessed, LIFT_SOURCE, Lift, Plan};

/// What fetching asks of the back.
pub fn lifts(page: &mut Page, plan: &Plan) {
    let heads = [
        ("both hands", Set::Words),
        ("weight", Set::Figure),
        ("hands at", Set::Figure),
        ("before the ankles", Set::Figure),
        ("where", Set::Words),
        ("hold", Set::Words),
        ("index", Set::Figure),
        ("at most", Set::Figure),
    ];
    let assessed: Vec<(&Lift, &Assessed)> =
        plan.lifts.iter().filter_map(|l| l.assessed.as_ref().ok().map(|a| (l, a))).collect();
    section(page, "Lifting", &heads, &assessed, |_, (lift, a)| cells(plan, lift, a));
    let others = plan.lifts.len() - assessed.len();
    if !assessed.is_empty() {
        page.paragraph(&format!("The index is by {LIFT_SOURCE}; aim at 1.0 or less."));
    }
    if !assessed.is_empty() && others > 0 {
        page.paragraph(&format!(
            "{} more: lifting index not assessed (one hand, seated, or contents that can shift).",
            count(others, "thing")
        ));
    }
}

fn cells(plan: &Plan, lift: &Lift, a: &Assessed) -> Vec<String> {
    let index = a.index.map_or_else(|| "no load".to_owned(), |i| format!("{i:.2}"));
    let assumed = if a.assumed { " (assumed)" } else { "" };
    vec![
        lift.copy.item.clone(),
        mass(lift.weight, plan.units),
        length(a.height, plan.units),
        length(a.horizontal, plan.units),
        if a.end == "place" { "its place".to_owned() } else { "the bench".to_owned() },
        format!("{}{assumed}", a.coupling),
        index,
        format!("{:.1}", a.limit),
    ]
}
