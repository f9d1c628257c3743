//! What the tests stand on: demonstration carts and carts drawn at random, planned quickly and fitted out.

use crate::support::{carts, planner};
use std::path::Path;
use std::sync::LazyLock;
use toolberth::domain::Workspace;
use toolberth::files;
use toolberth::tasks::fit_out::{FitOut, fit_out};

/// A cart with what fitting it out takes.
pub struct Fitted {
    /// Which, for messages.
    pub name: String,
    /// Its workspace.
    pub workspace: Workspace,
    /// What fitting it out takes.
    pub fit: FitOut,
}

fn fitted(name: String, workspace: Workspace) -> Fitted {
    let layout = planner::plan(&workspace, 1, 1).layout;
    let fit = fit_out(&workspace, &layout).expect("the cart is sound");
    Fitted { name, workspace, fit }
}

fn demo(name: &str) -> Fitted {
    let loaded = files::load(&Path::new("demo-data").join(name));
    fitted(name.to_owned(), loaded.workspace.expect("the demonstration can be read"))
}

/// The demonstration carts.
pub static DEMOS: LazyLock<Vec<Fitted>> =
    LazyLock::new(|| ["first-flat", "prop-shop", "village-hall"].map(demo).into());

/// Carts drawn at random.
pub static DRAWN: LazyLock<Vec<Fitted>> = LazyLock::new(|| {
    (1..=24)
        .map(|seed| fitted(format!("drawn {seed}"), carts::cart(seed, carts::Size::Middle)))
        .collect()
});

/// All of them.
pub fn all() -> impl Iterator<Item = &'static Fitted> {
    DEMOS.iter().chain(DRAWN.iter())
}
