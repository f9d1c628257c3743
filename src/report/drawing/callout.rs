//! Names beside a drawing: columns at its left and right, with a leader from each name to its thing.

use super::area::Area;
use super::lettering::{LEADING, SMALL, broken};
use crate::report::sheet::{Anchor, Fill, Mark, Pen, Point, Text, Tie, Weight, font};

/// From the drawing's side of a column to its text.
const ELBOW: f64 = 3.0;
/// Between two names.
const GAP: f64 = 0.7;

/// A name that wants a place beside the drawing.
#[derive(Clone, Debug)]
pub struct Callout {
    /// Where its leader ends.
    pub dot: Point,
    /// The name.
    pub text: String,
    /// How heavy its letters are.
    pub weight: Weight,
    /// What its marks belong to.
    pub tie: Tie,
}

/// A column beside a drawing.
#[derive(Clone, Copy, Debug)]
pub struct Column {
    /// The paper it may take.
    pub area: Area,
    /// Whether it is to the left of the drawing.
    pub left: bool,
}

struct Set {
    callout: Callout,
    lines: Vec<String>,
    /// Its upper edge.
    top: f64,
}

impl Set {
    fn high(&self) -> f64 {
        let more = (self.lines.len() as f64 - 1.0) * LEADING * SMALL;
        more + SMALL * (font::ASCENT + font::DESCENT)
    }
    fn middle(&self) -> f64 {
        self.top + SMALL * (font::ASCENT - font::CAPITAL / 2.0)
    }
}

/// Writes names into the two columns; those that find no room are given back.
///
/// Leaders and names come apart, so that names can be drawn over all leaders.
pub fn written(
    callouts: Vec<Callout>,
    columns: [Column; 2],
) -> (Vec<Mark>, Vec<Mark>, Vec<Callout>) {
    let sides = divided(callouts, &columns);
    let (mut leaders, mut names, mut over) = (Vec::new(), Vec::new(), Vec::new());
    for (side, column) in sides.into_iter().zip(columns) {
        let (sets, rest) = settled(side, &column);
        over.extend(rest);
        for set in sets {
            leaders.push(leader(&set, &column));
            names.push(name(&set, &column));
        }
    }
    (leaders, names, over)
}

/// Each name to the side that its thing is nearer to, as far as that has room.
fn divided(mut callouts: Vec<Callout>, columns: &[Column; 2]) -> [Vec<Callout>; 2] {
    callouts.sort_by(|a, b| a.dot[0].total_cmp(&b.dot[0]).then(a.dot[1].total_cmp(&b.dot[1])));
    let middle = (columns[0].area.x1 + columns[1].area.x0) / 2.0;
    let nearer = callouts.partition_point(|c| c.dot[0] < middle);
    let high = |all: &[Callout], column: &Column| -> f64 {
        all.iter().map(|c| set(c.clone(), column).high() + GAP).sum()
    };
    let mut cut = nearer;
    while cut > 0 && high(&callouts[..cut], &columns[0]) > columns[0].area.high() {
        cut -= 1;
    }
    while cut < callouts.len()
        && high(&callouts[cut..], &columns[1]) > columns[1].area.high()
        && high(&callouts[..=cut], &columns[0]) <= columns[0].area.high()
    {
        cut += 1;
    }
    let right = callouts.split_off(cut);
    [callouts, right]
}

fn set(callout: Callout, column: &Column) -> Set {
    let most = column.area.wide() - ELBOW;
    let lines = broken(&callout.text, SMALL, callout.weight, most);
    Set { callout, lines, top: 0.0 }
}

/// Gives every name its height in the column, near its thing, in an order in which few leaders cross.
fn settled(side: Vec<Callout>, column: &Column) -> (Vec<Set>, Vec<Callout>) {
    let mut sets: Vec<Set> = side.into_iter().map(|c| set(c, column)).collect();
    sets.sort_by(|a, b| a.callout.dot[1].total_cmp(&b.callout.dot[1]));
    let mut over = Vec::new();
    while sets.iter().map(|s| s.high() + GAP).sum::<f64>() > column.area.high() + GAP {
        match sets.pop() {
            Some(last) => over.push(last.callout),
            None => break,
        }
    }
    stacked(&mut sets, column);
    for _ in 0..sets.len() {
        let mut swapped = false;
        for k in 1..sets.len() {
            if crossing(&sets[k - 1], &sets[k], column) {
                sets.swap(k - 1, k);
                stacked(&mut sets, column);
                swapped = true;
            }
        }
        if !swapped {
            break;
        }
    }
    (sets, over)
}

/// Places in their order: each as near to its thing as those before it and the column's end let it.
fn stacked(sets: &mut [Set], column: &Column) {
    let mut y = column.area.y0;
    for set in sets.iter_mut() {
        set.top = (set.callout.dot[1] - set.high() / 2.0).max(y);
        y = set.top + set.high() + GAP;
    }
    let mut end = column.area.y1;
    for set in sets.iter_mut().rev() {
        set.top = set.top.min(end - set.high());
        end = set.top - GAP;
    }
}

/// Where the leader bends.
fn elbow(set: &Set, column: &Column) -> Point {
    let x = if column.left { column.area.x1 } else { column.area.x0 };
    [x, set.middle()]
}

fn crossing(a: &Set, b: &Set, column: &Column) -> bool {
    let side = |p: Point, q: Point, r: Point| {
        (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])
    };
    let ([p, q], [r, s]) = ([a.callout.dot, elbow(a, column)], [b.callout.dot, elbow(b, column)]);
    side(p, q, r) * side(p, q, s) < 0.0 && side(r, s, p) * side(r, s, q) < 0.0
}

fn leader(set: &Set, column: &Column) -> Mark {
    let [x, y] = elbow(set, column);
    let text = if column.left { x - ELBOW + 0.8 } else { x + ELBOW - 0.8 };
    let points = vec![set.callout.dot, [x, y], [text, y]];
    let dot =
        Mark::Circle { centre: set.callout.dot, radius: 0.35, pen: Pen::None, fill: Fill::Ink };
    let tie = Tie { class: "leader", name: None, ..set.callout.tie.clone() };
    Mark::group(tie, vec![Mark::Polyline { points, pen: Pen::Faint }, dot])
}

fn name(set: &Set, column: &Column) -> Mark {
    let (x, anchor) = match column.left {
        true => (column.area.x1 - ELBOW, Anchor::End),
        false => (column.area.x0 + ELBOW, Anchor::Start),
    };
    let lines = set.lines.iter().enumerate().map(|(k, line)| {
        let y = set.top + SMALL * (font::ASCENT + k as f64 * LEADING);
        let weight = set.callout.weight;
        Text { weight, ..Text::new([x, y], SMALL, line.clone()).anchored(anchor) }.into()
    });
    Mark::group(set.callout.tie.clone(), lines.collect())
}
