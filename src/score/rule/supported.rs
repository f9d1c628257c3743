//! A surface carries no more than its stated limit.

use super::{Against, Rule};
use crate::score::{Scope, View};

pub struct Supported;

impl Rule for Supported {
    const NAME: &'static str = "supported";
    const SCOPE: Scope = Scope::Surface;
    const SOURCE: &'static str = "the limit stated in the carcass file";

    fn measure(view: &View) -> Option<Against> {
        let limit = view.site().surfaces[view.surface].limit?;
        Some(Against::at_most(view.board.load(view.surface).as_kg(), limit.as_kg()))
    }
    fn tell(view: &View, against: &Against) -> String {
        let site = view.site();
        let surface = &site.surfaces[view.surface];
        let space = &site.spaces[surface.space];
        format!(
            "{} / {} / {} carries {:.1} kg of {:.1} kg",
            space.face.name(),
            space.name,
            surface.name,
            against.value,
            against.limit
        )
    }
}
