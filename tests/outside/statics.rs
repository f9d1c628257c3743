//! Loads on casters and tipping, against textbook statics.

use super::check::{Status, Topic};
use toolberth::geometry::Way;
use toolberth::physics::casters::{MOST, Supports};
use toolberth::physics::tipping::{Footprint, degrees};
use toolberth::units::Length;

/// Places in mm.
pub fn places(at: &[[f64; 2]]) -> Vec<[Length; 2]> {
    at.iter().map(|p| p.map(Length::from_mm)).collect()
}

/// Loads for a body of `total` with its centre of mass at x, y; nothing where it tips.
pub fn loads(at: &[[f64; 2]], total: f64, [x, y]: [f64; 2]) -> Option<Vec<f64>> {
    let mut out = [f64::NAN; MOST];
    let supports = Supports::new(&places(at)).expect("supports span an area");
    supports.loads(total, total * x, total * y, &mut out).then(|| out[..at.len()].to_vec())
}

fn rectangle(a: f64, b: f64) -> [[f64; 2]; 4] {
    [[a, b], [a, -b], [-a, b], [-a, -b]]
}

/// Each number within a tolerance of the one expected.
#[track_caller]
pub fn near(found: &[f64], expected: &[f64], tolerance: f64) {
    assert_eq!(found.len(), expected.len());
    for (f, e) in found.iter().zip(expected) {
        assert!((f - e).abs() <= tolerance, "{found:?} for {expected:?}");
    }
}

const SPRINGS: &str = "four equal springs under a rigid rectangle, R = W/4 (1 +- x/a +- y/b): form read on an engineering question page, numbers computed";
const THREE: &str = "statics of three supports (lever rule)";
const PLATE: &str = "rigid plate on equal springs, least squares";
const BALANCE: &str = "moment balance about the support line, textbook";

/// Loads on casters, tipping, pushes and leaning.
pub fn checks() -> Topic {
    let mut topic = Topic::new("statics");
    supports(&mut topic);
    hanging(&mut topic);
    tipping(&mut topic);
    topic
}

fn first(at: &[[f64; 2]], total: f64, centre: [f64; 2]) -> Vec<f64> {
    loads(at, total, centre).expect("the body stands")
}

/// Each caster's load beside the one expected, for a table of checks.
fn rows<'a>(
    found: &'a [f64],
    expected: &'a [f64],
    within: f64,
) -> impl Iterator<Item = (usize, f64, f64, f64)> + 'a {
    assert_eq!(found.len(), expected.len());
    found.iter().zip(expected).enumerate().map(move |(k, (f, e))| (k, *f, *e, within))
}

fn supports(topic: &mut Topic) {
    let mut springs = topic.against("physics::casters::loads", Status::Computed, SPRINGS);
    for (a, b, total, at, expected) in [
        (300.0, 200.0, 1000.0, [0.0, 0.0], [250.0, 250.0, 250.0, 250.0]),
        (300.0, 200.0, 1000.0, [60.0, 0.0], [300.0, 300.0, 200.0, 200.0]),
        (300.0, 200.0, 1000.0, [60.0, -50.0], [237.5, 362.5, 137.5, 262.5]),
        (350.0, 250.0, 1200.0, [-105.0, 75.0], [300.0, 120.0, 480.0, 300.0]),
        (280.0, 280.0, 800.0, [28.0, 140.0], [320.0, 120.0, 280.0, 80.0]),
    ] {
        let found = first(&rectangle(a, b), total, at);
        springs.table(format!("{total} at {at:?} on {a} x {b}"), rows(&found, &expected, 0.05));
    }
    let least =
        |share: f64| first(&rectangle(300.0, 200.0), 1000.0, [150.0 * share, 100.0 * share])[3];
    springs.holds(
        "lift-off begins where |x|/a + |y|/b passes 1",
        least(0.999) > 0.0 && least(1.0).abs() < 1e-9 && least(1.001).abs() < 1e-9,
    );
    let corner = first(&rectangle(300.0, 200.0), 1000.0, [60.0, 50.0])[0];
    springs.near("not the product of shares, which gives 375", corner, 362.5, 0.01);

    let mut three = topic.against("physics::casters::loads", Status::Computed, THREE);
    let found = first(&rectangle(1.0, 1.0), 100.0, [0.66, 0.5]);
    three.table("54, 29, 21 and -4 are really these", rows(&found, &[58.0, 25.0, 17.0, 0.0], 0.01));
    let at = [[0.0, 0.0], [1000.0, 0.0], [0.0, 800.0]];
    let found = first(&at, 900.0, [300.0, 200.0]);
    three.table("three supports", rows(&found, &[405.0, 270.0, 225.0], 0.01));

    let mut plate = topic.against("physics::casters::loads", Status::Computed, PLATE);
    let trapezoid = [[-200.0, -250.0], [200.0, -250.0], [350.0, 250.0], [-350.0, 250.0]];
    plate.table("a trapezoid", rows(&first(&trapezoid, 1000.0, [0.0, 0.0]), &[250.0; 4], 0.01));
    let six = [
        [-400.0, -200.0],
        [0.0, -200.0],
        [400.0, -200.0],
        [-400.0, 200.0],
        [0.0, 200.0],
        [400.0, 200.0],
    ];
    let expected = [85.0, 160.0, 235.0, 165.0, 240.0, 315.0];
    plate.table("six in two rows", rows(&first(&six, 1200.0, [100.0, 40.0]), &expected, 0.01));
}

