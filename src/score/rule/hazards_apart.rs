//! Sparks and heat stay away from what burns; and three further pairs that do not go together.

use super::{Against, Rule};
use crate::domain::{Face, Hazard};
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
            Clash::Face => format!(
                "{one} and {other} are both on the {}: sparks or heat beside what burns",
                shared_face(view)
            ),
            Clash::Space => {
                format!("{one} and {other} are in one space{}: {}", space(view), why(view))
            }
            Clash::Above => format!("{one} can drip on {other} below it{}", space(view)),
        }
    }
}

/// The first face that both are on, in words.
fn shared_face(view: &View) -> &'static str {
    let pair = view.two();
    let faces = |l: u32| {
        view.board.place(l as usize).map_or(0, |p| view.site().faces(p.home.surface as usize))
    };
    let both = faces(pair.one) & faces(pair.other);
    Face::ALL.into_iter().find(|f| both & 1 << f.index() != 0).map_or("bench", Face::name)
}

/// Where the first of the pair is, in brackets.
fn space(view: &View) -> String {
    let place = view.board.place(view.two().one as usize);
    place.map_or_else(String::new, |p| format!(" ({})", view.space(p).name))
}

/// Why two do not share a space.
fn why(view: &View) -> &'static str {
    let lots = &view.site().lots;
    let has = |hazard| {
        let pair = view.two();
        [pair.one, pair.other].iter().any(|&l| lots[l as usize].hazards.has(hazard))
    };
    match (has(Hazard::Battery) && has(Hazard::Hot), has(Hazard::Oxidiser)) {
        (true, _) => "heat beside a battery",
        (_, true) => "what feeds a fire beside what burns",
        _ => "what eats its can beside what burns",
    }
}
