//! What is watched while a search runs: the clock, the interrupt key and a bar.

use crate::solve::Watch;
use indicatif::{ProgressBar, ProgressStyle};
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::thread;
use std::time::{Duration, Instant};

/// How long a search runs before a bar is shown.
const PATIENCE: Duration = Duration::from_millis(500);
/// Between two looks.
const TICK: Duration = Duration::from_millis(50);

/// Runs a search while watching it, and says how long it took.
pub fn watched<T>(time: Option<Duration>, search: impl FnOnce(&Watch) -> T) -> (T, Duration) {
    let watch = Arc::new(Watch::default());
    catch_interrupt(&watch);
    let over = Arc::new(AtomicBool::new(false));
    let begin = Instant::now();
    let watcher = {
        let (watch, over) = (Arc::clone(&watch), Arc::clone(&over));
        thread::spawn(move || look_on(&watch, &over, begin, time))
    };
    let result = search(&watch);
    let took = begin.elapsed();
    over.store(true, Ordering::Relaxed);
    watcher.thread().unpark();
    // The watcher does nothing that can fail.
    let _ = watcher.join();
    (result, took)
}

/// First interrupt: end with the best so far. Second: end at once.
fn catch_interrupt(watch: &Arc<Watch>) {
    let watch = Arc::clone(watch);
    // Where no handler can be set the key simply ends the program.
    let _ = ctrlc::set_handler(move || {
        if watch.stop.swap(true, Ordering::Relaxed) {
            std::process::exit(130);
        }
    });
}

fn look_on(watch: &Watch, over: &AtomicBool, begin: Instant, time: Option<Duration>) {
    let mut bar: Option<ProgressBar> = None;
    while !over.load(Ordering::Relaxed) {
        thread::park_timeout(TICK);
        let gone = begin.elapsed();
        if time.is_some_and(|t| gone >= t) {
            watch.stop.store(true, Ordering::Relaxed);
        }
        if gone >= PATIENCE && !over.load(Ordering::Relaxed) {
            let bar = bar.get_or_insert_with(new_bar);
            bar.set_length(watch.planned.load(Ordering::Relaxed).max(1));
            bar.set_position(watch.done.load(Ordering::Relaxed));
        }
    }
    if let Some(bar) = bar {
        bar.finish_and_clear();
    }
}

/// A bar on standard error; it hides itself where that is no terminal.
fn new_bar() -> ProgressBar {
    let bar = ProgressBar::new(1);
    let style = ProgressStyle::with_template("looking for places {wide_bar} {percent:>3} %");
    bar.set_style(style.unwrap_or_else(|_| ProgressStyle::default_bar()));
    bar
}
