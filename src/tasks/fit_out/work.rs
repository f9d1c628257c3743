//! The work as far as it is thought out: boards, holders, and what is wanting.

use super::Holder;
use super::behind;
use super::hole::Hole;
use super::mount::{Measure, Mount, MountKind, along, into, right_of};
use super::screw::Screw;
use crate::domain::{Carcass, Face, Fixing, Material, Panel, Workspace};
use crate::geometry::Box3;
use crate::physics::fasteners::{Grain, Ground, Make};
use crate::site::{Board, Kind as SurfaceKind, Site, figures, world};
use crate::tasks::outcome::Plan;
use crate::units::{Length, Unit, show_length};

/// What screws are reckoned to go into where no material is named: plywood of the lightest wood that is usual, spruce (building design handbook, Table
/// 6.2, p. 170, read).
const LIGHT: Ground = Ground { gravity: 0.41, make: Make::Plies, grain: Grain::Side };

/// What is thought out so far.
pub struct Work<'a> {
    pub workspace: &'a Workspace,
    pub board: &'a Board<'a>,
    pub plan: Plan,
    pub mounts: Vec<Mount>,
    pub holders: Vec<Holder>,
    pub wants: Vec<String>,
}

impl<'a> Work<'a> {
    pub fn new(workspace: &'a Workspace, board: &'a Board<'a>, plan: Plan) -> Work<'a> {
        Work { workspace, board, plan, mounts: Vec::new(), holders: Vec::new(), wants: Vec::new() }
    }
    pub fn site(&self) -> &'a Site {
        self.board.site()
    }
    pub fn unit(&self) -> Unit {
        self.workspace.carcass.units
    }
    /// A placement's item, with its copies where there are several.
    pub fn name_of(&self, placement: usize) -> String {
        let p = &self.plan.placements[placement];
        match (p.of, p.copies) {
            (1, _) => p.item.clone(),
            (of, copies) if of == copies => format!("{} ×{copies}", p.item),
            (_, 1) => format!("{} {}", p.item, p.copy),
            (_, copies) => format!("{} {}–{}", p.item, p.copy, p.copy + copies - 1),
        }
    }
    /// The surface of a placement, as an index.
    pub fn surface_of(&self, placement: usize) -> Option<usize> {
        let p = &self.plan.placements[placement];
        let site = self.site();
        (0..site.surfaces.len()).find(|&s| {
            let (surface, space) = (&site.surfaces[s], &site.spaces[site.surfaces[s].space]);
            // A bench of several zones has surfaces of one name: the one that holds the box.
            surface.name == p.surface
                && space.name == p.bay
                && space.face == p.face
                && (space.face != Face::Top || self.board.free(s).contains(&p.space))
        })
    }
    /// The board that a placement stands on or hangs on.
    pub fn mount_of(&mut self, placement: usize) -> Option<usize> {
        let surface = self.surface_of(placement)?;
        let at = self.mount_at(surface)?;
        let outline = self.mounts[at].outline(&self.plan.placements[placement].space);
        self.mounts[at].outlines.push((placement, outline));
        Some(at)
    }
    /// The board of a surface, entered in the list where it is new.
    pub fn mount_at(&mut self, surface: usize) -> Option<usize> {
        let new = self.mount(surface)?;
        Some(self.enter(new))
    }
    /// Enters a board in the list, unless it is there.
    pub fn enter(&mut self, mount: Mount) -> usize {
        let same = |m: &Mount| {
            (m.face, m.kind) == (mount.face, mount.kind)
                && m.bay == mount.bay
                && m.surface == mount.surface
        };
        self.mounts.iter().position(same).unwrap_or_else(|| {
            self.mounts.push(mount);
            self.mounts.len() - 1
        })
    }

