//! Lifts with both hands, by the lifting equation written out again in centimetres.

use super::frame::{out_of, outside, seen};
use super::site::Sort;
use super::{Case, Thing};
use toolberth::domain::{Face, Handles, Hazard, Item};

/// The index above which nothing may be lifted, where the shop does not lower it.
const HIGHEST: f64 = 3.0;
/// Heights of the elbow that people of 1 mm of stature can have, shod; the plan's body is one between them.
const ELBOWS: [f64; 2] = [0.60, 0.66];

impl Case<'_> {
    /// A load over what the equation allows must be named; one that is over it for some elbows only may be.
    pub(super) fn lifts(&mut self) {
        let limit = self.workspace.shop.person.lifting_limit.unwrap_or(HIGHEST);
        for n in 0..self.things.len() {
            let thing = &self.things[n];
            let Some(item) = thing.item.filter(|i| self.judged(i)) else { continue };
            let most = self.allowed(thing, item).map(|kg| kg * limit);
            let (name, load) = (item.name.clone(), item.weight.as_kg());
            let words = format!("{name} of {load} kg is lifted where {most:?} kg may be");
            if most.iter().all(|m| load > m * 1.001 + 1e-9) {
                self.breach("lifting", [name], words);
            } else if most.iter().any(|m| load > m * 0.999 - 1e-9) {
                self.doubt("lifting", [name]);
            }
        }
    }

    fn judged(&self, item: &Item) -> bool {
        let seated = self.workspace.shop.person.seated;
        item.hands == 2 && item.fetched && !seated && !item.hazards.has(Hazard::Liquid)
    }

    /// What may be lifted at an index of one, for the lowest and the highest elbow.
    fn allowed(&self, thing: &Thing, item: &Item) -> [f64; 2] {
        let person = &self.workspace.shop.person;
        let stature = person.stature.map_or([1480.0, 1930.0], |s| [s.as_mm(); 2]);
        let top = self.workspace.carcass.height.as_mm();
        [0, 1].map(|k| self.at_bench(thing, item, top.min(ELBOWS[k] * stature[k])))
    }

    fn at_bench(&self, thing: &Thing, item: &Item, bench: f64) -> f64 {
        let p = thing.placement;
        let hand = p.grip_height.as_mm() / 10.0;
        let landed = bench / 10.0 + hand - thing.block[0][2] as f64 / 1e7;
        let ends = [(self.depth(thing), hand), (half(thing), landed)];
        let travel = (hand - landed).abs();
        let often = p.uses.as_week() / 210.0;
        let each = ends.map(|(deep, v)| {
            let h = deep + if v < 25.0 { 25.0 } else { 20.0 };
            23.0 * hm(h) * vm(v) * dm(travel) * fm(often) * cm(item.handles, v)
        });
        each[0].min(each[1])
    }

    /// Centimetres from the front that one stands at to the middle of the thing.
    fn depth(&self, thing: &Thing) -> f64 {
        let sort = self.space(thing).map(|s| s.sort);
        let middle = |face: Face| {
            let range = seen(face, outside(&self.workspace.carcass), &thing.block)[2];
            (range[0] + range[1]) as f64 / 2e7
        };
        match sort {
            Some(Sort::Panel) | None => half(thing),
            _ if thing.placement.way == Face::Top => middle(Face::Front).max(0.0),
            Some(_) => middle(thing.placement.way).max(0.0),
        }
    }
}

/// Half of what it takes towards whoever lifts it, in centimetres.
fn half(thing: &Thing) -> f64 {
    let axis = match thing.placement.way {
        Face::Top => 1,
        way => out_of(way).0,
    };
    (thing.block[1][axis] - thing.block[0][axis]) as f64 / 2e7
}

fn hm(h: f64) -> f64 {
    if h > 63.0 + 1e-9 { 0.0 } else { 25.0 / h.max(25.0) }
}

fn vm(v: f64) -> f64 {
    if v > 175.0 { 0.0 } else { 1.0 - 0.003 * (v - 75.0).abs() }
}

fn dm(d: f64) -> f64 {
    if d > 175.0 { 0.0 } else { 0.82 + 4.5 / d.max(25.0) }
}

/// Up to an hour a day and one lift a minute: seldom more on a cart.
fn fm(per_minute: f64) -> f64 {
    match per_minute {
        f if f <= 0.2 => 1.0,
        f if f <= 0.5 => 1.0 - (f - 0.2) / 10.0,
        f if f <= 1.0 => 0.97 - (f - 0.5) * 0.06,
        f => 0.94 - (f - 1.0) * 0.03,
    }
}

fn cm(handles: Option<Handles>, v: f64) -> f64 {
    match handles {
        Some(Handles::Good) => 1.0,
        Some(Handles::Fair) => {
            if v < 75.0 {
                0.95
            } else {
                1.0
            }
        }
        Some(Handles::Poor) | None => 0.9,
    }
}
