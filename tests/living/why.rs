//! Why a thing is where it is: terms add up, and every slot that is told is legal and costs what is said.

use super::ground::{demo, planned};
use crate::support::carts::{self, Size};
use std::collections::BTreeSet;
use toolberth::domain::{Entry, Layout, Workspace};
use toolberth::finding::Span;
use toolberth::report::{json, terminal};
use toolberth::score::{Ledger, Score};
use toolberth::site::Board;
use toolberth::tasks::offer::{Named, Spot};
use toolberth::tasks::standing::standing;
use toolberth::tasks::why::{Differ, Slot, Why, why};
use toolberth::units::Price;

/// The layout with everything where it is now, every position said.
fn said(workspace: &Workspace, layout: &Layout) -> Layout {
    let stands = standing(workspace, layout).expect("the cart is sound");
    let board = Board::with(&stands.site, &stands.places);
    let mut entries = Vec::new();
    for (l, lot) in stands.site.lots.iter().enumerate() {
        let Some(place) = board.place(l) else { continue };
        let surface = place.home.surface as usize;
        let space = &stands.site.spaces[stands.site.surfaces[surface].space];
        let form = &lot.forms[place.home.form as usize];
        entries.push(Entry {
            item: stands.site.items[lot.item].name.clone(),
            copy: lot.first,
            copies: lot.copies,
            face: Some(space.face),
            bay: space.name.clone(),
            surface: Some(stands.site.surfaces[surface].name.clone()),
            pose: Some(form.pose),
            turned: Some(form.turned),
            at: Some(toolberth::site::corner_of(
                &stands.site,
                surface,
                board.free(surface),
                &place.space,
            )),
            span: Span::none(),
        });
    }
    Layout { entries, ..Layout::default() }
}

fn entry(named: &Named, spot: &Spot) -> Entry {
    Entry {
        item: named.item.clone(),
        copy: named.copy,
        copies: named.copies,
        face: Some(spot.face),
        bay: spot.bay.clone(),
        surface: Some(spot.surface.clone()),
        pose: Some(spot.pose),
        turned: Some(spot.turned),
        at: Some(spot.at),
        span: Span::none(),
    }
}

/// The layout after a slot is taken.
fn taken(layout: &Layout, named: &Named, slot: &Slot) -> Layout {
    let gone = |e: &Entry, n: &Named| e.item == n.item && e.copy == n.copy;
    let mut entries: Vec<Entry> = layout
        .entries
        .iter()
        .filter(|e| !gone(e, named) && !slot.displaced.iter().any(|(n, _)| gone(e, n)))
        .cloned()
        .collect();
    entries.push(entry(named, &slot.spot));
    entries.extend(slot.displaced.iter().filter_map(|(n, to)| Some(entry(n, to.as_ref()?))));
    Layout { entries, ..layout.clone() }
}

