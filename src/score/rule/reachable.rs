//! A thing is within the person's reach.

use super::{Against, Rule};
use crate::physics::body::Posture;
use crate::score::{Scope, View};

pub struct Reachable;

impl Rule for Reachable {
    const NAME: &'static str = "reachable";
    const SCOPE: Scope = Scope::Way;
    const SOURCE: &'static str =
        "body heights from ANSUR II (2012); seated: 2010 ADA Standards 308";

    fn measure(view: &View) -> Option<Against> {
        let place = view.place()?;
        let out = view.site().body.posture(&view.grip(place)) == Posture::Out;
        Some(Against::none(usize::from(out)))
    }
    fn tell(view: &View, _: &Against) -> String {
        let Some(place) = view.place() else { return String::new() };
        let grip = view.grip(place);
        format!(
            "{} is out of reach: {:.0} mm high, {:.0} mm deep",
            view.of().name(&view.site().items),
            grip.height.as_mm(),
            grip.depth.as_mm()
        )
    }
}
