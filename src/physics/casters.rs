//! Loads on casters: a rigid body on equal elastic supports that can push but not pull.
//!
//! Frame and units: x and y of the cart in mm, masses and loads in kg, first moments in kg·mm about the origin.
//! While all supports carry, the floor's answer is a plane over the support points (least squares); a support on
//! which that plane would pull hangs free and the others carry. For four in a rectangle this is
//! R = W/4 · (1 ± x/a ± y/b).

use super::tipping::Footprint;
use crate::units::Length;

/// The most casters that a body may stand on.
pub const MOST: usize = 12;

/// A pull below this share of the whole load counts as nothing.
const SLACK: f64 = 1e-9;

/// How far outside the casters, in mm, the plumb line may lie and still count as over their edge.
const EDGE: f64 = 1e-6;

/// How often supports are let go of and taken up before every set of them is tried.
const ROUNDS: usize = 48;

/// Which supports carry, one bit each.
type Set = u16;

/// A body's supports, prepared so that the usual answer is quick.
#[derive(Clone, Debug)]
pub struct Supports {
    all: Stand,
    /// The same with one support hanging free, in order; empty on three supports.
    without: Vec<Option<Stand>>,
}

impl Supports {
    /// Supports at these places (x, y in the cart's frame).
    ///
    /// Nothing where they are fewer than three, more than [`MOST`], or all in one line.
    pub fn new(at: &[[Length; 2]]) -> Option<Supports> {
        let all = Stand::new(at)?;
        let without = match at.len() {
            3 => Vec::new(),
            n => (0..n).map(|free| Stand::new(&without(at, free))).collect(),
        };
        Some(Supports { all, without })
    }

    /// How many supports there are.
    pub fn count(&self) -> usize {
        self.all.n
    }

    /// The load on each support in kg, in the order of their places, for a body of `total` kg with first moments `sx`
    /// and `sy` in kg·mm. False where it tips; `out` then says nothing. Entries beyond the supports stay untouched.
    pub fn loads(&self, total: f64, sx: f64, sy: f64, out: &mut [f64; MOST]) -> bool {
        self.all.loads(total, sx, sy, out)
    }

    /// The same on a floor that stands up under the supports: `press` is, for each, how far it stands up times the
    /// stiffness of a support, in kg.
    ///
    /// A rigid body on equal springs: soft ones take a bump up, hard ones let a neighbour hang. False where it tips.
    pub fn on_bumps(
        &self,
        total: f64,
        [sx, sy]: [f64; 2],
        press: &[f64],
        out: &mut [f64; MOST],
    ) -> bool {
        self.all.over(total, [sx, sy]) && self.all.search(total, [sx, sy], press, out)
    }

    /// The greatest of those loads; nothing where it tips.
    #[inline]
    pub fn heaviest(&self, total: f64, sx: f64, sy: f64) -> Option<f64> {
        let least = -slack(total);
        let (mut low, mut high) = (f64::INFINITY, 0.0f64);
        for [a, b, c] in &self.all.plane[..self.all.n] {
            let load = total * a + sx * b + sy * c;
            low = low.min(load);
            high = high.max(load);
        }
        if low >= least {
            return Some(high);
        }
        let mut loads = [0.0; MOST];
        let stands = self.all.contact(total, [sx, sy], &mut loads);
        stands.then(|| loads[..self.all.n].iter().copied().fold(0.0, f64::max))
    }

    /// For each support the least and the greatest share that it has of a load anywhere in a rectangle (least x and y,
    /// greatest x and y, in mm), while all carry.
    pub fn shares(&self, [low, high]: [[f64; 2]; 2]) -> [[f64; 2]; MOST] {
        let corners = [[low[0], low[1]], [low[0], high[1]], [high[0], low[1]], high];
        self.all.plane.map(|[a, b, c]| {
            let share = corners.map(|[x, y]| a + b * x + c * y);
            [share.into_iter().fold(f64::INFINITY, f64::min), share.into_iter().fold(0.0, f64::max)]
        })
    }

