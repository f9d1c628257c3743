//! One face to scale, as seen by someone standing before it.

use super::area::Area;
use super::border::{Draft, room};
use super::callout::{Callout, Column, written};
use super::dimension;
use super::hatch::Hatch;
use super::lettering::fitted;
use super::picture::{Picture, Thing, picture, plated};
use super::scale::Scale;
use crate::domain::Face;
use crate::report::figure::{capital, copies};
use crate::report::sheet::{Fill, Frame, Mark, Paper, Pen, Size, Tie, Weight};
use crate::tasks::outcome::{Elevation, Part, Placement, Plan, Rect};
use crate::units::Length;

/// Paper beside the drawing for names: the least, and what they get where there is more.
const NAMES: [f64; 2] = [38.0, 62.0];
/// Paper to the left of the drawing for its height.
const LEFT: f64 = 9.0;
/// Paper to the right of the drawing for heights over the floor.
const RIGHT: f64 = 17.0;
/// Paper under the drawing for distances and its width.
const UNDER: f64 = 24.0;

/// A face on a page of its own.
pub fn draft(plan: &Plan, face: &Elevation, size: Size) -> Draft {
    let paper = Paper::landscape(size);
    let room = room(paper);
    let all = extent(face);
    let real = [(all.u1 - all.u0).as_mm(), (all.v1 - all.v0).as_mm()];
    let left = [room.wide() - 2.0 * NAMES[0] - LEFT - RIGHT, room.high() - UNDER];
    let scale = Scale::fitting(plan.units, real, left);
    let (wide, high) = (real[0] * scale.share(), real[1] * scale.share());
    let x = room.x0 + (room.wide() - wide - RIGHT + LEFT) / 2.0;
    let y = room.y0 + (room.high() - high - UNDER) / 2.0;
    let seen = Area::new(x, y, x + wide, y + high);
    let share = scale.share();
    let origin = [x - all.u0.as_mm() * share, y + all.v1.as_mm() * share];
    let frame = Frame { origin, scale: share };
    let columns = columns(&room, &seen);
    let mut marks = view(plan, face, frame, Some(columns), &|_| Wear::default());
    marks.extend(dimensions(plan, face, &frame, &seen));
    Draft {
        id: face.face.name().to_owned(),
        title: format!("{} elevation", capital(face.face.name())).replace("Top elevation", "Top"),
        note: face.theme.clone(),
        paper,
        scale: Some(scale),
        marks,
    }
}

fn columns(room: &Area, seen: &Area) -> [Column; 2] {
    let left = seen.x0 - LEFT;
    let right = seen.x1 + RIGHT;
    let wide = |space: f64| space.min(NAMES[1]);
    [
        Column { area: Area::new(left - wide(left - room.x0), room.y0, left, room.y1), left: true },
        Column {
            area: Area::new(right, room.y0, right + wide(room.x1 - right), room.y1),
            left: false,
        },
    ]
}

/// The rectangle round everything on a face, the floor included.
pub fn extent(face: &Elevation) -> Rect {
    let parts = face.parts.iter().map(|(_, _, rect)| rect);
    let slots = face.slots.iter().map(|(_, rect)| rect);
    let floor = if face.face == Face::Top { face.outline.v0 } else { Length::ZERO };
    let begin = Rect { v0: floor, ..face.outline };
    parts.chain(slots).fold(begin, |all, rect| Rect {
        u0: all.u0.min(rect.u0),
        u1: all.u1.max(rect.u1),
        v0: all.v0.min(rect.v0),
        v1: all.v1.max(rect.v1),
    })
}

