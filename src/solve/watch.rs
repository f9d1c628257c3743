//! What is watched from outside while a search runs, and what ends it from there.

use super::Floor;
use crate::score::Score;
use crate::units::Price;
use std::sync::atomic::{AtomicU8, AtomicU64, Ordering};
use std::sync::{Mutex, PoisonError};

/// Who ended a search before it was through.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Stop {
    /// The clock.
    Time,
    /// The user.
    Interrupt,
}

/// A window between a search and those who wait for it. Nothing that it holds decides anything but when the search ends.
#[derive(Debug, Default)]
pub struct Watch {
    /// Nought, or one more than the number of the [`Stop`].
    stop: AtomicU8,
    made: AtomicU64,
    expected: AtomicU64,
    known: Mutex<Known>,
}

/// What is known of the result so far.
#[derive(Clone, Copy, Debug, Default)]
struct Known {
    best: Option<Score>,
    floor: Option<Floor>,
}

/// How far a search has come.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub struct Progress {
    /// Trial moves made.
    pub made: u64,
    /// Trial moves that will have been made, as far as that is known.
    pub expected: u64,
    /// The best layout so far.
    pub best: Option<Score>,
    /// What no layout that breaks nothing and leaves out no more than that one can cost less than.
    pub least: Option<Price>,
}

impl Progress {
    /// (best − least) / best.
    pub fn gap(&self) -> Option<f64> {
        let (best, least) = (self.best?.cost, self.least?.as_us());
        Some(if best > 0 { (best - least) as f64 / best as f64 } else { 0.0 })
    }
}

impl Watch {
    /// Ends the search with the best so far. Tells whether it was ended before; the first reason counts.
    pub fn end(&self, why: Stop) -> bool {
        let code = 1 + why as u8;
        self.stop.compare_exchange(0, code, Ordering::Relaxed, Ordering::Relaxed).is_err()
    }

    /// Who ended the search, if anyone did.
    pub fn ended(&self) -> Option<Stop> {
        [Stop::Time, Stop::Interrupt]
            .into_iter()
            .find(|s| self.stop.load(Ordering::Relaxed) == 1 + *s as u8)
    }

    /// Whether the search is to end.
    #[inline]
    pub fn is_over(&self) -> bool {
        self.stop.load(Ordering::Relaxed) != 0
    }

    /// So many further trial moves will be made.
    pub fn expect(&self, moves: u64) {
        self.expected.fetch_add(moves, Ordering::Relaxed);
    }

    /// So many further trial moves were made.
    #[inline]
    pub fn add(&self, moves: u64) {
        self.made.fetch_add(moves, Ordering::Relaxed);
    }

    /// A layout of this value was found.
    pub fn found(&self, score: Score) {
        self.know(|known| known.best = Some(known.best.map_or(score, |best| best.min(score))));
    }

    /// No layout costs less, as is known now.
    pub fn at_least(&self, floor: Floor) {
        self.know(|known| known.floor = Some(floor));
    }

    /// How far the search has come.
    pub fn progress(&self) -> Progress {
        let Known { best, floor } = *self.known.lock().unwrap_or_else(PoisonError::into_inner);
        // Where things are just tried in another division, the floor may still be that of the former one.
        let fits = |(floor, best): &(Floor, Score)| {
            floor.holds_for(best) && floor.cost.as_us() <= best.cost
        };
        let holds = floor.zip(best).filter(fits);
        Progress {
            made: self.made.load(Ordering::Relaxed),
            expected: self.expected.load(Ordering::Relaxed),
            best,
            least: holds.map(|(floor, _)| floor.cost),
        }
    }

    fn know(&self, change: impl FnOnce(&mut Known)) {
        change(&mut self.known.lock().unwrap_or_else(PoisonError::into_inner));
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn score(off_cart: i64, cost: i64) -> Score {
        Score { broken: 0, excess: 0, off_cart, cost }
    }

    #[test]
    fn the_first_reason_counts() {
        let watch = Watch::default();
        assert!(!watch.is_over() && watch.ended().is_none());
        assert!(!watch.end(Stop::Interrupt));
        assert!(watch.end(Stop::Time));
        assert_eq!(watch.ended(), Some(Stop::Interrupt));
    }

    #[test]
    fn the_best_is_the_best_score_and_not_the_least_cost() {
        let watch = Watch::default();
        watch.found(score(5, 10));
        watch.found(score(0, 30));
        watch.found(score(2, 20));
        assert_eq!(watch.progress().best, Some(score(0, 30)));
    }

    #[test]
    fn a_floor_is_told_only_of_layouts_that_it_holds_for() {
        let watch = Watch::default();
        watch.at_least(Floor { off_cart: Price::us(1), cost: Price::us(7) });
        assert_eq!(watch.progress().least, None);
        watch.found(score(2, 9));
        assert_eq!(watch.progress().least, None);
        watch.found(score(1, 9));
        assert_eq!(watch.progress().least, Some(Price::us(7)));
    }
}
