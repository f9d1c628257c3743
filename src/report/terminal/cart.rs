//! The cart as a whole: kept room, casters, tipping, cautions, loading and what earns its place least.

use super::face::place;
use super::figure::{length, mass, seconds};
use super::page::{Ink, Page};
use super::table::{Set, Table};
use super::{NARROW, sentence};
use crate::finding::Finding;
use crate::tasks::outcome::{CasterLoad, Caution, Kept, Plan, Step};

/// Room kept free for what is not bought yet.
pub fn reserve(page: &mut Page, plan: &Plan) {
    let heads = [
        ("for", Set::Words),
        ("place", Set::Words),
        ("width x depth x height", Set::Words),
        ("allowed mass", Set::Figure),
    ];
    let cells = |page: &Page, kept: &Kept| {
        let size = [0, 1, 2].map(|axis| length(kept.space.extent(axis), plan.units));
        let family = kept.family.clone().unwrap_or_else(|| String::from("anything"));
        let place =
            format!("{}{}{}", kept.face.name(), page.dot(), place(page, &kept.bay, &kept.surface));
        vec![family, place, size.join(" x "), mass(kept.mass, plan.units)]
    };
    section(page, "Room kept free", &heads, &plan.reserve, cells);
}

/// What each caster carries.
pub fn casters(page: &mut Page, plan: &Plan) {
    let heads = [
        ("caster at", Set::Words),
        ("level", Set::Figure),
        ("worst", Set::Figure),
        ("when", Set::Words),
        ("one hanging", Set::Figure),
        ("may carry", Set::Figure),
    ];
    let cells = |_: &Page, caster: &CasterLoad| {
        let at = caster.at.map(|at| length(at, plan.units)).join(", ");
        let load = |load: Option<_>, none: &str| {
            load.map_or_else(|| none.to_owned(), |m| mass(m, plan.units))
        };
        vec![
            at,
            load(caster.load, "tips"),
            load(caster.worst, "-"),
            caster.worst_case.clone(),
            load(caster.hanging, "-"),
            load(caster.limit, "not said"),
        ]
    };
    section(page, "Casters", &heads, &plan.casters, cells);
    if !plan.casters.is_empty() {
        let all = mass(plan.balance.total, plan.units);
        page.paragraph(&format!("Everything together: {all}."));
    }
    for assumed in &plan.balance.assumed {
        page.point("assumed:", assumed);
    }
}

/// What to mind.
pub fn cautions(page: &mut Page, cautions: &[Caution]) {
    if !cautions.is_empty() {
        page.heading(Ink::Mind, "Cautions");
    }
    for caution in cautions {
        let items = if caution.items.is_empty() {
            String::from("the cart")
        } else {
            caution.items.join(", ")
        };
        page.named(Ink::Bold, &items, &format!("{} ({})", caution.text, caution.source));
    }
}

/// How to load it.
pub fn loading(page: &mut Page, plan: &Plan) {
    if !plan.loading.is_empty() {
        page.heading(Ink::Bold, "Loading, in this order");
    }
    for (number, step) in plan.loading.iter().enumerate() {
        page.point(
            &format!("{:>2}.", number + 1),
            &format!("{}{}", step.text, slots_of(plan, step)),
        );
    }
}

/// The slots of a step, face by face: ` [front 3, 4; back 1]`.
fn slots_of(plan: &Plan, step: &Step) -> String {
    let mut told = String::new();
    let mut last = None;
    for placed in step.placements.iter().filter_map(|&index| plan.placements.get(index)) {
        let lead = match last {
            Some(face) if face == placed.face => String::from(", "),
            Some(_) => format!("; {} ", placed.face.name()),
            None => format!(" [{} ", placed.face.name()),
        };
        told += &format!("{lead}{}", placed.slot);
        last = Some(placed.face);
    }
    if told.is_empty() { told } else { told + "]" }
}

/// What could be kept elsewhere at the smallest price.
pub fn earning(page: &mut Page, plan: &Plan) {
    if !plan.earning_least.is_empty() {
        page.heading(Ink::Bold, "Earning their place least");
    }
    for &(index, price) in &plan.earning_least {
        if let Some(p) = plan.placements.get(index) {
            let text = format!("kept elsewhere it would cost {} s a week", seconds(price));
            page.named(Ink::Bold, &sentence::name(p), &text);
        }
    }
}

/// What is read but not priced yet, and whatever else is worth knowing.
pub fn notes(page: &mut Page, notes: &[Finding]) {
    if !notes.is_empty() {
        page.heading(Ink::Bold, "Notes");
    }
    for note in notes {
        page.point(page.either("•", "*"), &sentence::noted(note));
    }
}

/// A heading and a table, or on a narrow page a list; nothing where there is nothing to tell.
pub(super) fn section<T>(
    page: &mut Page,
    title: &str,
    heads: &[(&'static str, Set)],
    rows: &[T],
    cells: impl Fn(&Page, &T) -> Vec<String>,
) {
    if rows.is_empty() {
        return;
    }
    page.heading(Ink::Bold, title);
    let mut table = Table::new(heads);
    for row in rows {
        let cells = cells(page, row);
        if page.look.width >= NARROW {
            table.row(cells);
        } else {
            let named = heads.iter().zip(&cells).filter(|(_, cell)| !cell.is_empty());
            let parts: Vec<String> =
                named.map(|((head, _), cell)| format!("{head} {cell}")).collect();
            page.point(page.either("•", "*"), &parts.join(", "));
        }
    }
    if page.look.width >= NARROW {
        page.table(&table);
    }
}
