//! Where a published value comes from, and how it was come by.

/// How a value was come by.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Mark {
    /// Stated in the user's own files.
    Stated,
    /// Read in the source named.
    Read,
    /// Worked out from data or mechanics that were read.
    Computed,
    /// Recalled: nothing was read.
    Memory,
    /// A rule of thumb without an authority.
    Practice,
    /// Chosen for this program.
    Ours,
}

impl Mark {
    /// The words for it in reports.
    pub const fn name(self) -> &'static str {
        match self {
            Mark::Stated => "stated in the files",
            Mark::Read => "read",
            Mark::Computed => "computed",
            Mark::Memory => "from memory",
            Mark::Practice => "common practice, no source",
            Mark::Ours => "design choice, ours",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Mark::*;

    #[test]
    fn every_mark_has_words_of_its_own() {
        let all = [Stated, Read, Computed, Memory, Practice, Ours];
        let mut names = all.map(|mark| mark.name()).to_vec();
        assert!(names.iter().all(|name| !name.is_empty()));
        names.sort_unstable();
        names.dedup();
        assert_eq!(names.len(), all.len());
    }
}
