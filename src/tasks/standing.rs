//! The layout as a person wrote it, on a site whose lots are divided as its entries say.
//!
//! What is written is taken as it is, even where things overlap or stick out. Where no position is written, a fitting
//! arrangement on the named surface is looked for. What cannot be understood is a finding, and the rest is still judged.

mod entries;

use crate::domain::{Dims, Entry, Layout, Pose, Workspace};
use crate::finding::Finding;
use crate::site::{
    Board, Form, Home, Kind, Place, Site, SpaceKind, Touched, box_at, corner_of, fits_at,
    for_each_corner_anyhow,
};
use crate::solve::{Wanted, arrange};
use crate::units::show_length;

/// Something that is wrong with an entry of a layout, or with a thing that has none.
#[derive(Clone, Debug)]
pub struct EntryFinding {
    /// The item, as the inventory or else the layout names it.
    pub item: String,
    /// What is wrong, in one sentence.
    pub what: String,
    /// The same with its place in the file, the nearest name and what helps.
    pub finding: Finding,
    /// The lot that would have to be moved to mend it; nothing where the file is to be mended.
    pub lot: Option<usize>,
}

/// A layout as it stands.
#[derive(Clone, Debug)]
pub struct Standing {
    /// The workspace with that layout: every shelf stands where the layout has it, and none may be moved.
    pub workspace: Workspace,
    /// The question, with lots divided as the layout's entries say; further copies are further lots.
    pub site: Site,
    /// Where each lot is; `None` off the cart.
    pub places: Vec<Option<Place>>,
    /// For each lot, the entry that puts it there, as an index into the layout.
    pub entries: Vec<Option<usize>>,
    /// For each lot, whether its position was found rather than written.
    pub arranged: Vec<bool>,
    /// What is wrong with the entries, in the order of the file; then what has none.
    pub findings: Vec<EntryFinding>,
}

/// What an understood entry asks for.
#[derive(Clone, Debug)]
struct Asked {
    /// The entry, as an index into the layout.
    entry: usize,
    /// The item.
    item: usize,
    /// Its first copy and how many.
    copies: (u32, u32),
    /// The surfaces that it may mean: more than one only on a bench of several zones.
    surfaces: Vec<usize>,
}

/// Reads a layout as it stands, with the shelves where it has them.
///
/// # Errors
/// Every way in which the carcass contradicts itself.
pub fn standing(workspace: &Workspace, layout: &Layout) -> Result<Standing, Vec<Finding>> {
    let nailed = workspace.as_stands(&layout.shelves);
    let workspace = Workspace { layout: Some(layout.clone()), ..nailed };
    let blank = Site::new(&workspace)?;
    let mut findings = Vec::new();
    let asked = entries::understand(&blank, layout, &mut findings);
    let groups: Vec<(usize, u32, u32)> =
        asked.iter().map(|a| (a.item, a.copies.0, a.copies.1)).collect();
    let mut site = blank.divided(&workspace, &groups);
    let lots: Vec<usize> = asked.iter().map(|a| lot_of(&site, a)).collect();
    let homes: Vec<Vec<Home>> = asked
        .iter()
        .zip(&lots)
        .map(|(a, &l)| homes(&mut site, l, &layout.entries[a.entry], &a.surfaces))
        .collect();
    let places = settle(&site, layout, &asked, &lots, &homes, &workspace, &mut findings);
    let mut entries = vec![None; site.lots.len()];
    let mut arranged = vec![false; site.lots.len()];
    for (a, &l) in asked.iter().zip(&lots) {
        entries[l] = Some(a.entry);
        arranged[l] = layout.entries[a.entry].at.is_none() && places[l].is_some();
    }
    nail(&mut site, &places);
    entries::against_orders(&site, &places, &entries, layout, &mut findings);
    findings.sort_by_key(|f| f.finding.at.first().map_or(0, |span| span.range.start));
    entries::missing(&site, &entries, layout, &mut findings);
    entries::shelves(&workspace.carcass, layout, &mut findings);
    Ok(Standing { workspace, site, places, entries, arranged, findings })
}

fn lot_of(site: &Site, asked: &Asked) -> usize {
    site.lots
        .iter()
        .position(|l| l.item == asked.item && l.first == asked.copies.0)
        .unwrap_or_else(|| unreachable!("the site is divided by these very entries"))
}

/// The homes that an entry leaves open. A pose that the inventory does not allow is taken as it is written: the thing
/// keeps its size.
fn homes(site: &mut Site, lot: usize, entry: &Entry, surfaces: &[usize]) -> Vec<Home> {
    let asked = |site: &Site, strict: bool| -> Vec<Home> {
        let all = surfaces.iter().flat_map(|&s| site.homes_on(lot, s));
        all.filter(|h| {
            let form = &site.lots[lot].forms[h.form as usize];
            let pose = entry.pose.is_none_or(|p| p == form.pose || !goes_with(site, p, h.surface));
            let turned = entry.turned.is_none_or(|t| t == form.turned);
            pose && (turned || !strict)
        })
        .collect()
    };
    let found = asked(site, true);
    if !found.is_empty() {
        return found;
    }
    // A thing that looks the same turned has no form of its own for it.
    let found = asked(site, false);
    if !found.is_empty() && square(site, lot) {
        return found;
    }
    for &s in surfaces {
        let strange = strange_form(site, lot, entry, s);
        if !site.lots[lot].forms.contains(&strange) {
            site.lots[lot].forms.push(strange);
        }
    }
    asked(site, true)
}

/// Whether turning changes nothing about a lot in some form.
fn square(site: &Site, lot: usize) -> bool {
    site.lots[lot].forms.iter().any(|f| {
        f.dims.w == f.dims.d && f.pose != Pose::Hang || f.dims.w == f.dims.h && f.pose == Pose::Hang
    })
}

