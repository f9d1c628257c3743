//! The carcass: columns of three storeys, with bays to all four sides, drawers, panels and a corner of the bench.

use super::super::Dice;
use super::super::box_work::empty;
use super::Deck;
use toolberth::domain::{
    Along, Bay, Board, Carcass, Depth, Drawer, Ends, Face, Material, Panel, Shelf, Wall,
};
use toolberth::finding::Span;
use toolberth::units::{Length, Mass, Share};

/// Sheet thickness of all that is built here, in millimetres.
const SHEET: i64 = 15;
/// Floor to the underside.
const LIFT: i64 = 110;
/// Outside depth.
const DEEP: i64 = 640;
/// Clear heights of the storeys, from below. A cart for few things has no middle one.
const STOREYS: [i64; 3] = [320, 210, 330];
/// Free height over a thing on a deck of a bay.
const CLEARANCE: i64 = 25;
/// Things that a column is built for.
const A_COLUMN: usize = 30;
/// Carts for fewer things than this are small.
const SMALL: usize = 16;

/// A cell of the frame: the column's clear x, and the clear z of a storey.
#[derive(Clone, Copy)]
struct Cell {
    x: [i64; 2],
    z: [i64; 2],
}

/// The carcass and its decks with what was left out of them.
struct Built {
    made: Carcass,
    decks: Vec<Deck>,
}

/// A carcass for so many things, and its decks.
pub(super) fn frame(dice: &mut Dice, items: usize) -> (Carcass, Vec<Deck>) {
    let count = ((items + A_COLUMN / 2) / A_COLUMN).max(1);
    let columns: Vec<i64> = (0..count).map(|_| dice.whole(480, 620)).collect();
    let storeys: &[i64] = if items < SMALL { &[320, 330] } else { &STOREYS };
    let wide = SHEET + columns.iter().map(|c| c + SHEET).sum::<i64>();
    let tall = LIFT + SHEET + storeys.iter().map(|s| s + SHEET).sum::<i64>();
    let mut built = Built { made: empty(wide, DEEP, tall, LIFT), decks: Vec::new() };
    roll(&mut built.made, count);
    let mut left = SHEET;
    for (c, column) in columns.iter().enumerate() {
        let x = [left, left + column];
        let mut low = LIFT + SHEET;
        let mut cells = Vec::new();
        for storey in storeys {
            cells.push(Cell { x, z: [low, low + storey] });
            low += storey + SHEET;
        }
        column_of(&mut built, &cells, c, count);
        left += column + SHEET;
    }
    panel(&mut built.made, Face::Left);
    if items >= SMALL {
        panel(&mut built.made, Face::Right);
        built.made.bench.keep_clear = Share::ppm(850_000);
        built.made.bench.limit = Some(Mass::kg(40));
    }
    (built.made, built.decks)
}

/// Mass, material and casters that carry it.
fn roll(made: &mut Carcass, columns: usize) {
    made.mass = Some(Mass::kg(20 + 22 * columns as i64));
    made.board = Some(Board { material: Some(Material::Plywood), thickness: Length::mm(SHEET) });
    let pairs = (2 + columns / 3).min(6) as i64;
    let wide = made.width.as_nm() / 1_000_000;
    let across = (0..pairs).map(|n| 60 + n * (wide - 120) / (pairs - 1));
    made.casters.at =
        across.flat_map(|x| [60, DEEP - 60].map(|y| [x, y].map(Length::mm))).collect();
    let each = (20 + 130 * columns as i64) / pairs;
    made.casters.rating = Some(Mass::kg(each.max(60)));
}

/// Furnishes a column. The two outermost open to the sides below.
fn column_of(built: &mut Built, cells: &[Cell], number: usize, count: usize) {
    let even = number.is_multiple_of(2);
    let below = cells[0];
    match number {
        0 if count > 1 => to_side(built, &below, Face::Left),
        n if n + 1 == count && count > 1 => to_side(built, &below, Face::Right),
        _ if even => back_to_back(built, &below, 340, true),
        _ => through(built, &below, false),
    }
    if let [_, middle, _] = cells {
        if even { drawers(built, middle) } else { back_to_back(built, middle, 300, false) }
    }
    let above = &cells[cells.len() - 1];
    if even { through(built, above, true) } else { back_to_back(built, above, 290, true) }
}

impl Cell {
    /// Where its opening is on a face of a cart so wide.
    fn seen(&self, face: Face, wide: Length) -> [i64; 2] {
        let u = match face {
            Face::Front => self.x[0],
            Face::Back => wide.as_nm() / 1_000_000 - self.x[1],
            _ => SHEET,
        };
        [u, self.z[0]]
    }
    fn clear(&self, face: Face) -> [i64; 2] {
        let across = if face.axis() == 1 { self.x[1] - self.x[0] } else { DEEP - 2 * SHEET };
        [across, self.z[1] - self.z[0]]
    }
}

fn name(made: &Carcass, word: &str) -> String {
    let number = (made.bays.len() + made.drawers.len() + made.panels.len()) as u8;
    format!("{word} {}{}", char::from(b'a' + number / 26), char::from(b'a' + number % 26))
}

