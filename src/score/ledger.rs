//! The ledger: every price and every broken rule of a layout, kept up to date as the board changes.

use super::Scope;
use super::cost::COSTS;
use super::memory::{Memory, OWN_COSTS};
use super::rule::RULES;
use super::tally::{Seat, Tally, seat};
use super::view::{Closure, View};
use crate::site::{Board, Site, Stand, Touched};
use crate::units::Price;

/// The value of a layout. The derived order is the policy: no broken rule is traded for a place on the cart, and no
/// place on the cart for seconds.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug, Default)]
pub struct Score {
    /// How many rules are broken, subject by subject.
    pub broken: i64,
    /// What the copies off the cart cost, in microseconds a week.
    pub off_cart: i64,
    /// All terms, in microseconds a week.
    pub cost: i64,
    /// By how much rules are broken: the sum of the excesses, in thousandths of their limits.
    pub excess: i64,
}

/// One entry as it was before a change.
#[derive(Clone, Copy, Debug)]
enum Old {
    Cost(u32, i64),
    Rule(u32, i64),
    Way(u32, u8),
    On(u32, bool),
    Seat(u32, Option<Seat>),
}

/// What a change did to the ledger, to be undone.
#[derive(Clone, Debug, Default)]
pub struct Undo {
    entries: Vec<Old>,
    stand: Stand,
    score: Score,
}

impl Undo {
    /// The score before.
    pub fn score(&self) -> Score {
        self.score
    }
}

/// Every price and every broken rule, by card and subject.
#[derive(Clone, Debug)]
pub struct Ledger {
    costs: Vec<i64>,
    rules: Vec<i64>,
    /// Where the rows of each cost and each rule begin.
    cost_rows: Vec<usize>,
    rule_rows: Vec<usize>,
    ways: Vec<u8>,
    /// Which lots are on the cart.
    on: Vec<bool>,
    /// Where everything is fetched from.
    tally: Tally,
    /// Whether room was taken or left since it was last weighed.
    grown: bool,
    /// For each lot, the rules that are about it by what else is on the cart, as indices.
    concerns: Vec<Vec<u8>>,
    /// What lots cost and break by themselves.
    memory: Memory,
    score: Score,
    stand: Stand,
    /// One closure for each of a lot's two ways.
    closures: [Closure; 2],
}

fn subjects(board: &Board, scope: Scope) -> usize {
    let site = board.site();
    match scope {
        Scope::Way | Scope::Lot | Scope::Place => site.lots.len(),
        Scope::Growth => site.growth.wanted.len(),
        Scope::Companions => site.ties.companions.len(),
        Scope::Family => site.ties.families.len(),
        Scope::Job => site.ties.jobs.len(),
        Scope::Pair => site.pairs.len(),
        Scope::Surface => site.surfaces.len(),
        Scope::Cart => 1,
    }
}

fn rows(board: &Board, scopes: impl Iterator<Item = Scope>) -> Vec<usize> {
    let mut at = vec![0];
    for scope in scopes {
        at.push(at[at.len() - 1] + subjects(board, scope));
    }
    at
}

impl Ledger {
    /// Weighs everything afresh.
    pub fn new(board: &Board) -> Ledger {
        let cost_rows = rows(board, COSTS.iter().map(|c| c.scope));
        let rule_rows = rows(board, RULES.iter().map(|r| r.scope));
        let mut ledger = Ledger {
            costs: vec![0; cost_rows[COSTS.len()]],
            rules: vec![0; rule_rows[RULES.len()]],
            cost_rows,
            rule_rows,
            ways: vec![0; board.site().lots.len()],
            on: vec![true; board.site().lots.len()],
            tally: Tally::new(board.site()),
            grown: true,
            concerns: (0..board.site().lots.len())
                .map(|l| concerns(board.site(), l, Scope::Lot))
                .collect(),
            memory: Memory::new(board.site()),
            score: Score::default(),
            stand: board.stand(),
            closures: [Closure::default(), Closure::default()],
        };
        let mut undo = Undo::default();
        for lot in 0..board.site().lots.len() {
            ledger.weigh_lot(board, lot, &mut undo);
        }
        for pair in 0..board.site().pairs.len() {
            ledger.weigh_pair(board, pair, &mut undo);
        }
        for surface in 0..board.site().surfaces.len() {
            ledger.weigh_surface(board, surface, &mut undo);
        }
        ledger.weigh_growth(board, &mut undo);
        ledger.weigh_cart(board, &mut undo);
        ledger
    }