/// The score of a layout and what is broken in it.
fn score(workspace: &Workspace, layout: &Layout) -> (Score, BTreeSet<(&'static str, String)>) {
    let stands = standing(workspace, layout).expect("the cart is sound");
    let board = Board::with(&stands.site, &stands.places);
    let ledger = Ledger::new(&board);
    let name = |l: &u32| stands.site.lots[*l as usize].name(&stands.site.items);
    let all = toolberth::score::broken(&board, &ledger);
    // A lot's own rule names it first; others that are mentioned with it may change.
    let key =
        |b: &toolberth::score::BrokenRule| (b.rule, b.lots.first().map_or(String::new(), name));
    (ledger.score(), all.iter().map(key).collect())
}

/// The layout after only those moved who make room for a slot.
fn made_room(layout: &Layout, slot: &Slot) -> Layout {
    let moved = |e: &Entry| {
        let of = |n: &Named| e.item == n.item && e.copy == n.copy;
        slot.displaced.iter().find(|(n, _)| of(n)).and_then(|(n, to)| Some(entry(n, to.as_ref()?)))
    };
    Layout {
        entries: layout.entries.iter().map(|e| moved(e).unwrap_or(e.clone())).collect(),
        ..layout.clone()
    }
}

fn differ(before: Score, after: Score) -> Differ {
    Differ {
        cost: Price::us(after.cost - before.cost),
        off_cart: Price::us(after.off_cart - before.off_cart),
        mends: before.broken - after.broken,
    }
}

/// Checks all that is said of one name; how many slots were checked.
fn check(workspace: &Workspace, layout: &Layout, name: &str) -> usize {
    let told: Why = why(workspace, layout, name).expect(name);
    assert!(!told.lots.is_empty(), "{name}");
    let before = score(workspace, layout);
    let mut checked = 0;
    for lot in &told.lots {
        if lot.at.is_some() {
            assert_eq!(lot.terms.iter().map(|t| t.price).sum::<Price>(), lot.price, "{name}");
            assert!(lot.terms.iter().all(|t| !t.told.is_empty()), "{name}");
        } else {
            assert!(lot.off.as_ref().is_some_and(|w| !w.is_empty()), "{name}");
        }
        assert!(lot.slots.len() <= 5);
        for slot in &lot.slots {
            let after = score(workspace, &taken(layout, &lot.named, slot));
            let what = format!("{name} to {}", slot.spot.name());
            assert_eq!(differ(before.0, after.0), slot.all, "{what}");
            assert!(slot.all.mends >= 0, "{what}");
            assert!(after.1.len() <= before.1.len() || after.1.is_subset(&before.1), "{what}");
            if slot.own != slot.all {
                let then = score(workspace, &made_room(layout, slot)).0;
                let base = Score {
                    broken: then.broken.min(before.0.broken),
                    off_cart: then.off_cart.min(before.0.off_cart),
                    cost: then.cost.min(before.0.cost),
                    excess: 0,
                };
                assert_eq!(differ(base, after.0), slot.own, "{what}");
            }
            checked += 1;
        }
        let leaves = |s: &Slot| s.displaced.iter().any(|(_, to)| to.is_none());
        let order = |s: &Slot| (leaves(s), -s.own.mends, s.own.off_cart, s.own.cost);
        assert!(lot.slots.windows(2).all(|w| order(&w[0]) <= order(&w[1])), "{name}");
    }
    let text = terminal::why(
        &told,
        &terminal::Look { width: 80, colour: terminal::Colour::Plain, ascii: true },
    );
    assert!(text.is_ascii() || !name.is_ascii(), "{text}");
    assert!(serde_json::from_str::<serde_json::Value>(&json::why(&told)).is_ok());
    checked
}

#[test]
fn every_slot_on_the_prop_cupboard_is_legal_and_costs_what_is_said() {
    let (workspace, layout) = demo("prop-shop");
    let now = said(&workspace, &layout);
    let names = ["screwdriver rack", "stage weights", "wig block", "scenic paint", "multimeter"];
    let checked: usize = names.iter().map(|n| check(&workspace, &now, n)).sum();
    assert!(checked >= 20, "{checked}");
}

#[test]
fn every_slot_on_carts_of_all_shapes_is_legal_and_costs_what_is_said() {
    let mut checked = 0;
    for seed in 0..30 {
        let workspace = carts::cart(seed, Size::Middle);
        // As planned, half empty, and with nothing on it.
        let whole = planned(&workspace);
        let half = whole.entries.iter().step_by(2).cloned().collect();
        let half = Layout { entries: half, ..whole.clone() };
        for layout in [whole, half, Layout::default()] {
            for item in workspace.items.iter().take(2) {
                checked += check(&workspace, &layout, &item.name);
            }
        }
    }
    assert!(checked > 100, "{checked}");
}

#[test]
fn it_answers_on_a_cart_that_is_unsafe_and_over_full() {
    let (workspace, _) = demo("village-hall");
    let mut full = workspace.clone();
    full.items.iter_mut().for_each(|i| i.weight = i.weight * 4);
    let layout = planned(&workspace);
    let told = score(&full, &layout);
    assert!(told.0.broken > 0);
    for name in ["cordless drill", "sewing machine"] {
        check(&full, &layout, name);
    }
}

#[test]
fn a_free_slot_displaces_nobody_and_is_among_those_told() {
    // On an empty cart everything is free: nobody makes room.
    let (mut workspace, _) = demo("prop-shop");
    workspace.items.truncate(1);
    let layout = planned(&workspace);
    let told = why(&workspace, &layout, "Tape Measure").expect("it is there");
    assert_eq!(told.lots.len(), 1);
    assert_eq!(told.lots[0].slots.len(), 5);
    assert!(told.lots[0].slots.iter().all(|s| s.displaced.is_empty()));
    let surfaces: BTreeSet<String> = told.lots[0].slots.iter().map(|s| s.spot.name()).collect();
    assert_eq!(surfaces.len(), 5);
    // The plan of one thing is its best: no slot gains anything.
    assert!(told.lots[0].slots.iter().all(|s| s.all.cost >= Price::ZERO));
}

#[test]
fn what_is_inside_another_is_found_and_a_slip_gets_the_nearest_name() {
    let (workspace, layout) = demo("prop-shop");
    let told = why(&workspace, &layout, "thimble").expect("it is in the sewing tin");
    assert_eq!((told.asked.as_str(), told.lots[0].named.item.as_str()), ("thimble", "sewing tin"));
    assert!(told.lots[0].holds_it);
    let faults = why(&workspace, &layout, "plier roll").expect_err("a slip");
    assert_eq!(faults[0].nearest.as_deref(), Some("pliers roll"));
    let faults = why(&workspace, &layout, "elephant").expect_err("nothing like it");
    assert_eq!(faults[0].nearest, None);
}

#[test]
fn what_is_supposed_changes_the_answer_where_it_should() {
    // A drawer that is a little too low for a thing that is in the way elsewhere: 3 cm lower it goes there.
    let (workspace, layout) = demo("prop-shop");
    let told = why(&workspace, &layout, "goggle box").expect("it is there");
    let suppose: Vec<&str> = told.lots[0].changes.iter().map(|c| c.suppose.as_str()).collect();
    assert_eq!(suppose, ["used twice as often", "30 mm lower"]);
    // At the wall every day: twice as often it gains twice as much by coming to the front.
    let gain = |s: &Slot| -s.own.cost;
    let now = told.lots[0].slots.first().map(gain).expect("there is room at the front");
    let often = told.lots[0].changes[0].slot.as_ref().map(gain).expect("all the more");
    assert!(often > now && now > Price::ZERO, "{often:?} {now:?}");
}
