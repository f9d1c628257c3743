//! Hazards apart, urgent things at hand, within reach, and the rules found against the rules named.

use super::frame::over_each_other;
use super::site::{Sort, same};
use super::{Breach, Case, Thing};
use std::collections::BTreeSet;
use toolberth::domain::{Face, Hazard, Hazards};
use toolberth::tasks::outcome::{Broken, Zone};

/// Over this a grip may not be above the shoulder, in kilograms.
const HEAVY: f64 = 10.0;
/// Heights that a seated person reaches, in millimetres.
const SEATED: [f64; 2] = [380.0, 1220.0];
/// Rules of the whole cart: named without items.
const WHOLE: [&str; 2] = ["casters", "tip"];
/// Rules that say nothing of geometry: a breach of another one excuses what sticks out, overlaps or is disordered.
const OTHER: [&str; 7] =
    ["casters", "tip", "hazards apart", "lifting", "at hand", "reachable", "retrievable"];

const SPARKS: Hazards = Hazards::of(&[Hazard::Ignition, Hazard::Hot]);
const BURNS: Hazards = Hazards::of(&[Hazard::Flammable, Hazard::Aerosol, Hazard::SelfHeating]);
const BITES: Hazards = Hazards::of(&[Hazard::Oxidiser, Hazard::Corrosive]);

