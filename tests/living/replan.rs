//! Replanning: the curve, its knee, and the steps, replayed by code of their own.

use crate::support::carts::{self, Dice, Size, empty, plain, plain_shop};
use std::collections::{BTreeMap, BTreeSet};
use toolberth::domain::{Bay, Depth, Face, Layout, Workspace};
use toolberth::finding::Span;
use toolberth::geometry::Box3;
use toolberth::score::{Ledger, Score};
use toolberth::site::{Board, Change, Clearing, Place, Site, Touched, for_each_corner};
use toolberth::solve::{Effort, Held, Settings, Watch, cycles, leash, moved};
use toolberth::tasks::outcome::Plan;
use toolberth::tasks::replan::{Replan, Spot, replan};
use toolberth::tasks::standing::standing;
use toolberth::tasks::{outcome::Status, plan};
use toolberth::units::{Length, Mass, Price, Uses};

fn settings(threads: usize) -> Settings {
    Settings { seed: 1, effort: Effort::Quick, threads }
}

fn fresh(workspace: &Workspace) -> Plan {
    plan::plan(workspace, &settings(2), &Watch::default()).expect("the cart is sound")
}

fn again(workspace: &Workspace, layout: &Layout, most: Option<usize>) -> Replan {
    replan(workspace, layout, &settings(2), most, &Watch::default()).expect("the cart is sound")
}

/// The layout that was right before the habits changed and before the last things were bought.
fn outgrown(workspace: &Workspace, bought: usize) -> Layout {
    let mut before = workspace.clone();
    let n = before.items.len();
    let uses: Vec<_> = workspace.items.iter().map(|i| i.uses).collect();
    for (k, item) in before.items.iter_mut().enumerate() {
        item.uses = uses[(k + n / 2) % n];
    }
    before.items.truncate(n - bought);
    fresh(&before).layout
}

// ------------------------------------------------------------------ small carts, all layouts

fn bay(face: Face, name: &str, at: [i64; 2], size: [i64; 2], deep: i64) -> Bay {
    Bay {
        face,
        name: name.to_owned(),
        at: at.map(Length::mm),
        opening: size.map(Length::mm),
        depth: Depth::Deep(Length::mm(deep)),
        limit: None,
        shelves: Vec::new(),
        hang: Vec::new(),
        fixing: Default::default(),
        ends: Default::default(),
        span: Span::none(),
    }
}

/// Three small bays and five things that only stand as they are.
fn tiny(seed: u64) -> Workspace {
    let mut dice = Dice::new(seed);
    let mut carcass = empty(700, 500, 800, 110);
    carcass.mass = Some(Mass::kg(30));
    carcass.bays = vec![
        bay(Face::Front, "low", [15, 150], [300, 220], 240),
        bay(Face::Front, "high", [15, 450], [260, 220], 200),
        bay(Face::Back, "rear", [15, 450], [240, 200], 220),
    ];
    let items = (0..5).map(|n| {
        let size = [dice.mm(80, 200), dice.mm(60, 160), dice.mm(60, 170)];
        let weight = Mass::from_kg(dice.real(0.2, 3.0));
        let mut item = plain(&format!("thing {n}"), size, weight, a_use(&mut dice));
        item.poses[1] = None;
        item.turn = false;
        item
    });
    Workspace { items: items.collect(), carcass, shop: plain_shop(), layout: None }
}

fn a_use(dice: &mut Dice) -> Uses {
    Uses::from_week(dice.spread(0.1, 14.0))
}

/// The best scores with 0, 1, … moves over all layouts that come of lifting so many lots and putting them and the new
/// ones, in any order, into any corner places or none.
fn every_layout(site: &Site, old: &[Option<Place>], most: usize) -> Vec<Score> {
    let n = site.lots.len();
    let mut best = Vec::new();
    for k in 0..=most {
        let mut least = None;
        for bits in 0..1u32 << n {
            let lifted: Vec<usize> = (0..n).filter(|l| bits >> l & 1 == 1).collect();
            if lifted.len() == k && lifted.iter().all(|&l| old[l].is_some()) {
                let mut free = lifted;
                free.extend((0..n).filter(|&l| old[l].is_none()));
                let kept: Vec<Option<Place>> =
                    (0..n).map(|l| old[l].filter(|_| !free.contains(&l))).collect();
                let mut board = Board::with(site, &kept);
                try_all(&mut board, &mut free, &mut least);
            }
        }
        let so_far = best.last().copied();
        best.push(so_far.into_iter().chain(least).min().expect("some layout"));
    }
    best
}

