//! Walks between the faces of the cart and rounds of several, each between a least and a most.

use super::frame::{out_of, outside};
use super::site::{Site, Sort};
use crate::support::floor::{CLEAR, Polygon, polygon, round_polygons};
use toolberth::domain::{CartPlace, Face, Obstacle, Station, Workspace};
use toolberth::physics::motion;
use toolberth::site::walk::Rect2;
use toolberth::units::Length;

/// How far one stands from a bare face, in mm.
const STAND: f64 = 400.0;

/// At least and at most.
pub type Span = [f64; 2];

/// The floor at one station, and who walks there.
pub struct Map<'a> {
    workspace: &'a Workspace,
    site: &'a Site,
    /// The cart alone, and everything that stands about; within the round corners and around them.
    alone: [Vec<Polygon>; 2],
    all: [Vec<Polygon>; 2],
    solids: Vec<Rect2>,
}

impl<'a> Map<'a> {
    pub fn new(workspace: &'a Workspace, site: &'a Site) -> Map<'a> {
        let [wide, deep, _] = outside(&workspace.carcass);
        let flat =
            |low: [i64; 2], high: [i64; 2]| Rect2::new(low.map(Length::nm), high.map(Length::nm));
        let mut alone = vec![flat([0, 0], [wide, deep])];
        let panels = site.spaces.iter().filter(|s| s.sort == Sort::Panel);
        alone.extend(panels.map(|s| {
            let [low, high] = s.inside;
            flat([low[0], low[1]], [high[0], high[1]])
        }));
        let room = &workspace.shop.room;
        let mut all = alone.clone();
        if let Some(cart) = &room.cart {
            let size = room.size.map(|size| from_cart(cart, [Length::ZERO; 2], size));
            all.extend(size.iter().flat_map(walls));
            let end = |o: &Obstacle| [o.at[0] + o.size[0], o.at[1] + o.size[1]];
            all.extend(room.obstacles.iter().map(|o| from_cart(cart, o.at, end(o))));
        }
        let both = |solids: &[Rect2]| {
            [false, true].map(|around| solids.iter().map(|s| polygon(s, around)).collect())
        };
        Map { workspace, site, alone: both(&alone), all: both(&all), solids: all }
    }

    /// Seconds of a walk between two faces at a station; the top is where the work is.
    fn leg(&self, station: &Station, from: Face, to: Face) -> Span {
        let place = |f: Face| if f == Face::Top { station.work } else { f };
        let (from, to) = (place(from), place(to));
        let [a, b] = [from, to].map(|face| self.stand(face));
        let free = self.alone.each_ref().map(|solids| round_polygons(solids, a, b));
        let free = [free[0].unwrap_or(0.0), free[1].unwrap_or(f64::INFINITY)];
        if station.walls.contains(&from) || station.walls.contains(&to) {
            return free.map(|mm| self.seconds(mm));
        }
        let shut = [a, b].iter().any(|p| !self.stands(*p));
        let [least, most] = self.all.each_ref().map(|solids| round_polygons(solids, a, b));
        let span = match (least, most) {
            (Some(least), Some(most)) if !shut => [least, most],
            // So narrow a gap that it cannot be told from a closed one.
            (Some(least), None) if !shut => [least.min(free[0]), f64::INFINITY],
            _ => free,
        };
        span.map(|mm| self.seconds(mm))
    }

    /// Whether one can stand there.
    fn stands(&self, at: [f64; 2]) -> bool {
        self.solids.iter().all(|solid| {
            let away = [0, 1].map(|k| {
                let [low, high] = [solid.min[k], solid.max[k]].map(Length::as_mm);
                (low - at[k]).max(at[k] - high).max(0.0)
            });
            away[0].hypot(away[1]) >= CLEAR - 1e-6
        })
    }

    fn seconds(&self, mm: f64) -> f64 {
        if mm.is_infinite() {
            return mm;
        }
        let path = Length::from_mm(mm);
        let seated = self.workspace.shop.person.seated;
        if seated { motion::wheel(path) } else { motion::walk(path) }.as_s()
    }

    /// Before the middle of a face, out of the way of what hangs on it.
    fn stand(&self, face: Face) -> [f64; 2] {
        let (axis, up) = out_of(face);
        let [wide, deep, _] = outside(&self.workspace.carcass).map(|nm| nm as f64 / 1e6);
        let far = self.off(face);
        let mut at = [wide / 2.0, deep / 2.0];
        at[axis] = if up { [wide, deep][axis] + far } else { -far };
        at
    }

    /// How far out of a face one stands.
    pub fn off(&self, face: Face) -> f64 {
        let axis = out_of(face).0;
        let hung = |s: &&super::site::Space| s.sort == Sort::Panel && s.face == face;
        let out = self.site.spaces.iter().filter(hung).map(|s| {
            let [low, high] = s.inside;
            (high[axis] - low[axis]) as f64 / 1e6
        });
        STAND.max(out.fold(0.0, f64::max) + CLEAR)
    }

    /// Seconds of walking, all stations by their shares.
    fn mean(&self, one: impl Fn(&Station) -> Span) -> Span {
        let stations = &self.workspace.shop.stations;
        let spans = stations.iter().map(|s| one(s).map(|t| t * s.share.as_fraction()));
        spans.fold([0.0; 2], |sum, span| [sum[0] + span[0], sum[1] + span[1]])
    }

    /// From a face to another.
    pub fn between(&self, from: Face, to: Face) -> Span {
        self.mean(|station| self.leg(station, from, to))
    }

    /// The round of some faces.
    pub fn round(&self, faces: &[Face]) -> Span {
        self.mean(|station| self.one_round(station, faces))
    }

    /// By how much the round of some faces is longer than to the farthest of them and back.
    pub fn detour(&self, faces: &[Face]) -> Span {
        self.mean(|station| {
            let round = self.one_round(station, faces);
            let far = faces.iter().map(|f| self.leg(station, Face::Top, *f));
            let far =
                far.fold([0.0f64; 2], |m, leg| [m[0].max(2.0 * leg[0]), m[1].max(2.0 * leg[1])]);
            [(round[0] - far[1]).max(0.0), (round[1] - far[0]).max(0.0)]
        })
    }

    fn one_round(&self, station: &Station, faces: &[Face]) -> Span {
        let mut best = [f64::INFINITY; 2];
        for order in orders(faces) {
            let mut here = Face::Top;
            let mut sum = [0.0; 2];
            for &next in order.iter().chain([&Face::Top]) {
                let leg = self.leg(station, here, next);
                sum = [sum[0] + leg[0], sum[1] + leg[1]];
                here = next;
            }
            best = [best[0].min(sum[0]), best[1].min(sum[1])];
        }
        best
    }
}

