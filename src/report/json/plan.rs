//! The document of `plan`.

use super::cart::{CasterRow, MassRow, SolidRow, SurfaceRow, TipRow};
use super::finding::FindingRow;
use super::loading::{EarningRow, StepRow};
use super::part::text;
use super::placement::{LeftOutRow, PlacementRow, ReserveRow};
use super::search::{BoundRow, SearchRow, StartRow};
use super::worth::{CautionRow, ScoreRow};
use super::{boards, extreme, growth, lifts, rolling, shelves, stability, ties};
use crate::tasks::outcome::Plan;
use serde::Serialize;

/// A plan as one document, ending with a line break.
pub fn plan(plan: &Plan) -> String {
    text(&PlanDoc::of(plan))
}

#[derive(Serialize)]
pub(super) struct PlanDoc<'a> {
    name: &'a str,
    status: &'static str,
    seed: u64,
    placements: Vec<PlacementRow<'a>>,
    left_out: Vec<LeftOutRow<'a>>,
    reserve: Vec<ReserveRow<'a>>,
    growth: Vec<growth::GrowthRow<'a>>,
    companions: Vec<ties::CompanionsRow<'a>>,
    families: Vec<ties::FamilyRow<'a>>,
    jobs: Vec<ties::JobRow<'a>>,
    surfaces: Vec<SurfaceRow<'a>>,
    solids: Vec<SolidRow<'a>>,
    mass: MassRow<'a>,
    casters: Vec<CasterRow<'a>>,
    tip: Vec<TipRow<'a>>,
    boards: Vec<boards::BoardRow<'a>>,
    fixings: Vec<boards::FixingRow<'a>>,
    extremes: Vec<extreme::Row<'a>>,
    stability: stability::Row<'a>,
    rolling: rolling::Row<'a>,
    score: ScoreRow<'a>,
    handling: Cost,
    lifts: Vec<lifts::LiftRow<'a>>,
    cautions: Vec<CautionRow<'a>>,
    start: StartRow,
    bound: BoundRow,
    search: SearchRow,
    #[serde(skip_serializing_if = "Option::is_none")]
    shelves: Option<shelves::ShelvesRow<'a>>,
    loading: Vec<StepRow<'a>>,
    earning_least: Vec<EarningRow<'a>>,
    notes: Vec<FindingRow<'a>>,
    from_memory: &'a [&'static str],
}

impl<'a> PlanDoc<'a> {
    pub(super) fn of(plan: &'a Plan) -> PlanDoc<'a> {
        PlanDoc {
            name: &plan.name,
            status: plan.status.name(),
            seed: plan.seed,
            placements: plan.placements.iter().map(PlacementRow::of).collect(),
            left_out: plan.left_out.iter().map(LeftOutRow::of).collect(),
            reserve: plan.reserve.iter().map(ReserveRow::of).collect(),
            growth: plan.growth.iter().map(growth::GrowthRow::of).collect(),
            companions: plan.companions.iter().map(ties::CompanionsRow::of).collect(),
            families: plan.families.iter().map(ties::FamilyRow::of).collect(),
            jobs: plan.jobs.iter().map(ties::JobRow::of).collect(),
            surfaces: plan.surfaces.iter().map(SurfaceRow::of).collect(),
            solids: plan.solids.iter().map(SolidRow::of).collect(),
            mass: MassRow::of(&plan.balance),
            casters: plan.casters.iter().map(CasterRow::of).collect(),
            tip: plan.tips.iter().map(TipRow::of).collect(),
            boards: plan.boards.iter().map(boards::BoardRow::of).collect(),
            fixings: plan.fixings.iter().map(boards::FixingRow::of).collect(),
            extremes: plan.extremes.iter().map(extreme::Row::of).collect(),
            stability: stability::Row::of(&plan.stability),
            rolling: rolling::Row::of(&plan.rolling),
            score: ScoreRow::of(&plan.worth),
            handling: Cost { seconds_per_week: plan.handling.as_s() },
            lifts: plan.lifts.iter().map(lifts::LiftRow::of).collect(),
            cautions: plan.cautions.iter().map(CautionRow::of).collect(),
            start: StartRow::of(&plan.start),
            bound: BoundRow::of(&plan.bound),
            search: SearchRow::of(&plan.effort),
            shelves: plan.shelves.as_ref().map(shelves::ShelvesRow::of),
            loading: plan.loading.iter().map(|step| StepRow::of(plan, step)).collect(),
            earning_least: EarningRow::all(plan),
            notes: plan.notes.iter().map(FindingRow::of).collect(),
            from_memory: &plan.from_memory,
        }
    }
}

#[derive(Serialize)]
struct Cost {
    seconds_per_week: f64,
}
