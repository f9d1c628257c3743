//! Body heights and reach, against measured people and the accessibility standard.
//!
//! Measured people: ANSUR II public data, 2012 survey (NATICK/TR-15/007), unshod, computed from the data. Eye, elbow,
//! hanging grip and overhead reach are derived person by person, then ranked.

use toolberth::physics::body::{Body, LEAN, Posture, SHOE};
use toolberth::physics::stature::{self, Sex};
use toolberth::units::{Length, Time};

const WOMEN: Option<Sex> = Some(Sex::Female);
const MEN: Option<Sex> = Some(Sex::Male);

fn mm(millimetres: f64) -> Length {
    Length::from_mm(millimetres)
}

/// Percentiles 5, 50 and 95 in mm, within 1 mm.
#[test]
fn statures_by_percentile() {
    for (sex, expected) in [(WOMEN, [1525.0, 1626.0, 1740.0]), (MEN, [1648.0, 1755.0, 1870.0])] {
        for (percentile, expected) in [5, 50, 95].into_iter().zip(expected) {
            let found = stature::of_percentile(sex, percentile).as_mm();
            assert!((found - expected).abs() <= 1.0, "{found} for {expected}");
        }
    }
}

#[test]
fn statures_rise_with_the_percentile() {
    for sex in [WOMEN, MEN, None] {
        let tall = |p| stature::of_percentile(sex, p);
        assert!((1..99).all(|p| tall(p) < tall(p + 1)));
        assert_eq!((tall(0), tall(255)), (tall(1), tall(99)));
    }
}

#[test]
fn where_nothing_is_said_a_person_is_the_mean_of_both_medians() {
    assert_eq!(stature::DEFAULT, mm(1690.5));
    assert_eq!(stature::of_percentile(None, 50), stature::DEFAULT);
}

