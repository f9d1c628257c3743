//! The worst of each kind: what a maker looks at before loading the cart.

use super::figure::{length, mass};
use super::page::{Ink, Page};
use crate::report::figure::TIE;
use crate::tasks::outcome::{Amount, Extreme, Limit, Plan, weighing};
use crate::units::Unit;

/// Kind by kind: how bad it gets, against what, when, and who says so.
pub fn extremes(page: &mut Page, plan: &Plan) {
    if plan.extremes.is_empty() {
        return;
    }
    page.heading(Ink::Bold, "At its worst");
    for extreme in &plan.extremes {
        let told = told(page, extreme, plan.units);
        page.named(Ink::Bold, extreme.kind, &told);
    }
}

fn told(page: &Page, extreme: &Extreme, unit: Unit) -> String {
    let Extreme { case, source, .. } = extreme;
    let shown = |a| amount(page, a, unit);
    let limit = match extreme.limit {
        Limit::AtMost(limit) => format!("at most {}", shown(limit)),
        Limit::AtLeast(limit) => format!("at least {}", shown(limit)),
        Limit::Unknown => String::from("no limit known"),
    };
    let mark = extreme.mark.name();
    format!("{}, {limit}: {case} ({source}; {mark})", shown(extreme.value))
}

/// An amount in the user's unit.
pub fn amount(page: &Page, amount: Amount, unit: Unit) -> String {
    match amount {
        Amount::Mass(of) => mass(of, unit),
        Amount::Length(of) => small(of.as_mm(), of, unit),
        Amount::Degrees(of) => format!("{of:.1}{}", page.either("°", " deg")),
        Amount::Force(of) => format!("{of:.0}{TIE}N ({})", mass(weighing(of), unit)),
        Amount::Moment(of) => format!("{of:.0}{TIE}N{TIE}m"),
        Amount::Stress(of) => format!("{of:.1}{TIE}N/mm2"),
        Amount::Bare(of) => format!("{of:.2}"),
    }
}

/// A length, to the tenth of a millimetre where it is under a centimetre in metric files: a sag is that small.
fn small(mm: f64, of: crate::units::Length, unit: Unit) -> String {
    if unit.imperial() || mm.abs() >= 10.0 { length(of, unit) } else { format!("{mm:.1}{TIE}mm") }
}
