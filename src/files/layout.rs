//! layout.yaml.

use super::carcass::{bays, units};
use super::decode::{Field, Text, fold, unknown_word};
use super::findings::Findings;
use super::keys;
use crate::domain::{Carcass, Entry, Face, Item, Layout, Pose, Wall};
use crate::finding::{Finding, Severity};
use crate::units::Unit;

/// The entries that could be read.
pub(super) fn layout(root: Field, above: Unit, out: &mut Findings) -> Option<Layout> {
    let table = root.table(&keys::LAYOUT, out)?;
    let units = units(&table, above, out);
    let all = table
        .need("placements", out)
        .map_or_else(Vec::new, |f| f.list(out));
    Some(Layout {
        entries: all
            .into_iter()
            .filter_map(|one| entry(one, units, out))
            .collect(),
    })
}

fn entry(field: Field, units: Unit, out: &mut Findings) -> Option<Entry> {
    let mut table = field.table(&keys::PLACEMENT, out)?;
    let item = table.need("item", out).and_then(|f| f.text(out));
    if let Some(item) = &item {
        table.what = format!("the placement of {}", item.text);
    }
    let bay = table.need("bay", out).and_then(|f| f.text(out));
    let count = |key, out: &mut Findings| {
        table
            .get(key, out)
            .and_then(|f| f.count(1, 1000, out))
            .unwrap_or(1)
    };
    let faces = Face::ALL.map(|face| (face.name(), face));
    let poses = Pose::ALL.map(|pose| (pose.name(), pose));
    let entry = Entry {
        item: String::new(),
        copy: count("copy", out),
        copies: count("copies", out),
        face: table.get("face", out).and_then(|f| f.choice(&faces, out)),
        bay: String::new(),
        surface: table
            .get("surface", out)
            .and_then(|f| f.text(out))
            .map(|t| t.text),
        pose: table.get("pose", out).and_then(|f| f.choice(&poses, out)),
        turned: table.get("turned", out).and_then(|f| f.truth(out)),
        at: table.get("at", out).and_then(|f| f.place(units, out)),
        span: table.span.clone(),
    };
    let (item, bay) = item.zip(bay)?;
    Some(Entry {
        item: item.text,
        bay: bay.text,
        span: item.span,
        ..entry
    })
}

/// Warns of entries that name what is not there; what follows from that is for the audit to say.
pub(super) fn known_places(layout: &Layout, cart: &Carcass, items: &[Item], out: &mut Findings) {
    for entry in &layout.entries {
        if !items.iter().any(|i| i.name == entry.item) {
            warn(
                entry,
                "item",
                &entry.item,
                items.iter().map(|i| i.name.as_str()),
                out,
            );
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
            let names: Vec<&str> = bays(cart)
                .filter(|(face, _, _)| there(*face))
                .map(|(_, name, _)| name)
                .collect();
            let what = entry
                .face
                .map_or_else(|| "bay".to_owned(), |f| format!("bay of the {}", f.name()));
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
    let text = Text {
        text: word.to_owned(),
        span: entry.span.clone(),
    };
    let finding = Finding {
        severity: Severity::Warning,
        ..unknown_word(what, &text, names)
    };
    out.say(finding.field("placements"));
}
