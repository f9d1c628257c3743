//! What holds for every plan of every cart, and that the judge who says so is not easily deceived.

// A part of it is enough here.
#[allow(unused_imports)]
mod support;

use std::collections::BTreeSet;
use support::carts::{self, Size};
use support::judge::{better_left_out, judge, overlooked};
use support::{by_hand, planner};
use toolberth::domain::{Depth, Dims, Face, Hazard, Hazards, Home, Pose, Wall, Workspace};
use toolberth::finding::Span;
use toolberth::geometry::Box3;
use toolberth::score::Score;
use toolberth::site::{Place, Site};
use toolberth::solve::{Effort, Restarts, Settings, Watch, cycles};
use toolberth::tasks::outcome::{Broken, Kept, Plan, Status, Zone};
use toolberth::units::{Length, Mass, Price, Share, Time, Uses};

// ------------------------------------------------------------------ carts

#[test]
fn a_seed_draws_the_same_cart_again() {
    for seed in 0..20 {
        let [one, two] = [0; 2].map(|_| format!("{:?}", carts::cart(seed, Size::Middle)));
        assert_eq!(one, two);
    }
    assert_ne!(
        format!("{:?}", carts::cart(1, Size::Small)),
        format!("{:?}", carts::cart(2, Size::Small))
    );
}

#[test]
fn carts_show_every_shape() {
    let all: Vec<Workspace> = (0..300).map(|seed| carts::cart(seed, Size::Middle)).collect();
    let some = |what: &str, has: &dyn Fn(&Workspace) -> bool| {
        let count = all.iter().filter(|w| has(w)).count();
        assert!(count >= 3, "{count} of 300 carts have {what}");
    };
    for face in Face::ALL {
        some(face.name(), &|w| w.carcass.bays.iter().any(|b| b.face == face));
    }
    for wall in Wall::ALL {
        some(wall.name(), &|w| {
            w.carcass.bays.iter().any(|b| b.hang.iter().any(|(h, _)| *h == wall))
        });
    }
    some("a bay behind", &|w| {
        w.carcass.bays.iter().any(|b| matches!(b.depth, Depth::Behind { .. }))
    });
    for face in [Face::Front, Face::Left] {
        some("a way through", &|w| {
            w.carcass.bays.iter().any(|b| b.depth == Depth::Through && b.face == face)
        });
    }
    some("a shelf", &|w| w.carcass.bays.iter().any(|b| !b.shelves.is_empty()));
    some("a shelf to move", &|w| {
        w.carcass.bays.iter().any(|b| b.shelves.iter().any(|s| s.adjust.is_some()))
    });
    some("a shelf off the rear", &|w| {
        w.carcass.bays.iter().any(|b| b.shelves.iter().any(|s| s.front.is_some()))
    });
    some("a drawer", &|w| !w.carcass.drawers.is_empty());
    some("a panel", &|w| !w.carcass.panels.is_empty());
    some("a zone on the bench", &|w| !w.carcass.bench.zones.is_empty());
    some("no rating", &|w| w.carcass.casters.rating.is_none());
    for count in [3, 4, 5, 6] {
        some("other casters", &|w| w.carcass.casters.at.len() == count);
    }
    for pose in Pose::ALL {
        some(pose.name(), &|w| w.items.iter().any(|i| i.pose(pose).is_some()));
    }
    for hazard in Hazard::ALL {
        some(hazard.name(), &|w| w.items.iter().any(|i| i.hazards.has(hazard)));
    }
    some("an urgent thing", &|w| w.items.iter().any(|i| i.urgent));
    some("an order", &|w| w.items.iter().any(|i| !i.place.is_empty()));
    some("a pile", &|w| w.items.iter().any(|i| i.stack > 1 && i.count > 1));
    some("a row", &|w| w.items.iter().any(|i| i.pitch.is_some() && i.count > 1));
    some("obstacles", &|w| !w.shop.room.obstacles.is_empty());
}

#[test]
fn openings_never_collide() {
    for seed in 0..400 {
        let workspace = carts::cart(seed, Size::Small);
        let wrong = support::judge::collisions(&workspace);
        assert!(wrong.is_empty(), "cart {seed}: {}", wrong.join("\n"));
    }
    for workspace in [carts::packed(3, 40, 0.7), carts::sections(60)] {
        assert_eq!(support::judge::collisions(&workspace), [""; 0]);
    }
}

