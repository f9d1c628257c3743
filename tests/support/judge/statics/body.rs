//! A rigid body on its casters: loads by trying every set that may touch, and the angle at which it goes over.

use super::super::frame::out_of;
use toolberth::domain::Face;

/// A mass and its first moments about the origin.
#[derive(Clone, Copy)]
pub(super) struct Body {
    pub mass: f64,
    pub moment: [f64; 3],
}

impl Body {
    pub fn with(self, mass: f64, at: [f64; 3]) -> Body {
        Body { mass: self.mass + mass, moment: [0, 1, 2].map(|k| self.moment[k] + mass * at[k]) }
    }
    pub fn centre(self) -> [f64; 3] {
        self.moment.map(|m| m / self.mass)
    }
    /// The same with a part moved along a face's way out.
    pub fn pulled(self, part: f64, face: Face, by: f64) -> Body {
        let (axis, rising) = out_of(face);
        let mut out = self;
        out.moment[axis] += part * if rising { by } else { -by };
        out
    }
}

/// Loads of equal springs that cannot pull, by trying every set of casters that may touch; `None` where it tips.
pub(super) fn rest(at: &[[f64; 2]], body: Body) -> Option<Vec<f64>> {
    let (mass, centre) = (body.mass, body.centre());
    let slack = 1e-9 * mass.max(1.0);
    let mut sets: Vec<u32> = (0..1_u32 << at.len()).filter(|s| s.count_ones() >= 3).collect();
    sets.sort_by_key(|s| std::cmp::Reverse(s.count_ones()));
    sets.into_iter().find_map(|set| {
        let touches = |k: usize| set & (1 << k) != 0;
        let mut sums = [[0.0; 4]; 3];
        for (_, p) in at.iter().enumerate().filter(|(k, _)| touches(*k)) {
            let row = [1.0, (p[0] - centre[0]) / 1e3, (p[1] - centre[1]) / 1e3];
            (0..3).for_each(|r| (0..3).for_each(|c| sums[r][c] += row[r] * row[c]));
        }
        sums[0][3] = mass;
        let [sink, along, across] = solve(sums)?;
        let force = |p: &[f64; 2]| {
            sink + along * (p[0] - centre[0]) / 1e3 + across * (p[1] - centre[1]) / 1e3
        };
        let forces: Vec<f64> = at.iter().map(force).collect();
        let holds = forces
            .iter()
            .enumerate()
            .all(|(k, f)| if touches(k) { *f >= -slack } else { *f <= slack });
        let loads =
            forces.iter().enumerate().map(|(k, f)| if touches(k) { f.max(0.0) } else { 0.0 });
        holds.then(|| loads.collect())
    })
}

/// Three equations by Cramer's rule; `None` where they do not fix a plane.
fn solve(m: [[f64; 4]; 3]) -> Option<[f64; 3]> {
    let det = |a: [usize; 3]| {
        let g = |r: usize, c: usize| m[r][a[c]];
        g(0, 0) * (g(1, 1) * g(2, 2) - g(1, 2) * g(2, 1))
            - g(0, 1) * (g(1, 0) * g(2, 2) - g(1, 2) * g(2, 0))
            + g(0, 2) * (g(1, 0) * g(2, 1) - g(1, 1) * g(2, 0))
    };
    let whole = det([0, 1, 2]);
    let scale = m[0][0] * m[1][1] * m[2][2];
    (whole.abs() > 1e-9 * scale.abs())
        .then(|| [[3, 1, 2], [0, 3, 2], [0, 1, 3]].map(|a| det(a) / whole))
}

/// The least angle at which a body goes over a line between two casters with all others on one side, in degrees.
pub(super) fn least_angle(at: &[[f64; 2]], centre: [f64; 3], trail: f64) -> f64 {
    let mut least = f64::INFINITY;
    for a in at {
        for b in at {
            let (dx, dy) = (b[0] - a[0], b[1] - a[1]);
            let length = dx.hypot(dy);
            let side = |p: [f64; 2]| (dx * (p[1] - a[1]) - dy * (p[0] - a[0])) / length;
            if length > 0.0 && at.iter().all(|p| side(*p) > -1e-6) {
                let inside = side([centre[0], centre[1]]) - trail;
                least = least.min(inside.atan2(centre[2]).to_degrees());
            }
        }
    }
    least
}
