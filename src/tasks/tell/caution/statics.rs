//! Casters overloaded and the cart going over, in cases that no rule forbids.

use super::{About, Caution, caution};
use crate::site::TIP_OPEN;

pub(super) fn cautions(about: &About) -> Vec<Caution> {
    hanging(about).into_iter().chain(drawers(about)).collect()
}

/// One caster hanging free.
fn hanging(about: &About) -> Option<Caution> {
    let most = about.casters.iter().filter_map(|c| c.hanging).max();
    let (Some(most), Some(rating)) = (most, about.board.site().statics.rating) else { return None };
    if most > rating && !about.board.site().uneven {
        let text = format!(
            "On uneven floor one caster can hang free and another then carries {:.1} kg, over its rating of {:.1} kg: keep to level floor.",
            most.as_kg(),
            rating.as_kg()
        );
        return Some(caution(Vec::new(), text, "statics of three supports on a hard floor"));
    }
    None
}

/// All drawers out together.
fn drawers(about: &About) -> Option<Caution> {
    let board = about.board;
    let statics = &board.site().statics;
    let footprint = statics.footprint.as_ref()?;
    let closed = board.closed();
    let mut open = closed;
    for &d in &statics.drawers {
        let out = board.drawer_out(&closed, d);
        for axis in 0..3 {
            open.moments[axis] += out.moments[axis] - closed.moments[axis];
        }
    }
    let (side, degrees) = open.tip(footprint);
    if statics.drawers.len() > 1 && degrees < TIP_OPEN {
        let text = format!(
            "With all drawers out the cart goes over to the {} at {degrees:.1} degrees: pull one at a time.",
            footprint.way(side).name()
        );
        return Some(caution(Vec::new(), text, "statics; the limit of 5 degrees is ours"));
    }
    None
}
