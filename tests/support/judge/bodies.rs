//! What each thing is: every copy told once, sizes by pose and turn, piles and rows, weights, uses, grips.

use super::frame::{self, seen};
use super::homes::suits;
use super::site::Surface;
use super::{Case, Thing};
use std::collections::BTreeMap;
use toolberth::domain::{Dims, Face, Item, Pose};
use toolberth::tasks::outcome::Kind;
use toolberth::units::Length;

/// How far a height may be off for rounding: a micrometre.
const HAIR: i64 = 1_000;

impl Case<'_> {
    /// Each copy of each item has one place or is left out, and nothing else is.
    pub(super) fn counts(&mut self) {
        let mut told: BTreeMap<(&str, u32), u32> = BTreeMap::new();
        for p in &self.plan.placements {
            (p.copy..p.copy + p.copies).for_each(|c| *told.entry((&p.item, c)).or_default() += 1);
        }
        for left in &self.plan.left_out {
            *told.entry((&left.copy.item, left.copy.copy)).or_default() += 1;
        }
        let mut wrong = Vec::new();
        for item in &self.workspace.items {
            for copy in 1..=item.count {
                let times = told.remove(&(item.name.as_str(), copy)).unwrap_or(0);
                if times != 1 {
                    wrong.push(format!("{} {copy} is told {times} times", item.name));
                }
            }
        }
        wrong.extend(
            told.keys().map(|(name, copy)| format!("{name} {copy} is not in the inventory")),
        );
        self.complaints.extend(wrong);
        self.slots();
    }

    /// On each face the slots are numbered from 1 without a gap.
    fn slots(&mut self) {
        for face in Face::ALL {
            let on_face = self.plan.placements.iter().filter(|p| p.face == face);
            let mut slots: Vec<u32> = on_face.map(|p| p.slot).collect();
            slots.sort_unstable();
            let good = slots.iter().zip(1..).all(|(slot, n)| *slot == n);
            self.expect(good, || format!("{} has slots {slots:?}", face.name()));
        }
    }

    /// Pose, size, weight, uses and grip of each.
    pub(super) fn bodies(&mut self) {
        let mut wrong = Vec::new();
        for thing in &self.things {
            let Some(item) = thing.item else { continue };
            let said = [
                self.posture(thing, item),
                weight(thing, item),
                uses(thing, item),
                grip(thing, item),
                (thing.placement.holds != item.holds).then(|| "holds something else".to_owned()),
                (thing.placement.of != item.count)
                    .then(|| "has another number of copies".to_owned()),
            ];
            wrong.extend(
                said.into_iter().flatten().map(|words| format!("{} {words}", thing.name())),
            );
        }
        self.complaints.extend(wrong);
    }

    fn posture(&self, thing: &Thing, item: &Item) -> Option<String> {
        let p = thing.placement;
        let surface = self.surface(thing)?;
        if !suits(surface, p.pose) {
            return Some(format!("may not {} there", p.pose.name()));
        }
        let Some(one) = item.pose(p.pose) else {
            return Some(format!("may not {}", p.pose.name()));
        };
        let ranges = seen(surface.face, frame::outside(&self.workspace.carcass), &thing.block);
        let have = ranges.map(|[low, high]| high - low);
        let fits = bundles(item, one, p.copies, surface)
            .into_iter()
            .filter_map(|dims| turned(item, dims, surface, p.turned))
            .any(|dims| along(dims, surface) == have);
        (!fits).then(|| format!("is {have:?} nm along, up and out, which it cannot be"))
    }
}

/// The sizes that so many copies may have together: one, a pile on a deck, a row.
fn bundles(item: &Item, one: Dims, copies: u32, surface: &Surface) -> Vec<Dims> {
    if copies == 1 {
        return vec![one];
    }
    let pile = (copies <= item.stack && surface.kind != Kind::Wall)
        .then(|| Dims { h: one.h * i64::from(copies), ..one });
    let row = item.pitch.map(|pitch| Dims { w: one.w + pitch * i64::from(copies - 1), ..one });
    pile.into_iter().chain(row).collect()
}

/// The size as turned; `None` where it may not be.
pub(super) fn turned(item: &Item, dims: Dims, surface: &Surface, turned: bool) -> Option<Dims> {
    let Dims { w, d, h } = dims;
    let upright = surface.kind == Kind::Wall && surface.name != "ceiling";
    let other = if upright { Dims { w: h, d, h: w } } else { Dims { w: d, d: w, h } };
    match turned {
        false => Some(dims),
        true => (item.turn || other == dims).then_some(other),
    }
}

/// What a size takes along u, v and depth of the face.
pub(super) fn along(dims: Dims, surface: &Surface) -> [i64; 3] {
    let Dims { w, d, h } = dims;
    let sides = match (surface.kind, surface.name.as_str()) {
        (Kind::Wall, "left" | "right") => [d, h, w],
        (Kind::Wall, _) => [w, h, d],
        _ if surface.face == Face::Top => [w, d, h],
        _ => [w, h, d],
    };
    sides.map(Length::as_nm)
}

fn weight(thing: &Thing, item: &Item) -> Option<String> {
    let p = thing.placement;
    let all = item.weight * i64::from(p.copies);
    (p.weight != all).then(|| format!("weighs {} kg, told {}", all.as_kg(), p.weight.as_kg()))
}

/// Uses a week of the copies in the box: one fetch brings all, or the copies share the uses.
fn uses(thing: &Thing, item: &Item) -> Option<String> {
    let p = thing.placement;
    let of = if item.take_all { 1.0 } else { f64::from(item.count) };
    let each = item.uses.as_week() / of;
    let all = each * f64::from(p.copies);
    let near = |x: f64| (p.uses.as_week() - x).abs() <= 1e-6 + 1e-5 * x;
    let good = near(all) || (item.take_all && near(each));
    (!good).then(|| format!("is used {all} times a week, told {}", p.uses.as_week()))
}

/// Height of the grip: mid-height of the box, or as the item says; of a pile, of the top one.
fn grip(thing: &Thing, item: &Item) -> Option<String> {
    let p = thing.placement;
    let [low, high] = thing.block.map(|c| c[2]);
    let middle = (low + high) / 2;
    let mut right = Vec::new();
    if let Some(up) = item.grip.map(Length::as_nm) {
        right.push(low + up);
        right.push(high - (high - low) / i64::from(p.copies) + up);
    }
    // Where it does not stand, a grip told for standing says nothing of its height.
    if item.grip.is_none() || p.pose != Pose::Stand {
        right.push(middle);
    }
    let told = p.grip_height.as_nm();
    let good = right.iter().any(|r| (told - r).abs() <= HAIR);
    (!good).then(|| {
        format!("has its grip at {} mm, told {}", right[0] as f64 / 1e6, told as f64 / 1e6)
    })
}
