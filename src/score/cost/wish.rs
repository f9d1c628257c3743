//! Being elsewhere than one would rather be.

use crate::score::{Cost, Scope, View};
use crate::site::{Home, Site, answers};
use crate::units::{Price, Uses};

pub struct Wish;

/// Whether the wish is met; a thing without one has nothing to measure.
pub struct Met(bool);

impl Cost for Wish {
    const NAME: &'static str = "wish";
    const SCOPE: Scope = Scope::Place;
    type Fact = Met;

    fn measure(view: &View) -> Option<Met> {
        let wishes = !view.item().prefer.is_empty();
        let place = view.place().filter(|_| wishes)?;
        Some(Met(met(view.site(), view.lot, place.home.surface)))
    }
    fn price(view: &View, met: &Met) -> Price {
        if met.0 { Price::ZERO } else { unmet(view.site()) }
    }
    fn tell(view: &View, met: &Met) -> String {
        let wishes = view.item().prefer.iter().map(|home| home.parts.join("/"));
        let wishes = wishes.collect::<Vec<_>>().join(" or ");
        match met.0 {
            true => format!("it is where it would rather be: {wishes}"),
            false => format!("it would rather be at {wishes}"),
        }
    }
    fn least(site: &Site, lot: usize, home: &Home) -> Price {
        let wishes = !site.items[site.lots[lot].item].prefer.is_empty();
        if wishes && !met(site, lot, home.surface) { unmet(site) } else { Price::ZERO }
    }
}

fn unmet(site: &Site) -> Price {
    Uses::per_week(1).cost(site.rates.wish)
}

fn met(site: &Site, lot: usize, surface: u32) -> bool {
    let wishes = &site.items[site.lots[lot].item].prefer;
    wishes.iter().any(|home| answers(&home.parts, site, surface as usize))
}
