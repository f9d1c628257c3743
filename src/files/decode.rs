//! A small reader over the tree: it takes values by key, and notes every fault instead of stopping at the first.
//!
//! A value that cannot be read gives `None`; the fault is noted, so the caller may go on with any stand-in.

use super::findings::Findings;
use super::tree::{Name, Node, Value};
use crate::finding::{Finding, Span, nearest};
use crate::units::{Length, Mass, ParseError, Share, Time, Unit, Uses};
use crate::units::{parse_dims, parse_length, parse_mass, parse_share, parse_time, parse_uses};

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
    node: &'a Node,
    /// Its key, or itself where it has none.
    key: &'a Span,
    path: Path<'a>,
}

/// Keys from the root of the file down; places in a list are not counted, the span tells them.
#[derive(Clone, Copy)]
pub(super) struct Path<'a> {
    key: &'a str,
    above: Option<&'a Path<'a>>,
}

impl Path<'_> {
    fn told(&self) -> String {
        match self.above.map(Path::told) {
            Some(above) if !above.is_empty() => format!("{above}.{}", self.key),
            _ => self.key.to_owned(),
        }
    }
}

/// A mapping whose keys have been checked.
pub(super) struct Table<'a> {
    entries: Vec<(&'a Name, &'a Node)>,
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
        Field {
            node,
            key: &node.span,
            path: Path {
                key: "",
                above: None,
            },
        }
    }
    /// Where it stands.
    pub(super) fn span(&self) -> &'a Span {
        if self.node.span.range.is_empty() {
            self.key
        } else {
            &self.node.span
        }
    }
    /// A fault at this value.
    pub(super) fn fault(&self, text: impl Into<String>) -> Finding {
        Finding::fault(text).at(self.span()).field(self.path.told())
    }
    /// A warning at this value.
    pub(super) fn warning(&self, text: impl Into<String>) -> Finding {
        Finding::warning(text)
            .at(self.span())
            .field(self.path.told())
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
            what: keys.what.to_owned(),
            span: &self.node.span,
            path: self.path,
        };
        for (name, node) in entries {
            if !keys.keys.contains(&name.text.as_str()) {
                out.say(
                    unknown_key(&name.text, &name.span, keys).field(table.under(&name.text).told()),
                );
            } else {
                table.take(name, node, out);
                out.priced(keys.what, name, node);
            }
        }
        Some(table)
    }
    /// The mapping with whatever keys the user chose, each once.
    pub(super) fn names(&'a self, what: &str, out: &mut Findings) -> Vec<(&'a Name, Field<'a>)> {
        let mut table = Table {
            entries: Vec::new(),
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
                    path: Path {
                        key: &name.text,
                        above: Some(&self.path),
                    },
                },
            )
        };
        table.entries.into_iter().map(field).collect()
    }
    fn entries(&self, what: &str, out: &mut Findings) -> Option<&'a [(Name, Node)]> {
        match &self.node.value {
            Value::Map(entries) => Some(entries),
            Value::Empty => {
                out.say(self.empty());
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
            Value::List(all) => all
                .iter()
                .map(|node| Field {
                    node,
                    key: self.key,
                    path: self.path,
                })
                .collect(),
            Value::Empty => Vec::new(),
            _ => {
                out.say(self.wrong("a list").help("begin each entry with `- `"));
                Vec::new()
            }
        }
    }
    /// A list of texts; one text alone counts as a list of one.
    pub(super) fn texts(&self, out: &mut Findings) -> Vec<Text> {
        match &self.node.value {
            Value::Text(_) => self.text(out).into_iter().collect(),
            _ => self
                .list(out)
                .iter()
                .filter_map(|one| one.text(out))
                .collect(),
        }
    }
    /// A text; an unquoted one that seems to lose its end to a comment is warned of.
    pub(super) fn text(&self, out: &mut Findings) -> Option<Text> {
        match &self.node.value {
            Value::Text(text) if !text.trim().is_empty() => {
                self.lost_comment(text, out);
                Some(Text {
                    text: text.trim().to_owned(),
                    span: self.node.span.clone(),
                })
            }
            Value::Text(_) | Value::Empty => {
                out.say(self.empty());
                None
            }
            _ => {
                out.say(self.wrong("one text"));
                None
            }
        }
    }
    /// Warns where ` #` without a blank after it ends an unquoted text.
    fn lost_comment(&self, text: &str, out: &mut Findings) {
        if self
            .node
            .span
            .text()
            .starts_with(['"', '\'', '|', '>', '*'])
        {
            return;
        }
        if let Some(lost) = self.comment_after() {
            out.say(
                self.warning(format!("`{text} {lost}` reads as `{text}`"))
                    .found(format!("{text} {lost}"))
                    .help(format!(
                        "a # after a blank begins a comment: write \"{text} {lost}\" in quotes"
                    )),
            );
        }
    }
    /// What stands behind this value on its line after a # that no blank follows.
    fn comment_after(&self) -> Option<&'a str> {
        let span = &self.node.span;
        let rest = span.source.text.get(span.range.end..)?.lines().next()?;
        let comment = rest.trim_start_matches([' ', '\t']).trim_end();
        let close = comment
            .strip_prefix('#')
            .is_some_and(|c| !c.is_empty() && !c.starts_with([' ', '\t', '#']));
        (close && comment.len() < rest.len()).then_some(comment)
    }

    fn quantity<T>(
        &self,
        out: &mut Findings,
        read: impl FnOnce(&str) -> Result<T, ParseError>,
    ) -> Option<T> {
        let text = self.text(out)?;
        read(&text.text).map_err(|e| out.say(self.refused(e))).ok()
    }
    fn refused(&self, e: ParseError) -> Finding {
        let fault = self
            .fault(format!("{} cannot be {}", self.path.key, e.found))
            .found(e.found)
            .expected(e.expected);
        Finding {
            help: e.help,
            ..fault
        }
    }
    /// A length of either sign.
    pub(super) fn length(&self, units: Unit, out: &mut Findings) -> Option<Length> {
        self.quantity(out, |text| parse_length(text, units))
    }
    /// A length that is not under nought.
    pub(super) fn distance(&self, units: Unit, out: &mut Findings) -> Option<Length> {
        self.length(units, out)
            .filter(|l| self.holds(*l >= Length::ZERO, "nothing under nought", out))
    }
    /// A length over nought.
    pub(super) fn size(&self, units: Unit, out: &mut Findings) -> Option<Length> {
        self.length(units, out)
            .filter(|l| self.holds(*l > Length::ZERO, "a size over nought", out))
    }
    /// So many lengths, each read by `read`.
    pub(super) fn lengths<const N: usize>(
        &self,
        what: &str,
        out: &mut Findings,
        read: impl Fn(&Field<'a>, &mut Findings) -> Option<Length>,
    ) -> Option<[Length; N]> {
        if !matches!(&self.node.value, Value::List(all) if all.len() == N) {
            let fault = if matches!(self.node.value, Value::Empty) {
                self.empty()
            } else {
                self.wrong(what)
            };
            out.say(fault);
            return None;
        }
        let all: Vec<Option<Length>> = self.list(out).iter().map(|one| read(one, out)).collect();
        all.into_iter().collect::<Option<Vec<_>>>()?.try_into().ok()
    }
    /// A place: two lengths of either sign.
    pub(super) fn place(&self, units: Unit, out: &mut Findings) -> Option<[Length; 2]> {
        self.lengths("two lengths, such as [15, 500]", out, |one, out| {
            one.length(units, out)
        })
    }
    /// Two lengths over nought.
    pub(super) fn rectangle(&self, units: Unit, out: &mut Findings) -> Option<[Length; 2]> {
        self.lengths(
            "two lengths over nought, such as [500, 350]",
            out,
            |one, out| one.size(units, out),
        )
    }
    /// Width, depth and height: a list of three, or a text with x between them.
    pub(super) fn dims(&self, units: Unit, out: &mut Findings) -> Option<[Length; 3]> {
        if matches!(self.node.value, Value::Text(_)) {
            return self.quantity(out, |text| parse_dims(text, units));
        }
        let what = "width, depth and height, such as [160, 190, 130] or \"160 x 190 x 130 mm\"";
        self.lengths(what, out, |one, out| one.size(units, out))
    }
    /// A mass of nought or more.
    pub(super) fn mass(&self, units: Unit, out: &mut Findings) -> Option<Mass> {
        self.quantity(out, |text| parse_mass(text, units.into()))
    }
    /// A time.
    pub(super) fn time(&self, out: &mut Findings) -> Option<Time> {
        self.quantity(out, parse_time)
    }
    /// A share.
    pub(super) fn share(&self, out: &mut Findings) -> Option<Share> {
        self.quantity(out, parse_share)
    }
    /// How often.
    pub(super) fn uses(&self, out: &mut Findings) -> Option<Uses> {
        self.quantity(out, parse_uses)
    }
    /// A whole number from `least` to `most`.
    pub(super) fn count(&self, least: u32, most: u32, out: &mut Findings) -> Option<u32> {
        let text = self.text(out)?.text;
        let count = text
            .parse::<u32>()
            .ok()
            .filter(|n| (least..=most).contains(n));
        if count.is_none() {
            out.say(self.wrong(&format!("a whole number from {least} to {most}")));
        }
        count
    }
    /// `true`, `yes`, `false` or `no`.
    pub(super) fn truth(&self, out: &mut Findings) -> Option<bool> {
        self.choice(
            &[
                ("true", true),
                ("false", false),
                ("yes", true),
                ("no", false),
            ],
            out,
        )
    }
    /// One of a few words, whatever their case.
    pub(super) fn choice<T: Copy>(&self, words: &[(&str, T)], out: &mut Findings) -> Option<T> {
        let text = self.text(out)?;
        let known = words.iter().find(|(word, _)| same(word, &text.text));
        if known.is_none() {
            out.say(self.unknown(&text, words.iter().map(|(word, _)| *word)));
        }
        known.map(|(_, value)| *value)
    }
    /// A fault for a word that is none of those allowed here.
    pub(super) fn unknown<'w>(
        &self,
        text: &Text,
        words: impl Iterator<Item = &'w str> + Clone,
    ) -> Finding {
        unknown_word(self.path.key, text, words).field(self.path.told())
    }

    fn holds(&self, good: bool, expected: &str, out: &mut Findings) -> bool {
        if !good {
            out.say(self.wrong(expected));
        }
        good
    }
    fn empty(&self) -> Finding {
        let key = if self.path.key.is_empty() {
            "the file"
        } else {
            self.path.key
        };
        let fault = Finding::fault(format!("{key} is empty"))
            .at(self.key)
            .field(self.path.told());
        let rest = self
            .key
            .source
            .text
            .get(self.key.range.end..)
            .and_then(|t| t.lines().next())
            .unwrap_or("");
        match rest.trim_start_matches([':', ' ']) {
            lost if lost.starts_with('#') && !lost.starts_with("# ") => {
                fault.help("a # after a blank begins a comment: put the text in quotes")
            }
            _ => fault.help("write its value after the colon"),
        }
    }
    /// A fault for a value of the wrong kind.
    pub(super) fn wrong(&self, expected: &str) -> Finding {
        let found = match &self.node.value {
            Value::Empty => "nothing".to_owned(),
            Value::Text(text) => text.clone(),
            Value::List(all) => format!("a list of {}", all.len()),
            Value::Map(_) => "a mapping".to_owned(),
        };
        let key = if self.path.key.is_empty() {
            "the file"
        } else {
            self.path.key
        };
        self.fault(format!("{key} cannot be {found}"))
            .found(found)
            .expected(expected)
    }
}

