//! Masses, casters and tipping of the whole cart, from exact running sums.

use super::board::Board;
use super::surface::{Space, SpaceKind};
use crate::domain::{Carcass, Casters, Drawer};
use crate::geometry::Way;
use crate::physics::casters::{MOST, Supports};
use crate::physics::tipping::{Footprint, degrees};
use crate::units::{Length, Mass};

/// Things over this mass are also judged as taken away: design choice.
pub const AWAY: Mass = Mass::kg(5);
/// Least tip angle closed, in degrees. Ours, anchored on 10° for mobile medical equipment in transport
/// (IEC 60601-1 ed. 3 cl. 9.4.2, read as summarised on a cart maker's page).
pub const TIP_CLOSED: f64 = 10.0;
/// Least tip angle with a drawer out, in degrees. Ours, anchored on 5° in any other position (same source).
pub const TIP_OPEN: f64 = 5.0;
/// Plywood, oven-dry handbook means lie near it: from memory.
const BOARD_DENSITY: f64 = 600.0;
/// Board of a cart where no file says it: common practice, no source.
const BOARD_THICKNESS: f64 = 15.0;
/// Board of a drawer: common practice, no source.
const DRAWER_THICKNESS: f64 = 10.0;

/// What the cart stands on and what it weighs empty.
#[derive(Clone, Debug)]
pub struct Statics {
    /// The casters as equal elastic supports; `None` where they cannot carry a cart.
    pub supports: Option<Supports>,
    /// The lines between the outer casters, moved in by the trail.
    pub footprint: Option<Footprint>,
    /// Where the casters are.
    pub at: Vec<[Length; 2]>,
    /// What one may carry; the least, where they differ.
    pub rating: Option<Mass>,
    /// Where the ratings differ: for each caster the least rating over its own, so that loads compare.
    pub strain: Option<[f64; MOST]>,
    /// The empty cart with its closed drawers.
    pub carcass: Mass,
    /// Twice its mass times its middle, along each axis (ng·nm).
    pub carcass_moments: [i128; 3],
    /// Its drawers, as spaces.
    pub drawers: Vec<usize>,
    /// Lots heavy enough to be judged as taken away.
    pub heavy: Vec<u32>,
    /// The heaviest of them in kg, and for each caster its least and greatest share of a load anywhere on the cart.
    pub heaviest: (f64, [[f64; 2]; MOST]),
    /// What was assumed rather than said, in words.
    pub assumed: Vec<String>,
}

impl Statics {
    pub(super) fn empty() -> Statics {
        Statics {
            supports: None,
            footprint: None,
            at: Vec::new(),
            rating: None,
            strain: None,
            carcass: Mass::ZERO,
            carcass_moments: [0; 3],
            drawers: Vec::new(),
            heavy: Vec::new(),
            heaviest: (0.0, [[0.0; 2]; MOST]),
            assumed: Vec::new(),
        }
    }

    /// What one caster may carry.
    pub fn rating_of(&self, caster: usize) -> Option<Mass> {
        let least = self.rating?;
        Some(match &self.strain {
            Some(parts) => Mass::from_kg(least.as_kg() / parts[caster]),
            None => least,
        })
    }

    /// The greatest of some loads on the casters, each as if it were on one of the least rating.
    pub fn hardest(&self, loads: &[f64; MOST]) -> f64 {
        let n = self.at.len();
        match &self.strain {
            Some(parts) => loads[..n].iter().zip(parts).map(|(l, p)| l * p).fold(0.0, f64::max),
            None => loads[..n].iter().copied().fold(0.0, f64::max),
        }
    }

    /// Whether taking away one of the heavy lots might bring a caster over the easy share of its rating.
    fn may_be_hard(&self, supports: &Supports, closed: &Case) -> bool {
        let (Some(rating), None) = (self.rating, &self.strain) else { return true };
        let ([x, y, _], (mass, shares)) = (closed.moments, &self.heaviest);
        let most = supports.at_most([closed.total, x, y], *mass, shares);
        most.is_none_or(|most| most > EASY * rating.as_kg())
    }

    /// The same for a case; nothing where it tips.
    fn hardest_in(&self, supports: &Supports, case: &Case) -> Option<f64> {
        let [x, y, _] = case.moments;
        if self.strain.is_none() {
            return supports.heaviest(case.total, x, y);
        }
        let mut loads = [0.0; MOST];
        supports.loads(case.total, x, y, &mut loads).then(|| self.hardest(&loads))
    }
}

/// For each caster the least rating over its own; nothing where all are alike.
fn strain(casters: &Casters) -> Option<[f64; MOST]> {
    let least = casters.rating?.as_kg();
    let own = &casters.ratings;
    (!own.is_empty() && own.len() <= MOST)
        .then(|| std::array::from_fn(|k| own.get(k).map_or(1.0, |r| least / r.as_kg())))
}

