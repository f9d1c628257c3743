//! A small table: columns as wide as they need, the wordy ones wrapped where the page is narrower.

use super::wrap::{columns, pad, wrap};

/// Blanks between two columns.
const GAP: usize = 2;
/// The narrowest that a wordy column is made.
const LEAST: usize = 7;

/// How a column is set.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Set {
    /// Words: at the left, wrapped where the page is narrow.
    Words,
    /// A short word: at the left, never wrapped.
    Short,
    /// A figure: at the right, never wrapped.
    Figure,
}

/// A row of a table.
pub enum Row {
    /// A line over the rows that belong together.
    Group(String),
    /// One cell per column.
    Cells(Vec<String>),
}

/// What a line of a set table is.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum LineKind {
    /// The names of the columns.
    Head,
    /// A group's line.
    Group,
    /// Of a row.
    Body,
}

/// A table with named columns.
pub struct Table {
    heads: Vec<(&'static str, Set)>,
    rows: Vec<Row>,
}

impl Table {
    /// A table without rows.
    pub fn new(heads: &[(&'static str, Set)]) -> Table {
        Table { heads: heads.to_vec(), rows: Vec::new() }
    }
    /// Adds a line over the rows that follow.
    pub fn group(&mut self, text: String) {
        self.rows.push(Row::Group(text));
    }
    /// Adds a row.
    pub fn row(&mut self, cells: Vec<String>) {
        self.rows.push(Row::Cells(cells));
    }
    /// Its lines, none wider than the width where the short columns allow it; columns that are empty throughout are left away.
    pub fn lines(&self, width: usize) -> Vec<(LineKind, String)> {
        let shown: Vec<usize> = (0..self.heads.len()).filter(|&c| self.is_used(c)).collect();
        let widths = self.widths(&shown, width);
        let heads = self.heads.iter().map(|(head, _)| (*head).to_owned()).collect::<Vec<_>>();
        let mut lines = self.set(&shown, &widths, &heads, LineKind::Head);
        for row in &self.rows {
            match row {
                Row::Group(text) => {
                    lines.extend(wrap(text, width).into_iter().map(|line| (LineKind::Group, line)));
                }
                Row::Cells(cells) => lines.extend(self.set(&shown, &widths, cells, LineKind::Body)),
            }
        }
        lines
    }

    fn cells(&self) -> impl Iterator<Item = &Vec<String>> {
        self.rows.iter().filter_map(|row| match row {
            Row::Cells(cells) => Some(cells),
            Row::Group(_) => None,
        })
    }

    fn is_used(&self, column: usize) -> bool {
        self.cells().any(|cells| !cells[column].is_empty())
    }

    /// What each shown column needs, the wordy ones narrowed evenly, widest first, until the row fits.
    fn widths(&self, shown: &[usize], width: usize) -> Vec<usize> {
        let mut widths: Vec<usize> = shown.iter().map(|&c| self.need(c)).collect();
        let gaps = GAP * shown.len().saturating_sub(1);
        while widths.iter().sum::<usize>() + gaps > width {
            let wordy = (0..shown.len())
                .filter(|&k| self.heads[shown[k]].1 == Set::Words && widths[k] > LEAST)
                .max_by_key(|&k| (widths[k], std::cmp::Reverse(k)));
            match wordy {
                Some(k) => widths[k] -= 1,
                None => break,
            }
        }
        widths
    }

    fn need(&self, column: usize) -> usize {
        let head = columns(self.heads[column].0);
        self.cells().map(|cells| columns(&cells[column])).max().unwrap_or(0).max(head)
    }

    /// One row in as many lines as its highest cell.
    fn set(
        &self,
        shown: &[usize],
        widths: &[usize],
        cells: &[String],
        kind: LineKind,
    ) -> Vec<(LineKind, String)> {
        let wrapped: Vec<Vec<String>> =
            shown.iter().zip(widths).map(|(&c, &width)| wrap(&cells[c], width)).collect();
        let high = wrapped.iter().map(Vec::len).max().unwrap_or(0);
        (0..high)
            .map(|line| {
                let parts = shown.iter().zip(widths).zip(&wrapped).map(|((&c, &width), cell)| {
                    let right = self.heads[c].1 == Set::Figure;
                    pad(cell.get(line).map_or("", String::as_str), width, right)
                });
                let text = parts.collect::<Vec<_>>().join(&" ".repeat(GAP));
                (kind, text.trim_end().to_owned())
            })
            .collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sample(width: usize) -> Vec<String> {
        let mut table =
            Table::new(&[("#", Set::Figure), ("item", Set::Words), ("never", Set::Short)]);
        table.group(String::from("upper left"));
        table.row(vec![String::from("7"), String::from("long marking gauge"), String::new()]);
        table.row(vec![String::from("12"), String::from("mallet"), String::new()]);
        table.lines(width).into_iter().map(|(_, line)| line).collect()
    }

    #[test]
    fn figures_stand_at_the_right_and_empty_columns_are_left_away() {
        let set = [" #  item", "upper left", " 7  long marking gauge", "12  mallet"];
        assert_eq!(sample(60), set);
    }

    #[test]
    fn words_are_wrapped_and_not_cut() {
        let set = [" #  item", "upper left", " 7  long", "    marking", "    gauge", "12  mallet"];
        assert_eq!(sample(12), set);
    }
}
