//! Expected loads by levers and areas, worked out apart from the plane that the program fits.

use super::*;

fn square() -> Supports {
    let at = [[0, 0], [600, 0], [0, 400], [600, 400]];
    Supports::new(&at.map(|p| p.map(Length::mm))).unwrap()
}

fn on_bump(press: f64) -> [f64; 4] {
    let mut out = [f64::NAN; MOST];
    assert!(square().on_bumps(100.0, [30_000.0, 20_000.0], &[press], &mut out));
    [out[0], out[1], out[2], out[3]]
}

fn near(found: &[f64], expected: &[f64]) {
    within(1e-9, found, expected);
}

fn within(tolerance: f64, found: &[f64], expected: &[f64]) {
    for (f, e) in found.iter().zip(expected) {
        assert!((f - e).abs() < tolerance, "{found:?} for {expected:?}");
    }
}

#[test]
fn a_bump_loads_its_diagonal_by_a_quarter_of_its_press_until_the_others_hang() {
    near(&on_bump(0.0), &[25.0; 4]);
    near(&on_bump(40.0), &[35.0, 15.0, 15.0, 35.0]);
    near(&on_bump(100.0), &[50.0, 0.0, 0.0, 50.0]);
    near(&on_bump(400.0), &[50.0, 0.0, 0.0, 50.0]);
    near(&on_bump(-40.0), &[15.0, 35.0, 35.0, 15.0]);
}

#[test]
fn a_bump_under_any_corner_does_the_same_by_symmetry() {
    let mut out = [f64::NAN; MOST];
    for (corner, expected) in
        [[35.0, 15.0], [15.0, 35.0], [15.0, 35.0], [35.0, 15.0]].iter().enumerate()
    {
        let mut press = [0.0; 4];
        press[corner] = 40.0;
        assert!(square().on_bumps(100.0, [30_000.0, 20_000.0], &press, &mut out));
        near(&out[..4], &[expected[0], expected[1], expected[1], expected[0]]);
    }
}

#[test]
fn a_hard_bump_off_the_middle_loads_the_three_that_touch() {
    let mut out = [0.0; MOST];
    assert!(square().on_bumps(100.0, [27_000.0, 20_000.0], &[1e6], &mut out));
    near(&out[..4], &[50.0, 0.0, 5.0, 45.0]);
    assert!(!square().on_bumps(100.0, [-1.0, 20_000.0], &[1.0], &mut out));
}

#[test]
fn the_heaviest_is_that_of_the_loads() {
    let supports = square();
    assert_eq!(supports.count(), 4);
    let mut out = [0.0; MOST];
    assert!(supports.loads(100.0, 50_000.0, 38_000.0, &mut out));
    let most = out.iter().copied().fold(0.0, f64::max);
    assert_eq!(supports.heaviest(100.0, 50_000.0, 38_000.0), Some(most));
    assert_eq!(supports.heaviest(100.0, 30_000.0, 20_000.0), Some(25.0));
    assert_eq!(supports.heaviest(100.0, 61_000.0, 20_000.0), None);
}

/// A triangle about its middle, none of whose sides lies along an axis.
const TRIANGLE: [[f64; 2]; 3] = [[-300.0, -100.0], [500.0, -150.0], [-200.0, 250.0]];

fn supports(at: &[[f64; 2]]) -> Supports {
    let places: Vec<_> = at.iter().map(|p| p.map(|x| Length::mm(x as i64))).collect();
    Supports::new(&places).unwrap()
}

/// Loads of `total` kg over a point of a triangle: each corner's share is that of the area across from it.
fn by_areas(total: f64, [x, y]: [f64; 2], [a, b, c]: [[f64; 2]; 3]) -> [f64; 3] {
    let area = |p: [f64; 2], q: [f64; 2], r: [f64; 2]| {
        (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])
    };
    [[b, c], [c, a], [a, b]].map(|[p, q]| total * area(p, q, [x, y]) / area(a, b, c))
}

/// The loads on supports of a body of `total` kg over a point, where it stands.
fn standing(on: &Supports, total: f64, [x, y]: [f64; 2]) -> Option<[f64; MOST]> {
    let mut out = [f64::NAN; MOST];
    on.loads(total, total * x, total * y, &mut out).then_some(out)
}

#[test]
fn three_supports_share_by_the_areas_across_from_them() {
    let on = supports(&TRIANGLE);
    for at in [[0.0, 0.0], [50.0, 20.0], [-40.0, 30.0], [30.0, -50.0], [1e-5, 1e-5]] {
        let expected = by_areas(100.0, at, TRIANGLE);
        near(&standing(&on, 100.0, at).unwrap(), &expected);
        let most = expected.into_iter().fold(0.0, f64::max);
        near(&[on.heaviest(100.0, 100.0 * at[0], 100.0 * at[1]).unwrap()], &[most]);
    }
}

