//! Text in lines: broken by its real width, in the few sizes that the drawings use.

use super::area::Area;
use crate::report::figure::TIE;
use crate::report::sheet::{Anchor, Text, Weight, font};

/// The smallest letters that are read from paper without trouble: 6 points (common practice, no source).
pub const SMALL: f64 = 2.12;
/// Letters of notes and names.
pub const NOTE: f64 = 2.5;
/// Letters of titles.
pub const TITLE: f64 = 4.0;
/// Sizes that a name is tried in, the most wanted first.
const SIZES: [f64; 3] = [2.8, NOTE, SMALL];
/// From line to line, as a share of the size: letters of two lines never touch.
pub const LEADING: f64 = 1.2;
/// Free paper round a name.
const ROUND: f64 = 0.5;

/// The text in lines of at most that width, broken at blanks; nothing where a word is wider.
pub fn lines(text: &str, size: f64, weight: Weight, most: f64) -> Option<Vec<String>> {
    let width = |text: &str| font::width_in(text, size, weight);
    let mut all: Vec<String> = Vec::new();
    for word in text.split_ascii_whitespace() {
        if width(word) > most {
            return None;
        }
        match all.last_mut() {
            Some(line) if width(line) + width(" ") + width(word) <= most => {
                line.push(' ');
                line.push_str(word);
            }
            _ => all.push(word.to_owned()),
        }
    }
    for line in &mut all {
        *line = line.replace(TIE, " ");
    }
    (!all.is_empty()).then_some(all)
}

/// The same, and words wider than a line are broken inside; there is at least one letter on each line.
pub fn broken(text: &str, size: f64, weight: Weight, most: f64) -> Vec<String> {
    let mut parts: Vec<String> = Vec::new();
    for word in text.split_ascii_whitespace() {
        let mut part = String::new();
        for letter in word.chars() {
            part.push(letter);
            if font::width_in(&part, size, weight) > most && part.chars().count() > 1 {
                part.pop();
                parts.push(std::mem::replace(&mut part, letter.to_string()));
            }
        }
        parts.push(part);
    }
    lines(&parts.join(" "), size, weight, most).unwrap_or(parts)
}

/// As much of a text as fits, with a mark at its end where something is missing.
pub fn shortened(text: &str, size: f64, weight: Weight, most: f64) -> String {
    if font::width_in(text, size, weight) <= most {
        return text.to_owned();
    }
    let mut short = String::new();
    for letter in text.chars() {
        short.push(letter);
        if font::width_in(&format!("{short}…"), size, weight) > most {
            short.pop();
            break;
        }
    }
    format!("{}…", short.trim_end())
}

/// A name in lines about the middle of a rectangle, with the plate of bare colour behind it.
#[derive(Clone, Debug)]
pub struct Block {
    /// Its lines.
    pub lines: Vec<Text>,
    /// What its letters may touch.
    pub plate: Area,
}

/// The largest way to write a name into one of these rectangles: level rather than upward.
pub fn fitted(name: &str, weight: Weight, rooms: &[Area]) -> Option<Block> {
    for size in SIZES {
        for upward in [false, true] {
            let found = rooms.iter().find_map(|room| written(name, size, weight, room, upward));
            if found.is_some() {
                return found;
            }
        }
    }
    None
}

fn written(name: &str, size: f64, weight: Weight, room: &Area, upward: bool) -> Option<Block> {
    let room = room.inset(ROUND);
    let (along, across) =
        if upward { (room.high(), room.wide()) } else { (room.wide(), room.high()) };
    let step = size * LEADING;
    let tall = |lines: usize| (lines as f64 - 1.0) * step + size * (font::ASCENT + font::DESCENT);
    if along <= 0.0 || across < tall(1) {
        return None;
    }
    let lines = lines(name, size, weight, along)?;
    (tall(lines.len()) <= across).then(|| block(&lines, size, weight, room.middle(), upward))
}

/// Lines about a point.
pub fn block(lines: &[String], size: f64, weight: Weight, middle: [f64; 2], upward: bool) -> Block {
    let step = size * LEADING;
    let tall = (lines.len() as f64 - 1.0) * step + size * (font::ASCENT + font::DESCENT);
    let first = -tall / 2.0 + size * font::ASCENT;
    let text = |(k, line): (usize, &String)| {
        let down = first + k as f64 * step;
        let at = if upward { [middle[0] + down, middle[1]] } else { [middle[0], middle[1] + down] };
        Text { upward, weight, ..Text::new(at, size, line.clone()).anchored(Anchor::Middle) }
    };
    let lines: Vec<Text> = lines.iter().enumerate().map(text).collect();
    let plate = lines.iter().map(extent).reduce(|a, b| a.with(&b));
    Block { plate: plate.unwrap_or(Area::new(middle[0], middle[1], middle[0], middle[1])), lines }
}

/// What the letters of a line may touch.
pub fn extent(text: &Text) -> Area {
    let [[x0, y0], [x1, y1]] = text.extent();
    Area::new(x0, y0, x1, y1)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_is_written_level_then_upward_then_not_at_all() {
        let name = "long marking gauge";
        let write = |wide, high| fitted(name, Weight::Regular, &[Area::new(0.0, 0.0, wide, high)]);
        let wide = write(60.0, 5.0).expect("there is room for one line");
        assert_eq!((wide.lines.len(), wide.lines[0].upward), (1, false));
        let tall = write(5.0, 60.0).expect("there is room for one line upward");
        assert_eq!((tall.lines.len(), tall.lines[0].upward), (1, true));
        assert!(write(8.0, 3.0).is_none());
    }

    #[test]
    fn lines_keep_to_their_width() {
        let text = "box of heat-shrink sleeves, all colours";
        let lines = lines(text, 2.5, Weight::Bold, 20.0).expect("no word is wider");
        assert_eq!(lines.join(" "), text);
        assert!(lines.iter().all(|l| font::width_in(l, 2.5, Weight::Bold) <= 20.0));
        let broken = broken("unbelievablylongword", 2.5, Weight::Regular, 10.0);
        assert_eq!(broken.concat(), "unbelievablylongword");
        assert!(broken.iter().all(|l| font::width(l, 2.5) <= 10.0));
        assert!(shortened(text, 2.5, Weight::Regular, 20.0).ends_with('…'));
    }
}
