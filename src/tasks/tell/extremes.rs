//! The worst of each kind, one function a kind, from what the plan already says.

use super::super::outcome::{
    Amount, CasterLoad, Extreme, LIFT_SOURCE, Lift, Limit, Mark, Plan, Stability,
};
use super::boards;
use crate::units::{Length, Mass, Unit, show_length};

/// Every kind that this cart has.
pub(super) fn extremes(plan: &Plan) -> Vec<Extreme> {
    [
        tip_margin(&plan.stability),
        heaviest_caster(plan),
        boards::most_sagging(plan),
        boards::hardest_pulled(plan),
        worst_lift(&plan.lifts, plan.units),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// The way of tipping it that needs the smallest share of what it should.
fn tip_margin(stability: &Stability) -> Option<Extreme> {
    let least = stability.least()?;
    Some(Extreme {
        kind: "least tip margin",
        value: least.value,
        case: format!("{}, over its {}", least.case, least.side.unwrap_or_default()),
        limit: Limit::AtLeast(least.limit),
        source: least.source.clone(),
        mark: least.mark,
    })
}

/// The caster with the greatest part of its rating; of its load, where none is rated.
fn heaviest_caster(plan: &Plan) -> Option<Extreme> {
    let part = |caster: &CasterLoad| {
        let most = caster.limit.map_or(1.0, |limit| limit.as_kg().max(f64::MIN_POSITIVE));
        caster.worst.map(|worst| worst.as_kg() / most)
    };
    let loaded = plan.casters.iter().filter_map(|c| Some((c, part(c)?, c.worst?)));
    let (caster, _, worst) = loaded.max_by(|a, b| a.1.total_cmp(&b.1))?;
    let (limit, source, mark) = match caster.limit {
        Some(limit) => {
            (Limit::AtMost(Amount::Mass(limit)), "its rating in the carcass file", Mark::Stated)
        }
        None => (Limit::Unknown, "its rating is not stated", Mark::Stated),
    };
    Some(Extreme {
        kind: "heaviest caster",
        value: Amount::Mass(worst),
        case: format!("{}, {}", place(caster.at, plan.units), caster.worst_case),
        limit,
        source: source.to_owned(),
        mark,
    })
}

/// The lift with both hands of the highest index; one that allows no load at all is worse than any.
fn worst_lift(lifts: &[Lift], unit: Unit) -> Option<Extreme> {
    let assessed = lifts.iter().filter_map(|l| l.assessed.as_ref().ok().map(|a| (l, a)));
    let (lift, a) = assessed.max_by(|(_, a), (_, b)| {
        let index = |i: Option<f64>| i.unwrap_or(f64::INFINITY);
        index(a.index).total_cmp(&index(b.index))
    })?;
    let (value, limit) = match a.index {
        Some(index) => (Amount::Bare(index), Amount::Bare(a.limit)),
        None => (Amount::Mass(lift.weight), Amount::Mass(Mass::ZERO)),
    };
    let from = if a.end == "place" { "from its place" } else { "off the bench" };
    let whole = |l: Length| Length::mm((l.as_nm() + 500_000) / 1_000_000);
    let [high, out] = [a.height, a.horizontal].map(|l| show_length(whole(l), unit));
    Some(Extreme {
        kind: "worst lift",
        value,
        case: format!(
            "lifting index of {} {from}, hands {high} high and {out} before the ankles",
            lift.copy.item
        ),
        limit: Limit::AtMost(limit),
        source: LIFT_SOURCE.to_owned(),
        mark: Mark::Read,
    })
}

/// A caster by its place.
fn place(at: [Length; 2], unit: Unit) -> String {
    let [x, y] = at.map(|a| show_length(a, unit));
    format!("the one at {x}, {y}")
}
