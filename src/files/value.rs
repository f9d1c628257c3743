//! Single values: texts, choices and quantities.

use super::decode::{Field, Text, same, unknown_word};
use super::findings::Findings;
use super::tree::Value;
use crate::finding::{Finding, Span};
use crate::units::{Length, Mass, ParseError, Share, Time, Unit, Uses};
use crate::units::{parse_dims, parse_length, parse_mass, parse_share, parse_time, parse_uses};

impl<'a> Field<'a> {
    /// A list of texts; one text alone counts as a list of one.
    pub(super) fn texts(&self, out: &mut Findings) -> Vec<Text> {
        match &self.node.value {
            Value::Text(_) => self.text(out).into_iter().collect(),
            _ => self.list(out).iter().filter_map(|one| one.text(out)).collect(),
        }
    }
    /// A text; an unquoted one that seems to lose its end to a comment is warned of.
    pub(super) fn text(&self, out: &mut Findings) -> Option<Text> {
        match &self.node.value {
            Value::Text(text) if !text.trim().is_empty() => {
                self.lost_comment(text, out);
                Some(Text { text: text.trim().to_owned(), span: self.node.span.clone() })
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
        if self.node.span.text().starts_with(['"', '\'', '|', '>', '*']) {
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
        Finding { help: e.help, ..fault }
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
        self.length(units, out).filter(|l| self.holds(*l > Length::ZERO, "a size over nought", out))
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
        self.lengths("two lengths, such as [15, 500]", out, |one, out| one.length(units, out))
    }
    /// Two lengths over nought.
    pub(super) fn rectangle(&self, units: Unit, out: &mut Findings) -> Option<[Length; 2]> {
        self.lengths("two lengths over nought, such as [500, 350]", out, |one, out| {
            one.size(units, out)
        })
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
        let count = text.parse::<u32>().ok().filter(|n| (least..=most).contains(n));
        if count.is_none() {
            out.say(self.wrong(&format!("a whole number from {least} to {most}")));
        }
        count
    }
    /// A number over nought, up to `most`.
    pub(super) fn number(&self, most: u32, out: &mut Findings) -> Option<f64> {
        let text = self.text(out)?.text;
        let number = text.parse::<f64>().ok().filter(|n| *n > 0.0 && *n <= f64::from(most));
        if number.is_none() {
            out.say(self.wrong(&format!("a number over 0 and up to {most}")));
        }
        number
    }
    /// `true`, `yes`, `false` or `no`.
    pub(super) fn truth(&self, out: &mut Findings) -> Option<bool> {
        self.choice(&[("true", true), ("false", false), ("yes", true), ("no", false)], out)
    }
    /// One of a few words, whatever their case.
    pub(super) fn choice<T: Copy>(&self, words: &[(&str, T)], out: &mut Findings) -> Option<T> {
        let text = self.text(out)?;
        let known = words.iter().find(|(word, _)| same(word, &text.text));
        if known.is_none() {
            let names = words.iter().map(|(word, _)| *word);
            let listed: Vec<&str> = names.clone().collect();
            out.say(self.wrong(&listed.join(", ")).near(&text.text, names));
        }
        known.map(|(_, value)| *value)
    }
    /// A fault for one of the words in it that names no `what`.
    pub(super) fn unknown<'w>(
        &self,
        what: &str,
        text: &Text,
        words: impl Iterator<Item = &'w str> + Clone,
    ) -> Finding {
        unknown_word(what, text, words).field(self.path.told())
    }
    fn holds(&self, good: bool, expected: &str, out: &mut Findings) -> bool {
        if !good {
            out.say(self.wrong(expected));
        }
        good
    }
    pub(super) fn empty(&self) -> Finding {
        if self.path.key.is_empty() {
            let start = Span::new(&self.key.source, 0..0);
            return Finding::fault("the file is empty")
                .at(&start)
                .help("write its keys, one a line: `key: value`");
        }
        let fault = Finding::fault(format!("{} is empty", self.path.key))
            .at(self.key)
            .field(self.path.told());
        let rest = self.key.source.text.get(self.key.range.end..).and_then(|t| t.lines().next());
        let lost = rest.unwrap_or("").trim_start_matches([':', ' ']);
        fault.help(if lost.starts_with('#') && !lost.starts_with("# ") {
            "a # after a blank begins a comment: put the text in quotes"
        } else {
            "write its value after the colon"
        })
    }
    /// A fault for a value of the wrong kind.
    pub(super) fn wrong(&self, expected: &str) -> Finding {
        let found = match &self.node.value {
            Value::Empty => "nothing".to_owned(),
            Value::Text(text) => text.clone(),
            Value::List(all) => format!("a list of {}", all.len()),
            Value::Map(_) => "a mapping".to_owned(),
        };
        let key = if self.path.key.is_empty() { "the file" } else { self.path.key };
        self.fault(format!("{key} cannot be {found}")).found(found).expected(expected)
    }
}
