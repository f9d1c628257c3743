//! Room to grow: how much is to stay free in easy and bend reach, and how much there is on the empty cart.

use super::surface::SpaceKind;
use super::{Site, grip_at};
use crate::domain::{Face, Workspace, typical};
use crate::geometry::Box3;
use crate::physics::body::Posture;
use crate::units::Length;

/// A reach near enough to grow into.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum Near {
    /// Easy reach.
    Easy,
    /// With a bent back.
    Bend,
}

impl Near {
    /// Both.
    pub const ALL: [Near; 2] = [Near::Easy, Near::Bend];

    /// The near reach that a posture is, where it is one.
    #[inline]
    pub fn of(posture: Posture) -> Option<Near> {
        match posture {
            Posture::Easy => Some(Near::Easy),
            Posture::Bend => Some(Near::Bend),
            Posture::Kneel | Posture::Stretch | Posture::Out => None,
        }
    }
    /// The word for it in reports.
    pub const fn name(self) -> &'static str {
        match self {
            Near::Easy => "easy",
            Near::Bend => "bend",
        }
    }
}

/// Cubic millimetres by near reach and by the face of the space.
pub type Volumes = [[i64; 5]; 2];

/// What room is for.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum For {
    /// Anything, in one near reach.
    Anything(Near),
    /// A family, on the faces that it stands on: an index into the families, and how many further things.
    Family(usize, u32),
}

/// Room that is to stay free.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Wanted {
    /// What for.
    pub what: For,
    /// How much, in cubic millimetres.
    pub volume: i64,
}

/// Everything about room to grow.
#[derive(Clone, Default, PartialEq, Eq, Debug)]
pub struct Growth {
    /// What bays and drawers hold when they are empty.
    pub room: Volumes,
    /// What is to stay free; empty where nothing is.
    pub wanted: Vec<Wanted>,
}

/// Works out the room of a site and how much of it is to stay free.
pub(super) fn plan_ahead(site: &mut Site, workspace: &Workspace) {
    let reserve = &workspace.shop.reserve;
    let room = room(site);
    let mut wanted = Vec::new();
    for near in Near::ALL {
        let all: i64 = room[near as usize].iter().sum();
        let share = i128::from(all) * i128::from(reserve.share.as_ppm()) / 1_000_000;
        wanted.push(Wanted { what: For::Anything(near), volume: share as i64 });
    }
    for (name, count, _) in &reserve.families {
        let family = site.ties.families.iter().position(|f| f.name == *name);
        let Some((family, thing)) = family.zip(typical(&workspace.items, name)) else { continue };
        let volume = super::lot::bulk(&thing) * i64::from(*count);
        wanted.push(Wanted { what: For::Family(family, *count), volume });
    }
    wanted.retain(|w| w.volume > 0);
    site.growth = Growth { room, wanted };
}

/// Slices every bay and drawer at the heights where the person's zones end and adds up what is near.
fn room(site: &Site) -> Volumes {
    let mut all = Volumes::default();
    let deep = |kind| matches!(kind, SpaceKind::Bay | SpaceKind::Drawer);
    for space in site.spaces.iter().filter(|s| deep(s.kind)) {
        for slice in slices(site, &space.volume) {
            let Some(near) = Near::of(posture_at(site, space.kind, space.face, &slice)) else {
                continue;
            };
            let boards = space.boards.iter().map(|&b| shared(&slice, &site.boards[b].solid));
            let litres = slice.litres() - boards.sum::<f64>();
            all[near as usize][space.face.index()] += (litres * 1e6) as i64;
        }
    }
    all
}

/// A box cut at the heights where the person's zones end.
pub fn slices(site: &Site, b: &Box3) -> Vec<Box3> {
    let body = &site.body;
    let mut cuts = vec![b.min[2], b.max[2]];
    cuts.extend(
        [body.knee, body.knuckle, body.shoulder, body.overhead_grip]
            .into_iter()
            .filter(|c| b.min[2] < *c && *c < b.max[2]),
    );
    cuts.sort_unstable();
    cuts.windows(2)
        .filter(|w| w[0] < w[1])
        .map(|w| Box3::new([b.min[0], b.min[1], w[0]], [b.max[0], b.max[1], w[1]]))
        .collect()
}

/// How the middle of a slice is reached from a face.
pub fn posture_at(site: &Site, kind: SpaceKind, face: Face, slice: &Box3) -> Posture {
    site.body.posture(&grip_at(site, kind, face, slice, slice.middle(2)))
}

/// The volume that two boxes share, in litres.
pub fn shared(a: &Box3, b: &Box3) -> f64 {
    let along = |k: usize| (a.max[k].min(b.max[k]) - a.min[k].max(b.min[k])).max(Length::ZERO);
    (0..3).map(|k| along(k).as_mm() / 100.0).product()
}
