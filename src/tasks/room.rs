//! Growth room: how much there is, where, and what of a wish list would fit.
//!
//! The largest free box of each bay is exact (see [`largest`]). How many further things of a family fit is tried with
//! real geometry and every rule, one after the other into the free corner place that is the easiest to reach: more might
//! fit if things were moved, never fewer.

mod carry;
mod families;
mod largest;
mod wishes;

pub use carry::{casters_left, surface_left};
pub use largest::{largest, largest_free, volume};

use super::offer::{Fitter, Named, Spot, said};
use super::outcome::{Kept, Zone};
use super::standing::{Standing, standing};
use super::tell;
use crate::domain::{Dims, Face, Item, Layout, Workspace};
use crate::finding::Finding;
use crate::geometry::Box3;
use crate::site::{Board, Kind, grip_at};
use crate::units::{Mass, Price, Unit};

/// So many further things of a family are tried at most.
pub const MOST_ALIKE: u32 = 12;

/// How much can still be bought.
#[derive(Clone, Debug)]
pub struct Room {
    /// The cart's name.
    pub name: String,
    /// The unit of the user's files.
    pub units: Unit,
    /// The largest free box of each bay, drawer, panel and bench that has any, face by face.
    pub bays: Vec<BayRoom>,
    /// The same summed up by reach, the easiest first.
    pub zones: Vec<Sum>,
    /// The same summed up by face.
    pub faces: Vec<Sum>,
    /// Further things of the typical size of each family.
    pub families: Vec<FamilyRoom>,
    /// The wish list, in order of value.
    pub wishes: Vec<Wish>,
    /// Room that is kept free on purpose, with what it is kept for.
    pub kept: Vec<Kept>,
    /// What is wrong with the entries of the layout.
    pub findings: Vec<String>,
    /// How many rules are broken as it stands: nothing that fits makes that worse.
    pub broken: usize,
}

/// The largest free box of a bay.
#[derive(Clone, Debug)]
pub struct BayRoom {
    /// The face.
    pub face: Face,
    /// The bay, drawer or panel.
    pub bay: String,
    /// The surface that the box rests or hangs on.
    pub surface: String,
    /// What kind of surface.
    pub kind: Kind,
    /// The box; a thing on a deck of a bay needs its own free height within it.
    pub space: Box3,
    /// How its middle is reached.
    pub zone: Zone,
    /// What the surface can still take; `None` where no limit is stated.
    pub surface_left: Option<Mass>,
    /// What casters and tipping still allow there; 100 kg is told for any more.
    pub casters_left: Mass,
}

impl BayRoom {
    /// The mass that can still be put there.
    pub fn mass(&self) -> Mass {
        self.surface_left.map_or(self.casters_left, |s| s.min(self.casters_left))
    }
}

/// Several free boxes summed up.
#[derive(Clone, Debug)]
pub struct Sum {
    /// The zone or the face.
    pub what: String,
    /// Litres of the largest free boxes of its bays and drawers.
    pub litres: f64,
    /// The largest of them, as an index into `bays`.
    pub largest: Option<usize>,
    /// Further things of all families that were put there, one family at a time.
    pub things: u32,
}

/// How many further things of a family fit.
#[derive(Clone, Debug)]
pub struct FamilyRoom {
    /// The family.
    pub family: String,
    /// Its typical size: the medians of its widths, depths and heights.
    pub size: Dims,
    /// Its typical mass: the median.
    pub mass: Mass,
    /// How many fit, each given those before; at most [`MOST_ALIKE`] are tried.
    pub fit: u32,
    /// How many are kept room for, where the shop says so.
    pub wanted: Option<u32>,
    /// Where they would go, in that order, and how each is reached.
    pub spots: Vec<(Spot, Zone)>,
}

/// A wish tried.
#[derive(Clone, Debug)]
pub struct Wish {
    /// Which; for several copies each by itself.
    pub named: Named,
    /// What it is worth on the cart: what fetching it from elsewhere would cost a week.
    pub value: Price,
    /// Where it would go; `None` where it does not fit.
    pub to: Option<Spot>,
    /// What must be moved for it, and where to.
    pub moved: Vec<(Named, Spot)>,
    /// What the layout then costs more a week.
    pub costs: Price,
    /// Why it does not fit, with the nearest miss.
    pub miss: Option<String>,
}

