//! What a cost or a rule may look at.

use super::tally::Tally;
use crate::domain::Item;
use crate::geometry::Way;
use crate::physics::body::{Grip, Posture};
use crate::site::{
    Board, Companions, Family, Home, Job, Lot, Pair, Place, Site, Space, Stand, Surface, Wanted,
};
use crate::units::{Price, Time};

/// All that must be moved before a lot can be taken out one way.
#[derive(Clone, Debug, Default)]
pub struct Closure {
    /// The lots, in no order that means anything.
    pub lots: Vec<u32>,
    /// Whether a fixed lot is among them.
    pub nailed: bool,
    marks: Vec<u32>,
    round: u32,
}

impl Closure {
    /// Works it out afresh for a lot and a way.
    #[inline]
    pub fn find(&mut self, board: &Board, lot: usize, way: usize) {
        self.lots.clear();
        self.nailed = false;
        if board.blockers(lot, way).is_empty() {
            return;
        }
        let site = board.site();
        let Some(space) = board.space_of(lot) else { return };
        let direction = site.spaces[space].ways[way];
        self.round += 1;
        self.marks.resize(site.lots.len(), 0);
        self.spread(board, lot, way);
        let mut next = 0;
        while next < self.lots.len() {
            let here = self.lots[next] as usize;
            self.nailed |= site.lots[here].fixed.is_some();
            if let Some(s) = board.space_of(here) {
                self.spread(board, here, site.spaces[s].own_way(direction));
            }
            next += 1;
        }
    }

    #[inline]
    fn spread(&mut self, board: &Board, lot: usize, way: usize) {
        for &b in board.blockers(lot, way) {
            if self.marks[b as usize] != self.round {
                self.marks[b as usize] = self.round;
                self.lots.push(b);
            }
        }
    }

    /// Whether the lots cannot be taken one after another, because some stand in each other's way in a ring.
    pub fn is_ring(&self, board: &Board, direction: Way) -> bool {
        self.order(board, direction).len() < self.lots.len()
    }

    /// The lots in the order in which they can be removed; those of a ring are left out.
    pub fn order(&self, board: &Board, direction: Way) -> Vec<u32> {
        let site = board.site();
        let mut left = self.lots.clone();
        left.sort_unstable();
        let mut order: Vec<u32> = Vec::new();
        loop {
            let free = left.iter().position(|&lot| {
                let l = lot as usize;
                let way = board.space_of(l).map_or(0, |s| site.spaces[s].own_way(direction));
                board.blockers(l, way).iter().all(|b| order.contains(b))
            });
            match free {
                Some(k) => order.push(left.remove(k)),
                None => return order,
            }
        }
    }
}

/// What a cost or a rule may look at: its subject, and the board around it.
pub struct View<'a> {
    /// The board; a lot's cost may look at it only through the other fields.
    pub board: &'a Board<'a>,
    /// The lot, in scope `Lot`.
    pub lot: usize,
    /// The way it is taken, as an index into its space's ways.
    pub way: usize,
    /// What must be moved first that way.
    pub closure: &'a Closure,
    /// The pair, in scope `Pair`.
    pub pair: usize,
    /// The surface, in scope `Surface`.
    pub surface: usize,
    /// The companions, the family, the job or the wanted room, in those scopes.
    pub tie: usize,
    /// Where things are fetched from, in those scopes.
    pub tally: &'a Tally,
    /// The cart's statics, in scope `Cart`.
    pub stand: &'a Stand,
}

impl<'a> View<'a> {
    /// A look at the whole cart.
    pub(super) fn of_cart(
        board: &'a Board<'a>,
        tally: &'a Tally,
        stand: &'a Stand,
        closure: &'a Closure,
    ) -> View<'a> {
        View { board, lot: 0, way: 0, closure, pair: 0, surface: 0, tie: 0, tally, stand }
    }
    /// The question.
    #[inline]
    pub fn site(&self) -> &'a Site {
        self.board.site()
    }
    /// The subject's lot.
    #[inline]
    pub fn of(&self) -> &'a Lot {
        &self.site().lots[self.lot]
    }
    /// The subject's item.
    #[inline]
    pub fn item(&self) -> &'a Item {
        &self.site().items[self.of().item]
    }
    /// Where the subject is; `None` off the cart.
    #[inline]
    pub fn place(&self) -> Option<&'a Place> {
        self.board.place(self.lot)
    }
    /// The surface that the subject is on.
    pub fn surface_of(&self, place: &Place) -> &'a Surface {
        &self.site().surfaces[place.home.surface as usize]
    }
    /// The space that the subject is in.
    #[inline]
    pub fn space(&self, place: &Place) -> &'a Space {
        &self.site().spaces[self.site().surfaces[place.home.surface as usize].space]
    }
    /// The way that it is taken.
    pub fn direction(&self, place: &Place) -> Way {
        self.space(place).ways[self.way]
    }
    /// Where the hand goes that fetches the subject.
    #[inline]
    pub fn grip(&self, place: &Place) -> Grip {
        self.of().grip(self.site(), place, self.way)
    }
    /// The two items that are used together.
    pub fn companions(&self) -> &'a Companions {
        &self.site().ties.companions[self.tie]
    }
    /// The family.
    pub fn family(&self) -> &'a Family {
        &self.site().ties.families[self.tie]
    }
    /// The job.
    pub fn job(&self) -> &'a Job {
        &self.site().ties.jobs[self.tie]
    }
    /// The room that is to stay free.
    pub fn wanted(&self) -> &'a Wanted {
        &self.site().growth.wanted[self.tie]
    }
    /// The name of an item.
    pub fn name(&self, item: u32) -> &'a str {
        &self.site().items[item as usize].name
    }
    /// The two lots of the pair.
    pub fn two(&self) -> &'a Pair {
        &self.site().pairs[self.pair]
    }
}

/// What a lot's place costs by its own: walking and reaching, way by way, blind to what stands in front.
pub fn way_prices(site: &Site, lot: usize, place: &Place) -> impl Iterator<Item = (usize, Time)> {
    let l = &site.lots[lot];
    let space = &site.spaces[site.surfaces[place.home.surface as usize].space];
    let (place, body) = (*place, &site.body);
    space.ways.iter().enumerate().filter_map(move |(w, _)| {
        let grip = l.grip(site, &place, w);
        (body.posture(&grip) != Posture::Out)
            .then(|| (w, space.access[w] + body.extra(&grip, l.in_hand) + space.pull))
    })
}

/// The least price of a lot on a surface in one form, wherever on it.
pub fn least_price(site: &Site, lot: usize, home: &Home) -> Price {
    let each = crate::site::best_spots(site, home)
        .into_iter()
        .flat_map(|space| {
            way_prices(site, lot, &Place { home: *home, space }).map(|(_, t)| t).collect::<Vec<_>>()
        })
        .min();
    site.lots[lot].uses.cost(each.unwrap_or(Time::ZERO))
}
