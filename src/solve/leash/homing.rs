//! A layout freed of moves that gain nothing.

use super::Held;
use crate::score::Ledger;
use crate::site::{Board, Change, Clearing, Place, Site, Touched, fits_at};
use crate::solve::trial;

/// The same layout with no move that gains nothing: copies alike stay where one of them was, and what can go back at no
/// cost does. Never worse by score.
pub fn homing(site: &Site, old: &[Option<Place>], places: Vec<Option<Place>>) -> Held {
    let plain = Held::new(site, old, places);
    let mut board = Board::with(site, &exchanged(site, old, &plain.places));
    let mut ledger = Ledger::new(&board);
    let mut clearing = Clearing::default();
    for (l, was) in old.iter().enumerate() {
        let Some(was) = was.filter(|was| board.place(l) != Some(was)) else { continue };
        let back = Change { lot: l, to: Some(was) };
        let may = site.lots[l].fixed.is_none() && fits_at(&board, l, &was, &mut clearing);
        if may && trial(&mut board, &mut ledger, &[back]) <= ledger.score() {
            board.apply(back, &mut Touched::default());
            ledger = Ledger::new(&board);
        }
    }
    let settled = Held::new(site, old, board.places().to_vec());
    if settled.score <= plain.score { settled } else { plain }
}

/// Copies alike change names, so that each that can is where it was.
fn exchanged(site: &Site, old: &[Option<Place>], places: &[Option<Place>]) -> Vec<Option<Place>> {
    let mut places = places.to_vec();
    for (l, was) in old.iter().enumerate() {
        let one = &site.lots[l];
        if was.is_none() || places[l] == *was || one.fixed.is_some() {
            continue;
        }
        let twin = (0..places.len()).find(|&m| {
            let other = &site.lots[m];
            let alike = one.item == other.item && one.copies == other.copies;
            alike && other.fixed.is_none() && places[m] == *was
        });
        if let Some(m) = twin {
            places.swap(l, m);
        }
    }
    places
}
