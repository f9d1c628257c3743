//! Why a thing is where it is: the price of its place, the best other slots, and what would change the answer.

use super::offer::{Ask, Fitter, Named, Offer, Spot, lot_price, own_price, said};
use super::outcome::{Broken, LeftOut, TermPart};
use super::standing::{EntryFinding, Standing, standing};
use super::tell;
use crate::domain::{Item, Layout, Pose, Workspace};
use crate::finding::Finding;
use crate::score::{Part, Score, parts, ties};
use crate::site::{Board, Place, best_spots};
use crate::units::{Length, Price, Unit, Uses};

/// How many other slots are told.
const SLOTS: usize = 5;
/// How much lower a thing is thought.
const LOWER: Length = Length::mm(30);
/// What a slot may ask of others.
const ASK: Ask = Ask { others: 2, may_leave: false };

/// The answer for one name.
#[derive(Clone, Debug)]
pub struct Why {
    /// What was asked for, as the inventory writes it.
    pub asked: String,
    /// The unit of the user's files.
    pub units: Unit,
    /// One answer for each copy, pile or row; of several items where the thing is inside several.
    pub lots: Vec<WhyLot>,
}

/// The answer for one copy, pile or row.
#[derive(Clone, Debug)]
pub struct WhyLot {
    /// Which.
    pub named: Named,
    /// Whether what was asked for is inside it.
    pub holds_it: bool,
    /// Whether it is fixed there.
    pub fixed: bool,
    /// Where it is; `None` off the cart.
    pub at: Option<Spot>,
    /// Fetches a week.
    pub uses: Uses,
    /// What its place costs a week; off the cart, what fetching it from elsewhere costs.
    pub price: Price,
    /// The same term by term, in sentences; they add up to the price. Empty off the cart.
    pub terms: Vec<TermPart>,
    /// What it has a part in besides and what that costs in all: companions, families, jobs. Only what costs something.
    pub ties: Vec<TermPart>,
    /// The rules that it breaks, or has a part in breaking.
    pub broken: Vec<Broken>,
    /// Why it is off the cart, with the nearest miss; `None` where it is on it.
    pub off: Option<String>,
    /// The best other slots, the best first; off the cart, then those for which others would leave it.
    pub slots: Vec<Slot>,
    /// Where it would be best off by itself, and what stands in the way.
    pub alone: Option<Alone>,
    /// What would change the answer.
    pub changes: Vec<WhatIf>,
}

/// Another slot.
#[derive(Clone, Debug)]
pub struct Slot {
    /// Where.
    pub spot: Spot,
    /// What the place itself would cost a week.
    pub price: Price,
    /// What the whole layout would change by.
    pub all: Differ,
    /// The same without what those who make room gain by themselves.
    pub own: Differ,
    /// Who makes room and where each goes; `None` is off the cart.
    pub displaced: Vec<(Named, Option<Spot>)>,
}

/// By how much a score differs from the score as it stands.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Differ {
    /// What the layout costs more a week; under nought is a gain.
    pub cost: Price,
    /// What is off the cart more, in seconds a week of fetching from elsewhere; under nought is a gain.
    pub off_cart: Price,
    /// How many rules fewer are broken.
    pub mends: i64,
}

impl Differ {
    fn between(before: Score, after: Score) -> Differ {
        Differ {
            cost: Price::us(after.cost - before.cost),
            off_cart: Price::us(after.off_cart - before.off_cart),
            mends: before.broken - after.broken,
        }
    }
}

/// The best place of a lot were nothing else on the cart.
#[derive(Clone, Debug)]
pub struct Alone {
    /// Where.
    pub spot: Spot,
    /// What it would cost there a week.
    pub price: Price,
    /// What is there now, or would stand before it.
    pub there: Vec<Named>,
    /// The same in words, with what making room there would cost in all.
    pub told: String,
}

/// The answer were the thing another.
#[derive(Clone, Debug)]
pub struct WhatIf {
    /// What is supposed, as `used twice as often`.
    pub suppose: String,
    /// The best slot then, where it is better than staying.
    pub slot: Option<Slot>,
    /// Whether that is the answer as it stands.
    pub same: bool,
}

