//! Where everything lives, face by face and slot by slot.

use crate::domain::Entry;
use crate::finding::Span;
use crate::score::{Closure, Ledger, parts};
use crate::site::{Board, Change, Place, SpaceKind, corner_of, local};
use crate::solve::trial;
use crate::tasks::outcome::{Copy, Placement, TermPart, Zone};
use crate::units::{Price, Time};
use std::cmp::Reverse;

/// How many of those that earn their place least are named.
const LEAST: usize = 3;

/// The lots on the cart in the order in which they are told: face by face, surface by surface from the top down, on each
/// from the viewer's left, with their numbers on their face.
pub(super) fn order(board: &Board) -> Vec<(usize, u32)> {
    let site = board.site();
    let mut lots: Vec<usize> = (0..site.lots.len()).filter(|&l| board.place(l).is_some()).collect();
    lots.sort_by_cached_key(|&l| {
        let place =
            board.place(l).copied().unwrap_or_else(|| unreachable!("only placed lots are listed"));
        let s = place.home.surface as usize;
        let face = site.spaces[site.surfaces[s].space].face;
        let seen = local(face, site.size, &place.space);
        let free = board.free(s);
        (face, Reverse(free.min[2]), s, seen[0][0], Reverse(seen[1][0]), seen[2][0], l)
    });
    let mut numbered: Vec<(usize, u32)> = Vec::with_capacity(lots.len());
    let (mut last, mut slot) = (None, 0);
    for l in lots {
        let face = board.space_of(l).map(|s| site.spaces[s].face);
        slot = if face == last { slot + 1 } else { 1 };
        last = face;
        numbered.push((l, slot));
    }
    numbered
}

pub(super) fn placements(board: &Board, ledger: &Ledger, order: &[(usize, u32)]) -> Vec<Placement> {
    order
        .iter()
        .filter_map(|&(l, slot)| board.place(l).map(|place| one(board, ledger, l, slot, place)))
        .collect()
}

fn one(board: &Board, ledger: &Ledger, l: usize, slot: u32, place: &Place) -> Placement {
    let site = board.site();
    let lot = &site.lots[l];
    let item = &site.items[lot.item];
    let surface = &site.surfaces[place.home.surface as usize];
    let space = &site.spaces[surface.space];
    let way = space.ways[ledger.way(l)];
    let form = &lot.forms[place.home.form as usize];
    let grip = lot.grip(site, place, ledger.way(l));
    let terms: Vec<TermPart> = parts(board, ledger, l)
        .into_iter()
        .map(|p| TermPart { term: p.term, price: p.price, told: p.told })
        .collect();
    let per_week: Price = terms.iter().map(|t| t.price).sum();
    let uses = lot.uses.as_nano().max(1);
    let per_fetch = i128::from(per_week.as_us()) * 1_000_000_000 / i128::from(uses);
    Placement {
        item: item.name.clone(),
        copy: lot.first,
        copies: lot.copies,
        of: item.count,
        face: space.face,
        way,
        bay: space.name.clone(),
        surface: surface.name.clone(),
        slot,
        pose: form.pose,
        turned: form.turned,
        space: place.space,
        grip_height: grip.height,
        zone: Zone::from(site.body.posture(&grip)),
        moved_first: moved_first(board, ledger, l),
        weight: lot.mass,
        uses: lot.uses,
        per_fetch: Time::us(if lot.uses.as_nano() == 0 { 0 } else { per_fetch as i64 }),
        per_week,
        terms,
        holds: item.holds.clone(),
        family: item.family.clone(),
        hazards: item.hazards,
        guarded: item.guarded,
        inside: item.inside.clone(),
        urgent: item.urgent,
        fixed: item.fixed,
    }
}

/// What must be moved first, in the order of removal; piles and rows by their first copy.
fn moved_first(board: &Board, ledger: &Ledger, l: usize) -> Vec<Copy> {
    let site = board.site();
    let Some(s) = board.space_of(l) else { return Vec::new() };
    if !site.lots[l].is_fetched(&site.items) || site.spaces[s].kind == SpaceKind::Bench {
        return Vec::new();
    }
    let way = ledger.way(l);
    let mut closure = Closure::default();
    closure.find(board, l, way);
    let mut lots = closure.order(board, site.spaces[s].ways[way]);
    // Those of a ring have no order; they are told all the same.
    let mut rest: Vec<u32> = closure.lots.iter().copied().filter(|l| !lots.contains(l)).collect();
    rest.sort_unstable();
    lots.extend(rest);
    let copy = |&o: &u32| {
        let lot = &site.lots[o as usize];
        Copy { item: site.items[lot.item].name.clone(), copy: lot.first }
    };
    lots.iter().map(copy).collect()
}

/// The placements that earn their place least: what each would cost a week off the cart, less what its place costs now.
pub(super) fn earning_least(
    board: &Board,
    ledger: &Ledger,
    order: &[(usize, u32)],
) -> Vec<(usize, Price)> {
    let site = board.site();
    let (mut board, mut ledger) = (board.clone(), ledger.clone());
    let before = ledger.score();
    let mut all: Vec<(Price, usize)> = Vec::new();
    for (n, &(l, _)) in order.iter().enumerate() {
        let lot = &site.lots[l];
        if lot.fixed.is_some() || site.items[lot.item].urgent {
            continue;
        }
        let without = trial(&mut board, &mut ledger, &[Change { lot: l, to: None }]);
        all.push((lot.off_cart - Price::us(before.cost - without.cost), n));
    }
    all.sort_unstable();
    all.truncate(LEAST);
    all.into_iter().map(|(earned, n)| (n, earned)).collect()
}

/// The layout as a file says it.
pub(super) fn entries(board: &Board, order: &[(usize, u32)]) -> Vec<Entry> {
    let site = board.site();
    order
        .iter()
        .filter_map(|&(l, _)| board.place(l).map(|p| (l, p)))
        .map(|(l, place)| {
            let lot = &site.lots[l];
            let s = place.home.surface as usize;
            let space = &site.spaces[site.surfaces[s].space];
            let form = &lot.forms[place.home.form as usize];
            Entry {
                item: site.items[lot.item].name.clone(),
                copy: lot.first,
                copies: lot.copies,
                face: Some(space.face),
                bay: space.name.clone(),
                surface: Some(site.surfaces[s].name.clone()),
                pose: Some(form.pose),
                turned: Some(form.turned),
                at: Some(corner_of(site, s, board.free(s), &place.space)),
                span: Span::none(),
            }
        })
        .collect()
}
