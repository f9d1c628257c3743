//! What is wrong with the input.

use super::part::text;
use crate::finding::{Finding, Severity, Span};
use serde::Serialize;

/// What is wrong with the input as one document, ending with a line break.
pub fn findings(all: &[Finding]) -> String {
    text(&FaultDoc { status: verdict(all), findings: all.iter().map(FindingRow::of).collect() })
}

#[derive(Serialize)]
struct FaultDoc<'a> {
    status: &'static str,
    findings: Vec<FindingRow<'a>>,
}

#[derive(Serialize)]
pub(super) struct FindingRow<'a> {
    severity: &'static str,
    text: &'a str,
    file: Option<&'a str>,
    line: Option<usize>,
    column: Option<usize>,
    field: Option<&'a str>,
    found: Option<&'a str>,
    expected: Option<&'a str>,
    nearest: Option<&'a str>,
    help: Option<&'a str>,
}

impl<'a> FindingRow<'a> {
    pub(super) fn of(finding: &'a Finding) -> FindingRow<'a> {
        let at = finding.at.first();
        FindingRow {
            severity: severity(finding.severity),
            text: &finding.text,
            file: at.map(|span| span.source.name.as_str()),
            line: at.map(Span::line),
            column: at.map(Span::column),
            field: finding.field.as_deref(),
            found: finding.found.as_deref(),
            expected: finding.expected.as_deref(),
            nearest: finding.nearest.as_deref(),
            help: finding.help.as_deref(),
        }
    }
}

/// `fault` where the input cannot be used, else `good`.
fn verdict(all: &[Finding]) -> &'static str {
    if all.iter().any(Finding::is_fault) { "fault" } else { "good" }
}

/// The word for how grave a finding is.
const fn severity(severity: Severity) -> &'static str {
    match severity {
        Severity::Fault => "fault",
        Severity::Warning => "warning",
        Severity::Note => "note",
    }
}
