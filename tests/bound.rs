//! The lower bound against layouts found by trying: whatever is put wherever, none may cost less.
//!
//! Small carts of all shapes are filled here by plain trying, with no part of the program's search: all places where
//! something touches something, in every order while these are few, else the best for one thing after another; and a
//! thousand places drawn from anywhere on each cart. The cheapest for what it leaves out must not be under the bound.

// A part of it is enough here.
#[allow(unused_imports)]
mod support;

use std::collections::BTreeMap;
use support::carts::{self, Dice, Size};
use toolberth::domain::{Depth, Workspace};
use toolberth::geometry::Box3;
use toolberth::score::{Ledger, Score};
use toolberth::site::{Board, Change, Home, Place, Site, SpaceKind, Touched, has_way_out};
use toolberth::solve::{bound, exact};
use toolberth::units::{Length, Price, Uses};

const CARTS: u64 = 1200;
/// Layouts that are weighed on each cart, about.
const WEIGHED: usize = 900;
/// Of these, with something in a place drawn from anywhere.
const FREE: usize = 1000;

/// A cart of one to three spaces with two to five things that hardly fit.
fn cart(seed: u64) -> Workspace {
    let mut workspace = carts::cart(seed, Size::Small);
    let mut dice = Dice::new(seed ^ 0x5eed);
    let made = &mut workspace.carcass;
    let (bays, others) = (dice.whole(1, 2) as usize, dice.whole(0, 1) as usize);
    // What stands behind a bay goes where that bay goes.
    while made.bays.len() > bays {
        let gone = made.bays.remove(dice.whole(0, made.bays.len() as i64 - 1) as usize);
        made.bays.retain(|b| !matches!(&b.depth, Depth::Behind { name, .. } if *name == gone.name));
    }
    made.drawers.truncate(others);
    made.panels.truncate(others);
    workspace.items.truncate(dice.whole(2, 5) as usize);
    for item in &mut workspace.items {
        item.count = item.count.min(2);
        item.place.clear();
        if dice.luck(60) && !made.bays.is_empty() {
            let bay = dice.one(&made.bays);
            let deep = match bay.depth {
                Depth::Deep(deep) => deep,
                _ => Length::mm(300),
            };
            let part =
                |dice: &mut Dice, of: Length| Length::mm((of.as_mm() * dice.real(0.2, 0.9)) as i64);
            let size = [bay.opening[0], deep, bay.opening[1] - Length::mm(25)]
                .map(|of| part(&mut dice, of));
            let shaped = carts::plain(&item.name, size, item.weight, item.uses);
            (item.size, item.poses, item.grip) = (shaped.size, shaped.poses, None);
        }
        if dice.luck(30) {
            item.uses = Uses::from_week(dice.real(1.0, 20.0));
        }
    }
    workspace
}

/// The cheapest layouts found, by what they leave out.
#[derive(Default)]
struct Cheapest {
    by_left_out: BTreeMap<i64, i64>,
    weighed: usize,
}

impl Cheapest {
    fn note(&mut self, score: Score) {
        self.weighed += 1;
        if score.broken == 0 {
            let cost = self.by_left_out.entry(score.off_cart).or_insert(i64::MAX);
            *cost = score.cost.min(*cost);
        }
    }
}

/// A cart being filled by trying.
struct Trial<'s> {
    board: Board<'s>,
    found: Cheapest,
    touched: Touched,
}

impl<'s> Trial<'s> {
    fn put(&mut self, lot: usize, to: Option<Place>) {
        self.touched.clear();
        self.board.apply(Change { lot, to }, &mut self.touched);
    }

    fn weigh(&mut self) -> Score {
        let score = Ledger::new(&self.board).score();
        self.found.note(score);
        score
    }

    /// Off the cart, and every free place where a lot touches something along both axes.
    fn options(&self, lot: usize) -> Vec<Option<Place>> {
        let site = self.board.site();
        let homes = match &site.lots[lot].fixed {
            Some((home, _)) => vec![*home],
            None => site.lots[lot].homes.clone(),
        };
        let mut all = vec![None];
        for home in homes {
            let [p, q] = site.surfaces[home.surface as usize].free_axes();
            let (along, across) = (self.edges(lot, &home, p), self.edges(lot, &home, q));
            for a in &along {
                for b in &across {
                    let place = self.place(&home, [*a, *b]);
                    all.extend(self.is_free(lot, &place).then_some(Some(place)));
                }
            }
        }
        all
    }

