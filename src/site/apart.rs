//! Which lots must be kept apart, and how far.

use super::surface::SpaceKind;
use super::{Place, Site};
use crate::domain::{Hazard, Hazards};

/// What makes sparks, a flame or heat.
pub const FIRE: Hazards = Hazards::of(&[Hazard::Ignition, Hazard::Hot]);
/// What burns easily or heats itself.
pub const FUEL: Hazards = Hazards::of(&[Hazard::Flammable, Hazard::Aerosol, Hazard::SelfHeating]);
const FEEDS: Hazards = Hazards::of(&[Hazard::Oxidiser, Hazard::Corrosive]);
const FLAMMABLE: Hazards = Hazards::of(&[Hazard::Flammable]);
const BATTERY: Hazards = Hazards::of(&[Hazard::Battery]);
const HOT: Hazards = Hazards::of(&[Hazard::Hot]);
const LIQUID: Hazards = Hazards::of(&[Hazard::Liquid]);
const ELECTRIC: Hazards = Hazards::of(&[Hazard::Electric]);

/// How two lots must be kept apart.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum Clash {
    /// Sparks or heat, and what burns: on different faces.
    Face,
    /// What feeds a fire or is eaten, or a battery beside heat: in different spaces.
    Space,
    /// A liquid never above what runs on the mains: the first is the liquid.
    Above,
}

/// Two lots that must be kept apart.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Pair {
    /// One lot.
    pub one: u32,
    /// The other.
    pub other: u32,
    /// How.
    pub clash: Clash,
}

/// Finds all pairs that must be kept apart.
pub(super) fn pair_up(site: &mut Site) {
    let mut pairs = Vec::new();
    let dangerous: Vec<u32> = (0..site.lots.len() as u32)
        .filter(|&l| !site.lots[l as usize].hazards.is_empty())
        .collect();
    for (n, &one) in dangerous.iter().enumerate() {
        for &other in &dangerous[n + 1..] {
            let (a, b) = (site.lots[one as usize].hazards, site.lots[other as usize].hazards);
            clashes(a, b, |clash, swapped| {
                let (one, other) = if swapped { (other, one) } else { (one, other) };
                pairs.push(Pair { one, other, clash });
            });
        }
    }
    site.pairs_of = vec![Vec::new(); site.lots.len()];
    for (n, pair) in pairs.iter().enumerate() {
        site.pairs_of[pair.one as usize].push(n as u32);
        site.pairs_of[pair.other as usize].push(n as u32);
    }
    site.pairs = pairs;
}

/// Tells every clash of two sets of hazards, and whether its order is the other way round.
fn clashes(a: Hazards, b: Hazards, mut tell: impl FnMut(Clash, bool)) {
    let either = |x: Hazards, y: Hazards| a.meets(x) && b.meets(y) || a.meets(y) && b.meets(x);
    if either(FIRE, FUEL) {
        tell(Clash::Face, false);
    }
    if either(FEEDS, FLAMMABLE) || either(BATTERY, HOT) {
        tell(Clash::Space, false);
    }
    if a.meets(LIQUID) && b.meets(ELECTRIC) {
        tell(Clash::Above, false);
    }
    if b.meets(LIQUID) && a.meets(ELECTRIC) {
        tell(Clash::Above, true);
    }
}

/// The bench among the faces, as a bit: it stands alone.
const BENCH: u8 = 1 << 5;

impl Site {
    /// The faces that a surface belongs to, as bits: both of a through bay; the bench stands alone.
    pub fn faces(&self, surface: usize) -> u8 {
        let space = &self.spaces[self.surfaces[surface].space];
        match space.kind {
            SpaceKind::Bench => BENCH,
            _ => space.ways.iter().fold(0, |bits, way| bits | 1 << way.index()),
        }
    }

    /// Whether two lots that must be kept apart that way are not, in these places: `one` is that of the pair's first.
    #[inline]
    pub fn clash(&self, clash: Clash, one: &Place, other: &Place) -> bool {
        let surface = |place: &Place| place.home.surface as usize;
        let space = |place: &Place| self.surfaces[surface(place)].space;
        match clash {
            Clash::Face => self.faces(surface(one)) & self.faces(surface(other)) != 0,
            Clash::Space => space(one) == space(other),
            Clash::Above => space(one) == space(other) && is_above(one, other),
        }
    }
}

fn is_above(one: &Place, other: &Place) -> bool {
    one.space.min[2] >= other.space.max[2]
        && (0..2).all(|axis| one.space.meets_along(&other.space, axis))
}