/// The face alone, with names inside and, where there are columns, beside.
pub fn view(
    plan: &Plan,
    face: &Elevation,
    frame: Frame,
    columns: Option<[Column; 2]>,
    wear: &dyn Fn(&Placement) -> Wear,
) -> Vec<Mark> {
    let mut marks = box_work(plan, face, &frame);
    let things = |on_panels: bool| -> Vec<Thing> {
        let of = |&(index, rect): &(usize, Rect)| {
            let placed = plan.placements.get(index)?;
            let area = Area::of(&rect, &frame);
            ((placed.surface == "panel") == on_panels)
                .then(|| thing(placed, index, area, wear(placed)))
        };
        face.slots.iter().filter_map(of).collect()
    };
    let mut all = picture(&[things(false), things(true)].concat());
    let boards = panels(face, &frame);
    let before = things(false).len();
    let front = all.things.split_off(before);
    marks.append(&mut all.things);
    marks.extend(boards);
    marks.extend(front);
    marks.append(&mut all.hidden);
    part_names(face, &frame, &mut all);
    if let Some(columns) = columns {
        let (leaders, names, over) = written(std::mem::take(&mut all.beside), columns);
        debug_assert!(over.is_empty(), "{} names find no room", over.len());
        marks.extend(leaders);
        marks.extend(names);
    }
    marks.append(&mut all.names);
    let tie = Tie::class("view").named(format!("{} face", face.face.name())).framed(frame);
    vec![Mark::group(tie, marks)]
}

/// How a thing is drawn.
#[derive(Clone, Copy, Debug)]
pub struct Wear {
    /// What is in it.
    pub fill: Fill,
    /// How it is hatched.
    pub hatch: Hatch,
    /// Whether its number stands for its name.
    pub short: bool,
}

impl Default for Wear {
    fn default() -> Wear {
        Wear { fill: Fill::Item, hatch: Hatch::None, short: false }
    }
}

/// A placement as it is seen.
pub fn thing(placed: &Placement, index: usize, area: Area, wear: Wear) -> Thing {
    let name = copies(&placed.item, placed.copy, placed.copies, placed.of);
    let told = format!("{} {name}: {}, {}", placed.slot, placed.bay, placed.surface);
    Thing {
        area,
        name: if wear.short { placed.slot.to_string() } else { format!("{} {name}", placed.slot) },
        tie: Tie::class("item").named(told).placed(index),
        fill: wear.fill,
        hatch: wear.hatch,
    }
}

/// The cart without its things and panels.
fn box_work(plan: &Plan, face: &Elevation, frame: &Frame) -> Vec<Mark> {
    let mut marks = Vec::new();
    if face.face != Face::Top {
        marks.extend(rolling(plan, face, frame));
    }
    let outline = Area::of(&face.outline, frame);
    marks.push(Mark::rect(outline.corner(), outline.size(), Pen::Thick, Fill::Board));
    for (part, name, rect) in &face.parts {
        let area = Area::of(rect, frame);
        let (pen, fill) = match part {
            Part::Bay | Part::Drawer => (Pen::Medium, Fill::Hollow),
            Part::Bench => (Pen::Dashed, Fill::Hollow),
            Part::Shelf => (Pen::Thin, Fill::Board),
            Part::Panel => continue,
        };
        let edge = Mark::rect(area.corner(), area.size(), pen, fill);
        marks.push(Mark::group(Tie::class("part").named(name.clone()), vec![edge]));
    }
    marks
}

/// Panels hang before the face, but one sees past them: their edges are dashed.
fn panels(face: &Elevation, frame: &Frame) -> Vec<Mark> {
    let panels = face.parts.iter().filter(|(part, ..)| *part == Part::Panel);
    panels
        .map(|(_, name, rect)| {
            let area = Area::of(rect, frame);
            let edge = Mark::rect(area.corner(), area.size(), Pen::Dashed, Fill::None);
            Mark::group(Tie::class("part").named(name.clone()), vec![edge])
        })
        .collect()
}

