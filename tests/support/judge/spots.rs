//! What a spot costs beside fetching: being hidden, being elsewhere than wished, leaving too little room to grow.

use super::Case;
use super::frame::{Block, out_of, outside, shared};
use super::ledger::term;
use super::site::{Sort, same};
use super::tours::{Map, Span};
use std::collections::BTreeSet;
use toolberth::domain::{Face, Home};
use toolberth::physics::body::{Body, Grip, Posture};
use toolberth::tasks::outcome::Zone;
use toolberth::units::Length;

/// How near to the knife's edge a line of sight is left open, in mm.
const EDGE: f64 = 1e-3;

impl Case<'_> {
    pub(super) fn spots(&mut self) {
        // Body heights are measured by the tests of the tables.
        let Ok(site) = toolberth::site::Site::new(self.workspace) else { return };
        let body = site.body;
        let found = [
            ("sight", self.hidden(body.eye.as_mm())),
            ("wish", [self.unmet(); 2]),
            ("reserve", self.cramped(&body)),
        ];
        for (name, [least, most]) in found {
            let told = term(&self.plan.worth, name).as_s();
            let slack = 2e-3 + 1e-4 * least;
            self.expect(least - slack <= told && told <= most + slack, || {
                format!("{name} costs {told} s, worked out at {least} to {most}")
            });
        }
    }

    /// At least and at most for looking for what is hidden.
    fn hidden(&self, eye: f64) -> Span {
        let map = Map::new(self.workspace, &self.site);
        let rate = self.workspace.shop.rates.sight.as_s();
        let mut sum = [0.0; 2];
        let blocks = |n: &usize| {
            let sort = self.space(&self.things[*n]).map(|s| s.sort);
            matches!(sort, Some(Sort::Bay | Sort::Panel))
        };
        for n in (0..self.things.len()).filter(blocks) {
            let (thing, way) = (&self.things[n].block, self.things[n].placement.way);
            let others = (0..self.things.len()).filter(|&o| o != n).filter(blocks);
            let (mut sure, mut maybe) = (false, false);
            for other in others.map(|o| &self.things[o].block) {
                let [s, m] = self.hides(way, thing, other, eye, map.off(way));
                (sure, maybe) = (sure || s, maybe || m);
            }
            let cost = rate * self.things[n].placement.uses.as_week();
            sum = [sum[0] + if sure { cost } else { 0.0 }, sum[1] + if maybe { cost } else { 0.0 }];
        }
        sum
    }

    /// Whether a thing surely, and whether it perhaps hides another.
    fn hides(&self, way: Face, thing: &Block, other: &Block, eye: f64, off: f64) -> [bool; 2] {
        let (axis, up) = out_of(way);
        let size = outside(&self.workspace.carcass)[axis];
        // Depths from the face: front and rear.
        let depths = |b: &Block| {
            let [low, high] = [b[0][axis], b[1][axis]];
            let d = if up { [size - high, size - low] } else { [low, high] };
            d.map(|nm| nm as f64 / 1e6)
        };
        let across: Vec<usize> = (0..3).filter(|k| *k != axis).collect();
        let ahead = depths(other)[1] <= depths(thing)[0];
        if !ahead || across.iter().any(|&k| shared(thing, other, k) <= 0) {
            return [false; 2];
        }
        let part = |k: usize| shared(thing, other, k) as f64 / (thing[1][k] - thing[0][k]) as f64;
        if way == Face::Top {
            let part = part(0) * part(1);
            return [part > 0.5 + 1e-9, part > 0.5 - 1e-9];
        }
        if part(across[0]) < 0.5 {
            return [false; 2];
        }
        let middle = (thing[0][2] + thing[1][2]) as f64 / 2e6;
        let top = other[1][2] as f64 / 1e6;
        // How far the line from the eye to the middle of its front passes over the other thing at its worst.
        let line = |d: f64| eye + (middle - eye) * (d + off) / (depths(thing)[0] + off);
        let [front, rear] = depths(other);
        let over = (line(front) - top).min(line(rear) - top);
        [over < -EDGE, over < EDGE]
    }

    /// So much for each place that is not where its thing would rather be.
    fn unmet(&self) -> f64 {
        let rate = self.workspace.shop.rates.wish.as_s();
        let unmet = self.things.iter().filter(|thing| {
            let wishes = thing.item.map_or(&[][..], |i| &i.prefer);
            !wishes.is_empty() && !wishes.iter().any(|home| self.is_at(thing, home))
        });
        unmet.count() as f64 * rate
    }

    fn is_at(&self, thing: &super::Thing, home: &Home) -> bool {
        let Some(space) = self.space(thing) else { return false };
        let through = space.through.then(|| space.face.opposite());
        let face = |word: &str| {
            let faces = [Some(space.face), through];
            faces.into_iter().flatten().any(|f| f.name() == word)
        };
        let surface = |word: &str| same(word, &thing.placement.surface);
        match home.parts.as_slice() {
            [one] => face(one) || same(one, &space.name),
            [one, two] => face(one) && same(two, &space.name),
            [one, two, three, ..] => face(one) && same(two, &space.name) && surface(three),
            [] => false,
        }
    }

    /// At least and at most for room to grow that is missing.
    fn cramped(&self, body: &Body) -> Span {
        let shop = &self.workspace.shop;
        let rate = shop.rates.reserve.as_s();
        let room = self.near_room(body);
        let free =
            |face: Face, zone: usize| (room[zone][face as usize] - self.taken(face, zone)).max(0.0);
        let all = [Face::Front, Face::Back, Face::Left, Face::Right, Face::Top];
        let mut missing = 0.0;
        for (zone, there) in room.iter().enumerate() {
            let wanted = there.iter().sum::<f64>() * shop.reserve.share.as_fraction();
            missing += (wanted - all.iter().map(|f| free(*f, zone)).sum::<f64>()).max(0.0);
        }
        for (family, count, _) in &shop.reserve.families {
            let of = |p: &&toolberth::tasks::outcome::Placement| {
                let item = self.workspace.items.iter().find(|i| i.name == p.item);
                item.is_some_and(|i| i.family.as_ref() == Some(family))
            };
            let on: BTreeSet<Face> =
                self.plan.placements.iter().filter(of).map(|p| p.way).collect();
            let faces = all.iter().filter(|f| on.is_empty() || on.contains(f));
            let there: f64 = faces.map(|f| free(*f, 0) + free(*f, 1)).sum();
            missing += (self.usual(family) * f64::from(*count) - there).max(0.0);
        }
        // The two ways of adding up differ by rounding only.
        [rate * (missing - 1e-3).max(0.0), rate * (missing + 1e-3)]
    }

    /// Litres of a thing as it is usual in a family: the median of each side.
    fn usual(&self, family: &str) -> f64 {
        let side = |k: usize| {
            let of = self.workspace.items.iter().filter(|i| i.family.as_deref() == Some(family));
            let mut all: Vec<f64> =
                of.map(|i| [i.size.w, i.size.d, i.size.h][k].as_mm() / 100.0).collect();
            all.sort_by(f64::total_cmp);
            let n = all.len();
            if n == 0 { 0.0 } else { (all[(n - 1) / 2] + all[n / 2]) / 2.0 }
        };
        side(0) * side(1) * side(2)
    }

    /// Litres of all that is kept near in bays and drawers of a face.
    fn taken(&self, face: Face, zone: usize) -> f64 {
        let zone = [Zone::Easy, Zone::Bend][zone];
        let here = self.things.iter().filter(|t| {
            let space = self.space(t);
            t.placement.zone == zone
                && space
                    .is_some_and(|s| s.face == face && matches!(s.sort, Sort::Bay | Sort::Drawer))
        });
        here.map(|t| {
            let litres = t.item.map_or(0.0, |i| {
                [i.size.w, i.size.d, i.size.h].iter().map(|l| l.as_mm() / 100.0).product()
            });
            litres * f64::from(t.placement.copies)
        })
        .sum()
    }

    /// Litres of the empty bays and drawers in easy and in bend reach, by face: cut where the zones end.
    fn near_room(&self, body: &Body) -> [[f64; 5]; 2] {
        let mut room = [[0.0; 5]; 2];
        let mut cuts: Vec<i64> = [body.knee, body.knuckle, body.shoulder, body.overhead_grip]
            .map(|l| l.as_nm())
            .to_vec();
        cuts.extend([i64::MIN / 4, i64::MAX / 4]);
        cuts.sort_unstable();
        for space in &self.site.spaces {
            let deep =
                space.inside[1][out_of(space.face).0] - space.inside[0][out_of(space.face).0];
            let depth = match space.sort {
                Sort::Bay => deep / 2,
                Sort::Drawer => 0,
                Sort::Panel | Sort::Bench => continue,
            };
            for cut in cuts.windows(2) {
                let [from, to] = [cut[0].max(space.inside[0][2]), cut[1].min(space.inside[1][2])];
                if from >= to {
                    continue;
                }
                let mut slice = space.inside;
                (slice[0][2], slice[1][2]) = (from, to);
                let middle = Length::nm((from + to) / 2);
                let zone = match body.posture(&Grip {
                    height: middle,
                    depth: Length::nm(depth),
                    sill: Length::nm(from),
                }) {
                    Posture::Easy => 0,
                    Posture::Bend => 1,
                    _ => continue,
                };
                let litres = |b: &Block| {
                    (0..3).map(|k| shared(&slice, b, k).max(0) as f64 / 1e8).product::<f64>()
                };
                let own = |b: &&(String, Block)| {
                    space.sort == Sort::Bay && b.0.starts_with(&format!("{} / ", space.name))
                };
                let boards: f64 = self.site.boards.iter().filter(own).map(|b| litres(&b.1)).sum();
                room[zone][space.face as usize] += litres(&slice) - boards;
            }
        }
        room
    }
}
