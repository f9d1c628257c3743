//! One file as a tree of nodes that know their places; the only reader of YAML.
//!
//! The library stops at the first fault of a typed reading, so files are read into this tree and decoded by hand.
//! An unquoted scalar keeps its text from the source: `012`, `no` and `1.50` stay what the user wrote.

use super::syntax;
use crate::finding::{Finding, Source, Span};
use serde::de::{Deserialize, Deserializer, MapAccess, SeqAccess, Visitor};
use std::fmt::Formatter;
use std::fs;
use std::io::{ErrorKind, Read};
use std::ops::Range;
use std::path::Path;
use std::sync::Arc;

/// The largest file that is read: 4 MiB, some 35 000 items.
const LARGEST: u64 = 4 * 1024 * 1024;

/// A value with its place.
#[derive(Debug)]
pub(super) struct Node {
    /// A scalar's text with its quotes; of a list or mapping, its first entry.
    pub(super) span: Span,
    /// What it is.
    pub(super) value: Value,
}

/// What a node is.
#[derive(Debug)]
pub(super) enum Value {
    /// Nothing, `~` or `null`.
    Empty,
    /// A scalar: quoted ones decoded, others as written.
    Text(String),
    /// A list.
    List(Vec<Node>),
    /// A mapping in the order of the file; a key may stand there twice.
    Map(Vec<(Name, Node)>),
}

/// A key with its place.
#[derive(Debug)]
pub(super) struct Name {
    /// As written, without quotes.
    pub(super) text: String,
    /// Where.
    pub(super) span: Span,
}

/// A file that gave no tree.
pub(super) enum Failure {
    /// There is no such file.
    Missing,
    /// It exists but could not be read from the disk.
    Unreadable(Box<Finding>),
    /// It was read, but is no YAML.
    Wrong(Box<Finding>),
}

/// Reads a file that is named as shown to the user.
pub(super) fn read(path: &Path) -> Result<Node, Failure> {
    let name = path.display().to_string();
    let bytes = bytes(path, &name)?;
    let text = text(bytes, &name).map_err(Failure::Wrong)?;
    parse(Source { name, text }).map_err(Failure::Wrong)
}

/// The tree of a text.
pub(super) fn parse(source: Source) -> Result<Node, Box<Finding>> {
    let source = Arc::new(source);
    match serde_yaml::from_str_with_options::<Placed>(&source.text, options()) {
        Ok(raw) => node(raw, &source),
        Err(error) => Err(Box::new(syntax::finding(&error, &source))),
    }
}

fn bytes(path: &Path, name: &str) -> Result<Vec<u8>, Failure> {
    let refused = |text: String| Failure::Unreadable(Box::new(Finding::fault(text)));
    let failed = |e: std::io::Error| match e.kind() {
        ErrorKind::NotFound => Failure::Missing,
        ErrorKind::PermissionDenied => refused(format!("{name} may not be read by this user")),
        _ => refused(format!("{name} cannot be read: {e}")),
    };
    // Asked before opening: opening a pipe would wait for its writer.
    let about = fs::metadata(path).map_err(failed)?;
    if !about.is_file() {
        return Err(refused(format!("{name} is not a file")));
    }
    if about.len() > LARGEST {
        return Err(Failure::Wrong(too_large(name)));
    }
    let mut bytes = Vec::new();
    // The file may have grown since it was asked about.
    fs::File::open(path)
        .and_then(|f| f.take(LARGEST + 1).read_to_end(&mut bytes))
        .map_err(failed)?;
    if bytes.len() as u64 > LARGEST { Err(Failure::Wrong(too_large(name))) } else { Ok(bytes) }
}

fn too_large(name: &str) -> Box<Finding> {
    let fault = Finding::fault(format!("{name} is larger than 4 MiB"));
    Box::new(fault.help("split it, and name the parts under `include`"))
}

/// The bytes as UTF-8, or where they stop being it.
fn text(bytes: Vec<u8>, name: &str) -> Result<String, Box<Finding>> {
    let wide = bytes.starts_with(&[0xff, 0xfe]) || bytes.starts_with(&[0xfe, 0xff]);
    String::from_utf8(bytes).map_err(|e| {
        let at = e.utf8_error().valid_up_to();
        let text = String::from_utf8_lossy(e.as_bytes()).into_owned();
        let source = Arc::new(Source { name: name.to_owned(), text });
        let (text, help) = if wide {
            ("the file is UTF-16", "save it as UTF-8")
        } else {
            (
                "here the file stops being UTF-8",
                "save it as UTF-8; an old editor may have written ° or ½ in its own way",
            )
        };
        let place = Span::new(&source, at..at + '\u{fffd}'.len_utf8());
        Box::new(Finding::fault(text).at(&place).help(help))
    })
}

