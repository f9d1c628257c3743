//! The list of all checks in the contributor's guide: it is printed from the checks themselves.

use crate::check::{Topic, summary};
use std::fmt::Write as _;
use std::path::Path;

const GUIDE: &str = "DEVELOPERS.md";
const BEGIN: &str = "<!-- outside: printed by tests/outside -->\n";
const END: &str = "<!-- end of outside -->\n";

/// The counts, then topic by topic each check with its source.
fn list(topics: &[Topic]) -> String {
    let mut out = summary(topics);
    for topic in topics {
        let _ = write!(
            out,
            "\n\n**{}**\n\n| of | what | status | source |\n|---|---|---|---|",
            topic.name
        );
        for c in &topic.checks {
            let row =
                [c.formula, &c.what, c.status.name(), c.source].map(|t| t.replace('|', "\\|"));
            let _ = write!(out, "\n| {} |", row.join(" | "));
        }
    }
    out
}

/// Fails where the guide lists other checks than there are; mends it instead where `TOOLBERTH_WRITE=1` asks for it.
pub fn keeps_up(topics: &[Topic]) {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(GUIDE);
    let stale = std::fs::read_to_string(&path).expect("the guide can be read");
    let (before, rest) = stale.split_once(BEGIN).expect("the guide has the block");
    let (_, after) = rest.split_once(END).expect("the block ends");
    let fresh = format!("{before}{BEGIN}\n{}\n\n{END}{after}", list(topics));
    if std::env::var_os("TOOLBERTH_WRITE").is_some_and(|v| v == "1") {
        std::fs::write(&path, fresh).expect("the guide can be written");
    } else {
        assert!(stale == fresh, "the list of checks is stale (TOOLBERTH_WRITE=1 mends)");
    }
}
