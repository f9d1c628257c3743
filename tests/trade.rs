//! Facts of the trade: what somebody who keeps tools expects of any good plan. Each is common practice, no source.

// A part of it is enough here.
#[allow(unused_imports)]
mod support;

use std::path::Path;
use std::sync::LazyLock;
use support::{carts, planner};
use toolberth::domain::{Bay, Depth, Face, Item, Overhang, Panel, Workspace};
use toolberth::files;
use toolberth::finding::Span;
use toolberth::solve::{Settings, Watch};
use toolberth::tasks::outcome::{Companions, Family, Placement, Plan, Status, Zone};
use toolberth::tasks::plan::plan;
use toolberth::units::{Length, Mass, Price, Time, Unit, Uses};

/// A plan of a demo at normal effort.
fn demo(name: &str) -> Plan {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("demo-data").join(name);
    let workspace = files::load(&folder).workspace.expect("the demo can be read");
    plan(&workspace, &Settings::default(), &Watch::default()).expect("the cart is sound")
}

static HALL: LazyLock<Plan> = LazyLock::new(|| demo("village-hall"));
static FLAT: LazyLock<Plan> = LazyLock::new(|| demo("first-flat"));

/// The quarter of the places that is fetched from most often.
fn top_quarter(plan: &Plan) -> Vec<&Placement> {
    let mut all: Vec<&Placement> = plan.placements.iter().collect();
    all.sort_by_key(|p| (std::cmp::Reverse(p.uses), &p.item, p.copy));
    all.truncate(all.len() / 4);
    all
}

fn told(all: &[&Placement]) -> String {
    let one = |p: &&Placement| {
        format!(
            "{} ({:.1} a week, {} / {}, {})",
            p.item,
            p.uses.as_week(),
            p.face.name(),
            p.bay,
            p.zone.name()
        )
    };
    all.iter().map(one).collect::<Vec<_>>().join(", ")
}

fn mean(values: impl Iterator<Item = f64>) -> f64 {
    let all: Vec<f64> = values.collect();
    all.iter().sum::<f64>() / all.len() as f64
}

// ------------------------------------------------------------------ the village hall

/// Common practice, no source: what is used daily lives where one works. The bench is before the hand there too.
#[test]
fn the_busy_quarter_lives_on_the_face_of_the_work() {
    let top = top_quarter(&HALL);
    let (there, elsewhere): (Vec<_>, Vec<_>) =
        top.iter().partition(|p| matches!(p.way, Face::Front | Face::Top));
    let share = there.len() as f64 / top.len() as f64;
    assert!(share >= 0.75, "{share:.2} of the busy quarter; elsewhere: {}", told(&elsewhere));
}

/// Common practice, no source: nobody kneels or climbs for what is used on most days, and hardly ever for what else is
/// busy.
#[test]
fn the_busy_quarter_is_in_easy_reach_or_a_bend_away() {
    let top = top_quarter(&HALL);
    let is_hard = |p: &&Placement| !matches!(p.zone, Zone::Easy | Zone::Bend);
    let hard: Vec<&Placement> = top.iter().copied().filter(is_hard).collect();
    assert!(hard.len() * 10 <= top.len(), "{}", told(&hard));
    assert!(hard.iter().all(|p| p.uses.as_week() < 5.0), "{}", told(&hard));
}

/// Common practice, no source: nothing stands before what is used daily.
#[test]
fn nothing_stands_before_the_busy_quarter() {
    let top = top_quarter(&HALL);
    let behind: Vec<&Placement> = top.into_iter().filter(|p| !p.moved_first.is_empty()).collect();
    assert!(behind.is_empty(), "{}", told(&behind));
}

/// Common practice, no source: what has to wait behind others is what is seldom used.
#[test]
fn what_stands_behind_others_is_used_less() {
    let (behind, free): (Vec<&Placement>, Vec<&Placement>) =
        HALL.placements.iter().partition(|p| !p.moved_first.is_empty());
    if behind.is_empty() {
        return;
    }
    let uses = |all: &[&Placement]| mean(all.iter().map(|p| p.uses.as_week()));
    let (hidden, open) = (uses(&behind), uses(&free));
    assert!(hidden < open, "{hidden:.2} a week behind others, {open:.2} free");
}

