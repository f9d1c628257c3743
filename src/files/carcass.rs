//! carcass.yaml.

use super::decode::{Field, Table, Text, fold, unknown_word};
use super::findings::Findings;
use super::keys;
use crate::domain::{
    Bay, Bench, Board, Carcass, Casters, Depth, Drawer, Face, Overhang, Panel, Shelf, Wall, Zone,
};
use crate::finding::{Finding, Span};
use crate::units::{Length, Share, Unit};

/// The cart; where a fault was noted, parts of it are stand-ins.
pub(super) fn carcass(root: Field, out: &mut Findings) -> Option<Carcass> {
    let table = root.table(&keys::CARCASS, out)?;
    let units = units(&table, Unit::Mm, out);
    let mut cart = Carcass {
        name: table
            .get("name", out)
            .and_then(|f| f.text(out))
            .map_or_else(|| "cart".into(), |t| t.text),
        units,
        width: Length::ZERO,
        depth: Length::ZERO,
        height: Length::ZERO,
        mass: table.get("mass", out).and_then(|f| f.mass(units, out)),
        board: table.get("board", out).and_then(|f| board(f, units, out)),
        casters: casters(&table, units, out),
        bays: Vec::new(),
        drawers: Vec::new(),
        panels: Vec::new(),
        bench: Bench {
            keep_clear: Share::ALL,
            zones: Vec::new(),
            limit: None,
            span: table.span.clone(),
        },
        span: table.span.clone(),
    };
    if let Some(size) = table.need("size", out) {
        outside(size, &mut cart, out);
    }
    if let Some(faces) = table.need("faces", out) {
        read_faces(faces, &mut cart, out);
    }
    named_once(&cart, out);
    behind_something(&cart, out);
    Some(cart)
}

/// The unit of bare numbers in a file.
pub(super) fn units(table: &Table, above: Unit, out: &mut Findings) -> Unit {
    table
        .get("units", out)
        .and_then(|f| f.choice(&Unit::ALL, out))
        .unwrap_or(above)
}

fn outside(field: Field, cart: &mut Carcass, out: &mut Findings) {
    let Some(table) = field.table(&keys::OUTSIDE, out) else {
        return;
    };
    let mut side = |key| {
        table
            .need(key, out)
            .and_then(|f| f.size(cart.units, out))
            .unwrap_or_default()
    };
    (cart.width, cart.depth, cart.height) = (side("width"), side("depth"), side("height"));
    cart.span = table.span.clone();
}

fn board(field: Field, units: Unit, out: &mut Findings) -> Option<Board> {
    let table = field.table(&keys::BOARD, out)?;
    let material = table.get("material", out).and_then(|f| f.text(out));
    let thickness = table
        .need("thickness", out)
        .and_then(|f| f.size(units, out))?;
    Some(Board {
        material: material.map_or_else(String::new, |t| fold(&t.text)),
        thickness,
    })
}

fn casters(table: &Table, units: Unit, out: &mut Findings) -> Casters {
    let mut casters = Casters {
        height: Length::ZERO,
        rating: None,
        trail: Length::ZERO,
        locks: 0,
        at: Vec::new(),
        span: table.span.clone(),
    };
    let Some(field) = table.get("casters", out) else {
        let warning = Finding::warning(
            "the carcass has no casters: their loads and tipping cannot be judged",
        );
        out.say(
            warning
                .at(table.span)
                .field("casters")
                .help("add `casters: {height, rating, at}`"),
        );
        return casters;
    };
    let Some(table) = field.table(&keys::CASTERS, out) else {
        return casters;
    };
    casters.span = table.span.clone();
    for (key, lost) in [
        ("height", "the height of the floor board"),
        ("rating", "whether they carry the load"),
        ("at", "loads and tipping"),
    ] {
        if !table.has(key) {
            let warning = Finding::warning(format!(
                "the casters have no {key}: {lost} cannot be judged"
            ));
            out.say(
                warning
                    .at(table.span)
                    .field(format!("casters.{key}"))
                    .help(format!("add `{key}:`")),
            );
        }
    }
    casters.height = table
        .get("height", out)
        .and_then(|f| f.distance(units, out))
        .unwrap_or_default();
    casters.rating = table.get("rating", out).and_then(|f| f.mass(units, out));
    casters.trail = table
        .get("trail", out)
        .and_then(|f| f.distance(units, out))
        .unwrap_or_default();
    casters.locks = table
        .get("locks", out)
        .and_then(|f| f.count(0, 100, out))
        .unwrap_or(0);
    if let Some(at) = table.get("at", out) {
        let all = at.list(out);
        if at.is_list() && all.len() < 3 {
            let fault = at
                .fault(format!("a cart cannot stand on {} casters", all.len()))
                .found(all.len().to_string());
            out.say(fault.expected("at least 3 places"));
        }
        casters.at = all.iter().filter_map(|f| f.place(units, out)).collect();
    }
    casters
}

