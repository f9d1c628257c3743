//! carcass.yaml.

use super::bay::{bay, drawer, panel};
use super::board::material;
use super::decode::{Field, Table, Text, fold, unknown_word};
use super::findings::Findings;
use super::keys;
use crate::domain::{Bench, Board, Carcass, Casters, Depth, Face, Zone};
use crate::finding::{Finding, Span};
use crate::units::{Length, Mass, Share, Unit};

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
    table.get("units", out).and_then(|f| f.choice(&Unit::ALL, out)).unwrap_or(above)
}

fn outside(field: Field, cart: &mut Carcass, out: &mut Findings) {
    let Some(table) = field.table(&keys::OUTSIDE, out) else {
        return;
    };
    let mut side =
        |key| table.need(key, out).and_then(|f| f.size(cart.units, out)).unwrap_or_default();
    (cart.width, cart.depth, cart.height) = (side("width"), side("depth"), side("height"));
    cart.span = table.span.clone();
}

fn board(field: Field, units: Unit, out: &mut Findings) -> Option<Board> {
    let table = field.table(&keys::BOARD, out)?;
    let material = table.get("material", out).and_then(|f| material(f, out));
    let thickness = table.need("thickness", out).and_then(|f| f.size(units, out))?;
    Some(Board { material, thickness })
}

fn casters(table: &Table, units: Unit, out: &mut Findings) -> Casters {
    let mut casters = Casters {
        height: Length::ZERO,
        rating: None,
        ratings: Vec::new(),
        trail: Length::ZERO,
        locks: 0,
        wheel: None,
        gives: None,
        at: Vec::new(),
        span: table.span.clone(),
    };
    let Some(field) = table.get("casters", out) else {
        // The survey of the carcass says that none is too few.
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
            let warning =
                Finding::warning(format!("the casters have no {key}: {lost} cannot be judged"));
            out.say(
                warning
                    .at(table.span)
                    .field(format!("casters.{key}"))
                    .help(format!("add `{key}:`")),
            );
        }
    }
    casters.height =
        table.get("height", out).and_then(|f| f.distance(units, out)).unwrap_or_default();
    casters.wheel = table.get("wheel", out).and_then(|f| f.size(units, out));
    casters.gives = table.get("gives", out).and_then(|f| gives(f, units, out));
    casters.trail =
        table.get("trail", out).and_then(|f| f.distance(units, out)).unwrap_or_default();
    casters.locks = table.get("locks", out).and_then(|f| f.count(0, 100, out)).unwrap_or(0);
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
    if let Some(field) = table.get("rating", out) {
        rating(field, &mut casters, units, out);
    }
    casters
}

/// One rating for all, or one for each in the order of `at`.
fn rating(field: Field, casters: &mut Casters, units: Unit, out: &mut Findings) {
    if !field.is_list() {
        casters.rating = field.mass(units, out);
        return;
    }
    let all: Vec<Mass> = field.list(out).iter().filter_map(|f| f.mass(units, out)).collect();
    if all.len() != casters.at.len() {
        let found = format!("{} ratings for {} casters", all.len(), casters.at.len());
        out.say(
            field
                .fault("the casters do not have a rating each")
                .found(found)
                .expected("one rating for all, or a list with one for each place of `at`"),
        );
        return;
    }
    casters.rating = all.iter().min().copied();
    if all.iter().any(|one| Some(*one) != casters.rating) {
        casters.ratings = all;
    }
}

/// How far a corner sinks under 10 kg: least and most, both over nought.
fn gives(field: Field, units: Unit, out: &mut Findings) -> Option<[Length; 2]> {
    let what = "two lengths over nought, the lesser first, such as [0.5 mm, 5 mm]";
    let gives: [Length; 2] = field.lengths(what, out, |one, out| one.size(units, out))?;
    if gives[0] > gives[1] {
        out.say(field.wrong(what));
        return None;
    }
    Some(gives)
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

fn bench(table: &Table, units: Unit, out: &mut Findings) -> Bench {
    let zones = table.get("zones", out).map_or_else(Vec::new, |f| f.list(out));
    Bench {
        keep_clear: table.get("keep_clear", out).and_then(|f| f.share(out)).unwrap_or(Share::ALL),
        zones: zones.into_iter().filter_map(|f| zone(f, units, out)).collect(),
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
    let drawers = cart.drawers.iter().map(|d| (d.face, d.name.as_str(), &d.span));
    bays.chain(drawers).chain(cart.panels.iter().map(|p| (p.face, p.name.as_str(), &p.span)))
}

fn named_once(cart: &Carcass, out: &mut Findings) {
    let all: Vec<_> = bays(cart).filter(|(_, name, _)| !name.is_empty()).collect();
    for (k, (face, name, span)) in all.iter().enumerate() {
        if let Some((_, _, first)) =
            all[..k].iter().find(|(f, n, _)| f == face && fold(n) == fold(name))
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
        let others =
            cart.bays.iter().filter(|b| b.face == opposite && matches!(b.depth, Depth::Deep(_)));
        if bay.face == Face::Top || !others.clone().any(|b| fold(&b.name) == fold(name)) {
            let text = Text { text: name.clone(), span: bay.span.clone() };
            let what = format!("bay with a depth of its own on the {}, named", opposite.name());
            let field = format!("faces.{}.bays.behind", bay.face.name());
            out.say(unknown_word(&what, &text, others.map(|b| b.name.as_str())).field(field));
        }
    }
}
