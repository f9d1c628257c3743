//! A board and its ledger in the words and figures of a plan.

mod boards;
mod caution;
mod elevation;
mod extremes;
mod figures;
mod ground;
mod lifts;
mod loading;
mod mass;
mod missing;
mod placement;
mod reserve;
mod rolling;
mod stability;
mod ties;

use super::outcome::{Bound, Effort, LeftOut, Plan, Solid, Start, Status, SurfaceLoad, Worth};
use crate::domain::{Hand, Layout, ShelfEntry, Workspace};
use crate::finding::Finding;
use crate::physics::motion;
use crate::score::{COSTS, Ledger, broken};
use crate::site::{Board, SpaceKind};
use crate::units::Price;

pub(crate) use caution::foreseen;
pub(crate) use missing::miss;

/// Everything that can be told of a layout by itself; seed, start, bound and effort are filled in by the task.
pub(crate) fn plan(board: &Board, ledger: &Ledger, workspace: &Workspace) -> Plan {
    let order = placement::order(board);
    let placements = placement::placements(board, ledger, &order);
    let worth = worth(board, ledger);
    let left_out = left_out(board, ledger, workspace.carcass.units);
    let status = match (worth.broken.is_empty(), left_out.is_empty()) {
        (false, _) => Status::Unsafe,
        (true, false) => Status::Partial,
        (true, true) => Status::Complete,
    };
    let reserve = reserve::keep(board, ledger, workspace);
    let casters = reserve.casters;
    let tips = mass::tips(board);
    let loading = loading::loading(board, &order, &placements);
    let rolling = rolling::rolling(board, workspace);
    let mut stability = stability::stability(board, ledger, workspace);
    stability.loading = stability::loading(board, workspace, &order, &placements, &loading);
    let lifts = lifts::lifts(board, ledger, &order);
    let mut plan = Plan {
        name: workspace.carcass.name.clone(),
        units: workspace.carcass.units,
        status,
        seed: 0,
        cautions: caution::cautions(board, workspace, &casters, &stability, &rolling, &lifts),
        elevations: elevation::elevations(board, workspace, &order, &placements),
        ground: ground::ground(board.site(), workspace),
        person: ground::person(board.site()),
        loading,
        stability,
        rolling,
        earning_least: placement::earning_least(board, ledger, &order),
        layout: layout(board, workspace),
        shelves: None,
        balance: mass::balance(board),
        casters,
        lifts,
        tips,
        boards: boards::boards(board),
        fixings: boards::fixings(board),
        extremes: Vec::new(),
        worth,
        handling: handling(board),
        left_out,
        placements,
        reserve: reserve.kept,
        growth: reserve::growth(board, ledger),
        companions: ties::companions(board, ledger),
        families: ties::families(board, ledger),
        jobs: ties::jobs(board, ledger),
        surfaces: surfaces(board),
        solids: solids(board),
        start: Start { cost: Price::ZERO, off_cart: Price::ZERO, broken: 0, same_items: false },
        bound: Bound { cost: None, gap: None, gap_with_handling: None, proof: Default::default() },
        effort: Effort::default(),
        notes: reserve.notes.into_iter().chain(handedness(workspace)).collect(),
        from_memory: motion::FROM_MEMORY.to_vec(),
    };
    plan.extremes = extremes::extremes(&plan);
    plan
}

/// The layout as a file says it.
pub(super) fn layout(board: &Board, workspace: &Workspace) -> Layout {
    let order = placement::order(board);
    Layout { entries: placement::entries(board, &order), shelves: standing_shelves(workspace) }
}

/// No source was read for what the better hand gains, so nothing is priced for it; said to whom it would matter most.
fn handedness(workspace: &Workspace) -> Option<Finding> {
    let left = workspace.shop.person.hand == Hand::Left;
    left.then(|| {
        Finding::note("handedness: not priced, for no source was read for what it changes")
    })
}

fn worth(board: &Board, ledger: &Ledger) -> Worth {
    let items = |lots: &[u32]| {
        let mut names: Vec<String> = Vec::new();
        for &l in lots {
            let lot = &board.site().lots[l as usize];
            let name = &board.site().items[lot.item].name;
            if !names.contains(name) {
                names.push(name.clone());
            }
        }
        names
    };
    Worth {
        cost: Price::us(ledger.score().cost),
        off_cart: Price::us(ledger.score().off_cart),
        terms: COSTS.iter().enumerate().map(|(c, card)| (card.name, ledger.term(c))).collect(),
        broken: broken(board, ledger)
            .into_iter()
            .map(|b| super::outcome::Broken {
                rule: b.rule,
                items: items(&b.lots),
                told: b.told,
                value: b.against.value,
                limit: b.against.limit,
                source: b.source,
            })
            .collect(),
    }
}

/// Every copy that is off the cart, the most valuable first.
fn left_out(board: &Board, ledger: &Ledger, unit: crate::units::Unit) -> Vec<LeftOut> {
    let site = board.site();
    let mut off: Vec<usize> = (0..site.lots.len()).filter(|&l| board.place(l).is_none()).collect();
    off.sort_by_key(|&l| (std::cmp::Reverse(site.lots[l].off_cart), l));
    let mut all = Vec::new();
    for l in off {
        let lot = &site.lots[l];
        let why = missing::why(board, ledger, l, unit);
        for k in 0..lot.copies {
            let copy = super::outcome::Copy {
                item: site.items[lot.item].name.clone(),
                copy: lot.first + k,
            };
            let share = lot.off_cart.as_us() / i64::from(lot.copies);
            all.push(LeftOut { copy, why: why.clone(), price: Price::us(share) });
        }
    }
    all
}

fn handling(board: &Board) -> Price {
    let lots = &board.site().lots;
    let on = (0..lots.len()).filter(|&l| board.place(l).is_some());
    on.map(|l| lots[l].uses.cost(lots[l].handling)).sum()
}

fn surfaces(board: &Board) -> Vec<SurfaceLoad> {
    let site = board.site();
    (0..site.surfaces.len())
        .map(|s| {
            let surface = &site.surfaces[s];
            let space = &site.spaces[surface.space];
            SurfaceLoad {
                face: space.face,
                bay: space.name.clone(),
                surface: surface.name.clone(),
                kind: surface.kind,
                space: *board.free(s),
                load: if space.kind == SpaceKind::Bench {
                    space.surfaces.iter().map(|&z| board.load(z)).sum()
                } else {
                    board.load(s)
                },
                limit: surface.limit,
            }
        })
        .collect()
}

fn solids(board: &Board) -> Vec<Solid> {
    let boards = &board.site().boards;
    boards
        .iter()
        .enumerate()
        .map(|(k, b)| Solid { what: b.name.clone(), space: *board.board(k) })
        .collect()
}

/// The shelves as the layout at hand has them: they stay where they are.
fn standing_shelves(workspace: &Workspace) -> Vec<ShelfEntry> {
    workspace.layout.as_ref().map_or_else(Vec::new, |layout| layout.shelves.clone())
}
