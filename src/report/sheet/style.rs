//! The few ways in which something is drawn, with what each means in every format.
//!
//! Line widths are of the series of technical drawing, each √2 times the one before (ISO 128, from memory). Nothing is
//! told by colour alone: tints come with hatching, pens differ by width and dashes.

/// How heavy letters are.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum Weight {
    /// For what is read.
    Regular,
    /// For what is looked for.
    Bold,
}

/// How a line is drawn.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Pen {
    /// Not at all.
    None,
    /// Hatching, dimension lines and leaders.
    Hair,
    /// Things, and what is seen.
    Thin,
    /// Edges of openings and boards.
    Medium,
    /// Outlines of the cart and of walls.
    Thick,
    /// What stands before the rest and lets it be seen.
    Dashed,
    /// Edges of things that others hide.
    Hidden,
    /// Axes and limits.
    Chain,
    /// A way on foot.
    Way,
    /// What only helps to read the rest.
    Faint,
    /// What must be minded.
    Alert,
}

/// What is in a closed figure.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Fill {
    /// Nothing: one sees what is behind.
    None,
    /// The bare paper.
    Paper,
    /// A thing.
    Item,
    /// Boards of the cart.
    Board,
    /// The inside of an opening.
    Hollow,
    /// What stands about: walls, furniture.
    Ground,
    /// A person.
    Body,
    /// Solid ink.
    Ink,
    /// A step of the scale of seconds a week, 0 (least) to 4.
    Tint(u8),
}

/// A colour by day and by night.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Colour {
    /// Its name in style sheets.
    pub name: &'static str,
    /// On white paper.
    pub light: [u8; 3],
    /// On a dark screen.
    pub dark: [u8; 3],
}

/// How many steps the scale of seconds a week has.
pub const TINTS: u8 = 5;

const fn colour(name: &'static str, light: [u8; 3], dark: [u8; 3]) -> Colour {
    Colour { name, light, dark }
}

/// The bare paper.
pub const PAPER: Colour = colour("paper", [255, 255, 255], [24, 26, 29]);
/// Text and most lines.
pub const INK: Colour = colour("ink", [27, 30, 34], [232, 230, 225]);
const FAINT: Colour = colour("faint", [112, 118, 126], [150, 154, 160]);
const HATCH: Colour = colour("hatch", [120, 104, 78], [168, 150, 118]);
const WAY: Colour = colour("way", [20, 92, 128], [116, 190, 224]);
const ALERT: Colour = colour("alert", [170, 34, 34], [255, 138, 128]);
const ITEM: Colour = colour("item", [253, 251, 246], [40, 42, 46]);
const BOARD: Colour = colour("board", [222, 210, 190], [86, 78, 66]);
const HOLLOW: Colour = colour("hollow", [238, 240, 242], [33, 36, 40]);
const GROUND: Colour = colour("ground", [205, 209, 214], [66, 70, 76]);
const BODY: Colour = colour("body", [196, 208, 218], [78, 92, 106]);
const TINT: [Colour; TINTS as usize] = [
    ITEM,
    colour("tint-1", [249, 240, 214], [52, 48, 38]),
    colour("tint-2", [244, 222, 170], [72, 60, 38]),
    colour("tint-3", [233, 192, 122], [98, 74, 36]),
    colour("tint-4", [216, 154, 78], [128, 86, 30]),
];

/// Every colour, for a style sheet.
pub const COLOURS: [Colour; 15] = [
    PAPER, INK, FAINT, HATCH, WAY, ALERT, ITEM, BOARD, HOLLOW, GROUND, BODY, TINT[1], TINT[2],
    TINT[3], TINT[4],
];

/// What a pen means.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Stroke {
    /// Its name in style sheets.
    pub name: &'static str,
    /// Width in mm.
    pub width: f64,
    /// Lengths of dashes and gaps in mm; empty for a whole line.
    pub dashes: &'static [f64],
    /// Its colour.
    pub colour: Colour,
}

const fn stroke(
    name: &'static str,
    width: f64,
    dashes: &'static [f64],
    colour: Colour,
) -> Option<Stroke> {
    Some(Stroke { name, width, dashes, colour })
}

impl Pen {
    /// All that draw something.
    pub const ALL: [Pen; 10] = [
        Pen::Hair,
        Pen::Thin,
        Pen::Medium,
        Pen::Thick,
        Pen::Dashed,
        Pen::Hidden,
        Pen::Chain,
        Pen::Way,
        Pen::Faint,
        Pen::Alert,
    ];

    /// What it means; nothing where it draws nothing.
    pub const fn stroke(self) -> Option<Stroke> {
        match self {
            Pen::None => None,
            Pen::Hair => stroke("hair", 0.13, &[], HATCH),
            Pen::Thin => stroke("thin", 0.18, &[], INK),
            Pen::Medium => stroke("medium", 0.25, &[], INK),
            Pen::Thick => stroke("thick", 0.5, &[], INK),
            Pen::Dashed => stroke("dashed", 0.25, &[2.0, 1.0], INK),
            Pen::Hidden => stroke("hidden", 0.13, &[1.0, 0.7], FAINT),
            Pen::Chain => stroke("chain", 0.18, &[4.0, 0.8, 0.8, 0.8], FAINT),
            Pen::Way => stroke("way", 0.5, &[1.6, 0.9], WAY),
            Pen::Faint => stroke("faint", 0.13, &[], FAINT),
            Pen::Alert => stroke("alert", 0.5, &[], ALERT),
        }
    }
}

impl Fill {
    /// Its name in style sheets and its colour; nothing where there is nothing.
    pub const fn colour(self) -> Option<Colour> {
        match self {
            Fill::None => None,
            Fill::Paper => Some(PAPER),
            Fill::Item => Some(ITEM),
            Fill::Board => Some(BOARD),
            Fill::Hollow => Some(HOLLOW),
            Fill::Ground => Some(GROUND),
            Fill::Body => Some(BODY),
            Fill::Ink => Some(INK),
            Fill::Tint(step) => Some(TINT[if step < TINTS { step as usize } else { 4 }]),
        }
    }
}
