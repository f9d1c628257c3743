//! What a plan says of tipping, casters and rolling, against the same worked out here from its own placements.

// A part of it is enough here.
#[allow(unused_imports)]
mod support;

use std::fs;
use support::{by_hand, planner};
use toolberth::domain::{CartPlace, Face, Obstacle, Workspace};
use toolberth::files;
use toolberth::finding::Span;
use toolberth::tasks::outcome::{Amount, Limit, Mark, Plan, Status, Trial};
use toolberth::units::{Length, Mass, Share};

const G: f64 = 9.806_65;
/// The casters of the cart by hand: from 50 to 950 and from 50 to 450; its bench is 800 high.
const ENDS: [[f64; 2]; 2] = [[50.0, 950.0], [50.0, 450.0]];

fn planned(change: impl Fn(&mut Workspace)) -> Plan {
    let mut workspace = by_hand::workspace();
    change(&mut workspace);
    planner::plan(&workspace, 1, 1)
}

fn newtons(amount: Amount) -> f64 {
    match amount {
        Amount::Force(of) | Amount::Moment(of) | Amount::Degrees(of) => of,
        _ => f64::NAN,
    }
}

fn trial<'a>(plan: &'a Plan, words: &str) -> &'a Trial {
    plan.stability.trials.iter().find(|t| t.case.contains(words)).expect("such a case is told")
}

#[track_caller]
fn near(found: f64, expected: f64, within: f64) {
    assert!((found - expected).abs() <= within, "{found} for {expected}");
}

/// From the plumb line to the nearest side, the casters at front and back so much further out.
fn distance(plan: &Plan, further: f64) -> f64 {
    let [x, y] = [0, 1].map(|axis| plan.balance.centre[axis].as_mm());
    let wide = (x - ENDS[0][0]).min(ENDS[0][1] - x);
    wide.min((y - ENDS[1][0]).min(ENDS[1][1] - y) + further)
}

#[test]
fn pushes_and_presses_follow_from_mass_and_plumb_line() {
    let plan = planned(|_| ());
    let weight = plan.balance.total.as_kg() * G;
    let push = trial(&plan, "pushed at bench height");
    near(newtons(push.value), weight * distance(&plan, 0.0) / 800.0, 0.01);
    near(newtons(push.limit), 48.0 * 4.448_222, 0.01);
    assert_eq!(push.mark, Mark::Read);
    let lean = trial(&plan, "leans on the edge");
    near(newtons(lean.value), weight * distance(&plan, 0.0) / 50.0, 0.1);
    near(newtons(lean.limit), 27.2 * G, 1e-6);
    near(lean.margin, newtons(lean.value) / newtons(lean.limit), 1e-9);
}

#[test]
fn work_on_top_is_held_by_the_locked_casters_that_carry_least() {
    let held = |locks: u32| {
        let plan = planned(|w| w.carcass.casters.locks = locks);
        let mut loads: Vec<f64> =
            plan.casters.iter().filter_map(|c| Some(c.load?.as_kg())).collect();
        loads.sort_by(f64::total_cmp);
        let locked: f64 = loads.iter().take(locks as usize).sum();
        (newtons(trial(&plan, "work on top").value), 0.5 * locked * G)
    };
    for locks in [0, 2, 4] {
        let (found, expected) = held(locks);
        near(found, expected, 0.01);
    }
}

