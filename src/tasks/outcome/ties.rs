//! What belongs together, as a layout has it.

use crate::domain::Face;
use crate::units::{Price, Time, Uses};

/// Two items that are used together.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Companions {
    /// The two, in the order of the inventory.
    pub items: [String; 2],
    /// The faces that each is fetched from; none where it is off the cart.
    pub faces: [Vec<Face>; 2],
    /// How often both are wanted.
    pub uses: Uses,
    /// What it costs that no face has both.
    pub price: Price,
    /// The same in words.
    pub told: String,
}

impl Companions {
    /// Whether both are on the cart.
    pub fn on_cart(&self) -> bool {
        self.faces.iter().all(|f| !f.is_empty())
    }
    /// Whether a face has both.
    pub fn share_a_face(&self) -> bool {
        self.faces[0].iter().any(|f| self.faces[1].contains(f))
    }
}

/// A family with the faces that it stands on.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Family {
    /// What it is called.
    pub name: String,
    /// The faces that its things are fetched from, with the number of places on each.
    pub faces: Vec<(Face, usize)>,
    /// What it costs that there are several.
    pub price: Price,
}

/// A job, and whether the cart has all that it asks for.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Job {
    /// What it is called.
    pub name: String,
    /// How often it is done.
    pub uses: Uses,
    /// What it asks for and the cart has not.
    pub missing: Vec<Missing>,
    /// The faces in the order in which one comes to them on the shortest tour from the work.
    pub tour: Vec<Face>,
    /// Where one works while it is done: the station with the greatest share.
    pub station: String,
    /// How long one walks on the tour there; rolling the cart out is not in it.
    pub walk: Time,
    /// What its tour costs a week beyond the walk to the farthest face and back, over all stations.
    pub price: Price,
}

/// An item that a job asks for and that is off the cart.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Missing {
    /// The item.
    pub item: String,
    /// How many copies are off the cart.
    pub copies: u32,
    /// How many there are.
    pub of: u32,
}
