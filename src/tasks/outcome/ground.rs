//! The floor round the cart: stations, walls, what stands about, and the ways on foot.

use crate::domain::Face;
pub use crate::site::walk::Rect2;
use crate::units::{Length, Share, Time};

/// The floor round the cart, in the cart's own frame: x right, y back, mm.
#[derive(Clone, Debug, Default)]
pub struct Ground {
    /// Within the walls of the room, where the files say so.
    pub room: Option<Rect2>,
    /// The cart.
    pub cart: Rect2,
    /// Where things may hang outside its faces.
    pub hung: Vec<Rect2>,
    /// What stands about.
    pub obstacles: Vec<Rect2>,
    /// Where the work is.
    pub stations: Vec<StationWays>,
}

/// A station, and the ways from its work to every place on the cart.
#[derive(Clone, Debug)]
pub struct StationWays {
    /// What it is called.
    pub name: String,
    /// The share of all fetches made there.
    pub share: Share,
    /// The face towards the work.
    pub work: Face,
    /// Where one works.
    pub at: [Length; 2],
    /// Faces that stand at a wall there.
    pub walls: Vec<Face>,
    /// The ways, one for each opening, in the order of the file.
    pub ways: Vec<Walk>,
}

/// A way on foot from the work to the place before an opening.
#[derive(Clone, Debug)]
pub struct Walk {
    /// The face at which the opening is.
    pub face: Face,
    /// The bay, drawer or panel; `bench` on top.
    pub bay: String,
    /// The points of the way there, ends included; none where nobody walks.
    pub route: Vec<[Length; 2]>,
    /// How long it is, one way.
    pub length: Length,
    /// Whether the cart must be rolled out first.
    pub rolled_out: bool,
    /// What one fetch costs in walking and rolling out.
    pub time: Time,
}
