//! Whether a thing is seen from where one stands to fetch it.

use super::access::standing_place;
use super::{Board, SpaceKind};
use crate::geometry::{Box3, Point3, Way};
use crate::units::Length;

/// Lines of sight that are tried for each thing: to a grid of three by three on the side that it shows.
pub const SIGHT_LINES: usize = 9;

/// How many of [`SIGHT_LINES`] reach a lot from the standing place of one of its space's ways, at the height of the
/// person's eye; none off the cart and none in a drawer, which is shut.
///
/// A line ends at what stands, lies or hangs in between, at shelf boards, and where it would have to pass beside the
/// opening of a bay.
pub fn free_sight_lines(board: &Board, lot: usize, way: usize) -> usize {
    let site = board.site();
    let (Some(place), Some(s)) = (board.place(lot), board.space_of(lot)) else { return 0 };
    let space = &site.spaces[s];
    if space.kind == SpaceKind::Drawer {
        return 0;
    }
    let way = space.ways[way];
    let eye = eye(board, s, way);
    let solids = solids(board, lot);
    let window = (space.kind == SpaceKind::Bay).then(|| opening(&space.volume, way, site.size));
    let free = |point: &Point3| {
        !solids.iter().any(|solid| solid.is_crossed(eye, *point))
            && window.is_none_or(|window| window.is_crossed(eye, *point))
    };
    side(&place.space, way).iter().filter(|p| free(p)).count()
}

/// Whether most of a lot's lines of sight are free.
pub fn is_seen(board: &Board, lot: usize, way: usize) -> bool {
    2 * free_sight_lines(board, lot, way) > SIGHT_LINES
}

/// The eye of whoever stands there; over the top one looks from before the front.
fn eye(board: &Board, space: usize, way: Way) -> Point3 {
    let site = board.site();
    let from = if way == Way::Top { Way::Front } else { way };
    let [x, y] = standing_place(site, space, from);
    [x, y, site.body.eye]
}

/// Everything that can stand in a line: boards, and all other things but those in drawers.
fn solids(board: &Board, lot: usize) -> Vec<Box3> {
    let site = board.site();
    let shown = |l: usize| {
        board.space_of(l).is_some_and(|s| site.spaces[s].kind != SpaceKind::Drawer) && l != lot
    };
    let things = (0..site.lots.len()).filter(|&l| shown(l));
    let things = things.filter_map(|l| board.place(l).map(|p| p.space));
    (0..site.boards.len()).map(|b| *board.board(b)).chain(things).collect()
}

/// The opening of a bay as a thin box at its face.
fn opening(volume: &Box3, way: Way, size: [Length; 3]) -> Box3 {
    let axis = way.axis();
    let face = if way.rising() { size[axis] } else { Length::ZERO };
    let mut thin = *volume;
    (thin.min[axis], thin.max[axis]) = (face - Length::nm(1_000), face + Length::nm(1_000));
    thin
}

/// Nine points on the side of a box that looks that way.
fn side(b: &Box3, way: Way) -> [Point3; SIGHT_LINES] {
    let axis = way.axis();
    let [p, q] = [(axis + 1) % 3, (axis + 2) % 3];
    let at = |a: usize, sixths: i64| b.min[a] + Length::nm(b.extent(a).as_nm() / 6 * sixths);
    std::array::from_fn(|k| {
        let (row, column) = ((k / 3) as i64, (k % 3) as i64);
        let mut point = if way.rising() { b.max } else { b.min };
        point[p] = at(p, 2 * row + 1);
        point[q] = at(q, 2 * column + 1);
        point
    })
}
