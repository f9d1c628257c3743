//! Nothing heavy is taken from above the shoulder.

use super::{Against, Rule};
use crate::score::{Scope, View};
use crate::site::Site;
use crate::units::Mass;

pub struct Overhead;

/// What counts as heavy: design choice.
const HEAVY: Mass = Mass::kg(10);

impl Rule for Overhead {
    const NAME: &'static str = "hazards apart";
    const SCOPE: Scope = Scope::Way;
    const SOURCE: &'static str = "our own rule: over 10 kg never with its grip above the shoulder";

    fn measure(view: &View) -> Option<Against> {
        let place = view.place()?;
        let height = view.grip(place).height;
        Some(Against::at_most(height.as_mm(), view.site().body.shoulder.as_mm()))
    }
    fn concerns(site: &Site, lot: usize) -> bool {
        site.lots[lot].unit > HEAVY
    }
    fn tell(view: &View, against: &Against) -> String {
        format!(
            "{} weighs {:.1} kg and is gripped at {:.0} mm, above the shoulder at {:.0} mm",
            view.of().name(&view.site().items),
            view.of().unit.as_kg(),
            against.value,
            against.limit
        )
    }
}
