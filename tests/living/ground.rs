//! What the tests stand on: the demonstration carts and quick plans.

use crate::support::planner;
use std::path::Path;
use toolberth::domain::{Layout, Workspace};
use toolberth::files;

/// A demonstration workspace with its layout, or an empty one.
pub fn demo(name: &str) -> (Workspace, Layout) {
    let loaded = files::load(&Path::new("demo-data").join(name));
    let workspace = loaded.workspace.expect("the demonstration can be read");
    let layout = workspace.layout.clone().unwrap_or_default();
    (workspace, layout)
}

/// The layout of a quick plan.
pub fn planned(workspace: &Workspace) -> Layout {
    planned_with(workspace, 1)
}

/// The layout of a quick plan from a seed.
pub fn planned_with(workspace: &Workspace, seed: u64) -> Layout {
    planner::plan(workspace, seed, 1).layout
}
