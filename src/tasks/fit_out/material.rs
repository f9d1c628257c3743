//! What the boards of a carcass hold of screws.

use crate::domain::Carcass;
use crate::physics::fasteners::{Grain, Ground, Make};

/// The specific gravity that is counted on where the file names no wood: spruce, the lightest of the usual ones (building
/// design handbook, Table 6.2, p. 170, read).
const LIGHT: f64 = 0.41;
/// Of particle and fibre board: from memory.
const PARTICLES: f64 = 0.60;

/// Words of a material, what it is and its specific gravity. Solid woods: building design handbook, Table 6.2, p. 170, read.
const KNOWN: [(&str, Make, f64); 10] = [
    ("ply", Make::Plies, LIGHT),
    ("osb", Make::Plies, LIGHT),
    ("strand", Make::Plies, LIGHT),
    ("particle", Make::Particles, PARTICLES),
    ("chip", Make::Particles, PARTICLES),
    ("mdf", Make::Particles, PARTICLES),
    ("fibre", Make::Particles, PARTICLES),
    ("fir", Make::Solid, 0.51),
    ("pine", Make::Solid, 0.43),
    ("spruce", Make::Solid, LIGHT),
];

/// What a screw goes into, by the material that the file names; plywood of light wood where it names none that is known.
pub fn ground(carcass: &Carcass) -> Ground {
    let named = carcass.board.as_ref().map_or("", |b| b.material.as_str()).to_lowercase();
    let known = KNOWN.iter().find(|(word, ..)| named.contains(word));
    let (make, gravity) = known.map_or((Make::Plies, LIGHT), |(_, make, g)| (*make, *g));
    Ground { gravity, make, grain: Grain::Side }
}

/// Whether the file names a material that is known.
pub fn is_known(carcass: &Carcass) -> bool {
    let named = carcass.board.as_ref().map_or("", |b| b.material.as_str()).to_lowercase();
    KNOWN.iter().any(|(word, ..)| named.contains(word))
}
