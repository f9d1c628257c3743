//! What carries: decks that are boards over a span, walls that hold by screws and hooks. Prepared once, for the search.

use super::board::Board;
use super::surface::Surface;
use crate::domain::{self, Fixing, Material};
use crate::geometry::{Axis, Box3};
use crate::physics::boards::{self, Beam, Load};
use crate::physics::fasteners::{Grain, Ground, Holds, Hung, Screw, WEIGHT, share_below};
use crate::physics::timber::{self, Timber};
use crate::units::{Length, Mass};

/// So much of a board's thickness is left under the point of a screw: common practice, no source.
const POINT: f64 = 3.0;

/// A deck that is a board over a span.
#[derive(Clone, Copy, Debug)]
pub struct Span {
    /// The board as the files say it.
    pub plank: Plank,
    /// Where on its axis the span begins.
    pub from: Length,
    /// The board as a beam.
    pub beam: Beam,
    /// The figures of its material.
    pub timber: &'static Timber,
    /// Its own weight, which it carries too.
    pub own: Load,
    /// How far it may sag at first, mm, so that it is within the limit once it has crept.
    pub first_limit: f64,
    /// The greatest moment that may be counted on, N mm.
    pub most_moment: f64,
}

/// What a deck's board is like, as the files say it.
#[derive(Clone, Copy, Debug)]
pub struct Plank {
    /// What it is made of.
    pub material: Material,
    /// Its thickness.
    pub thickness: Length,
    /// How its ends are held.
    pub ends: domain::Ends,
    /// The axis along which it spans.
    pub axis: Axis,
}

impl Span {
    /// The board under a deck: its clear span is the deck's free box along the axis, its breadth the same across it.
    pub fn under(free: &Box3, plank: Plank) -> Span {
        let timber = figures(plank.material);
        let [span, breadth] = [plank.axis, 1 - plank.axis].map(|a| free.extent(a).as_mm());
        let thick = plank.thickness.as_mm();
        let ends = match plank.ends {
            domain::Ends::Free => boards::Ends::Free,
            domain::Ends::Fixed => boards::Ends::Fixed,
        };
        let beam = Beam::new([span, breadth, thick], timber.modulus.value, ends);
        let kilograms = span * breadth * thick * 1e-9 * timber.density.value;
        Span {
            plank,
            from: free.min[plank.axis],
            beam,
            timber,
            own: Load { from: 0.0, to: span, force: kilograms * WEIGHT },
            first_limit: boards::sag_limit(span) / boards::crept(1.0, timber),
            most_moment: boards::strength(timber) * beam.section,
        }
    }
    /// What a box of that mass asks of it.
    #[inline]
    pub fn load(&self, mass: Mass, b: &Box3) -> Load {
        let at = |end: Length| (end - self.from).as_mm();
        let (from, to) = (at(b.min[self.plank.axis]), at(b.max[self.plank.axis]));
        Load { from, to, force: mass.as_kg() * WEIGHT }
    }
    /// All that it carries, itself too, in no order that means anything.
    pub fn loads<'a>(
        &'a self,
        board: &'a Board,
        surface: usize,
    ) -> impl Iterator<Item = Load> + Clone + 'a {
        let lots = &board.site().lots;
        let things = board.on(surface);
        things.map(|(lot, place)| self.load(lots[lot].mass, &place.space)).chain([self.own])
    }
    /// How far it has sagged in the end, mm, where it sags so far at first.
    pub fn crept(&self, first: f64) -> f64 {
        boards::crept(first, self.timber)
    }
    /// The share of its strength that a moment uses, 1 being all that may be counted on.
    pub fn strength_used(&self, moment: f64) -> f64 {
        moment / self.most_moment
    }
}

