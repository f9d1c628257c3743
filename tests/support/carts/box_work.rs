//! The box: columns parted by dividers, each of storeys parted by boards, so that no two openings can collide.

use super::Dice;
use toolberth::domain::{
    Bay, Bench, Board, Carcass, Casters, Depth, Drawer, Face, Overhang, Panel, Shelf, Wall, Zone,
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
    let [wide, deep, tall] = [
        dice.whole(600, 1400),
        dice.whole(400, 800),
        dice.whole(600, 1050),
    ];
    let lift = dice.whole(60, 140);
    let mut made = empty(wide, deep, tall, lift);
    made.mass = dice.perhaps(80, |d| Mass::kg(d.whole(20, 70)));
    made.board = dice.perhaps(30, |_| Board {
        material: "plywood".to_owned(),
        thickness: Length::mm(SHEET),
    });
    made.casters = casters(dice, wide, deep, lift);
    for cell in cells(dice, wide, tall, lift) {
        furnish(dice, &mut made, &cell);
    }
    if made.bays.is_empty() {
        let whole = Cell {
            x: [SHEET, wide - SHEET],
            z: [lift + SHEET, tall - SHEET],
            ..sides(false)
        };
        made.drawers.clear();
        made.bench = Bench {
            keep_clear: Share::ALL,
            ..made.bench
        };
        through(dice, &mut made, &whole, Face::Front);
    }
    panels(dice, &mut made);
    if !made.bays.iter().any(|b| b.face == Face::Top) {
        bench(dice, &mut made);
    }
    made
}

fn sides(all: bool) -> Cell {
    Cell {
        x: [0; 2],
        z: [0; 2],
        leftmost: all,
        rightmost: all,
        topmost: all,
    }
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
            trail: Length::ZERO,
            locks: 2,
            at: corners(wide, deep, 55),
            span: Span::none(),
        },
        bays: Vec::new(),
        drawers: Vec::new(),
        panels: Vec::new(),
        bench: Bench {
            keep_clear: Share::ALL,
            zones: Vec::new(),
            limit: None,
            span: Span::none(),
        },
        span: Span::none(),
    }
}

fn corners(wide: i64, deep: i64, inset: i64) -> Vec<[Length; 2]> {
    let (near, far) = ([inset, wide - inset], [inset, deep - inset]);
    far.iter()
        .flat_map(|y| near.iter().map(|x| [Length::mm(*x), Length::mm(*y)]))
        .collect()
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
    Casters {
        height: Length::mm(lift),
        rating: match dice.whole(0, 5) {
            0 => None,
            1 => Some(Mass::kg(dice.whole(18, 40))),
            _ => Some(Mass::kg(dice.whole(60, 150))),
        },
        trail: Length::mm(dice.one(&[0, 0, 0, 25])),
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
        let end = if left == 1 {
            to
        } else {
            at + dice.whole(even * 3 / 5, even * 6 / 5)
        };
        out.push([at, end]);
        at = end + SHEET;
    }
    out
}

fn furnish(dice: &mut Dice, made: &mut Carcass, cell: &Cell) {
    match dice.whole(0, 13) {
        0 => {}
        1 if cell.topmost => top_bay(dice, made, cell),
        2 | 3 => drawers(dice, made, cell),
        4 | 5 => through(dice, made, cell, Face::Front),
        6 if cell.leftmost && cell.rightmost => through(dice, made, cell, Face::Left),
        6 | 7 if cell.leftmost => side_bay(dice, made, cell, Face::Left),
        6 | 8 if cell.rightmost => side_bay(dice, made, cell, Face::Right),
        9 | 10 => back_to_back(dice, made, cell),
        11 => apart(dice, made, cell),
        _ => one_sided(dice, made, cell),
    }
}

/// Whether a face takes one more opening of a kind.
fn has_room(made: &Carcass, face: Face) -> bool {
    made.bays.iter().filter(|b| b.face == face).count() < MOST
}

fn name(made: &Carcass, word: &str) -> String {
    let number = made.bays.len() + made.drawers.len() + made.panels.len();
    let letter = char::from(b'a' + u8::try_from(number).expect("few openings"));
    format!("{word} {letter}")
}

/// Adds a bay whose opening is `[u, v]` with its clear size, furnished for so deep a space.
fn add(
    dice: &mut Dice,
    made: &mut Carcass,
    face: Face,
    at: [i64; 2],
    size: [i64; 2],
    depth: Depth,
) {
    let deep = match depth {
        Depth::Deep(length) => in_mm(length),
        _ if face.axis() == 0 => in_mm(made.width),
        _ => in_mm(made.depth),
    };
    let bay = Bay {
        face,
        name: name(made, "bay"),
        at: at.map(Length::mm),
        opening: size.map(Length::mm),
        limit: dice.perhaps(60, |d| Mass::kg(d.whole(10, 60))),
        shelves: if face == Face::Top {
            Vec::new()
        } else {
            shelves(dice, size[1], deep, depth == Depth::Through)
        },
        hang: walls(dice, face, depth == Depth::Through),
        depth,
        span: Span::none(),
    };
    made.bays.push(bay);
}

