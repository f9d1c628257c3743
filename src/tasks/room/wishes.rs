//! A wish list, tried in order of value.

use super::{Wish, lots_from, standing_with};
use crate::domain::{Item, Layout, Workspace};
use crate::finding::Finding;
use crate::site::{Board, Place};
use crate::tasks::offer::{Ask, Fitter, Named, Offer, Spot};
use crate::tasks::tell;
use crate::units::Price;

/// Tries the wishes in order of value, each given those before.
pub(super) fn tried(
    workspace: &Workspace,
    now: &Layout,
    wishes: &[Item],
) -> Result<Vec<Wish>, Vec<Finding>> {
    if wishes.is_empty() {
        return Ok(Vec::new());
    }
    let stands = standing_with(workspace, now, wishes)?;
    let mut wider = workspace.clone();
    wider.items.extend(wishes.iter().cloned());
    let mut fitter = Fitter::new(Board::with(&stands.site, &stands.places));
    let mut lots = lots_from(&stands, workspace.items.len());
    lots.sort_by_key(|&l| (std::cmp::Reverse(stands.site.lots[l].off_cart), l));
    Ok(lots.into_iter().map(|l| wish(&wider, &mut fitter, l)).collect())
}

/// Tries a wish: a free place, else one other moved, else two.
fn wish(workspace: &Workspace, fitter: &mut Fitter, lot: usize) -> Wish {
    let before = fitter.ledger.score();
    let offer = (0..=2).find_map(|others| {
        let all = fitter.offers(lot, Ask { others, may_leave: false });
        all.into_iter().find(|o| o.score.broken <= before.broken)
    });
    let mut wish = Wish {
        named: Named::of(&fitter.board, lot),
        value: fitter.board.site().lots[lot].off_cart,
        to: None,
        moved: Vec::new(),
        costs: Price::ZERO,
        miss: None,
    };
    match offer {
        Some(offer) => take(fitter, lot, &offer, &mut wish),
        None => wish.miss = Some(miss(workspace, fitter, lot)),
    }
    wish
}

fn take(fitter: &mut Fitter, lot: usize, offer: &Offer, wish: &mut Wish) {
    let before = fitter.ledger.score();
    fitter.make(&offer.changes(lot));
    let board = &fitter.board;
    wish.to = Some(Spot::of(board, lot, &offer.to));
    wish.costs = Price::us(offer.score.cost - before.cost);
    let gone =
        |&(l, to): &(usize, Option<Place>)| Some((Named::of(board, l), Spot::of(board, l, &to?)));
    wish.moved = offer.others.iter().filter_map(gone).collect();
}

/// Why a wish does not fit.
fn miss(workspace: &Workspace, fitter: &Fitter, lot: usize) -> String {
    let site = fitter.board.site();
    let l = &site.lots[lot];
    let told = tell::plan(&fitter.board, &fitter.ledger, workspace);
    let name = &site.items[l.item].name;
    let mine = told.left_out.into_iter().find(|o| o.copy.item == *name && o.copy.copy == l.first);
    mine.map_or_else(String::new, |o| o.why)
}