/// Tells how much room there is on a layout, and which wishes fit.
///
/// # Errors
/// What is wrong with the carcass, and wishes named as something in the inventory.
pub fn room(workspace: &Workspace, layout: &Layout, wishes: &[Item]) -> Result<Room, Vec<Finding>> {
    let doubles = doubles(workspace, wishes);
    if !doubles.is_empty() {
        return Err(doubles);
    }
    let stands = standing(workspace, layout)?;
    let workspace = &stands.workspace;
    let fitter = Fitter::new(Board::with(&stands.site, &stands.places));
    let told = tell::plan(&fitter.board, &fitter.ledger, workspace);
    let bays = bays(&fitter.board);
    let now = said(&fitter.board, &fitter.ledger, workspace);
    let families = families::families(workspace, &now)?;
    Ok(Room {
        name: workspace.carcass.name.clone(),
        units: workspace.carcass.units,
        zones: zones(&bays, &families),
        faces: faces(&bays, &families),
        bays,
        families,
        wishes: wishes::tried(workspace, &now, wishes)?,
        kept: told.reserve,
        findings: stands.findings.iter().map(|f| f.what.clone()).collect(),
        broken: told.worth.broken.len(),
    })
}

fn doubles(workspace: &Workspace, wishes: &[Item]) -> Vec<Finding> {
    let known = |w: &&Item| workspace.items.iter().any(|i| i.name.eq_ignore_ascii_case(&w.name));
    let told = |w: &Item| {
        Finding::fault(format!("`{}` is in the inventory already", w.name))
            .at(&w.span)
            .help("give the wish a name of its own")
    };
    wishes.iter().filter(known).map(told).collect()
}

/// The largest free box of each space.
fn bays(board: &Board) -> Vec<BayRoom> {
    let site = board.site();
    let mut all: Vec<BayRoom> = Vec::new();
    for space in &site.spaces {
        let free = space.surfaces.iter().filter_map(|&s| Some((s, largest_free(board, s)?)));
        let best = free.fold(None, |best: Option<(usize, Box3)>, it| match best {
            Some(b) if volume(&b.1) >= volume(&it.1) => Some(b),
            _ => Some(it),
        });
        all.extend(best.map(|(s, b)| bay(board, s, b)));
    }
    all.sort_by_key(|b| b.face);
    all
}

fn bay(board: &Board, s: usize, space: Box3) -> BayRoom {
    let surface = &board.site().surfaces[s];
    let of = &board.site().spaces[surface.space];
    BayRoom {
        face: of.face,
        bay: of.name.clone(),
        surface: surface.name.clone(),
        kind: surface.kind,
        zone: zone_of(board, s, &space),
        surface_left: surface_left(board, s),
        casters_left: casters_left(board, s, &space),
        space,
    }
}

/// How the middle of a box on a surface is reached, the easiest way.
fn zone_of(board: &Board, s: usize, b: &Box3) -> Zone {
    let site = board.site();
    let space = &site.spaces[site.surfaces[s].space];
    let by = |way| site.body.posture(&grip_at(site, space.kind, way, b, b.middle(2)));
    space.ways.iter().map(|&w| Zone::from(by(w))).min().unwrap_or(Zone::Out)
}

fn zones(bays: &[BayRoom], families: &[FamilyRoom]) -> Vec<Sum> {
    let all = [Zone::Easy, Zone::Bend, Zone::Kneel, Zone::Stretch];
    let there = |z: Zone| families.iter().flat_map(|f| &f.spots).filter(move |s| s.1 == z).count();
    all.iter().map(|&z| sum(z.name(), bays, |b| b.zone == z, there(z))).collect()
}

fn faces(bays: &[BayRoom], families: &[FamilyRoom]) -> Vec<Sum> {
    let spots = || families.iter().flat_map(|f| &f.spots);
    let there = |face: Face| spots().filter(move |s| s.0.face == face).count();
    let used = |f: &&Face| bays.iter().any(|b| b.face == **f);
    Face::ALL.iter().filter(used).map(|&f| sum(f.name(), bays, |b| b.face == f, there(f))).collect()
}

fn sum(what: &str, bays: &[BayRoom], is: impl Fn(&BayRoom) -> bool, things: usize) -> Sum {
    let mine: Vec<usize> = (0..bays.len()).filter(|&k| is(&bays[k])).collect();
    let decks = mine.iter().filter(|&&k| bays[k].kind != Kind::Wall);
    let largest = mine.iter().copied().max_by_key(|&k| (volume(&bays[k].space), usize::MAX - k));
    Sum {
        what: what.to_owned(),
        litres: decks.map(|&k| bays[k].space.litres()).fold(0.0, |a, b| a + b),
        largest,
        things: things as u32,
    }
}

/// The layout with further items, which are off the cart.
fn standing_with(
    workspace: &Workspace,
    now: &Layout,
    further: &[Item],
) -> Result<Standing, Vec<Finding>> {
    let mut wider = workspace.clone();
    wider.items.extend(further.iter().cloned());
    standing(&wider, now)
}

/// The lots of the items from one on.
fn lots_from(stands: &Standing, item: usize) -> Vec<usize> {
    (0..stands.site.lots.len()).filter(|&l| stands.site.lots[l].item >= item).collect()
}
