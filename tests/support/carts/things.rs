//! The things: of any size that a cart may meet, kept in every way that the model knows.

use super::Dice;
use toolberth::domain::{Carcass, Dims, Face, Hazard, Hazards, Home, Item};
use toolberth::finding::Span;
use toolberth::units::{Length, Mass, Uses};

const WORDS: [&str; 12] = [
    "plane",
    "saw",
    "square",
    "mallet",
    "glue",
    "drill",
    "rasp",
    "clamp",
    "tin",
    "brush",
    "level",
    "box of screws",
];
const FAMILIES: [&str; 4] = ["cutting", "marking", "finishing", "fixing"];

/// A thing with all defaults: stands or lies, turns, one of it, no hazard.
pub fn plain(name: &str, size: [Length; 3], weight: Mass, uses: Uses) -> Item {
    let [w, d, h] = size;
    Item {
        name: name.to_owned(),
        span: Span::none(),
        size: Dims { w, d, h },
        weight,
        uses,
        count: 1,
        take_all: false,
        stack: 1,
        pitch: None,
        poses: [Some(Dims { w, d, h }), Some(Dims { w, d: h, h: d }), None],
        turn: true,
        family: None,
        with: Vec::new(),
        hazards: Hazards::default(),
        hazards_said: false,
        guarded: false,
        inside: None,
        hands: 1,
        handles: None,
        grip: None,
        fetched: true,
        urgent: false,
        place: Vec::new(),
        prefer: Vec::new(),
        fixed: false,
        holds: Vec::new(),
        clearance: None,
    }
}

/// How often a thing is used: from daily to yearly, evenly over the orders of magnitude.
pub fn uses(dice: &mut Dice) -> Uses {
    Uses::from_week(dice.spread(1.0 / 52.0, 14.0))
}

/// So many things with names of their own, for a given box.
pub fn items(dice: &mut Dice, made: &Carcass, names: std::ops::RangeInclusive<u32>) -> Vec<Item> {
    let count = dice.whole(i64::from(*names.start()), i64::from(*names.end()));
    let mut all: Vec<Item> = (0..count).map(|n| item(dice, made, n)).collect();
    let known: Vec<String> = all.iter().map(|i| i.name.clone()).collect();
    for item in &mut all {
        let with = dice.perhaps(25, |d| d.one(&known)).filter(|name| *name != item.name);
        item.with.extend(with.map(|name| (name, Span::none())));
    }
    all
}

fn item(dice: &mut Dice, made: &Carcass, number: i64) -> Item {
    let name = format!("{} {}", dice.one(&WORDS), words(number));
    let size = size(dice);
    let litres: f64 = size.iter().map(|s| s.as_mm() / 100.0).product();
    let heavy = if dice.luck(6) { 8.0 } else { 1.0 };
    let kilograms = (litres * dice.real(0.2, 1.5) * heavy).clamp(0.02, 30.0);
    let mut item = plain(&name, size, Mass::from_kg((kilograms * 1e3).round() / 1e3), uses(dice));
    poses(dice, &mut item);
    copies(dice, &mut item);
    hazards(dice, &mut item);
    handling(dice, &mut item);
    item.family = dice.perhaps(60, |d| d.one(&FAMILIES).to_owned());
    item.place = dice.perhaps(8, |d| home(d, made)).into_iter().collect();
    item.prefer = dice.perhaps(8, |d| home(d, made)).into_iter().collect();
    item
}

/// A number as letters, so that no name ends in a figure: 0 is "a", 26 is "ba".
fn words(number: i64) -> String {
    let letter = char::from(b'a' + (number % 26) as u8);
    if number < 26 { letter.to_string() } else { format!("{}{letter}", words(number / 26)) }
}

fn size(dice: &mut Dice) -> [Length; 3] {
    let long = dice.spread(40.0, 380.0);
    let mut sides = [long, long * dice.real(0.2, 1.0), long * dice.real(0.2, 1.0)];
    if dice.luck(2) {
        sides[0] = 1500.0; // longer than most carts
    }
    let turned = dice.whole(0, 2) as usize;
    sides.rotate_left(turned);
    let sixty_fourths = dice.luck(10);
    sides.map(|s| {
        if sixty_fourths {
            Length::nm((s / 25.4 * 64.0).round() as i64 * 396_875)
        } else {
            Length::mm(s.round().max(5.0) as i64)
        }
    })
}

fn poses(dice: &mut Dice, item: &mut Item) {
    let size = item.size;
    if dice.luck(25) {
        item.poses[2] = Some(size);
    }
    match dice.whole(0, 9) {
        0 => item.poses = [None, item.poses[1], item.poses[2]],
        1 => item.poses[1] = None,
        2 => item.poses = [None, None, Some(size)],
        3 => {
            // kept in a way of its own, a little larger than it is
            let own = Dims { w: size.w + Length::mm(4), d: size.h, h: size.d + Length::mm(3) };
            item.poses[1] = Some(own);
        }
        _ => {}
    }
    item.turn = dice.luck(80);
    item.grip = dice.perhaps(30, |d| Length::mm(d.whole(0, size.h.as_nm() / 1_000_000)));
    item.clearance = dice.perhaps(12, |d| Length::mm(d.one(&[0, 10, 40])));
}

fn copies(dice: &mut Dice, item: &mut Item) {
    if !dice.luck(30) {
        return;
    }
    item.count = dice.whole(2, 5) as u32;
    match dice.whole(0, 3) {
        0 => item.stack = dice.whole(2, 4) as u32,
        1 => item.pitch = Some(Length::nm(item.size.w.as_nm() / 3)),
        2 => item.take_all = true,
        _ => {}
    }
}

fn hazards(dice: &mut Dice, item: &mut Item) {
    let draws = [22, 6].map(|percent| dice.perhaps(percent, |d| d.one(&Hazard::ALL)));
    let found: Vec<Hazard> = draws.into_iter().flatten().collect();
    item.hazards = Hazards::of(&found);
    item.guarded = dice.luck(40);
    if item.hazards.has(Hazard::SelfHeating) {
        item.inside = dice.perhaps(90, |_| "closed metal can".to_owned());
    }
    let upright = Hazards::of(&[Hazard::Liquid, Hazard::Hot, Hazard::Electric]);
    if item.hazards.meets(upright) {
        item.poses = [Some(item.size), None, None];
    }
}

fn handling(dice: &mut Dice, item: &mut Item) {
    item.hands = if dice.luck(15) { 2 } else { 1 };
    item.fetched = !dice.luck(5);
    item.urgent = dice.luck(4);
    if dice.luck(10) {
        item.holds = vec!["spare blade".to_owned()];
    }
}

/// A face with a surface of its own, a bay, or both; now and then the bench.
fn home(dice: &mut Dice, made: &Carcass) -> Home {
    let names = bays(made);
    let (face, bay) = dice.one(&names);
    let parts = match dice.whole(0, 4) {
        0 if made.bench.keep_clear.as_ppm() < 1_000_000 => vec!["top".to_owned()],
        0 | 1 => vec![face.name().to_owned()],
        2 | 3 => vec![bay],
        _ => vec![face.name().to_owned(), bay],
    };
    Home { parts, span: Span::none() }
}

/// All openings and panels with their faces, names in lower case.
fn bays(made: &Carcass) -> Vec<(Face, String)> {
    let bays = made.bays.iter().map(|b| (b.face, &b.name));
    let drawers = made.drawers.iter().map(|d| (d.face, &d.name));
    let panels = made.panels.iter().map(|p| (p.face, &p.name));
    bays.chain(drawers).chain(panels).map(|(f, n)| (f, n.to_lowercase())).collect()
}
