//! What the words of a layout's entries mean, and what is wrong with them.

use super::{Asked, EntryFinding};
use crate::domain::{Bay, Carcass, Entry, Face, Layout, Pose};
use crate::finding::{Finding, nearest};
use crate::site::{Home, Kind, Place, Site, SpaceKind, answers, surfaces_of_entry};
use crate::units::{Unit, show_length};

/// A finding about an entry.
pub(super) fn at(item: &str, entry: &Entry, what: impl Into<String>) -> EntryFinding {
    let what = what.into();
    let finding = Finding::warning(what.clone()).at(&entry.span);
    EntryFinding { item: item.to_owned(), what, finding, lot: None }
}

/// The entries that can be understood, in the order of the file.
pub(super) fn understand(
    site: &Site,
    layout: &Layout,
    findings: &mut Vec<EntryFinding>,
) -> Vec<Asked> {
    let mut told: Vec<Vec<Option<usize>>> =
        site.items.iter().map(|i| vec![None; i.count as usize]).collect();
    let mut all = Vec::new();
    for (n, entry) in layout.entries.iter().enumerate() {
        let Some(item) = item_of(site, entry, findings) else { continue };
        let Some(copies) = copies_of(site, item, entry, &told[item], layout, findings) else {
            continue;
        };
        (copies.0..copies.0 + copies.1).for_each(|c| told[item][c as usize - 1] = Some(n));
        let Some(surfaces) = surfaces(site, &site.items[item].name, entry, findings) else {
            continue;
        };
        poses(site, item, entry, surfaces[0], findings);
        if copies.1 == 1 || may_share(site, item, copies.1) {
            all.push(Asked { entry: n, item, copies, surfaces });
            continue;
        }
        let name = &site.items[item].name;
        let what = format!(
            "{} copies of {name} are in one place, but it may be neither piled nor kept in a row: allow it with `stack` or `pitch`",
            copies.1
        );
        findings.push(at(name, entry, what));
        all.push(Asked { entry: n, item, copies, surfaces });
    }
    all
}

/// Whether so many copies may be one pile or row.
fn may_share(site: &Site, item: usize, copies: u32) -> bool {
    let it = &site.items[item];
    it.pitch.is_some() || copies <= it.stack
}

fn item_of(site: &Site, entry: &Entry, findings: &mut Vec<EntryFinding>) -> Option<usize> {
    let word = entry.item.trim();
    let same = |i: &crate::domain::Item| i.name.to_lowercase() == word.to_lowercase();
    let exact = site.items.iter().position(|i| i.name == word);
    if let Some(item) = exact.or_else(|| site.items.iter().position(same)) {
        return Some(item);
    }
    let held = site.items.iter().find(|i| i.holds.iter().any(|h| h.eq_ignore_ascii_case(word)));
    let what = match held {
        Some(keeper) => {
            format!("{word} is kept in {} and has no place of its own", keeper.name)
        }
        None => format!("{word} is on the cart but not in the inventory"),
    };
    let mut found = at(word, entry, what);
    let names = site.items.iter().map(|i| i.name.as_str());
    found.finding = found.finding.near(word, names);
    if held.is_none() {
        found.finding = found.finding.help(
            "add it to inventory.yaml with its size, weight and use: no size is made up for it",
        );
    }
    if let Some(name) = &found.finding.nearest {
        found.what += &format!("; did you mean {name}?");
    }
    findings.push(found);
    None
}

