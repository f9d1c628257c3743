//! What shelves and fixings are asked for by what is on them.

use super::Mark;
use crate::domain::Face;
use crate::units::{Length, Mass};

/// A shelf or a bay's floor of a known material, under what stands on it where it stands.
#[derive(Clone, Debug)]
pub struct BoardLoad {
    /// The face.
    pub face: Face,
    /// The bay.
    pub bay: String,
    /// The surface.
    pub surface: String,
    /// What the board is made of.
    pub material: &'static str,
    /// Its thickness.
    pub thickness: Length,
    /// Its clear span.
    pub span: Length,
    /// How its ends are held: `free` or `fixed`.
    pub ends: &'static str,
    /// What stands on it.
    pub load: Mass,
    /// How far it sags at once, in millimetres.
    pub sag: f64,
    /// How far it sags in the end, once it has crept, in millimetres.
    pub sag_later: f64,
    /// The most that it may sag in the end, in millimetres.
    pub limit: f64,
    /// The share of its strength that is used, 1 being all that may be counted on.
    pub strength_used: f64,
    /// What sags it most, and how much of the sag in the end that makes, in millimetres.
    pub most_by: Option<(String, f64)>,
    /// What of its figures is recalled and was not read.
    pub from_memory: Vec<&'static str>,
}

impl BoardLoad {
    /// The share of the sag that it may have.
    pub fn sag_used(&self) -> f64 {
        self.sag_later / self.limit
    }
}

/// What one thing asks of the screw or hook that it hangs on.
#[derive(Clone, Debug)]
pub struct FixingLoad {
    /// The face.
    pub face: Face,
    /// The bay or panel.
    pub bay: String,
    /// The surface.
    pub surface: String,
    /// The item.
    pub item: String,
    /// Its copy, or the first of a row.
    pub copy: u32,
    /// What one screw or hook carries.
    pub mass: Mass,
    /// How hard it is pulled out of the wall, in newtons; the whole weight under a ceiling.
    pub pull: f64,
    /// What it holds by, in words.
    pub by: String,
    /// The share of what may be counted on, 1 being all; under a million.
    pub used: f64,
    /// How what may be counted on was come by: the rule in a handbook, or the user's figure alone.
    pub mark: Mark,
    /// What of the figures is recalled and was not read.
    pub from_memory: Vec<&'static str>,
}