/// The worst load with one caster hanging free; a rectangle of 600 by 400 under 1000.
fn worst_of_three(x: f64, y: f64) -> f64 {
    let supports = Supports::new(&places(&rectangle(300.0, 200.0))).expect("an area");
    let mut out = [f64::NAN; MOST];
    assert!(supports.hanging(1000.0, 1000.0 * x, 1000.0 * y, &mut out));
    out.iter().copied().fold(0.0, f64::max)
}

fn hanging(topic: &mut Topic) {
    topic
        .against("physics::casters::hanging", Status::Computed, THREE)
        .near("the middle: half on each neighbour", worst_of_three(0.0, 0.0), 500.0, 0.01)
        .near("60, 50 off the middle", worst_of_three(60.0, 50.0), 600.0, 0.01);
    topic
        .against(
            "physics::casters::hanging",
            Status::Read,
            "a caster maker's glossary page: total / 3, a convention",
        )
        .holds("more than the convention's 333.3", worst_of_three(0.0, 0.0) > 1000.0 / 3.0);
}

fn tipping(topic: &mut Topic) {
    let mut tip = topic.against(
        "physics::tipping::degrees",
        Status::Computed,
        "atan(d/h), rigid body about the support line",
    );
    tip.near("250 over 500", degrees(250.0, 500.0), 26.565_05, 0.001)
        .near("300 over 450", degrees(300.0, 450.0), 33.690_07, 0.001)
        .near("200 over 800", degrees(200.0, 800.0), 14.036_24, 0.001)
        .near("moved in by a trail of 35", degrees(250.0 - 35.0, 500.0), 23.2677, 0.001)
        .near("outside: it goes over by itself", degrees(-200.0, 800.0), -14.036_24, 0.001);
    let supports = Supports::new(&places(&rectangle(300.0, 200.0))).expect("an area");
    let mut out = [0.0; MOST];
    assert!(supports.loads(90.0, 0.0, -12.0 * 400.0, &mut out));
    let middle =
        rectangle(300.0, 200.0).iter().zip(out).map(|(p, load)| p[1] * load).sum::<f64>() / 90.0;
    topic.against("physics::casters::loads", Status::Computed, BALANCE).near(
        "a drawer of 12 kg out by 400 on a cart of 90 moves the middle of the loads",
        middle,
        -53.333_33,
        0.001,
    );
}

#[test]
fn three_supports_have_none_to_hang() {
    let supports = Supports::new(&places(&[[0.0, 0.0], [1000.0, 0.0], [0.0, 800.0]])).unwrap();
    let mut out = [f64::NAN; MOST];
    assert!(!supports.hanging(900.0, 270_000.0, 180_000.0, &mut out));
    assert_eq!(out, [0.0; MOST]);
}

#[test]
fn a_body_beyond_its_casters_tips() {
    let at = rectangle(300.0, 200.0);
    assert!(loads(&at, 100.0, [300.1, 0.0]).is_none());
    assert!(loads(&at, 100.0, [-250.0, 200.1]).is_none());
    near(&loads(&at, 100.0, [300.0, 100.0]).unwrap(), &[75.0, 25.0, 0.0, 0.0], 1e-6);
    near(&loads(&at, 100.0, [300.0, 200.0]).unwrap(), &[100.0, 0.0, 0.0, 0.0], 1e-6);
}

#[test]
fn supports_must_span_an_area() {
    let none = |at: &[[f64; 2]]| {
        Supports::new(&places(at)).is_none() && Footprint::new(&places(at), Length::ZERO).is_none()
    };
    assert!(none(&[]));
    assert!(none(&[[0.0, 0.0], [10.0, 0.0]]));
    assert!(none(&[[0.0, 0.0], [10.0, 0.0], [10.0, 0.0]]));
    assert!(none(&[[0.0, 0.0], [10.0, 10.0], [20.0, 20.0], [35.0, 35.0]]));
    let many: Vec<[f64; 2]> = (0..13).map(|i| [f64::from(i), f64::from(i * i)]).collect();
    assert!(Supports::new(&places(&many)).is_none());
    assert!(Supports::new(&places(&many[..12])).is_some());
}

#[test]
fn the_nearest_side_is_named_by_the_face_over_it() {
    let at = places(&[[55.0, 55.0], [995.0, 55.0], [55.0, 505.0], [995.0, 505.0], [500.0, 55.0]]);
    let footprint = Footprint::new(&at, Length::mm(30)).unwrap();
    assert_eq!(footprint.sides(), 4);
    for (x, y, way, distance) in [
        (500.0, 200.0, Way::Front, 115.0),
        (500.0, 400.0, Way::Back, 75.0),
        (100.0, 280.0, Way::Left, 15.0),
        (1000.0, 280.0, Way::Right, -35.0),
    ] {
        let (side, found) = footprint.least_margin(x, y);
        assert_eq!(footprint.way(side), way);
        near(&[found], &[distance], 1e-9);
    }
}
