//! What a hole goes through, and what lies behind it.

use super::mount::{Layer, Mount, MountKind};
use crate::domain::{Carcass, Face};
use crate::geometry::{Axis, Box3};
use crate::site::{Site, SpaceKind};
use crate::units::Length;

/// Thickness of a board where the carcass file does not say it: common practice, no source.
pub const BOARD: Length = Length::mm(15);
/// Half of what a hole wants free about its middle: a screw's head and a little.
const ABOUT: Length = Length::mm(4);

/// What the boards of a cart are, where nothing nearer is said.
pub fn board(carcass: &Carcass) -> Length {
    carcass.board.as_ref().map_or(BOARD, |b| b.thickness)
}

/// The boards that lie on one another from the near side of a mount inwards, and what is behind them in words.
pub fn behind(
    site: &Site,
    carcass: &Carcass,
    mount: &Mount,
    at: [Length; 2],
) -> (Vec<Layer>, String) {
    let mut layers = Vec::new();
    if mount.kind == MountKind::Panel {
        layers.push(layer("panel", mount.thick));
    }
    if let Some(shelf) = shelf_of(site, mount) {
        layers.push(layer("shelf", shelf));
        return (layers, format!("what stands under {}", mount.surface));
    }
    let (gap, beyond) = next(site, carcass, mount, at);
    let thick = gap.min(board(carcass));
    if thick > Length::ZERO {
        layers.push(layer("board of the carcass", thick));
    }
    (layers, beyond)
}

fn layer(what: &str, thickness: Length) -> Layer {
    Layer { what: what.to_owned(), thickness }
}

/// The thickness of the shelf that a deck is the top of.
fn shelf_of(site: &Site, mount: &Mount) -> Option<Length> {
    let is = |b: &&crate::site::ShelfBoard| {
        let (space, surface) = (&site.spaces[b.space], &site.surfaces[b.surface]);
        space.face == mount.face && space.name == mount.bay && surface.name == mount.surface
    };
    let shelf = site.boards.iter().filter(|_| mount.kind == MountKind::Deck).find(is)?;
    Some(shelf.solid.extent(2))
}

/// How far it is from a place on a mount to the next hollow or the outside, and what that is.
fn next(site: &Site, carcass: &Carcass, mount: &Mount, at: [Length; 2]) -> (Length, String) {
    let point = mount.point(at);
    let axis = mount.into.axis;
    let (end, outside) = outside(site, carcass, mount);
    let mut best = (mount.into.of(end), outside);
    for space in &site.spaces {
        let hollow = matches!(space.kind, SpaceKind::Bay | SpaceKind::Drawer);
        let own = space.face == mount.face && space.name == mount.bay;
        if !hollow || own || !is_met(&space.volume, &point, axis) {
            continue;
        }
        let near = mount.into.range(&space.volume);
        if near[1] > Length::ZERO && near[0] < best.0 {
            let what = if space.kind == SpaceKind::Drawer { "drawer" } else { "bay" };
            best = (
                near[0].max(Length::ZERO),
                format!("the {what} {} ({})", space.name, space.face.name()),
            );
        }
    }
    best
}

/// Whether a hole straight along an axis meets a box.
fn is_met(b: &Box3, point: &[Length; 3], axis: Axis) -> bool {
    (0..3).all(|a| a == axis || b.min[a] < point[a] + ABOUT && point[a] - ABOUT < b.max[a])
}

/// Where the cart ends in the direction of a hole, and what is there.
fn outside(site: &Site, carcass: &Carcass, mount: &Mount) -> (Length, String) {
    let axis = mount.into.axis;
    if axis == 2 {
        return match mount.into.rising {
            true => (site.size[2], "the bench top".to_owned()),
            false => (carcass.casters.height, "the floor under the cart".to_owned()),
        };
    }
    let face = match (axis, mount.into.rising) {
        (0, true) => Face::Right,
        (0, false) => Face::Left,
        (_, true) => Face::Back,
        (_, false) => Face::Front,
    };
    let end = if mount.into.rising { site.size[axis] } else { Length::ZERO };
    (end, format!("the outside of the {} face", face.name()))
}
