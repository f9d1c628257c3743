//! The document of `audit`: a plan with what is wrong with it.

use super::part::text;
use super::plan::PlanDoc;
use crate::tasks::audit::{Audit, AuditFinding, Value};
use serde::Serialize;

/// An audit as one document, ending with a line break.
pub fn audit(audit: &Audit) -> String {
    text(&AuditDoc::of(audit))
}

#[derive(Serialize)]
struct AuditDoc<'a> {
    #[serde(flatten)]
    plan: PlanDoc<'a>,
    findings: Vec<AuditRow<'a>>,
    now: ValueRow,
    best: ValueRow,
    first_remedies: FirstRow,
    at_wall: Vec<AtWallRow<'a>>,
}

impl<'a> AuditDoc<'a> {
    fn of(audit: &'a Audit) -> AuditDoc<'a> {
        let at_wall = audit.at_wall.iter();
        AuditDoc {
            plan: PlanDoc::of(&audit.plan),
            findings: audit.findings.iter().map(AuditRow::of).collect(),
            now: ValueRow::of(&audit.now),
            best: ValueRow::of(&audit.best),
            first_remedies: FirstRow { applied: audit.applied, after: ValueRow::of(&audit.after) },
            at_wall: at_wall.map(|w| AtWallRow { station: &w.station, items: &w.items }).collect(),
        }
    }
}

#[derive(Serialize)]
struct AuditRow<'a> {
    item: Option<&'a str>,
    kind: &'static str,
    what: &'a str,
    seconds_per_week: f64,
    remedy: Option<RemedyRow<'a>>,
}

impl<'a> AuditRow<'a> {
    fn of(found: &'a AuditFinding) -> AuditRow<'a> {
        AuditRow {
            item: found.item.as_deref(),
            kind: found.kind.name(),
            what: &found.what,
            seconds_per_week: found.price.as_s(),
            remedy: found.remedy.as_ref().map(|r| RemedyRow { text: &r.text, gain: r.gain.as_s() }),
        }
    }
}

#[derive(Serialize)]
struct RemedyRow<'a> {
    text: &'a str,
    gain: f64,
}

/// What a layout is worth: broken rules, terms, and fetching from elsewhere what is not on the cart.
#[derive(Serialize)]
struct ValueRow {
    broken: i64,
    seconds_per_week: f64,
    off_cart: f64,
}

impl ValueRow {
    fn of(value: &Value) -> ValueRow {
        ValueRow {
            broken: value.broken,
            seconds_per_week: value.cost.as_s(),
            off_cart: value.off_cart.as_s(),
        }
    }
}

#[derive(Serialize)]
struct FirstRow {
    applied: usize,
    #[serde(flatten)]
    after: ValueRow,
}

#[derive(Serialize)]
struct AtWallRow<'a> {
    station: &'a str,
    items: &'a [String],
}
