//! The cart as its files say it: spaces, surfaces and boards.

use super::frame::{Block, out_of, outside, placed, sticks_out};
use toolberth::domain::{
    Along, Bay, Carcass, Depth, Drawer, Ends, Face, Fixing, Material, Panel, Shelf, Wall, Workspace,
};
use toolberth::tasks::outcome::{Kind, Solid};
use toolberth::units::{Length, Mass};

/// Free height over the bench, in nanometres.
const OVER_BENCH: i64 = 600_000_000;
/// A shelf where nothing is said.
const SHEET: i64 = 15_000_000;

/// What shares one volume.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Sort {
    Bay,
    Drawer,
    Panel,
    Bench,
}

/// A bay, a drawer, a panel or the bench.
pub struct Space {
    pub face: Face,
    pub name: String,
    pub sort: Sort,
    pub through: bool,
    /// Its clear inside; of a panel, what may hang before it.
    pub inside: Block,
    /// Of a drawer: how far it comes out, and its own mass where stated.
    pub extends: i64,
    pub mass: Option<Mass>,
}

/// What carries things.
pub struct Surface {
    pub space: usize,
    pub face: Face,
    pub name: String,
    pub kind: Kind,
    pub free: Block,
    /// The same without what may pass its edges, or with all of a drawer's depth: the plan may state either.
    pub also: Block,
    pub limit: Option<Mass>,
    /// The board under it, and how it holds what hangs on it, where the files tell enough.
    pub plank: Option<Plank>,
    pub hung: Option<Hung>,
    /// Axis of the plane that carries, and which end of a box touches it.
    pub plane: (usize, usize),
}

/// A board over a span.
#[derive(Clone, Copy)]
pub struct Plank {
    pub material: Material,
    pub thickness: i64,
    pub ends: Ends,
    pub axis: usize,
}

/// How a wall holds what hangs on it: its board, and the words of the files.
#[derive(Clone, Copy)]
pub struct Hung {
    pub board: Option<(Material, i64)>,
    pub fixing: Fixing,
}

/// All of it.
#[derive(Default)]
pub struct Site {
    pub spaces: Vec<Space>,
    pub surfaces: Vec<Surface>,
    pub boards: Vec<(String, Block)>,
}

impl Site {
    /// The site, and what is wrong with the shelf boards that the plan tells.
    pub fn build(workspace: &Workspace, solids: &[Solid]) -> (Site, Vec<String>) {
        let (made, mut site, mut wrong) = (&workspace.carcass, Site::default(), Vec::new());
        made.bays.iter().for_each(|b| wrong.extend(site.bay(made, b, solids)));
        made.drawers.iter().for_each(|d| site.drawer(made, d));
        made.panels.iter().for_each(|p| site.panel(made, p));
        site.bench(made);
        if site.boards.len() != solids.len() {
            wrong.push(format!(
                "{} boards told, the files have {}",
                solids.len(),
                site.boards.len()
            ));
        }
        (site, wrong)
    }

    /// The surface of those names that a box fits best.
    pub fn home(&self, face: Face, bay: &str, name: &str, block: &Block) -> Option<usize> {
        let mine =
            |s: &Surface| s.face == face && s.name == name && same(&self.spaces[s.space].name, bay);
        let all = self.surfaces.iter().enumerate().filter(|(_, s)| mine(s));
        all.min_by_key(|(_, s)| sticks_out(block, &s.free)).map(|(k, _)| k)
    }

    fn bay(&mut self, made: &Carcass, bay: &Bay, solids: &[Solid]) -> Vec<String> {
        let ([u, v], deep) = opening(made, bay);
        let inside = placed(bay.face, outside(made), [u, v, [0, deep]]);
        let through = bay.depth == Depth::Through;
        self.spaces.push(Space {
            face: bay.face,
            name: bay.name.clone(),
            sort: Sort::Bay,
            through,
            inside,
            extends: 0,
            mass: None,
        });
        self.add(bay.face, "floor", Kind::Deck, inside, bay.limit, (2, 0));
        let sheet = sheet(made, None, None);
        let across = super::frame::axes(bay.face)[0];
        self.last().plank = sheet.map(|(material, thickness)| Plank {
            material,
            thickness,
            ends: bay.ends,
            axis: across,
        });
        let wrong = self.shelves(made, bay, [u, v, [0, deep]], solids);
        for (wall, limit) in &bay.hang {
            self.add(bay.face, wall.name(), Kind::Wall, inside, *limit, plane(bay.face, *wall));
            self.last().hung = Some(Hung { board: sheet, fixing: bay.fixing });
        }
        wrong
    }

