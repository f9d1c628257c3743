//! A small reader over the tree: it takes values by key, and notes every fault instead of stopping at the first.
//!
//! A value that cannot be read gives `None`; the fault is noted, so the caller may go on with any stand-in.

use super::findings::Findings;
use super::tree::{Name, Node, Value};
use crate::finding::{Finding, Span};

/// The keys that one kind of mapping knows.
pub(super) struct Keys {
    /// What the mapping describes, with its article.
    pub(super) what: &'static str,
    /// Its keys in the order in which they are usually written.
    pub(super) keys: &'static [&'static str],
}

/// A value under its path.
#[derive(Clone, Copy)]
pub(super) struct Field<'a> {
    pub(super) node: &'a Node,
    /// Its key, or itself where it has none.
    pub(super) key: &'a Span,
    pub(super) path: Path<'a>,
}

/// Keys from the root of the file down; places in a list are not counted, the span tells them.
#[derive(Clone, Copy)]
pub(super) struct Path<'a> {
    pub(super) key: &'a str,
    above: Option<&'a Path<'a>>,
}

impl Path<'_> {
    pub(super) fn told(&self) -> String {
        match self.above.map(Path::told) {
            Some(above) if !above.is_empty() => format!("{above}.{}", self.key),
            _ => self.key.to_owned(),
        }
    }
}

/// A mapping whose keys have been checked.
pub(super) struct Table<'a> {
    entries: Vec<(&'a Name, &'a Node)>,
    /// Keys that misspelt ones were likely meant for.
    meant: Vec<String>,
    /// What it describes, for messages.
    pub(super) what: String,
    /// Its first line.
    pub(super) span: &'a Span,
    path: Path<'a>,
}

/// A text with its place.
#[derive(Clone, Debug)]
pub(super) struct Text {
    pub(super) text: String,
    pub(super) span: Span,
}

impl<'a> Field<'a> {
    /// The whole file.
    pub(super) fn root(node: &'a Node) -> Field<'a> {
        Field { node, key: &node.span, path: Path { key: "", above: None } }
    }
    /// Where it stands.
    pub(super) fn span(&self) -> &'a Span {
        if self.node.span.range.is_empty() { self.key } else { &self.node.span }
    }
    /// A fault at this value.
    pub(super) fn fault(&self, text: impl Into<String>) -> Finding {
        Finding::fault(text).at(self.span()).field(self.path.told())
    }
    /// A warning at this value.
    pub(super) fn warning(&self, text: impl Into<String>) -> Finding {
        Finding::warning(text).at(self.span()).field(self.path.told())
    }
    /// The text as it stands, without a check.
    pub(super) fn word(&self) -> Option<&'a str> {
        match &self.node.value {
            Value::Text(text) => Some(text),
            _ => None,
        }
    }
    /// Whether nothing stands there.
    pub(super) fn is_empty(&self) -> bool {
        matches!(self.node.value, Value::Empty)
    }
    /// Whether it is a list.
    pub(super) fn is_list(&self) -> bool {
        matches!(self.node.value, Value::List(_))
    }
    /// Whether it is a mapping.
    pub(super) fn is_map(&self) -> bool {
        matches!(self.node.value, Value::Map(_))
    }

    /// The mapping with its keys checked: unknown ones and those given twice are faults.
    pub(super) fn table(&'a self, keys: &Keys, out: &mut Findings) -> Option<Table<'a>> {
        let entries = self.entries(keys.what, out)?;
        let mut table = Table {
            entries: Vec::new(),
            meant: Vec::new(),
            what: keys.what.to_owned(),
            span: &self.node.span,
            path: self.path,
        };
        for (name, node) in entries {
            if !keys.keys.contains(&name.text.as_str()) {
                let fault = unknown_key(&name.text, &name.span, keys);
                table.meant.extend(fault.nearest.clone());
                out.say(fault.field(table.under(&name.text).told()));
            } else {
                table.take(name, node, out);
                out.priced(keys.what, name);
            }
        }
        Some(table)
    }
    /// The mapping with whatever keys the user chose, each once.
    pub(super) fn names(&'a self, what: &str, out: &mut Findings) -> Vec<(&'a Name, Field<'a>)> {
        let mut table = Table {
            entries: Vec::new(),
            meant: Vec::new(),
            what: what.to_owned(),
            span: &self.node.span,
            path: self.path,
        };
        for (name, node) in self.entries(what, out).unwrap_or_default() {
            table.take(name, node, out);
        }
        let field = |(name, node): (&'a Name, &'a Node)| {
            (
                name,
                Field {
                    node,
                    key: &name.span,
                    path: Path { key: &name.text, above: Some(&self.path) },
                },
            )
        };
        table.entries.into_iter().map(field).collect()
    }
    fn entries(&self, what: &str, out: &mut Findings) -> Option<&'a [(Name, Node)]> {
        match &self.node.value {
            Value::Map(entries) => Some(entries),
            Value::Empty => {
                out.say(self.empty().expected(format!("{what} with its keys")));
                None
            }
            _ => {
                out.say(self.wrong(&format!("{what} with its keys")));
                None
            }
        }
    }

    /// The values of a list; nothing where it is no list.
    pub(super) fn list(&self, out: &mut Findings) -> Vec<Field<'a>> {
        match &self.node.value {
            Value::List(all) => {
                all.iter().map(|node| Field { node, key: self.key, path: self.path }).collect()
            }
            Value::Empty => Vec::new(),
            _ => {
                out.say(self.wrong("a list").help("begin each entry with `- `"));
                Vec::new()
            }
        }
    }
}