    /// What no support carries more than after a load of `mass` kg was taken away from where these shares were worked
    /// out; nothing where one might then hang free.
    #[inline]
    pub fn at_most(
        &self,
        [total, sx, sy]: [f64; 3],
        mass: f64,
        shares: &[[f64; 2]; MOST],
    ) -> Option<f64> {
        let mut most = 0.0f64;
        for ([a, b, c], [least, greatest]) in self.all.plane[..self.all.n].iter().zip(shares) {
            let load = total * a + sx * b + sy * c;
            if load < mass * greatest {
                return None;
            }
            most = most.max(load - mass * least.min(0.0));
        }
        Some(most)
    }

    /// The greatest load on each support while any other one hangs free, as on an uneven floor.
    ///
    /// Cases in which the body would tip are left out: it then rocks over and another one hangs free. False where no
    /// case stands, as with three supports; `out` is then all nought.
    pub fn hanging(&self, total: f64, sx: f64, sy: f64, out: &mut [f64; MOST]) -> bool {
        *out = [0.0; MOST];
        let mut stands = false;
        for (free, stand) in self.without.iter().enumerate() {
            let mut case = [0.0; MOST];
            if !stand.as_ref().is_some_and(|s| s.loads(total, sx, sy, &mut case)) {
                continue;
            }
            stands = true;
            for (i, carried) in (0..self.all.n).filter(|&i| i != free).zip(case) {
                out[i] = out[i].max(carried);
            }
        }
        stands
    }
}

/// The places but one.
fn without(at: &[[Length; 2]], free: usize) -> Vec<[Length; 2]> {
    at.iter().enumerate().filter(|(i, _)| *i != free).map(|(_, p)| *p).collect()
}

/// What one set of supports needs to answer.
#[derive(Clone, Debug)]
struct Stand {
    n: usize,
    at: [[f64; 2]; MOST],
    /// Load of each = total · first + sx · second + sy · third, while all carry.
    plane: [[f64; 3]; MOST],
    footprint: Footprint,
}

impl Stand {
    fn new(places: &[[Length; 2]]) -> Option<Stand> {
        let n = places.len();
        if n > MOST {
            return None;
        }
        let footprint = Footprint::new(places, Length::ZERO)?;
        let mut at = [[0.0; 2]; MOST];
        for (to, from) in at.iter_mut().zip(places) {
            *to = [from[0].as_mm(), from[1].as_mm()];
        }
        let fit = Fit::new(&at, all_of(n))?;
        let plane = std::array::from_fn(|i| if i < n { fit.plane(at[i]) } else { [0.0; 3] });
        Some(Stand { n, at, plane, footprint })
    }

    fn loads(&self, total: f64, sx: f64, sy: f64, out: &mut [f64; MOST]) -> bool {
        let least = -slack(total);
        let mut good = true;
        for (load, [a, b, c]) in out.iter_mut().zip(&self.plane).take(self.n) {
            let raw = total * a + sx * b + sy * c;
            good &= raw >= least;
            *load = raw.max(0.0);
        }
        good || self.contact(total, [sx, sy], out)
    }

    /// The answer where some supports hang free.
    #[cold]
    fn contact(&self, total: f64, moments: [f64; 2], out: &mut [f64; MOST]) -> bool {
        if !self.over(total, moments) {
            return false;
        }
        let mut on = all_of(self.n);
        // Let go of what pulls, take up what is pressed: nearly always at rest after a few rounds.
        for _ in 0..ROUNDS {
            let Some(rest) = self.settle(on, total, moments, &[]) else {
                break;
            };
            if rest.good {
                return rest.give(on, self.n, out);
            }
            on = rest.pressed(self.n);
        }
        self.search(total, moments, &[], out)
    }

    /// The same by trying every set of three or more; see [`Supports::on_bumps`] for `press`, nought where it is short.
    fn search(&self, total: f64, moments: [f64; 2], press: &[f64], out: &mut [f64; MOST]) -> bool {
        (1..=all_of(self.n)).filter(|on| on.count_ones() >= 3).any(|on| {
            let rest = self.settle(on, total, moments, press).filter(|rest| rest.good);
            rest.is_some_and(|rest| rest.give(on, self.n, out))
        })
    }

