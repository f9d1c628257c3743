//! A layout as a person writes it: what is understood, what is arranged and what is found wrong.

use crate::support::carts::{self, Size};
use toolberth::domain::{Bay, Depth, Entry, Face, Layout, Workspace};
use toolberth::finding::Span;
use toolberth::score::Ledger;
use toolberth::site::Board;
use toolberth::solve::{Effort, Settings, Watch};
use toolberth::tasks::plan::plan;
use toolberth::tasks::standing::{Standing, standing};
use toolberth::units::{Length, Mass, Uses};

pub fn quick() -> Settings {
    Settings { effort: Effort::Quick, ..Settings::default() }
}

/// The layout of a quick plan.
pub fn planned(workspace: &Workspace) -> (Layout, toolberth::tasks::outcome::Plan) {
    let plan = plan(workspace, &quick(), &Watch::default()).expect("a sound cart");
    (plan.layout.clone(), plan)
}

fn read(workspace: &Workspace, layout: &Layout) -> Standing {
    standing(workspace, layout).expect("a sound cart")
}

pub fn entry(item: &str, bay: &str) -> Entry {
    Entry {
        item: item.to_owned(),
        copy: 1,
        copies: 1,
        face: None,
        bay: bay.to_owned(),
        surface: None,
        pose: None,
        turned: None,
        at: None,
        span: Span::none(),
    }
}

#[test]
fn a_planned_layout_reads_back_with_the_very_same_score() {
    for seed in 0..40 {
        let workspace = carts::cart(seed, Size::Middle);
        let (layout, plan) = planned(&workspace);
        let read = read(&workspace, &layout);
        let ledger = Ledger::new(&Board::with(&read.site, &read.places));
        assert_eq!(ledger.score().cost, plan.worth.cost.as_us(), "seed {seed}");
        assert_eq!(ledger.score().off_cart, plan.worth.off_cart.as_us(), "seed {seed}");
        assert_eq!(ledger.score().broken, plan.worth.broken.len() as i64, "seed {seed}");
        let left_out = !plan.left_out.is_empty();
        assert_eq!(read.findings.is_empty(), !left_out, "seed {seed}: {:?}", read.findings);
    }
}

#[test]
fn without_positions_things_are_arranged_so_that_they_fit() {
    let mut unfound = 0;
    for seed in 0..60 {
        let workspace = carts::cart(seed, Size::Middle);
        let (mut layout, plan) = planned(&workspace);
        for entry in &mut layout.entries {
            (entry.at, entry.pose, entry.turned) = (None, None, None);
        }
        let read = read(&workspace, &layout);
        let placed = read.places.iter().flatten().count();
        unfound += layout.entries.len() - placed;
        let board = Board::with(&read.site, &read.places);
        for lot in 0..read.site.lots.len() {
            assert_eq!(board.tangles(lot), 0, "seed {seed}");
        }
        // A plan fits: so nothing can be proven not to.
        for found in &read.findings {
            assert!(!found.what.contains("no arrangement of"), "seed {seed}: {}", found.what);
        }
        if placed == layout.entries.len() && plan.worth.broken.is_empty() {
            let broken = toolberth::score::broken(&board, &Ledger::new(&board));
            assert!(broken.iter().all(|b| b.rule != "fits"), "seed {seed}: {broken:?}");
        }
    }
    assert!(unfound <= 2, "{unfound} things of fitting layouts found no room");
}

/// A cart with one bay for four crates of 200 mm.
fn hold() -> Workspace {
    let mut carcass = carts::empty(500, 500, 700, 100);
    carcass.bays.push(Bay {
        face: Face::Front,
        name: "hold".to_owned(),
        at: [Length::mm(20), Length::mm(300)],
        opening: [Length::mm(440), Length::mm(300)],
        depth: Depth::Deep(Length::mm(440)),
        limit: None,
        shelves: Vec::new(),
        hang: Vec::new(),
        fixing: Default::default(),
        ends: Default::default(),
        span: Span::none(),
    });
    Workspace { carcass, items: Vec::new(), shop: carts::plain_shop(), layout: None }
}

#[test]
fn more_than_fits_is_proven_not_to() {
    let mut workspace = hold();
    let mut layout = Layout::default();
    for n in 0..5 {
        let size = [Length::mm(200); 3];
        workspace.items.push(carts::plain(
            &format!("crate {n}"),
            size,
            Mass::kg(1),
            Uses::from_week(1.0),
        ));
        layout
            .entries
            .push(Entry { surface: Some("floor".into()), ..entry(&format!("crate {n}"), "hold") });
    }
    let read = read(&workspace, &layout);
    assert_eq!(read.places.iter().flatten().count(), 4);
    assert!(read.findings[0].what.starts_with("no arrangement of"), "{:?}", read.findings);
}

#[test]
fn what_is_not_understood_is_found_and_the_rest_is_read() {
    let workspace = carts::cart(3, Size::Middle);
    let (layout, _) = planned(&workspace);
    let whole = read(&workspace, &layout).places.iter().flatten().count();
    type Spoil = fn(&mut Layout);
    let slips: [(&str, Spoil, usize); 5] = [
        ("not in the inventory", |l| l.entries[0].item += "zzzz", 1),
        ("there is no", |l| l.entries[0].bay += "q", 1),
        ("there is no", |l| l.entries[0].surface = Some("shelff 9".into()), 1),
        ("entered twice", |l| l.entries.push(l.entries[0].clone()), 0),
        ("there are", |l| l.entries[0].copy = 900, 1),
    ];
    for (words, spoil, lost) in slips {
        let mut layout = layout.clone();
        spoil(&mut layout);
        let read = read(&workspace, &layout);
        assert_eq!(read.places.iter().flatten().count(), whole - lost, "{words}");
        assert!(
            read.findings.iter().any(|f| f.what.contains(words)),
            "{words}: {:?}",
            read.findings
        );
    }
}

#[test]
fn an_empty_layout_and_a_face_alone_are_no_crash() {
    let workspace = carts::cart(5, Size::Middle);
    let read_empty = read(&workspace, &Layout::default());
    assert!(read_empty.places.iter().all(Option::is_none));
    assert_eq!(read_empty.findings.len(), workspace.items.len());
    let name = workspace.items[0].name.clone();
    let layout = Layout {
        entries: vec![Entry { face: Some(Face::Top), ..entry(&name, "") }],
        ..Layout::default()
    };
    read(&workspace, &layout);
}
