//! Body heights and how far hands get, against measured people.
//!
//! Measured people: ANSUR II public data, 2012 survey of US Army personnel (NATICK/TR-15/007, US government work),
//! unshod. Values for all 6068 were computed from the whole data by a separate program. `people.csv` holds an extract: of
//! all women and of all men in order of stature every 20th and every 40th, from the middle of the first twenty and forty
//! on; millimetres. From it everything is formed again here, person by person.

use crate::check::{Status, Topic};
use toolberth::physics::body::{Body, Grip, LEAN, Posture, SHOE};
use toolberth::physics::people::{self, Measure, Sex, of_percentile, of_stature};
use toolberth::units::{Length, Mass, Time};

const WOMEN: Option<Sex> = Some(Sex::Female);
const MEN: Option<Sex> = Some(Sex::Male);
const DATA: &str = "ANSUR II public data, 2012 survey (NATICK/TR-15/007), computed from the data";
const EXTRACT: &str = "computed from every 20th woman and 40th man of the ANSUR II public data, 2012 survey (NATICK/TR-15/007)";
const HANDLING: &str = "Potvin et al. 2021 table 3, read in a public transcription";

fn mm(millimetres: f64) -> Length {
    Length::from_mm(millimetres)
}

/// A grip over nothing that is in the way.
fn grip(height: Length, depth: Length) -> Grip {
    Grip { height, depth, sill: Length::ZERO }
}

pub fn checks() -> Topic {
    let mut topic = Topic::new("bodies");
    percentiles(&mut topic);
    derived(&mut topic);
    shares(&mut topic);
    each_person(&mut topic);
    landmarks(&mut topic);
    zones(&mut topic);
    arc(&mut topic);
    topic
}

