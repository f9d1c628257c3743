//! The moves in an order that works by hand.
//!
//! A thing is moved only when its new place is free at that moment, what stands least in the way first. Where things wait
//! for each other in a ring, the lightest that opens it goes to a temporary place with real room: a free place on the
//! cart that nothing else is going to, else the bench, else the floor.

use super::{Shape, Standing, same_lot};
use crate::domain::{Face, Pose};
use crate::geometry::Box3;
use crate::score::{Closure, Ledger};
use crate::site::{Board, Change, Clearing, Place, Site, SpaceKind, Touched, corner_of, fits_at};
use crate::solve::{corners, trial};
use crate::tasks::outcome::Copy;
use crate::units::Length;

/// Where a thing is taken from or put.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Spot {
    /// Not on the cart before.
    New,
    /// Off the cart for good.
    Off,
    /// On the floor beside the cart for the moment.
    Floor,
    /// On the top of the cart for the moment, in that box.
    Bench(Box3),
    /// On a surface.
    On {
        /// The face.
        face: Face,
        /// The bay, drawer or panel; `bench` on top.
        bay: String,
        /// The surface.
        surface: String,
        /// How it is kept.
        pose: Pose,
        /// Whether it is turned.
        turned: bool,
        /// Its corner in the free box of the surface, as a layout says it.
        at: [Length; 2],
        /// Its box.
        space: Box3,
    },
}

/// One thing taken from one place to another.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Step {
    /// The item.
    pub item: String,
    /// Its copy, or the first of a pile or row; from 1.
    pub copy: u32,
    /// How many copies go together.
    pub copies: u32,
    /// How many copies there are of the item in all.
    pub of: u32,
    /// From where.
    pub from: Spot,
    /// To where.
    pub to: Spot,
    /// Whether it only waits there for its place to become free.
    pub temporary: bool,
    /// What stands in the way out or in and is lifted aside for the moment, in the order of lifting.
    pub aside: Vec<Copy>,
}

/// The steps from a layout as it stands to another one.
pub(super) fn steps(old: &Standing, end: Shape) -> Vec<Step> {
    let mut steps = Vec::new();
    let mut wheres = Vec::new();
    let places: Vec<Option<Place>> = end
        .site
        .lots
        .iter()
        .map(|lot| same_lot(&old.site, lot).and_then(|o| old.places[o]))
        .collect();
    let broken_up = divided_otherwise(old, end.site, &mut steps);
    for (l, lot) in end.site.lots.iter().enumerate() {
        let copies = lot.first..lot.first + lot.copies;
        let waits = broken_up.iter().any(|(item, copy)| *item == lot.item && copies.contains(copy));
        wheres.push(match (places[l].is_some(), waits) {
            (true, _) => At::Cart,
            (false, true) => At::Floor,
            (false, false) => At::New,
        });
    }
    let mut hands = Hands {
        board: Board::with(end.site, &places),
        target: end.places,
        at: wheres,
        steps,
        clearing: Clearing::default(),
    };
    while hands.next() {}
    hands.steps
}

/// Sets aside piles and rows that are taken apart or put together; the copies that wait then.
fn divided_otherwise(old: &Standing, site: &Site, steps: &mut Vec<Step>) -> Vec<(usize, u32)> {
    let mut board = Board::with(&old.site, &old.places);
    let mut waiting = Vec::new();
    let mut apart: Vec<usize> = (0..old.places.len())
        .filter(|&l| old.places[l].is_some() && same_lot(site, &old.site.lots[l]).is_none())
        .collect();
    while !apart.is_empty() {
        let aside = |&l: &usize| in_the_way(&board, l);
        let k = (0..apart.len()).min_by_key(|&k| aside(&apart[k]).len()).unwrap_or(0);
        let l = apart.remove(k);
        let lot = &old.site.lots[l];
        let from = board.place(l).map_or(Spot::New, |p| spot(&board, l, p));
        let aside = names(&old.site, &in_the_way(&board, l));
        steps.push(step(&old.site, l, from, Spot::Floor, true, aside));
        board.apply(Change { lot: l, to: None }, &mut Touched::default());
        waiting.extend((lot.first..lot.first + lot.copies).map(|copy| (lot.item, copy)));
    }
    waiting
}

/// Where a lot is while the steps are made.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
enum At {
    New,
    /// Where it was, or where it stays.
    Cart,
    /// In a place of the cart that nothing else is going to.
    Waiting,
    Floor,
    Bench(Box3),
    Off,
}

/// The cart while it is being changed.
struct Hands<'a> {
    board: Board<'a>,
    target: &'a [Option<Place>],
    at: Vec<At>,
    steps: Vec<Step>,
    clearing: Clearing,
}

