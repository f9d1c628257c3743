//! The things of a workshop: cut from the decks and boards of the cart they are to go on.

use super::super::{Dice, things};
use super::{Deck, Fill};
use toolberth::domain::{Carcass, Dims, Face, Hazard, Hazards, Home, Item};
use toolberth::finding::Span;
use toolberth::units::{Length, Mass};

/// Width and height of the boards at the ends, in millimetres.
pub(super) const BOARD: [f64; 2] = [600.0, 280.0];
/// Things that may hang on one of them.
const ON_BOARD: usize = 7;
/// The shortest side that anything is cut to, in millimetres.
const LEAST: f64 = 45.0;
const FAMILIES: [&str; 6] = ["cutting", "marking", "finishing", "fixing", "electric", "holding"];

/// So many things that fill the cart.
pub(super) fn items(
    dice: &mut Dice,
    made: &Carcass,
    decks: Vec<Deck>,
    wanted: usize,
    fill: Fill,
) -> Vec<Item> {
    let hung = (wanted / 8).min(ON_BOARD * made.panels.len());
    let bench = if made.bench.limit.is_some() { 1 + wanted / 80 } else { 0 };
    let cuts = cut(dice, decks, wanted - hung - bench);
    let heights = heights(dice, &cuts, fill);
    let mut all = Vec::with_capacity(wanted);
    for (cut, height) in cuts.iter().zip(heights) {
        let name = format!("thing {}", all.len() + 1);
        all.push(standing(dice, name, cut, height, fill));
    }
    for n in 0..hung {
        let name = format!("thing {}", all.len() + 1);
        all.push(hanging(dice, name, hung.div_ceil(made.panels.len()), n == 0));
    }
    for _ in 0..bench {
        let name = format!("thing {}", all.len() + 1);
        all.push(on_bench(dice, name));
    }
    let names: Vec<String> = all.iter().map(|i| i.name.clone()).collect();
    for item in &mut all {
        let with = dice.perhaps(15, |d| d.one(&names)).filter(|n| *n != item.name);
        item.with.extend(with.map(|name| (name, Span::none())));
    }
    all
}

/// Cuts decks until there are so many pieces: one drawn by its area, across its longer side.
fn cut(dice: &mut Dice, mut pieces: Vec<Deck>, wanted: usize) -> Vec<Deck> {
    let area = |d: &Deck| d.size[0] * d.size[1];
    while pieces.len() < wanted {
        let long = |d: &Deck| d.size[0].max(d.size[1]) >= 2.5 * LEAST;
        let whole: f64 = pieces.iter().filter(|d| long(d)).map(area).sum();
        let mut mark = dice.real(0.0, whole);
        let drawn = pieces.iter().position(|d| {
            mark -= if long(d) { area(d) } else { 0.0 };
            mark <= 0.0 && long(d)
        });
        let piece = pieces.swap_remove(drawn.expect("the pieces are large enough"));
        let axis = usize::from(piece.size[1] > piece.size[0]);
        let length = piece.size[axis];
        let first = (length * dice.real(0.25, 0.75)).round().clamp(LEAST, length - LEAST);
        for part in [first, length - first] {
            let mut half = piece;
            half.size[axis] = part;
            pieces.push(half);
        }
    }
    // On a small cart there may be more decks than things: some then stay empty.
    pieces.sort_by(|a, b| area(b).total_cmp(&area(a)));
    pieces.truncate(wanted);
    pieces
}

/// Heights that fill the wanted share of the volume over the pieces, as far as things keep clear of what is above.
fn heights(dice: &mut Dice, cuts: &[Deck], fill: Fill) -> Vec<f64> {
    let area = |d: &Deck| d.size[0] * d.size[1];
    let room: f64 = cuts.iter().map(|d| area(d) * d.tall).sum();
    let [least, most] = fill.sides();
    let kept = (least + most) * (least + most) / 4.0;
    let goal = fill.share() / kept;
    let mut heights: Vec<f64> = cuts.iter().map(|d| d.tall * goal * dice.real(0.5, 1.5)).collect();
    for _ in 0..30 {
        let filled: f64 = cuts.iter().zip(&heights).map(|(d, h)| area(d) * h).sum();
        for (cut, height) in cuts.iter().zip(&mut heights) {
            *height = (*height * goal * room / filled).clamp(25.0_f64.min(cut.tall), cut.tall);
        }
    }
    heights
}

