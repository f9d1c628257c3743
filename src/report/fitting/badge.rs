//! The mark of a family: its shape and its filling, told apart in black and white.

use crate::report::sheet::{Fill as Ink, Mark as Drawn, Pen, Point};
use crate::tasks::fit_out::{Fill, Mark, Shape};

/// From one line of hatching to the next, as a share of the mark.
const HATCH: f64 = 0.16;

/// The mark about a point, so wide and high.
pub fn badge(mark: Mark, middle: Point, size: f64) -> Vec<Drawn> {
    let fill = if mark.fill == Fill::Solid { Ink::Ink } else { Ink::None };
    let corners: Vec<Point> = corners(mark.shape)
        .into_iter()
        .map(|[x, y]| [middle[0] + x * size / 2.0, middle[1] + y * size / 2.0])
        .collect();
    let mut marks = Vec::new();
    if mark.fill == Fill::Hatched {
        marks.push(Drawn::Lines { pieces: hatching(&corners, size * HATCH), pen: Pen::Medium });
    }
    marks.push(Drawn::Polygon { points: corners, pen: Pen::Medium, fill });
    marks
}

/// The corners of a shape within a square from −1 to 1, y down.
fn corners(shape: Shape) -> Vec<Point> {
    const ARM: f64 = 0.34;
    match shape {
        // A circle of 24 sides: on paper of this size nobody sees them.
        Shape::Circle => (0..24).map(|k| on_circle(f64::from(k) / 24.0)).collect(),
        Shape::Square => vec![[-0.85, -0.85], [0.85, -0.85], [0.85, 0.85], [-0.85, 0.85]],
        Shape::Triangle => vec![[0.0, -0.95], [1.0, 0.8], [-1.0, 0.8]],
        Shape::Diamond => vec![[0.0, -1.0], [1.0, 0.0], [0.0, 1.0], [-1.0, 0.0]],
        Shape::Cross => vec![
            [-ARM, -1.0],
            [ARM, -1.0],
            [ARM, -ARM],
            [1.0, -ARM],
            [1.0, ARM],
            [ARM, ARM],
            [ARM, 1.0],
            [-ARM, 1.0],
            [-ARM, ARM],
            [-1.0, ARM],
            [-1.0, -ARM],
            [-ARM, -ARM],
        ],
        Shape::Hexagon => (0..6).map(|k| on_circle(f64::from(k) / 6.0)).collect(),
        Shape::Wedge => vec![[-1.0, -0.8], [1.0, -0.8], [0.0, 0.95]],
        Shape::Bar => vec![[-1.0, -0.4], [1.0, -0.4], [1.0, 0.4], [-1.0, 0.4]],
    }
}

/// A point of the circle about nought, so far round it.
fn on_circle(turn: f64) -> Point {
    let angle = turn * 2.0 * std::f64::consts::PI;
    [libm::cos(angle), libm::sin(angle)]
}

/// Level lines within a closed figure.
fn hatching(corners: &[Point], step: f64) -> Vec<[Point; 2]> {
    let low = corners.iter().map(|p| p[1]).fold(f64::INFINITY, f64::min);
    let high = corners.iter().map(|p| p[1]).fold(f64::NEG_INFINITY, f64::max);
    let lines = ((high - low) / step) as usize;
    (1..=lines).flat_map(|k| crossings(corners, low + (k as f64 - 0.5) * step)).collect()
}

/// The pieces of a level line that lie within a closed figure.
fn crossings(corners: &[Point], y: f64) -> Vec<[Point; 2]> {
    let next = corners.iter().cycle().skip(1);
    let mut xs: Vec<f64> = corners
        .iter()
        .zip(next)
        .filter(|(a, b)| (a[1] <= y) != (b[1] <= y))
        .map(|(a, b)| a[0] + (b[0] - a[0]) * (y - a[1]) / (b[1] - a[1]))
        .collect();
    xs.sort_by(f64::total_cmp);
    xs.chunks_exact(2).map(|pair| [[pair[0], y], [pair[1], y]]).collect()
}
