//! Tipping and sliding, case by case, and what would help.

use serde::Serialize;

use super::extreme::bare;
use super::part::{clean, mm};
use crate::tasks::outcome::{CasterTrial, Raise, Stability, Trial};
use crate::units::Mass;

/// The whole section.
#[derive(Serialize)]
pub(super) struct Row<'a> {
    trials: Vec<TrialRow<'a>>,
    casters: Vec<CasterRow<'a>>,
    loading: Option<TrialRow<'a>>,
    raise: Vec<RaiseRow<'a>>,
    empty: Option<TrialRow<'a>>,
    assumed: &'a [String],
}

#[derive(Serialize)]
struct TrialRow<'a> {
    case: &'a str,
    side: Option<&'static str>,
    value: Option<f64>,
    limit: Option<f64>,
    unit: &'static str,
    margin: Option<f64>,
    rule: bool,
    source: &'a str,
    mark: &'static str,
}

#[derive(Serialize)]
struct CasterRow<'a> {
    case: &'a str,
    at: [f64; 2],
    load: f64,
    limit: Option<f64>,
}

#[derive(Serialize)]
struct RaiseRow<'a> {
    text: &'a str,
    before: Option<f64>,
    after: Option<f64>,
}

impl<'a> Row<'a> {
    pub(super) fn of(stability: &'a Stability) -> Row<'a> {
        Row {
            trials: stability.trials.iter().map(trial).collect(),
            casters: stability.casters.iter().map(caster).collect(),
            loading: stability.loading.as_ref().map(trial),
            raise: stability.raise.iter().map(raise).collect(),
            empty: stability.empty.as_ref().map(trial),
            assumed: &stability.assumed,
        }
    }
}

fn trial(trial: &Trial) -> TrialRow<'_> {
    let (value, unit) = bare(trial.value);
    TrialRow {
        case: &trial.case,
        side: trial.side,
        value: clean(value),
        limit: clean(bare(trial.limit).0),
        unit,
        margin: clean(trial.margin),
        rule: trial.rule,
        source: &trial.source,
        mark: trial.mark.name(),
    }
}

fn caster(trial: &CasterTrial) -> CasterRow<'_> {
    CasterRow {
        case: &trial.case,
        at: trial.at.map(mm),
        load: trial.load.as_kg(),
        limit: trial.rating.map(Mass::as_kg),
    }
}

fn raise(raise: &Raise) -> RaiseRow<'_> {
    RaiseRow { text: &raise.text, before: clean(raise.margin[0]), after: clean(raise.margin[1]) }
}
