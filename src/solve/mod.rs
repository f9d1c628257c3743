//! The search for a layout: a fixed start, simulated annealing over corner places, restarts, and a lower bound.

mod anneal;
mod arrange;
mod bound;
mod finish;
mod leash;
mod propose;
mod remedy;
mod restarts;
mod search;
mod start;
mod zoning;

pub use anneal::{Count, Heat, Walk, cool};
pub use arrange::{Unplaced, Wanted, arrange};
pub use bound::bound;
pub use finish::{corners, trial};
pub use leash::{Held, Leashed, homing, leash, moved};
pub use propose::Mover;
pub use remedy::{Advice, Remedy, Wrong, advise, series, take};
pub use restarts::{Found, solve};
pub use search::Search;
pub use start::start;
pub use zoning::{Zoning, zonings};

use std::sync::atomic::{AtomicBool, AtomicU64};

/// How long to search, counted in trial moves.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub enum Effort {
    /// A tenth of the usual moves.
    Quick,
    /// The usual moves.
    #[default]
    Normal,
    /// Ten times the usual moves.
    Thorough,
}

/// How to search.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Settings {
    /// Everything random comes from it.
    pub seed: u64,
    /// How long.
    pub effort: Effort,
    /// How many threads; the result is the same for any number. Nought means as many as the machine has.
    pub threads: usize,
}

impl Default for Settings {
    fn default() -> Settings {
        Settings { seed: 1, effort: Effort::Normal, threads: 0 }
    }
}

/// What is watched from outside while the search runs.
#[derive(Debug, Default)]
pub struct Watch {
    /// Set it to end early with the best so far.
    pub stop: AtomicBool,
    /// Trial moves made so far.
    pub done: AtomicU64,
    /// Trial moves that will be made.
    pub planned: AtomicU64,
}
