//! The floor from above: where the work is, what stands about, and the ways to every opening.

use super::area::Area;
use super::border::{Draft, room};
use super::lettering::{LEADING, NOTE, SMALL, broken, extent};
use super::scale::Scale;
use crate::domain::Face;
use crate::report::figure;
use crate::report::sheet::{
    Anchor, Fill, Frame, Mark, Paper, Pen, Point, Size, Text, Tie, Weight, font,
};
use crate::tasks::outcome::{Plan, Rect2, StationWays, Walk};
use crate::units::{Length, show_seconds};

/// Paper at the right for the table of ways.
const TABLE: f64 = 76.0;
/// Round everything that is drawn, in mm of the floor.
const ROUND: f64 = 150.0;

/// One sheet for each station.
pub fn drafts(plan: &Plan, size: Size) -> Vec<Draft> {
    let stations = plan.ground.stations.iter().enumerate();
    stations.map(|(k, station)| draft(plan, station, k, size)).collect()
}

/// Ways that end in one place, with all that is fetched there.
struct Goal<'p> {
    walk: &'p Walk,
    bays: Vec<&'p str>,
}

fn draft(plan: &Plan, station: &StationWays, number: usize, size: Size) -> Draft {
    let paper = Paper::landscape(size);
    let room = room(paper);
    let goals = goals(station);
    let all = bounds(plan, station);
    let real = [all.x1 - all.x0, all.y1 - all.y0];
    let left = Area { x1: room.x1 - TABLE - 4.0, ..room };
    let scale = Scale::fitting(plan.units, real, left.size());
    let share = scale.share();
    let middle = left.middle();
    let origin =
        [middle[0] - (all.x0 + all.x1) / 2.0 * share, middle[1] + (all.y0 + all.y1) / 2.0 * share];
    let frame = Frame { origin, scale: share };
    let mut taken = Vec::new();
    let mut marks = floor(plan, station, &frame, &mut taken);
    marks.extend(ways(station, &goals, &frame, &mut taken));
    let tie = Tie::class("view").named(format!("floor plan, {}", station.name)).framed(frame);
    let mut marks = vec![Mark::group(tie, marks)];
    marks.push(table(plan, station, &goals, &Area { x0: room.x1 - TABLE, ..room }));
    let share = libm::round(station.share.as_ppm() as f64 / 1e4);
    Draft {
        id: if number == 0 { "plan".to_owned() } else { format!("plan-{}", number + 1) },
        title: "Plan view".to_owned(),
        note: format!("station {}, {share:.0} % of all fetches", station.name),
        paper,
        scale: Some(scale),
        marks,
    }
}

fn goals(station: &StationWays) -> Vec<Goal<'_>> {
    let mut goals: Vec<Goal> = Vec::new();
    for walk in station.ways.iter().filter(|w| !w.route.is_empty()) {
        let same = |g: &&mut Goal| {
            g.walk.route.last() == walk.route.last() && g.walk.rolled_out == walk.rolled_out
        };
        match goals.iter_mut().find(same) {
            Some(goal) => goal.bays.push(&walk.bay),
            None => goals.push(Goal { walk, bays: vec![&walk.bay] }),
        }
    }
    goals
}

/// Round everything, in mm of the floor: `x0` to `x1` to the right, `y0` to `y1` to the back.
fn bounds(plan: &Plan, station: &StationWays) -> Area {
    let ground = &plan.ground;
    let flat = |r: &Rect2| {
        Area::new(r.min[0].as_mm(), r.min[1].as_mm(), r.max[0].as_mm(), r.max[1].as_mm())
    };
    let spot = |p: &[Length; 2]| {
        let [x, y] = p.map(Length::as_mm);
        Area::new(x, y, x, y)
    };
    let solids = ground.hung.iter().chain(&ground.obstacles).chain(&ground.room).map(flat);
    let spots = station.ways.iter().flat_map(|w| &w.route).chain([&station.at]).map(spot);
    let all = solids.chain(spots).fold(flat(&ground.cart), |all, a| all.with(&a));
    all.inset(-ROUND)
}