fn options() -> serde_yaml::Options {
    let mut budget = serde_yaml::Budget::default();
    budget.max_nodes = 1_000_000;
    budget.max_events = 2_500_000;
    budget.max_depth = 32;
    budget.max_recorded_anchor_events = 20_000;
    let mut options = serde_yaml::Options::default();
    options.alias_limits.max_total_replayed_events = 20_000;
    options.budget = Some(budget);
    options.duplicate_keys = serde_yaml::DuplicateKeyPolicy::PassThrough;
    options.non_finite_float_policy = serde_yaml::NonFiniteFloatPolicy::AsString;
    options.emit_comments = false;
    options.with_snippet = false;
    options
}

type Placed = serde_yaml::Spanned<Raw>;

/// A value as the library tells it.
enum Raw {
    Empty,
    /// A number or a truth value: its text is taken from the source.
    Plain,
    Text(String),
    List(Vec<Placed>),
    Map(Vec<(Placed, Placed)>),
}

impl<'de> Deserialize<'de> for Raw {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Raw, D::Error> {
        deserializer.deserialize_any(Reading)
    }
}

struct Reading;

impl<'de> Visitor<'de> for Reading {
    type Value = Raw;

    fn expecting(&self, f: &mut Formatter) -> std::fmt::Result {
        f.write_str("a value")
    }
    fn visit_unit<E>(self) -> Result<Raw, E> {
        Ok(Raw::Empty)
    }
    fn visit_bool<E>(self, _: bool) -> Result<Raw, E> {
        Ok(Raw::Plain)
    }
    fn visit_i64<E>(self, _: i64) -> Result<Raw, E> {
        Ok(Raw::Plain)
    }
    fn visit_u64<E>(self, _: u64) -> Result<Raw, E> {
        Ok(Raw::Plain)
    }
    fn visit_i128<E>(self, _: i128) -> Result<Raw, E> {
        Ok(Raw::Plain)
    }
    fn visit_u128<E>(self, _: u128) -> Result<Raw, E> {
        Ok(Raw::Plain)
    }
    fn visit_f64<E>(self, _: f64) -> Result<Raw, E> {
        Ok(Raw::Plain)
    }
    fn visit_str<E>(self, text: &str) -> Result<Raw, E> {
        Ok(Raw::Text(text.to_owned()))
    }
    fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<Raw, A::Error> {
        let mut all = Vec::new();
        while let Some(one) = list.next_element()? {
            all.push(one);
        }
        Ok(Raw::List(all))
    }
    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Raw, A::Error> {
        let mut all = Vec::new();
        while let Some(pair) = map.next_entry()? {
            all.push(pair);
        }
        Ok(Raw::Map(all))
    }
}

fn node(raw: Placed, source: &Arc<Source>) -> Result<Node, Box<Finding>> {
    let own = Span::new(source, range(&raw.referenced));
    let value = match raw.value {
        Raw::Empty => Value::Empty,
        Raw::Plain => Value::Text(written(&raw.defined, source)),
        Raw::Text(text) if unquoted(&raw.defined, source, &text) => {
            Value::Text(written(&raw.defined, source))
        }
        Raw::Text(text) => Value::Text(text),
        Raw::List(all) => {
            Value::List(all.into_iter().map(|one| node(one, source)).collect::<Result<_, _>>()?)
        }
        Raw::Map(all) => {
            Value::Map(all.into_iter().map(|pair| entry(pair, source)).collect::<Result<_, _>>()?)
        }
    };
    let first = match &value {
        Value::List(all) => all.first().map(|one| one.span.clone()),
        Value::Map(all) => all.first().map(|(name, _)| name.span.clone()),
        _ => None,
    };
    Ok(Node { span: first.unwrap_or(own), value })
}

fn entry(
    (key, value): (Placed, Placed),
    source: &Arc<Source>,
) -> Result<(Name, Node), Box<Finding>> {
    let key = node(key, source)?;
    match key.value {
        Value::Text(text) => Ok((Name { text, span: key.span }, node(value, source)?)),
        _ => Err(Box::new(Finding::fault("a key must be a word").at(&key.span))),
    }
}

/// Whether the library gave another text than stands there, as it does for `.nan` and `1e400`.
fn unquoted(place: &serde_yaml::Location, source: &Arc<Source>, decoded: &str) -> bool {
    decoded.trim_start_matches('-').starts_with('.')
        && !written(place, source).starts_with(['"', '\'', '|', '>'])
}

fn written(place: &serde_yaml::Location, source: &Arc<Source>) -> String {
    source.text.get(range(place)).unwrap_or("").to_owned()
}

fn range(place: &serde_yaml::Location) -> Range<usize> {
    let span = place.span();
    let start = span.byte_offset().unwrap_or(0) as usize;
    start..start + span.byte_len().unwrap_or(0) as usize
}
