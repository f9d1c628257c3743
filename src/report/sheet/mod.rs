//! Drawings on paper: one list of marks in millimetres, written as SVG, PDF or PNG.
//!
//! A sheet is laid out once; every format draws the same marks. Scale, where a view stands on its paper and where a
//! name finds room are decided here; what is drawn comes from the tasks.

pub mod font;
mod mark;
mod paper;
mod pdf;
#[cfg(feature = "print")]
mod png;
mod style;
mod svg;

pub use font::width;
pub use mark::{Anchor, Frame, Mark, Point, Text, Tie};
pub use paper::{Paper, Size};
pub use pdf::pdf;
#[cfg(feature = "print")]
pub use png::{PRINT, png};
pub use style::{Colour, Fill, Pen, Weight};
pub use svg::{FONT, address, base64, font_face, inline, palette, rules, svg};

/// One drawing on one page.
#[derive(Clone, Debug)]
pub struct Sheet {
    /// A short name of small letters and hyphens, the same in every format: file names and links are made of it.
    pub id: String,
    /// What it shows, for people.
    pub title: String,
    /// What it is printed on.
    pub paper: Paper,
    /// What is drawn, the hindmost first.
    pub marks: Vec<Mark>,
}

impl Sheet {
    /// All its text, from the back to the front.
    pub fn texts(&self) -> Vec<&Text> {
        let mut all = Vec::new();
        mark::each(&self.marks, &mut |mark| {
            if let Mark::Text(text) = mark {
                all.push(text);
            }
        });
        all
    }
}
