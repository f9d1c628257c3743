//! Breaking text into lines by the width that a terminal gives it.

use crate::report::figure::TIE;
use unicode_width::{UnicodeWidthChar, UnicodeWidthStr};

/// Columns that a text takes in a terminal.
pub fn columns(text: &str) -> usize {
    text.width()
}

/// The text in lines of at most so many columns, broken at blanks but not at ties, which become blanks.
///
/// A word that is longer than a line is broken inside rather than cut; there is always at least one line.
pub fn wrap(text: &str, width: usize) -> Vec<String> {
    let width = width.max(1);
    let mut lines = vec![String::new()];
    for word in text.split_ascii_whitespace() {
        let line = lines.last().map_or(0, |line| columns(line));
        let room = if line == 0 { width } else { width.saturating_sub(line + 1) };
        if columns(word) > room && line > 0 {
            lines.push(String::new());
        }
        add(&mut lines, word, width);
    }
    lines.into_iter().map(|line| line.replace(TIE, " ")).collect()
}

/// Puts a word at the end of the last line, going on below where it is longer than a line.
fn add(lines: &mut Vec<String>, word: &str, width: usize) {
    let last = lines.len() - 1;
    if !lines[last].is_empty() {
        lines[last].push(' ');
    }
    for letter in word.chars() {
        let last = lines.len() - 1;
        if columns(&lines[last]) + letter.width().unwrap_or(0) > width && !lines[last].is_empty() {
            lines.push(String::from(letter));
        } else {
            lines[last].push(letter);
        }
    }
}

/// A text filled up with blanks to so many columns, at its left or its right.
pub fn pad(text: &str, width: usize, right: bool) -> String {
    let blanks = " ".repeat(width.saturating_sub(columns(text)));
    if right { blanks + text } else { text.to_owned() + &blanks }
}

/// As much of a text as fits, with the mark at its end where something is missing.
pub fn shorten(text: &str, width: usize, mark: &str) -> String {
    if columns(text) <= width {
        return text.to_owned();
    }
    let mut short = String::new();
    for letter in text.chars() {
        if columns(&short) + letter.width().unwrap_or(0) + columns(mark) > width {
            break;
        }
        short.push(letter);
    }
    short.trim_end().to_owned() + mark
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn long_words_go_on_below_and_nothing_is_lost() {
        assert_eq!(wrap("a soldering station", 9), ["a", "soldering", "station"]);
        assert_eq!(wrap("abcdefgh ij", 3), ["abc", "def", "gh", "ij"]);
        assert_eq!(wrap("", 5), [""]);
        assert_eq!(wrap("at most 19\u{a0}%", 10), ["at most", "19 %"]);
    }

    #[test]
    fn width_is_what_the_terminal_shows() {
        assert_eq!(columns("锤子"), 4);
        assert_eq!(wrap("锤子锤子", 4), ["锤子", "锤子"]);
        assert_eq!(pad("锤", 4, true), "  锤");
        assert_eq!(shorten("marking gauge", 8, "…"), "marking…");
    }
}
