//! What can stand before a thing: how shallow it may be, and how quickly it is moved aside.

use super::choice::homes;
use crate::geometry::Axis;
use crate::site::Site;
use crate::solve::zoning::Zoning;
use crate::units::{Length, Time};

/// The least of something over all lots but one: the least of all with its lot, and the least of all others.
#[derive(Clone, Copy)]
struct Least<T> {
    first: Option<(T, usize)>,
    second: Option<T>,
}

impl<T: Ord + Copy> Least<T> {
    const NONE: Least<T> = Least { first: None, second: None };

    fn note(&mut self, value: T, lot: usize) {
        match self.first {
            Some((least, l)) if l == lot => self.first = Some((least.min(value), l)),
            Some((least, l)) if value < least => {
                *self =
                    Least { first: Some((value, lot)), second: Some(least).filter(|_| l != lot) }
            }
            Some(_) => self.second = Some(self.second.map_or(value, |s| s.min(value))),
            None => self.first = Some((value, lot)),
        }
    }
    fn without(&self, lot: usize) -> Option<T> {
        match self.first {
            Some((_, l)) if l == lot => self.second,
            first => first.map(|(value, _)| value),
        }
    }
}

/// For each space, what may be in it and would have to be moved: neither fixed nor with an uncovered edge.
pub struct Before {
    /// How far the shallowest reaches along x and y.
    depth: Vec<[Least<Length>; 2]>,
    aside: Vec<Least<Time>>,
}

impl Before {
    /// Of a site under a division of the faces.
    pub fn new(site: &Site, zoning: &Zoning) -> Before {
        let spaces = site.spaces.len();
        let mut before =
            Before { depth: vec![[Least::NONE; 2]; spaces], aside: vec![Least::NONE; spaces] };
        let movable = |l: &usize| site.lots[*l].fixed.is_none() && !site.lots[*l].bare_edge;
        for l in (0..site.lots.len()).filter(movable) {
            for home in homes(site, zoning, l) {
                let space = site.surfaces[home.surface as usize].space;
                before.aside[space].note(site.lots[l].aside, l);
                for axis in 0..2 {
                    before.depth[space][axis].note(home.extents[axis], l);
                }
            }
        }
        before
    }

    /// How far what stands before a lot in a space reaches into it at least, and the least time of moving that aside;
    /// nothing where nothing can be before it.
    pub fn least(
        &self,
        site: &Site,
        lot: usize,
        space: usize,
        way: usize,
    ) -> Option<(Length, Time)> {
        let here = &site.spaces[space];
        let axis: Axis = here.ways[way].axis();
        let own = self.aside[space].without(lot).zip(self.depth[space][axis].without(lot));
        let ahead = here.ahead[way].iter().filter_map(|&s| self.aside[s].without(lot));
        let outside = ahead.min().map(|aside| (aside, Length::ZERO));
        let both = own.into_iter().chain(outside);
        both.map(|(aside, depth)| (depth, aside)).reduce(|a, b| (a.0.min(b.0), a.1.min(b.1)))
    }
}