/// Tells of a thing on a layout why it is where it is.
///
/// # Errors
/// What is wrong with the carcass, or a name that the inventory does not have, with the nearest one.
pub fn why(workspace: &Workspace, layout: &Layout, name: &str) -> Result<Why, Vec<Finding>> {
    let (asked, items) = find(workspace, name)?;
    let stands = standing(workspace, layout)?;
    let workspace = &stands.workspace;
    let mut fitter = Fitter::new(Board::with(&stands.site, &stands.places));
    let lots = (0..stands.site.lots.len()).filter(|&l| items.contains(&stands.site.lots[l].item));
    let lots = lots.map(|l| one(workspace, &mut fitter, &stands.findings, l, &asked)).collect();
    Ok(Why { asked, units: workspace.carcass.units, lots })
}

/// The name as the inventory writes it, and the items that have it or hold it.
fn find(workspace: &Workspace, name: &str) -> Result<(String, Vec<usize>), Vec<Finding>> {
    let wanted = name.trim().to_lowercase();
    let is = |n: &str| n.trim().to_lowercase() == wanted;
    let items = &workspace.items;
    if let Some(i) = items.iter().position(|i| is(&i.name)) {
        return Ok((items[i].name.clone(), vec![i]));
    }
    let held = |i: &Item| i.holds.iter().find(|h| is(h)).cloned();
    let inside: Vec<usize> = (0..items.len()).filter(|&i| held(&items[i]).is_some()).collect();
    match inside.first().and_then(|&i| held(&items[i])) {
        Some(asked) => Ok((asked, inside)),
        None => {
            let names = items.iter().map(|i| i.name.as_str());
            let held = items.iter().flat_map(|i| &i.holds).map(String::as_str);
            let fault = Finding::fault(format!("there is no item `{}`", name.trim()))
                .near(name.trim(), names.chain(held))
                .help("say a name of the inventory, or of a thing that an item holds");
            Err(vec![fault])
        }
    }
}

fn one(
    workspace: &Workspace,
    fitter: &mut Fitter,
    findings: &[EntryFinding],
    lot: usize,
    asked: &str,
) -> WhyLot {
    let (site, before) = (fitter.board.site(), fitter.ledger.score());
    let l = &site.lots[lot];
    let place = fitter.board.place(lot).copied();
    let fixed = l.fixed.is_some() && place.is_some();
    let all = if fixed { Vec::new() } else { fitter.offers(lot, asking(place.as_ref())) };
    let slots: Vec<Slot> =
        best(&all, place.as_ref()).into_iter().map(|o| slot(fitter, lot, o, before)).collect();
    let first = all.iter().find(|o| place.is_none_or(|h| o.to.space != h.space));
    let gains = slots.first().filter(|_| first.is_some_and(|o| o.is_gain(before)));
    let told = tell::plan(&fitter.board, &fitter.ledger, workspace);
    let name = &site.items[l.item].name;
    let (mut terms, mut besides) = (Vec::new(), Vec::new());
    if place.is_some() {
        terms = told_of(parts(&fitter.board, &fitter.ledger, lot));
        besides = told_of(ties(&fitter.board, &fitter.ledger, lot));
    }
    let mut off: Vec<&str> =
        findings.iter().filter(|f| f.item == *name).map(|f| f.what.as_str()).collect();
    if slots.iter().all(|s| !s.displaced.is_empty()) {
        let mine = |o: &&LeftOut| o.copy.item == *name && o.copy.copy == l.first;
        off.extend(told.left_out.iter().find(mine).map(|o| o.why.as_str()));
    }
    WhyLot {
        named: Named::of(&fitter.board, lot),
        holds_it: !name.eq_ignore_ascii_case(asked),
        fixed,
        at: place.map(|p| Spot::of(&fitter.board, lot, &p)),
        uses: l.uses,
        price: if place.is_some() { lot_price(&fitter.ledger, lot) } else { l.off_cart },
        terms,
        ties: besides,
        broken: told.worth.broken.into_iter().filter(|b| b.items.contains(name)).collect(),
        off: place.is_none().then(|| off.join("; ")),
        alone: alone(fitter, lot, &slots),
        changes: if fixed { Vec::new() } else { suppositions(workspace, fitter, lot, gains) },
        slots,
    }
}

