//! The score of a layout: what it costs in seconds a week, and which rules it breaks.
//!
//! A cost is one file in `cost/`: measure → fact, price, sentence, least price. A rule is one file in `rule/`:
//! measure → value against a limit, sentence, source. [`COSTS`] and [`RULES`] are the only lists of them.
//! No cost or rule writes its own difference: the ledger weighs again whatever a change touched.

mod breakdown;
mod cost;
mod ledger;
pub(crate) mod rule;
mod view;

pub use breakdown::{BrokenRule, Part, broken, parts};
pub use cost::{COSTS, Cost, CostCard};
pub use ledger::{Ledger, Score, Undo};
pub use rule::{Against, RULES, Rule, RuleCard};
pub use view::{Closure, View, least_price, way_prices};

/// Whose price or rule it is, and so when it must be weighed again.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Scope {
    /// One lot, the way it is taken out, and what must be moved first.
    Lot,
    /// Two lots that must be kept apart.
    Pair,
    /// One surface.
    Surface,
    /// The whole cart.
    Cart,
}
