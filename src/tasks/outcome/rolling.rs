//! Rolling the loaded cart: what it asks of a person, where it passes and fits, and what moves on it when it stops.

use super::{Amount, Mark};
use crate::domain::Face;
use crate::units::Length;

/// What rolling asks of the person behind the cart.
#[derive(Clone, PartialEq, Debug)]
pub struct Push {
    /// What is done, in words.
    pub case: String,
    /// What it takes; nothing where no push does it.
    pub force: Option<Amount>,
    /// What protects 80 % of people with their hands at the height of the bench.
    pub most: Amount,
    /// Above this fewer than half are protected.
    pub half: Amount,
}

/// The way through the door.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Door {
    /// How broad the cart is with what hangs on it, end or side first, whichever is less.
    pub broad: Length,
    /// The side that goes first.
    pub first: Face,
    /// The clear width of the door.
    pub clear: Length,
}

/// The floor before one face where the cart stands.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Before {
    /// The face.
    pub face: Face,
    /// From the face to the nearest wall or obstacle.
    pub free: Length,
    /// Its farthest drawer or what hangs on it, and a person.
    pub needs: Length,
}

/// Everything about rolling and standing.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Rolling {
    /// What it asks of a person.
    pub pushes: Vec<Push>,
    /// How high the threshold is, how high the wheels are, and whether the files say so.
    pub threshold: Option<(Length, Length, bool)>,
    /// The way through the door, where the files say how wide it is.
    pub door: Option<Door>,
    /// What it stands in, where its place in the room is known.
    pub in_the_way: Vec<String>,
    /// The floor before each face that is used, where its place in the room is known.
    pub before: Vec<Before>,
    /// The floor that it takes with what hangs on it, in square metres.
    pub stands_on: f64,
    /// The floor or table that its things would take side by side, in square metres.
    pub side_by_side: f64,
    /// Loaded drawers that nothing keeps shut.
    pub opens: Vec<String>,
    /// Things that slide over the edge of their deck at a stop.
    pub slides: Vec<String>,
    /// Heavy or sharp things that hang and swing at a stop.
    pub swings: Vec<String>,
    /// How far things slide and how high they swing when it stops dead.
    pub at_a_stop: [Length; 2],
    /// Figures that no file states, each with where it comes from.
    pub assumed: Vec<String>,
    /// Where the forces come from.
    pub source: &'static str,
    /// How they were come by.
    pub mark: Option<Mark>,
}
