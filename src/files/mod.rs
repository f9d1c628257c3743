//! The files of a workspace: read and checked, every fault with its place, and written.
//!
//! Each file is read once into a tree of nodes that know their places (`tree`), which is then decoded by hand (`decode`),
//! so that one run tells all faults of all files.

mod bay;
mod between;
mod board;
mod carcass;
mod decode;
mod findings;
mod inventory;
mod item;
mod keys;
mod layout;
mod shop;
mod starter;
mod station;
mod syntax;
mod tree;
mod value;
mod write;

pub use starter::{Starter, starters};
pub use write::write_layout;

use crate::domain::{Item, Layout, Workspace};
use crate::finding::Finding;
use decode::Field;
use findings::Findings;
use std::path::Path;
use tree::{Failure, Node};

/// What a workspace folder needs, for messages.
const NEEDS: &str =
    "a workspace folder holds carcass.yaml and inventory.yaml; README.md shows the smallest one";

/// A workspace as far as it could be read.
#[derive(Debug)]
pub struct Loaded {
    /// What its files say; `None` where a fault of the carcass, the inventory or the shop makes it unusable, or
    /// layout.yaml is no YAML. Faults of single entries of layout.yaml leave those entries out.
    pub workspace: Option<Workspace>,
    /// Everything that was found, file by file and in each by place.
    pub findings: Vec<Finding>,
    /// Whether some file exists but could not be read from the disk.
    pub unreadable: bool,
}

/// One file by itself.
#[derive(Debug)]
pub struct Read<T> {
    /// What it says; `None` where it could not be read.
    pub value: Option<T>,
    /// Everything that was found, by place.
    pub findings: Vec<Finding>,
    /// Whether it exists but could not be read from the disk.
    pub unreadable: bool,
}

/// Reads another layout of a workspace, wherever it lies; entries with a fault are left out.
pub fn load_layout(path: &Path, workspace: &Workspace) -> Read<Layout> {
    let mut out = Findings::default();
    let node = must_be(path, &mut out);
    let units = workspace.carcass.units;
    let value = node.and_then(|node| layout::layout(Field::root(&node), units, &mut out));
    if let Some(layout) = &value {
        between::known_places(layout, &workspace.carcass, &workspace.items, &mut out);
    }
    let unreadable = out.unreadable;
    Read { value, findings: out.sorted(), unreadable }
}

/// Reads a wish list: an inventory of things that the workspace has not yet; `None` where any has a fault.
pub fn load_wishes(path: &Path, workspace: &Workspace) -> Read<Vec<Item>> {
    let mut out = Findings::default();
    let folder = path.parent().unwrap_or(Path::new("."));
    let mut shelf = inventory::Shelf::new(folder, path.to_owned());
    if let Some(node) = must_be(path, &mut out) {
        shelf.take(Field::root(&node), workspace.carcass.units, &mut out);
        let all: Vec<Item> = workspace.items.iter().chain(&shelf.items).cloned().collect();
        between::named_once(&all, &mut out);
        between::sent_somewhere(&shelf.items, &workspace.carcass, &mut out);
        if !shelf.open {
            between::companions_exist(&shelf.items, &all, &mut out);
        }
    }
    let value = (!out.any_fault()).then_some(shelf.items);
    let unreadable = out.unreadable;
    Read { value, findings: out.sorted(), unreadable }
}

/// Reads and checks all files of a workspace folder.
pub fn load(folder: &Path) -> Loaded {
    let mut out = Findings::default();
    let workspace =
        if folder.is_dir() { workspace(folder, &mut out) } else { no_folder(folder, &mut out) };
    let unreadable = out.unreadable;
    Loaded { workspace, findings: out.sorted(), unreadable }
}

fn no_folder<T>(folder: &Path, out: &mut Findings) -> Option<T> {
    let name = folder.display();
    let text = if folder.exists() {
        format!("{name} is not a folder")
    } else {
        format!("there is no folder {name}")
    };
    out.say(Finding::fault(text).help(NEEDS));
    None
}

fn workspace(folder: &Path, out: &mut Findings) -> Option<Workspace> {
    let cart = must_be(&folder.join("carcass.yaml"), out);
    let cart = cart.and_then(|node| carcass::carcass(Field::root(&node), out));
    let units = cart.as_ref().map(|c| c.units).unwrap_or_default();
    let path = folder.join("inventory.yaml");
    let inventory = must_be(&path, out);
    let mut shelf = inventory::Shelf::new(folder, path);
    match &inventory {
        Some(node) => shelf.take(Field::root(node), units, out),
        None => shelf.open = true,
    }
    let (items, open) = (shelf.items, shelf.open);
    let shop = may_be(&folder.join("shop.yaml"), out);
    let shop =
        shop.map_or_else(|| Some(shop::usual()), |node| shop::shop(Field::root(&node), units, out));
    between::named_once(&items, out);
    if let Some(cart) = &cart {
        between::sent_somewhere(&items, cart, out);
    }
    // Where an inventory is missing, the names that it would have held are no faults of the others.
    if !open {
        between::companions_exist(&items, &items, out);
        shop.iter().for_each(|shop| between::known_items(shop, &items, out));
    }
    let layout = may_be(&folder.join("layout.yaml"), out);
    // Faults of single entries of the layout come after this: they leave the workspace usable.
    let usable = !out.any_fault();
    let layout = layout.and_then(|node| layout::layout(Field::root(&node), units, out));
    if let (Some(cart), Some(layout), false) = (&cart, &layout, open) {
        between::known_places(layout, cart, &items, out);
    }
    let fixed = between::fixed_somewhere(&items, layout.as_ref(), out);
    let (carcass, shop) = cart.zip(shop)?;
    (usable && fixed).then_some(Workspace { carcass, items, shop, layout })
}

/// A file that must be there.
fn must_be(path: &Path, out: &mut Findings) -> Option<Node> {
    file(path, out, |out| {
        let fault = Finding::fault(format!("there is no {}", path.display()));
        let own = ["carcass.yaml", "inventory.yaml"].iter().any(|name| path.ends_with(name));
        out.say(if own { fault.help(NEEDS) } else { fault });
    })
}

/// A file that may be missing.
fn may_be(path: &Path, out: &mut Findings) -> Option<Node> {
    file(path, out, |_| {})
}

fn file(path: &Path, out: &mut Findings, missing: impl FnOnce(&mut Findings)) -> Option<Node> {
    let read = tree::read(path);
    let source = match &read {
        Ok(node) => Some(&node.span.source),
        Err(Failure::Wrong(fault)) => fault.at.first().map(|span| &span.source),
        Err(_) => None,
    };
    out.begin(source);
    match read {
        Ok(node) => return Some(node),
        Err(Failure::Missing) => missing(out),
        Err(Failure::Wrong(fault)) => out.say(*fault),
        Err(Failure::Unreadable(fault)) => {
            out.unreadable = true;
            out.say(*fault);
        }
    }
    None
}

#[cfg(test)]
mod tests;
