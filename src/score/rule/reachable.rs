//! A thing is within the person's reach.

use super::{Against, Rule};
use crate::physics::body::Posture;
use crate::score::{Scope, View};

pub struct Reachable;

impl Rule for Reachable {
    const NAME: &'static str = "reachable";
    const SCOPE: Scope = Scope::Lot;
    const SOURCE: &'static str =
        "body heights from ANSUR II (2012); seated: 2010 ADA Standards 308";

    fn measure(view: &View) -> Option<Against> {
        let place = view.place()?;
        let (height, depth) = view.hand(place);
        let out = view.site().body.posture(height, depth) == Posture::Out;
        Some(Against::none(usize::from(out)))
    }
    fn tell(view: &View, _: &Against) -> String {
        let Some(place) = view.place() else { return String::new() };
        let (height, depth) = view.hand(place);
        format!(
            "{} is out of reach: {:.0} mm high, {:.0} mm deep",
            view.of().name(&view.site().items),
            height.as_mm(),
            depth.as_mm()
        )
    }
}