    fn mount(&self, s: usize) -> Option<Mount> {
        let site = self.site();
        let (surface, space) = (&site.surfaces[s], &site.spaces[site.surfaces[s].space]);
        let panels = &self.workspace.carcass.panels;
        if let Some(panel) = panels.iter().find(|p| p.face == space.face && p.name == space.name) {
            return Some(self.panel(panel));
        }
        let wall = surface.kind == SurfaceKind::Wall;
        match surface.name.as_str() {
            "bench" => Some(self.bench()),
            name if wall => Some(self.wall(space.face, &space.name, name, &space.volume)),
            name if surface.kind == SurfaceKind::Deck => {
                Some(self.deck(space.face, &space.name, name, self.board.free(s)))
            }
            _ => None,
        }
    }
    /// The board of a panel: without what things may pass its edges by.
    pub fn panel(&self, panel: &Panel) -> Mount {
        let far = |k: usize| [panel.at[k], panel.at[k] + panel.size[k]];
        let b = world(panel.face, self.site().size, far(0), far(1), [Length::ZERO; 2]);
        let up = (2, true);
        let edges = ["left edge", "right edge", "lower edge", "upper edge"];
        let axes = [right_of(panel.face), up, into(panel.face)];
        let carcass = &self.workspace.carcass;
        let plain = mount(panel.face, &panel.name, "panel", MountKind::Panel, &b, axes, edges);
        let material = panel.material.or(material(carcass));
        let thick = panel.thickness.unwrap_or(behind::board(carcass));
        Mount { thick, ..made_of(plain, material, &panel.fixing) }
    }
    fn bench(&self) -> Mount {
        let [w, d, h] = self.site().size;
        let b = Box3::new([Length::ZERO, Length::ZERO, h], [w, d, h]);
        let axes = [right_of(Face::Top), into(Face::Top), (2, false)];
        let edges = ["left edge", "right edge", "front edge", "back edge"];
        self.of_carcass(mount(Face::Top, "bench", "bench", MountKind::Bench, &b, axes, edges))
    }
    /// A shelf or floor, seen from above by one who stands before its face.
    pub fn deck(&self, face: Face, bay: &str, surface: &str, free: &Box3) -> Mount {
        let axes = [right_of(face), into(face), (2, false)];
        let edges = ["left edge", "right edge", "front edge", "rear edge"];
        self.of_carcass(mount(face, bay, surface, MountKind::Deck, free, axes, edges))
    }
    /// A wall of a bay, seen from inside the bay; a ceiling seen from below.
    pub fn wall(&self, face: Face, bay: &str, wall: &str, volume: &Box3) -> Mount {
        const UP: (usize, bool) = (2, true);
        let (right, into) = (right_of(face), into(face));
        let other = |(axis, rising): (usize, bool)| (axis, !rising);
        let sides = |left, right| [left, right, "lower edge", "upper edge"];
        let (kind, axes, edges) = match wall {
            "left" => (MountKind::Wall, [into, UP, other(right)], sides("front edge", "rear edge")),
            "right" => {
                (MountKind::Wall, [other(into), UP, right], sides("rear edge", "front edge"))
            }
            "ceiling" => (
                MountKind::Ceiling,
                [right, other(into), UP],
                ["left edge", "right edge", "rear edge", "front edge"],
            ),
            _ => (MountKind::Wall, [right, UP, into], sides("left edge", "right edge")),
        };
        let carcass = &self.workspace.carcass;
        let bay_of = carcass.bays.iter().find(|b| b.face == face && b.name == bay);
        let fixing = bay_of.map(|b| b.fixing).unwrap_or_default();
        made_of(mount(face, bay, wall, kind, volume, axes, edges), material(carcass), &fixing)
    }
    /// What screws into the boards of the carcass go into.
    pub fn carcass_ground(&self) -> Ground {
        self.bench().ground
    }
    /// A board of the carcass, in the face of which screws hold.
    fn of_carcass(&self, mount: Mount) -> Mount {
        made_of(mount, material(&self.workspace.carcass), &Fixing::default())
    }

