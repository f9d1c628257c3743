//! What a layout is worth: terms, broken rules and cautions.

use super::part::clean;
use crate::tasks::outcome::{Broken, Caution, Worth};
use crate::units::Price;
use serde::{Serialize, Serializer, ser::SerializeMap};

#[derive(Serialize)]
pub(super) struct ScoreRow<'a> {
    seconds_per_week: f64,
    off_cart: f64,
    terms: Terms<'a>,
    broken_rules: Vec<BrokenRow<'a>>,
}

impl<'a> ScoreRow<'a> {
    pub(super) fn of(worth: &'a Worth) -> ScoreRow<'a> {
        ScoreRow {
            seconds_per_week: worth.cost.as_s(),
            off_cart: worth.off_cart.as_s(),
            terms: Terms(&worth.terms),
            broken_rules: worth.broken.iter().map(BrokenRow::of).collect(),
        }
    }
}

/// The terms as one object whose keys stand in the order of the plan.
struct Terms<'a>(&'a [(&'static str, Price)]);

impl Serialize for Terms<'_> {
    fn serialize<S: Serializer>(&self, out: S) -> Result<S::Ok, S::Error> {
        let mut map = out.serialize_map(Some(self.0.len()))?;
        for (term, price) in self.0 {
            map.serialize_entry(term, &price.as_s())?;
        }
        map.end()
    }
}

#[derive(Serialize)]
pub(super) struct BrokenRow<'a> {
    rule: &'static str,
    items: &'a [String],
    text: &'a str,
    value: Option<f64>,
    limit: Option<f64>,
    source: &'static str,
}

impl<'a> BrokenRow<'a> {
    pub(super) fn of(broken: &'a Broken) -> BrokenRow<'a> {
        BrokenRow {
            rule: broken.rule,
            items: &broken.items,
            text: &broken.told,
            value: clean(broken.value),
            limit: clean(broken.limit),
            source: broken.source,
        }
    }
}

#[derive(Serialize)]
pub(super) struct CautionRow<'a> {
    items: &'a [String],
    text: &'a str,
    source: &'a str,
}

impl<'a> CautionRow<'a> {
    pub(super) fn of(caution: &'a Caution) -> CautionRow<'a> {
        CautionRow { items: &caution.items, text: &caution.text, source: &caution.source }
    }
}
