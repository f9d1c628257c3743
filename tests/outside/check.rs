//! What a check against the outside is, and how the suite counts and prints them.

use std::collections::BTreeMap;
use std::fmt::Write as _;

/// How the expected value was come by.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum Status {
    /// Read in the source named.
    Read,
    /// Worked out from data or mechanics that were read, in the stated way, by other means than the program's.
    Computed,
    /// Recalled: nothing was read.
    Memory,
    /// A rule of thumb without an authority.
    Practice,
}

impl Status {
    pub const ALL: [Status; 4] = [Status::Read, Status::Computed, Status::Memory, Status::Practice];

    pub fn name(self) -> &'static str {
        match self {
            Status::Read => "read",
            Status::Computed => "computed",
            Status::Memory => "from memory",
            Status::Practice => "common practice",
        }
    }
}

/// One value of the program against one from outside; a table typed in from its source is one check.
pub struct Check {
    /// The formula or table of the program that is checked.
    pub formula: &'static str,
    pub what: String,
    pub source: &'static str,
    pub status: Status,
    /// What differs, where something does.
    pub fault: Option<String>,
}

/// The checks of one file.
pub struct Topic {
    pub name: &'static str,
    pub checks: Vec<Check>,
}

/// Checks of one formula against one source, on their way into a topic.
pub struct Against<'a> {
    topic: &'a mut Topic,
    formula: &'static str,
    source: &'static str,
    status: Status,
}

impl Topic {
    pub fn new(name: &'static str) -> Topic {
        Topic { name, checks: Vec::new() }
    }

    /// Begins checks of a formula against a source.
    pub fn against(
        &mut self,
        formula: &'static str,
        status: Status,
        source: &'static str,
    ) -> Against<'_> {
        Against { topic: self, formula, source, status }
    }
}

impl Against<'_> {
    /// One number, within an absolute tolerance.
    pub fn near(
        &mut self,
        what: impl Into<String>,
        found: f64,
        expected: f64,
        tolerance: f64,
    ) -> &mut Self {
        self.add(what.into(), differs(found, expected, tolerance))
    }

    /// Something that is so or not.
    pub fn holds(&mut self, what: impl Into<String>, so: bool) -> &mut Self {
        let what = what.into();
        let fault = (!so).then(|| "does not hold".to_owned());
        self.add(what, fault)
    }

    /// Something of which there must be none, whatever was looked at.
    pub fn none(&mut self, what: impl Into<String>, found: &[String]) -> &mut Self {
        let fault = (!found.is_empty()).then(|| format!("differs for {}", found.join("; ")));
        self.add(what.into(), fault)
    }

    /// A table, a row being what is looked up, what is found, what the source has, and the tolerance: one check.
    pub fn table<L: std::fmt::Display>(
        &mut self,
        what: impl Into<String>,
        rows: impl IntoIterator<Item = (L, f64, f64, f64)>,
    ) -> &mut Self {
        let mut count = 0;
        let mut faults = Vec::new();
        for (row, found, expected, tolerance) in rows {
            count += 1;
            faults.extend(differs(found, expected, tolerance).map(|f| format!("{row}: {f}")));
        }
        assert!(count > 0, "a table without rows checks nothing");
        let fault = (!faults.is_empty()).then(|| faults.join("; "));
        self.add(format!("{} ({count} rows)", what.into()), fault)
    }

    fn add(&mut self, what: String, fault: Option<String>) -> &mut Self {
        let Against { formula, source, status, .. } = *self;
        self.topic.checks.push(Check { formula, what, source, status, fault });
        self
    }
}

fn differs(found: f64, expected: f64, tolerance: f64) -> Option<String> {
    let near = (found - expected).abs() <= tolerance;
    (!near).then(|| format!("{found} for {expected} within {tolerance}"))
}

/// How many checks there are of each status.
pub fn counts(checks: &[Check]) -> [usize; 4] {
    Status::ALL.map(|s| checks.iter().filter(|c| c.status == s).count())
}

/// The whole suite as a table: a row a topic, and the sums.
pub fn summary(topics: &[Topic]) -> String {
    let all: usize = topics.iter().map(|t| t.checks.len()).sum();
    let mut out = format!("{all} outside checks\n\n");
    let names = Status::ALL.map(Status::name);
    let _ = writeln!(out, "| topic | {} | all |", names.join(" | "));
    let _ = writeln!(out, "|---|{}", "---|".repeat(names.len() + 1));
    let mut sums = [0; 4];
    for topic in topics {
        let counts = counts(&topic.checks);
        (0..4).for_each(|k| sums[k] += counts[k]);
        let _ = writeln!(out, "| {} | {} |", topic.name, row(&counts, topic.checks.len()));
    }
    let _ = write!(out, "| all | {} |", row(&sums, all));
    out
}

fn row(counts: &[usize], all: usize) -> String {
    let each: Vec<String> = counts.iter().chain([&all]).map(usize::to_string).collect();
    each.join(" | ")
}

/// How many checks each formula has.
pub fn by_formula(topics: &[Topic]) -> BTreeMap<&'static str, usize> {
    let mut count = BTreeMap::new();
    for check in topics.iter().flat_map(|t| &t.checks) {
        *count.entry(check.formula).or_insert(0) += 1;
    }
    count
}