fn try_all(board: &mut Board, free: &mut Vec<usize>, least: &mut Option<Score>) {
    let score = Ledger::new(board).score();
    *least = Some(least.map_or(score, |l| l.min(score)));
    for k in 0..free.len() {
        let lot = free.remove(k);
        let mut places = Vec::new();
        for home in &board.site().lots[lot].homes {
            for_each_corner(board, lot, home, &mut Clearing::default(), |place| {
                places.push(place);
                true
            });
        }
        for place in places {
            board.apply(Change { lot, to: Some(place) }, &mut Touched::default());
            try_all(board, free, least);
            board.apply(Change { lot, to: None }, &mut Touched::default());
        }
        free.insert(k, lot);
    }
}

#[test]
fn each_point_is_the_best_of_all_layouts_on_small_carts() {
    let mut gains = 0;
    let watch = Watch::default();
    let cycle = cycles(Effort::Quick, &watch).next().expect("a fixed effort is one cycle");
    for seed in 0..6 {
        let workspace = tiny(seed);
        let layout = outgrown(&workspace, 1);
        let old = standing(&workspace, &layout).expect("the cart is sound");
        let right = every_layout(&old.site, &old.places, 2);
        let found =
            leash(&old.site, &old.places, &[0, 1, 2], &[], &settings(2), cycle, &watch).points;
        for (k, point) in found.iter().enumerate() {
            assert!(point.moved <= k, "cart {seed}");
            assert!(
                point.score <= right[k],
                "cart {seed}, {k} moves: {point:?} for {:?}",
                right[k]
            );
            // Better than all of these only where something stands in the middle of nowhere.
            if point.score < right[k] {
                assert!(!all_in_corners(&old.site, &old.places, point), "cart {seed}, {k} moves");
            }
        }
        gains += usize::from(right[2] < right[0]);
    }
    assert!(gains >= 4, "moving gained on {gains} carts of 6");
}

/// Whether what was moved can be taken off again one by one from corner places.
fn all_in_corners(site: &Site, old: &[Option<Place>], point: &Held) -> bool {
    let mut board = Board::with(site, &point.places);
    let mut left: Vec<usize> = (0..old.len())
        .filter(|&l| point.places[l].is_some() && point.places[l] != old[l])
        .collect();
    while !left.is_empty() {
        let corner = |&l: &usize| {
            let place = point.places[l].expect("it is on the cart");
            let mut found = false;
            for_each_corner(&board, l, &place.home, &mut Clearing::default(), |p| {
                found |= p == place;
                !found
            });
            found
        };
        let Some(k) = left.iter().position(corner) else { return false };
        let lot = left.remove(k);
        board.apply(Change { lot, to: None }, &mut Touched::default());
    }
    true
}

// ------------------------------------------------------------------ the curve

/// What must hold of every replan.
fn holds(workspace: &Workspace, layout: &Layout, found: &Replan, what: &str) {
    let curve = &found.curve;
    assert!(curve.windows(2).all(|w| w[1].score <= w[0].score), "{what}: the curve rises");
    assert!(curve.windows(2).all(|w| w[1].moves > w[0].moves), "{what}: moves do not rise");
    let gains: i64 = curve.iter().map(|p| p.gain.as_us()).sum();
    let value = |s: &Score| s.cost + s.off_cart;
    assert_eq!(gains, value(&curve[0].score) - value(&curve[curve.len() - 1].score), "{what}");
    let least = with_layout(workspace, layout);
    let least = fresh(&least);
    let end = curve[curve.len() - 1].score;
    let ours = (end.broken, end.off_cart, end.cost);
    let theirs = (
        i64::try_from(broken_subjects(workspace, layout, &least)).expect("few"),
        least.worth.off_cart.as_us(),
        least.worth.cost.as_us(),
    );
    assert!(ours <= theirs, "{what}: ends at {ours:?}, a fresh plan has {theirs:?}");
    let chosen = &curve[found.chosen];
    assert_eq!(found.plan.worth.cost, chosen.cost, "{what}");
    assert_eq!(found.plan.worth.off_cart, Price::us(chosen.score.off_cart), "{what}");
    assert_eq!(found.plan.worth.broken.is_empty(), chosen.score.broken == 0, "{what}");
    let old = standing(workspace, layout).expect("the cart is sound");
    let now = standing(workspace, &found.plan.layout).expect("the cart is sound");
    if old.site.lots.len() == now.site.lots.len() {
        assert!(moved(&old.places, &now.places) <= chosen.moves, "{what}: too many moves");
    }
    replay(workspace, layout, found, what);
}

