//! What is done by looking at every corner place, not by drawing one: filling, settling and squeezing in.

use super::zoning::Zoning;
use crate::score::{Ledger, Score, Undo, way_prices};
use crate::site::{Board, Change, Clearing, Home, Place, Touched, for_each_corner};
use crate::units::Time;

/// How many places on its own surface a lot is tried at.
const FEW: usize = 12;
/// Surfaces with more things than this are left as they are.
const CROWDED: usize = 24;

/// Puts every lot that is off the cart into its best free corner place, the most valuable first.
pub fn fill(board: &mut Board, zoning: &Zoning) {
    let mut ledger = Ledger::new(board);
    let mut off = off_cart(board);
    off.retain(|&l| board.site().lots[l].fixed.is_none());
    for lot in off {
        let homes = zoning.homes[lot].clone();
        best_place(board, &mut ledger, lot, &homes);
    }
}

/// Moves each lot once to the best corner place on its own surface, if that is better.
pub fn settle(board: &mut Board, zoning: &Zoning) {
    let mut ledger = Ledger::new(board);
    for lot in 0..board.site().lots.len() {
        let Some(place) = board.place(lot).copied() else { continue };
        let space = board.site().surfaces[place.home.surface as usize].space;
        if board.site().lots[lot].fixed.is_some() || board.members(space).len() > CROWDED {
            continue;
        }
        let homes = zoning.on_surface(lot, place.home.surface).to_vec();
        best_place(board, &mut ledger, lot, &homes);
    }
}

/// Pushes what stands loose to a corner place on its own surface, where that costs no more.
///
/// Things are left loose where what they were pushed against has moved away.
pub fn tidy(board: &mut Board) {
    let mut ledger = Ledger::new(board);
    let mut clearing = Clearing::default();
    for lot in 0..board.site().lots.len() {
        let Some(place) = board.place(lot).copied() else { continue };
        let surface = &board.site().surfaces[place.home.surface as usize];
        let crowded = board.members(surface.space).len() > CROWDED;
        if crowded || board.site().lots[lot].fixed.is_some() {
            continue;
        }
        let [p, q] = surface.free_axes();
        let looked = clearing.look(board, lot, &place.home);
        if !looked || clearing.is_corner(place.space.min[p], place.space.min[q]) {
            continue;
        }
        let away = |other: &Place| {
            let d = |a: usize| (other.space.min[a] - place.space.min[a]).as_nm().abs();
            d(p) + d(q)
        };
        let mut corners = corners(board, lot, &[place.home]);
        corners.sort_by_key(away);
        let before = ledger.score();
        let found = corners
            .into_iter()
            .find(|to| trial(board, &mut ledger, &[Change { lot, to: Some(*to) }]) <= before);
        if let Some(to) = found {
            keep(board, &mut ledger, Change { lot, to: Some(to) });
        }
    }
}

/// Lots off the cart, the most valuable first.
fn off_cart(board: &Board) -> Vec<usize> {
    let lots = &board.site().lots;
    let mut off: Vec<usize> = (0..lots.len()).filter(|&l| board.place(l).is_none()).collect();
    off.sort_by_key(|&l| (std::cmp::Reverse(lots[l].off_cart), l));
    off
}

/// Tries the corner places of a lot on these homes, the easiest to walk and reach to first, and keeps the best of the
/// first few that better the score; a lot off the cart takes the first.
fn best_place(board: &mut Board, ledger: &mut Ledger, lot: usize, homes: &[Home]) -> bool {
    let places = corners(board, lot, homes);
    let before = ledger.score();
    let was_off = board.place(lot).is_none();
    let most = if was_off { places.len() } else { FEW };
    let mut best: Option<(Score, Place)> = None;
    for place in places.into_iter().take(most) {
        let score = trial(board, ledger, &[Change { lot, to: Some(place) }]);
        if score < best.map_or(before, |b| b.0) {
            best = Some((score, place));
            if was_off {
                break;
            }
        }
    }
    if let Some((_, place)) = best {
        keep(board, ledger, Change { lot, to: Some(place) });
    }
    best.is_some()
}

/// The free corner places of a lot on these homes, the easiest to walk and reach to first.
pub fn corners(board: &Board, lot: usize, homes: &[Home]) -> Vec<Place> {
    let mut places = Vec::new();
    let mut clearing = Clearing::default();
    for home in homes {
        let mine = board.place(lot).is_some_and(|p| p.home.surface == home.surface);
        if !mine && home.area > board.left(home.surface as usize) {
            continue;
        }
        for_each_corner(board, lot, home, &mut clearing, |place| {
            places.push(place);
            true
        });
    }
    places.sort_by_cached_key(|place| {
        way_prices(board.site(), lot, place).map(|(_, t)| t).min().unwrap_or(Time::s(1_000_000))
    });
    places
}

