//! What a lot can do, were it alone, and what each choice takes of what all lots share.

use super::before::Before;
use super::fold::Fold;
use super::share::{Key, Shares, Take};
use crate::geometry::{Axis, Box3};
use crate::score::{COSTS, Scope, way_prices};
use crate::site::{Home, Kind, Place, Site, SpaceKind, Surface, best_spots};
use crate::solve::zoning::Zoning;
use crate::units::{Length, Price, Time};
use std::ops::Range;

/// The faces that a lot can be fetched from, and one more for off the cart.
pub const FACES: usize = 6;
/// Off the cart, among the faces.
pub const OFF: usize = 5;

/// How finely the question is cut: a cart with very many homes is cut coarsely, so that the table stays small.
#[derive(Clone, Copy)]
struct Grain {
    /// Into how many strips a deck is cut along the way out, and a panel from bottom to top.
    strips: usize,
    /// How lengths are folded.
    folds: &'static [Fold],
    /// How the sides of boxes in a bay are folded.
    few: &'static [Fold],
}

impl Grain {
    fn of(homes: usize) -> Grain {
        let all: &'static [Fold] = &Fold::ALL;
        match homes {
            0..=20_000 => Grain { strips: 12, folds: all, few: &all[..2] },
            20_001..=100_000 => Grain { strips: 4, folds: &all[..2], few: &all[..1] },
            _ => Grain { strips: 1, folds: &all[..1], few: &all[..1] },
        }
    }

    /// Where the n-th strip begins.
    fn cut(self, length: Length, n: usize) -> Length {
        Length::nm(length.as_nm() * n as i64 / self.strips as i64)
    }

    /// The strips that a range meets, each with the part of it that it takes.
    fn overlaps(self, length: Length, from: Length, to: Length) -> Vec<(usize, f64)> {
        let one = |n: usize| {
            let [low, high] = [self.cut(length, n), self.cut(length, n + 1)];
            let part = (high.min(to) - low.max(from)).as_nm();
            // Rounded down: a strip is as long as a nanometre more.
            (n, part as f64 / ((high - low).as_nm() + 1) as f64)
        };
        (0..self.strips).map(one).filter(|(_, part)| *part > 0.0).collect()
    }
}

/// One thing that a lot can do within a home.
pub struct Choice {
    /// What it costs at least, in microseconds a week.
    pub cost: f64,
    /// The face that the lot is then fetched from.
    pub face: u8,
    /// What it takes beside what its home takes.
    pub takes: Range<u32>,
}

/// The choices of a lot that have surface, height and form in common.
pub struct Group {
    /// The surface; nothing off the cart.
    pub surface: Option<u32>,
    /// The form of the lot.
    pub form: u32,
    /// The number of its level.
    pub level: u32,
    /// The free height that is needed.
    pub tall: Length,
    /// What all of them take.
    pub takes: Range<u32>,
    /// The choices.
    pub choices: Range<u32>,
}

/// Everything that all lots can do.
#[derive(Default)]
pub struct Table {
    /// For each lot that has a choice, its number and its groups.
    pub lots: Vec<(u32, Range<u32>)>,
    /// All groups.
    pub groups: Vec<Group>,
    /// All choices.
    pub choices: Vec<Choice>,
    /// All shares that are taken.
    pub takes: Vec<Take>,
}

/// The homes of a lot under one division of the faces.
pub fn homes(site: &Site, zoning: &Zoning, lot: usize) -> Vec<Home> {
    match &site.lots[lot].fixed {
        Some((home, _)) => vec![*home],
        None => zoning.homes[lot].clone(),
    }
}

/// Writes the table.
pub struct Writer<'a> {
    site: &'a Site,
    zoning: &'a Zoning,
    before: Before,
    grain: Grain,
    /// What is shared.
    pub shares: Shares,
    /// What was written.
    pub table: Table,
}

