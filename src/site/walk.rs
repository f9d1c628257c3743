//! The shortest way on foot round the cart and whatever else stands on the floor.
//!
//! Plan view: x to the right and y to the back, in whole nanometres, in the cart's frame or the room's as the caller
//! likes. The walker is a point that keeps its clearance from every solid, so each solid grows by that much, with
//! exactly round corners. The shortest way is then a taut string: straight pieces that touch the round corners, and
//! arcs along them. All pieces that can be part of one are laid out, and the shortest chain of them is found.

mod route;

use std::f64::consts::{FRAC_PI_2, PI, TAU};

use libm::{acos, asin, atan2, cos, sin, sqrt};
use pathfinding::prelude::dijkstra;

use crate::units::Length;

/// How far a walker keeps from everything: half a body's breadth and a little more (common practice, no source).
pub const CLEARANCE: Length = Length::mm(250);

/// What is taken as touching rather than overlapping, in mm: half a nanometre.
const TOUCH: f64 = 5e-7;
/// The same for angles, in radians.
const TURN: f64 = 1e-7;

/// A rectangle of the floor plan, from its least to its greatest corner.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug, Default)]
pub struct Rect2 {
    /// The corner with the least x and y.
    pub min: [Length; 2],
    /// The corner with the greatest x and y.
    pub max: [Length; 2],
}

impl Rect2 {
    /// A rectangle between two corners, the least first.
    pub const fn new(min: [Length; 2], max: [Length; 2]) -> Rect2 {
        Rect2 { min, max }
    }
}

/// A point in mm.
type Point = [f64; 2];

fn mm(at: [Length; 2]) -> Point {
    at.map(Length::as_mm)
}

fn minus(a: Point, b: Point) -> Point {
    [a[0] - b[0], a[1] - b[1]]
}

fn norm(v: Point) -> f64 {
    sqrt(v[0] * v[0] + v[1] * v[1])
}

/// A floor with everything that one has to walk round.
#[derive(Debug)]
pub struct Floor {
    solids: Vec<Solid>,
    /// Where the walker may be, walls kept off; nothing where there are no walls.
    room: Option<Solid>,
    clearance: f64,
    corners: Vec<Corner>,
    /// The straight pieces between two corners that nothing blocks.
    straights: Vec<Straight>,
    /// For each corner, the angles at which its arc may turn from free to blocked.
    cuts: Vec<Vec<f64>>,
}

impl Floor {
    /// A floor with these solids, within the walls of a room if there is one.
    ///
    /// The walker keeps the clearance, which is above nought, from solids and walls alike. A gap of exactly twice the
    /// clearance can be passed.
    pub fn new(solids: &[Rect2], room: Option<Rect2>, clearance: Length) -> Floor {
        let clearance = clearance.as_mm();
        let solids: Vec<Solid> = solids.iter().map(Solid::of).collect();
        let corners = solids.iter().flat_map(Solid::corners).collect();
        let room = room.map(|room| Solid::of(&room).shrunk(clearance));
        let mut floor =
            Floor { solids, room, clearance, corners, straights: Vec::new(), cuts: Vec::new() };
        floor.straights = floor.all_straights();
        floor.cuts = floor.corners.iter().map(|corner| floor.cuts_of(corner)).collect();
        floor
    }

    /// The length of the shortest way, or nothing where there is none.
    ///
    /// There is also none where one cannot stand at one of its ends: within the clearance of a solid or a wall.
    pub fn walk(&self, from: [Length; 2], to: [Length; 2]) -> Option<Length> {
        // The same two ends give the same sum, whichever is called the start.
        let ends = [from.min(to), from.max(to)].map(mm);
        if !ends.iter().all(|end| self.is_free(*end)) {
            return None;
        }
        let web = self.web(ends);
        let (_, length) =
            dijkstra(&0, |&knot: &usize| web.edges[knot].iter().copied(), |&knot| knot == 1)?;
        Some(Length::nm(length))
    }

    /// Whether one can stand there.
    pub fn can_stand(&self, at: [Length; 2]) -> bool {
        self.is_free(mm(at))
    }

    fn is_free(&self, at: Point) -> bool {
        self.is_within(at)
            && self.solids.iter().all(|solid| solid.distance(at) >= self.clearance - TOUCH)
    }

    fn is_within(&self, at: Point) -> bool {
        self.room.as_ref().is_none_or(|room| {
            (0..2).all(|a| room.min[a] - TOUCH <= at[a] && at[a] <= room.max[a] + TOUCH)
        })
    }

    /// Whether a straight piece keeps clear of everything. The room is convex: its ends tell for the whole of it.
    fn is_clear(&self, from: Point, to: Point) -> bool {
        let far_enough = |solid: &Solid| solid.distance_to_line(from, to) >= self.clearance - TOUCH;
        self.is_within(from) && self.is_within(to) && self.solids.iter().all(far_enough)
    }

    /// The straight pieces that touch two corners: two on the same side of both, two that cross between them.
    fn all_straights(&self) -> Vec<Straight> {
        let mut all = Vec::new();
        for (second, two) in self.corners.iter().enumerate() {
            for (first, one) in self.corners[..second].iter().enumerate() {
                for angles in tangents(one.at, two.at, self.clearance) {
                    all.extend(self.straight([first, second], angles));
                }
            }
        }
        all
    }

