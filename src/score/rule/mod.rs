//! The rules, one file each, and the only list of them.

mod at_hand;
mod casters;
mod fits;
mod hazards_apart;
mod lifting;
mod overhead;
mod reachable;
mod retrievable;
mod self_heating;
mod sharp;
pub(crate) mod supported;
mod tip;

use super::{Scope, View};
use crate::site::Site;

/// A measured value against its limit.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Against {
    /// The value, in the unit of the rule's sentence.
    pub value: f64,
    /// Its limit.
    pub limit: f64,
    /// Whether the value may be at most the limit (else at least).
    pub at_most: bool,
}

impl Against {
    /// A value that may be at most so much.
    pub fn at_most(value: f64, limit: f64) -> Against {
        Against { value, limit, at_most: true }
    }
    /// A value that must be at least so much.
    pub fn at_least(value: f64, limit: f64) -> Against {
        Against { value, limit, at_most: false }
    }
    /// Something of which there may be none.
    pub fn none(count: usize) -> Against {
        Against::at_most(count as f64, 0.0)
    }
    /// By how much it is broken, in thousandths of the limit (of one, where the limit is nought), rounded up; 0 if kept.
    #[inline]
    pub fn excess(&self) -> i64 {
        let over = if self.at_most { self.value - self.limit } else { self.limit - self.value };
        // Rounding in the statics must not break a rule that an exact sum keeps.
        if over <= 1e-9 * self.limit.abs() {
            return 0;
        }
        let base = if self.limit.abs() > 0.0 { self.limit.abs() } else { 1.0 };
        ((over / base * 1000.0).ceil() as i64).clamp(1, 999_999)
    }
}

/// Something that a layout must keep, whatever it costs.
pub trait Rule {
    /// Its name, in every report.
    const NAME: &'static str;
    /// Whose rule it is.
    const SCOPE: Scope;
    /// Where its limit comes from.
    const SOURCE: &'static str;
    /// Measures the subject; nothing where the rule does not concern it.
    fn measure(view: &View) -> Option<Against>;
    /// What is wrong, in words, with value and limit.
    fn tell(view: &View, against: &Against) -> String;
    /// Whether a lot is of the kind that the rule is about: others are never measured.
    fn concerns(_: &Site, _lot: usize) -> bool {
        true
    }
    /// The lots concerned.
    fn lots(view: &View) -> Vec<u32> {
        match Self::SCOPE {
            Scope::Way | Scope::Lot | Scope::Place => vec![view.lot as u32],
            Scope::Pair => vec![view.two().one, view.two().other],
            Scope::Surface => on_surface(view),
            Scope::Companions | Scope::Family | Scope::Job | Scope::Growth | Scope::Cart => {
                Vec::new()
            }
        }
    }
}

fn on_surface(view: &View) -> Vec<u32> {
    let here = |p: &crate::site::Place| p.home.surface as usize == view.surface;
    let places = view.board.places();
    (0..places.len() as u32).filter(|&l| places[l as usize].as_ref().is_some_and(here)).collect()
}

/// A row of the table of rules.
pub struct RuleCard {
    /// Its name.
    pub name: &'static str,
    /// Whose rule it is.
    pub scope: Scope,
    /// Where its limit comes from.
    pub source: &'static str,
    /// By how much it is broken, in thousandths, rounded up.
    pub excess: fn(&View) -> i64,
    /// What is measured.
    pub measure: fn(&View) -> Option<Against>,
    /// What is wrong.
    pub tell: fn(&View, &Against) -> String,
    /// Whether a lot is of the kind that the rule is about.
    pub concerns: fn(&Site, usize) -> bool,
    /// The lots concerned.
    pub lots: fn(&View) -> Vec<u32>,
}

const fn card<R: Rule>() -> RuleCard {
    RuleCard {
        name: R::NAME,
        scope: R::SCOPE,
        source: R::SOURCE,
        excess: |v| R::measure(v).map_or(0, |a| a.excess()),
        measure: R::measure,
        tell: R::tell,
        concerns: R::concerns,
        lots: R::lots,
    }
}

/// Every rule, in the order in which they are told.
pub const RULES: &[RuleCard] = &[
    card::<fits::Fits>(),
    card::<reachable::Reachable>(),
    card::<retrievable::Retrievable>(),
    card::<supported::Stated>(),
    card::<supported::Sag>(),
    card::<supported::Strength>(),
    card::<supported::Fixings>(),
    card::<casters::Casters>(),
    card::<casters::Hanging>(),
    card::<tip::Tip>(),
    card::<hazards_apart::HazardsApart>(),
    card::<self_heating::SelfHeating>(),
    card::<sharp::Sharp>(),
    card::<overhead::Overhead>(),
    card::<lifting::Lifting>(),
    card::<at_hand::AtHand>(),
];

#[cfg(test)]
mod tests {
    use super::Against;

    #[test]
    fn an_excess_is_rounded_up_and_a_kept_rule_has_none() {
        assert_eq!(Against::at_most(10.0, 10.0).excess(), 0);
        assert_eq!(Against::at_most(10.001, 10.0).excess(), 1);
        assert_eq!(Against::at_least(9.0, 10.0).excess(), 100);
        assert_eq!(Against::none(2).excess(), 2000);
    }
}