    /// Where along an axis the least corner of a lot would touch something.
    fn edges(&self, lot: usize, home: &Home, axis: usize) -> Vec<Length> {
        let site = self.board.site();
        let free = self.board.free(home.surface as usize);
        let mine = home.extents[axis];
        let mut all = vec![free.min[axis], free.max[axis] - mine];
        let mut meet = |b: &Box3| all.extend([b.max[axis], b.min[axis] - mine]);
        let others = (0..site.lots.len()).filter(|&o| o != lot);
        others.filter_map(|o| self.board.place(o)).for_each(|p| meet(&p.space));
        let space = site.surfaces[home.surface as usize].space;
        site.spaces[space].boards.iter().for_each(|&b| meet(self.board.board(b)));
        all.retain(|c| free.min[axis] <= *c && *c + mine <= free.max[axis]);
        all.sort_unstable();
        all.dedup();
        all
    }

    fn place(&self, home: &Home, at: [Length; 2]) -> Place {
        let surface = &self.board.site().surfaces[home.surface as usize];
        let free = self.board.free(home.surface as usize);
        let mut min = free.min;
        min[surface.rest.axis] = surface.touch(free, home.extents);
        let [p, q] = surface.free_axes();
        (min[p], min[q]) = (at[0], at[1]);
        let max = std::array::from_fn(|a| min[a] + home.extents[a]);
        Place { home: *home, space: Box3::new(min, max) }
    }

    /// Whether a lot may be there: inside, clear of all boards and things, with the free height that is asked for, and
    /// carried.
    fn is_free(&self, lot: usize, place: &Place) -> bool {
        let site = self.board.site();
        let s = place.home.surface as usize;
        let surface = &site.surfaces[s];
        let raised = |l: usize, p: &Place| {
            let mut b = p.space;
            b.max[2] += self.board.headroom(l, p.home.surface as usize);
            b
        };
        let mine = raised(lot, place);
        let inside = self.board.free(s).contains(&mine);
        let boards = &site.spaces[surface.space].boards;
        let clear = !boards.iter().any(|&b| self.board.board(b).overlaps(&mine));
        let mut others = (0..site.lots.len()).filter(|&o| o != lot);
        let alone = !others.any(|o| {
            self.board
                .place(o)
                .is_some_and(|p| raised(o, p).overlaps(&place.space) || p.space.overlaps(&mine))
        });
        let there = self.board.place(lot).filter(|p| p.home.surface == place.home.surface);
        let load = self.board.load(s)
            + if there.is_some() { Default::default() } else { site.lots[lot].mass };
        let carried = surface.limit.is_none_or(|limit| load <= limit);
        let foot = |p: &Place| p.space.extent(0).as_mm() * p.space.extent(1).as_mm();
        let bench = self.board.bench_area() + foot(place) - there.map_or(0.0, foot);
        let kept = site.spaces[surface.space].kind != SpaceKind::Bench || bench <= site.bench_area;
        inside && clear && alone && carried && kept && has_way_out(&self.board, s, &place.space)
    }

    /// Every option for every lot from this one on.
    fn all(&mut self, order: &[usize]) {
        let Some((&lot, rest)) = order.split_first() else {
            self.weigh();
            return;
        };
        for option in self.options(lot) {
            if self.found.weighed >= 4 * WEIGHED {
                return;
            }
            self.put(lot, option);
            self.all(rest);
        }
        self.put(lot, None);
    }

    /// Puts one lot where the layout is then best.
    fn best(&mut self, lot: usize) {
        let mut best = (Score { broken: i64::MAX, ..Score::default() }, None);
        for option in self.options(lot) {
            self.put(lot, option);
            let score = self.weigh();
            if score < best.0 {
                best = (score, option);
            }
        }
        self.put(lot, best.1);
    }

