//! The floor as it is walked on, for telling and drawing: what stands there, and every way from the work to a place.

use super::{Floor, around, in_cart_frame, standing_place, visit, work_point};
use crate::domain::{Station, Workspace};
use crate::geometry::Way;
use crate::site::walk::{CLEARANCE, Rect2};
use crate::site::{Site, SpaceKind};
use crate::units::{Length, Time};

/// The floor round the cart, in the cart's frame.
#[derive(Clone, Debug)]
pub struct Surroundings {
    /// Within the walls, where the files say so.
    pub room: Option<Rect2>,
    /// The cart itself.
    pub cart: Rect2,
    /// Where things may hang outside its faces.
    pub hung: Vec<Rect2>,
    /// What stands about.
    pub obstacles: Vec<Rect2>,
    /// Every station of the shop, in its order: where one works, and the ways from there.
    pub stations: Vec<([Length; 2], Vec<WayOnFoot>)>,
}

/// A way from the work to the place before a space.
#[derive(Clone, Debug)]
pub struct WayOnFoot {
    /// The space.
    pub space: usize,
    /// The face at which it is opened.
    pub face: Way,
    /// The points of the way there, ends included; none where nobody walks.
    pub route: Vec<[Length; 2]>,
    /// How long it is.
    pub length: Length,
    /// Whether the cart must be rolled out first.
    pub rolled_out: bool,
    /// What one fetch costs in walking and rolling out.
    pub time: Time,
}

/// The floor of a workspace and every way on it.
pub fn surroundings(site: &Site, workspace: &Workspace) -> Surroundings {
    let shop = &workspace.shop;
    let alone = Floor::new(&around(site, None), None, CLEARANCE);
    let placed = shop.room.cart.as_ref();
    let within = |a, b| placed.map(|cart| in_cart_frame(cart, a, b));
    let room = shop.room.size.and_then(|size| within([Length::ZERO; 2], size));
    let crowded =
        placed.map(|cart| Floor::new(&around(site, Some((&shop.room, cart))), room, CLEARANCE));
    let floor = crowded.as_ref().unwrap_or(&alone);
    let (cart, hung) = own(site);
    let far = |o: &crate::domain::Obstacle| [o.at[0] + o.size[0], o.at[1] + o.size[1]];
    let one = |station: &Station| {
        let ways =
            all_ways(site, |s, way| on_foot(site, workspace, station, floor, &alone, s, way));
        (work_point(site, station.work), ways)
    };
    Surroundings {
        room,
        cart,
        hung,
        obstacles: shop.room.obstacles.iter().filter_map(|o| within(o.at, far(o))).collect(),
        stations: shop.stations.iter().map(one).collect(),
    }
}

/// The cart and what may hang on it, from above.
fn own(site: &Site) -> (Rect2, Vec<Rect2>) {
    let flat = |b: &crate::geometry::Box3| Rect2::new([b.min[0], b.min[1]], [b.max[0], b.max[1]]);
    let panels = site.spaces.iter().filter(|s| s.kind == SpaceKind::Panel);
    let cart = Rect2::new([Length::ZERO; 2], [site.size[0], site.size[1]]);
    (cart, panels.map(|s| flat(&s.volume)).collect())
}

fn all_ways<T>(site: &Site, mut one: impl FnMut(usize, Way) -> T) -> Vec<T> {
    let spaces = site.spaces.iter().enumerate();
    spaces
        .flat_map(|(s, space)| space.ways.iter().map(move |w| (s, *w)))
        .map(|(s, w)| one(s, w))
        .collect()
}

fn on_foot(
    site: &Site,
    workspace: &Workspace,
    station: &Station,
    floor: &Floor,
    alone: &Floor,
    space: usize,
    face: Way,
) -> WayOnFoot {
    let shop = &workspace.shop;
    let time = visit(site, space, face, station, floor, alone, shop);
    let mut way =
        WayOnFoot { space, face, route: Vec::new(), length: Length::ZERO, rolled_out: false, time };
    if face == station.work || face == Way::Top {
        return way;
    }
    let (from, to) = (work_point(site, station.work), standing_place(site, space, face));
    let free = if station.walls.contains(&face) { None } else { floor.walk(from, to) };
    way.rolled_out = free.is_none();
    way.length = free.or_else(|| alone.walk(from, to)).unwrap_or(Length::ZERO);
    let on = if way.rolled_out { alone } else { floor };
    way.route = on.route(from, to).unwrap_or_default();
    way
}
