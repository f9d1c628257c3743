//! Trial moves: each is legal in its geometry before anything is priced.

mod push;
mod repack;
mod rooms;
mod ruin;
mod shares;
mod shift;
mod skyline;

use super::zoning::Zoning;
use crate::score::way_prices;
use crate::site::{
    Board, Change, Clearing, Home, Place, Touched, fits_at, for_each_corner, has_way_out,
};
use crate::units::{Length, Price};
use rand::RngExt;
use rand::rngs::Xoshiro256PlusPlus;
use rooms::{Rooms, place_at};
use shares::{Kind, Kinds};

/// What undoes one change.
#[derive(Clone, Copy, Debug)]
enum Undo {
    /// A lot goes back.
    Lot(Change),
    /// A shelf goes back to that height.
    Shelf(usize, Length),
}

/// Makes trial moves on a board.
#[derive(Clone, Debug, Default)]
pub struct Mover {
    clearing: Clearing,
    /// What undoes the changes made so far, in the order of making.
    undo: Vec<Undo>,
    /// Lots that may be moved.
    movable: Vec<u32>,
    /// Shelves that may be moved.
    shelves: Vec<usize>,
    /// Lots that lost their place to another in this move.
    turned_out: Vec<u32>,
    rooms: Rooms,
    kinds: Kinds,
    /// For each two lots, the state of both their spaces in which they were found unable to change places, and how often.
    stuck: Vec<(u64, u8)>,
    /// For each home of each lot, the state in which turning things out there was in vain, and how often.
    barged: Vec<(u64, u8)>,
    packer: repack::Packer,
}

/// Where shelves may be moved, so many moves in a hundred move one.
const SHIFT: u32 = 3;
/// Most lots that one may turn out of their places.
const MOST_TURNED_OUT: usize = 4;
/// How many homes a lot that lost its place tries.
const TRIES: u32 = 12;
/// One home in so many is passed over.
const BLINK: u32 = 4;
/// How many of a lot's homes are gone through at most: a move is no dearer on a larger cart.
const LOOKS: usize = 32;
/// How often two lots may fail to change places before they are left in peace.
const STRIKES: u8 = 3;
/// How often turning things out of a home may be in vain before it is left in peace.
const VAIN: u8 = 4;
/// Of more lots than this, no record of failed changes is kept.
const MOST_PAIRED: usize = 500;
/// No state of a space.
const NEVER: u64 = u64::MAX;
/// How many homes are drawn for a lot before it is left where it is.
const DRAWS: u32 = 4;
/// How many other lots are considered for changing places.
const PARTNERS: u32 = 8;
/// Most lots that are placed anew at once.
const MOST_REBUILT: usize = 24;
/// Noise in choosing among places, in microseconds a fetch.
const NOISE: u32 = 300_000;

/// One of a lot's homes, a cheap one more likely.
fn cheap_home(zoning: &Zoning, lot: usize, rng: &mut Xoshiro256PlusPlus) -> usize {
    let all = zoning.by_price(lot);
    let count = all.len() as u32;
    let draw = rng.random_range(0..count).min(rng.random_range(0..count));
    all[draw as usize] as usize
}

/// A place in a long list, near its beginning more likely; the beginning of a list that can be gone through whole.
fn near_the_first(count: usize, rng: &mut Xoshiro256PlusPlus) -> usize {
    if count <= LOOKS {
        return 0;
    }
    let draw = |rng: &mut Xoshiro256PlusPlus| rng.random_range(0..count as u32) as usize;
    draw(rng).min(draw(rng)).min(count - LOOKS)
}

/// Sorts lots by bulk or by use, roughly: the greatest first, more or less.
fn sort_roughly(board: &Board, lots: &mut [usize], rng: &mut Xoshiro256PlusPlus) {
    let by_use = rng.random_range(0..2u32) == 0;
    lots.sort_by_cached_key(|&l| {
        let one = &board.site().lots[l];
        let bulk = if by_use { one.uses.as_nano() } else { one.bulk };
        (std::cmp::Reverse(bulk / 100 * i64::from(rng.random_range(50..150u32))), l)
    });
}

