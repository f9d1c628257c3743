//! How far boards sag, how hard they are bent and how hard fixings are asked, by summing thin slices.

use super::Case;
use super::frame::Block;
use super::site::{Hung, Plank};
use std::collections::BTreeMap;
use toolberth::domain::{Ends, Material};

/// Slices of a span.
const SLICES: usize = 400;
/// Newtons in a kilogram.
const NEWTONS: f64 = 9.80665;
/// By this share figures may differ before the judge is sure.
const NEAR: f64 = 0.01;
/// A board may end up sagging by its span over this; of its strength one part in so many counts.
const SAG: f64 = 240.0;
const MARGIN: f64 = 4.0;

/// Stiffness and strength in N/mm², specific gravity, kg/m³, creep.
fn figures(material: Material) -> [f64; 5] {
    let wood =
        |stiff: f64, strong: f64, gravity: f64| [stiff, strong, gravity, 1120.0 * gravity, 0.6];
    match material {
        Material::Plywood => [6960.0, 33.72, 0.42, 600.0, 0.8],
        Material::Mdf => [3590.0, 35.85, 0.65, 750.0, 2.25],
        Material::ParticleBoard => [2760.0, 15.17, 0.60, 700.0, 2.25],
        Material::StrandBoard => [4410.0, 21.8, 0.50, 650.0, 2.25],
        Material::Hardboard => [3100.0, 31.02, 0.85, 1000.0, 2.25],
        Material::Spruce => wood(8960.0, 64.0, 0.41),
        Material::Pine => wood(8200.0, 57.0, 0.36),
        Material::SouthernPine => wood(12_100.0, 99.97, 0.59),
        Material::Fir => wood(10_820.0, 61.0, 0.39),
        Material::DouglasFir => wood(13_440.0, 85.49, 0.51),
        Material::Larch => wood(12_890.0, 90.0, 0.52),
        Material::Hemlock => wood(11_240.0, 78.0, 0.44),
        Material::Oak => wood(12_270.0, 104.8, 0.67),
        Material::Maple => wood(11_310.0, 92.39, 0.58),
        Material::Beech => wood(11_900.0, 103.0, 0.64),
        Material::Birch => wood(13_900.0, 114.0, 0.62),
    }
}

