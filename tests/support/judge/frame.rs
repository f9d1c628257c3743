//! Boxes in whole nanometres, and the frame of each face.

use toolberth::domain::{Carcass, Face};
use toolberth::geometry::Box3;

/// Least and greatest corner.
pub type Block = [[i64; 3]; 2];

/// The box in plain numbers.
pub fn block(space: &Box3) -> Block {
    [space.min, space.max].map(|corner| corner.map(|c| c.as_nm()))
}

/// What two boxes share along an axis; under nought they are apart.
pub fn shared(a: &Block, b: &Block, axis: usize) -> i64 {
    a[1][axis].min(b[1][axis]) - a[0][axis].max(b[0][axis])
}

/// Whether two boxes share volume.
pub fn overlap(a: &Block, b: &Block) -> bool {
    (0..3).all(|axis| shared(a, b, axis) > 0)
}

/// Whether two boxes overlap seen from above.
pub fn over_each_other(a: &Block, b: &Block) -> bool {
    shared(a, b, 0) > 0 && shared(a, b, 1) > 0
}

/// How far a box sticks out of another at its worst.
pub fn sticks_out(inner: &Block, outer: &Block) -> i64 {
    (0..3).flat_map(|k| [outer[0][k] - inner[0][k], inner[1][k] - outer[1][k]]).max().unwrap_or(0)
}

/// Axis of the way out of a face, and whether it leads up that axis.
pub fn out_of(face: Face) -> (usize, bool) {
    match face {
        Face::Front => (1, false),
        Face::Back => (1, true),
        Face::Left => (0, false),
        Face::Right => (0, true),
        Face::Top => (2, true),
    }
}

/// Outside size of the cart.
pub fn outside(carcass: &Carcass) -> [i64; 3] {
    [carcass.width, carcass.depth, carcass.height].map(|l| l.as_nm())
}

/// Axes of u, v and depth on a face.
pub fn axes(face: Face) -> [usize; 3] {
    match face {
        Face::Front | Face::Back => [0, 2, 1],
        Face::Left | Face::Right => [1, 2, 0],
        Face::Top => [0, 1, 2],
    }
}

/// Whether u and depth run against their axes.
fn mirrored(face: Face) -> [bool; 3] {
    match face {
        Face::Front => [false, false, false],
        Face::Back => [true, false, true],
        Face::Left => [true, false, false],
        Face::Right => [false, false, true],
        Face::Top => [false, false, true],
    }
}

/// A range of u, v and depth of a face, turned into a box; [`seen`] leads back.
pub fn placed(face: Face, outside: [i64; 3], ranges: [[i64; 2]; 3]) -> Block {
    let mut out = [[0; 3]; 2];
    for ((axis, against), [from, to]) in axes(face).into_iter().zip(mirrored(face)).zip(ranges) {
        let far = outside[axis];
        [out[0][axis], out[1][axis]] = if against { [far - to, far - from] } else { [from, to] };
    }
    out
}

/// The ranges of u, v and depth that a box takes as seen from a face.
pub fn seen(face: Face, outside: [i64; 3], block: &Block) -> [[i64; 2]; 3] {
    [0, 1, 2].map(|k| {
        let axis = axes(face)[k];
        let [low, high] = [block[0][axis], block[1][axis]];
        if mirrored(face)[k] { [outside[axis] - high, outside[axis] - low] } else { [low, high] }
    })
}
