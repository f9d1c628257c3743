//! Boards that carry: how far they sag and how hard they are bent by what stands where.
//!
//! A board is a beam over its clear span, as wide as the shelf is deep. Each thing on it is a load spread over its own
//! length along the span; loads add up. Lengths are millimetres, forces newtons, stresses and moduli N/mm².

use super::timber::{RIGIDITY, Timber};

/// A board may end up sagging by its span divided by this: a habit of cabinet makers, read on a cabinet calculator page;
/// no standard.
pub const SAG_LIMIT: f64 = 240.0;
/// The eye begins to see a sag of its span divided by this: 1/32 in per foot, a furniture builders' habit; read in a book
/// excerpt.
pub const SEEN: f64 = 384.0;
/// Of the stress at which the mean of test pieces breaks, one part in so many is counted on: design choice, ours. It stands
/// for scatter, knots and a load that stays for years.
pub const STRENGTH_MARGIN: f64 = 4.0;
/// The part of its height that a rectangle has against shear: 5/6, Wood Handbook (FPL-GTR-190) eq. 9-4, from memory.
const SHEAR_AREA: f64 = 5.0 / 6.0;
/// The span is looked at in so many steps.
const STEPS: usize = 16;
/// Where a cubic is weighed to give its exact mean over a stretch: at the middle ± half the stretch × √⅓.
const GAUSS: f64 = 0.577_350_269_189_625_8;
/// Sums run in whole millionths of a millimetre and of a newton millimetre, so that no order of adding changes them.
const PARTS: f64 = 1e6;
/// No loads sag a board further than this many times its sag at the middle. A point load near one end comes nearest: 1.0264
/// on free ends, 32/27 on fixed ones; computed from the formulas of [`Beam`].
const BEYOND_MIDDLE: [f64; 2] = [1.03, 1.19];

/// How the ends of a board are held.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Ends {
    /// Loose on pins or battens: they turn as it sags.
    Free,
    /// Glued and screwed or housed, so that they cannot turn.
    Fixed,
}

/// A load spread evenly along the span.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Load {
    /// Where it begins, from the end of the span that all are measured from, mm.
    pub from: f64,
    /// Where it ends; not before where it begins.
    pub to: f64,
    /// The force, N.
    pub force: f64,
}

/// A board over its span, prepared for any loads.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Beam {
    /// Clear span, mm.
    pub span: f64,
    /// How its ends are held.
    pub ends: Ends,
    /// 1 / (E I), E the modulus of elasticity and I = b t³ / 12.
    limpness: f64,
    /// 1 / (G A′), G the modulus of rigidity and A′ = 5/6 b t; nought leaves shear out.
    slip: f64,
    /// Section modulus b t² / 6, mm³.
    pub section: f64,
}

impl Beam {
    /// A board of that clear span, breadth across the span and thickness, of that modulus of elasticity.
    pub fn new([span, breadth, thickness]: [f64; 3], modulus: f64, ends: Ends) -> Beam {
        let square = breadth * thickness * thickness;
        Beam {
            span,
            ends,
            limpness: 12.0 / (modulus * square * thickness),
            slip: RIGIDITY / (modulus * SHEAR_AREA * breadth * thickness),
            section: square / 6.0,
        }
    }
    /// The same without what shear adds, as most textbooks count.
    #[must_use]
    pub fn without_shear(self) -> Beam {
        Beam { slip: 0.0, ..self }
    }
    /// How far one load bends the board down at `x`, mm: the exact mean of the point formula over the load's length.
    pub fn sag_at(&self, x: f64, load: &Load) -> f64 {
        self.mean(x, load, |a| self.point_sag(x, a)) * load.force
    }
    /// The bending moment of one load at `x`, N mm; under nought where it bends the board upwards.
    pub fn moment_at(&self, x: f64, load: &Load) -> f64 {
        self.mean(x, load, |a| self.point_moment(x, a)) * load.force
    }
    /// The stress that a moment makes at the face of the board, N/mm².
    pub fn stress(&self, moment: f64) -> f64 {
        moment.abs() / self.section
    }
    /// Whether it can be told at a glance that loads together sag the board no further than so many mm; if not, look.
    pub fn surely_sags_under(&self, limit: f64, loads: impl Iterator<Item = Load>) -> bool {
        let middle = self.span / 2.0;
        let sum = loads.map(|l| whole(self.sag_at(middle, &l))).fold(0, i64::saturating_add);
        sum as f64 / PARTS * BEYOND_MIDDLE[self.ends as usize] <= limit
    }
    /// No load of that size, however spread, makes a greater moment than this, N mm: all of it at the middle of free ends.
    pub fn most_moment(&self, force: f64) -> f64 {
        force * self.span / 4.0
    }
    /// The furthest that loads together bend the board down, looked for at sixteenths of the span, mm. The same in any order.
    pub fn sag(&self, loads: impl Iterator<Item = Load>) -> f64 {
        // The ends do not sag, so the far one is left out.
        let mut sums = [0i64; STEPS];
        for load in loads {
            for (k, sum) in sums.iter_mut().enumerate() {
                *sum = sum.saturating_add(whole(self.sag_at(self.step(k), &load)));
            }
        }
        sums.into_iter().max().unwrap_or(0) as f64 / PARTS
    }
    /// The greatest moment of loads together either way, looked for at sixteenths of the span and under the middle of each
    /// load, N mm. The same in any order.
    pub fn moment(&self, loads: impl Iterator<Item = Load> + Clone) -> f64 {
        let under = loads.clone().map(|l| (l.from + l.to) / 2.0);
        let stations = (0..=STEPS).map(|k| self.step(k)).chain(under);
        let at = |x: f64| {
            let each = loads.clone().map(|l| whole(self.moment_at(x, &l)));
            each.fold(0, i64::saturating_add).unsigned_abs()
        };
        stations.map(at).max().unwrap_or(0) as f64 / PARTS
    }
    fn step(&self, k: usize) -> f64 {
        self.span * k as f64 / STEPS as f64
    }