fn told_of(parts: Vec<Part>) -> Vec<TermPart> {
    let told = |p: Part| TermPart { term: p.term, price: p.price, told: p.told };
    parts.into_iter().map(told).collect()
}

/// For something off the cart others may leave it: that is told, not advised.
fn asking(place: Option<&Place>) -> Ask {
    Ask { may_leave: place.is_none(), ..ASK }
}

/// The best offer on each surface; where those are few, further places on them.
fn best<'a>(all: &'a [Offer], here: Option<&Place>) -> Vec<&'a Offer> {
    let mut surfaces: Vec<u32> = Vec::new();
    let mut first = Vec::new();
    let mut further = Vec::new();
    for offer in all.iter().filter(|o| here.is_none_or(|h| o.to.space != h.space)) {
        if surfaces.contains(&offer.to.home.surface) {
            further.push(offer);
        } else {
            surfaces.push(offer.to.home.surface);
            first.push(offer);
        }
    }
    // Another place on a surface is told only where others make room for it, or nobody.
    let mut told: Vec<(u32, Vec<usize>)> = first.iter().map(|o| asked_of(o)).collect();
    further.retain(|o| {
        let asked = asked_of(o);
        let new = !told.contains(&asked);
        told.extend(new.then_some(asked));
        new
    });
    first.truncate(SLOTS);
    let more = SLOTS - first.len();
    first.extend(further.into_iter().take(more));
    first.sort_by_key(|o| o.merit());
    first
}

/// The surface of an offer, and who makes room on it.
fn asked_of(offer: &Offer) -> (u32, Vec<usize>) {
    (offer.to.home.surface, offer.others.iter().map(|o| o.0).collect())
}

/// An offer in words and figures.
fn slot(fitter: &Fitter, lot: usize, offer: &Offer, before: Score) -> Slot {
    let mut then = fitter.clone();
    then.make(&offer.changes(lot));
    let displaced = |&(other, to): &(usize, Option<Place>)| {
        (Named::of(&then.board, other), to.map(|p| Spot::of(&then.board, other, &p)))
    };
    Slot {
        spot: Spot::of(&then.board, lot, &offer.to),
        price: lot_price(&then.ledger, lot),
        all: Differ::between(before, offer.score),
        own: Differ::between(offer.base, offer.score),
        displaced: offer.others.iter().map(displaced).collect(),
    }
}

/// The best place were nothing else on the cart, and what is there.
fn alone(fitter: &Fitter, lot: usize, slots: &[Slot]) -> Option<Alone> {
    let (board, site) = (&fitter.board, fitter.board.site());
    let spots = site.lots[lot].homes.iter().flat_map(|home| {
        best_spots(site, home).into_iter().map(|space| Place { home: *home, space })
    });
    let inside = |p: &Place| board.free(p.home.surface as usize).contains(&p.space);
    let to = spots.filter(inside).min_by_key(|p| own_price(board, lot, p))?;
    let spot = Spot::of(board, lot, &to);
    let price = own_price(board, lot, &to);
    let there = in_the_way(board, lot, &to);
    let told = tell_alone(board, lot, (&spot, price), &there, slots);
    Some(Alone { spot, price, there: there.iter().map(|&l| Named::of(board, l)).collect(), told })
}

/// What stands in a place, or between it and the easiest way out.
fn in_the_way(board: &Board, lot: usize, to: &Place) -> Vec<usize> {
    let site = board.site();
    let space = &site.spaces[site.surfaces[to.home.surface as usize].space];
    let way = crate::score::way_prices(site, lot, to).min_by_key(|&(_, t)| t).map_or(0, |w| w.0);
    let met = |b: &crate::geometry::Box3| {
        to.space.overlaps(b) || space.blocks() && to.space.swept_meets(space.ways[way], b)
    };
    (0..site.lots.len())
        .filter(|&l| l != lot && board.place(l).is_some_and(|p| met(&p.space)))
        .collect()
}

