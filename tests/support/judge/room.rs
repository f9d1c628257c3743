//! Whether something was left out though the final layout has a corner place for it that breaks no rule.

use super::bodies::{along, turned};
use super::frame::{self, Block, overlap, sticks_out};
use super::site::{Sort, Surface};
use super::{Breach, Case};
use std::collections::BTreeSet;
use toolberth::domain::{Face, Item, Pose, Workspace};
use toolberth::geometry::Box3;
use toolberth::tasks::outcome::{Kind, Placement, Plan, Zone};
use toolberth::units::{Length, Mass, Price, Time};

/// So many places of one item are looked at through all rules; the rest are taken on trust.
const PATIENCE: usize = 200;

/// Copies left out that some corner place would take: free, in plain reach, by its orders, breaking no rule anew.
///
/// Reach is the plan's to tell, so only heights between knuckle and shoulder near the face count, for who stands.
pub fn overlooked(workspace: &Workspace, plan: &Plan) -> Vec<String> {
    if workspace.shop.person.seated {
        return Vec::new();
    }
    let before = breaches(workspace, plan, true);
    let mut tried = BTreeSet::new();
    let mut out = Vec::new();
    for left in &plan.left_out {
        let item = workspace.items.iter().find(|i| i.name == left.copy.item);
        let Some(item) = item.filter(|i| !i.fixed && tried.insert(i.name.clone())) else {
            continue;
        };
        let case = Case::open(workspace, plan);
        let good = |p: &&Placement| {
            let mut more = plan.clone();
            more.placements.push((*p).clone());
            breaches(workspace, &more, true).is_subset(&before)
        };
        let places = case.corner_places(item, left.copy.copy);
        if let Some(p) = places.iter().take(PATIENCE).find(good) {
            out.push(format!(
                "{} {} could be at {} / {}: {:?}",
                p.item, p.copy, p.bay, p.surface, p.space
            ));
        }
    }
    out
}

/// What a plan breaks, in words that tell two breaches apart; with what it perhaps breaks, or without.
fn breaches(workspace: &Workspace, plan: &Plan, doubts: bool) -> BTreeSet<String> {
    let mut case = Case::open(workspace, plan);
    case.overlaps();
    case.clearances();
    case.homes();
    case.loads_worked_out();
    case.carried();
    case.statics();
    case.ways();
    case.hazards();
    case.at_hand();
    let ways = case
        .complaints
        .iter()
        .filter(|c| c.contains("is taken out by") || c.contains("of the bench"));
    let ways: Vec<String> = ways.cloned().collect();
    let label = |b: &Breach| match b.rule {
        // Their words hold figures that any change changes.
        "casters" | "tip" => b.rule.to_owned(),
        _ => format!("{} {:?} {}", b.rule, b.names, b.words),
    };
    case.breaches.iter().filter(|b| doubts || b.sure).map(label).chain(ways).collect()
}