#[test]
fn a_packed_cart_is_as_full_as_asked() {
    for (seed, items, fill) in [(1, 24, 0.5), (2, 60, 0.75), (3, 40, 0.6)] {
        let workspace = carts::packed(seed, items, fill);
        let sides = |d: Dims| d.w.as_mm() * d.d.as_mm() * d.h.as_mm();
        let things: f64 = workspace.items.iter().map(|i| sides(i.size)).sum();
        let room = support::judge::litres_of_bays(&workspace) * 1e6;
        assert_eq!(workspace.items.len(), items);
        assert!((things / room - fill).abs() < 0.02, "{} for {fill}", things / room);
    }
}

#[test]
fn sections_are_alike_and_hold_few_things_each() {
    for count in [24, 60, 240, 1000] {
        let workspace = carts::sections(count);
        let names: BTreeSet<&str> = workspace.items.iter().map(|i| i.name.as_str()).collect();
        assert_eq!(names.len(), count);
        let a_section = workspace.carcass.bays.len() / count.div_ceil(12);
        assert_eq!(a_section, 2);
        assert_eq!(workspace.items[0].size, workspace.items[12].size);
    }
}

// ------------------------------------------------------------------ the judge

#[test]
fn the_judge_finds_nothing_wrong_with_a_good_plan() {
    assert_eq!(judge(&by_hand::workspace(), &by_hand::plan()), [""; 0]);
}

/// Writes one test for each way to spoil the good plan, with words that a complaint must hold.
macro_rules! the_judge_sees {
    ($($name:ident: $words:literal, |$workspace:ident, $plan:ident| $spoil:expr;)*) => {$(
        #[test]
        fn $name() {
            let mut good = (by_hand::workspace(), by_hand::plan());
            {
                let (workspace, plan) = &mut good;
                let ($workspace, $plan) = (workspace, plan);
                let _ = (&$workspace, &$plan);
                $spoil;
            }
            let complaints = judge(&good.0, &good.1);
            let seen = complaints.iter().any(|c| c.contains($words));
            assert!(seen, "no complaint holds {:?}: {complaints:#?}", $words);
        }
    )*};
}

const TIN: usize = 0;
const PLANE: usize = 1;
const GLUE: usize = 2;
const BITS: usize = 3;
const SQUARE: usize = 4;

/// Moves a box along an axis.
fn shift(space: &mut Box3, axis: usize, by: Length) {
    space.min[axis] += by;
    space.max[axis] += by;
}

fn broken(rule: &'static str, item: &str) -> Broken {
    Broken {
        rule,
        items: vec![item.to_owned()],
        told: "so it is said".to_owned(),
        value: 2.0,
        limit: 1.0,
        source: "nowhere",
    }
}

