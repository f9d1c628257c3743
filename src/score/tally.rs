//! Where everything is fetched from now: which face, counted by item and by family, and how much near room it takes.

use crate::domain::Face;
use crate::site::{Board, Faces, For, Near, Site, SpaceKind, Volumes};

/// Where a lot is fetched from.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Seat {
    /// The face that one stands before.
    pub face: Face,
    /// The room that it takes: in which near reach, and of which face's spaces.
    pub takes: Option<(Near, Face)>,
}

/// The seats of all lots, and what follows from them.
#[derive(Clone, Debug)]
pub struct Tally {
    /// `None` off the cart.
    seats: Vec<Option<Seat>>,
    /// For each lot its item, its family and its volume.
    kin: Vec<(u32, Option<u32>, i64)>,
    items: Vec<[u32; 5]>,
    families: Vec<[u32; 5]>,
    taken: Volumes,
}

impl Tally {
    /// An empty cart.
    pub(super) fn new(site: &Site) -> Tally {
        let kin =
            |lot: &crate::site::Lot| (lot.item as u32, site.ties.of[lot.item].family, lot.bulk);
        Tally {
            seats: vec![None; site.lots.len()],
            kin: site.lots.iter().map(kin).collect(),
            items: vec![[0; 5]; site.items.len()],
            families: vec![[0; 5]; site.ties.families.len()],
            taken: Volumes::default(),
        }
    }
    /// Where a lot is fetched from.
    #[inline]
    pub fn seat(&self, lot: usize) -> Option<Seat> {
        self.seats[lot]
    }
    /// The faces that an item's copies are fetched from.
    #[inline]
    pub fn item(&self, item: u32) -> Faces {
        Faces::of(&self.items[item as usize])
    }
    /// The faces that a family's things are fetched from.
    #[inline]
    pub fn family(&self, family: usize) -> Faces {
        Faces::of(&self.families[family])
    }
    /// The faces that one must come to for a job: of those sets that have all of its items that are on the cart, the one
    /// with the shortest walk round.
    pub fn round(&self, site: &Site, job: usize) -> Faces {
        let items = &site.ties.jobs[job].items;
        let one_each = items.iter().all(|&i| self.item(i).count() < 2);
        if one_each {
            return items.iter().fold(Faces::NONE, |all, &i| all.and(self.item(i)));
        }
        let serves = |set: &Faces| items.iter().all(|&i| self.serves(site, i, *set));
        let walk = |set: &Faces| (site.tours.walk(*set), set.count());
        Faces::all().filter(serves).min_by_key(walk).unwrap_or(Faces::NONE)
    }

    /// Whether those faces are enough to have an item: all copies where one fetch brings all, else any.
    fn serves(&self, site: &Site, item: u32, set: Faces) -> bool {
        let here = self.item(item);
        match site.items[item as usize].take_all {
            true => here.within(set),
            false => here.is_empty() || here.meets(set),
        }
    }

    /// What is free of the room that counts for a wanted one, in cubic millimetres: one near reach, or both on the faces
    /// that a family stands on; all faces where it stands on none.
    pub fn free(&self, site: &Site, what: &For) -> i64 {
        let left = |near: Near, face: Face| {
            let (n, f) = (near as usize, face.index());
            (site.growth.room[n][f] - self.taken[n][f]).max(0)
        };
        match *what {
            For::Anything(near) => Face::ALL.iter().map(|&face| left(near, face)).sum(),
            For::Family(family, _) => {
                let faces = self.family(family);
                let here = |f: &Face| faces.is_empty() || faces.meets(Faces::one(*f));
                let faces = Face::ALL.into_iter().filter(here);
                faces.flat_map(|f| Near::ALL.map(|near| left(near, f))).sum()
            }
        }
    }

    /// Notes where a lot is fetched from.
    pub(super) fn sit(&mut self, lot: usize, seat: Option<Seat>) {
        if let Some(old) = self.seats[lot] {
            self.count(lot, old, -1);
        }
        if let Some(new) = seat {
            self.count(lot, new, 1);
        }
        self.seats[lot] = seat;
    }

    fn count(&mut self, lot: usize, seat: Seat, by: i64) {
        let (item, family, bulk) = self.kin[lot];
        let change = |n: &mut u32| *n = n.wrapping_add_signed(by as i32);
        change(&mut self.items[item as usize][seat.face.index()]);
        if let Some(family) = family {
            change(&mut self.families[family as usize][seat.face.index()]);
        }
        if let Some((near, face)) = seat.takes {
            self.taken[near as usize][face.index()] += bulk * by;
        }
    }
}

/// Where a lot is fetched from by one of its ways; room is looked at only where some is to stay free.
#[inline]
pub(super) fn seat(board: &Board, lot: usize, way: usize) -> Option<Seat> {
    let site = board.site();
    let place = board.place(lot)?;
    let space = &site.spaces[site.surfaces[place.home.surface as usize].space];
    let face = space.ways[way];
    let deep = matches!(space.kind, SpaceKind::Bay | SpaceKind::Drawer);
    if !deep || site.growth.wanted.is_empty() {
        return Some(Seat { face, takes: None });
    }
    let near = Near::of(site.body.posture(&site.lots[lot].grip(site, place, way)));
    Some(Seat { face, takes: near.map(|near| (near, space.face)) })
}
