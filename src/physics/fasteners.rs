//! Screws and hooks in wood: what pulls them out, shears them off or bends them, and what may be counted on.
//!
//! Forces are newtons, lengths millimetres, stresses N/mm², masses kilograms. Nothing is ever counted on in end grain.

use core::f64::consts::PI;

/// Newtons that a kilogram weighs: standard gravity, exact by definition.
pub const WEIGHT: f64 = 9.806_65;
/// N/mm² in a pound a square inch: exact by definition of pound and inch.
const PSI: f64 = WEIGHT * 0.453_592_37 / (25.4 * 25.4);
/// Newtons in a pound.
const POUND: f64 = WEIGHT * 0.453_592_37;
const INCH: f64 = 25.4;

/// The coefficient of what a wood screw holds at most, pounds and inches: Wood Handbook (FPL-GTR-190), chapter 8, as
/// quoted on a woodworking calculator page; read.
const SCREW_ULTIMATE: f64 = 15_700.0;
/// The same of what may be counted on: a building design handbook, p. 170, eq. 6.37; read.
const SCREW_ALLOWABLE: f64 = 2_850.0;
/// How many times what may be counted on a wood screw holds at most, in side grain pulled straight out: computed from
/// the two coefficients, 5.5.
pub const SCREW_MARGIN: f64 = SCREW_ULTIMATE / SCREW_ALLOWABLE;
/// The coefficient for a screw in the face of particle board, N and mm: Wood Handbook, chapter 8; from memory.
const PARTICLE_FACE: f64 = 41.1;
/// Tests found that the equation for solid wood says too much of plywood (Ahn, Pang & Oh 2021, abstract read; it gives no
/// figure), so half is counted on: design choice, ours.
const PLIES: f64 = 0.5;
/// How many diameters deep a screw must be for its whole sideways load; less deep it counts in proportion: from memory.
const DEEP: f64 = 7.0;
/// What a hook's wire may be stressed to, N/mm²: the yield stress of mild steel, 235 N/mm² (from memory), with a margin of
/// 1.5 (design choice, ours).
pub const WIRE_STRESS: f64 = 235.0 / 1.5;

/// Which way the fibres run where a screw goes in.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Grain {
    /// Across the fibres: the face of a board, or its long edge.
    Side,
    /// Along the fibres: the sawn end of a board.
    End,
}

/// How a material is made, as far as screws mind.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Make {
    /// Grown wood.
    Solid,
    /// Plywood and strand board.
    Plies,
    /// Particle board and fibre board.
    Particles,
}

/// What a screw goes into.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Ground {
    /// Specific gravity of the dry wood.
    pub gravity: f64,
    /// How it is made.
    pub make: Make,
    /// Which way its fibres run there.
    pub grain: Grain,
}

/// A wood screw.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Screw {
    /// Outside the thread, mm.
    pub diameter: f64,
    /// How much thread is in the wood, mm.
    pub thread: f64,
}

impl Screw {
    /// The force that pulls it straight out, N; none is given for end grain. Solid wood and plies: k G² D L, mean of
    /// tests. Particles: 41.1 √D (L − D/3)^1.25 G², from memory.
    pub fn ultimate(&self, ground: &Ground) -> Option<f64> {
        if ground.grain == Grain::End {
            return None;
        }
        let square = ground.gravity * ground.gravity;
        Some(match ground.make {
            Make::Solid => self.in_wood(SCREW_ULTIMATE, square),
            Make::Plies => self.in_wood(SCREW_ULTIMATE, square) * PLIES,
            Make::Particles => {
                let deep = (self.thread - self.diameter / 3.0).max(0.0);
                PARTICLE_FACE * self.diameter.sqrt() * deep * deep.sqrt().sqrt() * square
            }
        })
    }
    /// The pull that may be counted on, N: nought in end grain. The handbook's own margin of 5.5 holds for particles too:
    /// design choice, ours.
    pub fn pull(&self, ground: &Ground) -> f64 {
        self.ultimate(ground).map_or(0.0, |most| most / SCREW_MARGIN)
    }
    /// The load across it that may be counted on, N: nought in end grain. C D² in pounds and inches, C by the group of the
    /// wood: a building design handbook, p. 170, eq. 6.38; read.
    pub fn shear(&self, ground: &Ground) -> f64 {
        if ground.grain == Grain::End {
            return 0.0;
        }
        let inches = self.diameter / INCH;
        let deep = (self.thread / (DEEP * self.diameter)).clamp(0.0, 1.0);
        lateral(ground.gravity) * inches * inches * POUND * deep
    }
    /// Both together, for many questions about one screw.
    pub fn holds(&self, ground: &Ground) -> Holds {
        Holds { pull: self.pull(ground), shear: self.shear(ground) }
    }
    fn in_wood(&self, coefficient: f64, square: f64) -> f64 {
        coefficient * PSI * square * self.diameter * self.thread
    }
}

