//! Motion times, against the MTM-1 tables.
//!
//! Tables in inches: read on two online copies of one sheet. The data card of 2019 (SI): part of its first page read.

use toolberth::physics::motion::{self, move_b, reach_b};
use toolberth::units::{Length, Mass, Time};

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

#[track_caller]
fn near(found: f64, expected: f64, tolerance: f64) {
    assert!((found - expected).abs() <= tolerance, "{found} for {expected}");
}

/// One TMU is 0.036 s, 100 000 an hour (data card, read).
#[test]
fn a_hundred_thousand_units_are_an_hour() {
    let hour = motion::GRASP * 50_000;
    assert_eq!(hour, Time::s(3600));
}

/// (inches, reach B, move B) in TMU, read.
const ROWS: [(f64, f64, f64); 21] = [
    (0.75, 2.0, 2.0),
    (1.0, 2.5, 2.9),
    (2.0, 4.0, 4.6),
    (3.0, 5.3, 5.7),
    (4.0, 6.4, 6.9),
    (5.0, 7.8, 8.0),
    (6.0, 8.6, 8.9),
    (7.0, 9.3, 9.7),
    (8.0, 10.1, 10.6),
    (9.0, 10.8, 11.5),
    (10.0, 11.5, 12.2),
    (12.0, 12.9, 13.4),
    (14.0, 14.4, 14.6),
    (16.0, 15.8, 15.8),
    (18.0, 17.2, 17.0),
    (20.0, 18.6, 18.2),
    (22.0, 20.1, 19.4),
    (24.0, 21.5, 20.6),
    (26.0, 22.9, 21.8),
    (28.0, 24.4, 23.1),
    (30.0, 25.8, 24.3),
];

#[test]
fn reach_and_move_equal_every_row_of_the_sheet() {
    for (distance, reach, moved) in ROWS {
        near(tmu(reach_b(inches(distance))), reach, 1e-9);
        near(tmu(move_b(inches(distance), Mass::ZERO)), moved, 1e-9);
    }
}

/// Linear between two rows; the first row holds for all that is shorter (rule of the sheet, read).
#[test]
fn between_rows_times_are_linear() {
    for pair in ROWS.windows(2) {
        let [(d0, r0, m0), (d1, r1, m1)] = [pair[0], pair[1]];
        for share in [0.25, 0.5, 0.75] {
            let distance = inches(d0 + (d1 - d0) * share);
            near(tmu(reach_b(distance)), r0 + (r1 - r0) * share, 1e-4);
            near(tmu(move_b(distance, Mass::ZERO)), m0 + (m1 - m0) * share, 1e-4);
        }
    }
    for short in [-5.0, 0.0, 0.4] {
        near(tmu(reach_b(inches(short))), 2.0, 1e-9);
        near(tmu(move_b(inches(short), Mass::ZERO)), 2.0, 1e-9);
    }
}

/// Beyond 30 in 0.7 (reach B) and 0.6 (move B) TMU an inch: rates read, values at 36 in computed.
#[test]
fn beyond_the_sheet_each_inch_adds_its_rate() {
    near(tmu(reach_b(inches(36.0))), 30.0, 1e-4);
    near(tmu(move_b(inches(36.0), Mass::ZERO)), 27.9, 1e-4);
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

#[test]
fn each_weight_row_holds_up_to_its_bound() {
    for (i, (bound, factor, constant)) in WEIGHTS.into_iter().enumerate() {
        let from = if i == 0 { 0.0 } else { bound - 5.0 + 0.01 };
        for mass in [from, bound - 1.0, bound] {
            near(tmu(move_b(inches(16.0), pounds(mass))), constant + factor * 15.8, 1e-4);
        }
    }
    // 3.9 + 1.11 × 15.8, computed.
    near(tmu(move_b(inches(16.0), pounds(12.5))), 21.438, 1e-4);
}

/// Our own continuation: 0.06 and 1.7 TMU more for each further 5 lb.
#[test]
fn heavier_than_the_sheet_goes_on_like_its_last_step() {
    near(tmu(move_b(inches(16.0), pounds(47.51))), 17.7 + 1.56 * 15.8, 1e-4);
    near(tmu(move_b(inches(16.0), pounds(57.5))), 19.4 + 1.62 * 15.8, 1e-4);
}

#[test]
fn farther_and_heavier_never_take_less() {
    let mut last = (Time::ZERO, Time::ZERO);
    for mm in 0..1500 {
        let now = (reach_b(Length::mm(mm)), move_b(Length::mm(mm), Mass::kg(3)));
        assert!(now.0 >= last.0 && now.1 >= last.1, "at {mm} mm");
        last = now;
    }
    let by_mass = |grams: i64| move_b(Length::mm(600), Mass::ng(grams * 1_000_000_000));
    assert!((1..60_000).step_by(50).all(|g| by_mass(g + 50) >= by_mass(g)));
}

/// What is out of all measure neither overflows nor turns cheap.
#[test]
fn absurd_distances_and_masses_stay_finite() {
    let far = Length::mm(1_000_000_000);
    assert!(reach_b(far) > reach_b(Length::mm(10_000)));
    assert!(move_b(far, Mass::kg(1_000_000)) > move_b(far, Mass::kg(10)));
    assert!(motion::walk(far) > motion::walk(Length::mm(10_000)));
}

/// Elements: grasp G1A read (poor scan), turn of the body read on the data card, bend and arise together 61 read in
/// two public tables for garment work; all others from memory.
#[test]
fn elements() {
    near(tmu(motion::GRASP), 2.0, 1e-9);
    near(tmu(motion::TURN_BODY), 18.6, 1e-9);
    near(tmu(motion::bend_and_arise()), 61.0, 0.5);
    near(tmu(motion::RELEASE), 2.0, 1e-9); // from memory
    near(tmu(motion::POSITION), 5.6, 1e-9); // from memory
    near(tmu(motion::BEND), 29.0, 1e-9); // from memory
    near(tmu(motion::ARISE), 31.9, 1e-9); // from memory
    near(tmu(motion::KNEEL), 69.4, 1e-9); // from memory
    near(tmu(motion::ARISE_FROM_KNEES), 76.7, 1e-9); // from memory
    near(tmu(motion::PACE), 15.0, 1e-9); // from memory
}

/// A plain fetch, with bend and arise, and on both knees: computed from rows above, of which release, bend and knees
/// are from memory.
#[test]
fn sums_of_a_plain_fetch() {
    let plain =
        reach_b(inches(16.0)) + motion::GRASP + move_b(inches(16.0), Mass::ZERO) + motion::RELEASE;
    near(plain.as_s(), 1.2816, 1e-6);
    near((plain + motion::bend_and_arise()).as_s(), 3.474, 1e-6);
    near((plain + motion::kneel_and_arise()).as_s(), 6.5412, 1e-6);
}

/// 5.3 TMU a foot is 1.597 m/s (from memory, computed); ours is slower, and wheels slower still (common practice).
#[test]
fn walking_is_a_stated_discount_on_a_trained_pace() {
    let speed = |time: Time| 10.0 / time.as_s();
    let walked = speed(motion::walk(Length::mm(10_000)));
    near(walked, 1.389, 0.001);
    near(1.0 - walked / 1.597_484, 0.13, 0.005);
    near(speed(motion::wheel(Length::mm(10_000))), 0.8, 1e-6);
    assert_eq!(motion::walk(Length::ZERO), Time::ZERO);
}
