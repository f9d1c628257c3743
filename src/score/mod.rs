//! The score of a layout: what it costs in seconds a week, and which rules it breaks.
//!
//! A cost is one file in `cost/`: measure → fact, price, sentence, least price. A rule is one file in `rule/`:
//! measure → value against a limit, sentence, source. [`COSTS`] and [`RULES`] are the only lists of them.
//! No cost or rule writes its own difference: the ledger weighs again whatever a change touched.

mod breakdown;
mod cost;
mod ledger;
mod memory;
pub(crate) mod rule;
mod tally;
mod view;

pub use breakdown::{BrokenRule, Part, broken, parts, subject, ties};
pub use cost::{COSTS, Cost, CostCard};
pub use ledger::{Ledger, Score, Undo};
pub use rule::{Against, RULES, Rule, RuleCard};
pub use tally::{Seat, Tally};
pub use view::{Closure, View, least_price, way_prices};

/// Whose price or rule it is, and so when it must be weighed again.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Scope {
    /// One lot where it is and a way of taking it, whatever else is on the cart: what each fetch costs by itself.
    Way,
    /// One lot, the way it is taken out, and what must be moved first: what each fetch costs besides.
    Lot,
    /// One lot where it is, whatever it costs to fetch it from there; it may look at what stands directly in its way.
    Place,
    /// Two items that are used together, by the faces that they are fetched from.
    Companions,
    /// One family, by the faces that its things are fetched from.
    Family,
    /// One job, by the faces that its items are fetched from.
    Job,
    /// Room that is to stay free, by what is taken of it.
    Growth,
    /// Two lots that must be kept apart.
    Pair,
    /// One surface.
    Surface,
    /// The whole cart.
    Cart,
}

impl Scope {
    /// Whether it is about the fetches of one lot.
    pub fn is_of_a_fetch(self) -> bool {
        matches!(self, Scope::Way | Scope::Lot)
    }
    /// Whether it is about one lot.
    pub fn is_of_a_lot(self) -> bool {
        self.is_of_a_fetch() || self == Scope::Place
    }
}
