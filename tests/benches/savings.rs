//! What a plan saves over the fixed start, on full carts drawn from seeds, at normal effort.
//!
//! Run with `cargo bench --bench savings`. A cart drawn full has room for everything, but the start, which takes things by
//! use alone, never finds it: what it leaves out is taken from the inventory first, so that both place the same things.
//! Carts are taken in the order of their seeds, those whose start has something behind something else. A saving is told
//! only where both place the same things and break no rule: else the two are not alike.
//!
//! The carts are planned twice: low, as a workshop has them, where most of the cost is bending and kneeling that no
//! layout can avoid; and raised to standing height, where it is walking and what stands in front.

// A part of it is enough here.
#[allow(unused_imports)]
#[path = "../support/mod.rs"]
mod support;

use support::carts::{self, Dice};
use toolberth::domain::Workspace;
use toolberth::score::{COSTS, Ledger};
use toolberth::site::Site;
use toolberth::solve::{Settings, Watch, start};
use toolberth::tasks::plan::plan;
use toolberth::units::{Length, Price};

/// Carts that are told.
const CARTS: usize = 10;
/// What the mean is meant to reach, in hundredths.
const AIM: f64 = 25.0;
/// How far the bays are raised for the second table.
const RAISED: Length = Length::mm(500);

/// What became of a cart, in hundredths of what its start costs.
struct Saving {
    /// What the plan saves.
    found: f64,
    /// What no layout could save more than, by the proven bound.
    at_most: f64,
}

fn main() {
    println!("Seconds a week; savings in hundredths of the start; `at most` by the proven bound");
    table("as drawn", Length::ZERO);
    table("raised to standing height", RAISED);
}

fn table(name: &str, up: Length) {
    println!();
    println!(
        "{:<6}{:>6}{:>6}{:>10}{:>10}{:>10}{:>10}{:>9}{:>9}   {name}",
        "seed", "items", "fill", "start", "blocked", "plan", "blocked", "saving", "at most"
    );
    let carts = (1..).map(|seed| (seed, drawn(seed, up)));
    let carts = carts.filter(|(_, (_, w))| blocked_at_start(w) > Price::ZERO);
    let mut savings = Vec::new();
    for (seed, (fill, workspace)) in carts.take(CARTS) {
        savings.extend(row(seed, fill, &workspace));
    }
    let mean = |of: fn(&Saving) -> f64| savings.iter().map(of).sum::<f64>() / savings.len() as f64;
    let (found, at_most) = (mean(|s| s.found), mean(|s| s.at_most));
    let verdict = if found >= AIM { "reaches" } else { "falls short of" };
    println!("{} of {CARTS} carts place the same things as their start", savings.len());
    println!("mean saving {found:.1} %, {verdict} {AIM} %; more than {at_most:.1} % is impossible");
}

/// A full cart, its number of things and its fill drawn too, without what the start would leave out.
fn drawn(seed: u64, up: Length) -> (f64, Workspace) {
    let mut dice = Dice::new(seed);
    let (items, fill) = (dice.whole(24, 60) as usize, dice.real(0.5, 0.75));
    let mut workspace = carts::packed(seed, items, fill);
    workspace.carcass.height += up;
    workspace.carcass.casters.height += up;
    workspace.carcass.bays.iter_mut().for_each(|bay| bay.at[1] += up);
    let site = Site::new(&workspace).expect("the cart is sound");
    let board = start(&site);
    let on = |item: usize| {
        (0..site.lots.len()).any(|l| site.lots[l].item == item && board.place(l).is_some())
    };
    let mut number = 0;
    workspace.items.retain(|_| {
        number += 1;
        on(number - 1)
    });
    (fill, workspace)
}

/// What the start pays for moving things out of the way.
fn blocked_at_start(workspace: &Workspace) -> Price {
    let site = Site::new(workspace).expect("the cart is sound");
    let ledger = Ledger::new(&start(&site));
    let card = COSTS.iter().position(|c| c.name == "blocked").expect("a cost of that name");
    ledger.term(card)
}

/// Plans a cart and prints its row; nothing where plan and start are not alike.
fn row(seed: u64, fill: f64, workspace: &Workspace) -> Option<Saving> {
    let plan = plan(workspace, &Settings::default(), &Watch::default()).expect("a sound cart");
    let (begin, end) = (plan.start.cost.as_s(), plan.worth.cost.as_s());
    let blocked = plan.worth.terms.iter().find(|t| t.0 == "blocked").map_or(0.0, |t| t.1.as_s());
    let alike = plan.start.same_items && plan.start.broken == 0;
    let part = |cost: f64| 100.0 * (begin - cost) / begin;
    let bound = plan.bound.cost.filter(|_| alike);
    let saving = bound.map(|b| Saving { found: part(end), at_most: part(b.as_s()) });
    let shown = |of: fn(&Saving) -> f64| {
        saving.as_ref().map_or_else(|| "-".to_owned(), |s| format!("{:.1} %", of(s)))
    };
    let (found, at_most) = (shown(|s| s.found), shown(|s| s.at_most));
    println!(
        "{seed:<6}{:>6}{fill:>6.2}{begin:>10.1}{:>10.1}{end:>10.1}{blocked:>10.1}{found:>9}{at_most:>9}",
        workspace.items.len(),
        blocked_at_start(workspace).as_s(),
    );
    saving
}
