//! What the labels say: name, slot, family mark and footprint of each placement.

use super::work::Work;
use crate::domain::Pose;
use crate::units::Length;

/// The outline of a family mark: told apart without colour.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum Shape {
    /// A circle.
    Circle,
    /// A square.
    Square,
    /// A triangle, its point up.
    Triangle,
    /// A square on its corner.
    Diamond,
    /// A cross of two bars.
    Cross,
    /// Six sides.
    Hexagon,
    /// A triangle, its point down.
    Wedge,
    /// A bar lying flat.
    Bar,
}

/// What fills a family mark.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum Fill {
    /// Full black.
    Solid,
    /// Nothing.
    Open,
    /// Hatching.
    Hatched,
}

/// All shapes, in the order in which families get them.
pub const SHAPES: [Shape; 8] = [
    Shape::Circle,
    Shape::Square,
    Shape::Triangle,
    Shape::Diamond,
    Shape::Cross,
    Shape::Hexagon,
    Shape::Wedge,
    Shape::Bar,
];

/// All fillings, in the order in which families get them.
pub const FILLS: [Fill; 3] = [Fill::Solid, Fill::Open, Fill::Hatched];

impl Shape {
    /// The word for it.
    pub const fn name(self) -> &'static str {
        match self {
            Shape::Circle => "circle",
            Shape::Square => "square",
            Shape::Triangle => "triangle",
            Shape::Diamond => "diamond",
            Shape::Cross => "cross",
            Shape::Hexagon => "hexagon",
            Shape::Wedge => "wedge",
            Shape::Bar => "bar",
        }
    }
}

impl Fill {
    /// The word for it.
    pub const fn name(self) -> &'static str {
        match self {
            Fill::Solid => "solid",
            Fill::Open => "open",
            Fill::Hatched => "hatched",
        }
    }
}

/// The mark of a family.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub struct Mark {
    /// Its outline.
    pub shape: Shape,
    /// Its filling.
    pub fill: Fill,
}

/// What one label says.
#[derive(Clone, Debug)]
pub struct Label {
    /// The placement, as an index.
    pub placement: usize,
    /// The name, with how many where there are several.
    pub name: String,
    /// The slot: the initial of its face and its number there.
    pub slot: String,
    /// Face, bay and surface.
    pub place: String,
    /// The family.
    pub family: Option<String>,
    /// Its mark; the same for two families only where there are more than twenty-four.
    pub mark: Option<Mark>,
    /// The outline of the thing's footprint, width and height: seen from above on a deck, from before it on a wall.
    pub footprint: [Length; 2],
}

/// The families in the order of the inventory, each once.
fn families(work: &Work) -> Vec<String> {
    let mut all: Vec<String> = Vec::new();
    for family in work.workspace.items.iter().filter_map(|i| i.family.as_ref()) {
        if !all.contains(family) {
            all.push(family.clone());
        }
    }
    all
}

/// A label for each placement.
pub fn labels(work: &Work) -> Vec<Label> {
    let families = families(work);
    (0..work.plan.placements.len()).map(|k| label(work, k, &families)).collect()
}

fn label(work: &Work, placement: usize, families: &[String]) -> Label {
    let p = &work.plan.placements[placement];
    let item = work.workspace.items.iter().find(|i| i.name == p.item);
    let family = item.and_then(|i| i.family.clone());
    let number = family.as_ref().and_then(|f| families.iter().position(|g| g == f));
    Label {
        placement,
        name: work.name_of(placement),
        slot: slot(p.face, p.slot),
        place: match p.bay == p.surface {
            true => p.bay.clone(),
            false => format!("{} / {}", p.bay, p.surface),
        },
        family,
        mark: number.map(mark),
        footprint: footprint(work, placement),
    }
}

/// A slot in short: the initial of the face in capitals, and the number.
pub fn slot(face: crate::domain::Face, number: u32) -> String {
    let initial: String = face.name().chars().take(1).collect();
    format!("{}{number}", initial.to_uppercase())
}

/// The mark of a family by its number: neighbours differ in shape first.
fn mark(number: usize) -> Mark {
    let fill = FILLS[number / SHAPES.len() % FILLS.len()];
    Mark { shape: SHAPES[number % SHAPES.len()], fill }
}

fn footprint(work: &Work, placement: usize) -> [Length; 2] {
    let p = &work.plan.placements[placement];
    let Some(s) = work.surface_of(placement) else { return [p.space.extent(0), p.space.extent(1)] };
    let surface = &work.site().surfaces[s];
    let across = surface.along;
    match (p.pose, surface.rest.axis) {
        (Pose::Hang, 2) => [p.space.extent(0), p.space.extent(1)],
        (Pose::Hang, axis) => [p.space.extent(1 - axis), p.space.extent(2)],
        _ => [p.space.extent(across), p.space.extent(1 - across)],
    }
}
