//! The floors of the house: imports go down only, and the repository holds only the names that were agreed.

use std::fs;
use std::path::{Path, PathBuf};

/// The ground that every room may stand on.
const GROUND: [&str; 3] = ["finding", "units", "geometry"];

/// Which rooms a room may import besides its own and, above the ground, the ground.
const ROOMS: [(&str, &[&str]); 12] = [
    ("finding", &[]),
    ("units", &["finding"]),
    ("geometry", &["units"]),
    ("domain", &[]),
    ("physics", &[]),
    ("files", &["domain"]),
    ("site", &["physics", "domain"]),
    ("score", &["site", "physics", "domain"]),
    ("solve", &["score", "site", "domain"]),
    ("tasks", &["solve", "score", "site", "physics", "domain"]),
    ("report", &["tasks", "score", "site", "domain"]),
    ("cli", &["report", "tasks", "solve", "score", "site", "files", "physics", "domain"]),
];

/// What may lie at the top of the repository; names with a leading dot are free.
const TOP: [&str; 10] = [
    "Cargo.toml",
    "Cargo.lock",
    "README.md",
    "DEVELOPERS.md",
    "src",
    "tests",
    "inventories",
    "demo-data",
    "licenses",
    "target",
];

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// Whether a room may import another; `None` where the table does not know the room.
fn allows(room: &str, other: &str) -> Option<bool> {
    let (_, below) = ROOMS.iter().find(|(name, _)| *name == room)?;
    let on_ground = !GROUND.contains(&room) && GROUND.contains(&other);
    Some(room == other || on_ground || below.contains(&other))
}

/// The code without comments and without the contents of strings.
fn bare(text: &str) -> String {
    let chars: Vec<char> = text.chars().collect();
    let mut out = String::with_capacity(text.len());
    let mut at = 0;
    while at < chars.len() {
        let end = match (chars[at], chars.get(at + 1)) {
            ('/', Some('/')) => past_line(&chars, at),
            ('/', Some('*')) => past_comment(&chars, at),
            ('r', Some('"' | '#')) if !joins(&chars, at) => past_raw(&chars, at),
            ('"', _) => past_string(&chars, at),
            ('\'', Some(_)) => past_char(&chars, at),
            _ => at,
        };
        if end == at {
            out.push(chars[at]);
            at += 1;
        } else {
            out.push(' ');
            at = end;
        }
    }
    out
}

/// Whether the character before belongs to the same word.
fn joins(chars: &[char], at: usize) -> bool {
    at > 0 && is_word(chars[at - 1]) && chars[at - 1] != 'b'
}

fn is_word(c: char) -> bool {
    c.is_alphanumeric() || c == '_'
}

fn past_line(chars: &[char], at: usize) -> usize {
    chars[at..].iter().position(|c| *c == '\n').map_or(chars.len(), |n| at + n)
}

fn past_comment(chars: &[char], at: usize) -> usize {
    let (mut depth, mut at) = (0, at);
    while at < chars.len() {
        match (chars[at], chars.get(at + 1)) {
            ('/', Some('*')) => (depth, at) = (depth + 1, at + 2),
            ('*', Some('/')) => (depth, at) = (depth - 1, at + 2),
            _ => at += 1,
        }
        if depth == 0 {
            break;
        }
    }
    at
}

fn past_raw(chars: &[char], at: usize) -> usize {
    let hashes = chars[at + 1..].iter().take_while(|c| **c == '#').count();
    let open = at + 1 + hashes;
    if chars.get(open) != Some(&'"') {
        return at; // a raw name, not a string
    }
    let close: Vec<char> = std::iter::once('"').chain(std::iter::repeat_n('#', hashes)).collect();
    chars[open + 1..]
        .windows(close.len())
        .position(|w| w == close)
        .map_or(chars.len(), |n| open + 1 + n + close.len())
}

