//! Long searches, which lower what is known.

use crate::best::{Known, Layout, keep, known};
use crate::carts::Cart;
use crate::clock::Clock;
use crate::options::Options;
use crate::walks::timed;
use std::path::Path;
use std::time::Duration;
use toolberth::site::Site;
use toolberth::solve::{Effort, Found, Settings, solve};

/// How often a long search begins anew.
const ROUNDS: u32 = 5;

/// Searches each cart for so many seconds with each of so many further seeds.
pub fn lower(options: &Options, seconds: u64, seeds: u64) {
    for cart in &options.carts {
        let site = cart.site();
        for _ in 0..seeds {
            let mut of = known(&options.best, cart.name, &site);
            of.seeds += 1;
            search(options, cart, &site, &mut of, seconds);
            of.seconds += seconds;
            keep(&options.best, cart.name, &of).expect("the folder can be written");
        }
    }
}

/// Searches again and again until the time is up, each time from other random numbers.
fn search(options: &Options, cart: &Cart, site: &Site, of: &mut Known, seconds: u64) {
    let clock = Clock::start();
    let end = Duration::from_secs(seconds);
    for round in 0.. {
        let left = end.saturating_sub(clock.spent());
        if left.is_zero() {
            return;
        }
        let seed = of.seeds * 1_000_000 + round;
        let found = until(site, seed, options.threads, left.min(end / ROUNDS));
        if take_over(of, found) {
            keep(&options.best, cart.name, of).expect("the folder can be written");
        }
        if let Some((score, _)) = &of.layout {
            let (cost, off) = (score.cost as f64 / 1e6, score.off_cart as f64 / 1e6);
            println!(
                "{} seed {} round {round} at {:.0} s: {cost:.3} s, off the cart {off:.3} s, broken {}",
                cart.name,
                of.seeds,
                clock.spent().as_secs_f64(),
                score.broken
            );
        }
    }
}

/// A search that goes on for that much time of a processor, or until nothing can be better.
pub fn until(site: &Site, seed: u64, threads: usize, time: Duration) -> Found {
    let settings = Settings { seed, effort: Effort::UntilEnded, threads };
    timed(time, |watch| solve(site, &settings, watch))
}

/// Takes over what is worth less; says whether it was.
pub fn take_over(of: &mut Known, found: Found) -> bool {
    let better = of.layout.as_ref().is_none_or(|(score, _)| found.score < *score);
    if better {
        let layout = Layout { shelves: found.shelves, places: found.places };
        of.layout = Some((found.score, layout));
    }
    better
}

/// Takes over from another folder what it knows better, and how long it searched.
pub fn take(options: &Options, folder: &Path) {
    for cart in &options.carts {
        let site = cart.site();
        let (ours, theirs) =
            (known(&options.best, cart.name, &site), known(folder, cart.name, &site));
        let Some((score, layout)) = theirs.layout else { continue };
        let better = ours.layout.as_ref().is_none_or(|(ours, _)| score < *ours);
        let layout = if better { Some((score, layout)) } else { ours.layout };
        let (seeds, seconds) = (ours.seeds.max(theirs.seeds), ours.seconds.max(theirs.seconds));
        let of = Known { layout, seeds, seconds };
        keep(&options.best, cart.name, &of).expect("the folder can be written");
        println!("{}: {}", cart.name, if better { "lowered" } else { "kept" });
    }
}