fn on_paper(r: &Rect2, frame: &Frame) -> Area {
    let [x0, y0] = frame.at(r.min[0].as_mm(), r.max[1].as_mm());
    let [x1, y1] = frame.at(r.max[0].as_mm(), r.min[1].as_mm());
    Area::new(x0, y0, x1, y1)
}

fn floor(plan: &Plan, station: &StationWays, frame: &Frame, taken: &mut Vec<Area>) -> Vec<Mark> {
    let ground = &plan.ground;
    let mut marks = Vec::new();
    let mut solid = |class: &'static str, name: &str, r: &Rect2, pen, fill| {
        let area = on_paper(r, frame);
        let edge = Mark::rect(area.corner(), area.size(), pen, fill);
        marks.push(Mark::group(Tie::class(class).named(name), vec![edge]));
    };
    if let Some(room) = &ground.room {
        solid("wall", "walls of the room", room, Pen::Thick, Fill::None);
    }
    for obstacle in &ground.obstacles {
        solid("obstacle", "what stands about", obstacle, Pen::Medium, Fill::Ground);
    }
    for hung in &ground.hung {
        solid("hung", "where things hang", hung, Pen::Dashed, Fill::None);
    }
    solid("cart", "the cart", &ground.cart, Pen::Thick, Fill::Board);
    let cart = on_paper(&ground.cart, frame);
    for face in &station.walls {
        marks.push(wall(&cart, *face));
    }
    marks.extend(faces(&cart, taken));
    marks
}

/// A wall that a face stands at: a band beside it.
fn wall(cart: &Area, face: Face) -> Mark {
    let (near, far) = (1.0, 2.6);
    let band = match face {
        Face::Front => Area::new(cart.x0 - 3.0, cart.y1 + near, cart.x1 + 3.0, cart.y1 + far),
        Face::Back => Area::new(cart.x0 - 3.0, cart.y0 - far, cart.x1 + 3.0, cart.y0 - near),
        Face::Left => Area::new(cart.x0 - far, cart.y0 - 3.0, cart.x0 - near, cart.y1 + 3.0),
        Face::Right | Face::Top => {
            Area::new(cart.x1 + near, cart.y0 - 3.0, cart.x1 + far, cart.y1 + 3.0)
        }
    };
    let edge = Mark::rect(band.corner(), band.size(), Pen::Thin, Fill::Ink);
    Mark::group(Tie::class("wall").named(format!("wall at the {}", face.name())), vec![edge])
}

/// The names of the four faces, inside the cart.
fn faces(cart: &Area, taken: &mut Vec<Area>) -> Vec<Mark> {
    let [x, y] = cart.middle();
    let size = SMALL;
    let (down, up) = (font::ASCENT * size, font::DESCENT * size);
    let lettered = [
        Text::new([x, cart.y1 - up - 0.5], size, "front").anchored(Anchor::Middle),
        Text::new([x, cart.y0 + down + 0.5], size, "back").anchored(Anchor::Middle),
        Text::new([cart.x0 + down + 0.3, y], size, "left").anchored(Anchor::Middle).upward(),
        Text::new([cart.x1 - up - 0.5, y], size, "right").anchored(Anchor::Middle).upward(),
    ];
    let mut marks = Vec::new();
    for text in lettered {
        let area = extent(&text);
        // On a very small cart the names would not find room; the plan is read by its table then.
        if taken.iter().all(|t| !t.overlaps(&area)) {
            taken.push(area);
            marks.push(text.into());
        }
    }
    marks
}

fn ways(station: &StationWays, goals: &[Goal], frame: &Frame, taken: &mut Vec<Area>) -> Vec<Mark> {
    let at = |p: &[Length; 2]| frame.at(p[0].as_mm(), p[1].as_mm());
    let mut marks = Vec::new();
    for goal in goals {
        let points: Vec<Point> = goal.walk.route.iter().map(at).collect();
        let pen = if goal.walk.rolled_out { Pen::Chain } else { Pen::Way };
        let name = format!("way to {}", goal.bays.join(", "));
        marks
            .push(Mark::group(Tie::class("way").named(name), vec![Mark::Polyline { points, pen }]));
    }
    let spot =
        |centre: Point, radius: f64, fill| Mark::Circle { centre, radius, pen: Pen::Medium, fill };
    let ends: Vec<Point> = goals.iter().filter_map(|g| g.walk.route.last()).map(at).collect();
    for end in &ends {
        taken.push(Area::new(end[0], end[1], end[0], end[1]).inset(-0.9));
        marks.push(spot(*end, 0.8, Fill::Paper));
    }
    let work = at(&station.at);
    taken.push(Area::new(work[0], work[1], work[0], work[1]).inset(-1.4));
    marks.push(spot(work, 1.3, Fill::Ink));
    marks.extend(near(work, "work", Weight::Bold, taken));
    for (k, end) in ends.iter().enumerate() {
        marks.extend(near(*end, &(k + 1).to_string(), Weight::Regular, taken));
    }
    marks
}

