//! The document of `replan`: a plan with the way that leads to it.

use super::part::{CopyRow, Corners, text};
use super::plan::PlanDoc;
use crate::tasks::replan::{Leaving, Point, Replan, Spot, Step as Move};
use crate::units::Price;
use serde::Serialize;

/// A replan as one document, ending with a line break.
pub fn replan(replan: &Replan) -> String {
    text(&ReplanDoc::of(replan))
}

/// A plan with the way that leads to it.
#[derive(Serialize)]
struct ReplanDoc<'a> {
    #[serde(flatten)]
    plan: PlanDoc<'a>,
    curve: Vec<PointRow>,
    knee: usize,
    chosen: usize,
    steps: Vec<MoveRow<'a>>,
    would_have_to_leave: Vec<LeavingRow<'a>>,
    findings: Vec<EntryRow<'a>>,
}

impl<'a> ReplanDoc<'a> {
    fn of(replan: &'a Replan) -> ReplanDoc<'a> {
        // Both are told as numbers of moves, as the curve is.
        let moves = |k: usize| replan.curve.get(k).map_or(0, |p| p.moves);
        ReplanDoc {
            plan: PlanDoc::of(&replan.plan),
            curve: replan.curve.iter().map(PointRow::of).collect(),
            knee: moves(replan.knee),
            chosen: moves(replan.chosen),
            steps: replan.steps.iter().map(MoveRow::of).collect(),
            would_have_to_leave: replan.leaving.iter().map(LeavingRow::of).collect(),
            findings: replan
                .findings
                .iter()
                .map(|f| EntryRow { item: &f.item, kind: "entry", what: &f.what })
                .collect(),
        }
    }
}

#[derive(Serialize)]
struct PointRow {
    moves: usize,
    seconds_per_week: f64,
    off_cart: f64,
    broken: i64,
    gain: f64,
    given_up: f64,
}

impl PointRow {
    fn of(point: &Point) -> PointRow {
        PointRow {
            moves: point.moves,
            seconds_per_week: point.cost.as_s(),
            off_cart: Price::us(point.score.off_cart).as_s(),
            broken: point.score.broken,
            gain: point.gain.as_s(),
            given_up: point.given_up.as_s(),
        }
    }
}

/// One thing taken from one place to another; the boxes are told where it is on the cart.
#[derive(Serialize)]
struct MoveRow<'a> {
    item: &'a str,
    copy: u32,
    copies: u32,
    from: String,
    to: String,
    temporary: bool,
    from_box: Option<Corners>,
    to_box: Option<Corners>,
    pose: Option<&'static str>,
    turned: Option<bool>,
    aside: Vec<CopyRow<'a>>,
}

impl<'a> MoveRow<'a> {
    fn of(step: &'a Move) -> MoveRow<'a> {
        let (pose, turned) = match &step.to {
            Spot::On { pose, turned, .. } => (Some(pose.name()), Some(*turned)),
            _ => (None, None),
        };
        MoveRow {
            item: &step.item,
            copy: step.copy,
            copies: step.copies,
            from: spot(&step.from),
            to: spot(&step.to),
            temporary: step.temporary,
            from_box: corners(&step.from),
            to_box: corners(&step.to),
            pose,
            turned,
            aside: step.aside.iter().map(CopyRow::of).collect(),
        }
    }
}

fn spot(spot: &Spot) -> String {
    match spot {
        Spot::New => "new".to_owned(),
        Spot::Off => "off the cart".to_owned(),
        Spot::Floor => "floor".to_owned(),
        Spot::Bench(_) => "bench".to_owned(),
        Spot::On { face, bay, surface, .. } => format!("{} / {bay} / {surface}", face.name()),
    }
}

fn corners(spot: &Spot) -> Option<Corners> {
    match spot {
        Spot::Bench(space) | Spot::On { space, .. } => Some(Corners::of(space)),
        _ => None,
    }
}

#[derive(Serialize)]
struct LeavingRow<'a> {
    item: &'a str,
    copy: u32,
    leave: Vec<CopyRow<'a>>,
    seconds_per_week: f64,
}

impl<'a> LeavingRow<'a> {
    fn of(leaving: &'a Leaving) -> LeavingRow<'a> {
        LeavingRow {
            item: &leaving.item.item,
            copy: leaving.item.copy,
            leave: leaving.leave.iter().map(CopyRow::of).collect(),
            seconds_per_week: leaving.price.as_s(),
        }
    }
}

#[derive(Serialize)]
struct EntryRow<'a> {
    item: &'a str,
    kind: &'static str,
    what: &'a str,
}
