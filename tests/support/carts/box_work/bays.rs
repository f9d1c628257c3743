//! What is built into a cell of the box: bays of all kinds with their shelves and walls, drawers.

use super::super::Dice;
use super::{Cell, MOST, SHEET, in_mm};
use toolberth::domain::{Along, Bay, Carcass, Depth, Drawer, Ends, Face, Material, Shelf, Wall};
use toolberth::finding::Span;
use toolberth::units::{Length, Mass};

/// Furnishes a cell by the throw of the dice; now and then it stays empty.
pub(super) fn furnish(dice: &mut Dice, made: &mut Carcass, cell: &Cell) {
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

/// A name that nothing else on the cart has.
pub(super) fn name(made: &Carcass, word: &str) -> String {
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
        fixing: Default::default(),
        ends: Default::default(),
        depth,
        span: Span::none(),
    };
    made.bays.push(bay);
}

/// The walls that take hooks; a through bay has no back.
fn walls(dice: &mut Dice, face: Face, through: bool) -> Vec<(Wall, Option<Mass>)> {
    let usual = [(Wall::Back, 30), (Wall::Left, 20), (Wall::Right, 20), (Wall::Ceiling, 12)];
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
                material: (height % 3 == 0).then_some(Material::ParticleBoard),
                ends: if height % 4 == 0 { Ends::Fixed } else { Ends::Free },
                span_along: if height % 5 == 0 { Along::Depth } else { Along::Width },
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
    Shelf { front: Some(front), depth: Some(depth), ..shelf }
}

fn one_sided(dice: &mut Dice, made: &mut Carcass, cell: &Cell) {
    let (wide, deep) = (in_mm(made.width), in_mm(made.depth));
    let depth = Depth::Deep(dice.mm(deep / 3, deep - SHEET));
    let face = dice.one(&[Face::Front, Face::Back]);
    if has_room(made, face) {
        let u = if face == Face::Front { cell.x[0] } else { wide - cell.x[1] };
        add(dice, made, face, [u, cell.z[0]], [cell.wide(), cell.tall()], depth);
    }
}

/// A bay from a face to the opposite one.
pub(super) fn through(dice: &mut Dice, made: &mut Carcass, cell: &Cell, face: Face) {
    if !has_room(made, face) {
        return;
    }
    let deep = in_mm(made.depth);
    let (u, wide) = match face {
        Face::Front => (cell.x[0], cell.wide()),
        _ => (SHEET, deep - 2 * SHEET),
    };
    add(dice, made, face, [u, cell.z[0]], [wide, cell.tall()], Depth::Through);
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
    let shelves = if count == 0 { Vec::new() } else { shelves(dice, cell.tall(), left, false) };
    made.bays.push(Bay {
        face: Face::Back,
        name: name(made, "rear"),
        at: [Length::ZERO; 2],
        opening: [Length::ZERO; 2],
        depth: Depth::Behind { name: behind, gap },
        limit: dice.perhaps(50, |d| Mass::kg(d.whole(10, 40))),
        shelves,
        hang: walls(dice, Face::Back, false),
        fixing: Default::default(),
        ends: Default::default(),
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
    add(dice, made, Face::Front, [cell.x[0], cell.z[0]], size, Depth::Deep(Length::mm(front)));
    let at = [wide - cell.x[1], cell.z[0] + low];
    let size = [cell.wide(), cell.tall() - low];
    add(dice, made, Face::Back, at, size, Depth::Deep(Length::mm(back)));
}

fn side_bay(dice: &mut Dice, made: &mut Carcass, cell: &Cell, face: Face) {
    if !has_room(made, face) {
        return;
    }
    let (wide, deep) = (in_mm(made.width), in_mm(made.depth));
    let most = if face == Face::Left { cell.x[1] } else { wide - cell.x[0] };
    let depth = Depth::Deep(dice.mm(most / 2, most - 5));
    add(dice, made, face, [SHEET, cell.z[0]], [deep - 2 * SHEET, cell.tall()], depth);
}

fn top_bay(dice: &mut Dice, made: &mut Carcass, cell: &Cell) {
    let (deep, tall) = (in_mm(made.depth), in_mm(made.height));
    let depth = Depth::Deep(Length::mm(tall - cell.z[0]));
    add(dice, made, Face::Top, [cell.x[0], SHEET], [cell.wide(), deep - 2 * SHEET], depth);
}

/// One drawer, or two over each other.
fn drawers(dice: &mut Dice, made: &mut Carcass, cell: &Cell) {
    let face = dice.one(&[Face::Front, Face::Front, Face::Back]);
    let (wide, deep) = (in_mm(made.width), in_mm(made.depth));
    let u = if face == Face::Front { cell.x[0] } else { wide - cell.x[1] } + 10;
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
            catch: false,
            span: Span::none(),
        };
        made.drawers.push(drawer);
    }
}
