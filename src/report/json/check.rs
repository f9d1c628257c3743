//! The document of `check`: a workspace as it was understood.

use super::finding::FindingRow;
use super::part::text;
use super::worth::CautionRow;
use crate::finding::Finding;
use crate::tasks::check::Understood;
use crate::tasks::question::Question;
use serde::Serialize;

/// What was understood of a workspace as one document, ending with a line break.
pub fn check(understood: &Understood, notes: &[Finding]) -> String {
    text(&CheckDoc::of(understood, notes))
}

/// A workspace as it was understood.
#[derive(Serialize)]
struct CheckDoc<'a> {
    status: &'static str,
    name: &'a str,
    items: usize,
    copies: u32,
    lots: usize,
    mass: f64,
    uses_per_week: f64,
    carcass: f64,
    assumed: &'a [String],
    litres: f64,
    room: Vec<RoomRow>,
    never_fits: Vec<NeverRow<'a>>,
    at_least_out: &'a [String],
    questions: Vec<QuestionRow<'a>>,
    cautions: Vec<CautionRow<'a>>,
    notes: Vec<FindingRow<'a>>,
}

impl<'a> CheckDoc<'a> {
    fn of(u: &'a Understood, notes: &'a [Finding]) -> CheckDoc<'a> {
        let fits = u.never.is_empty() && u.at_least_out.is_empty();
        let room = u.room.iter().map(|r| RoomRow {
            reach_zone: r.zone.name(),
            litres: r.litres,
            wall_dm2: r.wall,
        });
        CheckDoc {
            status: if fits { "fits" } else { "cannot fit" },
            name: &u.name,
            items: u.items,
            copies: u.copies,
            lots: u.lots,
            mass: u.mass.as_kg(),
            uses_per_week: u.uses.as_week(),
            carcass: u.carcass.as_kg(),
            assumed: &u.assumed,
            litres: u.volume,
            room: room.collect(),
            never_fits: u.never.iter().map(|(item, why)| NeverRow { item, why }).collect(),
            at_least_out: &u.at_least_out,
            questions: u.questions.iter().map(QuestionRow::of).collect(),
            cautions: u.cautions.iter().map(CautionRow::of).collect(),
            notes: notes.iter().map(FindingRow::of).collect(),
        }
    }
}

#[derive(Serialize)]
struct RoomRow {
    reach_zone: &'static str,
    litres: f64,
    wall_dm2: f64,
}

/// A hazard that a name lets one ask about.
#[derive(Serialize)]
struct QuestionRow<'a> {
    item: &'a str,
    hazards: Vec<&'static str>,
    words: Vec<&'static str>,
    text: String,
}

impl<'a> QuestionRow<'a> {
    fn of(question: &'a Question) -> QuestionRow<'a> {
        QuestionRow {
            item: &question.item,
            hazards: question.sounds.iter().map(|(hazard, _)| hazard.name()).collect(),
            words: question.sounds.iter().map(|(_, word)| *word).collect(),
            text: question.text(),
        }
    }
}

#[derive(Serialize)]
struct NeverRow<'a> {
    item: &'a str,
    why: &'a str,
}
