//! What no file says about hazards: silence is not safety.

use super::{About, Caution, OURS, caution};
use crate::domain::Hazard;
use crate::tasks::question::{Question, questions};

pub(super) fn cautions(about: &About) -> Vec<Caution> {
    nothing_named(about).into_iter().chain(sounding(about)).collect()
}

fn nothing_named(about: &About) -> Option<Caution> {
    let silent = about.workspace.items.iter().all(|item| item.hazards.is_empty());
    let text = "The inventory names no hazard. That is not the same as having none: read the labels and add `hazards`.";
    silent.then(|| caution(Vec::new(), text, OURS))
}

/// Hazards that a name brings to mind and that make a place safe or not: the others are left to `check`.
const GRAVE: &[Hazard] = &[
    Hazard::Ignition,
    Hazard::Hot,
    Hazard::Flammable,
    Hazard::Aerosol,
    Hazard::SelfHeating,
    Hazard::Oxidiser,
    Hazard::Corrosive,
    Hazard::Sharp,
];

fn sounding(about: &About) -> Option<Caution> {
    let grave = |q: &Question| q.sounds.iter().any(|(hazard, _)| GRAVE.contains(hazard));
    let items: Vec<String> =
        questions(&about.workspace.items).into_iter().filter(grave).map(|q| q.item).collect();
    let text = "By their names these may have hazards that the inventory does not say, so no rule kept them apart: `check` asks about each. Answer from the label before loading.";
    (!items.is_empty()).then(|| caution(items, text, OURS))
}
