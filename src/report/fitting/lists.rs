//! What to build, the mounting list, the shopping list and the order of mounting, on paper.

use super::flow::Flow;
use crate::report::drawing::border::Draft;
use crate::report::sheet::Size;
use crate::tasks::fit_out::{Buy, FitOut, Holder, Hole, Mount, MountKind};
use crate::units::{Unit, show_length, show_length_in};

/// All lists.
pub fn drafts(fit: &FitOut, size: Size) -> Vec<Draft> {
    let mut all = building(fit, size);
    all.extend(mounting(fit, size));
    all.extend(shopping(fit, size));
    all.extend(order(fit, size));
    all
}

/// The unit that a tape is read in.
pub fn tape(unit: Unit) -> Unit {
    if unit.imperial() { Unit::In } else { Unit::Mm }
}

/// The size of a board and what is behind it.
pub fn told(mount: &Mount, unit: Unit) -> String {
    let [wide, high] = mount.size.map(|l| show_length(l, tape(unit)));
    match mount.kind {
        MountKind::Edge => format!("{}: {wide} × {high}", mount.name()),
        _ => format!("{}: {wide} × {high}; behind it {}", mount.name(), mount.behind.join(", ")),
    }
}

/// The share of what may be counted on, in whole hundredths, rounded up.
pub fn used(share: f64) -> String {
    format!("{:.0} %", (share * 100.0).ceil())
}

/// A hole's distance from one of its two edges, with the name of the edge.
pub fn from_edge(hole: &Hole, k: usize, unit: Unit) -> String {
    let (edge, far) = hole.from[k];
    format!("{} from {edge}", show_length_in(far, tape(unit)))
}

/// How deep a hole goes.
pub fn deep(hole: &Hole, unit: Unit) -> String {
    if hole.through { "through".to_owned() } else { show_length_in(hole.deep, tape(unit)) }
}

/// The screws of a holder.
pub fn screws(holder: &Holder, unit: Unit) -> String {
    holder.screw.map_or(String::new(), |(screw, n)| format!("{n} × {}", screw.told(unit)))
}

/// How many are used, and how many to have beyond.
pub fn count(buy: &Buy) -> String {
    match buy.spare {
        0 => buy.count.to_string(),
        spare => format!("{} + {spare}", buy.count),
    }
}

fn building(fit: &FitOut, size: Size) -> Vec<Draft> {
    let mut flow = Flow::new(size);
    flow.heading("What to build");
    for want in &fit.wants {
        flow.point("!", want);
    }
    flow.table(&[(0.0, "for"), (0.27, "kind"), (0.36, "what"), (0.74, "screws"), (0.92, "used")]);
    for holder in &fit.holders {
        flow.row(&[
            holder.of.clone(),
            holder.kind.name().to_owned(),
            holder.told.clone(),
            screws(holder, fit.units),
            holder.holding.as_ref().map_or(String::new(), |h| used(h.share)),
        ]);
    }
    flow.paragraph(&format!(
        "Used: the share of what may be counted on that the most loaded screw uses ({}).",
        fit.source
    ));
    for text in &fit.assumed {
        flow.paragraph(&format!("Assumed: {text}."));
    }
    flow.drafts("fit-out-build", "What to build")
}

fn mounting(fit: &FitOut, size: Size) -> Vec<Draft> {
    if fit.mounts.is_empty() {
        return Vec::new();
    }
    let (mut flow, unit) = (Flow::new(size), fit.units);
    flow.heading(&format!("Mounting list, in {}", tape(unit).name()));
    flow.paragraph(
        "Each hole from the nearer side and from the nearer of the upper and lower edges of its board, as you stand before it. A hole marked through goes through its board; the screw's point is in what follows.",
    );
    flow.table(&[
        (0.0, "hole"),
        (0.07, "across"),
        (0.28, "up or down"),
        (0.49, "pilot"),
        (0.57, "deep"),
        (0.65, "screw"),
        (0.8, "for"),
    ]);
    for mount in &fit.mounts {
        flow.group(&told(mount, unit));
        for hole in &mount.holes {
            flow.row(&[
                hole.number.to_string(),
                from_edge(hole, 0, unit),
                from_edge(hole, 1, unit),
                hole.screw.drill(unit),
                deep(hole, unit),
                hole.screw.told(unit),
                fit.holders[hole.holder].of.clone(),
            ]);
        }
    }
    flow.drafts("fit-out-mounting", "Mounting list")
}

fn shopping(fit: &FitOut, size: Size) -> Vec<Draft> {
    let mut flow = Flow::new(size);
    flow.heading("Shopping list");
    flow.table(&[(0.0, "count"), (0.1, "what"), (0.6, "for")]);
    for buy in &fit.shopping {
        flow.row(&[count(buy), buy.what.clone(), buy.used.join(", ")]);
    }
    flow.drafts("fit-out-shopping", "Shopping list")
}

fn order(fit: &FitOut, size: Size) -> Vec<Draft> {
    let mut flow = Flow::new(size);
    flow.heading("In this order");
    for (k, stage) in fit.stages.iter().enumerate() {
        flow.point(&format!("{}.", k + 1), &format!("{} Because {}.", stage.text, stage.why));
    }
    flow.heading("Mind");
    for caution in &fit.cautions {
        flow.point("•", &format!("{} ({})", caution.text, caution.source));
    }
    flow.drafts("fit-out-order", "Order of mounting")
}
