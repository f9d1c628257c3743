//! In which order the cart is loaded, and what earns its place least.

use super::part::CopyRow;
use crate::tasks::outcome::{Plan, Step};
use serde::Serialize;

#[derive(Serialize)]
pub(super) struct StepRow<'a> {
    text: &'a str,
    placements: Vec<CopyRow<'a>>,
}

impl<'a> StepRow<'a> {
    pub(super) fn of(plan: &'a Plan, step: &'a Step) -> StepRow<'a> {
        let placements = step.placements.iter().filter_map(|&i| CopyRow::placed(plan, i)).collect();
        StepRow { text: &step.text, placements }
    }
}

#[derive(Serialize)]
pub(super) struct EarningRow<'a> {
    #[serde(flatten)]
    placed: CopyRow<'a>,
    seconds_per_week_off_cart: f64,
}

impl<'a> EarningRow<'a> {
    pub(super) fn all(plan: &'a Plan) -> Vec<EarningRow<'a>> {
        plan.earning_least
            .iter()
            .filter_map(|&(index, price)| {
                let placed = CopyRow::placed(plan, index)?;
                Some(EarningRow { placed, seconds_per_week_off_cart: price.as_s() })
            })
            .collect()
    }
}
