//! The cases in which the cart is tried: each tips or slides it in one way.

use super::super::figures::Figures;
use crate::domain::Workspace;
use crate::physics::leaning::{GRAVITY, hold, press_that_tips, push_that_tips};
use crate::physics::tipping::Footprint;
use crate::site::{Board, Case, CaseKind, TIP_CLOSED, TIP_OPEN};
use crate::units::Length;

/// What is done to the cart.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) enum Deed {
    /// Nothing.
    Closed,
    /// One drawer is pulled, by its space.
    Out(usize),
    /// All drawers are pulled.
    AllOut,
    /// One heavy thing is away.
    Away(u32),
    /// It is pushed at the height of the bench, its casters stopped dead.
    Push,
    /// Someone leans on the edge of the bench.
    Lean,
}

/// What a deed comes to: the angle or force that tips the cart, against the least that it should take.
#[derive(Clone, Copy, Debug)]
pub(super) struct Weighed {
    pub deed: Deed,
    pub side: usize,
    pub value: f64,
    pub limit: f64,
}

impl Weighed {
    pub(super) fn margin(&self) -> f64 {
        self.value / self.limit
    }
}

/// A cart to be tried, as it stands or changed in some way.
#[derive(Clone, Copy)]
pub(super) struct Stance<'a> {
    pub board: &'a Board<'a>,
    pub footprint: &'a Footprint,
    pub figures: &'a Figures,
    /// Width, depth and height of the bench.
    pub bench: [f64; 3],
    /// Height of the floor board, mm.
    pub low: f64,
    /// How far a wheel may trail its swivel.
    pub trail: Length,
    /// A mass put in, in kg, with its place in mm.
    pub ballast: Option<(f64, [f64; 3])>,
    /// A drawer that is pulled only by that part of its way.
    pub pull: Option<(usize, f64)>,
}

impl<'a> Stance<'a> {
    pub(super) fn new(
        board: &'a Board<'a>,
        footprint: &'a Footprint,
        figures: &'a Figures,
        workspace: &Workspace,
    ) -> Stance<'a> {
        Stance {
            board,
            footprint,
            figures,
            bench: board.site().size.map(Length::as_mm),
            low: workspace.carcass.casters.height.as_mm(),
            trail: workspace.carcass.casters.trail,
            ballast: None,
            pull: None,
        }
    }

    /// Everything closed.
    pub(super) fn closed(&self) -> Case {
        let case = self.board.closed();
        self.ballast.map_or(case, |(mass, at)| case.with(mass, at))
    }

    /// With one drawer pulled.
    pub(super) fn out(&self, closed: &Case, drawer: usize) -> Case {
        let mut case = self.board.drawer_out(closed, drawer);
        if let Some((_, part)) = self.pull.filter(|(space, _)| *space == drawer) {
            for axis in 0..2 {
                case.moments[axis] =
                    closed.moments[axis] + (case.moments[axis] - closed.moments[axis]) * part;
            }
        }
        case
    }

    /// With all drawers pulled.
    pub(super) fn all_out(&self, closed: &Case) -> Case {
        let mut open = *closed;
        for &drawer in &self.board.site().statics.drawers {
            let out = self.out(closed, drawer);
            (0..2).for_each(|axis| open.moments[axis] += out.moments[axis] - closed.moments[axis]);
        }
        open
    }

    /// Every deed that this cart knows.
    pub(super) fn weigh(&self) -> Vec<Weighed> {
        let statics = &self.board.site().statics;
        let closed = self.closed();
        let mut all = vec![self.leaned(Deed::Closed, &closed, TIP_CLOSED)];
        for &drawer in &statics.drawers {
            all.push(self.leaned(Deed::Out(drawer), &self.out(&closed, drawer), TIP_OPEN));
        }
        if statics.drawers.len() > 1 {
            all.push(self.leaned(Deed::AllOut, &self.all_out(&closed), TIP_OPEN));
        }
        for &lot in &statics.heavy {
            if let Some(away) = self.board.lot_away(&closed, lot) {
                all.push(self.leaned(Deed::Away(lot), &away, TIP_CLOSED));
            }
        }
        all.push(self.pushed(&closed));
        all.extend(self.pressed(&closed));
        all
    }

    /// The least margin of all of them.
    pub(super) fn least(&self) -> f64 {
        self.weigh().iter().map(Weighed::margin).fold(f64::INFINITY, f64::min)
    }

    fn leaned(&self, deed: Deed, case: &Case, limit: f64) -> Weighed {
        let (side, value) = case.tip(self.footprint);
        Weighed { deed, side, value, limit }
    }

    fn pushed(&self, closed: &Case) -> Weighed {
        let [x, y] = [0, 1].map(|axis| closed.moments[axis] / closed.total);
        let (side, distance) = self.footprint.least_margin(x, y);
        let value = push_that_tips(closed.total * GRAVITY, distance, self.bench[2]);
        Weighed { deed: Deed::Push, side, value, limit: self.figures.push.value }
    }

    /// Leaning on whichever edge of the bench tips it most easily; nothing where the casters stand out beyond it.
    fn pressed(&self, closed: &Case) -> Option<Weighed> {
        let [wide, deep, _] = self.bench;
        let corners = [[0.0, 0.0], [wide, 0.0], [0.0, deep], [wide, deep]];
        let limit = self.figures.lean.value;
        self.pressed_at(closed, &corners).map(|(side, value)| Weighed {
            deed: Deed::Lean,
            side,
            value,
            limit,
        })
    }

    /// The least force straight down at one of some points that tips the cart, with its side.
    fn pressed_at(&self, case: &Case, points: &[[f64; 2]]) -> Option<(usize, f64)> {
        let [x, y] = [0, 1].map(|axis| case.moments[axis] / case.total);
        let force = |side: usize| {
            let overhang = points
                .iter()
                .map(|p| -self.footprint.inside(side, p[0], p[1]))
                .fold(f64::NEG_INFINITY, f64::max);
            press_that_tips(case.total * GRAVITY, self.footprint.inside(side, x, y), overhang)
        };
        let all = (0..self.footprint.sides()).map(|side| (side, force(side)));
        all.filter(|(_, f)| f.is_finite()).min_by(|a, b| a.1.total_cmp(&b.1))
    }

    /// The level force at the bench that slides the cart: its locked casters may be those that carry least.
    pub(super) fn slides(&self, locks: usize) -> Option<f64> {
        let statics = &self.board.site().statics;
        let supports = statics.supports.as_ref()?;
        let closed = self.closed();
        let mut loads = [0.0; crate::physics::casters::MOST];
        if !supports.loads(closed.total, closed.moments[0], closed.moments[1], &mut loads) {
            return None;
        }
        let carried = &mut loads[..supports.count()];
        carried.sort_by(f64::total_cmp);
        let locked: f64 = carried.iter().take(locks).sum();
        Some(hold(self.figures.friction.value, locked * GRAVITY))
    }
}

/// Whether a case of the statics is the same as a deed.
pub(super) fn of_case(kind: CaseKind) -> Deed {
    match kind {
        CaseKind::Closed => Deed::Closed,
        CaseKind::Out(space) => Deed::Out(space),
        CaseKind::Away(lot) => Deed::Away(lot),
    }
}
