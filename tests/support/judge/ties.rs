//! What belongs together: companions, jobs and families, counted again from where everything is.

use super::Case;
use super::ledger::term;
use super::tours::{Map, Span};
use std::collections::{BTreeMap, BTreeSet};
use toolberth::domain::{Face, Item};

type Faces = BTreeSet<Face>;

impl Case<'_> {
    pub(super) fn ties(&mut self) {
        let site = std::mem::take(&mut self.site);
        let map = Map::new(self.workspace, &site);
        let found = [
            ("together", self.together(&map)),
            ("jobs", self.jobs(&map)),
            ("family", [self.families(); 2]),
        ];
        self.site = site;
        for (name, [least, most]) in found {
            let told = term(&self.plan.worth, name).as_s();
            let slack = 1e-3 + 1e-4 * least;
            self.expect(least - slack <= told && told <= most + slack, || {
                format!("{name} costs {told} s, worked out at {least} to {most}")
            });
        }
    }

    /// Where an item is fetched from.
    fn seats(&self, name: &str) -> Faces {
        let here = self.plan.placements.iter().filter(|p| p.item == name);
        here.map(|p| p.way).collect()
    }

    /// One walk from each companion to the other, as often as both are wanted.
    fn together(&self, map: &Map) -> Span {
        let items = &self.workspace.items;
        let uses: BTreeMap<&str, f64> =
            items.iter().map(|i| (i.name.as_str(), i.uses.as_week())).collect();
        let named = |i: &Item| i.with.iter().map(|(n, _)| n.clone()).collect::<Vec<_>>();
        let mut pairs = BTreeSet::new();
        for item in items {
            for other in named(item).into_iter().filter(|o| *o != item.name) {
                pairs.insert((item.name.clone().min(other.clone()), item.name.clone().max(other)));
            }
        }
        let turn = self.workspace.shop.rates.together.as_s();
        let mut sum = [0.0; 2];
        for (one, other) in pairs {
            let (a, b) = (self.seats(&one), self.seats(&other));
            if a.is_empty() || b.is_empty() || !a.is_disjoint(&b) {
                continue;
            }
            let mut near = [f64::INFINITY; 2];
            for (from, to) in a.iter().flat_map(|f| b.iter().map(move |t| (*f, *t))) {
                let bench = from == Face::Top || to == Face::Top;
                let walk = map.between(from, to).map(|s| s + if bench { 0.0 } else { turn });
                near = [near[0].min(walk[0]), near[1].min(walk[1])];
            }
            let times = uses[one.as_str()].min(uses[other.as_str()]);
            sum = [0, 1].map(|k| sum[k] + times * if times > 0.0 { near[k] } else { 0.0 });
        }
        sum
    }

    /// What the round for each job is longer than to its farthest face and back.
    fn jobs(&self, map: &Map) -> Span {
        let mut sum = [0.0; 2];
        for job in &self.workspace.shop.jobs {
            let wanted: Vec<(Faces, bool)> = job
                .items
                .iter()
                .filter_map(|(name, _)| self.workspace.items.iter().find(|i| i.name == *name))
                .map(|i| (self.seats(&i.name), i.take_all))
                .filter(|(faces, _)| !faces.is_empty())
                .collect();
            let detour = self.detour(map, &wanted);
            let times = job.uses.as_week();
            sum = [0, 1].map(|k| sum[k] + times * if times > 0.0 { detour[k] } else { 0.0 });
        }
        sum
    }

    /// The detour of the shortest round that has everything; where several rounds may be the shortest, of any of them.
    fn detour(&self, map: &Map, wanted: &[(Faces, bool)]) -> Span {
        let all = [Face::Front, Face::Back, Face::Left, Face::Right, Face::Top];
        let sets = (0..32u32).map(|bits| {
            let on = |k: &usize| bits >> k & 1 == 1;
            (0..5).filter(on).map(|k| all[k]).collect::<Faces>()
        });
        let has =
            |set: &Faces| {
                wanted.iter().all(|(faces, every)| {
                    if *every { faces.is_subset(set) } else { !faces.is_disjoint(set) }
                })
            };
        let useful = |set: &Faces| set.iter().all(|f| wanted.iter().any(|(w, _)| w.contains(f)));
        let rounds: Vec<(Span, Vec<Face>)> = sets
            .filter(|set| has(set) && useful(set))
            .map(|set| set.into_iter().collect::<Vec<_>>())
            .map(|set| (map.round(&set), set))
            .collect();
        let most = rounds.iter().map(|(round, _)| round[1]).fold(f64::INFINITY, f64::min);
        let near = rounds.iter().filter(|(round, _)| round[0] <= most + 1e-6);
        let turn = self.workspace.shop.rates.jobs.as_s();
        let detours: Vec<Span> = near
            .map(|(_, set)| {
                let sides = set.iter().filter(|f| **f != Face::Top).count() as f64;
                map.detour(set).map(|s| s + turn * (sides - 1.0).max(0.0))
            })
            .collect();
        let least = detours.iter().map(|d| d[0]).fold(f64::INFINITY, f64::min);
        [least.min(1e9), detours.iter().map(|d| d[1]).fold(0.0, f64::max)]
    }

    /// So much for each side but one of each family.
    fn families(&self) -> f64 {
        let mut on: BTreeMap<&str, Faces> = BTreeMap::new();
        for p in &self.plan.placements {
            let item = self.workspace.items.iter().find(|i| i.name == p.item);
            let family = item.and_then(|i| i.family.as_deref());
            if let Some(family) = family.filter(|_| p.way != Face::Top) {
                on.entry(family).or_default().insert(p.way);
            }
        }
        let further: usize = on.values().map(|faces| faces.len() - 1).sum();
        further as f64 * self.workspace.shop.rates.family.as_s()
    }
}
