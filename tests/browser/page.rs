//! The page in a real browser: that it is whole, quiet and legible, that things are found, and that it prints.

mod carts;
mod driver;
mod finding;
mod legible;
mod printing;
// Built with all of it and a part is used.
#[allow(dead_code, unused_imports)]
#[path = "../support/carts/mod.rs"]
mod drawn_by_lot;
#[path = "../support/planner.rs"]
mod planner;

use driver::Browser;
use std::sync::{Mutex, PoisonError};

/// Shows something to a browser; two at once would slow each other down.
fn in_a_browser(show: impl FnOnce(&Browser)) {
    static ONE: Mutex<()> = Mutex::new(());
    let _turn = ONE.lock().unwrap_or_else(PoisonError::into_inner);
    if let Some(browser) = Browser::start() {
        show(&browser);
    }
}
