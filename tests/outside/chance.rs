//! Loads and tipping of random bodies, against slower ways to the same answer written here.

use super::statics::{loads, near, places};
use toolberth::physics::casters::Supports;
use toolberth::physics::tipping::{Footprint, degrees};
use toolberth::units::Length;

/// A splash of chance that is the same on every machine (a linear congruence with Knuth's constants).
struct Dice(u64);

impl Dice {
    fn roll(&mut self, from: f64, to: f64) -> f64 {
        self.0 =
            self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        from + (to - from) * ((self.0 >> 33) as f64 / (1u64 << 31) as f64)
    }
}

/// The loads by trying every set of supports: the plane through each is found by Cramer's rule, and the one set on
/// which none pulls and beside which none is pressed is true.
fn by_all_sets(at: &[[f64; 2]], total: f64, [cx, cy]: [f64; 2]) -> Option<Vec<f64>> {
    let det = |m: [[f64; 3]; 3]| {
        m[0][0] * (m[1][1] * m[2][2] - m[1][2] * m[2][1])
            - m[0][1] * (m[1][0] * m[2][2] - m[1][2] * m[2][0])
            + m[0][2] * (m[1][0] * m[2][1] - m[1][1] * m[2][0])
    };
    let rows: Vec<[f64; 3]> =
        at.iter().map(|p| [1.0, (p[0] - cx) / 100.0, (p[1] - cy) / 100.0]).collect();
    for set in 0u32..1 << at.len() {
        let on = |i: usize| set >> i & 1 == 1;
        let mut m = [[0.0; 3]; 3];
        for row in rows.iter().enumerate().filter(|(i, _)| on(*i)).map(|(_, r)| r) {
            for (r, line) in m.iter_mut().enumerate() {
                for (c, entry) in line.iter_mut().enumerate() {
                    *entry += row[r] * row[c];
                }
            }
        }
        let whole = det(m);
        if whole.abs() < 1e-6 {
            continue;
        }
        let unknown: [f64; 3] = std::array::from_fn(|k| {
            let mut swapped = m;
            (0..3).for_each(|r| swapped[r][k] = if r == 0 { total } else { 0.0 });
            det(swapped) / whole
        });
        let force = |r: &[f64; 3]| r[0] * unknown[0] + r[1] * unknown[1] + r[2] * unknown[2];
        let forces: Vec<f64> = rows.iter().map(force).collect();
        if forces.iter().enumerate().all(|(i, f)| if on(i) { *f >= -1e-7 } else { *f <= 1e-7 }) {
            return Some(
                forces
                    .iter()
                    .enumerate()
                    .map(|(i, f)| if on(i) { f.max(0.0) } else { 0.0 })
                    .collect(),
            );
        }
    }
    None
}

#[test]
fn random_loads_balance_and_equal_the_search_over_all_sets() {
    let mut dice = Dice(7);
    let (mut stood, mut lifted) = (0, 0);
    for round in 0..1500 {
        let n = 3 + round % 6;
        let at: Vec<[f64; 2]> = (0..n)
            .map(|_| [dice.roll(0.0, 1000.0).round(), dice.roll(0.0, 600.0).round()])
            .collect();
        if Supports::new(&places(&at)).is_none() {
            continue;
        }
        let centre = [dice.roll(50.0, 950.0), dice.roll(50.0, 550.0)];
        let found = loads(&at, 120.0, centre);
        let expected = by_all_sets(&at, 120.0, centre);
        assert_eq!(found.is_some(), expected.is_some(), "{at:?} {centre:?}");
        let (Some(found), Some(expected)) = (found, expected) else {
            continue;
        };
        near(&found, &expected, 1e-4);
        stood += 1;
        lifted += usize::from(found.contains(&0.0));
        assert!(found.iter().all(|load| *load >= 0.0));
        let moment = |axis: usize| {
            at.iter().zip(&found).map(|(p, load)| p[axis] * load).sum::<f64>() / 120.0
        };
        near(&[found.iter().sum(), moment(0), moment(1)], &[120.0, centre[0], centre[1]], 1e-4);
    }
    assert!(stood > 400 && lifted > 200, "{stood} stood, {lifted} of them with one off the floor");
}

/// The least tip angle by the angle over each pair of casters that has all others on one side: no hull needed.
fn least_tip(at: &[[f64; 2]], [x, y, z]: [f64; 3], trail: f64) -> f64 {
    let mut least = f64::INFINITY;
    for a in at {
        for b in at {
            let cross = |p: [f64; 2]| (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);
            if a != b && at.iter().all(|p| cross(*p) >= -1e-9) {
                let long = (b[0] - a[0]).hypot(b[1] - a[1]);
                least = least.min((cross([x, y]) / long - trail).atan2(z).to_degrees());
            }
        }
    }
    least
}

#[test]
fn random_footprints_tip_over_their_nearest_side() {
    let mut dice = Dice(11);
    for round in 0..400 {
        let at: Vec<[f64; 2]> = (0..3 + round % 6)
            .map(|_| [dice.roll(0.0, 900.0).round(), dice.roll(0.0, 500.0).round()])
            .collect();
        let trail = dice.roll(0.0, 40.0).round();
        let Some(footprint) = Footprint::new(&places(&at), Length::from_mm(trail)) else {
            continue;
        };
        let [x, y, z] = [dice.roll(-50.0, 950.0), dice.roll(-50.0, 550.0), dice.roll(200.0, 900.0)];
        let found = degrees(footprint.least_margin(x, y).1, z);
        near(&[found], &[least_tip(&at, [x, y, z], trail)], 1e-6);
    }
}
