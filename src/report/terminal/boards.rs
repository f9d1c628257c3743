//! How far shelves sag, and how hard hooks and screws are asked.

use super::cart::section;
use super::face::place;
use super::figure::{count, length, mass};
use super::page::Page;
use super::table::Set;
use crate::domain::Face;
use crate::tasks::outcome::{BoardLoad, FixingLoad, Plan};

/// So many shelves and fixings are told, the hardest asked first.
const TOLD: usize = 6;

/// Shelves and floors whose material is named.
pub fn shelves(page: &mut Page, plan: &Plan) {
    let heads = [
        ("shelf", Set::Words),
        ("sags", Set::Figure),
        ("in the end", Set::Figure),
        ("at most", Set::Figure),
        ("strength used", Set::Figure),
        ("most by", Set::Words),
    ];
    let cells = |page: &Page, shelf: &BoardLoad| {
        let most = shelf.most_by.as_ref().map_or("itself", |(item, _)| item.as_str());
        vec![
            at(page, shelf.face, &shelf.bay, &shelf.surface),
            millimetres(shelf.sag),
            millimetres(shelf.sag_later),
            millimetres(shelf.limit),
            per_cent(shelf.strength_used),
            most.to_owned(),
        ]
    };
    let Some(first) = plan.boards.first() else { return };
    let told = &plan.boards[..plan.boards.len().min(TOLD)];
    section(page, "Shelves and floors, the most sagging first", &heads, told, cells);
    if let Some(next) = plan.boards.get(TOLD) {
        let more = count(plan.boards.len() - TOLD, "other");
        let share = per_cent(next.sag_used());
        page.paragraph(&format!("{more} with no more than {share} of the sag that they may have."));
    }
    let (thick, span) = (length(first.thickness, plan.units), length(first.span, plan.units));
    page.paragraph(&format!(
        "The first is {thick} {} over {span}, its ends {}. In the end: crept under a load that stays. At most: span / 240, a habit of cabinet makers, no standard. Strength: a quarter of the modulus of rupture, the margin of 4 being ours. Stiffness and strength after the Wood Handbook (FPL-GTR-190), low ends; creep after EN 1995-1-1 Table 3.2.",
        first.material, first.ends
    ));
    recalled(page, plan.boards.iter().map(|b| (b.material, &b.from_memory)));
}

/// What hangs where it is known what holds.
pub fn fixings(page: &mut Page, plan: &Plan) {
    let heads = [
        ("hung", Set::Words),
        ("place", Set::Words),
        ("each carries", Set::Figure),
        ("pulled out by", Set::Figure),
        ("used", Set::Figure),
    ];
    let cells = |page: &Page, fixing: &FixingLoad| {
        vec![
            fixing.item.clone(),
            at(page, fixing.face, &fixing.bay, &fixing.surface),
            mass(fixing.mass, plan.units),
            format!("{:.0} N", fixing.pull),
            per_cent(fixing.used),
        ]
    };
    let told = &plan.fixings[..plan.fixings.len().min(TOLD)];
    section(page, "Hooks and screws, the hardest asked first", &heads, told, cells);
    if plan.fixings.is_empty() {
        return;
    }
    if let Some(next) = plan.fixings.get(TOLD) {
        let more = count(plan.fixings.len() - TOLD, "other");
        page.paragraph(&format!("{more} with no more than {} used.", per_cent(next.used)));
    }
    once(page, "each holds by:", plan.fixings.iter().map(|f| f.by.clone()));
    page.paragraph(
        "Used: pull and load across the screw, each as a share of what a building design handbook allows (p. 170; 5.5 times less than pulls it out), added up; or the share of the hook's stated load. Never in end grain.",
    );
    recalled(page, plan.fixings.iter().map(|f| ("the wall", &f.from_memory)));
}

fn at(page: &Page, face: Face, bay: &str, surface: &str) -> String {
    format!("{}{}{}", face.name(), page.dot(), place(page, bay, surface))
}

/// What was recalled, material by material.
fn recalled<'a>(page: &mut Page, all: impl Iterator<Item = (&'a str, &'a Vec<&'static str>)>) {
    let told = all.filter(|(_, figures)| !figures.is_empty());
    once(
        page,
        "from memory:",
        told.map(|(what, figures)| format!("{what}: {}", figures.join(", "))),
    );
}

/// Points with one head, each told once.
fn once(page: &mut Page, head: &str, all: impl Iterator<Item = String>) {
    let mut told: Vec<String> = Vec::new();
    for words in all {
        if !told.contains(&words) {
            page.point(head, &words);
            told.push(words);
        }
    }
}

fn millimetres(sag: f64) -> String {
    format!("{sag:.1} mm")
}

/// A share in whole per cent, rounded up; far beyond all, just so.
fn per_cent(share: f64) -> String {
    if share > 99.0 { "far over".to_owned() } else { format!("{:.0} %", libm::ceil(share * 100.0)) }
}
