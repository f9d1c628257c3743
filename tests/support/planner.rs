//! The one place that knows how the planner is called.

use toolberth::domain::Workspace;
use toolberth::solve::{Effort, Settings, Watch};
use toolberth::tasks::outcome::Plan;
use toolberth::tasks::plan;

/// A plan of the least effort.
pub fn plan(workspace: &Workspace, seed: u64, threads: usize) -> Plan {
    let settings = Settings { seed, effort: Effort::Quick, threads };
    plan::plan(workspace, &settings, &Watch::default()).expect("the cart is sound")
}