fn past_string(chars: &[char], at: usize) -> usize {
    let mut at = at + 1;
    while at < chars.len() && chars[at] != '"' {
        at += if chars[at] == '\\' { 2 } else { 1 };
    }
    at + 1
}

/// Past a character in quotes; a lifetime stays.
fn past_char(chars: &[char], at: usize) -> usize {
    if chars.get(at + 1) == Some(&'\\') {
        let close = chars[at + 3..].iter().position(|c| *c == '\'');
        return close.map_or(at, |n| at + 4 + n);
    }
    if chars.get(at + 2) == Some(&'\'') { at + 3 } else { at }
}

/// The code without the items that are only built for tests.
fn without_tests(code: &str) -> String {
    let mut rest = code;
    let mut out = String::new();
    while let Some(at) = rest.find("#[cfg(test)]") {
        out.push_str(&rest[..at]);
        rest = after_item(&rest[at + "#[cfg(test)]".len()..]);
    }
    out + rest
}

/// What follows an item: past its closing brace, or past its semicolon where it has no body.
fn after_item(code: &str) -> &str {
    let mut depth = 0;
    for (at, c) in code.char_indices() {
        match c {
            '{' => depth += 1,
            '}' => depth -= 1,
            ';' if depth == 0 => return &code[at + 1..],
            _ => continue,
        }
        if depth == 0 {
            return &code[at + 1..];
        }
    }
    ""
}

/// Where a word stands by itself, followed by `::`; each time what comes after that.
fn after_word<'a>(code: &'a str, word: &'a str) -> impl Iterator<Item = (&'a str, &'a str)> {
    code.match_indices(word).filter_map(move |(at, _)| {
        let before = &code[..at];
        let alone = !before.ends_with(is_word);
        let rest = code[at + word.len()..].trim_start().strip_prefix("::")?;
        alone.then_some((before, rest.trim_start()))
    })
}

fn first_word(text: &str) -> String {
    text.trim_start().chars().take_while(|c| is_word(*c)).collect()
}

/// The first names in the braces of a grouped import.
fn group(text: &str) -> Vec<String> {
    let (mut depth, mut names) = (0, Vec::new());
    for (at, c) in text.char_indices() {
        match c {
            '{' => depth += 1,
            '}' => depth -= 1,
            _ => {}
        }
        if depth == 0 {
            break;
        }
        if depth == 1 && (c == '{' || c == ',') {
            names.push(first_word(&text[at + 1..]));
        }
    }
    names.retain(|n| !n.is_empty());
    names
}

/// The rooms that a piece of code names.
fn rooms_named(code: &str) -> Vec<String> {
    after_word(code, "crate")
        .flat_map(
            |(_, rest)| {
                if rest.starts_with('{') { group(rest) } else { vec![first_word(rest)] }
            },
        )
        .collect()
}

/// The longest chain of `super::` in a piece of code.
fn steps_up(code: &str) -> usize {
    let chain = |mut rest: &str| {
        let mut steps = 1;
        while let Some(more) = rest.strip_prefix("super") {
            let Some(more) = more.trim_start().strip_prefix("::") else {
                break;
            };
            rest = more.trim_start();
            steps += 1;
        }
        steps
    };
    after_word(code, "super").map(|(_, rest)| chain(rest)).max().unwrap_or(0)
}

/// What is wrong with the imports of one file, whose path is told from `src`.
fn complaints(path: &Path, text: &str) -> Vec<String> {
    let parts: Vec<String> = path.iter().map(|p| p.to_string_lossy().into_owned()).collect();
    let room = parts[0].trim_end_matches(".rs").to_owned();
    let shown = path.display();
    let code = without_tests(&bare(text));
    if allows(&room, &room).is_none() {
        return vec![format!("{shown}: no such room in the table")];
    }
    let mut out: Vec<String> = rooms_named(&code)
        .into_iter()
        .filter(|other| allows(&room, other) != Some(true))
        .map(|other| format!("{shown}: imports {other}"))
        .collect();
    // A file `room/a/b.rs` is two steps under its room, `room/a/mod.rs` one.
    let within = parts.len() - 1 - usize::from(path.ends_with("mod.rs"));
    if steps_up(&code) > within {
        out.push(format!("{shown}: goes up out of its room"));
    }
    out
}

