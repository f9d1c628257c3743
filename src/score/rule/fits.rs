//! A thing is inside its surface's free box and shares volume with nothing.

use super::{Against, Rule};
use crate::score::{Scope, View};
use crate::site::Place;

pub struct Fits;

impl Rule for Fits {
    const NAME: &'static str = "fits";
    const SCOPE: Scope = Scope::Lot;
    const SOURCE: &'static str = "geometry";

    fn measure(view: &View) -> Option<Against> {
        let place = view.place()?;
        let inside = view.board.free(place.home.surface as usize).contains(&place.space);
        Some(Against::none(view.board.tangles(view.lot) + usize::from(!inside)))
    }
    fn tell(view: &View, _: &Against) -> String {
        let site = view.site();
        let Some(place) = view.place() else { return String::new() };
        let name = view.of().name(&site.items);
        match neighbours(view, place).min() {
            Some(other) => {
                format!(
                    "{name} and {} are in one place",
                    site.lots[other as usize].name(&site.items)
                )
            }
            None => format!("{name} sticks out of {}", view.surface_of(place).name),
        }
    }
    fn lots(view: &View) -> Vec<u32> {
        let mut all = vec![view.lot as u32];
        if let Some(place) = view.place() {
            all.extend(neighbours(view, place));
        }
        all
    }
}

/// What shares volume with a lot, or stands in the free height of one of the two.
fn neighbours<'a>(view: &'a View, place: &'a Place) -> impl Iterator<Item = u32> + 'a {
    let site = view.site();
    let s = site.surfaces[place.home.surface as usize].space;
    let over = view.board.headroom(view.lot, place.home.surface as usize);
    let mut mine = place.space;
    mine.max[2] += over;
    let spaces = std::iter::once(s).chain(site.spaces[s].near.iter().copied());
    spaces.flat_map(|s| view.board.members(s)).copied().filter(move |&m| {
        m as usize != view.lot
            && view.board.place(m as usize).is_some_and(|p| {
                let mut its = p.space;
                its.max[2] += view.board.headroom(m as usize, p.home.surface as usize);
                mine.overlaps(&p.space) || its.overlaps(&place.space)
            })
    })
}