    fn shelves(
        &mut self,
        made: &Carcass,
        bay: &Bay,
        [u, v, deep]: [[i64; 2]; 3],
        solids: &[Solid],
    ) -> Vec<String> {
        let mut shelves: Vec<&Shelf> = bay.shelves.iter().collect();
        shelves.sort_by_key(|s| s.height);
        let mut boards: Vec<(&Shelf, Block)> = Vec::new();
        let mut wrong = Vec::new();
        for (n, shelf) in shelves.iter().enumerate() {
            let board = |height: i64| {
                let top = v[0] + height;
                let range = [u, [top - thickness(made, shelf), top], reach(bay, shelf, deep[1])];
                placed(bay.face, outside(made), range)
            };
            let under = boards.last().map_or(i64::MIN, |(_, b)| b[1][2]);
            let told = |h: &i64| {
                let block = board(*h);
                block[0][2] >= under
                    && solids.iter().any(|s| super::frame::block(&s.space) == block)
            };
            let height = heights(shelf).find(told).unwrap_or_else(|| {
                wrong.push(format!("{} / shelf {}: no such board is told", bay.name, n + 1));
                shelf.height.as_nm()
            });
            boards.push((shelf, board(height)));
        }
        for n in 0..boards.len() {
            self.shelf(made, bay, n, &boards);
        }
        wrong
    }

    /// The free box of a shelf goes up to the next board over it.
    fn shelf(&mut self, made: &Carcass, bay: &Bay, n: usize, boards: &[(&Shelf, Block)]) {
        let (shelf, board) = boards[n];
        let inside = self.spaces[self.spaces.len() - 1].inside;
        let over = boards[n + 1..]
            .iter()
            .map(|(_, b)| b)
            .filter(|b| super::frame::over_each_other(b, &board));
        let top = over.map(|b| b[0][2]).min().unwrap_or(inside[1][2]);
        let free = [[board[0][0], board[0][1], board[1][2]], [board[1][0], board[1][1], top]];
        let name = format!("shelf {}", n + 1);
        self.add(bay.face, &name, Kind::Deck, free, shelf.limit, (2, 0));
        let across = super::frame::axes(bay.face)[0];
        self.last().plank =
            sheet(made, shelf.material, shelf.thickness).map(|(material, thickness)| {
                let axis = if shelf.span_along == Along::Width { across } else { 1 - across };
                Plank { material, thickness, ends: shelf.ends, axis }
            });
        self.boards.push((format!("{} / {name}", bay.name), board));
    }

    fn drawer(&mut self, made: &Carcass, drawer: &Drawer) {
        let [u, v] = area(drawer.at, drawer.opening);
        let deep = drawer.depth.as_nm();
        let extends = drawer.extends.map_or(deep, |e| e.as_nm().min(deep));
        let within = |far: i64| placed(drawer.face, outside(made), [u, v, [0, far]]);
        self.spaces.push(Space {
            face: drawer.face,
            name: drawer.name.clone(),
            sort: Sort::Drawer,
            through: false,
            inside: within(deep),
            extends,
            mass: drawer.mass,
        });
        self.add(drawer.face, "drawer", Kind::Drawer, within(extends), drawer.limit, (2, 0));
        self.last().also = within(deep);
    }

    fn panel(&mut self, made: &Carcass, panel: &Panel) {
        let [u, v] = area(panel.at, panel.size);
        let out = [-panel.room.as_nm(), 0];
        let over = panel.overhang;
        let [left, right, down, up] =
            [over.left, over.right, over.down, over.up].map(Length::as_nm);
        let wide = [[u[0] - left, u[1] + right], [v[0] - down, v[1] + up], out];
        let free = placed(panel.face, outside(made), wide);
        self.spaces.push(Space {
            face: panel.face,
            name: panel.name.clone(),
            sort: Sort::Panel,
            through: false,
            inside: free,
            extends: 0,
            mass: None,
        });
        let (axis, rising) = out_of(panel.face);
        self.add(panel.face, "panel", Kind::Wall, free, panel.limit, (axis, usize::from(!rising)));
        self.last().also = placed(panel.face, outside(made), [u, v, out]);
        let board = sheet(made, panel.material, panel.thickness);
        self.last().hung = Some(Hung { board, fixing: panel.fixing });
    }