    fn straight(&self, corners: [usize; 2], angles: [f64; 2]) -> Option<Straight> {
        let [one, two] = corners.map(|corner| &self.corners[corner]);
        let turns = [one.turn(angles[0])?, two.turn(angles[1])?];
        let [from, to] = [(one, angles[0]), (two, angles[1])]
            .map(|(corner, angle)| corner.point(angle, self.clearance));
        self.is_clear(from, to).then(|| Straight {
            corners,
            turns,
            length: nanometres(norm(minus(to, from))),
        })
    }

    /// Where the whole circle round a corner crosses the outline of another grown solid or of the room.
    fn cuts_of(&self, corner: &Corner) -> Vec<f64> {
        let grown = |solid: &Solid| solid.shrunk(-self.clearance);
        let outlines = self.solids.iter().map(grown).chain(self.room);
        let on_lines = outlines.flat_map(|outline| corner.meets_lines(&outline, self.clearance));
        let on_rounds =
            self.corners.iter().flat_map(|other| corner.meets_round(other.at, self.clearance));
        on_lines.chain(on_rounds).filter_map(|angle| corner.turn(angle)).collect()
    }

    /// All pieces as a web of knots: the two ends first, then the places where pieces meet on the arcs.
    fn web(&self, ends: [Point; 2]) -> Web {
        let arcs = vec![Vec::new(); self.corners.len()];
        let mut web = Web { edges: vec![Vec::new(); 2], bends: vec![None; 2], arcs };
        for straight in &self.straights {
            let knots = [0, 1].map(|end| web.knot(straight.corners[end], straight.turns[end]));
            web.join(knots, straight.length);
        }
        for (end, at) in ends.into_iter().enumerate() {
            self.reach_from(&mut web, end, at);
        }
        if self.is_clear(ends[0], ends[1]) {
            web.join([0, 1], nanometres(norm(minus(ends[1], ends[0]))));
        }
        for corner in 0..self.corners.len() {
            self.lay_arc(&mut web, corner);
        }
        web
    }

    /// The straight pieces from an end that touch a corner.
    fn reach_from(&self, web: &mut Web, end: usize, at: Point) {
        for (number, corner) in self.corners.iter().enumerate() {
            for angle in touching_angles(corner.at, at, self.clearance) {
                let Some(turn) = corner.turn(angle) else { continue };
                let touch = corner.point(angle, self.clearance);
                if self.is_clear(at, touch) {
                    let knot = web.knot(number, turn);
                    web.join([end, knot], nanometres(norm(minus(touch, at))));
                }
            }
        }
    }

    /// Joins neighbouring knots of an arc wherever the arc between them is free.
    fn lay_arc(&self, web: &mut Web, number: usize) {
        let corner = &self.corners[number];
        for &cut in &self.cuts[number] {
            web.knot(number, cut);
        }
        let mut knots = std::mem::take(&mut web.arcs[number]);
        knots.sort_by(|one, other| one.0.total_cmp(&other.0).then(one.1.cmp(&other.1)));
        for pair in knots.windows(2) {
            let [(from, one), (to, other)] = [pair[0], pair[1]];
            // Between two cuts an arc is free or blocked throughout, and its middle tells which.
            let middle = corner.point(corner.start + (from + to) / 2.0, self.clearance);
            if self.is_free(middle) {
                web.join([one, other], nanometres(self.clearance * (to - from)));
            }
        }
    }
}

/// The pieces as far as they are laid out.
struct Web {
    /// From each knot, where pieces lead and how long they are.
    edges: Vec<Vec<(usize, i64)>>,
    /// Of each knot, its corner and how far it is along that corner's arc; nothing for the two ends.
    bends: Vec<Option<(usize, f64)>>,
    /// On each corner's arc, the knots by how far they are along it.
    arcs: Vec<Vec<(f64, usize)>>,
}

impl Web {
    fn knot(&mut self, corner: usize, turn: f64) -> usize {
        self.edges.push(Vec::new());
        self.bends.push(Some((corner, turn)));
        let knot = self.edges.len() - 1;
        self.arcs[corner].push((turn, knot));
        knot
    }
    fn join(&mut self, [one, other]: [usize; 2], length: i64) {
        self.edges[one].push((other, length));
        self.edges[other].push((one, length));
    }
}

/// A straight piece that touches two corners.
#[derive(Debug)]
struct Straight {
    corners: [usize; 2],
    /// How far along their arcs.
    turns: [f64; 2],
    length: i64,
}

fn nanometres(mm: f64) -> i64 {
    libm::round(mm * 1e6) as i64
}

/// A corner of a solid: its arc is the quarter circle from `start` on, anticlockwise.
#[derive(Debug)]
struct Corner {
    at: Point,
    start: f64,
}

