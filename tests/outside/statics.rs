//! Loads on casters and tipping, against textbook statics.
//!
//! Status of all rows here: computed from the stated mechanics by a separate program, except where a row says else.

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

/// Four equal springs under a rigid rectangle: R = W/4 (1 ± x/a ± y/b); form read on an engineering question page
/// (square case), numbers computed. In newtons; the formula does not mind.
#[test]
fn four_springs_share_by_lever() {
    for (a, b, total, at, expected) in [
        (300.0, 200.0, 1000.0, [0.0, 0.0], [250.0, 250.0, 250.0, 250.0]),
        (300.0, 200.0, 1000.0, [60.0, 0.0], [300.0, 300.0, 200.0, 200.0]),
        (300.0, 200.0, 1000.0, [60.0, -50.0], [237.5, 362.5, 137.5, 262.5]),
        (350.0, 250.0, 1200.0, [-105.0, 75.0], [300.0, 120.0, 480.0, 300.0]),
        (280.0, 280.0, 800.0, [28.0, 140.0], [320.0, 120.0, 280.0, 80.0]),
    ] {
        near(&loads(&rectangle(a, b), total, at).unwrap(), &expected, 0.05);
    }
}

/// The springs differ from the product of shares, a rule read on a physics question page that gives 375 here.
#[test]
fn springs_are_not_the_product_of_shares() {
    let found = loads(&rectangle(300.0, 200.0), 1000.0, [60.0, 50.0]).unwrap();
    near(&found[..1], &[362.5], 0.01);
}

/// Where four springs would give 54, 29, 21 and −4 the fourth hangs free: three supports, computed.
#[test]
fn what_would_pull_hangs_free() {
    let at = rectangle(1.0, 1.0);
    near(&loads(&at, 100.0, [0.66, 0.5]).unwrap(), &[58.0, 25.0, 17.0, 0.0], 0.01);
}

/// Lift-off begins where |x|/a + |y|/b passes 1, from the spring formula.
#[test]
fn lift_off_begins_at_one() {
    let at = rectangle(300.0, 200.0);
    let least = |share: f64| loads(&at, 1000.0, [150.0 * share, 100.0 * share]).unwrap()[3];
    assert!(least(0.999) > 0.0);
    near(&[least(1.0), least(1.001)], &[0.0, 0.0], 1e-9);
}

/// The lever rule (barycentric shares) for three supports, computed.
#[test]
fn three_supports_follow_the_lever_rule() {
    let at = [[0.0, 0.0], [1000.0, 0.0], [0.0, 800.0]];
    near(&loads(&at, 900.0, [300.0, 200.0]).unwrap(), &[405.0, 270.0, 225.0], 0.01);
}

/// A rigid plate on equal springs in a trapezoid, and on six in two rows, computed.
#[test]
fn other_layouts_settle_as_a_plane() {
    let trapezoid = [[-200.0, -250.0], [200.0, -250.0], [350.0, 250.0], [-350.0, 250.0]];
    near(&loads(&trapezoid, 1000.0, [0.0, 0.0]).unwrap(), &[250.0; 4], 0.01);
    let six = [
        [-400.0, -200.0],
        [0.0, -200.0],
        [400.0, -200.0],
        [-400.0, 200.0],
        [0.0, 200.0],
        [400.0, 200.0],
    ];
    let expected = [85.0, 160.0, 235.0, 165.0, 240.0, 315.0];
    near(&loads(&six, 1200.0, [100.0, 40.0]).unwrap(), &expected, 0.01);
}

/// On a hard uneven floor two neighbours of the free wheel can carry half the weight each: three-support statics,
/// computed. Caster makers' total / 3 (333.3, read on a glossary page) is below that.
#[test]
fn one_hanging_loads_its_neighbours_with_half() {
    let supports = Supports::new(&places(&rectangle(300.0, 200.0))).unwrap();
    let worst = |x: f64, y: f64| {
        let mut out = [f64::NAN; MOST];
        assert!(supports.hanging(1000.0, 1000.0 * x, 1000.0 * y, &mut out));
        out.iter().copied().fold(0.0, f64::max)
    };
    near(&[worst(0.0, 0.0), worst(60.0, 50.0)], &[500.0, 600.0], 0.01);
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

/// A drawer of 12 kg drawn out 400 mm on a cart of 90 kg moves the centre by 53.33 mm: moment balance, computed. The
/// loads must have their middle there.
#[test]
fn a_drawn_out_drawer_moves_the_middle_of_the_loads() {
    let at = rectangle(300.0, 200.0);
    let supports = Supports::new(&places(&at)).unwrap();
    let mut out = [0.0; MOST];
    assert!(supports.loads(90.0, 0.0, -12.0 * 400.0, &mut out));
    let middle = at.iter().zip(out).map(|(p, load)| p[1] * load).sum::<f64>() / 90.0;
    near(&[middle], &[-53.333_33], 0.001);
}

/// Tip angle = atan(d / h), rigid body about the support line, computed.
#[test]
fn tip_angles() {
    for (distance, height, expected) in [
        (250.0, 500.0, 26.565_05),
        (300.0, 450.0, 33.690_07),
        (200.0, 800.0, 14.036_24),
        (250.0 - 35.0, 500.0, 23.2677), // moved in by a swivel trail of 35 mm
        (0.0, 500.0, 0.0),
        (-200.0, 800.0, -14.036_24), // outside: it tips by itself
    ] {
        near(&[degrees(distance, height)], &[expected], 0.001);
    }
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