/// A word beside a point, where nothing else is written; farther off it has a leader.
fn near(point: Point, text: &str, weight: Weight, taken: &mut Vec<Area>) -> Vec<Mark> {
    const ROUND: [[f64; 2]; 8] = [
        [1.0, -1.0],
        [1.0, 1.0],
        [-1.0, -1.0],
        [-1.0, 1.0],
        [1.0, 0.0],
        [-1.0, 0.0],
        [0.0, -1.0],
        [0.0, 1.0],
    ];
    let made = |far: f64, [right, down]: [f64; 2]| {
        let wide = font::width_in(text, SMALL, weight);
        let x = point[0] + right * far + (right - 1.0) / 2.0 * wide;
        let y = point[1] + down * far + font::CAPITAL * SMALL / 2.0;
        Text { weight, ..Text::new([x, y], SMALL, text) }
    };
    let far = [1.6, 2.6, 4.0, 6.0, 9.0, 13.0];
    let places = far.into_iter().flat_map(|far| ROUND.map(|way| (far, made(far, way))));
    for (far, text) in places {
        let area = extent(&text);
        if taken.iter().any(|t| t.overlaps(&area)) {
            continue;
        }
        taken.push(area);
        let plate = Mark::rect(area.corner(), area.size(), Pen::None, Fill::Paper);
        let mut marks = vec![plate, text.into()];
        if far > 2.6 {
            marks.insert(0, Mark::line(point, area.middle(), Pen::Faint));
        }
        return marks;
    }
    Vec::new()
}

/// Every way with its length and what it costs.
fn table(plan: &Plan, station: &StationWays, goals: &[Goal], area: &Area) -> Mark {
    let mut marks = Vec::new();
    let mut y = area.y0 + 4.0;
    let mut line = |text: &str, bold: bool, indent: f64, marks: &mut Vec<Mark>| {
        let weight = if bold { Weight::Bold } else { Weight::Regular };
        for part in broken(text, NOTE, weight, area.wide() - indent) {
            if y < area.y1 {
                let text = Text { weight, ..Text::new([area.x0 + indent, y], NOTE, part) };
                marks.push(text.into());
            }
            y += NOTE * LEADING;
        }
        y += 0.6;
    };
    let head = format!("{}: the work is at the {}", station.name, station.work.name());
    line(&head, true, 0.0, &mut marks);
    for (k, goal) in goals.iter().enumerate() {
        let far = figure::length(goal.walk.length, plan.units);
        let time = show_seconds(goal.walk.time.as_s());
        let face = goal.walk.face.name();
        let first = if goal.walk.rolled_out { ", rolled out first" } else { "" };
        line(&format!("{}  {face}: {}", k + 1, goal.bays.join(", ")), false, 0.0, &mut marks);
        line(&format!("{far} there, {time} a fetch{first}"), false, 5.0, &mut marks);
    }
    let here: Vec<&str> = station
        .ways
        .iter()
        .filter(|w| w.route.is_empty() && w.face != Face::Top)
        .map(|w| w.bay.as_str())
        .collect();
    if !here.is_empty() {
        line(&format!("No walk to: {}", here.join(", ")), false, 0.0, &mut marks);
    }
    if goals.iter().any(|g| g.walk.rolled_out) {
        line(
            "Ways in long and short dashes: after the cart is rolled out.",
            false,
            0.0,
            &mut marks,
        );
    }
    Mark::group(Tie::class("table"), marks)
}
