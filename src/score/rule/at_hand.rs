//! What is urgent is at hand at once, whatever its use.

use super::{Against, Rule};
use crate::physics::body::Posture;
use crate::score::{Scope, View};
use crate::site::{Place, Site, SpaceKind};

pub struct AtHand;

impl Rule for AtHand {
    const NAME: &'static str = "at hand";
    const SCOPE: Scope = Scope::Lot;
    const SOURCE: &'static str =
        "our own rule for first aid, extinguisher and eye wash; local codes and labels come first";

    fn measure(view: &View) -> Option<Against> {
        view.place().map(|place| Against::none(hindrances(view, place).count()))
    }
    fn concerns(site: &Site, lot: usize) -> bool {
        site.items[site.lots[lot].item].urgent
    }
    fn tell(view: &View, _: &Against) -> String {
        let name = view.of().name(&view.site().items);
        let Some(place) = view.place() else { return name };
        let all: Vec<&str> = hindrances(view, place).collect();
        format!("{name} is urgent but {}", all.join(" and "))
    }
}

fn hindrances(view: &View, place: &Place) -> impl Iterator<Item = &'static str> {
    let space = view.space(place);
    let far =
        matches!(view.site().body.posture(&view.grip(place)), Posture::Stretch | Posture::Out);
    [
        (!view.closure.lots.is_empty(), "something stands before it"),
        (space.kind == SpaceKind::Drawer, "it is in a drawer"),
        (far, "one must stretch for it"),
        (space.walled[view.way], "its face stands at a wall"),
    ]
    .into_iter()
    .filter(|(is, _)| *is)
    .map(|(_, words)| words)
}