/// Heights that people of a percentile of stature are likely to have: each measure's own percentile 5, 50, 95 in mm.
///
/// The median is met within 15 mm; at the ends, where the tallest are not the longest-armed, within 30 mm.
#[test]
fn heights_are_those_of_measured_people() {
    let eye = |b: Body| b.eye;
    let shoulder = |b: Body| b.shoulder;
    let elbow = |b: Body| b.elbow;
    let knuckle = |b: Body| b.knuckle;
    let knee = |b: Body| b.knee;
    type Row = (&'static str, fn(Body) -> Length, [f64; 3], [f64; 3]);
    let rows: [Row; 5] = [
        ("eye", eye, [1421.25, 1517.0, 1626.0], [1536.05, 1640.0, 1753.0]),
        ("shoulder", shoulder, [1242.0, 1332.0, 1433.75], [1339.0, 1439.0, 1546.0]),
        ("elbow", elbow, [951.0, 1022.0, 1100.0], [1025.0, 1104.0, 1190.0]),
        ("hanging grip", knuckle, [648.0, 706.0, 766.0], [692.0, 756.0, 822.0]),
        ("knee", knee, [408.0, 448.0, 493.0], [443.05, 487.0, 536.0]),
    ];
    for (what, height, women, men) in rows {
        for (sex, expected) in [(WOMEN, women), (MEN, men)] {
            for ((percentile, tolerance), expected) in
                [(5, 30.0), (50, 15.0), (95, 30.0)].into_iter().zip(expected)
            {
                let found = (height(Body::of_percentile(sex, percentile)) - SHOE).as_mm();
                assert!(
                    (found - expected).abs() <= tolerance,
                    "{what} {percentile}: {found} for {expected}"
                );
            }
        }
    }
}

/// Overhead fingertip reach 2078 / 2263 mm less 60 % of the hand (medians 180 / 193 mm): within 15 mm. The 2021
/// manual-handling equations (Potvin et al. Table 3, read in a public transcription) have 1.96 / 2.14 m, shod.
#[test]
fn the_highest_grip_is_below_the_fingertips() {
    for (sex, fingertip, hand, handling) in
        [(WOMEN, 2078.0, 180.0, 1960.0), (MEN, 2263.0, 193.0, 2140.0)]
    {
        let found = Body::of_percentile(sex, 50).overhead_grip.as_mm();
        assert!((found - SHOE.as_mm() - (fingertip - 0.6 * hand)).abs() <= 15.0, "{found}");
        assert!((found - handling).abs() <= 50.0, "{found} for {handling}");
    }
}

/// Thumb tip reach 742 / 811 mm less the depth of the chest 245 / 253 mm (medians): within 25 mm.
#[test]
fn the_arm_ends_before_the_chest() {
    for (sex, thumb, chest) in [(WOMEN, 742.0, 245.0), (MEN, 811.0, 253.0)] {
        let found = Body::of_percentile(sex, 50).arm.as_mm();
        assert!((found - (thumb - chest)).abs() <= 25.0, "{found}");
    }
}

/// Landmarks of the 2021 manual-handling equations (Potvin et al. Table 3, read in a public transcription), women and
/// men, within 50 mm.
#[test]
fn landmarks_agree_with_the_handling_equations() {
    for (sex, [shoulder, elbow, knuckle, knee]) in
        [(WOMEN, [1330.0, 1020.0, 730.0, 450.0]), (MEN, [1440.0, 1100.0, 780.0, 490.0])]
    {
        let body = Body::of_percentile(sex, 50);
        let found = [body.shoulder, body.elbow, body.knuckle, body.knee];
        for (found, expected) in found.into_iter().zip([shoulder, elbow, knuckle, knee]) {
            assert!((found.as_mm() - expected).abs() <= 50.0, "{found:?} for {expected}");
        }
    }
}

/// The zone that suits a tall man and a short woman alike, 822 to 1242 mm (computed from the data), is easy for both.
#[test]
fn the_common_zone_is_easy_for_tall_and_short() {
    for body in [Body::of_percentile(WOMEN, 5), Body::of_percentile(MEN, 95)] {
        for height in [850.0, 1000.0, 1242.0] {
            assert_eq!(body.posture(mm(height), Length::ZERO), Posture::Easy);
        }
    }
}

#[test]
fn standing_postures_follow_the_body() {
    let body = Body::standing(Length::mm(1700));
    let nothing = Length::ZERO;
    for (grip, depth, expected) in [
        (body.shoulder, nothing, Posture::Easy),
        (body.knuckle, body.arm, Posture::Easy),
        (body.knuckle, body.arm + LEAN, Posture::Stretch),
        (body.knuckle, body.arm + LEAN + Length::mm(1), Posture::Out),
        (body.knuckle - Length::nm(1), nothing, Posture::Bend),
        (body.knee, body.arm, Posture::Bend),
        (body.knee, body.arm + Length::mm(1), Posture::Kneel),
        (body.knee - Length::nm(1), nothing, Posture::Kneel),
        (Length::mm(120), body.arm + LEAN + Length::mm(1), Posture::Out),
        (body.shoulder + Length::nm(1), nothing, Posture::Stretch),
        (body.overhead_grip, nothing, Posture::Stretch),
        (body.overhead_grip + Length::mm(1), nothing, Posture::Out),
        (body.overhead_grip - Length::mm(10), Length::mm(200), Posture::Out),
    ] {
        assert_eq!(
            body.posture(grip, depth),
            expected,
            "{} mm high, {} mm deep",
            grip.as_mm(),
            depth.as_mm()
        );
    }
}

/// Nobody closes a hand round a thing higher than 1.35 × stature and a shoe.
#[test]
fn what_no_hand_reaches_is_out() {
    for stature in [1400.0, 1525.0, 1700.0, 1870.0, 2050.0] {
        let grip = mm(1.35 * stature + 35.5);
        assert_eq!(Body::standing(mm(stature)).posture(grip, Length::ZERO), Posture::Out);
    }
}

/// 2010 ADA Standards 308.2 (read on an accessibility-standards site): 380 to 1220 mm; over a depth of 510 to 635 mm
/// at most 1120 mm.
#[test]
fn seated_postures_follow_the_standard() {
    let body = Body::seated();
    for (grip, depth, expected) in [
        (380.0, 0.0, Posture::Easy),
        (379.9, 0.0, Posture::Out),
        (1220.0, 510.0, Posture::Easy),
        (1220.1, 0.0, Posture::Out),
        (1120.0, 600.0, Posture::Stretch),
        (1120.1, 600.0, Posture::Out),
        (800.0, 635.1, Posture::Out),
    ] {
        assert_eq!(body.posture(mm(grip), mm(depth)), expected, "{grip} {depth}");
    }
}

fn bodies() -> [Body; 4] {
    [
        Body::of_percentile(WOMEN, 5),
        Body::standing(stature::DEFAULT),
        Body::of_percentile(MEN, 95),
        Body::seated(),
    ]
}

#[test]
fn an_easy_reach_at_the_face_has_nothing_extra() {
    for body in bodies() {
        assert_eq!(body.extra(mm(1000.0), Length::ZERO), Time::ZERO);
    }
}

#[test]
fn deeper_never_takes_less() {
    for body in bodies() {
        for grip in (0..2400).step_by(40) {
            let grip = Length::mm(grip);
            let mut last = (Time::ZERO, false);
            for depth in (0..1200).step_by(7) {
                let depth = Length::mm(depth);
                let now = (body.extra(grip, depth), body.posture(grip, depth) == Posture::Out);
                assert!(now >= last && now.1 >= last.1);
                last = now;
            }
        }
    }
}

#[test]
fn farther_from_the_easy_band_never_takes_less() {
    for body in bodies() {
        for depth in (0..1000).step_by(50) {
            let depth = Length::mm(depth);
            let rising = |heights: &mut dyn Iterator<Item = i64>| {
                let mut last = (Time::ZERO, false);
                for height in heights {
                    let grip = Length::mm(height);
                    let now = (body.extra(grip, depth), body.posture(grip, depth) == Posture::Out);
                    assert!(now.0 >= last.0 && now.1 >= last.1);
                    last = now;
                }
            };
            rising(&mut (1000..2500).step_by(5));
            rising(&mut (0..1000).rev().step_by(5));
        }
    }
}

/// A fetch is a taking and a putting back: MTM-1 elements twice, bend and arise 60.9 and both knees 146.1 TMU (from
/// memory), one TMU 36 ms.
#[test]
fn low_places_cost_the_way_down_and_up_twice() {
    let body = Body::standing(stature::DEFAULT);
    let tmu = |grip: f64| body.extra(mm(grip), Length::ZERO).as_us() as f64 / 36_000.0;
    assert!((tmu(600.0) - 121.8).abs() < 1e-9);
    assert!((tmu(300.0) - 292.2).abs() < 1e-9);
}

/// From 400 mm to 762 mm (30 in) reach B goes from 15.624 to 25.8 and move B from 15.649 to 24.3 TMU (read, linear
/// between rows): 2 × (10.176 + 8.651) more for a place 362 mm deep.
#[test]
fn depth_costs_reach_and_move_beyond_the_nearest() {
    let body = Body::standing(stature::DEFAULT);
    let tmu = |grip, depth| body.extra(grip, depth).as_us() as f64 / 36_000.0;
    assert!((tmu(mm(1000.0), mm(362.0)) - 37.655).abs() < 0.002);
    // The same way up over the shoulder, and half up, half in.
    assert!((tmu(body.shoulder + mm(362.0), Length::ZERO) - 37.655).abs() < 0.002);
    assert!((tmu(body.shoulder + mm(181.0), mm(181.0)) - 37.655).abs() < 0.002);
}