fn tell_alone(
    board: &Board,
    lot: usize,
    (spot, price): (&Spot, Price),
    there: &[usize],
    slots: &[Slot],
) -> String {
    let site = board.site();
    let names: Vec<String> = there.iter().map(|&l| site.lots[l].name(&site.items)).collect();
    let by_itself =
        format!("By itself it would be best on {}, for {:.1} s a week", spot.name(), price.as_s());
    let taken = match names.len() {
        0 if board.place(lot).is_some_and(|p| p.space == spot.space) => {
            return format!("{by_itself}: there it is");
        }
        0 => "nothing is there".to_owned(),
        _ => format!("{} in the way there", are(&names)),
    };
    let offer = slots.iter().find(|s| s.spot.name() == spot.name());
    let whole = match offer {
        Some(s) if s.own.cost > Price::ZERO => {
            format!("; going there would cost {:.1} s a week more in all", s.own.cost.as_s())
        }
        Some(s) if s.own.off_cart <= Price::ZERO => {
            format!("; going there would save {:.1} s a week in all", -s.own.cost.as_s())
        }
        _ => "; no legal place there is among the best".to_owned(),
    };
    format!("{by_itself}; {taken}{whole}")
}

fn are(names: &[String]) -> String {
    match names {
        [one] => format!("{one} is"),
        [first @ .., last] => format!("{} and {last} are", first.join(", ")),
        [] => String::new(),
    }
}

/// The answers were the thing used twice as often, or lower.
fn suppositions(
    workspace: &Workspace,
    fitter: &Fitter,
    lot: usize,
    best: Option<&Slot>,
) -> Vec<WhatIf> {
    let item = fitter.board.site().lots[lot].item;
    let mut all = Vec::new();
    let mut often = workspace.clone();
    often.items[item].uses = often.items[item].uses * 2;
    all.extend(suppose(&often, fitter, lot, best, "used twice as often"));
    let mut low = workspace.clone();
    if lower(&mut low.items[item]) {
        let unit = workspace.carcass.units;
        let told = format!("{} lower", crate::units::show_length(LOWER, unit));
        all.extend(suppose(&low, fitter, lot, best, &told));
    }
    all
}

/// Makes an item lower in every pose; `false` where it is too low for that.
fn lower(item: &mut Item) -> bool {
    let sizes = [Some(item.size), item.pose(Pose::Stand), item.pose(Pose::Hang)];
    if sizes.iter().flatten().any(|d| d.h <= LOWER)
        || item.pose(Pose::Lie).is_some_and(|d| d.d <= LOWER)
    {
        return false;
    }
    item.size.h -= LOWER;
    for pose in Pose::ALL {
        if let Some(dims) = &mut item.poses[pose as usize] {
            // Tipped on its back, its height is the depth.
            *(if pose == Pose::Lie { &mut dims.d } else { &mut dims.h }) -= LOWER;
        }
    }
    item.grip = item.grip.map(|g| g.min(item.size.h));
    true
}

/// The best slot in a changed workspace with everything where it is now.
fn suppose(
    workspace: &Workspace,
    fitter: &Fitter,
    lot: usize,
    best: Option<&Slot>,
    told: &str,
) -> Option<WhatIf> {
    let now = said(&fitter.board, &fitter.ledger, workspace);
    let stands: Standing = standing(workspace, &now).ok()?;
    let l = &fitter.board.site().lots[lot];
    let same = (0..stands.site.lots.len())
        .find(|&k| stands.site.lots[k].item == l.item && stands.site.lots[k].first == l.first)?;
    let mut then = Fitter::new(Board::with(&stands.site, &stands.places));
    let before = then.ledger.score();
    let here = then.board.place(same).copied();
    let all = then.offers(same, Ask { may_leave: false, ..ASK });
    let better =
        all.iter().find(|o| o.score < before && here.is_none_or(|h| o.to.space != h.space));
    let slot = better.map(|o| slot(&then, same, o, before));
    let same = match (&slot, best) {
        (None, None) => true,
        (Some(a), Some(b)) => a.spot.name() == b.spot.name(),
        _ => false,
    };
    Some(WhatIf { suppose: told.to_owned(), slot, same })
}
