//! Tipping of a rigid body over the lines between its casters.
//!
//! The body goes over a side when the plumb line through its centre of mass leaves the area that the casters span.
//! Leaned over, that happens at the angle whose tangent is distance to the side / height of the centre of mass.
//! A swivel caster may point inwards, so each side is moved in by the trail.

use crate::geometry::Way;
use crate::units::Length;

/// One line between two neighbouring casters.
#[derive(Clone, Copy, Debug)]
struct Side {
    /// The way in, of length one.
    inward: [f64; 2],
    /// Distance of the origin from the line, outwards, with the trail added; mm.
    offset: f64,
    /// The way out that it faces most.
    way: Way,
}

impl Side {
    #[inline]
    fn inside(&self, x: f64, y: f64) -> f64 {
        self.inward[0] * x + self.inward[1] * y - self.offset
    }
}

/// The area that the casters span, moved in by the trail.
#[derive(Clone, Debug)]
pub struct Footprint {
    sides: Vec<Side>,
}

impl Footprint {
    /// The area spanned by casters at these places (x, y in the cart's frame), each side moved in by `trail`.
    ///
    /// Nothing where the casters span no area.
    pub fn new(at: &[[Length; 2]], trail: Length) -> Option<Footprint> {
        let corners = hull(at);
        if corners.len() < 3 {
            return None;
        }
        let next = corners.iter().cycle().skip(1);
        let sides = corners.iter().zip(next).map(|(a, b)| side(*a, *b, trail.as_mm())).collect();
        Some(Footprint { sides })
    }

    /// The side nearest to the point below the centre of mass, by index, and the distance to it in mm: under nought
    /// where the point lies outside. Of several as near it is the first.
    pub fn least_margin(&self, x: f64, y: f64) -> (usize, f64) {
        let mut least = (0, f64::INFINITY);
        for (index, side) in self.sides.iter().enumerate() {
            let distance = side.inside(x, y);
            if distance < least.1 {
                least = (index, distance);
            }
        }
        least
    }

    /// How far inside one side a point lies, in mm; under nought outside.
    pub fn inside(&self, side: usize, x: f64, y: f64) -> f64 {
        self.sides[side].inside(x, y)
    }

    /// How many sides it has.
    pub fn sides(&self) -> usize {
        self.sides.len()
    }

    /// The face of the cart that a side lies under, by which way it faces most.
    pub fn way(&self, side: usize) -> Way {
        self.sides[side].way
    }
}

/// The angle in degrees at which a body tips over a line that lies `distance` mm from its plumb line, with its centre
/// of mass `height` mm up: atan(distance / height). Under nought where it tips by itself.
pub fn degrees(distance: f64, height: f64) -> f64 {
    libm::atan2(distance, height).to_degrees()
}

/// The side from one corner to the next, the inside on its left.
fn side(from: [Length; 2], to: [Length; 2], trail: f64) -> Side {
    let [dx, dy] = [(to[0] - from[0]).as_mm(), (to[1] - from[1]).as_mm()];
    let long = (dx * dx + dy * dy).sqrt();
    let inward = [-dy / long, dx / long];
    let offset = inward[0] * from[0].as_mm() + inward[1] * from[1].as_mm() + trail;
    Side { inward, offset, way: facing(inward) }
}

/// The face most opposite to a way in; front and back where it faces two alike.
fn facing(inward: [f64; 2]) -> Way {
    match inward {
        [x, y] if y.abs() >= x.abs() && y.is_sign_positive() => Way::Front,
        [x, y] if y.abs() >= x.abs() => Way::Back,
        [x, _] if x.is_sign_positive() => Way::Left,
        _ => Way::Right,
    }
}

/// Corners of the convex hull, anticlockwise seen from above, without points on a straight side.
fn hull(at: &[[Length; 2]]) -> Vec<[Length; 2]> {
    let mut points = at.to_vec();
    points.sort();
    points.dedup();
    let mut lower = half(points.iter());
    lower.extend(half(points.iter().rev()));
    lower
}

/// One half of the hull without its last point, in the order in which the points come.
fn half<'a>(points: impl Iterator<Item = &'a [Length; 2]>) -> Vec<[Length; 2]> {
    let mut kept: Vec<[Length; 2]> = Vec::new();
    for &point in points {
        while kept.len() > 1 && !turns_left(kept[kept.len() - 2], kept[kept.len() - 1], point) {
            kept.pop();
        }
        kept.push(point);
    }
    kept.pop();
    kept
}

