//! What boards are made of, how their ends are held, and how things are hung on them.

use super::decode::{Field, Table};
use super::findings::Findings;
use super::keys;
use crate::domain::{Along, Ends, Fixing, Material, ScrewSize};
use crate::units::Unit;

/// Most screws that hold one thing: model's choice.
const MOST_SCREWS: u32 = 20;

/// A material by any of its names.
pub(super) fn material(field: Field, out: &mut Findings) -> Option<Material> {
    let all: Vec<(&str, Material)> =
        Material::ALL.iter().flat_map(|m| m.names().iter().map(|name| (*name, *m))).collect();
    let text = field.text(out)?;
    let known = all.iter().find(|(name, _)| super::decode::same(name, &text.text));
    if known.is_none() {
        let fault = field.unknown("material", &text, all.iter().map(|(name, _)| *name));
        let listed: Vec<&str> = Material::ALL.iter().map(|m| m.name()).collect();
        let help =
            "where none of these is near it, leave `material` out: the stated limits count then";
        out.say(fault.expected(listed.join(", ")).help(help));
    }
    known.map(|(_, material)| *material)
}

/// How the ends of a board are held.
pub(super) fn ends(table: &Table, out: &mut Findings) -> Ends {
    let words = [("free", Ends::Free), ("fixed", Ends::Fixed)];
    table.get("ends", out).and_then(|f| f.choice(&words, out)).unwrap_or_default()
}

/// Which way a shelf spans.
pub(super) fn span_along(table: &Table, out: &mut Findings) -> Along {
    let words = [("width", Along::Width), ("depth", Along::Depth)];
    table.get("span", out).and_then(|f| f.choice(&words, out)).unwrap_or_default()
}

/// How things are hung.
pub(super) fn fixing(table: &Table, units: Unit, out: &mut Findings) -> Fixing {
    let words = [("side", false), ("end", true)];
    Fixing {
        hook: table.get("hook", out).and_then(|f| f.mass(units, out)),
        screw: table.get("screw", out).and_then(|f| screw(f, units, out)).unwrap_or_default(),
        end_grain: table.get("grain", out).and_then(|f| f.choice(&words, out)).unwrap_or(false),
    }
}

fn screw(field: Field, units: Unit, out: &mut Findings) -> Option<ScrewSize> {
    let table = field.table(&keys::SCREW, out)?;
    let usual = ScrewSize::default();
    let size = |key, out: &mut Findings| table.get(key, out).and_then(|f| f.size(units, out));
    Some(ScrewSize {
        diameter: size("diameter", out).unwrap_or(usual.diameter),
        thread: size("thread", out),
        each: table
            .get("each", out)
            .and_then(|f| f.count(1, MOST_SCREWS, out))
            .unwrap_or(usual.each),
    })
}
