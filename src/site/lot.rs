//! Lots: what takes one place each. A copy by itself, a pile of copies or a row of them.

use super::surface::{Kind, SpaceKind, Surface, depth_from};
use super::{Place, Site, corner};
use crate::domain::{Dims, Face, Hazard, Hazards, Item, Pose, Workspace};
use crate::geometry::{Axis, Box3};
use crate::physics::body::{Grip, Posture};
use crate::physics::motion::{self, Grasp, Move, Reach, Symmetry};
use crate::units::{Length, Mass, Price, Time, Uses};

/// How far a thing in the way is moved aside, and back: model's choice.
const ASIDE: Length = Length::mm(600);
/// A plain fetch reaches and moves so far: 16 in, the distance of the tables' own worked sums.
const PLAIN: Length = Length::nm(406_400_000);

/// A lot in one pose, turned or not, as a pile or as a row.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub struct Form {
    /// The pose.
    pub pose: Pose,
    /// Whether it is turned.
    pub turned: bool,
    /// Its size in that pose, turning done.
    pub dims: Dims,
}

/// A surface that could hold a lot in one of its forms, were it empty.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Home {
    /// The surface.
    pub surface: u32,
    /// The form, as an index into the lot's forms.
    pub form: u32,
    /// How far it reaches along the three axes there.
    pub extents: [Length; 3],
    /// The area that it takes of the surface, in square micrometres, rounded down.
    pub area: i64,
}

/// What takes one place: a copy, a pile or a row.
#[derive(Clone, Debug)]
pub struct Lot {
    /// The item, as an index.
    pub item: usize,
    /// The first copy, from 1.
    pub first: u32,
    /// How many copies.
    pub copies: u32,
    /// Mass of one copy.
    pub unit: Mass,
    /// Mass of all copies.
    pub mass: Mass,
    /// Fetches a week.
    pub uses: Uses,
    /// Volume as it is kept, in cubic millimetres.
    pub bulk: i64,
    /// What it is off the cart: the price of fetching it from elsewhere, and a fetch a year for each copy.
    pub off_cart: Price,
    /// What each hand that fetches it bears.
    pub in_hand: Mass,
    /// What it costs to move it out of the way and back.
    pub aside: Time,
    /// What looking for it, grasping, bringing and putting back cost at each use, wherever it lives.
    pub handling: Time,
    /// What is dangerous about it.
    pub hazards: Hazards,
    /// Whether an edge of it is uncovered.
    pub bare_edge: bool,
    /// Free height it needs above itself on a deck of a bay.
    pub clearance: Length,
    /// All its forms.
    pub forms: Vec<Form>,
    /// All surfaces and forms that could hold it.
    pub homes: Vec<Home>,
    /// Where it stays, where it is fixed.
    pub fixed: Option<(Home, Option<[Length; 2]>)>,
}

impl Lot {
    /// Whether fetching it means moving what stands in its way.
    pub fn is_fetched(&self, items: &[Item]) -> bool {
        items[self.item].fetched
    }
    /// Height of the hand that fetches it from a box there: mid-height, or the grip of the topmost copy.
    fn grip_height(&self, items: &[Item], pose: Pose, b: &Box3) -> Length {
        let item = &items[self.item];
        match item.grip {
            Some(grip) if pose == Pose::Stand => {
                let piled = self.copies > 1 && b.extent(2) == item.size.h * i64::from(self.copies);
                let bottom = if piled { b.max[2] - item.size.h } else { b.min[2] };
                bottom + grip.min(item.size.h)
            }
            _ => b.middle(2),
        }
    }
    /// Where the hand goes that fetches it from a place by one of its space's ways.
    #[inline]
    pub fn grip(&self, site: &Site, place: &Place, way: usize) -> Grip {
        let space = &site.spaces[site.surfaces[place.home.surface as usize].space];
        let pose = self.forms[place.home.form as usize].pose;
        let height = self.grip_height(&site.items, pose, &place.space);
        grip_at(site, space.kind, space.ways[way], &place.space, height)
    }
    /// The name of the lot for messages: the item, and the copy where there are several.
    pub fn name(&self, items: &[Item]) -> String {
        let item = &items[self.item];
        match (item.count, self.copies) {
            (1, _) => item.name.clone(),
            (n, c) if n == c => format!("{} ×{c}", item.name),
            (_, 1) => format!("{} {}", item.name, self.first),
            (_, c) => format!("{} {}–{}", item.name, self.first, self.first + c - 1),
        }
    }
}

