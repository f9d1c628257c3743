//! Sparks and heat stay away from what burns; and three further pairs that do not go together.

use super::{Against, Rule};
use crate::geometry::Way;
use crate::score::{Scope, View};
use crate::site::{Clash, Place, SpaceKind};

pub struct HazardsApart;

impl Rule for HazardsApart {
    const NAME: &'static str = "hazards apart";
    const SCOPE: Scope = Scope::Pair;
    const SOURCE: &'static str = "our own rule for one cart: separation by face or space; distances for hot work cannot be met on a cart \
        (29 CFR 1910.252(a)(2), read as quoted)";

    fn measure(view: &View) -> Option<Against> {
        let pair = view.two();
        let one = view.board.place(pair.one as usize)?;
        let other = view.board.place(pair.other as usize)?;
        let together = match pair.clash {
            Clash::Face => faces(view, one) & faces(view, other) != 0,
            Clash::Space => same_space(view, one, other),
            Clash::Above => same_space(view, one, other) && above(one, other),
        };
        Some(Against::none(usize::from(together)))
    }
    fn tell(view: &View, _: &Against) -> String {
        let site = view.site();
        let pair = view.two();
        let name = |l: u32| site.lots[l as usize].name(&site.items);
        let (one, other) = (name(pair.one), name(pair.other));
        match pair.clash {
            Clash::Face => {
                format!("{one} and {other} are on one face: sparks or heat beside what burns")
            }
            Clash::Space => format!("{one} and {other} are in one space"),
            Clash::Above => format!("{one} can drip on {other} below it"),
        }
    }
}

/// The faces that a thing belongs to, as bits: both of a through bay; the bench stands alone.
fn faces(view: &View, place: &Place) -> u8 {
    let space = view.space(place);
    let bit = |way: Way| 1 << way.index();
    match space.kind {
        SpaceKind::Bench => 1 << 7,
        _ => space.ways.iter().fold(0, |bits, &way| bits | bit(way)),
    }
}

fn same_space(view: &View, one: &Place, other: &Place) -> bool {
    let space = |p: &Place| view.site().surfaces[p.home.surface as usize].space;
    space(one) == space(other)
}

fn above(one: &Place, other: &Place) -> bool {
    one.space.min[2] >= other.space.max[2]
        && (0..2).all(|axis| one.space.meets_along(&other.space, axis))
}
