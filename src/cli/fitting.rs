//! `fit-out`: the report, and the sheets that go with it.

use super::args::{FitOutPaper, Format, Workspace};
use super::output::{WriteError, print, write_all};
use super::{Exit, draw, living, run};
use crate::finding::Finding;
use crate::report::fitting::{Stock, sheets};
use crate::report::page::page;
use crate::report::sheet::{self, Size};
use crate::report::{json, terminal};
use crate::tasks;
use crate::tasks::fit_out::FitOut;
use std::path::Path;

/// Tells what to build and drill, and writes the sheets where a folder is named.
pub fn fit_out(at: &Workspace, paper: &FitOutPaper) -> Result<Exit, WriteError> {
    let stock = match stock(paper) {
        Ok(stock) => stock,
        Err(misfit) => {
            let help = "measure the stock again: size, margin and pitch, across and down";
            run::refuse(
                at,
                &[Finding::fault(format!("the label stock does not fit the paper: {misfit}"))
                    .help(help)],
            )?;
            return Ok(Exit::Wrong);
        }
    };
    if let Some(fault) = draw::not_built(paper.format) {
        run::refuse(at, &[fault])?;
        return Ok(Exit::Wrong);
    }
    let lived = match living::read(at)? {
        Ok(lived) => lived,
        Err(exit) => return Ok(exit),
    };
    let fit = match tasks::fit_out::fit_out(&lived.workspace, &lived.layout) {
        Ok(fit) => fit,
        Err(findings) => {
            run::refuse(at, &findings)?;
            return Ok(Exit::Wrong);
        }
    };
    let written = match &paper.out {
        None => String::new(),
        Some(folder) => match write(at, folder, paper, &fit, &stock)? {
            Some(names) => names,
            None => return Ok(Exit::Wrong),
        },
    };
    let look = run::look(at);
    let text = match at.json {
        true => json::fit_out(&fit),
        false => terminal::fit_out(&fit, &look) + &written,
    };
    print(&text)?;
    Ok(living::exit(&fit.plan, fit.wants.len() + fit.findings.len(), &lived.findings))
}

/// Writes the sheets, and gives their names; nothing where that would replace files unasked.
fn write(
    at: &Workspace,
    folder: &Path,
    paper: &FitOutPaper,
    fit: &FitOut,
    stock: &Stock,
) -> Result<Option<String>, WriteError> {
    let all = sheets(fit, paper.paper.into(), stock);
    let files = match paper.format {
        Format::Html => vec![("fit-out.html".to_owned(), page(&fit.plan, &all).into_bytes())],
        Format::Pdf => vec![("fit-out.pdf".to_owned(), sheet::pdf(&all, &fit.plan.name))],
        other => draw::files(&fit.plan, &all, other),
    };
    if !paper.overwrite && draw::refused(at, folder, &files)? {
        return Ok(None);
    }
    write_all(folder, &files)?;
    let names: Vec<&str> = files.iter().map(|(name, _)| name.as_str()).collect();
    Ok(Some(format!("\n{}", draw::told(folder, &names))))
}

/// The label stock, or why it does not fit the paper.
fn stock(paper: &FitOutPaper) -> Result<Stock, String> {
    let page: Size = paper.paper.into();
    let mm = |pair: [crate::units::Length; 2]| pair.map(|l| l.as_mm());
    let size = mm(paper.labels);
    let stock = match paper.label_grid {
        None => Stock::plain(page, size),
        Some(grid) => {
            Stock::of(page, size, grid, paper.label_margin.map(mm), paper.label_pitch.map(mm))
        }
    };
    stock.misfit(page).map_or(Ok(stock), Err)
}
