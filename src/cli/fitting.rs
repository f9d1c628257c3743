//! `fit-out`: the report, and the sheets that go with it.

use super::args::{FitOutPaper, Workspace};
use super::output::WriteError;
use super::{Exit, living, run};
use crate::report::{json, terminal};
use crate::tasks;
use crate::tasks::fit_out::Options;

/// Tells what to build and drill.
pub fn fit_out(at: &Workspace, paper: &FitOutPaper) -> Result<Exit, WriteError> {
    let lived = match living::read(at)? {
        Ok(lived) => lived,
        Err(exit) => return Ok(exit),
    };
    let options = Options { hook_rating: paper.hook_rating };
    let look = run::look(at);
    let result = tasks::fit_out::fit_out(&lived.workspace, &lived.layout, &options);
    living::tell(
        at,
        result,
        |f| if at.json { json::fit_out(f) } else { terminal::fit_out(f, &look) },
        |f| living::exit(&f.plan, f.wants.len() + f.findings.len(), &lived.findings),
    )
}
