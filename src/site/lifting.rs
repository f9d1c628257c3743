//! What fetching a thing with both hands asks of the back.
//!
//! A fetch takes the thing out, sets it on the bench, lifts it off again and guides it back into its place. Setting it
//! down asks for no care, guiding it in does: so its place is judged as origin and as destination, the bench as origin.
//! One lifts upright or with a bent back (on the knees the equation does not hold) and steps round instead of twisting.

use super::surface::{Space, SpaceKind, depth_from};
use super::{Place, Site};
use crate::domain::{Handles, Hazard};
use crate::geometry::Way;
use crate::physics::lifting::{Coupling, Duration, Lift, estimated_horizontal};
use crate::units::{Length, Mass, Uses};

/// What holds a thing badly until its owner says otherwise: design choice, on the safe side.
const COUPLING: Coupling = Coupling::Poor;

/// Why the lifting equation says nothing of a thing (NIOSH 94-110, section 1.2).
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Unassessed {
    /// It is fetched with one hand.
    OneHand,
    /// It is fetched seated.
    Seated,
    /// What is in it can shift.
    Shifting,
}

impl Unassessed {
    /// The same in words.
    pub const fn why(self) -> &'static str {
        match self {
            Unassessed::OneHand => "fetched with one hand",
            Unassessed::Seated => "fetched seated",
            Unassessed::Shifting => "what is in it can shift",
        }
    }
}

/// Where a lift begins or ends.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum End {
    /// At the thing's place on the cart.
    Place,
    /// On the bench.
    Bench,
}

/// The harder end of a lift with both hands.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Lifted {
    /// Which end it is.
    pub end: End,
    /// How the load is lifted there.
    pub lift: Lift,
    /// What may be lifted so, at an index of one.
    pub limit: Mass,
    /// What is lifted: one copy.
    pub load: Mass,
    /// Its lifting index; nothing where no load at all may be lifted so.
    pub index: Option<f64>,
    /// Whether how well the hands hold it was assumed.
    pub assumed: bool,
}

/// Whether the equation says nothing of a lot, and why.
pub fn unassessed(site: &Site, lot: usize) -> Option<Unassessed> {
    let item = &site.items[site.lots[lot].item];
    match () {
        () if item.hands < 2 => Some(Unassessed::OneHand),
        () if site.body.seated => Some(Unassessed::Seated),
        () if item.hazards.has(Hazard::Liquid) => Some(Unassessed::Shifting),
        () => None,
    }
}

/// The harder end of fetching a lot from a place by one of its space's ways, as if the equation held for it.
pub fn lifted(site: &Site, lot: usize, place: &Place, way: usize) -> Lifted {
    let [at_place, at_bench] = ends(site, lot, place, way);
    let (one, two) = (at_place.limit(), at_bench.limit());
    let (end, lift, limit) =
        if one <= two { (End::Place, at_place, one) } else { (End::Bench, at_bench, two) };
    let load = site.lots[lot].unit;
    Lifted {
        end,
        lift,
        limit: Mass::from_kg(limit),
        load,
        index: lift.index(load),
        assumed: site.items[site.lots[lot].item].handles.is_none(),
    }
}

/// The lift at its place and at the bench.
fn ends(site: &Site, lot: usize, place: &Place, way: usize) -> [Lift; 2] {
    let one = &site.lots[lot];
    let space = &site.spaces[site.surfaces[place.home.surface as usize].space];
    let hand = one.grip(site, place, way).height;
    let way = space.ways[way];
    let on_bench = bench_height(site) + (hand - place.space.min[2]);
    let end = |horizontal, height| Lift {
        horizontal,
        height,
        // Of the two origins the lower one has the stricter frequencies.
        origin: hand.min(on_bench),
        travel: (hand - on_bench).max(on_bench - hand),
        twist: 0.0,
        per_minute: per_minute(one.uses),
        duration: Duration::Short,
        coupling: coupling(site.items[one.item].handles),
    };
    let deep = before_the_body(site, space, way, place);
    let held = half(place, way);
    [
        end(estimated_horizontal(deep, hand), hand),
        end(estimated_horizontal(held, on_bench), on_bench),
    ]
}

/// How far behind the front that one stands at the hands hold the thing: behind the face, behind a drawer's front, or
/// by half its depth where it hangs outside.
fn before_the_body(site: &Site, space: &Space, way: Way, place: &Place) -> Length {
    match space.kind {
        SpaceKind::Panel => half(place, way),
        // On and through the top one reaches from the front.
        _ if way == Way::Top => place.space.middle(1).max(Length::ZERO),
        _ => depth_from(way, site.size, &place.space),
    }
}

/// Half of how deep a thing is as one stands before it.
fn half(place: &Place, way: Way) -> Length {
    let axis = if way == Way::Top { 1 } else { way.axis() };
    place.space.extent(axis).half()
}

/// Things are worked on at the top of the cart, but not above the elbow: design choice.
fn bench_height(site: &Site) -> Length {
    site.size[2].min(site.body.elbow)
}

/// Lifts a minute where each day's fetches, two lifts each, come within one hour: design choice, on the safe side.
fn per_minute(uses: Uses) -> f64 {
    2.0 * uses.as_week() / (7.0 * 60.0)
}

fn coupling(handles: Option<Handles>) -> Coupling {
    match handles {
        Some(Handles::Good) => Coupling::Good,
        Some(Handles::Fair) => Coupling::Fair,
        Some(Handles::Poor) => Coupling::Poor,
        None => COUPLING,
    }
}
