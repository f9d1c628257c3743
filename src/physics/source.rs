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
