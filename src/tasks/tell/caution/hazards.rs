//! What each hazard asks for beside its place, fire apart.

use super::room::is_lived_in;
use super::{About, Caution, OURS, caution};
use crate::domain::{Hazard, Hazards, Item};
use crate::tasks::question::{has_blades, keeps_used_blades};

pub(super) fn cautions(about: &About) -> Vec<Caution> {
    [one_space, biting, battery, electric, bare_edges, used_blades, liquid]
        .iter()
        .filter_map(|subject| subject(about))
        .collect()
}

/// What feeds a fire beside what eats: bleach beside acid.
fn one_space(about: &About) -> Option<Caution> {
    let site = about.board.site();
    let spaces = |hazard: Hazard| -> Vec<(usize, usize)> {
        let with = |l: &usize| site.lots[*l].hazards.has(hazard);
        let all = (0..site.lots.len()).filter(with);
        all.filter_map(|l| about.board.space_of(l).map(|s| (l, s))).collect()
    };
    let (ones, others) = (spaces(Hazard::Oxidiser), spaces(Hazard::Corrosive));
    let shared = |(l, s): &(usize, usize), all: &[(usize, usize)]| {
        all.iter().any(|(other, t)| other != l && s == t)
    };
    let one = ones.iter().filter(|x| shared(x, &others));
    let other = others.iter().filter(|x| shared(x, &ones));
    let lots: Vec<usize> = one.chain(other).map(|(l, _)| site.lots[*l].item).collect();
    let items = about.named(|i| lots.iter().any(|&n| site.items[n].name == i.name));
    let text = "In one space: an acid that meets bleach gives off poisonous gas. No rule keeps them apart here; give each a space of its own with `place`, or keep one of them off the cart, as the safety sheets say.";
    (!items.is_empty()).then(|| caution(items, text, OURS))
}

fn biting(about: &About) -> Option<Caution> {
    let items = about.meeting(Hazards::of(&[Hazard::Oxidiser, Hazard::Corrosive]))?;
    let text = "Upright, shut, each in a tray of its own, low enough that nothing drips on a face; gloves and eye protection as the label says, and water to rinse with at hand. Never mix. What the label wants locked up belongs off the cart.";
    Some(caution(
        items,
        text,
        "common practice, no source; the label and the safety sheet come first",
    ))
}

fn battery(about: &About) -> Option<Caution> {
    let items = about.meeting(Hazards::of(&[Hazard::Battery]))?;
    let home = if is_lived_in(about) {
        "People live here, so not while they sleep: charge"
    } else {
        "Charge"
    };
    let text = format!(
        "{home} off the cart, while somebody is awake and sees it, on something that does not burn, with their own charger and away from the way out. One that is swollen, dented, wet or hot goes out of the house, to where the local code takes it."
    );
    let source = "fire services' advice on lithium batteries, read on three pages; the maker's label comes first";
    Some(caution(items, text, source))
}

fn electric(about: &About) -> Option<Caution> {
    let items = about.meeting(Hazards::of(&[Hazard::Electric]))?;
    let text = "Unplug before changing a blade or a bit and before putting away; a damaged cord or a wet machine goes to somebody licensed to mend it.";
    Some(caution(items, text, OURS))
}

fn bare_edges(about: &About) -> Option<Caution> {
    let items = about.named(|i| i.hazards.has(Hazard::Sharp) && !i.guarded);
    let text = "A bare edge or point where a hand goes in: give it a sheath, a roll or a slotted block, or hang it with the edge to the wall; then write `guarded: true`.";
    (!items.is_empty()).then(|| caution(items, text, OURS))
}

/// Where edges are, worn ones are too.
fn used_blades(about: &About) -> Option<Caution> {
    let sharp = |i: &Item| i.hazards.has(Hazard::Sharp);
    let thrown_away = about.named(|i| sharp(i) && has_blades(i));
    let items = if thrown_away.is_empty() { about.named(sharp) } else { thrown_away };
    let kept = about.workspace.items.iter().any(keeps_used_blades);
    let text = "The inventory has no container for used and broken blades: add a closed one that no edge goes through, and empty it as the local code says; never loose in a drawer or a bin.";
    (!items.is_empty() && !kept).then(|| caution(items, text, OURS))
}

fn liquid(about: &About) -> Option<Caution> {
    let items = about.meeting(Hazards::of(&[Hazard::Liquid]))?;
    let text = "Upright and shut, on a tray that holds what leaks: no rule catches what runs down between two spaces.";
    Some(caution(items, text, OURS))
}
