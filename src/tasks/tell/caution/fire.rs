//! What burns and what lights it, as far as no place on one cart takes care of them.

use super::{About, Caution, OURS, caution};
use crate::domain::{Hazard, Hazards, Item};
use crate::physics::fire::{BOTTLE, CAN, FLASH, GALLON, HOT_WORK, ROOM, TO_EXTINGUISHER, WATCH};
use crate::site::{FIRE, FUEL};
use crate::tasks::question::puts_out_fire;
use crate::units::Length;

const POURED: Hazards = Hazards::of(&[Hazard::Flammable, Hazard::Aerosol]);

pub(super) fn cautions(about: &About) -> Vec<Caution> {
    [self_heating, own_fuel, hot_work, amounts, containers, hot, extinguisher]
        .iter()
        .filter_map(|subject| subject(about))
        .collect()
}

fn self_heating(about: &About) -> Option<Caution> {
    let rags = about.meeting(Hazards::of(&[Hazard::SelfHeating]))?;
    let bare = about.named(|i| i.hazards.has(Hazard::SelfHeating) && !i.is_canned());
    let without = match bare.is_empty() {
        true => String::new(),
        false => format!(" Without the can ({}): off the cart and out of doors.", bare.join(", ")),
    };
    let text = format!(
        "Oily rags heat up by themselves and can catch fire with nobody there: only in a covered metal can, the lid shut, emptied every day. How to wet and throw away what was in it, the product's label and the local fire code say.{without}"
    );
    let source = "29 CFR 1910.106(h)(8)(iii) and 1910.125(e)(4)(ii), read as quoted; 30 CFR 56.4104(b) and IFC 3304.2, read";
    Some(caution(rags, text, source))
}

/// One thing that is both: no place keeps it from itself.
fn own_fuel(about: &About) -> Option<Caution> {
    let items = about.named(|i| i.hazards.meets(FIRE) && i.hazards.meets(FUEL));
    let text = "It brings both the flame and the fuel, so no place keeps the one from the other: take the cartridge or the fuel off it and store that as its label says, off the cart.";
    (!items.is_empty()).then(|| caution(items, text, OURS))
}

fn hot_work(about: &About) -> Option<Caution> {
    let sparks = about.meeting(FIRE)?;
    let (metres, feet) = metres_and_feet(HOT_WORK);
    let minutes = WATCH.as_s() / 60.0;
    let source = "29 CFR 1910.252(a)(2) and WAC 296-307-49503, read as quoted";
    if let Some(fuel) = about.meeting(FUEL) {
        let text = format!(
            "Before sparks, flame or heat take off the cart, or roll away, what burns ({}): {metres:.1} m ({feet:.0} ft) at least, and keep watch for {minutes:.0} minutes after. Different faces are the most that one cart can do, and no safe distance.",
            fuel.join(", ")
        );
        return Some(caution(sparks, text, source));
    }
    let flames = about.meeting(Hazards::of(&[Hazard::Ignition]))?;
    let text = format!(
        "Before sparks or flame move, cover or have watched all that can burn within {metres:.1} m ({feet:.0} ft), the cart too, and keep watch for {minutes:.0} minutes after. Welding and cutting are for those who are trained and allowed to."
    );
    Some(caution(flames, text, source))
}

fn amounts(about: &About) -> Option<Caution> {
    let poured = |i: &Item| i.hazards.meets(POURED) && !i.hazards.has(Hazard::SelfHeating);
    let items = about.named(poured);
    if items.is_empty() {
        return None;
    }
    let all = about.workspace.items.iter().filter(|i| poured(i));
    let most: f64 = all.map(|i| outside(i) * f64::from(i.count)).sum();
    let text = format!(
        "At most {most:.1} litres, by their outer sizes. Keep here what is in use, shut and in its own container; spares belong off the cart, in a store that the local code allows, and first those whose safety sheet says a flash point below {FLASH:.0} °C. Workplaces may have {:.1} litres ({ROOM:.0} US gal) in a room outside a cabinet: to be below that proves nothing.",
        ROOM * GALLON
    );
    Some(caution(
        items,
        text,
        "29 CFR 1926.152(b)(1), read as quoted; label, safety sheet and local code come first",
    ))
}

/// Containers that may be larger than any of their kind may be.
fn containers(about: &About) -> Option<Caution> {
    let large = |i: &Item| i.hazards.has(Hazard::Flammable) && i.hazards.has(Hazard::Liquid);
    let items = about.named(|i| large(i) && outside(i) > BOTTLE * GALLON);
    let text = format!(
        "Over {:.1} litres outside: no glass or plastic may hold so much of a flammable liquid, and no metal or safety can more than {:.1} litres (less where it is most easily lit). Look for the container's approval; one so large belongs off the cart.",
        BOTTLE * GALLON,
        CAN * GALLON
    );
    let source = "29 CFR 1910.106 Table H-12, read as reprinted in a safety manual";
    (!items.is_empty()).then(|| caution(items, text, source))
}

fn hot(about: &About) -> Option<Caution> {
    let items = about.meeting(Hazards::of(&[Hazard::Hot]))?;
    let both = Hazards::of(&[Hazard::Battery]);
    let packs = about.named(|i| i.hazards.has(Hazard::Hot) && i.hazards.meets(both));
    let first = match packs.is_empty() {
        true => String::new(),
        false => format!(" Take the battery out first ({}).", packs.join(", ")),
    };
    let text = format!(
        "They come back hot: let them cool on the bench, on a stand or tile that does not burn and in sight, until a hand can hold them; only then back to their place.{first}"
    );
    Some(caution(items, text, OURS))
}

/// An extinguisher on a face where something burns or lights.
fn extinguisher(about: &About) -> Option<Caution> {
    let board = about.board;
    let site = board.site();
    let faces =
        |lot: usize| board.place(lot).map_or(0, |place| site.faces(place.home.surface as usize));
    let on = |is: &dyn Fn(&Item) -> bool| -> Vec<usize> {
        (0..site.lots.len()).filter(|&l| is(&site.items[site.lots[l].item])).collect()
    };
    let fires = on(&|i| i.hazards.meets(FIRE) || i.hazards.meets(FUEL));
    let beside = |lot: usize| fires.iter().any(|&f| faces(f) & faces(lot) != 0);
    let near: Vec<usize> = on(&puts_out_fire).into_iter().filter(|&l| beside(l)).collect();
    let burning = fires.iter().filter(|&&f| near.iter().any(|&l| faces(f) & faces(l) != 0));
    let names = |lots: Vec<usize>| {
        let all: Vec<usize> = lots.into_iter().map(|l| site.lots[l].item).collect();
        about.named(|i| all.iter().any(|&n| site.items[n].name == i.name))
    };
    let burning = names(burning.copied().collect());
    let (metres, feet) = metres_and_feet(TO_EXTINGUISHER);
    let text = format!(
        "On one face with what it may have to put out ({}): if that burns, nobody reaches for it there. Hang it on the way to the door, within {metres:.1} m ({feet:.0} ft), or at least on another face.",
        burning.join(", ")
    );
    let source = "29 CFR 1910.157(d)(4), read as quoted, for the distance; the rest is common practice, no source";
    (!near.is_empty()).then(|| caution(names(near), text, source))
}

/// The volume of one copy by its outer size, in litres: it holds less.
fn outside(item: &Item) -> f64 {
    [item.size.w, item.size.d, item.size.h].iter().map(|l| l.as_mm() / 100.0).product()
}

/// A distance in metres and in feet.
fn metres_and_feet(distance: Length) -> (f64, f64) {
    (distance.as_mm() / 1000.0, distance.as_mm() / 304.8)
}
