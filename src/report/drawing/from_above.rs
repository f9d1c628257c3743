//! Every shelf, floor and drawer from above: what stands behind what.

use super::area::Area;
use super::border::{Draft, room};
use super::callout::{Column, written};
use super::elevation::{self, Wear};
use super::flow::flowed;
use super::lettering::{NOTE, shortened};
use super::picture::{Thing, picture};
use super::scale::Scale;
use crate::domain::Face;
use crate::geometry::Box3;
use crate::report::sheet::{Fill, Frame, Mark, Paper, Pen, Size, Text, Tie, Weight};
use crate::tasks::outcome::{Kind, Plan, SurfaceLoad};
use crate::units::Length;

/// Paper beside a picture for names that find no room in it.
const NAMES: f64 = 36.0;
/// Paper over a picture for its title.
const HEAD: f64 = 5.5;
/// Between two names beside a picture, at least, by which its height is reckoned.
const ROW: f64 = 3.4;
/// The most pages that a larger scale is worth.
const PAGES: usize = 3;

/// A surface from above, as one stands before its face: the near edge is below.
struct View<'p> {
    surface: &'p SurfaceLoad,
    /// Its things, with how far from the viewer's left and from the face they begin and end, in mm.
    things: Vec<(usize, [f64; 4])>,
    /// The same of the surface itself.
    whole: [f64; 4],
}

/// All surfaces with things on them.
pub fn drafts(plan: &Plan, size: Size) -> Vec<Draft> {
    let views = views(plan);
    if views.is_empty() {
        return Vec::new();
    }
    let paper = Paper::landscape(size);
    let room = room(paper);
    let widest = views.iter().map(|v| v.whole[1] - v.whole[0]).fold(0.0, f64::max);
    let deepest = views.iter().map(|v| v.whole[3] - v.whole[2]).fold(0.0, f64::max);
    let begin = [room.wide() - NAMES, room.high() - HEAD];
    let mut scale = Scale::fitting(plan.units, [widest, deepest], begin);
    let mut cells = cells(plan, &views, scale);
    let mut placed = flowed(&cells, &room);
    while placed.last().is_some_and(|(page, _)| *page >= PAGES) {
        scale = scale.smaller(plan.units);
        cells = self::cells(plan, &views, scale);
        placed = flowed(&cells, &room);
    }
    let pages = placed.last().map_or(0, |(page, _)| page + 1);
    let one = |page: usize| {
        let here = placed.iter().zip(&views).zip(&cells).filter(|((at, _), _)| at.0 == page);
        let marks = here.flat_map(|((at, view), cell)| drawn(plan, view, scale, at.1, *cell));
        Draft {
            id: if page == 0 { "above".to_owned() } else { format!("above-{}", page + 1) },
            title: "Places from above".to_owned(),
            note: "the near edge is below".to_owned(),
            paper,
            scale: Some(scale),
            marks: marks.collect(),
        }
    };
    (0..pages).map(one).collect()
}

fn views(plan: &Plan) -> Vec<View<'_>> {
    let decks = plan.surfaces.iter().filter(|s| s.kind != Kind::Wall && s.surface != "bench");
    decks
        .filter_map(|surface| {
            let same = |p: &&crate::tasks::outcome::Placement| {
                (p.face, &p.bay, &p.surface) == (surface.face, &surface.bay, &surface.surface)
            };
            let things: Vec<(usize, [f64; 4])> = plan
                .placements
                .iter()
                .enumerate()
                .filter(|(_, p)| same(p))
                .map(|(k, p)| (k, from_above(plan, surface.face, &p.space)))
                .collect();
            let whole = from_above(plan, surface.face, &surface.space);
            (!things.is_empty()).then_some(View { surface, things, whole })
        })
        .collect()
}

