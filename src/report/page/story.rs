//! Thing by thing: where it is, why, what it costs and what is to be minded.

use super::faces::surface;
use super::link;
use crate::report::figure::{length, mass, seconds};
use crate::report::sentence;
use crate::tasks::outcome::{Copy, Placement, Plan};
use crate::units::{show_seconds, show_uses};
use maud::{Markup, html};

/// One story for every thing. With a script the page shows the one that is asked for; without, all of them.
pub fn stories(plan: &Plan) -> Markup {
    html! {
        section #stories aria-labelledby="stories-head" {
            h2 #stories-head { "Thing by thing" }
            @for index in 0..plan.placements.len() { (placed(plan, index)) }
            @for index in 0..plan.left_out.len() { (left_out(plan, index)) }
        }
    }
}

fn placed(plan: &Plan, index: usize) -> Markup {
    let p = &plan.placements[index];
    let id = link::story(index);
    let head = format!("{id}-head");
    html! {
        article id=(id) aria-labelledby=(head) data-words=(words(p)) data-family=[p.family.as_deref()]
            data-where=(link::place(p)) {
            h3 id=(head) tabindex="-1" { (sentence::name(p)) }
            p.where {
                (link::place(p)) ", slot " (p.slot) " (" (link::pose(p)) ")"
                @if p.way != p.face { ", taken at the " (p.way.name()) }
            }
            (urgent(p))
            dl {
                (fact("Cost", cost(p)))
                (fact("Reach", html! { (p.zone.name()) ", grip at " (length(p.grip_height, plan.units)) }))
                (fact("Move first", moved(plan, p)))
                (fact("Stands before", before(plan, p)))
                (fact("In it", inside(p)))
                (fact("Hazards", hazards(p)))
                (fact("Size", size(plan, p)))
                (fact("Mass", html! { (mass(p.weight, plan.units)) }))
                (fact("Surface", html! { (surface(plan, p)) }))
                (fact("Family", html! { (p.family.as_deref().unwrap_or("")) }))
            }
            (minded(plan, &p.item))
        }
    }
}

/// What the search looks at.
fn words(p: &Placement) -> String {
    let mut words = vec![sentence::name(p)];
    words.extend(p.holds.iter().cloned());
    words.extend(p.hazards.iter().map(|h| h.name().to_owned()));
    words.join(" / ")
}

/// A fact with its name; nothing where there is none.
fn fact(name: &str, told: Markup) -> Markup {
    html! { @if !told.0.is_empty() { div { dt { (name) } dd { (told) } } } }
}

fn urgent(p: &Placement) -> Markup {
    html! {
        @if p.urgent { p { "It must be at hand at once." } }
        @if p.fixed { p { "It stays where the layout has it." } }
    }
}

fn cost(p: &Placement) -> Markup {
    let each = show_seconds(p.per_fetch.as_s());
    html! {
        "used " (show_uses(p.uses)) "; its place costs " (seconds(p.per_week)) " s a week, "
        (each) " a fetch"
        @if !p.terms.is_empty() {
            ul { @for term in &p.terms { li { (term.term) " " (seconds(term.price)) " s a week: " (term.told) } } }
        }
    }
}

fn moved(plan: &Plan, p: &Placement) -> Markup {
    match p.moved_first.is_empty() {
        true => html! { "nothing" },
        false => link::copies(plan, &p.moved_first),
    }
}

/// What cannot be taken before this is moved.
fn before(plan: &Plan, p: &Placement) -> Markup {
    let this = Copy { item: p.item.clone(), copy: p.copy };
    let behind = plan.placements.iter().enumerate().filter(|(_, o)| o.moved_first.contains(&this));
    link::listed(behind.map(|(k, _)| link::thing(plan, k)))
}

fn inside(p: &Placement) -> Markup {
    html! { (p.holds.join(", ")) }
}

fn hazards(p: &Placement) -> Markup {
    let mut told: Vec<String> = p.hazards.iter().map(|h| h.name().to_owned()).collect();
    if p.guarded {
        told.push("its edge is covered".to_owned());
    }
    told.extend(p.inside.as_ref().map(|can| format!("kept in a {can}")));
    html! {
        @if told.is_empty() { "none is named; that does not make it harmless" } @else { (told.join(", ")) }
    }
}

fn size(plan: &Plan, p: &Placement) -> Markup {
    let size = [0, 1, 2].map(|axis| length(p.space.extent(axis), plan.units)).join(" × ");
    html! { (size) " (wide, deep and high, as the front sees it)" }
}

/// The broken rules and cautions that name an item.
fn minded(plan: &Plan, item: &str) -> Markup {
    let names = |items: &[String]| items.iter().any(|name| name == item);
    let broken: Vec<_> = plan.worth.broken.iter().filter(|b| names(&b.items)).collect();
    let cautions: Vec<_> = plan.cautions.iter().filter(|c| names(&c.items)).collect();
    html! {
        @if !broken.is_empty() || !cautions.is_empty() {
            ul.findings {
                @for b in broken { li { strong.alarm { (b.rule) } ": " (b.told) } }
                @for c in cautions { li { strong { "caution" } ": " (c.text) } }
            }
        }
    }
}

fn left_out(plan: &Plan, index: usize) -> Markup {
    let left = &plan.left_out[index];
    let (name, why) = sentence::left_out(left);
    let id = link::off(index);
    let head = format!("{id}-head");
    html! {
        article id=(id) aria-labelledby=(head) data-words=(name) data-where="off the cart" {
            h3 id=(head) tabindex="-1" { (name) }
            p.where { "off the cart" }
            p { (why) }
            (minded(plan, &left.copy.item))
        }
    }
}