fn bay(built: &Built, cell: &Cell, face: Face, depth: Depth, shelves: Vec<Shelf>) -> Bay {
    let behind = matches!(depth, Depth::Behind { .. });
    let [at, opening] =
        if behind { [[0; 2]; 2] } else { [cell.seen(face, built.made.width), cell.clear(face)] };
    Bay {
        face,
        name: name(&built.made, "bay"),
        at: at.map(Length::mm),
        opening: opening.map(Length::mm),
        hang: if depth == Depth::Through {
            Vec::new()
        } else {
            vec![(Wall::Left, Some(Mass::kg(5)))]
        },
        depth,
        limit: Some(Mass::kg(45)),
        shelves,
        fixing: Default::default(),
        ends: Default::default(),
        span: Span::none(),
    }
}

/// A shelf so high and so deep; `play` is how far it may be moved, up and down.
fn shelf(height: i64, depth: Option<i64>, play: i64) -> Shelf {
    Shelf {
        height: Length::mm(height),
        depth: depth.map(Length::mm),
        front: None,
        thickness: Some(Length::mm(SHEET)),
        material: None,
        ends: Ends::Free,
        span_along: Along::Width,
        limit: Some(Mass::kg(22)),
        adjust: (play > 0).then(|| [height - play, height + play, 32].map(Length::mm)),
        span: Span::none(),
    }
}

/// Notes the decks of a bay: its floor under and before a shelf, and the shelf.
fn decks(built: &mut Built, face: Option<Face>, clear: [i64; 2], deep: i64, shelf: Option<&Shelf>) {
    let [wide, tall] = clear;
    let mut deck = |deep: i64, tall: i64| {
        let size = [wide as f64, deep as f64];
        built.decks.push(Deck { face, size, tall: (tall - CLEARANCE) as f64 });
    };
    let Some(shelf) = shelf else { return deck(deep, tall) };
    let top = shelf.height.as_nm() / 1_000_000;
    let length = shelf.depth.map_or(deep, |d| d.as_nm() / 1_000_000);
    deck(length, tall - top);
    deck(length, top - SHEET);
    if deep > length {
        deck(deep - length, tall);
    }
}

fn through(built: &mut Built, cell: &Cell, shelved: bool) {
    let tall = cell.z[1] - cell.z[0];
    let shelves = if shelved { vec![shelf(tall / 2, None, 0)] } else { Vec::new() };
    decks(built, None, cell.clear(Face::Front), DEEP, shelves.first());
    let made = bay(built, cell, Face::Front, Depth::Through, shelves);
    built.made.bays.push(made);
}

/// A bay in front so deep, and one behind with what is left.
fn back_to_back(built: &mut Built, cell: &Cell, deep: i64, shelved: bool) {
    let tall = cell.z[1] - cell.z[0];
    let some = |shelf: Shelf| if shelved { vec![shelf] } else { Vec::new() };
    let front = some(shelf(tall / 2, Some(deep * 2 / 3), 32));
    decks(built, Some(Face::Front), cell.clear(Face::Front), deep, front.first());
    let mut made = bay(built, cell, Face::Front, Depth::Deep(Length::mm(deep)), front);
    made.hang.push((Wall::Back, Some(Mass::kg(8))));
    let behind = Depth::Behind { name: made.name.clone(), gap: Length::mm(SHEET) };
    built.made.bays.push(made);
    let left = DEEP - deep - SHEET;
    let rear = some(shelf(tall * 3 / 5, None, 0));
    decks(built, Some(Face::Back), cell.clear(Face::Back), left, rear.first());
    let made = bay(built, cell, Face::Back, behind, rear);
    built.made.bays.push(made);
}

/// A bay as deep as the column is wide, with a shelf along its rear.
fn to_side(built: &mut Built, cell: &Cell, face: Face) {
    let deep = cell.x[1] - cell.x[0];
    let tall = cell.z[1] - cell.z[0];
    let shelves = vec![shelf(tall / 2, Some(deep / 2), 0)];
    decks(built, Some(face), cell.clear(face), deep, shelves.first());
    let made = bay(built, cell, face, Depth::Deep(Length::mm(deep)), shelves);
    built.made.bays.push(made);
}

/// Two drawers over each other in front, and a rack one can deep behind them.
fn drawers(built: &mut Built, cell: &Cell) {
    let [wide, tall] = cell.clear(Face::Front);
    let [u, v] = cell.seen(Face::Front, built.made.width);
    let each = tall / 2;
    for n in 0..2 {
        let inside = [wide - 30, each - 15];
        let drawer = Drawer {
            face: Face::Front,
            name: name(&built.made, "drawer"),
            at: [u + 15, v + n * each + 5].map(Length::mm),
            opening: inside.map(Length::mm),
            depth: Length::mm(430),
            limit: Some(Mass::kg(18)),
            extends: Some(Length::mm(400)),
            mass: Some(Mass::kg(4)),
            catch: true,
            span: Span::none(),
        };
        let size = [inside[0] as f64, 400.0];
        built.decks.push(Deck { face: Some(Face::Front), size, tall: inside[1] as f64 });
        built.made.drawers.push(drawer);
    }
    decks(built, Some(Face::Back), cell.clear(Face::Back), 150, None);
    let made = bay(built, cell, Face::Back, Depth::Deep(Length::mm(150)), Vec::new());
    built.made.bays.push(made);
}

/// A board at an end of the cart, over the bay there.
fn panel(made: &mut Carcass, face: Face) {
    made.panels.push(Panel {
        face,
        name: name(made, "board"),
        at: [20, 470].map(Length::mm),
        size: super::kit::BOARD.map(|s| Length::mm(s as i64)),
        room: Length::mm(130),
        material: None,
        thickness: None,
        fixing: Default::default(),
        limit: Some(Mass::kg(25)),
        overhang: Default::default(),
        span: Span::none(),
    });
}
