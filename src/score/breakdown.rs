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
    let view = View {
        board,
        lot,
        way: ledger.way(lot),
        closure: &closure,
        pair: 0,
        surface: 0,
        stand: &stand,
    };
    COSTS
        .iter()
        .enumerate()
        .filter(|(_, card)| card.scope == Scope::Lot)
        .map(|(c, card)| Part {
            term: card.name,
            price: ledger.cost(c, lot),
            told: (card.tell)(&view),
        })
        .collect()
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
    let mut view = View { board, lot: 0, way: 0, closure: &closure, pair: 0, surface: 0, stand };
    match card.scope {
        Scope::Lot => {
            closure.find(board, subject, ledger.way(subject));
            let way = ledger.way(subject);
            view = View { board, lot: subject, way, closure: &closure, pair: 0, surface: 0, stand };
        }
        Scope::Pair => view.pair = subject,
        Scope::Surface => view.surface = subject,
        Scope::Cart => {}
    }
    let against = (card.measure)(&view)?;
    Some(BrokenRule {
        rule: card.name,
        lots: (card.lots)(&view),
        told: (card.tell)(&view, &against),
        against,
        source: card.source,
    })
}
