//! Carts as a workshop has them: all faces in use, and everything in the inventory that makes planning hard.
//!
//! Things are cut out of the room there is, and fire and fuel are given only to what was cut from different faces: so
//! a place for everything is known to exist, while a careless layout will not find it. What is dear, what is in the way
//! and what belongs together is for the planner to find out.

mod frame;
mod kit;

use super::{Dice, shop};
use frame::frame;
use toolberth::domain::{Experience, Face, Item, Job, Reserve, Shop, Station, Workspace};
use toolberth::finding::Span;
use toolberth::units::{Share, Uses};

/// How full such a cart is.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Fill {
    /// A good half of the volume, with some play on every deck.
    Roomy,
    /// Seven tenths of the volume, hardly any play on the decks.
    Tight,
}

impl Fill {
    /// The share of the volume that is filled.
    const fn share(self) -> f64 {
        match self {
            Fill::Roomy => 0.62,
            Fill::Tight => 0.74,
        }
    }
    /// What is left of each side of a thing, at least and at most.
    const fn sides(self) -> [f64; 2] {
        match self {
            Fill::Roomy => [0.82, 0.96],
            Fill::Tight => [0.88, 0.99],
        }
    }
}

/// Part of a deck of the empty cart.
#[derive(Clone, Copy, Debug)]
struct Deck {
    /// The face it opens to; none where it opens to two.
    face: Option<Face>,
    /// Along the face and into it, in millimetres.
    size: [f64; 2],
    /// Clear height that a thing on it may have, in millimetres.
    tall: f64,
}

/// A cart for so many things, one place each.
pub fn workshop(seed: u64, items: usize, fill: Fill) -> Workspace {
    let mut dice = Dice::new(seed);
    let (carcass, decks) = frame(&mut dice, items);
    let items = kit::items(&mut dice, &carcass, decks, items, fill);
    let shop = shop(&mut dice, &items);
    Workspace { carcass, items, shop, layout: None }
}

/// Where the work is before the front, where the back stands at the wall between times, and jobs of things in use.
fn shop(dice: &mut Dice, items: &[Item]) -> Shop {
    let mut shop = shop::plain();
    shop.person.experience = Experience::Settled;
    shop.stations = vec![
        station("bench work", 750_000, Face::Front, &[]),
        station("parked", 150_000, Face::Front, &[Face::Back]),
        station("end of the bench", 100_000, Face::Right, &[]),
    ];
    shop.reserve = Reserve {
        share: Share::ppm(100_000),
        families: vec![("finishing".to_owned(), 1, Span::none())],
    };
    shop.jobs = (0..items.len().div_ceil(15)).map(|n| job(dice, items, n)).collect();
    shop
}

fn station(name: &str, share: i64, work: Face, walls: &[Face]) -> Station {
    let (name, share) = (name.to_owned(), Share::ppm(share));
    Station { name, share, work, walls: walls.to_vec(), span: Span::none() }
}

/// Three or four things, for what is done once a month to three times a week.
fn job(dice: &mut Dice, items: &[Item], number: usize) -> Job {
    let mut names: Vec<String> = Vec::new();
    for _ in 0..dice.whole(3, 4) {
        let name = dice.one(items).name;
        if !names.contains(&name) {
            names.push(name);
        }
    }
    Job {
        name: format!("job {}", number + 1),
        items: names.into_iter().map(|name| (name, Span::none())).collect(),
        uses: Uses::from_week(dice.spread(0.25, 3.0)),
    }
}
