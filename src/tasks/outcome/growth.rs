//! Room to grow, as a layout leaves it.

use super::Zone;
use crate::units::Price;

/// Room that is to stay free.
#[derive(Clone, PartialEq, Debug)]
pub struct Growth {
    /// The family that it is for; `None` where it is for anything.
    pub family: Option<String>,
    /// The reach that it is in; `None` where easy and bend reach both will do.
    pub zone: Option<Zone>,
    /// How many litres are to stay free.
    pub wanted: f64,
    /// How many are free.
    pub free: f64,
    /// What it costs that some are missing.
    pub price: Price,
    /// The same in words.
    pub told: String,
}
