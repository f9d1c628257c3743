//! The drawings of a plan: its faces to scale, its places from above, the ways on foot, the whole cart.
//!
//! All figures come from the plan; scale, place on the paper and where a name finds room are decided here.

pub(super) mod area;
pub(super) mod border;
mod callout;
mod dimension;
mod elevation;
mod faces_together;
mod flow;
mod from_above;
mod hatch;
pub(super) mod lettering;
mod on_foot;
mod picture;
mod rolling;
pub(super) mod scale;
mod see_through;

use super::sheet::{Sheet, Size};
use crate::tasks::outcome::Plan;

/// All drawings of a plan, numbered, on one size of paper.
pub fn drawings(plan: &Plan, size: Size) -> Vec<Sheet> {
    let mut drafts: Vec<border::Draft> =
        plan.elevations.iter().map(|face| elevation::draft(plan, face, size)).collect();
    drafts.extend(from_above::drafts(plan, size));
    drafts.extend(faces_together::reach(plan, size));
    drafts.extend(faces_together::costs(plan, size));
    drafts.extend(on_foot::drafts(plan, size));
    drafts.extend(see_through::drafts(plan, size));
    drafts.extend(rolling::draft(plan, size));
    border::bordered(plan, drafts)
}
