//! In which order to mount it, and why.

use super::mount::{Mount, MountKind};
use super::work::Work;
use super::{Holder, Kind};

/// One step of the mounting.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Stage {
    /// What to do.
    pub text: String,
    /// Why then.
    pub why: &'static str,
}

/// All of them, in order.
pub fn stages(work: &Work) -> Vec<Stage> {
    let mut all = Vec::new();
    let mut then = |text: String, why: &'static str| all.push(Stage { text, why });
    then(
        "Empty the cart and lock or block its wheels.".to_owned(),
        "nothing falls, nothing rolls, and you see what is behind each board",
    );
    let names = |is: &dyn Fn(&Mount) -> bool| -> String {
        let all: Vec<String> = work.mounts.iter().filter(|m| is(m)).map(Mount::name).collect();
        all.join("; ")
    };
    let has = |kind: Kind| work.holders.iter().any(|h: &Holder| h.kind == kind);
    let decks = names(&|m| matches!(m.kind, MountKind::Deck | MountKind::Edge));
    if !decks.is_empty() {
        then(
            format!("Drill shelves and decks from above, and screw racks and lips on: {decks}."),
            "a shelf that can still be taken out is drilled flat on the bench",
        );
    }
    let panels = names(&|m| m.kind == MountKind::Panel);
    if !panels.is_empty() {
        then(
            format!("Lay the panels flat, tape their templates on and drill all holes: {panels}."),
            "a drill stands straight on a board that lies, and nothing is behind it yet",
        );
        then(
            "Screw the panels on, from the top down, the upper row of screws first.".to_owned(),
            "a panel that hangs from its upper screws can be set level before the lower ones go in",
        );
    }
    let walls = names(&|m| matches!(m.kind, MountKind::Wall | MountKind::Ceiling));
    if !walls.is_empty() {
        then(
            format!("Drill the walls of the bays, with a stop on the drill: {walls}."),
            "they are drilled in place, where what is behind counts most",
        );
    }
    if work.holders.iter().any(|h| h.holding.is_some() && h.kind != Kind::Panel) {
        then(
            "Screw hooks, rails, brackets and straps on, from the top down.".to_owned(),
            "what is dropped falls on what is still empty",
        );
        then(
            "Try each hook with twice the weight of its tool.".to_owned(),
            "better it comes out now than with the tool on it",
        );
    }
    if has(Kind::Divider) || has(Kind::Lining) {
        then(
            "Fit dividers and linings with the things in the drawers, then glue.".to_owned(),
            "the things themselves are the best gauge",
        );
    }
    then(
        "Stick the labels on where the things will be, then load heavy and low first.".to_owned(),
        "the cart is steadiest when it is filled from below, and each thing finds its name",
    );
    all
}
