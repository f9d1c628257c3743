//! The worst of each kind.

use serde::Serialize;

use super::part::clean;
use crate::tasks::outcome::{Amount, Extreme, Limit};

/// One kind: its figure and limit in the same unit.
#[derive(Serialize)]
pub(super) struct Row<'a> {
    kind: &'static str,
    value: Option<f64>,
    unit: &'static str,
    /// `at most` or `at least`, where a limit is known.
    bound: Option<&'static str>,
    limit: Option<f64>,
    case: &'a str,
    source: &'a str,
    mark: &'static str,
}

impl<'a> Row<'a> {
    pub(super) fn of(extreme: &'a Extreme) -> Row<'a> {
        let (value, unit) = bare(extreme.value);
        let (bound, limit) = match extreme.limit {
            Limit::AtMost(limit) => (Some("at most"), clean(bare(limit).0)),
            Limit::AtLeast(limit) => (Some("at least"), clean(bare(limit).0)),
            Limit::Unknown => (None, None),
        };
        Row {
            kind: extreme.kind,
            value: clean(value),
            unit,
            bound,
            limit,
            case: &extreme.case,
            source: &extreme.source,
            mark: extreme.mark.name(),
        }
    }
}

/// The number and its unit.
pub(super) fn bare(amount: Amount) -> (f64, &'static str) {
    match amount {
        Amount::Mass(mass) => (mass.as_kg(), "kg"),
        Amount::Length(length) => (length.as_mm(), "mm"),
        Amount::Degrees(degrees) => (degrees, "degrees"),
        Amount::Force(newtons) => (newtons, "N"),
        Amount::Moment(moment) => (moment, "N m"),
        Amount::Stress(stress) => (stress, "N/mm2"),
        Amount::Bare(number) => (number, "1"),
    }
}