the_judge_sees! {
    the_judge_sees_a_box_moved_into_another: "glue 1 overlap", |w, p| {
        shift(&mut p.placements[PLANE].space, 1, Length::mm(-41))
    };
    the_judge_sees_a_box_moved_into_a_board: "crosses left / shelf 1", |w, p| {
        shift(&mut p.placements[TIN].space, 2, Length::mm(-1))
    };
    the_judge_sees_a_box_that_floats: "1 mm off its surface", |w, p| {
        shift(&mut p.placements[GLUE].space, 2, Length::mm(1))
    };
    the_judge_sees_a_hung_thing_off_its_wall: "off its surface", |w, p| {
        shift(&mut p.placements[SQUARE].space, 0, Length::mm(-1))
    };
    the_judge_sees_a_box_out_of_its_bay: "sticks out by 0.000001 mm", |w, p| {
        shift(&mut p.placements[GLUE].space, 1, Length::nm(-1))
    };
    the_judge_sees_too_little_free_height: "mm free above it", |w, p| {
        w.items[0].clearance = Some(Length::mm(186))
    };
    the_judge_sees_a_box_of_another_size: "which it cannot be", |w, p| {
        p.placements[BITS].space.max[0] += Length::mm(1)
    };
    the_judge_sees_a_pose_that_is_not_allowed: "may not stand", |w, p| w.items[4].poses[0] = None;
    the_judge_sees_a_deck_thing_said_to_hang: "may not hang there", |w, p| {
        p.placements[BITS].pose = Pose::Hang
    };
    the_judge_sees_a_turn_that_is_not_allowed: "which it cannot be", |w, p| {
        p.placements[PLANE].turned = true
    };
    the_judge_sees_a_pile_that_is_too_high: "which it cannot be", |w, p| w.items[2].stack = 1;
    the_judge_sees_a_placement_dropped: "bits 1 is told 0 times", |w, p| {
        drop(p.placements.remove(BITS))
    };
    the_judge_sees_a_placement_told_twice: "glue 1 is told 2 times", |w, p| {
        let again = p.placements[GLUE].clone();
        p.placements.push(again)
    };
    the_judge_sees_a_stranger: "is not in the inventory", |w, p| {
        p.placements[BITS].item = "bat".to_owned()
    };
    the_judge_sees_a_changed_weight: "weighs 0.5 kg", |w, p| {
        p.placements[BITS].weight += Mass::from_kg(0.001)
    };
    the_judge_sees_changed_uses: "times a week", |w, p| {
        p.placements[BITS].uses = Uses::per_week(3)
    };
    the_judge_sees_a_changed_grip: "has its grip at", |w, p| {
        p.placements[BITS].grip_height += Length::mm(1)
    };
    the_judge_sees_a_surface_moved: "lies elsewhere", |w, p| {
        shift(&mut p.surfaces[0].space, 0, Length::mm(1))
    };
    the_judge_sees_a_surface_dropped: "is not listed", |w, p| drop(p.surfaces.remove(3));
    the_judge_sees_another_limit: "other kind or limit", |w, p| {
        p.surfaces[0].limit = Some(Mass::kg(21))
    };
    the_judge_sees_a_changed_load: "floor carries 3 kg", |w, p| {
        p.surfaces[0].load += Mass::ng(1)
    };
    the_judge_sees_an_overloaded_surface: "supported", |w, p| {
        w.carcass.panels[0].limit = Some(Mass::from_kg(0.2))
    };
    the_judge_sees_a_board_moved: "no such board is told", |w, p| {
        shift(&mut p.solids[0].space, 2, Length::mm(5))
    };
    the_judge_sees_a_broken_order: "was ordered elsewhere", |w, p| {
        w.items[0].place = vec![Home { parts: vec!["left".into(), "rack".into()], span: Span::none() }]
    };
    the_judge_sees_a_thing_on_the_bench_unasked: "on the bench unasked", |w, p| {
        w.carcass.bench.keep_clear = Share::ppm(500_000);
        let thing = &mut p.placements[BITS];
        (thing.bay, thing.surface) = ("bench".into(), "bench".into());
        thing.face = Face::Top;
        shift(&mut thing.space, 2, Length::mm(675));
        shift(&mut thing.space, 1, Length::mm(250))
    };
    the_judge_sees_another_place_in_the_layout: "says another place", |w, p| {
        p.layout.entries[0].at = Some([Length::mm(1); 2])
    };
    the_judge_sees_a_slot_numbered_twice: "has slots", |w, p| p.placements[BITS].slot = 1;
    the_judge_sees_kept_room_that_is_taken: "kept room 1 is not free", |w, p| {
        p.reserve.push(Kept {
            family: None,
            face: Face::Front,
            bay: "left".into(),
            surface: "floor".into(),
            space: p.placements[GLUE].space,
            mass: Mass::ZERO,
        })
    };
    the_judge_sees_a_changed_total: "in all, told", |w, p| p.balance.total += Mass::ng(1);
    the_judge_sees_another_centre: "centre of mass", |w, p| {
        p.balance.centre[1] += Length::from_mm(0.1)
    };
    the_judge_sees_another_carcass: "carcass of 44 kg", |w, p| {
        p.balance.carcass += Mass::kg(1)
    };
    the_judge_sees_a_changed_caster_load: "casters carry", |w, p| {
        p.casters[0].load = p.casters[0].load.map(|l| l + Mass::from_kg(0.05))
    };
    the_judge_sees_a_changed_worst_load: "at worst", |w, p| {
        p.casters[0].worst = p.casters[0].worst.map(|l| l - Mass::from_kg(0.05))
    };
    the_judge_sees_a_changed_hanging_load: "with one hanging", |w, p| {
        p.casters[0].hanging = p.casters[0].hanging.map(|l| l + Mass::from_kg(0.05))
    };
    the_judge_sees_an_overloaded_caster: "not named as broken (casters)", |w, p| {
        w.carcass.casters.rating = Some(Mass::kg(12));
        p.casters.iter_mut().for_each(|c| c.limit = Some(Mass::kg(12)))
    };
    the_judge_sees_a_changed_tip_angle: "closed tips at", |w, p| p.tips[0].degrees += 0.1;
    the_judge_sees_a_tip_case_dropped: "no tip angle for small parts", |w, p| drop(p.tips.pop());
    the_judge_sees_that_the_cart_tips: "not named as broken (tip)", |w, p| {
        w.carcass.casters.trail = Length::mm(150)
    };
    the_judge_sees_a_blocker_kept_quiet: "should be {(\"glue\", 1)}", |w, p| {
        p.placements[PLANE].moved_first.clear()
    };
    the_judge_sees_a_blocker_made_up: "moved first", |w, p| {
        p.placements[TIN].moved_first = p.placements[PLANE].moved_first.clone()
    };
    the_judge_sees_a_blocker_that_is_fixed: "not named as broken (retrievable)", |w, p| {
        w.items[1].fixed = true
    };
    the_judge_sees_a_way_through_a_wall: "does not open to", |w, p| {
        p.placements[PLANE].way = Face::Back
    };
    the_judge_sees_fire_near_spirits: "not named as broken (hazards apart)", |w, p| {
        w.items[0].hazards = Hazards::of(&[Hazard::Hot]);
        w.items[4].hazards = Hazards::of(&[Hazard::Aerosol])
    };
    the_judge_sees_bleach_near_spirits: "not named as broken (hazards apart)", |w, p| {
        w.items[0].hazards = Hazards::of(&[Hazard::Oxidiser]);
        w.items[2].hazards = Hazards::of(&[Hazard::Flammable])
    };
    the_judge_sees_a_bare_edge_to_be_moved: "glue 1 is unguarded", |w, p| {
        w.items[1].hazards = Hazards::of(&[Hazard::Sharp])
    };
    the_judge_sees_oily_rags_in_the_open: "in no closed metal can", |w, p| {
        w.items[3].hazards = Hazards::of(&[Hazard::SelfHeating])
    };
    the_judge_sees_an_urgent_thing_behind_another: "plane 1: something is before it", |w, p| {
        w.items[0].urgent = true
    };
    the_judge_sees_an_urgent_thing_in_a_drawer: "bits 1: it is in a drawer", |w, p| {
        w.items[4].urgent = true
    };
    the_judge_sees_what_is_out_of_reach: "not named as broken (reachable)", |w, p| {
        p.placements[TIN].zone = Zone::Out
    };
    the_judge_sees_a_seated_person_kneel: "cannot be bend", |w, p| w.shop.person.seated = true;
    the_judge_sees_a_rule_named_without_need: "named as broken, but is not", |w, p| {
        p.worth.broken.push(broken("fits", "glue"))
    };
    the_judge_sees_terms_that_do_not_add_up: "terms add up to", |w, p| {
        p.worth.cost += Price::us(1)
    };
    the_judge_sees_a_placement_that_costs_more: "placements add up to", |w, p| {
        p.placements[TIN].per_week += Price::us(1)
    };
    the_judge_sees_another_price_of_a_fetch: "parts", |w, p| {
        p.placements[TIN].per_fetch = Time::s(2)
    };
    the_judge_sees_a_walk_that_costs_nothing: "roll-outs alone", |w, p| {
        w.shop.stations[0].walls = vec![Face::Left]
    };
    the_judge_sees_a_cheaper_left_out: "off the cart costs", |w, p| {
        p.left_out[0].price = Price::from_s(60.0)
    };
    the_judge_sees_a_start_better_than_the_plan: "worse than the start", |w, p| {
        p.start.cost -= Price::us(1)
    };
    the_judge_sees_a_bound_above_the_cost: "bound", |w, p| {
        p.bound.cost = Some(p.worth.cost + Price::us(1))
    };
    the_judge_sees_a_wrong_gap: "gap is 0.5", |w, p| p.bound.gap = Some(0.4);
    the_judge_sees_a_wrong_gap_with_handling: "gap with handling", |w, p| {
        p.bound.gap_with_handling = Some(0.5)
    };
    the_judge_sees_a_wrong_status: "follows as Partial", |w, p| p.status = Status::Complete;
    the_judge_sees_a_gap_beside_a_broken_rule: "though a rule is broken", |w, p| {
        p.worth.broken.push(broken("casters", ""))
    };
}

