//! The best single move or swap from a layout as it stands, and the shortest series where no single one mends a rule.
//!
//! A move takes one lot to a free corner place in any of its homes. A swap lets two lots change places: each goes to one of
//! the up to four corners of the other's old box in any form allowed there, with both lifted first. Every one of them is
//! looked at; those that cannot be better than the best found are not priced. What breaks or worsens a rule is no remedy.

use crate::score::{Ledger, RULES, Scope, Score, Undo, way_prices};
use crate::site::{
    Board, Change, Clearing, Home, Place, Touched, fits_at, for_each_corner, has_way_out,
};
use crate::units::Price;

/// Longest series that is looked for.
const LONGEST: usize = 4;
/// Places to which a thing is moved to make room, the easiest to reach first.
const ASIDE: usize = 3;

/// Changes that make a layout better, and its value after them.
#[derive(Clone, PartialEq, Debug)]
pub struct Remedy {
    /// What is moved, in order.
    pub changes: Vec<Change>,
    /// The value after.
    pub score: Score,
}

impl Remedy {
    /// What everything costs after: all terms, and fetching from elsewhere what is off the cart.
    pub fn total(&self) -> i64 {
        total(self.score)
    }
}

fn total(score: Score) -> i64 {
    score.cost + score.off_cart
}

/// Subjects of rules that are broken together: one cause.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Wrong {
    /// Rules and their subjects, as indices.
    pub subjects: Vec<(usize, usize)>,
}

impl Wrong {
    fn excess(&self, ledger: &Ledger) -> i64 {
        self.subjects.iter().map(|&(rule, subject)| ledger.excess(rule, subject)).sum()
    }
}

/// The best single remedies of a layout.
#[derive(Clone, Debug)]
pub struct Advice {
    /// For each lot, the move or swap that it takes part in after which everything costs least; it may cost more than now.
    pub of_lot: Vec<Option<Remedy>>,
    /// For each wrong, the move or swap that mends it and costs least.
    pub of_wrong: Vec<Option<Remedy>>,
    /// The one that lessens what is priced for the whole cart and costs least.
    pub of_cart: Option<Remedy>,
    /// How many were priced.
    pub priced: u64,
}

/// A board with its ledger, on which changes are tried and taken back.
struct Trials<'s> {
    board: Board<'s>,
    ledger: Ledger,
    touched: Touched,
    undo: Undo,
    back: Vec<Change>,
    clearing: Clearing,
}