/// The copies of an entry that are there and named by no earlier one.
fn copies_of(
    site: &Site,
    item: usize,
    entry: &Entry,
    told: &[Option<usize>],
    layout: &Layout,
    findings: &mut Vec<EntryFinding>,
) -> Option<(u32, u32)> {
    let it = &site.items[item];
    let (first, copies) = (entry.copy.max(1), entry.copies.max(1));
    let last = first.saturating_add(copies - 1);
    if first > it.count {
        let what =
            format!("copy {first} of {} is on the cart, but there are {}", it.name, it.count);
        findings.push(at(&it.name, entry, what));
        return None;
    }
    if last > it.count {
        let what = format!(
            "copies {first} to {last} of {} are on the cart, but there are {}",
            it.name, it.count
        );
        findings.push(at(&it.name, entry, what));
    }
    let last = last.min(it.count);
    let free = (first..=last).take_while(|&c| told[c as usize - 1].is_none()).count() as u32;
    if free < last - first + 1 {
        let copy = first + free;
        let which =
            if it.count == 1 { it.name.clone() } else { format!("copy {copy} of {}", it.name) };
        let mut found =
            at(&it.name, entry, format!("{which} is entered twice: the first entry is taken"));
        if let Some(other) = told[copy as usize - 1] {
            found.finding = found.finding.at(&layout.entries[other].span);
        }
        if it.count > 1 {
            found.finding = found.finding.help("say which one it is with `copy:`");
        }
        findings.push(found);
    }
    (free > 0).then_some((first, free))
}

/// The surface that an entry names; several only on a bench of several zones.
fn surfaces(
    site: &Site,
    item: &str,
    entry: &Entry,
    findings: &mut Vec<EntryFinding>,
) -> Option<Vec<usize>> {
    let all = surfaces_of_entry(site, entry);
    let first = all.first().copied();
    let bench = first.is_some_and(|s| site.spaces[site.surfaces[s].space].face == Face::Top);
    match first {
        Some(_) if all.len() == 1 || bench => Some(all),
        Some(s) => several(site, item, entry, s, findings),
        None => {
            findings.push(unknown(site, item, entry));
            None
        }
    }
}

/// A bay that has several surfaces, or a name that several faces use.
fn several(
    site: &Site,
    item: &str,
    entry: &Entry,
    first: usize,
    findings: &mut Vec<EntryFinding>,
) -> Option<Vec<usize>> {
    let all = surfaces_of_entry(site, entry);
    let one = all.iter().all(|&s| site.surfaces[s].space == site.surfaces[first].space);
    let names: Vec<String> = all
        .iter()
        .map(|&s| if one { site.surfaces[s].name.clone() } else { site.surface_name(s) })
        .collect();
    let word = entry.bay.trim();
    let what = format!("{item} is in {word}, which may be any of {}", names.join(", "));
    let mut found = at(item, entry, what);
    let key = if one { "surface" } else { "face" };
    found.finding = found.finding.help(format!("say which one with `{key}:`"));
    findings.push(found);
    None
}

/// A bay or surface that is not there, with the nearest one that is.
fn unknown(site: &Site, item: &str, entry: &Entry) -> EntryFinding {
    let word = entry.bay.trim();
    let bays: Vec<usize> = (0..site.spaces.len())
        .filter(|&s| site.spaces[s].name.eq_ignore_ascii_case(word))
        .collect();
    let here = |s: &&usize| entry.face.is_none_or(|f| site.spaces[**s].ways.contains(&f));
    if let (Some(&space), Some(surface)) = (bays.iter().find(here), &entry.surface) {
        let names: Vec<&str> =
            site.spaces[space].surfaces.iter().map(|&s| site.surfaces[s].name.as_str()).collect();
        return misspelt(item, entry, surface, &format!("in {}", site.spaces[space].name), &names);
    }
    if let (Some(&space), Some(face)) = (bays.first(), entry.face) {
        let there = site.spaces[space].face.name();
        let what =
            format!("{item} is in {word} on the {}, but {word} is on the {there}", face.name());
        return at(item, entry, what);
    }
    let names: Vec<&str> = site
        .spaces
        .iter()
        .filter(|s| entry.face.is_none_or(|f| s.ways.contains(&f)))
        .map(|s| s.name.as_str())
        .collect();
    let place =
        entry.face.map_or_else(|| "on the cart".to_owned(), |f| format!("on the {}", f.name()));
    misspelt(item, entry, word, &place, &names)
}

fn misspelt(item: &str, entry: &Entry, word: &str, place: &str, names: &[&str]) -> EntryFinding {
    let near = nearest(word, names.iter().copied());
    let meant = match near {
        Some(name) => format!("; did you mean {name}?"),
        None => format!("; there are {}", names.join(", ")),
    };
    let mut found =
        at(item, entry, format!("{item} is on {word}, but there is no {word} {place}{meant}"));
    found.finding = found.finding.found(word).near(word, names.iter().copied());
    found
}

