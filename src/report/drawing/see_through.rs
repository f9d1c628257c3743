//! The whole cart by parallel projection: its edges, and every thing in its place.
//!
//! Isometric: the three axes are drawn at 120 degrees to each other and at one scale along each.

use super::area::Area;
use super::border::{Draft, room};
use super::lettering::{LEADING, SMALL, broken, extent};
use super::scale::Scale;
use crate::domain::Face;
use crate::geometry::Box3;
use crate::report::shade::Shade;
use crate::report::sheet::{Anchor, Fill, Mark, Paper, Pen, Point, Size, Text, Tie, Weight, font};
use crate::tasks::outcome::Plan;

/// cos 30°: how far a millimetre to the right or back goes across.
const ACROSS: f64 = 0.866_025_403_784_438_6;
/// sin 30°: how far it goes up or down.
const ALONG: f64 = 0.5;
/// Paper under the picture for what its letters mean.
const UNDER: f64 = 18.0;

/// From which corner one looks.
#[derive(Clone, Copy, PartialEq, Eq)]
enum From {
    FrontLeft,
    BackRight,
}

/// The cart from two opposite corners.
pub fn drafts(plan: &Plan, size: Size) -> Vec<Draft> {
    [From::FrontLeft, From::BackRight].map(|from| draft(plan, from, size)).into()
}

/// A box to be drawn, in mm as the eye has it: to the right, away, up.
struct Body {
    min: [f64; 3],
    max: [f64; 3],
    /// The placement, where it is one.
    placed: Option<usize>,
}

fn draft(plan: &Plan, from: From, size: Size) -> Draft {
    let paper = Paper::upright(size);
    let room = room(paper);
    let bodies = sorted(bodies(plan, from));
    let shell = shell(plan, from);
    let flat =
        |s: f64, p: [f64; 3]| [(p[0] - p[1]) * ACROSS * s, -((p[0] + p[1]) * ALONG + p[2]) * s];
    let corners = bodies.iter().chain([&shell]).flat_map(corners);
    let all = corners.map(|p| flat(1.0, p)).fold(None, |all: Option<Area>, [x, y]| {
        let here = Area::new(x, y, x, y);
        Some(all.map_or(here, |a| a.with(&here)))
    });
    let all = all.unwrap_or(Area::new(0.0, 0.0, 1.0, 1.0));
    let scale = Scale::fitting(plan.units, all.size(), [room.wide(), room.high() - UNDER]);
    let s = scale.share();
    let middle = [room.middle()[0], (room.y0 + room.y1 - UNDER) / 2.0];
    let shift = [0, 1].map(|a| middle[a] - all.middle()[a] * s);
    let at = |p: [f64; 3]| {
        let [x, y] = flat(s, p);
        [x + shift[0], y + shift[1]]
    };
    let mut marks = vec![edges(&shell, &at, true)];
    marks.extend(bodies.iter().map(|body| solid(plan, body, &at)));
    marks.push(edges(&shell, &at, false));
    let (seen, unseen) = numbers(plan, &bodies, &at);
    marks.extend(seen);
    marks.extend(key(&unseen, &room));
    let (id, seen) = match from {
        From::FrontLeft => ("whole", "from the front left"),
        From::BackRight => ("whole-2", "from the back right"),
    };
    Draft {
        id: id.to_owned(),
        title: "The whole cart".to_owned(),
        note: format!("{seen}, scale along the three axes"),
        paper,
        scale: Some(scale),
        marks,
    }
}

/// What the letters mean, and what cannot be seen from here.
fn key(unseen: &[String], room: &Area) -> Vec<Mark> {
    let mut told =
        "F, K, L, R, T: number on the front, back, left or right face or on the top.".to_owned();
    if !unseen.is_empty() {
        told.push_str(&format!(" Not seen or too small from here: {}.", unseen.join(", ")));
    }
    let lines = broken(&told, SMALL, Weight::Regular, room.wide());
    let first = room.y1 - 1.0 - (lines.len() as f64 - 1.0) * SMALL * LEADING;
    let line = |(k, text): (usize, String)| {
        Mark::text([room.x0, first + k as f64 * SMALL * LEADING], SMALL, text)
    };
    lines.into_iter().enumerate().map(line).collect()
}