#[test]
fn forces_of_the_shop_file_take_the_place_of_those_assumed() {
    let plan = planned(|w| {
        w.shop.forces.lean = Some(Mass::kg(1000));
        w.shop.forces.push = Some(Mass::kg(1));
        w.shop.forces.work = Some(Mass::kg(2));
        w.shop.forces.friction = Some(Share::ppm(250_000));
        w.shop.forces.rolling = Some(Share::ppm(50_000));
    });
    let lean = trial(&plan, "leans");
    near(newtons(lean.limit), 1000.0 * G, 1e-6);
    assert_eq!(lean.mark, Mark::Stated);
    assert!(lean.margin < 1.0);
    assert!(
        plan.cautions.iter().any(|c| c.text.starts_with("Someone leans")),
        "what does not hold is a caution"
    );
    assert!(!plan.cautions.iter().any(|c| c.text.starts_with("Pushed at")));
    near(newtons(trial(&plan, "pushed").limit), G, 1e-9);
    near(newtons(trial(&plan, "work on top").limit), 2.0 * G, 1e-9);
    let level = &plan.rolling.pushes[0];
    near(newtons(level.force.expect("a force")), plan.balance.total.as_kg() * G * 0.05, 1e-6);
    assert!(!plan.stability.assumed.iter().any(|a| a.contains("push") || a.contains("locked")));
    assert_eq!(plan.status == Status::Unsafe, !plan.worth.broken.is_empty(), "no force is a rule");
}

#[test]
fn the_least_margin_is_the_least_and_what_raises_it_is_tried() {
    let plan = planned(|_| ());
    let tips = plan.stability.trials.iter().filter(|t| t.side.is_some());
    let least = tips.map(|t| t.margin).fold(f64::INFINITY, f64::min);
    near(plan.stability.least().expect("a least").margin, least, 0.0);
    let extreme = plan.extremes.iter().find(|e| e.kind == "least tip margin").expect("told");
    let Limit::AtLeast(limit) = extreme.limit else { panic!("a least angle or force") };
    near(newtons(extreme.value) / newtons(limit), least, 1e-9);
    assert!(plan.stability.raise.windows(2).all(|w| w[0].margin[1] >= w[1].margin[1]));
    for raise in &plan.stability.raise {
        near(raise.margin[0], least, 1e-12);
        assert!(raise.margin[1] > least, "{}", raise.text);
    }
    let wheels = plan.stability.raise.iter().find(|r| r.text.starts_with("set the casters"));
    let wheels = wheels.expect("further out is better");
    assert_eq!(wheels.text, "set the casters at the front and back 50 mm further out");
    // The push is what counts before and after: nothing else of this cart is so near.
    let push = plan.balance.total.as_kg() * G * distance(&plan, 50.0) / 800.0 / (48.0 * 4.448_222);
    near(wheels.margin[1], push, 1e-4);
}

#[test]
fn the_least_while_loading_is_no_more_than_at_the_end() {
    let plan = planned(|_| ());
    let loading = plan.stability.loading.as_ref().expect("it is loaded step by step");
    let at_end = trial(&plan, "everything closed").margin;
    assert!(loading.margin <= at_end + 1e-9 && loading.case.contains("(step "), "{}", loading.case);
}

#[test]
fn an_empty_cart_that_does_not_stand_is_told() {
    let off = |w: &mut Workspace| {
        w.carcass.casters.at.iter_mut().for_each(|p| p[1] = (p[1] + Length::mm(1)).half())
    };
    let plan = planned(off);
    let empty = plan.stability.empty.as_ref().expect("casters under the front half only");
    assert!(empty.margin < 1.0 && empty.rule);
    assert!(planned(|_| ()).stability.empty.is_none());
}

#[test]
fn each_caster_has_its_own_rating() {
    let broken = |ratings: [i64; 4]| {
        let plan = planned(|w| {
            w.carcass.casters.ratings = ratings.map(Mass::kg).to_vec();
            w.carcass.casters.rating = ratings.iter().min().map(|r| Mass::kg(*r));
        });
        let told: Vec<Option<Mass>> = plan.casters.iter().map(|c| c.limit).collect();
        assert_eq!(told, ratings.map(|r| Some(Mass::kg(r))).to_vec());
        plan.worth.broken.iter().any(|b| b.rule == "casters")
    };
    assert!(!broken([30, 31, 30, 30]));
    assert!(broken([30, 30, 30, 5]), "the fourth carries more than 5 kg");
    assert!(broken([5, 60, 60, 60]), "and so does the first");
    assert!(!broken([20, 60, 60, 60]), "a light rating where little is carried");
}