/// Poses that the inventory does not allow, or that do not go with the surface.
fn poses(
    site: &Site,
    item: usize,
    entry: &Entry,
    surface: usize,
    findings: &mut Vec<EntryFinding>,
) {
    let it = &site.items[item];
    let wall = site.surfaces[surface].kind == Kind::Wall;
    let name = site.surface_name(surface);
    let pose = match entry.pose {
        Some(pose) if (pose == Pose::Hang) != wall => {
            let kind = if wall { "things hang on" } else { "things stand or lie on" };
            let what = format!("{} cannot {} on {name}, which {kind}", it.name, pose.name());
            findings.push(at(&it.name, entry, what));
            None
        }
        pose => pose,
    };
    let pose = match (pose, wall) {
        (None, true) => Some(Pose::Hang),
        (None, false) if it.pose(Pose::Stand).is_none() && it.pose(Pose::Lie).is_none() => {
            Some(Pose::Stand)
        }
        (pose, _) => pose,
    };
    if let Some(pose) = pose.filter(|p| it.pose(*p).is_none()) {
        let doing = match pose {
            Pose::Stand => "stands",
            Pose::Lie => "lies",
            Pose::Hang => "hangs",
        };
        let allowed: Vec<&str> =
            Pose::ALL.iter().filter(|p| it.pose(**p).is_some()).map(|p| p.name()).collect();
        let what = format!(
            "{} {doing} on {name}, but the inventory allows only: {}",
            it.name,
            allowed.join(", ")
        );
        findings.push(at(&it.name, entry, what));
    }
    if entry.turned == Some(true) && !it.turn {
        let what = format!("{} is turned, but the inventory forbids it", it.name);
        findings.push(at(&it.name, entry, what));
    }
}

/// What is kept where the inventory does not let it be: against an order, or on a bench without asking.
pub(super) fn against_orders(
    site: &Site,
    places: &[Option<Place>],
    entries: &[Option<usize>],
    layout: &Layout,
    findings: &mut Vec<EntryFinding>,
) {
    for (lot, place) in places.iter().enumerate() {
        let (Some(place), Some(entry)) = (place, entries[lot]) else { continue };
        let (l, s) = (&site.lots[lot], place.home.surface as usize);
        let it = &site.items[l.item];
        let asked =
            |homes: &[crate::domain::Home]| homes.iter().any(|h| answers(&h.parts, site, s));
        let bench = site.spaces[site.surfaces[s].space].kind == SpaceKind::Bench;
        let (name, here) = (l.name(&site.items), site.surface_name(s));
        let what = if !it.place.is_empty() && !asked(&it.place) {
            let orders: Vec<String> = it.place.iter().map(|h| h.parts.join("/")).collect();
            format!("{name} is on {here}, but its place is ordered: {}", orders.join(" or "))
        } else if bench && it.place.is_empty() && !asked(&it.prefer) {
            format!("{name} is on the bench, where only what asks for it belongs: `place: top`")
        } else {
            continue;
        };
        let found = at(&it.name, &layout.entries[entry], what);
        findings.push(EntryFinding { lot: Some(lot), ..found });
    }
}

/// What is in the inventory but nowhere in the layout.
pub(super) fn missing(
    site: &Site,
    entries: &[Option<usize>],
    layout: &Layout,
    findings: &mut Vec<EntryFinding>,
) {
    for (item, it) in site.items.iter().enumerate() {
        let named = |e: &Entry| e.item.trim().to_lowercase() == it.name.to_lowercase();
        let lots: Vec<usize> = (0..site.lots.len())
            .filter(|&l| site.lots[l].item == item && entries[l].is_none())
            .collect();
        let copies: u32 = lots.iter().map(|&l| site.lots[l].copies).sum();
        // An entry that could not be understood has its own finding.
        let spoilt: u32 = layout
            .entries
            .iter()
            .enumerate()
            .filter(|(n, e)| named(e) && !entries.contains(&Some(*n)))
            .map(|(_, e)| e.copies.max(1))
            .sum();
        if copies <= spoilt {
            continue;
        }
        let which = match copies - spoilt {
            n if n == it.count => it.name.clone(),
            n => format!("{n} of {} copies of {}", it.count, it.name),
        };
        let what = format!(
            "{which} {} in the inventory but nowhere in the layout",
            if copies - spoilt > 1 && it.count > 1 { "are" } else { "is" }
        );
        let finding = Finding::warning(what.clone()).at(&it.span);
        findings.push(EntryFinding {
            item: it.name.clone(),
            what,
            finding,
            lot: lots.first().copied(),
        });
    }
}

