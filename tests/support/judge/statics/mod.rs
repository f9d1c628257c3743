//! Masses, loads on the casters and tipping: a rigid body on equal springs that cannot pull.

use super::site::{Sort, Space, same};
use body::{Body, least_angle, rest};
mod body;

use super::{Case, Thing};
use toolberth::domain::Face;
use toolberth::tasks::outcome::{Kept, Tip};

/// Kilograms by which two figures may differ for rounding.
const NEAR: f64 = 0.01;
/// Degrees at least, closed and with a drawer out.
const TIP_CLOSED: f64 = 10.0;
const TIP_OUT: f64 = 5.0;
/// What must be weighed as taken away, in kilograms.
const HEAVY: f64 = 5.0;

impl Case<'_> {
    pub(super) fn statics(&mut self) {
        let told = &self.plan.balance;
        let centre = told.carcass_centre.map(|c| c.as_mm());
        let empty = Body { mass: 0.0, moment: [0.0; 3] }.with(told.carcass.as_kg(), centre);
        let whole = self.things.iter().fold(empty, |b, t| b.with(t.kilograms(), t.middle()));
        let placed: i64 = self.things.iter().map(|t| t.placement.weight.as_ng()).sum();
        let (total, carcass) = (told.total.as_ng(), told.carcass.as_ng());
        self.expect(total == carcass + placed, || {
            format!("weighs {} ng in all, told {total}", carcass + placed)
        });
        let centre = told.centre.map(|c| c.as_mm());
        let off = (0..3).map(|k| (centre[k] - whole.centre()[k]).abs()).fold(0.0, f64::max);
        self.expect(off < 0.01, || format!("centre of mass {:?}, told {centre:?}", whole.centre()));
        self.carcass();
        let at: Vec<[f64; 2]> =
            self.workspace.carcass.casters.at.iter().map(|p| p.map(|l| l.as_mm())).collect();
        if at.len() < 3 || whole.mass <= 0.0 || self.plan.casters.len() != at.len() {
            self.expect(self.plan.casters.len() == at.len(), || {
                "another number of casters".to_owned()
            });
            return;
        }
        self.closed(&at, whole);
        self.worst(&at, whole);
        self.hanging(&at, whole);
        let margin = self.tips(&at, whole);
        self.balance(&at, whole, margin);
    }

    /// Mass of the empty cart against the files.
    fn carcass(&mut self) {
        let made = &self.workspace.carcass;
        let told = self.plan.balance.carcass;
        let drawers: Vec<_> = made.drawers.iter().map(|d| d.mass).collect();
        let stated = drawers.iter().flatten().copied().sum();
        if let Some(mass) = made.mass {
            let all_known = drawers.iter().all(Option::is_some);
            let good = if all_known { told == mass + stated } else { told >= mass + stated };
            self.expect(good, || {
                format!("carcass of {} kg, told {}", (mass + stated).as_kg(), told.as_kg())
            });
        } else {
            self.expect(told.as_ng() > 0, || "a carcass without a mass".to_owned());
        }
    }

    fn closed(&mut self, at: &[[f64; 2]], whole: Body) {
        let told: Vec<Option<f64>> =
            self.plan.casters.iter().map(|c| c.load.map(|l| l.as_kg())).collect();
        let mine = rest(at, whole);
        if let Some(loads) = &mine {
            self.expect(near(loads, &told), || {
                format!("casters carry {loads:.3?} kg, told {told:.3?}")
            });
            let sum: f64 = told.iter().flatten().sum();
            self.expect((sum - whole.mass).abs() < NEAR, || {
                format!("casters carry {sum} of {} kg", whole.mass)
            });
        } else {
            self.expect(told.iter().all(Option::is_none), || {
                "loads are told of a cart that tips".to_owned()
            });
        }
        let sound = told.iter().flatten().all(|l| *l >= 0.0);
        self.expect(sound, || format!("a caster pulls: {told:?}"));
        let places = self.plan.casters.iter().map(|c| c.at).eq(self
            .workspace
            .carcass
            .casters
            .at
            .iter()
            .copied());
        self.expect(places, || "casters stand elsewhere".to_owned());
        let near = |a: Option<f64>, b: Option<f64>| match (a, b) {
            (Some(a), Some(b)) => (a - b).abs() < 1e-6,
            (a, b) => a == b,
        };
        let told = self.plan.casters.iter().enumerate();
        let alike =
            told.fold(true, |so, (k, c)| so && near(c.limit.map(|l| l.as_kg()), self.rated(k)));
        self.expect(alike, || "another rating of the casters".to_owned());
    }

    /// What one caster may carry by the carcass file.
    fn rated(&self, caster: usize) -> Option<f64> {
        let casters = &self.workspace.carcass.casters;
        casters.ratings.get(caster).copied().or(casters.rating).map(|r| r.as_kg())
    }

    /// The greatest load as a part of its caster's rating, times the least rating.
    fn hardest(&self, loads: &[f64], least: f64) -> f64 {
        let part = |(k, load): (usize, &f64)| self.rated(k).map_or(0.0, |r| load / r);
        loads.iter().enumerate().map(part).fold(0.0, f64::max) * least
    }

    /// The highest load of each caster: closed, a drawer out, a heavy thing away; kept room filled.
    fn worst(&mut self, at: &[[f64; 2]], whole: Body) {
        let known = self.drawers().all(|(_, mass)| mass.is_some());
        let told: Vec<Option<f64>> =
            self.plan.casters.iter().map(|c| c.worst.map(|l| l.as_kg())).collect();
        let mut readings = Vec::new();
        for (fixed, single) in [(true, false), (true, true), (false, false), (false, true)] {
            let empty = self.cases(whole, fixed, single, false);
            let full = self.cases(whole, fixed, single, true);
            readings.push(highest(at, &full));
            readings.push(highest(at, &[empty, full].concat()));
        }
        if known {
            let good = readings.iter().any(|r| near(r, &told) || r.iter().all(|l| *l == 0.0));
            self.expect(good, || format!("at worst {:.3?} kg, told {told:.3?}", readings[0]));
        }
        let Some(rating) = self.workspace.carcass.casters.rating.map(|r| r.as_kg()) else {
            return;
        };
        let most = |r: &Vec<f64>| self.hardest(r, rating);
        let least = readings.iter().map(most).fold(f64::INFINITY, f64::min);
        if least > rating + 1e-3 {
            self.breach("casters", [""; 0], format!("{least:.3} of {rating} kg on one caster"));
        } else if !known || readings.iter().map(most).fold(0.0, f64::max) > rating - 1e-3 {
            self.doubt("casters", [""; 0]);
        }
    }

    /// All drawers with their own mass: as stated, or what the plan must have assumed for the only one without.
    fn drawers(&self) -> impl Iterator<Item = (&Space, Option<f64>)> {
        let all = || self.site.spaces.iter().filter(|s| s.sort == Sort::Drawer);
        let stated: f64 = all().filter_map(|d| d.mass).map(|m| m.as_kg()).sum();
        let unknown = all().filter(|d| d.mass.is_none()).count();
        let rest = self
            .workspace
            .carcass
            .mass
            .map(|m| self.plan.balance.carcass.as_kg() - m.as_kg() - stated);
        let assumed = rest.filter(|_| unknown == 1);
        self.site
            .spaces
            .iter()
            .filter(|s| s.sort == Sort::Drawer)
            .map(move |d| (d, d.mass.map(|m| m.as_kg()).or(assumed)))
    }

    /// What lies in a drawer, in kilograms.
    fn content(&self, drawer: &Space) -> f64 {
        let inside = |t: &&Thing| self.space(t).is_some_and(|s| std::ptr::eq(s, drawer));
        self.things.iter().filter(inside).map(Thing::kilograms).sum()
    }

    /// The bodies that the rule looks at. Whether fixed things are ever away, and whether a pile goes as a whole or one
    /// by one, is read either way.
    fn cases(&self, whole: Body, fixed: bool, single: bool, kept: bool) -> Vec<Body> {
        let mut full = whole;
        let rooms = self.plan.reserve.iter().filter(|_| kept);
        let middle = |k: &Kept| [0, 1, 2].map(|a| k.space.middle(a).as_mm());
        rooms.clone().for_each(|k| full = full.with(k.mass.as_kg(), middle(k)));
        let mut out = vec![full];
        for (drawer, mass) in self.drawers().filter(|(d, _)| d.face != Face::Top) {
            let there = |k: &&Kept| k.face == drawer.face && same(&k.bay, &drawer.name);
            let more: f64 = rooms.clone().filter(there).map(|k| k.mass.as_kg()).sum();
            let part = mass.unwrap_or(0.0) + self.content(drawer) + more;
            out.push(full.pulled(part, drawer.face, drawer.extends as f64 / 1e6));
        }
        for thing in &self.things {
            let mass = if single {
                thing.kilograms() / f64::from(thing.placement.copies)
            } else {
                thing.kilograms()
            };
            let stays = thing.item.is_some_and(|i| i.fixed || !i.fetched);
            if mass > HEAVY && (fixed || !stays) {
                out.push(full.with(-mass, thing.middle()));
            }
        }
        out
    }

    /// The highest load of each with any one other hanging free.
    fn hanging(&mut self, at: &[[f64; 2]], whole: Body) {
        if at.len() < 4 {
            return;
        }
        let mut most = vec![0.0_f64; at.len()];
        for free in 0..at.len() {
            let others: Vec<[f64; 2]> =
                (0..at.len()).filter(|k| *k != free).map(|k| at[k]).collect();
            let Some(loads) = rest(&others, whole) else {
                continue;
            };
            let back = (0..at.len()).filter(|k| *k != free);
            back.zip(loads).for_each(|(k, l)| most[k] = most[k].max(l));
        }
        let told: Vec<Option<f64>> =
            self.plan.casters.iter().map(|c| c.hanging.map(|l| l.as_kg())).collect();
        if most.iter().any(|l| *l > 0.0) {
            self.expect(near(&most, &told), || {
                format!("with one hanging {most:.3?} kg, told {told:.3?}")
            });
        }
        let rating = self.workspace.carcass.casters.rating.map(|r| r.as_kg());
        let over = rating.is_some_and(|r| self.hardest(&most, r) > r + 1e-3);
        if self.workspace.shop.room.uneven && over {
            self.breach("casters", [""; 0], "with one caster hanging".to_owned());
        }
    }

    /// The least angle of each case; gives the least margin against its limit.
    fn tips(&mut self, at: &[[f64; 2]], whole: Body) -> f64 {
        let trail = self.workspace.carcass.casters.trail.as_mm();
        let mut cases = vec![("closed".to_owned(), Some(whole), TIP_CLOSED)];
        for (drawer, mass) in self.drawers().filter(|(d, _)| d.face != Face::Top) {
            let out = mass.map(|m| {
                whole.pulled(m + self.content(drawer), drawer.face, drawer.extends as f64 / 1e6)
            });
            cases.push((drawer.name.clone(), out, TIP_OUT));
        }
        let mut margin = f64::INFINITY;
        for (case, body, limit) in cases {
            let told = least_told(&self.plan.tips, &case);
            let Some(told) = told else {
                self.complain(format!("no tip angle for {case}"));
                continue;
            };
            let mine = body.map_or(told, |b| least_angle(at, b.centre(), trail));
            margin = margin.min(mine / limit);
            self.expect((mine - told).abs() < 0.02, || {
                format!("{case} tips at {mine:.3} degrees, told {told:.3}")
            });
            if body.is_none() || (mine - limit).abs() < 1e-3 {
                self.doubt("tip", [""; 0]);
            } else if mine < limit {
                self.breach("tip", [""; 0], format!("{case} tips at {mine:.3} of {limit} degrees"));
            }
        }
        margin
    }

    /// Nothing is due while the cart stands well; something is where it does not.
    fn balance(&mut self, at: &[[f64; 2]], whole: Body, margin: f64) {
        let told =
            self.plan.worth.terms.iter().find(|(t, _)| *t == "balance").map(|(_, p)| p.as_us());
        let (Some(told), Some(loads)) = (told, rest(at, whole)) else {
            return;
        };
        let heavy = loads.iter().copied().fold(0.0, f64::max) / (whole.mass / at.len() as f64);
        if heavy < 1.15 - 1e-6 && margin > 1.5 + 1e-3 {
            self.expect(told == 0, || {
                format!("balance costs {told} µs though the cart stands well")
            });
        } else if heavy > 1.15 + 1e-3 || margin < 1.5 - 1e-3 {
            self.expect(told > 0, || {
                "balance costs nothing though the cart stands badly".to_owned()
            });
        }
    }
}

fn near(mine: &[f64], told: &[Option<f64>]) -> bool {
    mine.len() == told.len()
        && mine.iter().zip(told).all(|(m, t)| t.is_some_and(|t| (m - t).abs() <= NEAR))
}

fn least_told(tips: &[Tip], case: &str) -> Option<f64> {
    let mine = |t: &&Tip| t.case.eq_ignore_ascii_case(case);
    let within = |t: &&Tip| t.case.to_lowercase().contains(&case.to_lowercase());
    let exact = tips.iter().filter(mine).map(|t| t.degrees).reduce(f64::min);
    exact.or_else(|| tips.iter().filter(within).map(|t| t.degrees).reduce(f64::min))
}

fn highest(at: &[[f64; 2]], cases: &[Body]) -> Vec<f64> {
    let mut out = vec![0.0_f64; at.len()];
    for loads in cases.iter().filter_map(|b| rest(at, *b)) {
        out.iter_mut().zip(loads).for_each(|(o, l)| *o = o.max(l));
    }
    out
}
