//! The site: the cart resolved to spaces, surfaces and boards in 3D, the things as lots that want a place,
//! and the board, which knows where everything is now.
//!
//! The site is the question and never changes while it is being answered; the board is a state of the answer.

mod access;
mod apart;
mod board;
mod build;
mod carry;
mod corner;
mod growth;
mod lifting;
mod lot;
mod stability;
mod surface;
mod survey;
mod ties;
mod tour;
pub mod walk;

pub use access::{Surroundings, WayOnFoot, in_cart_frame, surroundings};
pub use apart::{Clash, FIRE, FUEL, Pair};
pub use board::{Board, Change, Place, Touched};
pub use carry::{Hold, Plank, Span, figures};
pub use corner::{
    Clearing, box_at, corner_of, fits_at, for_each_corner, for_each_corner_anyhow, has_way_out,
    surface_of_entry, surfaces_of_entry,
};
pub use growth::{For, Growth, Near, Volumes, Wanted, posture_at, shared, slices};
pub use lifting::{End, Lifted, Unassessed, lifted, unassessed};
pub use lot::{Form, Home, Lot, answers, at, best_spots, grip_at};
pub use stability::{Case, CaseKind, Stand, Statics, TIP_CLOSED, TIP_OPEN};
pub use surface::{
    Kind, Lie, Rest, ShelfBoard, Space, SpaceKind, Surface, depth_from, local, world,
};

pub use ties::{Bonds, Companions, Family, Job, Ties};
pub use tour::{Faces, Legs, Tour, Tours};

use crate::domain::{Item, Rates, Workspace};
use crate::finding::Finding;
use crate::geometry::Box3;
use crate::physics::body::Body;
use crate::units::{Length, Uses};

/// Most casters that the statics handle.
pub const MOST_CASTERS: usize = crate::physics::casters::MOST;

/// The whole question: what is to be placed, and where it could be.
#[derive(Clone, Debug)]
pub struct Site {
    /// Width, depth and height of the cart.
    pub size: [Length; 3],
    /// Everything that shares one volume.
    pub spaces: Vec<Space>,
    /// Everything that carries things.
    pub surfaces: Vec<Surface>,
    /// Shelf boards, from the bottom up in each bay.
    pub boards: Vec<ShelfBoard>,
    /// The items, in the order of the inventory.
    pub items: Vec<Item>,
    /// What wants a place: a copy, a pile or a row each.
    pub lots: Vec<Lot>,
    /// Pairs of lots that must be kept apart.
    pub pairs: Vec<Pair>,
    /// The pairs of each lot, as indices into `pairs`.
    pub pairs_of: Vec<Vec<u32>>,
    /// The person.
    pub body: Body,
    /// Casters, masses and what they may carry.
    pub statics: Statics,
    /// The lifting index that no lift may exceed.
    pub lifting_limit: f64,
    /// Companions, families and jobs.
    pub ties: Ties,
    /// Walks between faces.
    pub tours: Tours,
    /// Room to grow.
    pub growth: Growth,
    /// For each face, how far out of it one stands to fetch, in the order of [`crate::geometry::Way::ALL`].
    pub stand_off: [Length; 5],
    /// Rates that are a matter of taste.
    pub rates: Rates,
    /// Whether the floor is uneven.
    pub uneven: bool,
    /// The share of the bench that may hold things, as an area in square millimetres.
    pub bench_area: f64,
}

impl Site {
    /// Resolves a workspace.
    ///
    /// # Errors
    /// Every way in which the carcass contradicts itself: bays that collide, overlap or stick out of the box, shelves
    /// out of their bay, panels too near the floor, casters that cannot carry.
    pub fn new(workspace: &Workspace) -> Result<Site, Vec<Finding>> {
        let faults = survey::faults(&workspace.carcass);
        if !faults.is_empty() {
            return Err(faults);
        }
        let mut site = build::frame(workspace);
        access::price(&mut site, workspace);
        lot::furnish(&mut site, workspace);
        ties::tie(&mut site, workspace);
        growth::plan_ahead(&mut site, workspace);
        apart::pair_up(&mut site);
        Ok(site)
    }

    /// The same site with the lots of one item split into single copies, for when the whole pile finds no place.
    #[must_use]
    pub fn split(&self, item: usize, workspace: &Workspace) -> Site {
        let mut site = self.clone();
        lot::split(&mut site, workspace, item);
        apart::pair_up(&mut site);
        site
    }

    /// The same site with its lots divided as a layout has them: those groups of an item, a first copy and how many; the
    /// copies that no group names are divided as they would be anyhow, and nothing is fixed.
    #[must_use]
    pub fn divided(&self, workspace: &Workspace, groups: &[(usize, u32, u32)]) -> Site {
        let mut site = self.clone();
        lot::regroup(&mut site, workspace, groups);
        apart::pair_up(&mut site);
        site
    }

    /// A lot on a surface in every form that goes there by its kind, whether or not it fits, is allowed or is carried.
    pub fn homes_on(&self, lot: usize, surface: usize) -> Vec<Home> {
        let one = &self.lots[lot];
        (0..one.forms.len()).filter_map(|f| lot::home(self, one, surface, f)).collect()
    }

    /// The same site with further things, a lot each, after all others. They are not judged as taken away: they are not
    /// there yet.
    #[must_use]
    pub fn with_more(&self, workspace: &Workspace, items: Vec<Item>) -> Site {
        let mut site = self.clone();
        for item in items {
            site.items.push(item);
            let lot = lot::make(&site, workspace, site.items.len() - 1, 1, 1);
            site.lots.push(lot);
        }
        ties::tie(&mut site, workspace);
        apart::pair_up(&mut site);
        site
    }

    /// The free box of a surface with the shelves at their stated heights.
    pub fn free(&self, surface: usize) -> Box3 {
        self.surfaces[surface].free
    }

    /// Face, space and name of a surface, for messages.
    pub fn surface_name(&self, surface: usize) -> String {
        let surface = &self.surfaces[surface];
        let space = &self.spaces[surface.space];
        format!("{} / {} / {}", space.face.name(), space.name, surface.name)
    }

    /// Total uses a week of all lots.
    pub fn uses(&self) -> Uses {
        self.lots.iter().map(|l| l.uses).sum()
    }
}
