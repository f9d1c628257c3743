//! How far each shelf sags, and how hard each fixing is asked.

use crate::physics::boards::{Ends, sag_limit};
use crate::physics::fasteners::WEIGHT;
use crate::score::rule::supported::{FIXINGS, SAG};
use crate::site::{Board, Hold, Place, Span};
use crate::tasks::outcome::{Amount, BoardLoad, Extreme, FixingLoad, Limit, Mark, Plan};
use crate::units::{Length, Mass};

/// A share that stands for any greater one: nothing may be counted on.
const NOTHING: f64 = 1e6;

/// Every shelf and floor of a known material, the one that uses most of the sag it may have first.
pub(super) fn boards(board: &Board) -> Vec<BoardLoad> {
    let surfaces = board.site().surfaces.iter().enumerate();
    let each = surfaces.filter_map(|(s, surface)| Some(one(board, s, surface.span.as_ref()?)));
    let mut all: Vec<BoardLoad> = each.collect();
    all.sort_by(|a, b| b.sag_used().total_cmp(&a.sag_used()));
    all
}

fn one(board: &Board, s: usize, span: &Span) -> BoardLoad {
    let site = board.site();
    let (surface, space) = (&site.surfaces[s], &site.spaces[site.surfaces[s].space]);
    let sag = span.beam.sag(span.loads(board, s));
    let moment = span.beam.moment(span.loads(board, s));
    let timber = span.timber;
    BoardLoad {
        face: space.face,
        bay: space.name.clone(),
        surface: surface.name.clone(),
        material: span.plank.material.name(),
        thickness: span.plank.thickness,
        span: Length::from_mm(span.beam.span),
        ends: match span.beam.ends {
            Ends::Free => "free",
            Ends::Fixed => "fixed",
        },
        load: board.load(s),
        sag,
        sag_later: span.crept(sag),
        limit: sag_limit(span.beam.span),
        strength_used: span.strength_used(moment),
        most_by: most_by(board, s, span),
        from_memory: timber.recalled_of_sag().chain(timber.recalled_of_strength()).collect(),
    }
}

/// What sags a board most by itself: ties go to the first in the inventory.
fn most_by(board: &Board, s: usize, span: &Span) -> Option<(String, f64)> {
    let site = board.site();
    let each = board.on(s).map(|(lot, place)| {
        let alone = std::iter::once(span.load(site.lots[lot].mass, &place.space));
        (span.crept(span.beam.sag(alone)), lot)
    });
    let (sag, lot) = each.max_by(|a, b| a.0.total_cmp(&b.0).then(b.1.cmp(&a.1)))?;
    Some((site.lots[lot].name(&site.items), sag))
}

/// Everything that hangs where it is known what holds, the hardest asked first.
pub(super) fn fixings(board: &Board) -> Vec<FixingLoad> {
    let surfaces = board.site().surfaces.iter().enumerate();
    let walls = surfaces.filter_map(|(s, surface)| Some((s, surface.hold.as_ref()?)));
    let mut all: Vec<(usize, FixingLoad)> = Vec::new();
    for (s, hold) in walls {
        all.extend(board.on(s).map(|(lot, place)| (lot, hung(board, s, hold, lot, place))));
    }
    all.sort_by(|a, b| b.1.used.total_cmp(&a.1.used).then(a.0.cmp(&b.0)));
    all.into_iter().map(|(_, load)| load).collect()
}

fn hung(board: &Board, s: usize, hold: &Hold, lot: usize, place: &Place) -> FixingLoad {
    let site = board.site();
    let (surface, space) = (&site.surfaces[s], &site.spaces[site.surfaces[s].space]);
    let lot = &site.lots[lot];
    let hung = hold.hung(lot.unit, lot.copies, &place.space);
    let wood = hold.wood.map(|(material, _, _)| crate::site::figures(material));
    let from_memory: Vec<&str> = wood.into_iter().flat_map(|w| w.recalled_of_hold()).collect();
    FixingLoad {
        face: space.face,
        bay: space.name.clone(),
        surface: surface.name.clone(),
        item: site.items[lot.item].name.clone(),
        copy: lot.first,
        mass: Mass::from_kg(hung.mass),
        pull: if hold.ceiling { hung.mass * WEIGHT } else { hung.pull() },
        by: by(hold),
        used: hold.used(lot.unit, lot.copies, &place.space).min(NOTHING),
        mark: match (hold.wood, from_memory.is_empty()) {
            (None, _) => Mark::Stated,
            (Some(_), true) => Mark::Read,
            (Some(_), false) => Mark::Memory,
        },
        from_memory,
    }
}

/// The shelf that uses most of the sag it may have.
pub(super) fn most_sagging(plan: &Plan) -> Option<Extreme> {
    let shelf = plan.boards.first()?;
    let most =
        shelf.most_by.as_ref().map_or(String::new(), |(item, _)| format!(", most by {item}"));
    let (face, bay, surface) = (shelf.face.name(), &shelf.bay, &shelf.surface);
    Some(Extreme {
        kind: "most-sagging shelf",
        value: Amount::Length(Length::from_mm(shelf.sag_later)),
        case: format!(
            "{face} / {bay} / {surface}, {} crept as far as it will{most}",
            shelf.material
        ) + &recalled(&shelf.from_memory),
        limit: Limit::AtMost(Amount::Length(Length::from_mm(shelf.limit))),
        source: SAG.to_owned(),
        mark: Mark::Practice,
    })
}

/// The fixing that is asked for the greatest share of what it holds.
pub(super) fn hardest_pulled(plan: &Plan) -> Option<Extreme> {
    let fixing = plan.fixings.first().filter(|f| f.used > 0.0)?;
    let (face, bay, surface) = (fixing.face.name(), &fixing.bay, &fixing.surface);
    let share = libm::ceil(fixing.used * 100.0);
    Some(Extreme {
        kind: "hardest pulled hook",
        value: Amount::Mass(fixing.mass),
        case: format!(
            "{} on {face} / {bay} / {surface}: {share:.0} % of what {} may hold there",
            fixing.item, fixing.by
        ) + &recalled(&fixing.from_memory),
        limit: Limit::AtMost(Amount::Mass(Mass::from_kg(fixing.mass.as_kg() / fixing.used))),
        source: FIXINGS.to_owned(),
        mark: fixing.mark,
    })
}

/// What is recalled, as the end of a sentence.
fn recalled(figures: &[&str]) -> String {
    match figures {
        [] => String::new(),
        all => format!(" (from memory: {})", all.join(", ")),
    }
}

/// What a wall holds by, in words.
fn by(hold: &Hold) -> String {
    let each = |one: &str| match hold.each {
        1 => format!("one {one}"),
        n => format!("{n} {one}s"),
    };
    let screw = hold.wood.map(|(material, screw, _)| {
        let where_ = if hold.end_grain { "the end grain of" } else { "" };
        let words = format!(
            "{} of {:.1} mm with {:.1} mm of thread in {where_} {}",
            each("screw"),
            screw.diameter,
            screw.thread,
            material.name()
        );
        words.replace("  ", " ")
    });
    let hook = hold.hook.map(|hook| format!("{} for {:.1} kg each", each("hook"), hook.as_kg()));
    [hook, screw].into_iter().flatten().collect::<Vec<_>>().join(", ")
}