/// A box as seen from above by someone before a face: from the left, and from the face, in mm.
fn from_above(plan: &Plan, face: Face, space: &Box3) -> [f64; 4] {
    let cart = &plan.ground.cart;
    let (wide, deep) = (cart.max[0] - cart.min[0], cart.max[1] - cart.min[1]);
    let (x, y) = ([space.min[0], space.max[0]], [space.min[1], space.max[1]]);
    let back = |end: Length, [from, to]: [Length; 2]| [end - to, end - from];
    let (u, d) = match face {
        Face::Front | Face::Top => (x, y),
        Face::Back => (back(wide, x), back(deep, y)),
        Face::Left => (back(deep, y), x),
        Face::Right => (y, back(wide, x)),
    };
    [u[0], u[1], d[0], d[1]].map(Length::as_mm)
}

fn things(plan: &Plan, view: &View, frame: &Frame) -> Vec<Thing> {
    let mut order: Vec<&(usize, [f64; 4])> = view.things.iter().collect();
    // What lies over another in a drawer is drawn later.
    order.sort_by_key(|(k, _)| plan.placements.get(*k).map(|p| p.space.min[2]));
    let one = |&&(k, [u0, u1, d0, d1]): &&(usize, [f64; 4])| {
        let placed = plan.placements.get(k)?;
        let ([x0, y0], [x1, y1]) = (frame.at(u0, d1), frame.at(u1, d0));
        Some(elevation::thing(placed, k, Area::new(x0, y0, x1, y1), Wear::default()))
    };
    order.iter().filter_map(one).collect()
}

fn frame(view: &View, scale: Scale, at: [f64; 2]) -> Frame {
    let share = scale.share();
    let origin = [at[0] - view.whole[0] * share, at[1] + HEAD + view.whole[3] * share];
    Frame { origin, scale: share }
}

/// How much paper each picture takes.
fn cells(plan: &Plan, views: &[View], scale: Scale) -> Vec<[f64; 2]> {
    let one = |view: &View| {
        let [u0, u1, d0, d1] = view.whole.map(|x| x * scale.share());
        let beside = picture(&things(plan, view, &frame(view, scale, [0.0, 0.0]))).beside.len();
        let names = if beside == 0 { 0.0 } else { NAMES };
        [(u1 - u0 + names).max(30.0), HEAD + (d1 - d0).max(beside as f64 * ROW)]
    };
    views.iter().map(one).collect()
}

fn drawn(
    plan: &Plan,
    view: &View,
    scale: Scale,
    at: [f64; 2],
    [wide, high]: [f64; 2],
) -> Vec<Mark> {
    let frame = frame(view, scale, at);
    let [u0, u1, d0, d1] = view.whole;
    let ([x0, y0], [x1, y1]) = (frame.at(u0, d1), frame.at(u1, d0));
    let surface = view.surface;
    let title = format!("{}, {}: {}", surface.face.name(), surface.bay, surface.surface);
    let title = shortened(&title, NOTE, Weight::Bold, wide);
    let mut marks = vec![Text::new([at[0], at[1] + 2.9], NOTE, title).bold().into()];
    marks.push(Mark::rect([x0, y0], [x1 - x0, y1 - y0], Pen::Medium, Fill::Hollow));
    let mut all = picture(&things(plan, view, &frame));
    marks.append(&mut all.things);
    marks.append(&mut all.hidden);
    let beside = Area::new(x1 + 1.5, at[1] + HEAD - 0.5, at[0] + wide, at[1] + high + 0.5);
    let nothing = Column { area: Area::new(x0, y0, x0, y0), left: true };
    let column = Column { area: beside, left: false };
    let (leaders, names, _) = written(std::mem::take(&mut all.beside), [nothing, column]);
    marks.extend(leaders);
    marks.extend(names);
    marks.append(&mut all.names);
    // A thick near edge shows where one stands.
    marks.push(Mark::line([x0, y1], [x1, y1], Pen::Thick));
    let told = format!("{} {} {} from above", surface.face.name(), surface.bay, surface.surface);
    vec![Mark::group(Tie::class("view").named(told).framed(frame), marks)]
}