    /// The value of the layout.
    pub fn score(&self) -> Score {
        self.score
    }
    /// The way that a lot is taken out, as an index into its space's ways.
    pub fn way(&self, lot: usize) -> usize {
        usize::from(self.ways[lot])
    }
    /// What one subject costs by one cost.
    pub fn cost(&self, card: usize, subject: usize) -> Price {
        Price::us(self.costs[self.cost_rows[card] + subject])
    }
    /// What all subjects cost by one cost.
    pub fn term(&self, card: usize) -> Price {
        Price::us(self.costs[self.cost_rows[card]..self.cost_rows[card + 1]].iter().sum())
    }
    /// What all subjects of those scopes cost.
    fn scoped(&self, within: impl Fn(Scope) -> bool) -> Price {
        let cards = (0..COSTS.len()).filter(|&c| within(COSTS[c].scope));
        cards.map(|c| self.term(c)).sum()
    }
    /// What is priced for the whole cart.
    pub fn whole_cart(&self) -> Price {
        self.scoped(|scope| scope == Scope::Cart)
    }
    /// What is not priced by the fetches of one lot or another.
    pub fn beside_fetching(&self) -> Price {
        self.scoped(|scope| !scope.is_of_a_fetch())
    }
    /// What a lot has a part in beside its fetches: cards and their subjects.
    pub fn ties<'s>(
        &self,
        site: &'s Site,
        lot: usize,
    ) -> impl Iterator<Item = (usize, usize)> + 's {
        let bonds = &site.ties.of[site.lots[lot].item];
        let own = COSTS.iter().enumerate().filter(|(_, card)| card.scope == Scope::Place);
        let shared = COSTS.iter().enumerate().flat_map(move |(c, card)| {
            let mine = match card.scope {
                Scope::Companions => bonds.companions.as_slice(),
                Scope::Family => bonds.family.as_slice(),
                Scope::Job => bonds.jobs.as_slice(),
                _ => &[],
            };
            mine.iter().map(move |&tie| (c, tie as usize))
        });
        own.map(move |(c, _)| (c, lot)).chain(shared)
    }
    /// Where everything is fetched from.
    pub fn tally(&self) -> &Tally {
        &self.tally
    }
    /// By how much one subject breaks one rule, in thousandths.
    pub fn excess(&self, card: usize, subject: usize) -> i64 {
        self.rules[self.rule_rows[card] + subject]
    }
    /// How many subjects a rule has.
    pub fn rule_subjects(&self, card: usize) -> usize {
        self.rule_rows[card + 1] - self.rule_rows[card]
    }
    /// The first entry in which two ledgers differ, by card and subject: for finding what a change forgot to touch.
    pub fn difference(&self, other: &Ledger) -> Option<(&'static str, usize)> {
        for (c, card) in COSTS.iter().enumerate() {
            let range = self.cost_rows[c]..self.cost_rows[c + 1];
            if let Some(k) = range.clone().find(|&k| self.costs[k] != other.costs[k]) {
                return Some((card.name, k - range.start));
            }
        }
        for (r, card) in RULES.iter().enumerate() {
            let range = self.rule_rows[r]..self.rule_rows[r + 1];
            if let Some(k) = range.clone().find(|&k| self.rules[k] != other.rules[k]) {
                return Some((card.name, k - range.start));
            }
        }
        (self.score != other.score).then_some(("score", 0))
    }

    /// Follows a change: the only difference that the program works out.
    pub fn follow(&mut self, board: &Board, touched: &Touched, undo: &mut Undo) {
        undo.entries.clear();
        undo.stand = self.stand;
        undo.score = self.score;
        for &lot in &touched.moved {
            for k in 0..board.site().pairs_of[lot as usize].len() {
                let pair = board.site().pairs_of[lot as usize][k];
                self.weigh_pair(board, pair as usize, undo);
            }
        }
        for &lot in &touched.lots {
            self.weigh_lot(board, lot as usize, undo);
        }
        for &surface in &touched.surfaces {
            self.weigh_surface(board, surface as usize, undo);
        }
        self.weigh_growth(board, undo);
        self.stand = board.stand();
        self.weigh_cart(board, undo);
    }

    /// Whether the change that can be undone so broke a rule that was kept, or breaks one more than before.
    pub fn worsened(&self, undo: &Undo) -> bool {
        undo.entries.iter().any(|entry| match *entry {
            Old::Rule(at, old) => self.rules[at as usize] > old,
            _ => false,
        })
    }

    /// Takes a change back.
    pub fn undo(&mut self, undo: &Undo) {
        for entry in undo.entries.iter().rev() {
            match *entry {
                Old::Cost(at, old) => self.costs[at as usize] = old,
                Old::Rule(at, old) => self.rules[at as usize] = old,
                Old::Way(lot, old) => self.ways[lot as usize] = old,
                Old::On(lot, old) => self.on[lot as usize] = old,
                Old::Seat(lot, old) => self.tally.sit(lot as usize, old),
            }
        }
        self.stand = undo.stand;
        self.score = undo.score;
    }

    #[inline]
    fn set_cost(&mut self, at: usize, new: i64, undo: &mut Undo) {
        let old = self.costs[at];
        if old != new {
            undo.entries.push(Old::Cost(at as u32, old));
            self.costs[at] = new;
            self.score.cost += new - old;
        }
    }

    #[inline]
    fn set_rule(&mut self, at: usize, new: i64, undo: &mut Undo) {
        let old = self.rules[at];
        if old != new {
            undo.entries.push(Old::Rule(at as u32, old));
            self.rules[at] = new;
            self.score.broken += i64::from(new > 0) - i64::from(old > 0);
            self.score.excess += new - old;
        }
    }

    /// Books a lot's coming onto the cart or going off it.
    fn book(&mut self, board: &Board, lot: usize, undo: &mut Undo) {
        let on = board.place(lot).is_some();
        if self.on[lot] != on {
            undo.entries.push(Old::On(lot as u32, self.on[lot]));
            self.on[lot] = on;
            let price = board.site().lots[lot].off_cart.as_us();
            self.score.off_cart += if on { -price } else { price };
        }
    }

    /// Weighs a lot: chooses its way out, then books what that costs and breaks.
    fn weigh_lot(&mut self, board: &Board, lot: usize, undo: &mut Undo) {
        self.book(board, lot, undo);
        let mut closures = std::mem::take(&mut self.closures);
        let mut memory = std::mem::take(&mut self.memory);
        let about = std::mem::take(&mut self.concerns[lot]);
        let ways = board.space_of(lot).map_or(1, |s| board.site().spaces[s].ways.len());
        for (way, closure) in closures.iter_mut().enumerate().take(ways) {
            closure.find(board, lot, way);
        }
        let view = |way: usize| View {
            lot,
            way,
            ..View::of_cart(board, &self.tally, &self.stand, &closures[way])
        };
        let by_itself = memory.recall(board, lot, &self.tally, &self.stand);
        let worth = |way: usize| by_itself[way].worth().and(worth(&view(way), &about));
        let way = usize::from(ways > 1 && worth(0) > worth(1));
        let (view, by_itself) = (view(way), by_itself[way]);
        let mut prices = [0i64; COSTS.len()];
        let mut excesses = [0i64; RULES.len()];
        for (c, card) in COSTS.iter().enumerate().filter(|(_, c)| c.scope.is_of_a_lot()) {
            prices[c] = match OWN_COSTS[c] {
                Some(n) => by_itself.costs[n],
                None => (card.weigh)(&view).as_us(),
            };
        }
        for &r in &about {
            excesses[usize::from(r)] = (RULES[usize::from(r)].excess)(&view);
        }
        for (c, _) in COSTS.iter().enumerate().filter(|(_, c)| c.scope.is_of_a_lot()) {
            self.set_cost(self.cost_rows[c] + lot, prices[c], undo);
        }
        for &r in &about {
            let r = usize::from(r);
            self.set_rule(self.rule_rows[r] + lot, excesses[r], undo);
        }
        for (n, &r) in memory.about(lot).iter().enumerate() {
            self.set_rule(self.rule_rows[usize::from(r)] + lot, by_itself.excesses[n], undo);
        }
        self.concerns[lot] = about;
        self.memory = memory;
        self.closures = closures;
        if self.ways[lot] != way as u8 {
            undo.entries.push(Old::Way(lot as u32, self.ways[lot]));
            self.ways[lot] = way as u8;
        }
        self.seat(board, lot, way, undo);
    }

    /// Notes where a lot is fetched from, and weighs its ties where that is another face.
    fn seat(&mut self, board: &Board, lot: usize, way: usize, undo: &mut Undo) {
        let site = board.site();
        let (old, new) = (self.tally.seat(lot), seat(board, lot, way));
        if new == old {
            return;
        }
        undo.entries.push(Old::Seat(lot as u32, old));
        self.tally.sit(lot, new);
        self.grown = true;
        if old.map(|s| s.face) == new.map(|s| s.face) {
            return;
        }
        let bonds = &site.ties.of[site.lots[lot].item];
        for &n in &bonds.companions {
            self.weigh_tie(board, Scope::Companions, n, undo);
        }
        if let Some(n) = bonds.family {
            self.weigh_tie(board, Scope::Family, n, undo);
        }
        for &n in &bonds.jobs {
            self.weigh_tie(board, Scope::Job, n, undo);
        }
    }

    /// Weighs all room that is to stay free, where some of it was taken or left.
    fn weigh_growth(&mut self, board: &Board, undo: &mut Undo) {
        if std::mem::take(&mut self.grown) {
            for n in 0..board.site().growth.wanted.len() {
                self.weigh_tie(board, Scope::Growth, n as u32, undo);
            }
        }
    }

    fn weigh_tie(&mut self, board: &Board, scope: Scope, tie: u32, undo: &mut Undo) {
        let tie = tie as usize;
        self.weigh(board, scope, tie, |view: &mut View| view.tie = tie, undo);
    }

    fn weigh_pair(&mut self, board: &Board, pair: usize, undo: &mut Undo) {
        let subject = |view: &mut View| view.pair = pair;
        self.weigh(board, Scope::Pair, pair, subject, undo);
    }

    fn weigh_surface(&mut self, board: &Board, surface: usize, undo: &mut Undo) {
        let subject = |view: &mut View| view.surface = surface;
        self.weigh(board, Scope::Surface, surface, subject, undo);
    }

    fn weigh_cart(&mut self, board: &Board, undo: &mut Undo) {
        self.weigh(board, Scope::Cart, 0, |_| {}, undo);
    }

    /// Weighs every card of a scope for one subject.
    fn weigh(
        &mut self,
        board: &Board,
        scope: Scope,
        subject: usize,
        aim: impl Fn(&mut View),
        undo: &mut Undo,
    ) {
        let closure = Closure::default();
        let mut view = View::of_cart(board, &self.tally, &self.stand, &closure);
        aim(&mut view);
        let mut prices = [0i64; COSTS.len()];
        let mut excesses = [0i64; RULES.len()];
        for (c, card) in COSTS.iter().enumerate().filter(|(_, c)| c.scope == scope) {
            prices[c] = (card.weigh)(&view).as_us();
        }
        for (r, card) in RULES.iter().enumerate().filter(|(_, r)| r.scope == scope) {
            excesses[r] = (card.excess)(&view);
        }
        for (c, _) in COSTS.iter().enumerate().filter(|(_, c)| c.scope == scope) {
            self.set_cost(self.cost_rows[c] + subject, prices[c], undo);
        }
        for (r, _) in RULES.iter().enumerate().filter(|(_, r)| r.scope == scope) {
            self.set_rule(self.rule_rows[r] + subject, excesses[r], undo);
        }
    }
}

