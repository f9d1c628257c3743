//! A font file put together from tables (OpenType specification 1.9, chapter "The OpenType Font File").

/// Tables that browsers ask for besides those of the outlines, taken over as they are.
const TAKEN: [&[u8; 4]; 1] = [b"OS/2"];

/// A font with the outlines of one file, and with tables that find these letters in it.
pub fn with_letters(outlines: &[u8], whole: &[u8], letters: &[(char, u16)]) -> Option<Vec<u8>> {
    let mut all: Vec<([u8; 4], Vec<u8>)> = tables(outlines)?
        .into_iter()
        .filter(|(tag, _)| !matches!(tag, b"cmap" | b"OS/2" | b"post"))
        .map(|(tag, data)| (tag, data.to_vec()))
        .collect();
    for (tag, data) in tables(whole)? {
        if TAKEN.contains(&&tag) {
            all.push((tag, data.to_vec()));
        }
    }
    all.push((*b"cmap", letter_map(letters)));
    all.push((*b"post", no_names()));
    if !all.iter().any(|(tag, _)| tag == b"name") {
        all.push((*b"name", vec![0, 0, 0, 0, 0, 6]));
    }
    all.sort();
    Some(file(&mut all))
}

/// The tables of a font file with their tags.
fn tables(file: &[u8]) -> Option<Vec<([u8; 4], &[u8])>> {
    let count = usize::from(u16::from_be_bytes(file.get(4..6)?.try_into().ok()?));
    let word = |at: usize| -> Option<usize> {
        Some(u32::from_be_bytes(file.get(at..at + 4)?.try_into().ok()?) as usize)
    };
    let table = |k: usize| {
        let at = 12 + 16 * k;
        let (from, long) = (word(at + 8)?, word(at + 12)?);
        Some((file.get(at..at + 4)?.try_into().ok()?, file.get(from..from + long)?))
    };
    (0..count).map(table).collect()
}

/// Table `cmap` with one part of format 12: a group for each letter.
fn letter_map(letters: &[(char, u16)]) -> Vec<u8> {
    let mut out = Vec::new();
    let mut put = |words: &[u32]| words.iter().for_each(|w| out.extend(w.to_be_bytes()));
    let long = 16 + 12 * letters.len() as u32;
    // Version 0, one part: Windows, full Unicode, from byte 12 on.
    put(&[1, 3 << 16 | 10, 12, 12 << 16, long, 0, letters.len() as u32]);
    for &(letter, glyph) in letters {
        put(&[letter as u32, letter as u32, u32::from(glyph)]);
    }
    out
}

/// Table `post`, version 3: no names of glyphs.
fn no_names() -> Vec<u8> {
    let mut out = vec![0; 32];
    out[1] = 3;
    out
}

/// The whole file, its sums made right.
fn file(tables: &mut [([u8; 4], Vec<u8>)]) -> Vec<u8> {
    let count = tables.len() as u16;
    let power = 15 - count.leading_zeros() as u16;
    let range = 16u16 << power;
    let mut out = vec![0, 1, 0, 0];
    for word in [count, range, power, count * 16 - range] {
        out.extend(word.to_be_bytes());
    }
    let mut from = 12 + 16 * tables.len();
    for (tag, data) in tables.iter_mut() {
        if tag == b"head" && data.len() >= 12 {
            data[8..12].fill(0);
        }
        out.extend(*tag);
        for word in [sum(data), from as u32, data.len() as u32] {
            out.extend(word.to_be_bytes());
        }
        from += data.len().next_multiple_of(4);
    }
    let mut head = None;
    for (tag, data) in tables.iter() {
        if tag == b"head" {
            head = Some(out.len() + 8);
        }
        out.extend(data);
        out.resize(out.len().next_multiple_of(4), 0);
    }
    if let Some(at) = head.filter(|at| at + 4 <= out.len()) {
        let whole = 0xb1b0_afbau32.wrapping_sub(sum(&out));
        out[at..at + 4].copy_from_slice(&whole.to_be_bytes());
    }
    out
}

/// The sum of a table's words.
fn sum(data: &[u8]) -> u32 {
    let word = |chunk: &[u8]| {
        let mut bytes = [0; 4];
        bytes[..chunk.len()].copy_from_slice(chunk);
        u32::from_be_bytes(bytes)
    };
    data.chunks(4).fold(0u32, |sum, chunk| sum.wrapping_add(word(chunk)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::report::sheet::Weight;
    use crate::report::sheet::font::cut;

    #[test]
    fn a_cut_font_finds_its_letters_and_no_others() {
        let letters = "Hut 12".chars().collect();
        let cut = cut(&letters, Weight::Bold).expect("the font can be cut");
        let file = cut.for_browsers(Weight::Bold).expect("a file can be made");
        let face = ttf_parser::Face::parse(&file, 0).expect("it is a font");
        for letter in letters {
            assert_eq!(face.glyph_index(letter).map(|g| g.0), cut.glyphs.get(&letter).copied());
        }
        assert!(face.glyph_index('x').is_none());
        assert!(file.len() < 12_000, "{} bytes", file.len());
        assert_eq!(sum(&file), 0xb1b0_afba, "the whole file sums up as the specification asks");
    }
}