/// All orders of some faces.
fn orders(faces: &[Face]) -> Vec<Vec<Face>> {
    if faces.is_empty() {
        return vec![Vec::new()];
    }
    let mut all = Vec::new();
    for (n, first) in faces.iter().enumerate() {
        let rest: Vec<Face> =
            faces.iter().enumerate().filter(|(k, _)| *k != n).map(|f| *f.1).collect();
        all.extend(orders(&rest).into_iter().map(|o| [vec![*first], o].concat()));
    }
    all
}

/// What is beyond the walls of a room.
fn walls(room: &Rect2) -> [Rect2; 4] {
    const FAR: Length = Length::mm(100_000);
    let (low, high) = (room.min, room.max);
    let out = [low.map(|c| c - FAR), high.map(|c| c + FAR)];
    [
        Rect2::new(out[0], [low[0], out[1][1]]),
        Rect2::new([high[0], out[0][1]], out[1]),
        Rect2::new(out[0], [out[1][0], low[1]]),
        Rect2::new([out[0][0], high[1]], out[1]),
    ]
}

/// A rectangle of the room in the frame of the cart.
fn from_cart(cart: &CartPlace, low: [Length; 2], high: [Length; 2]) -> Rect2 {
    let turned = |p: [Length; 2]| {
        let mut v = [p[0] - cart.at[0], p[1] - cart.at[1]];
        for _ in 0..cart.quarter_turns {
            v = [v[1], -v[0]];
        }
        v
    };
    let (a, b) = (turned(low), turned(high));
    Rect2::new([0, 1].map(|k| a[k].min(b[k])), [0, 1].map(|k| a[k].max(b[k])))
}