/// Whether a lot that is on the cart has its free height where it is, no board in its place and a way out.
fn is_clear(board: &Board, lot: usize) -> bool {
    let Some(place) = board.place(lot) else { return true };
    let site = board.site();
    let space = &site.spaces[site.surfaces[place.home.surface as usize].space];
    let mut need = place.space;
    need.max[2] += board.over(lot);
    need.max[2] <= board.free(place.home.surface as usize).max[2]
        && !space.boards.iter().any(|&b| need.overlaps(board.board(b)))
        && (0..space.ways.len()).any(|way| board.is_open(lot, way))
}

impl Mover {
    /// For a board's lots that are not fixed and have a home at all.
    pub fn new(board: &Board, zoning: &Zoning) -> Mover {
        let lots = &board.site().lots;
        let movable = (0..lots.len() as u32)
            .filter(|&l| lots[l as usize].fixed.is_none() && !zoning.homes[l as usize].is_empty())
            .collect();
        let pairs = if lots.len() <= MOST_PAIRED { lots.len() * lots.len() } else { 0 };
        Mover {
            movable,
            shelves: shift::movable(board),
            rooms: Rooms::new(zoning, board.site().surfaces.len()),
            stuck: vec![(NEVER, 0); pairs],
            barged: vec![(NEVER, 0); zoning.count()],
            ..Mover::default()
        }
    }

    /// Whether nothing can be moved at all.
    pub fn is_idle(&self) -> bool {
        self.movable.is_empty()
    }

    /// Makes one random legal move on the board; `false` where the draw was not legal and nothing changed.
    pub fn step(
        &mut self,
        board: &mut Board,
        zoning: &Zoning,
        rng: &mut Xoshiro256PlusPlus,
        touched: &mut Touched,
    ) -> bool {
        self.undo.clear();
        touched.clear();
        let lot = self.any(rng);
        let done = if !self.shelves.is_empty() && rng.random_range(0..100u32) < SHIFT {
            self.kinds.pass();
            self.shift(board, zoning, rng, touched)
        } else {
            match self.kinds.draw(board.place(lot).is_some(), rng) {
                Kind::Relocate => self.relocate(board, zoning, lot, rng, touched),
                Kind::Swap => self.swap(board, zoning, lot, rng, touched),
                Kind::Nudge => self.nudge(board, zoning, lot, rng, touched),
                Kind::Trade => self.trade(board, zoning, lot, rng, touched),
                Kind::PushIn => self.push_in(board, zoning, lot, rng, touched),
                Kind::Barge => self.barge(board, zoning, lot, rng, touched),
                Kind::Ruin => self.ruin(board, zoning, lot, rng, touched),
                Kind::Rebuild => self.rebuild(board, zoning, lot, rng, touched),
                Kind::Repack => self.repack(board, zoning, lot, rng, touched),
            }
        };
        if !done {
            self.take_back(board, touched);
        }
        done
    }

    /// The last step made the best layout of the run.
    pub fn note_useful(&mut self) {
        self.kinds.note_useful();
    }

    /// Undoes what the last step did.
    pub fn take_back(&mut self, board: &mut Board, touched: &mut Touched) {
        touched.deaf = true;
        while let Some(undo) = self.undo.pop() {
            match undo {
                Undo::Lot(change) => {
                    board.apply(change, touched);
                }
                Undo::Shelf(shelf, top) => {
                    board.shift(shelf, top, touched);
                }
            }
        }
        touched.deaf = false;
    }

    fn any(&self, rng: &mut Xoshiro256PlusPlus) -> usize {
        self.movable[rng.random_range(0..self.movable.len() as u32) as usize] as usize
    }

    fn change(&mut self, board: &mut Board, lot: usize, to: Option<Place>, touched: &mut Touched) {
        let undo = board.apply(Change { lot, to }, touched);
        self.undo.push(Undo::Lot(undo));
    }

    /// One lot to a corner place anywhere.
    fn relocate(
        &mut self,
        board: &mut Board,
        zoning: &Zoning,
        lot: usize,
        rng: &mut Xoshiro256PlusPlus,
        touched: &mut Touched,
    ) -> bool {
        for _ in 0..PARTNERS {
            let n = cheap_home(zoning, lot, rng);
            if self.settle(board, zoning, lot, n, rng, touched) {
                return true;
            }
        }
        false
    }