/// Common practice, no source: heavy things live low.
#[test]
fn heavy_things_live_low() {
    let all = &HALL.placements;
    let mass: f64 = all.iter().map(|p| p.weight.as_kg()).sum();
    let weighed = all.iter().map(|p| p.weight.as_kg() * p.grip_height.as_mm()).sum::<f64>() / mass;
    let plain = mean(all.iter().map(|p| p.grip_height.as_mm()));
    assert!(weighed <= plain, "grips at {weighed:.0} mm by mass, at {plain:.0} mm by number");
}

/// Common practice, no source: what is used together lives together.
#[test]
fn nearly_all_companions_share_a_face() {
    let pairs: Vec<&Companions> = HALL.companions.iter().filter(|c| c.on_cart()).collect();
    let apart: Vec<&str> =
        pairs.iter().filter(|c| !c.share_a_face()).map(|c| c.told.as_str()).collect();
    assert!(pairs.len() >= 10, "{} pairs", pairs.len());
    assert!(apart.len() * 10 <= pairs.len(), "{} of {}: {apart:?}", apart.len(), pairs.len());
}

/// On how many sides of the cart its families stand, all together.
fn sides(plan: &Plan) -> usize {
    let of = |f: &Family| f.faces.iter().filter(|(face, _)| *face != Face::Top).count();
    plan.families.iter().map(of).sum()
}

/// Common practice, no source: a family has a corner of its own, where that is worth anything.
#[test]
fn with_the_family_rate_a_family_stands_on_fewer_faces() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("demo-data/village-hall");
    let mut workspace = files::load(&folder).workspace.expect("the demo can be read");
    workspace.shop.rates.family = Time::ZERO;
    let without = plan(&workspace, &Settings::default(), &Watch::default()).expect("it is sound");
    let term = |plan: &Plan| {
        plan.worth.terms.iter().find(|(name, _)| *name == "family").map(|(_, price)| *price)
    };
    assert_eq!(term(&without), Some(Price::ZERO));
    let (with, without) = (sides(&HALL), sides(&without));
    assert!(with < without, "{with} sides with the rate, {without} without");
}

/// Common practice, no source: finishes and what cleans up after them have a face to themselves, away from the work.
#[test]
fn finishing_and_cleaning_share_a_face_that_is_not_that_of_the_work() {
    let faces = |name: &str| -> Vec<Face> {
        let family = HALL.families.iter().find(|f| f.name == name).expect("it is on the cart");
        family.faces.iter().map(|(face, _)| *face).collect()
    };
    let (finish, cleaning) = (faces("finish"), faces("cleaning"));
    let shared = finish.iter().any(|f| *f != Face::Front && cleaning.contains(f));
    assert!(shared, "finish on {finish:?}, cleaning on {cleaning:?}");
}

/// Common practice, no source: a cart built for its tools holds them all, safely.
#[test]
fn both_demos_hold_everything_and_break_no_rule() {
    for plan in [&*HALL, &*FLAT] {
        let left: Vec<&str> = plan.left_out.iter().map(|l| l.copy.item.as_str()).collect();
        let broken: Vec<&str> = plan.worth.broken.iter().map(|b| b.told.as_str()).collect();
        assert_eq!(left, [""; 0], "{}", plan.name);
        assert_eq!(broken, [""; 0], "{}", plan.name);
        assert_eq!(plan.status, Status::Complete, "{}", plan.name);
    }
}

/// Common practice, no source: a plan is no worse than going through the list by hand.
#[test]
fn both_demos_are_better_than_their_start() {
    for plan in [&*HALL, &*FLAT] {
        let (found, start) = (&plan.worth, &plan.start);
        let of_plan = (found.broken.len(), found.off_cart, found.cost);
        assert!(of_plan < (start.broken, start.off_cart, start.cost), "{}", plan.name);
    }
}

// ------------------------------------------------------------------ small carts

