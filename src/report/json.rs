//! The JSON documents of the program: lengths in mm to the nanometre, masses in kg, times in s.
//!
//! The keys are a contract: more may be added, those that are here stay.

mod audit;
mod boards;
mod cart;
mod check;
mod compare;
mod drawn;
mod extreme;
mod finding;
mod fit_out;
mod growth;
mod lifts;
mod loading;
mod part;
mod placement;
mod plan;
mod replan;
mod rolling;
mod room;
mod search;
mod shelves;
mod spot;
mod stability;
mod ties;
mod why;
mod worth;

pub use audit::audit;
pub use check::check;
pub use compare::compare;
pub use drawn::drawn;
pub use finding::findings;
pub use fit_out::fit_out;
pub use plan::plan;
pub use replan::replan;
pub use room::room;
pub use why::why;

#[cfg(test)]
mod tests;
