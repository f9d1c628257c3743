//! Assignment with capacities: every job to one agent, none overloaded, at the least cost.

use crate::instances::numbers;
use crate::walks::Puzzle;
use rand::RngExt;
use rand::rngs::Xoshiro256PlusPlus;
use toolberth::solve::{Heat, Walk};

/// How many agents a job considers: those that suit it best once room has a price.
const NEAR: usize = 5;
/// Steps that look for the price of room, how far ahead they aim, and how much shorter they grow when one is in vain.
const STEPS: u32 = 1500;
const AHEAD: f64 = 0.01;
const SHORTER: f64 = 0.99;
/// How many jobs are looked at for the one that had best make room.
const LOOKED_AT: usize = 12;
/// What a unit of cost is in the energy, so that the price of overload can change by little.
const UNIT: i64 = 256;
/// Moves between two looks at how often nobody was overloaded; in so many of a hundred of them is right.
const GLANCE: u32 = 2000;
const RIGHT: std::ops::RangeInclusive<u32> = 10..=30;

/// A state: an agent for each job. Agents may be overloaded, at a price.
pub struct Shared {
    agents: usize,
    jobs: usize,
    /// By job and agent.
    costs: Vec<i64>,
    needs: Vec<i64>,
    room: Vec<i64>,
    /// For each job, the agents that it considers.
    near: Vec<Vec<usize>>,
    /// What a unit of overload costs.
    overload: i64,
    at: Vec<usize>,
    load: Vec<i64>,
    energy: i64,
    over: i64,
    /// The jobs of each agent, and where each job stands among them.
    of: Vec<Vec<usize>>,
    stands: Vec<usize>,
    /// Moves since the last look, and those of them that found nobody overloaded.
    moves: u32,
    legal: u32,
    /// What undoes the last move.
    undo: Vec<(usize, usize)>,
    before: (i64, i64),
    best: Vec<usize>,
    least: Option<i64>,
}

impl Shared {
    /// Reads agents, jobs, costs, needs and capacities.
    pub fn read(text: &str) -> Option<Shared> {
        let all = numbers(text)?;
        let (&[agents, jobs], rest) = all.split_first_chunk::<2>()?;
        let (agents, jobs) = (agents as usize, jobs as usize);
        let (costs, rest) = rest.split_at_checked(agents * jobs)?;
        let (needs, rest) = rest.split_at_checked(agents * jobs)?;
        let room = rest.get(..agents)?.to_vec();
        let by_job = |rows: &[i64]| -> Vec<i64> {
            (0..jobs).flat_map(|j| (0..agents).map(move |i| rows[i * jobs + j])).collect()
        };
        let (costs, needs) = (by_job(costs), by_job(needs));
        let mean = |all: &[i64]| all.iter().sum::<i64>() as f64 / all.len() as f64;
        let overload = (UNIT as f64 * mean(&costs) / mean(&needs)) as i64;
        let mut state = Shared {
            agents,
            jobs,
            costs,
            needs,
            near: Vec::new(),
            overload,
            at: vec![0; jobs],
            load: vec![0; agents],
            energy: 0,
            over: 0,
            of: vec![Vec::new(); agents],
            stands: vec![0; jobs],
            moves: 0,
            legal: 0,
            undo: Vec::new(),
            before: (0, 0),
            best: Vec::new(),
            least: None,
            room,
        };
        state.consider();
        Some(state)
    }