/// All source files, told from `src`.
fn sources(folder: &Path, into: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).expect("the sources can be listed") {
        let path = entry.expect("an entry can be read").path();
        if path.is_dir() {
            sources(&path, into);
        } else if path.extension().is_some_and(|e| e == "rs") {
            into.push(path);
        }
    }
}

#[test]
fn imports_go_down_only() {
    let src = root().join("src");
    let mut files = Vec::new();
    sources(&src, &mut files);
    files.sort();
    assert!(files.len() > 20, "only {} source files found", files.len());
    let mut wrong = Vec::new();
    for file in &files {
        let path = file.strip_prefix(&src).expect("it lies in src");
        if path.components().count() > 1 {
            let text = fs::read_to_string(file).expect("a source can be read");
            wrong.extend(complaints(path, &text));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn the_program_starts_from_its_top_floor() {
    let text = fs::read_to_string(root().join("src/main.rs")).expect("the program can be read");
    let code = bare(&text);
    let named: Vec<String> =
        after_word(&code, "toolberth").map(|(_, rest)| first_word(rest)).collect();
    assert_eq!(named, ["cli"]);
}

#[test]
fn an_import_upwards_is_seen() {
    let file = Path::new("site/board.rs");
    let wrong = |text: &str| !complaints(file, text).is_empty();
    assert!(wrong("use crate::score::Ledger;"));
    assert!(wrong("use crate::{domain::Item, score::{Ledger, Fact}};"));
    assert!(wrong("use crate::files;"), "rooms on one floor do not see each other");
    assert!(wrong("fn f() -> crate :: report::Page { todo!() }"));
    assert!(wrong("use super::super::score;"));
    assert!(!wrong("use crate::{domain::{Item, score}, units::Length};\nuse super::Surface;"));
    assert!(!wrong("// crate::score\n/* crate::report */ const A: &str = \"crate::tasks\";"));
    assert!(!wrong("const Q: char = '\"'; /// crate::score\nfn a<'a>(b: &'a str) {}"));
    assert!(!wrong("#[cfg(test)]\nmod tests { use crate::score::Ledger; fn f() { if true {} } }"));
    assert!(wrong("#[cfg(test)]\nmod tests;\nuse crate::score::Ledger;"));
    assert!(wrong("const A: &str = r#\"a \" b\"#; use crate::score::Ledger;"));
}

#[test]
fn a_room_that_the_table_does_not_know_is_seen() {
    assert!(!complaints(Path::new("helpers/mod.rs"), "").is_empty());
    assert!(!complaints(Path::new("site/mod.rs"), "use super::score;").is_empty());
    assert!(!complaints(Path::new("site/a/b.rs"), "use super::super::super::x;").is_empty());
    assert!(complaints(Path::new("site/a/b.rs"), "use super::super::x;").is_empty());
}

#[test]
fn the_table_only_leads_down() {
    let floor = |room: &str| ROOMS.iter().position(|(name, _)| *name == room);
    for (room, below) in ROOMS {
        for other in below {
            assert!(floor(other) < floor(room), "{room} may not import {other}");
        }
    }
}

#[test]
fn the_repository_holds_the_agreed_names() {
    let mut odd: Vec<String> = fs::read_dir(root())
        .expect("the repository can be listed")
        .map(|e| e.expect("an entry can be read").file_name().to_string_lossy().into_owned())
        .filter(|n| !n.starts_with('.') && !n.starts_with("LICENSE") && !TOP.contains(&n.as_str()))
        .collect();
    odd.sort();
    assert!(odd.is_empty(), "not agreed: {}", odd.join(", "));
}
