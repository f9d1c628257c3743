//! Going from one companion to the other where no face has both.

use crate::domain::Face;
use crate::score::{Cost, Scope, View};
use crate::site::Faces;
use crate::units::{Price, Time};

pub struct Together;

/// Where the two are fetched from, and how far it is between the nearest of their faces.
pub struct Apart {
    one: Faces,
    other: Faces,
    each: Time,
}

impl Cost for Together {
    const NAME: &'static str = "together";
    const SCOPE: Scope = Scope::Companions;
    type Fact = Apart;

    fn measure(view: &View) -> Option<Apart> {
        let pair = view.companions();
        let (one, other) = (view.tally.item(pair.one), view.tally.item(pair.other));
        Some(Apart { one, other, each: view.site().tours.apart(one, other) })
    }
    // Each of them has its own walk from the work in access. Here is what comes on top: the walk from one to the other,
    // one way, and turning to another face, each time that both are wanted.
    fn price(view: &View, apart: &Apart) -> Price {
        view.companions().uses.cost(apart.each)
    }
    fn tell(view: &View, apart: &Apart) -> String {
        let pair = view.companions();
        let (one, other) = (view.name(pair.one), view.name(pair.other));
        if apart.one.is_empty() || apart.other.is_empty() {
            return String::new();
        }
        if apart.each == Time::ZERO {
            return format!("{one} and {other} are side by side");
        }
        format!(
            "{one} on the {} and {other} on the {}: {:.1} s from one to the other each time both are wanted",
            names(apart.one),
            names(apart.other),
            apart.each.as_s()
        )
    }
}

/// The names of some faces: `left`, `left and right`.
pub fn names(faces: Faces) -> String {
    let names: Vec<&str> = faces.iter().map(Face::name).collect();
    match names.as_slice() {
        [first @ .., last] if !first.is_empty() => format!("{} and {last}", first.join(", ")),
        _ => names.concat(),
    }
}
