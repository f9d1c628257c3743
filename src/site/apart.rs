//! Which lots must be kept apart, and how far.

use super::Site;
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