    /// One lot to another corner place, pose or turn on its own surface.
    fn nudge(
        &mut self,
        board: &mut Board,
        zoning: &Zoning,
        lot: usize,
        rng: &mut Xoshiro256PlusPlus,
        touched: &mut Touched,
    ) -> bool {
        let Some(place) = board.place(lot) else { return false };
        let there = zoning.there(lot, place.home.surface);
        if there.is_empty() {
            return false;
        }
        let n = rng.random_range(there.start as u32..there.end as u32) as usize;
        self.settle(board, zoning, lot, n, rng, touched)
    }

    /// One lot to a free corner place in the n-th of its homes, other than where it is.
    fn settle(
        &mut self,
        board: &mut Board,
        zoning: &Zoning,
        lot: usize,
        n: usize,
        rng: &mut Xoshiro256PlusPlus,
        touched: &mut Touched,
    ) -> bool {
        let Some(place) = self.room(board, zoning, lot, n, rng) else { return false };
        if board.place(lot) == Some(&place) {
            return false;
        }
        self.change(board, lot, Some(place), touched);
        true
    }

    /// A free corner place in the n-th home of a lot. In the midst of a move what was found before is still looked at;
    /// where the space has changed one is drawn, as that state will hardly come again.
    fn room(
        &mut self,
        board: &Board,
        zoning: &Zoning,
        lot: usize,
        n: usize,
        rng: &mut Xoshiro256PlusPlus,
    ) -> Option<Place> {
        let home = &zoning.homes[lot][n];
        let at_rest = self.undo.is_empty();
        let Some(corners) = self.rooms.of(board, zoning, lot, n, at_rest, &mut self.clearing)
        else {
            return self.draw_room(board, lot, home, rng);
        };
        let any = !corners.is_empty();
        any.then(|| place_at(home, corners[rng.random_range(0..corners.len() as u32) as usize]))
    }

    /// Draws an edge on one axis and slides to contact on the other.
    fn draw_room(
        &mut self,
        board: &Board,
        lot: usize,
        home: &Home,
        rng: &mut Xoshiro256PlusPlus,
    ) -> Option<Place> {
        let surface = home.surface as usize;
        let own = board.place(lot).is_some_and(|p| p.home.surface == home.surface);
        let small = own || home.area <= board.left(surface);
        if !small || !self.clearing.look(board, lot, home) {
            return None;
        }
        // Looking is dear, drawing is cheap: a few draws for each look.
        (0..DRAWS).find_map(|_| {
            let k = rng.random_range(0..2u32) as usize;
            let drawn = self.edge(k, rng)?;
            let up = rng.random_range(0..2u32) == 0;
            let from = self.clearing.range(1 - k)[usize::from(!up)];
            let slid = self.clearing.slide(1 - k, drawn, from, up)?;
            let (p, q) = if k == 0 { (drawn, slid) } else { (slid, drawn) };
            let space = self.clearing.at(p, q);
            has_way_out(board, surface, &space).then_some(Place { home: *home, space })
        })
    }

    /// The state of both spaces of two lots, and where the record of their failures is.
    fn both(&self, board: &Board, one: usize, other: usize) -> Option<(usize, u64)> {
        let at = one * board.site().lots.len() + other;
        let (a, b) = (board.space_of(one)?, board.space_of(other)?);
        let state = board.state(a).rotate_left(1) ^ board.state(b);
        (at < self.stuck.len()).then_some((at, state))
    }

    /// Whether two lots have failed often enough to change places, and nothing has changed since.
    fn is_stuck(&self, board: &Board, one: usize, other: usize) -> bool {
        self.both(board, one, other).is_some_and(|(at, state)| self.stuck[at] == (state, STRIKES))
    }

    fn note_stuck(&mut self, board: &Board, one: usize, other: usize) {
        if let Some((at, state)) = self.both(board, one, other) {
            let strikes = if self.stuck[at].0 == state { self.stuck[at].1 } else { 0 };
            self.stuck[at] = (state, (strikes + 1).min(STRIKES));
        }
    }

