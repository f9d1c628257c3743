//! The files of a workspace: read and checked, every fault with its place, and written.
//!
//! Each file is read once into a tree of nodes that know their places (`tree`), which is then decoded by hand (`decode`),
//! so that one run tells all faults of all files.

mod carcass;
mod decode;
mod findings;
mod inventory;
mod keys;
mod layout;
mod shop;
mod starter;
mod syntax;
mod tree;
mod write;

pub use starter::{Starter, starters};
pub use write::write_layout;

use crate::domain::{Carcass, Face, Home, Item, Layout, Wall, Workspace};
use crate::finding::{Finding, Severity};
use decode::{Field, fold};
use findings::Findings;
use std::collections::BTreeMap;
use std::path::Path;
use tree::{Failure, Node};

/// What a workspace folder needs, for messages.
const NEEDS: &str =
    "a workspace folder holds carcass.yaml and inventory.yaml; `toolberth new` makes one";

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

/// Reads and checks all files of a workspace folder.
pub fn load(folder: &Path) -> Loaded {
    let mut out = Findings::default();
    let workspace = if folder.is_dir() {
        workspace(folder, &mut out)
    } else {
        no_folder(folder, &mut out)
    };
    let unreadable = out.unreadable;
    Loaded {
        workspace,
        findings: out.sorted(),
        unreadable,
    }
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
    let cart = required(folder, "carcass.yaml", out);
    let cart = cart.and_then(|node| carcass::carcass(Field::root(&node), out));
    let units = cart.as_ref().map(|c| c.units).unwrap_or_default();
    let mut shelf = inventory::Shelf {
        folder,
        seen: vec![folder.join("inventory.yaml")],
        items: Vec::new(),
    };
    let inventory = required(folder, "inventory.yaml", out);
    if let Some(node) = &inventory {
        shelf.take(Field::root(node), units, out);
    }
    let items = shelf.items;
    let shop = optional(folder, "shop.yaml", out);
    let shop = shop.map_or_else(
        || Some(shop::usual()),
        |node| shop::shop(Field::root(&node), units, out),
    );
    check_items(&items, cart.as_ref(), out);
    if let (Some(shop), true) = (&shop, inventory.is_some()) {
        shop::known_items(shop, &items, out);
    }
    let layout = optional(folder, "layout.yaml", out);
    // Faults of single entries of the layout come after this: they leave the workspace usable.
    let usable = !out.any_fault();
    let layout = layout.and_then(|node| layout::layout(Field::root(&node), units, out));
    if let (Some(cart), Some(layout), true) = (&cart, &layout, inventory.is_some()) {
        layout::known_places(layout, cart, &items, out);
    }
    let fixed = fixed_somewhere(&items, layout.as_ref(), out);
    let (carcass, shop) = cart.zip(shop)?;
    (usable && fixed).then_some(Workspace {
        carcass,
        items,
        shop,
        layout,
    })
}

/// A file that must be there.
fn required(folder: &Path, name: &str, out: &mut Findings) -> Option<Node> {
    file(folder, name, out, |out, path| {
        out.say(Finding::fault(format!("there is no {}", path.display())).help(NEEDS));
    })
}

/// A file that may be missing.
fn optional(folder: &Path, name: &str, out: &mut Findings) -> Option<Node> {
    file(folder, name, out, |_, _| {})
}

fn file(
    folder: &Path,
    name: &str,
    out: &mut Findings,
    missing: impl FnOnce(&mut Findings, &Path),
) -> Option<Node> {
    let path = folder.join(name);
    let read = tree::read(&path);
    let source = match &read {
        Ok(node) => Some(&node.span.source),
        Err(Failure::Wrong(fault)) => fault.at.first().map(|span| &span.source),
        Err(_) => None,
    };
    out.begin(source);
    match read {
        Ok(node) => return Some(node),
        Err(Failure::Missing) => missing(out, &path),
        Err(Failure::Wrong(fault)) => out.say(fault),
        Err(Failure::Unreadable(fault)) => {
            out.unreadable = true;
            out.say(fault);
        }
    }
    None
}

