//! Open instances in a folder named on the command line.

use std::fs;
use std::path::Path;

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

/// The table of a family.
pub struct Family;

impl Family {
    /// Prints its head.
    pub fn new(name: &str, figure: &str) -> Family {
        println!();
        println!("{name:<28}{:>6}{figure:>12}", "size");
        Family
    }
    /// Prints a row.
    pub fn row(&mut self, name: &str, size: usize, figure: f64) {
        println!("{name:<28}{size:>6}{figure:>12.3}");
    }
}