impl<'s> Trials<'s> {
    fn new(board: &Board<'s>, ledger: &Ledger) -> Trials<'s> {
        Trials {
            board: board.clone(),
            ledger: ledger.clone(),
            touched: Touched::default(),
            undo: Undo::default(),
            back: Vec::new(),
            clearing: Clearing::default(),
        }
    }
    fn make(&mut self, changes: &[Change]) -> Score {
        self.touched.clear();
        self.back.clear();
        for change in changes {
            self.back.push(self.board.apply(*change, &mut self.touched));
        }
        self.ledger.follow(&self.board, &self.touched, &mut self.undo);
        self.ledger.score()
    }
    fn take_back(&mut self) {
        while let Some(change) = self.back.pop() {
            self.board.apply(change, &mut self.touched);
        }
        self.ledger.undo(&self.undo);
    }
    fn worsened(&self) -> bool {
        self.ledger.worsened(&self.undo)
    }
}

/// Whether a lot may be moved at all.
fn free(board: &Board, lot: usize) -> bool {
    let site = board.site();
    site.lots[lot].fixed.is_none() && !site.items[site.lots[lot].item].fixed
}

/// The best single remedies for every lot and every wrong.
pub fn advise(board: &Board, ledger: &Ledger, wrongs: &[Wrong]) -> Advice {
    let mut search = Singles::new(board, ledger, wrongs);
    let lots = board.site().lots.len();
    let movable: Vec<usize> = (0..lots).filter(|&l| free(board, l)).collect();
    for &lot in &movable {
        search.moves(lot);
    }
    for (n, &one) in movable.iter().enumerate() {
        for &other in &movable[n + 1..] {
            search.swaps(one, other);
        }
    }
    search.advice
}

/// All single moves and swaps, with the best found so far.
struct Singles<'s, 'w> {
    trials: Trials<'s>,
    wrongs: &'w [Wrong],
    /// For each lot, whether moving it may mend a wrong: then nothing is passed over.
    needed: Vec<bool>,
    /// What a lot's absence leaves of what fetching costs, and what is off the cart without it.
    without: Vec<i64>,
    /// What is priced for the whole cart now.
    whole: Price,
    /// Whether areas add up: nothing overlaps or sticks out.
    sound: bool,
    /// Whether prices may be bounded from below by parts.
    bounded: bool,
    advice: Advice,
}

impl<'s, 'w> Singles<'s, 'w> {
    fn new(board: &Board<'s>, ledger: &Ledger, wrongs: &'w [Wrong]) -> Singles<'s, 'w> {
        let lots = board.site().lots.len();
        let mut trials = Trials::new(board, ledger);
        let without = (0..lots).map(|l| absent(&mut trials, &[l])).collect();
        Singles {
            needed: needed(board, wrongs),
            without,
            whole: ledger.whole_cart(),
            sound: sound(board),
            bounded: bounded(board, ledger),
            trials,
            wrongs,
            advice: Advice {
                of_lot: vec![None; lots],
                of_wrong: vec![None; wrongs.len()],
                of_cart: None,
                priced: 0,
            },
        }
    }

    /// Whether a remedy of these lots that leaves at least so much may still be the best for something.
    fn hopeful(&self, lots: &[usize], least: i64) -> bool {
        let beats = |best: &Option<Remedy>| best.as_ref().is_none_or(|b| least < b.total());
        !self.bounded
            || lots.iter().any(|&l| self.needed[l] || beats(&self.advice.of_lot[l]))
            || (self.whole > Price::ZERO && beats(&self.advice.of_cart))
    }

    fn moves(&mut self, lot: usize) {
        let homes = &self.trials.board.site().lots[lot].homes;
        let here = self.trials.board.place(lot).copied();
        let mut places = Vec::new();
        for home in homes {
            let mine = here.is_some_and(|p| p.home.surface == home.surface);
            let tight = home.area > self.trials.board.left(home.surface as usize);
            if self.sound && tight && !mine {
                continue;
            }
            let board = &self.trials.board;
            for_each_corner(board, lot, home, &mut self.trials.clearing, |place| {
                if here != Some(place) {
                    places.push((least_price(board, lot, &place), place));
                }
                true
            });
        }
        places.sort_by_key(|p| p.0);
        for (price, place) in places {
            if self.hopeful(&[lot], self.without[lot] + price) {
                self.look_at(&[Change { lot, to: Some(place) }]);
            }
        }
    }

    fn swaps(&mut self, one: usize, other: usize) {
        let board = &self.trials.board;
        let (Some(a), Some(b)) = (board.place(one).copied(), board.place(other).copied()) else {
            return;
        };
        let lots = &board.site().lots;
        if lots[one].item == lots[other].item && lots[one].copies == lots[other].copies {
            return;
        }
        let ones = stand_ins(board, one, other, &b, &mut self.trials.clearing);
        if ones.is_empty() {
            return;
        }
        let others = stand_ins(board, other, one, &a, &mut self.trials.clearing);
        if others.is_empty() {
            return;
        }
        let near = neighbours(board, &a, &b);
        let left = absent(&mut self.trials, &[one, other]);
        for &(first, to_b) in &ones {
            for &(second, to_a) in &others {
                if to_b == a && to_a == b || !self.hopeful(&[one, other], left + first + second) {
                    continue;
                }
                let changes =
                    [Change { lot: one, to: Some(to_b) }, Change { lot: other, to: Some(to_a) }];
                if !near || self.both_fit(&changes) {
                    self.look_at(&changes);
                }
            }
        }
    }