/// Faults between items, and between items and the cart.
fn check_items(items: &[Item], cart: Option<&Carcass>, out: &mut Findings) {
    let mut known: BTreeMap<&str, &Item> = BTreeMap::new();
    for item in items.iter().filter(|i| !i.name.is_empty()) {
        if let Some(first) = known.get(item.name.as_str()) {
            let fault = Finding::fault(format!("two items are named {}", item.name))
                .at(&item.span)
                .at(&first.span);
            let help = "rename one, or say `count: 2` where they are alike";
            out.say(
                fault
                    .field("items.name")
                    .found(item.name.clone())
                    .help(help),
            );
        } else {
            known.insert(&item.name, item);
        }
    }
    for item in items {
        for (name, span) in item
            .with
            .iter()
            .filter(|(name, _)| !known.contains_key(name.as_str()))
        {
            let fault =
                Finding::fault(format!("{} has a companion that is not there", item.name)).at(span);
            out.say(
                fault
                    .field("items.with")
                    .found(name.clone())
                    .near(name, known.keys().copied()),
            );
        }
        for (field, home) in homes(item) {
            if let Some(cart) = cart {
                check_home(item, field, home, cart, out);
            }
        }
    }
}

fn homes(item: &Item) -> impl Iterator<Item = (&'static str, &Home)> {
    let place = item.place.iter().map(|home| ("items.place", home));
    place.chain(item.prefer.iter().map(|home| ("items.prefer", home)))
}

/// A fault where an order or wish names no face, bay or surface of this cart.
fn check_home(item: &Item, field: &str, home: &Home, cart: &Carcass, out: &mut Findings) {
    let bays: Vec<String> = carcass::bays(cart).map(|(_, name, _)| fold(name)).collect();
    let wrong = home.parts.iter().enumerate().find(|(k, part)| {
        let face = *k == 0 && Face::named(part).is_some();
        let surface = *k > 0 && is_surface(part);
        !(face || surface || *part == "bench" || bays.contains(part))
    });
    if let Some((_, part)) = wrong {
        let fault = Finding::fault(format!(
            "{} is sent to `{part}`, which this cart has not",
            item.name
        ));
        let names = Face::ALL
            .iter()
            .map(|f| f.name())
            .chain(bays.iter().map(String::as_str));
        let fault = fault
            .at(&home.span)
            .field(field)
            .found(part.clone())
            .near(part, names);
        out.say(fault.expected("a face, a bay, or face/bay"));
    }
}

fn is_surface(name: &str) -> bool {
    let shelf = name
        .strip_prefix("shelf ")
        .is_some_and(|n| n.parse::<u32>().is_ok());
    shelf
        || ["floor", "drawer", "panel"].contains(&name)
        || Wall::ALL.iter().any(|w| w.name() == name)
}

/// Whether every fixed item has an entry that says where it stays.
fn fixed_somewhere(items: &[Item], layout: Option<&Layout>, out: &mut Findings) -> bool {
    let placed =
        |item: &Item| layout.is_some_and(|l| l.entries.iter().any(|e| e.item == item.name));
    let lost: Vec<&Item> = items.iter().filter(|i| i.fixed && !placed(i)).collect();
    for item in &lost {
        let fault = Finding::fault(format!(
            "{} is fixed, but no layout.yaml says where",
            item.name
        ))
        .at(&item.span);
        out.say(
            fault
                .field("items.fixed")
                .help("add its placement to layout.yaml, or remove `fixed`"),
        );
    }
    lost.is_empty()
}

/// How many findings of a severity there are.
pub fn count(findings: &[Finding], severity: Severity) -> usize {
    findings.iter().filter(|f| f.severity == severity).count()
}