/// Casters and the floor under them.
fn rolling(plan: &Plan, face: &Elevation, frame: &Frame) -> Vec<Mark> {
    let under = face.outline.v0.as_mm();
    let wide = face.outline.u1;
    let mut marks = Vec::new();
    let mut seen: Vec<Length> = Vec::new();
    for caster in &plan.casters {
        let [x, y] = caster.at;
        let u = match face.face {
            Face::Front | Face::Top => x,
            Face::Back => wide - x,
            Face::Left => wide - y,
            Face::Right => y,
        };
        if seen.contains(&u) {
            continue;
        }
        seen.push(u);
        let radius = under * 0.36;
        let centre = frame.at(u.as_mm(), radius);
        let top = frame.at(u.as_mm() - radius * 0.9, under);
        let plate = [radius * 1.8 * frame.scale, under * 0.1 * frame.scale];
        marks.push(Mark::rect(top, plate, Pen::Thin, Fill::Ground));
        marks.push(Mark::line(frame.at(u.as_mm(), under * 0.9), centre, Pen::Medium));
        let (radius, pen) = (radius * frame.scale, Pen::Medium);
        marks.push(Mark::Circle { centre, radius, pen, fill: Fill::Ground });
    }
    let all = extent(face);
    let ends = [all.u0.as_mm() - 40.0, all.u1.as_mm() + 40.0].map(|u| frame.at(u, 0.0));
    marks.push(Mark::line(ends[0], ends[1], Pen::Thick));
    vec![Mark::group(Tie::class("casters"), marks)]
}

/// Names of openings, drawers and panels where they have room between their things, else beside.
fn part_names(face: &Elevation, frame: &Frame, all: &mut Picture) {
    let mut taken: Vec<Area> = face.slots.iter().map(|(_, r)| Area::of(r, frame)).collect();
    let boards = face.parts.iter().filter(|(part, ..)| *part == Part::Shelf);
    taken.extend(boards.map(|(_, _, rect)| Area::of(rect, frame)));
    for (part, name, rect) in &face.parts {
        if *part == Part::Shelf {
            continue;
        }
        let area = Area::of(rect, frame);
        let rooms = area.free(&taken);
        let tie = Tie::class("part-name");
        match fitted(name, Weight::Bold, &rooms) {
            Some(block) => {
                taken.push(block.plate);
                let fill = if *part == Part::Panel { Fill::None } else { Fill::Hollow };
                all.names.push(plated(&block, fill, tie));
            }
            None => {
                // The leader ends on the upper edge, where no thing covers it.
                let dot = [area.x0 + area.wide() * 0.5, area.y0];
                all.beside.push(Callout { dot, text: name.clone(), weight: Weight::Bold, tie });
            }
        }
    }
}

/// Width, heights over the floor, and distances from the left edge.
fn dimensions(plan: &Plan, face: &Elevation, frame: &Frame, seen: &Area) -> Vec<Mark> {
    let outline = Area::of(&face.outline, frame);
    let unit = plan.units;
    let told = |length: Length| dimension::told(length, unit);
    let right = edges(face, |rect| [rect.v0, rect.v1], [face.outline.v0, face.outline.v1]);
    let right: Vec<(Length, f64)> = right.into_iter().map(|v| (v, seen.x1)).collect();
    let (mut marks, _) = dimension::heights(frame, seen.x1 + 3.0, &right, unit);
    let below = edges(face, |rect| [rect.u0, rect.u1], [face.outline.u0, face.outline.u1]);
    let below: Vec<(Length, f64)> = below.into_iter().map(|u| (u, seen.y1)).collect();
    let (under, high) = dimension::distances(frame, seen.y1 + 3.0, &below, unit);
    marks.extend(under);
    let y = (seen.y1 + 3.0 + high + 4.5).min(seen.y1 + UNDER - 0.5);
    let wide = told(face.outline.u1 - face.outline.u0);
    marks.extend(dimension::level([outline.x0, y], outline.x1, &wide));
    let (foot, high) = match face.face {
        Face::Top => (outline.y1, told(face.outline.v1 - face.outline.v0)),
        _ => (frame.at(0.0, 0.0)[1], told(face.outline.v1)),
    };
    marks.extend(dimension::upright([seen.x0 - 4.0, foot], outline.y0, &high));
    vec![Mark::group(Tie::class("dimensions"), marks)]
}

/// Where the parts of a face begin and end one way, each length once.
fn edges(
    face: &Elevation,
    ends: impl Fn(&Rect) -> [Length; 2],
    outline: [Length; 2],
) -> Vec<Length> {
    let mut all: Vec<Length> = outline.to_vec();
    all.extend(face.parts.iter().flat_map(|(_, _, rect)| ends(rect)));
    all.sort_unstable();
    all.dedup();
    all
}
