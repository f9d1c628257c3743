//! Holes, and places for them that keep clear of edges and of one another.

use super::mount::Mount;
use super::screw::Screw;
use crate::units::{Length, Unit};

/// No hole comes nearer to an edge of its board, three diameters of the thickest screw and a little: common practice, no
/// source.
pub const FROM_EDGE: Length = Length::mm(15);
/// No two holes of a board come nearer to one another, from middle to middle: common practice, no source.
pub const APART: Length = Length::mm(12);

/// A hole.
#[derive(Clone, Debug)]
pub struct Hole {
    /// Its number on its board, from the top down, from 1.
    pub number: u32,
    /// What it is for: an index into the holders.
    pub holder: usize,
    /// Its middle from the left and the lower edge of its board.
    pub at: [Length; 2],
    /// The nearer edge in each direction, and the distance that the tape shows from it.
    pub from: [(&'static str, Length); 2],
    /// The screw that goes into it.
    pub screw: Screw,
    /// How deep its pilot is drilled at most, so that nothing comes out behind.
    pub deep: Length,
    /// Whether it goes right through its board, for the shank of a screw that bites in what lies behind or stands on it.
    pub through: bool,
    /// What lies behind the board there.
    pub behind: String,
}

/// The squared distance of two places, in square micrometres.
fn apart(a: [Length; 2], b: [Length; 2]) -> i64 {
    let [x, y] = [0, 1].map(|k| (a[k] - b[k]).as_nm() / 1000);
    x * x + y * y
}

/// Whether a hole may be there: clear of the edges and of other holes.
pub fn is_clear(mount: &Mount, at: [Length; 2], taken: &[[Length; 2]]) -> bool {
    let least = APART.as_nm() / 1000;
    mount.margin(at) >= FROM_EDGE && taken.iter().all(|t| apart(*t, at) >= least * least)
}

/// Places for a pattern of holes about a middle, moved as little as is needed within the reach told, so that all are clear;
/// each on a whole step of the tape.
pub fn place(
    mount: &Mount,
    pattern: &[[Length; 2]],
    reach: [Length; 2],
    taken: &[[Length; 2]],
    unit: Unit,
) -> Option<Vec<[Length; 2]>> {
    shifts(reach).into_iter().find_map(|[dx, dy]| {
        let mut all = taken.to_vec();
        for [x, y] in pattern {
            let at = mount.snapped([*x + dx, *y + dy], unit);
            if !is_clear(mount, at, &all) {
                return None;
            }
            all.push(at);
        }
        Some(all.split_off(taken.len()))
    })
}

/// Shifts within a reach, the smallest first; ties downwards, then to the left.
fn shifts(reach: [Length; 2]) -> Vec<[Length; 2]> {
    const STEP: i64 = 3;
    let steps = reach.map(|r| r.as_nm() / Length::mm(STEP).as_nm());
    let mut all = Vec::new();
    for x in -steps[0]..=steps[0] {
        for y in -steps[1]..=steps[1] {
            all.push((x * x + y * y, y, x));
        }
    }
    all.sort_unstable();
    all.into_iter().map(|(_, y, x)| [Length::mm(x * STEP), Length::mm(y * STEP)]).collect()
}
