//! The exact search for small carts: every layout of corner places that could still cost less is tried.
//!
//! First every lot is given a home, as long as the bound (`bound/`) leaves room under the best cost known; then, space by
//! space, the lots are put one after another, in every order, into every corner place of their homes: pushed along both
//! axes against an edge, a board or a thing that is already there. A branch is left where what is placed, each thing as
//! it stands, and the rest at best already cost as much as the best known. Effort is counted in nodes.

use super::bound::left_to_try;
use crate::score::{COSTS, Ledger, Score, Undo};
use crate::site::{
    Board, Change, Clearing, Home, Place, ShelfBoard, Site, Touched, for_each_corner,
};
use crate::units::{Length, Price};
use std::collections::BTreeSet;

/// Most lots of a cart that is searched so.
const MOST_LOTS: usize = 16;

/// What the exact search came to.
#[derive(Clone, Debug)]
pub struct Exact {
    /// A better layout than the known one, where there is one.
    pub better: Option<(Vec<Option<Place>>, Score)>,
    /// Whether every corner place was exhausted: then no layout of corner places costs less.
    pub exhausted: bool,
    /// How many nodes it took.
    pub nodes: u64,
}

/// Searches a cart of few lots within so many nodes; nothing where the question is of another kind: something can be left
/// out, is fixed, or a shelf may be moved.
pub fn exact(site: &Site, known: &Score, nodes: u64) -> Option<Exact> {
    let homeless = site.lots.iter().filter(|l| l.homes.is_empty());
    let left_out: Price = homeless.map(|l| l.off_cart).sum();
    let plain = site.lots.iter().all(|l| l.fixed.is_none() && l.off_cart > Price::ZERO);
    let small = site.lots.len() <= MOST_LOTS && !site.boards.iter().any(ShelfBoard::moves);
    if !small || !plain || known.broken > 0 || known.off_cart != left_out.as_us() {
        return None;
    }
    let board = Board::new(site);
    let mut tree = Tree {
        ledger: Ledger::new(&board),
        board,
        best: *known,
        places: None,
        left: nodes,
        touched: Touched::default(),
        clearing: Clearing::default(),
        spaces: vec![Vec::new(); site.spaces.len()],
    };
    for (least, mut lots) in left_to_try(site, Price::us(known.cost)) {
        lots.sort_by_key(|(lot, homes)| (homes.len(), *lot));
        tree.house(&lots, least);
    }
    let better = tree.places.map(|places| (places, tree.best));
    Some(Exact { better, exhausted: tree.left > 0, nodes: nodes - tree.left })
}

/// A lot with a home, and what it costs there at least.
#[derive(Clone, Copy)]
struct Housed {
    lot: usize,
    home: Home,
    least: i64,
}

/// The tree that is searched.
struct Tree<'s> {
    board: Board<'s>,
    ledger: Ledger,
    best: Score,
    places: Option<Vec<Option<Place>>>,
    /// Nodes that may still be looked at.
    left: u64,
    touched: Touched,
    clearing: Clearing,
    /// For each space, the lots that were given a home there.
    spaces: Vec<Vec<Housed>>,
}

impl<'s> Tree<'s> {
    fn spend(&mut self) -> bool {
        self.left = self.left.saturating_sub(1);
        self.left > 0
    }

    /// Gives the first of some lots each of its homes under which the bound is still under the best cost.
    fn house(&mut self, lots: &[(usize, Vec<(Home, f64)>)], least: f64) {
        if !self.spend() {
            return;
        }
        let Some(((lot, homes), rest)) = lots.split_first() else {
            self.place_all();
            return;
        };
        for (home, dearer) in homes {
            let within = least + dearer < self.best.cost as f64;
            if within && self.in_order(*lot, home) && self.has_area(home) {
                let site = self.board.site();
                let space = site.surfaces[home.surface as usize].space;
                let own = COSTS.iter().filter(|c| c.scope.is_of_a_lot());
                let cost: Price = own.map(|card| (card.least)(site, *lot, home)).sum();
                let housed = Housed { lot: *lot, home: *home, least: cost.as_us() };
                self.spaces[space].push(housed);
                self.house(rest, least + dearer);
                self.spaces[space].pop();
            }
        }
    }

