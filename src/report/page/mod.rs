//! One page for a browser: all drawings, all lists and the story of every thing, in one file that needs nothing else.
//!
//! All facts stand in it as text; the style sheet lays them out and the script only finds and opens them.

mod cart;
mod drawings;
mod faces;
mod find;
mod head;
mod link;
mod lists;
mod shading;
mod story;
mod table;
mod top;
mod ways;

use super::sheet::Sheet;
use crate::tasks::outcome::Plan;
use maud::{DOCTYPE, html};

/// The whole page.
pub fn page(plan: &Plan, sheets: &[Sheet]) -> String {
    let body = html! {
        a.skip href="#main" { "To the plan" }
        (top::title_block(plan, sheets))
        (find::bar(plan, sheets))
        main #main {
            (top::verdict(plan))
            (shading::hatchings())
            (drawings::drawings(plan, sheets))
            div #lists {
                (top::reckoning(plan))
                (lists::lists(plan))
                (faces::faces(plan))
                (cart::cart(plan))
                (ways::ways(plan))
            }
            (story::stories(plan))
        }
    };
    let body = body.into_string();
    let head = head::head(plan, sheets, &body);
    html! {
        (DOCTYPE)
        html lang="en" { (head) body { (maud::PreEscaped(body)) (head::script()) } }
    }
    .into_string()
}

#[cfg(test)]
mod tests;
