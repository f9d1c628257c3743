//! Rolling the loaded cart: its pushes, its way and its place, and what moves on it when it stops.

mod place;
mod pushes;
mod stop;

use super::super::outcome::{Mark, Rolling};
use super::figures::{Figures, assumed};
use crate::domain::Workspace;
use crate::physics::rolling;
use crate::site::Board;
use crate::units::Length;

const SOURCE: &str = "push-pull guidelines of the Ohio BWC and Ohio State University, 2018, in a public transcription; for standing people";

/// Rolls it.
pub(super) fn rolling(board: &Board, workspace: &Workspace) -> Rolling {
    let figures = Figures::new(workspace);
    let room = &workspace.shop.room;
    let outline = place::outline(board);
    let slide = rolling::slide(figures.speed.value, figures.deck.value);
    let stands_on = place::square_metres(&outline);
    Rolling {
        pushes: pushes::pushes(board, workspace, &figures),
        threshold: Some((
            Length::from_mm(figures.threshold.value),
            Length::from_mm(figures.radius.value * 2.0),
            figures.threshold.mark == Mark::Stated,
        )),
        door: room.door.map(|clear| place::door(&outline, clear)),
        in_the_way: place::in_the_way(&outline, workspace),
        before: place::before(board, workspace, &outline),
        stands_on,
        side_by_side: place::side_by_side(board),
        opens: stop::opens(board, workspace),
        slides: stop::slides(board, Length::from_mm(slide)),
        swings: stop::swings(board),
        at_a_stop: [slide, rolling::swing(figures.speed.value)].map(Length::from_mm),
        assumed: assumptions(&figures),
        source: SOURCE,
        mark: Some(Mark::Read),
    }
}

fn assumptions(figures: &Figures) -> Vec<String> {
    let share = |of: f64| of * 100.0;
    let wheel = figures.radius.value * 2.0;
    [
        assumed(
            &figures.rolling,
            &format!("rolling takes {:.0} % of the weight", share(figures.rolling.value)),
        ),
        assumed(&figures.threshold, &format!("a threshold of {:.0} mm", figures.threshold.value)),
        assumed(&figures.radius, &format!("wheels of {wheel:.0} mm")),
        assumed(&figures.speed, &format!("it is rolled at {:.1} m/s", figures.speed.value)),
        assumed(
            &figures.deck,
            &format!(
                "things hold on their deck with {:.0} % of their weight",
                share(figures.deck.value)
            ),
        ),
    ]
    .into_iter()
    .flatten()
    .collect()
}
