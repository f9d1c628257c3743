//! From the carcass as described to spaces, surfaces and boards.

use super::carry::{Hold, Plank, Span};
use super::stability::Statics;
use super::surface::{Kind, Lie, Rest, ShelfBoard, Space, SpaceKind, Surface, world};
use super::{Growth, Site, Ties, Tours, stability};
use crate::domain::{
    Along, Bay, Carcass, Depth, Drawer, Face, Material, Panel, Sex, Shelf, Wall, Workspace,
};
use crate::geometry::{Box3, Way};
use crate::physics::body::Body;
use crate::physics::lifting::HIGHEST_INDEX;
use crate::physics::motion::{self, Grasp, Move};
use crate::physics::people;
use crate::units::{Length, Mass, Time};

/// Thickness of a shelf where nothing is said: common practice, no source.
const SHELF: Length = Length::mm(15);
/// Free height over the bench: common practice, no source.
pub(super) const OVER_BENCH: Length = Length::mm(600);

/// The rectangle and depth of a bay, resolved against the bay it may stand behind.
pub(super) struct Opening {
    /// From the viewer's left.
    pub u: [Length; 2],
    /// From the floor.
    pub v: [Length; 2],
    /// Clear depth.
    pub depth: Length,
}

/// The cart's size along the three axes.
pub(super) fn size(carcass: &Carcass) -> [Length; 3] {
    [carcass.width, carcass.depth, carcass.height]
}

/// How far it is from a face to the opposite one.
pub(super) fn across(carcass: &Carcass, face: Face) -> Length {
    size(carcass)[face.axis()]
}

/// How wide a face is as seen.
pub(super) fn breadth(carcass: &Carcass, face: Face) -> Length {
    if face.axis() == 0 { carcass.depth } else { carcass.width }
}

/// Where a bay opens and how deep it is; `None` where it stands behind a bay that is not there or goes through.
pub(super) fn opening(carcass: &Carcass, bay: &Bay) -> Option<Opening> {
    let span = |b: &Bay| ([b.at[0], b.at[0] + b.opening[0]], [b.at[1], b.at[1] + b.opening[1]]);
    match &bay.depth {
        Depth::Deep(depth) => {
            let (u, v) = span(bay);
            Some(Opening { u, v, depth: *depth })
        }
        Depth::Through => {
            let (u, v) = span(bay);
            Some(Opening { u, v, depth: across(carcass, bay.face) })
        }
        Depth::Behind { name, gap } => {
            let front = carcass.bays.iter().find(|b| {
                b.face == bay.face.opposite() && b.name.eq_ignore_ascii_case(name.trim())
            })?;
            let Depth::Deep(taken) = front.depth else { return None };
            let (u, v) = span(front);
            let wide = breadth(carcass, bay.face);
            let depth = across(carcass, bay.face) - taken - *gap;
            Some(Opening { u: [wide - u[1], wide - u[0]], v, depth })
        }
    }
}

/// From where to where a shelf reaches, as depths from the face of its bay.
pub(super) fn shelf_reach(bay: &Bay, shelf: &Shelf, depth: Length) -> [Length; 2] {
    match (shelf.front, shelf.depth) {
        (Some(front), Some(deep)) => [front, front + deep],
        (Some(front), None) => [front, depth],
        (None, Some(deep)) if bay.depth != Depth::Through => [depth - deep, depth],
        _ => [Length::ZERO, depth],
    }
}

/// How thick a shelf is.
pub(super) fn thickness(carcass: &Carcass, shelf: &Shelf) -> Length {
    shelf.thickness.or(carcass.board.as_ref().map(|b| b.thickness)).unwrap_or(SHELF)
}

/// What a board is made of and how thick it is: its own, else the carcass's; nothing where no material is named.
fn sheet(
    carcass: &Carcass,
    material: Option<Material>,
    thickness: Option<Length>,
) -> Option<(Material, Length)> {
    let board = carcass.board.as_ref();
    let material = material.or(board.and_then(|b| b.material))?;
    Some((material, thickness.or(board.map(|b| b.thickness)).unwrap_or(SHELF)))
}

/// The board that is a bay's floor: a board of the carcass, from side to side.
fn floor_board(carcass: &Carcass, bay: &Bay) -> Option<Plank> {
    let (material, thickness) = sheet(carcass, None, None)?;
    Some(Plank { material, thickness, ends: bay.ends, axis: along(bay.face) })
}

