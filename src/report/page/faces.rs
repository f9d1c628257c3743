//! Face by face, slot by slot what lives there.

use super::link::{self, DOT};
use super::table::{Column, Group, Kind, grouped};
use crate::domain::Face;
use crate::report::figure::{capital, length, mass, seconds};
use crate::report::sentence;
use crate::tasks::outcome::{Placement, Plan, SurfaceLoad};
use maud::{Markup, html};

const COLUMNS: [Column; 7] = [
    ("slot", Kind::Figure),
    ("thing", Kind::Name),
    ("pose", Kind::Words),
    ("grip", Kind::Figure),
    ("reach", Kind::Words),
    ("move first", Kind::Words),
    ("s a week", Kind::Figure),
];

/// All faces on which something lives.
pub fn faces(plan: &Plan) -> Markup {
    html! {
        section #faces aria-labelledby="faces-head" {
            h2 #faces-head { "Face by face" }
            @for face in Face::ALL {
                @let here: Vec<usize> = on(plan, face);
                @if !here.is_empty() { (one(plan, face, &here)) }
            }
        }
    }
}

fn on(plan: &Plan, face: Face) -> Vec<usize> {
    (0..plan.placements.len()).filter(|&k| plan.placements[k].face == face).collect()
}

fn one(plan: &Plan, face: Face, here: &[usize]) -> Markup {
    let mut groups: Vec<Group> = Vec::new();
    for (n, &k) in here.iter().enumerate() {
        let placed = &plan.placements[k];
        if n == 0 || surface_of(&plan.placements[here[n - 1]]) != surface_of(placed) {
            let head = html! { (surface(plan, placed)) };
            groups.push(Group { head: Some(head), rows: Vec::new() });
        }
        if let Some(group) = groups.last_mut() {
            group.rows.push(row(plan, k));
        }
    }
    let theme = plan.elevations.iter().find(|e| e.face == face).map_or("", |e| e.theme.as_str());
    let dot = if theme.is_empty() { "" } else { DOT };
    grouped(&format!("{}{dot}{theme}", capital(face.name())), &COLUMNS, &groups)
}

fn surface_of(placed: &Placement) -> (&str, &str) {
    (&placed.bay, &placed.surface)
}

fn row(plan: &Plan, index: usize) -> Vec<Markup> {
    let placed = &plan.placements[index];
    vec![
        html! { (placed.slot) },
        html! {
            (link::thing(plan, index))
            @if placed.way != placed.face { " (taken at the " (placed.way.name()) ")" }
        },
        html! { (link::pose(placed)) },
        html! { (length(placed.grip_height, plan.units)) },
        html! { (placed.zone.name()) },
        link::copies(plan, &placed.moved_first),
        html! { (seconds(placed.per_week)) },
    ]
}

/// A surface with what it carries.
pub fn surface(plan: &Plan, placed: &Placement) -> String {
    let is_it = |s: &&SurfaceLoad| {
        (s.face, &s.bay, &s.surface) == (placed.face, &placed.bay, &placed.surface)
    };
    let place = sentence::place(&placed.bay, &placed.surface, DOT);
    let mass = |m| mass(m, plan.units);
    match plan.surfaces.iter().find(is_it) {
        Some(SurfaceLoad { load, limit: Some(limit), .. }) => {
            format!("{place}, carries {} of {}", mass(*load), mass(*limit))
        }
        Some(SurfaceLoad { load, .. }) => format!("{place}, carries {}", mass(*load)),
        None => place,
    }
}
