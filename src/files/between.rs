//! Faults between files: names in one that stand for nothing in the other.

use super::carcass::bays;
use super::decode::{Text, fold, unknown_word};
use super::findings::Findings;
use crate::domain::{Carcass, Entry, Face, Home, Item, Layout, Shop, Wall};
use crate::finding::{Finding, Severity};
use std::collections::{BTreeMap, BTreeSet};

/// Faults of two items with one name.
pub(super) fn named_once(items: &[Item], out: &mut Findings) {
    let mut known: BTreeMap<&str, &Item> = BTreeMap::new();
    for item in items.iter().filter(|i| !i.name.is_empty()) {
        if let Some(first) = known.get(item.name.as_str()) {
            let fault = Finding::fault(format!("two items are named {}", item.name));
            let fault = fault.at(&item.span).at(&first.span).field("items.name");
            let help = "rename one, or say `count: 2` where they are alike";
            out.say(fault.found(item.name.clone()).help(help));
        } else {
            known.insert(&item.name, item);
        }
    }
}

/// Faults of companions that are none of `all`.
pub(super) fn companions_exist(items: &[Item], all: &[Item], out: &mut Findings) {
    let known: BTreeSet<&str> = all.iter().map(|i| i.name.as_str()).collect();
    for item in items {
        for (name, span) in item.with.iter().filter(|(name, _)| !known.contains(name.as_str())) {
            let fault = Finding::fault(format!("{} has a companion that is not there", item.name));
            let fault = fault.at(span).field("items.with").found(name.clone());
            out.say(fault.near(name, known.iter().copied()));
        }
    }
}

/// Faults of orders and wishes that name no place of this cart.
pub(super) fn sent_somewhere(items: &[Item], cart: &Carcass, out: &mut Findings) {
    let bays: Vec<String> = bays(cart).map(|(_, name, _)| fold(name)).collect();
    for item in items {
        for (field, home) in homes(item) {
            check_home(item, field, home, &bays, out);
        }
    }
}

fn homes(item: &Item) -> impl Iterator<Item = (&'static str, &Home)> {
    let place = item.place.iter().map(|home| ("items.place", home));
    place.chain(item.prefer.iter().map(|home| ("items.prefer", home)))
}

/// A fault where an order or wish names no face, bay or surface of this cart.
fn check_home(item: &Item, field: &str, home: &Home, bays: &[String], out: &mut Findings) {
    let wrong = home.parts.iter().enumerate().find(|(k, part)| {
        let face = *k == 0 && Face::named(part).is_some();
        let surface = *k > 0 && is_surface(part);
        !(face || surface || *part == "bench" || bays.contains(part))
    });
    if let Some((_, part)) = wrong {
        let fault =
            Finding::fault(format!("{} is sent to `{part}`, which this cart has not", item.name));
        let names = Face::ALL.iter().map(|f| f.name()).chain(bays.iter().map(String::as_str));
        let fault = fault.at(&home.span).field(field).found(part.clone()).near(part, names);
        out.say(fault.expected("a face, a bay, or face/bay"));
    }
}

fn is_surface(name: &str) -> bool {
    let shelf = name.strip_prefix("shelf ").is_some_and(|n| n.parse::<u32>().is_ok());
    shelf
        || ["floor", "drawer", "panel"].contains(&name)
        || Wall::ALL.iter().any(|w| w.name() == name)
}

/// Whether every fixed item has an entry that says where it stays.
pub(super) fn fixed_somewhere(items: &[Item], layout: Option<&Layout>, out: &mut Findings) -> bool {
    let placed =
        |item: &Item| layout.is_some_and(|l| l.entries.iter().any(|e| e.item == item.name));
    let lost: Vec<&Item> = items.iter().filter(|i| i.fixed && !placed(i)).collect();
    for item in &lost {
        let fault =
            Finding::fault(format!("{} is fixed, but layout.yaml does not say where", item.name))
                .at(&item.span);
        out.say(
            fault.field("items.fixed").help("add its placement to layout.yaml, or remove `fixed`"),
        );
    }
    lost.is_empty()
}