impl<'a> Table<'a> {
    fn under<'k>(&'k self, key: &'k str) -> Path<'k> {
        Path {
            key,
            above: Some(&self.path),
        }
    }
    fn take(&mut self, name: &'a Name, node: &'a Node, out: &mut Findings) {
        let first = self
            .entries
            .iter()
            .find(|(other, _)| other.text == name.text);
        if let Some((first, _)) = first {
            let text = format!("{} is given twice in one place", name.text);
            let fault = Finding::fault(text)
                .at(&name.span)
                .at(&first.span)
                .found(name.text.clone());
            out.say(
                fault
                    .field(self.under(&name.text).told())
                    .help("remove one of the two"),
            );
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
            None => {
                let fault = Finding::fault(format!("{} has no {key}", self.what)).at(self.span);
                out.say(
                    fault
                        .field(self.under(key).told())
                        .expected(key)
                        .help(format!("add `{key}:`")),
                );
                None
            }
        }
    }
    /// The value of a key, empty or not.
    pub(super) fn raw(&'a self, key: &'a str) -> Option<Field<'a>> {
        let (name, node) = self.entries.iter().find(|(name, _)| name.text == key)?;
        Some(Field {
            node,
            key: &name.span,
            path: self.under(key),
        })
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
    word.split_whitespace()
        .collect::<Vec<_>>()
        .join(" ")
        .to_lowercase()
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
    let near = nearest(key, keys.keys.iter().copied());
    let fault = Finding::fault(format!("{} has no key `{key}`", keys.what))
        .at(span)
        .found(key);
    let fault = Finding {
        nearest: near.map(str::to_owned),
        ..fault.expected(keys.keys.join(", "))
    };
    let kin = super::keys::ALL
        .iter()
        .find(|other| other.keys.contains(&key));
    match kin {
        Some(kin) if near.is_none() => fault.help(format!(
            "`{key}` is a key of {}: check how far the line is indented",
            kin.what
        )),
        _ => fault,
    }
}
