//! Writing layout.yaml.

use crate::domain::{Entry, Layout, ShelfEntry};
use crate::units::{Length, Unit, show_length_in};

/// Words that other readers of YAML take for something else than a text.
const RESERVED: [&str; 10] = ["true", "false", "yes", "no", "on", "off", "null", "y", "n", "nan"];

/// The text of a layout.yaml, one line a placement. It reads back exactly: lengths are in mm to the nanometre.
///
/// `units` is the user's own unit, named in the head when it is another; each line of `head` becomes a comment.
pub fn write_layout(layout: &Layout, units: Unit, head: &str) -> String {
    let mut text: String =
        head.lines().map(|line| format!("# {line}").trim_end().to_owned() + "\n").collect();
    if units != Unit::Mm {
        text += &format!("# lengths are in mm, so that no {} is rounded\n", units.name());
    }
    text += "units: mm\n";
    if !layout.shelves.is_empty() {
        text += "shelves:\n";
        layout.shelves.iter().for_each(|entry| text += &format!("  - {{{}}}\n", shelf(entry)));
    }
    if layout.entries.is_empty() {
        return text + "placements: []\n";
    }
    text += "placements:\n";
    layout.entries.iter().for_each(|entry| text += &format!("  - {{{}}}\n", placement(entry)));
    text
}

fn placement(entry: &Entry) -> String {
    let mut parts = vec![format!("item: {}", quoted(&entry.item)), format!("copy: {}", entry.copy)];
    if entry.copies > 1 {
        parts.push(format!("copies: {}", entry.copies));
    }
    parts.extend(entry.face.map(|face| format!("face: {}", face.name())));
    parts.push(format!("bay: {}", quoted(&entry.bay)));
    parts.extend(entry.surface.as_ref().map(|surface| format!("surface: {}", quoted(surface))));
    parts.extend(entry.pose.map(|pose| format!("pose: {}", pose.name())));
    parts.extend(entry.turned.map(|turned| format!("turned: {turned}")));
    parts.extend(entry.at.map(|[u, v]| format!("at: [{}, {}]", exact(u), exact(v))));
    parts.join(", ")
}

fn shelf(entry: &ShelfEntry) -> String {
    let mut parts: Vec<String> =
        entry.face.map(|face| format!("face: {}", face.name())).into_iter().collect();
    parts.push(format!("bay: {}", quoted(&entry.bay)));
    parts.push(format!("surface: {}", quoted(&entry.surface)));
    parts.push(format!("height: {}", exact(entry.height)));
    parts.join(", ")
}

/// Millimetres to the nanometre.
fn exact(length: Length) -> String {
    let nm = length.as_nm();
    if nm % 1000 == 0 {
        return show_length_in(length, Unit::Mm);
    }
    let sign = if nm < 0 { "-" } else { "" };
    let (whole, part) = (nm.unsigned_abs() / 1_000_000, nm.unsigned_abs() % 1_000_000);
    format!("{sign}{whole}.{part:06}").trim_end_matches('0').to_owned()
}

/// A text as YAML: in quotes unless it is plainly a text to every reader, within `{ }` too.
fn quoted(text: &str) -> String {
    let first = text.chars().next().is_some_and(char::is_alphabetic);
    let sound = |c: char| {
        c.is_alphanumeric()
            || matches!(c, ' ' | '-' | '_' | '/' | '.' | '(' | ')' | '+' | '½' | '¼' | '¾')
    };
    let reserved = RESERVED.iter().any(|word| word.eq_ignore_ascii_case(text));
    if first && !reserved && !text.ends_with(' ') && !text.contains("  ") && text.chars().all(sound)
    {
        return text.to_owned();
    }
    let mut out = String::from("\"");
    for c in text.chars() {
        match c {
            '"' | '\\' => out.extend(['\\', c]),
            c if c.is_control() || matches!(c, '\u{feff}' | '\u{2028}' | '\u{2029}') => {
                out += &format!("\\u{:04x}", c as u32)
            }
            c => out.push(c),
        }
    }
    out + "\""
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_are_quoted_where_yaml_needs_it() {
        for (text, expected) in [
            ("soldering station", "soldering station"),
            ("no", "\"no\""),
            ("012", "\"012\""),
            ("bit #2", "\"bit #2\""),
            ("a, b", "\"a, b\""),
            ("5/8\" chisel", "\"5/8\\\" chisel\""),
            ("Säge ½", "Säge ½"),
        ] {
            assert_eq!(quoted(text), expected);
        }
    }

    #[test]
    fn lengths_are_exact() {
        assert_eq!(exact(Length::nm(12_700_000)), "12.7");
        assert_eq!(exact(Length::nm(396_875)), "0.396875");
        assert_eq!(exact(Length::nm(-1)), "-0.000001");
        assert_eq!(exact(Length::mm(340)), "340");
    }
}