    /// Whether the plumb line goes down between the supports.
    fn over(&self, total: f64, [sx, sy]: [f64; 2]) -> bool {
        total > 0.0 && self.footprint.least_margin(sx / total, sy / total).1 >= -EDGE
    }

    /// Where the body comes to rest on the supports of a set; nothing where they lie in one line.
    ///
    /// A bump presses its own support and, by the plane that all of them settle to, is taken off the rest.
    fn settle(&self, on: Set, total: f64, [sx, sy]: [f64; 2], press: &[f64]) -> Option<Rest> {
        let fit = Fit::new(&self.at, on)?;
        let slack = slack(total);
        let mut left = [total, sx, sy];
        for (i, p) in press.iter().enumerate().filter(|(i, _)| on >> i & 1 == 1) {
            left[0] -= p;
            left[1] -= p * self.at[i][0];
            left[2] -= p * self.at[i][1];
        }
        let mut rest = Rest { force: [0.0; MOST], good: true };
        for (i, at) in self.at.iter().enumerate().take(self.n) {
            let [a, b, c] = fit.plane(*at);
            let bump = press.get(i).copied().unwrap_or(0.0);
            let force = left[0] * a + left[1] * b + left[2] * c + bump;
            rest.good &= if on >> i & 1 == 1 { force >= -slack } else { force <= slack };
            rest.force[i] = force;
        }
        Some(rest)
    }
}

/// The pull in kg that still counts as nothing under a body of `total` kg.
#[inline]
fn slack(total: f64) -> f64 {
    SLACK * total.max(1.0)
}

/// The set of the first `n` supports.
fn all_of(n: usize) -> Set {
    (1 << n) - 1
}

/// What the springs of all supports would give where a body rests on some.
struct Rest {
    force: [f64; MOST],
    /// Whether it is true: none that carries pulls, none that is free is pressed.
    good: bool,
}

impl Rest {
    fn pressed(&self, n: usize) -> Set {
        (0..n).filter(|&i| self.force[i] > 0.0).map(|i| 1 << i).sum()
    }

    fn give(&self, on: Set, n: usize, out: &mut [f64; MOST]) -> bool {
        for (i, load) in out.iter_mut().enumerate().take(n) {
            *load = if on >> i & 1 == 1 { self.force[i].max(0.0) } else { 0.0 };
        }
        true
    }
}

/// Least squares of a plane over the support points of a set, about their middle.
struct Fit {
    count: f64,
    middle: [f64; 2],
    /// The inverse of the second moments: xx, xy, yy.
    inverse: [f64; 3],
}

impl Fit {
    fn new(at: &[[f64; 2]; MOST], on: Set) -> Option<Fit> {
        let members =
            || at.iter().enumerate().filter(move |(i, _)| on >> i & 1 == 1).map(|(_, p)| p);
        let count = f64::from(on.count_ones());
        let [x, y] = members().fold([0.0; 2], |[x, y], p| [x + p[0], y + p[1]]);
        let middle = [x / count, y / count];
        let [xx, xy, yy] = members().fold([0.0; 3], |[xx, xy, yy], p| {
            let [x, y] = [p[0] - middle[0], p[1] - middle[1]];
            [xx + x * x, xy + x * y, yy + y * y]
        });
        let area = xx * yy - xy * xy;
        // All in one line, as far as numbers can tell.
        if area <= 1e-12 * (xx + yy) * (xx + yy) {
            return None;
        }
        Some(Fit { count, middle, inverse: [yy / area, -xy / area, xx / area] })
    }

    /// What a support at `at` answers to the total and to each moment.
    fn plane(&self, at: [f64; 2]) -> [f64; 3] {
        let [x, y] = [at[0] - self.middle[0], at[1] - self.middle[1]];
        let b = self.inverse[0] * x + self.inverse[1] * y;
        let c = self.inverse[1] * x + self.inverse[2] * y;
        [1.0 / self.count - b * self.middle[0] - c * self.middle[1], b, c]
    }
}

#[cfg(test)]
mod tests;
