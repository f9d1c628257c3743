//! Each command: read, do, write.

use super::args::{Args, Command, Search, Workspace};
use super::output::{WriteError, in_the_way, print, warn, write_all};
use super::progress::watched;
use super::{Exit, draw, fitting, living};
use crate::domain;
use crate::files::{self, write_layout};
use crate::finding::{Finding, Severity};
use crate::report::terminal::{Colour, Look};
use crate::report::{faults, json, terminal};
use crate::tasks;
use crate::tasks::outcome::{Plan, Status};
use clap::CommandFactory;
use std::path::Path;

/// Columns where there is no terminal.
const PIPE: usize = 80;
/// Columns of a report in a file.
const PAPER: usize = 100;
pub(super) const LAYOUT: &str = "layout.yaml";
const REPORT: &str = "report.txt";

/// Does what was typed.
pub fn run(args: &Args) -> Result<Exit, WriteError> {
    match &args.command {
        Command::Check { workspace } => check(workspace),
        Command::Plan { workspace, search, out, overwrite } => {
            plan(workspace, search, out.as_deref(), *overwrite)
        }
        Command::Audit { workspace, search } => living::audit(workspace, search),
        Command::Replan { workspace, search, most_moves, out, overwrite } => {
            living::replan(workspace, search, *most_moves, out.as_deref(), *overwrite)
        }
        Command::Room { workspace, wish } => living::room(workspace, wish.as_deref()),
        Command::Why { workspace, item } => living::why(workspace, item),
        Command::Compare { workspace, a, b } => living::compare(workspace, a, b),
        Command::Draw { workspace, out, format, paper, overwrite } => {
            draw::draw(workspace, out.as_deref(), *format, *paper, *overwrite)
        }
        Command::FitOut { workspace, paper } => fitting::fit_out(workspace, paper),
        Command::Completions { shell } => {
            let mut text = Vec::new();
            clap_complete::generate(*shell, &mut Args::command(), "toolberth", &mut text);
            print(&String::from_utf8_lossy(&text)).map(|()| Exit::Good)
        }
        Command::Man => {
            let what = "the manual page".to_owned();
            let text = super::manual::page().map_err(|error| WriteError { what, error })?;
            print(&String::from_utf8_lossy(&text)).map(|()| Exit::Good)
        }
    }
}

pub(super) fn look(at: &Workspace) -> Look {
    let terminal = terminal_size::terminal_size().map(|(w, _)| usize::from(w.0));
    let width = at.width.map(usize::from).or(terminal.filter(|w| *w > 0)).unwrap_or(PIPE);
    Look { width, colour: colour(&std::io::stdout()), ascii: at.ascii }
}

/// The colours of a stream: those that it was told to have, and all of them where the terminal says that it has them.
fn colour(stream: &impl anstream::stream::RawStream) -> Colour {
    let full = std::env::var("COLORTERM").is_ok_and(|says| says == "truecolor" || says == "24bit");
    match anstream::AutoStream::choice(stream) {
        anstream::ColorChoice::Never => Colour::Plain,
        _ if full => Colour::Full,
        _ => Colour::Sixteen,
    }
}

/// Reads a workspace; prints what is wrong and gives nothing where it cannot be used.
fn read(at: &Workspace) -> Result<(Option<domain::Workspace>, Vec<Finding>, Exit), WriteError> {
    let loaded = files::load(&at.workspace);
    let usable = loaded.workspace.is_some() && !loaded.findings.iter().any(Finding::is_fault);
    if usable && !loaded.unreadable {
        return Ok((loaded.workspace, loaded.findings, Exit::Good));
    }
    let exit = if loaded.unreadable { Exit::Failed } else { Exit::Wrong };
    refuse(at, &loaded.findings)?;
    Ok((None, loaded.findings, exit))
}

/// Tells what is wrong with the input.
pub(super) fn refuse(at: &Workspace, all: &[Finding]) -> Result<(), WriteError> {
    if at.json {
        return print(&json::findings(all));
    }
    // Beside faults, notes are noise.
    let grave: Vec<Finding> =
        all.iter().filter(|f| f.severity != Severity::Note).cloned().collect();
    warn(&faults::findings(&grave, &error_look(at)));
    Ok(())
}

fn error_look(at: &Workspace) -> Look {
    Look { colour: colour(&std::io::stderr()), ..look(at) }
}

fn check(at: &Workspace) -> Result<Exit, WriteError> {
    let (workspace, findings, exit) = read(at)?;
    let Some(workspace) = workspace else { return Ok(exit) };
    match tasks::check::check(&workspace) {
        Ok(understood) => {
            let exit = match understood.never.is_empty() && understood.at_least_out.is_empty() {
                true => Exit::Good,
                false => Exit::Wanting,
            };
            let text = match at.json {
                true => json::check(&understood, &findings),
                false => terminal::check(&understood, &findings, &look(at)),
            };
            print(&text).map(|()| exit)
        }
        Err(more) => {
            refuse(at, &[findings, more].concat())?;
            Ok(Exit::Wrong)
        }
    }
}

fn plan(
    at: &Workspace,
    search: &Search,
    out: Option<&Path>,
    overwrite: bool,
) -> Result<Exit, WriteError> {
    if would_overwrite(at, out, overwrite)? {
        return Ok(Exit::Wrong);
    }
    let (workspace, findings, exit) = read(at)?;
    let Some(workspace) = workspace else { return Ok(exit) };
    let settings = search.settings();
    let (planned, clock) =
        watched(search.time, |watch| tasks::plan::plan(&workspace, &settings, watch));
    let mut plan = match planned {
        Ok(plan) => plan,
        Err(more) => {
            refuse(at, &[findings, more].concat())?;
            return Ok(Exit::Wrong);
        }
    };
    clock.tell(&mut plan.effort);
    plan.notes.extend(findings);
    if let Some(folder) = out {
        write_plan(folder, &plan)?;
    }
    let text = if at.json { json::plan(&plan) } else { terminal::plan(&plan, &look(at)) };
    print(&text)?;
    Ok(if plan.status == Status::Complete { Exit::Good } else { Exit::Wanting })
}

/// Whether writing would replace files unasked; if so, says so.
pub(super) fn would_overwrite(
    at: &Workspace,
    out: Option<&Path>,
    overwrite: bool,
) -> Result<bool, WriteError> {
    if let Some(folder) = out.filter(|_| !overwrite) {
        let there = in_the_way(folder, &[LAYOUT, REPORT, draw::PAGE, draw::DOCUMENT]);
        if !there.is_empty() {
            refuse(at, &[already(&there)])?;
            return Ok(true);
        }
    }
    Ok(false)
}

/// That files are in the way.
pub(super) fn already(there: &[&str]) -> Finding {
    let is = if there.len() == 1 { "is" } else { "are" };
    Finding::fault(format!("{} {is} there already", there.join(" and ")))
        .help("name another folder, or add --overwrite to replace what is there")
}

pub(super) fn write_plan(folder: &Path, plan: &Plan) -> Result<(), WriteError> {
    let head = format!("Where everything lives on {}, planned with seed {}.", plan.name, plan.seed);
    let layout = write_layout(&plan.layout, plan.units, &head);
    let report = terminal::plan(plan, &Look { width: PAPER, colour: Colour::Plain, ascii: false });
    let mut files =
        vec![(LAYOUT.to_owned(), layout.into_bytes()), (REPORT.to_owned(), report.into_bytes())];
    files.extend(draw::with_plan(plan));
    write_all(folder, &files)
}
