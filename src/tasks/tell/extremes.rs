//! The worst of each kind, one function a kind, from what the plan already says.

use super::super::outcome::{Amount, CasterLoad, Extreme, Limit, Mark, Plan, Tip};
use crate::units::{Length, Unit, show_length};

/// Every kind that this cart has.
pub(super) fn extremes(plan: &Plan) -> Vec<Extreme> {
    [tip_margin(&plan.tips), heaviest_caster(plan)].into_iter().flatten().collect()
}

/// The case in which the angle is the smallest share of its limit.
fn tip_margin(tips: &[Tip]) -> Option<Extreme> {
    let share = |tip: &&Tip| tip.degrees / tip.limit;
    let least = tips.iter().min_by(|a, b| share(a).total_cmp(&share(b)))?;
    let when = match least.case.as_str() {
        "closed" => "everything closed".to_owned(),
        drawer => format!("with {drawer} out"),
    };
    Some(Extreme {
        kind: "least tip margin",
        value: Amount::Degrees(least.degrees),
        case: format!("{when}, over its {}", least.side),
        limit: Limit::AtLeast(Amount::Degrees(least.limit)),
        source: "no standard for a workshop cart was found; other carts: IEC 60601-1, 10 degrees in transport, 5 else"
            .to_owned(),
        mark: Mark::Ours,
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

/// A caster by its place.
fn place(at: [Length; 2], unit: Unit) -> String {
    let [x, y] = at.map(|a| show_length(a, unit));
    format!("the one at {x}, {y}")
}
