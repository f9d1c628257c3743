//! Places and copies in words.

use crate::domain::{Face, Pose};
use crate::geometry::Box3;
use crate::site::{Board, Place, corner_of};
use crate::units::Length;

/// A place in words, as an entry of a layout says it.
#[derive(Clone, PartialEq, Debug)]
pub struct Spot {
    /// The face.
    pub face: Face,
    /// The bay, drawer or panel; `bench` on top.
    pub bay: String,
    /// The surface.
    pub surface: String,
    /// How it is kept there.
    pub pose: Pose,
    /// Whether it is turned.
    pub turned: bool,
    /// Its corner in the free box of the surface, as `at` in a layout.
    pub at: [Length; 2],
    /// Its box.
    pub space: Box3,
}

impl Spot {
    /// The words for a place of a lot on a board.
    pub(crate) fn of(board: &Board, lot: usize, place: &Place) -> Spot {
        let site = board.site();
        let s = place.home.surface as usize;
        let (surface, form) = (&site.surfaces[s], &site.lots[lot].forms[place.home.form as usize]);
        let space = &site.spaces[surface.space];
        Spot {
            face: space.face,
            bay: space.name.clone(),
            surface: surface.name.clone(),
            pose: form.pose,
            turned: form.turned,
            at: corner_of(site, s, board.free(s), &place.space),
            space: place.space,
        }
    }
    /// The surface: `front / table bay / shelf 1`, with one word less where a bay has one surface only.
    pub fn name(&self) -> String {
        match self.surface.as_str() {
            "drawer" | "panel" => format!("{} / {}", self.face.name(), self.bay),
            "bench" => "the bench".to_owned(),
            surface => format!("{} / {} / {surface}", self.face.name(), self.bay),
        }
    }
}

/// A copy, pile or row by name.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Named {
    /// The item.
    pub item: String,
    /// Its first copy, from 1.
    pub copy: u32,
    /// How many copies.
    pub copies: u32,
    /// How many there are in all.
    pub of: u32,
}

impl Named {
    pub(crate) fn of(board: &Board, lot: usize) -> Named {
        let l = &board.site().lots[lot];
        let item = &board.site().items[l.item];
        Named { item: item.name.clone(), copy: l.first, copies: l.copies, of: item.count }
    }
}
