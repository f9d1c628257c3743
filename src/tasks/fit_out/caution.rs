//! What to mind while drilling and mounting, where it concerns this cart.

use super::mount::{Mount, MountKind};
use super::work::Work;
use crate::tasks::outcome::Caution;
use crate::units::{Length, show_length};

const OURS: &str = "common practice, no source";
/// A hole so near an edge is told of: twice the least distance.
const NEAR: Length = Length::mm(30);

/// All of them.
pub fn cautions(work: &Work) -> Vec<Caution> {
    let mut all = Vec::new();
    if !work.mounts.is_empty() {
        drilling(work, &mut all);
        edges(work, &mut all);
        behind(work, &mut all);
    }
    if work.holders.iter().any(|h| h.holding.is_some()) {
        let text = "Pull each hook with twice the weight of its tool before anything hangs on it. A hook or peg without a rating on its packet is not trusted: bend one from round steel as listed, or buy a rated one.";
        say(&mut all, text);
    }
    all
}

fn say(all: &mut Vec<Caution>, text: impl Into<String>) {
    all.push(Caution { items: Vec::new(), text: text.into(), source: OURS.to_owned() });
}

fn drilling(work: &Work, all: &mut Vec<Caution>) {
    say(all, "Wear eye protection while drilling and driving, overhead above all.");
    let text = match work.workspace.carcass.casters.locks {
        0 => {
            "No caster locks: block the wheels on both sides before you drill, and push along the longer side of the cart."
        }
        _ => {
            "Drill with the casters locked and the cart empty, its other side against a wall or held by a second person: a push on the drill tips or rolls it."
        }
    };
    say(all, text);
}

fn edges(work: &Work, all: &mut Vec<Caution>) {
    let near =
        |m: &&Mount| m.kind != MountKind::Edge && m.holes.iter().any(|h| m.margin(h.at) < NEAR);
    let mounts: Vec<String> = work.mounts.iter().filter(near).map(Mount::name).collect();
    if !mounts.is_empty() {
        let text = format!(
            "Near an edge a screw without a pilot hole splits the board: drill every pilot first, above all on {}.",
            mounts.join("; ")
        );
        say(all, text);
    }
    if work.mounts.iter().any(|m| m.kind == MountKind::Edge) {
        let text = "A hole in the edge of a board sits at half its thickness and is drilled first: start it with an awl, hold the drill straight. Nothing is counted on to hang there.";
        say(all, text);
    }
}

fn behind(work: &Work, all: &mut Vec<Caution>) {
    let unit = work.unit();
    let told = |m: &Mount| {
        let deep = m.holes.iter().filter(|h| !h.through).map(|h| h.deep).max()?;
        let deep = show_length(deep, unit);
        Some(format!("{}: {deep}, for behind it is {}", m.name(), m.behind.join(", ")))
    };
    let mounts = || work.mounts.iter().filter(|m| m.kind != MountKind::Edge);
    let all_told: Vec<String> = mounts().filter_map(told).collect();
    if !all_told.is_empty() {
        say(all, format!("Set a stop on the drill, and go no deeper. {}.", all_told.join("; ")));
    }
    if mounts().any(|m| m.behind.iter().any(|b| b.contains("drawer"))) {
        say(all, "Take out the drawers behind a board before you drill it.");
    }
}