/// The rules of a scope that are about a lot.
pub(super) fn concerns(site: &Site, lot: usize, scope: Scope) -> Vec<u8> {
    let about = |r: &u8| {
        let card = &RULES[usize::from(*r)];
        card.scope == scope && (card.concerns)(site, lot)
    };
    (0..RULES.len() as u8).filter(about).collect()
}

/// What a way out is worth to a lot by what else is on the cart.
fn worth(view: &View, about: &[u8]) -> Worth {
    let mut worth = Worth::default();
    about.iter().for_each(|&r| worth.breaks((RULES[usize::from(r)].excess)(view)));
    let cards = COSTS.iter().filter(|c| c.scope == Scope::Lot);
    worth.cost = cards.map(|c| (c.weigh)(view).as_us()).sum();
    worth
}

/// What a way out is worth: rules first, then cost.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub(super) struct Worth {
    broken: i64,
    cost: i64,
}

impl Worth {
    pub fn new(excesses: &[i64], costs: &[i64]) -> Worth {
        let mut worth = Worth { broken: 0, cost: costs.iter().sum() };
        excesses.iter().for_each(|&e| worth.breaks(e));
        worth
    }
    fn breaks(&mut self, excess: i64) {
        self.broken += if excess > 0 { 1_000_000 + excess } else { 0 };
    }
    fn and(self, other: Worth) -> Worth {
        Worth { broken: self.broken + other.broken, cost: self.cost + other.cost }
    }
}
