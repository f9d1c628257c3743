//! Bays, drawers and panels of a face.

use super::board::{ends, fixing, material, span_along};
use super::decode::{Field, Table, Text, fold};
use super::findings::Findings;
use super::keys;
use crate::domain::{Bay, Depth, Drawer, Face, Overhang, Panel, Shelf, Wall};
use crate::units::{Length, Mass, Unit};

/// Name and place, which every opening and panel needs; its table tells of itself by that name from here on.
fn named(table: &mut Table, face: Face, out: &mut Findings) -> Text {
    let named = table.need("name", out).and_then(|f| f.text(out));
    if let Some(name) = &named {
        table.what = format!("{} / {}", face.name(), name.text);
    }
    named.unwrap_or_else(|| Text { text: String::new(), span: table.span.clone() })
}

/// A bay of a face.
pub(super) fn bay(field: Field, face: Face, units: Unit, out: &mut Findings) -> Option<Bay> {
    let mut table = field.table(&keys::BAY, out)?;
    let name = named(&mut table, face, out);
    let depth = depth(&table, units, out);
    let own = !matches!(depth, Depth::Behind { .. });
    let pair = |key, out: &mut Findings| if own { table.need(key, out) } else { None };
    let bay = Bay {
        face,
        name: name.text,
        at: pair("at", out).and_then(|f| f.place(units, out)).unwrap_or_default(),
        opening: pair("opening", out).and_then(|f| f.rectangle(units, out)).unwrap_or_default(),
        limit: table.get("limit", out).and_then(|f| f.mass(units, out)),
        shelves: shelves(&table, &depth, units, out),
        hang: hang(&table, &depth, units, out),
        fixing: fixing(&table, units, out),
        ends: ends(&table, out),
        depth,
        span: name.span,
    };
    Some(bay)
}

fn depth(table: &Table, units: Unit, out: &mut Findings) -> Depth {
    if let Some(behind) = table.get("behind", out) {
        for key in ["at", "opening", "depth"] {
            if let Some(idle) = table.raw(key) {
                out.say(
                    idle.warning(format!("{key} does nothing beside `behind`")).help("remove it"),
                );
            }
        }
        let name = behind.text(out).map_or_else(String::new, |t| t.text);
        let gap = table.get("gap", out).and_then(|f| f.distance(units, out)).unwrap_or_default();
        return Depth::Behind { name, gap };
    }
    if let Some(idle) = table.raw("gap") {
        out.say(idle.warning("gap does nothing without `behind`").help("remove it"));
    }
    let Some(field) = table.need("depth", out) else {
        return Depth::Deep(Length::ZERO);
    };
    match field.word() {
        Some(word) if fold(word) == "through" => Depth::Through,
        _ => Depth::Deep(field.size(units, out).unwrap_or_default()),
    }
}

fn shelves(table: &Table, depth: &Depth, units: Unit, out: &mut Findings) -> Vec<Shelf> {
    let Some(field) = table.get("shelves", out) else {
        return Vec::new();
    };
    field.list(out).into_iter().filter_map(|one| shelf(one, depth, units, out)).collect()
}

fn shelf(field: Field, depth: &Depth, units: Unit, out: &mut Findings) -> Option<Shelf> {
    let table = field.table(&keys::SHELF, out)?;
    let shelf = Shelf {
        height: table.need("height", out).and_then(|f| f.size(units, out)).unwrap_or_default(),
        depth: table.get("depth", out).and_then(|f| f.size(units, out)),
        front: table.get("front", out).and_then(|f| f.distance(units, out)),
        thickness: table.get("thickness", out).and_then(|f| f.size(units, out)),
        material: table.get("material", out).and_then(|f| material(f, out)),
        ends: ends(&table, out),
        span_along: span_along(&table, out),
        limit: table.get("limit", out).and_then(|f| f.mass(units, out)),
        adjust: table.get("adjust", out).and_then(|f| adjust(f, units, out)),
        span: table.span.clone(),
    };
    if *depth == Depth::Through && shelf.depth.is_some() && shelf.front.is_none() {
        let text = "a shelf in a through bay has the full depth: `depth` counts only with `front`";
        let idle = table.raw("depth").unwrap_or(field);
        out.say(idle.warning(text).help("add `front:`, or remove `depth`"));
    }
    Some(shelf)
}

