//! Looking on several faces for things of one family.

use super::together::names;
use crate::score::{Cost, Scope, View};
use crate::site::Faces;
use crate::units::{Price, Uses};

pub struct Family;

impl Cost for Family {
    const NAME: &'static str = "family";
    const SCOPE: Scope = Scope::Family;
    type Fact = Faces;

    fn measure(view: &View) -> Option<Faces> {
        // What is on the bench is before one's eyes: it makes no further face.
        Some(view.tally.family(view.tie).sides())
    }
    // So much a week for each face but one, whatever is used how often: what is fetched daily is found by habit, and
    // what is looked for is fetched seldom.
    fn price(view: &View, faces: &Faces) -> Price {
        let further = faces.count().saturating_sub(1) as i64;
        Uses::per_week(further).cost(view.site().rates.family)
    }
    fn tell(view: &View, faces: &Faces) -> String {
        let name = &view.family().name;
        match faces.count() {
            0 => String::new(),
            1 => format!("the family {name} is all on the {}", names(*faces)),
            n => format!("the family {name} is on {n} faces: {}", names(*faces)),
        }
    }
}