/// A cart a good metre wide with one bay in front, so wide and deep.
fn one_bay(wide: i64, deep: i64, items: Vec<Item>) -> Workspace {
    let mut carcass = carts::empty(1050, 500, 900, 110);
    carcass.mass = Some(Mass::kg(40));
    carcass.bays.push(Bay {
        face: Face::Front,
        name: "bay".to_owned(),
        at: [15, 600].map(Length::mm),
        opening: [wide, 250].map(Length::mm),
        depth: Depth::Deep(Length::mm(deep)),
        limit: None,
        shelves: Vec::new(),
        hang: Vec::new(),
        fixing: Default::default(),
        ends: Default::default(),
        span: Span::none(),
    });
    Workspace { carcass, items, shop: carts::plain_shop(), layout: None }
}

/// Round cans of a litre, kept upright.
fn cans(count: i64) -> Vec<Item> {
    let can = |n: i64| {
        let size = [108, 108, 130].map(Length::mm);
        let mut can =
            carts::plain(&format!("can {n}"), size, Mass::kg(1), Uses::per_week(1 + n % 3));
        can.poses[1] = None;
        can
    };
    (0..count).map(can).collect()
}

/// Common practice, no source: a rack one can deep shows every can; twice as deep it hides half of them.
#[test]
fn on_a_shallow_deck_no_can_hides_another() {
    let hidden = |plan: &Plan| plan.placements.iter().filter(|p| !p.moved_first.is_empty()).count();
    let shallow = planner::plan(&one_bay(900, 125, cans(8)), 1, 1);
    assert_eq!((shallow.placements.len(), hidden(&shallow)), (8, 0));
    let deep = planner::plan(&one_bay(450, 250, cans(8)), 1, 1);
    assert_eq!((deep.placements.len(), hidden(&deep)), (8, 4));
}

/// A metre of steel, which may hang.
fn straightedge() -> Item {
    let size = [1000, 10, 35].map(Length::mm);
    let mut item = carts::plain("straightedge", size, Mass::from_kg(0.85), Uses::per_week(1));
    item.poses[2] = Some(item.size);
    item
}

/// Common practice, no source: what is longer than every opening hangs outside.
#[test]
fn what_is_longer_than_every_opening_hangs_on_a_panel() {
    let mut workspace = one_bay(500, 300, vec![straightedge()]);
    workspace.carcass.panels.push(Panel {
        face: Face::Back,
        name: "long rail".to_owned(),
        at: [15, 700].map(Length::mm),
        size: [1020, 100].map(Length::mm),
        room: Length::mm(60),
        limit: None,
        overhang: Overhang::default(),
        material: None,
        thickness: None,
        fixing: Default::default(),
        span: Span::none(),
    });
    let plan = planner::plan(&workspace, 1, 1);
    assert_eq!(plan.status, Status::Complete);
    let place = &plan.placements[0];
    assert_eq!((place.bay.as_str(), place.surface.as_str()), ("long rail", "panel"));
}

/// Common practice, no source: who is turned away is told by how much. The bay takes 500 mm.
#[test]
fn without_a_panel_it_is_left_out_with_what_it_needs_and_what_there_is() {
    let plan = planner::plan(&one_bay(500, 300, vec![straightedge()]), 1, 1);
    assert_eq!(plan.status, Status::Partial);
    assert!(plan.placements.is_empty());
    let why = &plan.left_out[0].why;
    for words in ["1000 mm", "500 mm", "bay"] {
        assert!(why.contains(words), "{words:?} in {why:?}");
    }
}

// ------------------------------------------------------------------ the first flat

/// Common practice, no source: a beginner measures in what the tape shows.
#[test]
fn a_cart_in_inches_speaks_in_inches() {
    assert_eq!(FLAT.units, Unit::In);
    let mut long = straightedge();
    long.poses[2] = None;
    let mut workspace = one_bay(508, 300, vec![long]);
    workspace.carcass.units = Unit::In;
    let plan = planner::plan(&workspace, 1, 1);
    let why = &plan.left_out[0].why;
    // 1000 mm is 39 6/16 in to the sixteenth, 508 mm are 20 in.
    for words in ["39 3/8 in", "20 in"] {
        assert!(why.contains(words), "{words:?} in {why:?}");
    }
    assert!(!why.contains("mm"), "{why:?}");
}
