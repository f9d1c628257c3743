//! The cart on its casters.

use super::{About, Caution, OURS, caution};

pub(super) fn cautions(about: &About) -> Vec<Caution> {
    let mut all = Vec::new();
    let casters = &about.workspace.carcass.casters;
    let text = match casters.locks {
        0 => "No caster locks: do not saw, plane or lean on this cart. Fit locking casters.",
        _ => {
            "Lock the casters before working on the cart or pulling a drawer; roll it slowly, with both hands, over flat floor."
        }
    };
    all.push(caution(Vec::new(), text, OURS));
    if casters.rating.is_none() {
        let text = "The casters' rating is not stated: whether they carry this cart cannot be judged. Read it off the casters.";
        all.push(caution(Vec::new(), text, "the carcass file"));
    }
    all
}
