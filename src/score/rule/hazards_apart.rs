//! Sparks and heat stay away from what burns; and three further pairs that do not go together.

use super::{Against, Rule};
use crate::score::{Scope, View};
use crate::site::Clash;

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
        let together = view.site().clash(pair.clash, one, other);
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