impl Case<'_> {
    pub(super) fn hazards(&mut self) {
        for a in 0..self.things.len() {
            for b in 0..self.things.len() {
                if a != b {
                    self.pair(a, b);
                }
            }
            self.alone(a);
        }
    }

    fn pair(&mut self, a: usize, b: usize) {
        let (one, two) = (&self.things[a], &self.things[b]);
        let (Some(x), Some(y)) = (one.item, two.item) else {
            return;
        };
        let (Some(home), Some(other)) = (self.space(one), self.space(two)) else {
            return;
        };
        let one_space =
            std::ptr::eq(home, other) || (home.sort == Sort::Bench && other.sort == Sort::Bench);
        let meets = |s: Hazards, h: Hazard| s.has(h);
        let on_faces = |t: &Thing| self.faces(t);
        let one_face = !on_faces(one).is_disjoint(&on_faces(two));
        let above = one.block[0][2] >= two.block[1][2] && over_each_other(&one.block, &two.block);
        let (p, q) = (x.hazards, y.hazards);
        let wrong = (p.meets(SPARKS) && q.meets(BURNS) && one_face)
            || (p.meets(BITES) && meets(q, Hazard::Flammable) && one_space)
            || (meets(p, Hazard::Battery) && meets(q, Hazard::Hot) && one_space)
            || (meets(p, Hazard::Liquid) && meets(q, Hazard::Electric) && one_space && above);
        if wrong {
            let (names, words) =
                ([x.name.clone(), y.name.clone()], format!("{} near {}", one.name(), two.name()));
            self.breach("hazards apart", names, words);
        }
    }

    /// Faces that count for a thing: a through bay counts as both, the bench as none of the sides.
    fn faces(&self, thing: &Thing) -> BTreeSet<(bool, Face)> {
        match self.space(thing) {
            Some(s) if s.sort == Sort::Bench => BTreeSet::from([(true, Face::Top)]),
            Some(s) if s.through => BTreeSet::from([(false, s.face), (false, s.face.opposite())]),
            Some(s) => BTreeSet::from([(false, s.face)]),
            None => BTreeSet::new(),
        }
    }

    /// What a thing may not be or do by itself.
    fn alone(&mut self, n: usize) {
        let thing = &self.things[n];
        let Some(item) = thing.item else { return };
        let name = thing.name();
        let canned = item.inside.as_deref().is_some_and(|i| same(i, "closed metal can"));
        let fetched = item.fetched;
        if item.hazards.has(Hazard::SelfHeating) && !canned {
            self.breach(
                "hazards apart",
                [item.name.clone()],
                format!("{name} is in no closed metal can"),
            );
        }
        let bare = |k: &usize| {
            self.things[*k].item.is_some_and(|i| i.hazards.has(Hazard::Sharp) && !i.guarded)
        };
        let sharp: Vec<usize> =
            self.closures[n].iter().copied().filter(|k| fetched && bare(k)).collect();
        for k in sharp {
            let words = format!("{} is unguarded and moved for {name}", self.things[k].name());
            self.breach("hazards apart", [self.things[k].placement.item.clone()], words);
        }
        self.above_shoulder(n);
    }

    /// Heavy things over the shoulder. The contract leaves the shoulder's height to the body data, so between two
    /// published heights the plan may say either.
    fn above_shoulder(&mut self, n: usize) {
        let thing = &self.things[n];
        let Some(item) = thing.item.filter(|i| i.weight.as_kg() > HEAVY) else {
            return;
        };
        let grip = thing.placement.grip_height.as_mm();
        let person = &self.workspace.shop.person;
        let stature = person.stature.filter(|_| !person.seated).map(|s| s.as_mm());
        let surely = stature.map_or(1600.0, |s| 0.835 * s + 35.0);
        let perhaps = stature.map_or(850.0, |s| 0.79 * s);
        let (name, words) = (item.name.clone(), format!("{} is above the shoulder", thing.name()));
        if grip > surely {
            self.breach("hazards apart", [name], words);
        } else if grip > perhaps {
            self.doubt("hazards apart", [name]);
        }
    }

    /// Reach zones against the body, and urgent things against the rule for them.
    pub(super) fn at_hand(&mut self) {
        for n in 0..self.things.len() {
            let p = self.things[n].placement;
            if p.zone == Zone::Out {
                self.breach(
                    "reachable",
                    [p.item.clone()],
                    format!("{} is out of reach", self.things[n].name()),
                );
            }
            if let Some(words) = self.against_body(n) {
                self.complain(words);
            }
            let urgent = self.things[n].item.is_some_and(|i| i.urgent);
            if let Some(why) = self.hindrance(n).filter(|_| urgent) {
                self.breach(
                    "at hand",
                    [p.item.clone()],
                    format!("{}: {why}", self.things[n].name()),
                );
            }
        }
    }

    /// A zone that the person's body rules out.
    fn against_body(&self, n: usize) -> Option<String> {
        let (p, person) = (self.things[n].placement, &self.workspace.shop.person);
        let grip = p.grip_height.as_mm();
        let impossible = if person.seated {
            let band = (SEATED[0] - 1e-6..=SEATED[1] + 1e-6).contains(&grip);
            matches!(p.zone, Zone::Bend | Zone::Kneel) || (!band && p.zone != Zone::Out)
        } else {
            person.stature.is_some_and(|s| grip > 1.35 * s.as_mm() + 35.0) && p.zone != Zone::Out
        };
        impossible
            .then(|| format!("{} cannot be {} at {grip} mm", self.things[n].name(), p.zone.name()))
    }

    /// Why a thing is not at hand at once.
    fn hindrance(&self, n: usize) -> Option<&'static str> {
        let thing = &self.things[n];
        let (p, space) = (thing.placement, self.space(thing)?);
        let at_wall = self.workspace.shop.stations.iter().any(|s| s.walls.contains(&p.way));
        match () {
            () if !self.closures[n].is_empty() => Some("something is before it"),
            () if space.sort == Sort::Drawer => Some("it is in a drawer"),
            () if matches!(p.zone, Zone::Stretch | Zone::Out) => Some("it is not in easy reach"),
            () if at_wall => Some("its face stands at a wall"),
            () => None,
        }
    }

    /// Every sure breach is named, and every rule named is broken.
    pub(super) fn verdict(&mut self) {
        let named = &self.plan.worth.broken;
        let mut wrong = Vec::new();
        for breach in self.breaches.iter().filter(|b| b.sure) {
            if !named.iter().any(|rule| self.answers(rule, breach)) {
                wrong.push(format!("not named as broken ({}): {}", breach.rule, breach.words));
            }
        }
        for rule in named {
            let borne_out = self.breaches.iter().any(|b| self.bears_out(b, rule));
            if !borne_out {
                wrong.push(format!(
                    "named as broken, but is not: {} {:?} {}",
                    rule.rule, rule.items, rule.told
                ));
            }
            let beyond = match rule.rule {
                "casters" | "supported" => rule.value > rule.limit,
                "tip" => rule.value < rule.limit,
                _ => true,
            };
            if !beyond || rule.told.is_empty() {
                wrong.push(format!("{}: {} is not beyond {}", rule.rule, rule.value, rule.limit));
            }
        }
        self.complaints.extend(wrong);
    }

    /// Whether a rule named by the plan tells this breach.
    fn answers(&self, rule: &Broken, breach: &Breach) -> bool {
        let names = self.names(rule);
        match breach.rule {
            "fits" => !OTHER.contains(&rule.rule) && !names.is_disjoint(&breach.names),
            "supported" => {
                rule.rule == "supported" && (names.is_empty() || !names.is_disjoint(&breach.names))
            }
            whole if WHOLE.contains(&whole) => rule.rule == whole,
            other => rule.rule == other && breach.names.is_subset(&names),
        }
    }

    /// Whether a breach is what a rule named by the plan speaks of.
    fn bears_out(&self, breach: &Breach, rule: &Broken) -> bool {
        let names = self.names(rule);
        let about = WHOLE.contains(&rule.rule) || !names.is_disjoint(&breach.names);
        breach.rule == rule.rule && about
    }

    /// The items that a rule names, without the numbers of their copies.
    fn names(&self, rule: &Broken) -> BTreeSet<String> {
        let known = |name: &str| self.workspace.items.iter().any(|i| i.name == name);
        let bare = |name: &String| match name.rsplit_once(' ') {
            Some((front, _)) if !known(name) => front.to_owned(),
            _ => name.clone(),
        };
        rule.items.iter().map(bare).collect()
    }
}
