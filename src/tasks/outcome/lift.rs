//! What fetching things asks of the back.

use super::Copy;
use crate::units::{Length, Mass};

/// One thing as it is fetched from its place.
#[derive(Clone, Debug)]
pub struct Lift {
    /// The thing, or the first copy of a pile or row.
    pub copy: Copy,
    /// The hands that it takes.
    pub hands: u8,
    /// What is lifted at once: one copy.
    pub weight: Mass,
    /// Height of the hand over the floor at its place.
    pub hand: Length,
    /// The lift, or why the equation says nothing of it.
    pub assessed: Result<Assessed, &'static str>,
}

/// A lift with both hands by the lifting equation, at its harder end.
#[derive(Clone, Debug)]
pub struct Assessed {
    /// `place` or `bench`.
    pub end: &'static str,
    /// Height of the hands over the floor there.
    pub height: Length,
    /// From the ankles forward to the hands there.
    pub horizontal: Length,
    /// How far up or down the load travels.
    pub travel: Length,
    /// How well the hands hold it.
    pub coupling: &'static str,
    /// Whether that was assumed.
    pub assumed: bool,
    /// What may be lifted so at an index of one; nought where no load may.
    pub advised: Mass,
    /// Weight over that; nothing where no load may be lifted so.
    pub index: Option<f64>,
    /// The index that may not be exceeded.
    pub limit: f64,
}

/// Where the lifting index and its limit come from.
pub const LIFT_SOURCE: &str = "NIOSH Pub. 94-110 (rev. 2021), revised lifting equation, metric";

impl Lift {
    /// Its index, where there is one.
    pub fn index(&self) -> Option<f64> {
        self.assessed.as_ref().ok().and_then(|a| a.index)
    }
}
