//! The ledger in words: what each lot's place costs and why, and what is broken.

use super::Scope;
use super::cost::COSTS;
use super::ledger::Ledger;
use super::rule::{Against, RULES};
use super::view::{Closure, View};
use crate::site::{Board, Stand};
use crate::units::Price;

/// One lot's part in a term.
#[derive(Clone, Debug)]
pub struct Part {
    /// The term.
    pub term: &'static str,
    /// What it costs.
    pub price: Price,
    /// Why.
    pub told: String,
}

/// A broken rule.
#[derive(Clone, Debug)]
pub struct BrokenRule {
    /// Its name.
    pub rule: &'static str,
    /// The lots concerned.
    pub lots: Vec<u32>,
    /// What is wrong.
    pub told: String,
    /// Value and limit.
    pub against: Against,
    /// Where the limit comes from.
    pub source: &'static str,
}

/// A lot's part in every term that is told lot by lot.
pub fn parts(board: &Board, ledger: &Ledger, lot: usize) -> Vec<Part> {
    let stand = board.stand();
    let mut closure = Closure::default();
    closure.find(board, lot, ledger.way(lot));
    let way = ledger.way(lot);
    let view = View { lot, way, ..View::of_cart(board, ledger.tally(), &stand, &closure) };
    COSTS
        .iter()
        .enumerate()
        .filter(|(_, card)| card.scope.is_of_a_fetch())
        .map(|(c, card)| Part {
            term: card.name,
            price: ledger.cost(c, lot),
            told: (card.tell)(&view),
        })
        .collect()
}

/// What a lot has a part in beside its fetches and that costs something: each told whole, with all that it costs.
pub fn ties(board: &Board, ledger: &Ledger, lot: usize) -> Vec<Part> {
    let dear = ledger.ties(board.site(), lot).filter(|&(c, n)| ledger.cost(c, n) > Price::ZERO);
    dear.map(|(c, n)| subject(board, ledger, c, n)).collect()
}

/// One subject's part in a term.
pub fn subject(board: &Board, ledger: &Ledger, card: usize, subject: usize) -> Part {
    let stand = board.stand();
    let scope = COSTS[card].scope;
    let mut closure = Closure::default();
    let view = aimed(board, ledger, &stand, scope, subject, &mut closure);
    let told = (COSTS[card].tell)(&view);
    Part { term: COSTS[card].name, price: ledger.cost(card, subject), told }
}

/// A look at one subject of a scope.
fn aimed<'a>(
    board: &'a Board,
    ledger: &'a Ledger,
    stand: &'a Stand,
    scope: Scope,
    subject: usize,
    closure: &'a mut Closure,
) -> View<'a> {
    let (mut lot, mut way) = (0, 0);
    if scope.is_of_a_lot() {
        (lot, way) = (subject, ledger.way(subject));
        closure.find(board, lot, way);
    }
    let view = View::of_cart(board, ledger.tally(), stand, closure);
    View { lot, way, pair: subject, surface: subject, tie: subject, ..view }
}

/// Everything that is broken, in the order of the rules.
pub fn broken(board: &Board, ledger: &Ledger) -> Vec<BrokenRule> {
    let stand = board.stand();
    let mut all = Vec::new();
    for r in 0..RULES.len() {
        for subject in (0..ledger.rule_subjects(r)).filter(|&s| ledger.excess(r, s) > 0) {
            all.extend(tell(board, ledger, &stand, r, subject));
        }
    }
    all
}

fn tell(
    board: &Board,
    ledger: &Ledger,
    stand: &Stand,
    r: usize,
    subject: usize,
) -> Option<BrokenRule> {
    let card = &RULES[r];
    let mut closure = Closure::default();
    let view = aimed(board, ledger, stand, card.scope, subject, &mut closure);
    let against = (card.measure)(&view)?;
    Some(BrokenRule {
        rule: card.name,
        lots: (card.lots)(&view),
        told: (card.tell)(&view, &against),
        against,
        source: card.source,
    })
}