/// What a lot lacks on a surface that is too small for it in every form.
pub(super) fn too_large(site: &Site, lot: usize, homes: &[Home], unit: Unit) -> Option<String> {
    let short = |home: &Home| {
        let s = &site.surfaces[home.surface as usize];
        let over = if s.needs_clearance { site.lots[lot].clearance } else { Default::default() };
        let words = [(s.along, "wide"), (1 - s.along, "deep"), (2, "high")];
        let lacks: Vec<(i64, String)> = words
            .into_iter()
            .filter_map(|(axis, word)| {
                let need = if axis == 2 { home.extents[2] + over } else { home.extents[axis] };
                let room = s.free.extent(axis);
                let free = if axis == 2 && over > Default::default() {
                    ", free height counted in"
                } else {
                    ""
                };
                (need > room).then(|| {
                    let (n, r) = (show_length(need, unit), show_length(room, unit));
                    ((need - room).as_nm(), format!("it needs {n} {word}{free}, there is {r}"))
                })
            })
            .collect();
        (!lacks.is_empty()).then(|| {
            let sum: i64 = lacks.iter().map(|l| l.0).sum();
            (sum, lacks.into_iter().map(|l| l.1).collect::<Vec<_>>().join("; "))
        })
    };
    let all: Option<Vec<(i64, String)>> = homes.iter().map(short).collect();
    all?.into_iter().min().map(|s| s.1)
}

/// What a lot lacks under the shelf boards of a bay whose free box would take it.
pub(super) fn under_boards(site: &Site, lot: usize, homes: &[Home], unit: Unit) -> String {
    let least = homes.iter().min_by_key(|h| h.extents[2]);
    let Some(home) = least else { return "no pose goes there".to_owned() };
    let s = &site.surfaces[home.surface as usize];
    let over = if s.needs_clearance { site.lots[lot].clearance } else { Default::default() };
    let boards = site.spaces[s.space].boards.iter().map(|&b| site.boards[b].solid.min[2]);
    let room = boards.filter(|z| *z > s.free.min[2]).min().map(|z| z - s.free.min[2]);
    let need = show_length(home.extents[2] + over, unit);
    match room {
        Some(room) => format!(
            "it needs {need} high with the free height over it, and the shelf above leaves {}",
            show_length(room, unit)
        ),
        None => format!("it needs {need} high with the free height over it"),
    }
}

/// What the layout says of shelves that are not there.
pub(super) fn shelves(carcass: &Carcass, layout: &Layout, findings: &mut Vec<EntryFinding>) {
    for entry in &layout.shelves {
        let bays: Vec<&Bay> = carcass.bays.iter().filter(|bay| entry.is_in(bay)).collect();
        let names =
            bays.iter().flat_map(|bay| (1..=bay.shelves.len()).map(|n| format!("shelf {n}")));
        let names: Vec<String> = names.collect();
        if names.iter().any(|name| name == entry.surface.trim()) {
            continue;
        }
        let (word, known) = if bays.is_empty() {
            (entry.bay.trim(), carcass.bays.iter().map(|bay| bay.name.clone()).collect())
        } else {
            (entry.surface.trim(), names)
        };
        let what =
            format!("{} / {} is no shelf of this cart", entry.bay.trim(), entry.surface.trim());
        let finding = Finding::warning(what.clone()).at(&entry.span);
        let finding = finding.near(word, known.iter().map(String::as_str));
        findings.push(EntryFinding { item: entry.surface.clone(), what, finding, lot: None });
    }
}
