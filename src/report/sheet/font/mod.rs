//! The one font of the drawings: Noto Sans, regular and bold (SIL Open Font License, see `LICENSE-NotoSans-OFL`).

mod cut;
mod sfnt;

pub use cut::{Cut, cut};

use super::style::Weight;
use std::sync::LazyLock;
use ttf_parser::{Face, GlyphId};

/// How far letters reach over the baseline, as a share of their size: capitals with their accents.
pub const ASCENT: f64 = 0.95;
/// How far letters reach under the baseline, as a share of their size.
pub const DESCENT: f64 = 0.24;
/// Height of a capital as a share of the size.
pub const CAPITAL: f64 = 0.714;

/// What stands for a letter that the font does not have.
pub const STAND_IN: char = '\u{fffd}';

static REGULAR: LazyLock<Option<Face>> =
    LazyLock::new(|| Face::parse(notosans::REGULAR_TTF, 0).ok());
static BOLD: LazyLock<Option<Face>> = LazyLock::new(|| Face::parse(notosans::BOLD_TTF, 0).ok());

/// The font's file.
pub(super) fn file(weight: Weight) -> &'static [u8] {
    match weight {
        Weight::Regular => notosans::REGULAR_TTF,
        Weight::Bold => notosans::BOLD_TTF,
    }
}

/// The font; nothing only if the file that is built in were broken, which a test rules out.
pub(super) fn face(weight: Weight) -> Option<&'static Face<'static>> {
    match weight {
        Weight::Regular => REGULAR.as_ref(),
        Weight::Bold => BOLD.as_ref(),
    }
}

/// The glyph of a letter, or of what stands for it.
pub(super) fn glyph(face: &Face, letter: char) -> GlyphId {
    face.glyph_index(letter).or_else(|| face.glyph_index(STAND_IN)).unwrap_or(GlyphId(0))
}

/// Width of a plain text in mm, letters of that size in mm.
pub fn width(text: &str, size: f64) -> f64 {
    width_in(text, size, Weight::Regular)
}

/// Width of a text in mm: the sum of the font's own advances, without kerning.
pub fn width_in(text: &str, size: f64, weight: Weight) -> f64 {
    let Some(face) = face(weight) else { return 0.0 };
    let advance = |c| u32::from(face.glyph_hor_advance(glyph(face, c)).unwrap_or(0));
    let units: u32 = text.chars().map(advance).sum();
    f64::from(units) / f64::from(face.units_per_em()) * size
}

/// The letters of a text that the font does not have, each once, in order.
pub fn missing<'t>(texts: impl IntoIterator<Item = &'t str>) -> Vec<char> {
    let has = |c: char| face(Weight::Regular).is_some_and(|f| f.glyph_index(c).is_some());
    let all = texts.into_iter().flat_map(str::chars).filter(|c| !has(*c));
    all.collect::<std::collections::BTreeSet<char>>().into_iter().collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn both_files_are_fonts_and_have_what_drawings_say() {
        for weight in [Weight::Regular, Weight::Bold] {
            let face = face(weight).expect("the font is built in");
            let said = "AZaz09 ½⅛¾×Ø°→≤″′–—…·±²³\u{a0}\u{fffd}äßéñøčДλ";
            assert_eq!(said.chars().filter(|c| face.glyph_index(*c).is_none()).count(), 0);
        }
    }

    #[test]
    fn widths_are_sums_of_advances() {
        let (one, two) = (width("n", 10.0), width("nn", 10.0));
        assert!(one > 5.0 && one < 7.0, "an n of 10 mm is {one} mm wide");
        assert!((two - 2.0 * one).abs() < 1e-9);
        assert!(width_in("n", 10.0, Weight::Bold) > one);
        assert_eq!(missing(["a漢b漢", "字"]), ['字', '漢']);
    }
}
