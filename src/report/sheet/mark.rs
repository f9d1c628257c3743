//! What a drawing is made of.

use super::style::{Fill, Pen, Weight};

/// A place on the paper: millimetres from its upper left corner, right and down.
pub type Point = [f64; 2];

/// One mark on the paper.
#[derive(Clone, PartialEq, Debug)]
pub enum Mark {
    /// A straight line.
    Line {
        /// One end.
        from: Point,
        /// The other.
        to: Point,
        /// How it is drawn.
        pen: Pen,
    },
    /// Many straight lines that are one thing: hatching, ticks.
    Lines {
        /// Both ends of each.
        pieces: Vec<[Point; 2]>,
        /// How they are drawn.
        pen: Pen,
    },
    /// Straight lines end to end.
    Polyline {
        /// Where they meet.
        points: Vec<Point>,
        /// How they are drawn.
        pen: Pen,
    },
    /// A rectangle along the paper's edges.
    Rect {
        /// Its upper left corner.
        at: Point,
        /// Width and height.
        size: [f64; 2],
        /// How its edge is drawn.
        pen: Pen,
        /// What is in it.
        fill: Fill,
    },
    /// A closed figure of straight edges.
    Polygon {
        /// Its corners.
        points: Vec<Point>,
        /// How its edge is drawn.
        pen: Pen,
        /// What is in it.
        fill: Fill,
    },
    /// A circle.
    Circle {
        /// Its centre.
        centre: Point,
        /// Its radius.
        radius: f64,
        /// How its edge is drawn.
        pen: Pen,
        /// What is in it.
        fill: Fill,
    },
    /// A line of text.
    Text(Text),
    /// Marks that belong together.
    Group {
        /// What they belong to.
        tie: Tie,
        /// The marks, the hindmost first.
        marks: Vec<Mark>,
    },
}

/// A line of text.
#[derive(Clone, PartialEq, Debug)]
pub struct Text {
    /// The point of its baseline that the anchor names.
    pub at: Point,
    /// Size of the letters in mm: the em, about 1.4 times a capital's height.
    pub size: f64,
    /// Which point of the text is at `at`.
    pub anchor: Anchor,
    /// Whether it reads upward, as on the left of a drawing.
    pub upward: bool,
    /// How heavy its letters are.
    pub weight: Weight,
    /// What it says.
    pub text: String,
}

/// Which point of a line of text is given.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Anchor {
    /// Where it begins.
    Start,
    /// Its middle.
    Middle,
    /// Where it ends.
    End,
}

/// What marks belong to: a name for style sheets and scripts, and for people who cannot see the picture.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Tie {
    /// What kind of thing it is: `view`, `item`, `part`, … in small letters.
    pub class: &'static str,
    /// Its name, told where the pointer rests and by screen readers.
    pub name: Option<String>,
    /// The placement that it shows, as an index into the plan's.
    pub placement: Option<usize>,
    /// How lengths of the cart lie on the paper within it.
    pub frame: Option<Frame>,
}

/// How lengths of the cart lie on the paper.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Frame {
    /// Where the view's own origin is on the paper.
    pub origin: Point,
    /// Millimetres on the paper for each millimetre of the cart.
    pub scale: f64,
}

impl Frame {
    /// Where a point of the view is on the paper; `u` to the right and `v` up from the view's origin, in mm of the cart.
    pub fn at(&self, u: f64, v: f64) -> Point {
        [self.origin[0] + u * self.scale, self.origin[1] - v * self.scale]
    }
}

impl Mark {
    /// A straight line.
    pub fn line(from: Point, to: Point, pen: Pen) -> Mark {
        Mark::Line { from, to, pen }
    }
    /// A rectangle along the paper's edges.
    pub fn rect(at: Point, size: [f64; 2], pen: Pen, fill: Fill) -> Mark {
        Mark::Rect { at, size, pen, fill }
    }
    /// A line of plain text that begins at a point.
    pub fn text(at: Point, size: f64, text: impl Into<String>) -> Mark {
        Mark::Text(Text::new(at, size, text))
    }
    /// Marks that belong together.
    pub fn group(tie: Tie, marks: Vec<Mark>) -> Mark {
        Mark::Group { tie, marks }
    }
}

impl Text {
    /// A line of plain text that begins at a point.
    pub fn new(at: Point, size: f64, text: impl Into<String>) -> Text {
        let text = text.into();
        Text { at, size, anchor: Anchor::Start, upward: false, weight: Weight::Regular, text }
    }
    /// The same about another point of it.
    #[must_use]
    pub fn anchored(self, anchor: Anchor) -> Text {
        Text { anchor, ..self }
    }
    /// The same in heavy letters.
    #[must_use]
    pub fn bold(self) -> Text {
        Text { weight: Weight::Bold, ..self }
    }
    /// The same, reading upward.
    #[must_use]
    pub fn upward(self) -> Text {
        Text { upward: true, ..self }
    }
    /// Its width in mm.
    pub fn width(&self) -> f64 {
        super::font::width_in(&self.text, self.size, self.weight)
    }
    /// Where it begins.
    pub fn start(&self) -> Point {
        let back = match self.anchor {
            Anchor::Start => 0.0,
            Anchor::Middle => self.width() / 2.0,
            Anchor::End => self.width(),
        };
        if self.upward { [self.at[0], self.at[1] + back] } else { [self.at[0] - back, self.at[1]] }
    }
    /// The rectangle that its letters may touch, from its upper left to its lower right corner.
    pub fn extent(&self) -> [Point; 2] {
        let [x, y] = self.start();
        let (up, down) = (super::font::ASCENT * self.size, super::font::DESCENT * self.size);
        if self.upward {
            [[x - up, y - self.width()], [x + down, y]]
        } else {
            [[x, y - up], [x + self.width(), y + down]]
        }
    }
}

impl From<Text> for Mark {
    fn from(text: Text) -> Mark {
        Mark::Text(text)
    }
}

impl Tie {
    /// A tie to nothing but a kind of thing.
    pub fn class(class: &'static str) -> Tie {
        Tie { class, ..Tie::default() }
    }
    /// The same with a name.
    #[must_use]
    pub fn named(self, name: impl Into<String>) -> Tie {
        Tie { name: Some(name.into()), ..self }
    }
    /// The same, tied to a placement.
    #[must_use]
    pub fn placed(self, placement: usize) -> Tie {
        Tie { placement: Some(placement), ..self }
    }
    /// The same with the frame of what is in it.
    #[must_use]
    pub fn framed(self, frame: Frame) -> Tie {
        Tie { frame: Some(frame), ..self }
    }
}

/// Shows every mark that is no group, from the back to the front.
pub(super) fn each<'m>(marks: &'m [Mark], see: &mut impl FnMut(&'m Mark)) {
    for mark in marks {
        match mark {
            Mark::Group { marks, .. } => each(marks, see),
            other => see(other),
        }
    }
}
