//! The table of carts: how far searches of a second and of ten are from the best known, and what is proven.

use crate::best::{keep, known};
use crate::carts::{Cart, fill};
use crate::clock::Clock;
use crate::lower::{take_over, until};
use crate::options::Options;
use std::time::Duration;
use toolberth::score::Score;
use toolberth::site::Site;
use toolberth::solve::{Found, bound};
use toolberth::units::Price;

/// Seeds of the searches.
const SEEDS: [u64; 3] = [1, 2, 3];
/// How long they go on, in seconds.
const SHORT: u64 = 1;
const LONG: u64 = 10;
/// The carts that the marks are about, by how many things they have.
const MARKED: std::ops::RangeInclusive<usize> = 24..=100;
/// Those that the mark of the proof is about.
const PROVEN: std::ops::RangeInclusive<usize> = 24..=60;
/// What is meant to be reached, in hundredths: the mean after a second, the worst, the mean after ten, the gap.
const MEAN_SHORT: f64 = 1.0;
const WORST_SHORT: f64 = 3.0;
const MEAN_LONG: f64 = 0.3;
const GAP: f64 = 10.0;

/// How far several searches of one length are from the best known, in hundredths; those that leave out more apart.
#[derive(Default)]
struct Over {
    hundredths: Vec<f64>,
    leave_more: usize,
}

/// What the carts within the marks came to.
#[derive(Default)]
struct Marks {
    short: Over,
    long: Over,
    gaps: Vec<f64>,
}

/// Prints the table of those carts and what became of the marks.
pub fn table(options: &Options) {
    if options.carts.is_empty() {
        return;
    }
    println!(
        "Carts, in seconds a week. After {SHORT} s and {LONG} s of one core: how many hundredths over the best known,"
    );
    println!(
        "worst and mean of {} seeds, and how many leave out more than it. Gap of the best of those to what is",
        SEEDS.len()
    );
    println!(
        "proven, bare and with handling counted in, and how long the proof took. Best known from so many seeds."
    );
    println!();
    println!(
        "{:<11}{:>5}{:>6}{:>10}{:>8}{:>17}{:>17}{:>10}{:>8}{:>8}{:>7}   searched",
        "cart", "lots", "fill", "best", "out", "1 s", "10 s", "bound", "gap", "handl.", "in s"
    );
    let mut marks = Marks::default();
    for cart in &options.carts {
        row(options, cart, &mut marks);
    }
    marks.tell();
}

fn row(options: &Options, cart: &Cart, marks: &mut Marks) {
    let site = cart.site();
    let mut of = known(&options.best, cart.name, &site);
    let search = |seconds| SEEDS.map(|seed| until(&site, seed, 1, Duration::from_secs(seconds)));
    let (short, long) = (search(SHORT), search(LONG));
    let found = long.iter().min_by_key(|f| f.score).expect("there are searches");
    // What is found here may be better than what was known.
    if take_over(&mut of, found.clone()) {
        keep(&options.best, cart.name, &of).expect("the folder can be written");
    }
    let best = of.layout.as_ref().map_or(found.score, |(score, _)| *score);
    let proof = Proof::of(&site, found);
    let [short, long] = [&short, &long].map(|found| Over::of(best, found));
    print!(
        "{:<11}{:>5}{:>6.2}{:>10.2}{:>8.2}{:>17}{:>17}",
        cart.name,
        site.lots.len(),
        fill(&site),
        best.cost as f64 / 1e6,
        best.off_cart as f64 / 1e6,
        short.shown(),
        long.shown()
    );
    println!(
        "{:>10.2}{:>7.1}%{:>7.1}%{:>7.1}   {} × {} s",
        proof.bound.as_s(),
        proof.gap,
        proof.with_handling,
        proof.seconds,
        of.seeds,
        of.seconds.checked_div(of.seeds).unwrap_or(0)
    );
    if MARKED.contains(&cart.things) {
        marks.short.join(short);
        marks.long.join(long);
    }
    if PROVEN.contains(&cart.things) {
        marks.gaps.push(proof.with_handling);
    }
}

/// What is proven of a layout, in hundredths of its cost, and how long that took.
struct Proof {
    bound: Price,
    gap: f64,
    with_handling: f64,
    seconds: f64,
}

impl Proof {
    fn of(site: &Site, found: &Found) -> Proof {
        let clock = Clock::start();
        let Score { off_cart, cost, .. } = found.score;
        let bound = bound(site, Price::us(off_cart), Price::us(cost));
        let seconds = clock.spent().as_secs_f64();
        let on = (0..site.lots.len()).filter(|&l| found.places[l].is_some());
        let handling: Price = on.map(|l| site.lots[l].uses.cost(site.lots[l].handling)).sum();
        let cost = Price::us(cost);
        let part = |whole: Price| 100.0 * (cost - bound).as_s() / whole.as_s();
        Proof { bound, gap: part(cost), with_handling: part(cost + handling), seconds }
    }
}

impl Over {
    fn of(best: Score, found: &[Found]) -> Over {
        let mut over = Over::default();
        for Found { score, .. } in found {
            if (score.broken, score.off_cart) > (best.broken, best.off_cart) {
                over.leave_more += 1;
            } else {
                over.hundredths.push(100.0 * (score.cost as f64 / best.cost as f64 - 1.0));
            }
        }
        over
    }
    fn join(&mut self, other: Over) {
        self.hundredths.extend(other.hundredths);
        self.leave_more += other.leave_more;
    }
    fn worst(&self) -> f64 {
        self.hundredths.iter().copied().fold(f64::NEG_INFINITY, f64::max)
    }
    fn mean(&self) -> f64 {
        self.hundredths.iter().sum::<f64>() / self.hundredths.len() as f64
    }
    fn shown(&self) -> String {
        let out = match self.leave_more {
            0 => String::new(),
            n => format!(" {n} out"),
        };
        if self.hundredths.is_empty() {
            return out;
        }
        format!("{:.2} {:.2}{out}", self.worst(), self.mean())
    }
}

impl Marks {
    fn tell(&self) {
        println!();
        if !self.short.hundredths.is_empty() {
            let out = self.short.leave_more + self.long.leave_more;
            mark(
                "24 to 100 things, after 1 s, mean over the best known",
                self.short.mean(),
                MEAN_SHORT,
            );
            mark("the worst of them", self.short.worst(), WORST_SHORT);
            mark("24 to 100 things, after 10 s, mean", self.long.mean(), MEAN_LONG);
            mark("searches of them that leave out more than the best known", out as f64, 0.0);
        }
        if !self.gaps.is_empty() {
            let worst = self.gaps.iter().copied().fold(0.0, f64::max);
            mark("24 to 60 things, gap with handling, the widest", worst, GAP);
        }
    }
}

/// One line for a mark that is not to be exceeded.
pub fn mark(what: &str, found: f64, most: f64) {
    let verdict = if found <= most {
        format!("reached, at most {most}")
    } else {
        format!("missed by {:.2}, at most {most}", found - most)
    };
    println!("{what}: {found:.2} ({verdict})");
}

/// One line for a mark that is to be reached at least.
pub fn mark_least(what: &str, found: f64, least: f64) {
    let verdict = if found >= least {
        format!("reached, at least {least}")
    } else {
        format!("missed by {:.2}, at least {least}", least - found)
    };
    println!("{what}: {found:.2} ({verdict})");
}
