//! What the casters carry: the cart from above, a bar for each caster, and the centre of mass.

use super::area::Area;
use super::border::{Draft, room};
use super::dimension::spread;
use super::lettering::{LEADING, NOTE, SMALL, broken};
use super::scale::Scale;
use crate::report::figure;
use crate::report::sheet::{Fill, Frame, Mark, Paper, Pen, Point, Size, Text, Tie, Weight};
use crate::tasks::outcome::{CasterLoad, Plan};
use crate::units::{Length, Mass};

/// Paper at the right for the table.
const TABLE: f64 = 84.0;
/// A bar that is full: the caster's limit.
const BAR: [f64; 2] = [5.0, 26.0];
/// Paper round the cart for bars and their words.
const ROUND: f64 = 30.0;

/// Casters, loads, centre of mass and tipping.
pub fn draft(plan: &Plan, size: Size) -> Option<Draft> {
    if plan.casters.is_empty() {
        return None;
    }
    let paper = Paper::landscape(size);
    let room = room(paper);
    let left = Area { x1: room.x1 - TABLE - 4.0, ..room };
    let cart = &plan.ground.cart;
    let real = [0, 1].map(|a| (cart.max[a] - cart.min[a]).as_mm());
    let space = [left.wide() - 2.0 * ROUND, left.high() - 2.0 * ROUND];
    let scale = Scale::fitting(plan.units, real, space);
    let share = scale.share();
    let [x, y] = left.middle();
    let origin = [x - real[0] / 2.0 * share, y + real[1] / 2.0 * share];
    let frame = Frame { origin, scale: share };
    let mut marks = from_above(plan, &frame, real);
    for (k, level) in levels(plan, &frame, real[0]).into_iter().enumerate() {
        marks.extend(bar(plan, k, level, &frame, real[0]));
    }
    marks.push(centre(plan, &frame));
    let tie = Tie::class("view").named("casters from above").framed(frame);
    let mut marks = vec![Mark::group(tie, marks)];
    marks.push(table(plan, &Area { x0: room.x1 - TABLE, ..room }));
    Some(Draft {
        id: "casters".to_owned(),
        title: "Casters and centre of mass".to_owned(),
        note: "from above, the front is below".to_owned(),
        paper,
        scale: Some(scale),
        marks,
    })
}

fn from_above(plan: &Plan, frame: &Frame, real: [f64; 2]) -> Vec<Mark> {
    let share = frame.scale;
    let corner = frame.at(0.0, real[1]);
    let mut marks =
        vec![Mark::rect(corner, [real[0] * share, real[1] * share], Pen::Thick, Fill::Board)];
    let points: Vec<Point> = plan.casters.iter().map(|c| at(c, frame)).collect();
    marks.push(Mark::Polygon { points: ringed(points), pen: Pen::Chain, fill: Fill::None });
    for caster in &plan.casters {
        let (centre, pen) = (at(caster, frame), Pen::Medium);
        marks.push(Mark::Circle { centre, radius: 2.0, pen, fill: Fill::Ground });
    }
    marks
}

fn at(caster: &CasterLoad, frame: &Frame) -> Point {
    frame.at(caster.at[0].as_mm(), caster.at[1].as_mm())
}

/// Points in their order round their middle, as a ring.
fn ringed(mut points: Vec<Point>) -> Vec<Point> {
    let many = points.len().max(1) as f64;
    let middle = [0, 1].map(|a| points.iter().map(|p| p[a]).sum::<f64>() / many);
    let turn = |p: &Point| libm::atan2(p[1] - middle[1], p[0] - middle[0]);
    points.sort_by(|a, b| turn(a).total_cmp(&turn(b)));
    points
}

fn is_left(caster: &CasterLoad, wide: f64) -> bool {
    caster.at[0].as_mm() < wide / 2.0
}

/// Where the middle of each caster's bar is: as near to its caster as the other bars on its side let it.
fn levels(plan: &Plan, frame: &Frame, wide: f64) -> Vec<f64> {
    let mut levels = vec![0.0; plan.casters.len()];
    for left in [true, false] {
        let side: Vec<usize> =
            (0..levels.len()).filter(|k| is_left(&plan.casters[*k], wide) == left).collect();
        let wanted: Vec<f64> = side.iter().map(|k| at(&plan.casters[*k], frame)[1]).collect();
        for (k, level) in side.into_iter().zip(spread(&wanted, BAR[1] + 4.0)) {
            levels[k] = level;
        }
    }
    levels
}

