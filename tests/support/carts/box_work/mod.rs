//! The box: columns parted by dividers, each of storeys parted by boards, so that no two openings can collide.

mod bays;

use super::Dice;
use bays::{furnish, name, through};
use toolberth::domain::{
    Bench, Board, Carcass, Casters, Face, Fixing, Material, Overhang, Panel, Zone,
};
use toolberth::finding::Span;
use toolberth::units::{Length, Mass, Share, Unit};

/// Sheet thickness of all that is built here.
const SHEET: i64 = 15;
/// Openings of one kind on one face, at most.
const MOST: usize = 3;

/// Part of the inside of the box, in whole millimetres: x and z, the whole depth.
struct Cell {
    x: [i64; 2],
    z: [i64; 2],
    leftmost: bool,
    rightmost: bool,
    topmost: bool,
}

impl Cell {
    fn wide(&self) -> i64 {
        self.x[1] - self.x[0]
    }
    fn tall(&self) -> i64 {
        self.z[1] - self.z[0]
    }
}

/// A box of any shape.
pub fn carcass(dice: &mut Dice) -> Carcass {
    let [wide, deep, tall] = [dice.whole(600, 1400), dice.whole(400, 800), dice.whole(600, 1050)];
    let lift = dice.whole(60, 140);
    let mut made = empty(wide, deep, tall, lift);
    made.mass = dice.perhaps(80, |d| Mass::kg(d.whole(20, 70)));
    made.board = dice
        .perhaps(30, |_| Board { material: Some(Material::Plywood), thickness: Length::mm(SHEET) });
    made.casters = casters(dice, wide, deep, lift);
    for cell in cells(dice, wide, tall, lift) {
        furnish(dice, &mut made, &cell);
    }
    if made.bays.is_empty() {
        let whole =
            Cell { x: [SHEET, wide - SHEET], z: [lift + SHEET, tall - SHEET], ..sides(false) };
        made.drawers.clear();
        made.bench = Bench { keep_clear: Share::ALL, ..made.bench };
        through(dice, &mut made, &whole, Face::Front);
    }
    panels(dice, &mut made);
    if !made.bays.iter().any(|b| b.face == Face::Top) {
        bench(dice, &mut made);
    }
    made
}

fn sides(all: bool) -> Cell {
    Cell { x: [0; 2], z: [0; 2], leftmost: all, rightmost: all, topmost: all }
}

/// A box without anything in it.
pub fn empty(wide: i64, deep: i64, tall: i64, lift: i64) -> Carcass {
    Carcass {
        name: "test cart".to_owned(),
        units: Unit::Mm,
        width: Length::mm(wide),
        depth: Length::mm(deep),
        height: Length::mm(tall),
        mass: None,
        board: None,
        casters: Casters {
            height: Length::mm(lift),
            rating: None,
            ratings: Vec::new(),
            wheel: None,
            gives: None,
            trail: Length::ZERO,
            locks: 2,
            at: corners(wide, deep, 55),
            span: Span::none(),
        },
        bays: Vec::new(),
        drawers: Vec::new(),
        panels: Vec::new(),
        bench: Bench { keep_clear: Share::ALL, zones: Vec::new(), limit: None, span: Span::none() },
        span: Span::none(),
    }
}

fn corners(wide: i64, deep: i64, inset: i64) -> Vec<[Length; 2]> {
    let (near, far) = ([inset, wide - inset], [inset, deep - inset]);
    far.iter().flat_map(|y| near.iter().map(|x| [Length::mm(*x), Length::mm(*y)])).collect()
}

