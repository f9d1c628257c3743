//! What it costs to walk to each space: one table for the whole search, with all stations folded in.

mod ways;

pub use ways::{Surroundings, WayOnFoot, surroundings};

use super::Site;
use super::surface::{SpaceKind, local};
use super::tour::{Legs, Tours};
use super::walk::{CLEARANCE, Floor, Rect2};
use crate::domain::{CartPlace, Face, Room, Shop, Station, Workspace};
use crate::geometry::Way;
use crate::physics::motion;
use crate::units::{Length, Time};

/// How far from a face one stands: model's choice.
const STAND: Length = Length::mm(400);

/// Fills in the access prices of all spaces, and the walks between faces.
pub(super) fn price(site: &mut Site, workspace: &Workspace) {
    let shop = &workspace.shop;
    site.stand_off = Face::ALL.map(|face| stand_off(site, face));
    let alone = Floor::new(&around(site, None), None, CLEARANCE);
    let placed = shop.room.cart.as_ref().map(|cart| {
        let room = shop.room.size.map(|size| in_cart_frame(cart, [Length::ZERO; 2], size));
        (Floor::new(&around(site, Some((&shop.room, cart))), room, CLEARANCE), ())
    });
    let floor = placed.as_ref().map_or(&alone, |(f, ())| f);
    for s in 0..site.spaces.len() {
        for w in 0..site.spaces[s].ways.len() {
            let way = site.spaces[s].ways[w];
            let mut total = 0i128;
            for station in &shop.stations {
                let one = visit(site, s, way, station, floor, &alone, shop);
                total += i128::from(one.as_us()) * i128::from(station.share.as_ppm());
            }
            site.spaces[s].access[w] = Time::us(((total + 500_000) / 1_000_000) as i64);
            site.spaces[s].walled[w] = shop.stations.iter().any(|t| t.walls.contains(&way));
        }
    }
    let legs = shop.stations.iter().map(|station| legs(site, station, floor, &alone));
    site.tours = Tours::new(legs.collect(), &site.rates);
}

/// The walks between all faces at one station.
fn legs(site: &Site, station: &Station, floor: &Floor, alone: &Floor) -> Legs {
    let point = |face: Face| work_point(site, if face == Way::Top { station.work } else { face });
    let walled = |face: Face| station.walls.contains(&face);
    let walk = |from: Face, to: Face| {
        let free = || alone.walk(point(from), point(to)).unwrap_or(Length::ZERO);
        let path = if walled(from) || walled(to) {
            free()
        } else {
            floor.walk(point(from), point(to)).unwrap_or_else(free)
        };
        pace(site, path)
    };
    let walk = Face::ALL.map(|from| Face::ALL.map(|to| walk(from, to)));
    Legs { station: station.name.clone(), share: station.share, walk }
}

/// How long a path takes the person.
fn pace(site: &Site, path: Length) -> Time {
    if site.body.seated { motion::wheel(path) } else { motion::walk(path) }
}

/// What one fetch from a space costs in walking at one station.
fn visit(
    site: &Site,
    s: usize,
    way: Way,
    station: &Station,
    floor: &Floor,
    alone: &Floor,
    shop: &Shop,
) -> Time {
    if way == station.work || way == Way::Top {
        return Time::ZERO;
    }
    let (from, to) = (work_point(site, station.work), standing_place(site, s, way));
    let free = || pace(site, alone.walk(from, to).unwrap_or(Length::ZERO)) * 2;
    if station.walls.contains(&way) {
        return shop.rates.roll_out + free();
    }
    match floor.walk(from, to) {
        Some(path) => pace(site, path) * 2,
        None => shop.rates.roll_out + free(),
    }
}

/// Before the middle of a face: where one works, and where one stands to look it over.
fn work_point(site: &Site, face: Face) -> [Length; 2] {
    let middle = [site.size[0].half(), site.size[1].half()];
    before(site, face, middle)
}

/// Before the middle of a space's opening, as seen from a way out.
pub(super) fn standing_place(site: &Site, s: usize, way: Way) -> [Length; 2] {
    let volume = &site.spaces[s].volume;
    before(site, way, [volume.middle(0), volume.middle(1)])
}

fn before(site: &Site, way: Way, middle: [Length; 2]) -> [Length; 2] {
    let axis = way.axis();
    let out = site.stand_off[way.index()];
    let mut place = middle;
    if axis < 2 {
        place[axis] = if way.rising() { site.size[axis] + out } else { -out };
    }
    place
}

/// How far out of a face one stands.
fn stand_off(site: &Site, face: Face) -> Length {
    STAND.max(hung(site, face) + CLEARANCE)
}

/// How far what hangs on a face may stand out.
fn hung(site: &Site, way: Way) -> Length {
    let rooms = site.spaces.iter().filter(|s| s.kind == SpaceKind::Panel && s.face == way);
    rooms.map(|s| -local(way, site.size, &s.volume)[2][0]).max().unwrap_or(Length::ZERO)
}

/// Everything that one must walk round: the cart, what may hang on it, and what stands in the room.
fn around(site: &Site, room: Option<(&Room, &CartPlace)>) -> Vec<Rect2> {
    let flat = |b: &crate::geometry::Box3| Rect2::new([b.min[0], b.min[1]], [b.max[0], b.max[1]]);
    let cart = Rect2::new([Length::ZERO; 2], [site.size[0], site.size[1]]);
    let panels = site.spaces.iter().filter(|s| s.kind == SpaceKind::Panel);
    let mut all = vec![cart];
    all.extend(panels.map(|s| flat(&s.volume)));
    if let Some((room, cart)) = room {
        all.extend(
            room.obstacles
                .iter()
                .map(|o| in_cart_frame(cart, o.at, [o.at[0] + o.size[0], o.at[1] + o.size[1]])),
        );
    }
    all
}

/// A rectangle of the room as seen from the cart.
pub fn in_cart_frame(cart: &CartPlace, a: [Length; 2], b: [Length; 2]) -> Rect2 {
    let turn = |p: [Length; 2]| {
        let (x, y) = (p[0] - cart.at[0], p[1] - cart.at[1]);
        match cart.quarter_turns % 4 {
            0 => [x, y],
            1 => [y, -x],
            2 => [-x, -y],
            _ => [-y, x],
        }
    };
    let (p, q) = (turn(a), turn(b));
    Rect2::new([p[0].min(q[0]), p[1].min(q[1])], [p[0].max(q[0]), p[1].max(q[1])])
}
