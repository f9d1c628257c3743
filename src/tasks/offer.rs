//! Slots on offer: where a lot could go as the cart stands, what would have to make room for it, and what that costs
//! in all.
//!
//! A free corner place asks nobody to move. Where one or two things stand in a corner place, they are put into the best
//! places that are then left, the vacated one among them. Everything that is offered is legal: no rule is broken by it
//! that was kept before, and none that was broken gets worse. Every price is the difference of the whole score.

mod words;

pub use words::{Named, Spot};

use crate::domain::{Layout, Workspace};
use crate::score::{Ledger, RULES, Score, Undo, least_price, way_prices};
use crate::site::{Board, Change, Clearing, Home, Place, Touched, fits_at, for_each_corner};
use crate::solve::corners;
use crate::units::{Price, Time};

/// How many of the most promising places that others stand in are weighed to the end.
const PROMISING: usize = 200;
/// How many places that the same things stand in are looked at.
const ALIKE: usize = 3;
/// How many places a thing that makes room is tried at, beside those that became free.
const FEW: usize = 8;

/// A slot that a lot could have.
#[derive(Clone, Debug)]
pub(crate) struct Offer {
    /// Where it would be.
    pub to: Place,
    /// Who makes room, and where each goes; `None` is off the cart.
    pub others: Vec<(usize, Option<Place>)>,
    /// The score of the whole layout then.
    pub score: Score,
    /// The score as it stands, less what those who make room would gain by moving alone, where they can: that is no merit
    /// of the slot. What their moving costs is not taken off.
    pub base: Score,
}

impl Offer {
    /// What the slot itself brings: nobody off the cart, then rules, the cart, seconds, and as few moved as can be.
    pub fn merit(&self) -> (bool, i64, i64, i64, usize) {
        let (then, base) = (&self.score, &self.base);
        (
            self.others.iter().any(|(_, to)| to.is_none()),
            then.broken - base.broken,
            then.off_cart - base.off_cart,
            then.cost - base.cost,
            self.others.len(),
        )
    }
    /// Whether taking it is better than staying, and better than only letting the others move.
    pub fn is_gain(&self, now: Score) -> bool {
        self.score < now && self.score < self.base
    }
    /// All changes, those that make room first.
    pub fn changes(&self, lot: usize) -> Vec<Change> {
        let leave = self.others.iter().map(|&(lot, _)| Change { lot, to: None });
        let come = std::iter::once(Change { lot, to: Some(self.to) });
        let settle = self.others.iter().map(|&(lot, to)| Change { lot, to });
        leave.chain(come).chain(settle).collect()
    }
}

/// How much may be asked of others to make room.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Ask {
    /// Most others that make room: nought, one or two.
    pub others: usize,
    /// Whether they may leave the cart where they find no place.
    pub may_leave: bool,
}

/// A board with its ledger, and the slots that it offers.
#[derive(Clone)]
pub(crate) struct Fitter<'s> {
    /// The board.
    pub board: Board<'s>,
    /// Its prices and rules.
    pub ledger: Ledger,
}

/// A place that others stand in, before it is weighed.
struct Taken {
    to: Place,
    others: Vec<usize>,
    guess: Price,
}

