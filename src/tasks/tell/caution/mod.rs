//! What no placement can take care of, said where it matters.

use super::super::outcome::{CasterLoad, Caution};
use crate::domain::{Hazard, Workspace};
use crate::site::{Board, FIRE, FUEL, TIP_OPEN};
use crate::units::Mass;

const OURS: &str = "common practice, no source";
/// Over this, a lift is worth a word: design choice.
const HEAVY: Mass = Mass::kg(10);

/// All cautions that concern this cart and inventory.
pub(super) fn cautions(
    board: &Board,
    workspace: &Workspace,
    casters: &[CasterLoad],
) -> Vec<Caution> {
    let mut all = Vec::new();
    rolling(workspace, &mut all);
    hanging(board, casters, &mut all);
    drawers(board, &mut all);
    lifting(board, workspace, &mut all);
    hazards(board, workspace, &mut all);
    all
}

fn say(all: &mut Vec<Caution>, items: Vec<String>, text: impl Into<String>, source: &str) {
    all.push(Caution { items, text: text.into(), source: source.to_owned() });
}

fn rolling(workspace: &Workspace, all: &mut Vec<Caution>) {
    let casters = &workspace.carcass.casters;
    let text = match casters.locks {
        0 => "No caster locks: do not saw, plane or lean on this cart. Fit locking casters.",
        _ => {
            "Lock the casters before working on the cart or pulling a drawer; roll it slowly, with both hands, over flat floor."
        }
    };
    say(all, Vec::new(), text, OURS);
    if casters.rating.is_none() {
        let text = "The casters' rating is not stated: whether they carry this cart cannot be judged. Read it off the casters.";
        say(all, Vec::new(), text, "the carcass file");
    }
    if workspace.shop.room.children {
        let text = "Children come in: keep blades, chemicals and hot things locked away or out of their reach, and the casters locked.";
        say(all, Vec::new(), text, OURS);
    }
}

fn hanging(board: &Board, casters: &[CasterLoad], all: &mut Vec<Caution>) {
    let most = casters.iter().filter_map(|c| c.hanging).max();
    let (Some(most), Some(rating)) = (most, board.site().statics.rating) else { return };
    if most > rating && !board.site().uneven {
        let text = format!(
            "On uneven floor one caster can hang free and another then carries {:.1} kg, over its rating of {:.1} kg: keep to level floor.",
            most.as_kg(),
            rating.as_kg()
        );
        say(all, Vec::new(), text, "statics of three supports on a hard floor");
    }
}

/// All drawers out together.
fn drawers(board: &Board, all: &mut Vec<Caution>) {
    let statics = &board.site().statics;
    let Some(footprint) = &statics.footprint else { return };
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
        say(all, Vec::new(), text, "statics; the limit of 5 degrees is ours");
    }
}

fn lifting(board: &Board, workspace: &Workspace, all: &mut Vec<Caution>) {
    let site = board.site();
    let mut heavy: Vec<String> = Vec::new();
    for (l, lot) in site.lots.iter().enumerate() {
        let item = &site.items[lot.item];
        let lifted = item.fetched && board.place(l).is_some();
        if lifted && (item.hands == 2 || lot.unit > HEAVY) && !heavy.contains(&item.name) {
            heavy.push(item.name.clone());
        }
    }
    if !heavy.is_empty() {
        let seated = if workspace.shop.person.seated { " seated" } else { "" };
        let text = format!(
            "Lift{seated} with both hands, close to the body, and get help where it is too much; lifting index: not assessed."
        );
        say(all, heavy, text, "NIOSH Pub. 94-110 gives the equation; it is not applied here yet");
    }
}

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

fn hazards(board: &Board, workspace: &Workspace, all: &mut Vec<Caution>) {
    let named = |hazards: &[Hazard]| -> Vec<String> {
        let has = |h: &Hazard, item: &&crate::domain::Item| item.hazards.has(*h);
        let items = workspace.items.iter();
        items
            .filter(|item| hazards.iter().any(|h| has(h, item)))
            .map(|item| item.name.clone())
            .collect()
    };
    if workspace.items.iter().all(|item| item.hazards.is_empty()) {
        let text = "The inventory names no hazard. That is not the same as having none: read the labels and add `hazards`.";
        say(all, Vec::new(), text, OURS);
        return;
    }
    let fire = workspace.items.iter().any(|i| i.hazards.meets(FIRE));
    let fuel = workspace.items.iter().any(|i| i.hazards.meets(FUEL));
    if fire && fuel {
        let text = "Different faces of one cart are no safe distance for hot work: before sparks or flame take the finishes and rags off the cart, 10.7 m (35 ft) away, and watch for 30 minutes after.";
        say(
            all,
            named(&[Hazard::Ignition, Hazard::Hot]),
            text,
            "29 CFR 1910.252(a)(2) and WAC 296-307-49503, read as quoted",
        );
    }
    for warning in WARNINGS {
        let items = named(warning.hazards);
        if !items.is_empty() {
            say(all, items, warning.text, warning.source);
        }
    }
    living_room(board, workspace, named(&[Hazard::Flammable, Hazard::Aerosol]), all);
}

/// Where someone sleeps or lives beside the cart.
fn living_room(_: &Board, workspace: &Workspace, fuel: Vec<String>, all: &mut Vec<Caution>) {
    let kind = workspace.shop.room.kind.as_deref().unwrap_or("").to_lowercase();
    let lived_in = ["flat", "living room", "bedroom", "kitchen", "hall", "home"];
    if !fuel.is_empty() && lived_in.contains(&kind.trim()) {
        let text = "People live or meet in this room: fuels and larger amounts of finishes belong off the cart, in a place that the local code allows.";
        say(all, fuel, text, "local fire code; common practice, no source");
    }
}
