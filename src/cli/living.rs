//! The commands that judge and change a layout that is there already.

use super::Exit;
use super::args::{Search, Workspace};
use super::output::{WriteError, print};
use super::progress::watched;
use super::run::{self, LAYOUT};
use crate::domain::{self, Layout};
use crate::files;
use crate::finding::Finding;
use crate::report::{json, terminal};
use crate::tasks;
use crate::tasks::outcome::{Plan, Status};
use std::path::Path;

/// A workspace with its layout, and what was found in its files.
pub(super) struct Lived {
    pub(super) workspace: domain::Workspace,
    pub(super) layout: Layout,
    pub(super) findings: Vec<Finding>,
}

/// Reads a workspace that must have a layout; prints what is wrong and gives an exit where it cannot be used.
///
/// Faults of single entries of layout.yaml do not end it here: they are findings of the layout.
pub(super) fn read(at: &Workspace) -> Result<Result<Lived, Exit>, WriteError> {
    let loaded = files::load(&at.workspace);
    if loaded.unreadable || loaded.workspace.is_none() {
        run::refuse(at, &loaded.findings)?;
        return Ok(Err(if loaded.unreadable { Exit::Failed } else { Exit::Wrong }));
    }
    let lived = loaded.workspace.and_then(|workspace| {
        let layout = workspace.layout.clone()?;
        Some(Lived { workspace, layout, findings: loaded.findings })
    });
    match lived {
        Some(lived) => {
            let faults: Vec<Finding> =
                lived.findings.iter().filter(|f| f.is_fault()).cloned().collect();
            if !faults.is_empty() && !at.json {
                run::refuse(at, &faults)?;
            }
            Ok(Ok(lived))
        }
        None => {
            let folder = at.workspace.display();
            let finding = Finding::fault(format!("there is no {LAYOUT} in {folder}")).help(
                format!("run `toolberth plan {folder} --out {folder}` first, or write one by hand"),
            );
            run::refuse(at, &[finding])?;
            Ok(Err(Exit::Wrong))
        }
    }
}

/// Good where nothing is wanting and no entry of the layout was at fault.
pub(super) fn exit(plan: &Plan, findings: usize, read: &[Finding]) -> Exit {
    let good =
        plan.status == Status::Complete && findings == 0 && !read.iter().any(Finding::is_fault);
    if good { Exit::Good } else { Exit::Wanting }
}

/// Prints a result, or what is wrong with the carcass.
pub(super) fn tell<T>(
    at: &Workspace,
    result: Result<T, Vec<Finding>>,
    set_out: impl FnOnce(&T) -> String,
    exit: impl FnOnce(&T) -> Exit,
) -> Result<Exit, WriteError> {
    match result {
        Ok(value) => print(&set_out(&value)).map(|()| exit(&value)),
        Err(findings) => {
            run::refuse(at, &findings)?;
            Ok(Exit::Wrong)
        }
    }
}

/// Judges the layout as it stands.
pub fn audit(at: &Workspace, search: &Search) -> Result<Exit, WriteError> {
    let lived = match read(at)? {
        Ok(lived) => lived,
        Err(exit) => return Ok(exit),
    };
    let (result, clock) = watched(search.time, |watch| {
        tasks::audit::audit(&lived.workspace, &lived.layout, &search.settings(), watch)
    });
    let result = result.map(|mut audit| {
        clock.tell(&mut audit.plan.effort);
        audit
    });
    let look = run::look(at);
    tell(
        at,
        result,
        |a| if at.json { json::audit(a) } else { terminal::audit(a, &look) },
        |a| exit(&a.plan, entries(a), &lived.findings),
    )
}

/// How many findings of an audit are about rules or entries.
fn entries(audit: &tasks::audit::Audit) -> usize {
    audit.findings.iter().filter(|f| f.kind != tasks::audit::AuditKind::Cost).count()
}

/// Fits the layout to a changed inventory with few moves.
pub fn replan(
    at: &Workspace,
    search: &Search,
    most_moves: Option<usize>,
    out: Option<&Path>,
    overwrite: bool,
) -> Result<Exit, WriteError> {
    if run::would_overwrite(at, out, overwrite)? {
        return Ok(Exit::Wrong);
    }
    let lived = match read(at)? {
        Ok(lived) => lived,
        Err(exit) => return Ok(exit),
    };
    let (result, clock) = watched(search.time, |watch| {
        let settings = search.settings();
        tasks::replan::replan(&lived.workspace, &lived.layout, &settings, most_moves, watch)
    });
    let look = run::look(at);
    match result {
        Ok(mut replan) => {
            clock.tell(&mut replan.plan.effort);
            if let Some(folder) = out {
                run::write_plan(folder, &replan.plan)?;
            }
            let text =
                if at.json { json::replan(&replan) } else { terminal::replan(&replan, &look) };
            print(&text)?;
            // What was bought or sold is no fault: that is what this command is for.
            Ok(exit(&replan.plan, 0, &lived.findings))
        }
        Err(findings) => {
            run::refuse(at, &findings)?;
            Ok(Exit::Wrong)
        }
    }
}

/// Tells how much can still be bought.
pub fn room(at: &Workspace, wish: Option<&Path>) -> Result<Exit, WriteError> {
    let lived = match read(at)? {
        Ok(lived) => lived,
        Err(exit) => return Ok(exit),
    };
    let wishes = match wish {
        None => Vec::new(),
        Some(path) => {
            let read = files::load_wishes(path, &lived.workspace);
            match read.value {
                Some(wishes) => wishes,
                None => return unread(at, &read.findings, read.unreadable),
            }
        }
    };
    let look = run::look(at);
    let result = tasks::room::room(&lived.workspace, &lived.layout, &wishes);
    tell(
        at,
        result,
        |r| if at.json { json::room(r) } else { terminal::room(r, &look) },
        |r| if r.wishes.iter().all(|w| w.miss.is_none()) { Exit::Good } else { Exit::Wanting },
    )
}

/// Tells of a file that could not be used.
fn unread(at: &Workspace, findings: &[Finding], unreadable: bool) -> Result<Exit, WriteError> {
    run::refuse(at, findings)?;
    Ok(if unreadable { Exit::Failed } else { Exit::Wrong })
}

/// Tells why a thing is where it is.
pub fn why(at: &Workspace, item: &str) -> Result<Exit, WriteError> {
    let lived = match read(at)? {
        Ok(lived) => lived,
        Err(exit) => return Ok(exit),
    };
    let look = run::look(at);
    let result = tasks::why::why(&lived.workspace, &lived.layout, item);
    tell(
        at,
        result,
        |w| if at.json { json::why(w) } else { terminal::why(w, &look) },
        |_| Exit::Good,
    )
}

/// Sets two layouts side by side.
pub fn compare(at: &Workspace, a: &Path, b: &Path) -> Result<Exit, WriteError> {
    let loaded = files::load(&at.workspace);
    let Some(workspace) = loaded.workspace else {
        return unread(at, &loaded.findings, loaded.unreadable);
    };
    let mut layouts = Vec::new();
    for path in [a, b] {
        let read = files::load_layout(path, &workspace);
        match read.value {
            Some(layout) => layouts.push(layout),
            None => return unread(at, &read.findings, read.unreadable),
        }
    }
    let look = run::look(at);
    let names = [a, b].map(|path| path.display().to_string());
    let names = [names[0].as_str(), names[1].as_str()];
    let result = tasks::compare::compare(&workspace, &layouts[0], &layouts[1]);
    tell(
        at,
        result,
        |c| if at.json { json::compare(c) } else { terminal::compare(c, names, &look) },
        |_| Exit::Good,
    )
}