fn with_layout(workspace: &Workspace, layout: &Layout) -> Workspace {
    Workspace { layout: Some(layout.clone()), ..workspace.clone() }
}

/// How many subjects break rules in a plan, as the score counts them.
fn broken_subjects(workspace: &Workspace, layout: &Layout, plan: &Plan) -> usize {
    let now = standing(&with_layout(workspace, layout), &plan.layout).expect("the cart is sound");
    Ledger::new(&Board::with(&now.site, &now.places)).score().broken as usize
}

/// Takes the steps one after the other on boxes alone: what is lifted is where it was left, no two things are ever in
/// one place that were not so before, and in the end everything is where the plan has it.
fn replay(workspace: &Workspace, layout: &Layout, found: &Replan, what: &str) {
    let old = standing(workspace, layout).expect("the cart is sound");
    let mut cart: BTreeMap<(String, u32), Box3> = BTreeMap::new();
    for (lot, place) in old.site.lots.iter().zip(&old.places) {
        if let Some(place) = place {
            let name = old.site.items[lot.item].name.clone();
            cart.insert((name, lot.first), place.space);
        }
    }
    let mut floor: BTreeSet<String> = BTreeSet::new();
    let overlaps = |cart: &BTreeMap<(String, u32), Box3>, b: &Box3| {
        cart.iter().find(|(_, o)| o.overlaps(b)).map(|(name, _)| name.clone())
    };
    for step in &found.steps {
        let key = (step.item.clone(), step.copy);
        match &step.from {
            Spot::On { space, .. } | Spot::Bench(space) => {
                assert_eq!(cart.remove(&key), Some(*space), "{what}: {step:?}");
            }
            Spot::Floor => assert!(floor.contains(&step.item), "{what}: {step:?}"),
            Spot::New => assert!(!cart.contains_key(&key), "{what}: {step:?}"),
            Spot::Off => panic!("{what}: nothing comes from off the cart: {step:?}"),
        }
        match &step.to {
            Spot::On { space, .. } | Spot::Bench(space) => {
                let there = overlaps(&cart, space);
                assert_eq!(there, None, "{what}: in the place of {step:?}");
                cart.insert(key, *space);
            }
            Spot::Floor => {
                assert!(step.temporary, "{what}: {step:?}");
                floor.insert(step.item.clone());
            }
            Spot::Off => {}
            Spot::New => panic!("{what}: nothing goes back to the shop: {step:?}"),
        }
    }
    let end: BTreeMap<(String, u32), Box3> =
        found.plan.placements.iter().map(|p| ((p.item.clone(), p.copy), p.space)).collect();
    assert_eq!(cart, end, "{what}: the steps end elsewhere");
}

#[test]
fn the_curve_falls_and_the_steps_lead_there() {
    for seed in 0..8 {
        let workspace = carts::cart(seed, Size::Small);
        let layout = outgrown(&workspace, 1);
        let found = again(&workspace, &layout, None);
        holds(&workspace, &layout, &found, &format!("small cart {seed}"));
    }
    for seed in 0..3 {
        let workspace = carts::cart(seed, Size::Middle);
        let layout = outgrown(&workspace, 2);
        for most in [None, Some(0), Some(3), Some(1000)] {
            let found = again(&workspace, &layout, most);
            holds(&workspace, &layout, &found, &format!("cart {seed}, at most {most:?}"));
        }
    }
}

#[test]
fn a_packed_cart_is_changed_by_hand() {
    let workspace = carts::packed(3, 30, 0.7);
    let layout = outgrown(&workspace, 1);
    let found = again(&workspace, &layout, Some(1000));
    holds(&workspace, &layout, &found, "packed");
    assert!(found.curve.len() > 9 && found.chosen + 1 == found.curve.len());
    assert!(found.steps.iter().any(|s| s.temporary), "a packed cart needs places to wait");
    let knee = again(&workspace, &layout, None);
    holds(&workspace, &layout, &knee, "packed, the knee");
    assert_eq!(knee.chosen, knee.knee);
    assert!(knee.steps.len() < found.steps.len());
}

