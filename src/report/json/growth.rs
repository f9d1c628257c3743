//! Room to grow.

use serde::Serialize;

use crate::tasks::outcome::Growth;

#[derive(Serialize)]
pub(super) struct GrowthRow<'a> {
    family: Option<&'a str>,
    reach_zone: Option<&'static str>,
    wanted_litres: f64,
    free_litres: f64,
    seconds_per_week: f64,
}

impl<'a> GrowthRow<'a> {
    pub(super) fn of(growth: &'a Growth) -> GrowthRow<'a> {
        GrowthRow {
            family: growth.family.as_deref(),
            reach_zone: growth.zone.map(|z| z.name()),
            wanted_litres: growth.wanted,
            free_litres: growth.free,
            seconds_per_week: growth.price.as_s(),
        }
    }
}
