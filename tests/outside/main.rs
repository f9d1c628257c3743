//! Checks against values from outside: published tables, textbook mechanics, measured people.
//!
//! Each value carries its source and how it was come by. `cargo test --test outside -- --nocapture` prints the counts.

mod access;
mod beam_elements;
mod boards;
mod bodies;
mod chance;
mod check;
mod fasteners;
mod hazards;
mod lifting;
mod motions;
mod page;
mod rolling;
mod solver;
mod statics;

use check::{Status, Topic, by_formula, summary};

/// Every topic, one file each.
fn topics() -> Vec<Topic> {
    // One line each.
    vec![
        boards::checks(), //
        fasteners::checks(),
        hazards::checks(), //
        solver::checks(),
        rolling::checks(),
        statics::checks(),
        lifting::checks(),
        bodies::checks(),
        motions::checks(),
        access::checks(),
    ]
}

#[test]
fn every_check_from_outside_holds() {
    let topics = topics();
    println!("{}", summary(&topics));
    let faults: Vec<String> = topics
        .iter()
        .flat_map(|t| t.checks.iter().map(move |c| (t, c)))
        .filter_map(|(t, c)| {
            c.fault
                .as_ref()
                .map(|f| format!("{}: {}, {}: {f} ({})", t.name, c.formula, c.what, c.source))
        })
        .collect();
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

/// Two values can agree by chance; three hardly do.
#[test]
fn no_formula_is_without_three_checks() {
    let topics = topics();
    let few: Vec<_> = by_formula(&topics).into_iter().filter(|(_, n)| *n < 3).collect();
    assert!(few.is_empty(), "{few:?}");
}

#[test]
fn the_guide_lists_every_check() {
    page::keeps_up(&topics());
}

/// Enough of them, most of them from sources that were read, and none of one kind only.
#[test]
fn there_are_enough_of_every_kind() {
    let topics = topics();
    let all: usize = topics.iter().map(|t| t.checks.len()).sum();
    let of = |s: Status| topics.iter().flat_map(|t| &t.checks).filter(|c| c.status == s).count();
    assert!(all >= 200, "{all} checks");
    assert!(of(Status::Read) + of(Status::Computed) >= 130);
    for topic in &topics {
        assert!(topic.checks.len() <= 60, "{}: {} checks", topic.name, topic.checks.len());
    }
}
