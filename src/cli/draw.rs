//! `draw`: the pictures of a layout, as files.

use super::args::{Format, PaperArg, Workspace};
use super::output::{WriteError, in_the_way, print, write_all};
use super::{Exit, living, run};
use crate::finding::Finding;
use crate::report::drawing::drawings;
use crate::report::sheet::{self, Sheet, Size};
use crate::report::{json, page, terminal};
use crate::tasks;
use crate::tasks::outcome::Plan;
use std::path::Path;

/// A file to be written: its name and what is in it.
pub(super) type File = (String, Vec<u8>);

/// The page for a browser.
pub(super) const PAGE: &str = "cart.html";
/// All sheets in one document.
pub(super) const DOCUMENT: &str = "drawings.pdf";

/// What goes with a plan that is written: the page and the document, on the paper of the user's units.
pub(super) fn with_plan(plan: &Plan) -> Vec<File> {
    let size = if plan.units.imperial() { Size::Letter } else { Size::A4 };
    let sheets = drawings(plan, size);
    [Format::Html, Format::Pdf].iter().flat_map(|format| files(plan, &sheets, *format)).collect()
}

/// Writes the drawings of a layout into a folder, or draws its faces in the terminal where none is named.
pub fn draw(
    at: &Workspace,
    out: Option<&Path>,
    format: Format,
    paper: PaperArg,
    overwrite: bool,
) -> Result<Exit, WriteError> {
    if let Some(finding) = not_built(format) {
        run::refuse(at, &[finding])?;
        return Ok(Exit::Wrong);
    }
    let lived = match living::read(at)? {
        Ok(lived) => lived,
        Err(exit) => return Ok(exit),
    };
    let drawn = match tasks::draw::draw(&lived.workspace, &lived.layout) {
        Ok(drawn) => drawn,
        Err(findings) => {
            run::refuse(at, &findings)?;
            return Ok(Exit::Wrong);
        }
    };
    let exit = living::exit(&drawn.plan, drawn.findings.len(), &lived.findings);
    if out.is_none() && !at.json {
        return print(&terminal::faces(&drawn.plan, &run::look(at))).map(|()| exit);
    }
    let sheets = drawings(&drawn.plan, paper.into());
    let Some(out) = out else { return print(&json::drawn(&sheets, &[])).map(|()| exit) };
    let files = files(&drawn.plan, &sheets, format);
    if !overwrite && refused(at, out, &files)? {
        return Ok(Exit::Wrong);
    }
    write_all(out, &files)?;
    let names: Vec<&str> = files.iter().map(|(name, _)| name.as_str()).collect();
    let text = if at.json { json::drawn(&sheets, &names) } else { told(out, &names) };
    print(&text).map(|()| exit)
}

/// The files of one format.
pub(super) fn files(plan: &Plan, sheets: &[Sheet], format: Format) -> Vec<File> {
    match format {
        Format::Svg => {
            let one = |s: &Sheet| (format!("{}.svg", s.id), sheet::svg(s).into_bytes());
            sheets.iter().map(one).collect()
        }
        Format::Html => vec![(PAGE.to_owned(), page::page(plan, sheets).into_bytes())],
        Format::Pdf => vec![(DOCUMENT.to_owned(), sheet::pdf(sheets, &plan.name))],
        Format::Png => pictures(sheets),
    }
}

#[cfg(feature = "print")]
fn pictures(sheets: &[Sheet]) -> Vec<File> {
    let one = |s: &Sheet| Some((format!("{}.png", s.id), sheet::png(s, sheet::PRINT)?));
    sheets.iter().filter_map(one).collect()
}

#[cfg(not(feature = "print"))]
fn pictures(_: &[Sheet]) -> Vec<File> {
    Vec::new()
}

/// That a format was left out of this build, and how to build it in.
pub(super) fn not_built(format: Format) -> Option<Finding> {
    (format == Format::Png && !cfg!(feature = "print")).then(|| {
        Finding::fault("PNG was left out when this program was built")
            .help("build it again with: cargo install --path . --features print")
    })
}

/// Whether files are in the way; if so, says so.
pub(super) fn refused(at: &Workspace, out: &Path, files: &[File]) -> Result<bool, WriteError> {
    let names: Vec<&str> = files.iter().map(|(name, _)| name.as_str()).collect();
    let there = in_the_way(out, &names);
    if there.is_empty() {
        return Ok(false);
    }
    run::refuse(at, &[run::already(&there)])?;
    Ok(true)
}

pub(super) fn told(out: &Path, names: &[&str]) -> String {
    names.iter().map(|name| format!("{}\n", out.join(name).display())).collect()
}
