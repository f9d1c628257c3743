//! All faces beside each other on one floor: how each thing is reached, and what each costs.

use super::area::Area;
use super::border::{Draft, room};
use super::elevation::{self, Wear, extent};
use super::flow::flowed;
use super::hatch::Hatch;
use super::lettering::{LEADING, NOTE, SMALL, shortened};
use super::scale::Scale;
use crate::domain::Face;
use crate::report::figure::{capital, copies, seconds};
use crate::report::shade::{STEPS, Shade};
use crate::report::sheet::{
    Anchor, Fill, Frame, Mark, Paper, Pen, Point, Size, Text, Tie, Weight, font,
};
use crate::tasks::outcome::{Band, Elevation, Person, Placement, Plan, Zone};
use crate::units::Length;

/// Paper beside the pictures for what their signs mean.
const LEGEND: f64 = 52.0;
/// Paper over a face for its name.
const HEAD: f64 = 5.0;
/// Breadth of a person with some room, in mm.
const BREADTH: f64 = 520.0;
/// Between two faces on the paper.
const BETWEEN: f64 = 4.0;
/// Paper under the floor for what the hatching means.
const UNDER: f64 = 9.0;
/// How many of the dearest are listed.
const DEAREST: usize = 12;

fn size_of(face: &Elevation) -> [f64; 2] {
    let all = extent(face);
    [(all.u1 - all.u0).as_mm(), (all.v1 - all.v0).as_mm()]
}

/// How each zone of reach is drawn.
const fn zone_wear(zone: Zone) -> (Fill, Hatch) {
    match zone {
        Zone::Easy => (Fill::Item, Hatch::None),
        Zone::Bend => (Fill::Tint(1), Hatch::Wide),
        Zone::Stretch => (Fill::Tint(2), Hatch::Falling),
        Zone::Kneel => (Fill::Tint(3), Hatch::Rising),
        Zone::Out => (Fill::Tint(4), Hatch::Crossed),
    }
}

/// The upright faces beside the person, each thing by how it is reached; as many on a page as find room.
pub fn reach(plan: &Plan, size: Size) -> Vec<Draft> {
    let faces: Vec<&Elevation> = plan.elevations.iter().filter(|e| e.face != Face::Top).collect();
    let person = &plan.person;
    if faces.is_empty() || person.crown == Length::ZERO {
        return Vec::new();
    }
    let paper = Paper::upright(size);
    let room = room(paper);
    let words = person
        .bands
        .iter()
        .map(|b| band_words(b, plan))
        .map(|[a, b]| font::width_in(&a, SMALL, Weight::Bold).max(font::width(&b, SMALL)));
    let words = words.fold(0.0, f64::max) + 1.0;
    let widest = faces.iter().map(|f| size_of(f)[0]).fold(0.0, f64::max) + BREADTH;
    let tallest = faces.iter().map(|f| size_of(f)[1]).fold(person.overhead.as_mm(), f64::max);
    let tall = tallest.max(person.crown.as_mm()) + 40.0;
    let space = [room.wide() - words - BETWEEN, room.high() - HEAD - UNDER];
    let scale = Scale::fitting(plan.units, [widest, tall], space);
    let (share, floor) = (scale.share(), room.y1 - UNDER);
    let begin = room.x0 + words + BREADTH * share + BETWEEN;
    let mut pages: Vec<Vec<(f64, &Elevation)>> = vec![Vec::new()];
    let mut x = begin;
    for face in faces {
        let wide = size_of(face)[0] * share;
        if x > begin && x + wide > room.x1 {
            pages.push(Vec::new());
            x = begin;
        }
        if let Some(page) = pages.last_mut() {
            page.push((x, face));
        }
        x += wide + BETWEEN;
    }
    let one = |(k, page): (usize, &Vec<(f64, &Elevation)>)| {
        let mut marks = bands(plan, share, floor, &room);
        let middle = room.x0 + words + BREADTH / 2.0 * share;
        let figure = Frame { origin: [middle, floor], scale: share };
        marks.push(figure_marks(person, &figure));
        marks.extend(page.iter().flat_map(|(x, face)| reached(plan, face, [*x, floor], share)));
        marks.push(Mark::line([room.x0, floor], [room.x1, floor], Pen::Thick));
        marks.push(zones(plan, &Area { y0: floor + 2.0, ..room }));
        let names: Vec<&str> = page.iter().map(|(_, f)| f.face.name()).collect();
        let tall = super::dimension::told(person.crown, plan.units);
        Draft {
            id: if k == 0 { "reach".to_owned() } else { format!("reach-{}", k + 1) },
            title: format!("Reach: {}", names.join(" and ")),
            note: format!("beside a person of {tall}, shoes on"),
            paper,
            scale: Some(scale),
            marks,
        }
    };
    pages.iter().enumerate().map(one).collect()
}

