//! The floor as polygons: ways on foot round obstacles whose round corners are cut into straight pieces.

use std::f64::consts::FRAC_PI_2;
use toolberth::site::walk::Rect2;
use toolberth::units::Length;

/// How far one keeps from everything, in mm.
pub const CLEAR: f64 = 250.0;

/// A convex obstacle as its corners, anticlockwise.
pub type Polygon = Vec<[f64; 2]>;

/// Pieces to the quarter circle.
const PIECES: u32 = 8;

/// A grown solid whose round corners are cut into straight pieces: within the round ones, or around them.
pub fn polygon(solid: &Rect2, around: bool) -> Polygon {
    let step = FRAC_PI_2 / f64::from(PIECES);
    let [[left, front], [right, back]] =
        [solid.min, solid.max].map(|corner| corner.map(Length::as_mm));
    let mut polygon = Vec::new();
    for (quarter, [x, y]) in
        (0u32..).zip([[right, back], [left, back], [left, front], [right, front]])
    {
        let mut add = |radius: f64, steps: f64| {
            let angle = f64::from(quarter) * FRAC_PI_2 + step * steps;
            polygon.push([x + radius * angle.cos(), y + radius * angle.sin()]);
        };
        if around {
            // Sides that touch the circle at its ends and between the pieces meet a little outside it.
            add(CLEAR, 0.0);
            (0..PIECES).for_each(|piece| add(CLEAR / (step / 2.0).cos(), f64::from(piece) + 0.5));
            add(CLEAR, f64::from(PIECES));
        } else {
            (0..=PIECES).for_each(|piece| add(CLEAR, f64::from(piece)));
        }
    }
    polygon
}

/// Whether a line goes through the inside of a polygon.
fn crosses(polygon: &Polygon, from: [f64; 2], to: [f64; 2]) -> bool {
    let (mut enters, mut leaves) = (0.0f64, 1.0f64);
    for (number, corner) in polygon.iter().enumerate() {
        let next = polygon[(number + 1) % polygon.len()];
        let out = [next[1] - corner[1], corner[0] - next[0]];
        let size = out[0].hypot(out[1]);
        if size < 1e-9 {
            continue;
        }
        let over =
            |p: [f64; 2]| ((p[0] - corner[0]) * out[0] + (p[1] - corner[1]) * out[1]) / size + 1e-6;
        let (here, there) = (over(from), over(to));
        if here >= 0.0 && there >= 0.0 {
            return false;
        }
        let share = here / (here - there);
        if here >= 0.0 {
            enters = enters.max(share);
        } else if there >= 0.0 {
            leaves = leaves.min(share);
        }
    }
    enters < leaves
}

/// The shortest way round polygons, by looking from every corner to every other.
pub fn round_polygons(polygons: &[Polygon], from: [f64; 2], to: [f64; 2]) -> Option<f64> {
    let points: Vec<[f64; 2]> =
        [from, to].into_iter().chain(polygons.iter().flatten().copied()).collect();
    let (mut best, mut done) = (vec![f64::INFINITY; points.len()], vec![false; points.len()]);
    best[0] = 0.0;
    loop {
        let open = (0..points.len()).filter(|&p| !done[p] && best[p].is_finite());
        let here = open.min_by(|a, b| best[*a].total_cmp(&best[*b]))?;
        if here == 1 {
            return Some(best[1]);
        }
        done[here] = true;
        for there in (0..points.len()).filter(|&p| !done[p]) {
            let (a, b) = (points[here], points[there]);
            let length = best[here] + (a[0] - b[0]).hypot(a[1] - b[1]);
            if length < best[there] && !polygons.iter().any(|polygon| crosses(polygon, a, b)) {
                best[there] = length;
            }
        }
    }
}
