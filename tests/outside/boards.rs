//! Shelves as beams, and what they are made of, against the Wood Handbook, codes of practice and beam elements.

use super::beam_elements;
use super::check::{Status, Topic};
use toolberth::physics::boards::{
    Beam, Ends, Load, SEEN, STRENGTH_MARGIN, crept, sag_limit, strength,
};
use toolberth::physics::timber::{self, Timber};

const HANDBOOK: &str = "Wood Handbook (FPL-GTR-190) Table 9-1, p. 9-2, read in an online page copy";
const PANELS: &str = "Wood Handbook (FPL-GTR-190) Table 12-1, p. 12-2, read in an online page copy";
const MECHANICS: &str = "textbook beam formulas, by a separate program";
const ELEMENTS: &str = "cubic beam elements, solved in this test";
const PRACTICE: &str = "a furniture-building book excerpt and a cabinet calculator page, read";
const MPSI: f64 = 6_894.757;

/// Everything about boards.
pub fn checks() -> Topic {
    let mut topic = Topic::new("boards");
    coefficients(&mut topic);
    shear(&mut topic);
    worked(&mut topic);
    stresses(&mut topic);
    against_elements(&mut topic);
    against_a_solver(&mut topic);
    materials(&mut topic);
    limits(&mut topic);
    topic
}

/// A board of unit E I over a unit span, without shear.
fn unit(ends: Ends) -> Beam {
    Beam::new([1.0, 12.0, 1.0], 1.0, ends).without_shear()
}

fn spread(span: f64, force: f64) -> Load {
    Load { from: 0.0, to: span, force }
}

fn point(at: f64, force: f64) -> Load {
    Load { from: at, to: at, force }
}

/// kb of the Handbook's δ = kb W L³ / (E I) + ks W L / (G A′), W the whole load.
fn coefficients(topic: &mut Topic) {
    let (free, fixed) = (unit(Ends::Free), unit(Ends::Fixed));
    let quarters = |x: f64| free.sag_at(x, &point(0.25, 0.5)) + free.sag_at(x, &point(0.75, 0.5));
    topic
        .against("physics::boards::Beam::sag_at", Status::Read, HANDBOOK)
        .near("spread, free ends", free.sag_at(0.5, &spread(1.0, 1.0)), 5.0 / 384.0, 1e-12)
        .near("spread, fixed ends", fixed.sag_at(0.5, &spread(1.0, 1.0)), 1.0 / 384.0, 1e-12)
        .near("at the middle, free ends", free.sag_at(0.5, &point(0.5, 1.0)), 1.0 / 48.0, 1e-12)
        .near("at the middle, fixed ends", fixed.sag_at(0.5, &point(0.5, 1.0)), 1.0 / 192.0, 1e-12)
        .near("two quarter points, at the middle", quarters(0.5), 11.0 / 768.0, 1e-12)
        .near("two quarter points, under a load", quarters(0.25), 1.0 / 96.0, 1e-12);
}

/// ks of the same formula: what shear adds, as a board with shear less the same without.
fn shear(topic: &mut Topic) {
    // b and t so that G A′ is 1: A′ = 5/6 b t, G = E / 16.
    let added = |ends: Ends, x: f64, loads: &[Load]| -> f64 {
        let whole = Beam::new([1.0, 1.2, 1.0], 16.0, ends);
        let part = |beam: Beam| loads.iter().map(|l| beam.sag_at(x, l)).sum::<f64>();
        part(whole) - part(whole.without_shear())
    };
    let quarters = [point(0.25, 0.5), point(0.75, 0.5)];
    topic
        .against("physics::boards::Beam::sag_at", Status::Read, HANDBOOK)
        .near("shear, spread, free ends", added(Ends::Free, 0.5, &[spread(1.0, 1.0)]), 0.125, 1e-12)
        .near(
            "shear, spread, fixed ends",
            added(Ends::Fixed, 0.5, &[spread(1.0, 1.0)]),
            0.125,
            1e-12,
        )
        .near("shear, at the middle", added(Ends::Free, 0.5, &[point(0.5, 1.0)]), 0.25, 1e-12)
        .near("shear, the same, fixed", added(Ends::Fixed, 0.5, &[point(0.5, 1.0)]), 0.25, 1e-12)
        .near("shear, quarter points", added(Ends::Free, 0.5, &quarters), 0.125, 1e-12);
}