fn shelf_board(carcass: &Carcass, bay: &Bay, shelf: &Shelf) -> Option<Plank> {
    let (material, thickness) = sheet(carcass, shelf.material, shelf.thickness)?;
    let axis = match shelf.span_along {
        Along::Width => along(bay.face),
        Along::Depth => 1 - along(bay.face),
    };
    Some(Plank { material, thickness, ends: shelf.ends, axis })
}

/// The site with its spaces, surfaces and boards, as yet without prices of access and without lots.
pub(super) fn frame(workspace: &Workspace) -> Site {
    let carcass = &workspace.carcass;
    let mut site = Site {
        size: size(carcass),
        spaces: Vec::new(),
        surfaces: Vec::new(),
        boards: Vec::new(),
        items: workspace.items.clone(),
        lots: Vec::new(),
        pairs: Vec::new(),
        pairs_of: Vec::new(),
        body: body(workspace),
        statics: Statics::empty(),
        lifting_limit: workspace.shop.person.lifting_limit.unwrap_or(HIGHEST_INDEX),
        ties: Ties::default(),
        tours: Tours::default(),
        growth: Growth::default(),
        stand_off: [Length::ZERO; 5],
        rates: workspace.shop.rates.clone(),
        uneven: workspace.shop.room.uneven,
        bench_area: 0.0,
    };
    for bay in &carcass.bays {
        add_bay(&mut site, carcass, bay);
    }
    for drawer in &carcass.drawers {
        add_drawer(&mut site, carcass, drawer);
    }
    for panel in &carcass.panels {
        add_panel(&mut site, carcass, panel);
    }
    add_bench(&mut site, carcass);
    link(&mut site);
    site.statics = stability::statics(carcass, &site.spaces);
    site
}

fn body(workspace: &Workspace) -> Body {
    let person = &workspace.shop.person;
    if person.seated {
        return Body::seated();
    }
    let sex = person.sex.map(measured);
    match (person.stature, person.percentile, sex) {
        (Some(stature), _, _) => Body::standing(stature, sex),
        (None, Some(percentile), _) => Body::of_percentile(sex, percentile),
        (None, None, Some(_)) => Body::of_percentile(sex, 50),
        (None, None, None) => Body::standing(people::DEFAULT, None),
    }
}

fn measured(sex: Sex) -> people::Sex {
    match sex {
        Sex::Female => people::Sex::Female,
        Sex::Male => people::Sex::Male,
    }
}

fn space(kind: SpaceKind, face: Face, name: &str, volume: Box3, through: bool) -> Space {
    let ways = if through { vec![face, face.opposite()] } else { vec![face] };
    Space {
        kind,
        face,
        name: name.to_owned(),
        volume,
        surfaces: Vec::new(),
        boards: Vec::new(),
        near: Vec::new(),
        ahead: vec![Vec::new(); ways.len()],
        behind: Vec::new(),
        access: vec![Time::ZERO; ways.len()],
        pull: Time::ZERO,
        extends: Length::ZERO,
        own_mass: Mass::ZERO,
        walled: vec![false; ways.len()],
        ways,
    }
}

/// The horizontal axis along a face as seen.
fn along(face: Face) -> usize {
    if face.axis() == 0 { 1 } else { 0 }
}

/// Adds a surface to the space added last.
fn add_surface(site: &mut Site, mut surface: Surface) -> usize {
    let index = site.surfaces.len();
    surface.space = site.spaces.len() - 1;
    let [p, q] = surface.free_axes();
    let micrometres = |axis| surface.free.extent(axis).as_nm() / 1000 + 1;
    surface.area = micrometres(p) * micrometres(q);
    site.spaces[surface.space].surfaces.push(index);
    site.surfaces.push(surface);
    index
}

fn deck(name: &str, face: Face, free: Box3, limit: Option<Mass>, kind: Kind) -> Surface {
    Surface {
        space: 0,
        name: name.to_owned(),
        kind,
        free,
        rest: Rest { axis: 2, greater: false },
        lie: Lie::Along,
        along: along(face),
        area: 0,
        limit,
        needs_clearance: kind == Kind::Deck && face != Face::Top,
        tallest: free.extent(2),
        levels: vec![free.min[2]],
        span: None,
        hold: None,
    }
}

