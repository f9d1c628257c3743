//! The text report of a plan: what is wrong first, then what it costs, then face by face where everything lives.

mod audit;
mod boards;
mod canvas;
mod cart;
mod check;
mod compare;
mod elevation;
mod extremes;
mod face;
mod fit_out;
mod lifts;
mod page;
mod progress;
mod replan;
mod rolling;
mod room;
mod shelves;
mod stability;
mod table;
mod ties;
mod verdict;
mod why;
mod wrap;

use super::{figure, sentence};
use crate::tasks::outcome::Plan;
pub use audit::audit;
pub use check::check;
pub use compare::compare;
pub use fit_out::fit_out;
use page::Page;
pub use progress::progress;
pub use replan::replan;
pub use room::room;
pub use why::why;

/// The narrowest width that drawings and tables are made for; below it they fall to lists.
pub const NARROW: usize = 60;

/// How a report looks.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Look {
    /// Columns of the terminal.
    pub width: usize,
    /// The colours to use.
    pub colour: Colour,
    /// Whether to draw with `+ - |` and to keep every character of ours within ASCII.
    pub ascii: bool,
}

/// The colours that a terminal has.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Colour {
    /// None: the text carries no escape at all.
    Plain,
    /// The sixteen that every terminal has.
    Sixteen,
    /// All of them.
    Full,
}

impl Default for Look {
    /// What suits a pipe: 100 columns, no colour, drawn lines.
    fn default() -> Look {
        Look { width: 100, colour: Colour::Plain, ascii: false }
    }
}

/// The faces of a cart, drawn and listed; ending with a line break.
pub fn faces(plan: &Plan, look: &Look) -> String {
    let mut page = Page::new(*look);
    page.heading(page::Ink::Bold, &plan.name);
    face::all(&mut page, plan);
    page.finish()
}

/// The whole report of a plan, ending with a line break.
pub fn plan(plan: &Plan, look: &Look) -> String {
    let mut page = Page::new(*look);
    verdict::wrong(&mut page, plan);
    verdict::cost(&mut page, plan);
    face::all(&mut page, plan);
    shelves::section(&mut page, plan);
    ties::jobs(&mut page, plan);
    ties::companions(&mut page, plan);
    ties::families(&mut page, plan);
    cart::reserve(&mut page, plan);
    extremes::extremes(&mut page, plan);
    cart::casters(&mut page, plan);
    stability::casters(&mut page, plan);
    stability::tipping(&mut page, plan);
    rolling::rolling(&mut page, plan);
    boards::shelves(&mut page, plan);
    boards::fixings(&mut page, plan);
    lifts::lifts(&mut page, plan);
    cart::cautions(&mut page, &plan.cautions);
    cart::loading(&mut page, plan);
    cart::earning(&mut page, plan);
    cart::notes(&mut page, &plan.notes);
    page.finish()
}

#[cfg(test)]
mod tests;