/// Percentiles 5, 50, 95 in mm, of women and of men.
type Row = (&'static str, Measure, [[f64; 3]; 2]);

const PERCENTILES: [Row; 6] = [
    ("stature", Measure::Stature, [[1525.0, 1626.0, 1740.0], [1648.0, 1755.0, 1870.0]]),
    ("eye", Measure::Eye, [[1421.25, 1517.0, 1626.0], [1536.05, 1640.0, 1753.0]]),
    ("shoulder", Measure::Shoulder, [[1242.0, 1332.0, 1433.75], [1339.0, 1439.0, 1546.0]]),
    ("elbow", Measure::Elbow, [[951.0, 1022.0, 1100.0], [1025.0, 1104.0, 1190.0]]),
    ("hanging grip", Measure::Knuckle, [[648.0, 706.0, 766.0], [692.0, 756.0, 822.0]]),
    ("kneecap", Measure::Knee, [[408.0, 448.0, 493.0], [443.05, 487.0, 536.0]]),
];

fn percentiles(topic: &mut Topic) {
    for (what, measure, both) in PERCENTILES {
        for ((sex, who), expected) in [(WOMEN, "women"), (MEN, "men")].into_iter().zip(both) {
            let rows = [5, 50, 95]
                .into_iter()
                .zip(expected)
                .map(|(p, x)| (p, of_percentile(measure, sex, p).as_mm(), x, 1.0));
            topic
                .against("physics::people::of_percentile", Status::Computed, DATA)
                .table(format!("{what}, {who}"), rows);
        }
    }
}

/// One person of the extract.
struct Person {
    sex: Option<Sex>,
    values: Vec<f64>,
}

/// Its columns after the sex.
const COLUMNS: [&str; 11] = [
    "stature",
    "acromialheight",
    "acromionradialelength",
    "forearmcenterofgriplength",
    "kneeheightmidpatella",
    "sittingheight",
    "eyeheightsitting",
    "overheadfingertipreachsitting",
    "handlength",
    "thumbtipreach",
    "chestdepth",
];

impl Person {
    fn get(&self, column: &str) -> f64 {
        let k = COLUMNS.iter().position(|c| *c == column).expect("a column of the extract");
        self.values[k]
    }
    fn measure(&self, measure: Measure) -> f64 {
        let v = |column| self.get(column);
        let over_seat = v("stature") - v("sittingheight");
        let elbow = v("acromialheight") - v("acromionradialelength");
        match measure {
            Measure::Stature => v("stature"),
            Measure::Eye => over_seat + v("eyeheightsitting"),
            Measure::Shoulder => v("acromialheight"),
            Measure::Elbow => elbow,
            Measure::Knuckle => elbow - v("forearmcenterofgriplength"),
            Measure::Knee => v("kneeheightmidpatella"),
            Measure::OverheadGrip => {
                over_seat + v("overheadfingertipreachsitting") - 0.6 * v("handlength")
            }
            Measure::Arm => v("thumbtipreach") - v("chestdepth"),
        }
    }
}

fn extract(sex: Option<Sex>) -> Vec<Person> {
    let mut lines = include_str!("people.csv").lines();
    let head: Vec<&str> = lines.next().expect("a head").split(',').skip(1).collect();
    assert_eq!(head, COLUMNS);
    let person = |line: &str| {
        let (who, rest) = line.split_once(',').expect("a sex");
        let sex = if who == "F" { WOMEN } else { MEN };
        let values = rest.split(',').map(|x| x.parse().expect("a number")).collect();
        Person { sex, values }
    };
    lines.map(person).filter(|p| p.sex == sex).collect()
}

/// A percentile of values, linear between two in order.
fn ranked(mut values: Vec<f64>, percent: f64) -> f64 {
    values.sort_by(f64::total_cmp);
    let at = (values.len() - 1) as f64 * percent / 100.0;
    let (below, share) = (at.floor() as usize, at.fract());
    let above = (below + 1).min(values.len() - 1);
    values[below] + (values[above] - values[below]) * share
}

/// Ranked again from the extract: two hundred of six thousand, hence the tolerance.
fn derived(topic: &mut Topic) {
    for (sex, who) in [(WOMEN, "women"), (MEN, "men")] {
        let people = extract(sex);
        for measure in [Measure::OverheadGrip, Measure::Arm] {
            let all: Vec<f64> = people.iter().map(|p| p.measure(measure)).collect();
            let rows = [5_u8, 50, 95].map(|p| {
                let tolerance = if p == 50 { 10.0 } else { 18.0 };
                let expected = ranked(all.clone(), f64::from(p));
                (p, of_percentile(measure, sex, p).as_mm(), expected, tolerance)
            });
            topic
                .against("physics::people::of_percentile", Status::Computed, EXTRACT)
                .table(format!("{measure:?}, {who}"), rows);
        }
    }
    // Overhead fingertips 2078 and 2263 mm and hands 180 and 193 mm long, medians.
    for (sex, who, fingertips, hand) in
        [(WOMEN, "women", 2078.0, 180.0), (MEN, "men", 2263.0, 193.0)]
    {
        topic.against("physics::people::of_percentile", Status::Computed, DATA).near(
            format!("highest grip 60 % of a hand under the fingertips, {who}"),
            of_percentile(Measure::OverheadGrip, sex, 50).as_mm(),
            fingertips - 0.6 * hand,
            5.0,
        );
    }
    // Thumb tips 742 and 811 mm before the wall, chests 245 and 253 mm deep, medians.
    for (sex, who, thumb, chest) in [(WOMEN, "women", 742.0, 245.0), (MEN, "men", 811.0, 253.0)] {
        topic.against("physics::people::of_percentile", Status::Computed, DATA).near(
            format!("the arm before the chest, {who}"),
            of_percentile(Measure::Arm, sex, 50).as_mm(),
            thumb - chest,
            5.0,
        );
    }
}

/// Mean shares of stature, of all women and of all men.
const SHARES: [(&str, Measure, [f64; 2]); 5] = [
    ("eye", Measure::Eye, [0.9331, 0.9352]),
    ("shoulder", Measure::Shoulder, [0.8198, 0.8203]),
    ("elbow", Measure::Elbow, [0.6287, 0.6294]),
    ("hanging grip", Measure::Knuckle, [0.4336, 0.4307]),
    ("kneecap", Measure::Knee, [0.2756, 0.2780]),
];

fn shares(topic: &mut Topic) {
    let stature = mm(1700.0);
    for (what, measure, both) in SHARES {
        let rows = [(WOMEN, "women"), (MEN, "men")].into_iter().zip(both).map(|((sex, who), x)| {
            (who, of_stature(measure, sex, stature).as_mm() / 1700.0, x, 0.0005)
        });
        topic
            .against("physics::people::of_stature", Status::Computed, DATA)
            .table(format!("{what} as a share of stature"), rows);
    }
}

/// Each person's own height against what their stature foretells: no bias, and 9 of 10 within the tolerance.
fn each_person(topic: &mut Topic) {
    for (measure, within) in [
        (Measure::Eye, 20.0),
        (Measure::Shoulder, 30.0),
        (Measure::Knuckle, 45.0),
        (Measure::OverheadGrip, 70.0),
        (Measure::Arm, 70.0),
    ] {
        let mut off: Vec<f64> = Vec::new();
        for person in extract(WOMEN).into_iter().chain(extract(MEN)) {
            let told = of_stature(measure, person.sex, mm(person.get("stature"))).as_mm();
            off.push(told - person.measure(measure));
        }
        let mean = off.iter().sum::<f64>() / off.len() as f64;
        let near = off.iter().filter(|x| x.abs() <= within).count() as f64 / off.len() as f64;
        topic
            .against("physics::people::of_stature", Status::Computed, EXTRACT)
            .near(format!("{measure:?}, mean of all persons, mm"), mean, 0.0, 5.0)
            .holds(format!("{measure:?}, 9 of 10 within {within} mm"), near >= 0.9);
    }
}

/// Landmarks of another population, in m, women and men. Shod or not is not said there.
fn landmarks(topic: &mut Topic) {
    type Landmark = (&'static str, fn(&Body) -> Length, [f64; 2]);
    let rows: [Landmark; 5] = [
        ("shoulder", |b| b.shoulder, [1.33, 1.44]),
        ("elbow", |b| b.elbow, [1.02, 1.10]),
        ("knuckle", |b| b.knuckle, [0.73, 0.78]),
        ("knee", |b| b.knee, [0.45, 0.49]),
        ("arm reach upward", |b| b.overhead_grip, [1.96, 2.14]),
    ];
    for (what, of, both) in rows {
        let rows = [(WOMEN, "women"), (MEN, "men")].into_iter().zip(both).map(|((sex, who), m)| {
            (who, of(&Body::of_percentile(sex, 50)).as_mm(), m * 1000.0, 35.0)
        });
        topic.against("physics::body::of_percentile", Status::Read, HANDLING).table(what, rows);
    }
}

fn zones(topic: &mut Topic) {
    let both = [Body::of_percentile(WOMEN, 5), Body::of_percentile(MEN, 95)];
    let easy = |height: f64| {
        both.iter().all(|b| b.posture(&grip(mm(height), Length::ZERO)) == Posture::Easy)
    };
    let shoe = SHOE.as_mm();
    topic
        .against(
            "physics::body::posture",
            Status::Computed,
            "from hanging grip of the 95th percentile man (822 mm) to shoulder of the 5th percentile woman (1242 mm), ANSUR II, computed from the data",
        )
        .holds("822 to 1242 mm over the sole suits the tall and the short alike", easy(822.5 + shoe) && easy(1000.0) && easy(1241.5 + shoe))
        .holds("lower does not", !easy(820.5 + shoe))
        .holds("higher does not", !easy(1243.5 + shoe));
    topic.against("physics::body::posture", Status::Computed, EXTRACT).holds(
        "nobody in the extract closes a hand higher than 1.35 times their stature",
        {
            let mut all = extract(WOMEN).into_iter().chain(extract(MEN));
            all.all(|p| p.measure(Measure::OverheadGrip) < 1.35 * p.get("stature"))
                && [1400.0, 1525.0, 1700.0, 1870.0, 2050.0].into_iter().all(|stature| {
                    let high = grip(mm(1.35 * stature + shoe), Length::ZERO);
                    Body::standing(mm(stature), None).posture(&high) == Posture::Out
                })
        },
    );
}

/// A raised arm against a circle about each person's shoulder joint: as far as their own overhead grip is over it, the
/// joint half a chest behind the breast. Mean of all persons, at some angles over level.
fn arc(topic: &mut Topic) {
    for (sex, who) in [(WOMEN, "women"), (MEN, "men")] {
        let people = extract(sex);
        let mean =
            |of: &dyn Fn(&Person) -> f64| people.iter().map(of).sum::<f64>() / people.len() as f64;
        let arm = mean(&|p| p.measure(Measure::OverheadGrip) - p.measure(Measure::Shoulder));
        let behind = mean(&|p| p.get("chestdepth")) / 2.0;
        let body = Body::of_percentile(sex, 50);
        let rows = [10.0_f64, 30.0, 45.0, 60.0, 75.0].map(|degrees| {
            let (sin, cos) = degrees.to_radians().sin_cos();
            let reaches = |far: f64| {
                let high = body.shoulder + mm(far * sin);
                body.posture(&grip(high, mm((far * cos - behind).max(0.0)))) != Posture::Out
            };
            let found = (1..=900).map(f64::from).take_while(|far| reaches(*far)).last();
            (format!("{degrees} degrees"), found.unwrap_or(0.0), arm, 35.0)
        });
        topic
            .against("physics::body::posture", Status::Computed, EXTRACT)
            .table(format!("arc of the raised arm, {who}"), rows);
    }
    let body = Body::of_percentile(MEN, 50);
    let (deep, high) = (mm(480.0), mm(1_900.0));
    topic.against("physics::body::posture", Status::Computed, EXTRACT).holds(
        "a shelf that even a tall arm reaches at its front is out of reach at its back",
        body.posture(&grip(high, mm(100.0))) == Posture::Stretch
            && body.posture(&grip(high, deep)) == Posture::Out
            && body.posture(&grip(mm(1_400.0), deep)) == Posture::Easy,
    );
}

#[test]
fn where_nothing_is_said_a_person_is_the_mean_of_both_medians() {
    assert_eq!(people::DEFAULT, mm(1690.5));
    assert_eq!(of_percentile(Measure::Stature, None, 50), people::DEFAULT);
}

#[test]
fn standing_postures_follow_the_body() {
    let body = Body::standing(Length::mm(1700), None);
    let (nothing, hair) = (Length::ZERO, Length::mm(1));
    for (height, depth, expected) in [
        (body.shoulder, nothing, Posture::Easy),
        (body.knuckle, body.arm, Posture::Easy),
        (body.knuckle, body.arm + LEAN, Posture::Stretch),
        (body.elbow, body.arm + LEAN, Posture::Stretch),
        (body.knuckle, body.arm + LEAN + hair, Posture::Out),
        (body.shoulder, body.arm, Posture::Easy),
        (body.shoulder, body.arm + hair, Posture::Out),
        (body.knuckle - Length::nm(1), nothing, Posture::Bend),
        (body.knee, body.arm, Posture::Bend),
        (body.knee, body.arm + hair, Posture::Kneel),
        (body.knee - Length::nm(1), nothing, Posture::Kneel),
        (Length::mm(120), body.arm + LEAN, Posture::Kneel),
        (Length::mm(120), body.arm + LEAN + hair, Posture::Out),
        (body.shoulder + Length::nm(1), nothing, Posture::Stretch),
        (body.overhead_grip, nothing, Posture::Stretch),
        (body.overhead_grip + hair, nothing, Posture::Out),
        (body.overhead_grip - Length::mm(10), Length::mm(200), Posture::Out),
    ] {
        let found = body.posture(&grip(height, depth));
        assert_eq!(found, expected, "{} mm high, {} mm deep", height.as_mm(), depth.as_mm());
    }
}

/// Halfway from the elbow to the shoulder a body leans in half as far.
#[test]
fn nobody_leans_in_at_the_height_of_the_shoulder() {
    let body = Body::standing(Length::mm(1700), None);
    let half = body.elbow + (body.shoulder - body.elbow).half();
    let deep = body.arm + LEAN.half();
    assert_eq!(body.posture(&grip(half, deep - Length::mm(1))), Posture::Stretch);
    assert_eq!(body.posture(&grip(half, deep + Length::mm(1))), Posture::Out);
}

fn bodies() -> [Body; 4] {
    [
        Body::of_percentile(WOMEN, 5),
        Body::standing(people::DEFAULT, None),
        Body::of_percentile(MEN, 95),
        Body::seated(),
    ]
}

#[test]
fn an_easy_reach_at_the_face_has_nothing_extra() {
    for body in bodies() {
        assert_eq!(body.extra(&grip(mm(1000.0), Length::ZERO), Mass::kg(3)), Time::ZERO);
    }
}

#[test]
fn deeper_never_takes_less() {
    for body in bodies() {
        for height in (0..2400).step_by(40) {
            let mut last = (Time::ZERO, false);
            for depth in (0..1200).step_by(7) {
                let at = grip(Length::mm(height), Length::mm(depth));
                let now = (body.extra(&at, Mass::kg(2)), body.posture(&at) == Posture::Out);
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
            let rising = |heights: &mut dyn Iterator<Item = i64>| {
                let mut last = (Time::ZERO, false);
                for height in heights {
                    let at = grip(Length::mm(height), Length::mm(depth));
                    let now = (body.extra(&at, Mass::ZERO), body.posture(&at) == Posture::Out);
                    assert!(now.0 >= last.0 && now.1 >= last.1);
                    last = now;
                }
            };
            rising(&mut (1000..2500).step_by(5));
            rising(&mut (0..1000).rev().step_by(5));
        }
    }
}
