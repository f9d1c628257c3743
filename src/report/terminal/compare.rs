//! Two layouts side by side, in plain words.

use super::Look;
use super::figure::{copies, count, seconds};
use super::page::{Ink, Page};
use super::table::{Set, Table};
use super::why::signed;
use crate::tasks::compare::{Compare, Gain, Moved, Side};
use crate::tasks::offer::Spot;
use crate::units::Price;

/// The whole text, ending with a line break; `a` and `b` are what the two layouts are called.
pub fn compare(compare: &Compare, [a, b]: [&str; 2], look: &Look) -> String {
    let mut page = Page::new(*look);
    verdict(&mut page, compare, [a, b]);
    wrong(&mut page, &compare.a, a);
    wrong(&mut page, &compare.b, b);
    moved(&mut page, compare);
    gains(&mut page, "By term, in s a week", &compare.terms, None);
    gains(&mut page, "By item, in s a week", &compare.items, Some(&compare.whole));
    page.finish()
}

fn verdict(page: &mut Page, c: &Compare, [a, b]: [&str; 2]) {
    page.heading(Ink::Bold, &format!("{}: {a} and {b}", c.name));
    let [first, second] = [&c.a.worth, &c.b.worth];
    let gain = first.cost - second.cost;
    let which = if gain < Price::ZERO { "more" } else { "less" };
    let by = if gain < Price::ZERO { second.cost - first.cost } else { gain };
    let whole = if gain == Price::ZERO {
        format!("Both cost {} s a week.", seconds(first.cost))
    } else {
        let (first, second) = (seconds(first.cost), seconds(second.cost));
        format!("{a} costs {first} s a week, {b} {second} s: {} s {which}.", seconds(by))
    };
    page.paragraph(&whole);
    if c.a.left_out.len() != c.b.left_out.len() || first.off_cart != second.off_cart {
        page.paragraph("They do not place the same things, so that the seconds do not compare.");
    }
    let people = |n: usize| count(n, "broken rule");
    let [x, y] = [first.broken.len(), second.broken.len()];
    page.paragraph(&format!("{a} has {}, {b} {}.", people(x), people(y)));
}

fn wrong(page: &mut Page, side: &Side, name: &str) {
    let quiet = side.worth.broken.is_empty() && side.left_out.is_empty();
    if quiet && side.findings.is_empty() {
        return;
    }
    page.heading(Ink::Mind, &format!("What is wrong with {name}"));
    for broken in &side.worth.broken {
        page.named(Ink::Alarm, broken.rule, &broken.told);
    }
    for left in &side.left_out {
        let name = copies(&left.copy.item, left.copy.copy, 1, left.copy.copy);
        page.named(Ink::Mind, &name, "is off the cart");
    }
    for finding in &side.findings {
        page.point(page.either("•", "*"), finding);
    }
}

fn moved(page: &mut Page, c: &Compare) {
    page.heading(Ink::Bold, "What moved");
    if c.moved.is_empty() {
        page.paragraph("Nothing: everything is where it was.");
        return;
    }
    let mut table = Table::new(&[("item", Set::Words), ("from", Set::Words), ("to", Set::Words)]);
    for m in &c.moved {
        let Moved { item, copy, copies: n, of, .. } = m;
        table.row(vec![copies(item, *copy, *n, *of), at(&m.from), to(m)]);
    }
    page.table(&table);
    page.paragraph(&format!("{} where they were.", stayed(c.stayed)));
}

fn stayed(n: u32) -> String {
    if n == 1 { "1 copy stayed".to_owned() } else { format!("{n} copies stayed") }
}

fn at(spot: &Option<Spot>) -> String {
    spot.as_ref().map_or_else(|| "off the cart".to_owned(), Spot::name)
}

fn to(m: &Moved) -> String {
    match (&m.from, &m.to) {
        (Some(from), Some(to)) if from.name() == to.name() => "elsewhere on it".to_owned(),
        _ => at(&m.to),
    }
}

fn gains(page: &mut Page, heading: &str, all: &[Gain], whole: Option<&Gain>) {
    page.heading(Ink::Bold, heading);
    let mut table = Table::new(&[
        ("", Set::Words),
        ("before", Set::Figure),
        ("after", Set::Figure),
        ("change", Set::Figure),
    ]);
    for g in all.iter().chain(whole) {
        table.row(vec![g.what.clone(), seconds(g.a), seconds(g.b), signed(g.b - g.a)]);
    }
    page.table(&table);
}
