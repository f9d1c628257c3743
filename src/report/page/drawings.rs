//! The drawings, each true to size and on a page of its own when printed.

use crate::report::sheet::{Sheet, inline};
use crate::tasks::outcome::Plan;
use maud::{Markup, PreEscaped, html};

/// All sheets in their order.
pub fn drawings(plan: &Plan, sheets: &[Sheet]) -> Markup {
    html! {
        div #drawings {
            @for (sheet, title) in sheets.iter().zip(titles(plan, sheets)) { (one(sheet, &title)) }
        }
    }
}

/// What the page calls each sheet: without the cart's name, and counted where several have one title.
pub fn titles(plan: &Plan, sheets: &[Sheet]) -> Vec<String> {
    let cart = format!("{}: ", plan.name);
    let short = |sheet: &Sheet| sheet.title.trim_start_matches(&cart).to_owned();
    let all: Vec<String> = sheets.iter().map(short).collect();
    let counted = |k: usize| match all[..k].iter().filter(|title| **title == all[k]).count() {
        0 => all[k].clone(),
        before => format!("{}, {}", all[k], before + 1),
    };
    (0..all.len()).map(counted).collect()
}

fn one(sheet: &Sheet, title: &str) -> Markup {
    let head = format!("{}-head", sheet.id);
    let paper = super::head::paper_class(sheet.paper);
    html! {
        section.drawing.(paper) aria-labelledby=(head) {
            h2 id=(head) { (title) }
            // A sheet keeps its size; where the screen is narrower, it moves within its frame.
            div.pane tabindex="0" role="region" aria-labelledby=(head) { (PreEscaped(inline(sheet))) }
        }
    }
}
