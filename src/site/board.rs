//! The board: where everything is now.
//!
//! It can hold any layout, illegal ones too; legality is asked of it before a change, not enforced by it.
//! It says itself what a change touches, before and after, and a change is undone by its opposite.

use super::stability::twice_moment;
use super::surface::SpaceKind;
use super::{Home, Site};
use crate::geometry::{Box3, Way};
use crate::units::{Length, Mass};

/// Where a lot is.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Place {
    /// Surface, form and reach along the axes.
    pub home: Home,
    /// Its box.
    pub space: Box3,
}

/// A change of the board.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Change {
    /// The lot.
    pub lot: usize,
    /// Where it goes; `None` takes it off the cart.
    pub to: Option<Place>,
}

/// What changes touched: every subject whose price may differ.
#[derive(Clone, Debug)]
pub struct Touched {
    /// Lots that moved, and all that they stand or stood in the way of.
    pub lots: Vec<u32>,
    /// Lots that moved themselves.
    pub moved: Vec<u32>,
    /// Surfaces whose load changed.
    pub surfaces: Vec<u32>,
    seen: Vec<u32>,
    round: u32,
    /// Whether nothing is noted: when changes are taken back, what they touch is known already.
    pub deaf: bool,
}

impl Default for Touched {
    fn default() -> Touched {
        // Rounds count from 1, so that nothing is seen before the first.
        Touched {
            lots: Vec::new(),
            moved: Vec::new(),
            surfaces: Vec::new(),
            seen: Vec::new(),
            round: 1,
            deaf: false,
        }
    }
}

impl Touched {
    /// Forgets everything.
    pub fn clear(&mut self) {
        self.lots.clear();
        self.moved.clear();
        self.surfaces.clear();
        self.round += 1;
    }
    fn lot(&mut self, lot: u32) -> bool {
        let i = lot as usize;
        if self.seen.len() <= i {
            self.seen.resize(i + 1, 0);
        }
        let new = self.seen[i] != self.round;
        if new {
            self.seen[i] = self.round;
            self.lots.push(lot);
        }
        new
    }
    fn moved(&mut self, lot: u32, surface: u32) {
        if self.deaf {
            return;
        }
        if !self.moved.contains(&lot) {
            self.moved.push(lot);
        }
        if !self.surfaces.contains(&surface) {
            self.surfaces.push(surface);
        }
    }
}

/// Where everything is now.
#[derive(Clone, Debug)]
pub struct Board<'s> {
    site: &'s Site,
    places: Vec<Option<Place>>,
    /// Free boxes of the surfaces: they follow the shelves.
    free: Vec<Box3>,
    /// Shelf boards where they are now.
    boards: Vec<Box3>,
    /// Lots in each space.
    members: Vec<Vec<u32>>,
    /// For each lot and way: what stands directly in its way.
    blockers: Vec<[Vec<u32>; 2]>,
    /// For each lot: whose way it stands in, and by which way (lot × 2 + way).
    hinders: Vec<Vec<u32>>,
    /// For each lot and way: whether no board crosses its way.
    open: Vec<[bool; 2]>,
    /// The free height that each lot needs where it is.
    over: Vec<Length>,
    /// How many others share volume or free height with each lot.
    tangles: Vec<u32>,
    loads: Vec<Mass>,
    /// What is left of each surface's area, in square micrometres.
    left: Vec<i64>,
    /// A mark of what is where in each space: the same again when the same things are in the same places.
    states: Vec<u64>,
    mass: Mass,
    moments: [i128; 3],
    /// Footprint of what stands on the bench, in square millimetres times 10¹².
    bench: i128,
}

