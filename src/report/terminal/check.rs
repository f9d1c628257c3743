//! What was understood of a workspace, before anything is placed.

use super::figure::{count, mass};
use super::page::{Ink, Page};
use super::table::{Set, Table};
use super::{Look, cart};
use crate::finding::Finding;
use crate::tasks::check::Understood;
use crate::units::show_uses;

/// The whole text, ending with a line break.
pub fn check(understood: &Understood, findings: &[Finding], look: &Look) -> String {
    let mut page = Page::new(*look);
    counts(&mut page, understood);
    room(&mut page, understood);
    misfits(&mut page, understood);
    questions(&mut page, understood);
    cart::cautions(&mut page, &understood.cautions);
    cart::notes(&mut page, findings);
    page.finish()
}

fn counts(page: &mut Page, u: &Understood) {
    page.heading(Ink::Bold, &u.name);
    page.paragraph(&format!(
        "{} in {}, {} wanted: {}, {:.1} litres, {}.",
        count(u.items, "item"),
        if u.copies == 1 { "1 copy".to_owned() } else { format!("{} copies", u.copies) },
        count(u.lots, "place"),
        mass(u.mass, u.units),
        u.volume,
        show_uses(u.uses)
    ));
    page.paragraph(&format!(
        "{} bays, drawers and panels with {} surfaces; the empty cart weighs {}.",
        u.spaces,
        u.surfaces,
        mass(u.carcass, u.units)
    ));
    for assumed in &u.assumed {
        page.point("assumed:", assumed);
    }
}

fn room(page: &mut Page, u: &Understood) {
    page.heading(Ink::Bold, "Room by reach");
    let mut table =
        Table::new(&[("reach", Set::Short), ("litres", Set::Figure), ("wall, dm²", Set::Figure)]);
    for row in u.room.iter().filter(|r| r.litres > 0.0 || r.wall > 0.0) {
        table.row(vec![
            row.zone.name().to_owned(),
            format!("{:.1}", row.litres),
            format!("{:.1}", row.wall),
        ]);
    }
    page.table(&table);
}

fn misfits(page: &mut Page, u: &Understood) {
    if u.never.is_empty() && u.at_least_out.is_empty() {
        page.gap();
        page.paragraph(
            "Everything fits somewhere on the empty cart; whether all fits at once, `plan` tells.",
        );
        return;
    }
    page.heading(Ink::Alarm, "What cannot fit");
    for (name, why) in &u.never {
        page.named(Ink::Alarm, name, why);
    }
    for why in &u.at_least_out {
        page.point(page.either("•", "*"), why);
    }
}

fn questions(page: &mut Page, u: &Understood) {
    if !u.questions.is_empty() {
        page.heading(Ink::Mind, "Hazards that nobody has said");
    }
    for question in &u.questions {
        page.named(Ink::Bold, &question.item, &question.text());
    }
}
