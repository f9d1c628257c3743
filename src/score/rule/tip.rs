//! The cart does not go over: closed, and with each drawer out.

use super::{Against, Rule};
use crate::score::{Scope, View};

pub struct Tip;

impl Rule for Tip {
    const NAME: &'static str = "tip";
    const SCOPE: Scope = Scope::Cart;
    const SOURCE: &'static str = "our own limits of 10 degrees closed and 5 with a drawer out; no standard for a workshop cart is known; \
        anchored on IEC 60601-1 ed. 3 for mobile medical equipment, read as summarised";

    fn measure(view: &View) -> Option<Against> {
        let [degrees, limit] = view.stand.tip;
        (limit > 0.0).then(|| Against::at_least(degrees, limit))
    }
    fn tell(_: &View, against: &Against) -> String {
        // Rounded first, so that a hair under nought is not told as minus nought.
        let degrees = (against.value * 10.0).round() / 10.0 + 0.0;
        format!(
            "the cart goes over at {degrees:.1} degrees; at least {:.0} are asked for",
            against.limit
        )
    }
}