/// The statics of an empty cart.
pub(super) fn statics(carcass: &Carcass, spaces: &[Space]) -> Statics {
    let drawers: Vec<usize> =
        (0..spaces.len()).filter(|&s| spaces[s].kind == SpaceKind::Drawer).collect();
    let mut assumed = Vec::new();
    let body = carcass.mass.unwrap_or_else(|| {
        let mass = carcass_mass(carcass);
        assumed.push(format!("the empty carcass weighs {:.1} kg", mass.as_kg()));
        mass
    });
    for drawer in carcass.drawers.iter().filter(|d| d.mass.is_none()) {
        let mass = drawer_mass(carcass, drawer).as_kg();
        assumed.push(format!("the drawer {} weighs {mass:.1} kg", drawer.name));
    }
    let z = carcass.casters.height + carcass.height;
    let mut total = body;
    let mut moments = [
        body.as_ng() as i128 * carcass.width.as_nm() as i128,
        body.as_ng() as i128 * carcass.depth.as_nm() as i128,
        body.as_ng() as i128 * z.as_nm() as i128,
    ];
    for &s in &drawers {
        total += spaces[s].own_mass;
        for (axis, moment) in moments.iter_mut().enumerate() {
            *moment += twice_moment(spaces[s].own_mass, &spaces[s].volume, axis);
        }
    }
    Statics {
        supports: Supports::new(&carcass.casters.at),
        footprint: Footprint::new(&carcass.casters.at, carcass.casters.trail),
        at: carcass.casters.at.clone(),
        rating: carcass.casters.rating,
        strain: strain(&carcass.casters),
        carcass: total,
        carcass_moments: moments,
        drawers,
        heavy: Vec::new(),
        heaviest: (0.0, [[0.0; 2]; MOST]),
        assumed,
    }
}

/// Twice the mass times the middle of a box along an axis: exact in ng·nm.
#[inline]
pub(super) fn twice_moment(mass: Mass, b: &crate::geometry::Box3, axis: usize) -> i128 {
    i128::from(mass.as_ng()) * i128::from((b.min[axis] + b.max[axis]).as_nm())
}

/// Mass of a carcass whose file does not say it: a box of board with one board across its middle.
fn carcass_mass(carcass: &Carcass) -> Mass {
    let thick = carcass.board.as_ref().map_or(BOARD_THICKNESS, |b| b.thickness.as_mm());
    let (w, d) = (carcass.width.as_mm(), carcass.depth.as_mm());
    let h = (carcass.height - carcass.casters.height).as_mm();
    let area = 2.0 * w * d + 2.0 * d * h + 2.0 * w * h;
    Mass::from_kg(area * thick * 1e-9 * BOARD_DENSITY)
}

/// Mass of a drawer whose file does not say it: four sides and a bottom.
pub(super) fn drawer_mass(_: &Carcass, drawer: &Drawer) -> Mass {
    let (w, h, d) = (drawer.opening[0].as_mm(), drawer.opening[1].as_mm(), drawer.depth.as_mm());
    let area = w * d + 2.0 * (w + d) * h;
    Mass::from_kg((area * DRAWER_THICKNESS * 1e-9 * BOARD_DENSITY).min(30.0))
}

/// A state in which the casters are judged.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum CaseKind {
    /// Everything closed and in its place.
    Closed,
    /// One drawer out, by its space.
    Out(usize),
    /// One lot taken away.
    Away(u32),
}

/// Masses of a state: total in kg and first moments in kg·mm.
#[derive(Clone, Copy, Debug)]
pub struct Case {
    /// Which state.
    pub kind: CaseKind,
    /// All of it.
    pub total: f64,
    /// First moments about the origin along x, y and z.
    pub moments: [f64; 3],
}

impl Case {
    /// The least tip angle over all sides in degrees, with the side; under nought where it goes over by itself.
    pub fn tip(&self, footprint: &Footprint) -> (usize, f64) {
        let (side, distance) =
            footprint.least_margin(self.moments[0] / self.total, self.moments[1] / self.total);
        (side, degrees(distance, self.moments[2] / self.total))
    }
    /// The same with a further load of so many kilograms at a point, in mm.
    #[must_use]
    pub fn with(self, load: f64, at: [f64; 3]) -> Case {
        let mut case = self;
        case.total += load;
        for (moment, arm) in case.moments.iter_mut().zip(at) {
            *moment += load * arm;
        }
        case
    }
}

