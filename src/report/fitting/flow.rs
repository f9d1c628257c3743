//! Text that flows down a page and on to the next: headings, paragraphs and rows of a table.

use crate::report::drawing::area::Area;
use crate::report::drawing::border::{Draft, room};
use crate::report::drawing::lettering::{LEADING, NOTE, TITLE, broken};
use crate::report::sheet::{Mark, Paper, Pen, Size, Text, Weight, font};

/// Between two columns.
const GUTTER: f64 = 3.0;
/// Over a heading.
const ABOVE: f64 = 3.0;

/// Pages as far as they are written.
pub struct Flow {
    paper: Paper,
    area: Area,
    /// How far down the page is written.
    y: f64,
    pages: Vec<Vec<Mark>>,
    /// The columns of the table that is being written: where each begins, as shares of the width, and its head.
    columns: Vec<(f64, &'static str)>,
}

impl Flow {
    /// An empty upright page.
    pub fn new(size: Size) -> Flow {
        let paper = Paper::upright(size);
        let area = room(paper);
        Flow { paper, area, y: area.y0, pages: vec![Vec::new()], columns: Vec::new() }
    }

    fn put(&mut self, text: Text) {
        if let Some(page) = self.pages.last_mut() {
            page.push(text.into());
        }
    }

    /// Begins a new page where so much does not fit any more.
    fn need(&mut self, high: f64) {
        if self.y + high > self.area.y1 && self.y > self.area.y0 {
            self.pages.push(Vec::new());
            self.y = self.area.y0;
            self.heads();
        }
    }

    /// A heading; it never stands alone at the foot of a page.
    pub fn heading(&mut self, text: &str) {
        self.columns.clear();
        let lines = broken(text, TITLE, Weight::Bold, self.area.wide());
        self.need(lines.len() as f64 * TITLE * LEADING + 6.0 * NOTE + ABOVE);
        if self.y > self.area.y0 {
            self.y += ABOVE;
        }
        for line in lines {
            self.y += TITLE * LEADING;
            self.put(Text::new([self.area.x0, self.y], TITLE, line).bold());
        }
        self.y += 1.5;
    }

    /// A paragraph.
    pub fn paragraph(&mut self, text: &str) {
        self.point("", text);
    }

    /// A point of a list: its mark, then the text hanging beside it.
    pub fn point(&mut self, mark: &str, text: &str) {
        let indent = if mark.is_empty() { 0.0 } else { font::width(mark, NOTE).max(3.0) + 1.5 };
        let lines = broken(text, NOTE, Weight::Regular, self.area.wide() - indent);
        self.need(lines.len() as f64 * NOTE * LEADING + 0.8);
        for (k, line) in lines.into_iter().enumerate() {
            self.y += NOTE * LEADING;
            if k == 0 && !mark.is_empty() {
                self.put(Text::new([self.area.x0, self.y], NOTE, mark));
            }
            self.put(Text::new([self.area.x0 + indent, self.y], NOTE, line));
        }
        self.y += 0.8;
    }

    /// Begins a table of these columns: where each begins, as a share of the width, and its head.
    pub fn table(&mut self, columns: &[(f64, &'static str)]) {
        self.columns = columns.to_vec();
        self.need(6.0 * NOTE);
        self.heads();
    }

    fn heads(&mut self) {
        if self.columns.is_empty() {
            return;
        }
        self.y += NOTE * LEADING;
        for (k, (_, head)) in self.columns.clone().into_iter().enumerate() {
            let (x, _) = self.column(k);
            self.put(Text::new([x, self.y], NOTE, head).bold());
        }
        self.y += 1.0;
        self.rule(Pen::Thin);
    }

    fn rule(&mut self, pen: Pen) {
        let (x0, x1, y) = (self.area.x0, self.area.x1, self.y);
        if let Some(page) = self.pages.last_mut() {
            page.push(Mark::line([x0, y], [x1, y], pen));
        }
    }

    /// Where a column begins and how wide it is.
    fn column(&self, k: usize) -> (f64, f64) {
        let x = |share: f64| self.area.x0 + self.area.wide() * share;
        let from = x(self.columns[k].0);
        let to = self.columns.get(k + 1).map_or(self.area.x1 + GUTTER, |c| x(c.0));
        (from, to - from - GUTTER)
    }

    /// A line over the rows that follow.
    pub fn group(&mut self, text: &str) {
        let lines = broken(text, NOTE, Weight::Bold, self.area.wide());
        self.need((lines.len() as f64 + 2.0) * NOTE * LEADING + 2.0);
        self.y += 1.2;
        for line in lines {
            self.y += NOTE * LEADING;
            self.put(Text::new([self.area.x0, self.y], NOTE, line).bold());
        }
        self.y += 0.6;
    }

    /// A row: a cell for each column, wrapped where it is wider.
    pub fn row(&mut self, cells: &[String]) {
        let set: Vec<Vec<String>> = cells
            .iter()
            .enumerate()
            .map(|(k, cell)| match cell.trim() {
                "" => Vec::new(),
                cell => broken(cell, NOTE, Weight::Regular, self.column(k).1),
            })
            .collect();
        let high = set.iter().map(Vec::len).max().unwrap_or(0) as f64 * NOTE * LEADING;
        self.need(high + 1.2);
        let top = self.y;
        for (k, lines) in set.into_iter().enumerate() {
            let (x, _) = self.column(k);
            for (n, line) in lines.into_iter().enumerate() {
                let y = top + (n as f64 + 1.0) * NOTE * LEADING;
                self.put(Text::new([x, y], NOTE, line));
            }
        }
        self.y = top + high + 1.0;
        self.rule(Pen::Faint);
    }

    /// The pages as drafts of one title.
    pub fn drafts(self, id: &str, title: &str) -> Vec<Draft> {
        let (of, paper) = (self.pages.len(), self.paper);
        let draft = |(k, marks): (usize, Vec<Mark>)| Draft {
            id: if of == 1 { id.to_owned() } else { format!("{id}-{}", k + 1) },
            title: title.to_owned(),
            note: if of == 1 { String::new() } else { format!("page {} of {of}", k + 1) },
            paper,
            scale: None,
            marks,
        };
        self.pages.into_iter().enumerate().map(draft).collect()
    }
}
