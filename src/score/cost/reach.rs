//! Reaching to where a thing is: bending, kneeling, stretching, reaching in, pulling a drawer.

use crate::physics::body::Posture;
use crate::score::{Cost, Scope, View};
use crate::site::{Home, Place, Site, best_spots, reach_depth};
use crate::units::{Length, Price, Time};

pub struct Reach;

pub struct Hand {
    height: Length,
    depth: Length,
    each: Time,
}

impl Cost for Reach {
    const NAME: &'static str = "reach";
    const SCOPE: Scope = Scope::Lot;
    type Fact = Hand;

    fn measure(view: &View) -> Option<Hand> {
        let place = view.place()?;
        let (height, depth) = view.hand(place);
        let each = view.site().body.extra(height, depth) + view.space(place).pull;
        Some(Hand { height, depth, each })
    }
    fn price(view: &View, hand: &Hand) -> Price {
        view.of().uses.cost(hand.each)
    }
    fn tell(view: &View, hand: &Hand) -> String {
        let how = match view.site().body.posture(hand.height, hand.depth) {
            Posture::Easy => "in easy reach",
            Posture::Bend => "with a bent back",
            Posture::Kneel => "kneeling",
            Posture::Stretch => "stretching",
            Posture::Out => "out of reach",
        };
        let pulled = view.place().is_some_and(|p| view.space(p).pull > Time::ZERO);
        let drawer = if pulled { ", drawer pulled and pushed" } else { "" };
        let (high, deep) = (hand.height.as_mm(), hand.depth.as_mm());
        format!(
            "{how} at {high:.0} mm, {deep:.0} mm deep{drawer}: {:.1} s a fetch",
            hand.each.as_s()
        )
    }
    fn least(site: &Site, lot: usize, home: &Home) -> Price {
        let l = &site.lots[lot];
        let pose = l.forms[home.form as usize].pose;
        let space = &site.spaces[site.surfaces[home.surface as usize].space];
        let each = best_spots(site, home).into_iter().flat_map(|b| {
            let place = Place { home: *home, space: b };
            let grip = l.grip_height(&site.items, pose, &place.space);
            space.ways.iter().map(move |&way| {
                site.body.extra(grip, reach_depth(site, space.kind, way, &place.space))
            })
        });
        l.uses.cost(each.min().unwrap_or(Time::ZERO) + space.pull)
    }
}