/// A face on the floor, its things by how they are reached.
fn reached(plan: &Plan, face: &Elevation, [x, floor]: Point, share: f64) -> Vec<Mark> {
    let all = extent(face);
    let frame = Frame { origin: [x - all.u0.as_mm() * share, floor], scale: share };
    let wear = |p: &Placement| {
        let (fill, hatch) = zone_wear(p.zone);
        Wear { fill, hatch, short: true }
    };
    let mut marks = elevation::view(plan, face, frame, None, &wear);
    marks.push(headed(face, [x, frame.at(0.0, all.v1.as_mm())[1]], size_of(face)[0] * share));
    marks
}

/// The name of a face over it.
fn headed(face: &Elevation, at: Point, wide: f64) -> Mark {
    let name = shortened(&capital(face.face.name()), NOTE, Weight::Bold, wide.max(12.0));
    Text::new([at[0], at[1] - 1.8], NOTE, name).bold().into()
}

/// Heights at which one is reached otherwise: lines across the page, with their names under them at the left.
fn bands(plan: &Plan, share: f64, floor: f64, room: &Area) -> Vec<Mark> {
    let mut marks = Vec::new();
    for band in &plan.person.bands {
        let Some(to) = band.to else { continue };
        let y = floor - to.as_mm() * share;
        marks.push(Mark::line([room.x0, y], [room.x1, y], Pen::Chain));
        let [name, end] = band_words(band, plan);
        let step = SMALL * LEADING;
        marks.push(Text::new([room.x0, y + step], SMALL, name).bold().into());
        if (to - band.from).as_mm() * share > 2.0 * step + 1.0 {
            marks.push(Mark::text([room.x0, y + 2.0 * step], SMALL, end));
        }
    }
    vec![Mark::group(Tie::class("bands"), marks)]
}

/// What a band is called, and where it ends.
fn band_words(band: &Band, plan: &Plan) -> [String; 2] {
    let end = band.to.map(|to| format!("to {}", super::dimension::told(to, plan.units)));
    [band.zone.name().to_owned(), end.unwrap_or_default()]
}

/// A person as a plain figure, from their own heights.
fn figure_marks(person: &Person, frame: &Frame) -> Mark {
    let mm = Length::as_mm;
    let (crown, shoulder) = (mm(person.crown), mm(person.shoulder));
    let (elbow, knuckle, knee) = (mm(person.elbow), mm(person.knuckle), mm(person.knee));
    let head = (crown - shoulder) * 0.42;
    let mut marks = Vec::new();
    let mut limb = |points: &[[f64; 2]]| {
        let points = points.iter().map(|[u, v]| frame.at(*u, *v)).collect();
        marks.push(Mark::Polygon { points, pen: Pen::Thin, fill: Fill::Body });
    };
    let hip = if person.seated { shoulder - 520.0 } else { knuckle + (elbow - knuckle) * 0.45 };
    let half = 185.0;
    if person.seated {
        limb(&[[-150.0, hip], [150.0, hip], [170.0, hip - 90.0], [-170.0, hip - 90.0]]);
        limb(&[[-160.0, hip - 90.0], [160.0, hip - 90.0], [140.0, 60.0], [-140.0, 60.0]]);
    } else {
        for side in [-1.0, 1.0] {
            limb(&[
                [side * 10.0, hip],
                [side * 150.0, hip],
                [side * 120.0, knee],
                [side * 40.0, knee],
            ]);
            limb(&[
                [side * 40.0, knee],
                [side * 120.0, knee],
                [side * 105.0, 60.0],
                [side * 55.0, 60.0],
            ]);
            limb(&[
                [side * 50.0, 60.0],
                [side * 110.0, 60.0],
                [side * 150.0, 0.0],
                [side * 50.0, 0.0],
            ]);
        }
    }
    limb(&[[-half, shoulder], [half, shoulder], [155.0, hip - 20.0], [-155.0, hip - 20.0]]);
    // One arm hangs, the other reaches up.
    limb(&[
        [-half, shoulder],
        [-half - 65.0, shoulder - 20.0],
        [-half - 60.0, elbow],
        [-half - 10.0, elbow],
    ]);
    limb(&[
        [-half - 60.0, elbow],
        [-half - 10.0, elbow],
        [-half - 15.0, knuckle],
        [-half - 50.0, knuckle],
    ]);
    let up = mm(person.overhead);
    if up > crown {
        limb(&[
            [half, shoulder],
            [half + 65.0, shoulder - 20.0],
            [half + 50.0, up],
            [half + 10.0, up],
        ]);
    } else {
        limb(&[
            [half, shoulder],
            [half + 60.0, shoulder],
            [half + 120.0, elbow],
            [half + 60.0, elbow],
        ]);
    }
    let neck = frame.at(0.0, crown - head);
    marks.push(Mark::Circle {
        centre: neck,
        radius: head * frame.scale,
        pen: Pen::Thin,
        fill: Fill::Body,
    });
    Mark::group(Tie::class("person").named("the person to scale"), marks)
}

