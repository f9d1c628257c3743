//! Packing one surface anew: all that lies on it, and what is off the cart, in an order a little other than it lies now.

use super::skyline::{Pieces, Put, Skyline};
use super::{Clearing, Mover};
use crate::site::{Board, Home, Place, Touched, has_way_out};
use crate::solve::zoning::Zoning;
use crate::units::Length;
use rand::RngExt;
use rand::rngs::Xoshiro256PlusPlus;

/// Orders that are tried for one packing, where not everything finds room.
const ORDERS: u32 = 24;

/// Room to work in.
#[derive(Clone, Debug, Default)]
pub(super) struct Packer {
    pieces: Pieces,
    skyline: Skyline,
    order: Vec<usize>,
    /// The best so far.
    best: Vec<usize>,
    puts: Vec<Put>,
}

impl Mover {
    /// Packs the surface of a lot anew, or one that it could be on where it is off the cart. `false` where that leaves
    /// more out than now, or changes nothing.
    pub(super) fn repack(
        &mut self,
        board: &mut Board,
        zoning: &Zoning,
        lot: usize,
        rng: &mut Xoshiro256PlusPlus,
        touched: &mut Touched,
    ) -> bool {
        let homes = &zoning.homes[lot];
        let surface = match board.place(lot) {
            Some(place) => place.home.surface,
            None => homes[rng.random_range(0..homes.len() as u32) as usize].surface,
        };
        let crew = self.aboard(board, zoning, surface);
        let mut packer = std::mem::take(&mut self.packer);
        let found = packer.search(board, zoning, surface, &crew, rng);
        let done = found && self.lay_out(board, zoning, surface, &crew, &packer.puts, rng, touched);
        self.packer = packer;
        done
    }

    /// The lots of a surface that may be moved, in the order in which a packing from its near end would lay them, and then
    /// those off the cart that could be there.
    fn aboard(&self, board: &Board, zoning: &Zoning, surface: u32) -> Vec<usize> {
        let [p, q] = board.site().surfaces[surface as usize].free_axes();
        let mut on = Vec::new();
        let mut off = Vec::new();
        for lot in self.movable.iter().map(|&l| l as usize) {
            match board.place(lot) {
                Some(place) if place.home.surface == surface => {
                    on.push((place.space.min[q], place.space.min[p], lot));
                }
                None if !zoning.on_surface(lot, surface).is_empty() => off.push(lot),
                _ => {}
            }
        }
        on.sort_unstable();
        on.into_iter().map(|(_, _, lot)| lot).chain(off).collect()
    }

    /// Puts the crew where the packing has them; what does not fit there after all, or is not in the packing, looks for
    /// another place.
    #[allow(clippy::too_many_arguments)]
    fn lay_out(
        &mut self,
        board: &mut Board,
        zoning: &Zoning,
        surface: u32,
        crew: &[usize],
        puts: &[Put],
        rng: &mut Xoshiro256PlusPlus,
        touched: &mut Touched,
    ) -> bool {
        let mut to: Vec<Option<(Home, [Length; 2])>> = vec![None; crew.len()];
        for put in puts {
            let home = zoning.on_surface(crew[put.piece], surface)[put.form];
            let free = board.free(surface as usize);
            let axes = board.site().surfaces[surface as usize].free_axes();
            let at = [0, 1].map(|k| free.min[axes[k]] + Length::nm(put.at[k]));
            to[put.piece] = Some((home, at));
        }
        let axes = board.site().surfaces[surface as usize].free_axes();
        let stays = |lot: usize, to: &Option<(Home, [Length; 2])>| match (board.place(lot), to) {
            (Some(place), Some((home, at))) => {
                place.home == *home && axes.map(|a| place.space.min[a]) == *at
            }
            (place, to) => place.is_none() && to.is_none(),
        };
        let moving: Vec<usize> = (0..crew.len()).filter(|&n| !stays(crew[n], &to[n])).collect();
        if moving.is_empty() {
            return false;
        }
        for &n in &moving {
            if board.place(crew[n]).is_some() {
                self.change(board, crew[n], None, touched);
            }
        }
        let mut homeless = Vec::new();
        for &n in &moving {
            match to[n].and_then(|(home, at)| place(&mut self.clearing, board, crew[n], home, at)) {
                Some(place) => self.change(board, crew[n], Some(place), touched),
                None => homeless.push(crew[n]),
            }
        }
        for lot in homeless {
            self.resettle(board, zoning, lot, None, rng, touched);
        }
        true
    }
}

/// A lot's place with its least corner there, where it may be there.
fn place(
    clearing: &mut Clearing,
    board: &Board,
    lot: usize,
    home: Home,
    at: [Length; 2],
) -> Option<Place> {
    if !clearing.look(board, lot, &home) || !clearing.is_free(at[0], at[1]) {
        return None;
    }
    let space = clearing.at(at[0], at[1]);
    has_way_out(board, home.surface as usize, &space).then_some(Place { home, space })
}

impl Packer {
    /// Looks for a packing of the crew on a surface that leaves out no more than is left out now.
    fn search(
        &mut self,
        board: &Board,
        zoning: &Zoning,
        surface: u32,
        crew: &[usize],
        rng: &mut Xoshiro256PlusPlus,
    ) -> bool {
        let site = board.site();
        let free = board.free(surface as usize);
        let axes = site.surfaces[surface as usize].free_axes();
        let size = axes.map(|a| free.extent(a).as_nm());
        self.pieces.clear();
        let (mut now, mut all) = (0, 0);
        for &lot in crew {
            let worth = site.lots[lot].off_cart.as_us();
            all += worth;
            now += if board.place(lot).is_some() { worth } else { 0 };
            let forms = zoning.on_surface(lot, surface).iter();
            self.pieces.add(worth, forms.map(|h| axes.map(|a| h.extents[a].as_nm())));
        }
        if self.pieces.len() < 2 {
            return false;
        }
        self.best.clear();
        self.best.extend(0..crew.len());
        let mut most = i64::MIN;
        for _ in 0..ORDERS {
            self.order.clone_from(&self.best);
            stir(&mut self.order, rng);
            let worth = self.skyline.fill(size, &self.pieces, &self.order);
            if worth >= most {
                most = worth;
                self.skyline.order_into(&mut self.best);
                self.puts.clone_from(&self.skyline.put);
            }
            if most == all {
                break;
            }
        }
        most >= now
    }
}

/// Changes an order a little: one or two times, two change places or one goes elsewhere.
fn stir(order: &mut Vec<usize>, rng: &mut Xoshiro256PlusPlus) {
    let n = order.len() as u32;
    let times = 1 + u32::from(rng.random_range(0..4u32) == 0);
    for _ in 0..times {
        let [one, other] = [0; 2].map(|_| rng.random_range(0..n) as usize);
        if rng.random_range(0..2u32) == 0 {
            order.swap(one, other);
        } else {
            let moved = order.remove(one);
            order.insert(other, moved);
        }
    }
}
