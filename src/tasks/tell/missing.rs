//! Why something has no place: the nearest miss.

use crate::domain::Pose;
use crate::geometry::Box3;
use crate::score::{Ledger, broken};
use crate::site::{Board, Change, Kind, Lot, Site, Surface, Touched, answers};
use crate::solve::corners;
use crate::units::{Length, Unit, show_length, show_mass};

/// How far a lot is from fitting the place that it nearly fits, were the cart empty.
#[derive(Clone, Debug)]
pub(crate) struct Miss {
    /// By how much, over all that is short.
    pub short: Length,
    /// In words, with the smallest change that would admit it.
    pub told: String,
}

/// Why a lot is off the cart.
pub(super) fn why(board: &Board, ledger: &Ledger, l: usize, unit: Unit) -> String {
    let site = board.site();
    if let Some(miss) = miss(site, l, unit) {
        return miss.told;
    }
    let lot = &site.lots[l];
    if lot.fixed.is_some() {
        return "it is fixed, but its place in layout.yaml is taken or does not admit it"
            .to_owned();
    }
    if let Some(told) = free_place(board, ledger, l) {
        return told;
    }
    let mut names: Vec<String> = Vec::new();
    for home in &lot.homes {
        let name = site.surface_name(home.surface as usize);
        if !names.contains(&name) {
            names.push(name);
        }
    }
    let first = names.first().cloned().unwrap_or_default();
    let others = match names.len() {
        0 | 1 => String::new(),
        n => format!(" and {} more", n - 1),
    };
    let size = lot.homes.first().map_or_else(String::new, |home| {
        let [a, b, c] = home.extents.map(|e| show_length(e, unit));
        format!("; a free {a} × {b} × {c} there would admit it")
    });
    format!("would fit {first}{others}, but what is there is worth more{size}")
}

/// What is to be said of the free place that is the easiest to reach: the rule that the lot would break there, if any;
/// nothing where no place is free.
fn free_place(board: &Board, ledger: &Ledger, l: usize) -> Option<String> {
    let site = board.site();
    let place = corners(board, l, &site.lots[l].homes).into_iter().next()?;
    let mut with = board.clone();
    with.apply(Change { lot: l, to: Some(place) }, &mut Touched::default());
    let already = broken(board, ledger);
    let all = broken(&with, &Ledger::new(&with));
    let own = all.iter().find(|b| b.lots.contains(&(l as u32)));
    let new = || all.iter().find(|b| !already.iter().any(|a| a.rule == b.rule && a.lots == b.lots));
    let worse = || all.iter().find(|b| b.lots.is_empty());
    let name = site.surface_name(place.home.surface as usize);
    Some(match own.or_else(new).or_else(worse) {
        Some(b) => format!("there is room on {name}, but a rule forbids it: {}", b.told),
        None => format!("there is room for it on {name}"),
    })
}

/// The nearest miss of a lot that no surface of the empty cart admits; nothing where one does.
pub(crate) fn miss(site: &Site, l: usize, unit: Unit) -> Option<Miss> {
    let lot = &site.lots[l];
    if !lot.homes.is_empty() {
        return None;
    }
    let item = &site.items[lot.item];
    let mut best: Option<Miss> = None;
    for s in 0..site.surfaces.len() {
        let ordered =
            item.place.is_empty() || item.place.iter().any(|h| answers(&h.parts, site, s));
        if !ordered {
            continue;
        }
        for form in &lot.forms {
            if (form.pose == Pose::Hang) != (site.surfaces[s].kind == Kind::Wall) {
                continue;
            }
            let miss = short_of(site, l, s, form, unit);
            if best.as_ref().is_none_or(|b| miss.short < b.short) {
                best = Some(miss);
            }
        }
    }
    Some(best.unwrap_or_else(|| Miss {
        short: Length::ZERO,
        told: if lot.forms.is_empty() {
            "it may be kept in no pose: allow one with `keep`".to_owned()
        } else {
            "no surface takes it in a pose that it allows: add a panel or a wall with `hang`, or allow another pose with `keep`".to_owned()
        },
    }))
}

