//! What to do after buying or selling: the steps first, then what each further move would gain.

use super::figure::{copies, count, length, seconds};
use super::page::{Ink, Page};
use super::table::{Set, Table};
use super::{Look, cart, stability, verdict};
use crate::tasks::outcome::{Copy, Plan};
use crate::tasks::replan::{Point, Replan, Spot, Step};
use crate::units::{Price, Unit};

/// The whole report of a replan, ending with a line break.
pub fn replan(replan: &Replan, look: &Look) -> String {
    let mut page = Page::new(*look);
    verdict::wrong(&mut page, &replan.plan);
    found(&mut page, replan);
    leaving(&mut page, replan);
    steps(&mut page, replan);
    curve(&mut page, replan);
    verdict::cost(&mut page, &replan.plan);
    cart::casters(&mut page, &replan.plan);
    stability::tipping(&mut page, &replan.plan);
    cart::cautions(&mut page, &replan.plan.cautions);
    cart::notes(&mut page, &replan.plan.notes);
    page.finish()
}

/// What was found in the old layout.
fn found(page: &mut Page, replan: &Replan) {
    if !replan.findings.is_empty() {
        page.heading(Ink::Bold, "The old layout and the inventory");
    }
    for finding in &replan.findings {
        page.point(page.either("•", "*"), &finding.what);
    }
}

fn leaving(page: &mut Page, replan: &Replan) {
    if !replan.leaving.is_empty() {
        page.heading(Ink::Mind, "What would have to leave");
    }
    for one in &replan.leaving {
        let name = name(&replan.plan, &one.item);
        let leave: Vec<String> = one.leave.iter().map(|c| self::name(&replan.plan, c)).collect();
        let price = seconds(one.price);
        let text = format!(
            "fits if {} left the cart, which would then cost {price} s a week to fetch",
            leave.join(" and ")
        );
        page.named(Ink::Bold, &name, &text);
    }
}

fn steps(page: &mut Page, replan: &Replan) {
    let moves = replan.curve.get(replan.chosen).map_or(0, |p| p.moves);
    if replan.steps.is_empty() {
        page.heading(Ink::Bold, "Nothing to do: everything stays where it is");
        return;
    }
    let told = match moves {
        0 => String::from("nothing that was there moves"),
        1 => String::from("at most 1 thing that was there moves"),
        n => format!("at most {n} things that were there move"),
    };
    let heading = format!("{}, in this order; {told}", count(replan.steps.len(), "step"));
    page.heading(Ink::Bold, &heading);
    for (number, step) in replan.steps.iter().enumerate() {
        let text = sentence(page, &replan.plan, step);
        page.point(&format!("{:>2}.", number + 1), &text);
    }
}

fn sentence(page: &Page, plan: &Plan, step: &Step) -> String {
    let name = copies(&step.item, step.copy, step.copies, step.of);
    let (from, to) = (source(page, &step.from), aim(page, &step.to, plan.units));
    let aside: Vec<String> = step.aside.iter().map(|c| self::name(plan, c)).collect();
    let waits = if step.temporary { ", where it waits for its place" } else { "" };
    let aside = match aside.is_empty() {
        true => String::new(),
        false => format!("; lift aside for the moment: {}", aside.join(", ")),
    };
    match (&step.from, &step.to) {
        (_, Spot::Off) => format!("{name}: {from} off the cart{aside}"),
        _ => format!("{name}: {from} to {to}{waits}{aside}"),
    }
}

fn source(page: &Page, spot: &Spot) -> String {
    match spot {
        Spot::New => String::from("new,"),
        Spot::Floor => String::from("from the floor"),
        Spot::Bench(_) => String::from("from the bench"),
        Spot::Off => String::from("from elsewhere"),
        Spot::On { face, bay, surface, .. } => {
            format!("from {}", [face.name(), bay, surface].join(page.dot()))
        }
    }
}

fn aim(page: &Page, spot: &Spot, unit: Unit) -> String {
    match spot {
        Spot::New | Spot::Floor => String::from("the floor"),
        Spot::Bench(_) => String::from("the bench"),
        Spot::Off => String::from("elsewhere"),
        Spot::On { face, bay, surface, pose, turned, at, .. } => {
            let place = [face.name(), bay, surface].join(page.dot());
            let turned = if *turned { ", turned" } else { "" };
            let [u, v] = at.map(|l| length(l, unit));
            format!("{place} ({}{turned}, at {u}, {v})", pose.name())
        }
    }
}

/// An item, with the number of its copy where the plan has several.
fn name(plan: &Plan, copy: &Copy) -> String {
    let of = plan.placements.iter().find(|p| p.item == copy.item).map_or(copy.copy, |p| p.of);
    copies(&copy.item, copy.copy, 1, of)
}

fn curve(page: &mut Page, replan: &Replan) {
    page.heading(Ink::Bold, "What moving more would gain");
    let places = replan.curve.iter().any(|p| p.score.off_cart > 0);
    let rules = replan.curve.iter().any(|p| p.score.broken > 0);
    let mut table = Table::new(&[
        ("moves", Set::Figure),
        ("s a week", Set::Figure),
        ("gain", Set::Figure),
        ("left out, s", Set::Figure),
        ("rules broken", Set::Figure),
        ("", Set::Words),
    ]);
    for (k, point) in replan.curve.iter().enumerate() {
        table.row(vec![
            point.moves.to_string(),
            seconds(point.cost),
            if k == 0 { String::new() } else { gain(point) },
            if places { seconds(Price::us(point.score.off_cart)) } else { String::new() },
            if rules { point.score.broken.to_string() } else { String::new() },
            mark(replan, k),
        ]);
    }
    page.table(&table);
    if places {
        page.paragraph(
            "A gain counts what is left out with what fetching it from elsewhere costs; a place on the cart is never traded for seconds.",
        );
    }
    page.paragraph(
        "Placing a new thing is no move. The knee is the point farthest below the line from the first point to the last: after it, moving more gains least. `--most-moves N` picks another one.",
    );
}

fn gain(point: &Point) -> String {
    if point.gain == Price::ZERO { String::from("nothing") } else { seconds(point.gain) }
}

fn mark(replan: &Replan, k: usize) -> String {
    let mut marks = Vec::new();
    if replan.curve[k].given_up > Price::ZERO {
        marks.push("takes something off the cart");
    }
    if k == replan.knee {
        marks.push("the knee");
    }
    if k == replan.chosen {
        marks.push("this one");
    }
    if k + 1 == replan.curve.len() {
        marks.push("free to move everything");
    }
    marks.join(", ")
}