    /// One thing after another where it is best, in an order drawn anew each time, and round again.
    fn one_by_one(&mut self, dice: &mut Dice, most: usize) {
        let lots = self.board.site().lots.len();
        while self.found.weighed < most {
            for lot in 0..lots {
                self.put(lot, None);
            }
            let mut order = drawn(dice, lots);
            // The first now and then goes anywhere, so that not every try ends alike.
            if dice.luck(60)
                && let Some(&first) = order.first()
            {
                let options = self.options(first);
                self.put(first, dice.one(&options));
                order.remove(0);
                order.push(first);
            }
            for _ in 0..2 {
                order.iter().for_each(|&lot| self.best(lot));
            }
            self.weigh();
        }
    }

    /// Places drawn from anywhere; what is no worse is kept.
    fn anywhere(&mut self, dice: &mut Dice) {
        let site = self.board.site();
        let mut now = self.weigh();
        for _ in 0..FREE {
            let lot = dice.whole(0, site.lots.len() as i64 - 1) as usize;
            if site.lots[lot].homes.is_empty() || site.lots[lot].fixed.is_some() {
                continue;
            }
            let home = dice.one(&site.lots[lot].homes);
            let [p, q] = site.surfaces[home.surface as usize].free_axes();
            let free = *self.board.free(home.surface as usize);
            let mut draw = |axis: usize| {
                let play = (free.extent(axis) - home.extents[axis]).as_nm();
                free.min[axis] + Length::nm(dice.whole(0, play))
            };
            let place = self.place(&home, [draw(p), draw(q)]);
            let before = self.board.place(lot).copied();
            if !self.is_free(lot, &place) {
                continue;
            }
            self.put(lot, Some(place));
            let score = self.weigh();
            if score <= now {
                now = score;
            } else {
                self.put(lot, before);
            }
        }
    }
}

/// Layouts of corner places that are tried, at most, in the comparison with the exact search.
const FEW: usize = 1500;

impl Trial<'_> {
    /// Whether a lot is pushed against something along both axes there: an end of the free box, a board or a thing.
    fn touches(&self, lot: usize, place: &Place) -> bool {
        let site = self.board.site();
        let surface = &site.surfaces[place.home.surface as usize];
        let raised = |l: usize, p: &Place| {
            let mut b = p.space;
            b.max[2] += self.board.headroom(l, p.home.surface as usize);
            b
        };
        let (mine, space) = (raised(lot, place), place.space);
        let free = self.board.free(place.home.surface as usize);
        let others = (0..site.lots.len()).filter(|&o| o != lot);
        let things = others
            .filter_map(|o| Some((self.board.place(o)?.space, raised(o, self.board.place(o)?))));
        let boards = site.spaces[surface.space].boards.iter().map(|&b| *self.board.board(b));
        let solids: Vec<(Box3, Box3)> = things.chain(boards.map(|b| (b, b))).collect();
        surface.free_axes().into_iter().all(|axis| {
            let at_end = space.min[axis] == free.min[axis] || space.max[axis] == free.max[axis];
            let beside = |(low, high): &(Box3, Box3)| {
                let meet = high.max[axis] == space.min[axis] || low.min[axis] == space.max[axis];
                let across = (0..3).filter(|&a| a != axis);
                let level = |a: usize| mine.meets_along(low, a) || space.meets_along(high, a);
                meet && across.clone().all(level)
            };
            at_end || solids.iter().any(beside)
        })
    }

    /// All lots that have a home, in every order, each in every corner place; `false` where these are too many.
    fn every_order(&mut self) -> bool {
        self.found.weighed += 1;
        if self.found.weighed > FEW {
            return false;
        }
        let lots = 0..self.board.site().lots.len();
        let waiting = lots.filter(|&l| {
            self.board.place(l).is_none() && !self.board.site().lots[l].homes.is_empty()
        });
        let waiting: Vec<usize> = waiting.collect();
        if waiting.is_empty() {
            self.weigh();
            return true;
        }
        for lot in waiting {
            for place in self.options(lot).into_iter().flatten() {
                if !self.touches(lot, &place) {
                    continue;
                }
                self.put(lot, Some(place));
                let few = self.every_order();
                self.put(lot, None);
                if !few {
                    return false;
                }
            }
        }
        true
    }
}

