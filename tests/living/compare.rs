//! Two layouts side by side: gains add up, and what moved is what moved.

use super::ground::{demo, planned, planned_with};
use crate::support::carts::{self, Size};
use toolberth::domain::Layout;
use toolberth::report::{json, terminal};
use toolberth::tasks::compare::{Compare, Gain, compare};
use toolberth::units::Price;

fn sum(all: &[Gain]) -> Price {
    all.iter().map(Gain::gain).sum()
}

fn adds_up(c: &Compare) {
    let whole = c.a.worth.cost - c.b.worth.cost;
    assert_eq!(sum(&c.terms), whole);
    assert_eq!(sum(&c.items) + c.whole.gain(), whole);
}

#[test]
fn a_layout_compared_with_itself_has_moved_nothing() {
    let (workspace, layout) = demo("prop-shop");
    let c = compare(&workspace, &layout, &layout).expect("the cart is sound");
    assert!(c.moved.is_empty() && c.items.is_empty());
    assert_eq!(c.stayed, workspace.items.iter().map(|i| i.count).sum::<u32>());
    adds_up(&c);
}

#[test]
fn by_term_and_by_item_the_gains_add_up_on_the_prop_cupboard() {
    let (workspace, layout) = demo("prop-shop");
    let c = compare(&workspace, &layout, &planned(&workspace)).expect("the cart is sound");
    adds_up(&c);
    assert!(!c.a.worth.broken.is_empty() && c.b.worth.broken.is_empty());
    assert!(!c.a.findings.is_empty() && c.b.findings.is_empty());
    assert!(!c.a.left_out.is_empty() && c.b.left_out.is_empty());
    // What was nowhere has come onto the cart.
    let meter = c.moved.iter().find(|m| m.item == "multimeter").expect("it moved");
    assert!(meter.from.is_none() && meter.to.is_some());
    let count: u32 = c.moved.iter().map(|m| m.copies).sum();
    assert_eq!(count + c.stayed, workspace.items.iter().map(|i| i.count).sum::<u32>());
    let look = terminal::Look { width: 80, colour: terminal::Colour::Plain, ascii: true };
    assert!(terminal::compare(&c, ["now", "plan"], &look).is_ascii());
    assert!(serde_json::from_str::<serde_json::Value>(&json::compare(&c)).is_ok());
}

#[test]
fn the_gains_add_up_on_carts_of_all_shapes() {
    for seed in 0..12 {
        let workspace = carts::cart(seed, Size::Middle);
        let (one, other) = (planned_with(&workspace, 1), planned_with(&workspace, 2));
        for (a, b) in [(&one, &other), (&one, &Layout::default()), (&Layout::default(), &other)] {
            adds_up(&compare(&workspace, a, b).expect("the cart is sound"));
        }
    }
}

#[test]
fn one_entry_taken_to_another_bay_is_the_one_move() {
    let (workspace, _) = demo("village-hall");
    let before = planned(&workspace);
    let mut after = before.clone();
    let k = after.entries.iter().position(|e| e.item == "pencil tin").expect("it is there");
    after.entries.remove(k);
    let c = compare(&workspace, &before, &after).expect("the cart is sound");
    assert_eq!(c.moved.len(), 1);
    assert_eq!((c.moved[0].item.as_str(), c.moved[0].to.is_none()), ("pencil tin", true));
    adds_up(&c);
}

#[test]
fn copies_that_leave_their_row_are_told_copy_by_copy() {
    let (workspace, layout) = demo("prop-shop");
    let mut other = layout.clone();
    let k = other.entries.iter().position(|e| e.item == "bar clamp").expect("it is there");
    let row = other.entries[k].clone();
    other.entries[k].copies = 3;
    other.entries.push(toolberth::domain::Entry { copy: 4, copies: 1, ..row });
    let c = compare(&workspace, &layout, &other).expect("the cart is sound");
    let clamps: Vec<(u32, u32)> =
        c.moved.iter().filter(|m| m.item == "bar clamp").map(|m| (m.copy, m.copies)).collect();
    assert_eq!(clamps, [(1, 3), (4, 1)]);
    adds_up(&c);
}
