//! The search for a layout: a fixed start, simulated annealing over corner places, restarts, and a lower bound.

mod anneal;
mod arrange;
mod bound;
mod cycles;
mod exact;
mod finish;
mod floor;
mod leash;
mod propose;
mod remedy;
mod restarts;
mod search;
mod start;
mod watch;
mod zoning;

pub use anneal::{Count, Heat, Walk, cool};
pub use arrange::{Unplaced, Wanted, arrange};
pub use bound::bound;
pub use cycles::{Cycle, Effort, End, cycles};
pub use exact::{Exact, exact};
pub use finish::{corners, trial};
pub use floor::Floor;
pub use leash::{Held, Leashed, homing, leash, moved};
pub use propose::Mover;
pub use remedy::{Advice, Remedy, Wrong, advise, series, take};
pub use restarts::{Found, Restarts, Spent, solve};
pub use search::{Search, energy};
pub use start::start;
pub use watch::{Progress, Stop, Watch};
pub use zoning::{Zoning, zonings};

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