impl<'a> Writer<'a> {
    /// An empty table.
    pub fn new(site: &'a Site, zoning: &'a Zoning) -> Writer<'a> {
        let before = Before::new(site, zoning);
        let grain = Grain::of(zoning.count());
        Writer { site, zoning, before, grain, shares: Shares::default(), table: Table::default() }
    }

    /// Writes what a lot can do; `allowance` is the value that may be left out. Says whether it can do anything.
    pub fn lot(&mut self, l: usize, allowance: i64) -> bool {
        let from = self.table.groups.len() as u32;
        let value = self.site.lots[l].off_cart.as_us();
        if value <= allowance {
            let part = value as f64 / allowance.max(1) as f64;
            let takes = vec![(Key::LeftOut, part)];
            self.group((None, 0, 0, Length::ZERO), takes, vec![(0.0, OFF as u8, Vec::new())]);
        }
        for home in homes(self.site, self.zoning, l) {
            self.home(l, &home);
        }
        let to = self.table.groups.len() as u32;
        self.table.lots.push((l as u32, from..to));
        from < to
    }

    fn home(&mut self, l: usize, home: &Home) {
        let levels = &self.site.surfaces[home.surface as usize].levels;
        for level in 0..levels.len().max(1) {
            self.level(l, home, level);
        }
    }

    /// A lot in a home with the surface at one of its levels.
    fn level(&mut self, l: usize, home: &Home, level: usize) {
        let one = Housed::new(self.site, self.grain, l, home, level);
        let choices = match (one.surface.kind, one.space_kind()) {
            (Kind::Deck, SpaceKind::Bay) if one.sideways() => self.on_deck(&one),
            (Kind::Wall, SpaceKind::Panel) => on_panel(&one),
            _ => anywhere(&one),
        };
        if !choices.is_empty() {
            let takes = one.takes();
            let at = (Some(home.surface), home.form, level as u32, one.tall);
            self.group(at, takes, choices);
        }
    }

    /// On a deck of a bay: with nothing before it as near to the way out as it goes, or with something before it, strip
    /// by strip.
    fn on_deck(&self, one: &Housed) -> Vec<Written> {
        let mut all = Vec::new();
        for way in 0..one.ways() {
            let fetched = one.site.lots[one.l].is_fetched(&one.site.items);
            let before =
                if fetched { self.before(one, way) } else { Some((Length::ZERO, Time::ZERO)) };
            for [least, most] in one.intervals(way) {
                if fetched
                    && let Some(cost) = one.cost(one.depth_spots(way, least), way, Time::ZERO)
                {
                    all.push((cost, one.face(way), one.free_takes(way, least)));
                }
                let Some((nearest, aside)) = before else { continue };
                for n in 0..self.grain.strips {
                    let [low, high] = [n, n + 1].map(|n| self.grain.cut(one.length(way), n));
                    let (low, high) = (low.max(least).max(nearest), high.min(most));
                    if low > high {
                        continue;
                    }
                    if let Some(cost) = one.cost(one.depth_spots(way, low), way, aside) {
                        all.push((cost, one.face(way), one.strip_takes(way, [high, low])));
                    }
                }
            }
        }
        all
    }

    /// How near to the edge of its deck a lot can be that has something before it, and the least time of moving that
    /// aside; nothing where nothing can be before it.
    fn before(&self, one: &Housed, way: usize) -> Option<(Length, Time)> {
        let (depth, aside) = self.before.least(self.site, one.l, one.surface.space, way)?;
        Some(((depth - one.setback(way)).max(Length::ZERO), aside))
    }

    fn group(
        &mut self,
        (surface, form, level, tall): (Option<u32>, u32, u32, Length),
        takes: Vec<(Key, f64)>,
        choices: Vec<Written>,
    ) {
        let takes = self.take(takes);
        let from = self.table.choices.len() as u32;
        for (cost, face, more) in choices {
            let takes = self.take(more);
            self.table.choices.push(Choice { cost, face, takes });
        }
        let choices = from..self.table.choices.len() as u32;
        self.table.groups.push(Group { surface, form, level, tall, takes, choices });
    }

    fn take(&mut self, takes: Vec<(Key, f64)>) -> Range<u32> {
        let from = self.table.takes.len() as u32;
        for (key, amount) in takes.into_iter().filter(|t| t.1 > 0.0) {
            let share = self.shares.number(key);
            self.table.takes.push(Take { share, amount });
        }
        from..self.table.takes.len() as u32
    }
}