/// A bar outside the cart for a caster: how much of its limit it carries, and the most it ever carries.
fn bar(plan: &Plan, number: usize, level: f64, frame: &Frame, wide: f64) -> Vec<Mark> {
    let caster = &plan.casters[number];
    let [x, y] = at(caster, frame);
    let is_left = is_left(caster, wide);
    let left = frame.at(0.0, 0.0)[0];
    let right = frame.at(wide, 0.0)[0];
    let bar_x = if is_left { left - 5.0 - BAR[0] } else { right + 5.0 };
    let foot = level + BAR[1] / 2.0;
    let full = caster.limit.unwrap_or_else(|| heaviest(plan)).as_kg().max(1e-9);
    let part = |mass: Mass| (mass.as_kg() / full).clamp(0.0, 1.2);
    let mut marks = vec![Mark::rect([bar_x, foot - BAR[1]], BAR, Pen::Thin, Fill::Paper)];
    if let Some(load) = caster.load {
        let high = BAR[1] * part(load).min(1.0);
        marks.push(Mark::rect([bar_x, foot - high], [BAR[0], high], Pen::Thin, Fill::Tint(3)));
    }
    if let Some(worst) = caster.worst {
        let y = foot - BAR[1] * part(worst);
        let pen = if part(worst) > 1.0 { Pen::Alert } else { Pen::Thick };
        marks.push(Mark::line([bar_x - 1.0, y], [bar_x + BAR[0] + 1.0, y], pen));
    }
    let end = [if is_left { bar_x + BAR[0] } else { bar_x }, level];
    marks.push(Mark::line([x, y], end, Pen::Faint));
    let name = Text::new([x + 2.6, y - 1.4], SMALL, (number + 1).to_string()).bold();
    marks.push(name.into());
    let told = caster.load.map_or("tips".to_owned(), |m| figure::mass(m, plan.units));
    let wide = crate::report::sheet::width(&told, SMALL);
    let text_x = if is_left { bar_x - 1.5 - wide } else { bar_x + BAR[0] + 1.5 };
    marks.push(Mark::text([text_x, foot - 0.5], SMALL, told));
    let tie = Tie::class("caster").named(format!("caster {}", number + 1));
    vec![Mark::group(tie, marks)]
}

/// The heaviest load, where no limit is said.
fn heaviest(plan: &Plan) -> Mass {
    let all = plan.casters.iter().flat_map(|c| [c.load, c.worst]).flatten();
    all.max().unwrap_or(Mass::ZERO)
}

/// The centre of mass: a circle of black and white quarters.
fn centre(plan: &Plan, frame: &Frame) -> Mark {
    let [x, y] = [0, 1].map(|a: usize| plan.balance.centre[a].as_mm());
    let [x, y] = frame.at(x, y);
    let r = 2.2;
    let mut marks =
        vec![Mark::Circle { centre: [x, y], radius: r, pen: Pen::Medium, fill: Fill::Paper }];
    for (a, b) in [(-1.0, -1.0), (1.0, 1.0)] {
        // A quarter as a figure of straight edges: its arc in three pieces.
        let arc = [1.0, 0.866, 0.5, 0.0].map(|c: f64| (c, (1.0 - c * c).max(0.0).sqrt()));
        let mut points = vec![[x, y]];
        points.extend(arc.map(|(c, s)| [x + a * r * c, y + b * r * s]));
        marks.push(Mark::Polygon { points, pen: Pen::None, fill: Fill::Ink });
    }
    let far = r + 2.0;
    marks.push(Mark::line([x - far, y], [x + far, y], Pen::Thin));
    marks.push(Mark::line([x, y - far], [x, y + far], Pen::Thin));
    Mark::group(Tie::class("centre").named("centre of mass"), marks)
}

/// Loads, tipping and the centre in words.
fn table(plan: &Plan, area: &Area) -> Mark {
    let unit = plan.units;
    let mass = |m: Option<Mass>, none: &str| m.map_or(none.to_owned(), |m| figure::mass(m, unit));
    let mut rows: Vec<(bool, f64, String)> = Vec::new();
    let centre = plan.balance.centre.map(|l: Length| figure::length(l, unit));
    let total = figure::mass(plan.balance.total, unit);
    rows.push((true, 0.0, format!("Everything together: {total}")));
    let told = format!(
        "centre of mass {} from the left, {} from the front, {} over the floor",
        centre[0], centre[1], centre[2]
    );
    rows.push((false, 0.0, told));
    rows.push((true, 0.0, "Casters".to_owned()));
    for (k, c) in plan.casters.iter().enumerate() {
        let limit = mass(c.limit, "not said");
        rows.push((
            false,
            0.0,
            format!("{}  level {}, may carry {limit}", k + 1, mass(c.load, "tips")),
        ));
        let when =
            if c.worst_case.is_empty() { String::new() } else { format!(", {}", c.worst_case) };
        rows.push((false, 5.0, format!("at worst {}{when}", mass(c.worst, "none"))));
    }
    rows.push((true, 0.0, "Tipping".to_owned()));
    for tip in &plan.tips {
        let case =
            if tip.case == "closed" { "closed".to_owned() } else { format!("{} out", tip.case) };
        let told = format!(
            "{case}: over its {} at {:.1}°, at least {:.1}°",
            tip.side, tip.degrees, tip.limit
        );
        rows.push((false, 0.0, told));
    }
    rows.push((
        false,
        0.0,
        "Bars: load, closed and level; thick stroke: at worst; full: its limit.".to_owned(),
    ));
    let mut y = area.y0 + 4.0;
    let mut marks = Vec::new();
    for (bold, indent, text) in rows {
        let weight = if bold { Weight::Bold } else { Weight::Regular };
        y += if bold && y > area.y0 + 5.0 { 1.5 } else { 0.0 };
        for line in broken(&text, NOTE, weight, area.wide() - indent) {
            if y < area.y1 {
                marks.push(Text { weight, ..Text::new([area.x0 + indent, y], NOTE, line) }.into());
            }
            y += NOTE * LEADING;
        }
        y += 0.5;
    }
    Mark::group(Tie::class("table"), marks)
}
