//! Sums: terms, placements, what is off the cart, the start, the bound and the status.

use super::Case;
use super::frame::{block, outside, seen};
use toolberth::tasks::outcome::{Status, Worth};
use toolberth::units::Price;

/// Microseconds a week that a rounded figure may be off, for each rounding.
const ROUNDING: i64 = 1_000;

impl Case<'_> {
    pub(super) fn sums(&mut self) {
        let worth = &self.plan.worth;
        let all: Price = worth.terms.iter().map(|(_, p)| *p).sum();
        self.expect(all == worth.cost, || {
            format!("terms add up to {all:?}, told {:?}", worth.cost)
        });
        let negative = worth.terms.iter().any(|(_, p)| *p < Price::ZERO);
        self.expect(!negative && self.plan.handling >= Price::ZERO, || {
            "a term under nought".to_owned()
        });
        let further = ["together", "jobs", "family", "sight", "reserve", "wish"];
        for name in ["access", "reach", "blocked", "balance"].into_iter().chain(further) {
            let there = worth.terms.iter().filter(|(t, _)| *t == name).count();
            self.expect(there == 1, || format!("term {name} is told {there} times"));
        }
        let placed: Price = self.plan.placements.iter().map(|p| p.per_week).sum();
        let place: Price = ["access", "reach", "blocked"].iter().map(|t| term(worth, t)).sum();
        self.expect(placed == place, || {
            format!("placements add up to {placed:?}, their terms to {place:?}")
        });
        self.placements();
        self.left_out();
        self.access();
        self.elevations();
    }

    fn placements(&mut self) {
        let mut wrong = Vec::new();
        for p in &self.plan.placements {
            let parts: Price = p.terms.iter().map(|t| t.price).sum();
            let fetches = p.uses.cost(p.per_fetch);
            let far = (fetches.as_us() - p.per_week.as_us()).abs();
            let allowed = ROUNDING + p.per_week.as_us() / 1_000;
            if parts != p.per_week || far > allowed || p.per_week < Price::ZERO {
                wrong.push(format!(
                    "{} {}: {:?} a week, parts {parts:?}, fetches {fetches:?}",
                    p.item, p.copy, p.per_week
                ));
            }
            for name in ["access", "reach", "blocked"] {
                if p.terms.iter().filter(|t| t.term == name && !t.told.is_empty()).count() > 1 {
                    wrong.push(format!("{} {}: term {name} is told twice", p.item, p.copy));
                }
            }
        }
        self.complaints.extend(wrong);
    }

    /// Each copy off the cart costs its share of the uses, and once a year more, at the price of elsewhere.
    fn left_out(&mut self) {
        let sum: Price = self.plan.left_out.iter().map(|l| l.price).sum();
        let told = self.plan.worth.off_cart;
        self.expect(sum == told, || format!("left out comes to {sum:?}, told {told:?}"));
        let elsewhere = self.workspace.shop.rates.elsewhere.as_s();
        let mut wrong = Vec::new();
        for left in &self.plan.left_out {
            let item = self.workspace.items.iter().find(|i| i.name == left.copy.item);
            // Where one fetch brings all, the copies' share is open to two readings.
            let Some(item) = item.filter(|i| !i.take_all || i.count == 1) else {
                continue;
            };
            let price = (item.uses.as_week() / f64::from(item.count) + 1.0 / 52.0) * elsewhere;
            if (left.price.as_s() - price).abs() > 1e-4 + 1e-6 * price || left.why.is_empty() {
                wrong.push(format!(
                    "{} {} off the cart costs {price} s, told {}",
                    item.name,
                    left.copy.copy,
                    left.price.as_s()
                ));
            }
        }
        self.complaints.extend(wrong);
    }

    /// What follows without a map: the work face is free, a face at a wall costs at least the roll-out.
    fn access(&mut self) {
        let shop = &self.workspace.shop;
        let (mut least, mut sure) = (0.0, true);
        for p in &self.plan.placements {
            for station in &shop.stations {
                let part = p.uses.as_week() * station.share.as_fraction();
                if station.walls.contains(&p.way) {
                    least += part * shop.rates.roll_out.as_s();
                } else if p.way != station.work {
                    sure = sure && part == 0.0;
                }
            }
        }
        let told = term(&self.plan.worth, "access").as_s();
        let slack = 1e-3 + 1e-5 * least;
        self.expect(told >= least - slack, || {
            format!("access costs {told} s, roll-outs alone {least}")
        });
        let free = sure && least == 0.0;
        self.expect(!free || told == 0.0, || {
            format!("access costs {told} s though all is at the work face")
        });
    }

    /// The plan is never worse than its start, never better than its bound, and says so in the right figures.
    pub(super) fn start_and_bound(&mut self) {
        let (plan, worth) = (self.plan, &self.plan.worth);
        let mine = (worth.broken.len(), worth.off_cart, worth.cost);
        let start = (plan.start.broken, plan.start.off_cart, plan.start.cost);
        self.expect(mine <= start, || format!("{mine:?} is worse than the start {start:?}"));
        let gaps = (plan.bound.gap, plan.bound.gap_with_handling);
        if !worth.broken.is_empty() {
            self.expect(gaps == (None, None), || {
                format!("gaps {gaps:?} are told though a rule is broken")
            });
        } else if let Some(bound) = plan.bound.cost {
            let sound = bound >= Price::ZERO && bound <= worth.cost;
            self.expect(sound, || format!("bound {bound:?} of {:?}", worth.cost));
            let open = (worth.cost - bound).as_s();
            let whole = worth.cost.as_s() + plan.handling.as_s();
            self.gap("gap", gaps.0, open, worth.cost.as_s());
            self.gap("gap with handling", gaps.1, open, whole);
        } else {
            self.complain("no bound is told");
        }
        let status = match () {
            () if !worth.broken.is_empty() => Status::Unsafe,
            () if !plan.left_out.is_empty() => Status::Partial,
            () => Status::Complete,
        };
        self.expect(plan.status == status, || {
            format!("status {:?}, follows as {status:?}", plan.status)
        });
        self.expect(plan.effort.priced <= plan.effort.moves, || {
            "more moves priced than tried".to_owned()
        });
    }

    fn gap(&mut self, name: &str, told: Option<f64>, open: f64, whole: f64) {
        let mine = if whole > 0.0 { open / whole } else { 0.0 };
        let good = told.map_or(whole <= 0.0, |t| (t - mine).abs() < 1e-6);
        self.expect(good, || format!("{name} is {mine}, told {told:?}"));
    }

    /// The drawings show each box where it is.
    fn elevations(&mut self) {
        let size = outside(&self.workspace.carcass);
        let mut wrong = Vec::new();
        for elevation in &self.plan.elevations {
            for (index, rect) in &elevation.slots {
                let Some(p) = self.plan.placements.get(*index) else {
                    wrong.push(format!(
                        "{} shows placement {index}, which is not there",
                        elevation.face.name()
                    ));
                    continue;
                };
                let [u, v, _] = seen(elevation.face, size, &block(&p.space));
                let drawn = [[rect.u0, rect.u1], [rect.v0, rect.v1]].map(|r| r.map(|l| l.as_nm()));
                if drawn != [u, v] {
                    wrong.push(format!(
                        "{} is drawn elsewhere on the {}",
                        p.item,
                        elevation.face.name()
                    ));
                }
            }
        }
        self.complaints.extend(wrong);
    }
}

pub(super) fn term(worth: &Worth, name: &str) -> Price {
    worth.terms.iter().filter(|(t, _)| *t == name).map(|(_, p)| *p).sum()
}
