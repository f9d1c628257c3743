//! Broken rules, those of one cause told once.

use crate::score::{BrokenRule, Ledger, RULES, broken};
use crate::site::Board;
use crate::solve::Wrong;

/// What is broken by one cause.
#[derive(Clone, Debug)]
pub(super) struct Cause {
    /// The rule's name.
    pub rule: &'static str,
    /// The lots concerned, rising.
    pub lots: Vec<u32>,
    /// The first item concerned.
    pub item: Option<String>,
    /// What is wrong, in words.
    pub told: String,
    /// Measured value and limit.
    pub value: [f64; 2],
    /// Where the limit comes from.
    pub source: &'static str,
    /// The subjects that must all be mended.
    pub wrong: Wrong,
}

/// Everything that is broken, in the order of the rules. Two things in one place break the same rule each: told once.
pub(super) fn causes(board: &Board, ledger: &Ledger) -> Vec<Cause> {
    let subjects = RULES.iter().enumerate().flat_map(|(r, _)| {
        (0..ledger.rule_subjects(r)).filter(move |&s| ledger.excess(r, s) > 0).map(move |s| (r, s))
    });
    let mut all: Vec<Cause> = Vec::new();
    for (subject, told) in subjects.zip(broken(board, ledger)) {
        let mut lots = told.lots.clone();
        lots.sort_unstable();
        lots.dedup();
        let same = |c: &&mut Cause| c.rule == told.rule && c.lots == lots && lots.len() > 1;
        match all.iter_mut().find(same) {
            Some(cause) => cause.wrong.subjects.push(subject),
            None => all.push(cause(board, subject, told, lots)),
        }
    }
    all
}

fn cause(board: &Board, subject: (usize, usize), told: BrokenRule, lots: Vec<u32>) -> Cause {
    let site = board.site();
    let name = |l: &u32| site.items[site.lots[*l as usize].item].name.clone();
    Cause {
        rule: told.rule,
        item: told.lots.first().map(name),
        lots,
        told: told.told,
        value: [told.against.value, told.against.limit],
        source: told.source,
        wrong: Wrong { subjects: vec![subject] },
    }
}
