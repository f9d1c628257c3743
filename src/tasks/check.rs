//! What a workspace says, before anything is placed: counts, masses, free room by reach, and what cannot fit.

use super::outcome::{Caution, Zone};
use super::question::{Question, questions};
use super::tell::{foreseen, miss};
use crate::domain::{Face, Workspace};
use crate::finding::Finding;
use crate::geometry::Box3;
use crate::score::{Ledger, broken};
use crate::site::{
    Board, Change, Kind, Place, Site, SpaceKind, Touched, best_spots, posture_at, shared, slices,
};
use crate::solve::trial;
use crate::units::{Length, Mass, Unit, Uses};

/// What was understood.
#[derive(Clone, Debug)]
pub struct Understood {
    /// The cart's name.
    pub name: String,
    /// The unit of the user's files.
    pub units: Unit,
    /// How many different items.
    pub items: usize,
    /// How many copies of them.
    pub copies: u32,
    /// How many places they take: piles and rows count once.
    pub lots: usize,
    /// What all copies weigh.
    pub mass: Mass,
    /// Fetches a week.
    pub uses: Uses,
    /// The empty cart with its drawers.
    pub carcass: Mass,
    /// What was assumed rather than said.
    pub assumed: Vec<String>,
    /// Bays, drawers and panels.
    pub spaces: usize,
    /// Surfaces.
    pub surfaces: usize,
    /// Room by how it is reached, easiest first.
    pub room: Vec<RoomByReach>,
    /// Volume of all things in litres.
    pub volume: f64,
    /// What no place of the empty cart admits, and why.
    pub never: Vec<(String, String)>,
    /// What must stay out at least, in words; empty where nothing must by these sums.
    pub at_least_out: Vec<String>,
    /// What names let one ask about hazards that no file says.
    pub questions: Vec<Question>,
    /// What hazards and room ask for, whatever the layout.
    pub cautions: Vec<Caution>,
}

/// Room that is reached in one way.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct RoomByReach {
    /// How.
    pub zone: Zone,
    /// Volume of bays and drawers in litres.
    pub litres: f64,
    /// Area of panels and of walls that take hooks, in square decimetres.
    pub wall: f64,
}

/// Looks a workspace over.
///
/// # Errors
/// Every way in which the carcass contradicts itself.
pub fn check(workspace: &Workspace) -> Result<Understood, Vec<Finding>> {
    let site = Site::new(workspace)?;
    let board = Board::new(&site);
    Ok(Understood {
        name: workspace.carcass.name.clone(),
        units: workspace.carcass.units,
        items: site.items.len(),
        copies: site.items.iter().map(|i| i.count).sum(),
        lots: site.lots.len(),
        mass: site.lots.iter().map(|l| l.mass).sum(),
        uses: site.uses(),
        carcass: site.statics.carcass,
        assumed: site.statics.assumed.clone(),
        spaces: site.spaces.len(),
        surfaces: site.surfaces.len(),
        room: room(&board),
        // The sum of nothing is a negative nought; adding nought makes it plain.
        volume: site.items.iter().map(|i| litres(i) * f64::from(i.count)).sum::<f64>() + 0.0,
        never: never(&site, workspace.carcass.units),
        at_least_out: at_least_out(&site),
        questions: questions(&workspace.items),
        cautions: foreseen(&board, workspace),
    })
}

fn litres(item: &crate::domain::Item) -> f64 {
    [item.size.w, item.size.d, item.size.h].iter().map(|l| l.as_mm() / 100.0).product()
}

fn never(site: &Site, unit: Unit) -> Vec<(String, String)> {
    let mut board = Board::new(site);
    let mut ledger = Ledger::new(&board);
    let mut all: Vec<(String, String)> = Vec::new();
    for l in 0..site.lots.len() {
        let name = &site.items[site.lots[l].item].name;
        let told = miss(site, l, unit).map(|m| m.told);
        let told = told.or_else(|| forbidden_everywhere(&mut board, &mut ledger, l));
        if let Some(told) = told
            && !all.iter().any(|(n, _)| n == name)
        {
            all.push((name.clone(), told));
        }
    }
    all
}

