//! The scale of a drawing, from the series that draughtsmen use, and its bar.

use super::lettering::SMALL;
use crate::report::sheet::{Anchor, Fill, Mark, Pen, Point, Text};
use crate::units::Unit;

/// ISO 5455 (from memory), with the steps between that its clause on further scales allows left out.
const METRIC: [u32; 10] = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];
/// The scales of a rule in inches to the foot: 6, 3, 1 1/2, 1, 3/4, 1/2, 1/4 and 1/8 in to 1 ft (common practice).
const IMPERIAL: [(u32, &str); 10] = [
    (1, "full size"),
    (2, "6 in = 1 ft"),
    (4, "3 in = 1 ft"),
    (8, "1 1/2 in = 1 ft"),
    (12, "1 in = 1 ft"),
    (16, "3/4 in = 1 ft"),
    (24, "1/2 in = 1 ft"),
    (48, "1/4 in = 1 ft"),
    (96, "1/8 in = 1 ft"),
    (192, "1/16 in = 1 ft"),
];

/// How many millimetres of the cart one on the paper stands for.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Scale(u32);

fn series(unit: Unit) -> Vec<u32> {
    match unit.imperial() {
        true => IMPERIAL.iter().map(|(over, _)| *over).collect(),
        false => METRIC.to_vec(),
    }
}

impl Scale {
    /// The largest scale of the unit's series at which so much fits into so much paper, both in mm.
    pub fn fitting(unit: Unit, [wide, high]: [f64; 2], [room_w, room_h]: [f64; 2]) -> Scale {
        let fits = |over: u32| {
            let over = f64::from(over);
            wide / over <= room_w && high / over <= room_h
        };
        let series = series(unit);
        let smallest = series.last().copied().unwrap_or(1);
        Scale(series.into_iter().find(|over| fits(*over)).unwrap_or(smallest))
    }
    /// Full size.
    pub const fn full() -> Scale {
        Scale(1)
    }
    /// The next smaller one of the unit's series; the smallest gives itself.
    #[must_use]
    pub fn smaller(self, unit: Unit) -> Scale {
        Scale(series(unit).into_iter().find(|over| *over > self.0).unwrap_or(self.0))
    }
    /// Millimetres on the paper for each one of the cart.
    pub fn share(self) -> f64 {
        1.0 / f64::from(self.0)
    }
    /// As a bare ratio.
    pub fn ratio(self) -> String {
        format!("1:{}", self.0)
    }
    /// As a title block tells it.
    pub fn name(self, unit: Unit) -> String {
        let told = IMPERIAL.iter().find(|(over, _)| unit.imperial() && *over == self.0);
        match told {
            Some((over, name)) => format!("{name} (1:{over})"),
            None => format!("1:{}", self.0),
        }
    }
    /// A bar of round lengths no longer than that, from a point to the right; its figures stand over it.
    pub fn bar(self, unit: Unit, at: Point, most: f64) -> Vec<Mark> {
        let (one, name) = if unit.imperial() { (25.4, "in") } else { (1.0, "mm") };
        let steps: &[f64] = match unit.imperial() {
            true => &[1.0, 2.0, 3.0, 6.0, 12.0, 24.0, 60.0, 120.0, 240.0],
            false => &[10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0, 2000.0, 5000.0, 10000.0],
        };
        let long = |step: f64| step * one * self.share() * 4.0;
        let step = steps.iter().copied().rfind(|s| long(*s) <= most).unwrap_or(steps[0]);
        let (piece, high) = (long(step) / 4.0, 1.2);
        let mut marks = Vec::new();
        for k in 0..4 {
            let fill = if k % 2 == 0 { Fill::Ink } else { Fill::Paper };
            let left = [at[0] + piece * f64::from(k), at[1]];
            marks.push(Mark::rect(left, [piece, high], Pen::Thin, fill));
        }
        for k in [0u32, 2, 4] {
            let figure = step * f64::from(k);
            let text = if k == 4 { format!("{figure} {name}") } else { figure.to_string() };
            let above = [at[0] + piece * f64::from(k), at[1] - 0.8];
            marks.push(Text::new(above, SMALL, text).anchored(Anchor::Middle).into());
        }
        marks
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_largest_scale_of_the_series_that_fits() {
        let fitting = |unit| Scale::fitting(unit, [1050.0, 880.0], [150.0, 120.0]);
        assert_eq!(fitting(Unit::Mm).name(Unit::Mm), "1:10");
        assert_eq!(fitting(Unit::In).name(Unit::In), "1 1/2 in = 1 ft (1:8)");
        assert_eq!(Scale::fitting(Unit::Mm, [150.0, 120.0], [150.0, 120.0]), Scale(1));
    }
}
