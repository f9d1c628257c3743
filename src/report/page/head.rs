//! The head of the page: what it may do, how it looks, and its script.

use super::shading;
use crate::report::sheet::{Paper, Sheet, Size, Weight, base64, font_face, palette, rules};
use crate::tasks::outcome::Plan;
use maud::{Markup, PreEscaped, html};
use sha2::{Digest, Sha256};
use std::collections::BTreeSet;

const STYLE: &str = include_str!("page.css");
const SCRIPT: &str = include_str!("page.js");

/// The head of a page with that body.
pub fn head(plan: &Plan, sheets: &[Sheet], body: &str) -> Markup {
    let style = style(plan, sheets, body);
    html! {
        head {
            meta charset="utf-8";
            meta http-equiv="Content-Security-Policy" content=(policy(&style));
            meta name="viewport" content="width=device-width, initial-scale=1";
            meta name="color-scheme" content="light dark";
            title { (plan.name) }
            style { (PreEscaped(&style)) }
        }
    }
}

/// The one script.
pub fn script() -> Markup {
    html! { script { (PreEscaped(SCRIPT)) } }
}

/// What the page may do: show its own style, run its own script, read the font in it; nothing else.
fn policy(style: &str) -> String {
    format!(
        "default-src 'none'; style-src '{}'; script-src '{}'; font-src data:; base-uri 'none'; form-action 'none'",
        fingerprint(style),
        fingerprint(SCRIPT)
    )
}

/// A text as a policy names it.
fn fingerprint(text: &str) -> String {
    format!("sha256-{}", base64(&Sha256::digest(text)))
}

/// Our rules, the drawings' colours by day and by night, their font with the letters of the page, and the papers.
fn style(plan: &Plan, sheets: &[Sheet], body: &str) -> String {
    let letters: BTreeSet<char> = body.chars().filter(|c| !c.is_control()).collect();
    let fonts = [Weight::Regular, Weight::Bold].map(|w| font_face(&letters, w)).concat();
    let papers: BTreeSet<String> = sheets.iter().map(|s| paper_rules(s.paper)).collect();
    let lists = sheets.first().map_or_else(String::new, |s| lists_rule(s.paper.size));
    let papers: String = papers.into_iter().chain([lists]).collect();
    let shading = shading::rules(plan);
    format!(
        "{fonts}\n:root{{{}}}\n@media screen and (prefers-color-scheme:dark){{:root{{{}}}}}\n{}{STYLE}{papers}{shading}",
        palette(false),
        palette(true),
        rules()
    )
}

/// The class of what is printed on a paper, which is the name of that page too.
pub fn paper_class(paper: Paper) -> String {
    let size = match paper.size {
        Size::A4 => "a4",
        Size::Letter => "letter",
    };
    format!("{size}-{}", if paper.landscape { "landscape" } else { "upright" })
}

/// The lists are printed on upright pages of the drawings' size.
fn lists_rule(size: Size) -> String {
    let paper = Paper::upright(size);
    format!("@page{{size:{}mm {}mm}}\n", paper.width(), paper.height())
}

/// A drawing fills its page to the edges: its margins are on the sheet.
fn paper_rules(paper: Paper) -> String {
    let (class, wide, high) = (paper_class(paper), paper.width(), paper.height());
    format!(
        "@page {class}{{size:{wide}mm {high}mm;margin:0}}\n@media print{{.{class}{{page:{class}}}}}\n"
    )
}