/// By how much a form is too large for a surface.
fn short_of(site: &Site, l: usize, s: usize, form: &crate::site::Form, unit: Unit) -> Miss {
    let (lot, surface) = (&site.lots[l], &site.surfaces[s]);
    let name = site.surface_name(s);
    let dims = match (form.turned, surface.turns_flat()) {
        (false, _) => form.dims,
        (true, true) => crate::domain::Dims { w: form.dims.d, d: form.dims.w, h: form.dims.h },
        (true, false) => crate::domain::Dims { w: form.dims.h, d: form.dims.d, h: form.dims.w },
    };
    let need = surface.extents(dims);
    let across = 1 - surface.along;
    let words =
        [(surface.along, "wide", "width"), (across, "deep", "depth"), (2, "high", "height")];
    let mut short = Length::ZERO;
    let mut told: Vec<String> = Vec::new();
    let mut more: Vec<String> = Vec::new();
    for (axis, word, extent) in words {
        let over = if axis == 2 && surface.needs_clearance { lot.clearance } else { Length::ZERO };
        let (need, room) = (need[axis] + over, surface.free.extent(axis));
        if need > room {
            short += need - room;
            more.push(format!("{} more {extent}", show_length(need - room, unit)));
            let free = if over > Length::ZERO { ", free height counted in" } else { "" };
            let (need, room) = (show_length(need, unit), show_length(room, unit));
            told.push(format!("needs {need} {word}{free}, {name} has {room}"));
        }
    }
    if told.is_empty() {
        if let Some(miss) = unheld(lot, surface, need, &name) {
            return miss;
        }
        return heavy_or_far(site, l, s, &name, unit);
    }
    let (told, more) = (told.join(" and "), more.join(" and "));
    Miss { short, told: format!("{told}; {more} there would admit it") }
}

/// That a wall's screws or hooks do not hold a lot of those extents.
fn unheld(lot: &Lot, surface: &Surface, need: [Length; 3], name: &str) -> Option<Miss> {
    let anywhere = Box3::new([Length::ZERO; 3], need);
    let used = surface.hold.as_ref()?.used(lot.unit, lot.copies, &anywhere);
    let told = match used {
        used if used <= 1.0 => return None,
        used if used.is_finite() => {
            format!(
                "would ask its fixing on {name} for {used:.2} times what it may hold: more or thicker screws there, or stronger hooks, would admit it"
            )
        }
        _ => format!("would hang on {name} from screws that do not count: in end grain none does"),
    };
    // Sorted by how much is missing, with a millimetre for every hundredth.
    Some(Miss { short: Length::from_mm((used - 1.0).min(100.0) * 100.0), told })
}

/// What keeps a lot off a surface where its box would fit.
fn heavy_or_far(site: &Site, l: usize, s: usize, name: &str, unit: Unit) -> Miss {
    let (lot, surface) = (&site.lots[l], &site.surfaces[s]);
    match surface.limit {
        Some(limit) if lot.mass > limit => {
            let (weight, limit) =
                (show_mass(lot.mass, unit.imperial()), show_mass(limit, unit.imperial()));
            // Sorted by how much is missing, with a millimetre for every 10 g.
            let over = (lot.mass - surface.limit.unwrap_or_default()).as_kg();
            Miss {
                short: Length::from_mm(over * 100.0),
                told: format!("weighs {weight}, {name} carries {limit}"),
            }
        }
        _ if site.spaces[surface.space].kind == crate::site::SpaceKind::Bench => Miss {
            short: Length::mm(1000),
            told: "would fit the bench, but goes there only if asked: `place: top`".to_owned(),
        },
        _ => Miss {
            short: Length::mm(2000),
            told: format!("would fit {name}, but cannot be reached there"),
        },
    }
}
