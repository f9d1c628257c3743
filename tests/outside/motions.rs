//! Motion times, against the MTM-1 tables.
//!
//! Tables in inches: read on two online copies of one sheet. The data card of 2019 (SI): part of its first page read.

use crate::check::{Status, Topic};
use toolberth::physics::body::{Body, Grip};
use toolberth::physics::motion::{
    self, Grasp, Move, Reach, Symmetry, grasp, moved, position, reach, turn,
};
use toolberth::physics::people;
use toolberth::score::{COSTS, Ledger};
use toolberth::site::{Board, Change, Place, Site, Touched, box_at};
use toolberth::units::{Length, Mass, Time};

const SHEET: &str = "MTM-1 table in inches, read on two online copies of one sheet";
const CARD: &str = "MTM-1 data card 2019 (SI), part of page 1 read";
const SCAN: &str = "read (poor scan) in a textbook's MTM-1 table 14.4 b";
const RECALLED: &str = "MTM-1, recalled";

fn inches(distance: f64) -> Length {
    Length::from_mm(distance * 25.4)
}

/// Nanograms in a hundredth of a pound are whole, so rows begin where the sheet says.
fn pounds(mass: f64) -> Mass {
    Mass::ng((mass * 100.0).round() as i64 * 4_535_923_700)
}

fn tmu(time: Time) -> f64 {
    time.as_us() as f64 / 36_000.0
}

pub fn checks() -> Topic {
    let mut topic = Topic::new("motions");
    reaches(&mut topic);
    moves(&mut topic);
    weights(&mut topic);
    grasps(&mut topic);
    positions(&mut topic);
    turns(&mut topic);
    bodies(&mut topic);
    eyes(&mut topic);
    walks(&mut topic);
    fetches(&mut topic);
    extras(&mut topic);
    topic
}

/// The distances of the sheet's rows, in inches.
const INCHES: [f64; 21] = [
    0.75, 1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0, 12.0, 14.0, 16.0, 18.0, 20.0, 22.0,
    24.0, 26.0, 28.0, 30.0,
];