/// A thing on a deck, a little smaller than what it was cut from.
fn standing(dice: &mut Dice, name: String, cut: &Deck, height: f64, fill: Fill) -> Item {
    let [least, most] = fill.sides();
    let copies = if height > 60.0 { dice.perhaps(8, |d| d.whole(2, 3)).unwrap_or(1) } else { 1 };
    let sides = cut.size.map(|s| s * dice.real(least, most));
    let tall = (height / copies as f64).floor();
    let size = [sides[0], sides[1], tall].map(|s| Length::mm(s as i64));
    let mut item = thing(dice, name, size);
    item.count = copies as u32;
    item.stack = copies as u32;
    if dice.luck(45) {
        item.poses[1] = None;
    }
    item.turn = dice.luck(85);
    if size.iter().all(|s| *s <= Length::mm(260)) && item.weight <= Mass::kg(2) && dice.luck(20) {
        item.poses[2] = Some(item.size);
    }
    hazards(dice, &mut item, cut.face);
    if let Some(face) = cut.face {
        item.place.extend(dice.perhaps(3, |_| home(face)));
        item.prefer.extend(dice.perhaps(6, |_| home(face)));
    }
    item
}

/// A thing of any size with a use, a mass and a family.
fn thing(dice: &mut Dice, name: String, size: [Length; 3]) -> Item {
    let litres: f64 = size.iter().map(|s| s.as_mm() / 100.0).product();
    let grams = (litres * dice.real(150.0, 700.0)).clamp(50.0, 9_000.0).round();
    let mut item = things::plain(&name, size, Mass::from_kg(grams / 1e3), things::uses(dice));
    item.family = Some(dice.one(&FAMILIES).to_owned());
    item
}

/// Things with fire in them come from decks that open to the front alone, things that burn from such at the back.
fn hazards(dice: &mut Dice, item: &mut Item, face: Option<Face>) {
    use Hazard::{Aerosol, Electric, Flammable, Hot, Ignition, Liquid, SelfHeating, Sharp};
    let found: &[Hazard] = match face {
        Some(Face::Front) if dice.luck(10) => dice.one(&[&[Ignition, Electric][..], &[Hot]]),
        Some(Face::Back) if dice.luck(18) => {
            dice.one(&[&[Flammable, Liquid][..], &[Aerosol], &[SelfHeating]])
        }
        _ if dice.luck(8) => &[Sharp],
        _ => &[],
    };
    item.hazards = Hazards::of(found);
    item.guarded = dice.luck(70);
    if item.hazards.has(SelfHeating) {
        item.inside = Some("closed metal can".to_owned());
    }
    if item.hazards.meets(Hazards::of(&[Liquid, Hot, Electric])) {
        item.poses = [Some(item.size), None, None];
    }
}

fn home(face: Face) -> Home {
    Home { parts: vec![face.name().to_owned()], span: Span::none() }
}

/// A thing that hangs; so many share a board. The first is what must be at hand at once.
fn hanging(dice: &mut Dice, name: String, sharing: usize, urgent: bool) -> Item {
    let wide = (BOARD[0] / sharing as f64 * dice.real(0.55, 0.95)).floor();
    let tall = (BOARD[1] * dice.real(0.4, 0.95)).floor();
    let [w, d, h] = [wide, dice.real(15.0, 70.0).floor(), tall].map(|s| Length::mm(s as i64));
    let mut item = thing(dice, name, [w, d, h]);
    item.poses = [None, None, Some(Dims { w, d, h })];
    item.turn = false;
    item.urgent = urgent;
    if !urgent && dice.luck(30) {
        item.poses[1] = Some(Dims { w, d: h, h: d });
    }
    item
}

/// A thing that is worked with on the bench.
fn on_bench(dice: &mut Dice, name: String) -> Item {
    let size = [dice.mm(120, 180), dice.mm(60, 85), dice.mm(80, 250)];
    let mut item = thing(dice, name, size);
    item.place = vec![Home { parts: vec!["top".to_owned()], span: Span::none() }];
    item.poses[1] = None;
    item.turn = false;
    item
}
