//! Walking between faces, and tours round them.
//!
//! One stands before the middle of a face. The bench is where the work is: before the middle of the face that is
//! towards it. A face at a wall is walked to as if it were free: rolling the cart out is part of the price of access.

use crate::domain::{Face, Rates};
use crate::units::{Share, Time};

/// A set of faces.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, Default)]
pub struct Faces(u8);

impl Faces {
    /// No face.
    pub const NONE: Faces = Faces(0);
    /// How many sets there are.
    const SETS: usize = 1 << Face::ALL.len();

    /// One face alone.
    pub const fn one(face: Face) -> Faces {
        Faces(1 << face.index())
    }
    /// Those of which there is something, by the numbers of things on each.
    #[inline]
    pub fn of(counts: &[u32; 5]) -> Faces {
        let bit = |(n, count): (usize, &u32)| u8::from(*count > 0) << n;
        Faces(counts.iter().enumerate().map(bit).sum())
    }
    /// Whether it is a part of another set.
    #[inline]
    pub const fn within(self, other: Faces) -> bool {
        self.0 & !other.0 == 0
    }
    /// Whether the two share a face.
    #[inline]
    pub const fn meets(self, other: Faces) -> bool {
        self.0 & other.0 != 0
    }
    /// Those of the set that one walks to: not the bench, which is where the work is.
    #[inline]
    pub const fn sides(self) -> Faces {
        Faces(self.0 & !Faces::one(Face::Top).0)
    }
    /// Whether there is none.
    #[inline]
    pub const fn is_empty(self) -> bool {
        self.0 == 0
    }
    /// How many there are.
    #[inline]
    pub const fn count(self) -> usize {
        self.0.count_ones() as usize
    }
    /// The faces of the set, in order.
    #[inline]
    pub fn iter(self) -> impl Iterator<Item = Face> {
        Face::ALL.into_iter().filter(move |f| self.0 & 1 << f.index() != 0)
    }
    /// Every set of faces, the empty one first.
    pub fn all() -> impl Iterator<Item = Faces> {
        (0..Faces::SETS as u8).map(Faces)
    }
    /// Both together.
    #[inline]
    pub const fn and(self, other: Faces) -> Faces {
        Faces(self.0 | other.0)
    }
}

/// Walks between faces at one station, one way, with the work in place of the top.
#[derive(Clone, Debug)]
pub struct Legs {
    /// Name of the station.
    pub station: String,
    /// Share of the fetches made there.
    pub share: Share,
    /// From each face to each.
    pub walk: [[Time; 5]; 5],
}

/// One walk round some faces, from the work and back to it.
#[derive(Clone, PartialEq, Eq, Default, Debug)]
pub struct Tour {
    /// The faces in the order in which they are come to; the first of the two orders that are each other's reverse.
    pub faces: Vec<Face>,
    /// How long one walks.
    pub walk: Time,
}

impl Legs {
    fn between(&self, from: Face, to: Face) -> Time {
        self.walk[from.index()][to.index()]
    }

    /// The shortest walk round those faces, from the work and back to it.
    pub fn tour(&self, faces: Faces) -> Tour {
        let mut best = Tour { faces: Vec::new(), walk: Time::ZERO };
        let mut left: Vec<Face> = faces.iter().filter(|f| *f != Face::Top).collect();
        if !left.is_empty() {
            best.walk = Time::us(i64::MAX);
            self.go_on(&mut Vec::new(), &mut left, Time::ZERO, &mut best);
        }
        if faces.meets(Faces::one(Face::Top)) {
            best.faces.insert(0, Face::Top);
        }
        best
    }

    /// Tries every order of the faces that are left.
    fn go_on(&self, gone: &mut Vec<Face>, left: &mut Vec<Face>, walked: Time, best: &mut Tour) {
        let here = gone.last().copied().unwrap_or(Face::Top);
        if left.is_empty() {
            let walk = walked + self.between(here, Face::Top);
            if walk < best.walk {
                *best = Tour { faces: gone.clone(), walk };
            }
        }
        for n in 0..left.len() {
            let next = left.remove(n);
            gone.push(next);
            self.go_on(gone, left, walked + self.between(here, next), best);
            gone.pop();
            left.insert(n, next);
        }
    }

    /// By how much the shortest walk round those faces is longer than going to the farthest of them and back.
    fn further(&self, faces: Faces) -> Time {
        let farthest = faces.iter().map(|f| self.between(Face::Top, f) * 2).max();
        (self.tour(faces).walk - farthest.unwrap_or(Time::ZERO)).max(Time::ZERO)
    }
}

/// All walks between faces, with the stations folded in by their shares.
#[derive(Clone, Debug, Default)]
pub struct Tours {
    /// Station by station, in the order of the shop file.
    pub stations: Vec<Legs>,
    apart: [[Time; 5]; 5],
    walk: Vec<Time>,
    further: Vec<Time>,
}

impl Tours {
    /// Of all stations.
    pub(super) fn new(stations: Vec<Legs>, rates: &Rates) -> Tours {
        let mean = |time: &dyn Fn(&Legs) -> Time| {
            let part = |s: &Legs| i128::from(time(s).as_us()) * i128::from(s.share.as_ppm());
            let total: i128 = stations.iter().map(part).sum();
            Time::us(((total + 500_000) / 1_000_000) as i64)
        };
        let apart = |from: Face, to: Face| {
            let turns = from != to && from != Face::Top && to != Face::Top;
            mean(&|s| s.between(from, to)) + if turns { rates.together } else { Time::ZERO }
        };
        let apart = Face::ALL.map(|from| Face::ALL.map(|to| apart(from, to)));
        let turns = |faces: Faces| rates.jobs * faces.sides().count().saturating_sub(1) as i64;
        let further = |faces: Faces| mean(&|s| s.further(faces)) + turns(faces);
        let further = Faces::all().map(further).collect();
        let walk = Faces::all().map(|faces| mean(&|s| s.tour(faces).walk)).collect();
        Tours { apart, walk, further, stations }
    }

    /// What it takes to go from a face of one set to the nearest of another, one way: the walk, and turning to it unless
    /// one of them is the bench. Nought where a face is in both, or a set is empty.
    #[inline]
    pub fn apart(&self, one: Faces, other: Faces) -> Time {
        if one.meets(other) {
            return Time::ZERO;
        }
        let walks = one.iter().flat_map(|a| other.iter().map(move |b| (a, b)));
        walks.map(|(a, b)| self.apart[a.index()][b.index()]).min().unwrap_or(Time::ZERO)
    }

    /// The shortest walk round those faces, from the work and back to it.
    #[inline]
    pub fn walk(&self, faces: Faces) -> Time {
        self.walk[usize::from(faces.0)]
    }

    /// By how much the shortest walk round those faces is longer than going to the farthest of them and back, and turning
    /// to each of them but one.
    #[inline]
    pub fn further(&self, faces: Faces) -> Time {
        self.further[usize::from(faces.0)]
    }

    /// The station where most is fetched, the first of several.
    pub fn main(&self) -> Option<&Legs> {
        self.stations.iter().rev().max_by_key(|s| s.share)
    }
}
