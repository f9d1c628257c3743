//! What boards are made of: stiffness, strength, weight, creep, and how screws hold in them.
//!
//! Where a source gives a range, its low end stands here. Solid wood and plywood are taken along the face grain.

use super::fasteners::Make;
use super::source::Mark;

/// A figure with its mark.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Figure {
    /// The figure, in the unit of its field.
    pub value: f64,
    /// How it was come by.
    pub mark: Mark,
}

const fn read(value: f64) -> Figure {
    Figure { value, mark: Mark::Read }
}

const fn recalled(value: f64) -> Figure {
    Figure { value, mark: Mark::Memory }
}

/// A material of boards.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Timber {
    /// Modulus of elasticity in bending, N/mm².
    pub modulus: Figure,
    /// Modulus of rupture, N/mm²: at that stress the mean of clear test pieces breaks. Never a limit by itself.
    pub rupture: Figure,
    /// Specific gravity of the dry material, for screws.
    pub gravity: Figure,
    /// Weight of the board, kg/m³.
    pub density: Figure,
    /// By how much of its first sag a shelf sags on under a load that stays, indoors.
    pub creep: Figure,
    /// How it is made.
    pub make: Make,
}

impl Timber {
    /// What of it is recalled, in words, of what a sag is worked out from.
    pub fn recalled_of_sag(&self) -> impl Iterator<Item = &'static str> {
        let figures = [
            (self.modulus, "its stiffness"),
            (self.density, "its own weight"),
            (self.creep, "how it creeps"),
        ];
        words(figures)
    }
    /// What of it is recalled, in words, of what its strength is judged by.
    pub fn recalled_of_strength(&self) -> impl Iterator<Item = &'static str> {
        words([(self.rupture, "its strength")])
    }
    /// What of it is recalled, in words, of what a screw's hold is worked out from.
    pub fn recalled_of_hold(&self) -> impl Iterator<Item = &'static str> {
        let equation = if self.make == Make::Particles { Mark::Memory } else { Mark::Read };
        let equation = Figure { value: 0.0, mark: equation };
        words([(self.gravity, "its specific gravity"), (equation, "the equation of its screws")])
    }
}

fn words<const N: usize>(
    figures: [(Figure, &'static str); N],
) -> impl Iterator<Item = &'static str> {
    figures.into_iter().filter(|(f, _)| f.mark == Mark::Memory).map(|(_, name)| name)
}

/// Modulus of elasticity divided by the modulus of rigidity: about 16 for wood, from memory.
pub const RIGIDITY: f64 = 16.0;

/// Creep of grown and glued wood, service class 1: EN 1995-1-1 Table 3.2, read in three public code tables.
const WOOD_CREEP: Figure = read(0.60);
/// Creep of fibre, particle and strand boards of the plainer classes, service class 1: the same table, from memory.
const BOARD_CREEP: Figure = recalled(2.25);

/// Solid wood: its own weight is 12 % more than its specific gravity says, for its moisture (from memory).
const fn wood(modulus: Figure, rupture: Figure, gravity: Figure) -> Timber {
    let density = recalled(1120.0 * gravity.value);
    Timber { modulus, rupture, gravity, density, creep: WOOD_CREEP, make: Make::Solid }
}

const fn board(
    modulus: Figure,
    rupture: Figure,
    [gravity, density]: [f64; 2],
    creep: Figure,
    make: Make,
) -> Timber {
    Timber { modulus, rupture, gravity: recalled(gravity), density: recalled(density), creep, make }
}

// Panels: stiffness and strength from the Wood Handbook (FPL-GTR-190), Table 12-1, read in an online page copy.
/// Plywood; creep from EN 1995-1-1 Table 3.2, read.
pub const PLYWOOD: Timber =
    board(read(6_960.0), read(33.72), [0.42, 600.0], read(0.80), Make::Plies);
/// Medium density fibre board.
pub const MDF: Timber =
    board(read(3_590.0), read(35.85), [0.65, 750.0], BOARD_CREEP, Make::Particles);
/// Particle board.
pub const PARTICLE_BOARD: Timber =
    board(read(2_760.0), read(15.17), [0.60, 700.0], BOARD_CREEP, Make::Particles);
/// Oriented strand board, along its length.
pub const STRAND_BOARD: Timber =
    board(read(4_410.0), read(21.80), [0.50, 650.0], BOARD_CREEP, Make::Plies);
/// Hardboard.
pub const HARDBOARD: Timber =
    board(read(3_100.0), read(31.02), [0.85, 1000.0], BOARD_CREEP, Make::Particles);

// Solid wood, at 12 % moisture. Stiffness from the Wood Handbook, Tables 12-1 and 5-3a, or from a state university's
// table after it; strength from Table 12-1; gravity for screws from a building design handbook, Table 6.2.
/// Spruce (Engelmann).
pub const SPRUCE: Timber = wood(read(8_960.0), recalled(64.0), read(0.41));
/// Pine: the limpest of those read, sugar pine.
pub const PINE: Timber = wood(read(8_200.0), recalled(57.0), read(0.36));
/// Southern pine: longleaf for its strength, the least of shortleaf, slash and longleaf for its stiffness.
pub const SOUTHERN_PINE: Timber = wood(read(12_100.0), read(99.97), read(0.59));
/// Fir (grand fir).
pub const FIR: Timber = wood(read(10_820.0), recalled(61.0), read(0.39));
/// Douglas fir.
pub const DOUGLAS_FIR: Timber = wood(read(13_440.0), read(85.49), read(0.51));
/// Larch (western).
pub const LARCH: Timber = wood(read(12_890.0), recalled(90.0), read(0.52));
/// Hemlock (western).
pub const HEMLOCK: Timber = wood(read(11_240.0), recalled(78.0), read(0.44));
/// Oak (white); gravity of red oak, the lighter.
pub const OAK: Timber = wood(read(12_270.0), read(104.8), recalled(0.67));
/// Maple (red).
pub const MAPLE: Timber = wood(read(11_310.0), read(92.39), recalled(0.58));
/// Beech.
pub const BEECH: Timber = wood(recalled(11_900.0), recalled(103.0), recalled(0.64));
/// Birch (yellow).
pub const BIRCH: Timber = wood(recalled(13_900.0), recalled(114.0), recalled(0.62));

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_recalled_is_named() {
        let named = |t: &Timber| {
            let all = t.recalled_of_sag().chain(t.recalled_of_strength());
            all.chain(t.recalled_of_hold()).collect::<Vec<_>>()
        };
        let whole = ["its stiffness", "its own weight", "its strength", "its specific gravity"];
        assert_eq!(named(&BEECH), whole);
        assert_eq!(named(&DOUGLAS_FIR), ["its own weight"]);
        assert_eq!(named(&PLYWOOD), ["its own weight", "its specific gravity"]);
        assert_eq!(
            named(&MDF),
            [
                "its own weight",
                "how it creeps",
                "its specific gravity",
                "the equation of its screws"
            ]
        );
        assert_eq!(named(&SPRUCE), ["its own weight", "its strength"]);
    }

    #[test]
    fn wood_weighs_more_than_its_gravity_says() {
        assert!((DOUGLAS_FIR.density.value - 571.2).abs() < 1e-9);
        assert_eq!(PLYWOOD.density.value, 600.0);
    }
}