impl Case<'_> {
    /// Every board and every fixing whose material or hook the files name.
    pub(super) fn carried(&mut self) {
        let mut on: BTreeMap<usize, Vec<usize>> = BTreeMap::new();
        for (n, thing) in self.things.iter().enumerate() {
            on.entry(thing.surface.unwrap_or(usize::MAX)).or_default().push(n);
        }
        for s in 0..self.site.surfaces.len() {
            let here = on.remove(&s).unwrap_or_default();
            let surface = &self.site.surfaces[s];
            let name = surface.name.clone();
            if let Some(plank) = surface.plank.filter(|_| !here.is_empty()) {
                let (sag, bent) = self.bent(&plank, surface.free, &here);
                let all = here.iter().map(|n| self.things[*n].placement.item.clone()).collect();
                self.beyond(all, sag.max(bent), &name);
            }
            if let Some(hung) = self.site.surfaces[s].hung {
                for n in here {
                    let used = self.asked(&hung, n, self.site.surfaces[s].plane.0);
                    let item = self.things[n].placement.item.clone();
                    self.beyond(vec![item], used, &name);
                }
            }
        }
    }

    fn beyond(&mut self, names: Vec<String>, share: f64, surface: &str) {
        if share > 1.0 + NEAR {
            self.breach("supported", names, format!("{surface} is asked for too much"));
        } else if share > 1.0 - NEAR {
            self.doubt("supported", names);
        }
    }

    /// Shares of the sag and of the strength that a board may have.
    fn bent(&self, plank: &Plank, free: Block, here: &[usize]) -> (f64, f64) {
        let [stiff, strong, _, heavy, creep] = figures(plank.material);
        let mm = |k: usize| (free[1][k] - free[0][k]) as f64 / 1e6;
        let (span, wide, thick) =
            (mm(plank.axis), mm(1 - plank.axis), plank.thickness as f64 / 1e6);
        let step = span / SLICES as f64;
        // Newtons on each slice: the board itself, and each thing by the part of it that is over the slice.
        let mut slices = vec![heavy * 1e-9 * step * wide * thick * NEWTONS; SLICES];
        for n in here {
            let block = &self.things[*n].block;
            let at = |end: usize| (block[end][plank.axis] - free[0][plank.axis]) as f64 / 1e6;
            let weight = self.things[*n].kilograms() * NEWTONS / (at(1) - at(0));
            for (k, slice) in slices.iter_mut().enumerate() {
                let (low, high) = (at(0).max(k as f64 * step), at(1).min((k + 1) as f64 * step));
                *slice += weight * (high - low).max(0.0);
            }
        }
        let bending = stiff * wide * thick.powi(3) / 12.0;
        let sliding = stiff / 16.0 * 5.0 / 6.0 * wide * thick;
        let loose = moments(&slices, step);
        let held = match plank.ends {
            Ends::Free => loose.clone(),
            Ends::Fixed => clamp(&loose, step),
        };
        let sag = curve(&held, step, bending);
        let most = (0..=SLICES).map(|k| sag[k] + loose[k] / sliding).fold(0.0, f64::max);
        let moment = held.iter().map(|m| m.abs()).fold(0.0, f64::max);
        let stress = moment * 6.0 / (wide * thick * thick);
        (most * (1.0 + creep) / (span / SAG), stress / (strong / MARGIN))
    }

    /// The share of what its hook or screw holds that one copy asks for.
    fn asked(&self, hung: &Hung, n: usize, out: usize) -> f64 {
        let thing = &self.things[n];
        let copies = f64::from(thing.placement.copies);
        let one = thing.kilograms() / copies / f64::from(hung.fixing.screw.each);
        let mm = |k: usize| (thing.block[1][k] - thing.block[0][k]) as f64 / 1e6;
        let hook = hung.fixing.hook.map_or(0.0, |h| one / h.as_kg());
        let Some((material, thickness)) = hung.board else { return hook };
        if hung.fixing.end_grain {
            return f64::INFINITY;
        }
        let gravity = figures(material)[2];
        let (diameter, thick) = (hung.fixing.screw.diameter.as_mm(), thickness as f64 / 1e6);
        let thread =
            hung.fixing.screw.thread.map_or((thick - 3.0).max(0.0), |t| t.as_mm().min(thick));
        let psi = 0.006_894_757_3;
        let pull = match material {
            Material::Mdf | Material::ParticleBoard | Material::Hardboard => {
                let deep = (thread - diameter / 3.0).max(0.0);
                41.1 * diameter.sqrt() * deep.powf(1.25) * gravity.powi(2) * 2850.0 / 15_700.0
            }
            Material::Plywood | Material::StrandBoard => {
                0.5 * 2850.0 * psi * gravity.powi(2) * diameter * thread
            }
            _ => 2850.0 * psi * gravity.powi(2) * diameter * thread,
        };
        let group = match gravity {
            g if g >= 0.60 => 4800.0,
            g if g >= 0.50 => 3960.0,
            g if g >= 0.42 => 3240.0,
            _ => 2520.0,
        };
        let across = group * psi * diameter.powi(2) * (thread / (7.0 * diameter)).min(1.0);
        let weight = one * NEWTONS;
        let screw = if out == 2 {
            weight / pull
        } else {
            let along = mm(if out == 0 { 1 } else { 0 });
            let drop = if copies > 1.0 { mm(2).min(along) } else { mm(2) };
            weight * mm(out) / 2.0 / drop / pull + weight / across
        };
        hook.max(screw)
    }
}

/// Moments at the borders of the slices of a board that turns freely at its ends.
fn moments(slices: &[f64], step: f64) -> Vec<f64> {
    let span = step * slices.len() as f64;
    let middle = |k: usize| (k as f64 + 0.5) * step;
    let near = slices.iter().enumerate().map(|(k, w)| w * (span - middle(k)) / span).sum::<f64>();
    let (mut shear, mut moment, mut all) = (near, 0.0, vec![0.0]);
    for w in slices {
        moment += (shear - w / 2.0) * step;
        shear -= w;
        all.push(moment);
    }
    all
}

/// The same with the moments at the ends that keep both from turning: the area of the moments and its middle vanish.
fn clamp(loose: &[f64], step: f64) -> Vec<f64> {
    let span = step * SLICES as f64;
    let sum =
        |f: &dyn Fn(usize) -> f64| (0..SLICES).map(|k| (f(k) + f(k + 1)) / 2.0 * step).sum::<f64>();
    let (area, first) = (sum(&|k| loose[k]), sum(&|k| loose[k] * k as f64 * step));
    // A line a + b x under it with the same area and the same first moment.
    let b = 12.0 * (first - area * span / 2.0) / span.powi(3);
    let a = area / span - b * span / 2.0;
    loose.iter().enumerate().map(|(k, m)| m - a - b * k as f64 * step).collect()
}

/// Sag from moments, by adding up twice and turning the line so that both ends stay where they are.
fn curve(moments: &[f64], step: f64, bending: f64) -> Vec<f64> {
    let (mut slope, mut sag, mut all) = (0.0, 0.0, vec![0.0]);
    for pair in moments.windows(2) {
        let turn = (pair[0] + pair[1]) / 2.0 / bending * step;
        sag += (slope + turn / 2.0) * step;
        slope += turn;
        all.push(sag);
    }
    let end = sag;
    all.iter().enumerate().map(|(k, s)| end * k as f64 / SLICES as f64 - s).collect()
}
