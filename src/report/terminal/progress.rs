//! What is told while a search runs.

use crate::report::figure::{at_most, seconds};
use crate::tasks::outcome::Progress;
use crate::units::Price;

/// The best so far, what nothing can be better than, and the gap between them.
pub fn progress(progress: &Progress) -> String {
    let Some(best) = progress.best else { return "looking for places".to_owned() };
    let cost = seconds(Price::us(best.cost));
    match (progress.least, progress.gap()) {
        _ if best.broken > 0 => "the best so far breaks a rule".to_owned(),
        (Some(least), Some(gap)) => {
            let least = seconds(least);
            format!("best {cost} s a week, none under {least} s, gap {}", at_most(gap))
        }
        _ if best.off_cart > 0 => format!("best {cost} s a week, with something left out"),
        _ => format!("best {cost} s a week"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::score::Score;

    fn told(broken: i64, off_cart: i64, least: Option<i64>) -> String {
        let best = Some(Score { broken, excess: 0, off_cart, cost: 200_000_000 });
        progress(&Progress { best, least: least.map(Price::us), ..Progress::default() })
    }

    #[test]
    fn the_gap_stands_beside_the_best_and_the_least() {
        let text = told(0, 0, Some(150_000_000)).replace('\u{a0}', " ");
        assert_eq!(text, "best 200 s a week, none under 150 s, gap 25.0 %");
    }

    #[test]
    fn what_is_not_known_is_not_told() {
        assert_eq!(progress(&Progress::default()), "looking for places");
        assert_eq!(told(0, 0, None), "best 200 s a week");
        assert_eq!(told(0, 1, None), "best 200 s a week, with something left out");
        assert_eq!(told(1, 0, Some(1)), "the best so far breaks a rule");
    }
}
