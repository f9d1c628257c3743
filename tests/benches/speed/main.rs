//! How fast the search is on one core: trial moves proposed and priced, by the number of things; the same priced whole
//! for every move; and one whole plan.
//!
//! Run with `cargo bench --bench speed`. Counts are the same at every run, seconds are not.

// A part of it is enough here.
#[allow(unused_imports)]
#[path = "../../support/mod.rs"]
mod support;
// The seconds of a processor, as the other bench reads them.
#[path = "../quality/clock.rs"]
mod clock;
mod whole;

use clock::Clock;
use rand::SeedableRng;
use rand::rngs::Xoshiro256PlusPlus;
use std::path::Path;
use support::{carts, planner};
use toolberth::domain::Workspace;
use toolberth::files;
use toolberth::site::Site;
use toolberth::solve::{Effort, Search, Settings, Watch, solve, start, zonings};
use toolberth::units::Price;

/// Trial moves before the clock starts, so that carts are as full as in a search, and while it runs.
const WARM: u64 = 50_000;
const MOVES: u64 = 400_000;
/// Moves that are priced whole, for comparison.
const WHOLE: u64 = 2_000;

/// Priced moves a second that a real run at 60 things is meant to reach.
const MARK: f64 = 1e6;
/// What is meant to be left of the rate at 24 things with 240 and with 1,000, in like sections.
const LEFT: [(usize, f64); 2] = [(240, 0.7), (1000, 0.5)];

fn main() {
    println!(
        "Trial moves on one core, {MOVES} each, kept where no worse; seconds of the processor"
    );
    println!();
    println!(
        "{:<14}{:>6}{:>12}{:>14}{:>10}{:>14}{:>12}{:>12}{:>8}",
        "cart", "lots", "proposed/s", "priced", "share", "priced/s", "ns/move", "whole/s", "times"
    );
    let rates: Vec<f64> = [24, 60, 240, 1000]
        .map(|things| row(&format!("sections {things}"), &carts::sections(things)))
        .to_vec();
    let packed = row("packed 60", &carts::packed(1, 60, 0.6));
    let tight = row("workshop 60", &carts::workshop(4, 60, carts::Fill::Tight));
    let demo = row("village hall", &village_hall());
    println!();
    for (things, least) in LEFT {
        let at = if things == 240 { rates[2] } else { rates[3] };
        let kept = at / rates[0];
        let verdict = if kept >= least { "reaches" } else { "falls short of" };
        println!("sections: the rate at {things} is {kept:.2} of that at 24, {verdict} {least}");
    }
    for (name, rate) in [
        ("sections 60", rates[1]),
        ("packed 60", packed),
        ("workshop 60", tight),
        ("village hall", demo),
    ] {
        let verdict = if rate >= MARK { "reaches" } else { "falls short of" };
        println!("{name}: {:.2} million priced a second, {verdict} 1", rate / 1e6);
    }
    println!();
    println!("Whole runs of the search on one core, quick effort, from hot to cold");
    println!();
    println!(
        "{:<14}{:>6}{:>12}{:>14}{:>10}{:>14}{:>10}{:>10}",
        "cart", "lots", "proposed/s", "priced", "share", "priced/s", "off cart", "s a week"
    );
    for things in [24, 60, 240] {
        whole(&format!("sections {things}"), &carts::sections(things));
    }
    whole("packed 60", &carts::packed(1, 60, 0.6));
    whole("workshop 60", &carts::workshop(4, 60, carts::Fill::Tight));
    whole("village hall", &village_hall());
    println!();
    hall();
}

/// Times a whole search of one cart.
fn whole(name: &str, workspace: &Workspace) {
    let site = Site::new(workspace).expect("the cart is sound");
    let settings = Settings { seed: 1, effort: Effort::Quick, threads: 1 };
    let clock = Clock::start();
    let found = solve(&site, &settings, &Watch::default());
    let seconds = clock.spent().as_secs_f64();
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

/// Times the moves of one cart, and moves that are priced whole; tells how many of the former are priced in a second.
fn row(name: &str, workspace: &Workspace) -> f64 {
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
    let clock = Clock::start();
    let priced = run(MOVES);
    let seconds = clock.spent().as_secs_f64();
    let rate = priced as f64 / seconds;
    let clock = Clock::start();
    whole::anneal(&site, &zoning, &search.board, WHOLE);
    let slow = WHOLE as f64 / clock.spent().as_secs_f64();
    println!(
        "{name:<14}{:>6}{:>12.0}{priced:>14}{:>9.1}%{rate:>14.0}{:>12.0}{slow:>12.0}{:>8.0}",
        site.lots.len(),
        MOVES as f64 / seconds,
        100.0 * priced as f64 / MOVES as f64,
        1e9 * seconds / MOVES as f64,
        rate / slow,
    );
    rate
}

fn village_hall() -> Workspace {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("demo-data/village-hall");
    files::load(&folder).workspace.expect("the demo can be read")
}

/// Times a whole plan of the village hall at the least effort, on one thread.
fn hall() {
    let workspace = village_hall();
    let clock = Clock::start();
    let plan = planner::plan(&workspace, 1, 1);
    let seconds = clock.spent().as_secs_f64();
    println!(
        "village hall, quick effort, one thread: {seconds:.2} s, {} moves, {} priced, {:.1} s a week",
        plan.effort.moves,
        plan.effort.priced,
        plan.worth.cost.as_s()
    );
}
