//! Walking round several faces for one job.

use super::together::names;
use crate::score::{Cost, Scope, View};
use crate::site::Faces;
use crate::units::{Price, Time};

pub struct Jobs;

/// The faces that one must come to, and how much longer that walk is than to the farthest of them and back.
pub struct Round {
    faces: Faces,
    further: Time,
}

impl Cost for Jobs {
    const NAME: &'static str = "jobs";
    const SCOPE: Scope = Scope::Job;
    type Fact = Round;

    fn measure(view: &View) -> Option<Round> {
        let faces = view.tally.round(view.site(), view.tie);
        Some(Round { faces, further: view.site().tours.further(faces) })
    }
    // The walk from the work to each thing and back is in access. A tour that comes to the farthest face and back costs
    // nothing on top; what it is longer, because there are things on other faces too, is counted here, and turning to each
    // further face.
    fn price(view: &View, round: &Round) -> Price {
        view.job().uses.cost(round.further)
    }
    fn tell(view: &View, round: &Round) -> String {
        if round.faces.is_empty() {
            return String::new();
        }
        format!(
            "the job {} leads to the {}: {:.1} s more each time than to the farthest and back",
            view.job().name,
            names(round.faces),
            round.further.as_s()
        )
    }
}
