//! What no placement can take care of, said where it matters: one file a subject.

mod hazards;
mod lifting;
mod rolling;
mod room;
mod statics;

use super::super::outcome::{CasterLoad, Caution};
use crate::domain::{Hazard, Item, Workspace};
use crate::site::Board;

const OURS: &str = "common practice, no source";

/// What cautions look at: the layout, the files and the loads on the casters.
struct About<'a> {
    board: &'a Board<'a>,
    workspace: &'a Workspace,
    casters: &'a [CasterLoad],
}

/// Every subject, the most urgent first.
const SUBJECTS: &[fn(&About) -> Vec<Caution>] =
    &[hazards::cautions, room::cautions, statics::cautions, rolling::cautions, lifting::cautions];

/// All cautions that concern this cart and inventory.
pub(super) fn cautions(
    board: &Board,
    workspace: &Workspace,
    casters: &[CasterLoad],
) -> Vec<Caution> {
    let about = About { board, workspace, casters };
    SUBJECTS.iter().flat_map(|subject| subject(&about)).collect()
}

/// A caution about those items; about the whole cart where there are none.
fn caution(items: Vec<String>, text: impl Into<String>, source: &str) -> Caution {
    Caution { items, text: text.into(), source: source.to_owned() }
}

impl About<'_> {
    /// Names of the items that are so, in the order of the inventory.
    fn named(&self, is: impl Fn(&Item) -> bool) -> Vec<String> {
        self.workspace.items.iter().filter(|i| is(i)).map(|i| i.name.clone()).collect()
    }
    /// Names of the items with one of those hazards.
    fn with(&self, hazards: &[Hazard]) -> Vec<String> {
        self.named(|item| hazards.iter().any(|h| item.hazards.has(*h)))
    }
}
