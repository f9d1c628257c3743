//! Hatching: lines that tell steps apart without colour.

use super::area::Area;
use crate::report::sheet::{Mark, Pen, Point};

/// How a rectangle is hatched.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Hatch {
    /// Not at all.
    None,
    /// Rising lines, far apart.
    Wide,
    /// Rising lines.
    Rising,
    /// Falling lines.
    Falling,
    /// Both.
    Crossed,
}

impl Hatch {
    /// The hatching of a step of five, the dearest the densest.
    pub const fn of_step(step: u8) -> Hatch {
        match step {
            0 => Hatch::None,
            1 => Hatch::Wide,
            2 => Hatch::Rising,
            3 => Hatch::Falling,
            _ => Hatch::Crossed,
        }
    }
    /// Its lines in a rectangle; nothing where there are none.
    pub fn mark(self, area: &Area) -> Option<Mark> {
        let pieces = match self {
            Hatch::None => Vec::new(),
            Hatch::Wide => rising(area, 3.2),
            Hatch::Rising => rising(area, 1.6),
            Hatch::Falling => falling(area, 1.2),
            Hatch::Crossed => [rising(area, 1.6), falling(area, 1.6)].concat(),
        };
        (!pieces.is_empty()).then_some(Mark::Lines { pieces, pen: Pen::Hair })
    }
}

/// Lines from the lower left to the upper right; those of neighbours are one line.
fn rising(area: &Area, apart: f64) -> Vec<[Point; 2]> {
    let line = |sum: f64| {
        let (left, right) = (area.x0.max(sum - area.y1), area.x1.min(sum - area.y0));
        (right - left > 0.05).then_some([[left, sum - left], [right, sum - right]])
    };
    steps(area.x0 + area.y0, area.x1 + area.y1, apart).filter_map(line).collect()
}

/// Lines from the upper left to the lower right.
fn falling(area: &Area, apart: f64) -> Vec<[Point; 2]> {
    let line = |less: f64| {
        let (left, right) = (area.x0.max(area.y0 + less), area.x1.min(area.y1 + less));
        (right - left > 0.05).then_some([[left, left - less], [right, right - less]])
    };
    steps(area.x0 - area.y1, area.x1 - area.y0, apart).filter_map(line).collect()
}

fn steps(from: f64, to: f64, apart: f64) -> impl Iterator<Item = f64> {
    let step = apart * std::f64::consts::SQRT_2;
    let (first, last) = (libm::ceil(from / step) as i64, libm::floor(to / step) as i64);
    (first..=last).map(move |k| k as f64 * step)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_line_lies_within_its_rectangle() {
        let area = Area::new(3.0, 5.0, 23.0, 12.0);
        let Some(Mark::Lines { pieces, .. }) = Hatch::Crossed.mark(&area) else {
            panic!("there are lines")
        };
        assert!(pieces.len() > 15);
        for [x, y] in pieces.into_iter().flatten() {
            assert!((3.0 - 1e-9..=23.0 + 1e-9).contains(&x), "{x}");
            assert!((5.0 - 1e-9..=12.0 + 1e-9).contains(&y), "{y}");
        }
    }
}
