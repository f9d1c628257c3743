//! One fault, one shape: what is wrong, where, what was found, what was expected and what helps.
//!
//! The same type serves a slip in a file, an impossible cart, an item that can never fit and a bad flag.

mod nearest;

pub use nearest::nearest;

use std::ops::Range;
use std::sync::Arc;

/// A text that findings point into: a file as it was read, or a command line.
#[derive(PartialEq, Eq, Debug)]
pub struct Source {
    /// The name shown to the user, as they would type it.
    pub name: String,
    /// The text exactly as read, byte order mark included.
    pub text: String,
}

/// A place in a source.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Span {
    /// The text that the range points into.
    pub source: Arc<Source>,
    /// Byte offsets into the text.
    pub range: Range<usize>,
}

impl Span {
    /// A span of a source.
    pub fn new(source: &Arc<Source>, range: Range<usize>) -> Span {
        Span { source: Arc::clone(source), range }
    }
    /// A span that points nowhere: for things that no file says.
    pub fn none() -> Span {
        Span { source: Arc::new(Source { name: String::new(), text: String::new() }), range: 0..0 }
    }
    /// Whether it points nowhere.
    pub fn is_none(&self) -> bool {
        self.source.name.is_empty()
    }
    /// Line of its start, from 1.
    pub fn line(&self) -> usize {
        self.before().matches('\n').count() + 1
    }
    /// Column of its start in characters, from 1.
    pub fn column(&self) -> usize {
        let line = self.before().rsplit('\n').next().unwrap_or("");
        line.trim_start_matches('\u{feff}').chars().count() + 1
    }
    /// The text it covers.
    pub fn text(&self) -> &str {
        self.source.text.get(self.range.clone()).unwrap_or("")
    }
    fn before(&self) -> &str {
        self.source.text.get(..self.range.start).unwrap_or("")
    }
}

/// How grave a finding is.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum Severity {
    /// The input cannot be used as it is.
    Fault,
    /// It can be used, but something was probably not meant so.
    Warning,
    /// Worth knowing.
    Note,
}

/// Something that the user should know about their input.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Finding {
    /// How grave it is.
    pub severity: Severity,
    /// What is wrong, in one sentence without a full stop.
    pub text: String,
    /// Where: the first place is the one to mend, others explain it.
    pub at: Vec<Span>,
    /// The field it is about, as a path such as `faces.front.bays.depth`.
    pub field: Option<String>,
    /// What stood there.
    pub found: Option<String>,
    /// What would have been right.
    pub expected: Option<String>,
    /// The nearest right name.
    pub nearest: Option<String>,
    /// What to do about it.
    pub help: Option<String>,
}

impl Finding {
    /// A fault without a place yet.
    pub fn fault(text: impl Into<String>) -> Finding {
        Finding::new(Severity::Fault, text)
    }
    /// A warning without a place yet.
    pub fn warning(text: impl Into<String>) -> Finding {
        Finding::new(Severity::Warning, text)
    }
    /// A note without a place yet.
    pub fn note(text: impl Into<String>) -> Finding {
        Finding::new(Severity::Note, text)
    }
    fn new(severity: Severity, text: impl Into<String>) -> Finding {
        Finding {
            severity,
            text: text.into(),
            at: Vec::new(),
            field: None,
            found: None,
            expected: None,
            nearest: None,
            help: None,
        }
    }
    /// The same with a place.
    pub fn at(mut self, span: &Span) -> Finding {
        if !span.is_none() {
            self.at.push(span.clone());
        }
        self
    }
    /// The same with the field it is about.
    pub fn field(mut self, field: impl Into<String>) -> Finding {
        self.field = Some(field.into());
        self
    }
    /// The same with what stood there.
    pub fn found(mut self, found: impl Into<String>) -> Finding {
        self.found = Some(found.into());
        self
    }
    /// The same with what would have been right.
    pub fn expected(mut self, expected: impl Into<String>) -> Finding {
        self.expected = Some(expected.into());
        self
    }
    /// The same with the nearest of the names that are right there, if one is near.
    pub fn near<'a>(mut self, word: &str, names: impl IntoIterator<Item = &'a str>) -> Finding {
        self.nearest = nearest(word, names).map(str::to_owned);
        self
    }
    /// The same with what to do about it.
    pub fn help(mut self, help: impl Into<String>) -> Finding {
        self.help = Some(help.into());
        self
    }
    /// Whether it makes the input unusable.
    pub fn is_fault(&self) -> bool {
        self.severity == Severity::Fault
    }
}
