//! The words of an audit: what a place costs and why, and what would help.

use super::AtWall;
use super::causes::Cause;
use crate::domain::{Face, Pose, Workspace};
use crate::physics::body::Posture;
use crate::score::rule::supported::{FIXINGS, SAG, STATED, STRENGTH};
use crate::score::{COSTS, Closure, Ledger, RULES, Scope, parts, subject};
use crate::site::{Board, CaseKind, Change, Plank, Site, Span};
use crate::units::{Length, Mass, Price, Unit, Uses, show_length, show_mass, show_uses};

/// Costs under this are not worth a word: design choice.
const WORTH: Price = Price::us(1_000_000);
/// What counts as daily.
const DAILY: Uses = Uses::per_week(7);
/// Over this a thing is heavy to lift down: design choice; over 10 kg a rule forbids it.
const HEAVY: Mass = Mass::kg(5);
/// A family on so many faces is scattered: common practice, no source.
const SCATTERED: usize = 3;
/// No board over this is asked for: design choice.
const THICKEST: Length = Length::mm(40);
/// A caster loaded over this share of its rating has little to spare: design choice.
const NEARLY: f64 = 0.9;

/// The name of a surface.
fn surface_name(site: &Site, s: usize) -> String {
    let surface = &site.surfaces[s];
    let space = &site.spaces[surface.space];
    match space.face {
        Face::Top => "the bench".to_owned(),
        face => format!("{} / {} / {}", face.name(), space.name, surface.name),
    }
}

/// Changes in words.
pub(super) fn changes(board: &Board, changes: &[Change]) -> String {
    let site = board.site();
    let name = |c: &Change| site.lots[c.lot].name(&site.items);
    let places = |c: &Change| c.to.map(|to| to.home.surface);
    let was = |c: &Change| board.place(c.lot).map(|p| p.home.surface);
    if let [a, b] = changes
        && places(a) == was(b)
        && places(b) == was(a)
        && was(a).is_some()
    {
        return format!(
            "let {} and {} change places: {}; {}",
            name(a),
            name(b),
            target(board, a),
            target(board, b)
        );
    }
    let one = |c: &Change| match board.place(c.lot) {
        Some(_) => format!("move {}", target(board, c)),
        None => format!("put {}", target(board, c)),
    };
    changes.iter().map(one).collect::<Vec<_>>().join("; then ")
}

/// Where a change takes a lot: `wig block to front / low bay / floor, lying`.
fn target(board: &Board, change: &Change) -> String {
    let site = board.site();
    let lot = &site.lots[change.lot];
    let name = lot.name(&site.items);
    let Some(to) = change.to else { return format!("{name} off the cart") };
    let form = &lot.forms[to.home.form as usize];
    let before = board.place(change.lot);
    let pose_before = before.map(|p| lot.forms[p.home.form as usize].pose);
    let how = match form.pose {
        _ if pose_before == Some(form.pose) => "",
        Pose::Stand => ", standing",
        Pose::Lie => ", lying",
        Pose::Hang => ", hanging",
    };
    let surface = surface_name(site, to.home.surface as usize);
    match before.map(|p| p.home.surface) == Some(to.home.surface) {
        true => format!("{name} to another spot on {surface}{how}"),
        false => format!("{name} to {surface}{how}"),
    }
}

/// What a lot's place costs a week.
pub(super) fn price(board: &Board, ledger: &Ledger, lot: usize) -> Price {
    parts(board, ledger, lot).iter().map(|p| p.price).sum()
}

/// Why a lot's place costs, with the measured values and their sources; nothing where it is not worth a word.
pub(super) fn place(
    board: &Board,
    ledger: &Ledger,
    lot: usize,
    workspace: &Workspace,
) -> Option<String> {
    let mut told = Vec::new();
    for part in parts(board, ledger, lot).into_iter().filter(|p| p.price >= WORTH) {
        told.push(match part.term {
            "access" => format!("far from the work: {} (MTM-1)", part.told),
            "reach" => match hand(board, ledger, lot) {
                Some((_, Posture::Easy)) => part.told,
                _ => format!("hard to reach: {}; {}", part.told, easy(board)),
            },
            "blocked" => {
                format!("hidden behind {}: {}", in_front(board, ledger, lot), part.told)
            }
            other => format!("{other}: {}", part.told),
        });
    }
    told.extend(too_high(board, ledger, lot));
    let stations = stations_at_wall(board, ledger, lot, workspace);
    if !stations.is_empty() {
        let uses = show_uses(board.site().lots[lot].uses);
        let face = way(board, ledger, lot)?.name();
        told.push(format!(
            "wanted {uses}, but its face, the {face}, stands at a wall: {}",
            stations.join(", ")
        ));
    }
    (!told.is_empty()).then(|| {
        format!("{}: {}", board.site().lots[lot].name(&board.site().items), told.join("; "))
    })
}

