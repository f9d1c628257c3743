//! A load that leans on one caster, or a cart near to tipping.

use crate::score::{Cost, Scope, View};
use crate::units::Price;

pub struct Balance;

/// How much the heaviest caster may carry over the mean before it costs: design choice.
const EVEN: f64 = 1.15;
/// How far above its limit the least tip angle must be before it costs nothing: design choice.
const AMPLE: f64 = 1.5;
/// Seconds a week for each kilogram over: common practice, no source.
const PER_KG: f64 = 1.0;
/// Seconds a week for each degree short: common practice, no source.
const PER_DEGREE: f64 = 1.0;

pub struct Lean {
    over: f64,
    short: f64,
}

impl Cost for Balance {
    const NAME: &'static str = "balance";
    const SCOPE: Scope = Scope::Cart;
    type Fact = Lean;

    fn measure(view: &View) -> Option<Lean> {
        let stand = view.stand;
        let over = (stand.heaviest - EVEN * stand.mean).max(0.0);
        let short = if stand.margin < AMPLE { AMPLE * stand.tip[1] - stand.tip[0] } else { 0.0 };
        // A cart that tips by itself is a broken rule; here it is only kept finite.
        Some(Lean { over: if over.is_finite() { over } else { 1000.0 }, short })
    }
    fn price(_: &View, lean: &Lean) -> Price {
        Price::from_s(lean.over * PER_KG + lean.short * PER_DEGREE)
    }
    fn tell(_: &View, lean: &Lean) -> String {
        if lean.over == 0.0 && lean.short == 0.0 {
            return "the casters share the load".to_owned();
        }
        format!(
            "the heaviest caster carries {:.1} kg more than {EVEN} times the mean; the least tip angle is {:.1} degrees short of {AMPLE} times its limit",
            lean.over, lean.short
        )
    }
}
