//! The climb to good prices: subgradient steps, each with some of the direction of the one before.

use super::relaxed::Relaxed;

fn env(name: &str, d: f64) -> f64 {
    std::env::var(name).ok().and_then(|s| s.parse().ok()).unwrap_or(d)
}

/// Steps with the whole question.
const WHOLE: usize = 800;
/// All steps, those with the question parted by bays too.
const PARTED: usize = 2400;

/// A climb: where it is, and the best that it has come to.
pub struct Climb {
    question: Relaxed,
    prices: Vec<f64>,
    slopes: Vec<f64>,
    trend: Vec<f64>,
    best: f64,
    best_at: Vec<f64>,
    /// How long the steps are.
    eager: f64,
    /// Steps without gain.
    idle: u32,
    /// Steps made.
    pub made: usize,
    /// Whether the question is parted by bays.
    parted: bool,
    /// Whether further steps are of no use.
    pub done: bool,
}

impl Climb {
    /// At the foot: everything is free of charge.
    pub fn new(question: Relaxed) -> Climb {
        let all = question.prices();
        let done = question.impossible;
        let best = if done { f64::INFINITY } else { 0.0 };
        let (prices, slopes, trend, best_at) =
            (vec![0.0; all], vec![0.0; all], vec![0.0; all], vec![0.0; all]);
        Climb {
            question,
            prices,
            slopes,
            trend,
            best,
            best_at,
            eager: 1.0,
            idle: 0,
            made: 0,
            parted: false,
            done,
        }
    }

    /// The best bound so far.
    pub fn best(&self) -> f64 {
        self.best
    }

    /// Climbs so many steps towards a cost that is known.
    pub fn go(&mut self, steps: usize, known: f64) {
        for _ in 0..steps {
            if self.done {
                return;
            }
            self.step(known);
        }
    }

    fn step(&mut self, known: f64) {
        self.made += 1;
        if self.made == WHOLE && self.question.parts() {
            self.part();
        }
        let value = match self.parted {
            true => self.question.parted(&self.prices, &mut self.slopes),
            false => self.question.value(&self.prices, &mut self.slopes),
        };
        self.note(value);
        self.done = known <= value;
        let shares = self.question.shares();
        for (slope, price) in self.slopes[..shares].iter_mut().zip(&self.prices) {
            // What is free of charge and not used up stays so.
            if *slope < 0.0 && *price == 0.0 {
                *slope = 0.0;
            }
        }
        let beta = env("BETA", 0.7);
        for (trend, slope) in self.trend.iter_mut().zip(&self.slopes) {
            *trend = beta * *trend + (1.0 - beta) * slope;
        }
        let norm: f64 = self.trend.iter().map(|s| s * s).sum();
        if norm < 1e-12 {
            self.done = true;
        }
        if self.done {
            return;
        }
        let step = self.eager * (known - value) / norm;
        for (price, trend) in self.prices.iter_mut().zip(&self.trend) {
            *price += step * trend;
        }
        self.prices[..shares].iter_mut().for_each(|p| *p = p.max(0.0));
    }

    /// Whether it has made all steps that it may make.
    pub fn ended(&self) -> bool {
        self.done || self.made >= if self.question.parts() { PARTED } else { WHOLE }
    }

    /// From the best place so far goes on with the question parted by bays.
    fn part(&mut self) {
        self.parted = true;
        self.prices.clone_from(&self.best_at);
        self.question.price_lots(&mut self.prices);
        self.best_at.clone_from(&self.prices);
        self.trend.fill(0.0);
        (self.eager, self.idle) = (env("AGAIN", 0.5), 0);
    }

    /// Notes a value; after some steps without gain it goes back to the best place and takes shorter ones.
    fn note(&mut self, value: f64) {
        let gain = value > self.best * (1.0 + env("TOL", 5e-5));
        if value > self.best {
            self.best = value;
            self.best_at.clone_from(&self.prices);
        }
        self.idle = if gain { 0 } else { self.idle + 1 };
        if self.idle >= env("PAT", 15.0) as u32 {
            (self.eager, self.idle) = (self.eager * env("CUT", 0.7), 0);
            if env("BACK", 1.0) > 0.0 {
                self.prices.clone_from(&self.best_at);
            }
            self.trend.fill(0.0);
        }
        if std::env::var("TRACE").is_ok() && self.made % 100 == 0 {
            eprintln!(
                "step {} value {:.3} best {:.3} eager {:.5}",
                self.made,
                value / 1e6,
                self.best / 1e6,
                self.eager
            );
        }
    }
}
