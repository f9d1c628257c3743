//! The carts whose pages are looked at.

use crate::drawn_by_lot as lot;
use crate::planner;
use std::path::Path;
use std::sync::OnceLock;
use toolberth::domain::{Item, Workspace};
use toolberth::files;
use toolberth::report::drawing::drawings;
use toolberth::report::page::page;
use toolberth::report::sheet::{Sheet, Size};
use toolberth::tasks::outcome::Plan;
use toolberth::units::Unit;

/// A cart, planned, with its drawings and its page.
pub struct Drawn {
    pub name: String,
    pub plan: Plan,
    pub sheets: Vec<Sheet>,
    pub page: String,
}

/// The demonstrations, a small, a large and a long-winded cart.
pub fn all() -> &'static [Drawn] {
    static ALL: OnceLock<Vec<Drawn>> = OnceLock::new();
    ALL.get_or_init(|| {
        let demos = ["village-hall", "first-flat", "prop-shop"];
        let mut all: Vec<Drawn> = demos.into_iter().map(|name| drawn(name, &demo(name))).collect();
        all.push(drawn("5 things", &lot::sections(5)));
        all.push(drawn("150 things", &lot::sections(150)));
        all.push(drawn("long names", &long_winded(lot::packed(3, 24, 0.6))));
        all
    })
}

/// The one that the finer tests use.
pub fn hall() -> &'static Drawn {
    &all()[0]
}

fn demo(name: &str) -> Workspace {
    files::load(&Path::new(env!("CARGO_MANIFEST_DIR")).join("../../demo-data").join(name))
        .workspace
        .expect("the demonstration is sound")
}

fn drawn(name: &str, workspace: &Workspace) -> Drawn {
    let plan = planner::plan(workspace, 1, 2);
    let size = if workspace.carcass.units == Unit::In { Size::Letter } else { Size::A4 };
    let sheets = drawings(&plan, size);
    let page = page(&plan, &sheets);
    Drawn { name: name.to_owned(), plan, sheets, page }
}

/// The same with names as some people write them, markup and all.
fn long_winded(mut workspace: Workspace) -> Workspace {
    let long = |n: usize, item: &Item| match n % 4 {
        0 => format!(
            "{} of the very best kind that one could wish for, in its case, no. {n}",
            item.name
        ),
        1 => format!("<b>{}</b> & \"Söhne\" {n}", item.name),
        2 => format!("Donaudampfschifffahrtsgesellschaftsschraubenschlüsselsatz{n}"),
        _ => format!("{} {n}", item.name),
    };
    for (n, item) in workspace.items.iter_mut().enumerate() {
        item.name = long(n, item);
        item.holds = vec![format!("Öse {n}"), format!("</script><i>rivets {n}")];
        item.with.clear();
    }
    workspace
}
