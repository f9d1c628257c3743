//! Children who come in: what is locked away, and a drawer that one of them hangs on.

use super::{About, Caution, OURS, caution};
use crate::domain::{Hazard, Hazards};
use crate::physics::furniture::{BLOCK, ON_DRAWER, SCOPE_HEIGHT, SCOPE_LITRES, SCOPE_MASS, tilt};
use crate::site::{Board, Case, Space};
use crate::units::Length;

const LOCKED: Hazards = Hazards::of(&[
    Hazard::Sharp,
    Hazard::Ignition,
    Hazard::Hot,
    Hazard::Flammable,
    Hazard::Electric,
    Hazard::Battery,
    Hazard::Aerosol,
    Hazard::SelfHeating,
    Hazard::Oxidiser,
    Hazard::Corrosive,
]);

/// What has to be locked away.
pub(super) fn locks(about: &About) -> Vec<Caution> {
    if !about.workspace.shop.room.children {
        return Vec::new();
    }
    let items = about.meeting(LOCKED).unwrap_or_default();
    let text = "Children come in: lock away or take with you what cuts, burns, stings or is poisonous, height is no lock; lock the drawers and the casters, and unplug.";
    vec![caution(items, text, OURS)]
}

/// The weight that the standard for chests hangs on an open drawer, on each in turn.
pub(super) fn drawers(about: &About) -> Vec<Caution> {
    let board = about.board;
    let statics = &board.site().statics;
    let spaces = &board.site().spaces;
    if !about.workspace.shop.room.children {
        return Vec::new();
    }
    let over: Vec<&str> = statics
        .drawers
        .iter()
        .filter(|&&d| margin(board, d).is_some_and(|degrees| degrees < 0.0))
        .map(|&d| spaces[d].name.as_str())
        .collect();
    let source = format!(
        "ASTM F2057-23, read as summarised by a test laboratory: a borrowed case, for it is about clothing chests from {:.0} mm, {SCOPE_MASS:.1} kg and {SCOPE_LITRES:.1} litres on",
        SCOPE_HEIGHT.as_mm()
    );
    let case = format!(
        "a child's {ON_DRAWER:.1} kg on its front, out, and {:.1} mm under the far casters",
        BLOCK.as_mm()
    );
    let text = match (over.is_empty(), statics.drawers.is_empty()) {
        (_, true) => return Vec::new(),
        (false, _) => format!(
            "With {case} the cart goes over by {}: lock the drawers where children are, put heavy things low and at the far side, or fix the parked cart to the wall.",
            over.join(", ")
        ),
        (true, _) => format!(
            "With {case} the cart stands by each drawer in turn; that is no leave to climb. Lock the drawers all the same."
        ),
    };
    vec![caution(Vec::new(), text, &source)]
}

/// How far the cart still is from going over with that weight on that drawer, in degrees.
fn margin(board: &Board, drawer: usize) -> Option<f64> {
    let footprint = board.site().statics.footprint.as_ref()?;
    let space = &board.site().spaces[drawer];
    let case = hung(board, drawer).tip(footprint).1;
    Some(case - tilt(span(board, space)))
}

/// A drawer out with the weight on its front.
fn hung(board: &Board, drawer: usize) -> Case {
    let space = &board.site().spaces[drawer];
    let way = space.face;
    let mut at = [0, 1, 2].map(|axis| space.volume.middle(axis).as_mm());
    at[2] = space.volume.max[2].as_mm();
    at[way.axis()] = if way.rising() {
        (space.volume.max[way.axis()] + space.extends).as_mm()
    } else {
        (space.volume.min[way.axis()] - space.extends).as_mm()
    };
    board.drawer_out(&board.closed(), drawer).with(ON_DRAWER, at)
}

/// How far the casters are apart along the way of a drawer.
fn span(board: &Board, space: &Space) -> Length {
    let along = board.site().statics.at.iter().map(|at| at[space.face.axis().min(1)]);
    let most = along.clone().max().unwrap_or(Length::ZERO);
    most - along.min().unwrap_or(Length::ZERO)
}