/// Makes the lots of all items.
pub(super) fn furnish(site: &mut Site, workspace: &Workspace) {
    for item in 0..site.items.len() {
        let lots = if site.items[item].fixed {
            fixed_lots(site, workspace, item)
        } else {
            divide(site, workspace, item)
        };
        site.lots.extend(lots);
    }
    note_heavy(site);
}

fn note_heavy(site: &mut Site) {
    let heavy = super::stability::AWAY;
    site.statics.heavy =
        (0..site.lots.len() as u32).filter(|&l| site.lots[l as usize].mass > heavy).collect();
    // Nothing is farther out than the spaces are.
    let ends = |axis: usize| {
        let volumes = site.spaces.iter().map(|s| &s.volume);
        let low = volumes.clone().map(|v| v.min[axis].as_mm()).fold(0.0, f64::min);
        [low, volumes.map(|v| v.max[axis].as_mm()).fold(0.0, f64::max)]
    };
    let ([left, right], [front, back]) = (ends(0), ends(1));
    if let Some(supports) = &site.statics.supports {
        let mass = site.lots.iter().map(|l| l.mass.as_kg()).fold(0.0, f64::max);
        site.statics.heaviest = (mass, supports.shares([[left, front], [right, back]]));
    }
}

/// Splits the lots of one item into single copies.
pub(super) fn split(site: &mut Site, workspace: &Workspace, item: usize) {
    let mut lots = Vec::new();
    for lot in std::mem::take(&mut site.lots) {
        if lot.item == item && lot.copies > 1 && lot.fixed.is_none() {
            for copy in lot.first..lot.first + lot.copies {
                lots.push(make(site, workspace, item, copy, 1));
            }
        } else {
            lots.push(lot);
        }
    }
    site.lots = lots;
    note_heavy(site);
}

/// Divides the copies of all items anew: those groups, and the rest as it would be divided anyhow.
pub(super) fn regroup(site: &mut Site, workspace: &Workspace, groups: &[(usize, u32, u32)]) {
    site.lots.clear();
    for item in 0..site.items.len() {
        let mut told: Vec<(u32, u32)> =
            groups.iter().filter(|g| g.0 == item).map(|&(_, first, n)| (first, n)).collect();
        told.sort_unstable();
        let size = most_in_one(site, workspace, item);
        let count = site.items[item].count;
        let mut next = 1;
        let mut lots = Vec::new();
        for (first, n) in told.into_iter().chain([(count + 1, 0)]) {
            while next < first {
                let copies = size.min(first - next);
                lots.push(make(site, workspace, item, next, copies));
                next += copies;
            }
            if n > 0 {
                lots.push(make(site, workspace, item, first, n));
                next = first + n;
            }
        }
        site.lots.extend(lots);
    }
    note_heavy(site);
}

/// The most copies of an item that can find a place together on the empty cart.
fn most_in_one(site: &Site, workspace: &Workspace, item: usize) -> u32 {
    let it = &site.items[item];
    let most = if it.pitch.is_some() { it.count } else { it.count.min(it.stack) };
    (2..=most).rev().find(|&n| !make(site, workspace, item, 1, n).homes.is_empty()).unwrap_or(1)
}

/// The fewest lots that can each find a place on the empty cart: greatest piles or rows first.
fn divide(site: &Site, workspace: &Workspace, item: usize) -> Vec<Lot> {
    let it = &site.items[item];
    let size = most_in_one(site, workspace, item);
    let mut lots = Vec::new();
    let mut first = 1;
    while first <= it.count {
        let copies = size.min(it.count - first + 1);
        lots.push(make(site, workspace, item, first, copies));
        first += copies;
    }
    lots
}