impl<'a> Table<'a> {
    fn under<'k>(&'k self, key: &'k str) -> Path<'k> {
        Path { key, above: Some(&self.path) }
    }
    fn take(&mut self, name: &'a Name, node: &'a Node, out: &mut Findings) {
        let first = self.entries.iter().find(|(other, _)| other.text == name.text);
        if let Some((first, _)) = first {
            let text = format!("{} is given twice in one place", name.text);
            let fault =
                Finding::fault(text).at(&name.span).at(&first.span).found(name.text.clone());
            out.say(fault.field(self.under(&name.text).told()).help("remove one of the two"));
        } else {
            self.entries.push((name, node));
        }
    }
    /// The value of a key; an empty one counts as absent, with a warning unless `~` says so on purpose.
    pub(super) fn get(&'a self, key: &'a str, out: &mut Findings) -> Option<Field<'a>> {
        let field = self.raw(key)?;
        if !matches!(field.node.value, Value::Empty) {
            return Some(field);
        }
        if field.node.span.range.is_empty() {
            let warning = Finding::warning(format!("{key} is empty and counts as not given"));
            out.say(warning.at(field.key).field(field.path.told()));
        }
        None
    }
    /// The value of a key that must be there.
    pub(super) fn need(&'a self, key: &'a str, out: &mut Findings) -> Option<Field<'a>> {
        let field = self.raw(key);
        match field {
            Some(field) if matches!(field.node.value, Value::Empty) => {
                out.say(field.empty());
                None
            }
            Some(field) => Some(field),
            // Misspelt, it has been told already.
            None if self.meant.iter().any(|meant| meant == key) => None,
            None => {
                let fault = Finding::fault(format!("{} has no {key}", self.what)).at(self.span);
                out.say(
                    fault.field(self.under(key).told()).expected(key).help(format!("add `{key}:`")),
                );
                None
            }
        }
    }
    /// The value of a key, empty or not.
    pub(super) fn raw(&'a self, key: &'a str) -> Option<Field<'a>> {
        let (name, node) = self.entries.iter().find(|(name, _)| name.text == key)?;
        Some(Field { node, key: &name.span, path: self.under(key) })
    }
    /// Whether the key stands there, empty or not.
    pub(super) fn has(&self, key: &str) -> bool {
        self.entries.iter().any(|(name, _)| name.text == key)
    }
    /// The text of its `name`, without a check.
    pub(super) fn name(&self) -> Option<&'a str> {
        let (_, node) = self.entries.iter().find(|(name, _)| name.text == "name")?;
        Field::root(node).word()
    }
}

/// Whether two words are the same but for case and blanks.
pub(super) fn same(one: &str, other: &str) -> bool {
    one.eq_ignore_ascii_case(other) || fold(one) == fold(other)
}

/// A word in lower case with single blanks.
pub(super) fn fold(word: &str) -> String {
    word.split_whitespace().collect::<Vec<_>>().join(" ").to_lowercase()
}

/// A fault for a word that is none of those allowed.
pub(super) fn unknown_word<'w>(
    what: &str,
    text: &Text,
    words: impl Iterator<Item = &'w str> + Clone,
) -> Finding {
    let fault = Finding::fault(format!("there is no {what} `{}`", text.text)).at(&text.span);
    let listed: Vec<&str> = words.clone().take(13).collect();
    let fault = fault.found(text.text.clone()).near(&text.text, words);
    match listed.len() {
        0 | 13 => fault,
        _ => fault.expected(listed.join(", ")),
    }
}

fn unknown_key(key: &str, span: &Span, keys: &Keys) -> Finding {
    let fault = Finding::fault(format!("{} has no key `{key}`", keys.what)).at(span).found(key);
    let fault = fault.near(key, keys.keys.iter().copied());
    if fault.nearest.is_some() {
        return fault;
    }
    let fault = fault.expected(keys.keys.join(", "));
    match super::keys::ALL.iter().find(|other| other.keys.contains(&key)) {
        Some(kin) => {
            let what = kin.what;
            fault.help(format!("`{key}` is a key of {what}: check how far the line is indented"))
        }
        None => fault,
    }
}