/// Three to six casters, each in its place, rated generously, tightly or not at all.
fn casters(dice: &mut Dice, wide: i64, deep: i64, lift: i64) -> Casters {
    let inset = dice.whole(40, 80);
    let mut at = corners(wide, deep, inset);
    match dice.whole(0, 9) {
        0 => at = vec![at[0], at[1], [Length::mm(wide / 2), at[2][1]]],
        1 => at.push([Length::mm(wide / 2), Length::mm(deep / 2)]),
        2 => at.extend([inset, deep - inset].map(|y| [Length::mm(wide / 2), Length::mm(y)])),
        _ => {}
    }
    let rating = match dice.whole(0, 5) {
        0 => None,
        1 => Some(Mass::kg(dice.whole(18, 40))),
        _ => Some(Mass::kg(dice.whole(60, 150))),
    };
    let trail = Length::mm(dice.one(&[0, 0, 0, 25]));
    Casters {
        height: Length::mm(lift),
        rating,
        ratings: Vec::new(),
        wheel: None,
        gives: None,
        trail,
        locks: 2,
        at,
        span: Span::none(),
    }
}

fn cells(dice: &mut Dice, wide: i64, tall: i64, lift: i64) -> Vec<Cell> {
    let columns = dice.whole(1, if wide > 800 { 3 } else { 2 });
    let across = split(dice, SHEET, wide - SHEET, columns);
    let mut all = Vec::new();
    for (c, x) in across.iter().enumerate() {
        let storeys = dice.whole(1, 3);
        let up = split(dice, lift + SHEET, tall - SHEET, storeys);
        for (s, z) in up.iter().enumerate() {
            all.push(Cell {
                x: *x,
                z: *z,
                leftmost: c == 0,
                rightmost: c + 1 == across.len(),
                topmost: s + 1 == up.len(),
            });
        }
    }
    all
}

/// A stretch in so many parts with a sheet between each two, none under three fifths of an even share.
fn split(dice: &mut Dice, from: i64, to: i64, parts: i64) -> Vec<[i64; 2]> {
    let mut at = from;
    let mut out = Vec::new();
    for left in (1..=parts).rev() {
        let even = (to - at - SHEET * (left - 1)) / left;
        let end = if left == 1 { to } else { at + dice.whole(even * 3 / 5, even * 6 / 5) };
        out.push([at, end]);
        at = end + SHEET;
    }
    out
}

/// At most one panel a face, at least 50 mm over the floor with all that may hang below it.
fn panels(dice: &mut Dice, made: &mut Carcass) {
    for face in [Face::Front, Face::Back, Face::Left, Face::Right] {
        if !dice.luck(25) {
            continue;
        }
        let along = in_mm(if face.axis() == 1 { made.width } else { made.depth });
        let (wide, tall) = (dice.whole(along / 3, along), dice.whole(150, 350));
        let over = dice.one(&[0, 0, 40, 60]);
        let panel = Panel {
            face,
            name: name(made, "panel"),
            at: [dice.mm(0, along - wide), dice.mm(50 + over, in_mm(made.height) - tall)],
            size: [wide, tall].map(Length::mm),
            room: dice.mm(60, 160),
            limit: dice.perhaps(60, |d| Mass::kg(d.whole(5, 20))),
            overhang: Overhang {
                down: Length::mm(over),
                right: Length::mm(dice.one(&[0, 0, 0, 30])),
                ..Overhang::default()
            },
            material: (wide % 3 == 0).then_some(Material::Pine),
            thickness: None,
            fixing: Fixing {
                hook: (tall % 3 == 0).then_some(Mass::kg(4)),
                end_grain: tall % 11 == 0,
                ..Fixing::default()
            },
            span: Span::none(),
        };
        made.panels.push(panel);
    }
}

/// A share of the top, at its back edge or where a zone says so.
fn bench(dice: &mut Dice, made: &mut Carcass) {
    if dice.luck(50) {
        return;
    }
    let (wide, deep) = (in_mm(made.width), in_mm(made.depth));
    made.bench.keep_clear = Share::ppm(dice.one(&[500_000, 700_000, 750_000]));
    made.bench.limit = dice.perhaps(50, |d| Mass::kg(d.whole(10, 40)));
    if dice.luck(40) {
        let size = [dice.mm(wide / 4, wide / 2), dice.mm(deep / 4, deep / 2)];
        let at = [Length::mm(wide) - size[0], dice.mm(0, deep / 2)];
        made.bench.zones.push(Zone { at, size, span: Span::none() });
    }
}

fn in_mm(length: Length) -> i64 {
    length.as_nm() / 1_000_000
}