/// A plywood shelf 800 × 300 × 18 mm under 30 kg, and others.
fn worked(topic: &mut Topic) {
    let shelf = |modulus, ends| Beam::new([800.0, 300.0, 18.0], modulus, ends).without_shear();
    let (free, fixed) = (shelf(6960.0, Ends::Free), shelf(6960.0, Ends::Fixed));
    let w = 294.1995;
    let sag = |beam: Beam, load: Load| beam.sag([load].into_iter());
    topic
        .against("physics::boards::Beam::sag", Status::Computed, MECHANICS)
        .near("plywood, spread", sag(free, spread(800.0, w)), 1.932_787, 0.0039)
        .near("the same, fixed", sag(fixed, spread(800.0, w)), 0.386_557, 0.0008)
        .near("at the middle", sag(free, point(400.0, w)), 3.092_459, 0.0062)
        .near("the same, fixed", sag(fixed, point(400.0, w)), 0.773_115, 0.0016)
        .near("MDF, spread", sag(shelf(3590.0, Ends::Free), spread(800.0, w)), 3.747_129, 0.0075);
    topic.against("physics::boards::Beam::sag_at", Status::Computed, MECHANICS).near(
        "20 kg at 200 mm, under the load",
        free.sag_at(200.0, &point(200.0, 196.133)),
        1.159_672,
        0.0024,
    );
    // Inches and pounds: the formula does not mind.
    let pine = Beam::new([48.0, 12.0, 1.5], 1.5e6, Ends::Free).without_shear();
    topic.against("physics::boards::Beam::sag", Status::Read, "a public calculator page").near(
        "pine 48 × 12 × 1½ in, 5 lb/in",
        sag(pine, spread(48.0, 240.0)),
        0.068,
        0.0006,
    );
}

fn stresses(topic: &mut Topic) {
    let shelf = Beam::new([800.0, 300.0, 18.0], 6960.0, Ends::Free);
    let w = 294.1995;
    topic
        .against("physics::boards::Beam::stress", Status::Computed, "M / (b t² / 6)")
        .near(
            "30 kg spread",
            shelf.stress(shelf.moment_at(400.0, &spread(800.0, w))),
            1.816_046,
            0.0018,
        )
        .near(
            "at the middle",
            shelf.stress(shelf.moment_at(400.0, &point(400.0, w))),
            3.632_093,
            0.0036,
        )
        .near("the other face", shelf.stress(-w * 200.0), 3.632_093, 0.0036);
    let (free, fixed) = (unit(Ends::Free), unit(Ends::Fixed));
    topic
        .against("physics::boards::Beam::moment_at", Status::Computed, "W L / 8, W L / 4, W L / 12")
        .near("spread, free, middle", free.moment_at(0.5, &spread(1.0, 1.0)), 0.125, 1e-12)
        .near("point, free, middle", free.moment_at(0.5, &point(0.5, 1.0)), 0.25, 1e-12)
        .near("spread, fixed, end", fixed.moment_at(0.0, &spread(1.0, 1.0)), -1.0 / 12.0, 1e-12)
        .near("spread, fixed, middle", fixed.moment_at(0.5, &spread(1.0, 1.0)), 1.0 / 24.0, 1e-12)
        .near("point, fixed, far end", fixed.moment_at(1.0, &point(0.5, 1.0)), -0.125, 1e-12)
        .near("no moment at a free end", free.moment_at(1.0, &point(0.3, 1.0)), 0.0, 1e-12);
}

/// Three unlike things on a board of 700 mm.
const THREE: [Load; 3] = [
    Load { from: 30.0, to: 190.0, force: 55.0 },
    Load { from: 240.0, to: 610.0, force: 80.0 },
    Load { from: 640.0, to: 655.0, force: 40.0 },
];