    /// The zones of the bench, or the share of it at the back edge.
    fn bench(&mut self, made: &Carcass) {
        let [wide, deep, tall] = outside(made);
        let clear = made.bench.keep_clear.as_fraction();
        let mut zones: Vec<[[i64; 2]; 2]> =
            made.bench.zones.iter().map(|z| area(z.at, z.size)).collect();
        if zones.is_empty() && clear < 1.0 {
            zones.push([[0, wide], [(deep as f64 * clear).round() as i64, deep]]);
        }
        for [x, y] in zones {
            let free = [[x[0], y[0], tall], [x[1], y[1], tall + OVER_BENCH]];
            self.spaces.push(Space {
                face: Face::Top,
                name: "bench".to_owned(),
                sort: Sort::Bench,
                through: false,
                inside: free,
                extends: 0,
                mass: None,
            });
            self.add(Face::Top, "bench", Kind::Deck, free, made.bench.limit, (2, 0));
        }
    }

    fn last(&mut self) -> &mut Surface {
        self.surfaces.last_mut().expect("just added")
    }

    fn add(
        &mut self,
        face: Face,
        name: &str,
        kind: Kind,
        free: Block,
        limit: Option<Mass>,
        plane: (usize, usize),
    ) {
        let space = self.spaces.len() - 1;
        self.surfaces.push(Surface {
            space,
            face,
            name: name.to_owned(),
            kind,
            free,
            also: free,
            limit,
            plank: None,
            hung: None,
            plane,
        });
    }
}

/// Whether two names are the same to a reader who minds no capitals.
pub fn same(a: &str, b: &str) -> bool {
    a.trim().eq_ignore_ascii_case(b.trim())
}

fn area(at: [Length; 2], size: [Length; 2]) -> [[i64; 2]; 2] {
    [0, 1].map(|k| [at[k].as_nm(), (at[k] + size[k]).as_nm()])
}

/// The ranges of u and v of a bay and its clear depth.
fn opening(made: &Carcass, bay: &Bay) -> ([[i64; 2]; 2], i64) {
    let size = outside(made);
    let across = size[out_of(bay.face).0];
    match &bay.depth {
        Depth::Deep(deep) => (area(bay.at, bay.opening), deep.as_nm()),
        Depth::Through => (area(bay.at, bay.opening), across),
        Depth::Behind { name, gap } => {
            let opposite = |b: &&Bay| b.face == bay.face.opposite() && same(&b.name, name);
            let other = made.bays.iter().find(opposite).expect("the bay in front is there");
            let ([u, v], deep) = opening(made, other);
            let wide = size[if out_of(bay.face).0 == 1 { 0 } else { 1 }];
            ([[wide - u[1], wide - u[0]], v], across - deep - gap.as_nm())
        }
    }
}

/// Material and thickness of a board: its own, else the carcass's, else 15 mm; nothing where no material is told.
fn sheet(
    made: &Carcass,
    material: Option<Material>,
    thickness: Option<Length>,
) -> Option<(Material, i64)> {
    let material = material.or(made.board.as_ref().and_then(|b| b.material))?;
    let thickness = thickness.or(made.board.as_ref().map(|b| b.thickness));
    Some((material, thickness.map_or(SHEET, Length::as_nm)))
}

fn thickness(made: &Carcass, shelf: &Shelf) -> i64 {
    let board = made.board.as_ref().map(|b| b.thickness);
    shelf.thickness.or(board).map_or(SHEET, Length::as_nm)
}

/// From where to where a shelf goes in depth: against the rear unless it says how far in it begins.
fn reach(bay: &Bay, shelf: &Shelf, deep: i64) -> [i64; 2] {
    let own = shelf.depth.map(Length::as_nm);
    match shelf.front.map(Length::as_nm) {
        Some(front) => [front, own.map_or(deep, |d| front + d)],
        None if bay.depth == Depth::Through => [0, deep],
        None => [own.map_or(0, |d| deep - d), deep],
    }
}

/// The heights at which a shelf may stand.
fn heights(shelf: &Shelf) -> impl Iterator<Item = i64> {
    let fixed = [shelf.height, shelf.height, Length::mm(1)];
    let [low, high, step] = shelf.adjust.unwrap_or(fixed).map(Length::as_nm);
    (0..=(high - low) / step).map(move |n| low + n * step)
}

/// The plane that a hung thing touches: its axis, and which end of the thing's box lies in it.
fn plane(face: Face, wall: Wall) -> (usize, usize) {
    let (axis, rising) = out_of(face);
    // The viewer's right lies up the axis of u on the front and the right face, down it on the others.
    let right_is_up = matches!(face, Face::Front | Face::Right | Face::Top);
    let across = super::frame::axes(face)[0];
    match wall {
        Wall::Back => (axis, usize::from(!rising)),
        Wall::Left => (across, usize::from(!right_is_up)),
        Wall::Right => (across, usize::from(right_is_up)),
        Wall::Ceiling => (2, 1),
    }
}
