//! The shortest way itself, for drawing: the points at which it bends, arcs as short pieces.

use super::{Floor, mm, nanometres};
use crate::units::Length;
use pathfinding::prelude::dijkstra;

/// The longest piece of an arc, in radians: a twelfth of a right angle: 2 mm off the arc at most.
const PIECE: f64 = std::f64::consts::FRAC_PI_2 / 6.0;

impl Floor {
    /// The points of the shortest way, ends included, or nothing where there is none.
    pub fn route(&self, from: [Length; 2], to: [Length; 2]) -> Option<Vec<[Length; 2]>> {
        let ends = [from.min(to), from.max(to)].map(mm);
        if !ends.iter().all(|end| self.is_free(*end)) {
            return None;
        }
        let web = self.web(ends);
        let (knots, _) =
            dijkstra(&0, |&knot: &usize| web.edges[knot].iter().copied(), |&knot| knot == 1)?;
        let mut points = Vec::new();
        for (k, &knot) in knots.iter().enumerate() {
            match (web.bends[knot], k.checked_sub(1).and_then(|b| web.bends[knots[b]])) {
                (None, _) => points.push(ends[knot]),
                (Some(here), Some(before)) if here.0 == before.0 => {
                    points.extend(self.arc(here.0, before.1, here.1));
                }
                (Some((corner, turn)), _) => points.push(self.on_arc(corner, turn)),
            }
        }
        if from > to {
            points.reverse();
        }
        let whole = |x: f64| Length::nm(nanometres(x));
        Some(points.into_iter().map(|p| p.map(whole)).collect())
    }

    fn on_arc(&self, corner: usize, turn: f64) -> [f64; 2] {
        let corner = &self.corners[corner];
        corner.point(corner.start + turn, self.clearance)
    }

    /// From one turn of an arc to another, without the first point.
    fn arc(&self, corner: usize, from: f64, to: f64) -> Vec<[f64; 2]> {
        let pieces = libm::ceil((to - from).abs() / PIECE).max(1.0);
        let at = |k: usize| from + (to - from) * k as f64 / pieces;
        (1..=pieces as usize).map(|k| self.on_arc(corner, at(k))).collect()
    }
}