impl<'s> Fitter<'s> {
    /// A board as it stands.
    pub fn new(board: Board<'s>) -> Fitter<'s> {
        let ledger = Ledger::new(&board);
        Fitter { board, ledger }
    }

    /// Makes changes and keeps them.
    pub fn make(&mut self, changes: &[Change]) {
        let (mut touched, mut undo) = (Touched::default(), Undo::default());
        for change in changes {
            self.board.apply(*change, &mut touched);
        }
        self.ledger.follow(&self.board, &touched, &mut undo);
    }

    /// The score after some changes, where they break nothing that a ledger of the same site keeps; they are taken back.
    fn weigh_against(&mut self, changes: &[Change], before: &Ledger) -> Option<Score> {
        let (mut touched, mut undo) = (Touched::default(), Undo::default());
        touched.clear();
        let back: Vec<Change> =
            changes.iter().map(|c| self.board.apply(*c, &mut touched)).collect();
        self.ledger.follow(&self.board, &touched, &mut undo);
        let score = self.ledger.score();
        let kept = score.broken <= before.score().broken && keeps(before, &self.ledger);
        for change in back.into_iter().rev() {
            self.board.apply(change, &mut touched);
        }
        self.ledger.undo(&undo);
        kept.then_some(score)
    }

    /// The legal slots of a lot other than its own, the best for the whole score first.
    pub fn offers(&mut self, lot: usize, ask: Ask) -> Vec<Offer> {
        let mut all = self.free(lot);
        if ask.others > 0 {
            let taken = self.taken(lot, ask.others);
            all.extend(taken.iter().filter_map(|t| self.make_room(lot, t, ask.may_leave)));
        }
        all.sort_by_key(Offer::merit);
        all
    }

    /// The free corner places that break nothing.
    fn free(&mut self, lot: usize) -> Vec<Offer> {
        let site = self.board.site();
        let places = corners(&self.board, lot, &site.lots[lot].homes);
        let here = self.board.place(lot).copied();
        let before = self.ledger.clone();
        let mut all = Vec::new();
        for to in places.into_iter().filter(|p| Some(*p) != here) {
            let score = self.weigh_against(&[Change { lot, to: Some(to) }], &before);
            all.extend(score.map(|score| Offer {
                to,
                others: Vec::new(),
                score,
                base: before.score(),
            }));
        }
        all
    }

    /// The first free corner place, the easiest to walk and reach to, that breaks nothing.
    pub fn first_free(&mut self, lot: usize) -> Option<Place> {
        let site = self.board.site();
        let before = self.ledger.clone();
        corners(&self.board, lot, &site.lots[lot].homes)
            .into_iter()
            .find(|&to| self.weigh_against(&[Change { lot, to: Some(to) }], &before).is_some())
    }

    /// The places that one or two others stand in, the most promising first.
    fn taken(&mut self, lot: usize, most: usize) -> Vec<Taken> {
        let regrets: Vec<Option<Price>> =
            (0..self.board.site().lots.len()).map(|l| self.regret(l, lot)).collect();
        let mut all = Vec::new();
        let mut clear = self.board.clone();
        clear.apply(Change { lot, to: None }, &mut Touched::default());
        for space in 0..self.board.site().spaces.len() {
            let homes = homes_in(&self.board, lot, space);
            if homes.is_empty() {
                continue;
            }
            for others in self.groups(space, lot, most, &regrets) {
                all.extend(places_of(&clear, lot, &others, &homes, &regrets));
            }
        }
        all.sort_by_key(|t| (t.guess, t.others.len()));
        all.truncate(PROMISING);
        all
    }

    /// The sets of movable things in a space, up to so many.
    fn groups(
        &self,
        space: usize,
        lot: usize,
        most: usize,
        regrets: &[Option<Price>],
    ) -> Vec<Vec<usize>> {
        let site = self.board.site();
        let near = std::iter::once(space).chain(site.spaces[space].near.iter().copied());
        let mut one: Vec<usize> =
            near.flat_map(|s| self.board.members(s)).map(|&m| m as usize).collect();
        one.retain(|&m| m != lot && regrets[m].is_some());
        one.sort_unstable();
        let mut all: Vec<Vec<usize>> = one.iter().map(|&m| vec![m]).collect();
        for (k, &a) in one.iter().enumerate().filter(|_| most > 1) {
            all.extend(one[k + 1..].iter().map(|&b| vec![a, b]));
        }
        all
    }

    /// What it would cost a thing, roughly, to lose its place: its easiest other place, or one on the surface that
    /// `lot` leaves, less what it costs now. `None` for what may not be moved.
    fn regret(&self, other: usize, lot: usize) -> Option<Price> {
        let site = self.board.site();
        let l = &site.lots[other];
        let here = self.board.place(other)?;
        if l.fixed.is_some() {
            return None;
        }
        let own = |p: &Place| own_price(&self.board, other, p);
        let free = corners(&self.board, other, &l.homes).first().map_or(l.off_cart, own);
        let left = self.board.place(lot).map(|p| p.home.surface);
        let swap = l.homes.iter().filter(|h| Some(h.surface) == left);
        let best = swap.map(|h| least_price(site, other, h)).fold(free, Price::min);
        Some(best - own(here))
    }

    /// Puts a lot where others stand and finds them the best places that are left.
    fn make_room(&mut self, lot: usize, taken: &Taken, may_leave: bool) -> Option<Offer> {
        let mut then = self.clone();
        let left = then.board.place(lot).map(|p| p.home.surface);
        let mut changes: Vec<Change> =
            taken.others.iter().map(|&lot| Change { lot, to: None }).collect();
        changes.push(Change { lot, to: Some(taken.to) });
        then.make(&changes);
        let mut order = taken.others.clone();
        order.sort_by_key(|&l| (std::cmp::Reverse(self.board.site().lots[l].off_cart), l));
        let mut others = Vec::new();
        for other in order {
            let mut free = vec![self.board.place(other)?.home.surface];
            free.extend(left);
            let to = then.reseat(other, &free);
            if to.is_none() && !may_leave {
                return None;
            }
            then.make(&[Change { lot: other, to }]);
            others.push((other, to));
        }
        let unmoved = others.iter().any(|&(l, to)| to.as_ref() == self.board.place(l));
        let legal = keeps(&self.ledger, &then.ledger) && !unmoved;
        legal.then(|| {
            let base = self.without(&others);
            Offer { to: taken.to, others, score: then.ledger.score(), base }
        })
    }

    /// The score as it stands, or better in what these gain by moving alone, where nothing else need move for it.
    fn without(&mut self, others: &[(usize, Option<Place>)]) -> Score {
        let now = self.ledger.score();
        if others.iter().any(|(_, to)| to.is_none()) {
            return now;
        }
        let changes: Vec<Change> = others.iter().map(|&(lot, to)| Change { lot, to }).collect();
        let then = self.weigh_against(&changes, &self.ledger.clone()).unwrap_or(now);
        Score {
            broken: then.broken.min(now.broken),
            off_cart: then.off_cart.min(now.off_cart),
            cost: then.cost.min(now.cost),
            excess: then.excess.min(now.excess),
        }
    }

    /// The best place for a thing that lost its own: the easiest few, and all on these surfaces.
    fn reseat(&mut self, lot: usize, surfaces: &[u32]) -> Option<Place> {
        let site = self.board.site();
        let places = corners(&self.board, lot, &site.lots[lot].homes);
        let near = |p: &Place| surfaces.contains(&p.home.surface);
        let before = self.ledger.clone();
        let mut best: Option<(Score, Place)> = None;
        let mut tried = 0;
        for place in places {
            if tried >= FEW && !near(&place) {
                continue;
            }
            let Some(score) = self.weigh_against(&[Change { lot, to: Some(place) }], &before)
            else {
                continue;
            };
            tried += 1;
            if best.as_ref().is_none_or(|b| score < b.0) {
                best = Some((score, place));
            }
        }
        best.map(|b| b.1)
    }
}

/// Whether every rule that is kept by one ledger is kept by the other, and what is broken gets no worse.
fn keeps(before: &Ledger, after: &Ledger) -> bool {
    RULES.iter().enumerate().all(|(r, _)| {
        (0..after.rule_subjects(r)).all(|s| after.excess(r, s) <= before.excess(r, s))
    })
}

/// What a lot pays for walking and reaching at a place, blind to what stands before it.
pub(crate) fn own_price(board: &Board, lot: usize, place: &Place) -> Price {
    let each = way_prices(board.site(), lot, place).map(|(_, t)| t).min();
    board.site().lots[lot].uses.cost(each.unwrap_or(Time::s(100_000)))
}

fn homes_in(board: &Board, lot: usize, space: usize) -> Vec<Home> {
    let site = board.site();
    let here = |h: &&Home| site.surfaces[h.surface as usize].space == space;
    site.lots[lot].homes.iter().filter(here).copied().collect()
}

/// The corner places that a lot could have where these others stand, were they away; only those that need all of them
/// away.
fn places_of(
    clear: &Board,
    lot: usize,
    others: &[usize],
    homes: &[Home],
    regrets: &[Option<Price>],
) -> Vec<Taken> {
    let mut board = clear.clone();
    for &other in others {
        board.apply(Change { lot: other, to: None }, &mut Touched::default());
    }
    let mut clearing = Clearing::default();
    let mut places: Vec<(Price, Place)> = Vec::new();
    for home in homes {
        for_each_corner(&board, lot, home, &mut clearing, |place| {
            places.push((own_price(&board, lot, &place), place));
            true
        });
    }
    places.sort_by_key(|p| p.0);
    let regret: Price = others.iter().filter_map(|&o| regrets[o]).sum();
    let mut all = Vec::new();
    for (price, to) in places {
        if all.len() < ALIKE && needs_all(&mut board, clear, lot, &to, others) {
            all.push(Taken { to, others: others.to_vec(), guess: price + regret });
        }
    }
    all
}

/// Whether a place is free only with every one of the others away.
fn needs_all(without: &mut Board, with: &Board, lot: usize, to: &Place, others: &[usize]) -> bool {
    let mut clearing = Clearing::default();
    others.iter().all(|&other| {
        let back = with.place(other).copied();
        without.apply(Change { lot: other, to: back }, &mut Touched::default());
        let free = fits_at(without, lot, to, &mut clearing);
        without.apply(Change { lot: other, to: None }, &mut Touched::default());
        !free
    })
}

/// The layout of a board with every position said.
pub(crate) fn said(board: &Board, ledger: &Ledger, workspace: &Workspace) -> Layout {
    super::tell::plan(board, ledger, workspace).layout
}

/// What a lot itself pays, over all terms that are told lot by lot.
pub(crate) fn lot_price(ledger: &Ledger, lot: usize) -> Price {
    crate::score::COSTS
        .iter()
        .enumerate()
        .filter(|(_, card)| card.scope.is_of_a_fetch())
        .map(|(c, _)| ledger.cost(c, lot))
        .sum()
}
