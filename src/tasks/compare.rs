//! Two layouts of one workspace: what moved from the first to the second, and what that gained.

use super::offer::{Spot, lot_price};
use super::outcome::{LeftOut, Worth};
use super::standing::{Standing, standing};
use super::tell;
use crate::domain::{Layout, Workspace};
use crate::finding::Finding;
use crate::score::Ledger;
use crate::site::{Board, Place};
use crate::units::{Price, Unit};

/// Two layouts side by side.
#[derive(Clone, Debug)]
pub struct Compare {
    /// The cart's name.
    pub name: String,
    /// The unit of the user's files.
    pub units: Unit,
    /// The first layout.
    pub a: Side,
    /// The second layout.
    pub b: Side,
    /// What moved, copies that moved together in one.
    pub moved: Vec<Moved>,
    /// How many copies are where they were.
    pub stayed: u32,
    /// Every term of the score.
    pub terms: Vec<Gain>,
    /// Every item whose own price or place changed, the greatest gain first.
    pub items: Vec<Gain>,
    /// What belongs to no item by itself: the balance of the cart and whatever else is priced for it as a whole. The
    /// gains of all items and this one add up to the gain of the cost.
    pub whole: Gain,
}

/// One of the two.
#[derive(Clone, Debug)]
pub struct Side {
    /// What it is worth, with the rules it breaks.
    pub worth: Worth,
    /// What has no place in it.
    pub left_out: Vec<LeftOut>,
    /// What is wrong with its entries.
    pub findings: Vec<String>,
}

/// Copies that moved together.
#[derive(Clone, Debug)]
pub struct Moved {
    /// The item.
    pub item: String,
    /// The first copy.
    pub copy: u32,
    /// How many copies.
    pub copies: u32,
    /// How many there are in all.
    pub of: u32,
    /// Where they were; `None` off the cart.
    pub from: Option<Spot>,
    /// Where they are; `None` off the cart.
    pub to: Option<Spot>,
}

/// What something costs in the first layout and in the second.
#[derive(Clone, Debug)]
pub struct Gain {
    /// A term or an item.
    pub what: String,
    /// In the first.
    pub a: Price,
    /// In the second.
    pub b: Price,
}

impl Gain {
    /// What the second saves; under nought it costs more.
    pub fn gain(&self) -> Price {
        self.a - self.b
    }
}

/// Compares two layouts.
///
/// # Errors
/// Every way in which the carcass contradicts itself.
pub fn compare(workspace: &Workspace, a: &Layout, b: &Layout) -> Result<Compare, Vec<Finding>> {
    let stands = [standing(workspace, a)?, standing(workspace, b)?];
    let boards = stands.each_ref().map(|s| Board::with(&s.site, &s.places));
    let ledgers = boards.each_ref().map(Ledger::new);
    let side = |k: usize| side(&stands[k], &boards[k], &ledgers[k]);
    let sides = [side(0), side(1)];
    let (moved, stayed) = moved(workspace, &boards);
    let items = items(workspace, &boards, &ledgers, &moved);
    let terms = sides[0].worth.terms.iter().zip(&sides[1].worth.terms);
    let terms = terms.map(|(a, b)| Gain { what: a.0.to_owned(), a: a.1, b: b.1 }).collect();
    let own = [0, 1].map(|k: usize| all_lots(&ledgers[k], stands[k].site.lots.len()));
    let [a, b] = sides;
    let whole = Gain {
        what: "the cart as a whole".to_owned(),
        a: a.worth.cost - own[0],
        b: b.worth.cost - own[1],
    };
    let (name, units) = (workspace.carcass.name.clone(), workspace.carcass.units);
    Ok(Compare { name, units, a, b, moved, stayed, terms, items, whole })
}

fn all_lots(ledger: &Ledger, lots: usize) -> Price {
    (0..lots).map(|l| lot_price(ledger, l)).sum()
}

fn side(stands: &Standing, board: &Board, ledger: &Ledger) -> Side {
    let told = tell::plan(board, ledger, &stands.workspace);
    let findings = stands.findings.iter().map(|f| f.what.clone()).collect();
    Side { worth: told.worth, left_out: told.left_out, findings }
}

/// The lot that a copy belongs to.
fn lot_of(board: &Board, item: usize, copy: u32) -> Option<usize> {
    let lots = &board.site().lots;
    lots.iter().position(|l| l.item == item && (l.first..l.first + l.copies).contains(&copy))
}

/// What moved, copy by copy; neighbours of one pile that moved to one place together.
fn moved(workspace: &Workspace, boards: &[Board; 2]) -> (Vec<Moved>, u32) {
    let mut all: Vec<Moved> = Vec::new();
    let mut stayed = 0;
    for (i, item) in workspace.items.iter().enumerate() {
        let mut last = None;
        for copy in 1..=item.count {
            let lots = boards.each_ref().map(|b| lot_of(b, i, copy));
            if is_where_it_was(boards, lots) {
                stayed += 1;
                last = None;
                continue;
            }
            match all.last_mut().filter(|_| last == Some(lots)) {
                Some(group) => group.copies += 1,
                None => all.push(Moved {
                    item: item.name.clone(),
                    copy,
                    copies: 1,
                    of: item.count,
                    from: spot(&boards[0], lots[0]),
                    to: spot(&boards[1], lots[1]),
                }),
            }
            last = Some(lots);
        }
    }
    (all, stayed)
}

fn place<'a>(board: &'a Board, lot: Option<usize>) -> Option<&'a Place> {
    board.place(lot?)
}

fn spot(board: &Board, lot: Option<usize>) -> Option<Spot> {
    Some(Spot::of(board, lot?, place(board, lot)?))
}

/// Whether a copy is in the same box on the same surface, by itself or in the same pile or row.
fn is_where_it_was(boards: &[Board; 2], lots: [Option<usize>; 2]) -> bool {
    let group = |k: usize| lots[k].map(|l| &boards[k].site().lots[l]).map(|l| (l.first, l.copies));
    match [place(&boards[0], lots[0]), place(&boards[1], lots[1])] {
        [None, None] => true,
        [Some(a), Some(b)] => {
            a.home.surface == b.home.surface && a.space == b.space && group(0) == group(1)
        }
        _ => false,
    }
}

/// The items whose own price changed or of which something moved.
fn items(
    workspace: &Workspace,
    boards: &[Board; 2],
    ledgers: &[Ledger; 2],
    moved: &[Moved],
) -> Vec<Gain> {
    let own = |k: usize, item: usize| -> Price {
        let lots = &boards[k].site().lots;
        let mine = (0..lots.len()).filter(|&l| lots[l].item == item);
        mine.map(|l| lot_price(&ledgers[k], l)).sum()
    };
    let mut all: Vec<Gain> = workspace
        .items
        .iter()
        .enumerate()
        .map(|(i, item)| Gain { what: item.name.clone(), a: own(0, i), b: own(1, i) })
        .filter(|g| g.a != g.b || moved.iter().any(|m| m.item == g.what))
        .collect();
    all.sort_by_key(|g| std::cmp::Reverse(g.gain()));
    all
}
