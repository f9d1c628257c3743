//! The layout as it stands, told in full but not judged: what drawings are made from.

use super::outcome::Plan;
use super::standing::{EntryFinding, standing};
use super::tell;
use crate::domain::{Layout, Workspace};
use crate::finding::Finding;
use crate::score::Ledger;
use crate::site::Board;

/// A layout to be drawn.
#[derive(Clone, Debug)]
pub struct Drawn {
    /// Everything that is told of a plan, told of this layout.
    pub plan: Plan,
    /// What is wrong with the layout's entries.
    pub findings: Vec<EntryFinding>,
}

/// Tells a layout as it stands.
///
/// # Errors
/// Every way in which the carcass contradicts itself.
pub fn draw(workspace: &Workspace, layout: &Layout) -> Result<Drawn, Vec<Finding>> {
    let stands = standing(workspace, layout)?;
    let workspace = &stands.workspace;
    let board = Board::with(&stands.site, &stands.places);
    let ledger = Ledger::new(&board);
    let mut plan = tell::plan(&board, &ledger, workspace);
    plan.notes.extend(stands.findings.iter().map(|f| f.finding.clone()));
    Ok(Drawn { plan, findings: stands.findings })
}
