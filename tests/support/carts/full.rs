//! Carts that are full: every thing is cut out of the room there is, so that a place for each is known to exist.

use super::box_work::empty;
use super::{Dice, shop, things};
use toolberth::domain::{Bay, Carcass, Depth, Face, Item, Workspace};
use toolberth::finding::Span;
use toolberth::units::{Length, Mass};

/// Sheet thickness of all that is built here.
const SHEET: i64 = 15;
/// Floor to the underside.
const LIFT: i64 = 110;
/// Width of one section of a long cart.
const SECTION: i64 = 600;
/// Things in one space of a long cart, and in a section of it: one bay in front, one at the back.
const A_SPACE: usize = 6;
const A_SECTION: usize = 2 * A_SPACE;

/// The footprint of a thing to be, in the space it is cut from.
#[derive(Clone, Copy)]
struct Cut {
    size: [f64; 2],
    tall: f64,
}

/// A cart as a workshop has it, with so many things (best 24 to 60) that fill a share of the room in its bays.
///
/// Front and back bays of 250 to 500 mm depth in two columns; uses from yearly to twice a day. Fill may be 0.5 to
/// 0.75: a place for all is known to exist, though a careless layout will not find it.
pub fn packed(seed: u64, items: usize, fill: f64) -> Workspace {
    let mut dice = Dice::new(seed);
    let deep = dice.whole(250, 500);
    let columns = [dice.whole(380, 620), dice.whole(380, 620)];
    let storeys = [dice.whole(200, 300), dice.whole(220, 340)];
    let carcass = two_sided(&columns, &storeys, deep, dice.whole(250, 350));
    let cuts = cut(&mut dice, spaces(&carcass), items);
    let items = fill_up(&mut dice, &cuts, fill);
    let mut shop = shop::plain();
    shop.stations = shop::shop(&mut dice, &carcass, &items).stations;
    Workspace { carcass, items, shop, layout: None }
}

/// A cart of sections alike, 600 mm each, six things in each space; only the last section may hold fewer.
pub fn sections(n_items: usize) -> Workspace {
    let count = n_items.div_ceil(A_SECTION);
    let carcass = two_sided(&vec![SECTION - SHEET; count], &[300], 300, 300);
    let mut items = Vec::with_capacity(n_items);
    for n in 0..count {
        // The same draw each time: sections alike but for the names.
        let mut dice = Dice::new(1);
        let alike = two_sided(&[SECTION - SHEET], &[300], 300, 300);
        let cuts = cut_each(&mut dice, spaces(&alike), A_SPACE);
        let section = fill_up(&mut dice, &cuts, 0.6);
        items.extend(section.into_iter().map(|i| Item { name: format!("{} of {n}", i.name), ..i }));
    }
    items.truncate(n_items);
    Workspace { carcass, items, shop: shop::plain(), layout: None }
}

/// Columns of bays so wide and storeys so tall, opening to the front and to the back.
fn two_sided(columns: &[i64], storeys: &[i64], front: i64, back: i64) -> Carcass {
    let wide = SHEET + columns.iter().map(|c| c + SHEET).sum::<i64>();
    let tall = LIFT + SHEET + storeys.iter().map(|s| s + SHEET).sum::<i64>();
    let deep = front + SHEET + back;
    let mut made = empty(wide, deep, tall, LIFT);
    made.mass = Some(Mass::kg(25 * columns.len() as i64));
    made.casters.rating = Some(Mass::kg(120 * columns.len() as i64));
    let mut left = SHEET;
    for (c, column) in columns.iter().enumerate() {
        let mut low = LIFT + SHEET;
        for (s, storey) in storeys.iter().enumerate() {
            let size = [*column, *storey];
            let at = [[left, low], [wide - left - column, low]];
            made.bays.push(bay(Face::Front, &format!("front {c}-{s}"), at[0], size, front));
            made.bays.push(bay(Face::Back, &format!("back {c}-{s}"), at[1], size, back));
            low += storey + SHEET;
        }
        left += column + SHEET;
    }
    made
}

fn bay(face: Face, name: &str, at: [i64; 2], size: [i64; 2], deep: i64) -> Bay {
    Bay {
        face,
        name: name.to_owned(),
        at: at.map(Length::mm),
        opening: size.map(Length::mm),
        depth: Depth::Deep(Length::mm(deep)),
        limit: None,
        shelves: Vec::new(),
        hang: Vec::new(),
        fixing: Default::default(),
        ends: Default::default(),
        span: Span::none(),
    }
}

fn spaces(made: &Carcass) -> Vec<Cut> {
    let space = |b: &Bay| match b.depth {
        Depth::Deep(deep) => {
            Cut { size: [b.opening[0].as_mm(), deep.as_mm()], tall: b.opening[1].as_mm() }
        }
        _ => unreachable!("every bay here has a depth of its own"),
    };
    made.bays.iter().map(space).collect()
}

/// Cuts the floors until there are so many pieces, always the largest next, across its longer side.
fn cut(dice: &mut Dice, mut pieces: Vec<Cut>, wanted: usize) -> Vec<Cut> {
    while pieces.len() < wanted {
        let area = |c: &Cut| c.size[0] * c.size[1];
        let largest = (0..pieces.len())
            .max_by(|a, b| area(&pieces[*a]).total_cmp(&area(&pieces[*b])))
            .expect("there is a piece");
        let whole = pieces.swap_remove(largest);
        let axis = usize::from(whole.size[1] > whole.size[0]);
        let first = (whole.size[axis] * dice.real(0.3, 0.7)).round();
        for part in [first, whole.size[axis] - first] {
            let mut piece = whole;
            piece.size[axis] = part;
            pieces.push(piece);
        }
    }
    pieces
}

/// The same with so many pieces in each space.
fn cut_each(dice: &mut Dice, spaces: Vec<Cut>, wanted: usize) -> Vec<Cut> {
    spaces.into_iter().flat_map(|space| cut(dice, vec![space], wanted)).collect()
}

/// Things on all footprints, their heights stretched until they fill the wanted share of the room above them.
fn fill_up(dice: &mut Dice, cuts: &[Cut], fill: f64) -> Vec<Item> {
    let area = |c: &Cut| c.size[0] * c.size[1];
    let room: f64 = cuts.iter().map(|c| area(c) * c.tall).sum();
    let mut heights: Vec<f64> = cuts.iter().map(|c| c.tall * fill * dice.real(0.6, 1.4)).collect();
    for _ in 0..20 {
        let filled: f64 = cuts.iter().zip(&heights).map(|(c, h)| area(c) * h).sum();
        for (cut, height) in cuts.iter().zip(&mut heights) {
            *height = (*height * fill * room / filled).min(cut.tall - 25.0);
        }
    }
    let made = cuts.iter().zip(&heights).enumerate();
    made.map(|(n, (cut, height))| thing(dice, n, cut, *height)).collect()
}

fn thing(dice: &mut Dice, number: usize, cut: &Cut, height: f64) -> Item {
    let [w, d] = cut.size.map(|s| Length::mm(s as i64));
    let h = Length::mm(height as i64);
    let litres = w.as_mm() * d.as_mm() * h.as_mm() / 1e6;
    let kilograms = (litres * dice.real(0.2, 0.9)).clamp(0.05, 9.5);
    let name = format!("thing {}", number + 1);
    let mut item = things::plain(&name, [w, d, h], Mass::from_kg(kilograms), things::uses(dice));
    item.family = Some(dice.one(&["cutting", "marking", "finishing", "fixing"]).to_owned());
    if dice.luck(40) {
        item.poses[1] = None;
    }
    item
}