/// What the hatching of zones means, in a row.
fn zones(plan: &Plan, area: &Area) -> Mark {
    let all = [Zone::Easy, Zone::Bend, Zone::Kneel, Zone::Stretch, Zone::Out];
    let step = area.wide() / all.len() as f64;
    let mut marks = Vec::new();
    for (k, zone) in all.into_iter().enumerate() {
        let (fill, hatch) = zone_wear(zone);
        let left = area.x0 + k as f64 * step;
        let sample = Area::new(left, area.y0, left + 8.0, area.y0 + 4.5);
        marks.push(Mark::rect(sample.corner(), sample.size(), Pen::Thin, fill));
        marks.extend(hatch.mark(&sample));
        let count = plan.placements.iter().filter(|p| p.zone == zone).count();
        let told = format!("{}: {count}", zone.name());
        marks.push(Mark::text([sample.x1 + 1.5, sample.y1 - 1.3], NOTE, told));
    }
    Mark::group(Tie::class("legend"), marks)
}

fn legend(head: &str, rows: Vec<(Fill, Hatch, String)>, area: &Area) -> Vec<Mark> {
    let mut marks = vec![Text::new([area.x0, area.y0 + 4.0], NOTE, head).bold().into()];
    for (k, (fill, hatch, text)) in rows.into_iter().enumerate() {
        let y = area.y0 + 7.0 + 6.5 * k as f64;
        let sample = Area::new(area.x0, y, area.x0 + 9.0, y + 5.0);
        marks.push(Mark::rect(sample.corner(), sample.size(), Pen::Thin, fill));
        marks.extend(hatch.mark(&sample));
        marks.push(Mark::text([sample.x1 + 2.0, y + 3.4], NOTE, text));
    }
    marks
}

/// All faces, each thing by what its place costs a week.
pub fn costs(plan: &Plan, size: Size) -> Option<Draft> {
    if plan.placements.is_empty() {
        return None;
    }
    let paper = Paper::landscape(size);
    let room = room(paper);
    let left = Area { x1: room.x1 - LEGEND - 3.0, ..room };
    let sizes: Vec<[f64; 2]> = plan.elevations.iter().map(size_of).collect();
    let mut scale = Scale::full();
    let cells = |scale: Scale| -> Vec<[f64; 2]> {
        sizes.iter().map(|[w, h]| [w * scale.share(), h * scale.share() + HEAD]).collect()
    };
    let fits = |scale: Scale| {
        let cells = cells(scale);
        let placed = flowed(&cells, &left);
        placed
            .iter()
            .zip(&cells)
            .all(|((page, at), [w, h])| *page == 0 && at[0] + w <= left.x1 && at[1] + h <= left.y1)
    };
    while !fits(scale) && scale != scale.smaller(plan.units) {
        scale = scale.smaller(plan.units);
    }
    let shade = Shade::of(plan);
    let wear = |p: &Placement| {
        let step = shade.step(p.per_week);
        Wear { fill: Fill::Tint(step), hatch: Hatch::of_step(step), short: true }
    };
    let mut marks = Vec::new();
    for ((_, [x, y]), face) in flowed(&cells(scale), &left).into_iter().zip(&plan.elevations) {
        let all = extent(face);
        let share = scale.share();
        let origin = [x - all.u0.as_mm() * share, y + HEAD + all.v1.as_mm() * share];
        let frame = Frame { origin, scale: share };
        marks.push(headed(face, [x, y + HEAD], size_of(face)[0] * share));
        marks.extend(elevation::view(plan, face, frame, None, &wear));
    }
    let beside = Area { x0: room.x1 - LEGEND, ..room };
    let rows = (0..STEPS).map(|step| {
        let most = format!("up to {} s a week", seconds(shade.most(step)));
        (Fill::Tint(step), Hatch::of_step(step), most)
    });
    marks.extend(legend("Seconds a week", rows.collect(), &beside));
    marks.push(dearest(plan, &Area { y0: beside.y0 + 46.0, ..beside }));
    Some(Draft {
        id: "costs".to_owned(),
        title: "Seconds a week".to_owned(),
        note: "way, reach and what must be moved first".to_owned(),
        paper,
        scale: Some(scale),
        marks,
    })
}

/// The dearest places by name.
fn dearest(plan: &Plan, area: &Area) -> Mark {
    let mut all: Vec<&Placement> = plan.placements.iter().collect();
    all.sort_by_key(|p| std::cmp::Reverse(p.per_week));
    let mut marks = vec![Text::new([area.x0, area.y0 + 4.0], NOTE, "Dearest").bold().into()];
    for (k, placed) in all.into_iter().take(DEAREST).enumerate() {
        let y = area.y0 + 8.5 + 2.0 * NOTE * LEADING * k as f64;
        if y + NOTE * LEADING > area.y1 {
            break;
        }
        let name = copies(&placed.item, placed.copy, placed.copies, placed.of);
        let name = format!("{} {} {name}", placed.face.name(), placed.slot);
        let name = shortened(&name, SMALL, Weight::Regular, area.wide() - 12.0);
        marks.push(Mark::text([area.x0, y], SMALL, name));
        let cost = Text::new([area.x1, y], SMALL, seconds(placed.per_week));
        marks.push(cost.anchored(Anchor::End).into());
    }
    Mark::group(Tie::class("table"), marks)
}