    /// An end of the surface, or a coordinate at which the lot touches another thing.
    fn edge(&self, k: usize, rng: &mut Xoshiro256PlusPlus) -> Option<Length> {
        let n = self.clearing.len() as u32;
        for _ in 0..DRAWS {
            let draw = rng.random_range(0..2 * n + 2);
            let c = match draw {
                0 => self.clearing.range(k)[0],
                1 => self.clearing.range(k)[1],
                _ => self.clearing.edge((draw as usize - 2) / 2, k, draw % 2 == 0),
            };
            if self.clearing.within(k, c) {
                return Some(c);
            }
        }
        None
    }

    /// Two lots change places.
    fn swap(
        &mut self,
        board: &mut Board,
        zoning: &Zoning,
        one: usize,
        rng: &mut Xoshiro256PlusPlus,
        touched: &mut Touched,
    ) -> bool {
        let Some((other, to_b, to_a)) = self.partner(board, zoning, one, rng) else {
            return false;
        };
        let (Some(a), Some(b)) = (board.place(one).copied(), board.place(other).copied()) else {
            return false;
        };
        let one_there = self.corner_of(board, [one, other], &to_b, &b, rng);
        let other_there =
            one_there.and_then(|_| self.corner_of(board, [other, one], &to_a, &a, rng));
        let (Some(one_there), Some(other_there)) = (one_there, other_there) else {
            self.note_stuck(board, one, other);
            return false;
        };
        self.change(board, one, None, touched);
        self.change(board, other, Some(other_there), touched);
        // Within one space the two may still be in each other's place.
        let site = board.site();
        let space = |home: &Home| site.surfaces[home.surface as usize].space;
        let (x, y) = (space(&to_a), space(&to_b));
        let apart = x != y && !site.spaces[x].near.contains(&y);
        if !apart && !fits_at(board, one, &one_there, &mut self.clearing) {
            return false;
        }
        self.change(board, one, Some(one_there), touched);
        true
    }

    /// Another lot that could change places with this one, with the forms that both would take.
    fn partner(
        &self,
        board: &Board,
        zoning: &Zoning,
        one: usize,
        rng: &mut Xoshiro256PlusPlus,
    ) -> Option<(usize, Home, Home)> {
        let a = board.place(one)?;
        (0..PARTNERS).find_map(|_| {
            let other = self.any(rng);
            let b = board.place(other)?;
            if one == other || board.site().lots[one].item == board.site().lots[other].item {
                return None;
            }
            let to_b = Self::form_on(zoning, one, b, rng)?;
            let to_a = Self::form_on(zoning, other, a, rng)?;
            let room = |home: &Home, place: &Place| {
                home.area <= board.left(home.surface as usize) + place.home.area
            };
            let same = a.home.surface == b.home.surface;
            if self.is_stuck(board, one, other) {
                return None;
            }
            (same || room(&to_b, b) && room(&to_a, a)).then_some((other, to_b, to_a))
        })
    }

    /// A lot takes a corner place as if the things there were not, and those look for another place: first where it
    /// came from, then anywhere; what finds none goes off the cart.
    fn barge(
        &mut self,
        board: &mut Board,
        zoning: &Zoning,
        lot: usize,
        rng: &mut Xoshiro256PlusPlus,
        touched: &mut Touched,
    ) -> bool {
        let homes = &zoning.homes[lot];
        let drawn = (0..PARTNERS).find_map(|_| {
            let n = cheap_home(zoning, lot, rng);
            let home = homes[n];
            let space = board.site().surfaces[home.surface as usize].space;
            let number = zoning.number(lot, n);
            let state = board.state(space);
            (self.barged[number] != (state, VAIN)).then_some((home, number, state))
        });
        let Some((home, number, state)) = drawn else { return false };
        let seated = self.barge_into(board, zoning, lot, &home, rng, touched);
        if !seated {
            let vain = if self.barged[number].0 == state { self.barged[number].1 } else { 0 };
            self.barged[number] = (state, (vain + 1).min(VAIN));
        }
        seated
    }

