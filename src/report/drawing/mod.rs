//! The drawings of a plan: its faces to scale, its places from above, the ways on foot, the whole cart.
//!
//! All figures come from the plan; scale, place on the paper and where a name finds room are decided here.

pub(super) mod area;
pub(super) mod border;
mod callout;
mod dimension;
mod elevation;
pub(super) mod lettering;
mod picture;
pub(super) mod scale;

use super::sheet::{Sheet, Size};
use crate::tasks::outcome::Plan;

/// All drawings of a plan, numbered, on one size of paper.
pub fn drawings(plan: &Plan, size: Size) -> Vec<Sheet> {
    let faces = plan.elevations.iter().map(|face| elevation::draft(plan, face, size));
    border::bordered(plan, faces.collect())
}
