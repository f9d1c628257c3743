//! What no placement can take care of, said where it matters: one file a subject.

mod boards;
mod children;
mod fire;
mod hazards;
mod lifting;
mod rolling;
mod room;
mod statics;
mod unsaid;

use super::super::outcome::{CasterLoad, Caution, Lift, Rolling, Stability};
use crate::domain::{Hazards, Item, Workspace};
use crate::site::Board;
use crate::units::Unit;

const OURS: &str = "common practice, no source";

/// What cautions look at: the layout, the files and the loads on the casters.
struct About<'a> {
    board: &'a Board<'a>,
    workspace: &'a Workspace,
    casters: &'a [CasterLoad],
    stability: &'a Stability,
    rolling: &'a Rolling,
    lifts: &'a [Lift],
}

/// A subject that cautions are about.
type Subject = fn(&About) -> Vec<Caution>;

/// What the inventory and the room ask for, whatever the layout; the most urgent first.
const OF_INVENTORY: &[Subject] =
    &[unsaid::cautions, fire::cautions, room::cautions, children::locks, hazards::cautions];

/// What the loaded cart asks for.
const OF_LAYOUT: &[Subject] =
    &[children::drawers, statics::cautions, boards::cautions, rolling::cautions, lifting::cautions];

/// All cautions that concern this cart and inventory.
pub(super) fn cautions(
    board: &Board,
    workspace: &Workspace,
    casters: &[CasterLoad],
    stability: &Stability,
    rolling: &Rolling,
    lifts: &[Lift],
) -> Vec<Caution> {
    let about = About { board, workspace, casters, stability, rolling, lifts };
    [OF_INVENTORY, OF_LAYOUT].concat().iter().flat_map(|subject| subject(&about)).collect()
}

/// Those that can be told before anything is placed, of a board with nothing on it.
pub(crate) fn foreseen(empty: &Board, workspace: &Workspace) -> Vec<Caution> {
    let stability = &Stability::default();
    let rolling = &Rolling::default();
    let about = About { board: empty, workspace, casters: &[], stability, rolling, lifts: &[] };
    OF_INVENTORY.iter().flat_map(|subject| subject(&about)).collect()
}

/// A caution about those items; about the whole cart where there are none.
fn caution(items: Vec<String>, text: impl Into<String>, source: &str) -> Caution {
    Caution { items, text: text.into(), source: source.to_owned() }
}

impl About<'_> {
    /// The unit of the user's files.
    fn unit(&self) -> Unit {
        self.workspace.carcass.units
    }
    /// Names of the items that are so, in the order of the inventory.
    fn named(&self, is: impl Fn(&Item) -> bool) -> Vec<String> {
        self.workspace.items.iter().filter(|i| is(i)).map(|i| i.name.clone()).collect()
    }
    /// Names of the items with one of those hazards; nothing where there is none.
    fn meeting(&self, hazards: Hazards) -> Option<Vec<String>> {
        let names = self.named(|item| item.hazards.meets(hazards));
        (!names.is_empty()).then_some(names)
    }
}
