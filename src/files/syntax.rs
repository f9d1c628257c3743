//! Faults of the YAML itself in our words, with what usually causes them.

use crate::finding::{Finding, Source, Span};
use serde_yaml::Error;
use std::sync::Arc;

/// What the library's words mean for the user: a part of its message, our text, our help.
const WORDS: [(&str, &str, &str); 12] = [
    ("found a tab", "a tab stands where blanks belong", "indent with blanks"),
    ("tabs disallowed", "a tab stands where blanks belong", "indent with blanks"),
    (
        "mapping values are not allowed",
        "a `:` stands where none can",
        "put a text that holds `: ` in quotes, write a blank after the colon of a key, and check how far the line is indented",
    ),
    (
        "trailing content after double-quoted",
        "more text follows the closing quote",
        "a text that begins with a quote ends at the next one: drop both, or write it in single quotes, as '5/8\" chisel'",
    ),
    (
        "trailing content after single-quoted",
        "more text follows the closing quote",
        "inside single quotes write '' for each quote",
    ),
    (
        "unclosed quote",
        "a quote is opened here and never closed",
        "close it, or put the whole text in the other kind of quotes",
    ),
    (
        "expected ',' or '}'",
        "a `{` is not closed, or a comma is missing",
        "write {name: value, name: value}",
    ),
    ("expected ',' or ']'", "a `[` is not closed, or a comma is missing", "write [first, second]"),
    (
        "illegal placement of ':'",
        "a `[` or `{` above is not closed",
        "write [first, second] or {name: value}",
    ),
    ("unexpected character", "a text may not begin with this sign", "put the text in quotes"),
    (
        "entries are not allowed",
        "a list may not begin on the line of its key",
        "put each `- ` on a line of its own",
    ),
    ("did not find expected", "this line is indented differently from those it belongs to", ""),
];

/// The finding for what the library says.
pub(super) fn finding(error: &Error, source: &Arc<Source>) -> Finding {
    match error {
        Error::AliasError { error, .. } => finding(error, source),
        Error::MultipleDocuments { .. } => told(
            error,
            source,
            "a second document begins here",
            "one file holds one document: remove the line `---`",
        ),
        Error::UnknownAnchor { .. } => told(
            error,
            source,
            "this alias points to nothing",
            "put a text that begins with * in quotes",
        ),
        Error::RecursiveReferencesRequireWeakTypes { .. } => {
            told(error, source, "this alias holds itself", "write the values out")
        }
        Error::Budget { .. }
        | Error::AliasReplayLimitExceeded { .. }
        | Error::AliasExpansionLimitExceeded { .. }
        | Error::AliasReplayStackDepthExceeded { .. } => told(
            error,
            source,
            "the file is nested too deeply or repeats itself too often",
            "write the values out",
        ),
        Error::Message { msg, .. } | Error::ExternalMessage { msg, .. } => {
            scanned(error, msg, source)
        }
        other => told(error, source, "this cannot be read as YAML", "").found(other.to_string()),
    }
}

fn told(error: &Error, source: &Arc<Source>, text: &str, help: &str) -> Finding {
    let fault = Finding::fault(text).at(&place(error, source));
    if help.is_empty() { fault } else { fault.help(help) }
}

fn scanned(error: &Error, message: &str, source: &Arc<Source>) -> Finding {
    let Some((key, text, help)) = WORDS.iter().find(|(part, _, _)| message.contains(part)) else {
        return told(error, source, "this cannot be read as YAML", "").found(message);
    };
    let fault = told(error, source, text, help);
    match *key {
        "found a tab" => at_tab(fault, source),
        "did not find expected" => about_indentation(fault),
        _ => fault,
    }
}

/// The library stops before the tab; the first one from there on is meant.
fn at_tab(fault: Finding, source: &Arc<Source>) -> Finding {
    let start = fault.at.first().map_or(0, |span| span.range.start);
    match source.text[start..].find('\t') {
        Some(ahead) => {
            Finding { at: vec![Span::new(source, start + ahead..start + ahead + 1)], ..fault }
        }
        None => fault,
    }
}

/// Names the key of the line and both columns, since the slip may be in either line.
fn about_indentation(fault: Finding) -> Finding {
    let Some(span) = fault.at.first() else {
        return fault;
    };
    let text = &span.source.text;
    let begin = text[..span.range.start].rfind('\n').map_or(0, |n| n + 1);
    let line = text[begin..].lines().next().unwrap_or("");
    let key = line.split(':').next().unwrap_or("").trim();
    let above = text[..begin].lines().rev().find(|l| !l.trim().is_empty()).unwrap_or("");
    let column = |l: &str| l.len() - l.trim_start_matches([' ', '-']).len() + 1;
    let help = format!(
        "`{key}` begins in column {}, the line above it in column {}",
        column(line),
        column(above)
    );
    let start = begin + line.len() - line.trim_start().len();
    let place = Span::new(&span.source, start..start.max(begin + line.trim_end().len()));
    Finding { at: vec![place], ..fault }.help(help)
}

/// The place the library tells: bytes where it has them, else worked out from line and column.
fn place(error: &Error, source: &Arc<Source>) -> Span {
    let Some(at) = error.location() else {
        return Span::new(source, 0..0);
    };
    let text = &source.text;
    let start = at
        .span()
        .byte_offset()
        .map_or_else(|| offset(text, at.line() as usize, at.column() as usize), |b| b as usize);
    let start = text.floor_char_boundary(start.min(text.len()));
    let length =
        text[start..].chars().next().filter(|c| !c.is_whitespace()).map_or(0, char::len_utf8);
    Span::new(source, start..start + length)
}

fn offset(text: &str, line: usize, column: usize) -> usize {
    let begin =
        text.split_inclusive('\n').take(line.saturating_sub(1)).map(str::len).sum::<usize>();
    let line = text[begin..].split('\n').next().unwrap_or("");
    begin + line.chars().take(column.saturating_sub(1)).map(char::len_utf8).sum::<usize>()
}
