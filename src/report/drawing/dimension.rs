//! Dimension lines, running dimensions from one edge, and marks of height.

use super::lettering::{LEADING, SMALL, extent};
use crate::report::figure;
use crate::report::sheet::{Anchor, Fill, Frame, Mark, Pen, Point, Text, font};
use crate::units::{Length, Unit, show_length_in};

/// From one running dimension to the next, at least.
const STEP: f64 = SMALL * LEADING + 0.15;

/// A length on a drawing: a bare figure in the unit of the title block; feet with their inches.
pub fn told(length: Length, unit: Unit) -> String {
    match unit {
        Unit::Ft => figure::length(length, unit),
        Unit::In => show_length_in(length, unit),
        Unit::Mm | Unit::Cm | Unit::M => {
            let one = Length::mm(1).as_nm();
            let whole = (length.as_nm() + one / 2).div_euclid(one) * one;
            show_length_in(Length::nm(whole), unit)
        }
    }
}

/// A dimension line under what it measures, its figure over it.
pub fn level(from: Point, to_x: f64, text: &str) -> Vec<Mark> {
    let [x0, y] = from;
    let mut marks = vec![Mark::line([x0, y], [to_x, y], Pen::Hair)];
    marks.extend([[x0, y], [to_x, y]].map(tick));
    let middle = [(x0 + to_x) / 2.0, y - 0.8];
    marks.extend(plated(Text::new(middle, SMALL, text).anchored(Anchor::Middle)));
    marks
}

/// A dimension line beside what it measures, its figure to its left and reading upward.
pub fn upright(from: Point, to_y: f64, text: &str) -> Vec<Mark> {
    let [x, y0] = from;
    let mut marks = vec![Mark::line([x, y0], [x, to_y], Pen::Hair)];
    marks.extend([[x, y0], [x, to_y]].map(tick));
    let middle = [x - 0.8, (y0 + to_y) / 2.0];
    marks.extend(plated(Text::new(middle, SMALL, text).anchored(Anchor::Middle).upward()));
    marks
}

/// A figure on bare paper, so that no leader runs through it.
fn plated(text: Text) -> [Mark; 2] {
    let plate = extent(&text);
    [Mark::rect(plate.corner(), plate.size(), Pen::None, Fill::Paper), text.into()]
}

/// The short stroke at an end of a dimension line.
fn tick([x, y]: Point) -> Mark {
    Mark::line([x - 0.7, y + 0.7], [x + 0.7, y - 0.7], Pen::Medium)
}

/// Heights over the floor to the right of a view, each with its mark; gives how wide they are.
pub fn heights(frame: &Frame, x: f64, from: &[(Length, f64)], unit: Unit) -> (Vec<Mark>, f64) {
    let (marks, texts) = (from.iter().map(|(v, _)| frame.at(0.0, v.as_mm())[1]), from);
    let places = spread(&marks.collect::<Vec<f64>>(), STEP);
    let mut all = Vec::new();
    let mut widest: f64 = 0.0;
    for (&(v, edge), y) in texts.iter().zip(places) {
        let real = frame.at(0.0, v.as_mm())[1];
        let text = told(v, unit);
        widest = widest.max(font::width(&text, SMALL));
        let pieces = vec![[[edge + 0.6, real], [x, real]], [[x, real], [x + 2.0, y]]];
        all.push(Mark::Lines { pieces, pen: Pen::Faint });
        let at = [x + 2.5, y + font::CAPITAL * SMALL / 2.0];
        all.extend(plated(Text::new(at, SMALL, text)));
    }
    (all, widest + 3.5)
}

/// Distances from the left edge under a view, reading upward; gives how high they are.
pub fn distances(frame: &Frame, y: f64, of: &[(Length, f64)], unit: Unit) -> (Vec<Mark>, f64) {
    let real: Vec<f64> = of.iter().map(|(u, _)| frame.at(u.as_mm(), 0.0)[0]).collect();
    let places = spread(&real, STEP);
    let mut all = Vec::new();
    let mut longest: f64 = 0.0;
    for ((&(u, edge), x), real) in of.iter().zip(places).zip(real) {
        let text = told(u, unit);
        longest = longest.max(font::width(&text, SMALL));
        let pieces = vec![[[real, edge + 0.6], [real, y]], [[real, y], [x, y + 2.0]]];
        all.push(Mark::Lines { pieces, pen: Pen::Faint });
        let at = [x + font::CAPITAL * SMALL / 2.0, y + 2.5];
        all.extend(plated(Text::new(at, SMALL, text).anchored(Anchor::End).upward()));
    }
    (all, longest + 3.0)
}

/// Places as near as can be to those wanted (in any order), no two nearer than the step.
pub fn spread(wanted: &[f64], step: f64) -> Vec<f64> {
    let mut order: Vec<usize> = (0..wanted.len()).collect();
    order.sort_by(|a, b| wanted[*a].total_cmp(&wanted[*b]).then(a.cmp(b)));
    // Runs of places that push each other: where each begins, and how many there are.
    let mut runs: Vec<(f64, usize)> = Vec::new();
    for &k in &order {
        let mut run = (wanted[k], 1);
        while let Some(&(begins, many)) = runs.last() {
            if begins + many as f64 * step <= run.0 {
                break;
            }
            runs.pop();
            // Both together, about the middle of what each wanted.
            let all = many + run.1;
            let shift = run.0 - many as f64 * step;
            run = ((begins * many as f64 + shift * run.1 as f64) / all as f64, all);
        }
        runs.push(run);
    }
    let placed =
        runs.iter().flat_map(|&(begins, many)| (0..many).map(move |k| begins + k as f64 * step));
    let mut out = vec![0.0; wanted.len()];
    for (k, place) in order.iter().zip(placed) {
        out[*k] = place;
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn places_spread_only_where_they_must() {
        assert_eq!(spread(&[1.0, 9.0], 2.0), [1.0, 9.0]);
        assert_eq!(spread(&[5.0, 5.0, 20.0], 2.0), [4.0, 6.0, 20.0]);
        let all = spread(&[3.0, 3.0, 3.0, 4.0, 0.0], 1.0);
        let mut sorted = all.clone();
        sorted.sort_by(f64::total_cmp);
        assert!(sorted.windows(2).all(|w| w[1] - w[0] >= 1.0 - 1e-9), "{all:?}");
    }

    #[test]
    fn figures_are_in_the_users_unit() {
        assert_eq!(told(Length::from_mm(823.46), Unit::Mm), "823");
        assert_eq!(told(Length::from_mm(38.1), Unit::In), "1 1/2");
        assert_eq!(told(Length::from_mm(838.2), Unit::Ft), "2 ft 9 in");
    }
}