/// Faults of what the shop says about items: jobs and families that do not exist.
pub(super) fn known_items(shop: &Shop, items: &[Item], out: &mut Findings) {
    let named = |name: &str| items.iter().any(|i| i.name == name);
    for job in &shop.jobs {
        for (name, span) in job.items.iter().filter(|(name, _)| !named(name)) {
            let fault =
                Finding::fault(format!("the job {} asks for an item that is not there", job.name));
            let fault = fault.at(span).field("jobs.items").found(name.clone());
            out.say(fault.near(name, items.iter().map(|i| i.name.as_str())));
        }
    }
    let families = || items.iter().filter_map(|i| i.family.as_deref());
    for (name, _, span) in &shop.reserve.families {
        if !families().any(|f| f == name) {
            let fault = Finding::fault(format!("no item is of the family {name}"));
            out.say(
                fault.at(span).field("reserve.families").found(name.clone()).near(name, families()),
            );
        }
    }
}

/// Warns of entries that name what is not there; what follows from that is for the audit to say.
pub(super) fn known_places(layout: &Layout, cart: &Carcass, items: &[Item], out: &mut Findings) {
    for entry in &layout.entries {
        if !items.iter().any(|i| i.name == entry.item) {
            warn(entry, "item", &entry.item, items.iter().map(|i| i.name.as_str()), out);
        }
        let on_top = fold(&entry.bay) == "bench";
        if on_top {
            continue;
        }
        let there = |face: Face| entry.face.is_none_or(|f| f == face);
        let known = bays(cart)
            .filter(|(face, _, _)| there(*face))
            .any(|(_, name, _)| fold(name) == fold(&entry.bay));
        if !known {
            let names: Vec<&str> =
                bays(cart).filter(|(face, _, _)| there(*face)).map(|(_, name, _)| name).collect();
            let what =
                entry.face.map_or_else(|| "bay".to_owned(), |f| format!("bay of the {}", f.name()));
            warn(entry, &what, &entry.bay, names.into_iter(), out);
        } else if let Some(surface) = &entry.surface {
            let names = surfaces(cart, entry);
            if !names.contains(&fold(surface)) {
                let what = format!("surface of {}", entry.bay);
                warn(entry, &what, surface, names.iter().map(String::as_str), out);
            }
        }
    }
}

/// Names of the surfaces that a bay, drawer or panel has by the carcass file.
fn surfaces(cart: &Carcass, entry: &Entry) -> Vec<String> {
    let here = |face: Face, name: &str| {
        entry.face.is_none_or(|f| f == face) && fold(name) == fold(&entry.bay)
    };
    let mut names = Vec::new();
    for bay in cart.bays.iter().filter(|b| here(b.face, &b.name)) {
        names.push("floor".to_owned());
        names.extend((1..=bay.shelves.len()).map(|k| format!("shelf {k}")));
        names.extend(
            Wall::ALL
                .iter()
                .filter(|w| bay.hang.iter().any(|(h, _)| h == *w))
                .map(|w| w.name().to_owned()),
        );
    }
    if cart.drawers.iter().any(|d| here(d.face, &d.name)) {
        names.push("drawer".to_owned());
    }
    if cart.panels.iter().any(|p| here(p.face, &p.name)) {
        names.push("panel".to_owned());
    }
    names
}

fn warn<'w>(
    entry: &Entry,
    what: &str,
    word: &str,
    names: impl Iterator<Item = &'w str> + Clone,
    out: &mut Findings,
) {
    let text = Text { text: word.to_owned(), span: entry.span.clone() };
    let finding = Finding { severity: Severity::Warning, ..unknown_word(what, &text, names) };
    out.say(finding.field("placements"));
}