impl Hands<'_> {
    /// Makes the next step; `false` where nothing is left to do.
    fn next(&mut self) -> bool {
        let pending: Vec<usize> = (0..self.target.len()).filter(|&l| self.is_pending(l)).collect();
        let ready: Vec<usize> = pending.iter().copied().filter(|&l| self.is_ready(l)).collect();
        let first = |hands: &Self, l: usize| (hands.aside(l).len(), hands.at[l] == At::New, l);
        if let Some(l) = ready.into_iter().min_by_key(|&l| first(self, l)) {
            self.settle(l);
        } else if let Some(l) = self.opens_ring(&pending) {
            self.set_aside(l, &pending);
        } else if let Some(&l) = pending.first() {
            // Nothing waits on the cart any more: only what was wrong with the old layout can still be in the way.
            self.settle(l);
        }
        !pending.is_empty()
    }

    fn is_pending(&self, l: usize) -> bool {
        let waits = matches!(self.at[l], At::Floor | At::Bench(_));
        self.board.place(l) != self.target[l].as_ref() || waits && self.target[l].is_none()
    }

    fn is_ready(&mut self, l: usize) -> bool {
        let Some(to) = self.target[l] else { return true };
        let top = self.board.site().size[2];
        let taken = self.at.iter().enumerate().any(|(o, at)| match at {
            At::Bench(b) => o != l && b.overlaps(&to.space) && to.space.min[2] >= top,
            _ => false,
        });
        !taken && fits_at(&self.board, l, &to, &mut self.clearing)
    }

    /// What must be lifted aside to take a lot out and to put it into its new place.
    fn aside(&self, l: usize) -> Vec<u32> {
        let mut all = in_the_way(&self.board, l);
        if let Some(to) = self.target[l] {
            add_in_the_way(&self.board, l, to, &mut all);
        }
        all
    }

    /// The lot on the cart that is best set aside: one that lets another go, and the lightest of those.
    fn opens_ring(&mut self, pending: &[usize]) -> Option<usize> {
        let on_cart: Vec<usize> =
            pending.iter().copied().filter(|&l| self.at[l] == At::Cart).collect();
        let mut best: Option<((bool, crate::units::Mass, usize), usize)> = None;
        for l in on_cart {
            let was = self.board.place(l).copied();
            self.put(l, None);
            let opens = pending.iter().any(|&o| o != l && self.is_ready(o));
            self.put(l, was);
            let key = (!opens, self.board.site().lots[l].mass, l);
            if best.is_none_or(|b| key < b.0) {
                best = Some((key, l));
            }
        }
        best.map(|b| b.1)
    }

    fn put(&mut self, l: usize, to: Option<Place>) {
        self.board.apply(Change { lot: l, to }, &mut Touched::default());
    }

    fn from(&self, l: usize) -> Spot {
        match (self.at[l], self.board.place(l)) {
            (At::Cart | At::Waiting, Some(place)) => spot(&self.board, l, place),
            (At::Floor, _) => Spot::Floor,
            (At::Bench(b), _) => Spot::Bench(b),
            (At::Off, _) => Spot::Off,
            _ => Spot::New,
        }
    }

    fn tell(&mut self, l: usize, to: Spot, temporary: bool, aside: &[u32]) {
        let site = self.board.site();
        let step = step(site, l, self.from(l), to, temporary, names(site, aside));
        self.steps.push(step);
    }

    /// Puts a lot where it stays.
    fn settle(&mut self, l: usize) {
        let aside = self.aside(l);
        let target = self.target[l];
        let to = target.map_or(Spot::Off, |p| spot(&self.board, l, &p));
        self.tell(l, to, false, &aside);
        self.put(l, target);
        self.at[l] = if target.is_some() { At::Cart } else { At::Off };
    }

    /// Puts a lot where it waits.
    fn set_aside(&mut self, l: usize, pending: &[usize]) {
        let mut aside = in_the_way(&self.board, l);
        if let Some(place) = self.free_slot(l, pending) {
            add_in_the_way(&self.board, l, place, &mut aside);
            self.tell(l, spot(&self.board, l, &place), true, &aside);
            self.put(l, Some(place));
            self.at[l] = At::Waiting;
            return;
        }
        let bench = self.free_bench(l, pending);
        self.tell(l, bench.map_or(Spot::Floor, Spot::Bench), true, &aside);
        self.put(l, None);
        self.at[l] = bench.map_or(At::Floor, At::Bench);
    }

    /// A free corner place that nothing is going to, that is open and stands in nobody's way, and breaks no further rule.
    fn free_slot(&mut self, l: usize, pending: &[usize]) -> Option<Place> {
        let mut places = corners(&self.board, l, &self.board.site().lots[l].homes);
        places.retain(|p| Some(p) != self.board.place(l) && !self.is_wanted(l, p, pending));
        let mut ledger = Ledger::new(&self.board);
        let broken = ledger.score().broken;
        places.into_iter().find(|&place| {
            let mut aside = Vec::new();
            add_in_the_way(&self.board, l, place, &mut aside);
            let change = [Change { lot: l, to: Some(place) }];
            aside.is_empty() && trial(&mut self.board, &mut ledger, &change).broken <= broken
        })
    }

    /// Whether something is going to a place, or still stands there and leaves, free height counted in.
    fn is_wanted(&self, l: usize, place: &Place, pending: &[usize]) -> bool {
        let over = |lot: usize, p: &Place| {
            let mut b = p.space;
            b.max[2] += self.board.headroom(lot, p.home.surface as usize);
            b
        };
        pending.iter().filter_map(|&o| self.target[o].map(|to| (o, to))).any(|(o, to)| {
            over(o, &to).overlaps(&place.space) || over(l, place).overlaps(&to.space)
        })
    }

    /// A free box on the top of the cart, as the thing stands.
    fn free_bench(&self, l: usize, pending: &[usize]) -> Option<Box3> {
        let site = self.board.site();
        let [wide, deep, top] = site.size;
        let size = site.lots[l].forms.first()?.dims;
        let here = (0..site.lots.len()).filter_map(|o| self.board.place(o));
        let coming = pending.iter().filter_map(|&o| self.target[o].as_ref());
        let mut taken: Vec<Box3> =
            here.chain(coming).map(|p| p.space).filter(|b| b.max[2] > top).collect();
        taken.extend(self.at.iter().filter_map(|at| match at {
            At::Bench(b) => Some(*b),
            _ => None,
        }));
        let ends = |axis: usize| {
            let mut all = vec![Length::ZERO];
            all.extend(taken.iter().map(|b| b.max[axis]));
            all.sort_unstable();
            all
        };
        let (xs, ys) = (ends(0), ends(1));
        xs.iter().flat_map(|&x| ys.iter().map(move |&y| (x, y))).find_map(|(x, y)| {
            let b = Box3::new([x, y, top], [x + size.w, y + size.d, top + size.h]);
            let fits = b.max[0] <= wide && b.max[1] <= deep;
            (fits && !taken.iter().any(|t| t.overlaps(&b))).then_some(b)
        })
    }
}

