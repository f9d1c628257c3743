//! layout.yaml.

use super::carcass::units;
use super::decode::Field;
use super::findings::Findings;
use super::keys;
use crate::domain::{Entry, Face, Layout, Pose, ShelfEntry};
use crate::units::Unit;

/// The entries that could be read.
pub(super) fn layout(root: Field, above: Unit, out: &mut Findings) -> Option<Layout> {
    let table = root.table(&keys::LAYOUT, out)?;
    let units = units(&table, above, out);
    let all = table.need("placements", out).map_or_else(Vec::new, |f| f.list(out));
    let entries = all.into_iter().filter_map(|one| entry(one, units, out)).collect();
    let shelves = table.get("shelves", out).map_or_else(Vec::new, |f| f.list(out));
    let shelves = shelves.into_iter().filter_map(|one| shelf(one, units, out)).collect();
    Some(Layout { entries, shelves })
}

fn shelf(field: Field, units: Unit, out: &mut Findings) -> Option<ShelfEntry> {
    let table = field.table(&keys::SHELF_ENTRY, out)?;
    let faces = Face::ALL.map(|face| (face.name(), face));
    let face = table.get("face", out).and_then(|f| f.choice(&faces, out));
    let bay = table.need("bay", out).and_then(|f| f.text(out));
    let surface = table.need("surface", out).and_then(|f| f.text(out));
    let height = table.need("height", out).and_then(|f| f.size(units, out));
    let span = table.span.clone();
    Some(ShelfEntry { face, bay: bay?.text, surface: surface?.text, height: height?, span })
}

fn entry(field: Field, units: Unit, out: &mut Findings) -> Option<Entry> {
    let mut table = field.table(&keys::PLACEMENT, out)?;
    let item = table.need("item", out).and_then(|f| f.text(out));
    if let Some(item) = &item {
        table.what = format!("the placement of {}", item.text);
    }
    let bay = table.need("bay", out).and_then(|f| f.text(out));
    let count = |key, out: &mut Findings| {
        table.get(key, out).and_then(|f| f.count(1, 1000, out)).unwrap_or(1)
    };
    let faces = Face::ALL.map(|face| (face.name(), face));
    let poses = Pose::ALL.map(|pose| (pose.name(), pose));
    let entry = Entry {
        item: String::new(),
        copy: count("copy", out),
        copies: count("copies", out),
        face: table.get("face", out).and_then(|f| f.choice(&faces, out)),
        bay: String::new(),
        surface: table.get("surface", out).and_then(|f| f.text(out)).map(|t| t.text),
        pose: table.get("pose", out).and_then(|f| f.choice(&poses, out)),
        turned: table.get("turned", out).and_then(|f| f.truth(out)),
        at: table.get("at", out).and_then(|f| f.place(units, out)),
        span: table.span.clone(),
    };
    let (item, bay) = item.zip(bay)?;
    Some(Entry { item: item.text, bay: bay.text, span: item.span, ..entry })
}
