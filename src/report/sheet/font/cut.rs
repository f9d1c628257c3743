//! The font cut down to the letters of a drawing, so that a file carries what it uses and no more.

use super::super::style::Weight;
use super::{face, file, glyph, sfnt};
use std::collections::{BTreeMap, BTreeSet};
use subsetter::GlyphRemapper;

/// A cut font.
#[derive(Debug)]
pub struct Cut {
    /// The tables that outlines need, without the one that finds a letter.
    pub outlines: Vec<u8>,
    /// Which glyph of it each letter is.
    pub glyphs: BTreeMap<char, u16>,
    /// The advance of each of its glyphs, in thousandths of the size.
    pub advances: Vec<f32>,
}

/// Cuts the font to some letters; nothing where there are none.
pub fn cut(letters: &BTreeSet<char>, weight: Weight) -> Option<Cut> {
    let face = face(weight)?;
    let mut kept = GlyphRemapper::new();
    let glyphs: BTreeMap<char, u16> =
        letters.iter().map(|&c| (c, kept.remap(glyph(face, c).0))).collect();
    if glyphs.is_empty() {
        return None;
    }
    let outlines = subsetter::subset(file(weight), 0, &kept).ok()?;
    let em = f32::from(face.units_per_em());
    let advance = |old: u16| {
        f32::from(face.glyph_hor_advance(ttf_parser::GlyphId(old)).unwrap_or(0)) * 1000.0 / em
    };
    Some(Cut { outlines, glyphs, advances: kept.remapped_gids().map(advance).collect() })
}

impl Cut {
    /// A font file for browsers: the outlines with the tables that find letters in them.
    ///
    /// Letters that only have a stand-in are left to the browser's own fonts.
    pub fn for_browsers(&self, weight: Weight) -> Option<Vec<u8>> {
        let known = face(weight)?;
        let letters = self.glyphs.iter().filter(|(c, _)| known.glyph_index(**c).is_some());
        let letters: Vec<(char, u16)> = letters.map(|(c, g)| (*c, *g)).collect();
        sfnt::with_letters(&self.outlines, file(weight), &letters)
    }
}
