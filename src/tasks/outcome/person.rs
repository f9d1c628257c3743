//! The person beside the cart.

use super::Zone;
use crate::units::Length;

/// A person's heights over the floor, shoes on, and how the heights before a face are reached.
#[derive(Clone, Debug, Default)]
pub struct Person {
    /// Top of the head.
    pub crown: Length,
    /// Eyes.
    pub eye: Length,
    /// Shoulder.
    pub shoulder: Length,
    /// Elbow.
    pub elbow: Length,
    /// Knuckles of a hanging hand; seated, the lowest grip.
    pub knuckle: Length,
    /// Knees; seated, the lowest grip.
    pub knee: Length,
    /// Highest grip.
    pub overhead: Length,
    /// How far an arm goes in.
    pub arm: Length,
    /// Whether they fetch seated.
    pub seated: bool,
    /// How a grip at the face itself is reached, from the floor up; the last band has no upper end.
    pub bands: Vec<Band>,
}

/// Heights that are reached alike.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Band {
    /// How.
    pub zone: Zone,
    /// From this height over the floor.
    pub from: Length,
    /// To this one; nothing where there is no end.
    pub to: Option<Length>,
}
