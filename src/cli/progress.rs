//! What is watched while a search runs: the clock, the interrupt key and a bar.

use crate::report::terminal;
use crate::solve::{Progress, Stop, Watch};
use crate::tasks::outcome::Effort;
use indicatif::{ProgressBar, ProgressStyle};
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::thread;
use std::time::{Duration, Instant};

/// How long a search runs before a bar is shown.
const PATIENCE: Duration = Duration::from_millis(500);
/// Between two looks.
const TICK: Duration = Duration::from_millis(50);
/// Parts of the bar.
const PARTS: f64 = 1000.0;

/// How long a search took, and how long it was given.
#[derive(Clone, Copy, Debug)]
pub struct Clock {
    took: Duration,
    allowed: Option<Duration>,
}

impl Clock {
    /// Enters it.
    pub fn tell(&self, effort: &mut Effort) {
        effort.seconds = self.took.as_secs_f64();
        effort.allowed = self.allowed.map(|t| t.as_secs_f64());
    }
}

/// Runs a search while watching it, and says how long it took.
pub fn watched<T>(allowed: Option<Duration>, search: impl FnOnce(&Watch) -> T) -> (T, Clock) {
    let watch = Arc::new(Watch::default());
    catch_interrupt(&watch);
    let over = Arc::new(AtomicBool::new(false));
    let begin = Instant::now();
    let watcher = {
        let (watch, over) = (Arc::clone(&watch), Arc::clone(&over));
        thread::spawn(move || look_on(&watch, &over, begin, allowed))
    };
    let result = search(&watch);
    let took = begin.elapsed();
    over.store(true, Ordering::Relaxed);
    watcher.thread().unpark();
    // The watcher does nothing that can fail.
    let _ = watcher.join();
    (result, Clock { took, allowed })
}

/// First interrupt: end with the best so far. Second: end at once.
fn catch_interrupt(watch: &Arc<Watch>) {
    let watch = Arc::clone(watch);
    let pressed = AtomicBool::new(false);
    // Where no handler can be set the key simply ends the program.
    let _ = ctrlc::set_handler(move || {
        watch.end(Stop::Interrupt);
        if pressed.swap(true, Ordering::Relaxed) {
            std::process::exit(130);
        }
    });
}

fn look_on(watch: &Watch, over: &AtomicBool, begin: Instant, allowed: Option<Duration>) {
    let mut bar: Option<ProgressBar> = None;
    while !over.load(Ordering::Relaxed) {
        let left = allowed.map_or(TICK, |t| t.saturating_sub(begin.elapsed()));
        thread::park_timeout(if left.is_zero() { TICK } else { left.min(TICK) });
        let gone = begin.elapsed();
        if allowed.is_some_and(|t| gone >= t) {
            watch.end(Stop::Time);
        }
        if gone >= PATIENCE && !over.load(Ordering::Relaxed) {
            let progress = watch.progress();
            let bar = bar.get_or_insert_with(new_bar);
            let part = how_far(&progress, gone, allowed);
            // It never goes back, though further moves may turn out to be wanted.
            bar.set_position(bar.position().max((PARTS * part) as u64));
            bar.set_message(match watch.ended() {
                Some(_) => "putting together the best so far".to_owned(),
                None => terminal::progress(&progress),
            });
        }
    }
    if let Some(bar) = bar {
        bar.finish_and_clear();
    }
}

/// The part of the moves that are made, or of the time that is gone where that is known.
fn how_far(progress: &Progress, gone: Duration, allowed: Option<Duration>) -> f64 {
    let part = match allowed {
        Some(allowed) => gone.as_secs_f64() / allowed.as_secs_f64(),
        None => progress.made as f64 / progress.expected.max(1) as f64,
    };
    part.min(1.0)
}

/// A bar on standard error; it hides itself where that is no terminal.
fn new_bar() -> ProgressBar {
    let bar = ProgressBar::new(PARTS as u64);
    let style = ProgressStyle::with_template("{bar:20} {percent:>3} %  {wide_msg}");
    bar.set_style(style.unwrap_or_else(|_| ProgressStyle::default_bar()));
    bar
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_bar_goes_by_the_time_where_one_is_given() {
        let progress = Progress { made: 1, expected: 4, ..Progress::default() };
        let gone = Duration::from_secs(3);
        assert_eq!(how_far(&progress, gone, None), 0.25);
        assert_eq!(how_far(&progress, gone, Some(Duration::from_secs(6))), 0.5);
        assert_eq!(how_far(&progress, gone, Some(Duration::from_secs(2))), 1.0);
    }
}
