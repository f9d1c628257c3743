//! The sheets of fitting out: the borrower's card, the lists, drilling templates in full size, and labels.

mod badge;
mod card;
mod flow;
mod label;
pub(super) mod lists;
mod template;

pub use label::{Stock, label_sheets};
pub use template::{OVERLAP, Tile, tiles};

use super::drawing::border::bordered;
use super::sheet::{Sheet, Size};
use crate::tasks::fit_out::FitOut;

/// All sheets, numbered, on one size of paper; labels come last and on their own stock.
pub fn sheets(fit: &FitOut, size: Size, stock: &Stock) -> Vec<Sheet> {
    let mut drafts = vec![card::draft(fit, size)];
    drafts.extend(lists::drafts(fit, size));
    drafts.extend(template::drafts(fit, size));
    let mut all = bordered(&fit.plan, drafts);
    all.extend(label_sheets(fit, size, stock));
    all
}
