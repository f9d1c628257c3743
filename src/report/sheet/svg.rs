//! A sheet as SVG: a file that stands by itself, or a picture in a page that brings colours and font.

use super::mark::{Anchor, Mark, Text, Tie};
use super::style::{COLOURS, Colour, Fill, INK, Pen, Weight};
use super::{Point, Sheet, font};
use std::collections::BTreeSet;
use std::fmt::Write;

/// The name under which the drawings ask for their font.
pub const FONT: &str = "Noto Sans Cut";

/// A file that needs nothing else: colours of white paper, its font within it, true to size.
pub fn svg(sheet: &Sheet) -> String {
    let mut out = String::from("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
    let pen = Writer { inline: false };
    pen.open(&mut out, sheet);
    let letters = |weight| {
        let texts = sheet.texts().into_iter().filter(move |t| t.weight == weight);
        texts.flat_map(|t| t.text.chars()).collect::<BTreeSet<char>>()
    };
    let faces = [Weight::Regular, Weight::Bold].map(|w| font_face(&letters(w), w)).concat();
    let _ = writeln!(out, "<style>{faces}</style>");
    let size = [sheet.paper.width(), sheet.paper.height()];
    pen.mark(&mut out, &Mark::rect([0.0; 2], size, Pen::None, Fill::Paper));
    pen.marks(&mut out, &sheet.marks);
    out.push_str("</svg>\n");
    out
}

/// An element for a page that has [`palette`] and [`rules`] in its style sheet and a font face named [`FONT`].
pub fn inline(sheet: &Sheet) -> String {
    let mut out = String::new();
    let pen = Writer { inline: true };
    pen.open(&mut out, sheet);
    pen.marks(&mut out, &sheet.marks);
    out.push_str("</svg>\n");
    out
}

/// A rule that brings the font with these letters; empty where there are none.
pub fn font_face(letters: &BTreeSet<char>, weight: Weight) -> String {
    let file = font::cut(letters, weight).and_then(|cut| cut.for_browsers(weight));
    let Some(file) = file else { return String::new() };
    let weight = css_weight(weight);
    format!(
        "@font-face{{font-family:\"{FONT}\";font-weight:{weight};src:url(data:font/ttf;base64,{})}}",
        base64(&file)
    )
}

/// The colours as custom properties, by day or by night.
pub fn palette(dark: bool) -> String {
    let value = |c: &Colour| format!("--{}:{};", c.name, hex(if dark { c.dark } else { c.light }));
    COLOURS.iter().map(value).collect()
}

/// What the classes of [`inline`] mean.
pub fn rules() -> String {
    let mut out = format!(
        ".sheet text{{font-family:\"{FONT}\",\"Noto Sans\",sans-serif;fill:var(--{})}}\n\
         .sheet .b{{font-weight:700}}\n.sheet .f0{{fill:none}}\n",
        INK.name
    );
    for stroke in Pen::ALL.iter().filter_map(|pen| pen.stroke()) {
        let dashes = match stroke.dashes {
            [] => String::new(),
            all => format!(";stroke-dasharray:{}", list(all)),
        };
        let (name, colour, width) = (stroke.name, stroke.colour.name, stroke.width);
        let _ = writeln!(
            out,
            ".sheet .p-{name}{{stroke:var(--{colour});stroke-width:{width}{dashes}}}"
        );
    }
    for colour in COLOURS {
        let _ = writeln!(out, ".sheet .f-{0}{{fill:var(--{0})}}", colour.name);
    }
    out
}

struct Writer {
    inline: bool,
}

impl Writer {
    fn open(&self, out: &mut String, sheet: &Sheet) {
        let (wide, high) = (num(sheet.paper.width()), num(sheet.paper.height()));
        let id = escape(&sheet.id);
        let name = escape(&sheet.title);
        let (class, space) = if self.inline {
            (format!(" class=\"sheet\" id=\"{id}\""), "")
        } else {
            (format!(" id=\"{id}\""), " xmlns=\"http://www.w3.org/2000/svg\"")
        };
        let _ = writeln!(
            out,
            "<svg{space}{class} role=\"group\" aria-label=\"{name}\" width=\"{wide}mm\" height=\"{high}mm\" \
             viewBox=\"0 0 {wide} {high}\" stroke-linejoin=\"round\">"
        );
        if !self.inline {
            let _ = writeln!(out, "<title>{name}</title>");
        }
    }

    fn marks(&self, out: &mut String, marks: &[Mark]) {
        marks.iter().for_each(|mark| self.mark(out, mark));
    }

    fn mark(&self, out: &mut String, mark: &Mark) {
        match mark {
            Mark::Line { from, to, pen } => {
                let shape = format!("line {}", ends(*from, *to));
                self.shape(out, &shape, *pen, Fill::None);
            }
            Mark::Lines { pieces, pen } => {
                let path: Vec<String> =
                    pieces.iter().map(|[a, b]| format!("M{}L{}", pair(*a), pair(*b))).collect();
                self.shape(out, &format!("path d=\"{}\"", path.concat()), *pen, Fill::None);
            }
            Mark::Polyline { points, pen } => {
                self.shape(out, &format!("polyline {}", corners(points)), *pen, Fill::None);
            }
            Mark::Polygon { points, pen, fill } => {
                self.shape(out, &format!("polygon {}", corners(points)), *pen, *fill);
            }
            Mark::Rect { at, size, pen, fill } => {
                let [x, y, w, h] = [at[0], at[1], size[0], size[1]].map(num);
                let shape = format!("rect x=\"{x}\" y=\"{y}\" width=\"{w}\" height=\"{h}\"");
                self.shape(out, &shape, *pen, *fill);
            }
            Mark::Circle { centre, radius, pen, fill } => {
                let [x, y, r] = [centre[0], centre[1], *radius].map(num);
                let shape = format!("circle cx=\"{x}\" cy=\"{y}\" r=\"{r}\"");
                self.shape(out, &shape, *pen, *fill);
            }
            Mark::Text(text) => self.text(out, text),
            Mark::Group { tie, marks } => {
                // On a page, the named box of a thing leads to its story.
                let link = tie.placement.filter(|_| self.inline && tie.name.is_some());
                let tag = if link.is_some() { "a" } else { "g" };
                let _ = writeln!(
                    out,
                    "<{tag}{}{}>",
                    attributes(tie),
                    link.map_or_else(String::new, |to| leads(tie, to))
                );
                if let Some(name) = &tie.name {
                    let _ = writeln!(out, "<title>{}</title>", escape(name));
                }
                self.marks(out, marks);
                let _ = writeln!(out, "</{tag}>");
            }
        }
    }

    fn shape(&self, out: &mut String, shape: &str, pen: Pen, fill: Fill) {
        let look = if self.inline { classes(pen, fill) } else { looks(pen, fill) };
        let _ = writeln!(out, "<{shape}{look}/>");
    }

    fn text(&self, out: &mut String, text: &Text) {
        let [x, y] = text.at.map(num);
        let anchor = match text.anchor {
            Anchor::Start => "",
            Anchor::Middle => " text-anchor=\"middle\"",
            Anchor::End => " text-anchor=\"end\"",
        };
        let turn = match text.upward {
            true => format!(" transform=\"rotate(-90 {x} {y})\""),
            false => String::new(),
        };
        let look = match (self.inline, text.weight) {
            (true, Weight::Regular) => String::new(),
            (true, Weight::Bold) => " class=\"b\"".to_owned(),
            (false, weight) => format!(
                " font-family=\"'{FONT}','Noto Sans',sans-serif\" font-weight=\"{}\" fill=\"{}\"",
                css_weight(weight),
                hex(INK.light)
            ),
        };
        // Where another font steps in, the text still takes the room that it was given.
        let long = num(text.width());
        let _ = writeln!(
            out,
            "<text x=\"{x}\" y=\"{y}\" font-size=\"{}\" textLength=\"{long}\" \
             lengthAdjust=\"spacingAndGlyphs\"{anchor}{turn}{look}>{}</text>",
            num(text.size),
            escape(&text.text)
        );
    }
}

/// The name under which a page tells of a placement.
pub fn address(placement: usize) -> String {
    format!("item-{placement}")
}

fn leads(tie: &Tie, placement: usize) -> String {
    let name =
        tie.name.as_deref().map_or_else(String::new, |n| format!(" aria-label=\"{}\"", escape(n)));
    format!(" href=\"#{}\"{name}", address(placement))
}

fn attributes(tie: &Tie) -> String {
    let mut out = String::new();
    if !tie.class.is_empty() {
        let _ = write!(out, " class=\"{}\"", tie.class);
    }
    if let Some(placement) = tie.placement {
        let _ = write!(out, " data-placement=\"{placement}\"");
    }
    if let Some(frame) = tie.frame {
        let [x, y] = frame.origin.map(num);
        let _ = write!(out, " data-origin=\"{x} {y}\" data-scale=\"{}\"", frame.scale);
    }
    out
}

fn classes(pen: Pen, fill: Fill) -> String {
    let fill = fill.colour().map_or("f0".to_owned(), |c| format!("f-{}", c.name));
    let pen = pen.stroke().map_or(String::new(), |s| format!(" p-{}", s.name));
    format!(" class=\"{fill}{pen}\"")
}

fn looks(pen: Pen, fill: Fill) -> String {
    let mut out = format!(" fill=\"{}\"", fill.colour().map_or("none".into(), |c| hex(c.light)));
    if let Some(stroke) = pen.stroke() {
        let _ = write!(
            out,
            " stroke=\"{}\" stroke-width=\"{}\"",
            hex(stroke.colour.light),
            stroke.width
        );
        if !stroke.dashes.is_empty() {
            let _ = write!(out, " stroke-dasharray=\"{}\"", list(stroke.dashes));
        }
    }
    out
}

const fn css_weight(weight: Weight) -> u16 {
    match weight {
        Weight::Regular => 400,
        Weight::Bold => 700,
    }
}

fn ends(from: Point, to: Point) -> String {
    let [x1, y1, x2, y2] = [from[0], from[1], to[0], to[1]].map(num);
    format!("x1=\"{x1}\" y1=\"{y1}\" x2=\"{x2}\" y2=\"{y2}\"")
}

fn corners(points: &[Point]) -> String {
    let all: Vec<String> = points.iter().map(|p| pair(*p)).collect();
    format!("points=\"{}\"", all.join(" "))
}

fn pair(at: Point) -> String {
    format!("{} {}", num(at[0]), num(at[1]))
}

fn list(all: &[f64]) -> String {
    all.iter().map(|x| num(*x)).collect::<Vec<String>>().join(" ")
}

/// A length to a thousandth of a millimetre, without needless noughts.
pub(super) fn num(value: f64) -> String {
    let rounded = libm::round(value * 1000.0) / 1000.0;
    // Nought has no sign.
    format!("{}", rounded + 0.0)
}

fn hex([r, g, b]: [u8; 3]) -> String {
    format!("#{r:02x}{g:02x}{b:02x}")
}

/// Text as XML holds it; letters that XML cannot hold at all are left out.
fn escape(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            c if c.is_control() || matches!(c, '\u{fffe}' | '\u{ffff}') => {}
            c => out.push(c),
        }
    }
    out
}