/// The same three, solved by a general beam solver (indeterminatebeam-rust 0.3.0) with and without shear.
fn against_a_solver(topic: &mut Topic) {
    const SOLVER: &str = "a general beam solver, indeterminatebeam-rust 0.3.0";
    const AT: [f64; 5] = [100.0, 250.0, 350.0, 500.0, 600.0];
    let board = |ends| Beam::new([700.0, 250.0, 16.0], 7000.0, ends);
    let sag = |beam: Beam, expected: [f64; 5], tolerance: f64| {
        AT.into_iter().zip(expected).map(move |(x, e)| {
            (x, THREE.iter().map(|l| beam.sag_at(x, l)).sum::<f64>(), e, tolerance)
        })
    };
    let free = [0.527_435_9, 1.077_163_9, 1.194_394_8, 0.946_955_4, 0.534_508_2];
    let fixed = [0.055_275_7, 0.188_361_6, 0.224_045_7, 0.151_720_8, 0.056_122_3];
    let free_sheared = [0.532_398_0, 1.085_725_5, 1.203_834_9, 0.954_933_5, 0.539_658_3];
    let fixed_sheared = [0.060_206_9, 0.196_900_0, 0.233_485_8, 0.159_729_8, 0.061_303_3];
    topic
        .against("physics::boards::Beam::sag_at", Status::Computed, SOLVER)
        .table("three things, free ends", sag(board(Ends::Free).without_shear(), free, 1e-6))
        .table("the same, fixed ends", sag(board(Ends::Fixed).without_shear(), fixed, 1e-6))
        .table("free ends, with shear", sag(board(Ends::Free), free_sheared, 1e-6))
        // The handbook's shear leaves the moments of fixed ends alone; the solver lets them follow.
        .table("fixed ends, with shear", sag(board(Ends::Fixed), fixed_sheared, 5e-5));
    let moment = |ends, expected: [f64; 4]| {
        [0.0, 250.0, 350.0, 648.0].into_iter().zip(expected).map(move |(x, e)| {
            (x, THREE.iter().map(|l| board(ends).moment_at(x, l)).sum::<f64>(), e, 0.01)
        })
    };
    topic
        .against("physics::boards::Beam::moment_at", Status::Computed, SOLVER)
        .table("free ends", moment(Ends::Free, [0.0, 12_485.618, 13_766.892, 4_833.81]))
        .table("fixed ends", moment(Ends::Fixed, [-9_202.895, 3_096.78, 4_303.678, -4_851.048]));
}

/// The three things by both kinds of ends.
fn against_elements(topic: &mut Topic) {
    let loads = THREE;
    for (ends, clamped) in [(Ends::Free, false), (Ends::Fixed, true)] {
        let beam = Beam::new([700.0, 250.0, 16.0], 7000.0, ends).without_shear();
        let bending = 7000.0 * 250.0 * 16.0f64.powi(3) / 12.0;
        let spans: Vec<_> = loads.iter().map(|l| (l.from, l.to, l.force)).collect();
        let found = beam_elements::solve(700.0, bending, clamped, &spans);
        let words = if clamped { "fixed" } else { "free" };
        let at = |x: f64| loads.iter().map(|l| beam.sag_at(x, l)).sum::<f64>();
        topic.against("physics::boards::Beam::sag_at", Status::Computed, ELEMENTS).table(
            format!("three things, {words} ends, every 25 mm"),
            (0..=28).map(|k| {
                let x = f64::from(k) * 25.0;
                (x, at(x), found.sag(x), 1e-6)
            }),
        );
        topic.against("physics::boards::Beam::sag", Status::Computed, ELEMENTS).near(
            format!("the deepest, {words} ends"),
            beam.sag(loads.into_iter()),
            found.deepest(),
            0.005 * found.deepest(),
        );
        topic.against("physics::boards::Beam::moment", Status::Computed, ELEMENTS).near(
            format!("the hardest bent, {words} ends"),
            beam.moment(loads.into_iter()),
            found.hardest(),
            0.01 * found.hardest(),
        );
    }
    let beam = Beam::new([700.0, 250.0, 16.0], 7000.0, Ends::Free);
    topic.against("physics::boards::Beam::moment", Status::Computed, "W L / 8").near(
        "spread",
        beam.moment([spread(700.0, 100.0)].into_iter()),
        8750.0,
        0.01,
    );
}

fn materials(topic: &mut Topic) {
    let modulus = |name, t: &Timber, mpsi: f64| (name, t.modulus.value, mpsi * MPSI, 60.0);
    topic.against("physics::timber", Status::Read, PANELS).table(
        "stiffness of panels, low ends",
        [
            modulus("plywood", &timber::PLYWOOD, 1.01),
            modulus("MDF", &timber::MDF, 0.52),
            modulus("particle board", &timber::PARTICLE_BOARD, 0.40),
            modulus("strand board", &timber::STRAND_BOARD, 0.64),
            modulus("hardboard", &timber::HARDBOARD, 0.45),
        ],
    );
    topic.against("physics::timber", Status::Read, PANELS).table(
        "stiffness of wood",
        [
            modulus("white oak", &timber::OAK, 1.78),
            modulus("red maple", &timber::MAPLE, 1.64),
            modulus("Douglas fir", &timber::DOUGLAS_FIR, 1.95),
        ],
    );
    topic
        .against(
            "physics::timber",
            Status::Read,
            "Wood Handbook (FPL-GTR-190) Table 5-3a, 12 % moisture, read in an online page copy",
        )
        .table(
            "stiffness of pines",
            [
                ("sugar pine, the limpest", timber::PINE.modulus.value, 8200.0, 0.0),
                ("shortleaf pine", timber::SOUTHERN_PINE.modulus.value, 12_100.0, 0.0),
            ],
        );
    topic
        .against(
            "physics::timber",
            Status::Read,
            "a state university's table after the Wood Handbook, read",
        )
        .table(
            "stiffness of western woods",
            [
                modulus("western larch", &timber::LARCH, 1.87),
                modulus("Engelmann spruce", &timber::SPRUCE, 1.30),
                modulus("western hemlock", &timber::HEMLOCK, 1.63),
                modulus("grand fir", &timber::FIR, 1.57),
            ],
        );
    strengths(topic);
    gravity_and_creep(topic);
}

