//! What `draw` wrote, as JSON.

use super::part::text;
use crate::report::sheet::{Sheet, Size, font};
use serde::Serialize;

/// The sheets that were drawn and the files that were written, as one document.
pub fn drawn(sheets: &[Sheet], files: &[&str]) -> String {
    let sheet = |s| SheetRow::of(s);
    let letters = font::missing(sheets.iter().flat_map(Sheet::texts).map(|t| t.text.as_str()));
    text(&DrawnDoc {
        files: files.iter().map(|f| (*f).to_owned()).collect(),
        sheets: sheets.iter().map(sheet).collect(),
        letters_missing: letters.into_iter().map(String::from).collect(),
    })
}

#[derive(Serialize)]
struct DrawnDoc {
    files: Vec<String>,
    sheets: Vec<SheetRow>,
    /// Letters that the font of the drawings does not have.
    letters_missing: Vec<String>,
}

#[derive(Serialize)]
struct SheetRow {
    id: String,
    title: String,
    paper: &'static str,
    width: f64,
    height: f64,
}

impl SheetRow {
    fn of(sheet: &Sheet) -> SheetRow {
        SheetRow {
            id: sheet.id.clone(),
            title: sheet.title.clone(),
            paper: match sheet.paper.size {
                Size::A4 => "a4",
                Size::Letter => "letter",
            },
            width: sheet.paper.width(),
            height: sheet.paper.height(),
        }
    }
}
