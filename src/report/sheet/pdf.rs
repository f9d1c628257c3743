//! Sheets as one PDF: a page each, true to size, text that can be searched and copied, the font within it.

use super::font::{Cut, cut};
use super::mark::{Anchor, Mark, Text};
use super::style::{Colour, Fill, INK, Pen, Weight};
use super::{Point, Sheet};
use miniz_oxide::deflate::compress_to_vec_zlib;
use pdf_writer::types::{CidFontType, FontFlags, SystemInfo, UnicodeCmap};
use pdf_writer::{Content, Filter, Finish, Name, Pdf, Rect, Ref, Str, TextStr};
use std::collections::BTreeSet;

/// Points to the millimetre.
const POINTS: f32 = 72.0 / 25.4;
/// How far the handles of a quarter circle's curve reach, as a share of the radius.
const HANDLE: f64 = 0.552_285;
/// How hard to compress: the usual middle.
const LEVEL: u8 = 6;
const WEIGHTS: [Weight; 2] = [Weight::Regular, Weight::Bold];

/// All sheets as pages of one document. Nothing in it comes from the clock.
pub fn pdf(sheets: &[Sheet], title: &str) -> Vec<u8> {
    let fonts = WEIGHTS.map(|weight| font(sheets, weight));
    let mut numbers = Numbers(0);
    let (catalogue, tree, info) = (numbers.next(), numbers.next(), numbers.next());
    let font_refs = WEIGHTS.map(|_| numbers.next());
    let mut file = Pdf::new();
    file.document_info(info).title(TextStr(title)).creator(TextStr("toolberth"));
    let pages: Vec<Ref> = sheets.iter().map(|_| numbers.next()).collect();
    for (sheet, page) in sheets.iter().zip(&pages) {
        let contents = numbers.next();
        write_page(&mut file, sheet, *page, tree, contents, font_refs);
        let drawn = drawn(sheet, &fonts);
        stream(&mut file, contents, &drawn);
    }
    for (k, font) in fonts.iter().enumerate() {
        if let Some(font) = font {
            write_font(&mut file, font, WEIGHTS[k], font_refs[k], &mut numbers);
        }
    }
    file.pages(tree).kids(pages.iter().copied()).count(pages.len() as i32);
    let mut root = file.catalog(catalogue);
    root.pages(tree).lang(TextStr("en-GB"));
    // Printed as large as it is: a drawing that was made to fit is not to scale.
    root.viewer_preferences().display_doc_title(true).pair(Name(b"PrintScaling"), Name(b"None"));
    root.finish();
    file.finish()
}

/// Object numbers, from 1.
struct Numbers(i32);

impl Numbers {
    fn next(&mut self) -> Ref {
        self.0 += 1;
        Ref::new(self.0)
    }
}

/// The font with the letters of all sheets.
fn font(sheets: &[Sheet], weight: Weight) -> Option<Cut> {
    let texts = sheets.iter().flat_map(Sheet::texts).filter(|t| t.weight == weight);
    let letters: BTreeSet<char> = texts.flat_map(|t| t.text.chars()).collect();
    cut(&letters, weight)
}

const fn resource(weight: Weight) -> Name<'static> {
    match weight {
        Weight::Regular => Name(b"R"),
        Weight::Bold => Name(b"B"),
    }
}

fn write_page(file: &mut Pdf, sheet: &Sheet, page: Ref, tree: Ref, contents: Ref, fonts: [Ref; 2]) {
    let (wide, high) = (sheet.paper.width() as f32, sheet.paper.height() as f32);
    let mut page = file.page(page);
    page.parent(tree).media_box(Rect::new(0.0, 0.0, wide * POINTS, high * POINTS));
    page.contents(contents);
    let mut resources = page.resources();
    let mut names = resources.fonts();
    for (weight, font) in WEIGHTS.into_iter().zip(fonts) {
        names.pair(resource(weight), font);
    }
}

fn stream(file: &mut Pdf, at: Ref, bytes: &[u8]) {
    file.stream(at, &compress_to_vec_zlib(bytes, LEVEL)).filter(Filter::FlateDecode);
}

/// A font of glyph numbers, with its widths, its outlines and the letters that they stand for.
fn write_font(file: &mut Pdf, cut: &Cut, weight: Weight, font: Ref, numbers: &mut Numbers) {
    let [inner, descriptor, letters, outlines] = [0; 4].map(|_| numbers.next());
    let name = match weight {
        Weight::Regular => Name(b"TOOLBE+NotoSans"),
        Weight::Bold => Name(b"TOOLBE+NotoSans-Bold"),
    };
    let system =
        || SystemInfo { registry: Str(b"Adobe"), ordering: Str(b"Identity"), supplement: 0 };
    file.type0_font(font)
        .base_font(name)
        .encoding_predefined(Name(b"Identity-H"))
        .descendant_font(inner)
        .to_unicode(letters);
    let mut cid = file.cid_font(inner);
    cid.subtype(CidFontType::Type2)
        .base_font(name)
        .system_info(system())
        .font_descriptor(descriptor)
        .default_width(0.0)
        .cid_to_gid_map_predefined(Name(b"Identity"));
    cid.widths().consecutive(0, cut.advances.iter().copied());
    cid.finish();
    file.font_descriptor(descriptor)
        .name(name)
        .flags(FontFlags::NON_SYMBOLIC)
        .bbox(Rect::new(-600.0, -300.0, 2000.0, 1100.0))
        .italic_angle(0.0)
        .ascent(1069.0)
        .descent(-293.0)
        .cap_height(714.0)
        .stem_v(if weight == Weight::Bold { 140.0 } else { 80.0 })
        .font_file2(outlines);
    let mut map = UnicodeCmap::new(Name(b"Letters"), system());
    let mut said: BTreeSet<u16> = BTreeSet::new();
    for (letter, glyph) in &cut.glyphs {
        // Several letters may have one glyph; the first stands for it.
        if said.insert(*glyph) {
            map.pair(*glyph, *letter);
        }
    }
    let map = map.finish();
    stream(file, letters, map.as_slice());
    stream(file, outlines, &cut.outlines);
}

