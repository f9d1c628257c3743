//! Where the search began, what it did and how near to the best it came.

use super::part::clean;
use crate::tasks::outcome::{Bound, Effort, End, Start};
use crate::units::Price;
use serde::Serialize;

#[derive(Serialize)]
pub(super) struct StartRow {
    seconds_per_week: f64,
    off_cart: f64,
    broken: usize,
    same_items: bool,
}

impl StartRow {
    pub(super) fn of(start: &Start) -> StartRow {
        StartRow {
            seconds_per_week: start.cost.as_s(),
            off_cart: start.off_cart.as_s(),
            broken: start.broken,
            same_items: start.same_items,
        }
    }
}

#[derive(Serialize)]
pub(super) struct BoundRow {
    seconds_per_week: Option<f64>,
    gap: Option<f64>,
    gap_with_handling: Option<f64>,
    proof: &'static str,
}

impl BoundRow {
    pub(super) fn of(bound: &Bound) -> BoundRow {
        BoundRow {
            seconds_per_week: bound.cost.map(Price::as_s),
            gap: bound.gap.and_then(clean),
            gap_with_handling: bound.gap_with_handling.and_then(clean),
            proof: bound.proof.name(),
        }
    }
}

#[derive(Serialize)]
pub(super) struct SearchRow {
    moves: u64,
    priced: u64,
    seconds: Option<f64>,
    restarts: u32,
    cycles: Option<u32>,
    ended_early: bool,
    end: &'static str,
    time_allowed: Option<f64>,
}

impl SearchRow {
    pub(super) fn of(effort: &Effort) -> SearchRow {
        SearchRow {
            moves: effort.moves,
            priced: effort.priced,
            seconds: clean(effort.seconds),
            restarts: effort.restarts,
            cycles: effort.cycles,
            ended_early: effort.end.is_early(),
            end: end(effort.end),
            time_allowed: effort.allowed.and_then(clean),
        }
    }
}

/// The word for why a search ended.
const fn end(end: End) -> &'static str {
    match end {
        End::Moves => "moves made",
        End::Best => "nothing better",
        End::Time => "time up",
        End::Interrupt => "interrupted",
    }
}
