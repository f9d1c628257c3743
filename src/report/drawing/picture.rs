//! Rectangles before each other, named inside where they can be seen, or beside the drawing.

use super::area::Area;
use super::callout::Callout;
use super::hatch::Hatch;
use super::lettering::{Block, fitted};
use crate::report::sheet::{Fill, Mark, Pen, Tie, Weight};

/// Less than this of a thing cannot be seen on paper, in mm.
const LEAST: f64 = 0.3;

/// A thing as it is seen.
#[derive(Clone, Debug)]
pub struct Thing {
    /// Its rectangle.
    pub area: Area,
    /// What it is called.
    pub name: String,
    /// What its marks belong to.
    pub tie: Tie,
    /// What is in it.
    pub fill: Fill,
    /// How it is hatched.
    pub hatch: Hatch,
}

/// A picture in layers: each is drawn over the one before.
#[derive(Clone, Debug, Default)]
pub struct Picture {
    /// The things, the hindmost first.
    pub things: Vec<Mark>,
    /// Edges of what cannot be seen.
    pub hidden: Vec<Mark>,
    /// Names that stand in their things.
    pub names: Vec<Mark>,
    /// Names that must stand beside.
    pub beside: Vec<Callout>,
    /// What the letters of those in their things may touch.
    pub plates: Vec<Area>,
}

/// Draws things, the hindmost first.
pub fn picture(things: &[Thing]) -> Picture {
    let mut all = Picture::default();
    for (k, thing) in things.iter().enumerate() {
        let before: Vec<Area> = things[k + 1..].iter().map(|t| t.area).collect();
        all.things.push(drawn(thing));
        let rooms = thing.area.free(&before);
        let seen = rooms.iter().any(|r| r.wide() > LEAST && r.high() > LEAST);
        if !seen {
            all.hidden.push(hidden(thing));
        }
        match fitted(&thing.name, Weight::Regular, &rooms) {
            Some(block) => {
                all.plates.push(block.plate);
                all.names.push(plated(&block, thing.fill, name_tie(&thing.tie)));
            }
            None => all.beside.push(beside(thing, rooms.first().filter(|_| seen))),
        }
    }
    all
}

fn drawn(thing: &Thing) -> Mark {
    let edge = Mark::rect(thing.area.corner(), thing.area.size(), Pen::Thin, thing.fill);
    let lines = thing.hatch.mark(&thing.area);
    Mark::group(thing.tie.clone(), std::iter::once(edge).chain(lines).collect())
}

fn hidden(thing: &Thing) -> Mark {
    let edge = Mark::rect(thing.area.corner(), thing.area.size(), Pen::Hidden, Fill::None);
    Mark::group(Tie { class: "behind", name: None, ..thing.tie.clone() }, vec![edge])
}

/// The same tie for a name.
fn name_tie(tie: &Tie) -> Tie {
    Tie { class: "name", name: None, ..tie.clone() }
}

fn beside(thing: &Thing, room: Option<&Area>) -> Callout {
    let text = match room {
        Some(_) => thing.name.clone(),
        None => format!("{} (behind)", thing.name),
    };
    let dot = room.unwrap_or(&thing.area).middle();
    Callout { dot, text, weight: Weight::Regular, tie: name_tie(&thing.tie) }
}

/// A name on a plate of the bare colour, so that no line runs through it.
pub fn plated(block: &Block, fill: Fill, tie: Tie) -> Mark {
    let plate = Mark::rect(block.plate.corner(), block.plate.size(), Pen::None, fill);
    let lines = block.lines.iter().cloned().map(Mark::Text);
    Mark::group(tie, std::iter::once(plate).chain(lines).collect())
}