/// Bytes in sixty-fours (RFC 4648, chapter 4).
pub fn base64(bytes: &[u8]) -> String {
    const LETTERS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    let mut out = String::with_capacity(bytes.len().div_ceil(3) * 4);
    for three in bytes.chunks(3) {
        let byte = |k: usize| u32::from(three.get(k).copied().unwrap_or(0));
        let word = byte(0) << 16 | byte(1) << 8 | byte(2);
        for k in 0..4 {
            let letter = LETTERS[(word >> (18 - 6 * k)) as usize & 63];
            out.push(if k <= three.len() { char::from(letter) } else { '=' });
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::super::{Paper, Size};
    use super::*;

    #[test]
    fn bytes_are_written_in_sixty_fours() {
        let all = ["", "f", "fo", "foo", "foob"].map(|t| base64(t.as_bytes()));
        // RFC 4648, chapter 10.
        assert_eq!(all, ["", "Zg==", "Zm8=", "Zm9v", "Zm9vYg=="]);
    }

    #[test]
    fn a_sheet_is_true_to_size_and_says_what_was_said() {
        let marks = vec![
            Mark::rect([10.0, -0.0001], [2.5, 1.0 / 3.0], Pen::Thin, Fill::Tint(3)),
            Mark::text([1.0, 2.0], 2.5, "1/2\" <x> & y\u{7}"),
        ];
        let paper = Paper::landscape(Size::Letter);
        let sheet = Sheet { id: "front".into(), title: "Front".into(), paper, marks };
        let text = svg(&sheet);
        assert!(text.contains("width=\"279.4mm\" height=\"215.9mm\" viewBox=\"0 0 279.4 215.9\""));
        assert!(text.contains("x=\"10\" y=\"0\" width=\"2.5\" height=\"0.333\""));
        assert!(text.contains(">1/2&quot; &lt;x&gt; &amp; y</text>"));
        assert!(inline(&sheet).contains("class=\"f-tint-3 p-thin\""));
        assert!(palette(true).contains("--tint-3:#624a24;"));
        assert!(rules().contains(".sheet .f-tint-3{fill:var(--tint-3)}"));
    }
}
