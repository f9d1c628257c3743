//! Open instances: those kept beside this file, or those of a folder named on the command line.
//!
//! Only what may be copied is kept here, with where it is from in `open/PROVENANCE.tsv`.

use crate::clock::Clock;
use crate::gap::Shared;
use crate::qap::Assignment;
use crate::rect;
use crate::table::mark;
use crate::walks::{Puzzle, search};
use std::fs;
use std::path::Path;
use std::time::Duration;

/// The files of a part of the folder by their names, rising; none where there is no such part.
pub fn files(folder: &Path, part: &str) -> Vec<(String, String)> {
    let Ok(entries) = fs::read_dir(folder.join(part)) else { return Vec::new() };
    let mut all: Vec<(String, String)> = entries
        .flatten()
        .filter_map(|e| {
            Some((e.file_name().into_string().ok()?, fs::read_to_string(e.path()).ok()?))
        })
        .collect();
    all.sort();
    all
}

/// All numbers of a text; nothing where something else stands in it.
pub fn numbers(text: &str) -> Option<Vec<i64>> {
    text.split_whitespace().map(|word| word.parse().ok()).collect()
}

/// Seconds for each of them.
const PACKING: u64 = 5;
const ASSIGNING: u64 = 10;
/// What is meant to be reached, in hundredths over the best known.
const GAP: [(&str, f64); 3] = [("c", 0.1), ("d", 0.8), ("e", 0.3)];
const QAP_MEAN: f64 = 0.3;

/// All families that the folder has, with what became of the marks.
pub fn all(folder: &Path) {
    if !files(folder, "rect").is_empty() {
        rect::run(folder, PACKING);
    }
    let gap = anneal(folder, "gap", ASSIGNING, Shared::read);
    for (kind, most) in GAP {
        if let Some(mean) = mean(&gap, kind) {
            mark(&format!("gap, {kind}, mean over the best known"), mean, most);
        }
    }
    let qap = anneal(folder, "qap", ASSIGNING, Assignment::read);
    if let (Some(median), Some(mean)) = (median(&qap), mean(&qap, "")) {
        mark("qap, median over the best known", median, 0.0);
        mark("qap, mean", mean, QAP_MEAN);
    }
}

/// The best known value of a file, by the folder's own list.
fn best_known(folder: &Path, file: &str) -> Option<i64> {
    let list = fs::read_to_string(folder.join("PROVENANCE.tsv")).ok()?;
    let line = list.lines().find(|line| line.split('\t').next() == Some(file))?;
    line.split('\t').nth(3)?.parse().ok()
}

/// Anneals every file of a part that can be read, and tells how far over the best known it ends, in hundredths.
fn anneal<P: Puzzle>(
    folder: &Path,
    part: &str,
    seconds: u64,
    read: impl Fn(&str) -> Option<P>,
) -> Vec<(String, f64)> {
    let files = files(folder, part);
    if files.is_empty() {
        return Vec::new();
    }
    println!();
    println!(
        "{part:<16}{:>6}{:>14}{:>14}{:>9}{:>7}",
        "size", "best known", "found", "over", "in s"
    );
    let mut all = Vec::new();
    for (file, text) in files {
        let Some(best) = best_known(folder, &format!("{part}/{file}")) else { continue };
        let Some(mut puzzle) = read(&text) else { continue };
        let clock = Clock::start();
        let found = search(&mut puzzle, 1, Duration::from_secs(seconds), best);
        let over = found.map_or(f64::INFINITY, |f| 100.0 * (f as f64 / best as f64 - 1.0));
        println!(
            "{file:<16}{:>6}{best:>14}{:>14}{over:>8.2}%{:>7.1}",
            puzzle.size(),
            found.unwrap_or(0),
            clock.spent().as_secs_f64()
        );
        all.push((file, over));
    }
    all
}

/// The mean of those that begin so, if any do.
fn mean(all: &[(String, f64)], begins: &str) -> Option<f64> {
    let some: Vec<f64> = all.iter().filter(|a| a.0.starts_with(begins)).map(|a| a.1).collect();
    (!some.is_empty()).then(|| some.iter().sum::<f64>() / some.len() as f64)
}

/// The middle one of all, the upper where there are two.
fn median(all: &[(String, f64)]) -> Option<f64> {
    let mut some: Vec<f64> = all.iter().map(|a| a.1).collect();
    some.sort_by(f64::total_cmp);
    some.get(some.len() / 2).copied()
}
