//! Rolling a cart, against published push-pull guidelines and textbook mechanics.

use super::check::{Status, Topic};
use toolberth::physics::rolling::{
    Effort, over_step, protects_half, protects_most, push, slide, swing, turning,
};

const GUIDE: &str = "Ohio BWC / Ohio State University push-pull guidelines (2018), read in a public transcription; newtons computed";

/// Pushing, turning, thresholds and stops.
pub fn checks() -> Topic {
    let mut topic = Topic::new("rolling");
    people(&mut topic);
    wheels(&mut topic);
    stops(&mut topic);
    topic
}

/// Hand heights in inches and what is published for them, in newtons or newton metres.
type Published = [f64; 5];
const INCHES: [f64; 5] = [32.0, 36.0, 40.0, 44.0, 48.0];

fn people(topic: &mut Topic) {
    let found = |of: fn(Effort, f64) -> f64, effort: Effort, published: Published, within: f64| {
        let row = move |(k, expected): (usize, f64)| {
            (format!("{} in", INCHES[k]), of(effort, INCHES[k] * 25.4), expected, within)
        };
        published.into_iter().enumerate().map(row).collect::<Vec<_>>()
    };
    topic
        .against("physics::rolling::protects_most", Status::Read, GUIDE)
        .table("push", found(protects_most, Effort::Push, [213.5, 231.3, 240.2, 275.8, 302.5], 0.2))
        .table("pull", found(protects_most, Effort::Pull, [182.4, 231.3, 275.8, 306.9, 324.7], 0.2))
        .table(
            "one hand",
            found(protects_most, Effort::OneHand, [169.0, 191.3, 195.7, 195.7, 186.8], 0.2),
        )
        .table("turn", found(protects_most, Effort::Turn, [81.3, 90.8, 99.0, 104.4, 108.5], 0.1));
    topic
        .against("physics::rolling::protects_half", Status::Read, GUIDE)
        .table("push", found(protects_half, Effort::Push, [271.3, 280.2, 284.7, 324.7, 351.4], 0.2))
        .table("pull", found(protects_half, Effort::Pull, [253.5, 302.5, 329.2, 355.9, 369.2], 0.2))
        .table(
            "one hand",
            found(protects_half, Effort::OneHand, [204.6, 226.9, 231.3, 235.8, 231.3], 0.2),
        )
        .table(
            "turn",
            found(protects_half, Effort::Turn, [100.3, 111.2, 122.0, 127.4, 131.5], 0.1),
        );
}

fn wheels(topic: &mut Topic) {
    topic
        .against(
            "physics::rolling::push",
            Status::Computed,
            "weight x coefficient; the coefficient is an assumption of the example",
        )
        .near("150 kg at 0.03", push(150.0 * 9.806_65, 0.03), 44.13, 0.01)
        .near(
            "on a slope of 3 in 100 a wheel without resistance asks for as much, nearly",
            push(1000.0, 0.03),
            1000.0 * 0.03_f64.atan().sin(),
            0.02,
        )
        .near("nothing without resistance", push(1000.0, 0.0), 0.0, 0.0);
    // The push and the weight balance about the edge of the step: F (r - h) = N sqrt(r^2 - (r - h)^2).
    let balance = |r: f64, h: f64| (r * r - (r - h) * (r - h)).sqrt() / (r - h);
    topic
        .against(
            "physics::rolling::over_step",
            Status::Computed,
            "textbook statics, rigid wheel; moments about the edge of the step",
        )
        .near(
            "5 mm under a wheel of radius 50",
            over_step(50.0, 5.0).unwrap_or(f64::NAN),
            0.484_322_1,
            0.0001,
        )
        .near(
            "10 mm under the same: the 3-4-5 triangle gives 3/4",
            over_step(50.0, 10.0).unwrap_or(f64::NAN),
            0.75,
            1e-9,
        )
        .near(
            "12 mm under a wheel of radius 37.5",
            over_step(37.5, 12.0).unwrap_or(f64::NAN),
            balance(37.5, 12.0),
            1e-9,
        )
        .holds("as high as the axle no push does it", over_step(50.0, 50.0).is_none());
    let square = [[300.0, 400.0], [-300.0, 400.0], [300.0, -400.0], [-300.0, -400.0]];
    topic
        .against(
            "physics::rolling::turning",
            Status::Computed,
            "sum of resistance x arm about the plumb line, textbook statics",
        )
        .near(
            "four of 250 N, 500 mm off, at 0.03",
            turning(&[250.0; 4], &square, [0.0; 2], 0.03),
            15.0,
            1e-9,
        )
        .near(
            "one of 100 N, 5 m off",
            turning(&[100.0], &[[3000.0, 4000.0]], [0.0; 2], 0.02),
            10.0,
            1e-9,
        )
        .near(
            "about a caster it has no arm",
            turning(&[100.0], &[[30.0, 40.0]], [30.0, 40.0], 0.02),
            0.0,
            0.0,
        );
}

fn stops(topic: &mut Topic) {
    const ENERGY: &str = "energy of motion against friction or height, textbook, g 9.80665";
    topic
        .against("physics::rolling::slide", Status::Computed, ENERGY)
        .near("0.8 m/s, friction 0.4", slide(0.8, 0.4), 640.0 / 7.845_32, 0.001)
        .near("twice the speed, four times as far", slide(1.6, 0.4), 4.0 * slide(0.8, 0.4), 1e-9)
        .near("half the friction, twice as far", slide(0.8, 0.2), 2.0 * slide(0.8, 0.4), 1e-9);
    topic
        .against("physics::rolling::swing", Status::Computed, ENERGY)
        .near("0.8 m/s", swing(0.8), 32.631, 0.001)
        .near(
            "the speed of a fall of 100 mm lifts by 100 mm",
            swing((2.0_f64 * 9.806_65 * 0.1).sqrt()),
            100.0,
            1e-9,
        )
        .near(
            "with a friction of one a thing slides as far as it swings up",
            swing(1.1),
            slide(1.1, 1.0),
            1e-9,
        );
}