/// Case, its rows in TMU, and TMU for each further inch.
type Case<C> = (&'static str, C, [f64; 21], f64);

#[rustfmt::skip]
const REACHES: [Case<Reach>; 4] = [
    ("A", Reach::Fixed, [2.0, 2.5, 4.0, 5.3, 6.1, 6.5, 7.0, 7.4, 7.9, 8.3, 8.7, 9.6, 10.5, 11.4, 12.3, 13.1, 14.0, 14.9, 15.8, 16.7, 17.5], 0.4),
    ("B", Reach::Single, [2.0, 2.5, 4.0, 5.3, 6.4, 7.8, 8.6, 9.3, 10.1, 10.8, 11.5, 12.9, 14.4, 15.8, 17.2, 18.6, 20.1, 21.5, 22.9, 24.4, 25.8], 0.7),
    ("C and D", Reach::Jumbled, [2.0, 3.6, 5.9, 7.3, 8.4, 9.4, 10.1, 10.8, 11.5, 12.2, 12.9, 14.2, 15.6, 17.0, 18.4, 19.8, 21.2, 22.5, 23.9, 25.3, 26.7], 0.7),
    ("E", Reach::Aside, [2.0, 2.4, 3.8, 5.3, 6.8, 7.4, 8.0, 8.7, 9.3, 9.9, 10.5, 11.8, 13.0, 14.2, 15.5, 16.7, 18.0, 19.2, 20.4, 21.7, 22.9], 0.6),
];

#[rustfmt::skip]
const MOVES: [Case<Move>; 3] = [
    ("A", Move::Stop, [2.0, 2.5, 3.6, 4.9, 6.1, 7.3, 8.1, 8.9, 9.7, 10.5, 11.3, 12.9, 14.4, 16.0, 17.6, 19.2, 20.8, 22.4, 24.0, 25.5, 27.1], 0.8),
    ("B", Move::Near, [2.0, 2.9, 4.6, 5.7, 6.9, 8.0, 8.9, 9.7, 10.6, 11.5, 12.2, 13.4, 14.6, 15.8, 17.0, 18.2, 19.4, 20.6, 21.8, 23.1, 24.3], 0.6),
    ("C", Move::Exact, [2.0, 3.4, 5.2, 6.7, 8.0, 9.2, 10.3, 11.1, 11.8, 12.7, 13.5, 15.2, 16.9, 18.7, 20.4, 22.1, 23.8, 25.5, 27.3, 29.0, 30.7], 0.85),
];

/// Rows, linear in between, shorter than the first and 6 in beyond the last.
fn by_distance<C: Copy>(
    topic: &mut Topic,
    formula: &'static str,
    cases: &[Case<C>],
    time: fn(C, Length) -> Time,
) {
    let beyond =
        "MTM-1 table in inches, read on two online copies of one sheet; rate read, value computed";
    let between = "MTM-1 table in inches; its rule, linear between rows; values computed";
    for (what, case, rows, _) in cases {
        let at = |d: f64| tmu(time(*case, inches(d)));
        let table = INCHES.into_iter().zip(*rows);
        topic
            .against(formula, Status::Read, SHEET)
            .table(format!("case {what}"), table.map(|(d, x)| (d, at(d), x, 1e-9)));
        let middles = (0..20).map(|k| {
            let d = (INCHES[k] + INCHES[k + 1]) / 2.0;
            (d, at(d), (rows[k] + rows[k + 1]) / 2.0, 1e-3)
        });
        topic
            .against(formula, Status::Computed, between)
            .table(format!("case {what}, between its rows"), middles);
    }
    let ends = cases.iter().map(|(what, case, rows, further)| {
        (*what, tmu(time(*case, inches(36.0))), rows[20] + 6.0 * further, 1e-3)
    });
    topic.against(formula, Status::Computed, beyond).table("36 in, beyond the last row", ends);
    let short = [-5.0, 0.0, 0.4, 0.75].map(|d| (d, tmu(time(cases[0].1, inches(d))), 2.0, 1e-9));
    topic
        .against(formula, Status::Read, SHEET)
        .table("the first row holds for what is shorter", short);
}

fn reaches(topic: &mut Topic) {
    by_distance(topic, "physics::motion::reach", &REACHES, reach);
}

fn moves(topic: &mut Topic) {
    by_distance(topic, "physics::motion::moved", &MOVES, |case, d| moved(case, d, Mass::ZERO));
}

/// (pounds up to, factor, constant in TMU), read.
const WEIGHTS: [(f64, f64, f64); 10] = [
    (2.5, 1.0, 0.0),
    (7.5, 1.06, 2.2),
    (12.5, 1.11, 3.9),
    (17.5, 1.17, 5.6),
    (22.5, 1.22, 7.4),
    (27.5, 1.28, 9.1),
    (32.5, 1.33, 10.8),
    (37.5, 1.39, 12.5),
    (42.5, 1.44, 14.3),
    (47.5, 1.5, 16.0),
];

fn weights(topic: &mut Topic) {
    let at = |mass: f64| tmu(moved(Move::Near, inches(16.0), pounds(mass)));
    let rows = WEIGHTS.into_iter().enumerate().flat_map(|(i, (bound, factor, constant))| {
        let from = if i == 0 { 0.0 } else { bound - 5.0 + 0.01 };
        [from, bound - 1.0, bound].map(|lb| (lb, at(lb), constant + factor * 15.8, 1e-4))
    });
    let rows: Vec<_> = rows.collect();
    topic
        .against("physics::motion::moved", Status::Read, SHEET)
        .table("factor and constant by weight, from the least to the most of each row", rows);
    topic
        .against(
            "physics::motion::moved",
            Status::Computed,
            "constant + factor x table, as on the card; numbers read, product computed",
        )
        .near("16 in with up to 12.5 lb: 3.9 + 1.11 x 15.8", at(12.5), 21.438, 1e-4);
}

/// Our own continuation: 0.06 and 1.7 TMU more for each further 5 lb.
#[test]
fn heavier_than_the_sheet_goes_on_like_its_last_step() {
    let at = |mass: f64| tmu(moved(Move::Near, inches(16.0), pounds(mass)));
    assert!((at(47.51) - (17.7 + 1.56 * 15.8)).abs() < 1e-4);
    assert!((at(57.5) - (19.4 + 1.62 * 15.8)).abs() < 1e-4);
}

fn grasps(topic: &mut Topic) {
    let mm = Length::mm;
    let read = [
        ("G1A easy", Grasp::Easy, 2.0),
        ("G1B very small or flat", Grasp::Flat, 3.5),
        ("G1C1 cylinder over 13 mm", Grasp::Cylinder(mm(14)), 7.3),
        ("G1C2 cylinder 6 to 13 mm", Grasp::Cylinder(mm(10)), 8.7),
        ("G1C3 cylinder under 6 mm", Grasp::Cylinder(mm(4)), 10.8),
        ("G4A jumbled, over 25 mm", Grasp::Jumbled(mm(30)), 7.3),
        ("G5 contact", Grasp::Contact, 0.0),
    ];
    let recalled = [
        ("G4B jumbled, to 25 mm", Grasp::Jumbled(mm(20)), 9.1),
        ("G4C jumbled, smaller", Grasp::Jumbled(mm(3)), 12.9),
        ("G2 and G3", Grasp::Again, 5.6),
    ];
    let rows = |all: &[(&'static str, Grasp, f64)]| {
        all.iter().map(|&(what, case, x)| (what, tmu(grasp(case)), x, 1e-9)).collect::<Vec<_>>()
    };
    topic
        .against("physics::motion::grasp", Status::Read, SCAN)
        .table("G1", rows(&read[..5]))
        .table("G4A and G5", rows(&read[5..]));
    topic
        .against("physics::motion::grasp", Status::Memory, RECALLED)
        .table("G2, G3, G4B, G4C", rows(&recalled));
}

fn positions(topic: &mut Topic) {
    for (what, symmetry, easy, awkward) in [
        ("P1S", Symmetry::Any, 5.6, 11.2),
        ("P1SS", Symmetry::Some, 9.1, 14.7),
        ("P1NS", Symmetry::One, 10.4, 16.0),
    ] {
        let rows = [("easy", false, easy), ("difficult", true, awkward)]
            .map(|(how, hard, x)| (how, tmu(position(symmetry, hard)), x, 1e-9));
        topic.against("physics::motion::position", Status::Memory, RECALLED).table(what, rows);
    }
}

/// Degrees, then TMU up to 1, 5 and 16 kg.
const TURNS: [(u32, [f64; 3]); 11] = [
    (30, [2.8, 4.4, 8.4]),
    (45, [3.5, 5.5, 10.5]),
    (60, [4.1, 6.5, 12.3]),
    (75, [4.8, 7.5, 14.4]),
    (90, [5.4, 8.5, 16.2]),
    (105, [6.1, 9.6, 18.3]),
    (120, [6.8, 10.6, 20.4]),
    (135, [7.4, 11.6, 22.2]),
    (150, [8.1, 12.7, 24.3]),
    (165, [8.7, 13.7, 26.1]),
    (180, [9.4, 14.8, 28.2]),
];

fn turns(topic: &mut Topic) {
    for (k, (what, kg)) in
        [("up to 1 kg", 1), ("up to 5 kg", 5), ("up to 16 kg", 16)].into_iter().enumerate()
    {
        let rows = TURNS.map(|(d, x)| (d, tmu(turn(d, Mass::kg(kg))), x[k], 1e-9));
        topic.against("physics::motion::turn", Status::Read, CARD).table(what, rows);
    }
}

fn bodies(topic: &mut Topic) {
    let side = |mm, other| tmu(motion::side_step(Length::mm(mm), other));
    topic
        .against("physics::motion::side_step", Status::Read, CARD)
        .near("30 cm, leading leg only", side(300, false), 17.0, 1e-9)
        .near("30 cm, other leg closes up", side(300, true), 34.1, 1e-9)
        .near("50 cm, leading leg only: 0.2 for each further cm", side(500, false), 21.0, 1e-9)
        .near("50 cm, other leg closes up: 0.4 for each", side(500, true), 42.1, 1e-9);
    let both = 2.0 * tmu(motion::turn_body(false));
    topic
        .against("physics::motion::turn_body", Status::Read, CARD)
        .near("45 to 90 degrees, case 1", tmu(motion::turn_body(false)), 18.6, 1e-9)
        .near("case 2, lagging leg closes up", tmu(motion::turn_body(true)), 37.2, 1e-9)
        .near("case 2 is two of case 1", tmu(motion::turn_body(true)), both, 1e-9);
    topic
        .against(
            "physics::motion::bend_and_arise",
            Status::Read,
            "61 for both, and 29 and 32, read in two public garment-work time tables, rounded",
        )
        .near("together", tmu(motion::bend_and_arise()), 61.0, 0.5)
        .near("down", tmu(motion::BEND), 29.0, 0.5)
        .near("up", tmu(motion::ARISE), 32.0, 0.5);
    topic.against("physics::motion::bend_and_arise", Status::Memory, RECALLED).table(
        "B and AB",
        [("B", tmu(motion::BEND), 29.0, 1e-9), ("AB", tmu(motion::ARISE), 31.9, 1e-9)],
    );
    topic
        .against("physics::motion::kneel_and_arise", Status::Memory, RECALLED)
        .near("KBK", tmu(motion::KNEEL), 69.4, 1e-9)
        .near("AKBK", tmu(motion::ARISE_FROM_KNEES), 76.7, 1e-9)
        .near("both", tmu(motion::kneel_and_arise()), 146.1, 1e-9);
}

fn eyes(topic: &mut Topic) {
    topic
        .against("physics::motion::eye", Status::Read, "read on a course page about the MTM tables")
        .near("focus", tmu(motion::EYE_FOCUS), 7.3, 1e-9);
    let travel = |apart, away| tmu(motion::eye_travel(Length::mm(apart), Length::mm(away)));
    topic
        .against("physics::motion::eye", Status::Memory, RECALLED)
        .near("600 mm apart seen from 500 mm", travel(600, 500), 18.24, 0.01)
        .near("never over 20", travel(2000, 500), 20.0, 1e-9);
}

/// Walking is by the pace; the tables' pace a foot is a trained one in a clear aisle.
fn walks(topic: &mut Topic) {
    let ten = Length::mm(10_000);
    let speed = |time: Time| 10.0 / time.as_s();
    topic
        .against("physics::motion::walk", Status::Memory, RECALLED)
        .near("15.0 TMU a pace", tmu(motion::walk(motion::STEP)), 15.0, 1e-9)
        .near(
            "per foot: our pace against 5.3 TMU, 1.597 m/s, a discount of 13 %",
            speed(motion::walk(ten)) / 1.597_484,
            0.87,
            0.005,
        );
    topic.against("physics::motion::walk", Status::Practice, "a pace of 750 mm").near(
        "metres a second",
        speed(motion::walk(ten)),
        1.389,
        0.001,
    );
}

/// A plain fetch of 16 in, with bend and arise, and on both knees.
fn fetches(topic: &mut Topic) {
    let d = inches(16.0);
    let plain = reach(Reach::Single, d)
        + grasp(Grasp::Easy)
        + moved(Move::Near, d, Mass::ZERO)
        + motion::RELEASE;
    topic
        .against(
            "physics::motion (a plain fetch)",
            Status::Memory,
            "computed from rows of the tables; release recalled",
        )
        .near("reach B, G1A, move B, RL1, in s", plain.as_s(), 1.2816, 0.0005)
        .near(
            "the same with bend and arise",
            (plain + motion::bend_and_arise()).as_s(),
            3.474,
            0.0005,
        )
        .near("the same on both knees", (plain + motion::kneel_and_arise()).as_s(), 6.5412, 0.0005);
    topic.against("physics::motion (a plain fetch)", Status::Read, CARD).near(
        "100 000 TMU are an hour",
        (grasp(Grasp::Easy) * 50_000).as_s(),
        3600.0,
        0.0,
    );
}

/// What a place costs a fetch beyond the nearest reach: taken and put back.
///
/// From 400 mm to 762 mm (30 in) reach B goes from 15.624 to 25.8 and move B from 15.649 to 24.3 TMU (linear between
/// rows): 2 × (10.176 + 8.651) more for a place 362 mm deep. With 5 lb in the hand move B has 1.06 times as much.
fn extras(topic: &mut Topic) {
    let body = Body::standing(people::DEFAULT, None);
    let mm = Length::from_mm;
    let at = |height: Length, depth: Length, mass: Mass| {
        tmu(body.extra(&Grip { height, depth, sill: Length::ZERO }, mass))
    };
    let none = Length::ZERO;
    topic
        .against(
            "physics::body::extra",
            Status::Computed,
            "rows of the MTM-1 table in inches, read; linear between rows, computed",
        )
        .near("362 mm deep", at(mm(1000.0), mm(362.0), Mass::ZERO), 37.655, 0.002)
        .near(
            "362 mm above the shoulder",
            at(body.shoulder + mm(362.0), none, Mass::ZERO),
            37.655,
            0.002,
        )
        .near(
            "half up, half in",
            at(body.shoulder + mm(181.0), mm(181.0), Mass::ZERO),
            37.655,
            0.002,
        )
        .near("362 mm deep with 5 lb", at(mm(1000.0), mm(362.0), pounds(5.0)), 38.692, 0.002);
    topic
        .against(
            "physics::body::extra",
            Status::Memory,
            "bend and arise 60.9, both knees 146.1 TMU, recalled; each down and up twice a fetch",
        )
        .near("at 700 mm, under the knuckle", at(mm(700.0), none, Mass::ZERO), 2.0 * 60.9, 1e-6)
        .near("at 300 mm, under the knee", at(mm(300.0), none, Mass::ZERO), 2.0 * 146.1, 1e-6);
}

/// Two cans before a case: fetching it costs what moving two cans aside and back costs, by the tables: 600 mm of move B
/// (20.395 TMU between 22 and 24 in; 1.06 times that and 2.2 with a can of 1.35 kg), a grasp and a release, twice each.
#[test]
fn a_shelf_blocked_by_two_cans_costs_what_moving_two_cans_costs() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let write =
        |name: &str, text: &str| std::fs::write(folder.path().join(name), text).expect("written");
    write(
        "carcass.yaml",
        "units: mm
size: {width: 400, depth: 500, height: 1200}
mass: 20 kg
casters: {height: 100, at: [[50, 50], [350, 50], [50, 450], [350, 450]]}
faces:
  front:
    bays:
      - {name: hole, at: [50, 900], opening: [260, 250], depth: 400}
",
    );
    write(
        "inventory.yaml",
        "items:
  - {name: case, size: [250, 200, 200], weight: 3, use: 1 per week, keep: [stand], turn: false}
  - {name: can, size: [120, 120, 150], weight: 1.35, use: 0, count: 2, keep: [stand]}
",
    );
    let loaded = toolberth::files::load(folder.path());
    let site = Site::new(&loaded.workspace.expect("a good workspace")).expect("a good carcass");
    let mut board = Board::new(&site);
    for (lot, corner) in [(0, [0, 200]), (1, [0, 50]), (2, [130, 50])] {
        let home = *site.lots[lot].homes.first().expect("a home");
        let space = box_at(&site, &home, board.free(home.surface as usize), corner.map(Length::mm));
        let to = Some(Place { home, space });
        board.apply(Change { lot, to }, &mut Touched::default());
    }
    let blocked = COSTS.iter().position(|c| c.name == "blocked").expect("the term");
    let told = Ledger::new(&board).term(blocked).as_s();
    let can = 2.0 + (2.2 + 1.06 * (19.4 + 1.2 * (600.0 / 25.4 - 22.0) / 2.0)) + 2.0;
    assert!((told - 2.0 * 2.0 * can * 0.036).abs() < 1e-4, "{told}");
}
