//! Heavy lifts.

use super::{About, Caution, caution};
use crate::units::Mass;

/// Over this, a lift is worth a word: design choice.
const HEAVY: Mass = Mass::kg(10);

pub(super) fn cautions(about: &About) -> Vec<Caution> {
    let (board, site) = (about.board, about.board.site());
    let mut heavy: Vec<String> = Vec::new();
    for (l, lot) in site.lots.iter().enumerate() {
        let item = &site.items[lot.item];
        let lifted = item.fetched && board.place(l).is_some();
        if lifted && (item.hands == 2 || lot.unit > HEAVY) && !heavy.contains(&item.name) {
            heavy.push(item.name.clone());
        }
    }
    if heavy.is_empty() {
        return Vec::new();
    }
    let seated = if about.workspace.shop.person.seated { " seated" } else { "" };
    let text = format!(
        "Lift{seated} with both hands, close to the body, and get help where it is too much; lifting index: not assessed."
    );
    vec![caution(heavy, text, "NIOSH Pub. 94-110 gives the equation; it is not applied here yet")]
}
