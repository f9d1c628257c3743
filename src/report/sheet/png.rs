//! A sheet as PNG: letters as outlines of the font that is built in.

use super::mark::{Anchor, Mark, Text};
use super::style::{Colour, Fill, INK, PAPER, Pen};
use super::{Point, Sheet, font};
use tiny_skia::{
    Color, FillRule, LineJoin, Paint, Path, PathBuilder, Pixmap, Rect, Stroke, StrokeDash,
    Transform,
};
use ttf_parser::OutlineBuilder;

/// Dots to the millimetre of a picture to print: 300 to the inch.
pub const PRINT: f64 = 300.0 / 25.4;

/// The picture with so many dots to the millimetre; nothing where it would have none or far too many.
pub fn png(sheet: &Sheet, dots: f64) -> Option<Vec<u8>> {
    let side = |mm: f64| libm::round(mm * dots) as u32;
    let mut picture = Pixmap::new(side(sheet.paper.width()), side(sheet.paper.height()))?;
    let [r, g, b] = PAPER.light;
    picture.fill(Color::from_rgba8(r, g, b, 255));
    let scale = dots as f32;
    let mut canvas = Canvas { picture, turn: Transform::from_scale(scale, scale) };
    canvas.marks(&sheet.marks);
    canvas.picture.encode_png().ok()
}

struct Canvas {
    picture: Pixmap,
    turn: Transform,
}

impl Canvas {
    fn marks(&mut self, marks: &[Mark]) {
        marks.iter().for_each(|mark| self.mark(mark));
    }

    fn mark(&mut self, mark: &Mark) {
        match mark {
            Mark::Line { from, to, pen } => {
                self.shape(chain(&[*from, *to], false), *pen, Fill::None)
            }
            Mark::Lines { pieces, pen } => {
                let mut path = PathBuilder::new();
                pieces.iter().for_each(|piece| lay(&mut path, piece));
                self.shape(path.finish(), *pen, Fill::None);
            }
            Mark::Polyline { points, pen } => self.shape(chain(points, false), *pen, Fill::None),
            Mark::Polygon { points, pen, fill } => self.shape(chain(points, true), *pen, *fill),
            Mark::Rect { at, size, pen, fill } => {
                let [x, y, w, h] = [at[0], at[1], size[0], size[1]].map(|v| v as f32);
                let path = Rect::from_xywh(x, y, w, h).map(PathBuilder::from_rect);
                self.shape(path, *pen, *fill);
            }
            Mark::Circle { centre, radius, pen, fill } => {
                let [x, y, r] = [centre[0], centre[1], *radius].map(|v| v as f32);
                self.shape(PathBuilder::from_circle(x, y, r), *pen, *fill);
            }
            Mark::Text(text) => self.text(text),
            Mark::Group { marks, .. } => self.marks(marks),
        }
    }

    fn shape(&mut self, path: Option<Path>, pen: Pen, fill: Fill) {
        let Some(path) = path else { return };
        if let Some(colour) = fill.colour() {
            let paint = paint(colour);
            self.picture.fill_path(&path, &paint, FillRule::Winding, self.turn, None);
        }
        if let Some(look) = pen.stroke() {
            let dashes: Vec<f32> = look.dashes.iter().map(|d| *d as f32).collect();
            let stroke = Stroke {
                width: look.width as f32,
                line_join: LineJoin::Round,
                dash: StrokeDash::new(dashes, 0.0),
                ..Stroke::default()
            };
            self.picture.stroke_path(&path, &paint(look.colour), &stroke, self.turn, None);
        }
    }

    fn text(&mut self, text: &Text) {
        let Some(face) = font::face(text.weight) else { return };
        let size = text.size / f64::from(face.units_per_em());
        let back = match text.anchor {
            Anchor::Start => 0.0,
            Anchor::Middle => text.width() / 2.0,
            Anchor::End => text.width(),
        };
        let mut path = PathBuilder::new();
        let mut along = -back;
        for letter in text.text.chars() {
            let glyph = font::glyph(face, letter);
            let mut outline = Outline { path: &mut path, text, size, along };
            face.outline_glyph(glyph, &mut outline);
            along += f64::from(face.glyph_hor_advance(glyph).unwrap_or(0)) * size;
        }
        if let Some(path) = path.finish() {
            self.picture.fill_path(&path, &paint(INK), FillRule::Winding, self.turn, None);
        }
    }
}

fn paint(colour: Colour) -> Paint<'static> {
    let [r, g, b] = colour.light;
    let mut paint = Paint { anti_alias: true, ..Paint::default() };
    paint.set_color_rgba8(r, g, b, 255);
    paint
}

fn lay(path: &mut PathBuilder, points: &[Point]) {
    for (k, point) in points.iter().enumerate() {
        let [x, y] = point.map(|v| v as f32);
        if k == 0 {
            path.move_to(x, y);
        } else {
            path.line_to(x, y);
        }
    }
}

fn chain(points: &[Point], closed: bool) -> Option<Path> {
    let mut path = PathBuilder::new();
    lay(&mut path, points);
    if closed {
        path.close();
    }
    path.finish()
}

/// A letter's outline where it stands on the paper.
struct Outline<'o> {
    path: &'o mut PathBuilder,
    text: &'o Text,
    size: f64,
    along: f64,
}

impl Outline<'_> {
    fn at(&self, x: f32, y: f32) -> (f32, f32) {
        let (right, up) = (self.along + f64::from(x) * self.size, f64::from(y) * self.size);
        let [x, y] = self.text.at;
        let [x, y] = if self.text.upward { [x - up, y - right] } else { [x + right, y - up] };
        (x as f32, y as f32)
    }
}

impl OutlineBuilder for Outline<'_> {
    fn move_to(&mut self, x: f32, y: f32) {
        let (x, y) = self.at(x, y);
        self.path.move_to(x, y);
    }
    fn line_to(&mut self, x: f32, y: f32) {
        let (x, y) = self.at(x, y);
        self.path.line_to(x, y);
    }
    fn quad_to(&mut self, x1: f32, y1: f32, x: f32, y: f32) {
        let ((x1, y1), (x, y)) = (self.at(x1, y1), self.at(x, y));
        self.path.quad_to(x1, y1, x, y);
    }
    fn curve_to(&mut self, x1: f32, y1: f32, x2: f32, y2: f32, x: f32, y: f32) {
        let ((x1, y1), (x2, y2), (x, y)) = (self.at(x1, y1), self.at(x2, y2), self.at(x, y));
        self.path.cubic_to(x1, y1, x2, y2, x, y);
    }
    fn close(&mut self) {
        self.path.close();
    }
}