    /// The mean of a curve over the stretch of a load, where the curve is a cubic on either side of `x`.
    #[inline]
    fn mean(&self, x: f64, load: &Load, curve: impl Fn(f64) -> f64) -> f64 {
        let (from, to) = (load.from.clamp(0.0, self.span), load.to.clamp(0.0, self.span));
        let length = to - from;
        if length <= 0.0 {
            return curve(from);
        }
        let break_at = x.clamp(from, to);
        let piece = |low: f64, high: f64| {
            let (middle, half) = ((low + high) / 2.0, (high - low) / 2.0);
            half * (curve(middle - half * GAUSS) + curve(middle + half * GAUSS))
        };
        (piece(from, break_at) + piece(break_at, to)) / length
    }
    /// How far a newton at `a` bends the board down at `x`. Free ends: P b x (L² − b² − x²) / 6 E I L; fixed ends:
    /// P b² x² (3 a L − 3 a x − b x) / 6 E I L³; for x ≤ a, with b = L − a. Shear adds P b x / G A′ L to both: the Wood
    /// Handbook (FPL-GTR-190) Table 9-1 gives the same for either end.
    #[inline]
    fn point_sag(&self, x: f64, a: f64) -> f64 {
        let l = self.span;
        let (x, a) = if x <= a { (x, a) } else { (l - x, l - a) };
        let b = l - a;
        let bent = match self.ends {
            Ends::Free => b * x * (l * l - b * b - x * x) / (6.0 * l),
            Ends::Fixed => b * b * x * x * (3.0 * a * l - 3.0 * a * x - b * x) / (6.0 * l * l * l),
        };
        bent * self.limpness + b * x / l * self.slip
    }
    /// The moment of a newton at `a` at `x`. Free ends: P b x / L; fixed ends: P b² (3 a + b) x / L³ − P a b² / L²; for
    /// x ≤ a, with b = L − a.
    #[inline]
    fn point_moment(&self, x: f64, a: f64) -> f64 {
        let l = self.span;
        let (x, a) = if x <= a { (x, a) } else { (l - x, l - a) };
        let b = l - a;
        match self.ends {
            Ends::Free => b * x / l,
            Ends::Fixed => b * b * (3.0 * a + b) * x / (l * l * l) - a * b * b / (l * l),
        }
    }
}

#[inline]
fn whole(value: f64) -> i64 {
    (value * PARTS).round() as i64
}

/// How far a board has sagged once it has crept under a load that stays: first sag × (1 + creep). EN 1995-1-1 eq. 2.3,
/// from memory.
pub fn crept(first: f64, timber: &Timber) -> f64 {
    first * (1.0 + timber.creep.value)
}

/// How far a board of that span may sag in the end, mm: a habit, [`SAG_LIMIT`].
pub fn sag_limit(span: f64) -> f64 {
    span / SAG_LIMIT
}

/// The bending stress that may be counted on, N/mm²: [`STRENGTH_MARGIN`].
pub fn strength(timber: &Timber) -> f64 {
    timber.rupture.value / STRENGTH_MARGIN
}

#[cfg(test)]
mod tests {
    use super::*;

    const FREE: Ends = Ends::Free;

    fn shelf(ends: Ends) -> Beam {
        Beam::new([800.0, 300.0, 18.0], 6960.0, ends)
    }