#[test]
fn a_breach_that_the_plan_names_is_excused() {
    let (mut workspace, mut plan) = (by_hand::workspace(), by_hand::plan());
    workspace.items[4].urgent = true;
    plan.worth.broken.push(broken("at hand", "bits"));
    (plan.status, plan.start.broken) = (Status::Unsafe, 1);
    (plan.bound.gap, plan.bound.gap_with_handling) = (None, None);
    assert_eq!(judge(&workspace, &plan), [""; 0]);
}

// ------------------------------------------------------------------ plans

/// Debug text of a plan without the one value that may differ between two runs.
fn told(mut plan: Plan) -> String {
    plan.effort.seconds = 0.0;
    format!("{plan:#?}")
}

fn judged(what: &str, workspace: &Workspace, plan: &Plan) {
    let mut complaints = judge(workspace, plan);
    if plan.worth.broken.is_empty() {
        complaints.extend(overlooked(workspace, plan));
    } else {
        complaints.extend(better_left_out(workspace, plan));
    }
    assert!(complaints.is_empty(), "{what}:\n{}", complaints.join("\n"));
}

#[test]
fn every_plan_of_a_small_cart_stands_before_the_judge() {
    for seed in 0..60 {
        let workspace = carts::cart(seed, Size::Small);
        judged(&format!("small cart {seed}"), &workspace, &planner::plan(&workspace, seed, 2));
    }
}