    /// How much board there is at a place of a mount, and what lies behind it.
    pub fn behind(&self, mount: usize, at: [Length; 2]) -> (Length, String) {
        let (layers, beyond) =
            behind::behind(self.site(), &self.workspace.carcass, &self.mounts[mount], at);
        (layers.iter().map(|l| l.thickness).sum(), beyond)
    }
    /// Enters a holder with its holes.
    pub fn screw_on(&mut self, mount: usize, holder: Holder, holes: &[[Length; 2]]) {
        let thin =
            if holder.kind == super::Kind::Panel { Length::ZERO } else { super::hang::PLATE };
        let index = self.holders.len();
        if let Some((screw, _)) = holder.screw {
            for at in holes {
                let through = thin == Length::ZERO;
                self.drill(mount, index, *at, screw, screw.sold.length() - thin, through);
            }
        }
        self.holders.push(holder);
    }
    /// Enters a hole.
    pub fn drill(
        &mut self,
        mount: usize,
        holder: usize,
        at: [Length; 2],
        screw: Screw,
        deep: Length,
        through: bool,
    ) {
        let behind = match self.mounts[mount].kind {
            MountKind::Edge => self.mounts[mount].surface.clone(),
            _ => self.behind(mount, at).1,
        };
        let m = &mut self.mounts[mount];
        if !m.behind.contains(&behind) {
            m.behind.push(behind.clone());
        }
        let from = m.from_edges(at);
        m.holes.push(Hole { number: 0, holder, at, from, screw, deep, through, behind });
    }
    /// Puts boards into the order of mounting, holes into order from the top down, and numbers them.
    pub fn number(&mut self) {
        let mut order: Vec<usize> =
            (0..self.mounts.len()).filter(|&m| !self.mounts[m].holes.is_empty()).collect();
        let top = |m: &Mount| -> Length {
            let point = m.point(m.size);
            point[2].max(m.point([Length::ZERO; 2])[2])
        };
        order.sort_by_key(|&m| {
            let m = &self.mounts[m];
            (std::cmp::Reverse(top(m)), m.face, m.name())
        });
        let mounts = order.iter().map(|&m| self.mounts[m].clone()).collect();
        for holder in &mut self.holders {
            holder.mount = holder.mount.and_then(|m| order.iter().position(|&o| o == m));
        }
        self.mounts = mounts;
        for mount in &mut self.mounts {
            mount.holes.sort_by_key(|h| (std::cmp::Reverse(h.at[1]), h.at[0]));
            for (k, hole) in mount.holes.iter_mut().enumerate() {
                hole.number = k as u32 + 1;
            }
        }
    }
    /// What the carcass file leaves open.
    pub fn assumed(&self) -> Vec<String> {
        let carcass = &self.workspace.carcass;
        let mut all = Vec::new();
        if carcass.board.is_none() {
            let thick = show_length(behind::BOARD, self.unit());
            all.push(format!("boards and panels whose thickness is not told are taken to be {thick} thick (common practice, no source): `board: {{material: …, thickness: …}}` says otherwise"));
        }
        if material(carcass).is_none() {
            all.push("boards whose material is not named are reckoned as plywood of light wood, the weakest that is usual".to_owned());
        }
        all
    }
}

fn mount(
    face: Face,
    bay: &str,
    surface: &str,
    kind: MountKind,
    b: &Box3,
    axes: [(usize, bool); 3],
    edges: [&'static str; 4],
) -> Mount {
    let [across, up, inward] = axes;
    // One looks along `inward`: the near side of the board is where it ends within the hollow.
    let (axis, rising) = inward;
    let near = match kind {
        MountKind::Panel | MountKind::Bench => b.min[axis],
        MountKind::Deck => b.min[2],
        _ if rising => b.max[axis],
        _ => b.min[axis],
    };
    Mount {
        face,
        bay: bay.to_owned(),
        surface: surface.to_owned(),
        kind,
        size: [b.extent(across.0), b.extent(up.0)],
        across: along(b, across),
        up: along(b, up),
        into: Measure { axis, rising, from: near },
        thick: Length::ZERO,
        ground: LIGHT,
        hook: None,
        edges,
        holes: Vec::new(),
        outlines: Vec::new(),
        behind: Vec::new(),
    }
}

/// What the carcass is made of, where the file says it.
fn material(carcass: &Carcass) -> Option<Material> {
    carcass.board.as_ref().and_then(|b| b.material)
}

/// A board of that material, with what the file says about hanging things on it.
fn made_of(mount: Mount, material: Option<Material>, fixing: &Fixing) -> Mount {
    let grain = if fixing.end_grain { Grain::End } else { Grain::Side };
    let ground = material.map_or(LIGHT, |m| {
        let timber = figures(m);
        Ground { gravity: timber.gravity.value, make: timber.make, grain }
    });
    Mount { ground: Ground { grain, ..ground }, hook: fixing.hook, ..mount }
}
