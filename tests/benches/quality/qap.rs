//! Quadratic assignment: which facility goes to which site, so that flows times distances are least.

use crate::instances::numbers;
use crate::walks::Puzzle;
use rand::RngExt;
use rand::rngs::Xoshiro256PlusPlus;
use toolberth::solve::{Heat, Walk};

/// A state: a facility for each site.
pub struct Assignment {
    n: usize,
    /// Both matrices, row by row.
    flows: Vec<i64>,
    distances: Vec<i64>,
    at: Vec<usize>,
    cost: i64,
    /// The pair that was exchanged last, and the rise that it brought.
    last: (usize, usize, i64),
    best: Vec<usize>,
    least: i64,
}

impl Assignment {
    /// Reads `n` and two matrices.
    pub fn read(text: &str) -> Option<Assignment> {
        let all = numbers(text)?;
        let (&n, rest) = all.split_first()?;
        let n = n as usize;
        let (flows, distances) = rest.split_at_checked(n * n)?;
        let mut state = Assignment {
            n,
            flows: flows.to_vec(),
            distances: distances.get(..n * n)?.to_vec(),
            at: (0..n).collect(),
            cost: 0,
            last: (0, 0, 0),
            best: (0..n).collect(),
            least: i64::MAX,
        };
        state.weigh();
        Some(state)
    }

    fn weigh(&mut self) {
        let pairs = (0..self.n).flat_map(|i| (0..self.n).map(move |j| (i, j)));
        self.cost = pairs
            .map(|(i, j)| {
                self.flows[i * self.n + j] * self.distances[self.at[i] * self.n + self.at[j]]
            })
            .sum();
        self.note();
    }

    fn note(&mut self) {
        if self.cost < self.least {
            self.least = self.cost;
            self.best.clone_from(&self.at);
        }
    }

    /// What exchanging two brings, in steps of their number.
    fn rise(&self, r: usize, s: usize) -> i64 {
        let (n, a, b, at) = (self.n, &self.flows, &self.distances, &self.at);
        let (p, q) = (at[r], at[s]);
        let (ar, as_) = (&a[r * n..(r + 1) * n], &a[s * n..(s + 1) * n]);
        let (bp, bq) = (&b[p * n..(p + 1) * n], &b[q * n..(q + 1) * n]);
        let mut rise = (ar[r] - as_[s]) * (bq[q] - bp[p]) + (ar[s] - as_[r]) * (bq[p] - bp[q]);
        for k in (0..n).filter(|&k| k != r && k != s) {
            let o = at[k];
            rise += (ar[k] - as_[k]) * (bq[o] - bp[o]);
            rise += (a[k * n + r] - a[k * n + s]) * (b[o * n + q] - b[o * n + p]);
        }
        rise
    }
}

impl Walk for Assignment {
    fn step(&mut self, rng: &mut Xoshiro256PlusPlus) -> Option<i64> {
        let r = rng.random_range(0..self.n as u32) as usize;
        let s = rng.random_range(0..self.n as u32 - 1) as usize;
        let s = if s >= r { s + 1 } else { s };
        let rise = self.rise(r, s);
        self.at.swap(r, s);
        self.cost += rise;
        self.last = (r, s, rise);
        Some(rise)
    }
    fn take_back(&mut self) {
        let (r, s, rise) = self.last;
        self.at.swap(r, s);
        self.cost -= rise;
    }
    fn stay(&mut self) {
        self.note();
    }
}

impl Puzzle for Assignment {
    const HEATS: [Heat; 2] = [Heat { from: 1.0, to: 0.002 }, Heat { from: 0.1, to: 0.002 }];

    fn size(&self) -> u64 {
        self.n as u64
    }
    fn shuffle(&mut self, rng: &mut Xoshiro256PlusPlus) {
        for k in (1..self.n).rev() {
            self.at.swap(k, rng.random_range(0..=k as u32) as usize);
        }
        self.weigh();
    }
    fn resume(&mut self) {
        self.at.clone_from(&self.best);
        self.cost = self.least;
    }
    fn least(&self) -> Option<i64> {
        Some(self.least)
    }
}
