//! Walking to where a thing is, there and back.

use crate::score::{Cost, Scope, View};
use crate::site::{Home, Site};
use crate::units::{Price, Time};

pub struct Access;

impl Cost for Access {
    const NAME: &'static str = "access";
    const SCOPE: Scope = Scope::Way;
    type Fact = Time;

    fn measure(view: &View) -> Option<Time> {
        view.place().map(|place| view.space(place).access[view.way])
    }
    fn price(view: &View, walk: &Time) -> Price {
        view.of().uses.cost(*walk)
    }
    fn tell(view: &View, walk: &Time) -> String {
        let Some(place) = view.place() else { return String::new() };
        let face = view.direction(place).name();
        if *walk == Time::ZERO {
            return format!("the {face} faces the work: no walk");
        }
        let wall = if view.space(place).walled[view.way] {
            ", rolling the cart from the wall counted in by its share"
        } else {
            ""
        };
        let pace = if view.site().body.seated { "" } else { " (pace from memory)" };
        format!("{:.1} s a fetch to walk to the {face} and back{pace}{wall}", walk.as_s())
    }
    fn least(site: &Site, lot: usize, home: &Home) -> Price {
        let space = site.surfaces[home.surface as usize].space;
        site.lots[lot].uses.cost(site.spaces[space].least_access())
    }
}