/// A wall that holds by screws or hooks.
#[derive(Clone, Copy, Debug)]
pub struct Hold {
    /// The axis out of the wall.
    pub axis: Axis,
    /// Whether things hang straight down from it.
    pub ceiling: bool,
    /// The material, the screw in it and what may be counted on that, where the material is known.
    pub wood: Option<(Material, Screw, Holds)>,
    /// Whether the screws go into sawn ends.
    pub end_grain: bool,
    /// What one hook or peg carries, where the file says so.
    pub hook: Option<Mass>,
    /// How many screws or hooks hold one thing.
    pub each: u32,
}

impl Hold {
    /// How a wall holds; nothing where neither its material nor a hook is told.
    pub(super) fn of(
        wall: &Surface,
        fixing: &Fixing,
        board: Option<(Material, Length)>,
    ) -> Option<Hold> {
        if board.is_none() && fixing.hook.is_none() {
            return None;
        }
        let wood = board.map(|(material, thickness)| {
            let timber = figures(material);
            let grain = if fixing.end_grain { Grain::End } else { Grain::Side };
            let ground = Ground { gravity: timber.gravity.value, make: timber.make, grain };
            let deep = (thickness.as_mm() - POINT).max(0.0);
            let thread = fixing.screw.thread.map_or(deep, |t| t.as_mm().min(thickness.as_mm()));
            let screw = Screw { diameter: fixing.screw.diameter.as_mm(), thread };
            (material, screw, screw.holds(&ground))
        });
        Some(Hold {
            axis: wall.rest.axis,
            ceiling: wall.rest.axis == 2,
            wood,
            end_grain: fixing.end_grain,
            hook: fixing.hook,
            each: fixing.screw.each,
        })
    }
    /// How one of its screws is asked, where a lot's box is there: of a row or turned row each copy hangs by itself.
    #[inline]
    pub fn hung(&self, one: Mass, copies: u32, b: &Box3) -> Hung {
        let tall = b.extent(2);
        // A row may run up the wall: no copy is then taller than the row is wide.
        let wide = if self.axis == 2 { tall } else { b.extent(1 - self.axis) };
        let drop = if copies > 1 { tall.min(wide) } else { tall };
        Hung {
            mass: one.as_kg() / f64::from(self.each),
            reach: b.extent(self.axis).as_mm() / 2.0,
            drop: drop.as_mm(),
        }
    }
    /// The share of what may be counted on that a lot there uses, 1 being all: of the screw in the wood, or of the hook.
    #[inline]
    pub fn used(&self, one: Mass, copies: u32, b: &Box3) -> f64 {
        let hung = self.hung(one, copies, b);
        let hook = self.hook.map_or(0.0, |hook| of(hung.mass, hook.as_kg()));
        let screw = match &self.wood {
            Some((_, _, holds)) if self.ceiling => share_below(hung.mass, holds),
            Some((_, _, holds)) => hung.share(holds),
            None => 0.0,
        };
        hook.max(screw)
    }
}

/// A share; anything asked of nothing is infinite.
fn of(asked: f64, may: f64) -> f64 {
    if asked <= 0.0 { 0.0 } else { asked / may }
}

/// The figures of a material.
pub fn figures(material: Material) -> &'static Timber {
    match material {
        Material::Plywood => &timber::PLYWOOD,
        Material::Mdf => &timber::MDF,
        Material::ParticleBoard => &timber::PARTICLE_BOARD,
        Material::StrandBoard => &timber::STRAND_BOARD,
        Material::Hardboard => &timber::HARDBOARD,
        Material::Spruce => &timber::SPRUCE,
        Material::Pine => &timber::PINE,
        Material::SouthernPine => &timber::SOUTHERN_PINE,
        Material::Fir => &timber::FIR,
        Material::DouglasFir => &timber::DOUGLAS_FIR,
        Material::Larch => &timber::LARCH,
        Material::Hemlock => &timber::HEMLOCK,
        Material::Oak => &timber::OAK,
        Material::Maple => &timber::MAPLE,
        Material::Beech => &timber::BEECH,
        Material::Birch => &timber::BIRCH,
    }
}
