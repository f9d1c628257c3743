//! Nothing is lifted with both hands that the lifting equation puts out of the question.

use super::{Against, Rule};
use crate::score::{Scope, View};
use crate::site::{End, Lifted, Site, lifted, unassessed};

pub struct Lifting;

impl Rule for Lifting {
    const NAME: &'static str = "lifting";
    const SCOPE: Scope = Scope::Way;
    const SOURCE: &'static str = "NIOSH Pub. 94-110 (rev. 2021), revised lifting equation, p. 20: an index above 3.0 puts nearly everyone at risk; shop.yaml may lower it";

    fn measure(view: &View) -> Option<Against> {
        let lifted = harder(view)?;
        let most = lifted.limit.as_kg() * view.site().lifting_limit;
        Some(Against::at_most(lifted.load.as_kg(), most))
    }
    fn concerns(site: &Site, lot: usize) -> bool {
        site.lots[lot].is_fetched(&site.items) && unassessed(site, lot).is_none()
    }
    fn tell(view: &View, against: &Against) -> String {
        let name = view.of().name(&view.site().items);
        let Some(Lifted { end, lift, index, .. }) = harder(view) else { return name };
        let from = match end {
            End::Place => "from its place",
            End::Bench => "off the bench",
        };
        let (high, out) = (lift.height.as_mm(), lift.horizontal.as_mm());
        let index = index.map_or_else(
            || "no load may be lifted so".to_owned(),
            |i| format!("the lifting index is {i:.2}, over {:.1}", view.site().lifting_limit),
        );
        format!(
            "{name} weighs {:.1} kg; lifted with both hands {from}, {high:.0} mm high and {out:.0} mm before the ankles, {index}: at most {:.1} kg there",
            against.value, against.limit
        )
    }
}

fn harder(view: &View) -> Option<Lifted> {
    view.place().map(|place| lifted(view.site(), view.lot, place, view.way))
}