#[test]
fn a_bump_under_a_stiff_cart_loads_no_caster_more_than_one_hanging_free() {
    let plan =
        planned(|w| w.carcass.casters.gives = Some([Length::from_mm(0.001), Length::mm(1000)]));
    let most = |words: &str| {
        let found = plan.stability.casters.iter().find(|t| t.case.contains(words));
        found.expect("told").load.as_kg()
    };
    let level = plan.casters.iter().filter_map(|c| c.load).max().expect("loads").as_kg();
    let hanging = plan.casters.iter().filter_map(|c| c.hanging).max().expect("loads").as_kg();
    assert!(most("if it is stiff") <= hanging + 1e-6 && most("if it is stiff") > level + 1.0);
    near(most("if the cart gives"), level, 0.05);
}

#[test]
fn doors_and_places_are_measured_with_what_hangs() {
    let plan = planned(|w| {
        w.shop.room.door = Some(Length::mm(510));
        w.shop.room.size = Some([Length::mm(3000), Length::mm(2000)]);
        w.shop.room.cart = Some(CartPlace {
            at: [Length::mm(1000), Length::mm(700)],
            quarter_turns: 0,
            span: Span::none(),
        });
        let at = [Length::mm(1200), Length::ZERO];
        w.shop.room.obstacles =
            vec![Obstacle { at, size: [Length::mm(400), Length::mm(100)], span: Span::none() }];
    });
    let door = plan.rolling.door.expect("its width is said");
    assert_eq!((door.broad, door.first), (Length::mm(500), Face::Left));
    let front = plan
        .rolling
        .before
        .iter()
        .find(|b| b.face == Face::Front)
        .expect("things are at the front");
    // 700 in front of it, 100 of them taken by the obstacle; the drawer comes out by 400 and a person takes 500.
    assert_eq!((front.free, front.needs), (Length::mm(600), Length::mm(900)));
    assert!(plan.rolling.in_the_way.is_empty());
    assert!(
        plan.cautions
            .iter()
            .any(|c| c.text.contains("too little floor") && c.text.contains("600 mm of 900 mm"))
    );
    assert!(plan.cautions.iter().any(|c| c.text.starts_with("The door leaves 10 mm")));
    let hung =
        plan.placements.iter().map(|p| p.space.min[0]).min().expect("things").min(Length::ZERO);
    near(plan.rolling.stands_on, (1000.0 - hung.as_mm()) * 500.0 * 1e-6, 1e-9);
}

#[test]
fn a_cart_in_the_wall_or_in_the_table_is_told() {
    let plan = planned(|w| {
        w.shop.room.door = Some(Length::mm(450));
        w.shop.room.size = Some([Length::mm(1900), Length::mm(1000)]);
        w.shop.room.cart = Some(CartPlace {
            at: [Length::mm(1500), Length::mm(400)],
            quarter_turns: 1,
            span: Span::none(),
        });
        let at = [Length::mm(1100), Length::mm(500)];
        w.shop.room.obstacles =
            vec![Obstacle { at, size: [Length::mm(100); 2], span: Span::none() }];
    });
    // Turned to the left it reaches 500 to the left of its corner and 1000 up from it.
    assert!(
        plan.rolling.in_the_way.iter().any(|w| w == "its right is 400 mm in the wall"),
        "{:?}",
        plan.rolling.in_the_way
    );
    assert!(plan.rolling.in_the_way.iter().any(|w| w.contains("obstacle 1")));
    assert!(plan.cautions.iter().any(|c| c.text.contains("does not pass the door of 450 mm")));
}

#[test]
fn only_loaded_drawers_without_a_catch_roll_open() {
    let plan = planned(|_| ());
    let loaded = plan.placements.iter().any(|p| p.bay == "small parts");
    assert_eq!(plan.rolling.opens, if loaded { vec!["small parts"] } else { vec![] });
    assert!(planned(|w| w.carcass.drawers[0].catch = true).rolling.opens.is_empty());
}