#[test]
fn the_answer_is_the_same_for_any_number_of_threads() {
    let workspace = carts::cart(2, Size::Middle);
    let layout = outgrown(&workspace, 1);
    let [one, three] = [1, 3].map(|threads| {
        replan(&workspace, &layout, &settings(threads), None, &Watch::default()).expect("sound")
    });
    assert_eq!(format!("{one:?}"), format!("{three:?}"));
}

/// The knee by its definition: the greatest distance under the straight line from the first point to the last.
#[test]
fn the_knee_is_farthest_below_the_chord() {
    let workspace = carts::packed(5, 24, 0.5);
    let layout = outgrown(&workspace, 0);
    let found = again(&workspace, &layout, None);
    let last = &found.curve[found.curve.len() - 1];
    let all: Vec<(f64, f64)> = found
        .curve
        .iter()
        .filter(|p| p.score.broken == last.score.broken)
        .filter(|p| last.given_up > Price::ZERO || p.given_up == Price::ZERO)
        .map(|p| (p.moves as f64, (p.score.cost + p.score.off_cart) as f64))
        .collect();
    let ((x0, y0), (x1, y1)) = (all[0], all[all.len() - 1]);
    let below = |x: f64, y: f64| y0 + (y1 - y0) * (x - x0) / (x1 - x0) - y;
    let knee = &found.curve[found.knee];
    let at_knee = below(knee.moves as f64, (knee.score.cost + knee.score.off_cart) as f64);
    assert!(at_knee > 0.0);
    assert!(all.iter().all(|&(x, y)| below(x, y) <= at_knee + 1e-3));
}

// ------------------------------------------------------------------ what may have happened to a cart

#[test]
fn nothing_changes_where_nothing_was_bought_and_all_is_best() {
    for seed in 0..4 {
        let workspace = tiny(seed);
        // Replanned until it does not get better any more.
        let mut layout = fresh(&workspace).layout;
        for _ in 0..3 {
            layout = again(&workspace, &layout, Some(100)).plan.layout;
        }
        let found = again(&workspace, &layout, None);
        assert!(found.steps.is_empty(), "cart {seed}: {:?}", found.steps);
        assert!(found.findings.is_empty(), "cart {seed}: {:?}", found.findings);
        assert_eq!(found.curve[found.chosen].moves, 0, "cart {seed}");
        assert!(found.curve.iter().all(|p| p.gain == Price::ZERO), "cart {seed}");
    }
}

#[test]
fn what_was_sold_leaves_its_room_and_is_told() {
    let workspace = carts::packed(7, 24, 0.7);
    let layout = fresh(&workspace).layout;
    let mut less = workspace.clone();
    let sold = less.items.remove(3).name;
    let found = again(&less, &layout, None);
    holds(&less, &layout, &found, "one sold");
    assert!(found.findings.iter().any(|f| f.item == sold), "{:?}", found.findings);
    assert!(found.plan.placements.iter().all(|p| p.item != sold));
}

#[test]
fn an_empty_layout_is_filled_without_a_move() {
    let workspace = carts::cart(4, Size::Middle);
    let layout = Layout::default();
    let found = again(&workspace, &layout, None);
    holds(&workspace, &layout, &found, "empty");
    assert_eq!(found.curve.len(), 1);
    assert!(found.steps.iter().all(|s| s.from == Spot::New && !s.temporary));
}

#[test]
fn what_is_wrong_is_mended_first() {
    let workspace = tiny(2);
    let mut layout = fresh(&workspace).layout;
    // Two things written into one place.
    let place = layout.entries[0].clone();
    let other = &mut layout.entries[1];
    (other.face, other.surface, other.at) = (place.face, place.surface, place.at);
    other.bay = place.bay;
    let found = again(&workspace, &layout, None);
    assert!(found.curve[0].score.broken > 0, "{:?}", found.curve);
    let knee = &found.curve[found.knee];
    assert_eq!((knee.score.broken, knee.moves), (0, 1), "{:?}", found.curve);
    assert_eq!(found.plan.status, Status::Complete);
    holds(&workspace, &layout, &found, "two in one place");
}

#[test]
fn what_is_fixed_stays() {
    let mut workspace = carts::packed(9, 20, 0.6);
    let mut layout = outgrown(&workspace, 1);
    layout.entries.reverse();
    let names: Vec<String> = layout.entries.iter().take(5).map(|e| e.item.clone()).collect();
    for item in &mut workspace.items {
        item.fixed = names.contains(&item.name);
    }
    let found = again(&workspace, &layout, Some(1000));
    holds(&workspace, &layout, &found, "five fixed");
    assert!(found.steps.iter().all(|s| !names.contains(&s.item)));
}