/// What stands in the way of taking a lot out, by the way with the fewest; in the order of lifting.
fn in_the_way(board: &Board, l: usize) -> Vec<u32> {
    let site = board.site();
    let Some(s) = board.space_of(l) else { return Vec::new() };
    if site.spaces[s].kind == SpaceKind::Bench {
        return Vec::new();
    }
    let ways = (0..site.spaces[s].ways.len()).filter(|&w| board.is_open(l, w));
    let all = ways.map(|way| {
        let mut closure = Closure::default();
        closure.find(board, l, way);
        let mut lots = closure.order(board, site.spaces[s].ways[way]);
        let mut ring: Vec<u32> =
            closure.lots.iter().copied().filter(|o| !lots.contains(o)).collect();
        ring.sort_unstable();
        lots.extend(ring);
        lots
    });
    all.min_by_key(Vec::len).unwrap_or_default()
}

/// Adds what stands in the way of putting a lot into a place.
fn add_in_the_way(board: &Board, l: usize, to: Place, all: &mut Vec<u32>) {
    let mut then = board.clone();
    then.apply(Change { lot: l, to: Some(to) }, &mut Touched::default());
    for other in in_the_way(&then, l) {
        if !all.contains(&other) {
            all.push(other);
        }
    }
}

fn names(site: &Site, lots: &[u32]) -> Vec<Copy> {
    lots.iter()
        .map(|&l| &site.lots[l as usize])
        .map(|lot| Copy { item: site.items[lot.item].name.clone(), copy: lot.first })
        .collect()
}

fn step(site: &Site, l: usize, from: Spot, to: Spot, temporary: bool, aside: Vec<Copy>) -> Step {
    let lot = &site.lots[l];
    let item = &site.items[lot.item];
    Step {
        item: item.name.clone(),
        copy: lot.first,
        copies: lot.copies,
        of: item.count,
        from,
        to,
        temporary,
        aside,
    }
}

fn spot(board: &Board, l: usize, place: &Place) -> Spot {
    let site = board.site();
    let s = place.home.surface as usize;
    let space = &site.spaces[site.surfaces[s].space];
    let form = &site.lots[l].forms[place.home.form as usize];
    Spot::On {
        face: space.face,
        bay: space.name.clone(),
        surface: site.surfaces[s].name.clone(),
        pose: form.pose,
        turned: form.turned,
        at: corner_of(site, s, board.free(s), &place.space),
        space: place.space,
    }
}