/// A box as the eye has it.
fn turned(space: &Box3, plan: &Plan, from: From) -> ([f64; 3], [f64; 3]) {
    let [min, max] = [space.min, space.max].map(|p| p.map(crate::units::Length::as_mm));
    let end = plan.ground.cart.max.map(crate::units::Length::as_mm);
    match from {
        // From the front left, x goes away to the right and y away to the left.
        From::FrontLeft => (min, max),
        From::BackRight => {
            ([end[0] - max[0], end[1] - max[1], min[2]], [end[0] - min[0], end[1] - min[1], max[2]])
        }
    }
}

fn bodies(plan: &Plan, from: From) -> Vec<Body> {
    let body = |space: &Box3, placed| {
        let (min, max) = turned(space, plan, from);
        Body { min, max, placed }
    };
    let boards = plan.solids.iter().map(|s| body(&s.space, None));
    let things = plan.placements.iter().enumerate().map(|(k, p)| body(&p.space, Some(k)));
    boards.chain(things).collect()
}

/// The cart's own outline.
fn shell(plan: &Plan, from: From) -> Body {
    let cart = &plan.ground.cart;
    let front = plan.elevations.iter().find(|e| e.face != Face::Top).map(|e| e.outline);
    let [v0, v1] = front.map_or([cart.min[0]; 2], |o| [o.v0, o.v1]);
    let space = Box3::new([cart.min[0], cart.min[1], v0], [cart.max[0], cart.max[1], v1]);
    let (min, max) = turned(&space, plan, from);
    Body { min, max, placed: None }
}

fn corners(body: &Body) -> Vec<[f64; 3]> {
    let end = |k: usize, a: usize| if k >> a & 1 == 0 { body.min[a] } else { body.max[a] };
    (0..8).map(|k| [0, 1, 2].map(|a| end(k, a))).collect()
}

/// The hindmost first. Boxes that share no volume are parted along some axis, and that tells which is before which.
fn sorted(bodies: Vec<Body>) -> Vec<Body> {
    const TOUCH: f64 = 1e-6;
    // Seen from low x, low y and from above: what begins where the other ends is behind it.
    let behind = |a: &Body, b: &Body| {
        a.min[0] >= b.max[0] - TOUCH || a.min[1] >= b.max[1] - TOUCH || a.max[2] <= b.min[2] + TOUCH
    };
    let mut rest: Vec<Body> = bodies;
    let mut out: Vec<Body> = Vec::new();
    while !rest.is_empty() {
        // One that nothing else is behind; in a ring, the farthest.
        let free = (0..rest.len()).find(|&k| {
            (0..rest.len())
                .all(|o| o == k || behind(&rest[k], &rest[o]) || !behind(&rest[o], &rest[k]))
        });
        let far = |b: &Body| b.min[0] + b.min[1] - b.max[2];
        let next = free.unwrap_or_else(|| {
            (0..rest.len()).max_by(|&a, &b| far(&rest[a]).total_cmp(&far(&rest[b]))).unwrap_or(0)
        });
        out.push(rest.remove(next));
    }
    out
}

/// The three sides that one sees: top, front and left as the eye has it.
fn sides(body: &Body) -> [[[f64; 3]; 4]; 3] {
    let ([x0, y0, z0], [x1, y1, z1]) = (body.min, body.max);
    [
        [[x0, y0, z1], [x1, y0, z1], [x1, y1, z1], [x0, y1, z1]],
        [[x0, y0, z0], [x1, y0, z0], [x1, y0, z1], [x0, y0, z1]],
        [[x0, y0, z0], [x0, y1, z0], [x0, y1, z1], [x0, y0, z1]],
    ]
}

/// A box as one sees it.
fn solid(plan: &Plan, body: &Body, at: &impl Fn([f64; 3]) -> Point) -> Mark {
    let shade = Shade::of(plan);
    let placed = body.placed.and_then(|k| plan.placements.get(k).map(|p| (k, p)));
    let fill = placed.map_or(Fill::Board, |(_, p)| Fill::Tint(shade.step(p.per_week)));
    let side = |corners: [[f64; 3]; 4]| Mark::Polygon {
        points: corners.iter().map(|p| at(*p)).collect(),
        pen: Pen::Thin,
        fill,
    };
    let tie = match placed {
        Some((k, p)) => Tie::class("item").named(format!("{} {}", p.slot, p.item)).placed(k),
        None => Tie::class("part"),
    };
    Mark::group(tie, sides(body).map(side).into())
}