/// The lots of a fixed item: one for each of its entries in the layout.
fn fixed_lots(site: &Site, workspace: &Workspace, item: usize) -> Vec<Lot> {
    let it = &site.items[item];
    let mut lots = Vec::new();
    let mut told = vec![false; it.count as usize];
    for entry in workspace.layout.iter().flat_map(|l| &l.entries) {
        let (first, copies) = (entry.copy, entry.copies.max(1));
        let known = entry.item == it.name && first >= 1 && first + copies - 1 <= it.count;
        if !known || (first..first + copies).any(|c| told[c as usize - 1]) {
            continue;
        }
        (first..first + copies).for_each(|c| told[c as usize - 1] = true);
        let mut lot = make(site, workspace, item, first, copies);
        lot.fixed = corner::home_of_entry(site, &lot, entry);
        lots.push(lot);
    }
    for copy in (1..=it.count).filter(|c| !told[*c as usize - 1]) {
        lots.push(make(site, workspace, item, copy, 1));
    }
    lots
}

pub(super) fn make(
    site: &Site,
    workspace: &Workspace,
    item: usize,
    first: u32,
    copies: u32,
) -> Lot {
    let it = &site.items[item];
    let n = i64::from(copies);
    let mut lot = Lot {
        item,
        first,
        copies,
        unit: it.weight,
        mass: it.weight * n,
        uses: uses(it, first, copies),
        bulk: bulk(it) * n,
        off_cart: off_cart(site.rates.elsewhere, it, copies),
        in_hand: in_hand(it),
        aside: aside(it) * n,
        handling: site.rates.look_for + handling(it),
        hazards: it.hazards,
        bare_edge: it.hazards.has(Hazard::Sharp) && !it.guarded,
        clearance: it.clearance.unwrap_or(workspace.shop.clearance),
        forms: forms(it, copies),
        homes: Vec::new(),
        fixed: None,
    };
    lot.homes = homes(site, &lot);
    lot
}

/// Volume of one copy in whole cubic millimetres.
pub(super) fn bulk(item: &Item) -> i64 {
    let Dims { w, d, h } = item.size;
    (w.as_mm() * d.as_mm() * h.as_mm()).min(1e15) as i64
}

/// Fetches of a lot: its share of the item's, or all of them where one fetch brings every copy.
fn uses(item: &Item, first: u32, copies: u32) -> Uses {
    let count = i64::from(item.count.max(1));
    if item.take_all {
        return item.uses;
    }
    // Whole billionths: the first copies take what the division leaves over, so that the shares add up.
    let (each, rest) = (item.uses.as_nano() / count, item.uses.as_nano() % count);
    let extra = (rest - i64::from(first) + 1).clamp(0, i64::from(copies));
    Uses::nano(each * i64::from(copies) + extra)
}

/// (Share of the uses + once a year) × `elsewhere`, for each copy.
fn off_cart(elsewhere: Time, item: &Item, copies: u32) -> Price {
    let share = item.uses.as_nano() / i64::from(item.count.max(1));
    Uses::nano(share + 1_000_000_000 / 52).cost(elsewhere) * i64::from(copies)
}

/// What each hand bears: the motion tables reckon by the hand.
fn in_hand(item: &Item) -> Mass {
    Mass::ng(item.weight.as_ng() / i64::from(item.hands.max(1)))
}

/// Moving one copy out of the way and back: a grasp, a move and a release, twice, at its whole mass.
fn aside(item: &Item) -> Time {
    (motion::grasp(Grasp::Easy) + motion::moved(Move::Near, ASIDE, item.weight) + motion::RELEASE)
        * 2
}

