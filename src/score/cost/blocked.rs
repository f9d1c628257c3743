//! Moving what stands in front, and putting it back.

use crate::score::{Cost, Scope, View};
use crate::units::{Price, Time};

pub struct Blocked;

pub struct Moves {
    how_many: usize,
    each: Time,
}

impl Cost for Blocked {
    const NAME: &'static str = "blocked";
    const SCOPE: Scope = Scope::Lot;
    type Fact = Moves;

    fn measure(view: &View) -> Option<Moves> {
        view.place()?;
        if view.closure.lots.is_empty() || !view.of().is_fetched(&view.site().items) {
            return Some(Moves { how_many: 0, each: Time::ZERO });
        }
        let lots = &view.site().lots;
        let all = &view.closure.lots;
        Some(Moves {
            how_many: all.iter().map(|&l| lots[l as usize].copies as usize).sum(),
            each: all.iter().map(|&l| lots[l as usize].aside).sum(),
        })
    }
    fn price(view: &View, moves: &Moves) -> Price {
        view.of().uses.cost(moves.each)
    }
    fn tell(_: &View, moves: &Moves) -> String {
        match moves.how_many {
            0 => "nothing in front".to_owned(),
            1 => {
                format!("1 thing must be moved first and back: {:.1} s a fetch", moves.each.as_s())
            }
            n => format!(
                "{n} things must be moved first and back: {:.1} s a fetch",
                moves.each.as_s()
            ),
        }
    }
}