impl Corner {
    fn point(&self, angle: f64, radius: f64) -> Point {
        [self.at[0] + radius * cos(angle), self.at[1] + radius * sin(angle)]
    }
    /// How far along the arc a direction is, from 0 to a right angle; nothing where it is not on the arc.
    fn turn(&self, angle: f64) -> Option<f64> {
        let turn = (angle - self.start).rem_euclid(TAU);
        let turn = if turn > TAU - TURN { turn - TAU } else { turn };
        (turn <= FRAC_PI_2 + TURN).then_some(turn)
    }
    /// The directions in which the circle meets the lines along a rectangle's sides.
    fn meets_lines(&self, sides: &Solid, radius: f64) -> Vec<f64> {
        let part = |line: f64, axis: usize| (line - self.at[axis]) / radius;
        let mut all = Vec::new();
        for cosine in [part(sides.min[0], 0), part(sides.max[0], 0)] {
            if cosine.abs() <= 1.0 {
                all.extend([acos(cosine), -acos(cosine)]);
            }
        }
        for sine in [part(sides.min[1], 1), part(sides.max[1], 1)] {
            if sine.abs() <= 1.0 {
                all.extend([asin(sine), PI - asin(sine)]);
            }
        }
        all
    }
    /// The directions in which the circle meets another one of the same radius.
    fn meets_round(&self, other: Point, radius: f64) -> Vec<f64> {
        let way = minus(other, self.at);
        let half = norm(way) / 2.0;
        if half == 0.0 || half > radius {
            return Vec::new();
        }
        let (base, aside) = (atan2(way[1], way[0]), acos(half / radius));
        vec![base - aside, base + aside]
    }
}

/// The directions, from the centres of two equal circles, of the points in which one line touches both.
fn tangents(one: Point, two: Point, radius: f64) -> Vec<[f64; 2]> {
    let way = minus(two, one);
    let far = norm(way);
    if far == 0.0 {
        return Vec::new();
    }
    let base = atan2(way[1], way[0]);
    let mut all = vec![[base + FRAC_PI_2; 2], [base - FRAC_PI_2; 2]];
    if far >= 2.0 * radius - TOUCH {
        // Circles that only touch have both crossing lines in one, of no length.
        let aside = acos((2.0 * radius / far).min(1.0));
        all.extend([base + aside, base - aside].map(|angle| [angle, angle + PI]));
    }
    all
}

/// The directions from a circle's centre of the points in which lines from outside touch it.
fn touching_angles(centre: Point, from: Point, radius: f64) -> Vec<f64> {
    let way = minus(from, centre);
    let far = norm(way);
    if far < radius - TOUCH || far == 0.0 {
        return Vec::new();
    }
    let (base, aside) = (atan2(way[1], way[0]), acos((radius / far).min(1.0)));
    vec![base - aside, base + aside]
}

/// A solid of the floor plan, in mm.
#[derive(Clone, Copy, Debug)]
struct Solid {
    min: Point,
    max: Point,
}

impl Solid {
    fn of(rect: &Rect2) -> Solid {
        Solid { min: mm(rect.min), max: mm(rect.max) }
    }
    fn shrunk(self, by: f64) -> Solid {
        Solid { min: self.min.map(|x| x + by), max: self.max.map(|x| x - by) }
    }
    fn corners(&self) -> [Corner; 4] {
        let ([left, front], [right, back]) = (self.min, self.max);
        [
            ([right, back], 0.0),
            ([left, back], FRAC_PI_2),
            ([left, front], PI),
            ([right, front], 1.5 * PI),
        ]
        .map(|(at, start)| Corner { at, start })
    }
    fn distance(&self, at: Point) -> f64 {
        norm([0, 1].map(|a| (self.min[a] - at[a]).max(at[a] - self.max[a]).max(0.0)))
    }
    /// The distance to a straight piece: it is least at one of its ends or at a corner, unless they meet.
    fn distance_to_line(&self, from: Point, to: Point) -> f64 {
        if self.meets_line(from, to) {
            return 0.0;
        }
        let ends = self.distance(from).min(self.distance(to));
        let corners = self.corners();
        corners
            .iter()
            .fold(ends, |least, corner| least.min(distance_from_line(corner.at, from, to)))
    }
    fn meets_line(&self, from: Point, to: Point) -> bool {
        let way = minus(to, from);
        let (mut enters, mut leaves) = (0.0f64, 1.0f64);
        for axis in 0..2 {
            if way[axis] == 0.0 {
                if from[axis] < self.min[axis] || from[axis] > self.max[axis] {
                    return false;
                }
                continue;
            }
            let [one, other] =
                [self.min, self.max].map(|side| (side[axis] - from[axis]) / way[axis]);
            enters = enters.max(one.min(other));
            leaves = leaves.min(one.max(other));
        }
        enters <= leaves
    }
}

/// The distance of a point from a straight piece.
fn distance_from_line(at: Point, from: Point, to: Point) -> f64 {
    let (way, off) = (minus(to, from), minus(at, from));
    let square = way[0] * way[0] + way[1] * way[1];
    let along = if square > 0.0 { (off[0] * way[0] + off[1] * way[1]) / square } else { 0.0 };
    let along = along.clamp(0.0, 1.0);
    norm([off[0] - along * way[0], off[1] - along * way[1]])
}