    fn load(from: f64, to: f64, force: f64) -> Load {
        Load { from, to, force }
    }

    #[test]
    fn no_order_of_loads_changes_a_sum() {
        let mut loads = [load(0.0, 33.3, 17.1), load(100.7, 420.3, 61.9), load(419.0, 800.0, 3.3)];
        let beam = shelf(FREE);
        let (sag, moment) = (beam.sag(loads.into_iter()), beam.moment(loads.into_iter()));
        for _ in 0..3 {
            loads.rotate_left(1);
            assert_eq!(beam.sag(loads.into_iter()), sag);
            assert_eq!(beam.moment(loads.into_iter()), moment);
        }
        loads.swap(0, 1);
        assert_eq!(beam.sag(loads.into_iter()), sag);
    }

    #[test]
    fn what_is_told_at_a_glance_holds_wherever_the_load_is() {
        for (ends, beyond) in [(FREE, 1.03), (Ends::Fixed, 1.19)] {
            let beam = shelf(ends).without_shear();
            for k in 1..200 {
                let one = load(f64::from(k) * 2.0, f64::from(k) * 2.0 + 1.0, 100.0);
                let most = (0..=800).map(|x| beam.sag_at(f64::from(x), &one)).fold(0.0, f64::max);
                assert!(beam.surely_sags_under(most * beyond, [one].into_iter()), "at {k}");
                assert!(!beam.surely_sags_under(most * 0.99, [one].into_iter()), "at {k}");
            }
            let middle = load(400.0, 400.0, 100.0);
            let sag = beam.sag_at(400.0, &middle);
            assert!(!beam.surely_sags_under(sag * (beyond - 0.001), [middle].into_iter()));
        }
    }

    #[test]
    fn nothing_bends_a_board_harder_than_all_at_the_middle() {
        for ends in [FREE, Ends::Fixed] {
            let beam = shelf(ends);
            for k in 0..40 {
                let one = load(f64::from(k) * 20.0, f64::from(k) * 20.0 + 7.0, 100.0);
                assert!(beam.moment([one].into_iter()) <= beam.most_moment(100.0));
            }
        }
        let middle = load(400.0, 400.0, 100.0);
        assert_eq!(shelf(FREE).moment([middle].into_iter()), shelf(FREE).most_moment(100.0));
    }

    #[test]
    fn a_narrow_thing_is_looked_under_between_the_steps() {
        let narrow = load(424.9, 425.1, 100.0);
        let right = 100.0 * 425.0 * 375.0 / 800.0;
        assert!((shelf(FREE).moment([narrow].into_iter()) - right).abs() < 3.0);
    }

    /// A block so thick that it hardly bends, only shears, sags furthest under its load: P a b / G A′ L, with G a sixteenth
    /// of E.
    #[test]
    fn a_block_sags_furthest_under_its_load_wherever_that_is() {
        let block = Beam::new([160.0, 10.0, 100_000.0], 1600.0, FREE);
        for k in 1..16 {
            let a = f64::from(k) * 10.0;
            let sheared = 1e9 * a * (160.0 - a) / (100.0 * 5.0 / 6.0 * 1e6 * 160.0);
            let sag = block.sag([load(a, a, 1e9)].into_iter());
            assert!((sag / sheared - 1.0).abs() < 1e-4, "at {a}: {sag}, not {sheared}");
        }
    }

    #[test]
    fn a_load_past_the_end_counts_as_on_it() {
        let beam = shelf(FREE);
        assert_eq!(beam.sag_at(400.0, &load(-50.0, 900.0, 10.0)), {
            beam.sag_at(400.0, &load(0.0, 800.0, 10.0))
        });
        assert_eq!(beam.sag_at(400.0, &load(-50.0, -10.0, 10.0)), 0.0);
    }

    #[test]
    fn nothing_sags_and_bends_nothing() {
        let beam = shelf(FREE);
        assert_eq!(beam.sag(std::iter::empty()), 0.0);
        assert_eq!(beam.moment(std::iter::empty()), 0.0);
        assert!(beam.surely_sags_under(0.0, std::iter::empty()));
    }

    #[test]
    fn sag_and_moment_are_the_same_from_either_end() {
        for ends in [FREE, Ends::Fixed] {
            let beam = shelf(ends);
            let (one, other) = (load(60.0, 210.0, 9.0), load(590.0, 740.0, 9.0));
            for x in [0.0, 50.0, 130.0, 400.0, 700.0] {
                assert!((beam.sag_at(x, &one) - beam.sag_at(800.0 - x, &other)).abs() < 1e-12);
                let turned = beam.moment_at(800.0 - x, &other);
                assert!((beam.moment_at(x, &one) - turned).abs() < 1e-9);
            }
        }
    }
}