#[test]
fn every_plan_of_a_larger_cart_stands_before_the_judge() {
    for seed in 1000..1012 {
        let size = if seed % 4 == 0 { Size::Large } else { Size::Middle };
        let workspace = carts::cart(seed, size);
        judged(&format!("{size:?} cart {seed}"), &workspace, &planner::plan(&workspace, seed, 2));
    }
}

#[test]
fn carts_that_are_hard_stand_before_the_judge() {
    // Drawn at random and kept: rules broken by what could stay off, a costlier plan than the start where both break a
    // rule, a pile that must be parted to find room.
    let small = [111, 134, 239, 264, 327, 331].map(|seed| (Size::Small, seed));
    let middle = [57, 69, 100].map(|seed| (Size::Middle, seed));
    for (size, seed) in small.into_iter().chain(middle) {
        let workspace = carts::cart(seed, size);
        judged(&format!("{size:?} cart {seed}"), &workspace, &planner::plan(&workspace, seed, 2));
    }
}

#[test]
fn a_full_cart_finds_room_for_nearly_all() {
    for (seed, items, fill) in [(1, 24, 0.5), (2, 40, 0.6), (3, 60, 0.7)] {
        let workspace = carts::packed(seed, items, fill);
        let plan = planner::plan(&workspace, seed, 2);
        judged(&format!("packed cart {seed}"), &workspace, &plan);
        assert!(
            plan.left_out.len() * 5 <= items,
            "{} of {items} left out at {fill}",
            plan.left_out.len()
        );
    }
}

#[test]
fn the_number_of_threads_changes_nothing() {
    for seed in 0..4 {
        let workspace = carts::cart(seed, Size::Middle);
        let one = told(planner::plan(&workspace, seed, 1));
        for threads in [2, 7] {
            let more = told(planner::plan(&workspace, seed, threads));
            assert!(one == more, "cart {seed}: {threads} threads give another plan");
        }
    }
}

#[test]
fn further_cycles_never_make_a_layout_worse_and_are_the_same_for_any_number_of_threads() {
    let mut gains = 0;
    for seed in 0..3 {
        let site = Site::new(&carts::cart(seed, Size::Middle)).expect("the cart is sound");
        let bests = |threads: usize| -> Vec<(Score, Vec<Option<Place>>)> {
            let watch = Watch::default();
            let settings = Settings { seed, effort: Effort::UntilEnded, threads };
            let mut restarts = Restarts::new(&site, &settings);
            let three = cycles(settings.effort, &watch).take(3);
            three
                .map(|cycle| {
                    restarts.cycle(&site, cycle, &watch);
                    let found = restarts.found(&watch);
                    (found.score, found.places)
                })
                .collect()
        };
        let one = bests(1);
        assert!(one == bests(3), "cart {seed}: three threads find something else");
        assert!(one.windows(2).all(|w| w[1].0 <= w[0].0), "cart {seed}: a cycle made it worse");
        gains += one.windows(2).filter(|w| w[1].0 < w[0].0).count();
    }
    assert!(gains > 0, "no cycle found anything better");
}

#[test]
fn no_seed_makes_a_plan_worse_than_the_start() {
    let workspace = carts::cart(5, Size::Middle);
    for seed in 0..8 {
        let plan = planner::plan(&workspace, seed, 2);
        let mine = (plan.worth.broken.len(), plan.worth.off_cart, plan.worth.cost);
        assert!(mine <= (plan.start.broken, plan.start.off_cart, plan.start.cost), "seed {seed}");
    }
}

#[test]
fn the_judge_sees_one_millimetre_in_a_real_plan() {
    let mut tried = 0;
    for seed in 0..10 {
        let workspace = carts::cart(seed, Size::Small);
        let good = planner::plan(&workspace, seed, 2);
        for n in 0..good.placements.len() {
            let mut plan = good.clone();
            shift(&mut plan.placements[n].space, 2, Length::mm(1));
            assert!(!judge(&workspace, &plan).is_empty(), "cart {seed}, thing {n}");
            tried += 1;
        }
    }
    assert!(tried > 20, "only {tried} things were placed");
}
