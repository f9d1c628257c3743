//! How much mass can still be put at a spot: what the surface carries, and what casters and tipping allow.

use crate::geometry::{Box3, Way};
use crate::physics::casters::MOST;
use crate::physics::tipping::degrees;
use crate::site::{Board, Case, CaseKind, SpaceKind, TIP_CLOSED, TIP_OPEN};
use crate::units::Mass;

/// More than this is not asked for: design choice.
const ASKED: f64 = 100.0;
/// Halvings of the range: to less than a gram.
const HALVINGS: u32 = 18;

/// What the surface can still take; `None` where no limit is stated.
pub fn surface_left(board: &Board, surface: usize) -> Option<Mass> {
    let limit = board.site().surfaces[surface].limit?;
    Some((limit - board.load(surface)).max(Mass::ZERO))
}

/// What casters and tipping allow in the middle of a box on a surface, in every case of the rules: closed, each drawer
/// out, each heavy thing away. At most 100 kg is told; rounded down to 10 g. Nought where a case fails already.
pub fn casters_left(board: &Board, surface: usize, at: &Box3) -> Mass {
    let holds =
        |kg: f64| board.cases().all(|case| stands(board, &with(board, case, surface, at, kg)));
    if !holds(0.0) {
        return Mass::ZERO;
    }
    let (mut low, mut high) = (0.0, ASKED);
    if holds(high) {
        return Mass::from_kg(high);
    }
    for _ in 0..HALVINGS {
        let middle = (low + high) / 2.0;
        if holds(middle) {
            low = middle;
        } else {
            high = middle;
        }
    }
    Mass::from_kg(libm::floor(low * 100.0) / 100.0)
}

/// A case with so many kilograms more in the middle of a box; in a drawer that is out, they are out with it.
fn with(board: &Board, case: Case, surface: usize, at: &Box3, kg: f64) -> Case {
    let s = board.site().surfaces[surface].space;
    let space = &board.site().spaces[s];
    let mut middle = [0, 1, 2].map(|axis| at.middle(axis).as_mm());
    if space.kind == SpaceKind::Drawer && case.kind == CaseKind::Out(s) {
        let way: Way = space.face;
        let out = space.extends.as_mm();
        middle[way.axis()] += if way.rising() { out } else { -out };
    }
    let moments = [0, 1, 2].map(|axis| case.moments[axis] + kg * middle[axis]);
    Case { total: case.total + kg, moments, ..case }
}

/// Whether a case keeps the casters' rating and the least angle.
fn stands(board: &Board, case: &Case) -> bool {
    let site = board.site();
    let statics = &site.statics;
    let (Some(supports), Some(footprint)) = (&statics.supports, &statics.footprint) else {
        return true;
    };
    let [x, y, z] = case.moments;
    let mut loads = [0.0; MOST];
    let most = |loads: &[f64; MOST]| statics.hardest(loads);
    let rating = statics.rating.map_or(f64::INFINITY, Mass::as_kg);
    let carried = !supports.loads(case.total, x, y, &mut loads) || most(&loads) <= rating;
    let judged = site.uneven && case.kind == CaseKind::Closed;
    let hung = !(judged && supports.hanging(case.total, x, y, &mut loads) && most(&loads) > rating);
    let limit = match case.kind {
        CaseKind::Closed => TIP_CLOSED,
        CaseKind::Out(_) => TIP_OPEN,
        CaseKind::Away(_) => return carried,
    };
    let (_, distance) = footprint.least_margin(x / case.total, y / case.total);
    carried && hung && degrees(distance, z / case.total) >= limit
}
