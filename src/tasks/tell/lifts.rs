//! What fetching each thing asks of the back.

use crate::score::Ledger;
use crate::site::{Board, End, Lifted, Place, lifted, unassessed};
use crate::tasks::outcome::{Assessed, Copy, Lift};

/// The lifts of everything on the cart that is fetched, in the order in which things are told.
pub(super) fn lifts(board: &Board, ledger: &Ledger, order: &[(usize, u32)]) -> Vec<Lift> {
    let site = board.site();
    let fetched = order.iter().filter(|(l, _)| site.lots[*l].is_fetched(&site.items));
    fetched.filter_map(|&(l, _)| board.place(l).map(|place| one(board, ledger, l, place))).collect()
}

fn one(board: &Board, ledger: &Ledger, l: usize, place: &Place) -> Lift {
    let site = board.site();
    let lot = &site.lots[l];
    let item = &site.items[lot.item];
    let assessed = match unassessed(site, l) {
        Some(reason) => Err(reason.why()),
        None => Ok(told(&lifted(site, l, place, ledger.way(l)), site.lifting_limit)),
    };
    Lift {
        copy: Copy { item: item.name.clone(), copy: lot.first },
        hands: item.hands,
        weight: lot.unit,
        hand: lot.grip(site, place, ledger.way(l)).height,
        assessed,
    }
}

fn told(lifted: &Lifted, limit: f64) -> Assessed {
    let lift = &lifted.lift;
    Assessed {
        end: match lifted.end {
            End::Place => "place",
            End::Bench => "bench",
        },
        height: lift.height,
        horizontal: lift.horizontal,
        travel: lift.travel,
        coupling: lift.coupling.name(),
        assumed: lifted.assumed,
        advised: lifted.limit,
        index: lifted.index,
        limit,
    }
}
