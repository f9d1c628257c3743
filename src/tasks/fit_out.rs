//! Fitting the cart out: what to build so that every tool hangs and stands, where every hole goes, what to buy, and in
//! which order to mount it; with what labels and the borrower's card say.
//!
//! Frame of a board: millimetres from its left and its lower edge, as seen by one who stands before it.

mod behind;
mod card;
mod caution;
mod divide;
mod hang;
mod hole;
mod label;
mod mount;
mod panel;
pub mod screw;
mod sequence;
mod shopping;
mod stand;
mod work;

pub use card::{Card, CardFace, CardLine};
pub use hang::{ROUGH, source};
pub use hole::{APART, FROM_EDGE, Hole};
pub use label::{FILLS, Fill, Label, Mark, SHAPES, Shape};
pub use mount::{Mount, MountKind, on_tape, tape_step};
pub use sequence::Stage;
pub use shopping::Buy;
pub use stand::{SLENDER, is_unsteady};

use super::outcome::{Caution, Plan};
use super::standing::standing;
use super::tell;
use crate::domain::{Layout, Workspace};
use crate::finding::Finding;
use crate::score::Ledger;
use crate::site::Board;
use crate::units::{Length, Mass, Unit};
use screw::Screw;
use work::Work;

/// What keeps a thing in its place.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum Kind {
    /// Screws that hold a panel on its face.
    Panel,
    /// A hook on a plate.
    Hook,
    /// A rail on brackets, for a row of things alike.
    Rail,
    /// A bracket with a ledge.
    Bracket,
    /// Two cheeks that a thing stands or lies between.
    Rack,
    /// A strap round a thing, to the wall beside it.
    Strap,
    /// A board across a drawer.
    Divider,
    /// A lining that keeps things from sliding where no divider fits.
    Lining,
    /// A strip along the front edge of a shelf.
    Lip,
    /// Bolts through a thing's own foot.
    Bolts,
}

impl Kind {
    /// The word for it in reports.
    pub const fn name(self) -> &'static str {
        match self {
            Kind::Panel => "panel",
            Kind::Hook => "hook",
            Kind::Rail => "rail",
            Kind::Bracket => "bracket",
            Kind::Rack => "rack",
            Kind::Strap => "strap",
            Kind::Divider => "divider",
            Kind::Lining => "lining",
            Kind::Lip => "lip",
            Kind::Bolts => "bolts",
        }
    }
}

/// How well something hangs.
#[derive(Clone, PartialEq, Debug)]
pub struct Holding {
    /// What is reckoned with, all its hooks together.
    pub load: Mass,
    /// How far out from the board that acts.
    pub reach: Length,
    /// The share of what may be counted on that its most loaded screw uses; 1 is all.
    pub share: f64,
    /// The round steel that its hooks are bent from, where they are.
    pub wire: Option<Length>,
    /// What one hook or bracket must be rated for, where it is bought.
    pub rated: Mass,
}

/// Something to be built or mounted.
#[derive(Clone, Debug)]
pub struct Holder {
    /// What it is.
    pub kind: Kind,
    /// What it is for, as an index into the placements; `None` where it is for a whole panel, drawer or shelf.
    pub placement: Option<usize>,
    /// What it is for, in words.
    pub of: String,
    /// What to build, in words.
    pub told: String,
    /// What to buy or cut for it, each with how many.
    pub parts: Vec<(String, u32)>,
    /// The board that it is screwed to, as an index into the mounts.
    pub mount: Option<usize>,
    /// Its screws and how many.
    pub screw: Option<(Screw, u32)>,
    /// How it holds, where something hangs from it.
    pub holding: Option<Holding>,
}

/// Everything that fitting the cart out takes.
#[derive(Clone, Debug)]
pub struct FitOut {
    /// The layout as it stands, with its placements.
    pub plan: Plan,
    /// The unit of the user's files.
    pub units: Unit,
    /// What to build: for the placements in their order, then for drawers, shelves and panels.
    pub holders: Vec<Holder>,
    /// The boards that are drilled, in the order of mounting.
    pub mounts: Vec<Mount>,
    /// What to buy or cut.
    pub shopping: Vec<Buy>,
    /// In which order to mount it.
    pub stages: Vec<Stage>,
    /// What to mind while mounting.
    pub cautions: Vec<Caution>,
    /// What the carcass file leaves open and is assumed.
    pub assumed: Vec<String>,
    /// What is wanting: things that cannot be held, in words.
    pub wants: Vec<String>,
    /// What is wrong with the entries of the layout.
    pub findings: Vec<String>,
    /// Labels, one for each placement, in their order.
    pub labels: Vec<Label>,
    /// The borrower's card.
    pub card: Card,
    /// Where the figures of the holding come from.
    pub source: String,
}

/// Fits a cart out for the layout as it stands.
///
/// # Errors
/// Every way in which the carcass contradicts itself.
pub fn fit_out(workspace: &Workspace, layout: &Layout) -> Result<FitOut, Vec<Finding>> {
    let stands = standing(workspace, layout)?;
    let workspace = &stands.workspace;
    let board = Board::with(&stands.site, &stands.places);
    let ledger = Ledger::new(&board);
    let plan = tell::plan(&board, &ledger, workspace);
    let card = card::card(&board, workspace, &plan);
    let mut work = Work::new(workspace, &board, plan);
    for placement in 0..work.plan.placements.len() {
        stand::keep(&mut work, placement);
    }
    divide::drawers(&mut work);
    divide::shelves(&mut work);
    panel::panels(&mut work);
    work.number();
    let labels = label::labels(&work);
    Ok(FitOut {
        units: workspace.carcass.units,
        shopping: shopping::list(&work, labels.len()),
        stages: sequence::stages(&work),
        cautions: caution::cautions(&work),
        assumed: work.assumed(),
        findings: stands.findings.iter().map(|f| f.what.clone()).collect(),
        labels,
        card,
        source: source(),
        holders: work.holders,
        mounts: work.mounts,
        wants: work.wants,
        plan: work.plan,
    })
}
