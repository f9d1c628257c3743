//! The cart as it is loaded: surfaces, boards, mass, casters and tipping.

use super::part::{Corners, clean, mm, point};
use crate::tasks::outcome::{Balance, CasterLoad, Solid, SurfaceLoad, Tip};
use crate::units::Mass;
use serde::Serialize;

#[derive(Serialize)]
pub(super) struct SurfaceRow<'a> {
    face: &'static str,
    bay: &'a str,
    surface: &'a str,
    kind: &'static str,
    #[serde(flatten)]
    corners: Corners,
    load: f64,
    limit: Option<f64>,
}

impl<'a> SurfaceRow<'a> {
    pub(super) fn of(surface: &'a SurfaceLoad) -> SurfaceRow<'a> {
        SurfaceRow {
            face: surface.face.name(),
            bay: &surface.bay,
            surface: &surface.surface,
            kind: surface.kind.name(),
            corners: Corners::of(&surface.space),
            load: surface.load.as_kg(),
            limit: surface.limit.map(Mass::as_kg),
        }
    }
}

#[derive(Serialize)]
pub(super) struct SolidRow<'a> {
    what: &'a str,
    #[serde(flatten)]
    corners: Corners,
}

impl<'a> SolidRow<'a> {
    pub(super) fn of(solid: &'a Solid) -> SolidRow<'a> {
        SolidRow { what: &solid.what, corners: Corners::of(&solid.space) }
    }
}

#[derive(Serialize)]
pub(super) struct MassRow<'a> {
    total: f64,
    centre: [f64; 3],
    carcass: f64,
    carcass_centre: [f64; 3],
    assumed: &'a [String],
}

impl<'a> MassRow<'a> {
    pub(super) fn of(balance: &'a Balance) -> MassRow<'a> {
        MassRow {
            total: balance.total.as_kg(),
            centre: point(balance.centre),
            carcass: balance.carcass.as_kg(),
            carcass_centre: point(balance.carcass_centre),
            assumed: &balance.assumed,
        }
    }
}

#[derive(Serialize)]
pub(super) struct CasterRow<'a> {
    at: [f64; 2],
    load: Option<f64>,
    worst: Option<f64>,
    worst_case: &'a str,
    hanging: Option<f64>,
    limit: Option<f64>,
}

impl<'a> CasterRow<'a> {
    pub(super) fn of(caster: &'a CasterLoad) -> CasterRow<'a> {
        CasterRow {
            at: caster.at.map(mm),
            load: caster.load.map(Mass::as_kg),
            worst: caster.worst.map(Mass::as_kg),
            worst_case: &caster.worst_case,
            hanging: caster.hanging.map(Mass::as_kg),
            limit: caster.limit.map(Mass::as_kg),
        }
    }
}

#[derive(Serialize)]
pub(super) struct TipRow<'a> {
    side: &'a str,
    case: &'a str,
    degrees: Option<f64>,
    limit: Option<f64>,
}

impl<'a> TipRow<'a> {
    pub(super) fn of(tip: &'a Tip) -> TipRow<'a> {
        TipRow {
            side: &tip.side,
            case: &tip.case,
            degrees: clean(tip.degrees),
            limit: clean(tip.limit),
        }
    }
}
