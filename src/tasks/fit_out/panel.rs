//! The screws that hold a panel on its face.

use super::hang::ROUGH;
use super::hole::{FROM_EDGE, is_clear};
use super::screw::{BITE, GAUGES, Screw, Sold, joining};
use super::work::Work;
use super::{Holder, Holding, Kind};
use crate::physics::fasteners::{Grain, Ground, Hung};
use crate::units::{Length, Mass, Unit, show_length};

/// The batten that a panel is screwed to where there are only openings behind it: common practice, no source.
pub const BATTEN: Length = Length::mm(38);
/// How far from the edges of a panel its own screws sit, where they can: common practice, no source.
const INSET: Length = Length::mm(25);
/// Its screws stand no farther apart: common practice, no source.
const PITCH: Length = Length::mm(500);
/// Steps in which a place with wood behind it is looked for.
const STEP: i64 = 5;
/// Kilograms in a cubic metre of board, for the panel's own mass: common practice, no source.
const DENSE: f64 = 600.0;

/// Finds the screws of every panel.
pub fn panels(work: &mut Work) {
    for k in 0..work.workspace.carcass.panels.len() {
        let mount = work.panel(&work.workspace.carcass.panels[k]);
        let at = work.enter(mount);
        fix(work, at);
    }
}

fn fix(work: &mut Work, mount: usize) {
    let size = work.mounts[mount].size;
    let columns = 2 + size[0].as_nm() / PITCH.as_nm();
    let mut taken: Vec<[Length; 2]> = work.mounts[mount].holes.iter().map(|h| h.at).collect();
    let upper = row(work, mount, columns, false, true, &mut taken);
    if upper.len() >= 2 {
        let lower = row(work, mount, columns, true, true, &mut taken);
        hold(work, mount, &upper, &lower, false);
        return;
    }
    taken.truncate(work.mounts[mount].holes.len());
    let upper = row(work, mount, columns, false, false, &mut taken);
    let lower = row(work, mount, columns, true, false, &mut taken);
    hold(work, mount, &upper, &lower, true);
}

/// A row of screws near the upper or the lower edge, each as near to its even place as wood behind it and other holes
/// allow; without looking for wood where battens are put there.
fn row(
    work: &Work,
    mount: usize,
    columns: i64,
    low: bool,
    wood: bool,
    taken: &mut Vec<[Length; 2]>,
) -> Vec<[Length; 2]> {
    let m = &work.mounts[mount];
    let [wide, high] = m.size;
    let between = (wide - INSET * 2).as_nm() / (columns - 1).max(1);
    let y = if low { INSET } else { high - INSET };
    let (dx, dy) =
        (between / 2 / Length::mm(STEP).as_nm(), high.as_nm() / 3 / Length::mm(STEP).as_nm());
    let mut found = Vec::new();
    for k in 0..columns {
        let x = INSET + Length::nm(between * k);
        let spot = nearest(dx, dy).into_iter().find_map(|(sx, sy)| {
            let at = [x + Length::mm(sx * STEP), y + Length::mm(sy * STEP)];
            let at = m.snapped(at, work.unit());
            let held = !wood || work.behind(mount, at).0 - m.thick >= BITE;
            (held && is_clear(m, at, taken)).then_some(at)
        });
        if let Some(at) = spot {
            taken.push(at);
            found.push(at);
        }
    }
    found
}

/// Steps to try, the nearest first.
fn nearest(dx: i64, dy: i64) -> Vec<(i64, i64)> {
    let mut all: Vec<(i64, i64)> =
        (-dx..=dx).flat_map(|x| (-dy..=dy).map(move |y| (x, y))).collect();
    all.sort_by_key(|(x, y)| (x * x + y * y, *y, *x));
    all
}

fn hold(
    work: &mut Work,
    mount: usize,
    upper: &[[Length; 2]],
    lower: &[[Length; 2]],
    battens: bool,
) {
    let (of, unit) = (work.mounts[mount].name(), work.unit());
    let thick = work.mounts[mount].thick;
    let holes = [upper, lower].concat();
    let behind = |at: &[Length; 2]| work.behind(mount, *at).0 - thick;
    let under = if battens { BATTEN } else { holes.iter().map(behind).min().unwrap_or_default() };
    let hung = hung(work, mount, upper);
    // Its screws bite in the carcass behind it, across the grain.
    let ground = Ground { grain: Grain::Side, ..work.carcass_ground() };
    let found = GAUGES.into_iter().find_map(|gauge| {
        joining(&[thick, under]).into_iter().find_map(|sold| {
            let share = share(ground, &hung, gauge.diameter, sold, thick);
            (share <= 1.0).then_some((Screw { gauge, sold }, share))
        })
    });
    let (Some((screw, share)), false) = (found, upper.is_empty()) else {
        work.wants.push(format!("{of}: no screws were found that hold the panel with what hangs on it; support it from below or make it thicker"));
        return;
    };
    let load = Mass::from_kg(hung.mass * upper.len() as f64);
    let reach = Length::from_mm(hung.reach);
    let holder = Holder {
        kind: Kind::Panel,
        placement: None,
        told: told(&of, holes.len(), battens, unit),
        of,
        parts: if battens { batten(work, mount, unit) } else { Vec::new() },
        mount: Some(mount),
        screw: Some((screw, holes.len() as u32)),
        holding: Some(Holding { load, reach, share, wire: None, rated: load }),
    };
    work.screw_on(mount, holder, &holes);
}

fn told(of: &str, screws: usize, battens: bool, unit: Unit) -> String {
    if battens {
        let thick = show_length(BATTEN, unit);
        format!(
            "{screws} screws hold {of} on two battens {thick} thick, put across the openings behind it where nothing stands"
        )
    } else {
        format!("{screws} screws hold {of} on its face")
    }
}

fn batten(work: &Work, mount: usize, unit: Unit) -> Vec<(String, u32)> {
    let long = show_length(work.mounts[mount].size[0], unit);
    vec![(format!("batten {long} long, {} thick", show_length(BATTEN, unit)), 2)]
}

/// What one upper screw carries: its share of all that hangs on the panel and of the panel itself.
fn hung(work: &Work, mount: usize, upper: &[[Length; 2]]) -> Hung {
    let m = &work.mounts[mount];
    let things: Vec<_> = m.outlines.iter().map(|(k, _)| &work.plan.placements[*k]).collect();
    let litres = m.size[0].as_mm() * m.size[1].as_mm() * m.thick.as_mm() / 1e9;
    let own = litres * DENSE;
    let mass: f64 = things.iter().map(|p| p.weight.as_kg()).fold(own, |a, b| a + b);
    let out = |b: &crate::geometry::Box3| b.extent(m.into.axis).as_mm() / 2.0;
    let moment = things.iter().map(|p| p.weight.as_kg() * out(&p.space)).fold(0.0, |a, b| a + b);
    let n = upper.len().max(1) as f64;
    let drop = upper.iter().map(|at| at[1]).min().unwrap_or(FROM_EDGE);
    Hung {
        mass: mass * ROUGH as f64 / n,
        reach: if mass > 0.0 { moment / mass } else { 0.0 },
        drop: drop.as_mm(),
    }
}

fn share(ground: Ground, hung: &Hung, diameter: Length, sold: Sold, thick: Length) -> f64 {
    let wood = crate::physics::fasteners::Screw {
        diameter: diameter.as_mm(),
        thread: (sold.length() - thick).as_mm(),
    };
    hung.share(&wood.holds(&ground))
}