/// The heights at which reaching is easy, and who says so.
fn easy(board: &Board) -> String {
    let body = &board.site().body;
    let (low, high) = (body.knuckle.as_mm(), body.shoulder.as_mm());
    format!(
        "easy is {low:.0} to {high:.0} mm (body heights from ANSUR II (2012); seated: 2010 ADA Standards 308)"
    )
}

/// The things that must be moved first.
fn in_front(board: &Board, ledger: &Ledger, lot: usize) -> String {
    let site = board.site();
    let mut closure = Closure::default();
    closure.find(board, lot, ledger.way(lot));
    closure.lots.sort_unstable();
    let names: Vec<String> =
        closure.lots.iter().map(|&l| site.lots[l as usize].name(&site.items)).collect();
    names.join(" and ")
}

/// Height of the hand and how it gets there.
fn hand(board: &Board, ledger: &Ledger, lot: usize) -> Option<(Length, Posture)> {
    let site = board.site();
    let place = board.place(lot)?;
    let grip = site.lots[lot].grip(site, place, ledger.way(lot));
    Some((grip.height, site.body.posture(&grip)))
}

/// What is heavy and taken from above the shoulder, under the rule's limit.
fn too_high(board: &Board, ledger: &Ledger, lot: usize) -> Option<String> {
    let site = board.site();
    let l = &site.lots[lot];
    let (height, posture) = hand(board, ledger, lot)?;
    let high = height > site.body.shoulder && posture == Posture::Stretch;
    (high && l.unit > HEAVY && site.items[l.item].fetched).then(|| {
        format!(
            "too heavy too high: {:.1} kg lifted down from {:.0} mm, above the shoulder at {:.0} mm (over 5 kg: design choice)",
            l.unit.as_kg(),
            height.as_mm(),
            site.body.shoulder.as_mm()
        )
    })
}

/// The way that a lot is taken.
fn way(board: &Board, ledger: &Ledger, lot: usize) -> Option<Face> {
    board.space_of(lot).map(|s| board.site().spaces[s].ways[ledger.way(lot)])
}

/// The stations at which a daily thing stands at a wall.
fn stations_at_wall(
    board: &Board,
    ledger: &Ledger,
    lot: usize,
    workspace: &Workspace,
) -> Vec<String> {
    let Some(way) = way(board, ledger, lot) else { return Vec::new() };
    if board.site().lots[lot].uses < DAILY {
        return Vec::new();
    }
    let stations = &workspace.shop.stations;
    stations.iter().filter(|s| s.walls.contains(&way)).map(|s| s.name.clone()).collect()
}

/// What is wanted daily and stands at a wall, station by station.
pub(super) fn at_wall(board: &Board, ledger: &Ledger, workspace: &Workspace) -> Vec<AtWall> {
    let site = board.site();
    let mut all = Vec::new();
    for station in &workspace.shop.stations {
        let mut items: Vec<String> = Vec::new();
        for lot in 0..site.lots.len() {
            let here = stations_at_wall(board, ledger, lot, workspace).contains(&station.name);
            let name = &site.items[site.lots[lot].item].name;
            if here && !items.contains(name) {
                items.push(name.clone());
            }
        }
        if !items.is_empty() {
            all.push(AtWall { station: station.name.clone(), items });
        }
    }
    all
}

/// Families on so many faces that it is hard to remember where their things are, with what that costs; companions that
/// are apart and jobs that lead round several faces, where they cost enough to be worth a word.
pub(super) fn ties(board: &Board, ledger: &Ledger) -> Vec<(String, Price)> {
    let site = board.site();
    let mut all = Vec::new();
    for (c, card) in COSTS.iter().enumerate() {
        let (subjects, family) = match card.scope {
            Scope::Companions => (site.ties.companions.len(), false),
            Scope::Family => (site.ties.families.len(), true),
            Scope::Job => (site.ties.jobs.len(), false),
            _ => continue,
        };
        let worth = |n: &usize| match family {
            true => ledger.tally().family(*n).count() >= SCATTERED,
            false => ledger.cost(c, *n) >= WORTH,
        };
        all.extend((0..subjects).filter(worth).map(|n| {
            let part = subject(board, ledger, c, n);
            let easier = "; one or two are easier to remember (common practice, no source)";
            let easier = if family { easier } else { "" };
            (format!("{}: {}{easier}", card.name, part.told), part.price)
        }));
    }
    all
}