#[test]
fn the_exact_search_finds_the_cheapest_of_all_corner_places() {
    let (mut same, mut none) = (0, 0);
    for seed in 0..CARTS / 2 {
        let Ok(site) = Site::new(&cart(seed)) else { continue };
        let board = Board::new(&site);
        let mut trial = Trial { board, found: Cheapest::default(), touched: Touched::default() };
        if !trial.every_order() {
            continue;
        }
        let left_out: Price =
            site.lots.iter().filter(|l| l.homes.is_empty()).map(|l| l.off_cart).sum();
        let cheapest = trial.found.by_left_out.get(&left_out.as_us()).copied();
        // Told a cost that is easily beaten, so that it finds the best by itself.
        let cost = cheapest.map_or(1_000_000_000, |cost| 2 * cost + 1_000_000);
        let known = Score { off_cart: left_out.as_us(), cost, ..Score::default() };
        let Some(found) = exact(&site, &known, 5_000).filter(|f| f.exhausted) else { continue };
        let best = found.better.map(|(_, score)| score.cost);
        assert_eq!(best, cheapest, "cart {seed}");
        same += usize::from(best.is_some());
        none += usize::from(best.is_none());
    }
    assert!(same > 60, "{same} alike, {none} without a layout");
}

/// The numbers up to a count, in an order drawn at random.
fn drawn(dice: &mut Dice, count: usize) -> Vec<usize> {
    let mut left: Vec<usize> = (0..count).collect();
    let mut order = Vec::new();
    while !left.is_empty() {
        let next = dice.whole(0, left.len() as i64 - 1) as usize;
        order.push(left.swap_remove(next));
    }
    order
}

/// Fills a cart by trying, with its shelves where they are drawn and on other rows.
fn try_all(site: &Site, dice: &mut Dice) -> Cheapest {
    let drawn_at: Vec<Length> = site.boards.iter().map(|b| b.solid.max[2]).collect();
    let mut found = Cheapest::default();
    let rounds = if site.boards.iter().any(|b| b.moves()) { 4 } else { 1 };
    for round in 0..rounds {
        let mut rows = drawn_at.clone();
        if round > 0 {
            rows = site.boards.iter().map(|b| dice.one(&b.rows)).collect();
        }
        let board = Board::set_up(site, &rows, &[]);
        // Rows that have one shelf in or under the other make no cart.
        let apart = |(n, b): (usize, &toolberth::site::ShelfBoard)| {
            b.over.iter().all(|&o| board.board(n).max[2] < board.board(o).min[2])
        };
        if !site.boards.iter().enumerate().all(apart) {
            continue;
        }
        let mut trial = Trial { board, found, touched: Touched::default() };
        let order = drawn(dice, site.lots.len());
        let most = trial.found.weighed + WEIGHED;
        let few: usize = order.iter().map(|&l| trial.options(l).len()).product();
        if few < WEIGHED {
            trial.all(&order);
        }
        trial.one_by_one(dice, most);
        trial.anywhere(dice);
        found = trial.found;
    }
    found
}

#[test]
fn no_layout_found_by_trying_costs_less_than_the_bound() {
    let (mut held, mut gaps) = (0, Vec::new());
    let only: Option<u64> = std::env::var("CART").ok().and_then(|s| s.parse().ok());
    for seed in only.map_or(0..CARTS, |seed| seed..seed + 1) {
        let Ok(site) = Site::new(&cart(seed)) else { continue };
        if site.lots.len() > 6 {
            continue;
        }
        let found = try_all(&site, &mut Dice::new(seed));
        let mut cheapest = i64::MAX;
        for (left_out, cost) in found.by_left_out {
            if cost >= cheapest {
                continue;
            }
            cheapest = cost;
            // Told twice that cost as the known one: what it knows must not be why it holds.
            let least = bound(&site, Price::us(left_out), Price::us(2 * cost + 1_000_000)).as_us();
            assert!(least <= cost, "cart {seed}: {least} for {cost}, {left_out} left out");
            held += 1;
            gaps.extend((cost > 0).then(|| (cost - least) as f64 / cost as f64));
        }
    }
    gaps.sort_by(f64::total_cmp);
    let middle = gaps.get(gaps.len() / 2).copied().unwrap_or(1.0);
    println!("{held} bounds held; half of them are within {:.1} %", middle * 100.0);
    // A bound of nought would hold as well.
    assert!(
        only.is_some() || held > 2000 && middle < 0.1,
        "{held} held, the middle gap is {middle}"
    );
}