fn add_bay(site: &mut Site, carcass: &Carcass, bay: &Bay) {
    let Some(open) = opening(carcass, bay) else { return };
    let (face, cart) = (bay.face, site.size);
    let whole = world(face, cart, open.u, open.v, [Length::ZERO, open.depth]);
    let through = bay.depth == Depth::Through;
    site.spaces.push(space(SpaceKind::Bay, face, &bay.name, whole, through));
    let mut floor = deck("floor", face, whole, bay.limit, Kind::Deck);
    floor.span = floor_board(carcass, bay).map(|plank| Span::under(&whole, plank));
    add_surface(site, floor);
    add_shelves(site, carcass, bay, &open);
    for (wall, limit) in &bay.hang {
        let mut wall = hanging_wall(*wall, face, whole, *limit);
        wall.hold = Hold::of(&wall, &bay.fixing, sheet(carcass, None, None));
        add_surface(site, wall);
    }
}

fn add_shelves(site: &mut Site, carcass: &Carcass, bay: &Bay, open: &Opening) {
    let mut shelves: Vec<&Shelf> = bay.shelves.iter().collect();
    shelves.sort_by_key(|s| s.height);
    let reach: Vec<_> = shelves.iter().map(|s| shelf_reach(bay, s, open.depth)).collect();
    let first = site.boards.len();
    for (n, shelf) in shelves.iter().enumerate() {
        let (thick, deep) = (thickness(carcass, shelf), reach[n]);
        let top = open.v[0] + shelf.height;
        let above: Vec<usize> = (n + 1..shelves.len())
            .filter(|&m| reach[m][0] < deep[1] && deep[0] < reach[m][1])
            .collect();
        let under = |m: usize, height: Length| open.v[0] + height - thickness(carcass, shelves[m]);
        let lowest = |height: &dyn Fn(&Shelf) -> Length| {
            above.iter().map(|&m| under(m, height(shelves[m]))).min().unwrap_or(open.v[1])
        };
        let over = lowest(&|s| s.height);
        let name = format!("shelf {}", n + 1);
        let free = world(bay.face, site.size, open.u, [top, over], deep);
        let levels: Vec<Length> = rows(shelf).into_iter().map(|h| open.v[0] + h).collect();
        let tallest = lowest(&|s| s.adjust.map_or(s.height, |a| a[1])) - levels[0];
        let mut plain = deck(&name, bay.face, free, shelf.limit, Kind::Deck);
        plain.span = shelf_board(carcass, bay, shelf).map(|plank| Span::under(&free, plank));
        let surface = add_surface(site, Surface { tallest, levels: levels.clone(), ..plain });
        let space = site.spaces.len() - 1;
        site.spaces[space].boards.push(site.boards.len());
        site.boards.push(ShelfBoard {
            name: format!("{} / {} / {name}", bay.face.name(), bay.name),
            solid: world(bay.face, site.size, open.u, [top - thick, top], deep),
            space,
            surface,
            rows: levels,
            over: above.into_iter().map(|m| first + m).collect(),
        });
    }
}

/// Heights over the bay's floor at which the top of a shelf may stand, rising.
fn rows(shelf: &Shelf) -> Vec<Length> {
    let Some([low, high, step]) = shelf.adjust else { return vec![shelf.height] };
    let count = (high - low).as_nm() / step.as_nm();
    (0..=count).map(|k| low + step * k).collect()
}

fn hanging_wall(wall: Wall, face: Face, free: Box3, limit: Option<Mass>) -> Surface {
    // Seen from the back or the left the viewer's left is the greater end of the axis.
    let mirrored = matches!(face, Face::Back | Face::Left);
    let rest = match wall {
        Wall::Back => Rest { axis: face.axis(), greater: !face.rising() },
        Wall::Left => Rest { axis: along(face), greater: mirrored },
        Wall::Right => Rest { axis: along(face), greater: !mirrored },
        Wall::Ceiling => Rest { axis: 2, greater: true },
    };
    let side = matches!(wall, Wall::Left | Wall::Right);
    Surface {
        space: 0,
        name: wall.name().to_owned(),
        kind: Kind::Wall,
        free,
        rest,
        lie: if side { Lie::Across } else { Lie::Along },
        along: along(face),
        area: 0,
        limit,
        needs_clearance: false,
        tallest: free.extent(2),
        levels: Vec::new(),
        span: None,
        hold: None,
    }
}

