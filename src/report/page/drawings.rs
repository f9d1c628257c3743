//! The drawings, each true to size and on a page of its own when printed.

use crate::report::sheet::{Sheet, inline};
use maud::{Markup, PreEscaped, html};

/// All sheets in their order.
pub fn drawings(sheets: &[Sheet]) -> Markup {
    html! {
        div #drawings {
            @for sheet in sheets { (one(sheet)) }
        }
    }
}

fn one(sheet: &Sheet) -> Markup {
    let head = format!("{}-head", sheet.id);
    let paper = super::head::paper_class(sheet.paper);
    html! {
        section.drawing.(paper) aria-labelledby=(head) {
            h2 id=(head) { (sheet.title) }
            // A sheet keeps its size; where the screen is narrower, it moves within its frame.
            div.pane tabindex="0" role="region" aria-labelledby=(head) { (PreEscaped(inline(sheet))) }
        }
    }
}
