//! A beam cut into cubic elements and solved by elimination: nothing here knows the formulas that are checked with it.

/// Elements; what is not at a node is a cubic's own value.
const PARTS: usize = 140;

/// A solved beam: sag and slope at each node.
pub struct Solved {
    step: f64,
    bending: f64,
    moves: Vec<f64>,
    loads: Vec<(f64, f64, f64)>,
}

/// A beam of that bending stiffness E I under loads (from, to, force), its ends free to turn or clamped.
pub fn solve(span: f64, bending: f64, clamped: bool, loads: &[(f64, f64, f64)]) -> Solved {
    let step = span / PARTS as f64;
    let n = 2 * (PARTS + 1);
    let (mut stiff, mut force) = (vec![vec![0.0; n]; n], vec![0.0; n]);
    for part in 0..PARTS {
        let (k, f) = element(step, bending, part as f64 * step, loads);
        for i in 0..4 {
            force[2 * part + i] += f[i];
            for j in 0..4 {
                stiff[2 * part + i][2 * part + j] += k[i][j];
            }
        }
    }
    let mut held = vec![0, n - 2];
    if clamped {
        held.extend([1, n - 1]);
    }
    for h in held {
        stiff[h].fill(0.0);
        stiff.iter_mut().for_each(|row| row[h] = 0.0);
        stiff[h][h] = 1.0;
        force[h] = 0.0;
    }
    Solved { step, bending, moves: eliminate(stiff, force), loads: loads.to_vec() }
}

/// Stiffness of an element, and its share of the loads by the work that they do on each of its four shapes.
fn element(h: f64, bending: f64, at: f64, loads: &[(f64, f64, f64)]) -> ([[f64; 4]; 4], [f64; 4]) {
    let c = bending / (h * h * h);
    let k = [
        [12.0, 6.0 * h, -12.0, 6.0 * h],
        [6.0 * h, 4.0 * h * h, -6.0 * h, 2.0 * h * h],
        [-12.0, -6.0 * h, 12.0, -6.0 * h],
        [6.0 * h, 2.0 * h * h, -6.0 * h, 4.0 * h * h],
    ];
    let mut force = [0.0; 4];
    for &(from, to, weight) in loads {
        let (low, high) = (from.max(at), to.min(at + h));
        if low >= high {
            continue;
        }
        // Simpson's rule in slices is exact for cubics.
        for (x, share) in [(low, 1.0), ((low + high) / 2.0, 4.0), (high, 1.0)] {
            let w = weight / (to - from) * (high - low) * share / 6.0;
            shapes((x - at) / h, h).iter().zip(&mut force).for_each(|(s, f)| *f += s * w);
        }
    }
    (k.map(|row| row.map(|v| v * c)), force)
}

fn shapes(s: f64, h: f64) -> [f64; 4] {
    let (q, r) = (s * s, s * s * s);
    [1.0 - 3.0 * q + 2.0 * r, h * (s - 2.0 * q + r), 3.0 * q - 2.0 * r, h * (r - q)]
}

fn eliminate(mut a: Vec<Vec<f64>>, mut b: Vec<f64>) -> Vec<f64> {
    let n = b.len();
    for k in 0..n {
        for i in k + 1..n.min(k + 4) {
            let (above, below) = a.split_at_mut(i);
            let times = below[0][k] / above[k][k];
            below[0].iter_mut().zip(&above[k]).skip(k).for_each(|(low, high)| *low -= times * high);
            b[i] -= times * b[k];
        }
    }
    for k in (0..n).rev() {
        let known: f64 = (k + 1..n.min(k + 4)).map(|j| a[k][j] * b[j]).sum();
        b[k] = (b[k] - known) / a[k][k];
    }
    b
}

impl Solved {
    /// How far it sags at `x`.
    pub fn sag(&self, x: f64) -> f64 {
        let part = ((x / self.step) as usize).min(PARTS - 1);
        let shapes = shapes(x / self.step - part as f64, self.step);
        (0..4).map(|i| shapes[i] * self.moves[2 * part + i]).sum()
    }
    /// The deepest of its nodes.
    pub fn deepest(&self) -> f64 {
        self.moves.iter().step_by(2).copied().fold(0.0, f64::max)
    }
    /// The greatest moment at a node, from the curvature of the elements: second differences of the sag, put right for the
    /// load between.
    pub fn hardest(&self) -> f64 {
        let (h, m) = (self.step, &self.moves);
        let at = |n: usize| {
            // The moment at the near end of the element that begins there.
            let (w0, s0, w1, s1) = (m[2 * n], m[2 * n + 1], m[2 * n + 2], m[2 * n + 3]);
            let curve = (-6.0 * w0 - 4.0 * h * s0 + 6.0 * w1 - 2.0 * h * s1) / (h * h);
            // An element under a spread load is bent by that load as if clamped: q h² / 12.
            -self.bending * curve - self.spread(n) * h * h / 12.0
        };
        let far = {
            let n = PARTS - 1;
            let (w0, s0, w1, s1) = (m[2 * n], m[2 * n + 1], m[2 * n + 2], m[2 * n + 3]);
            let curve = (6.0 * w0 + 2.0 * h * s0 - 6.0 * w1 + 4.0 * h * s1) / (h * h);
            -self.bending * curve - self.spread(n) * h * h / 12.0
        };
        (0..PARTS).map(at).chain([far]).map(f64::abs).fold(0.0, f64::max)
    }
    fn spread(&self, part: usize) -> f64 {
        let middle = (part as f64 + 0.5) * self.step;
        let over = self.loads.iter().filter(|(from, to, _)| (*from..=*to).contains(&middle));
        over.map(|(from, to, force)| force / (to - from)).sum()
    }
}
