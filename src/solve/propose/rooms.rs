//! The free corner places of every lot in each of its homes, looked for once for each state of the space.

use crate::site::{Board, Clearing, Home, Place, at, for_each_corner};
use crate::solve::zoning::Zoning;
use crate::units::Length;

/// No state of a space.
const NEVER: u64 = u64::MAX;
/// So many sizes that found no room are kept for each surface.
const MOST_SIZES: usize = 8;

/// What was found in one home, and in which state of its space.
#[derive(Clone, Debug)]
struct Found {
    /// In which it was looked at.
    state: u64,
    /// In which it was last asked for.
    asked: u64,
    /// Least corners of the boxes.
    corners: Vec<[Length; 3]>,
}

/// Reach along the three axes, and free height over it.
type Size = [Length; 4];

/// Sizes for which a surface was found to have no room, and in which state of its space.
#[derive(Clone, Debug)]
struct TooBig {
    state: u64,
    sizes: Vec<Size>,
}

/// The free corner places of every lot in each of its homes.
#[derive(Clone, Debug, Default)]
pub(super) struct Rooms {
    found: Vec<Found>,
    too_big: Vec<TooBig>,
}

impl Rooms {
    /// Nothing is known yet.
    pub fn new(zoning: &Zoning, surfaces: usize) -> Rooms {
        Rooms {
            found: vec![Found { state: NEVER, asked: NEVER, corners: Vec::new() }; zoning.count()],
            too_big: vec![TooBig { state: NEVER, sizes: Vec::new() }; surfaces],
        }
    }

    /// Whether the places of a lot in the n-th of its homes are known in the state in which its space is now.
    #[inline]
    pub fn knows(&self, board: &Board, zoning: &Zoning, lot: usize, n: usize) -> bool {
        self.found[zoning.number(lot, n)].state == state(board, &zoning.homes[lot][n])
    }

    /// The least corners of a lot's free corner places in the n-th of its homes; the lot is not in its own way. Nothing
    /// where they are not known and not worth looking for: not asked for before in this state of the space, or asked for
    /// in the midst of a move, for what changes with every move is not worth it.
    #[inline]
    pub fn of(
        &mut self,
        board: &Board,
        zoning: &Zoning,
        lot: usize,
        n: usize,
        at_rest: bool,
        clearing: &mut Clearing,
    ) -> Option<&[[Length; 3]]> {
        let home = &zoning.homes[lot][n];
        let state = state(board, home);
        let found = &mut self.found[zoning.number(lot, n)];
        let again = at_rest && found.asked == state;
        if at_rest {
            found.asked = state;
        }
        if found.state != state {
            if !again {
                return None;
            }
            found.state = state;
            let too_big = &mut self.too_big[home.surface as usize];
            look(board, lot, home, clearing, too_big, &mut found.corners);
        }
        Some(&found.corners)
    }
}

/// The state of a home's space.
#[inline]
fn state(board: &Board, home: &Home) -> u64 {
    board.state(board.site().surfaces[home.surface as usize].space)
}

/// Looks for a lot's free corner places in a home.
fn look(
    board: &Board,
    lot: usize,
    home: &Home,
    clearing: &mut Clearing,
    too_big: &mut TooBig,
    corners: &mut Vec<[Length; 3]>,
) {
    corners.clear();
    let surface = home.surface as usize;
    let space = board.site().surfaces[surface].space;
    let stranger = board.space_of(lot) != Some(space);
    let [p, q, r] = home.extents;
    let size = [p, q, r, board.headroom(lot, surface)];
    if stranger && (board.left(surface) < home.area || too_big.covers(board.state(space), &size)) {
        return;
    }
    let looked = for_each_corner(board, lot, home, clearing, |place| {
        corners.push(place.space.min);
        true
    });
    if stranger && looked && corners.is_empty() {
        too_big.note(size);
    }
}

impl TooBig {
    /// Whether no smaller thing found room in that state.
    fn covers(&mut self, state: u64, size: &Size) -> bool {
        if self.state != state {
            self.state = state;
            self.sizes.clear();
        }
        self.sizes.iter().any(|small| no_less(size, small))
    }

    fn note(&mut self, size: Size) {
        self.sizes.retain(|other| !no_less(other, &size));
        if self.sizes.len() < MOST_SIZES {
            self.sizes.push(size);
        }
    }
}

fn no_less(size: &Size, small: &Size) -> bool {
    size.iter().zip(small).all(|(a, b)| a >= b)
}

/// The place in a home with its least corner there.
#[inline]
pub(super) fn place_at(home: &Home, min: [Length; 3]) -> Place {
    Place { home: *home, space: at(min, home.extents) }
}
