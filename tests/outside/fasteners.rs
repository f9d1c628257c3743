//! Screws and hooks, against handbooks and moment balances.

use toolberth::physics::fasteners::{
    Grain, Ground, Hung, Make, SCREW_MARGIN, Screw, WIRE_STRESS, bracket_pull, share_below,
    wire_load, wire_stress,
};

use super::check::{Status, Topic};

const WOOD_SCREW: &str =
    "Wood Handbook (FPL-GTR-190), chapter 8, as quoted on a woodworking calculator page";
const BUILDING: &str = "a building design handbook, p. 170";
const MECHANICS: &str = "moment balance about the lower screw";
const POUND: f64 = 4.448_221_615;

fn side(gravity: f64) -> Ground {
    Ground { gravity, make: Make::Solid, grain: Grain::Side }
}

fn screw(diameter: f64, thread: f64) -> Screw {
    Screw { diameter, thread }
}

/// Everything about screws and hooks.
pub fn checks() -> Topic {
    let mut topic = Topic::new("fasteners");
    ultimate(&mut topic);
    pull(&mut topic);
    shear(&mut topic);
    particles(&mut topic);
    hung(&mut topic);
    hooks(&mut topic);
    topic
}

fn ultimate(topic: &mut Topic) {
    let most = |g, d, l| screw(d, l).ultimate(&side(g)).unwrap_or(f64::NAN);
    topic
        .against("physics::fasteners::Screw::ultimate", Status::Read, WOOD_SCREW)
        .near("coefficient, N/mm²", most(1.0, 1.0, 1.0), 108.25, 0.02)
        .near(
            "No. 8, an inch of thread, specific gravity 0.70, in pounds",
            most(0.70, 0.164 * 25.4, 25.4) / POUND,
            1262.0,
            1.0,
        );
    topic
        .against(
            "physics::fasteners::Screw::ultimate",
            Status::Computed,
            "the Handbook's equation in N and mm, by a separate program",
        )
        .near("4.17 mm, 25 mm in 0.48", most(0.48, 4.17, 25.0), 2600.078, 2.6)
        .near("3.5 mm, 16 mm in 0.36", most(0.36, 3.5, 16.0), 785.6352, 0.79)
        .near("4.83 mm, 38 mm in 0.40", most(0.40, 4.83, 38.0), 3178.913, 3.2);
    let end = Ground { grain: Grain::End, ..side(0.48) };
    topic
        .against("physics::fasteners::Screw::ultimate", Status::Read, BUILDING)
        .holds("refused in end grain", screw(4.17, 25.0).ultimate(&end).is_none());
}

fn pull(topic: &mut Topic) {
    let may = |g, d, l| screw(d, l).pull(&side(g));
    topic
        .against("physics::fasteners::Screw::pull", Status::Read, "an engineering reference page")
        .near(
            "No. 10, an inch of thread, specific gravity 0.45, in pounds",
            may(0.45, 0.190 * 25.4, 25.4) / POUND,
            109.0,
            1.0,
        );
    topic
        .against("physics::fasteners::Screw::pull", Status::Read, BUILDING)
        .near("coefficient, pounds an inch", may(1.0, 25.4, 25.4) / POUND, 2850.0, 0.01)
        .near(
            "nothing in end grain",
            screw(4.17, 25.0).pull(&Ground { grain: Grain::End, ..side(0.48) }),
            0.0,
            0.0,
        );
    topic
        .against(
            "physics::fasteners::Screw::pull",
            Status::Computed,
            "eq. 6.37 of the building design handbook in N and mm, by a separate program",
        )
        .near("margin", SCREW_MARGIN, 5.508_772, 0.001)
        .near("4.17 mm, 25 mm in 0.48", may(0.48, 4.17, 25.0), 471.9787, 0.48)
        .near("3.5 mm, 16 mm in 0.36", may(0.36, 3.5, 16.0), 142.6123, 0.15)
        .near("4.83 mm, 38 mm in 0.40", may(0.40, 4.83, 38.0), 577.0514, 0.58);
    let plies = Ground { make: Make::Plies, ..side(0.48) };
    topic
        .against(
            "physics::fasteners::Screw::pull",
            Status::Read,
            "Ahn, Pang & Oh 2021, J. Korean Wood Sci. Technol. 49(1):93, abstract",
        )
        .holds("less in plywood than the equation says", {
            screw(4.17, 25.0).pull(&plies) < may(0.48, 4.17, 25.0)
        });
}

fn shear(topic: &mut Topic) {
    // Deep enough for the whole load; a gravity of the middle of each group.
    let may = |g| screw(0.19 * 25.4, 50.0).shear(&side(g)) / POUND;
    topic
        .against("physics::fasteners::Screw::shear", Status::Read, BUILDING)
        .table(
            "No. 10 by group of the wood, pounds",
            [
                ("group I", may(0.65), 173.28, 0.1),
                ("group II", may(0.55), 142.96, 0.1),
                ("group III", may(0.45), 116.96, 0.1),
                ("group IV", may(0.36), 90.97, 0.1),
            ],
        )
        .near(
            "nothing in end grain",
            screw(4.83, 50.0).shear(&Ground { grain: Grain::End, ..side(0.55) }),
            0.0,
            0.0,
        );
    // Species of each group and their gravities, Table 6.2 of the same handbook, read; which group they are in, recalled.
    topic
        .against("physics::fasteners::Screw::shear", Status::Memory, BUILDING)
        .table(
            "species by group, pounds on a No. 10",
            [
                ("southern pine", may(0.59), 142.96, 0.1),
                ("Douglas fir", may(0.51), 142.96, 0.1),
                ("western hemlock", may(0.44), 116.96, 0.1),
                ("redwood", may(0.42), 116.96, 0.1),
                ("spruce", may(0.41), 90.97, 0.1),
            ],
        )
        .near(
            "half as deep as seven diameters, half the load",
            screw(4.0, 14.0).shear(&side(0.55)) / screw(4.0, 28.0).shear(&side(0.55)),
            0.5,
            1e-12,
        );
}

