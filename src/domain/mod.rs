//! What the user means: the cart, the things, the shop and where things are, with every default resolved but no geometry.

mod board;
mod carcass;
mod family;
mod item;
mod layout;
mod shop;

pub use board::{Along, Ends, Fixing, Material, ScrewSize};
pub use carcass::{
    Bay, Bench, Board, Carcass, Casters, Depth, Drawer, Overhang, Panel, Shelf, Wall, Zone,
};
pub use family::typical;
pub use item::{CLOSED_METAL_CAN, Dims, Handles, Hazard, Hazards, Home, Item, Pose};
pub use layout::{Entry, Layout, ShelfEntry};
pub use shop::{
    CartPlace, Experience, Forces, Hand, Job, Obstacle, Person, Rates, Reserve, Room, Sex, Shop,
    Station,
};

/// A side of the cart; also the way out for what is kept there.
pub use crate::geometry::Way as Face;

/// Everything that the files of a workspace say.
#[derive(Clone, Debug)]
pub struct Workspace {
    /// The box.
    pub carcass: Carcass,
    /// The things, in the order of the files (included files first).
    pub items: Vec<Item>,
    /// The person, the room and the work.
    pub shop: Shop,
    /// Where things are now, where a `layout.yaml` says so.
    pub layout: Option<Layout>,
}

impl Workspace {
    /// The same workspace with every shelf where a layout says that it stands, or else as drawn; none may be moved.
    #[must_use]
    pub fn as_stands(&self, shelves: &[ShelfEntry]) -> Workspace {
        let mut stands = self.begun(shelves);
        for shelf in stands.carcass.bays.iter_mut().flat_map(|bay| &mut bay.shelves) {
            shelf.adjust = None;
        }
        stands
    }

    /// The same workspace with its shelves where a layout says that they stand; they may be moved as before.
    #[must_use]
    pub fn begun(&self, shelves: &[ShelfEntry]) -> Workspace {
        let mut begun = self.clone();
        begun.carcass.bays.iter_mut().for_each(|bay| bay.set_shelves(shelves));
        begun
    }
}
