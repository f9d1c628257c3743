//! The document of `compare`.

use super::part::text;
use super::placement::LeftOutRow;
use super::spot::SpotRow;
use super::worth::ScoreRow;
use crate::tasks::compare::{Compare, Gain, Moved, Side};
use serde::Serialize;

/// Two layouts side by side as one document, ending with a line break.
pub fn compare(compare: &Compare) -> String {
    text(&CompareDoc::of(compare))
}

#[derive(Serialize)]
struct CompareDoc<'a> {
    name: &'a str,
    a: SideRow<'a>,
    b: SideRow<'a>,
    moved: Vec<MovedRow<'a>>,
    stayed: u32,
    terms: Vec<GainRow<'a>>,
    items: Vec<GainRow<'a>>,
    whole: GainRow<'a>,
}

impl<'a> CompareDoc<'a> {
    fn of(c: &'a Compare) -> CompareDoc<'a> {
        CompareDoc {
            name: &c.name,
            a: SideRow::of(&c.a),
            b: SideRow::of(&c.b),
            moved: c.moved.iter().map(MovedRow::of).collect(),
            stayed: c.stayed,
            terms: c.terms.iter().map(GainRow::of).collect(),
            items: c.items.iter().map(GainRow::of).collect(),
            whole: GainRow::of(&c.whole),
        }
    }
}

#[derive(Serialize)]
struct SideRow<'a> {
    score: ScoreRow<'a>,
    left_out: Vec<LeftOutRow<'a>>,
    findings: &'a [String],
}

impl<'a> SideRow<'a> {
    fn of(side: &'a Side) -> SideRow<'a> {
        SideRow {
            score: ScoreRow::of(&side.worth),
            left_out: side.left_out.iter().map(LeftOutRow::of).collect(),
            findings: &side.findings,
        }
    }
}

#[derive(Serialize)]
struct MovedRow<'a> {
    item: &'a str,
    copy: u32,
    copies: u32,
    /// `null` off the cart.
    from: Option<SpotRow<'a>>,
    /// `null` off the cart.
    to: Option<SpotRow<'a>>,
}

impl<'a> MovedRow<'a> {
    fn of(moved: &'a Moved) -> MovedRow<'a> {
        MovedRow {
            item: &moved.item,
            copy: moved.copy,
            copies: moved.copies,
            from: moved.from.as_ref().map(SpotRow::of),
            to: moved.to.as_ref().map(SpotRow::of),
        }
    }
}

/// Seconds a week in both, and what the second saves.
#[derive(Serialize)]
struct GainRow<'a> {
    what: &'a str,
    a: f64,
    b: f64,
    gain: f64,
}

impl<'a> GainRow<'a> {
    fn of(gain: &'a Gain) -> GainRow<'a> {
        let Gain { what, a, b } = gain;
        GainRow { what, a: a.as_s(), b: b.as_s(), gain: gain.gain().as_s() }
    }
}
