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
        let (widths, gap) = self.widths(&shown, width);
        let heads = self.heads.iter().map(|(head, _)| (*head).to_owned()).collect::<Vec<_>>();
        let mut lines = self.set(&shown, (&widths, gap), &heads, LineKind::Head);
        for row in &self.rows {
            match row {
                Row::Group(text) => {
                    lines.extend(wrap(text, width).into_iter().map(|line| (LineKind::Group, line)));
                }
                Row::Cells(cells) => {
                    lines.extend(self.set(&shown, (&widths, gap), cells, LineKind::Body))
                }
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

    /// How wide each shown column is set, and how far apart: no narrower than the page asks for.
    ///
    /// Words are wrapped first, then the heads, then columns move together; words are broken only at last.
    fn widths(&self, shown: &[usize], width: usize) -> (Vec<usize>, usize) {
        let mut set = (Vec::new(), GAP);
        for (squeeze, gap) in [
            (Squeeze::Words, GAP),
            (Squeeze::Heads, GAP),
            (Squeeze::Heads, 1),
            (Squeeze::Letters, 1),
        ] {
            let room = width.saturating_sub(gap * shown.len().saturating_sub(1));
            let least: Vec<usize> = shown.iter().map(|&c| self.least(c, squeeze)).collect();
            let need = shown.iter().map(|&c| self.need(c, columns)).collect();
            set = (narrowed(need, &least, room), gap);
            if set.0.iter().sum::<usize>() <= room {
                break;
            }
        }
        set
    }

    /// The narrowest that a column may be set.
    fn least(&self, column: usize, squeeze: Squeeze) -> usize {
        let (head, set) = self.heads[column];
        match (set, squeeze) {
            (Set::Words, Squeeze::Letters) => LEAST,
            (Set::Words, _) => self.need(column, longest_word),
            (_, Squeeze::Words) => self.need(column, columns),
            _ => self.cell_need(column, columns).max(longest_word(head)),
        }
    }

    fn need(&self, column: usize, measure: fn(&str) -> usize) -> usize {
        self.cell_need(column, measure).max(measure(self.heads[column].0))
    }

    fn cell_need(&self, column: usize, measure: fn(&str) -> usize) -> usize {
        self.cells().map(|cells| measure(&cells[column])).max().unwrap_or(0)
    }

    /// One row in as many lines as its highest cell.
    fn set(
        &self,
        shown: &[usize],
        (widths, gap): (&[usize], usize),
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
                let text = parts.collect::<Vec<_>>().join(&" ".repeat(gap));
                (kind, text.trim_end().to_owned())
            })
            .collect()
    }
}

/// What may be done to make a table narrower.
#[derive(Clone, Copy)]
enum Squeeze {
    /// Wrapping cells of words between words.
    Words,
    /// Wrapping the names of columns too.
    Heads,
    /// Breaking words.
    Letters,
}

/// The widths taken down evenly, widest first, until they fit or all are at their least.
fn narrowed(mut widths: Vec<usize>, least: &[usize], room: usize) -> Vec<usize> {
    while widths.iter().sum::<usize>() > room {
        let loose = (0..widths.len()).filter(|&k| widths[k] > least[k]);
        match loose.max_by_key(|&k| (widths[k], std::cmp::Reverse(k))) {
            Some(widest) => widths[widest] -= 1,
            None => break,
        }
    }
    widths
}

fn longest_word(text: &str) -> usize {
    text.split_ascii_whitespace().map(columns).max().unwrap_or(0)
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
