//! Why a thing is where it is, in plain words.

use super::Look;
use super::figure::{copies, count, seconds};
use super::page::{Ink, Page};
use super::table::{Set, Table};
use crate::tasks::offer::{Named, Spot};
use crate::tasks::why::{Differ, Slot, Why, WhyLot};
use crate::units::{Price, show_uses};

/// The whole text, ending with a line break.
pub fn why(why: &Why, look: &Look) -> String {
    let mut page = Page::new(*look);
    for lot in &why.lots {
        place(&mut page, why, lot);
        slots(&mut page, lot);
        changes(&mut page, lot);
    }
    page.finish()
}

/// A copy, pile or row by name.
pub fn named(named: &Named) -> String {
    copies(&named.item, named.copy, named.copies, named.of)
}

/// Seconds with their sign: `+1.2`, `-0.4`.
pub fn signed(price: Price) -> String {
    match seconds(price).as_str() {
        "0.0" | "-0.0" => "0.0".to_owned(),
        figure if price > Price::ZERO => format!("+{figure}"),
        figure => figure.to_owned(),
    }
}

fn place(page: &mut Page, why: &Why, lot: &WhyLot) {
    let name = named(&lot.named);
    let whose = if lot.holds_it { format!("{} is in {name}", why.asked) } else { name };
    match &lot.at {
        Some(spot) => page.heading(Ink::Bold, &format!("{whose}: {}", kept(spot))),
        None => page.heading(Ink::Mind, &format!("{whose}: off the cart")),
    }
    let (cost, uses) = (seconds(lot.price), show_uses(lot.uses));
    if lot.at.is_some() {
        page.paragraph(&format!("Used {uses}; its place costs {cost} s a week:"));
    } else {
        page.paragraph(&format!("Used {uses}; fetching it from elsewhere costs {cost} s a week."));
    }
    for term in &lot.terms {
        let text = format!("{} s a week: {}", seconds(term.price), term.told);
        page.named(Ink::Bold, term.term, &text);
    }
    if !lot.ties.is_empty() {
        page.paragraph("It has a part in what these cost in all:");
    }
    for tie in &lot.ties {
        page.named(Ink::Bold, tie.term, &format!("{} s a week: {}", seconds(tie.price), tie.told));
    }
    if let Some(off) = &lot.off {
        page.paragraph(&format!("Why it has no place: {off}."));
    }
    for (k, broken) in lot.broken.iter().enumerate() {
        // A source is told once.
        let known = lot.broken[..k].iter().any(|b| b.source == broken.source);
        let source = if known { String::new() } else { format!(" ({})", broken.source) };
        page.named(Ink::Alarm, broken.rule, &format!("{}{source}", broken.told));
    }
    if lot.fixed {
        page.paragraph("It is fixed there: no other slot is looked for.");
    }
}

/// How and where, in words.
fn kept(spot: &Spot) -> String {
    format!("{} ({}{})", spot.name(), spot.pose.name(), if spot.turned { ", turned" } else { "" })
}

fn slots(page: &mut Page, lot: &WhyLot) {
    if lot.fixed {
        return;
    }
    page.heading(Ink::Bold, "The best other slots");
    if lot.slots.is_empty() {
        page.paragraph("There is none that breaks no rule, with up to two things making room.");
    } else {
        let mut table = Table::new(&[
            ("where", Set::Words),
            ("place, s a week", Set::Figure),
            ("by itself", Set::Words),
            ("all in all", Set::Words),
            ("who makes room", Set::Words),
        ]);
        for slot in &lot.slots {
            table.row(vec![
                kept(&slot.spot),
                seconds(slot.price),
                told(&slot.own),
                if slot.all == slot.own { String::new() } else { told(&slot.all) },
                room_made(slot),
            ]);
        }
        page.table(&table);
        if lot.slots.iter().any(|s| s.all != s.own) {
            page.paragraph("By itself: without what those who make room gain by moving.");
        }
    }
    if let Some(alone) = &lot.alone {
        page.paragraph(&format!("{}.", alone.told));
    }
}

/// The difference of a score in its order: rules, then what is off the cart, then seconds.
fn told(differ: &Differ) -> String {
    let mut told = Vec::new();
    if differ.mends != 0 {
        let rules = count(differ.mends.unsigned_abs() as usize, "rule");
        told.push(format!("{} {rules}", if differ.mends > 0 { "mends" } else { "breaks" }));
    }
    if differ.off_cart != Price::ZERO {
        told.push(format!("{} s off the cart", signed(differ.off_cart)));
    }
    told.push(format!("{} s", signed(differ.cost)));
    told.join(", ")
}

/// Who makes room, and where each goes.
pub fn room_made(slot: &Slot) -> String {
    if slot.displaced.is_empty() {
        return "nobody: it is free".to_owned();
    }
    let one = |(who, to): &(Named, Option<Spot>)| match to {
        Some(spot) => format!("{} to {}", named(who), spot.name()),
        None => format!("{} leaves the cart", named(who)),
    };
    slot.displaced.iter().map(one).collect::<Vec<_>>().join("; ")
}

fn changes(page: &mut Page, lot: &WhyLot) {
    if lot.changes.is_empty() {
        return;
    }
    page.heading(Ink::Bold, "What would change the answer");
    for change in &lot.changes {
        let text = match &change.slot {
            Some(slot) if change.same => {
                format!("{} is the best slot then too ({})", slot.spot.name(), told(&slot.own))
            }
            Some(slot) => format!(
                "{} would then be better ({}; making room: {})",
                kept(&slot.spot),
                told(&slot.own),
                room_made(slot)
            ),
            None => "no other slot would be better than its own".to_owned(),
        };
        page.named(Ink::Bold, &change.suppose, &text);
    }
}