#[test]
fn what_fits_nowhere_says_what_would_have_to_leave() {
    let mut workspace = tiny(1);
    // As wide as the widest bay: it fits only alone.
    let (w, d, h) = (Length::mm(300), Length::mm(240), Length::mm(190));
    let seldom = Uses::from_week(0.01);
    let mut large = plain("large case", [w, d, h], Mass::kg(1), seldom);
    (large.poses[1], large.turn) = (None, false);
    workspace.items.truncate(4);
    let small = (Length::mm(220), Length::mm(150), Length::mm(150));
    for item in &mut workspace.items {
        (item.size.w, item.size.d, item.size.h) = small;
        item.poses[0] = Some(item.size);
    }
    workspace.items.truncate(3);
    let mut layout = fresh(&workspace).layout;
    workspace.items.push(large);
    for (entry, bay) in layout.entries.iter_mut().zip(["low", "high", "rear"]) {
        entry.bay = bay.to_owned();
        entry.face = None;
        entry.at = None;
    }
    let found = again(&workspace, &layout, Some(0));
    assert_eq!(found.leaving.len(), 1, "{:?}", found.plan.left_out);
    let one = &found.leaving[0];
    assert_eq!(one.item.item, "large case");
    let low = found.plan.placements.iter().find(|p| p.bay == "low").expect("one is there");
    assert_eq!(one.leave.iter().map(|c| &c.item).collect::<Vec<_>>(), [&low.item]);
    // It leaves only where the plan was told to leave the rest where it is.
    assert!(
        found
            .curve
            .iter()
            .all(|p| p.moves == 0 || p.score.off_cart <= found.curve[0].score.off_cart)
    );
}

#[test]
fn copies_that_stand_apart_may_become_a_pile() {
    let mut workspace = tiny(3);
    workspace.items.truncate(3);
    let size = [90, 90, 30].map(Length::mm);
    let daily = Uses::per_week(14);
    let mut tin = plain("tin", size, Mass::from_kg(0.4), daily);
    (tin.poses[1], tin.turn, tin.count, tin.stack) = (None, false, 3, 3);
    workspace.items.push(tin);
    let mut single = workspace.clone();
    single.items[3].stack = 1;
    single.items.iter_mut().for_each(|i| i.uses = Uses::per_week(1));
    let layout = fresh(&single).layout;
    assert_eq!(layout.entries.iter().filter(|e| e.item == "tin" && e.copies == 1).count(), 3);
    for most in [None, Some(0), Some(1000)] {
        let found = again(&workspace, &layout, most);
        holds(&workspace, &layout, &found, &format!("tins, at most {most:?}"));
    }
}

#[test]
fn a_cart_that_is_over_full_is_judged_all_the_same() {
    let mut workspace = carts::packed(4, 24, 0.75);
    let mut more = workspace.items.clone();
    more.truncate(8);
    for item in &mut more {
        item.name = format!("second {}", item.name);
    }
    let layout = fresh(&workspace).layout;
    workspace.items.extend(more);
    let found = again(&workspace, &layout, None);
    holds(&workspace, &layout, &found, "over-full");
    assert!(!found.plan.left_out.is_empty());
    let out: BTreeSet<&String> = found.plan.left_out.iter().map(|l| &l.copy.item).collect();
    assert!(found.leaving.iter().all(|l| out.contains(&l.item.item) && !l.leave.is_empty()));
    assert!(!found.leaving.is_empty());
}

/// A new thing of use would take the place of one of little use, were seconds all that counts.
#[test]
fn the_knee_takes_nothing_off_a_cart_that_holds_all() {
    for seed in 0..6 {
        let workspace = carts::packed(seed, 20, 0.7);
        let layout = outgrown(&workspace, 1);
        let found = again(&workspace, &layout, None);
        holds(&workspace, &layout, &found, &format!("packed {seed}"));
        let curve = &found.curve;
        let value = |k: usize| curve[k].score.cost + curve[k].score.off_cart;
        let keeps = curve[curve.len() - 1].given_up == Price::ZERO && value(found.knee) < value(0);
        let other = (1..curve.len() - 1)
            .any(|k| curve[k].given_up == Price::ZERO && value(k) < value(curve.len() - 1));
        if keeps && other {
            assert_eq!(curve[found.knee].given_up, Price::ZERO, "cart {seed}: {curve:?}");
        }
    }
}