/// A choice to be written: cost, face, what it takes.
type Written = (f64, u8, Vec<(Key, f64)>);

/// A lot in one of its homes.
struct Housed<'a> {
    site: &'a Site,
    grain: Grain,
    l: usize,
    home: &'a Home,
    surface: &'a Surface,
    /// The height of the surface, where it is a deck.
    level: Length,
    /// What it costs there beside being fetched.
    beside: Price,
    /// Its height with the free height that it needs.
    tall: Length,
}

impl<'a> Housed<'a> {
    fn new(site: &'a Site, grain: Grain, l: usize, home: &'a Home, level: usize) -> Housed<'a> {
        let surface = &site.surfaces[home.surface as usize];
        let own = COSTS.iter().filter(|card| card.scope == Scope::Place);
        let beside = own.map(|card| (card.least)(site, l, home)).sum();
        let over = if surface.needs_clearance { site.lots[l].clearance } else { Length::ZERO };
        let level = surface.levels.get(level).copied().unwrap_or(surface.free.min[2]);
        Housed { level, site, grain, l, home, surface, beside, tall: home.extents[2] + over }
    }
    fn s(&self) -> u32 {
        self.home.surface
    }
    fn space(&self) -> &'a crate::site::Space {
        &self.site.spaces[self.surface.space]
    }
    fn space_kind(&self) -> SpaceKind {
        self.space().kind
    }
    fn ways(&self) -> usize {
        self.space().ways.len()
    }
    fn face(&self, way: usize) -> u8 {
        self.space().ways[way].index() as u8
    }
    /// Whether it is taken out sideways, past what stands in front.
    fn sideways(&self) -> bool {
        self.space().ways[0].axis() < 2
    }
    fn axis(&self, way: usize) -> Axis {
        self.space().ways[way].axis()
    }
    /// How long the deck is along a way.
    fn length(&self, way: usize) -> Length {
        self.surface.free.extent(self.axis(way))
    }
    /// How far the deck's edge lies behind that of its bay, as seen from a way.
    fn setback(&self, way: usize) -> Length {
        let (free, volume, axis) = (&self.surface.free, &self.space().volume, self.axis(way));
        if self.space().ways[way].rising() {
            volume.max[axis] - free.max[axis]
        } else {
            free.min[axis] - volume.min[axis]
        }
    }

    /// What a fetch by a way costs at best in one of some boxes, with so much more time.
    fn cost(&self, spots: Vec<Box3>, way: usize, more: Time) -> Option<f64> {
        let each = |space| {
            let place = Place { home: *self.home, space };
            way_prices(self.site, self.l, &place).find(|(w, _)| *w == way).map(|(_, t)| t)
        };
        let least = spots.into_iter().filter_map(each).min()?;
        let uses = self.site.lots[self.l].uses;
        Some((uses.cost(least) + uses.cost(more) + self.beside).as_us() as f64)
    }

    /// The box so deep in from the deck's edge.
    fn depth_spots(&self, way: usize, deep: Length) -> Vec<Box3> {
        let (free, axis) = (&self.surface.free, self.axis(way));
        let mut min = free.min;
        min[axis] = if self.space().ways[way].rising() {
            free.max[axis] - deep - self.home.extents[axis]
        } else {
            free.min[axis] + deep
        };
        min[2] = self.level;
        vec![Box3::new(min, std::array::from_fn(|a| min[a] + self.home.extents[a]))]
    }

    /// From how deep to how deep the box can be without meeting a shelf board, as ranges from the deck's edge.
    fn intervals(&self, way: usize) -> Vec<[Length; 2]> {
        let (free, axis) = (&self.surface.free, self.axis(way));
        let deep = self.home.extents[axis];
        let mut all = vec![[free.min[axis], free.max[axis] - deep]];
        for board in self.boards_met() {
            all = all
                .into_iter()
                .flat_map(|[a, b]| {
                    [[a, b.min(board.min[axis] - deep)], [a.max(board.max[axis]), b]]
                })
                .filter(|[a, b]| a <= b)
                .collect();
            all.dedup();
        }
        let rising = self.space().ways[way].rising();
        let from_edge = |[a, b]: [Length; 2]| match rising {
            true => [free.max[axis] - deep - b, free.max[axis] - deep - a],
            false => [a - free.min[axis], b - free.min[axis]],
        };
        all.into_iter().map(from_edge).collect()
    }

    /// The shelf boards of its bay that it would meet wherever it stands along them.
    fn boards_met(&self) -> Vec<Box3> {
        let level = self.level;
        let boards = self.space().boards.iter().map(|&b| &self.site.boards[b]);
        let across = 1 - self.axis(0);
        boards
            .filter(|board| {
                board.rows.iter().all(|&top| {
                    let solid = board.at(top);
                    level < solid.max[2] && solid.min[2] < level + self.tall
                })
            })
            .map(|board| board.solid)
            .filter(|b| {
                let free = &self.surface.free;
                b.min[across] <= free.min[across] && b.max[across] >= free.max[across]
            })
            .collect()
    }

    /// What it takes wherever it is on the surface.
    fn takes(&self) -> Vec<(Key, f64)> {
        let mut all = Vec::new();
        let (free, extents) = (&self.surface.free, self.home.extents);
        let [p, q] = self.surface.free_axes();
        for &f in self.grain.folds {
            for &g in self.grain.folds {
                let part = f.of(extents[p], free.extent(p)) * g.of(self.along(q), free.extent(q));
                all.push((Key::Area(self.s(), f, g), part));
            }
        }
        if let Some(limit) = self.surface.limit {
            let limit = limit.as_ng().max(1) as f64;
            all.push((Key::Load(self.s()), self.site.lots[self.l].mass.as_ng() as f64 / limit));
        }
        if self.space_kind() == SpaceKind::Bay {
            self.volumes(&mut all);
        }
        all
    }

    /// How far it reaches along one of its surface's free axes.
    fn along(&self, axis: Axis) -> Length {
        self.home.extents[axis]
    }

    /// Its part of the bay's volume, less what the shelf boards take.
    fn volumes(&self, all: &mut Vec<(Key, f64)>) {
        let space = self.space();
        let whole = [0, 1, 2].map(|a| space.volume.extent(a));
        let mine = [self.home.extents[0], self.home.extents[1], self.tall.min(whole[2])];
        let few = self.grain.few;
        for &f in few {
            for &g in few {
                for &h in few {
                    let part = |e: [Length; 3]| {
                        f.of(e[0], whole[0]) * g.of(e[1], whole[1]) * h.of(e[2], whole[2])
                    };
                    let solid = |b: &usize| {
                        let solid = &self.site.boards[*b].solid;
                        part([0, 1, 2].map(|a| solid.extent(a).min(whole[a])))
                    };
                    let left = 1.0 - space.boards.iter().map(solid).sum::<f64>();
                    if left > 0.01 {
                        all.push((
                            Key::Volume(self.surface.space as u32, [f, g, h]),
                            part(mine) / left,
                        ));
                    }
                }
            }
        }
    }

    /// What it takes of the deck, strip by strip, where it and all between it and the edge take it.
    fn free_takes(&self, way: usize, deep: Length) -> Vec<(Key, f64)> {
        let end = deep + self.home.extents[self.axis(way)];
        let mut all = self.strips(way, [Length::ZERO, end]);
        let across = 1 - self.axis(way);
        let (wide, whole) = (self.home.extents[across], self.space().volume.extent(across));
        for s in self.levels_met() {
            for &f in self.grain.folds {
                all.push((Key::Front(s as u32, way as u8, f), f.of(wide, whole)));
            }
        }
        all
    }

    /// The decks of its bay at whose height it stands: its own, and those that it reaches over.
    fn levels_met(&self) -> Vec<usize> {
        let own = self.s() as usize;
        let fixed = |s: usize| match self.site.surfaces[s].levels.as_slice() {
            [level] => Some(*level),
            _ => None,
        };
        let Some(low) = fixed(own) else { return vec![own] };
        let decks = self.space().surfaces.iter().copied();
        let decks = decks.filter(|&s| self.site.surfaces[s].kind == Kind::Deck);
        let high = low + self.home.extents[2];
        decks
            .filter(|&s| s == own || fixed(s).is_some_and(|level| low <= level && level < high))
            .collect()
    }

    /// What it surely takes of the deck, strip by strip, somewhere between two depths: the greater is told first.
    fn strip_takes(&self, way: usize, [high, low]: [Length; 2]) -> Vec<(Key, f64)> {
        self.strips(way, [high, low + self.home.extents[self.axis(way)]])
    }

    fn strips(&self, way: usize, [from, to]: [Length; 2]) -> Vec<(Key, f64)> {
        let axis = self.axis(way);
        let across = 1 - axis;
        let (wide, whole) = (self.home.extents[across], self.surface.free.extent(across));
        // Strips are counted from one end, whichever way it is.
        let rising = self.space().ways[way].rising();
        let length = self.length(way);
        let mut all = Vec::new();
        for (n, part) in self.grain.overlaps(length, from, to) {
            let n = if rising { self.grain.strips - 1 - n } else { n };
            for &f in self.grain.folds {
                all.push((Key::Strip(self.s(), n as u8, f), f.of(wide, whole) * part));
            }
        }
        all
    }
}

