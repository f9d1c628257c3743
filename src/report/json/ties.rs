//! Companions, families and jobs.

use serde::Serialize;

use crate::domain::Face;
use crate::tasks::outcome::{Companions, Family, Job, Missing};

#[derive(Serialize)]
pub(super) struct CompanionsRow<'a> {
    items: &'a [String; 2],
    faces: [Vec<&'static str>; 2],
    share_a_face: bool,
    uses_per_week: f64,
    seconds_per_week: f64,
    told: &'a str,
}

impl<'a> CompanionsRow<'a> {
    pub(super) fn of(pair: &'a Companions) -> CompanionsRow<'a> {
        CompanionsRow {
            items: &pair.items,
            faces: pair.faces.each_ref().map(|f| names(f)),
            share_a_face: pair.share_a_face(),
            uses_per_week: pair.uses.as_week(),
            seconds_per_week: pair.price.as_s(),
            told: &pair.told,
        }
    }
}

#[derive(Serialize)]
pub(super) struct FamilyRow<'a> {
    family: &'a str,
    faces: Vec<FaceRow>,
    seconds_per_week: f64,
}

#[derive(Serialize)]
struct FaceRow {
    face: &'static str,
    places: usize,
}

impl<'a> FamilyRow<'a> {
    pub(super) fn of(family: &'a Family) -> FamilyRow<'a> {
        let row = |(face, places): &(Face, usize)| FaceRow { face: face.name(), places: *places };
        FamilyRow {
            family: &family.name,
            faces: family.faces.iter().map(row).collect(),
            seconds_per_week: family.price.as_s(),
        }
    }
}

#[derive(Serialize)]
pub(super) struct JobRow<'a> {
    job: &'a str,
    uses_per_week: f64,
    wholly_from_the_cart: bool,
    missing: Vec<MissingRow<'a>>,
    tour: Vec<&'static str>,
    station: &'a str,
    seconds_of_walking: f64,
    seconds_per_week: f64,
}

#[derive(Serialize)]
struct MissingRow<'a> {
    item: &'a str,
    copies: u32,
    of: u32,
}

impl<'a> JobRow<'a> {
    pub(super) fn of(job: &'a Job) -> JobRow<'a> {
        let row = |m: &'a Missing| MissingRow { item: &m.item, copies: m.copies, of: m.of };
        JobRow {
            job: &job.name,
            uses_per_week: job.uses.as_week(),
            wholly_from_the_cart: job.missing.is_empty(),
            missing: job.missing.iter().map(row).collect(),
            tour: names(&job.tour),
            station: &job.station,
            seconds_of_walking: job.walk.as_s(),
            seconds_per_week: job.price.as_s(),
        }
    }
}

fn names(faces: &[Face]) -> Vec<&'static str> {
    faces.iter().map(|f| f.name()).collect()
}