fn read_faces(field: Field, cart: &mut Carcass, out: &mut Findings) {
    let Some(table) = field.table(&keys::FACES, out) else {
        return;
    };
    for face in Face::ALL {
        let Some(field) = table.get(face.name(), out) else {
            continue;
        };
        let top = face == Face::Top;
        let Some(side) = field.table(if top { &keys::TOP } else { &keys::FACE }, out) else {
            continue;
        };
        let all = |key: &'static str, out: &mut Findings| {
            side.get(key, out).map_or_else(Vec::new, |f| f.list(out))
        };
        for one in all("bays", out) {
            cart.bays.extend(bay(one, face, cart.units, out));
        }
        for one in all("drawers", out) {
            cart.drawers.extend(drawer(one, face, cart.units, out));
        }
        for one in all("panels", out) {
            cart.panels.extend(panel(one, face, cart.units, out));
        }
        if top {
            cart.bench = bench(&side, cart.units, out);
        }
    }
}

/// Name and place, which every opening and panel needs; its table tells of itself by that name from here on.
fn named(table: &mut Table, face: Face, out: &mut Findings) -> Text {
    let named = table.need("name", out).and_then(|f| f.text(out));
    if let Some(name) = &named {
        table.what = format!("{} / {}", face.name(), name.text);
    }
    named.unwrap_or_else(|| Text {
        text: String::new(),
        span: table.span.clone(),
    })
}

fn bay(field: Field, face: Face, units: Unit, out: &mut Findings) -> Option<Bay> {
    let mut table = field.table(&keys::BAY, out)?;
    let name = named(&mut table, face, out);
    let depth = depth(&table, units, out);
    let own = !matches!(depth, Depth::Behind { .. });
    let pair = |key, out: &mut Findings| if own { table.need(key, out) } else { None };
    let bay = Bay {
        face,
        name: name.text,
        at: pair("at", out)
            .and_then(|f| f.place(units, out))
            .unwrap_or_default(),
        opening: pair("opening", out)
            .and_then(|f| f.rectangle(units, out))
            .unwrap_or_default(),
        limit: table.get("limit", out).and_then(|f| f.mass(units, out)),
        shelves: shelves(&table, &depth, units, out),
        hang: hang(&table, &depth, units, out),
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
                    idle.warning(format!("{key} does nothing beside `behind`"))
                        .help("remove it"),
                );
            }
        }
        let name = behind.text(out).map_or_else(String::new, |t| t.text);
        let gap = table
            .get("gap", out)
            .and_then(|f| f.distance(units, out))
            .unwrap_or_default();
        return Depth::Behind { name, gap };
    }
    if let Some(idle) = table.raw("gap") {
        out.say(
            idle.warning("gap does nothing without `behind`")
                .help("remove it"),
        );
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
    field
        .list(out)
        .into_iter()
        .filter_map(|one| shelf(one, depth, units, out))
        .collect()
}

fn shelf(field: Field, depth: &Depth, units: Unit, out: &mut Findings) -> Option<Shelf> {
    let table = field.table(&keys::SHELF, out)?;
    let shelf = Shelf {
        height: table
            .need("height", out)
            .and_then(|f| f.size(units, out))
            .unwrap_or_default(),
        depth: table.get("depth", out).and_then(|f| f.size(units, out)),
        front: table.get("front", out).and_then(|f| f.distance(units, out)),
        thickness: table.get("thickness", out).and_then(|f| f.size(units, out)),
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
    let all = field.lengths(
        "lowest, highest and step, such as [100, 300, 32]",
        out,
        |f, out| f.size(units, out),
    )?;
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
) -> Vec<(Wall, Option<crate::units::Mass>)> {
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
            out.say(
                field
                    .fault("a through bay has no back wall")
                    .help("remove `back`"),
            );
        }
        // Empty, it takes hooks without a stated limit.
        all.push((
            wall,
            if field.is_empty() {
                None
            } else {
                field.mass(units, out)
            },
        ));
    }
    all
}

