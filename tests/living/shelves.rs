//! Shelves that may be moved: planned, written down, and judged where they then stand.

use crate::ground::{demo, planned};
use crate::support::carts::{self, Size};
use crate::support::planner;
use toolberth::domain::{Layout, ShelfEntry, Workspace};
use toolberth::finding::Span;
use toolberth::solve::{Settings, Watch};
use toolberth::tasks::audit::audit;
use toolberth::tasks::outcome::Plan;
use toolberth::units::Length;

/// Carts with a shelf that may be moved, drawn from seeds, and the one of the demonstrations.
fn carts() -> Vec<(String, Workspace)> {
    let moves = |w: &Workspace| {
        w.carcass.bays.iter().flat_map(|b| &b.shelves).any(|shelf| shelf.adjust.is_some())
    };
    let drawn = (0..40).map(|seed| (format!("cart {seed}"), carts::cart(seed, Size::Middle)));
    let mut all: Vec<(String, Workspace)> = drawn.filter(|(_, w)| moves(w)).take(12).collect();
    all.push(("new-build".to_owned(), demo("new-build").0));
    all
}

fn value(plan: &Plan) -> (usize, i64, i64) {
    let worth = &plan.worth;
    (worth.broken.len(), worth.off_cart.as_us(), worth.cost.as_us())
}

#[test]
fn shelves_stand_on_their_rows_in_their_order() {
    let mut moved = 0;
    for (name, workspace) in carts() {
        let plan = planner::plan(&workspace, 1, 1);
        let shelves = plan.shelves.expect("shelves that may be moved");
        for set in &shelves.set {
            let is_it = |b: &&toolberth::domain::Bay| b.face == set.face && b.name == set.bay;
            let bay = workspace.carcass.bays.iter().find(is_it).expect("a bay");
            let number: usize = set.surface["shelf ".len()..].parse().expect("a number");
            let shelf = &bay.shelves[bay.shelves_rising()[number - 1]];
            let [low, high, step] = shelf.adjust.expect("a shelf that may be moved");
            assert!(low <= set.height && set.height <= high, "{name}: {set:?}");
            assert_eq!((set.height - low).as_nm() % step.as_nm(), 0, "{name}: {set:?}");
            assert_eq!(set.drawn, shelf.height, "{name}: {set:?}");
            moved += usize::from(set.height != set.drawn);
        }
        for (one, other) in shelves.set.iter().zip(&shelves.set[1..]) {
            let rising =
                (one.face, &one.bay) != (other.face, &other.bay) || one.height < other.height;
            assert!(rising, "{name}: {one:?} under {other:?}");
        }
    }
    assert!(moved >= 5, "{moved} shelves were moved");
}

#[test]
fn moving_shelves_is_never_worse_than_leaving_them_as_drawn() {
    for (name, workspace) in carts() {
        let plan = planner::plan(&workspace, 2, 1);
        let nailed = planner::plan(&workspace.as_stands(&[]), 2, 1);
        assert!(nailed.shelves.is_none());
        assert!(
            value(&plan) <= value(&nailed),
            "{name}: {:?} and {:?}",
            value(&plan),
            value(&nailed)
        );
        let told = plan.shelves.as_ref().expect("shelves that may be moved");
        assert_eq!(
            (told.as_drawn, told.off_cart),
            (nailed.worth.cost, nailed.worth.off_cart),
            "{name}"
        );
    }
}

/// A written layout is judged with the shelves where it has them: it costs what the plan cost.
#[test]
fn a_layout_remembers_where_its_shelves_stand() {
    for (name, workspace) in carts() {
        let plan = planner::plan(&workspace, 3, 1);
        let told = audit(&workspace, &plan.layout, &Settings::default(), &Watch::default());
        let told = told.expect("a sound cart").plan;
        assert_eq!(value(&told), value(&plan), "{name}");
        assert_eq!(told.layout.shelves.len(), plan.layout.shelves.len(), "{name}");
        assert!(told.shelves.is_none(), "{name}: nothing is moved in a cart that stands");
    }
}

#[test]
fn a_shelf_that_is_not_there_is_told() {
    let (workspace, _) = demo("new-build");
    let shelf = |bay: &str, surface: &str| ShelfEntry {
        face: None,
        bay: bay.to_owned(),
        surface: surface.to_owned(),
        height: Length::mm(294),
        span: Span::none(),
    };
    let layout = Layout {
        shelves: vec![
            shelf("port bay", "shelf 1"),
            shelf("port bay", "shelf 3"),
            shelf("prt bay", "shelf 1"),
        ],
        ..planned(&workspace)
    };
    let told = audit(&workspace, &layout, &Settings::default(), &Watch::default());
    let told = told.expect("a sound cart");
    let said: Vec<&str> = told.findings.iter().map(|f| f.what.as_str()).collect();
    for what in [
        "port bay / shelf 3 is no shelf of this cart",
        "prt bay / shelf 1 is no shelf of this cart",
    ] {
        assert!(said.iter().any(|s| s.contains(what)), "{said:?}");
    }
    assert!(!said.iter().any(|s| s.contains("port bay / shelf 1 is no")), "{said:?}");
}