    fn barge_into(
        &mut self,
        board: &mut Board,
        zoning: &Zoning,
        lot: usize,
        home: &Home,
        rng: &mut Xoshiro256PlusPlus,
        touched: &mut Touched,
    ) -> bool {
        let home = *home;
        let before = board.place(lot).copied();
        if !self.clearing.look(board, lot, &home) {
            return false;
        }
        let (Some(p), Some(q)) = (self.edge(0, rng), self.edge(1, rng)) else { return false };
        let place = Place { home, space: self.clearing.at(p, q) };
        if before == Some(place) || !self.make_room(board, lot, &place, touched) {
            return false;
        }
        if !fits_at(board, lot, &place, &mut self.clearing) {
            return false;
        }
        self.change(board, lot, Some(place), touched);
        let mut turned_out = std::mem::take(&mut self.turned_out);
        // The bulky ones find a place least easily: they choose first.
        turned_out.sort_by_key(|&o| (std::cmp::Reverse(board.site().lots[o as usize].mass), o));
        // What is worth no less than the lot must not go off the cart for it.
        let mut spare =
            if before.is_none() { board.site().lots[lot].off_cart } else { Price::ZERO };
        let mut seated = true;
        for &other in &turned_out {
            let other = other as usize;
            if !self.resettle(board, zoning, other, before.as_ref(), rng, touched) {
                spare -= board.site().lots[other].off_cart;
                if spare <= Price::ZERO {
                    seated = false;
                    break;
                }
            }
        }
        self.turned_out = turned_out;
        seated
    }

    /// Lifts what is in the way of a lot at a place; `false` where that is too much or may not be moved.
    fn make_room(
        &mut self,
        board: &mut Board,
        lot: usize,
        place: &Place,
        touched: &mut Touched,
    ) -> bool {
        let site = board.site();
        let s = place.home.surface as usize;
        let space = &site.spaces[site.surfaces[s].space];
        let mut need = place.space;
        need.max[2] += board.headroom(lot, s);
        self.turned_out.clear();
        for &other in std::iter::once(&site.surfaces[s].space).chain(&space.near) {
            for &m in board.members(other) {
                let Some(there) = board.place(m as usize) else { continue };
                let mut its = there.space;
                its.max[2] += board.headroom(m as usize, there.home.surface as usize);
                if m as usize != lot && (need.overlaps(&there.space) || its.overlaps(&place.space))
                {
                    self.turned_out.push(m);
                }
            }
        }
        if self.turned_out.len() > MOST_TURNED_OUT
            || self.turned_out.iter().any(|&m| site.lots[m as usize].fixed.is_some())
        {
            return false;
        }
        // Neighbours are kept in no order that means anything; moves must be made in one that does.
        self.turned_out.sort_unstable();
        for k in 0..self.turned_out.len() {
            self.change(board, self.turned_out[k] as usize, None, touched);
        }
        true
    }

    /// Looks for a place for a lot that lost its own.
    fn resettle(
        &mut self,
        board: &mut Board,
        zoning: &Zoning,
        lot: usize,
        first: Option<&Place>,
        rng: &mut Xoshiro256PlusPlus,
        touched: &mut Touched,
    ) -> bool {
        if let Some(there) = first
            && let Some(home) = Self::form_on(zoning, lot, there, rng)
            && self.stand_in(board, lot, &home, there, rng, touched)
        {
            return true;
        }
        // The cheapest that has room, from somewhere near the cheapest on; now and then one is passed over.
        let homes = zoning.by_price(lot);
        let begin = near_the_first(homes.len(), rng);
        let mut tries = TRIES;
        for &n in homes[begin..].iter().take(LOOKS) {
            if rng.random_range(0..BLINK) == 0 {
                continue;
            }
            let known = self.rooms.knows(board, zoning, lot, n as usize);
            if self.settle(board, zoning, lot, n as usize, rng, touched) {
                return true;
            }
            tries -= u32::from(!known);
            if tries == 0 {
                break;
            }
        }
        false
    }

    /// Empties the space of a lot and fills it anew, one lot after the other into its best corner place there; what finds
    /// none looks elsewhere. Lots off the cart that could be there take part.
    fn rebuild(
        &mut self,
        board: &mut Board,
        zoning: &Zoning,
        lot: usize,
        rng: &mut Xoshiro256PlusPlus,
        touched: &mut Touched,
    ) -> bool {
        let Some(space) = board.space_of(lot) else { return false };
        let mut lots = self.crew(board, zoning, space);
        if lots.len() > MOST_REBUILT {
            return false;
        }
        for &l in &lots {
            if board.place(l).is_some() {
                self.change(board, l, None, touched);
            }
        }
        sort_roughly(board, &mut lots, rng);
        for l in lots {
            if !self.best_in(board, zoning, l, space, rng, touched) {
                self.resettle(board, zoning, l, None, rng, touched);
            }
        }
        true
    }