/// The drawing of a page, in millimetres from its upper left corner.
fn drawn(sheet: &Sheet, fonts: &[Option<Cut>; 2]) -> Vec<u8> {
    let mut page = Drawing { content: Content::new(), fonts };
    let high = sheet.paper.height() as f32 * POINTS;
    page.content.transform([POINTS, 0.0, 0.0, -POINTS, 0.0, high]);
    page.content.set_line_join(pdf_writer::types::LineJoinStyle::RoundJoin);
    page.marks(&sheet.marks);
    page.content.finish().into_vec()
}

struct Drawing<'f> {
    content: Content,
    fonts: &'f [Option<Cut>; 2],
}

impl Drawing<'_> {
    fn marks(&mut self, marks: &[Mark]) {
        marks.iter().for_each(|mark| self.mark(mark));
    }

    fn mark(&mut self, mark: &Mark) {
        match mark {
            Mark::Line { from, to, pen } => {
                self.chain(&[*from, *to]);
                self.painted(*pen, Fill::None);
            }
            Mark::Lines { pieces, pen } => {
                pieces.iter().for_each(|piece| self.chain(piece));
                self.painted(*pen, Fill::None);
            }
            Mark::Polyline { points, pen } => {
                self.chain(points);
                self.painted(*pen, Fill::None);
            }
            Mark::Polygon { points, pen, fill } => {
                self.chain(points);
                self.content.close_path();
                self.painted(*pen, *fill);
            }
            Mark::Rect { at, size, pen, fill } => {
                let [x, y, w, h] = [at[0], at[1], size[0], size[1]].map(short);
                self.content.rect(x, y, w, h);
                self.painted(*pen, *fill);
            }
            Mark::Circle { centre, radius, pen, fill } => {
                self.circle(*centre, *radius);
                self.painted(*pen, *fill);
            }
            Mark::Text(text) => self.text(text),
            Mark::Group { marks, .. } => self.marks(marks),
        }
    }

    fn chain(&mut self, points: &[Point]) {
        for (k, point) in points.iter().enumerate() {
            let [x, y] = point.map(short);
            if k == 0 {
                self.content.move_to(x, y);
            } else {
                self.content.line_to(x, y);
            }
        }
    }

    fn circle(&mut self, [x, y]: Point, r: f64) {
        let h = r * HANDLE;
        self.content.move_to(short(x + r), short(y));
        let quarters = [
            [x + r, y + h, x + h, y + r, x, y + r],
            [x - h, y + r, x - r, y + h, x - r, y],
            [x - r, y - h, x - h, y - r, x, y - r],
            [x + h, y - r, x + r, y - h, x + r, y],
        ];
        for quarter in quarters {
            let [a, b, c, d, e, f] = quarter.map(short);
            self.content.cubic_to(a, b, c, d, e, f);
        }
        self.content.close_path();
    }

    /// Paints the path that was laid.
    fn painted(&mut self, pen: Pen, fill: Fill) {
        let content = &mut self.content;
        if let Some(colour) = fill.colour() {
            let [r, g, b] = share(colour);
            content.set_fill_rgb(r, g, b);
        }
        if let Some(stroke) = pen.stroke() {
            let [r, g, b] = share(stroke.colour);
            content.set_stroke_rgb(r, g, b).set_line_width(stroke.width as f32);
            content.set_dash_pattern(stroke.dashes.iter().map(|d| *d as f32), 0.0);
        }
        match (pen.stroke().is_some(), fill.colour().is_some()) {
            (true, true) => content.fill_nonzero_and_stroke(),
            (true, false) => content.stroke(),
            (false, true) => content.fill_nonzero(),
            (false, false) => content.end_path(),
        };
    }

    fn text(&mut self, text: &Text) {
        let Some(font) = &self.fonts[text.weight as usize] else { return };
        let glyphs = text.text.chars().filter_map(|c| font.glyphs.get(&c));
        let bytes: Vec<u8> = glyphs.flat_map(|g| g.to_be_bytes()).collect();
        let back = match text.anchor {
            Anchor::Start => 0.0,
            Anchor::Middle => text.width() / 2.0,
            Anchor::End => text.width(),
        };
        let [x, y] = text.at;
        let matrix = match text.upward {
            false => [1.0, 0.0, 0.0, -1.0, short(x - back), short(y)],
            true => [0.0, -1.0, -1.0, 0.0, short(x), short(y + back)],
        };
        let [r, g, b] = share(INK);
        self.content
            .set_fill_rgb(r, g, b)
            .begin_text()
            .set_font(resource(text.weight), text.size as f32)
            .set_text_matrix(matrix)
            .show(Str(&bytes))
            .end_text();
    }
}

/// A length to a thousandth of a millimetre.
fn short(value: f64) -> f32 {
    (libm::round(value * 1000.0) / 1000.0) as f32
}

fn share(colour: Colour) -> [f32; 3] {
    colour.light.map(|part| f32::from(part) / 255.0)
}
