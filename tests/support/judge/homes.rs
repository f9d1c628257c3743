//! Where things are: surfaces as the files say them, no overlap, free height, at home on their surface, orders kept.

use super::frame::{self, Block, overlap, shared, sticks_out};
use super::site::{Sort, Surface, same};
use super::{Case, Thing};
use std::collections::BTreeMap;
use toolberth::domain::{Face, Home, Pose};
use toolberth::tasks::outcome::Kind;
use toolberth::units::{Length, Mass};

impl Case<'_> {
    /// The surfaces that the plan lists against those of the files.
    pub(super) fn surfaces(&mut self) {
        let mut listed = vec![false; self.site.surfaces.len()];
        let mut wrong = Vec::new();
        for row in &self.plan.surfaces {
            let block = frame::block(&row.space);
            let Some(k) = self.site.home(row.face, &row.bay, &row.surface, &block) else {
                if row.surface != "bench" || row.load != Mass::ZERO {
                    wrong.push(format!("{} / {} is no surface of this cart", row.bay, row.surface));
                }
                continue;
            };
            let mine = &self.site.surfaces[k];
            let bench = row.surface == "bench";
            if !bench && block != mine.free && block != mine.also {
                wrong.push(format!(
                    "{} / {} lies elsewhere: {block:?}, files {:?}",
                    row.bay, row.surface, mine.free
                ));
            }
            if row.kind != mine.kind || row.limit != mine.limit {
                wrong.push(format!(
                    "{} / {}: other kind or limit than in the files",
                    row.bay, row.surface
                ));
            }
            if std::mem::replace(&mut listed[k], true) && !bench {
                wrong.push(format!("{} / {} is listed twice", row.bay, row.surface));
            }
        }
        for (surface, _) in self
            .site
            .surfaces
            .iter()
            .zip(&listed)
            .filter(|(s, there)| !**there && s.name != "bench")
        {
            wrong.push(format!(
                "{} / {} is not listed",
                self.site.spaces[surface.space].name, surface.name
            ));
        }
        self.complaints.extend(wrong);
    }

    /// No two things share volume, and none crosses a board.
    pub(super) fn overlaps(&mut self) {
        for a in 0..self.things.len() {
            for b in a + 1..self.things.len() {
                if overlap(&self.things[a].block, &self.things[b].block) {
                    let names = [a, b].map(|n| self.things[n].placement.item.clone());
                    self.tangled.extend([a, b]);
                    let words =
                        format!("{} and {} overlap", self.things[a].name(), self.things[b].name());
                    self.breach("fits", names, words);
                }
            }
            for board in 0..self.site.boards.len() {
                let (what, block) = &self.site.boards[board];
                if overlap(&self.things[a].block, block) {
                    let words = format!("{} crosses {what}", self.things[a].name());
                    self.tangled.insert(a);
                    self.breach("fits", [self.things[a].placement.item.clone()], words);
                }
            }
        }
    }

    /// Above what stands or lies in a bay, so much stays free.
    pub(super) fn clearances(&mut self) {
        for n in 0..self.things.len() {
            let Some(wanted) = self.clearance(&self.things[n]) else {
                continue;
            };
            let thing = &self.things[n];
            let [low, high] = thing.block;
            let above = [[low[0], low[1], high[2]], [high[0], high[1], high[2] + wanted]];
            let others =
                self.things.iter().enumerate().filter(|(k, _)| *k != n).map(|(_, o)| o.block);
            let boards = self.site.boards.iter().map(|(_, b)| *b);
            let met = wanted > 0 && others.chain(boards).any(|b| overlap(&above, &b));
            let ceiling = self.surface(thing).map_or(i64::MAX, |s| s.free[1][2]);
            if met || above[1][2] > ceiling {
                let words = format!(
                    "{} has less than {} mm free above it",
                    thing.name(),
                    wanted as f64 / 1e6
                );
                let name = thing.placement.item.clone();
                self.breach("fits", [name], words);
            }
        }
    }

    /// Free height wanted above a thing; `None` where the rule does not apply.
    fn clearance(&self, thing: &Thing) -> Option<i64> {
        let surface = self.surface(thing)?;
        let in_bay = surface.kind == Kind::Deck && surface.face != Face::Top;
        let own = thing.item.and_then(|i| i.clearance);
        in_bay.then(|| own.unwrap_or(self.workspace.shop.clearance).as_nm())
    }

    /// Each within the free box of its surface, on its plane, and where it was ordered to.
    pub(super) fn homes(&mut self) {
        for n in 0..self.things.len() {
            let thing = &self.things[n];
            let (name, item) = (thing.name(), thing.placement.item.clone());
            let Some(surface) = self.surface(thing) else {
                self.complain(format!("{name} names no surface: {}", place(thing)));
                self.tangled.insert(n);
                continue;
            };
            let out = sticks_out(&thing.block, &surface.free);
            let (axis, end) = surface.plane;
            let off = thing.block[end][axis] - surface.free[end][axis];
            let disorder = self.disorder(thing);
            if out > 0 {
                self.tangled.insert(n);
                self.breach(
                    "fits",
                    [item.clone()],
                    format!("{name} sticks out by {} mm", out as f64 / 1e6),
                );
            }
            self.expect(off == 0, || format!("{name} is {} mm off its surface", off as f64 / 1e6));
            if let Some(words) = disorder {
                self.breach("fits", [item], format!("{name} {words}"));
            }
        }
        self.bench_share();
    }

    /// What is wrong with the place by the item's own orders.
    fn disorder(&self, thing: &Thing) -> Option<String> {
        let item = thing.item?;
        let ordered = item.place.iter().any(|home| self.at_home(thing, home));
        if !item.place.is_empty() && !ordered {
            return Some(format!("was ordered elsewhere than {}", place(thing)));
        }
        let on_bench = self.space(thing)?.sort == Sort::Bench;
        let asks = |home: &Home| home.parts.iter().any(|p| same(p, "top") || same(p, "bench"));
        let entered = self
            .workspace
            .layout
            .as_ref()
            .is_some_and(|l| l.entries.iter().any(|e| e.item == item.name));
        let may = item.place.iter().chain(&item.prefer).any(asks) || (item.fixed && entered);
        (on_bench && !may).then(|| "is on the bench unasked".to_owned())
    }

    /// Whether a thing is at a home of one to three parts.
    fn at_home(&self, thing: &Thing, home: &Home) -> bool {
        let Some(space) = self.space(thing) else {
            return false;
        };
        let face = |p: &str| {
            same(p, space.face.name()) || (space.through && same(p, space.face.opposite().name()))
        };
        let bay = |p: &str| same(p, &space.name);
        match home.parts.as_slice() {
            [one] => face(one) || bay(one),
            [one, two] => face(one) && bay(two),
            [one, two, three] => face(one) && bay(two) && same(three, &thing.placement.surface),
            _ => false,
        }
    }

    fn bench_share(&mut self) {
        let [wide, deep, _] = frame::outside(&self.workspace.carcass).map(|l| l as f64 / 1e6);
        let on_bench =
            self.things.iter().filter(|t| self.space(t).is_some_and(|s| s.sort == Sort::Bench));
        let taken: f64 = on_bench
            .map(|t| {
                [0, 1].map(|k| (t.block[1][k] - t.block[0][k]) as f64 / 1e6).iter().product::<f64>()
            })
            .sum();
        let free = (1.0 - self.workspace.carcass.bench.keep_clear.as_fraction()) * wide * deep;
        self.expect(taken <= free + 1.0, || {
            format!("{taken:.0} mm² of the bench taken, {free:.0} may be")
        });
    }

    /// The layout as a file says it tells the same places.
    pub(super) fn entries(&mut self) {
        let entries = &self.plan.layout.entries;
        let (told, placed) = (entries.len(), self.things.len());
        let mut wrong = Vec::new();
        for thing in &self.things {
            let p = thing.placement;
            let Some(entry) = entries.iter().find(|e| e.item == p.item && e.copy == p.copy) else {
                wrong.push(format!("{} has no entry in the layout", thing.name()));
                continue;
            };
            let there = entry.face.is_none_or(|f| f == p.face)
                && same(&entry.bay, &p.bay)
                && entry.surface.as_ref().is_none_or(|s| *s == p.surface)
                && entry.pose.is_none_or(|x| x == p.pose)
                && entry.turned.is_none_or(|x| x == p.turned)
                && entry.copies == p.copies;
            let corner = self
                .surface(thing)
                .map(|s| corners(s, frame::outside(&self.workspace.carcass), &thing.block));
            let near = match (entry.at, corner) {
                (Some(at), Some(corners)) => corners.contains(&at.map(Length::as_nm)),
                _ => true,
            };
            if !there || !near {
                wrong.push(format!("{}: its entry in the layout says another place", thing.name()));
            }
        }
        self.complaints.extend(wrong);
        self.expect(told == placed, || {
            format!("{told} entries in the layout for {placed} placements")
        });
    }

    /// Kept room is free: within its surface, in nobody's way, across no board.
    pub(super) fn kept(&mut self) {
        let rooms: Vec<Block> = self.plan.reserve.iter().map(|r| frame::block(&r.space)).collect();
        let mut wrong = Vec::new();
        for (n, kept) in self.plan.reserve.iter().enumerate() {
            let block = &rooms[n];
            let home = self.site.home(kept.face, &kept.bay, &kept.surface, block);
            let within = home.is_some_and(|s| sticks_out(block, &self.site.surfaces[s].free) <= 0);
            let others = rooms[n + 1..].iter().chain(self.things.iter().map(|t| &t.block));
            let met =
                others.chain(self.site.boards.iter().map(|(_, b)| b)).any(|b| overlap(block, b));
            let solid = (0..3).all(|k| shared(block, block, k) > 0);
            if !within || met || !solid || kept.mass < Mass::ZERO {
                wrong.push(format!("kept room {} is not free: {block:?}", n + 1));
            }
        }
        self.complaints.extend(wrong);
    }

    /// What each surface carries.
    pub(super) fn loads(&mut self) {
        let mut carried: BTreeMap<(Face, String, String), (Mass, Vec<String>)> = BTreeMap::new();
        for thing in &self.things {
            let p = thing.placement;
            let entry =
                carried.entry((p.face, p.bay.to_lowercase(), p.surface.clone())).or_default();
            entry.0 += p.weight;
            entry.1.push(p.item.clone());
        }
        for row in &self.plan.surfaces {
            let key = (row.face, row.bay.to_lowercase(), row.surface.clone());
            let (load, names) = carried.get(&key).cloned().unwrap_or_default();
            self.expect(row.load == load, || {
                format!(
                    "{} / {} carries {} kg, told {}",
                    row.bay,
                    row.surface,
                    load.as_kg(),
                    row.load.as_kg()
                )
            });
            let home = self.site.home(row.face, &row.bay, &row.surface, &frame::block(&row.space));
            let limit = home.and_then(|s| self.site.surfaces[s].limit);
            if limit.is_some_and(|l| load > l) {
                self.breach(
                    "supported",
                    names,
                    format!("{} / {} carries {} kg", row.bay, row.surface, load.as_kg()),
                );
            }
        }
    }
}

fn place(thing: &Thing) -> String {
    let p = thing.placement;
    format!("{} / {} / {}", p.face.name(), p.bay, p.surface)
}

/// The corner of a box in the free box of its surface, by each reading of the side walls.
fn corners(surface: &Surface, outside: [i64; 3], block: &Block) -> Vec<[i64; 2]> {
    let mine = frame::seen(surface.face, outside, block);
    let free = frame::seen(surface.face, outside, &surface.free);
    let [u, v, d] = [0, 1, 2].map(|k| mine[k][0] - free[k][0]);
    match (surface.kind, surface.name.as_str()) {
        (Kind::Wall, "left" | "right") => vec![[d, v], [free[2][1] - mine[2][1], v]],
        (Kind::Wall, "ceiling") => vec![[u, d]],
        (Kind::Wall, _) => vec![[u, v]],
        _ if surface.face == Face::Top => vec![[u, v]],
        _ => vec![[u, d]],
    }
}

/// Whether a surface suits a pose.
pub(super) fn suits(surface: &Surface, pose: Pose) -> bool {
    (surface.kind == Kind::Wall) == (pose == Pose::Hang)
}
