//! Whether the cart with what hangs on it passes the door and fits its place, and how much floor it frees.

use crate::domain::{Face, Workspace};
use crate::geometry::Way;
use crate::site::walk::Rect2;
use crate::site::{Board, SpaceKind, in_cart_frame};
use crate::tasks::outcome::{Before, Door};
use crate::units::{Length, show_length};

/// The floor that a standing person takes before a face: twice what a walker keeps from everything.
const PERSON: Length = Length::mm(500);

const SIDES: [Face; 4] = [Face::Front, Face::Back, Face::Left, Face::Right];

/// The cart seen from above, with everything on it where it is.
pub(super) fn outline(board: &Board) -> Rect2 {
    let size = board.site().size;
    let mut outline = Rect2::new([Length::ZERO; 2], [size[0], size[1]]);
    for place in board.places().iter().flatten() {
        for axis in 0..2 {
            outline.min[axis] = outline.min[axis].min(place.space.min[axis]);
            outline.max[axis] = outline.max[axis].max(place.space.max[axis]);
        }
    }
    outline
}

fn extent(outline: &Rect2, axis: usize) -> Length {
    outline.max[axis] - outline.min[axis]
}

/// Its area.
pub(super) fn square_metres(outline: &Rect2) -> f64 {
    extent(outline, 0).as_mm() * extent(outline, 1).as_mm() * 1e-6
}

/// What its things would take side by side as they stand, each copy for itself but a pile or row as one.
pub(super) fn side_by_side(board: &Board) -> f64 {
    let site = board.site();
    let on = (0..site.lots.len()).filter(|&l| board.place(l).is_some());
    let area = |l: usize| {
        let item = &site.items[site.lots[l].item];
        let piles = site.lots[l].copies.div_ceil(item.stack.max(1));
        item.size.w.as_mm() * item.size.d.as_mm() * f64::from(piles) * 1e-6
    };
    on.map(area).sum()
}

/// Through the door the way that is narrower.
pub(super) fn door(outline: &Rect2, clear: Length) -> Door {
    let [wide, deep] = [0, 1].map(|axis| extent(outline, axis));
    // Rolled along y it is as broad as its x, and the other way round.
    let (broad, first) = if wide < deep { (wide, Face::Front) } else { (deep, Face::Left) };
    Door { broad, first, clear }
}

/// Walls and obstacles that it stands in.
pub(super) fn in_the_way(outline: &Rect2, workspace: &Workspace) -> Vec<String> {
    let Some(cart) = &workspace.shop.room.cart else { return Vec::new() };
    let unit = workspace.carcass.units;
    let mut all = Vec::new();
    if let Some(size) = workspace.shop.room.size {
        let room = in_cart_frame(cart, [Length::ZERO; 2], size);
        for face in SIDES {
            let axis = face.axis();
            let over = match face.rising() {
                true => outline.max[axis] - room.max[axis],
                false => room.min[axis] - outline.min[axis],
            };
            if over > Length::ZERO {
                all.push(format!("its {} is {} in the wall", face.name(), show_length(over, unit)));
            }
        }
    }
    for (n, solid) in obstacles(workspace).iter().enumerate() {
        let apart = |axis: usize| {
            outline.max[axis] <= solid.min[axis] || solid.max[axis] <= outline.min[axis]
        };
        if !apart(0) && !apart(1) {
            all.push(format!("it stands in obstacle {} of the shop file", n + 1));
        }
    }
    all
}

/// The obstacles as seen from the cart.
fn obstacles(workspace: &Workspace) -> Vec<Rect2> {
    let room = &workspace.shop.room;
    let Some(cart) = &room.cart else { return Vec::new() };
    let seen = |o: &crate::domain::Obstacle| {
        in_cart_frame(cart, o.at, [0, 1].map(|a| o.at[a] + o.size[a]))
    };
    room.obstacles.iter().map(seen).collect()
}

/// The floor before each face that something is kept in: with its drawers out and a person.
pub(super) fn before(board: &Board, workspace: &Workspace, outline: &Rect2) -> Vec<Before> {
    let room = &workspace.shop.room;
    let Some(cart) = &room.cart else { return Vec::new() };
    let walls = room.size.map(|size| in_cart_frame(cart, [Length::ZERO; 2], size));
    let solids = obstacles(workspace);
    let used = SIDES.into_iter().filter(|face| is_used(board, *face));
    used.filter_map(|face| {
        let free = free(board, face, outline, walls.as_ref(), &solids)?;
        Some(Before { face, free, needs: reach(board, face, outline) + PERSON })
    })
    .collect()
}

fn is_used(board: &Board, face: Face) -> bool {
    let spaces = &board.site().spaces;
    (0..spaces.len()).any(|s| spaces[s].face == face && !board.members(s).is_empty())
}

/// How far a face's drawers come out, or what hangs on it stands out, whichever is more.
fn reach(board: &Board, face: Way, outline: &Rect2) -> Length {
    let spaces = board.site().spaces.iter();
    let drawers =
        spaces.filter(|s| s.kind == SpaceKind::Drawer && s.face == face).map(|s| s.extends);
    let axis = face.axis();
    let hung = match face.rising() {
        true => outline.max[axis] - board.site().size[axis],
        false => -outline.min[axis],
    };
    drawers.max().unwrap_or(Length::ZERO).max(hung)
}

/// From a face to the nearest wall or obstacle before it; nothing where none is known.
fn free(
    board: &Board,
    face: Way,
    outline: &Rect2,
    walls: Option<&Rect2>,
    solids: &[Rect2],
) -> Option<Length> {
    let (axis, across) = (face.axis(), 1 - face.axis());
    let edge = if face.rising() { board.site().size[axis] } else { Length::ZERO };
    let off = |near: Length, far: Length| if face.rising() { near - edge } else { edge - far };
    let wall = walls.map(|w| if face.rising() { w.max[axis] - edge } else { edge - w.min[axis] });
    let abreast =
        |s: &&Rect2| s.min[across] < outline.max[across] && outline.min[across] < s.max[across];
    let met = solids.iter().filter(abreast).map(|s| off(s.min[axis], s.max[axis]));
    met.filter(|d| *d >= Length::ZERO).chain(wall).min()
}