/// The walls that take hooks; a through bay has no back.
fn walls(dice: &mut Dice, face: Face, through: bool) -> Vec<(Wall, Option<Mass>)> {
    let usual = [
        (Wall::Back, 30),
        (Wall::Left, 20),
        (Wall::Right, 20),
        (Wall::Ceiling, 12),
    ];
    let mut out = Vec::new();
    for (wall, percent) in usual {
        let there = !(through && wall == Wall::Back) && face != Face::Top;
        if dice.luck(percent) && there {
            out.push((wall, dice.perhaps(70, |d| Mass::kg(d.whole(3, 12)))));
        }
    }
    out
}

/// Up to two shelves for a bay so tall; one that may be moved stays clear of the others.
fn shelves(dice: &mut Dice, tall: i64, deep: i64, through: bool) -> Vec<Shelf> {
    let most = if tall > 420 { 2 } else { i64::from(tall > 200) };
    let count = dice.whole(0, most);
    let storey = tall / (count + 1);
    (1..=count)
        .map(|n| {
            let height = n * storey + dice.whole(-storey / 8, storey / 8);
            let movable = dice.luck(25);
            let step = dice.one(&[20, 25, 32]);
            let play = (storey / 4 / step) * step;
            let shelf = Shelf {
                height: Length::mm(height),
                depth: dice.perhaps(if through { 0 } else { 40 }, |x| x.mm(deep / 2, deep)),
                front: None,
                thickness: dice.perhaps(50, |x| x.mm(9, 20)),
                limit: dice.perhaps(50, |x| Mass::kg(x.whole(5, 30))),
                adjust: (movable && !through)
                    .then(|| [height - play, height + play, step].map(Length::mm)),
                span: Span::none(),
            };
            set_forward(dice, shelf, deep)
        })
        .collect()
}

/// Now and then a shelf stands off the rear and begins some way in.
fn set_forward(dice: &mut Dice, shelf: Shelf, deep: i64) -> Shelf {
    if !dice.luck(15) {
        return shelf;
    }
    let (front, depth) = (dice.mm(0, deep / 3), dice.mm(deep / 3, deep * 2 / 3));
    Shelf {
        front: Some(front),
        depth: Some(depth),
        ..shelf
    }
}

fn one_sided(dice: &mut Dice, made: &mut Carcass, cell: &Cell) {
    let (wide, deep) = (in_mm(made.width), in_mm(made.depth));
    let depth = Depth::Deep(dice.mm(deep / 3, deep - SHEET));
    let face = dice.one(&[Face::Front, Face::Back]);
    if has_room(made, face) {
        let u = if face == Face::Front {
            cell.x[0]
        } else {
            wide - cell.x[1]
        };
        add(
            dice,
            made,
            face,
            [u, cell.z[0]],
            [cell.wide(), cell.tall()],
            depth,
        );
    }
}

fn through(dice: &mut Dice, made: &mut Carcass, cell: &Cell, face: Face) {
    if !has_room(made, face) {
        return;
    }
    let deep = in_mm(made.depth);
    let (u, wide) = match face {
        Face::Front => (cell.x[0], cell.wide()),
        _ => (SHEET, deep - 2 * SHEET),
    };
    add(
        dice,
        made,
        face,
        [u, cell.z[0]],
        [wide, cell.tall()],
        Depth::Through,
    );
}

/// A bay in front and what it leaves over behind.
fn back_to_back(dice: &mut Dice, made: &mut Carcass, cell: &Cell) {
    if !has_room(made, Face::Front) || !has_room(made, Face::Back) {
        return;
    }
    let deep = in_mm(made.depth);
    let front = dice.mm(deep / 3, deep * 2 / 3);
    add(
        dice,
        made,
        Face::Front,
        [cell.x[0], cell.z[0]],
        [cell.wide(), cell.tall()],
        Depth::Deep(front),
    );
    let behind = made.bays.last().map(|b| b.name.clone()).unwrap_or_default();
    let gap = dice.mm(0, 20);
    let left = deep - in_mm(front) - in_mm(gap);
    let count = dice.whole(0, i64::from(cell.tall() > 260));
    let shelves = if count == 0 {
        Vec::new()
    } else {
        shelves(dice, cell.tall(), left, false)
    };
    made.bays.push(Bay {
        face: Face::Back,
        name: name(made, "rear"),
        at: [Length::ZERO; 2],
        opening: [Length::ZERO; 2],
        depth: Depth::Behind { name: behind, gap },
        limit: dice.perhaps(50, |d| Mass::kg(d.whole(10, 40))),
        shelves,
        hang: walls(dice, Face::Back, false),
        span: Span::none(),
    });
}

