//! The shortest way on foot against closed forms, and between two polygonal floors that bracket it.

// A part of it is enough here.
#[allow(unused_imports)]
mod support;

use std::f64::consts::{FRAC_PI_2, PI};

use proptest::prelude::*;
use support::floor::{CLEAR, polygon, round_polygons};
use toolberth::site::walk::{CLEARANCE, Floor, Rect2};
use toolberth::units::Length;

fn at(x: f64, y: f64) -> [Length; 2] {
    [x, y].map(Length::from_mm)
}

fn rect(left: f64, front: f64, wide: f64, deep: f64) -> Rect2 {
    Rect2::new(at(left, front), at(left + wide, front + deep))
}

fn floor(solids: &[Rect2]) -> Floor {
    Floor::new(solids, None, CLEARANCE)
}

fn cart() -> Rect2 {
    rect(0.0, 0.0, 1050.0, 560.0)
}

/// The way in mm, which must be there.
fn way(floor: &Floor, from: [f64; 2], to: [f64; 2]) -> f64 {
    floor.walk(at(from[0], from[1]), at(to[0], to[1])).expect("a way").as_mm()
}

#[track_caller]
fn same(found: f64, right: f64) {
    assert!((found - right).abs() < 2e-5, "{found} is not {right}");
}

#[test]
fn an_empty_floor_is_crossed_straight() {
    same(way(&floor(&[]), [0.0, 0.0], [300.0, 400.0]), 500.0);
    same(way(&floor(&[cart()]), [-400.0, -300.0], [-400.0, 900.0]), 1200.0);
    same(way(&floor(&[cart()]), [7.0, -400.0], [7.0, -400.0]), 0.0);
}

#[test]
fn hugging_the_cart_is_straight_sides_and_quarter_circles() {
    let round = way(&floor(&[cart()]), [525.0, -250.0], [525.0, 810.0]);
    same(round, 525.0 + 560.0 + 525.0 + CLEAR * PI);
    let side = way(&floor(&[cart()]), [525.0, -250.0], [1300.0, 280.0]);
    same(side, 525.0 + 280.0 + CLEAR * FRAC_PI_2);
}

#[test]
fn from_the_middle_of_the_front_to_the_middle_of_the_back() {
    // From a point 400 mm out, a line touches the circle round the corner; the arc goes on to the side of the cart.
    let (along, out) = (525.0_f64, 400.0_f64);
    let far = along.hypot(out);
    let straight = (far * far - CLEAR * CLEAR).sqrt();
    let arc = PI - out.atan2(along) - (CLEAR / far).acos();
    let back = way(&floor(&[cart()]), [525.0, -400.0], [525.0, 960.0]);
    same(back, 2.0 * (straight + CLEAR * arc) + 560.0);
}

#[test]
fn the_shorter_side_is_taken_and_a_thing_on_it_makes_it_longer() {
    let (from, to) = ([600.0, -400.0], [600.0, 960.0]);
    let bare = way(&floor(&[cart()]), from, to);
    same(bare, way(&floor(&[cart()]), [450.0, -400.0], [450.0, 960.0]));
    let hung = rect(1050.0, 100.0, 60.0, 300.0);
    let past_it = way(&floor(&[cart(), hung]), from, to);
    let other_side = way(&floor(&[cart(), rect(1050.0, 100.0, 2000.0, 300.0)]), from, to);
    assert!(bare < past_it && past_it < other_side, "{bare} {past_it} {other_side}");
}

#[test]
fn a_gap_of_twice_the_clearance_is_passed_and_a_narrower_one_is_not() {
    let walls = |gap: f64| [rect(-5000.0, 0.0, 5000.0, 100.0), rect(gap, 0.0, 5000.0, 100.0)];
    let (from, to) = ([250.0, -600.0], [250.0, 700.0]);
    same(way(&floor(&walls(500.0)), from, to), 1300.0);
    let round = way(&floor(&walls(499.999)), from, to);
    assert!(round > 10_000.0, "{round}");
}

/// The way round the far side of a post from a place before its front to one on its left, both lower than it.
fn outside_of(post: &Rect2, from: [f64; 2], to: [f64; 2]) -> f64 {
    let [[left, front], [right, back]] =
        [post.min, post.max].map(|corner| corner.map(Length::as_mm));
    // From a place, a line touches the circle round a corner: its length, and the direction of the touch.
    let touch = |place: [f64; 2], corner: [f64; 2], side: f64| {
        let (x, y) = (place[0] - corner[0], place[1] - corner[1]);
        let straight = (x.hypot(y).powi(2) - CLEAR * CLEAR).sqrt();
        (straight, y.atan2(x) + side * (CLEAR / x.hypot(y)).acos())
    };
    let (up, begins) = touch(from, [right, front], 1.0);
    let (down, ends) = touch(to, [left, back], -1.0);
    up + down + (right - left) + (back - front) + CLEAR * (ends.rem_euclid(2.0 * PI) - begins)
}