/// On a panel: strip by strip from bottom to top, for the height decides how it is reached.
fn on_panel(one: &Housed) -> Vec<Written> {
    let (free, extents) = (&one.surface.free, one.home.extents);
    let across = 1 - one.axis(0);
    let high = free.extent(2);
    let mut all = Vec::new();
    for n in 0..one.grain.strips {
        let cut = |n| one.grain.cut(high, n);
        let (from, to) = (cut(n), cut(n + 1).min(high - extents[2]));
        if from > to {
            break;
        }
        let [low, top] = [from, to].map(|h| free.min[2] + h);
        let mut spots = vec![low, top];
        let body = &one.site.body;
        for edge in [body.knuckle, body.shoulder, body.overhead_grip] {
            spots.push((edge - extents[2].half()).clamp(low, top));
        }
        let at = |low: Length| {
            let mut min = free.min;
            min[2] = low;
            min[one.surface.rest.axis] = one.surface.touch(free, extents);
            Box3::new(min, std::array::from_fn(|a| min[a] + extents[a]))
        };
        let spots = spots.into_iter().map(at).collect();
        let Some(cost) = one.cost(spots, 0, Time::ZERO) else { continue };
        let mut takes = Vec::new();
        for (k, part) in one.grain.overlaps(high, to, from + extents[2]) {
            for &f in one.grain.folds {
                let wide = f.of(extents[across], free.extent(across));
                takes.push((Key::Strip(one.s(), k as u8, f), wide * part));
            }
        }
        all.push((cost, one.face(0), takes));
    }
    all
}

/// Wherever it is on the surface.
fn anywhere(one: &Housed) -> Vec<Written> {
    let ways = (0..one.ways()).filter_map(|way| {
        let cost = one.cost(best_spots(one.site, one.home), way, Time::ZERO)?;
        Some((cost, one.face(way), Vec::new()))
    });
    ways.collect()
}
