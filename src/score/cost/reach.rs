//! Reaching to where a thing is: bending, kneeling, stretching, reaching in, pulling a drawer.

use crate::physics::body::{Grip, Posture};
use crate::score::{Cost, Scope, View};
use crate::site::{Home, Place, Site, best_spots};
use crate::units::{Price, Time};

pub struct Reach;

pub struct Hand {
    grip: Grip,
    each: Time,
}

impl Cost for Reach {
    const NAME: &'static str = "reach";
    const SCOPE: Scope = Scope::Way;
    type Fact = Hand;

    fn measure(view: &View) -> Option<Hand> {
        let place = view.place()?;
        let grip = view.grip(place);
        let each = view.site().body.extra(&grip, view.of().in_hand) + view.space(place).pull;
        Some(Hand { grip, each })
    }
    fn price(view: &View, hand: &Hand) -> Price {
        view.of().uses.cost(hand.each)
    }
    fn tell(view: &View, hand: &Hand) -> String {
        let how = match view.site().body.posture(&hand.grip) {
            Posture::Easy => "in easy reach",
            Posture::Bend => "with a bent back (time from memory)",
            Posture::Kneel => "kneeling (time from memory)",
            Posture::Stretch => "stretching",
            Posture::Out => "out of reach",
        };
        let pulled = view.place().is_some_and(|p| view.space(p).pull > Time::ZERO);
        let drawer = if pulled { ", drawer pulled and pushed" } else { "" };
        let (high, deep) = (hand.grip.height.as_mm(), hand.grip.depth.as_mm());
        format!(
            "{how} at {high:.0} mm, {deep:.0} mm deep{drawer}: {:.1} s a fetch",
            hand.each.as_s()
        )
    }
    fn least(site: &Site, lot: usize, home: &Home) -> Price {
        let l = &site.lots[lot];
        let space = &site.spaces[site.surfaces[home.surface as usize].space];
        let each = best_spots(site, home).into_iter().flat_map(|b| {
            let place = Place { home: *home, space: b };
            (0..space.ways.len())
                .map(move |way| site.body.extra(&l.grip(site, &place, way), l.in_hand))
        });
        l.uses.cost(each.min().unwrap_or(Time::ZERO) + space.pull)
    }
}