    /// The lots of a space that may be moved, and those off the cart that could be there; in the order of the file.
    fn crew(&self, board: &Board, zoning: &Zoning, space: usize) -> Vec<usize> {
        let site = board.site();
        let could = |l: usize| {
            zoning.homes[l].iter().any(|h| site.surfaces[h.surface as usize].space == space)
        };
        let movable = self.movable.iter().map(|&l| l as usize);
        movable
            .filter(|&l| match board.space_of(l) {
                Some(s) => s == space,
                None => could(l),
            })
            .collect()
    }

    /// Puts a lot into its best free corner place in a space, by walking and reaching alone.
    fn best_in(
        &mut self,
        board: &mut Board,
        zoning: &Zoning,
        lot: usize,
        space: usize,
        rng: &mut Xoshiro256PlusPlus,
        touched: &mut Touched,
    ) -> bool {
        let site = board.site();
        let mut best: Option<(i64, Place)> = None;
        for home in &zoning.homes[lot] {
            if site.surfaces[home.surface as usize].space != space {
                continue;
            }
            for_each_corner(board, lot, home, &mut self.clearing, |place| {
                let each = way_prices(site, lot, &place).map(|(_, t)| t.as_us()).min();
                if let Some(each) = each {
                    // A little noise, so that equal places are not always filled from the same end.
                    let price = each + i64::from(rng.random_range(0..NOISE));
                    if best.as_ref().is_none_or(|b| price < b.0) {
                        best = Some((price, place));
                    }
                }
                true
            });
        }
        if let Some((_, place)) = best {
            self.change(board, lot, Some(place), touched);
        }
        best.is_some()
    }

    fn form_on(
        zoning: &Zoning,
        lot: usize,
        place: &Place,
        rng: &mut Xoshiro256PlusPlus,
    ) -> Option<Home> {
        let homes = zoning.on_surface(lot, place.home.surface);
        (!homes.is_empty()).then(|| homes[rng.random_range(0..homes.len() as u32) as usize])
    }

    /// Puts a lot where another stood: at one of its corners, slid free along one axis.
    fn stand_in(
        &mut self,
        board: &mut Board,
        lot: usize,
        home: &Home,
        there: &Place,
        rng: &mut Xoshiro256PlusPlus,
        touched: &mut Touched,
    ) -> bool {
        let Some(place) = self.corner_of(board, [lot, lot], home, there, rng) else {
            return false;
        };
        self.change(board, lot, Some(place), touched);
        true
    }

    /// Where a lot could stand in for another, with both lifted: at one of the other's corners, slid free along one axis.
    fn corner_of(
        &mut self,
        board: &Board,
        past: [usize; 2],
        home: &Home,
        there: &Place,
        rng: &mut Xoshiro256PlusPlus,
    ) -> Option<Place> {
        if !self.clearing.look_past(board, past[0], past[1], home) {
            return None;
        }
        let axes = board.site().surfaces[home.surface as usize].free_axes();
        (0..DRAWS).find_map(|_| {
            let draw = rng.random_range(0..8u32);
            let mut at = [Length::ZERO; 2];
            for (k, &axis) in axes.iter().enumerate() {
                at[k] = if draw >> k & 1 == 0 {
                    there.space.min[axis]
                } else {
                    there.space.max[axis] - home.extents[axis]
                };
                let [low, high] = self.clearing.range(k);
                at[k] = at[k].clamp(low, high);
            }
            let k = (draw >> 2) as usize;
            let up = draw >> (1 - k) & 1 == 0;
            at[1 - k] = self.clearing.slide(1 - k, at[k], at[1 - k], up)?;
            let space = self.clearing.at(at[0], at[1]);
            has_way_out(board, home.surface as usize, &space)
                .then_some(Place { home: *home, space })
        })
    }
}
