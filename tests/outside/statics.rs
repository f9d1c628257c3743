//! Loads on casters and tipping, against textbook statics.

use super::check::{Status, Topic};
use nalgebra::{DMatrix, DVector};
use toolberth::geometry::Way;
use toolberth::physics::casters::{MOST, Supports};
use toolberth::physics::leaning::{hold, press_that_tips, push_that_tips, slope_that_slides};
use toolberth::physics::tipping::{Footprint, degrees};
use toolberth::site::{Case, CaseKind, TIP_CLOSED, TIP_OPEN};
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
const LIBRARY: &str =
    "the least-norm answer by the pseudo-inverse of a general linear-algebra library";
const BALANCE: &str = "moment balance about the support line, textbook";

/// Loads on casters, tipping, pushes and leaning.
pub fn checks() -> Topic {
    let mut topic = Topic::new("statics");
    supports(&mut topic);
    library(&mut topic);
    hanging(&mut topic);
    bumps(&mut topic);
    tipping(&mut topic);
    sides(&mut topic);
    pushes(&mut topic);
    holding(&mut topic);
    masses(&mut topic);
    limits(&mut topic);
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

/// Loads that are as small as they can be in the sum of squares and keep the balance: what equal springs give while none
/// pulls. With presses from bumps the springs give what is nearest to those.
fn least_norm(at: &[[f64; 2]], total: f64, [x, y]: [f64; 2], press: &[f64]) -> Vec<f64> {
    let balance =
        DMatrix::from_fn(3, at.len(), |row, k| if row == 0 { 1.0 } else { at[k][row - 1] / 100.0 });
    let press = DVector::from_column_slice(press);
    let asked =
        DVector::from_vec(vec![total, total * x / 100.0, total * y / 100.0]) - &balance * &press;
    let inverse = balance.pseudo_inverse(1e-12).expect("a pseudo-inverse");
    (inverse * asked + press).iter().copied().collect()
}

fn ring(n: usize) -> Vec<[f64; 2]> {
    let corner = |k: usize| {
        let turn = std::f64::consts::TAU * k as f64 / n as f64;
        [400.0 * turn.cos() + 20.0 * k as f64, 300.0 * turn.sin()].map(f64::round)
    };
    (0..n).map(corner).collect()
}

/// Any number of casters against the pseudo-inverse of a linear-algebra library.
fn library(topic: &mut Topic) {
    let mut springs = topic.against("physics::casters::loads", Status::Computed, LIBRARY);
    for n in [3, 4, 5, 6, 8, 12] {
        let at = ring(n);
        let middle = [0, 1].map(|axis| at.iter().map(|p| p[axis]).sum::<f64>() / n as f64 + 10.0);
        let found = first(&at, 150.0, middle);
        let expected = least_norm(&at, 150.0, middle, &vec![0.0; n]);
        springs.table(format!("{n} casters in a ring"), rows(&found, &expected, 1e-6));
    }
}

/// Loads on a floor that stands up under some supports.
fn bumped(at: &[[f64; 2]], total: f64, [x, y]: [f64; 2], press: &[f64]) -> Vec<f64> {
    let mut out = [f64::NAN; MOST];
    let supports = Supports::new(&places(at)).expect("an area");
    assert!(supports.on_bumps(total, [total * x, total * y], press, &mut out));
    out[..at.len()].to_vec()
}

fn bumps(topic: &mut Topic) {
    let square = rectangle(300.0, 200.0);
    let mut rule = topic.against("physics::casters::on_bumps", Status::Computed, "equal springs in a rectangle: a bump of h loads its diagonal by k h / 4 and unloads the other; contact beyond");
    let quarter = bumped(&square, 100.0, [0.0, 0.0], &[20.0, 0.0, 0.0, 0.0]);
    rule.table("20 kg of press under one of four", rows(&quarter, &[30.0, 20.0, 20.0, 30.0], 1e-9));
    let hard = bumped(&square, 100.0, [0.0, 0.0], &[5000.0, 0.0, 0.0, 0.0]);
    rule.table(
        "a hard one leaves two to carry half each",
        rows(&hard, &[50.0, 0.0, 0.0, 50.0], 1e-9),
    );
    let off = bumped(&square, 1000.0, [60.0, 50.0], &[1e7, 0.0, 0.0, 0.0]);
    let worst = off.iter().copied().fold(0.0, f64::max);
    rule.holds(
        "off the middle it is no more than with one hanging free",
        worst <= worst_of_three(60.0, 50.0) + 1e-6,
    );
    let mut library = topic.against("physics::casters::on_bumps", Status::Computed, LIBRARY);
    for n in [4, 6, 8] {
        let at = ring(n);
        let middle = [0, 1].map(|axis| at.iter().map(|p| p[axis]).sum::<f64>() / n as f64);
        let mut press = vec![0.0; n];
        press[1] = 9.0;
        let found = bumped(&at, 150.0, middle, &press);
        library.table(
            format!("9 kg of press under one of {n}"),
            rows(&found, &least_norm(&at, 150.0, middle, &press), 1e-6),
        );
    }
}

/// The way from a point to each side of the area that the casters span.
fn sides(topic: &mut Topic) {
    let least = |at: &[[f64; 2]], trail: f64, x: f64, y: f64| {
        Footprint::new(&places(at), Length::from_mm(trail)).expect("an area").least_margin(x, y).1
    };
    let box_ = rectangle(300.0, 200.0);
    let triangle = [[0.0, 0.0], [300.0, 0.0], [0.0, 400.0]];
    topic
        .against(
            "physics::tipping::least_margin",
            Status::Computed,
            "distance of a point from a line, plane geometry; a wheel may trail its swivel inwards",
        )
        .near("the middle of 600 by 400", least(&box_, 0.0, 0.0, 0.0), 200.0, 1e-9)
        .near("with a trail of 30", least(&box_, 30.0, 0.0, 0.0), 170.0, 1e-9)
        .near("50 outside a long side", least(&box_, 0.0, 0.0, 250.0), -50.0, 1e-9)
        .near(
            "the inscribed circle of a 3-4-5 triangle is 100",
            least(&triangle, 0.0, 100.0, 100.0),
            100.0,
            1e-9,
        )
        .near(
            "to the slant alone: (1200 - 4 x - 3 y) / 5",
            least(&triangle, 0.0, 140.0, 190.0),
            14.0,
            1e-9,
        );
}

fn pushes(topic: &mut Topic) {
    topic
        .against("physics::leaning::push_that_tips", Status::Computed, BALANCE)
        .near(
            "1000 N, 250 mm, pushed at 900 mm",
            push_that_tips(1000.0, 250.0, 900.0),
            277.7778,
            0.001,
        )
        .near("half as far from the line", push_that_tips(1000.0, 125.0, 900.0), 138.8889, 0.001)
        .near(
            "at the height of the centre of mass it is W times the tangent of the tip angle",
            push_that_tips(800.0, 200.0, 600.0),
            800.0 * degrees(200.0, 600.0).to_radians().tan(),
            1e-6,
        )
        .near("over its own line already", push_that_tips(800.0, -1.0, 600.0), 0.0, 0.0);
    topic
        .against("physics::leaning::press_that_tips", Status::Computed, BALANCE)
        .near(
            "600 N, 200 mm behind the wheels, 350 mm before them",
            press_that_tips(600.0, 200.0, 350.0),
            342.8571,
            0.001,
        )
        .near(
            "as far before as behind: its own weight",
            press_that_tips(600.0, 200.0, 200.0),
            600.0,
            1e-9,
        )
        .near(
            "half the lever, twice the force",
            press_that_tips(600.0, 200.0, 175.0),
            685.7143,
            0.001,
        )
        .holds("inside the wheels no force tips", press_that_tips(600.0, 200.0, 0.0).is_infinite());
}

fn holding(topic: &mut Topic) {
    const COULOMB: &str = "Coulomb friction on the locked share only, textbook";
    topic
        .against("physics::leaning::slope_that_slides", Status::Computed, COULOMB)
        .near("two of four locked, friction 0.5", slope_that_slides(0.5, 0.5), 14.03624, 0.001)
        .near("all locked: the angle of friction", slope_that_slides(0.5, 1.0), 26.56505, 0.001)
        .near("none locked", slope_that_slides(0.5, 0.0), 0.0, 0.0);
    let slope = 14.036_243_f64.to_radians();
    topic
        .against("physics::leaning::hold", Status::Computed, COULOMB)
        .near("friction 0.5 under 600 N", hold(0.5, 600.0), 300.0, 1e-9)
        .near(
            "on that slope it is the pull of 1000 N downhill",
            hold(0.5, 500.0 * slope.cos()),
            1000.0 * slope.sin(),
            0.001,
        )
        .near("nothing on the locked ones", hold(0.5, 0.0), 0.0, 0.0);
}

/// A body put together from masses at places in mm.
fn body(parts: &[(f64, [f64; 3])]) -> [f64; 3] {
    let none = Case { kind: CaseKind::Closed, total: 0.0, moments: [0.0; 3] };
    let whole = parts.iter().fold(none, |body, (mass, at)| body.with(*mass, *at));
    whole.moments.map(|m| m / whole.total)
}

fn masses(topic: &mut Topic) {
    let mut mean =
        topic.against("site::stability::with", Status::Computed, "weighted mean, textbook");
    let found = body(&[
        (40.0, [400.0, 300.0, 450.0]),
        (18.0, [400.0, 300.0, 870.0]),
        (9.0, [120.0, 90.0, 960.0]),
    ]);
    mean.table("carcass, top and vice", rows(&found, &[362.388, 271.791, 631.343], 0.001));
    let found = body(&[(2000.0, [50.0, 10.0, 0.0]), (1600.0, [10.0, 60.0, 0.0])]);
    mean.table("an L of two rectangles", rows(&found, &[32.2222, 32.2222, 0.0], 0.001));
    let found = body(&[(78.0, [0.0; 3]), (12.0, [0.0, -400.0, 0.0])]);
    mean.table("12 kg of 90 out by 400", rows(&found, &[0.0, -53.33333, 0.0], 0.001));
}

/// What the program's own limits are anchored on.
fn limits(topic: &mut Topic) {
    topic
        .against(
            "site::stability limits",
            Status::Read,
            "IEC 60601-1 ed. 3 cl. 9.4.2, read as summarised on a cart maker's page",
        )
        .near("mobile medical equipment, transport position", TIP_CLOSED, 10.0, 0.0)
        .near("any other position, drawers and doors at their worst", TIP_OPEN, 5.0, 0.0)
        .holds("closed more is asked for than with a drawer out", TIP_CLOSED > TIP_OPEN);
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