#[test]
fn a_post_near_a_corner_is_walked_round_on_its_far_side() {
    let (from, to) = ([1300.0, 280.0], [525.0, 810.0]);
    // It shuts the whole way round the cart's corner, only the middle of it, or only its beginning.
    for [left, front] in [[1250.0, 760.0], [1350.0, 860.0], [1496.0, 745.0]] {
        let post = rect(left, front, 50.0, 20.0);
        same(way(&floor(&[cart(), post]), from, to), outside_of(&post, from, to));
    }
}

#[test]
fn there_is_no_way_into_an_enclosure() {
    let ring = [
        rect(-1000.0, -1000.0, 3000.0, 50.0),
        rect(-1000.0, 1500.0, 3000.0, 50.0),
        rect(-1000.0, -600.0, 50.0, 1800.0),
        rect(1950.0, -600.0, 50.0, 1800.0),
    ];
    let (inside, outside) = (at(500.0, 200.0), at(5000.0, 0.0));
    assert_eq!(floor(&ring).walk(inside, outside), None);
    assert!(floor(&ring).walk(inside, at(600.0, 300.0)).is_some());
    assert!(floor(&ring[..3]).walk(inside, outside).is_some());
}

#[test]
fn nobody_stands_within_the_clearance() {
    let floor = floor(&[cart()]);
    assert_eq!(floor.walk(at(500.0, -249.0), at(500.0, -900.0)), None);
    assert_eq!(floor.walk(at(500.0, -900.0), at(500.0, 100.0)), None);
    assert!(floor.can_stand(at(500.0, -250.0)) && !floor.can_stand(at(500.0, -249.999)));
    // The corners are round: this is 250.3 mm from one along the diagonal, though within 250 mm along each axis.
    assert!(floor.can_stand(at(1227.0, 737.0)) && !floor.can_stand(at(1226.0, 736.0)));
}

#[test]
fn walls_are_kept_off_and_close_the_way_where_the_cart_is_near() {
    let (from, to) = (at(525.0, -400.0), at(525.0, 960.0));
    let within = |room: Rect2| Floor::new(&[cart()], Some(room), CLEARANCE).walk(from, to);
    let free = floor(&[cart()]).walk(from, to);
    assert!(free.is_some());
    assert_eq!(within(rect(-1000.0, -1000.0, 3000.0, 3000.0)), free);
    let left_shut = rect(-400.0, -1000.0, 2400.0, 3000.0);
    assert_eq!(within(left_shut), free);
    // On the right there are 499 mm to the wall, then exactly twice the clearance.
    assert_eq!(within(rect(-400.0, -1000.0, 1949.0, 3000.0)), None);
    assert_eq!(within(rect(-400.0, -1000.0, 1950.0, 3000.0)), free);
    let room = Some(rect(-1000.0, -1000.0, 3000.0, 3000.0));
    assert_eq!(Floor::new(&[], room, CLEARANCE).walk(at(-800.0, 0.0), to), None);
}

fn solids() -> impl Strategy<Value = Vec<Rect2>> {
    let one = (-2000i32..2000, -2000i32..2000, 0i32..1500, 0i32..1500)
        .prop_map(|(x, y, w, d)| rect(x.into(), y.into(), w.into(), d.into()));
    prop::collection::vec(one, 1..6)
}

fn spot() -> impl Strategy<Value = [f64; 2]> {
    (-3000i32..3000, -3000i32..3000).prop_map(|(x, y)| [x.into(), y.into()])
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 150,
        failure_persistence: None,
        max_global_rejects: 20_000,
        ..ProptestConfig::default()
    })]

    #[test]
    fn the_way_lies_between_two_polygonal_floors(solids in solids(), from in spot(), to in spot()) {
        let floor = floor(&solids);
        let ends = [from, to].map(|[x, y]| at(x, y));
        let polygons = |around| solids.iter().map(|solid| polygon(solid, around)).collect::<Vec<_>>();
        let [within, around] = [false, true].map(polygons);
        prop_assume!(ends.iter().all(|end| floor.can_stand(*end)));
        let found = floor.walk(ends[0], ends[1]).map(Length::as_mm);
        match (round_polygons(&within, from, to), found) {
            (least, Some(found)) => {
                let least = least.expect("a way round less");
                prop_assert!(least <= found + 1e-3, "{} > {}", least, found);
            }
            (_, None) => prop_assert_eq!(round_polygons(&around, from, to), None),
        }
        if let Some(most) = round_polygons(&around, from, to) {
            let found = found.expect("a way");
            prop_assert!(found <= most + 1e-3, "{} > {}", found, most);
        }
    }

    #[test]
    fn there_and_back_are_alike_and_a_detour_is_never_shorter(
        solids in solids(), from in spot(), over in spot(), to in spot()
    ) {
        let floor = floor(&solids);
        let [from, over, to] = [from, over, to].map(|[x, y]| at(x, y));
        prop_assert_eq!(floor.walk(from, to), floor.walk(to, from));
        if let (Some(first), Some(second)) = (floor.walk(from, over), floor.walk(over, to)) {
            let direct = floor.walk(from, to).expect("a way over the third place");
            prop_assert!(direct <= first + second + Length::nm(100));
        }
    }
}
