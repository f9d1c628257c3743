//! A surface carries no more than it can: its stated limit, and where a material is named, sag, strength and fixings.

use super::{Against, Rule};
use crate::physics::boards::sag_limit;
use crate::score::{Scope, View};
use crate::site::{Hold, Place, Span};
use crate::units::Mass;

const NAME: &str = "supported";
/// Where the limit of [`Stated`] comes from.
pub const STATED: &str = "the limit stated in the carcass file";
/// Where the limit of [`Sag`] comes from.
pub const SAG: &str = "span / 240 once it has crept: a habit of cabinet makers, no standard; stiffness after the Wood Handbook (FPL-GTR-190), creep after EN 1995-1-1 Table 3.2";
/// Where the limit of [`Strength`] comes from.
pub const STRENGTH: &str = "a quarter of the modulus of rupture of the Wood Handbook (FPL-GTR-190): the margin of 4 is ours";
/// Where the limit of [`Fixings`] comes from.
pub const FIXINGS: &str = "the hook's stated load; screws after a building design handbook, p. 170, with its margin of 5.5, and never in end grain";
/// A share that stands for any greater one: nothing may be counted on.
const NOTHING: f64 = 1e6;

/// What it carries is within the limit that the carcass file states.
pub struct Stated;

impl Rule for Stated {
    const NAME: &'static str = NAME;
    const SCOPE: Scope = Scope::Surface;
    const SOURCE: &'static str = STATED;

    fn measure(view: &View) -> Option<Against> {
        let limit = view.site().surfaces[view.surface].limit?;
        Some(Against::at_most(view.board.load(view.surface).as_kg(), limit.as_kg()))
    }
    fn tell(view: &View, against: &Against) -> String {
        let name = view.site().surface_name(view.surface);
        format!("{name} carries {:.1} kg of {:.1} kg", against.value, against.limit)
    }
}

/// A shelf does not end up sagging further than habit allows.
pub struct Sag;

impl Rule for Sag {
    const NAME: &'static str = NAME;
    const SCOPE: Scope = Scope::Surface;
    const SOURCE: &'static str = SAG;

    fn measure(view: &View) -> Option<Against> {
        let span = burdened(view)?;
        if span.beam.surely_sags_under(span.first_limit, span.loads(view.board, view.surface)) {
            return None;
        }
        let first = span.beam.sag(span.loads(view.board, view.surface));
        Some(Against::at_most(span.crept(first), sag_limit(span.beam.span)))
    }
    fn tell(view: &View, against: &Against) -> String {
        let name = view.site().surface_name(view.surface);
        format!(
            "{name} ends up sagging {:.1} mm, and {:.1} mm is the most for its span",
            against.value, against.limit
        )
    }
}

/// A shelf is not bent harder than a part of its strength allows.
pub struct Strength;

impl Rule for Strength {
    const NAME: &'static str = NAME;
    const SCOPE: Scope = Scope::Surface;
    const SOURCE: &'static str = STRENGTH;

    fn measure(view: &View) -> Option<Against> {
        let span = burdened(view)?;
        let all = || span.loads(view.board, view.surface);
        if span.beam.most_moment(all().map(|l| l.force).sum()) <= span.most_moment {
            return None;
        }
        Some(Against::at_most(span.strength_used(span.beam.moment(all())), 1.0))
    }
    fn tell(view: &View, against: &Against) -> String {
        let name = view.site().surface_name(view.surface);
        format!("{name} is bent to {:.2} times what its strength allows", against.value)
    }
}

/// No hook, peg or screw is asked for more than it holds.
pub struct Fixings;

impl Rule for Fixings {
    const NAME: &'static str = NAME;
    const SCOPE: Scope = Scope::Surface;
    const SOURCE: &'static str = FIXINGS;

    fn measure(view: &View) -> Option<Against> {
        let hold = view.site().surfaces[view.surface].hold.as_ref()?;
        let uses = view.board.on(view.surface).map(|(lot, place)| used(view, hold, lot, place));
        Some(Against::at_most(uses.fold(0.0, f64::max), 1.0))
    }
    fn tell(view: &View, against: &Against) -> String {
        let site = view.site();
        let name = site.surface_name(view.surface);
        let worst = Fixings::lots(view).into_iter().next();
        let item =
            worst.map_or("a thing", |l| site.items[site.lots[l as usize].item].name.as_str());
        let end = site.surfaces[view.surface].hold.as_ref().is_some_and(|h| h.end_grain);
        if end && against.value >= NOTHING {
            return format!("{name}: {item} hangs from screws in end grain, which do not count");
        }
        format!("{name}: {item} asks its fixing for {:.2} times what it may hold", against.value)
    }
    fn lots(view: &View) -> Vec<u32> {
        let Some(hold) = &view.site().surfaces[view.surface].hold else { return Vec::new() };
        let each = view.board.on(view.surface).map(|(l, p)| (l as u32, used(view, hold, l, p)));
        let mut over: Vec<(u32, f64)> = each.filter(|(_, used)| *used > 1.0).collect();
        over.sort_by(|a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
        over.into_iter().map(|(lot, _)| lot).collect()
    }
}

/// The board under the surface, where something stands on it: how an empty one sags is no matter of the layout.
fn burdened<'a>(view: &View<'a>) -> Option<&'a Span> {
    let span = view.site().surfaces[view.surface].span.as_ref()?;
    (view.board.load(view.surface) > Mass::ZERO).then_some(span)
}

fn used(view: &View, hold: &Hold, lot: usize, place: &Place) -> f64 {
    let lot = &view.site().lots[lot];
    hold.used(lot.unit, lot.copies, &place.space).min(NOTHING)
}
