//! What the search did and why it ended.

use crate::solve::{Effort as Asked, End, Settings, Spent};

/// What the search did.
#[derive(Clone, Debug, Default)]
pub struct Effort {
    /// Trial moves proposed.
    pub moves: u64,
    /// Those that were legal and whose whole price reached the acceptance test.
    pub priced: u64,
    /// How long it took: the one value that may differ between two runs.
    pub seconds: f64,
    /// Restarts.
    pub restarts: u32,
    /// In how many growing cycles it went, where it did, the one in which it ended among them.
    pub cycles: Option<u32>,
    /// Why it ended.
    pub end: End,
    /// How many seconds it was given, where it was.
    pub allowed: Option<f64>,
}

impl Effort {
    /// What a search took; the clock is told by who has one.
    pub fn of(spent: Spent, end: End, settings: &Settings) -> Effort {
        let Spent { moves, priced, restarts, cycles } = spent;
        let growing = settings.effort == Asked::UntilEnded;
        let cycles = growing.then_some(cycles);
        Effort { moves, priced, restarts, cycles, end, ..Effort::default() }
    }
}
