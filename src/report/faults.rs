//! What is wrong with the input, in words: where, what stood there, what would have been right and what helps.

use std::ops::Range;
use std::sync::Arc;

use annotate_snippets::renderer::DecorStyle;
use annotate_snippets::{Annotation, AnnotationKind, Group, Level, Renderer, Snippet};

use super::terminal::{Colour, Look};
use crate::finding::{Finding, Severity, Source, Span};

/// The mark that some editors put before the first letter of a file.
const BYTE_ORDER_MARK: char = '\u{feff}';

/// All findings, each with the place it points to, and a closing line that counts them; nothing where there are none.
pub fn findings(all: &[Finding], look: &Look) -> String {
    if all.is_empty() {
        return String::new();
    }
    let renderer = renderer(look);
    let told: Vec<String> = all.iter().map(|finding| renderer.render(&[group(finding)])).collect();
    format!("{}\n\n{}\n", told.join("\n\n"), counts(all))
}

fn renderer(look: &Look) -> Renderer {
    let renderer =
        if look.colour != Colour::Plain { Renderer::styled() } else { Renderer::plain() };
    let decor = if look.ascii { DecorStyle::Ascii } else { DecorStyle::Unicode };
    renderer.term_width(look.width).decor_style(decor)
}

fn group(finding: &Finding) -> Group<'_> {
    let title = level(finding.severity).primary_title(finding.text.as_str());
    let group = Group::with_title(title).elements(snippets(finding));
    match finding.at.first().map(place) {
        Some(None) => group.element(Level::NOTE.with_name("at").message(outside(&finding.at[0]))),
        _ => group,
    }
    .elements(messages(finding))
}

fn level(severity: Severity) -> Level<'static> {
    match severity {
        Severity::Fault => Level::ERROR.with_name("fault"),
        Severity::Warning => Level::WARNING,
        Severity::Note => Level::NOTE,
    }
}

/// One piece of each text that the finding points into, the text of its first place first.
fn snippets(finding: &Finding) -> Vec<Snippet<'_, Annotation<'_>>> {
    let mut texts: Vec<&Arc<Source>> = Vec::new();
    for span in finding.at.iter().filter(|span| place(span).is_some()) {
        if !texts.contains(&&span.source) {
            texts.push(&span.source);
        }
    }
    texts.into_iter().map(|source| snippet(finding, source)).collect()
}

fn snippet<'a>(finding: &'a Finding, source: &'a Arc<Source>) -> Snippet<'a, Annotation<'a>> {
    let marks = finding.at.iter().enumerate().filter(|(_, span)| span.source == *source);
    let marks = marks.filter_map(|(number, span)| {
        let range = place(span)?;
        let label = finding.found.as_ref().map(|found| format!("found {found}"));
        Some(match number {
            0 => AnnotationKind::Primary.span(range).label(label),
            _ => AnnotationKind::Context.span(range),
        })
    });
    let text = source.text.trim_start_matches(BYTE_ORDER_MARK);
    Snippet::source(text).path(source.name.as_str()).annotations(marks)
}

/// The bytes of a span in its text without a byte order mark; nothing where the span does not fit its text.
fn place(span: &Span) -> Option<Range<usize>> {
    let whole = &span.source.text;
    let skipped = whole.len() - whole.trim_start_matches(BYTE_ORDER_MARK).len();
    whole.get(span.range.clone())?;
    Some(span.range.start.saturating_sub(skipped)..span.range.end.saturating_sub(skipped))
}

/// A place that cannot be shown: its file, line and column.
fn outside(span: &Span) -> String {
    format!("{}:{}:{}", span.source.name, span.line(), span.column())
}

/// What the picture does not say: the field where there is no picture, what was expected, the nearest name, the help.
fn messages(finding: &Finding) -> Vec<annotate_snippets::Message<'_>> {
    let bare = finding.at.is_empty();
    let named =
        |name: &'static str, text: &'_ str| Level::NOTE.with_name(name).message(text.to_owned());
    let field = finding.field.as_ref().filter(|_| bare).map(|field| named("field", field));
    let found = finding.found.as_ref().filter(|_| bare).map(|found| named("found", found));
    let expected = finding.expected.as_ref().map(|expected| named("expected", expected));
    let nearest =
        finding.nearest.as_ref().map(|name| Level::HELP.message(format!("did you mean `{name}`?")));
    let help = finding.help.as_ref().map(|help| Level::HELP.message(help.as_str()));
    [field, found, expected, nearest, help].into_iter().flatten().collect()
}

/// How many there are of each: `3 faults, 1 warning`.
fn counts(all: &[Finding]) -> String {
    let kinds =
        [(Severity::Fault, "fault"), (Severity::Warning, "warning"), (Severity::Note, "note")];
    let told = kinds.iter().filter_map(|&(severity, name)| {
        let count = all.iter().filter(|finding| finding.severity == severity).count();
        (count > 0).then(|| format!("{count} {name}{}", if count == 1 { "" } else { "s" }))
    });
    told.collect::<Vec<_>>().join(", ")
}

#[cfg(test)]
mod tests {
    use super::*;

    const TEXT: &str = "\u{feff}items:\n  - name: sägeblatt\n    wieght: 2 kg\n    size: 20 x 30\n";

    fn span(source: &Arc<Source>, word: &str) -> Span {
        let start = source.text.find(word).expect(word);
        Span::new(source, start..start + word.len())
    }

    fn source() -> Arc<Source> {
        Arc::new(Source { name: "inventory.yaml".into(), text: TEXT.into() })
    }

    #[test]
    fn the_offending_text_is_underlined() {
        let source = source();
        let key = Finding::fault("unknown key `wieght`")
            .at(&span(&source, "wieght"))
            .at(&span(&source, "sägeblatt"))
            .found("wieght")
            .expected("a key of an item")
            .near("wieght", ["weight", "name"])
            .help("see `toolberth schema inventory`");
        let told = findings(&[key], &Look { ascii: true, ..Look::default() });
        println!("{told}");
        assert!(told.contains("inventory.yaml:3:5"), "{told}");
        assert!(told.contains("    ^^^^^^ found wieght"), "{told}");
        assert!(told.contains("did you mean `weight`?"), "{told}");
        assert!(told.ends_with("\n\n1 fault\n"), "{told}");
    }

    #[test]
    fn all_are_told_and_counted() {
        let source = source();
        let size = Finding::warning("a size of two figures")
            .at(&span(&source, "20 x 30"))
            .expected("three");
        let bare = Finding::fault("no casters").field("casters").help("say where they are");
        let beyond = Finding::fault("cut off").at(&Span::new(&source, 900..901));
        let told = findings(&[bare, size, beyond, Finding::note("nothing else")], &Look::default());
        println!("{told}");
        for part in
            ["fault: no casters", "inventory.yaml:4:11", "20 x 30", "cut off", "note: nothing else"]
        {
            assert!(told.contains(part), "{part} in {told}");
        }
        assert!(told.ends_with("\n\n2 faults, 1 warning, 1 note\n"), "{told}");
        assert!(!told.contains('\x1b'));
        assert_eq!(findings(&[], &Look::default()), "");
    }
}