/// What casters and tipping have to spare, where that is little or costs something.
pub(super) fn margins(board: &Board, costs: bool) -> Option<String> {
    let (site, stand) = (board.site(), board.stand());
    let mut told = Vec::new();
    if costs {
        let tip = match stand.tip {
            [degrees, limit] if limit > 0.0 => {
                format!(
                    ", and the least tip angle is {degrees:.1} degrees with {limit:.0} asked for"
                )
            }
            _ => String::new(),
        };
        told.push(format!(
            "balance: the heaviest caster carries {:.1} kg with a mean of {:.1} kg{tip} (free up to 1.15 times the mean and from 1.5 times the limit on: design choice)",
            stand.heaviest, stand.mean
        ));
    }
    let rating = site.statics.rating.map(Mass::as_kg);
    if let Some(rating) = rating.filter(|r| stand.worst > NEARLY * r && stand.worst <= *r) {
        told.push(format!(
            "casters: one carries up to {:.1} kg of {rating:.1} kg (the rating stated in the carcass file)",
            stand.worst
        ));
    }
    (!told.is_empty()).then(|| told.join("; "))
}

/// The smallest change of the carcass that mends a broken rule, where one is known.
pub(super) fn carcass(board: &Board, cause: &Cause, unit: Unit) -> Option<String> {
    let [value, limit] = cause.value;
    let &(rule, subject) = cause.wrong.subjects.first()?;
    let mass = |kg: f64| show_mass(Mass::from_kg(kg), unit.imperial());
    match (cause.rule, RULES[rule].scope) {
        ("supported", Scope::Surface) => {
            let stronger = stronger(board, subject, cause, unit)?;
            Some(format!("no move, swap or short series mends it; {stronger}"))
        }
        ("casters", _) => Some(format!(
            "no move, swap or short series mends it; fit casters rated for at least {} each",
            mass(value)
        )),
        ("tip", _) => wider(board, value, limit, unit),
        _ => None,
    }
}

/// The least whole millimetres that the board under a surface must be thick for what is on it.
fn thick_enough(board: &Board, surface: usize) -> Option<Length> {
    let span = board.site().surfaces[surface].span.as_ref()?;
    let thickest = THICKEST.as_mm() as i64;
    let mut all = (span.plank.thickness.as_mm() as i64 + 1..=thickest).map(Length::mm);
    all.find(|&thickness| {
        let thicker = Span::under(board.free(surface), Plank { thickness, ..span.plank });
        let sag = thicker.beam.sag(thicker.loads(board, surface));
        let moment = thicker.beam.moment(thicker.loads(board, surface));
        sag <= thicker.first_limit && moment <= thicker.most_moment
    })
}

/// How a surface would carry what it is asked to.
fn stronger(board: &Board, surface: usize, cause: &Cause, unit: Unit) -> Option<String> {
    let site = board.site();
    let name = surface_name(site, surface);
    let [value, limit] = cause.value;
    let mass = |kg: f64| show_mass(Mass::from_kg(kg), unit.imperial());
    match cause.source {
        STATED => Some(format!(
            "make {name} strong enough for {} instead of {}",
            mass(value),
            mass(limit)
        )),
        SAG | STRENGTH => Some(match thick_enough(board, surface) {
            Some(thick) => {
                format!(
                    "make the board of {name} {} thick, or prop it in the middle",
                    show_length(thick, unit)
                )
            }
            None => format!("prop the board of {name} in the middle"),
        }),
        FIXINGS => {
            Some(format!("hang it on {name} with more or thicker screws, or stronger hooks"))
        }
        _ => None,
    }
}

/// How much further out the casters of the side must be over which the cart goes.
fn wider(board: &Board, degrees: f64, limit: f64, unit: Unit) -> Option<String> {
    let footprint = board.site().statics.footprint.as_ref()?;
    let case = board.cases().filter(|c| !matches!(c.kind, CaseKind::Away(_))).min_by(|a, b| {
        (a.tip(footprint).1 - degrees).abs().total_cmp(&(b.tip(footprint).1 - degrees).abs())
    })?;
    let height = case.moments[2] / case.total;
    let tan = |d: f64| libm::tan(d.to_radians());
    let more = Length::from_mm((height * (tan(limit) - tan(degrees))).ceil());
    let side = footprint.way(case.tip(footprint).0).name();
    Some(format!(
        "no move, swap or short series mends it; set the casters at the {side} {} further out",
        show_length(more, unit)
    ))
}