    /// Finds for each job the agents that suit it best when room has a price, by subgradient steps towards a little more
    /// than the best sum so far (Held, Wolfe and Crowder 1974, from memory).
    fn consider(&mut self) {
        let mut price = vec![0.0; self.agents];
        let (mut most, mut best, mut stride) = (f64::NEG_INFINITY, price.clone(), 1.0);
        for _ in 0..STEPS {
            let mut off: Vec<f64> = self.room.iter().map(|r| -(*r as f64)).collect();
            let mut sum = 0.0;
            for job in 0..self.jobs {
                let agent = self.cheapest(job, &price);
                let need = self.needs[job * self.agents + agent] as f64;
                sum += self.costs[job * self.agents + agent] as f64 + price[agent] * need;
                off[agent] += need;
            }
            sum -= price.iter().zip(&self.room).map(|(p, r)| p * *r as f64).sum::<f64>();
            if sum > most {
                (most, best) = (sum, price.clone());
            } else {
                stride *= SHORTER;
            }
            let length: f64 = off.iter().map(|o| o * o).sum();
            let by = stride * (1.0 + most.abs() * AHEAD - (sum - most)) / length.max(1.0);
            price.iter_mut().zip(&off).for_each(|(p, o)| *p = (*p + by * o).max(0.0));
        }
        let near = |job| {
            let mut all = self.by_price(job, &best);
            all.truncate(NEAR);
            all
        };
        self.near = (0..self.jobs).map(near).collect();
    }

    fn cheapest(&self, job: usize, price: &[f64]) -> usize {
        let row = job * self.agents;
        let cost = |i: usize| self.costs[row + i] as f64 + price[i] * self.needs[row + i] as f64;
        (0..self.agents).min_by(|&a, &b| cost(a).total_cmp(&cost(b))).unwrap_or(0)
    }

    fn by_price(&self, job: usize, price: &[f64]) -> Vec<usize> {
        let mut all: Vec<usize> = (0..self.agents).collect();
        let cost = |i: usize| {
            let k = job * self.agents + i;
            self.costs[k] as f64 + price[i] * self.needs[k] as f64
        };
        all.sort_by(|&a, &b| cost(a).total_cmp(&cost(b)));
        all
    }

    fn put(&mut self, job: usize, agent: usize) {
        let from = self.at[job];
        self.undo.push((job, from));
        self.carry(job, agent);
    }

    fn carry(&mut self, job: usize, agent: usize) {
        let row = job * self.agents;
        let from = self.at[job];
        let both = |s: &Shared| s.over_with(from, 0) + s.over_with(agent, 0);
        let before = both(self);
        self.load[from] -= self.needs[row + from];
        self.load[agent] += self.needs[row + agent];
        let change = both(self) - before;
        self.over += change;
        let cost = self.costs[row + agent] - self.costs[row + from];
        self.energy += change * self.overload + cost * UNIT;
        self.at[job] = agent;
        let (there, n) = (&mut self.of[from], self.stands[job]);
        there.swap_remove(n);
        if let Some(&moved) = there.get(n) {
            self.stands[moved] = n;
        }
        self.stands[job] = self.of[agent].len();
        self.of[agent].push(job);
    }

    /// By how much an agent is overloaded with so much more.
    fn over_with(&self, agent: usize, more: i64) -> i64 {
        (self.load[agent] + more - self.room[agent]).max(0)
    }

    /// A job that had best leave an agent for one that comes from `back`, and where to: there, or anywhere that suits it.
    fn leaver(
        &self,
        agent: usize,
        back: usize,
        rng: &mut Xoshiro256PlusPlus,
    ) -> Option<(usize, usize)> {
        let there = &self.of[agent];
        let first = rng.random_range(0..there.len().max(1) as u32) as usize;
        let some = (0..there.len().min(LOOKED_AT)).map(|k| there[(first + k) % there.len()]);
        let each = some.filter_map(|job| {
            let straight = rng.random_range(0..2u32) == 0;
            let to = if straight { back } else { self.another(job, rng) };
            if to == agent {
                return None;
            }
            let row = job * self.agents;
            let cost = self.costs[row + to] - self.costs[row + agent];
            let over = self.over_with(to, self.needs[row + to]) - self.over_with(to, 0)
                + self.over_with(agent, -self.needs[row + agent]);
            Some((cost * UNIT + over * self.overload, job, to))
        });
        each.min().map(|(_, job, to)| (job, to))
    }

