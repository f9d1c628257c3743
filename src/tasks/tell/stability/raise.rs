//! What would raise the least margin most: every change is tried through the same statics, none is written.

use super::trials::{Deed, Stance};
use crate::geometry::Way;
use crate::physics::tipping::Footprint;
use crate::score::Ledger;
use crate::site::{Board, Change, Place, Touched};
use crate::solve::{corners, trial};
use crate::tasks::outcome::Raise;
use crate::units::{Length, Mass, Unit, show_length, show_mass};

/// Ballast that is tried, in kg: design choice.
const BALLAST: [i64; 3] = [5, 10, 20];
/// How far over the floor board its middle lies, in mm: design choice.
const BALLAST_HEIGHT: f64 = 50.0;
/// How much further out the casters are tried: design choice.
const FURTHER: Length = Length::mm(50);
/// The part of its way to which a drawer is tried pulled: design choice.
const PULLED: f64 = 0.5;
/// A raise under this part is not told: design choice.
const WORTH_TELLING: f64 = 0.01;
/// How many moves are tried against the rules, the best first.
const TRIED: usize = 12;

/// The best of each kind, best first.
pub(super) fn raise(stance: &Stance, ledger: &Ledger, unit: Unit) -> Vec<Raise> {
    let now = stance.least();
    let kinds = [
        moved(stance, ledger),
        ballast(stance, now, unit),
        shorter(stance, unit),
        wider(stance, unit),
    ];
    let better = |(_, margin): &(String, f64)| *margin > now + WORTH_TELLING * now.abs();
    let mut all: Vec<(String, f64)> = kinds.into_iter().flatten().filter(better).collect();
    all.sort_by(|a, b| b.1.total_cmp(&a.1));
    all.into_iter().map(|(text, margin)| Raise { text, margin: [now, margin] }).collect()
}

/// The one thing and place that raise it most without breaking a rule.
fn moved(stance: &Stance, ledger: &Ledger) -> Option<(String, f64)> {
    let site = stance.board.site();
    let mut board = stance.board.clone();
    let mut all: Vec<(f64, usize, Place)> = Vec::new();
    for lot in (0..site.lots.len()).filter(|&l| site.lots[l].fixed.is_none()) {
        let Some(old) = board.place(lot).copied() else { continue };
        let mut best: Option<(f64, usize, Place)> = None;
        for to in corners(stance.board, lot, &site.lots[lot].homes) {
            let margin = with(
                stance,
                &mut board,
                Change { lot, to: Some(to) },
                Change { lot, to: Some(old) },
            );
            if best.as_ref().is_none_or(|b| margin > b.0) {
                best = Some((margin, lot, to));
            }
        }
        all.extend(best);
    }
    all.sort_by(|a, b| b.0.total_cmp(&a.0));
    let (mut ledger, before) = (ledger.clone(), ledger.score());
    let keeps = |(_, lot, to): &&(f64, usize, Place)| {
        let change = Change { lot: *lot, to: Some(*to) };
        trial(&mut board, &mut ledger, &[change]).broken <= before.broken
    };
    let (margin, lot, to) = all.iter().take(TRIED).find(keeps)?;
    let surface = &site.surfaces[to.home.surface as usize];
    let space = &site.spaces[surface.space];
    let name = site.lots[*lot].name(&site.items);
    Some((
        format!("move {name} to {} / {} / {}", space.face.name(), space.name, surface.name),
        *margin,
    ))
}

/// The least margin with something changed, which is then changed back.
fn with(stance: &Stance, board: &mut Board, change: Change, back: Change) -> f64 {
    let mut touched = Touched::default();
    board.apply(change, &mut touched);
    let margin = Stance { board: &*board, ..*stance }.least();
    board.apply(back, &mut touched);
    margin
}

/// The least ballast that lifts the margin over one, or the middle one where it is over one already, and its best place.
fn ballast(stance: &Stance, now: f64, unit: Unit) -> Option<(String, f64)> {
    let best = |kg: i64| {
        let tried = spots(stance).into_iter().map(|(words, at)| {
            (words, Stance { ballast: Some((kg as f64, at)), ..*stance }.least(), kg)
        });
        tried.max_by(|a, b| a.1.total_cmp(&b.1))
    };
    let lifts = |kg: &i64| best(*kg).is_some_and(|b| b.1 >= 1.0);
    let kg = match now < 1.0 {
        true => BALLAST.into_iter().find(lifts).unwrap_or(BALLAST[2]),
        false => BALLAST[1],
    };
    let (words, margin, kg) = best(kg)?;
    let mass = show_mass(Mass::kg(kg), unit.imperial());
    Some((format!("lay {mass} of ballast on the floor board, {words}"), margin))
}

/// The middle, the sides and the corners of the floor board, with what to call them.
fn spots(stance: &Stance) -> Vec<(String, [f64; 3])> {
    let [wide, deep, _] = stance.bench;
    let z = stance.low + BALLAST_HEIGHT;
    let rows = [("at the front", 0.15), ("in the middle", 0.5), ("at the back", 0.85)];
    let columns = [(" left", 0.15), ("", 0.5), (" right", 0.85)];
    let spot = |(row, y): (&str, f64), (column, x): (&str, f64)| {
        (format!("{row}{column}"), [wide * x, deep * y, z])
    };
    rows.into_iter()
        .flat_map(|row| columns.into_iter().map(move |column| spot(row, column)))
        .collect()
}

/// The drawer that counts, pulled only so far.
fn shorter(stance: &Stance, unit: Unit) -> Option<(String, f64)> {
    let worst = stance.weigh().into_iter().min_by(|a, b| a.margin().total_cmp(&b.margin()))?;
    let Deed::Out(space) = worst.deed else { return None };
    let margin = Stance { pull: Some((space, PULLED)), ..*stance }.least();
    let space = &stance.board.site().spaces[space];
    let far = show_length(Length::from_mm((space.extends.as_mm() * PULLED).round()), unit);
    Some((format!("pull {} out no farther than {far}", space.name), margin))
}

/// Casters further out at one side or at two opposite ones.
fn wider(stance: &Stance, unit: Unit) -> Option<(String, f64)> {
    let sides = [Way::Front, Way::Back, Way::Left, Way::Right];
    let both = [[Way::Front, Way::Back], [Way::Left, Way::Right]];
    let ones = sides.iter().map(std::slice::from_ref);
    let tried = ones.chain(both.iter().map(<[Way; 2]>::as_slice)).filter_map(|ways| {
        let footprint = Footprint::new(&further(stance, ways), stance.trail)?;
        let margin = Stance { footprint: &footprint, ..*stance }.least();
        Some((ways, margin))
    });
    // The first of equals: one side rather than two.
    let (ways, margin) = tried.reduce(|a, b| if b.1 > a.1 { b } else { a })?;
    let names: Vec<&str> = ways.iter().map(|w| w.name()).collect();
    let far = show_length(FURTHER, unit);
    Some((format!("set the casters at the {} {far} further out", names.join(" and ")), margin))
}

/// The casters' places with the outermost ones of some sides further out.
fn further(stance: &Stance, ways: &[Way]) -> Vec<[Length; 2]> {
    let old = &stance.board.site().statics.at;
    let mut at = old.clone();
    for way in ways {
        let axis = way.axis();
        let all = old.iter().map(|p| p[axis]);
        let end = if way.rising() { all.max() } else { all.min() };
        for (new, _) in at.iter_mut().zip(old).filter(|(_, p)| Some(p[axis]) == end) {
            new[axis] += if way.rising() { FURTHER } else { -FURTHER };
        }
    }
    at
}
