//! Rectangles cut from one bin, on the core of the carts: a cart of one drawer, and flat boxes used in proportion to
//! their area, so that what is left out costs its area.

use crate::clock::Clock;
use crate::instances::{files, numbers};
use crate::lower::until;
use crate::support::carts::{Dice, empty, plain, plain_shop};
use crate::table::mark_least;
use std::path::Path;
use std::time::Duration;
use toolberth::domain::{Drawer, Face, Item, Workspace};
use toolberth::finding::Span;
use toolberth::site::Site;
use toolberth::units::{Length, Mass, Uses};

/// How thick the boxes are, and how much the drawer is higher.
const THICK: i64 = 10;
/// Uses a week for each unit of area: so many that the rest of what a thing is worth does not count.
const USES: f64 = 100.0;

/// A bin and its pieces.
struct Bin {
    size: [i64; 2],
    pieces: Vec<[i64; 2]>,
}

/// What is meant to be reached, in hundredths: the mean with turning, the least with it, the mean without.
const MEAN_TURNED: f64 = 98.5;
const LEAST_TURNED: f64 = 96.0;
const MEAN_LAID: f64 = 98.0;

/// The densities of all files of a folder, each shuffled with two seeds, after at most so many seconds.
pub fn run(folder: &Path, seconds: u64) {
    let turned = table(folder, true, seconds);
    let laid = table(folder, false, seconds);
    let mean = |all: &[f64]| all.iter().sum::<f64>() / all.len() as f64;
    let least = turned.iter().copied().fold(f64::INFINITY, f64::min);
    println!();
    mark_least("rectangles, turning, mean density", mean(&turned), MEAN_TURNED);
    mark_least("rectangles, turning, the least", least, LEAST_TURNED);
    mark_least("rectangles as they lie, mean density", mean(&laid), MEAN_LAID);
}

fn table(folder: &Path, turn: bool, seconds: u64) -> Vec<f64> {
    let name = if turn { "rect, turning" } else { "rect, as they lie" };
    println!();
    println!("{name:<20}{:>6}{:>20}{:>16}", "size", "two seeds", "in s");
    let mut all = Vec::new();
    for (file, text) in files(folder, "rect") {
        let Some(bin) = Bin::read(&text) else { continue };
        let found = [1, 2].map(|seed| {
            let clock = Clock::start();
            let density = 100.0 * bin.pack(seed, turn, Duration::from_secs(seconds));
            (density, clock.spent().as_secs_f64())
        });
        let [(one, a), (two, b)] = found;
        let size = bin.pieces.len();
        println!("{file:<20}{size:>6}{one:>10.2}{two:>10.2}{a:>8.1}{b:>8.1}");
        all.extend([one, two]);
    }
    all
}

impl Bin {
    fn read(text: &str) -> Option<Bin> {
        let all = numbers(text)?;
        let [_, wide, high, rest @ ..] = all.as_slice() else { return None };
        let pieces = rest.chunks_exact(2).map(|p| [p[0], p[1]]).collect();
        Some(Bin { size: [*wide, *high], pieces })
    }

    /// The share of the bin that a search fills.
    fn pack(&self, seed: u64, turn: bool, seconds: Duration) -> f64 {
        let site = Site::new(&self.cart(seed, turn)).expect("the bin is sound");
        let found = until(&site, seed, 1, seconds);
        let filled: f64 = (0..site.lots.len())
            .filter(|&l| found.places[l].is_some())
            .map(|l| site.lots[l].bulk as f64 / THICK as f64)
            .sum();
        filled / (self.size[0] * self.size[1]) as f64
    }

    /// The bin as a drawer, its pieces in another order than the file's, which is that in which the bin was cut.
    fn cart(&self, seed: u64, turn: bool) -> Workspace {
        let mut dice = Dice::new(seed);
        let mut pieces = self.pieces.clone();
        for n in (1..pieces.len()).rev() {
            pieces.swap(n, dice.whole(0, n as i64) as usize);
        }
        let [wide, deep] = self.size;
        let mut carcass = empty(wide + 400, deep + 400, 1200, 100);
        carcass.mass = Some(Mass::kg(100));
        carcass.drawers.push(Drawer {
            face: Face::Front,
            name: "bin".to_owned(),
            at: [200, 1000].map(Length::mm),
            opening: [wide, THICK + 10].map(Length::mm),
            depth: Length::mm(deep),
            limit: None,
            extends: None,
            mass: Some(Mass::kg(1)),
            catch: false,
            span: Span::none(),
        });
        let items = pieces.iter().enumerate().map(|(n, piece)| thing(n, *piece, turn)).collect();
        Workspace { carcass, items, shop: plain_shop(), layout: None }
    }
}

fn thing(number: usize, [wide, deep]: [i64; 2], turn: bool) -> Item {
    let size = [wide, deep, THICK].map(Length::mm);
    let uses = Uses::from_week(USES * (wide * deep) as f64);
    let mut item = plain(&format!("piece {number}"), size, Mass::from_kg(0.001), uses);
    item.poses[1] = None;
    item.turn = turn;
    item
}