impl<'s> Board<'s> {
    /// An empty cart.
    pub fn new(site: &'s Site) -> Board<'s> {
        Board {
            site,
            places: vec![None; site.lots.len()],
            free: site.surfaces.iter().map(|s| s.free).collect(),
            boards: site.boards.iter().map(|b| b.solid).collect(),
            members: vec![Vec::new(); site.spaces.len()],
            blockers: vec![[Vec::new(), Vec::new()]; site.lots.len()],
            hinders: vec![Vec::new(); site.lots.len()],
            open: vec![[true; 2]; site.lots.len()],
            over: vec![Length::ZERO; site.lots.len()],
            tangles: vec![0; site.lots.len()],
            loads: vec![Mass::ZERO; site.surfaces.len()],
            left: site.surfaces.iter().map(|s| s.area).collect(),
            states: vec![0; site.spaces.len()],
            mass: site.statics.carcass,
            moments: site.statics.carcass_moments,
            bench: 0,
        }
    }
    /// A cart with everything in those places.
    pub fn with(site: &'s Site, places: &[Option<Place>]) -> Board<'s> {
        let mut board = Board::new(site);
        board.fill(places);
        board
    }
    /// The question that it answers.
    pub fn site(&self) -> &'s Site {
        self.site
    }
    /// Where a lot is.
    #[inline]
    pub fn place(&self, lot: usize) -> Option<&Place> {
        self.places[lot].as_ref()
    }
    /// Where all lots are.
    pub fn places(&self) -> &[Option<Place>] {
        &self.places
    }
    /// The free box of a surface as the shelves are now.
    #[inline]
    pub fn free(&self, surface: usize) -> &Box3 {
        &self.free[surface]
    }
    /// A shelf board as it is now.
    pub fn board(&self, board: usize) -> &Box3 {
        &self.boards[board]
    }
    /// The lots in a space, in no order that means anything.
    #[inline]
    pub fn members(&self, space: usize) -> &[u32] {
        &self.members[space]
    }
    /// What is on a surface, in no order that means anything.
    pub fn on(&self, surface: usize) -> impl Iterator<Item = (usize, &Place)> + Clone {
        let space = self.site.surfaces[surface].space;
        self.members[space].iter().filter_map(move |&lot| {
            let place = self.place(lot as usize)?;
            (place.home.surface as usize == surface).then_some((lot as usize, place))
        })
    }
    /// What stands directly in a lot's way, in no order that means anything.
    #[inline]
    pub fn blockers(&self, lot: usize, way: usize) -> &[u32] {
        &self.blockers[lot][way]
    }
    /// Whether no board crosses a lot's way.
    #[inline]
    pub fn is_open(&self, lot: usize, way: usize) -> bool {
        self.open[lot][way]
    }
    /// The free height that a lot needs where it is now.
    #[inline]
    pub fn over(&self, lot: usize) -> Length {
        self.over[lot]
    }
    /// How many others share volume or free height with a lot; nought in every legal layout.
    #[inline]
    pub fn tangles(&self, lot: usize) -> usize {
        self.tangles[lot] as usize
    }
    /// One that shares volume or free height with a lot, the first by number; `None` in every legal layout.
    pub fn tangled(&self, lot: usize) -> Option<u32> {
        let place = self.places[lot]?;
        let space = self.site.surfaces[place.home.surface as usize].space;
        let near = &self.site.spaces[space].near;
        let all = std::iter::once(&space).chain(near).flat_map(|&s| self.members[s].iter());
        let meets = |m: &u32| {
            let other = self.places[*m as usize].filter(|_| *m as usize != lot);
            other.is_some_and(|o| self.in_one_place(lot, *m as usize, &place.space, &o.space))
        };
        all.copied().filter(meets).min()
    }
    /// What a surface carries.
    #[inline]
    pub fn load(&self, surface: usize) -> Mass {
        self.loads[surface]
    }
    /// What is left of a surface's area, in square micrometres: less than a thing's own area means that it cannot be there.
    #[inline]
    pub fn left(&self, surface: usize) -> i64 {
        self.left[surface]
    }
    /// A mark of what is where in a space and in those that it may collide with: the same again when the same things are in
    /// the same places, and hardly ever otherwise.
    #[inline]
    pub fn state(&self, space: usize) -> u64 {
        let near = self.site.spaces[space].near.iter();
        near.fold(self.states[space], |mark, &n| mark.rotate_left(7) ^ self.states[n])
    }
    /// Mass of the whole cart, and twice its first moments (ng·nm).
    pub fn sums(&self) -> (Mass, [i128; 3]) {
        (self.mass, self.moments)
    }
    /// Footprint of what stands on the bench, in square millimetres.
    pub fn bench_area(&self) -> f64 {
        self.bench as f64 / 1e12
    }
    /// The space that a lot is in.
    pub fn space_of(&self, lot: usize) -> Option<usize> {
        self.places[lot].map(|p| self.site.surfaces[p.home.surface as usize].space)
    }

    /// How high the tops of all shelf boards are.
    pub fn shelves(&self) -> impl Iterator<Item = Length> {
        self.boards.iter().map(|b| b.max[2])
    }

    /// A cart with its shelves at those heights and everything in those places.
    pub fn set_up(site: &'s Site, shelves: &[Length], places: &[Option<Place>]) -> Board<'s> {
        let mut board = Board::new(site);
        let mut touched = Touched::default();
        for (k, top) in shelves.iter().enumerate() {
            board.shift(k, *top, &mut touched);
        }
        board.fill(places);
        board
    }

    fn fill(&mut self, places: &[Option<Place>]) {
        let mut touched = Touched::default();
        for (lot, place) in places.iter().enumerate() {
            if place.is_some() {
                self.apply(Change { lot, to: *place }, &mut touched);
            }
        }
    }

    /// Moves a shelf to another height, with all that is on it, adds what that touches, and gives the height that it had.
    ///
    /// Whether anything is then in the way of anything is for its mover to know.
    pub fn shift(&mut self, board: usize, top: Length, touched: &mut Touched) -> Length {
        let site = self.site;
        let before = self.boards[board].max[2];
        if before == top {
            return before;
        }
        let shelf = &site.boards[board];
        let riders: Vec<(usize, Place)> = self.members[shelf.space]
            .iter()
            .filter_map(|&m| Some((m as usize, self.places[m as usize]?)))
            .filter(|(_, place)| place.home.surface as usize == shelf.surface)
            .collect();
        riders.iter().for_each(|(lot, _)| self.lift(*lot, touched));
        self.boards[board] = shelf.at(top);
        self.free[shelf.surface].min[2] = top;
        for &other in &site.spaces[shelf.space].boards {
            if site.boards[other].over.contains(&board) {
                self.set_ceiling(other);
            }
        }
        self.states[shelf.space] ^= row_mark(board, before) ^ row_mark(board, top);
        for k in 0..self.members[shelf.space].len() {
            let lot = self.members[shelf.space][k];
            self.open_ways(lot as usize);
            self.touch_up(lot, touched);
        }
        for (lot, mut place) in riders {
            place.space.min[2] += top - before;
            place.space.max[2] += top - before;
            self.put(lot, place, touched);
        }
        before
    }

    /// Sets how high the free box over a shelf reaches: to the next board over it, or to the top of its bay.
    fn set_ceiling(&mut self, board: usize) {
        let shelf = &self.site.boards[board];
        let bay = self.site.spaces[shelf.space].volume.max[2];
        let over = shelf.over.iter().map(|&o| self.boards[o].min[2]).min().unwrap_or(bay);
        self.free[shelf.surface].max[2] = over;
    }

    /// Notes which ways out of a lot no board crosses.
    fn open_ways(&mut self, lot: usize) {
        let Some(place) = self.places[lot] else { return };
        let s = self.site.surfaces[place.home.surface as usize].space;
        for way in 0..self.site.spaces[s].ways.len() {
            self.open[lot][way] =
                !self.crosses_board(s, self.site.spaces[s].ways[way], &place.space);
        }
    }

    /// Makes a change, adds what it touches, and gives the change that undoes it.
    pub fn apply(&mut self, change: Change, touched: &mut Touched) -> Change {
        let before = self.places[change.lot];
        if before.is_some() {
            self.lift(change.lot, touched);
        }
        if let Some(place) = change.to {
            self.put(change.lot, place, touched);
        }
        Change { lot: change.lot, to: before }
    }

    fn lift(&mut self, lot: usize, touched: &mut Touched) {
        let Some(place) = self.places[lot].take() else { return };
        touched.moved(lot as u32, place.home.surface);
        self.touch_up(lot as u32, touched);
        for way in 0..2 {
            let me = (lot * 2 + way) as u32;
            while let Some(other) = self.blockers[lot][way].pop() {
                forget(&mut self.hinders[other as usize], me);
            }
        }
        while let Some(code) = self.hinders[lot].pop() {
            forget(&mut self.blockers[code as usize / 2][code as usize % 2], lot as u32);
        }
        let space = self.site.surfaces[place.home.surface as usize].space;
        forget(&mut self.members[space], lot as u32);
        self.untangle(lot, space, &place.space, touched);
        self.weigh(lot, &place, -1);
    }

    fn put(&mut self, lot: usize, place: Place, touched: &mut Touched) {
        touched.moved(lot as u32, place.home.surface);
        let site = self.site;
        let s = site.surfaces[place.home.surface as usize].space;
        self.places[lot] = Some(place);
        self.over[lot] = self.headroom(lot, place.home.surface as usize);
        self.open_ways(lot);
        self.meet_neighbours(lot, s, &place.space, touched);
        self.meet_strangers(lot, s, &place.space, touched);
        self.members[s].push(lot as u32);
        self.weigh(lot, &place, 1);
        self.touch_up(lot as u32, touched);
    }

    /// Notes who in a lot's own space stands in whose way, and what shares its volume.
    fn meet_neighbours(&mut self, lot: usize, space: usize, b: &Box3, touched: &mut Touched) {
        let s = &self.site.spaces[space];
        for k in 0..self.members[space].len() {
            let m = self.members[space][k] as usize;
            let Some(other) = self.places[m].map(|p| p.space) else { continue };
            self.tangle(lot, m, [b, &other], touched);
            if !s.blocks() {
                continue;
            }
            for (way, &direction) in s.ways.iter().enumerate() {
                if b.swept_meets(direction, &other) {
                    self.block(lot, way, m);
                }
                if other.swept_meets(direction, b) {
                    self.block(m, way, lot);
                }
            }
        }
    }

    /// The same with other spaces: those whose things may share its volume, stand in its way, or have it in theirs.
    fn meet_strangers(&mut self, lot: usize, space: usize, b: &Box3, touched: &mut Touched) {
        let s = &self.site.spaces[space];
        for &other in &s.near {
            for k in 0..self.members[other].len() {
                let m = self.members[other][k] as usize;
                if let Some(p) = self.places[m] {
                    self.tangle(lot, m, [b, &p.space], touched);
                }
            }
        }
        let swept = self.swept(space, b);
        for (way, &direction) in s.ways.iter().enumerate() {
            for &other in &s.ahead[way] {
                for k in 0..self.members[other].len() {
                    let m = self.members[other][k] as usize;
                    if self.places[m].is_some_and(|p| swept.swept_meets(direction, &p.space)) {
                        self.block(lot, way, m);
                    }
                }
            }
        }
        for &(other, way) in &s.behind {
            let direction = self.site.spaces[other].ways[way];
            for k in 0..self.members[other].len() {
                let m = self.members[other][k] as usize;
                let Some(p) = self.places[m] else { continue };
                if self.swept(other, &p.space).swept_meets(direction, b) {
                    self.block(m, way, lot);
                }
            }
        }
    }

    /// The box that is swept when something there is fetched: a drawer's own, as it is pulled out whole.
    fn swept(&self, space: usize, b: &Box3) -> Box3 {
        let s = &self.site.spaces[space];
        if s.kind == SpaceKind::Drawer { s.volume } else { *b }
    }

    #[inline]
    fn block(&mut self, lot: usize, way: usize, by: usize) {
        self.blockers[lot][way].push(by as u32);
        self.hinders[by].push((lot * 2 + way) as u32);
    }

    /// Whether two lots share volume, or one stands in the free height of the other.
    #[inline]
    fn in_one_place(&self, one: usize, other: usize, a: &Box3, b: &Box3) -> bool {
        let under = |low: &Box3, over: Length, high: &Box3| {
            low.min[2] < high.max[2] && high.min[2] < low.max[2] + over
        };
        a.meets_along(b, 0)
            && a.meets_along(b, 1)
            && (under(a, self.over[one], b) || under(b, self.over[other], a))
    }

    #[inline]
    fn tangle(&mut self, lot: usize, m: usize, boxes: [&Box3; 2], touched: &mut Touched) {
        if self.in_one_place(lot, m, boxes[0], boxes[1]) {
            self.tangles[lot] += 1;
            self.tangles[m] += 1;
            self.touch_up(m as u32, touched);
        }
    }

    /// Takes a lot that is being lifted out of the counts of those that share its volume.
    fn untangle(&mut self, lot: usize, space: usize, a: &Box3, touched: &mut Touched) {
        if self.tangles[lot] == 0 {
            return;
        }
        self.tangles[lot] = 0;
        let site = self.site;
        for &s in std::iter::once(&space).chain(&site.spaces[space].near) {
            for k in 0..self.members[s].len() {
                let m = self.members[s][k] as usize;
                let Some(p) = self.places[m] else { continue };
                if self.in_one_place(lot, m, a, &p.space) {
                    self.tangles[m] -= 1;
                    self.touch_up(m as u32, touched);
                }
            }
        }
    }

    /// Whether a board of the space stands in the way of a box.
    fn crosses_board(&self, space: usize, way: Way, b: &Box3) -> bool {
        self.site.spaces[space].boards.iter().any(|&k| b.swept_meets(way, &self.boards[k]))
    }

    /// Adds a lot and all whose way it stands in, through any number of others.
    fn touch_up(&mut self, lot: u32, touched: &mut Touched) {
        if touched.deaf {
            return;
        }
        touched.lot(lot);
        let mut next = touched.lots.len().saturating_sub(1);
        // A lot that was touched before may have gained others behind it since.
        for k in 0..self.hinders[lot as usize].len() {
            touched.lot(self.hinders[lot as usize][k] / 2);
        }
        while next < touched.lots.len() {
            let here = touched.lots[next] as usize;
            for k in 0..self.hinders[here].len() {
                touched.lot(self.hinders[here][k] / 2);
            }
            next += 1;
        }
    }

    fn weigh(&mut self, lot: usize, place: &Place, sign: i64) {
        let mass = self.site.lots[lot].mass * sign;
        let surface = place.home.surface as usize;
        self.loads[surface] += mass;
        self.left[surface] -= sign * place.home.area;
        self.mass += mass;
        for axis in 0..3 {
            self.moments[axis] += twice_moment(mass, &place.space, axis);
        }
        let space = self.site.surfaces[surface].space;
        self.states[space] ^= mark(lot, place);
        if self.site.spaces[space].kind == SpaceKind::Bench {
            self.bench += i128::from(sign) * footprint(&place.space);
        }
    }

    /// The free height over a box that its lot asks for on that surface.
    #[inline]
    pub fn headroom(&self, lot: usize, surface: usize) -> Length {
        if self.site.surfaces[surface].needs_clearance {
            self.site.lots[lot].clearance
        } else {
            Length::ZERO
        }
    }
}

/// A mark of one lot in one place.
#[inline]
fn mark(lot: usize, place: &Place) -> u64 {
    let coordinates = place.space.min.map(|c| c.as_nm() as u64);
    let home = u64::from(place.home.surface) << 32 | u64::from(place.home.form);
    let parts = [lot as u64, home, coordinates[0], coordinates[1], coordinates[2]];
    parts.into_iter().fold(ODD, mixed)
}

const ODD: u64 = 0x9e37_79b9_7f4a_7c15;

#[inline]
fn mixed(mark: u64, part: u64) -> u64 {
    let mixed = (mark ^ part).wrapping_mul(ODD);
    mixed ^ mixed >> 32
}

/// A mark of a shelf at one height.
fn row_mark(board: usize, top: Length) -> u64 {
    mixed(mixed(ODD, board as u64), top.as_nm() as u64)
}

/// Square nanometres of a box seen from above.
pub(super) fn footprint(b: &Box3) -> i128 {
    i128::from(b.extent(0).as_nm()) * i128::from(b.extent(1).as_nm())
}

fn forget(list: &mut Vec<u32>, value: u32) {
    if let Some(at) = list.iter().position(|&v| v == value) {
        list.swap_remove(at);
    }
}
