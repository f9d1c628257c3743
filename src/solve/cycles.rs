//! How long to search: once with a fixed number of moves, or in growing cycles until the search is ended from outside.

use super::{Stop, Watch};

/// How long to search, counted in trial moves.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub enum Effort {
    /// A tenth of the usual moves.
    Quick,
    /// The usual moves.
    #[default]
    Normal,
    /// Ten times the usual moves.
    Thorough,
    /// Cycle after cycle, each twice as long as the one before, until the search is ended from outside.
    UntilEnded,
}

/// One cycle: a whole round of restarts, from warm to cold, with so many moves.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Cycle {
    /// The first one is nought.
    pub number: u64,
    /// Its moves, in thousandths of the usual ones.
    share: u64,
}

impl Cycle {
    /// Its moves, where the usual ones are so many.
    pub fn moves(&self, usual: u64) -> u64 {
        usual.saturating_mul(self.share) / 1000
    }
}

/// The first of the growing cycles is so short that a second is enough for one on a large cart.
const FIRST: u64 = 25;
/// From this one on, cycles grow no more: a day is over before.
const LONGEST: u64 = 30;

/// The cycles of a search.
pub fn cycles(effort: Effort, watch: &Watch) -> impl Iterator<Item = Cycle> {
    let count = if effort == Effort::UntilEnded { u64::MAX } else { 1 };
    let share = move |number: u64| match effort {
        Effort::Quick => 100,
        Effort::Normal => 1000,
        Effort::Thorough => 10_000,
        Effort::UntilEnded => FIRST << number.min(LONGEST),
    };
    (0..count)
        .map(move |number| Cycle { number, share: share(number) })
        .take_while(|cycle| cycle.number == 0 || !watch.is_over())
}

/// Why a search ended.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub enum End {
    /// All moves were made.
    #[default]
    Moves,
    /// Nothing can be better.
    Best,
    /// Its time was up.
    Time,
    /// The user ended it.
    Interrupt,
}

impl End {
    /// The end of a search that found the best there is, or did not, seen from outside.
    pub fn of(best: bool, watch: &Watch) -> End {
        match watch.ended() {
            _ if best => End::Best,
            Some(Stop::Time) => End::Time,
            Some(Stop::Interrupt) => End::Interrupt,
            None => End::Moves,
        }
    }

    /// Whether more might have been found with more time.
    pub fn is_early(self) -> bool {
        matches!(self, End::Time | End::Interrupt)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_fixed_effort_is_one_cycle() {
        let watch = Watch::default();
        let moves = |effort| cycles(effort, &watch).map(|c| c.moves(600)).collect::<Vec<_>>();
        assert_eq!(moves(Effort::Quick), [60]);
        assert_eq!(moves(Effort::Normal), [600]);
        assert_eq!(moves(Effort::Thorough), [6000]);
    }

    #[test]
    fn cycles_double_until_the_search_is_ended() {
        let watch = Watch::default();
        let mut all = cycles(Effort::UntilEnded, &watch);
        let three: Vec<u64> = all.by_ref().take(3).map(|c| c.moves(1000)).collect();
        assert_eq!(three, [25, 50, 100]);
        watch.end(Stop::Time);
        assert_eq!(all.next(), None);
    }

    #[test]
    fn what_is_ended_before_it_begins_has_one_cycle_all_the_same() {
        let watch = Watch::default();
        watch.end(Stop::Interrupt);
        assert_eq!(cycles(Effort::UntilEnded, &watch).count(), 1);
    }
}
