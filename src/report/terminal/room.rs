//! Growth room, in plain words.

use super::Look;
use super::figure::{count, length, mass, seconds};
use super::page::{Ink, Page};
use super::table::{Set, Table};
use super::why::named;
use crate::tasks::outcome::Kept;
use crate::tasks::room::{BayRoom, MOST_ALIKE, Room, Sum, Wish};
use crate::units::{Mass, Price, Unit};

/// The whole text, ending with a line break.
pub fn room(room: &Room, look: &Look) -> String {
    let mut page = Page::new(*look);
    page.heading(Ink::Bold, &format!("{}: room to grow", room.name));
    state(&mut page, room);
    families(&mut page, room);
    wishes(&mut page, room);
    sums(&mut page, room, "reach", &room.zones);
    sums(&mut page, room, "face", &room.faces);
    bays(&mut page, room);
    kept(&mut page, room);
    page.finish()
}

fn state(page: &mut Page, room: &Room) {
    if room.broken > 0 {
        let rules = count(room.broken, "rule");
        page.paragraph(&format!(
            "{rules} broken as it stands; nothing that is told to fit makes that worse. See `audit`."
        ));
    }
    for finding in &room.findings {
        page.point(page.either("•", "*"), finding);
    }
}

fn families(page: &mut Page, room: &Room) {
    page.heading(Ink::Bold, "Further things of each family");
    let mut table = Table::new(&[
        ("family", Set::Words),
        ("typical size", Set::Words),
        ("mass", Set::Figure),
        ("fit", Set::Figure),
        ("wanted", Set::Figure),
        ("the first goes to", Set::Words),
    ]);
    for f in &room.families {
        let size = [f.size.w, f.size.d, f.size.h].map(|l| length(l, room.units)).join(" × ");
        let more = if f.fit == MOST_ALIKE { " or more" } else { "" };
        table.row(vec![
            f.family.clone(),
            size,
            mass(f.mass, room.units),
            format!("{}{more}", f.fit),
            f.wanted.map_or_else(String::new, |n| n.to_string()),
            f.spots.first().map_or_else(
                || "nowhere as it stands".to_owned(),
                |(s, z)| format!("{} ({})", s.name(), z.name()),
            ),
        ]);
    }
    page.table(&table);
    page.paragraph(
        "Each family by itself, with nothing moved: into the free place that is the easiest to reach and keeps every rule.",
    );
}

fn wishes(page: &mut Page, room: &Room) {
    if room.wishes.is_empty() {
        return;
    }
    page.heading(Ink::Bold, "The wish list, the most worth having first");
    for wish in &room.wishes {
        let ink = if wish.to.is_some() { Ink::Bold } else { Ink::Mind };
        page.named(ink, &named(&wish.named), &tell(wish));
    }
}

fn tell(wish: &Wish) -> String {
    let worth = format!("worth {} s a week on the cart", seconds(wish.value));
    let Some(to) = &wish.to else {
        let why = wish.miss.as_deref().unwrap_or_default();
        return format!("does not fit ({worth}): {why}");
    };
    let moves = match wish.moved.len() {
        0 => "with nothing moved".to_owned(),
        n => {
            let each = wish.moved.iter().map(|(w, s)| format!("{} to {}", named(w), s.name()));
            let each: Vec<_> = each.collect();
            format!("with {}: {}", count(n, "move"), each.join(", "))
        }
    };
    format!(
        "fits {} {moves} ({worth}; the layout then costs {})",
        to.name(),
        more_or_less(wish.costs)
    )
}

/// What the layout costs more, or less.
fn more_or_less(price: Price) -> String {
    match seconds(price).as_str() {
        "0.0" => "the same".to_owned(),
        figure => match figure.strip_prefix('-') {
            Some(figure) => format!("{figure} s a week less"),
            None => format!("{figure} s a week more"),
        },
    }
}

fn sums(page: &mut Page, room: &Room, head: &'static str, sums: &[Sum]) {
    page.heading(Ink::Bold, &format!("Free room by {head}"));
    let mut table = Table::new(&[
        (head, Set::Short),
        ("litres", Set::Figure),
        ("things", Set::Figure),
        ("largest box", Set::Words),
        ("in", Set::Words),
    ]);
    for sum in sums {
        let largest = sum.largest.map(|k| &room.bays[k]);
        table.row(vec![
            sum.what.clone(),
            format!("{:.1}", sum.litres),
            sum.things.to_string(),
            largest.map_or_else(String::new, |b| size(b, room.units)),
            largest.map_or_else(String::new, |b| format!("{} / {}", b.face.name(), b.bay)),
        ]);
    }
    page.table(&table);
}

/// Width as seen from the face, depth, height.
fn size(bay: &BayRoom, unit: Unit) -> String {
    let across = usize::from(bay.face.axis() == 0);
    let [w, d] = if bay.face.axis() == 2 { [0, 1] } else { [across, 1 - across] };
    [w, d, 2].map(|axis| length(bay.space.extent(axis), unit)).join(" × ")
}

fn bays(page: &mut Page, room: &Room) {
    page.heading(Ink::Bold, "The largest free box of each bay");
    let mut table = Table::new(&[
        ("bay", Set::Words),
        ("on", Set::Words),
        ("width × depth × height", Set::Words),
        ("reach", Set::Short),
        ("may weigh", Set::Figure),
    ]);
    for b in &room.bays {
        table.row(vec![
            format!("{} / {}", b.face.name(), b.bay),
            b.surface.clone(),
            size(b, room.units),
            b.zone.name().to_owned(),
            weight(b.mass(), room.units),
        ]);
    }
    page.table(&table);
    page.paragraph(
        "What may weigh so much: the lesser of what the surface still carries and what casters and tipping allow there; 100 kg stands for any more. On a shelf or a bay's floor a thing needs its free height above it within the box.",
    );
}

fn weight(m: Mass, unit: Unit) -> String {
    // Rounded down to tenths: never more than may be put there.
    let tenths =
        if unit.imperial() { m.as_ng() } else { m.as_ng() / 100_000_000_000 * 100_000_000_000 };
    mass(Mass::ng(tenths), unit)
}

fn kept(page: &mut Page, room: &Room) {
    if room.kept.is_empty() {
        return;
    }
    page.heading(Ink::Bold, "Kept free on purpose");
    for Kept { family, face, bay, surface, space, mass: m } in &room.kept {
        let what = family.as_deref().unwrap_or("anything");
        let at = length(space.middle(2), room.units);
        let text = format!(
            "{} / {bay} / {surface}, {:.1} litres at {at}, up to {}",
            face.name(),
            space.litres(),
            mass(*m, room.units)
        );
        page.named(Ink::Bold, what, &text);
    }
}