fn add_drawer(site: &mut Site, carcass: &Carcass, drawer: &Drawer) {
    let (u, v) = rectangle(drawer.at, drawer.opening);
    let extends = drawer.extends.unwrap_or(drawer.depth).min(drawer.depth);
    let whole = world(drawer.face, site.size, u, v, [Length::ZERO, drawer.depth]);
    let free = world(drawer.face, site.size, u, v, [Length::ZERO, extends]);
    let mut s = space(SpaceKind::Drawer, drawer.face, &drawer.name, whole, false);
    s.extends = extends;
    s.own_mass = drawer.mass.unwrap_or_else(|| stability::drawer_mass(carcass, drawer));
    // Pulled before and pushed after: a grasp, a pull as far as it comes out and a release, twice.
    s.pull = (motion::grasp(Grasp::Easy)
        + motion::moved(Move::Near, extends, Mass::ZERO)
        + motion::RELEASE)
        * 2;
    site.spaces.push(s);
    add_surface(site, deck("drawer", drawer.face, free, drawer.limit, Kind::Drawer));
}

fn add_panel(site: &mut Site, carcass: &Carcass, panel: &Panel) {
    let (u, v) = rectangle(panel.at, panel.size);
    let o = panel.overhang;
    let (u, v) = ([u[0] - o.left, u[1] + o.right], [v[0] - o.down, v[1] + o.up]);
    let free = world(panel.face, site.size, u, v, [-panel.room, Length::ZERO]);
    site.spaces.push(space(SpaceKind::Panel, panel.face, &panel.name, free, false));
    let mut board = hanging_wall(Wall::Back, panel.face, free, panel.limit);
    board.name = "panel".to_owned();
    board.hold = Hold::of(&board, &panel.fixing, sheet(carcass, panel.material, panel.thickness));
    add_surface(site, board);
}

fn add_bench(site: &mut Site, carcass: &Carcass) {
    let [w, d, top] = site.size;
    let left = 1.0 - carcass.bench.keep_clear.as_fraction();
    if left <= 0.0 {
        return;
    }
    site.bench_area = left * w.as_mm() * d.as_mm();
    let over = [top, top + OVER_BENCH];
    let lift =
        |u: [Length; 2], v: [Length; 2]| Box3::new([u[0], v[0], over[0]], [u[1], v[1], over[1]]);
    let mut zones: Vec<Box3> = carcass
        .bench
        .zones
        .iter()
        .map(|z| {
            let (u, v) = rectangle(z.at, z.size);
            lift(u, v)
        })
        .collect();
    if zones.is_empty() {
        let clear = d.as_nm() as i128 * carcass.bench.keep_clear.as_ppm() as i128 / 1_000_000;
        zones.push(lift([Length::ZERO, w], [Length::nm(clear as i64), d]));
    }
    let volume = lift([Length::ZERO, w], [Length::ZERO, d]);
    site.spaces.push(space(SpaceKind::Bench, Face::Top, "bench", volume, false));
    for zone in zones {
        add_surface(site, deck("bench", Face::Top, zone, carcass.bench.limit, Kind::Deck));
    }
}

fn rectangle(at: [Length; 2], size: [Length; 2]) -> ([Length; 2], [Length; 2]) {
    ([at[0], at[0] + size[0]], [at[1], at[1] + size[1]])
}

/// Finds which spaces can be in each other's place or way.
fn link(site: &mut Site) {
    let n = site.spaces.len();
    for a in 0..n {
        for b in 0..n {
            if b == a || !site.spaces[b].blocks() {
                continue;
            }
            let other = &site.spaces[b].volume;
            if site.spaces[a].blocks() && site.spaces[a].volume.overlaps(other) {
                site.spaces[a].near.push(b);
            }
            for w in 0..site.spaces[a].ways.len() {
                if may_be_ahead(&site.spaces[a], &site.spaces[b], w) {
                    site.spaces[a].ahead[w].push(b);
                    site.spaces[b].behind.push((a, w));
                }
            }
        }
    }
}

/// Whether something in the other space may stand in the way of something in this one.
fn may_be_ahead(this: &Space, other: &Space, w: usize) -> bool {
    if this.kind == SpaceKind::Bench {
        return false;
    }
    let (way, axis): (Way, usize) = (this.ways[w], this.ways[w].axis());
    let beyond = if way.rising() {
        other.volume.max[axis] > this.volume.min[axis]
    } else {
        other.volume.min[axis] < this.volume.max[axis]
    };
    beyond && (0..3).all(|a| a == axis || this.volume.meets_along(&other.volume, a))
}
