//! What fitting a cart out takes: what is wanting, what to build, the mounting list, the shopping list, the order, what to
//! mind.

use super::Look;
use super::page::{Ink, Page};
use super::table::{Set, Table};
use crate::report::fitting::lists::{count, deep, screws, tape, told, used};
use crate::tasks::fit_out::{FitOut, Mount};
use crate::units::show_length_in;

/// The whole text, ending with a line break.
pub fn fit_out(fit: &FitOut, look: &Look) -> String {
    let mut page = Page::new(*look);
    wanting(&mut page, fit);
    holders(&mut page, fit);
    mounting(&mut page, fit);
    shopping(&mut page, fit);
    sequence(&mut page, fit);
    cautions(&mut page, fit);
    notes(&mut page, fit);
    page.finish()
}

fn wanting(page: &mut Page, fit: &FitOut) {
    let placed = fit.plan.placements.len();
    let text = format!("Fitting out {}: {} for {placed} places", fit.plan.name, things(fit));
    page.heading(Ink::Bold, &text);
    for want in &fit.wants {
        page.named(Ink::Alarm, "wanting", want);
    }
    for finding in &fit.findings {
        page.named(Ink::Alarm, "layout", finding);
    }
}

fn things(fit: &FitOut) -> String {
    let holes: usize = fit.mounts.iter().map(|m| m.holes.len()).sum();
    format!("{} holders, {holes} holes in {} boards", fit.holders.len(), fit.mounts.len())
}

fn holders(page: &mut Page, fit: &FitOut) {
    page.heading(Ink::Bold, "What to build");
    let mut table = Table::new(&[
        ("for", Set::Words),
        ("kind", Set::Short),
        ("what", Set::Words),
        ("screws", Set::Words),
        ("used", Set::Figure),
    ]);
    for holder in &fit.holders {
        table.row(vec![
            holder.of.clone(),
            holder.kind.name().to_owned(),
            holder.told.clone(),
            screws(holder, fit.units),
            holder.holding.as_ref().map_or(String::new(), |h| used(h.share)),
        ]);
    }
    page.table(&table);
    page.paragraph(&format!(
        "Used: the share of what may be counted on that the most loaded screw uses ({}).",
        fit.source
    ));
}

fn mounting(page: &mut Page, fit: &FitOut) {
    if fit.mounts.is_empty() {
        return;
    }
    page.heading(Ink::Bold, &format!("Mounting list, in {}", tape(fit.units).name()));
    page.paragraph(
        "Each hole from the nearer side and the nearer of the upper and lower edges of its board, as you stand before it.",
    );
    let mut table = Table::new(&[
        ("hole", Set::Figure),
        ("from", Set::Short),
        ("", Set::Figure),
        ("from", Set::Short),
        ("", Set::Figure),
        ("pilot", Set::Short),
        ("deep", Set::Figure),
        ("screw", Set::Short),
        ("for", Set::Words),
    ]);
    for mount in &fit.mounts {
        table.group(told(mount, fit.units));
        rows(&mut table, mount, fit);
    }
    page.table(&table);
}

fn rows(table: &mut Table, mount: &Mount, fit: &FitOut) {
    let unit = tape(fit.units);
    for hole in &mount.holes {
        let far = |k: usize| show_length_in(hole.from[k].1, unit);
        table.row(vec![
            hole.number.to_string(),
            hole.from[0].0.to_owned(),
            far(0),
            hole.from[1].0.to_owned(),
            far(1),
            hole.screw.drill(unit),
            deep(hole, fit.units),
            hole.screw.told(unit),
            fit.holders[hole.holder].of.clone(),
        ]);
    }
}

fn shopping(page: &mut Page, fit: &FitOut) {
    page.heading(Ink::Bold, "Shopping list");
    let mut table =
        Table::new(&[("count", Set::Figure), ("what", Set::Words), ("for", Set::Words)]);
    for buy in &fit.shopping {
        table.row(vec![count(buy), buy.what.clone(), buy.used.join(", ")]);
    }
    page.table(&table);
}

fn sequence(page: &mut Page, fit: &FitOut) {
    page.heading(Ink::Bold, "In this order");
    for (k, stage) in fit.stages.iter().enumerate() {
        page.point(&format!("{}.", k + 1), &format!("{} Because {}.", stage.text, stage.why));
    }
}

fn cautions(page: &mut Page, fit: &FitOut) {
    page.heading(Ink::Bold, "Mind");
    for caution in &fit.cautions {
        let mark = page.either("•", "*");
        page.point(mark, &format!("{} ({})", caution.text, caution.source));
    }
}

fn notes(page: &mut Page, fit: &FitOut) {
    if !fit.assumed.is_empty() {
        page.heading(Ink::Bold, "Assumed");
    }
    for text in &fit.assumed {
        let mark = page.either("•", "*");
        page.point(mark, &format!("{text}."));
    }
}
