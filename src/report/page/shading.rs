//! Shading by seconds a week: colour and hatching that the style sheet lays over the boxes of the things.

use crate::report::figure::seconds;
use crate::report::shade::{STEPS, Shade};
use crate::report::sheet::Fill;
use crate::tasks::outcome::Plan;
use maud::{Markup, html};
use std::fmt::Write;

/// How the steps are hatched: how far apart the lines are in mm, and whether they rise, fall or cross.
const HATCHES: [(f64, &[Slope]); STEPS as usize] = [
    (3.2, &[]),
    (3.2, &[Slope::Rising]),
    (1.6, &[Slope::Rising]),
    (1.2, &[Slope::Falling]),
    (1.6, &[Slope::Rising, Slope::Falling]),
];

/// Which way a line goes.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Slope {
    Rising,
    Falling,
}

/// The hatchings by name, in a picture that shows nothing itself.
pub fn hatchings() -> Markup {
    html! {
        svg.hatchings width="0" height="0" aria-hidden="true" focusable="false" {
            @for (step, (apart, slopes)) in HATCHES.iter().enumerate() {
                pattern id={ "shade-" (step) } patternUnits="userSpaceOnUse" width=(apart) height=(apart)
                    patternTransform="rotate(45)" {
                    rect width=(apart) height=(apart) class={ "s" (step) } {}
                    // The pattern is turned by an eighth, so that level lines fall and upright ones rise.
                    @for slope in *slopes { path d=(line(*slope, *apart)) {} }
                }
            }
        }
    }
}

fn line(slope: Slope, apart: f64) -> String {
    match slope {
        Slope::Rising => format!("M0 0V{apart}"),
        Slope::Falling => format!("M0 0H{apart}"),
    }
}

/// What the steps mean.
pub fn legend(plan: &Plan) -> Markup {
    let shade = Shade::of(plan);
    html! {
        ul.legend aria-label="Seconds a week" {
            @for step in 0..STEPS {
                li {
                    svg width="32" height="20" viewBox="0 0 8 5" aria-hidden="true" focusable="false" {
                        rect width="8" height="5" class={ "h" (step) } {}
                    }
                    " up to " (seconds(shade.most(step)))
                }
            }
            li { "s a week" }
        }
    }
}

/// The rules that lay each step over its things while the box for it is ticked. Names keep a plain ground.
pub fn rules(plan: &Plan) -> String {
    let shade = Shade::of(plan);
    let mut out = String::new();
    for step in 0..STEPS {
        let _ = writeln!(
            out,
            ".s{step}{{fill:var(--{})}}.h{step}{{fill:url(#shade-{step})}}",
            tint(step)
        );
        let of_it = |(k, price): (usize, _)| {
            (shade.step(price) == step).then(|| format!("[data-placement=\"{k}\"]"))
        };
        let things: Vec<String> =
            plan.placements.iter().map(|p| p.per_week).enumerate().filter_map(of_it).collect();
        if !things.is_empty() {
            let things = things.join(",");
            let on = "html:has(#shade:checked) .sheet";
            let _ = writeln!(
                out,
                "{on} :is({things}) .f-item{{fill:url(#shade-{step})}}{on} .name:is({things}) .f-item{{fill:var(--{})}}",
                tint(step)
            );
        }
    }
    out
}

/// The colour of a step, as the drawings name it.
fn tint(step: u8) -> &'static str {
    Fill::Tint(step).colour().map_or("item", |c| c.name)
}