#[test]
fn a_threshold_is_met_by_the_casters_of_one_side() {
    let plan = planned(|w| {
        w.carcass.casters.wheel = Some(Length::mm(100));
        w.shop.room.threshold = Some(Length::mm(10));
    });
    let load = |k: usize| plan.casters[k].load.expect("it stands").as_kg() * G;
    let sides = [load(0) + load(1), load(2) + load(3), load(0) + load(2), load(1) + load(3)];
    let push = plan.rolling.pushes.iter().find(|p| p.case.contains("threshold")).expect("told");
    // A wheel of radius 50 over 10: three quarters of what it carries.
    near(
        newtons(push.force.expect("it can be pushed")),
        0.75 * sides.iter().copied().fold(f64::INFINITY, f64::min),
        0.01,
    );
    assert!(plan.cautions.iter().any(|c| c.text.starts_with("The threshold of 10 mm")));
    let high = planned(|w| {
        w.carcass.casters.wheel = Some(Length::mm(20));
        w.shop.room.threshold = Some(Length::mm(10));
    });
    let push = high.rolling.pushes.iter().find(|p| p.case.contains("threshold")).expect("told");
    assert!(
        push.force.is_none() && high.cautions.iter().any(|c| c.text.contains("cannot be pushed"))
    );
}

const CARCASS: &str = "name: box
size: {width: 800, depth: 500, height: 800}
mass: 30 kg
casters: {height: 100, RATING, wheel: 80, gives: [0.5, 4], locks: 2, at: [[50, 50], [750, 50], [50, 450], [750, 450]]}
faces:
  front:
    bays: [{name: low, at: [15, 120], opening: [380, 300], depth: 400}]
    drawers: [{name: top, at: [410, 500], opening: [360, 100], depth: 400, catch: true}]
";

fn read(rating: &str) -> files::Loaded {
    let folder = tempfile::tempdir().expect("a folder");
    let file = |name: &str, text: &str| fs::write(folder.path().join(name), text).expect("written");
    file("carcass.yaml", &CARCASS.replace("RATING", rating));
    file(
        "inventory.yaml",
        "items: [{name: box, size: [100, 100, 100], weight: 1 kg, use: daily}]\n",
    );
    file(
        "shop.yaml",
        "room: {threshold: 12, chip: 2}\nforces: {push: 20 kg, lean: 30 kg, work: 10 kg, friction: 40%, rolling: 2%}\n",
    );
    files::load(folder.path())
}

#[test]
fn the_files_say_forces_wheels_and_ratings() {
    let workspace = read("rating: [40 kg, 40 kg, 60 kg, 60 kg]").workspace.expect("good files");
    let casters = &workspace.carcass.casters;
    assert_eq!(casters.rating, Some(Mass::kg(40)));
    assert_eq!(casters.ratings, [40, 40, 60, 60].map(Mass::kg));
    assert_eq!(casters.wheel, Some(Length::mm(80)));
    assert_eq!(casters.gives, Some([Length::from_mm(0.5), Length::mm(4)]));
    assert!(workspace.carcass.drawers[0].catch);
    let (room, forces) = (&workspace.shop.room, &workspace.shop.forces);
    assert_eq!((room.threshold, room.chip), (Some(Length::mm(12)), Some(Length::mm(2))));
    assert_eq!(
        (forces.push, forces.lean, forces.work),
        (Some(Mass::kg(20)), Some(Mass::kg(30)), Some(Mass::kg(10)))
    );
    assert_eq!(
        (forces.friction, forces.rolling),
        (Some(Share::ppm(400_000)), Some(Share::ppm(20_000)))
    );
    let alike = read("rating: [40 kg, 40 kg, 40 kg, 40 kg]").workspace.expect("good files");
    assert!(alike.carcass.casters.ratings.is_empty());
}

#[test]
fn casters_without_a_rating_each_are_a_fault() {
    let told = |rating: &str| {
        read(rating).findings.iter().map(|f| f.text.clone()).collect::<Vec<_>>().join("; ")
    };
    assert!(told("rating: [40 kg, 40 kg]").contains("do not have a rating each"));
    assert!(!told("rating: 40 kg").contains("rating"));
}
