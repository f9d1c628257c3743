//! The climb to good prices: subgradient steps, each with some of the direction of the one before.

use super::relaxed::{Dearer, Relaxed};
use crate::site::Site;
use crate::solve::zoning::Zoning;

/// Most steps, and as many again with the question parted by bays.
const STEPS: usize = 1600;
/// How much of the last direction is kept.
const KEPT: f64 = 0.7;
/// What counts as a gain, as a share of the bound.
const GAIN: f64 = 5e-5;
/// So many steps without one make the next ones shorter.
const PATIENCE: u32 = 20;
/// By how much.
const SHORTER: f64 = 0.7;
/// Steps shorter than this lead nowhere.
const SHORTEST: f64 = 1e-4;

/// Most that all prices and the known cost may come to, in microseconds a week: sums of these are exact to far less than
/// what is taken off against rounding.
const MOST: f64 = 1e12;

/// A climb: where it is, and the best that it has come to.
pub struct Climb {
    question: Relaxed,
    prices: Vec<f64>,
    slopes: Vec<f64>,
    trend: Vec<f64>,
    best: f64,
    best_at: Vec<f64>,
    /// Whether there is no direction yet to keep some of.
    fresh: bool,
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
            fresh: true,
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

    /// The lots with their homes, and how much dearer than the best bound each of these makes any layout.
    pub fn dearer(&self, site: &Site, zoning: &Zoning) -> Vec<(usize, Dearer)> {
        self.question.dearer(site, zoning, &self.best_at)
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
        if !self.parted && self.question.parts() && self.tired(STEPS) {
            self.part();
        }
        let value = match self.parted {
            true => self.question.parted(&self.prices, &mut self.slopes),
            false => self.question.value(&self.prices, &mut self.slopes),
        };
        let weight = known + self.prices.iter().map(|p| p.abs()).sum::<f64>();
        // What is added up of too great numbers is rounded too much to be believed.
        let value = if weight < MOST { value } else { f64::NEG_INFINITY };
        self.note(value);
        self.done = known <= value;
        let shares = self.question.shares();
        for (slope, price) in self.slopes[..shares].iter_mut().zip(&self.prices) {
            // What is free of charge and not used up stays so.
            if *slope < 0.0 && *price == 0.0 {
                *slope = 0.0;
            }
        }
        let kept = if self.fresh { 0.0 } else { KEPT };
        self.fresh = false;
        for (trend, slope) in self.trend.iter_mut().zip(&self.slopes) {
            *trend = kept * *trend + (1.0 - kept) * slope;
        }
        let norm: f64 = self.trend.iter().map(|s| s * s).sum();
        if norm < 1e-12 {
            self.done = true;
        }
        if self.done {
            return;
        }
        // Steps aim at the known cost; from far below they are kept from leaping over it.
        let aim = (known - value).min(2.0 * (known - self.best));
        let step = self.eager * aim / norm;
        for (price, trend) in self.prices.iter_mut().zip(&self.trend) {
            *price += step * trend;
        }
        self.prices[..shares].iter_mut().for_each(|p| *p = p.max(0.0));
    }

    /// Whether it has made all steps that it may make.
    pub fn ended(&self) -> bool {
        self.done || (self.parted || !self.question.parts()) && self.tired(STEPS)
    }

    /// Whether so many steps are made, or they have become too short to lead anywhere.
    fn tired(&self, steps: usize) -> bool {
        self.made >= steps || self.eager < SHORTEST
    }

    /// From the best place so far goes on with the question parted by bays.
    fn part(&mut self) {
        (self.parted, self.made) = (true, 0);
        self.prices.clone_from(&self.best_at);
        self.question.price_lots(&mut self.prices);
        self.best_at.clone_from(&self.prices);
        self.fresh = true;
        (self.eager, self.idle) = (0.5, 0);
    }

    /// Notes a value; after some steps without gain it goes back to the best place and takes shorter ones.
    fn note(&mut self, value: f64) {
        let gain = value > self.best * (1.0 + GAIN);
        if value > self.best {
            self.best = value;
            self.best_at.clone_from(&self.prices);
        }
        self.idle = if gain { 0 } else { self.idle + 1 };
        if self.idle >= PATIENCE {
            (self.eager, self.idle) = (self.eager * SHORTER, 0);
            self.prices.clone_from(&self.best_at);
            self.fresh = true;
        }
    }
}
