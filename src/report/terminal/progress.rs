//! What is told while a search runs.

use crate::report::figure::{at_most, seconds};
use crate::tasks::outcome::Progress;
use crate::units::Price;

/// The best so far, what nothing can be better than, and the gap between them.
pub fn progress(progress: &Progress) -> String {
    let Some(best) = progress.best else { return String::new() };
    let cost = seconds(Price::us(best.cost));
    match (progress.least, progress.gap()) {
        _ if best.broken > 0 => "the best so far breaks a rule".to_owned(),
        (Some(least), Some(gap)) => {
            let least = seconds(least);
            format!("best {cost} s a week, at least {least} s, gap at most {}", at_most(gap))
        }
        _ => format!("best {cost} s a week, with something left out"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::score::Score;

    fn told(broken: i64, least: Option<i64>) -> String {
        let best = Some(Score { broken, excess: 0, off_cart: 0, cost: 200_000_000 });
        progress(&Progress { best, least: least.map(Price::us), ..Progress::default() })
    }

    #[test]
    fn the_gap_stands_beside_the_best_and_the_least() {
        let text = told(0, Some(150_000_000)).replace('\u{a0}', " ");
        assert_eq!(text, "best 200 s a week, at least 150 s, gap at most 25.0 %");
    }

    #[test]
    fn what_is_not_known_is_not_told() {
        assert_eq!(progress(&Progress::default()), "");
        assert_eq!(told(0, None), "best 200 s a week, with something left out");
        assert_eq!(told(1, Some(1)), "the best so far breaks a rule");
    }
}