/// Whether the way a → b → c turns left, exactly.
fn turns_left(a: [Length; 2], b: [Length; 2], c: [Length; 2]) -> bool {
    let nm = |l: Length| i128::from(l.as_nm());
    let first = nm(b[0] - a[0]) * nm(c[1] - a[1]);
    first - nm(b[1] - a[1]) * nm(c[0] - a[0]) > 0
}

#[cfg(test)]
mod tests {
    use super::*;

    fn over(at: &[[i64; 2]], trail: i64) -> Footprint {
        let places: Vec<_> = at.iter().map(|p| p.map(Length::mm)).collect();
        Footprint::new(&places, Length::mm(trail)).unwrap()
    }

    fn ways(of: &Footprint) -> Vec<Way> {
        (0..of.sides()).map(|side| of.way(side)).collect()
    }

    /// The distances from a point to all sides, in order.
    fn margins(of: &Footprint, x: f64, y: f64) -> Vec<f64> {
        (0..of.sides()).map(|side| of.inside(side, x, y)).collect()
    }

    const BOX: [[i64; 2]; 4] = [[600, 400], [0, 0], [0, 400], [600, 0]];

    #[test]
    fn a_point_in_a_box_lies_so_far_from_each_face() {
        let of = over(&BOX, 0);
        assert_eq!(ways(&of), [Way::Front, Way::Right, Way::Back, Way::Left]);
        assert_eq!(margins(&of, 100.0, 150.0), [150.0, 500.0, 250.0, 100.0]);
        assert_eq!(of.least_margin(100.0, 150.0), (3, 100.0));
        assert_eq!(of.least_margin(650.0, 150.0), (1, -50.0));
        assert_eq!(margins(&over(&BOX, 30), 100.0, 150.0), [120.0, 470.0, 220.0, 70.0]);
    }

    #[test]
    fn of_several_sides_as_near_the_first_counts() {
        assert_eq!(over(&BOX, 0).least_margin(300.0, 200.0), (0, 200.0));
        assert_eq!(over(&[[0, 0], [2, 0], [2, 2], [0, 2]], 0).least_margin(1.0, 1.0), (0, 1.0));
    }

    #[test]
    fn a_side_lies_under_the_face_that_it_faces_most() {
        let diamond = over(&[[1, 0], [0, 1], [-1, 0], [0, -1]], 0);
        assert_eq!(ways(&diamond), [Way::Front, Way::Front, Way::Back, Way::Back]);
        let tall = over(&[[2, 0], [0, 3], [-2, 0], [0, -3]], 0);
        assert_eq!(ways(&tall), [Way::Left, Way::Right, Way::Right, Way::Left]);
    }

    #[test]
    fn casters_inside_or_on_a_side_add_no_side() {
        let more =
            [&BOX[..], &[[300, 0], [600, 200], [300, 400], [0, 200], [250, 250], [0, 0]]].concat();
        assert_eq!(over(&more, 0).sides(), 4);
        assert_eq!(margins(&over(&more, 0), 100.0, 150.0), [150.0, 500.0, 250.0, 100.0]);
        let line = [[0, 0], [1, 1], [3, 3], [1, 1]].map(|p| p.map(Length::mm));
        assert!(Footprint::new(&line, Length::ZERO).is_none());
    }

    #[test]
    fn a_slant_is_measured_square_to_it() {
        // (1200 - 4 x - 3 y) / 5 to the long side of a triangle of 300, 400 and 500.
        let of = over(&[[0, 0], [300, 0], [0, 400]], 0);
        let found = margins(&of, 60.0, 40.0);
        for (f, e) in found.iter().zip([40.0, 168.0, 60.0]) {
            assert!((f - e).abs() < 1e-9, "{found:?}");
        }
    }

    #[test]
    fn a_body_tips_at_half_a_right_angle_over_an_edge_as_far_as_it_is_high() {
        assert!((degrees(500.0, 500.0) - 45.0).abs() < 1e-12);
        assert!((degrees(300.0, 300.0 * 3.0_f64.sqrt()) - 30.0).abs() < 1e-12);
        assert!((degrees(-500.0, 500.0) + 45.0).abs() < 1e-12);
    }
}
