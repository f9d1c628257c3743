//! inventory.yaml, and what it includes.

use super::carcass::units;
use super::decode::{Field, Text};
use super::findings::Findings;
use super::item::item;
use super::starter::{self, Starter};
use super::tree::{self, Failure};
use super::{keys, tree::Node};
use crate::domain::Item;
use crate::finding::{Finding, Source};
use crate::units::Unit;
use std::path::{Path, PathBuf};

/// Where an inventory stands.
pub(super) struct Shelf<'p> {
    /// The folder that included files are looked for in.
    pub(super) folder: &'p Path,
    /// What has been included already.
    pub(super) seen: Vec<PathBuf>,
    /// The items so far.
    pub(super) items: Vec<Item>,
    /// Whether items are missing, since a file could not be read.
    pub(super) open: bool,
}

impl<'p> Shelf<'p> {
    /// An empty one for the inventory at `path`.
    pub(super) fn new(folder: &'p Path, path: PathBuf) -> Shelf<'p> {
        Shelf { folder, seen: vec![path], items: Vec::new(), open: false }
    }
    /// Takes the items of a file, those of its included files first.
    pub(super) fn take(&mut self, root: Field, above: Unit, out: &mut Findings) {
        let Some(table) = root.table(&keys::INVENTORY, out) else {
            return;
        };
        let units = units(&table, above, out);
        for name in table.get("include", out).map_or_else(Vec::new, |f| f.texts(out)) {
            self.include(&name, units, out);
        }
        let all =
            if table.has("include") { table.get("items", out) } else { table.need("items", out) };
        for one in all.map_or_else(Vec::new, |f| f.list(out)) {
            self.items.extend(item(one, units, out));
        }
    }

    /// A file beside the inventory, or one of the program's starters.
    fn include(&mut self, name: &Text, units: Unit, out: &mut Findings) {
        if let Some(path) = self.beside(&name.text) {
            if !self.once(&path) {
                return;
            }
            match tree::read(&path) {
                Ok(node) => self.nested(&node, units, out),
                Err(failure) => {
                    self.open = true;
                    failed(failure, name, out);
                }
            }
        } else if let Some(starter) = starter::named(&name.text) {
            if !self.once(Path::new(starter.name)) {
                return;
            }
            let source = Source {
                name: format!("starter inventory: {}", starter.name),
                text: starter.text.to_owned(),
            };
            match tree::parse(source) {
                Ok(node) => self.nested(&node, units, out),
                Err(fault) => out.say(*fault),
            }
        } else {
            self.open = true;
            out.say(no_such(name));
        }
    }
    /// A plain file name only: what lies in other folders is none of this workspace.
    fn beside(&self, name: &str) -> Option<PathBuf> {
        let plain = Path::new(name).file_name().is_some_and(|n| n == name);
        let candidates = [self.folder.join(name), self.folder.join(format!("{name}.yaml"))];
        candidates.into_iter().find(|path| plain && path.is_file())
    }
    /// Whether it is included for the first time.
    fn once(&mut self, path: &Path) -> bool {
        let new = !self.seen.iter().any(|p| p == path);
        if new {
            self.seen.push(path.to_owned());
        }
        new
    }
    fn nested(&mut self, node: &Node, units: Unit, out: &mut Findings) {
        out.begin(Some(&node.span.source));
        self.take(Field::root(node), units, out);
    }
}

fn failed(failure: Failure, name: &Text, out: &mut Findings) {
    match failure {
        Failure::Missing => out.say(no_such(name)),
        Failure::Wrong(fault) => out.say(*fault),
        Failure::Unreadable(fault) => {
            out.unreadable = true;
            out.say(fault.at(&name.span));
        }
    }
}

fn no_such(name: &Text) -> Finding {
    let starters = || starter::starters().iter().map(|s: &Starter| s.name);
    let text = format!("there is neither a file nor a starter inventory named `{}`", name.text);
    let fault = Finding::fault(text).at(&name.span).field("include").found(name.text.clone());
    let listed: Vec<&str> = starters().collect();
    fault
        .expected(format!("a file beside this one, or {}", listed.join(", ")))
        .near(&name.text, starters())
}
