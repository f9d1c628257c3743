//! The page that a report is written on: headings, wrapped paragraphs, lists and tables.

use super::table::{LineKind, Table};
use super::wrap::{columns, wrap};
use super::{Colour, Look};

/// What a piece of text is, and so how it is coloured.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Ink {
    /// A heading or the name of a thing.
    Bold,
    /// What stands back.
    Faint,
    /// What must not stay so.
    Alarm,
    /// What to mind.
    Mind,
    /// A number in a drawing.
    Number,
    /// The number of what is dearest.
    Dearest,
}

impl Ink {
    /// The terminal's code that begins it.
    const fn code(self) -> &'static str {
        match self {
            Ink::Bold => "\x1b[1m",
            Ink::Faint => "\x1b[2m",
            Ink::Alarm => "\x1b[1;31m",
            Ink::Mind => "\x1b[33m",
            Ink::Number => "\x1b[1;36m",
            Ink::Dearest => "\x1b[1;7m",
        }
    }
}

/// The report as far as it is written.
pub struct Page {
    /// How it looks.
    pub look: Look,
    text: String,
}

impl Page {
    /// An empty page.
    pub fn new(look: Look) -> Page {
        Page { look, text: String::new() }
    }
    /// What is written, ending with one line break.
    pub fn finish(self) -> String {
        self.text.trim_end().to_owned() + "\n"
    }
    /// A text in colour, where the page has colour.
    pub fn ink(&self, ink: Ink, text: &str) -> String {
        if self.look.colour != Colour::Plain && !text.is_empty() {
            format!("{}{text}\x1b[0m", ink.code())
        } else {
            text.to_owned()
        }
    }
    /// One of two texts: with any character, or within ASCII.
    pub fn either(&self, any: &'static str, ascii: &'static str) -> &'static str {
        if self.look.ascii { ascii } else { any }
    }
    /// What stands between two parts of a name: a middle dot, or a slash within ASCII.
    pub fn dot(&self) -> &'static str {
        self.either(" · ", " / ")
    }
    /// An empty line, unless there is one.
    pub fn gap(&mut self) {
        if !self.text.is_empty() && !self.text.ends_with("\n\n") {
            self.text.push('\n');
        }
    }
    /// One finished line.
    pub fn line(&mut self, text: &str) {
        let text = text.trim_end();
        match self.look.ascii {
            true => self.text.extend(text.chars().map(plain)),
            false => self.text.push_str(text),
        }
        self.text.push('\n');
    }
    /// A heading with room above it.
    pub fn heading(&mut self, ink: Ink, text: &str) {
        self.gap();
        self.title(ink, text);
    }
    /// A heading of a lesser kind, without room above it.
    pub fn title(&mut self, ink: Ink, text: &str) {
        for line in wrap(text, self.look.width) {
            let line = self.ink(ink, &line);
            self.line(&line);
        }
    }
    /// A paragraph.
    pub fn paragraph(&mut self, text: &str) {
        self.hanging("", text, None);
    }
    /// A point of a list: its mark, then the text hanging beside it.
    pub fn point(&mut self, mark: &str, text: &str) {
        self.hanging(&format!("{mark} "), text, None);
    }
    /// A point of a list that begins with a name in colour.
    pub fn named(&mut self, ink: Ink, name: &str, text: &str) {
        self.hanging(self.either("• ", "* "), &format!("{name}: {text}"), Some((ink, name)));
    }
    /// A table.
    pub fn table(&mut self, table: &Table) {
        for (kind, line) in table.lines(self.look.width) {
            let line = match kind {
                LineKind::Head => self.ink(Ink::Faint, &line),
                LineKind::Group => self.ink(Ink::Bold, &line),
                LineKind::Body => line,
            };
            self.line(&line);
        }
    }

    fn hanging(&mut self, mark: &str, text: &str, name: Option<(Ink, &str)>) {
        let indent = columns(mark);
        let lines = wrap(text, self.look.width.saturating_sub(indent).max(20));
        for (number, line) in lines.iter().enumerate() {
            let rest = name.filter(|_| number == 0).and_then(|(ink, name)| {
                line.strip_prefix(name).map(|rest| self.ink(ink, name) + rest)
            });
            let line = rest.unwrap_or_else(|| line.clone());
            let mark = if number == 0 { mark.to_owned() } else { " ".repeat(indent) };
            self.line(&(mark + &line));
        }
    }
}

/// The nearest sign within ASCII for those that messages use; what users write stays as it is.
fn plain(sign: char) -> char {
    match sign {
        '×' => 'x',
        '–' | '−' => '-',
        '·' => '/',
        '’' => '\'',
        other => other,
    }
}
