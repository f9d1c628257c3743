//! The borrower's card: which face holds what, what is inside what, what must be moved first, and what never to do.

use super::label::slot;
use crate::domain::{Face, Hazard, Workspace};
use crate::site::{Board, TIP_OPEN};
use crate::tasks::outcome::{Placement, Plan};

/// Everything that someone who borrows a tool has to know.
#[derive(Clone, Debug)]
pub struct Card {
    /// The cart's name.
    pub name: String,
    /// What must be at hand at once, with its place: it is told first.
    pub urgent: Vec<String>,
    /// Face by face.
    pub faces: Vec<CardFace>,
    /// What never to do.
    pub never: Vec<String>,
    /// What to take care with.
    pub care: Vec<String>,
}

/// One face of it.
#[derive(Clone, Debug)]
pub struct CardFace {
    /// The face.
    pub face: Face,
    /// Its theme.
    pub theme: String,
    /// What it holds, slot by slot.
    pub lines: Vec<CardLine>,
}

/// One thing of it.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct CardLine {
    /// The bay, drawer or panel.
    pub bay: String,
    /// The slot in short.
    pub slot: String,
    /// The thing.
    pub name: String,
    /// What is in it.
    pub holds: Vec<String>,
    /// What must be moved first, in that order.
    pub first: Vec<String>,
}

/// The card of a layout.
pub fn card(board: &Board, workspace: &Workspace, plan: &Plan) -> Card {
    let faces = Face::ALL.into_iter().filter_map(|face| one_face(plan, face)).collect();
    Card {
        name: plan.name.clone(),
        urgent: urgent(workspace, plan),
        faces,
        never: never(board),
        care: care(workspace, plan),
    }
}

fn one_face(plan: &Plan, face: Face) -> Option<CardFace> {
    let mut lines: Vec<CardLine> =
        plan.placements.iter().filter(|p| p.face == face).map(line).collect();
    // Bay by bay, in the order in which the bays are met.
    let bays: Vec<String> = lines.iter().map(|l| l.bay.clone()).collect();
    lines.sort_by_key(|l| bays.iter().position(|b| *b == l.bay));
    let theme = plan.elevations.iter().find(|e| e.face == face).map(|e| e.theme.clone());
    (!lines.is_empty()).then(|| CardFace { face, theme: theme.unwrap_or_default(), lines })
}

fn line(p: &Placement) -> CardLine {
    let name = match p.copies {
        1 => p.item.clone(),
        copies => format!("{} ×{copies}", p.item),
    };
    let mut first: Vec<String> = Vec::new();
    for copy in &p.moved_first {
        if !first.contains(&copy.item) {
            first.push(copy.item.clone());
        }
    }
    CardLine { bay: p.bay.clone(), slot: slot(p.face, p.slot), name, holds: p.holds.clone(), first }
}

fn urgent(workspace: &Workspace, plan: &Plan) -> Vec<String> {
    let is = |p: &&Placement| workspace.items.iter().any(|i| i.urgent && i.name == p.item);
    let told = |p: &Placement| {
        format!("{}: {} face, {} ({})", p.item, p.face.name(), p.bay, slot(p.face, p.slot))
    };
    plan.placements.iter().filter(is).map(told).collect()
}

/// What never to pull out: a drawer that tips the cart by itself, two that do together, or all of them.
fn never(board: &Board) -> Vec<String> {
    let statics = &board.site().statics;
    let Some(footprint) = &statics.footprint else { return Vec::new() };
    let closed = board.closed();
    let out = |open: &[usize]| {
        let mut case = closed;
        for &d in open {
            let moved = board.drawer_out(&closed, d).moments;
            for (all, (out, shut)) in case.moments.iter_mut().zip(moved.iter().zip(closed.moments))
            {
                *all += out - shut;
            }
        }
        case.tip(footprint).1
    };
    let name = |d: usize| {
        let s = &board.site().spaces[d];
        format!("{} ({})", s.name, s.face.name())
    };
    let all = &statics.drawers;
    let mut told = Vec::new();
    for (k, &a) in all.iter().enumerate() {
        if out(&[a]) < TIP_OPEN {
            told.push(format!("Never pull out {}: the cart may go over.", name(a)));
            continue;
        }
        for &b in &all[k + 1..] {
            if out(&[b]) >= TIP_OPEN && out(&[a, b]) < TIP_OPEN {
                told.push(format!("Never {} and {} out together.", name(a), name(b)));
            }
        }
    }
    if all.len() > 1 {
        let left = out(all);
        if left >= TIP_OPEN {
            told.push(format!(
                "With all drawers out the cart leans {left:.0} degrees before it goes over."
            ));
        } else if told.is_empty() {
            told.push("Never all drawers out together: one at a time.".to_owned());
        }
    }
    if !all.is_empty() {
        told.push("Never pull a drawer while the cart can roll.".to_owned());
    }
    told
}

fn care(workspace: &Workspace, plan: &Plan) -> Vec<String> {
    let named = |is: &dyn Fn(&crate::domain::Item) -> bool| -> Vec<&str> {
        let here = |name: &str| plan.placements.iter().any(|p| p.item == name);
        let items = workspace.items.iter().filter(|i| is(i) && here(&i.name));
        items.map(|i| i.name.as_str()).collect()
    };
    let kinds: [(&str, Vec<&str>); 4] = [
        ("Both hands", named(&|i| i.hands == 2)),
        ("Bare edge", named(&|i| i.hazards.has(Hazard::Sharp) && !i.guarded)),
        ("May be hot", named(&|i| i.hazards.has(Hazard::Hot))),
        ("Keep from sparks and heat", named(&|i| i.hazards.meets(crate::site::FUEL))),
    ];
    let told = |(what, names): (&str, Vec<&str>)| {
        (!names.is_empty()).then(|| format!("{what}: {}.", names.join(", ")))
    };
    kinds.into_iter().filter_map(told).collect()
}
