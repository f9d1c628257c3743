//! What fetching each thing asks of the back.

use super::part::{clean, mm};
use crate::tasks::outcome::{Assessed, LIFT_SOURCE, Lift};
use serde::Serialize;

/// A row of `lifts`.
#[derive(Serialize)]
pub(super) struct LiftRow<'a> {
    item: &'a str,
    copy: u32,
    hands: u8,
    weight: f64,
    hand_height: f64,
    /// Nothing where it is not assessed, or where no load may be lifted so.
    index: Option<f64>,
    not_assessed: Option<&'static str>,
    lift: Option<EndRow>,
    source: &'static str,
}

/// The harder end of an assessed lift.
#[derive(Serialize)]
struct EndRow {
    end: &'static str,
    hand_height: f64,
    horizontal: f64,
    travel: f64,
    coupling: &'static str,
    coupling_assumed: bool,
    advised: f64,
    limit: f64,
}

impl<'a> LiftRow<'a> {
    /// One lift.
    pub(super) fn of(lift: &'a Lift) -> LiftRow<'a> {
        LiftRow {
            item: &lift.copy.item,
            copy: lift.copy.copy,
            hands: lift.hands,
            weight: lift.weight.as_kg(),
            hand_height: mm(lift.hand),
            index: lift.index().and_then(clean),
            not_assessed: lift.assessed.as_ref().err().copied(),
            lift: lift.assessed.as_ref().ok().map(EndRow::of),
            source: LIFT_SOURCE,
        }
    }
}

impl EndRow {
    fn of(lift: &Assessed) -> EndRow {
        EndRow {
            end: lift.end,
            hand_height: mm(lift.height),
            horizontal: mm(lift.horizontal),
            travel: mm(lift.travel),
            coupling: lift.coupling,
            coupling_assumed: lift.assumed,
            advised: lift.advised.as_kg(),
            limit: lift.limit,
        }
    }
}
