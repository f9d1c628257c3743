//! Rolling the loaded cart, its way and its place.

use super::cart::section;
use super::extremes::amount;
use super::figure::length;
use super::page::Page;
use super::table::Set;
use crate::tasks::outcome::{Before, Plan, Push};

/// What rolling asks for, whether it passes and fits, and the floor that it frees.
pub fn rolling(page: &mut Page, plan: &Plan) {
    let heads = [
        ("the cart", Set::Words),
        ("asks for", Set::Figure),
        ("80 % can", Set::Figure),
        ("half can", Set::Figure),
    ];
    let cells = |page: &Page, push: &Push| {
        let shown = |a| amount(page, a, plan.units);
        let force = push.force.map_or_else(|| String::from("lifting"), shown);
        vec![push.case.clone(), force, shown(push.most), shown(push.half)]
    };
    section(page, "Rolling it", &heads, &plan.rolling.pushes, cells);
    if plan.rolling.pushes.is_empty() {
        return;
    }
    page.paragraph(&format!("What people can: {}.", plan.rolling.source));
    page.paragraph(&place(plan));
    page.paragraph(&format!(
        "It stands on {:.2} m2 with what hangs on it; side by side on a floor or table, as they stand, its things would take {:.2} m2.",
        plan.rolling.stands_on, plan.rolling.side_by_side
    ));
    if !plan.rolling.assumed.is_empty() {
        page.paragraph(&format!(
            "Assumed where no file says it: {}.",
            plan.rolling.assumed.join("; ")
        ));
    }
}

/// The door and its place in a sentence each.
fn place(plan: &Plan) -> String {
    let shown = |l| length(l, plan.units);
    let door = plan.rolling.door.map(|door| {
        let passes = if door.broad <= door.clear { "passes" } else { "does not pass" };
        format!(
            "With what hangs on it, {} broad with its {} first, it {passes} the door of {}.",
            shown(door.broad),
            door.first.name(),
            shown(door.clear)
        )
    });
    let before = |b: &Before| {
        let enough = if b.free < b.needs { "too little" } else { "enough" };
        format!("{} {} of {}, {enough}", b.face.name(), shown(b.free), shown(b.needs))
    };
    let all: Vec<String> = plan.rolling.before.iter().map(before).collect();
    let floor = (!all.is_empty())
        .then(|| format!("Floor before its faces for drawers and a person: {}.", all.join("; ")));
    let stands = plan.rolling.in_the_way.iter().map(|w| format!("Its place: {w}."));
    let told: Vec<String> = door.into_iter().chain(floor).chain(stands).collect();
    match told.is_empty() {
        true => String::from("Neither a door nor its place in a room is known."),
        false => told.join(" "),
    }
}
