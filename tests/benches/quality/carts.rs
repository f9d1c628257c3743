//! The fixed set of carts: drawn from seeds, so that they are the same everywhere.

use crate::support::carts::{Fill, workshop};
use toolberth::domain::Workspace;
use toolberth::site::{Site, Space, SpaceKind};

/// A cart of the set.
#[derive(Clone, Debug)]
pub struct Cart {
    /// Its name: how many things, and how full.
    pub name: &'static str,
    /// How many things it has.
    pub things: usize,
    fill: Fill,
    seed: u64,
}

/// All carts, the smallest first.
pub fn all() -> Vec<Cart> {
    use Fill::{Roomy, Tight};
    let cart = |name, things, fill, seed| Cart { name, things, fill, seed };
    vec![
        cart("10-roomy", 10, Roomy, 5),
        cart("24-roomy", 24, Roomy, 3),
        cart("24-tight", 24, Tight, 3),
        cart("48-roomy", 48, Roomy, 9),
        cart("48-tight", 48, Tight, 9),
        cart("60-tight", 60, Tight, 4),
        cart("100-roomy", 100, Roomy, 9),
        cart("200-tight", 200, Tight, 6),
        cart("300-roomy", 300, Roomy, 4),
    ]
}

impl Cart {
    /// The whole workspace.
    pub fn workspace(&self) -> Workspace {
        workshop(self.seed, self.things, self.fill)
    }
    /// The question that it is.
    pub fn site(&self) -> Site {
        Site::new(&self.workspace()).expect("the carcass is sound")
    }
}

/// The share of the volume of bays and drawers that all things together would fill.
pub fn fill(site: &Site) -> f64 {
    let things: f64 = site.lots.iter().map(|l| l.bulk as f64).sum();
    let inside = |s: &&Space| matches!(s.kind, SpaceKind::Bay | SpaceKind::Drawer);
    let room = |s: &Space| (0..3).map(|a| s.volume.extent(a).as_mm()).product::<f64>();
    things / site.spaces.iter().filter(inside).map(room).sum::<f64>()
}