impl Case<'_> {
    /// Every surface within its limit, by the judge's own sums.
    fn loads_worked_out(&mut self) {
        for s in 0..self.site.surfaces.len() {
            let on = || self.things.iter().filter(|t| t.surface == Some(s));
            let load: Mass = on().map(|t| t.placement.weight).sum();
            if self.site.surfaces[s].limit.is_some_and(|l| load > l) {
                let names: Vec<String> = on().map(|t| t.placement.item.clone()).collect();
                self.breach("supported", names, format!("surface {s} over its limit"));
            }
        }
    }

    /// All free corner places of one copy, as placements.
    fn corner_places(&self, item: &Item, copy: u32) -> Vec<Placement> {
        let mut out = Vec::new();
        for surface in &self.site.surfaces {
            for (pose, turn) in Pose::ALL.into_iter().flat_map(|p| [(p, false), (p, true)]) {
                let Some(size) = extents(item, pose, turn, surface) else {
                    continue;
                };
                for block in self.corners_of(surface, size) {
                    if self.is_free(item, surface, &block) {
                        out.extend(self.reachable(item, copy, surface, (pose, turn), &block));
                    }
                }
            }
        }
        out
    }

    /// Boxes of a size pushed into every corner that edges and things make on a surface.
    fn corners_of(&self, surface: &Surface, size: [i64; 3]) -> Vec<Block> {
        let (axis, end) = surface.plane;
        let free = surface.free;
        let mut marks: [Vec<i64>; 3] = Default::default();
        for k in 0..3 {
            if k == axis {
                marks[k].push(if end == 0 { free[0][k] } else { free[1][k] - size[k] });
                continue;
            }
            let things =
                self.things.iter().map(|t| &t.block).chain(self.site.boards.iter().map(|(_, b)| b));
            let beside =
                things.filter(|b| overlap(b, &free)).flat_map(|b| [b[1][k], b[0][k] - size[k]]);
            marks[k] = beside.chain([free[0][k], free[1][k] - size[k]]).collect();
            marks[k].retain(|m| *m >= free[0][k] && *m + size[k] <= free[1][k]);
            marks[k].sort_unstable();
            marks[k].dedup();
        }
        let mut out = Vec::new();
        for x in &marks[0] {
            for y in &marks[1] {
                out.extend(
                    marks[2]
                        .iter()
                        .map(|z| [[*x, *y, *z], [x + size[0], y + size[1], z + size[2]]]),
                );
            }
        }
        out
    }

    /// Whether a box with its free height meets nothing and stays inside.
    fn is_free(&self, item: &Item, surface: &Surface, block: &Block) -> bool {
        let in_bay = surface.kind == Kind::Deck && surface.face != Face::Top;
        let above = item.clearance.unwrap_or(self.workspace.shop.clearance).as_nm();
        let mut whole = *block;
        whole[1][2] += if in_bay { above } else { 0 };
        let kept = self.plan.reserve.iter().map(|r| frame::block(&r.space));
        let things = self.things.iter().map(|t| t.block).chain(kept);
        let mut all = things.chain(self.site.boards.iter().map(|(_, b)| *b));
        sticks_out(&whole, &surface.free) <= 0 && !all.any(|b| overlap(&whole, &b))
    }

    /// The placements of a box, one for each way out, where it is in plain reach.
    fn reachable(
        &self,
        item: &Item,
        copy: u32,
        surface: &Surface,
        (pose, turned): (Pose, bool),
        block: &Block,
    ) -> Vec<Placement> {
        let space = &self.site.spaces[surface.space];
        let grip = (block[0][2] + block[1][2]) / 2;
        let stature = self.workspace.shop.person.stature.map_or(1500.0, |s| s.as_mm());
        let height = grip as f64 / 1e6 / stature;
        let size = frame::outside(&self.workspace.carcass);
        let mut ways = vec![space.face];
        ways.extend(space.through.then(|| space.face.opposite()));
        ways.retain(|way| {
            let [near, far] = frame::seen(*way, size, block)[2];
            let deep = space.sort == Sort::Bay && (near + far) / 2 > 300_000_000;
            (0.45..0.75).contains(&height) && !deep && space.sort != Sort::Bench
        });
        let corner = |c: [i64; 3]| c.map(Length::nm);
        let placement = |way| Placement {
            item: item.name.clone(),
            copy,
            copies: 1,
            of: item.count,
            face: space.face,
            way,
            bay: space.name.clone(),
            surface: surface.name.clone(),
            slot: 0,
            pose,
            turned,
            space: Box3::new(corner(block[0]), corner(block[1])),
            grip_height: Length::nm(grip),
            zone: Zone::Easy,
            moved_first: Vec::new(),
            weight: item.weight,
            uses: item.uses,
            per_fetch: Time::ZERO,
            per_week: Price::ZERO,
            terms: Vec::new(),
            holds: Vec::new(),
            family: item.family.clone(),
            hazards: item.hazards,
            guarded: item.guarded,
            inside: item.inside.clone(),
            urgent: item.urgent,
            fixed: item.fixed,
        };
        ways.into_iter().map(placement).collect()
    }
}

/// What one copy takes along x, y and z on a surface; `None` where it may not be so.
fn extents(item: &Item, pose: Pose, turn: bool, surface: &Surface) -> Option<[i64; 3]> {
    let one = item.pose(pose).filter(|_| super::homes::suits(surface, pose))?;
    let sides = along(turned(item, one, surface, turn)?, surface);
    let mut out = [0; 3];
    for (axis, side) in frame::axes(surface.face).into_iter().zip(sides) {
        out[axis] = side;
    }
    Some(out)
}

/// Things whose place breaks a rule that nothing would break if they were left out: no rule is traded for a place.
pub fn better_left_out(workspace: &Workspace, plan: &Plan) -> Vec<String> {
    let before = breaches(workspace, plan, false);
    let mends = |n: &usize| {
        let mut less = plan.clone();
        less.placements.remove(*n);
        let after = breaches(workspace, &less, false);
        after.len() < before.len() && after.is_subset(&before)
    };
    let named = |p: &Placement| workspace.items.iter().any(|i| i.name == p.item && !i.fixed);
    let loose = (0..plan.placements.len()).filter(|n| named(&plan.placements[*n]));
    let all = loose.filter(|_| !before.is_empty()).filter(mends).map(|n| &plan.placements[n]);
    all.map(|p| format!("{} {} breaks a rule where it is and could be left out", p.item, p.copy))
        .collect()
}
