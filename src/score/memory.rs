//! What lots cost and break by themselves, where they are and where they last were, so that it is not weighed again.

use super::Scope;
use super::cost::COSTS;
use super::ledger::{Worth, concerns};
use super::rule::RULES;
use super::tally::Tally;
use super::view::{Closure, View};
use crate::site::{Board, Place, Site, Stand};

/// The costs of a lot by itself, numbered.
pub(super) const OWN_COSTS: [Option<usize>; COSTS.len()] = {
    let mut own = [None; COSTS.len()];
    let (mut c, mut n) = (0, 0);
    while c < COSTS.len() {
        if matches!(COSTS[c].scope, Scope::Way) {
            own[c] = Some(n);
            n += 1;
        }
        c += 1;
    }
    own
};

/// How many of them there are.
const COUNT: usize = {
    let (mut c, mut n) = (0, 0);
    while c < COSTS.len() {
        if OWN_COSTS[c].is_some() {
            n += 1;
        }
        c += 1;
    }
    n
};

/// Most rules that are about a lot by itself.
const MOST: usize = {
    let (mut r, mut n) = (0, 0);
    while r < RULES.len() {
        if matches!(RULES[r].scope, Scope::Way) {
            n += 1;
        }
        r += 1;
    }
    n
};

/// What a lot costs and breaks by itself, taken by one way.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct ByItself {
    /// Prices of its own costs.
    pub costs: [i64; COUNT],
    /// By how much it breaks the rules that are about it, in their order.
    pub excesses: [i64; MOST],
}

impl ByItself {
    /// What the way is worth by that.
    pub fn worth(&self) -> Worth {
        Worth::new(&self.excesses, &self.costs)
    }
}

/// Two places of a lot with what it costs there by each way.
#[derive(Clone, Copy, Debug, Default)]
struct Two {
    at: [Option<Place>; 2],
    by_itself: [[ByItself; 2]; 2],
    /// Which of the two was asked for last.
    last: usize,
}

/// What all lots cost by themselves, where they are and where they last were.
///
/// It is right whatever moved or was taken back, as it is kept by place.
#[derive(Clone, Debug, Default)]
pub(super) struct Memory {
    two: Vec<Two>,
    about: Vec<Vec<u8>>,
}

impl Memory {
    /// Nothing is remembered yet.
    pub fn new(site: &Site) -> Memory {
        Memory {
            two: vec![Two::default(); site.lots.len()],
            about: (0..site.lots.len()).map(|l| concerns(site, l, Scope::Way)).collect(),
        }
    }

    /// The rules that are about a lot by itself, as indices.
    #[inline]
    pub fn about(&self, lot: usize) -> &[u8] {
        &self.about[lot]
    }

    /// What a lot costs where it is by each of its ways; nothing off the cart.
    #[inline]
    pub fn recall(
        &mut self,
        board: &Board,
        lot: usize,
        tally: &Tally,
        stand: &Stand,
    ) -> [ByItself; 2] {
        let Some(place) = board.place(lot) else { return <[ByItself; 2]>::default() };
        let two = &mut self.two[lot];
        for k in [two.last, 1 - two.last] {
            if two.at[k].as_ref() == Some(place) {
                two.last = k;
                return two.by_itself[k];
            }
        }
        let k = 1 - two.last;
        two.last = k;
        two.at[k] = Some(*place);
        two.by_itself[k] = weigh(board, lot, tally, stand, &self.about[lot]);
        two.by_itself[k]
    }
}

fn weigh(board: &Board, lot: usize, tally: &Tally, stand: &Stand, about: &[u8]) -> [ByItself; 2] {
    let closure = Closure::default();
    let ways = board.space_of(lot).map_or(1, |s| board.site().spaces[s].ways.len());
    let mut both = <[ByItself; 2]>::default();
    for (way, by_itself) in both.iter_mut().enumerate().take(ways) {
        let view = View { lot, way, ..View::of_cart(board, tally, stand, &closure) };
        for (card, own) in COSTS.iter().zip(OWN_COSTS) {
            if let Some(n) = own {
                by_itself.costs[n] = (card.weigh)(&view).as_us();
            }
        }
        for (excess, &r) in by_itself.excesses.iter_mut().zip(about) {
            *excess = (RULES[usize::from(r)].excess)(&view);
        }
    }
    both
}
