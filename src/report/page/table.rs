//! Tables that a narrow screen shows as stacked rows, each cell with the head of its column.

use maud::{Markup, html};

/// A column: its head, and whether it holds figures.
pub type Column = (&'static str, Kind);

/// What a column holds.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Kind {
    /// What the row is about.
    Name,
    /// Words.
    Words,
    /// Figures, set to the right.
    Figure,
}

/// Rows under a head of their own.
pub struct Group {
    /// The head; none where there is one group only.
    pub head: Option<Markup>,
    /// The rows, cell by cell.
    pub rows: Vec<Vec<Markup>>,
}

/// A table of one group.
pub fn table(caption: &str, columns: &[Column], rows: Vec<Vec<Markup>>) -> Markup {
    grouped(caption, columns, &[Group { head: None, rows }])
}

/// A table of several groups.
///
/// The roles are said once more, for a table that is laid out as a list is none to a screen reader without them.
pub fn grouped(caption: &str, columns: &[Column], groups: &[Group]) -> Markup {
    html! {
        table role="table" {
            caption { (caption) }
            thead role="rowgroup" {
                tr role="row" {
                    @for (head, kind) in columns {
                        th role="columnheader" scope="col" class=[class(*kind)] { (head) }
                    }
                }
            }
            @for group in groups { (body(columns, group)) }
        }
    }
}

fn body(columns: &[Column], group: &Group) -> Markup {
    html! {
        tbody role="rowgroup" {
            @if let Some(head) = &group.head {
                tr role="row" {
                    th.group role="rowheader" scope="rowgroup" colspan=(columns.len()) { (head) }
                }
            }
            @for row in &group.rows {
                tr role="row" {
                    @for ((head, kind), cell) in columns.iter().zip(row) { (one(head, *kind, cell)) }
                }
            }
        }
    }
}

fn one(head: &str, kind: Kind, cell: &Markup) -> Markup {
    let empty = cell.0.is_empty().then_some("");
    html! {
        @match kind {
            Kind::Name => th role="rowheader" scope="row" { (cell) },
            _ => td role="cell" class=[class(kind)] data-head=(head) data-empty=[empty] { (cell) },
        }
    }
}

fn class(kind: Kind) -> Option<&'static str> {
    (kind == Kind::Figure).then_some("figure")
}
