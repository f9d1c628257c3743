//! Shelves that may be moved: where to drill for them, and what that gained.

use super::face::place;
use super::figure::{length, seconds};
use super::page::{Ink, Page};
use super::table::{Set, Table};
use crate::tasks::outcome::{Plan, Shelves};

/// The heights to drill, over the floor of each bay.
pub fn section(page: &mut Page, plan: &Plan) {
    let Some(shelves) = &plan.shelves else { return };
    page.heading(Ink::Bold, "Shelves to set");
    let mut table = Table::new(&[
        ("shelf", Set::Words),
        ("top over the bay's floor", Set::Figure),
        ("row from below", Set::Figure),
        ("as drawn", Set::Figure),
    ]);
    for set in &shelves.set {
        let name = place(page, &set.bay, &set.surface);
        table.row(vec![
            format!("{}{}{name}", set.face.name(), page.dot()),
            length(set.height, plan.units),
            format!("{} of {}", set.row[0], set.row[1]),
            length(set.drawn, plan.units),
        ]);
    }
    page.table(&table);
    page.paragraph(&gained(plan, shelves));
}

/// What moving shelves gained, told only where both layouts place the same value and break no rule.
fn gained(plan: &Plan, shelves: &Shelves) -> String {
    let worth = &plan.worth;
    let drawn = seconds(shelves.as_drawn);
    if shelves.broken > worth.broken.len() {
        return format!(
            "With the shelves as drawn, the same search breaks {} rules.",
            shelves.broken
        );
    }
    if shelves.off_cart > worth.off_cart {
        let more = seconds(shelves.off_cart - worth.off_cart);
        return format!(
            "With the shelves as drawn, the same search leaves out more: fetching that from elsewhere costs {more} s a week."
        );
    }
    match shelves.as_drawn - worth.cost {
        gain if gain.as_us() > 0 => format!(
            "With the shelves as drawn, the same search finds {drawn} s a week: moving them saves {} s.",
            seconds(gain)
        ),
        _ => format!("With the shelves as drawn, the same search finds {drawn} s a week: no less."),
    }
}