/// The rule that a lot breaks wherever it is on the empty cart; nothing where it breaks none somewhere.
fn forbidden_everywhere(board: &mut Board, ledger: &mut Ledger, l: usize) -> Option<String> {
    let homes = &board.site().lots[l].homes;
    let mut last = None;
    for home in homes {
        for space in best_spots(board.site(), home) {
            let change = Change { lot: l, to: Some(Place { home: *home, space }) };
            if trial(board, ledger, &[change]).broken <= ledger.score().broken {
                return None;
            }
            last = Some(change);
        }
    }
    let mut with = board.clone();
    with.apply(last?, &mut Touched::default());
    let all = broken(&with, &Ledger::new(&with));
    let own = all.iter().find(|b| b.lots.contains(&(l as u32)));
    let told = &own.or_else(|| all.iter().find(|b| b.lots.is_empty()))?.told;
    Some(format!("a rule forbids it everywhere: {told}"))
}

/// Slices every space at the heights where the person's zones end and adds up what is reached how.
pub(crate) fn room(board: &Board) -> Vec<RoomByReach> {
    let site = board.site();
    let mut all: Vec<RoomByReach> = [Zone::Easy, Zone::Bend, Zone::Kneel, Zone::Stretch, Zone::Out]
        .map(|zone| RoomByReach { zone, litres: 0.0, wall: 0.0 })
        .to_vec();
    let mut add = |zone: Zone, litres: f64, wall: f64| {
        if let Some(row) = all.iter_mut().find(|r| r.zone == zone) {
            row.litres += litres;
            row.wall += wall;
        }
    };
    for space in site.spaces.iter().filter(|s| s.kind != SpaceKind::Bench) {
        for slice in slices(site, &space.volume) {
            let zone = zone_of(site, space.kind, space.face, &slice);
            if space.kind != SpaceKind::Panel {
                let boards: f64 =
                    space.boards.iter().map(|&b| shared(&slice, board.board(b))).sum();
                add(zone, slice.litres() - boards, 0.0);
            }
        }
    }
    for surface in site.surfaces.iter().filter(|s| s.kind == Kind::Wall) {
        let space = &site.spaces[surface.space];
        for slice in slices(site, &surface.free) {
            let [p, q] = surface.free_axes();
            let area = slice.extent(p).as_mm() * slice.extent(q).as_mm() / 1e4;
            add(zone_of(site, space.kind, space.face, &slice), 0.0, area);
        }
    }
    all
}

fn zone_of(site: &Site, kind: SpaceKind, face: Face, slice: &Box3) -> Zone {
    Zone::from(posture_at(site, kind, face, slice))
}

/// By volumes and smallest footprints: what cannot be on the cart all at once, whatever the arrangement.
fn at_least_out(site: &Site) -> Vec<String> {
    let mut told = Vec::new();
    let (mut need, mut floor) = (0.0, 0.0);
    for lot in site.lots.iter().filter(|l| !l.homes.is_empty()) {
        let inside = lot.homes.iter().all(|h| {
            let kind = site.spaces[site.surfaces[h.surface as usize].space].kind;
            matches!(kind, SpaceKind::Bay | SpaceKind::Drawer)
        });
        let decks = lot.homes.iter().all(|h| site.surfaces[h.surface as usize].kind != Kind::Wall);
        let volume = |e: &[Length; 3]| e.iter().map(|l| l.as_mm() / 100.0).product::<f64>();
        let area = |e: &[Length; 3]| e[0].as_mm() * e[1].as_mm() / 1e4;
        let least = |f: &dyn Fn(&[Length; 3]) -> f64| {
            lot.homes.iter().map(|h| f(&h.extents)).fold(f64::INFINITY, f64::min)
        };
        if inside {
            need += least(&volume);
        }
        if inside && decks {
            floor += least(&area);
        }
    }
    let room: f64 = site
        .spaces
        .iter()
        .filter(|s| matches!(s.kind, SpaceKind::Bay | SpaceKind::Drawer))
        .map(|s| s.volume.litres() - boards_of(site, s))
        .sum();
    let decks: f64 = site
        .surfaces
        .iter()
        .filter(|s| {
            let kind = site.spaces[s.space].kind;
            s.kind != Kind::Wall && kind != SpaceKind::Bench
        })
        .map(|s| s.free.extent(0).as_mm() * s.free.extent(1).as_mm() / 1e4)
        .sum();
    if need > room {
        told.push(format!(
            "things of {:.1} litres for bays and drawers of {room:.1} litres: at least {:.1} litres must stay out",
            need,
            need - room
        ));
    }
    if floor > decks {
        told.push(format!(
            "smallest footprints of {:.1} dm² for decks of {decks:.1} dm²: at least {:.1} dm² must stay out",
            floor,
            floor - decks
        ));
    }
    told
}

fn boards_of(site: &Site, space: &crate::site::Space) -> f64 {
    space.boards.iter().map(|&b| site.boards[b].solid.litres()).sum()
}
