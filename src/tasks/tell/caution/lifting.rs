//! Lifts that want a second thought: over the index to stay at, or heavy and beyond what the equation judges.

use super::{About, caution};
use crate::physics::lifting::GOOD_INDEX;
use crate::tasks::outcome::{Caution, LIFT_SOURCE, Lift};
use crate::units::Mass;

/// Over this, a lift that nothing assesses is worth a word: design choice.
const HEAVY: Mass = Mass::kg(10);

pub(super) fn cautions(about: &About) -> Vec<Caution> {
    over_the_aim(about.lifts).into_iter().chain(not_assessed(about.lifts)).collect()
}

fn over_the_aim(lifts: &[Lift]) -> Option<Caution> {
    let over = |lift: &&Lift| {
        let allowed = |i: f64| i > GOOD_INDEX && lift.assessed.as_ref().is_ok_and(|a| i <= a.limit);
        lift.index().is_some_and(allowed)
    };
    let items = names(lifts.iter().filter(over));
    let text = "The lifting index is over 1.0: not a lift for everybody, nor for every day. Lift close to the body, keep it nearer the height of the knuckles, split it or get help.";
    (!items.is_empty()).then(|| caution(items, text, LIFT_SOURCE))
}

fn not_assessed(lifts: &[Lift]) -> Vec<Caution> {
    let mut reasons: Vec<&str> = lifts.iter().filter_map(reason).collect();
    reasons.sort_unstable();
    reasons.dedup();
    let one = |why: &str| {
        let items = names(lifts.iter().filter(|lift| reason(lift) == Some(why)));
        let text = format!(
            "Over {:.0} kg; lifting index: not assessed ({why}, which the equation leaves out). Take both hands, keep it close to the body, and get help where it is too much.",
            HEAVY.as_kg()
        );
        caution(items, text, LIFT_SOURCE)
    };
    reasons.into_iter().map(one).collect()
}

/// Why a heavy lift is not assessed.
fn reason(lift: &Lift) -> Option<&'static str> {
    lift.assessed.as_ref().err().copied().filter(|_| lift.weight > HEAVY)
}

/// Each item once.
fn names<'a>(lifts: impl Iterator<Item = &'a Lift>) -> Vec<String> {
    let mut all: Vec<String> = Vec::new();
    for lift in lifts {
        if !all.contains(&lift.copy.item) {
            all.push(lift.copy.item.clone());
        }
    }
    all
}
