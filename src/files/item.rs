//! One entry of an inventory.

use super::decode::{Field, Table, Text, fold};
use super::findings::Findings;
use super::keys;
use crate::domain::{Dims, Handles, Hazard, Hazards, Home, Item, Pose};
use crate::finding::Span;
use crate::units::{Length, Mass, Unit, Uses};

/// Most copies of one item, and most in one pile.
const MOST_COPIES: u32 = 1000;

/// How well the hands hold a thing, in words.
const HANDLES: [(&str, Handles); 3] =
    [("good", Handles::Good), ("fair", Handles::Fair), ("poor", Handles::Poor)];

/// One item, with stand-ins where a fault was noted.
pub(super) fn item(field: Field, units: Unit, out: &mut Findings) -> Option<Item> {
    let mut table = field.table(&keys::ITEM, out)?;
    if let Some(name) = table.name() {
        table.what = name.to_owned();
    }
    let name = table.need("name", out).and_then(|f| f.text(out));
    let name = name.unwrap_or_else(|| Text { text: String::new(), span: table.span.clone() });
    let size = table.need("size", out).and_then(|f| f.dims(units, out));
    let size = dims(size.unwrap_or([Length::mm(1); 3]));
    let said = hazards(&table, out);
    let hazards = said.unwrap_or_default();
    let truth = |key, out: &mut Findings| table.get(key, out).and_then(|f| f.truth(out));
    let count = |key, most, out: &mut Findings| {
        table.get(key, out).and_then(|f| f.count(1, most, out)).unwrap_or(1)
    };
    let text =
        |key, out: &mut Findings| table.get(key, out).and_then(|f| f.text(out)).map(|t| t.text);
    Some(Item {
        size,
        weight: table.need("weight", out).and_then(|f| f.mass(units, out)).unwrap_or(Mass::ZERO),
        uses: table.need("use", out).and_then(|f| f.uses(out)).unwrap_or(Uses::ZERO),
        count: count("count", MOST_COPIES, out),
        take_all: table
            .get("take", out)
            .and_then(|f| f.choice(&[("one", false), ("all", true)], out))
            .unwrap_or(false),
        stack: count("stack", MOST_COPIES, out),
        pitch: table.get("pitch", out).and_then(|f| f.size(units, out)),
        poses: poses(&table, size, hazards, units, out),
        turn: truth("turn", out).unwrap_or(true),
        family: text("family", out),
        with: companions(&table, out),
        hazards,
        hazards_said: said.is_some(),
        guarded: truth("guarded", out).unwrap_or(false),
        inside: text("inside", out).map(|t| fold(&t)),
        hands: count("hands", 2, out) as u8,
        handles: table.get("handles", out).and_then(|f| f.choice(&HANDLES, out)),
        grip: table.get("grip", out).and_then(|f| f.distance(units, out)),
        fetched: truth("fetched", out).unwrap_or(true),
        urgent: truth("urgent", out).unwrap_or(false),
        place: homes(&table, "place", out),
        prefer: homes(&table, "prefer", out),
        fixed: truth("fixed", out).unwrap_or(false),
        holds: table
            .get("holds", out)
            .map_or_else(Vec::new, |f| f.texts(out))
            .into_iter()
            .map(|t| t.text)
            .collect(),
        clearance: table.get("clearance", out).and_then(|f| f.distance(units, out)),
        name: name.text,
        span: name.span,
    })
}

fn dims([w, d, h]: [Length; 3]) -> Dims {
    Dims { w, d, h }
}

/// The hazards named; nothing where the file does not say.
fn hazards(table: &Table, out: &mut Findings) -> Option<Hazards> {
    let field = table.get("hazards", out)?;
    let mut all = Hazards::default();
    for text in field.texts(out) {
        match Hazard::ALL.into_iter().find(|h| h.name() == fold(&text.text)) {
            Some(hazard) => all = all.with(hazard),
            None => out.say(field.unknown("hazard", &text, Hazard::ALL.iter().map(|h| h.name()))),
        }
    }
    Some(all)
}

fn companions(table: &Table, out: &mut Findings) -> Vec<(String, Span)> {
    let all = table.get("with", out).map_or_else(Vec::new, |f| f.texts(out));
    all.into_iter().map(|t| (t.text, t.span)).collect()
}

fn homes(table: &Table, key: &'static str, out: &mut Findings) -> Vec<Home> {
    let all = table.get(key, out).map_or_else(Vec::new, |f| f.texts(out));
    all.into_iter()
        .map(|t| Home { parts: t.text.split('/').map(fold).collect(), span: t.span })
        .collect()
}

/// Size in each allowed pose.
///
/// Not named, liquid, hot and electric things stand only; others lie, and stand where they are not over three times as
/// high as the smaller side of their foot; none hangs.
fn poses(
    table: &Table,
    size: Dims,
    hazards: Hazards,
    units: Unit,
    out: &mut Findings,
) -> [Option<Dims>; 3] {
    let upright = hazards.meets(Hazards::of(&[Hazard::Liquid, Hazard::Hot, Hazard::Electric]));
    let Dims { w, d, h } = size;
    let forms = [size, Dims { w, d: h, h: d }, size];
    let steady = upright || h <= w.min(d) * 3;
    let usual = [steady, !upright, false];
    let mut poses = [0, 1, 2].map(|k| usual[k].then_some(forms[k]));
    let Some(field) = table.get("keep", out) else {
        return poses;
    };
    let before = out.len();
    if field.is_map() {
        keep(field, &mut poses, forms, units, out);
    } else {
        poses = only(field, forms, out);
    }
    // A word that cannot be read may have been meant to allow one.
    if poses == [None; 3] && out.len() == before {
        out.say(
            field
                .fault(format!("{} may be kept in no pose", table.what))
                .help("allow one: stand, lie or hang"),
        );
    }
    poses
}

/// `keep: [lie, hang]`: these and no others.
fn only(field: Field, forms: [Dims; 3], out: &mut Findings) -> [Option<Dims>; 3] {
    let mut poses = [None; 3];
    for text in field.texts(out) {
        match Pose::ALL.into_iter().find(|p| p.name() == fold(&text.text)) {
            Some(pose) => poses[pose as usize] = Some(forms[pose as usize]),
            None => out.say(field.unknown("pose", &text, Pose::ALL.iter().map(|p| p.name()))),
        }
    }
    poses
}

/// `keep: {lie: false, hang: [160, 130, 190]}`: each pose by itself.
fn keep(
    field: Field,
    poses: &mut [Option<Dims>; 3],
    forms: [Dims; 3],
    units: Unit,
    out: &mut Findings,
) {
    let Some(table) = field.table(&keys::KEEP, out) else {
        return;
    };
    for pose in Pose::ALL {
        let Some(field) = table.get(pose.name(), out) else {
            continue;
        };
        let own = field.is_list()
            || field.word().is_some_and(|t| t.contains(|c: char| c.is_ascii_digit()));
        let slot = &mut poses[pose as usize];
        if own {
            *slot = field.dims(units, out).map(dims);
        } else if let Some(may) = field.truth(out) {
            *slot = may.then_some(forms[pose as usize]);
        }
    }
}