/// The score after some changes, which are taken back again.
pub fn trial(board: &mut Board, ledger: &mut Ledger, changes: &[Change]) -> Score {
    let (mut touched, mut undo) = (Touched::default(), Undo::default());
    touched.clear();
    let back: Vec<Change> = changes.iter().map(|c| board.apply(*c, &mut touched)).collect();
    ledger.follow(board, &touched, &mut undo);
    let score = ledger.score();
    for change in back.into_iter().rev() {
        board.apply(change, &mut touched);
    }
    ledger.undo(&undo);
    score
}

fn keep(board: &mut Board, ledger: &mut Ledger, change: Change) {
    let (mut touched, mut undo) = (Touched::default(), Undo::default());
    touched.clear();
    board.apply(change, &mut touched);
    ledger.follow(board, &touched, &mut undo);
}

/// Brings onto the cart whatever is still off it: into a free corner place, or into the place of one of lesser value.
///
/// Afterwards no corner place admits anything that is left out, nor does ejecting one thing of lesser value, unless it
/// would break a rule.
pub fn squeeze(board: &mut Board) {
    let mut ledger = Ledger::new(board);
    loop {
        let before = ledger.score();
        turn_out(board, &mut ledger);
        for lot in off_cart(board) {
            if board.site().lots[lot].fixed.is_some() {
                continue;
            }
            let homes = board.site().lots[lot].homes.clone();
            if !best_place(board, &mut ledger, lot, &homes) {
                eject_one(board, &mut ledger, lot);
            }
        }
        if ledger.score() >= before {
            return;
        }
    }
}

/// Takes off the cart what breaks rules by being on it: one lot after the other, each time the one that mends most, as
/// long as that helps. Where no rule is mended in the end, everything stays.
fn turn_out(board: &mut Board, ledger: &mut Ledger) {
    let before = ledger.score();
    let mut gone: Vec<Change> = Vec::new();
    while ledger.score().broken > 0 {
        let wrong = |s: Score| (s.broken, s.excess);
        let now = wrong(ledger.score());
        let lots: Vec<usize> = (0..board.site().lots.len())
            .filter(|&l| board.place(l).is_some() && board.site().lots[l].fixed.is_none())
            .collect();
        let best = lots
            .into_iter()
            .map(|lot| (trial(board, ledger, &[Change { lot, to: None }]), lot))
            .min_by_key(|(s, lot)| (wrong(*s), s.off_cart, *lot));
        match best {
            Some((score, lot)) if wrong(score) < now => {
                gone.push(Change { lot, to: board.place(lot).copied() });
                keep(board, ledger, Change { lot, to: None });
            }
            _ => break,
        }
    }
    if ledger.score() >= before {
        gone.into_iter().rev().for_each(|back| keep(board, ledger, back));
    }
}

/// Puts a lot in the place of one of lesser value, which may find another place.
fn eject_one(board: &mut Board, ledger: &mut Ledger, lot: usize) -> bool {
    let lots = &board.site().lots;
    let mut lesser: Vec<usize> = (0..lots.len())
        .filter(|&o| {
            lots[o].fixed.is_none()
                && board.place(o).is_some()
                && lots[o].off_cart < lots[lot].off_cart
        })
        .collect();
    lesser.sort_by_key(|&o| (lots[o].off_cart, o));
    for other in lesser {
        let Some(there) = board.place(other).copied() else { continue };
        let space = |s: u32| board.site().surfaces[s as usize].space;
        let room = space(there.home.surface);
        let homes: Vec<Home> =
            lots[lot].homes.iter().filter(|h| space(h.surface) == room).copied().collect();
        if homes.is_empty() {
            continue;
        }
        let before = ledger.score();
        keep(board, ledger, Change { lot: other, to: None });
        let seated = best_place(board, ledger, lot, &homes);
        if seated {
            let again = lots[other].homes.clone();
            best_place(board, ledger, other, &again);
        }
        if seated && ledger.score() < before {
            return true;
        }
        keep(board, ledger, Change { lot, to: None });
        keep(board, ledger, Change { lot: other, to: Some(there) });
    }
    false
}