fn particles(topic: &mut Topic) {
    let board = |gravity| Ground { make: Make::Particles, ..side(gravity) };
    let most = |g, d, l| screw(d, l).ultimate(&board(g)).unwrap_or(f64::NAN);
    topic
        .against(
            "physics::fasteners::Screw::ultimate",
            Status::Memory,
            "Wood Handbook, chapter 8, 2655 √D (L − D/3)^1.25 G² in pounds and inches",
        )
        .near(
            "an inch of thread and diameter in gravity 1, pounds",
            most(1.0, 25.4, 25.4) / POUND,
            2655.0 * (2.0f64 / 3.0).powf(1.25),
            3.5,
        )
        .near(
            "No. 8 with 5/8 in of thread in gravity 0.7, pounds",
            most(0.7, 0.164 * 25.4, 0.625 * 25.4) / POUND,
            2655.0 * 0.164f64.sqrt() * (0.625f64 - 0.164 / 3.0).powf(1.25) * 0.49,
            0.6,
        );
}

fn hung(topic: &mut Topic) {
    topic
        .against("physics::fasteners::bracket_pull", Status::Computed, MECHANICS)
        .near("40 N at 250 mm, screws 100 mm apart", bracket_pull(40.0, 250.0, 100.0), 100.0, 1e-3)
        .near("as far out as apart", bracket_pull(40.0, 100.0, 100.0), 40.0, 1e-9)
        .near("flat on the wall", bracket_pull(40.0, 0.0, 100.0), 0.0, 0.0);
    let hung = |mass, reach, drop| Hung { mass, reach, drop };
    topic
        .against("physics::fasteners::Hung::pull", Status::Computed, MECHANICS)
        .near("2 kg, 60 mm out, 300 mm high", hung(2.0, 60.0, 300.0).pull(), 3.922_66, 1e-5)
        .near("twice as far out", hung(2.0, 120.0, 300.0).pull(), 7.845_32, 1e-5)
        .near("half as high", hung(2.0, 60.0, 150.0).pull(), 7.845_32, 1e-5);
    // A 4.17 mm screw with 25 mm in gravity 0.48: 471.98 N out; across it 3240 D² lb × 25/(7 × 4.17) = 332.7 N.
    let (held, wood) = (screw(4.17, 25.0), side(0.48));
    let holds = held.holds(&wood);
    let share = |mass, reach, drop| hung(mass, reach, drop).share(&holds);
    topic
        .against(
            "physics::fasteners::Hung::share",
            Status::Computed,
            "the two allowable loads of the building design handbook, worked by hand",
        )
        .near("10 kg flat on the wall", share(10.0, 0.0, 300.0), 98.0665 / 332.69, 2e-4)
        .near(
            "10 kg, 150 mm out, 300 mm high",
            share(10.0, 150.0, 300.0),
            98.0665 / 332.69 + 49.033_25 / 471.98,
            3e-4,
        )
        .holds("end grain holds nothing", {
            let end = held.holds(&Ground { grain: Grain::End, ..wood });
            hung(0.1, 10.0, 100.0).share(&end) == f64::INFINITY
        });
    topic
        .against("physics::fasteners::share_below", Status::Computed, MECHANICS)
        .near("5 kg straight down", share_below(5.0, &holds), 49.033_25 / 471.98, 1e-4)
        .near("nothing", share_below(0.0, &holds), 0.0, 0.0)
        .near("all of it", share_below(471.98 / 9.806_65, &holds), 1.0, 1e-3);
}

fn hooks(topic: &mut Topic) {
    topic
        .against("physics::fasteners::wire_stress", Status::Computed, "32 M / (π d³)")
        .near("50 N at 60 mm on 5 mm wire", wire_stress(50.0, 60.0, 5.0), 244.462, 0.01)
        .near("twice as thick, an eighth", wire_stress(50.0, 60.0, 10.0), 30.557_7, 0.001)
        .near("half as far, half", wire_stress(50.0, 30.0, 5.0), 122.231, 0.005);
    topic
        .against("physics::fasteners::wire_load", Status::Computed, "π d³ σ / (32 e)")
        .near("5 mm wire at 60 mm", wire_load(60.0, 5.0), 32.0432, 0.001)
        .near("3 mm wire at 25 mm", wire_load(25.0, 3.0), 16.6110, 0.001)
        .near("and so stressed", wire_stress(wire_load(40.0, 4.0), 40.0, 4.0), WIRE_STRESS, 1e-9);
}