#[test]
fn a_weak_pull_makes_a_support_hang_as_a_strong_one_does() {
    // The plane would pull at the first of four by 0.25 kg and by 15 kg.
    for [x, y] in [[453.0, 300.0], [540.0, 360.0]] {
        let corners = [[600.0, 0.0], [0.0, 400.0], [600.0, 400.0]];
        let [b, c, d] = by_areas(100.0, [x, y], corners);
        near(&standing(&square(), 100.0, [x, y]).unwrap(), &[0.0, b, c, d]);
    }
}

#[test]
fn where_the_origin_lies_makes_no_difference() {
    let far = supports(&[[2000.0, 3000.0], [2600.0, 3000.0], [2000.0, 3400.0], [2600.0, 3400.0]]);
    for [x, y] in [[300.0, 200.0], [453.0, 300.0], [100.0, 350.0]] {
        let expected = standing(&square(), 100.0, [x, y]).unwrap();
        near(&standing(&far, 100.0, [2000.0 + x, 3000.0 + y]).unwrap()[..4], &expected[..4]);
    }
    assert!(standing(&far, 100.0, [2300.0, 3401.0]).is_none());
}

#[test]
fn with_one_support_hanging_the_worst_of_the_cases_that_stand_counts() {
    let mut out = [f64::NAN; MOST];
    // At 0.6 and 0.7 of the sides only two of the four triangles are under the body: without the first support they
    // carry 30, 40 and 30 kg, without the second 30, 10 and 60 kg.
    assert!(square().hanging(100.0, 36_000.0, 28_000.0, &mut out));
    near(&out[..4], &[30.0, 30.0, 40.0, 60.0]);
    // Mirrored from left to right.
    assert!(square().hanging(100.0, 24_000.0, 28_000.0, &mut out));
    near(&out[..4], &[30.0, 30.0, 60.0, 40.0]);
    // Over the middle two hold half each, whichever hangs.
    assert!(square().hanging(100.0, 30_000.0, 20_000.0, &mut out));
    near(&out, &[50.0, 50.0, 50.0, 50.0, 0.0, 0.0, 0.0, 0.0]);
}

#[test]
fn a_body_without_weight_loads_nothing_and_comes_to_no_rest_on_a_bump() {
    let on = square();
    near(&standing(&on, 0.0, [0.0, 0.0]).unwrap(), &[0.0; 4]);
    assert_eq!(on.heaviest(0.0, 0.0, 0.0), Some(0.0));
    assert!(!on.on_bumps(0.0, [0.0, 0.0], &[40.0], &mut [0.0; MOST]));
}

#[test]
fn over_the_edge_is_a_millionth_of_a_millimetre_however_light_the_body() {
    let on = square();
    // Near a corner the plane would pull at the one across, so the edge itself is asked.
    for total in [0.01, 100.0] {
        let loads = standing(&on, total, [600.0 + 5e-7, 390.0]).unwrap();
        within(1e-6, &loads, &[0.0, total * 0.025, 0.0, total * 0.975]);
        assert!(standing(&on, total, [600.0 + 2e-5, 390.0]).is_none());
    }
}

#[test]
fn the_pressed_are_those_with_force_under_them() {
    let mut rest = Rest { force: [0.0; MOST], good: false };
    rest.force[..5].copy_from_slice(&[3.0, -1.0, 0.0, 2.0, 4.0]);
    assert_eq!(rest.pressed(5), 0b11001);
    assert_eq!(rest.pressed(4), 0b01001);
}

/// Loads at places all over the rectangle, each taken away by itself: no caster then carries more than was said, and
/// somewhere one carries just that much.
#[test]
fn what_is_taken_away_brings_no_caster_over_what_was_said() {
    let supports = square();
    let shares = supports.shares([[-50.0, 0.0], [650.0, 400.0]]);
    let body = [100.0, 30_500.0, 19_500.0];
    let said = supports.at_most(body, 8.0, &shares).unwrap();
    let mut most = 0.0f64;
    for (x, y) in (0..=14).flat_map(|i| (0..=8).map(move |j| (i, j))) {
        let [x, y] = [-50.0 + 50.0 * f64::from(x), 50.0 * f64::from(y)];
        let [total, sx, sy] = [body[0] - 8.0, body[1] - 8.0 * x, body[2] - 8.0 * y];
        most = most.max(supports.heaviest(total, sx, sy).unwrap());
    }
    assert!((most - said).abs() < 1e-9, "{most} for {said}");
}

#[test]
fn nothing_is_said_where_a_caster_might_hang_free() {
    let supports = square();
    let shares = supports.shares([[0.0, 0.0], [600.0, 400.0]]);
    assert_eq!(supports.at_most([100.0, 30_000.0, 20_000.0], 40.0, &shares), None);
}