/// Two bays of their own, one in front, one at the back, of unlike heights.
fn apart(dice: &mut Dice, made: &mut Carcass, cell: &Cell) {
    if !has_room(made, Face::Front) || !has_room(made, Face::Back) {
        return;
    }
    let (wide, deep) = (in_mm(made.width), in_mm(made.depth));
    let front = dice.whole(deep / 3, deep / 2);
    let back = dice.whole(deep / 4, deep - front - SHEET);
    let low = dice.whole(0, cell.tall() / 3);
    let size = [cell.wide(), cell.tall()];
    add(
        dice,
        made,
        Face::Front,
        [cell.x[0], cell.z[0]],
        size,
        Depth::Deep(Length::mm(front)),
    );
    let at = [wide - cell.x[1], cell.z[0] + low];
    let size = [cell.wide(), cell.tall() - low];
    add(
        dice,
        made,
        Face::Back,
        at,
        size,
        Depth::Deep(Length::mm(back)),
    );
}

fn side_bay(dice: &mut Dice, made: &mut Carcass, cell: &Cell, face: Face) {
    if !has_room(made, face) {
        return;
    }
    let (wide, deep) = (in_mm(made.width), in_mm(made.depth));
    let most = if face == Face::Left {
        cell.x[1]
    } else {
        wide - cell.x[0]
    };
    let depth = Depth::Deep(dice.mm(most / 2, most - 5));
    add(
        dice,
        made,
        face,
        [SHEET, cell.z[0]],
        [deep - 2 * SHEET, cell.tall()],
        depth,
    );
}

fn top_bay(dice: &mut Dice, made: &mut Carcass, cell: &Cell) {
    let (deep, tall) = (in_mm(made.depth), in_mm(made.height));
    let depth = Depth::Deep(Length::mm(tall - cell.z[0]));
    add(
        dice,
        made,
        Face::Top,
        [cell.x[0], SHEET],
        [cell.wide(), deep - 2 * SHEET],
        depth,
    );
}

/// One drawer, or two over each other.
fn drawers(dice: &mut Dice, made: &mut Carcass, cell: &Cell) {
    let face = dice.one(&[Face::Front, Face::Front, Face::Back]);
    let (wide, deep) = (in_mm(made.width), in_mm(made.depth));
    let u = if face == Face::Front {
        cell.x[0]
    } else {
        wide - cell.x[1]
    } + 10;
    let count = if cell.tall() > 240 { 2 } else { 1 };
    for n in 0..count {
        let depth = dice.whole(deep / 2, deep - SHEET);
        let drawer = Drawer {
            face,
            name: name(made, "drawer"),
            at: [u, cell.z[0] + n * cell.tall() / count + 5].map(Length::mm),
            opening: [cell.wide() - 20, (cell.tall() / count).min(220) - 10].map(Length::mm),
            depth: Length::mm(depth),
            limit: dice.perhaps(60, |d| Mass::kg(d.whole(5, 25))),
            extends: dice.perhaps(40, |d| d.mm(depth * 2 / 3, depth)),
            mass: dice.perhaps(90, |d| Mass::from_kg(d.whole(10, 60) as f64 / 10.0)),
            span: Span::none(),
        };
        made.drawers.push(drawer);
    }
}

/// At most one panel a face, at least 50 mm over the floor with all that may hang below it.
fn panels(dice: &mut Dice, made: &mut Carcass) {
    for face in [Face::Front, Face::Back, Face::Left, Face::Right] {
        if !dice.luck(25) {
            continue;
        }
        let along = in_mm(if face.axis() == 1 {
            made.width
        } else {
            made.depth
        });
        let (wide, tall) = (dice.whole(along / 3, along), dice.whole(150, 350));
        let over = dice.one(&[0, 0, 40, 60]);
        let panel = Panel {
            face,
            name: name(made, "panel"),
            at: [
                dice.mm(0, along - wide),
                dice.mm(50 + over, in_mm(made.height) - tall),
            ],
            size: [wide, tall].map(Length::mm),
            room: dice.mm(60, 160),
            limit: dice.perhaps(60, |d| Mass::kg(d.whole(5, 20))),
            overhang: Overhang {
                down: Length::mm(over),
                right: Length::mm(dice.one(&[0, 0, 0, 30])),
                ..Overhang::default()
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
        made.bench.zones.push(Zone {
            at,
            size,
            span: Span::none(),
        });
    }
}

fn in_mm(length: Length) -> i64 {
    length.as_nm() / 1_000_000
}