    /// Room becomes dearer where somebody is nearly always overloaded, and cheaper where hardly ever.
    fn reprice(&mut self) {
        self.moves += 1;
        self.legal += u32::from(self.over == 0);
        if self.moves < GLANCE {
            return;
        }
        let share = 100 * self.legal / self.moves;
        let before = self.overload;
        if share < *RIGHT.start() {
            self.overload += 1 + before / 100;
        } else if share > *RIGHT.end() {
            self.overload -= before / 100;
        }
        self.energy += (self.overload - before) * self.over;
        (self.moves, self.legal) = (0, 0);
    }

    fn any(&self, rng: &mut Xoshiro256PlusPlus) -> usize {
        rng.random_range(0..self.jobs as u32) as usize
    }

    fn another(&self, job: usize, rng: &mut Xoshiro256PlusPlus) -> usize {
        let near = &self.near[job];
        near[rng.random_range(0..near.len() as u32) as usize]
    }

    fn weigh(&mut self) {
        self.load.fill(0);
        self.of.iter_mut().for_each(Vec::clear);
        let mut cost = 0;
        for job in 0..self.jobs {
            let agent = self.at[job];
            let k = job * self.agents + agent;
            cost += self.costs[k];
            self.load[agent] += self.needs[k];
            self.stands[job] = self.of[agent].len();
            self.of[agent].push(job);
        }
        self.over = self.load.iter().zip(&self.room).map(|(l, r)| (l - r).max(0)).sum();
        self.energy = UNIT * cost + self.overload * self.over;
        self.note();
    }

    fn note(&mut self) {
        if self.over == 0 && self.least.is_none_or(|least| self.energy < least * UNIT) {
            self.least = Some(self.energy / UNIT);
            self.best.clone_from(&self.at);
        }
    }
}

impl Walk for Shared {
    fn step(&mut self, rng: &mut Xoshiro256PlusPlus) -> Option<i64> {
        self.reprice();
        self.undo.clear();
        self.before = (self.energy, self.over);
        let one = self.any(rng);
        let (from, to) = (self.at[one], self.another(one, rng));
        if from == to {
            return None;
        }
        match rng.random_range(0..20u32) {
            0 => self.put(one, to),
            // Two change places.
            1..4 => {
                let two = self.any(rng);
                let back = self.at[two];
                if back == from || !self.near[one].contains(&back) {
                    return None;
                }
                self.put(one, back);
                self.put(two, from);
            }
            // One goes where it would, and another makes room for it.
            _ => {
                self.put(one, to);
                if let Some((two, on)) = self.leaver(to, from, rng) {
                    self.put(two, on);
                }
            }
        }
        Some(self.energy - self.before.0)
    }
    fn take_back(&mut self) {
        while let Some((job, agent)) = self.undo.pop() {
            self.carry(job, agent);
        }
        (self.energy, self.over) = self.before;
    }
    fn stay(&mut self) {
        self.note();
    }
}

impl Puzzle for Shared {
    // A random change of jobs is far dearer than what is left to gain.
    const HEATS: [Heat; 2] = [Heat { from: 0.05, to: 0.003 }, Heat { from: 0.03, to: 0.003 }];

    fn size(&self) -> u64 {
        self.jobs as u64
    }
    fn shuffle(&mut self, rng: &mut Xoshiro256PlusPlus) {
        for job in 0..self.jobs {
            // Mostly the agent that suits it best: what is drawn quite at random has to be forgotten again.
            let best = rng.random_range(0..10u32) > 0;
            self.at[job] = if best { self.near[job][0] } else { self.another(job, rng) };
        }
        self.weigh();
    }
    fn resume(&mut self) {
        if self.least.is_some() {
            self.at.clone_from(&self.best);
            self.weigh();
        }
    }
    fn least(&self) -> Option<i64> {
        self.least
    }
}