    /// Whether the second of two lots still fits once the first has changed places.
    fn both_fit(&mut self, changes: &[Change; 2]) -> bool {
        let trials = &mut self.trials;
        trials.touched.clear();
        let back = trials.board.apply(changes[0], &mut trials.touched);
        let fits = changes[1]
            .to
            .is_some_and(|to| fits_at(&trials.board, changes[1].lot, &to, &mut trials.clearing));
        trials.board.apply(back, &mut trials.touched);
        fits
    }

    /// Prices changes and keeps them where they are the best for something.
    fn look_at(&mut self, changes: &[Change]) {
        let score = self.trials.make(changes);
        self.advice.priced += 1;
        if !self.trials.worsened() {
            let found = total(score);
            let better = |best: &Option<Remedy>| best.as_ref().is_none_or(|b| found < b.total());
            let remedy = || Some(Remedy { changes: changes.to_vec(), score });
            for change in changes {
                if better(&self.advice.of_lot[change.lot]) {
                    self.advice.of_lot[change.lot] = remedy();
                }
            }
            for (wrong, best) in self.wrongs.iter().zip(&mut self.advice.of_wrong) {
                if better(best) && wrong.excess(&self.trials.ledger) == 0 {
                    *best = remedy();
                }
            }
            if self.trials.ledger.whole_cart() < self.whole && better(&self.advice.of_cart) {
                self.advice.of_cart = remedy();
            }
        }
        self.trials.take_back();
    }
}

/// What the fetches of others cost with those lots away, and what is off the cart once they are back: the rest is not
/// counted, for it may be less with them than without.
fn absent(trials: &mut Trials, lots: &[usize]) -> i64 {
    let site = trials.board.site();
    let changes: Vec<Change> = lots.iter().map(|&lot| Change { lot, to: None }).collect();
    let score = trials.make(&changes);
    let theirs: i64 = lots.iter().map(|&l| site.lots[l].off_cart.as_us()).sum();
    let left = total(score) - theirs - trials.ledger.beside_fetching().as_us();
    trials.take_back();
    left
}

/// What a lot's place costs at least by itself: walking and reaching.
fn least_price(board: &Board, lot: usize, place: &Place) -> i64 {
    let each = way_prices(board.site(), lot, place).map(|(_, t)| t).min();
    each.map_or(0, |t| board.site().lots[lot].uses.cost(t).as_us())
}

/// Where a lot can stand in for another with both lifted: the corners of the other's box, in every form; with the least
/// price of each place.
fn stand_ins(
    board: &Board,
    lot: usize,
    other: usize,
    there: &Place,
    clearing: &mut Clearing,
) -> Vec<(i64, Place)> {
    let homes = &board.site().lots[lot].homes;
    let mut found: Vec<(i64, Place)> = Vec::new();
    for home in homes.iter().filter(|h| h.surface == there.home.surface) {
        if !clearing.look_past(board, lot, other, home) {
            continue;
        }
        let [ps, qs] = corner_ends(board, home, there);
        for p in ps {
            for q in qs {
                let place = Place { home: *home, space: clearing.at(p, q) };
                let open = || has_way_out(board, home.surface as usize, &place.space);
                let new = !found.iter().any(|f| f.1 == place);
                if new && clearing.is_free(p, q) && open() {
                    found.push((least_price(board, lot, &place), place));
                }
            }
        }
    }
    found.sort_by_key(|f| f.0);
    found
}

/// The two ends of the other's box on both free axes, as least corners of a lot in that home.
fn corner_ends(board: &Board, home: &Home, there: &Place) -> [[crate::units::Length; 2]; 2] {
    let axes = board.site().surfaces[home.surface as usize].free_axes();
    axes.map(|axis| [there.space.min[axis], there.space.max[axis] - home.extents[axis]])
}

/// Whether things at two places may share volume or a limit.
fn neighbours(board: &Board, a: &Place, b: &Place) -> bool {
    let site = board.site();
    let space = |p: &Place| site.surfaces[p.home.surface as usize].space;
    let (a, b) = (space(a), space(b));
    a == b || site.spaces[a].near.contains(&b) || site.spaces[b].near.contains(&a)
}

/// Whether everything is inside its surface and shares volume with nothing.
fn sound(board: &Board) -> bool {
    (0..board.site().lots.len()).all(|l| {
        board.place(l).is_none_or(|p| {
            board.tangles(l) == 0 && board.free(p.home.surface as usize).contains(&p.space)
        })
    })
}

/// Whether a thing that goes can only make the others cheaper: not where one of two ways is taken because the other
/// breaks more rules.
fn bounded(board: &Board, ledger: &Ledger) -> bool {
    let site = board.site();
    (0..site.lots.len()).all(|l| {
        let through = board.space_of(l).is_some_and(|s| site.spaces[s].through());
        let broken = (0..RULES.len())
            .filter(|&r| RULES[r].scope.is_of_a_fetch())
            .any(|r| ledger.excess(r, l) > 0);
        !through || !broken
    })
}

/// For each lot, whether moving it may mend one of the wrongs.
fn needed(board: &Board, wrongs: &[Wrong]) -> Vec<bool> {
    let site = board.site();
    let mut all = vec![false; site.lots.len()];
    for &(rule, subject) in wrongs.iter().flat_map(|w| &w.subjects) {
        match RULES[rule].scope {
            Scope::Cart => all.iter_mut().for_each(|n| *n = true),
            Scope::Surface => {
                let on =
                    |l: &usize| board.place(*l).is_some_and(|p| p.home.surface as usize == subject);
                (0..site.lots.len()).filter(on).for_each(|l| all[l] = true);
            }
            Scope::Pair => {
                all[site.pairs[subject].one as usize] = true;
                all[site.pairs[subject].other as usize] = true;
            }
            Scope::Companions | Scope::Family | Scope::Job | Scope::Growth => {}
            Scope::Way | Scope::Lot | Scope::Place => {
                around(board, subject).into_iter().for_each(|l| all[l] = true)
            }
        }
    }
    all
}

/// A lot with all that stand in its way, through any number of others, and all in its space and the spaces near it.
fn around(board: &Board, lot: usize) -> Vec<usize> {
    let mut all = vec![lot];
    let mut next = 0;
    while next < all.len() {
        for way in 0..2 {
            for &b in board.blockers(all[next], way) {
                if !all.contains(&(b as usize)) {
                    all.push(b as usize);
                }
            }
        }
        next += 1;
    }
    if let (Some(space), true) = (board.space_of(lot), board.tangles(lot) > 0) {
        let near = &board.site().spaces[space].near;
        let spaces = std::iter::once(&space).chain(near);
        all.extend(spaces.flat_map(|&s| board.members(s)).map(|&m| m as usize));
    }
    all
}

/// The shortest series of moves found that mends a wrong which no single move or swap mends, of at most four; every step
/// is legal by itself and worsens nothing.
pub fn series(board: &Board, ledger: &Ledger, wrong: &Wrong) -> Option<Remedy> {
    make_room(board, ledger, wrong).or_else(|| step_by_step(board, ledger, wrong))
}

/// One thing makes room, then another takes it: two moves.
fn make_room(board: &Board, ledger: &Ledger, wrong: &Wrong) -> Option<Remedy> {
    let mut trials = Trials::new(board, ledger);
    let lots = board.site().lots.len();
    let wanted = needed(board, std::slice::from_ref(wrong));
    let whole = wrong.subjects.iter().any(|s| RULES[s.0].scope == Scope::Cart);
    let mut best: Option<Remedy> = None;
    for aside in (0..lots).filter(|&l| free(board, l) && board.place(l).is_some()) {
        let Some(old) = board.space_of(aside) else { continue };
        for away in places(&trials.board, aside, None).into_iter().take(ASIDE) {
            let first = Change { lot: aside, to: Some(away) };
            trials.make(&[first]);
            let worse = trials.worsened();
            trials.take_back();
            if worse {
                continue;
            }
            let mut moved = trials.board.clone();
            moved.apply(first, &mut Touched::default());
            for lot in (0..lots).filter(|&l| l != aside && wanted[l] && !whole && free(board, l)) {
                for place in places(&moved, lot, Some(old)) {
                    let changes = [first, Change { lot, to: Some(place) }];
                    let score = trials.make(&changes);
                    let mends = !trials.worsened() && wrong.excess(&trials.ledger) == 0;
                    trials.take_back();
                    if mends && best.as_ref().is_none_or(|b| total(score) < b.total()) {
                        best = Some(Remedy { changes: changes.to_vec(), score });
                    }
                }
            }
        }
    }
    best
}

/// The free corner places of a lot, in one space or anywhere, the easiest to walk and reach to first.
fn places(board: &Board, lot: usize, space: Option<usize>) -> Vec<Place> {
    let mut clearing = Clearing::default();
    let mut all = Vec::new();
    let site = board.site();
    let there = |h: &&Home| space.is_none_or(|s| site.surfaces[h.surface as usize].space == s);
    for home in site.lots[lot].homes.iter().filter(there) {
        for_each_corner(board, lot, home, &mut clearing, |place| {
            if board.place(lot) != Some(&place) {
                all.push((least_price(board, lot, &place), place));
            }
            true
        });
    }
    all.sort_by_key(|p| p.0);
    all.into_iter().map(|p| p.1).collect()
}

/// Each time the move after which the rule is broken least.
fn step_by_step(board: &Board, ledger: &Ledger, wrong: &Wrong) -> Option<Remedy> {
    let mut trials = Trials::new(board, ledger);
    let mut changes: Vec<Change> = Vec::new();
    while changes.len() < LONGEST {
        let now = wrong.excess(&trials.ledger);
        let (mended, step) =
            best_step(&mut trials, wrong, &changes).filter(|(after, _)| *after < now)?;
        let score = trials.make(&[step]);
        changes.push(step);
        if mended == 0 {
            return Some(Remedy { changes, score });
        }
    }
    None
}

fn best_step(trials: &mut Trials, wrong: &Wrong, moved: &[Change]) -> Option<(i64, Change)> {
    let wanted = needed(&trials.board, std::slice::from_ref(wrong));
    let mut best: Option<((i64, i64), Change)> = None;
    for lot in (0..wanted.len()).filter(|&l| wanted[l]) {
        let done = moved.iter().any(|c| c.lot == lot);
        if done || !free(&trials.board, lot) || trials.board.place(lot).is_none() {
            continue;
        }
        for place in places(&trials.board, lot, None) {
            let change = Change { lot, to: Some(place) };
            let score = trials.make(&[change]);
            let key = (wrong.excess(&trials.ledger), total(score));
            if !trials.worsened() && best.is_none_or(|b| key < b.0) {
                best = Some((key, change));
            }
            trials.take_back();
        }
    }
    best.map(|b| (b.0.0, b.1))
}

/// Makes changes for good where they are still legal: every place free, no rule worsened. Else nothing is changed.
pub fn take(board: &mut Board, ledger: &mut Ledger, changes: &[Change]) -> bool {
    let (mut touched, mut undo) = (Touched::default(), Undo::default());
    let mut clearing = Clearing::default();
    let mut back: Vec<Change> = changes
        .iter()
        .map(|c| board.apply(Change { lot: c.lot, to: None }, &mut touched))
        .collect();
    let mut fits = true;
    for change in changes {
        fits &= change.to.is_none_or(|to| fits_at(board, change.lot, &to, &mut clearing));
        back.push(board.apply(*change, &mut touched));
    }
    ledger.follow(board, &touched, &mut undo);
    let good = fits && !ledger.worsened(&undo);
    if !good {
        while let Some(change) = back.pop() {
            board.apply(change, &mut touched);
        }
        ledger.undo(&undo);
    }
    good
}