    /// Of lots that are alike, whether the one before has no later home: the same layout with both exchanged is not
    /// looked at again.
    fn in_order(&self, lot: usize, home: &Home) -> bool {
        let lots = &self.board.site().lots;
        let key = |l: usize| (lots[l].item, lots[l].copies, lots[l].uses);
        let place = |h: &Home| (h.surface, h.form);
        let housed = self.spaces.iter().flatten();
        housed.filter(|o| key(o.lot) == key(lot)).all(|o| {
            if o.lot < lot { place(&o.home) <= place(home) } else { place(&o.home) >= place(home) }
        })
    }

    fn has_area(&self, home: &Home) -> bool {
        let surface = &self.board.site().surfaces[home.surface as usize];
        let there = self.spaces[surface.space].iter().filter(|o| o.home.surface == home.surface);
        there.map(|o| o.home.area).sum::<i64>() + home.area <= surface.area
    }

    /// Tries all corner places of all lots in their homes.
    fn place_all(&mut self) {
        let queue: Vec<Vec<Housed>> =
            self.spaces.iter().filter(|s| !s.is_empty()).cloned().collect();
        let all: i64 = queue.iter().flatten().map(|h| h.least).sum();
        let mut seen = vec![BTreeSet::new(); queue.len()];
        self.place(&queue, 0, &mut seen, all);
    }

    /// Puts a lot of the n-th space after those that are there; `rest` is what the lots without a place cost at least.
    fn place(
        &mut self,
        queue: &[Vec<Housed>],
        n: usize,
        seen: &mut [BTreeSet<Vec<Spot>>],
        rest: i64,
    ) {
        if !self.spend() {
            return;
        }
        let Some(space) = queue.get(n) else {
            let score = self.ledger.score();
            if score < self.best {
                self.best = score;
                self.places = Some(self.board.places().to_vec());
            }
            return;
        };
        let waiting: Vec<Housed> =
            space.iter().filter(|h| self.board.place(h.lot).is_none()).copied().collect();
        if waiting.is_empty() {
            if let Some(next) = seen.get_mut(n + 1) {
                next.clear();
            }
            self.place(queue, n + 1, seen, rest);
            return;
        }
        for housed in waiting {
            let mut corners = Vec::new();
            for_each_corner(&self.board, housed.lot, &housed.home, &mut self.clearing, |place| {
                corners.push(place);
                true
            });
            for place in corners {
                self.put(housed.lot, Some(place));
                let rest = rest - housed.least;
                if self.placed() + rest < self.best.cost && seen[n].insert(self.spots(space)) {
                    self.place(queue, n, seen, rest);
                }
                self.put(housed.lot, None);
            }
        }
    }

    fn put(&mut self, lot: usize, to: Option<Place>) {
        self.touched.clear();
        self.board.apply(Change { lot, to }, &mut self.touched);
        self.ledger.follow(&self.board, &self.touched, &mut Undo::default());
    }

    /// What the fetches and places of all that is placed cost.
    fn placed(&self) -> i64 {
        let own = (0..COSTS.len()).filter(|&c| COSTS[c].scope.is_of_a_lot());
        own.map(|c| self.ledger.term(c).as_us()).sum()
    }

    fn spots(&self, space: &[Housed]) -> Vec<Spot> {
        let spot = |h: &Housed| self.board.place(h.lot).map(|p| (h.lot, p.space.min));
        space.iter().filter_map(spot).collect()
    }
}

/// A lot and where the least corner of its box is.
type Spot = (usize, [Length; 3]);
