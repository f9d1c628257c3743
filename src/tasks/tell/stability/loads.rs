//! The heaviest caster in the cases that no rule asks for.

use super::trials::Stance;
use crate::physics::casters::MOST;
use crate::physics::leaning::GRAVITY;
use crate::site::{Case, Statics};
use crate::tasks::outcome::CasterTrial;
use crate::units::Mass;

/// Case by case: all drawers out, someone leaning on a corner, something under one caster.
pub(super) fn casters(stance: &Stance) -> Vec<CasterTrial> {
    let statics = &stance.board.site().statics;
    let closed = stance.closed();
    let mut all = Vec::new();
    if statics.drawers.len() > 1 {
        all.extend(level(statics, "all drawers out", &stance.all_out(&closed)));
    }
    all.extend(leaning(stance, &closed));
    all.extend(bumps(stance, &closed));
    all
}

fn level(statics: &Statics, case: &str, of: &Case) -> Option<CasterTrial> {
    let mut loads = [0.0; MOST];
    let [x, y, _] = of.moments;
    let stands = statics.supports.as_ref()?.loads(of.total, x, y, &mut loads);
    stands.then(|| heaviest(statics, case, &loads)).flatten()
}

/// The caster that comes nearest to its rating.
fn heaviest(statics: &Statics, case: &str, loads: &[f64; MOST]) -> Option<CasterTrial> {
    let part = |k: usize| loads[k] * statics.strain.map_or(1.0, |parts| parts[k]);
    let caster = (0..statics.at.len()).max_by(|a, b| part(*a).total_cmp(&part(*b)))?;
    Some(CasterTrial {
        case: case.to_owned(),
        at: statics.at[caster],
        load: Mass::from_kg(loads[caster]),
        rating: statics.rating_of(caster),
    })
}

/// The harder for the caster of two.
fn harder(a: CasterTrial, b: CasterTrial) -> CasterTrial {
    let part = |t: &CasterTrial| t.load.as_kg() / t.rating.map_or(1.0, Mass::as_kg);
    if part(&b) > part(&a) { b } else { a }
}

/// Someone leaning on whichever corner of the bench is worst.
fn leaning(stance: &Stance, closed: &Case) -> Option<CasterTrial> {
    let statics = &stance.board.site().statics;
    let [wide, deep, _] = stance.bench;
    let lean = stance.figures.lean.value / GRAVITY;
    let corners = [[0.0, 0.0], [wide, 0.0], [0.0, deep], [wide, deep]];
    let trials = corners.iter().filter_map(|corner| {
        let case = closed.with(lean, [corner[0], corner[1], stance.bench[2]]);
        level(statics, "someone leans on a corner of the bench", &case)
    });
    trials.reduce(harder)
}

/// Something under one caster or another, for a soft cart and a stiff one.
fn bumps(stance: &Stance, closed: &Case) -> Vec<CasterTrial> {
    let chip = stance.figures.chip.value;
    let [least, most] = &stance.figures.gives;
    let words = |kind: &str| format!("{chip:.0} mm under one caster, {kind}");
    let soft = bump(stance, closed, chip * 10.0 / most.value, &words("if the cart gives"));
    let stiff = bump(stance, closed, chip * 10.0 / least.value, &words("if it is stiff"));
    soft.into_iter().chain(stiff).collect()
}

fn bump(stance: &Stance, closed: &Case, press: f64, case: &str) -> Option<CasterTrial> {
    let statics = &stance.board.site().statics;
    let supports = statics.supports.as_ref()?;
    let [x, y, _] = closed.moments;
    let trials = (0..statics.at.len()).filter_map(|under| {
        let (mut presses, mut loads) = ([0.0; MOST], [0.0; MOST]);
        presses[under] = press;
        let n = statics.at.len();
        let stands = supports.on_bumps(closed.total, [x, y], &presses[..n], &mut loads);
        stands.then(|| heaviest(statics, case, &loads)).flatten()
    });
    trials.reduce(harder)
}