fn drawer(field: Field, face: Face, units: Unit, out: &mut Findings) -> Option<Drawer> {
    let mut table = field.table(&keys::DRAWER, out)?;
    let name = named(&mut table, face, out);
    Some(Drawer {
        face,
        name: name.text,
        at: table
            .need("at", out)
            .and_then(|f| f.place(units, out))
            .unwrap_or_default(),
        opening: table
            .need("opening", out)
            .and_then(|f| f.rectangle(units, out))
            .unwrap_or_default(),
        depth: table
            .need("depth", out)
            .and_then(|f| f.size(units, out))
            .unwrap_or_default(),
        limit: table.get("limit", out).and_then(|f| f.mass(units, out)),
        extends: table.get("extends", out).and_then(|f| f.size(units, out)),
        mass: table.get("mass", out).and_then(|f| f.mass(units, out)),
        span: name.span,
    })
}

fn panel(field: Field, face: Face, units: Unit, out: &mut Findings) -> Option<Panel> {
    let mut table = field.table(&keys::PANEL, out)?;
    let name = named(&mut table, face, out);
    Some(Panel {
        face,
        name: name.text,
        at: table
            .need("at", out)
            .and_then(|f| f.place(units, out))
            .unwrap_or_default(),
        size: table
            .need("size", out)
            .and_then(|f| f.rectangle(units, out))
            .unwrap_or_default(),
        room: table
            .need("room", out)
            .and_then(|f| f.size(units, out))
            .unwrap_or_default(),
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
    let mut side = |key| {
        table
            .get(key, out)
            .and_then(|f| f.distance(units, out))
            .unwrap_or_default()
    };
    Overhang {
        down: side("down"),
        up: side("up"),
        left: side("left"),
        right: side("right"),
    }
}

fn bench(table: &Table, units: Unit, out: &mut Findings) -> Bench {
    let zones = table
        .get("zones", out)
        .map_or_else(Vec::new, |f| f.list(out));
    Bench {
        keep_clear: table
            .get("keep_clear", out)
            .and_then(|f| f.share(out))
            .unwrap_or(Share::ALL),
        zones: zones
            .into_iter()
            .filter_map(|f| zone(f, units, out))
            .collect(),
        limit: table.get("limit", out).and_then(|f| f.mass(units, out)),
        span: table.span.clone(),
    }
}

fn zone(field: Field, units: Unit, out: &mut Findings) -> Option<Zone> {
    let table = field.table(&keys::ZONE, out)?;
    Some(Zone {
        at: table.need("at", out)?.place(units, out)?,
        size: table.need("size", out)?.rectangle(units, out)?,
        span: table.span.clone(),
    })
}

/// Face, name and place of everything that may be named as a bay.
pub(super) fn bays(cart: &Carcass) -> impl Iterator<Item = (Face, &str, &Span)> {
    let bays = cart.bays.iter().map(|b| (b.face, b.name.as_str(), &b.span));
    let drawers = cart
        .drawers
        .iter()
        .map(|d| (d.face, d.name.as_str(), &d.span));
    bays.chain(drawers).chain(
        cart.panels
            .iter()
            .map(|p| (p.face, p.name.as_str(), &p.span)),
    )
}

fn named_once(cart: &Carcass, out: &mut Findings) {
    let all: Vec<_> = bays(cart).filter(|(_, name, _)| !name.is_empty()).collect();
    for (k, (face, name, span)) in all.iter().enumerate() {
        if let Some((_, _, first)) = all[..k]
            .iter()
            .find(|(f, n, _)| f == face && fold(n) == fold(name))
        {
            let fault = Finding::fault(format!(
                "two bays, drawers or panels of the {} are named {name}",
                face.name()
            ));
            out.say(
                fault
                    .at(span)
                    .at(first)
                    .field(format!("faces.{}", face.name()))
                    .found(*name)
                    .help("rename one of the two"),
            );
        }
    }
}

fn behind_something(cart: &Carcass, out: &mut Findings) {
    for bay in &cart.bays {
        let Depth::Behind { name, .. } = &bay.depth else {
            continue;
        };
        let opposite = bay.face.opposite();
        let others = cart
            .bays
            .iter()
            .filter(|b| b.face == opposite && matches!(b.depth, Depth::Deep(_)));
        if bay.face == Face::Top || !others.clone().any(|b| fold(&b.name) == fold(name)) {
            let text = Text {
                text: name.clone(),
                span: bay.span.clone(),
            };
            let what = format!(
                "bay with a depth of its own on the {}, named",
                opposite.name()
            );
            let field = format!("faces.{}.bays.behind", bay.face.name());
            out.say(unknown_word(&what, &text, others.map(|b| b.name.as_str())).field(field));
        }
    }
}