/// Whether a pose goes with the kind of a surface.
fn goes_with(site: &Site, pose: Pose, surface: u32) -> bool {
    (pose == Pose::Hang) == (site.surfaces[surface as usize].kind == Kind::Wall)
}

/// The form of a thing that is kept as the inventory does not allow it: its stated size, only held otherwise.
fn strange_form(site: &Site, lot: usize, entry: &Entry, surface: usize) -> Form {
    let l = &site.lots[lot];
    let Dims { w, d, h } = site.items[l.item].size;
    let wall = site.surfaces[surface].kind == Kind::Wall;
    let pose = match entry.pose {
        Some(p) if goes_with(site, p, surface as u32) => p,
        _ if wall => Pose::Hang,
        _ => Pose::Stand,
    };
    // Several copies in one place are a pile, the only stack there is; on a wall a row side by side.
    let n = i64::from(l.copies);
    let known = l.forms.iter().find(|f| f.pose == pose).map(|f| f.dims);
    let dims = known.unwrap_or(match pose {
        Pose::Stand => Dims { w, d, h: h * n },
        Pose::Lie => Dims { w, d: h, h: d * n },
        Pose::Hang => Dims { w: w * n, d, h },
    });
    Form { pose, turned: entry.turned.unwrap_or(false), dims }
}

/// Puts everything where its entry says, and arranges what has no position.
fn settle(
    site: &Site,
    layout: &Layout,
    asked: &[Asked],
    lots: &[usize],
    homes: &[Vec<Home>],
    workspace: &Workspace,
    findings: &mut Vec<EntryFinding>,
) -> Vec<Option<Place>> {
    let mut board = Board::new(site);
    let mut touched = Touched::default();
    let mut wanted = Vec::new();
    for (k, a) in asked.iter().enumerate() {
        let (lot, entry) = (lots[k], &layout.entries[a.entry]);
        match entry.at {
            Some(corner) => {
                let to = written(&board, lot, &homes[k], corner);
                board.apply(crate::site::Change { lot, to }, &mut touched);
            }
            None => wanted.push(Wanted { lot, homes: fitting(site, lot, &homes[k]) }),
        }
    }
    for unplaced in arrange(&mut board, &wanted) {
        let k = lots.iter().position(|&l| l == unplaced.lot).unwrap_or_default();
        let entry = &layout.entries[asked[k].entry];
        let what = no_room(site, unplaced.lot, &homes[k], unplaced.proven, workspace);
        let found = entries::at(&site.items[asked[k].item].name, entry, what);
        findings.push(EntryFinding { lot: Some(unplaced.lot), ..found });
    }
    board.places().to_vec()
}

/// Where a written position puts a lot: in the first form that is free there, else in the first one inside the surface,
/// else in the first.
fn written(
    board: &Board,
    lot: usize,
    homes: &[Home],
    corner: [crate::units::Length; 2],
) -> Option<Place> {
    let mut clearing = crate::site::Clearing::default();
    let place = |h: &Home| {
        let space = box_at(board.site(), h, board.free(h.surface as usize), corner);
        Place { home: *h, space }
    };
    let inside = |p: &&Place| board.free(p.home.surface as usize).contains(&p.space);
    let all: Vec<Place> = homes.iter().map(place).collect();
    let free = all.iter().find(|p| fits_at(board, lot, p, &mut clearing));
    free.or_else(|| all.iter().find(inside)).or_else(|| all.first()).copied()
}

/// The homes in which a lot fits the free box of the surface.
fn fitting(site: &Site, lot: usize, homes: &[Home]) -> Vec<Home> {
    let board = Board::new(site);
    let mut clearing = crate::site::Clearing::default();
    homes.iter().filter(|h| clearing.look_anyhow(&board, lot, h)).copied().collect()
}

/// Why a lot finds no room on the surface that its entry names.
fn no_room(site: &Site, lot: usize, homes: &[Home], proven: bool, workspace: &Workspace) -> String {
    let name = site.lots[lot].name(&site.items);
    let Some(home) = homes.first() else {
        return format!("{name} cannot be kept on the surface that its entry names");
    };
    let surface = site.surface_name(home.surface as usize);
    if let Some(short) = entries::too_large(site, lot, homes, workspace.carcass.units) {
        return format!("{name} does not fit {surface}: {short}");
    }
    let blank = Board::new(site);
    let mut clearing = crate::site::Clearing::default();
    let mut alone = false;
    for home in homes {
        for_each_corner_anyhow(&blank, lot, home, &mut clearing, |_| {
            alone = true;
            false
        });
    }
    if !alone {
        let short = entries::under_boards(site, lot, homes, workspace.carcass.units);
        return format!("{name} does not fit {surface}, were nothing else there: {short}");
    }
    let bench = site.spaces[site.surfaces[home.surface as usize].space].kind == SpaceKind::Bench;
    let size = home.extents.map(|e| show_length(e, workspace.carcass.units));
    let [a, b, _] = &size;
    let sure = if proven { "no arrangement of" } else { "no arrangement was found of" };
    let share = if bench { " within the share that is not kept clear" } else { "" };
    format!("{sure} what the layout puts on {surface} leaves room for {name} ({a} × {b}){share}")
}

/// What is fixed stays where it stands.
fn nail(site: &mut Site, places: &[Option<Place>]) {
    for (lot, place) in places.iter().enumerate() {
        if let Some(place) = place.filter(|_| site.items[site.lots[lot].item].fixed) {
            let s = place.home.surface as usize;
            let corner = corner_of(site, s, &site.free(s), &place.space);
            site.lots[lot].fixed = Some((place.home, Some(corner)));
        }
    }
}