/// The coefficient of the load across a screw, pounds an inch squared, by the group of the wood: a building design
/// handbook, p. 170; read. Which gravity belongs to which group is from memory.
fn lateral(gravity: f64) -> f64 {
    const GROUPS: [(f64, f64); 3] = [(0.60, 4800.0), (0.50, 3960.0), (0.42, 3240.0)];
    GROUPS.iter().find(|(least, _)| gravity >= *least).map_or(2520.0, |(_, c)| *c)
}

/// What may be counted on a screw where it is, N.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Holds {
    /// Pulled straight out.
    pub pull: f64,
    /// Loaded across.
    pub shear: f64,
}

/// What hangs on a wall from a screw at its upper edge, and rests against the wall with its lower edge.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Hung {
    /// Mass, kg.
    pub mass: f64,
    /// How far its centre of mass stands out from the wall, mm.
    pub reach: f64,
    /// How far below the screw it rests against the wall, mm.
    pub drop: f64,
}

impl Hung {
    /// How hard the screw is pulled out of the wall, N: the moment balance about the lower edge.
    pub fn pull(&self) -> f64 {
        bracket_pull(self.mass * WEIGHT, self.reach, self.drop)
    }
    /// The share of what may be counted on that it uses, 1 being all: the shares of pull and of load across the screw added
    /// up (design choice, ours: stricter than the usual curve). Infinite where nothing may be counted on.
    pub fn share(&self, holds: &Holds) -> f64 {
        of(self.pull(), holds.pull) + of(self.mass * WEIGHT, holds.shear)
    }
}

/// The share of what may be counted on that a mass under a ceiling uses, hanging straight down from a screw.
pub fn share_below(mass: f64, holds: &Holds) -> f64 {
    of(mass * WEIGHT, holds.pull)
}

/// A share; nothing asked is nought, and anything asked of nothing is infinite.
fn of(asked: f64, may: f64) -> f64 {
    if asked <= 0.0 { 0.0 } else { asked / may.max(0.0) }
}

/// The pull on the upper of two screws that hold a load out from a wall, N: load × reach / distance between them. Moment
/// balance about the lower one.
pub fn bracket_pull(load: f64, reach: f64, spacing: f64) -> f64 {
    load * reach / spacing
}

/// The bending stress in round wire that carries a load so far out, N/mm²: 32 M / (π d³), a bent cantilever.
pub fn wire_stress(load: f64, reach: f64, diameter: f64) -> f64 {
    32.0 * load * reach / (PI * diameter * diameter * diameter)
}

/// The load in newtons that a hook of round mild steel wire may carry so far out: [`WIRE_STRESS`] the other way round.
pub fn wire_load(reach: f64, diameter: f64) -> f64 {
    WIRE_STRESS / wire_stress(1.0, reach, diameter)
}

#[cfg(test)]
mod tests {
    use super::*;

    const WOOD: Ground = Ground { gravity: 0.5, make: Make::Solid, grain: Grain::Side };

    #[test]
    fn a_group_of_wood_begins_at_its_gravity() {
        let rows = [(0.60, 4800.0), (0.599, 3960.0), (0.50, 3960.0), (0.499, 3240.0)];
        for (gravity, c) in rows.into_iter().chain([(0.42, 3240.0), (0.419, 2520.0)]) {
            assert_eq!(lateral(gravity), c, "{gravity}");
        }
    }

    #[test]
    fn a_screw_no_deeper_than_its_point_holds_nothing_in_particles() {
        let board = Ground { make: Make::Particles, ..WOOD };
        assert_eq!(Screw { diameter: 6.0, thread: 2.0 }.pull(&board), 0.0);
        assert_eq!(Screw { diameter: 6.0, thread: 1.0 }.pull(&board), 0.0);
        assert!(Screw { diameter: 6.0, thread: 2.1 }.pull(&board) > 0.0);
    }

    #[test]
    fn seven_diameters_deep_is_deep_enough() {
        let at = |thread| Screw { diameter: 4.0, thread }.shear(&WOOD);
        assert_eq!(at(28.0), at(40.0));
        assert!(at(27.9) < at(28.0));
        assert_eq!(at(0.0), 0.0);
    }

    #[test]
    fn plies_count_half() {
        let screw = Screw { diameter: 4.0, thread: 12.0 };
        assert_eq!(screw.pull(&Ground { make: Make::Plies, ..WOOD }), screw.pull(&WOOD) / 2.0);
    }

    #[test]
    fn shares_add_up_and_nothing_asked_is_nothing() {
        let holds = Holds { pull: 10.0 * WEIGHT, shear: 20.0 * WEIGHT };
        let hung = Hung { mass: 5.0, reach: 100.0, drop: 200.0 };
        assert!((hung.share(&holds) - (0.25 + 0.25)).abs() < 1e-12);
        assert_eq!(share_below(5.0, &holds), 0.5);
        assert_eq!(Hung { mass: 0.0, ..hung }.share(&Holds { pull: 0.0, shear: 0.0 }), 0.0);
        assert_eq!(share_below(1.0, &Holds { pull: 0.0, shear: 0.0 }), f64::INFINITY);
        assert_eq!(share_below(1.0, &Holds { pull: -1.0, shear: 0.0 }), f64::INFINITY);
    }
}