/// Taking it and putting it back: a reach, a grasp, a move and a release, twice, and once a loose fit into its place.
fn handling(item: &Item) -> Time {
    let once = motion::reach(Reach::Single, PLAIN)
        + motion::grasp(Grasp::Easy)
        + motion::moved(Move::Near, PLAIN, in_hand(item))
        + motion::RELEASE;
    once * 2 + motion::position(Symmetry::Any, false)
}

/// All sizes that so many copies may have in one place.
fn forms(item: &Item, copies: u32) -> Vec<Form> {
    let mut all = Vec::new();
    for pose in Pose::ALL {
        let Some(one) = item.pose(pose) else { continue };
        for dims in grouped(item, pose, one, copies) {
            for turned in [false, true] {
                if turned && !item.turn {
                    continue;
                }
                all.push(Form { pose, turned, dims });
            }
        }
    }
    all
}

fn grouped(item: &Item, pose: Pose, one: Dims, copies: u32) -> Vec<Dims> {
    if copies == 1 {
        return vec![one];
    }
    let n = i64::from(copies);
    let mut all = Vec::new();
    if copies <= item.stack && pose != Pose::Hang {
        all.push(Dims { h: one.h * n, ..one });
    }
    if let Some(pitch) = item.pitch {
        all.push(Dims { w: one.w + pitch * (n - 1), ..one });
    }
    all
}

/// A form's size on a surface, where turning changes anything there.
fn turned_dims(form: &Form, surface: &Surface) -> Option<Dims> {
    let Dims { w, d, h } = form.dims;
    if !form.turned {
        return Some(form.dims);
    }
    let dims = if surface.turns_flat() { Dims { w: d, d: w, h } } else { Dims { w: h, d, h: w } };
    (dims != form.dims).then_some(dims)
}

/// All surfaces and forms that could hold a lot, were the cart empty.
fn homes(site: &Site, lot: &Lot) -> Vec<Home> {
    let mut all = Vec::new();
    for s in 0..site.surfaces.len() {
        if !welcome(site, lot, s) {
            continue;
        }
        for f in 0..lot.forms.len() {
            if let Some(home) = home(site, lot, s, f)
                && fits_empty(site, lot, &home)
            {
                all.push(home);
            }
        }
    }
    all
}

/// A form of a lot on a surface, where pose and surface go together.
pub(super) fn home(site: &Site, lot: &Lot, s: usize, f: usize) -> Option<Home> {
    let (surface, form) = (&site.surfaces[s], &lot.forms[f]);
    if (form.pose == Pose::Hang) != (surface.kind == Kind::Wall) {
        return None;
    }
    let dims = turned_dims(form, surface)?;
    let extents = surface.extents(dims);
    let [p, q] = surface.free_axes();
    let area = (extents[p].as_nm() / 1000) * (extents[q].as_nm() / 1000);
    Some(Home { surface: s as u32, form: f as u32, extents, area })
}

/// Whether orders and limits let the lot be on that surface at all.
pub(super) fn welcome(site: &Site, lot: &Lot, s: usize) -> bool {
    let (surface, item) = (&site.surfaces[s], &site.items[lot.item]);
    let space = &site.spaces[surface.space];
    let ordered = item.place.is_empty() || item.place.iter().any(|h| answers(&h.parts, site, s));
    let asked = space.kind != SpaceKind::Bench
        || item.place.iter().chain(&item.prefer).any(|h| answers(&h.parts, site, s));
    let carried = surface.limit.is_none_or(|limit| lot.mass <= limit);
    ordered && asked && carried
}

/// Whether a surface is what the words of an order or a wish name.
pub fn answers(parts: &[String], site: &Site, s: usize) -> bool {
    let surface = &site.surfaces[s];
    let space = &site.spaces[surface.space];
    let face = |word: &str| space.ways.iter().any(|w| w.name() == word);
    let bay = |word: &str| space.name.eq_ignore_ascii_case(word);
    match parts {
        [one] => face(one) || bay(one),
        [one, two] => face(one) && bay(two),
        [one, two, three, ..] => face(one) && bay(two) && surface.name == *three,
        [] => false,
    }
}

