//! No caster carries more than its rating: closed, with each drawer out, with each heavy thing away.

use super::{Against, Rule};
use crate::score::{Scope, View};

const SOURCE: &str =
    "the rating stated in the carcass file; rigid body on equal elastic supports with lift-off";

pub struct Casters;

impl Rule for Casters {
    const NAME: &'static str = "casters";
    const SCOPE: Scope = Scope::Cart;
    const SOURCE: &'static str = SOURCE;

    fn measure(view: &View) -> Option<Against> {
        let rating = view.site().statics.rating?;
        Some(Against::at_most(view.stand.worst, rating.as_kg()))
    }
    fn tell(view: &View, against: &Against) -> String {
        format!(
            "one caster carries up to {:.1} kg of {:.1} kg{}",
            against.value,
            against.limit,
            scaled(view)
        )
    }
}

/// On an uneven floor no caster carries more than its rating while another hangs free.
pub struct Hanging;

impl Rule for Hanging {
    const NAME: &'static str = "casters";
    const SCOPE: Scope = Scope::Cart;
    const SOURCE: &'static str = SOURCE;

    fn measure(view: &View) -> Option<Against> {
        let rating = view.site().statics.rating?;
        view.site().uneven.then(|| Against::at_most(view.stand.hanging, rating.as_kg()))
    }
    fn tell(view: &View, against: &Against) -> String {
        format!(
            "on this uneven floor one caster may hang free, and another then carries {:.1} kg of {:.1} kg{}",
            against.value,
            against.limit,
            scaled(view)
        )
    }
}

/// Casters that are rated higher are told as if they were of the least rating.
fn scaled(view: &View) -> &'static str {
    match view.site().statics.strain {
        Some(_) => ", reckoned by the parts of their ratings",
        None => "",
    }
}
