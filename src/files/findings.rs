//! What is found while all files of a workspace are read.

use super::keys::NOT_PRICED;
use super::tree::Name;
use crate::finding::{Finding, Source};
use std::sync::Arc;

/// Findings in the making.
#[derive(Default)]
pub(super) struct Findings {
    /// Each with the file that was being read.
    all: Vec<(usize, Finding)>,
    /// The files in the order in which they were begun.
    files: Vec<Option<Arc<Source>>>,
    /// Which kinds of key that are not priced have been told.
    told: [bool; NOT_PRICED.len()],
    /// Whether some file could not be read from the disk.
    pub(super) unreadable: bool,
}

impl Findings {
    /// Another file begins; what follows without a place belongs to it.
    pub(super) fn begin(&mut self, source: Option<&Arc<Source>>) {
        self.files.push(source.cloned());
    }
    /// Notes a finding.
    pub(super) fn say(&mut self, finding: Finding) {
        let now = self.files.len();
        self.all.push((now, finding));
    }
    /// How many have been noted.
    pub(super) fn len(&self) -> usize {
        self.all.len()
    }
    /// Whether a fault has been noted.
    pub(super) fn any_fault(&self) -> bool {
        self.all.iter().any(|(_, f)| f.is_fault())
    }
    /// Notes once for each kind of key that it is not priced yet.
    pub(super) fn priced(&mut self, what: &str, name: &Name) {
        let Some(kind) = NOT_PRICED.iter().position(|(w, key, _)| *w == what && *key == name.text)
        else {
            return;
        };
        if !std::mem::replace(&mut self.told[kind], true) {
            let note = format!("{} is read but not priced yet", NOT_PRICED[kind].2);
            self.say(Finding::note(note).at(&name.span).field(name.text.clone()));
        }
    }
    /// All findings, file by file and in each by place.
    pub(super) fn sorted(mut self) -> Vec<Finding> {
        let files = std::mem::take(&mut self.files);
        let rank = |now: usize, finding: &Finding| match finding.at.first() {
            Some(span) => {
                let file = files
                    .iter()
                    .position(|f| f.as_ref().is_some_and(|s| Arc::ptr_eq(s, &span.source)));
                (file.map_or(now, |f| f + 1), span.range.start)
            }
            None => (now, 0),
        };
        self.all.sort_by_key(|(now, finding)| rank(*now, finding));
        self.all.into_iter().map(|(_, finding)| finding).collect()
    }
}