fn strengths(topic: &mut Topic) {
    let rupture = |name, t: &Timber, psi: f64| (name, t.rupture.value, psi * MPSI / 1e6, 0.06);
    topic.against("physics::timber", Status::Read, PANELS).table(
        "modulus of rupture",
        [
            rupture("white oak", &timber::OAK, 15_200.0),
            rupture("red maple", &timber::MAPLE, 13_400.0),
            rupture("Douglas fir", &timber::DOUGLAS_FIR, 12_400.0),
            rupture("longleaf pine", &timber::SOUTHERN_PINE, 14_500.0),
            rupture("MDF", &timber::MDF, 5_200.0),
            rupture("particle board", &timber::PARTICLE_BOARD, 2_200.0),
            rupture("strand board", &timber::STRAND_BOARD, 3_161.0),
            rupture("plywood", &timber::PLYWOOD, 4_890.0),
            rupture("hardboard", &timber::HARDBOARD, 4_500.0),
        ],
    );
    topic
        .against("physics::boards::strength", Status::Computed, "a quarter of the row read")
        .near("plywood", strength(&timber::PLYWOOD), 33.72 / 4.0, 1e-9)
        .near("particle board", strength(&timber::PARTICLE_BOARD), 15.17 / 4.0, 1e-9)
        .holds("never the modulus of rupture itself", STRENGTH_MARGIN > 1.0);
}

fn gravity_and_creep(topic: &mut Topic) {
    topic
        .against(
            "physics::timber",
            Status::Read,
            "a building design handbook, Table 6.2, p. 170, and a state university's table",
        )
        .table(
            "specific gravity for screws",
            [
                ("Douglas fir", timber::DOUGLAS_FIR.gravity.value, 0.51, 0.0),
                ("southern pine", timber::SOUTHERN_PINE.gravity.value, 0.59, 0.0),
                ("western hemlock", timber::HEMLOCK.gravity.value, 0.44, 0.0),
                ("spruce", timber::SPRUCE.gravity.value, 0.41, 0.0),
                ("western larch", timber::LARCH.gravity.value, 0.52, 0.0),
                ("grand fir", timber::FIR.gravity.value, 0.39, 0.0),
                ("sugar pine", timber::PINE.gravity.value, 0.36, 0.0),
            ],
        );
    const CREEP: &str = "EN 1995-1-1 Table 3.2, service class 1";
    topic.against("physics::timber", Status::Read, CREEP).table(
        "creep, read in three public code tables",
        [
            ("solid timber", timber::OAK.creep.value, 0.60, 0.0),
            ("plywood", timber::PLYWOOD.creep.value, 0.80, 0.0),
        ],
    );
    topic.against("physics::timber", Status::Memory, CREEP).table(
        "creep, recalled",
        [
            ("strand board, OSB/2", timber::STRAND_BOARD.creep.value, 2.25, 0.0),
            ("particle board P4, P5", timber::PARTICLE_BOARD.creep.value, 2.25, 0.0),
            ("MDF", timber::MDF.creep.value, 2.25, 0.0),
            ("hardboard", timber::HARDBOARD.creep.value, 2.25, 0.0),
        ],
    );
}

fn limits(topic: &mut Topic) {
    topic
        .against("physics::boards::crept", Status::Memory, "EN 1995-1-1 eq. 2.3")
        .near("plywood, 2.0 mm at first", crept(2.0, &timber::PLYWOOD), 3.6, 1e-9)
        .holds(
            "particle board over three times its first",
            crept(1.0, &timber::PARTICLE_BOARD) > 3.0,
        )
        .near("solid wood", crept(1.0, &timber::OAK), 1.6, 1e-12);
    topic
        .against("physics::boards::sag_limit", Status::Practice, PRACTICE)
        .near("cabinets: span / 240", sag_limit(240.0), 1.0, 1e-12)
        .holds("between span / 180, basic, and span / 360, fine", {
            sag_limit(180.0) < 1.0 && sag_limit(360.0) > 1.0
        })
        .near("1/32 in per foot is seen: span / 384", SEEN, 12.0 / 0.03125, 0.5);
}
