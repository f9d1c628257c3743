//! Hazards, as far as no place on one cart takes care of them.

use super::{About, Caution, OURS, caution};
use crate::domain::Hazard;
use crate::site::{FIRE, FUEL};

/// A kind of thing, what to mind about it, and who says so.
struct Warning {
    hazards: &'static [Hazard],
    text: &'static str,
    source: &'static str,
}

const WARNINGS: &[Warning] = &[
    Warning {
        hazards: &[Hazard::Sharp],
        text: "Cover edges and points, or hang them so that no hand meets them first; used blades go into a closed container.",
        source: OURS,
    },
    Warning {
        hazards: &[Hazard::Flammable, Hazard::Aerosol],
        text: "Keep only small amounts, shut and in their own containers, away from heat and sparks; the label, the safety sheet and the local code decide. More than is in use belongs off the cart.",
        source: "29 CFR 1910.106 and 1926.152 set ceilings for workplaces, far above a cart (read as quoted); being under them is no proof of safety",
    },
    Warning {
        hazards: &[Hazard::SelfHeating],
        text: "Oily rags heat up by themselves: a closed metal can, emptied daily, outdoors or by the local rule. Before the can is full they belong off the cart.",
        source: "29 CFR 1910.106(h)(8)(iii), read as quoted; IFC 3304.2, read",
    },
    Warning {
        hazards: &[Hazard::Hot],
        text: "Let hot things cool on a stand of their own before they go back.",
        source: OURS,
    },
    Warning {
        hazards: &[Hazard::Battery],
        text: "Charge batteries where you can see them, on something that does not burn, with their own charger; damaged ones go off the cart and out of the house.",
        source: "common practice, no source; the maker's label comes first",
    },
    Warning {
        hazards: &[Hazard::Electric],
        text: "Unplug before changing a blade or a bit; no liquids over sockets and cords.",
        source: OURS,
    },
    Warning {
        hazards: &[Hazard::Oxidiser, Hazard::Corrosive],
        text: "Wear eye protection and gloves as the label says, never mix, and keep upright; what the label wants locked up belongs off the cart.",
        source: "the label and the safety sheet",
    },
    Warning {
        hazards: &[Hazard::Liquid],
        text: "Keep liquids upright and shut; a tray under them catches a leak.",
        source: OURS,
    },
];

pub(super) fn cautions(about: &About) -> Vec<Caution> {
    if about.workspace.items.iter().all(|item| item.hazards.is_empty()) {
        let text = "The inventory names no hazard. That is not the same as having none: read the labels and add `hazards`.";
        return vec![caution(Vec::new(), text, OURS)];
    }
    let mut all: Vec<Caution> = hot_work(about).into_iter().collect();
    for warning in WARNINGS {
        let items = about.with(warning.hazards);
        if !items.is_empty() {
            all.push(caution(items, warning.text, warning.source));
        }
    }
    all
}

fn hot_work(about: &About) -> Option<Caution> {
    let any = |hazards| about.workspace.items.iter().any(|i| i.hazards.meets(hazards));
    if !any(FIRE) || !any(FUEL) {
        return None;
    }
    let text = "Different faces of one cart are no safe distance for hot work: before sparks or flame take the finishes and rags off the cart, 10.7 m (35 ft) away, and watch for 30 minutes after.";
    let source = "29 CFR 1910.252(a)(2) and WAC 296-307-49503, read as quoted";
    Some(caution(about.with(&[Hazard::Ignition, Hazard::Hot]), text, source))
}
