//! Looking for a thing that stands hidden behind another.

use crate::geometry::{Box3, Way};
use crate::score::{Cost, Scope, View};
use crate::site::Site;
use crate::units::{Length, Price, Time};

pub struct Sight;

/// What hides the thing.
pub struct Hidden {
    by: u32,
}

impl Cost for Sight {
    const NAME: &'static str = "sight";
    const SCOPE: Scope = Scope::Place;
    type Fact = Hidden;

    fn measure(view: &View) -> Option<Hidden> {
        let blockers = view.board.blockers(view.lot, view.way);
        if blockers.is_empty() || view.site().rates.sight == Time::ZERO {
            return None;
        }
        let place = view.place()?;
        let way = view.direction(place);
        let hides = |other: &u32| {
            let other = view.board.place(*other as usize);
            other.is_some_and(|o| hides(view.site(), way, &place.space, &o.space))
        };
        // The first by number, so that the order of coming makes no difference.
        blockers.iter().copied().filter(hides).min().map(|by| Hidden { by })
    }
    fn price(view: &View, _: &Hidden) -> Price {
        view.of().uses.cost(view.site().rates.sight)
    }
    fn tell(view: &View, hidden: &Hidden) -> String {
        let other = view.site().lots[hidden.by as usize].name(&view.site().items);
        let each = view.site().rates.sight.as_s();
        format!("hidden behind {other} from where one stands: {each:.1} s to look for it each time")
    }
}

/// Whether a thing in the way of another hides it: it covers at least half of its breadth, and the eye of who stands
/// before the face does not see the middle of its front over it. From above, it covers at least half of it.
fn hides(site: &Site, way: Way, thing: &Box3, other: &Box3) -> bool {
    let shared = |axis: usize| {
        let from = thing.min[axis].max(other.min[axis]);
        (thing.max[axis].min(other.max[axis]) - from).max(Length::ZERO).as_nm()
    };
    let half = |axes: [usize; 2]| {
        let area = |of: &dyn Fn(usize) -> i64| i128::from(of(axes[0])) * i128::from(of(axes[1]));
        area(&shared) * 2 >= area(&|axis| thing.extent(axis).as_nm())
    };
    if way == Way::Top {
        return half([0, 1]);
    }
    let across = 1 - way.axis();
    shared(across) * 2 >= thing.extent(across).as_nm() && !is_seen_over(site, way, thing, other)
}

/// Whether the line from the eye to the middle of a thing's front passes over another thing.
fn is_seen_over(site: &Site, way: Way, thing: &Box3, other: &Box3) -> bool {
    let (axis, off) = (way.axis(), site.stand_off[way.index()]);
    // How far in front of the eye a plane across the way is.
    let away = |at: Length| {
        let deep = if way.rising() { site.size[axis] - at } else { at };
        i128::from((deep + off).as_nm())
    };
    let near = |b: &Box3| away(if way.rising() { b.max[axis] } else { b.min[axis] });
    let rear = away(if way.rising() { other.min[axis] } else { other.max[axis] });
    let eye = i128::from(site.body.eye.as_nm());
    let (target, far) = (i128::from(thing.middle(2).as_nm()), near(thing));
    let top = i128::from(other.max[2].as_nm());
    // The height of the line at a distance d is eye + (target − eye) × d / far.
    let over = |d: i128| eye * far + (target - eye) * d >= top * far;
    over(near(other)) && over(rear)
}
