//! Casters, tipping and masses.

use crate::physics::casters::MOST;
use crate::site::{Board, Case, CaseKind, TIP_CLOSED, TIP_OPEN};
use crate::tasks::outcome::{Balance, CasterLoad, Tip};
use crate::units::{Length, Mass};

/// Masses and where they act.
pub(super) fn balance(board: &Board) -> Balance {
    let statics = &board.site().statics;
    let (total, moments) = board.sums();
    Balance {
        total,
        centre: centre(total, moments),
        carcass: statics.carcass,
        carcass_centre: centre(statics.carcass, statics.carcass_moments),
        assumed: statics.assumed.clone(),
    }
}

fn centre(mass: Mass, twice_moments: [i128; 3]) -> [Length; 3] {
    let twice = 2 * i128::from(mass.as_ng()).max(1);
    twice_moments.map(|m| Length::nm((m / twice) as i64))
}

/// What each caster carries.
pub(super) fn casters(board: &Board) -> Vec<CasterLoad> {
    let statics = &board.site().statics;
    let Some(supports) = &statics.supports else { return Vec::new() };
    let n = statics.at.len();
    let mut loads = [0.0; MOST];
    let mut all: Vec<CasterLoad> = statics
        .at
        .iter()
        .enumerate()
        .map(|(k, at)| CasterLoad {
            at: *at,
            load: None,
            worst: None,
            worst_case: String::new(),
            hanging: None,
            limit: statics.rating_of(k),
        })
        .collect();
    for case in board.cases() {
        let [x, y, _] = case.moments;
        if !supports.loads(case.total, x, y, &mut loads) {
            continue;
        }
        for (caster, load) in all.iter_mut().zip(&loads[..n]) {
            let load = Mass::from_kg(*load);
            if case.kind == CaseKind::Closed {
                caster.load = Some(load);
            }
            if caster.worst.is_none_or(|w| load > w) {
                caster.worst = Some(load);
                caster.worst_case = words(board, &case);
            }
        }
    }
    let closed = board.closed();
    if n > 3 && supports.hanging(closed.total, closed.moments[0], closed.moments[1], &mut loads) {
        for (caster, load) in all.iter_mut().zip(&loads[..n]) {
            caster.hanging = Some(Mass::from_kg(*load));
        }
    }
    all
}

/// A case in words.
fn words(board: &Board, case: &Case) -> String {
    let site = board.site();
    match case.kind {
        CaseKind::Closed => "closed".to_owned(),
        CaseKind::Out(space) => format!("{} out", site.spaces[space].name),
        CaseKind::Away(lot) => format!("{} away", site.lots[lot as usize].name(&site.items)),
    }
}

/// How far the cart may lean: closed, and with each drawer out.
pub(super) fn tips(board: &Board) -> Vec<Tip> {
    let site = board.site();
    let Some(footprint) = &site.statics.footprint else { return Vec::new() };
    board
        .cases()
        .filter(|case| !matches!(case.kind, CaseKind::Away(_)))
        .map(|case| {
            let (side, degrees) = case.tip(footprint);
            let (name, limit) = match case.kind {
                CaseKind::Out(space) => (site.spaces[space].name.clone(), TIP_OPEN),
                _ => ("closed".to_owned(), TIP_CLOSED),
            };
            Tip { side: footprint.way(side).name().to_owned(), case: name, degrees, limit }
        })
        .collect()
}