fn adjust(field: Field, units: Unit, out: &mut Findings) -> Option<[Length; 3]> {
    let all =
        field.lengths("lowest, highest and step, such as [100, 300, 32]", out, |f, out| {
            f.size(units, out)
        })?;
    if all[0] > all[1] {
        out.say(
            field
                .fault("the lowest height is over the highest")
                .expected("lowest, highest and step"),
        );
    }
    Some(all)
}

fn hang(
    table: &Table,
    depth: &Depth,
    units: Unit,
    out: &mut Findings,
) -> Vec<(Wall, Option<Mass>)> {
    let Some(field) = table.get("hang", out) else {
        return Vec::new();
    };
    let Some(walls) = field.table(&keys::HANG, out) else {
        return Vec::new();
    };
    let mut all = Vec::new();
    for wall in Wall::ALL {
        let Some(field) = walls.raw(wall.name()) else {
            continue;
        };
        if wall == Wall::Back && *depth == Depth::Through {
            out.say(field.fault("a through bay has no back wall").help("remove `back`"));
        }
        // Empty, it takes hooks without a stated limit.
        all.push((wall, if field.is_empty() { None } else { field.mass(units, out) }));
    }
    all
}

/// A drawer of a face.
pub(super) fn drawer(field: Field, face: Face, units: Unit, out: &mut Findings) -> Option<Drawer> {
    let mut table = field.table(&keys::DRAWER, out)?;
    let name = named(&mut table, face, out);
    Some(Drawer {
        face,
        name: name.text,
        at: table.need("at", out).and_then(|f| f.place(units, out)).unwrap_or_default(),
        opening: table
            .need("opening", out)
            .and_then(|f| f.rectangle(units, out))
            .unwrap_or_default(),
        depth: table.need("depth", out).and_then(|f| f.size(units, out)).unwrap_or_default(),
        limit: table.get("limit", out).and_then(|f| f.mass(units, out)),
        extends: table.get("extends", out).and_then(|f| f.size(units, out)),
        mass: table.get("mass", out).and_then(|f| f.mass(units, out)),
        catch: table.get("catch", out).and_then(|f| f.truth(out)).unwrap_or(false),
        span: name.span,
    })
}

/// A panel of a face.
pub(super) fn panel(field: Field, face: Face, units: Unit, out: &mut Findings) -> Option<Panel> {
    let mut table = field.table(&keys::PANEL, out)?;
    let name = named(&mut table, face, out);
    Some(Panel {
        face,
        name: name.text,
        at: table.need("at", out).and_then(|f| f.place(units, out)).unwrap_or_default(),
        size: table.need("size", out).and_then(|f| f.rectangle(units, out)).unwrap_or_default(),
        room: table.need("room", out).and_then(|f| f.size(units, out)).unwrap_or_default(),
        material: table.get("material", out).and_then(|f| material(f, out)),
        thickness: table.get("thickness", out).and_then(|f| f.size(units, out)),
        fixing: fixing(&table, units, out),
        limit: table.get("limit", out).and_then(|f| f.mass(units, out)),
        overhang: table
            .get("overhang", out)
            .map_or_else(Overhang::default, |f| overhang(f, units, out)),
        span: name.span,
    })
}

/// By side, or one length for below.
fn overhang(field: Field, units: Unit, out: &mut Findings) -> Overhang {
    if !field.is_map() {
        return Overhang {
            down: field.distance(units, out).unwrap_or_default(),
            ..Overhang::default()
        };
    }
    let Some(table) = field.table(&keys::OVERHANG, out) else {
        return Overhang::default();
    };
    let mut side =
        |key| table.get(key, out).and_then(|f| f.distance(units, out)).unwrap_or_default();
    Overhang { down: side("down"), up: side("up"), left: side("left"), right: side("right") }
}