/// The cart's edges: those behind everything, or those before it.
fn edges(shell: &Body, at: &impl Fn([f64; 3]) -> Point, hindmost: bool) -> Mark {
    let ([x0, y0, z0], [x1, y1, z1]) = (shell.min, shell.max);
    let pieces = match hindmost {
        true => vec![
            [[x1, y1, z0], [x1, y1, z1]],
            [[x1, y1, z0], [x0, y1, z0]],
            [[x1, y1, z0], [x1, y0, z0]],
        ],
        false => vec![
            [[x0, y0, z0], [x1, y0, z0]],
            [[x0, y0, z0], [x0, y1, z0]],
            [[x0, y0, z0], [x0, y0, z1]],
            [[x1, y0, z0], [x1, y0, z1]],
            [[x0, y1, z0], [x0, y1, z1]],
            [[x0, y0, z1], [x1, y0, z1]],
            [[x0, y0, z1], [x0, y1, z1]],
            [[x1, y0, z1], [x1, y1, z1]],
            [[x0, y1, z1], [x1, y1, z1]],
        ],
    };
    let pieces = pieces.into_iter().map(|[a, b]| [at(a), at(b)]).collect();
    let pen = if hindmost { Pen::Hidden } else { Pen::Medium };
    Mark::group(Tie::class("cart"), vec![Mark::Lines { pieces, pen }])
}

/// The letter of a face.
const fn letter(face: Face) -> char {
    match face {
        Face::Front => 'F',
        Face::Back => 'K',
        Face::Left => 'L',
        Face::Right => 'R',
        Face::Top => 'T',
    }
}

/// A letter for the face and the number on it, on a side that is seen there; and those of which none is.
fn numbers(
    plan: &Plan,
    bodies: &[Body],
    at: &impl Fn([f64; 3]) -> Point,
) -> (Vec<Mark>, Vec<String>) {
    let (mut marks, mut unseen) = (Vec::new(), Vec::new());
    for (n, body) in bodies.iter().enumerate() {
        let Some((k, placed)) = body.placed.and_then(|k| Some((k, plan.placements.get(k)?))) else {
            continue;
        };
        let told = format!("{}{}", letter(placed.face), placed.slot);
        let before = &bodies[n + 1..];
        let found = spots(body).into_iter().find_map(|(side, spot)| {
            let [x, y] = at(spot);
            let text = Text::new([x, y + font::CAPITAL * SMALL / 2.0], SMALL, told.clone());
            let text = text.anchored(Anchor::Middle);
            let area = extent(&text);
            let is_seen = |p: &Point| {
                within(&side.map(at), p)
                    && before.iter().all(|b| !sides(b).iter().any(|s| within(&s.map(at), p)))
            };
            points(&area).iter().all(is_seen).then_some((text, area))
        });
        match found {
            Some((text, area)) => {
                let plate = Mark::rect(area.corner(), area.size(), Pen::None, Fill::Paper);
                marks.push(Mark::group(Tie::class("name").placed(k), vec![plate, text.into()]));
            }
            None => unseen.push(told),
        }
    }
    (marks, unseen)
}

/// Places on each side that one sees, its middle first.
fn spots(body: &Body) -> Vec<([[f64; 3]; 4], [f64; 3])> {
    const SHARES: [f64; 5] = [0.5, 0.25, 0.75, 0.12, 0.88];
    let mut all = Vec::new();
    for side in sides(body) {
        let [a, b, _, d] = side;
        for one in SHARES {
            for other in SHARES {
                let along = |k: usize| a[k] + (b[k] - a[k]) * one + (d[k] - a[k]) * other;
                all.push((side, [along(0), along(1), along(2)]));
            }
        }
    }
    all
}

/// Corners, middles of the edges and the middle of a rectangle.
fn points(area: &Area) -> Vec<Point> {
    let [x, y] = area.middle();
    let across = [area.x0, x, area.x1];
    [area.y0, y, area.y1].into_iter().flat_map(|y| across.map(|x| [x, y])).collect()
}

/// Whether a point lies within a figure of four corners.
fn within(corners: &[Point; 4], [x, y]: &Point) -> bool {
    let turns = (0..4).map(|k| {
        let (a, b) = (corners[k], corners[(k + 1) % 4]);
        (b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0])
    });
    let turns: Vec<f64> = turns.collect();
    turns.iter().all(|t| *t > 0.0) || turns.iter().all(|t| *t < 0.0)
}