/// Whether the lot fits in the free box and can be reached somewhere in it.
fn fits_empty(site: &Site, lot: &Lot, home: &Home) -> bool {
    let surface = &site.surfaces[home.surface as usize];
    let room = |a: Axis| if a == 2 { surface.tallest } else { surface.free.extent(a) };
    let fits = (0..3).all(|a| needed(lot, surface, home, a) <= room(a));
    fits && held(surface, lot, home) && reachable_somewhere(site, lot, home)
}

/// Whether screws or hooks hold a lot there by itself: on a wall its place does not matter.
pub(super) fn held(surface: &Surface, lot: &Lot, home: &Home) -> bool {
    let anywhere = at([Length::ZERO; 3], home.extents);
    surface.hold.as_ref().is_none_or(|h| h.used(lot.unit, lot.copies, &anywhere) <= 1.0)
}

/// What a lot needs along an axis there, free height included.
pub(super) fn needed(lot: &Lot, surface: &Surface, home: &Home, axis: usize) -> Length {
    let over = if axis == 2 && surface.needs_clearance { lot.clearance } else { Length::ZERO };
    home.extents[axis] + over
}

fn reachable_somewhere(site: &Site, lot: &Lot, home: &Home) -> bool {
    let space = &site.spaces[site.surfaces[home.surface as usize].space];
    best_spots(site, home).into_iter().any(|space_of_it| {
        let place = Place { home: *home, space: space_of_it };
        (0..space.ways.len())
            .any(|way| site.body.posture(&lot.grip(site, &place, way)) != Posture::Out)
    })
}

/// Where the hand goes that takes hold of a box at some height, one of its space's ways.
pub fn grip_at(site: &Site, kind: SpaceKind, way: Face, b: &Box3, height: Length) -> Grip {
    Grip { height, depth: reach_depth(site, kind, way, b), sill: b.min[2] }
}

/// How deep one must reach: nought before panels and into drawers, which come to meet the hand.
fn reach_depth(site: &Site, kind: SpaceKind, way: Face, b: &Box3) -> Length {
    match kind {
        SpaceKind::Bay => depth_from(way, site.size, b),
        SpaceKind::Drawer | SpaceKind::Panel => Length::ZERO,
        // One stands where the work is, at the front of the bench.
        SpaceKind::Bench => b.middle(1).max(Length::ZERO),
    }
}

/// The places on an empty surface where reaching is easiest: against each end of its free axes, and at the heights
/// where the person's zones end.
pub fn best_spots(site: &Site, home: &Home) -> Vec<Box3> {
    let surface = &site.surfaces[home.surface as usize];
    let free = &surface.free;
    let [p, q] = surface.free_axes();
    // A shelf that may be moved takes what stands on it along.
    let rests = match surface.kind {
        Kind::Wall => vec![surface.touch(free, home.extents)],
        Kind::Deck | Kind::Drawer => surface.levels.clone(),
    };
    let mut spots = Vec::new();
    for a in ends(site, free, home.extents, p) {
        for b in ends(site, free, home.extents, q) {
            for &rest in &rests {
                let mut min = [Length::ZERO; 3];
                min[surface.rest.axis] = rest;
                min[p] = a;
                min[q] = b;
                spots.push(at(min, home.extents));
            }
        }
    }
    spots
}

fn ends(site: &Site, free: &Box3, extents: [Length; 3], axis: usize) -> Vec<Length> {
    let (low, high) = (free.min[axis], free.max[axis] - extents[axis]);
    let mut all = vec![low, high];
    if axis == 2 {
        for edge in [site.body.knuckle, site.body.shoulder, site.body.overhead_grip] {
            all.push((edge - extents[2].half()).clamp(low, high.max(low)));
        }
    }
    all
}

/// The box of that size with its least corner there.
pub fn at(min: [Length; 3], extents: [Length; 3]) -> Box3 {
    Box3::new(min, [min[0] + extents[0], min[1] + extents[1], min[2] + extents[2]])
}