/// What the cart-wide costs and rules look at: worked out once for each state of the board.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Stand {
    /// Heaviest caster load, closed and level, in kg; infinite where it tips.
    pub heaviest: f64,
    /// Mean caster load in kg.
    pub mean: f64,
    /// Heaviest caster load over all cases that stand, in kg, each as if on a caster of the least rating. Things taken
    /// away are left out where that surely brings no caster over four fifths of its rating.
    pub worst: f64,
    /// Heaviest with one caster hanging, in kg, reckoned alike; only where the floor is uneven.
    pub hanging: f64,
    /// Least ratio of tip angle to its limit over closed and each drawer out; 9 where all are ample.
    pub margin: f64,
    /// The angle and limit of that least ratio, in degrees.
    pub tip: [f64; 2],
}

/// Share of the rating under which nobody asks what each thing taken away would do.
const EASY: f64 = 0.8;
/// Ratio of angle to limit beyond which nobody asks for the angle.
const AMPLE: f64 = 9.0;

impl Board<'_> {
    /// Everything closed and in its place.
    pub fn closed(&self) -> Case {
        let (mass, moments) = self.sums();
        Case {
            kind: CaseKind::Closed,
            total: mass.as_kg(),
            moments: moments.map(|m| m as f64 / 2e18),
        }
    }

    /// The same with one drawer out.
    pub fn drawer_out(&self, closed: &Case, space: usize) -> Case {
        let s = &self.site().spaces[space];
        let load = (s.own_mass + self.load(s.surfaces[0])).as_kg() * s.extends.as_mm();
        let way: Way = s.face;
        let mut case = Case { kind: CaseKind::Out(space), ..*closed };
        case.moments[way.axis()] += if way.rising() { load } else { -load };
        case
    }

    /// The same with one lot taken away; `None` where it is not on the cart.
    pub fn lot_away(&self, closed: &Case, lot: u32) -> Option<Case> {
        let place = self.place(lot as usize)?;
        let mass = self.site().lots[lot as usize].mass.as_kg();
        let mut case = Case { kind: CaseKind::Away(lot), ..*closed };
        case.total -= mass;
        for axis in 0..3 {
            let twice = place.space.min[axis] + place.space.max[axis];
            case.moments[axis] -= mass * twice.as_nm() as f64 / 2e6;
        }
        Some(case)
    }

    /// Every case of the casters' rule.
    pub fn cases(&self) -> impl Iterator<Item = Case> + '_ {
        let closed = self.closed();
        let statics = &self.site().statics;
        std::iter::once(closed)
            .chain(statics.drawers.iter().map(move |&d| self.drawer_out(&closed, d)))
            .chain(statics.heavy.iter().filter_map(move |&l| self.lot_away(&closed, l)))
    }

    /// What the cart-wide costs and rules look at.
    pub fn stand(&self) -> Stand {
        let statics = &self.site().statics;
        let mut stand = Stand { margin: AMPLE, ..Stand::default() };
        let (Some(supports), Some(footprint)) = (&statics.supports, &statics.footprint) else {
            return stand;
        };
        let closed = self.closed();
        let [x, y, _] = closed.moments;
        let level = supports.heaviest(closed.total, x, y);
        stand.heaviest = level.unwrap_or(f64::INFINITY);
        stand.mean = closed.total / statics.at.len() as f64;
        stand.worst = match &statics.strain {
            None => level.unwrap_or(0.0),
            Some(_) => statics.hardest_in(supports, &closed).unwrap_or(0.0),
        };
        if self.site().uneven {
            let mut loads = [0.0; MOST];
            supports.hanging(closed.total, x, y, &mut loads);
            stand.hanging = statics.hardest(&loads);
        }
        self.lean(&closed, footprint, &mut stand);
        for &drawer in &statics.drawers {
            let out = self.drawer_out(&closed, drawer);
            let most = statics.hardest_in(supports, &out);
            stand.worst = stand.worst.max(most.unwrap_or(0.0));
            self.lean(&out, footprint, &mut stand);
        }
        if statics.may_be_hard(supports, &closed) {
            for &lot in &statics.heavy {
                let Some(away) = self.lot_away(&closed, lot) else { continue };
                let most = statics.hardest_in(supports, &away);
                stand.worst = stand.worst.max(most.unwrap_or(0.0));
            }
        }
        stand
    }

    /// Takes over the tip angle of a case where it is the least beside its limit.
    fn lean(&self, case: &Case, footprint: &Footprint, stand: &mut Stand) {
        let limit = match case.kind {
            CaseKind::Closed => TIP_CLOSED,
            CaseKind::Out(_) => TIP_OPEN,
            CaseKind::Away(_) => return,
        };
        let (_, distance) =
            footprint.least_margin(case.moments[0] / case.total, case.moments[1] / case.total);
        let height = case.moments[2] / case.total;
        // The arc tangent is dear and nearly always not asked for: 1.5 × either limit is under 15.1°.
        if stand.margin == AMPLE && distance > 0.27 * height {
            return;
        }
        let angle = degrees(distance, height);
        if angle / limit < stand.margin {
            stand.margin = angle / limit;
            stand.tip = [angle, limit];
        }
    }
}
