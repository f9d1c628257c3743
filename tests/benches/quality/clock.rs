//! The time that this process has had of a processor: on a shared machine that is what a search can use.

use std::fs;
use std::time::{Duration, Instant};

/// Ticks a second in which the kernel counts, on every machine that tells them.
const TICKS: f64 = 100.0;

/// A stopwatch of processor time; of time on the wall where the system does not tell the other.
pub struct Clock {
    ticks: Option<u64>,
    wall: Instant,
}

impl Clock {
    /// Begins now.
    pub fn start() -> Clock {
        Clock { ticks: ticks(), wall: Instant::now() }
    }
    /// What was spent since, by all threads together.
    pub fn spent(&self) -> Duration {
        match (self.ticks, ticks()) {
            (Some(from), Some(to)) => Duration::from_secs_f64((to - from) as f64 / TICKS),
            _ => self.wall.elapsed(),
        }
    }
}

/// Ticks spent by the process, in it and for it.
fn ticks() -> Option<u64> {
    let text = fs::read_to_string("/proc/self/stat").ok()?;
    // The name of the program stands in brackets and may hold anything.
    let after = &text[text.rfind(')')? + 2..];
    let numbers: Vec<u64> = after.split(' ').skip(11).take(2).flat_map(str::parse).collect();
    (numbers.len() == 2).then(|| numbers.iter().sum())
}
