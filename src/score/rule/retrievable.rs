//! A thing can be taken out: no board, no fixed thing and no ring of things in its way.

use super::{Against, Rule};
use crate::score::{Scope, View};
use crate::site::Site;

pub struct Retrievable;

impl Rule for Retrievable {
    const NAME: &'static str = "retrievable";
    const SCOPE: Scope = Scope::Lot;
    const SOURCE: &'static str = "geometry";

    fn measure(view: &View) -> Option<Against> {
        let place = view.place()?;
        let shut = !view.board.is_open(view.lot, view.way) || view.closure.nailed;
        let stuck = shut || (!view.closure.lots.is_empty() && ring(view, place));
        Some(Against::none(usize::from(stuck)))
    }
    fn concerns(site: &Site, lot: usize) -> bool {
        site.lots[lot].fixed.is_none() && site.lots[lot].is_fetched(&site.items)
    }
    fn tell(view: &View, _: &Against) -> String {
        let name = view.of().name(&view.site().items);
        if !view.board.is_open(view.lot, view.way) {
            format!("{name} cannot be taken out: a board is in the way")
        } else if view.closure.nailed {
            format!("{name} cannot be taken out: a fixed thing is in the way")
        } else {
            format!("{name} cannot be taken out: the things in front stand in each other's way")
        }
    }
}

/// Whether the things in front stand in each other's way in a ring.
///
/// Along one straight way that cannot be; it takes a thing that leaves by another way.
fn ring(view: &View, place: &crate::site::Place) -> bool {
    let site = view.site();
    let direction = view.direction(place);
    let straight = view.closure.lots.iter().all(|&l| {
        view.board.space_of(l as usize).is_some_and(|s| {
            let space = &site.spaces[s];
            space.ways[space.own_way(direction)] == direction
        })
    });
    !straight && view.closure.is_ring(view.board, direction)
}
