//! Rolling the loaded cart, its way and its place.

use serde::Serialize;

use super::extreme::bare;
use super::part::{clean, mm};
use crate::tasks::outcome::{Before, Door, Mark, Push, Rolling};

/// The whole section.
#[derive(Serialize)]
pub(super) struct Row<'a> {
    pushes: Vec<PushRow<'a>>,
    threshold: Option<f64>,
    wheel: Option<f64>,
    door: Option<DoorRow>,
    in_the_way: &'a [String],
    before: Vec<BeforeRow>,
    square_metres: Floor,
    opens: &'a [String],
    slides: &'a [String],
    swings: &'a [String],
    slides_by: f64,
    swings_by: f64,
    assumed: &'a [String],
    source: &'static str,
    mark: Option<&'static str>,
}

#[derive(Serialize)]
struct PushRow<'a> {
    case: &'a str,
    force: Option<f64>,
    protects_most: Option<f64>,
    protects_half: Option<f64>,
    unit: &'static str,
}

#[derive(Serialize)]
struct DoorRow {
    broad: f64,
    first: &'static str,
    clear: f64,
    passes: bool,
}

#[derive(Serialize)]
struct BeforeRow {
    face: &'static str,
    free: f64,
    needs: f64,
}

#[derive(Serialize)]
struct Floor {
    stands_on: f64,
    side_by_side: f64,
}

impl<'a> Row<'a> {
    pub(super) fn of(rolling: &'a Rolling) -> Row<'a> {
        let [slides_by, swings_by] = rolling.at_a_stop.map(mm);
        Row {
            pushes: rolling.pushes.iter().map(push).collect(),
            threshold: rolling.threshold.map(|(high, _, _)| mm(high)),
            wheel: rolling.threshold.map(|(_, wheel, _)| mm(wheel)),
            door: rolling.door.as_ref().map(door),
            in_the_way: &rolling.in_the_way,
            before: rolling.before.iter().map(before).collect(),
            square_metres: Floor {
                stands_on: rolling.stands_on,
                side_by_side: rolling.side_by_side,
            },
            opens: &rolling.opens,
            slides: &rolling.slides,
            swings: &rolling.swings,
            slides_by,
            swings_by,
            assumed: &rolling.assumed,
            source: rolling.source,
            mark: rolling.mark.map(Mark::name),
        }
    }
}

fn push(push: &Push) -> PushRow<'_> {
    let (most, unit) = bare(push.most);
    PushRow {
        case: &push.case,
        force: push.force.and_then(|f| clean(bare(f).0)),
        protects_most: clean(most),
        protects_half: clean(bare(push.half).0),
        unit,
    }
}

fn door(door: &Door) -> DoorRow {
    DoorRow {
        broad: mm(door.broad),
        first: door.first.name(),
        clear: mm(door.clear),
        passes: door.broad <= door.clear,
    }
}

fn before(before: &Before) -> BeforeRow {
    BeforeRow { face: before.face.name(), free: mm(before.free), needs: mm(before.needs) }
}
