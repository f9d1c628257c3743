//! How fast the search is on one core: trial moves proposed and priced, by the number of things; and one whole plan.
//!
//! Run with `cargo bench --bench speed`. Counts are the same at every run, seconds are not.

// A part of it is enough here.
#[allow(unused_imports)]
#[path = "../support/mod.rs"]
mod support;

use rand::SeedableRng;
use rand::rngs::Xoshiro256PlusPlus;
use std::path::Path;
use std::time::Instant;
use support::{carts, planner};
use toolberth::domain::Workspace;
use toolberth::files;
use toolberth::site::Site;
use toolberth::solve::{Effort, Search, Settings, Watch, solve, start, zonings};
use toolberth::units::Price;

/// Trial moves before the clock starts, so that carts are as full as in a search, and while it runs.
const WARM: u64 = 50_000;
const MOVES: u64 = 400_000;

fn main() {
    println!("Trial moves on one core, {MOVES} each, kept where no worse");
    println!();
    println!(
        "{:<14}{:>6}{:>12}{:>14}{:>10}{:>14}{:>12}",
        "cart", "lots", "proposed/s", "priced", "share", "priced/s", "ns/move"
    );
    for things in [15, 60, 240] {
        row(&format!("sections {things}"), &carts::sections(things));
        row(&format!("packed {things}"), &carts::packed(1, things, 0.6));
    }
    println!();
    println!("Whole runs of the search on one core, quick effort, from warm to cold");
    println!();
    println!(
        "{:<14}{:>6}{:>12}{:>14}{:>10}{:>14}{:>10}{:>10}",
        "cart", "lots", "proposed/s", "priced", "share", "priced/s", "off cart", "s a week"
    );
    for things in [15, 60, 240] {
        whole(&format!("sections {things}"), &carts::sections(things));
        whole(&format!("packed {things}"), &carts::packed(1, things, 0.6));
    }
    println!();
    hall();
}

/// Times a whole search of one cart.
fn whole(name: &str, workspace: &Workspace) {
    let site = Site::new(workspace).expect("the cart is sound");
    let settings = Settings { seed: 1, effort: Effort::Quick, threads: 1 };
    let clock = Instant::now();
    let found = solve(&site, &settings, &Watch::default());
    let seconds = clock.elapsed().as_secs_f64();
    println!(
        "{name:<14}{:>6}{:>12.0}{:>14}{:>9.1}%{:>14.0}{:>10.1}{:>10.1}",
        site.lots.len(),
        found.spent.moves as f64 / seconds,
        found.spent.priced,
        100.0 * found.spent.priced as f64 / found.spent.moves as f64,
        found.spent.priced as f64 / seconds,
        Price::us(found.score.off_cart).as_s(),
        Price::us(found.score.cost).as_s(),
    );
}

/// Times the moves of one cart.
fn row(name: &str, workspace: &Workspace) {
    let site = Site::new(workspace).expect("the cart is sound");
    let zoning = zonings(&site).swap_remove(0);
    let mut search = Search::new(start(&site), &zoning);
    let mut rng = Xoshiro256PlusPlus::seed_from_u64(1);
    let mut run = |moves: u64| -> u64 {
        (0..moves)
            .filter(|_| {
                let before = search.ledger.score();
                let priced = search.step(&zoning, &mut rng);
                if priced.is_some_and(|after| after > before) {
                    search.take_back();
                }
                priced.is_some()
            })
            .count() as u64
    };
    run(WARM);
    let clock = Instant::now();
    let priced = run(MOVES);
    let seconds = clock.elapsed().as_secs_f64();
    println!(
        "{name:<14}{:>6}{:>12.0}{priced:>14}{:>9.1}%{:>14.0}{:>12.0}",
        site.lots.len(),
        MOVES as f64 / seconds,
        100.0 * priced as f64 / MOVES as f64,
        priced as f64 / seconds,
        1e9 * seconds / MOVES as f64,
    );
}

/// Times a whole plan of the village hall at the least effort, on one thread.
fn hall() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("demo-data/village-hall");
    let workspace = files::load(&folder).workspace.expect("the demo can be read");
    let clock = Instant::now();
    let plan = planner::plan(&workspace, 1, 1);
    let seconds = clock.elapsed().as_secs_f64();
    println!(
        "village hall, quick effort, one thread: {seconds:.2} s, {} moves, {} priced, {:.1} s a week",
        plan.effort.moves,
        plan.effort.priced,
        plan.worth.cost.as_s()
    );
}
