//! The search against mathematics: the rearrangement inequality for who goes where, a reference graph for what must be
//! moved first. The shortest way on foot has a file of its own (`tests/walk.rs`).

#[path = "../support/carts/mod.rs"]
#[allow(dead_code, unused_imports)]
mod carts;
#[path = "../support/planner.rs"]
mod planner;

use super::check::{Status, Topic};
use carts::{Dice, Size};
use petgraph::algo::toposort;
use petgraph::graph::{DiGraph, NodeIndex};
use petgraph::visit::Dfs;
use toolberth::domain::{Bay, Depth, Face, Station, Workspace};
use toolberth::finding::Span;
use toolberth::geometry::Box3;
use toolberth::score::{Closure, way_prices};
use toolberth::site::{Board, Change, Clearing, Place, Site, SpaceKind, Touched, for_each_corner};
use toolberth::units::{Length, Mass, Price, Share, Time, Uses};

// ------------------------------------------------------------------ busiest to nearest

/// All orders of the numbers below n.
fn orders(n: usize) -> Vec<Vec<usize>> {
    if n == 0 {
        return vec![Vec::new()];
    }
    let shorter = orders(n - 1);
    let longer = shorter.iter().flat_map(|order| {
        (0..n).map(move |at| {
            let mut order = order.clone();
            order.insert(at, n - 1);
            order
        })
    });
    longer.collect()
}

/// What it costs when the k-th thing has the place of that number.
fn cost(uses: &[Uses], seconds: &[Time], order: &[usize]) -> Price {
    uses.iter().zip(order).map(|(u, &k)| u.cost(seconds[k])).sum()
}

/// The rearrangement inequality: a sum of products is least when one row rises as the other falls, and greatest when
/// both rise.
fn pairing(topic: &mut Topic) {
    let uses = [20, 10, 5, 1].map(Uses::per_week);
    let seconds = [2, 3, 5, 8].map(Time::s);
    let all: Vec<Price> = orders(4).iter().map(|o| cost(&uses, &seconds, o)).collect();
    assert_eq!(all.len(), 24);
    let [least, most] = [all.iter().min(), all.iter().max()].map(|p| p.expect("orders").as_s());
    topic
        .against("units::Uses::cost", Status::Computed, REARRANGED)
        .near("uses 20 10 5 1 with 2 3 5 8 s, the least of all orders", least, 103.0, 0.0)
        .near("the greatest of all orders", most, 227.0, 0.0)
        .near("sorted against sorted", cost(&uses, &seconds, &[0, 1, 2, 3]).as_s(), 103.0, 0.0)
        .near("the worst order", cost(&uses, &seconds, &[3, 2, 1, 0]).as_s(), 227.0, 0.0);
}

/// The thing that fits every slot: 100 × 80 × 130 mm, no other way up, not turned.
const THING: [i64; 3] = [100, 80, 130];
/// What a slot has over the thing's height.
const CLEAR: i64 = 25;

/// A slot for one thing, as a bay of its own.
fn slot(face: Face, number: usize, at: [i64; 2]) -> Bay {
    Bay {
        face,
        name: format!("slot {number}"),
        at: at.map(Length::mm),
        opening: [THING[0], THING[2] + CLEAR].map(Length::mm),
        depth: Depth::Deep(Length::mm(THING[1])),
        limit: None,
        shelves: Vec::new(),
        hang: Vec::new(),
        fixing: Default::default(),
        ends: Default::default(),
        span: Span::none(),
    }
}

/// Things alike but for their uses, one slot for each.
fn slots(bays: Vec<Bay>, uses: &[Uses]) -> Workspace {
    let mut carcass = carts::empty(900, 700, 900, 110);
    carcass.mass = Some(Mass::kg(40));
    carcass.bays = bays;
    let size = THING.map(Length::mm);
    let thing = |(n, uses): (usize, &Uses)| {
        let mut item = carts::plain(&format!("thing {n}"), size, Mass::kg(1), *uses);
        item.poses[1] = None;
        item.turn = false;
        item
    };
    let items = uses.iter().enumerate().map(thing).collect();
    Workspace { carcass, items, shop: carts::plain_shop(), layout: None }
}

/// What a fetch costs from each slot, walking and reaching, in the order of the bays.
fn seconds(site: &Site) -> Vec<Time> {
    let board = Board::new(site);
    let each = |s: usize| {
        let home = site.lots[0].homes.iter().find(|h| h.surface as usize == s);
        let mut prices = Vec::new();
        for_each_corner(&board, 0, home.expect("it fits"), &mut Clearing::default(), |place| {
            prices.extend(way_prices(site, 0, &place).map(|(_, each)| each));
            true
        });
        assert_eq!(prices.len(), 1, "a slot has one place and one way");
        prices[0]
    };
    (0..site.surfaces.len())
        .filter(|&s| site.spaces[site.surfaces[s].space].kind == SpaceKind::Bay)
        .map(each)
        .collect()
}

/// The plan's access and reach, with nothing left out and nothing behind anything.
fn planned(workspace: &Workspace, seed: u64) -> Price {
    let plan = planner::plan(workspace, seed, 1);
    assert!(plan.left_out.is_empty());
    let term = |name: &str| plan.worth.terms.iter().find(|t| t.0 == name).expect("a term").1;
    assert_eq!(term("blocked"), Price::ZERO);
    term("access") + term("reach")
}

/// The same four things and places as a cart: a slot in each face at one height, the walks stretched by faces that are
/// now and then at a wall until a fetch from the four takes 0, 10, 30 and 60 s more than from the front. Ten times the
/// example, less what every place has in common.
fn example(topic: &mut Topic) {
    let faces = [Face::Front, Face::Left, Face::Right, Face::Back];
    let middle = [400, 300, 300, 400];
    let bays: Vec<Bay> = (0..4).map(|k| slot(faces[k], k, [middle[k], 600])).collect();
    let uses = [20, 10, 5, 1].map(Uses::per_week);
    let mut workspace = slots(bays, &uses);
    let walks = seconds(&Site::new(&workspace).expect("a sound cart"));
    workspace.shop.rates.roll_out = Time::s(1000);
    let mut left = Share::ALL.as_ppm();
    let mut stations = Vec::new();
    for (k, more) in [(1, 10), (2, 30), (3, 60)] {
        // Of 1000 s in so many millionths of all fetches: a millisecond each.
        let share = (Time::s(more).as_us() - (walks[k] - walks[0]).as_us()) / 1000;
        left -= share;
        stations.push((share, vec![faces[k]]));
    }
    stations.push((left, Vec::new()));
    let station = |(share, walls)| Station {
        name: "bench".to_owned(),
        share: Share::ppm(share),
        work: Face::Front,
        walls,
        span: Span::none(),
    };
    workspace.shop.stations = stations.into_iter().map(station).collect();
    let base = seconds(&Site::new(&workspace).expect("a sound cart"))[0].as_s();
    // Σ uses × (base − 20 + ten times the example's seconds)
    let right = 1030.0 + 36.0 * (base - 20.0);
    topic.against("solve::solve", Status::Computed, REARRANGED).near(
        "a cart made of the example is planned to the least of all orders",
        planned(&workspace, 1).as_s(),
        right,
        0.1,
    );
}

/// Slots at random on the front and the back, one for each of so many things.
fn random_slots(dice: &mut Dice, count: usize) -> Workspace {
    let grid = |face| (0..6).flat_map(move |c| (0..4).map(move |r| (face, c, r)));
    let mut free: Vec<(Face, i64, i64)> = grid(Face::Front).chain(grid(Face::Back)).collect();
    let bays = (0..count).map(|n| {
        let (face, column, row) = free.swap_remove(dice.whole(0, free.len() as i64 - 1) as usize);
        slot(face, n, [20 + column * 140, 130 + row * 185 + dice.whole(0, 29)])
    });
    let bays = bays.collect();
    let uses: Vec<Uses> = (0..count).map(|_| Uses::from_week(dice.spread(0.1, 20.0))).collect();
    slots(bays, &uses)
}

/// Places of one size go to the busiest first, whatever their number.
fn places_alike(topic: &mut Topic) {
    let mut matters = 0;
    let mut rows = Vec::new();
    for seed in 0..12 {
        let mut dice = Dice::new(seed);
        let count = dice.whole(3, 20) as usize;
        let workspace = random_slots(&mut dice, count);
        let site = Site::new(&workspace).expect("a sound cart");
        let mut seconds = seconds(&site);
        let mut uses: Vec<Uses> = site.lots.iter().map(|l| l.uses).collect();
        seconds.sort_unstable();
        uses.sort_unstable();
        uses.reverse();
        let order: Vec<usize> = (0..count).collect();
        let backwards: Vec<usize> = (0..count).rev().collect();
        let (least, most) = (cost(&uses, &seconds, &order), cost(&uses, &seconds, &backwards));
        matters += usize::from(least < most);
        // Access and reach are rounded to a microsecond each.
        let rounding = 2e-6 * count as f64;
        let found = planned(&workspace, seed).as_s();
        rows.push((format!("cart {seed}, {count} things"), found, least.as_s(), rounding));
    }
    topic
        .against("solve::solve", Status::Computed, REARRANGED)
        .table("carts drawn at random with a slot for each thing, the least of all orders", rows)
        .holds("most of them have places of more than one price", matters >= 9);
}

// ------------------------------------------------------------------ what must be moved first

/// From and to in nanometres along each axis.
type Solid = [[i64; 2]; 3];

fn solid(b: &Box3) -> Solid {
    [0, 1, 2].map(|a| [b.min[a].as_nm(), b.max[a].as_nm()])
}

/// Whether the second box lies, even in part, in the first one's way: beyond it, and seen from there not beside it.
fn in_the_way(moved: &Solid, way: Face, other: &Solid) -> bool {
    let axis = match way {
        Face::Left | Face::Right => 0,
        Face::Front | Face::Back => 1,
        Face::Top => 2,
    };
    let beyond = match way {
        Face::Front | Face::Left => other[axis][1] <= moved[axis][0],
        Face::Back | Face::Right | Face::Top => other[axis][0] >= moved[axis][1],
    };
    let beside = |k: usize| moved[k][1] <= other[k][0] || other[k][1] <= moved[k][0];
    beyond && !(0..3).any(|k| k != axis && beside(k))
}

/// What leaves the cart when a lot is fetched: its box, or the whole drawer. On the bench nothing is in the way.
fn leaves(site: &Site, place: &Place) -> Option<Solid> {
    let space = &site.spaces[site.surfaces[place.home.surface as usize].space];
    match space.kind {
        SpaceKind::Bay | SpaceKind::Panel => Some(solid(&place.space)),
        SpaceKind::Drawer => Some(solid(&space.volume)),
        SpaceKind::Bench => None,
    }
}

/// The way in which a lot leaves when another is fetched along `way`: that one where its space opens to it.
fn own_way(site: &Site, place: &Place, way: Face) -> Face {
    let ways = &site.spaces[site.surfaces[place.home.surface as usize].space].ways;
    if ways.contains(&way) { way } else { ways[0] }
}

/// An edge from each lot to each lot that must be moved before it, when everything leaves along `way` if it can. A node
/// has the number of its lot.
fn graph(board: &Board, way: Face) -> DiGraph<(), ()> {
    let site = board.site();
    let placed = || board.places().iter().enumerate().filter_map(|(l, p)| Some((l, p.as_ref()?)));
    let mut graph = DiGraph::new();
    for _ in board.places() {
        graph.add_node(());
    }
    for (lot, place) in placed() {
        let Some(moved) = leaves(site, place) else { continue };
        for (other, there) in placed() {
            let kind = site.spaces[site.surfaces[there.home.surface as usize].space].kind;
            let blocks = matches!(kind, SpaceKind::Bay | SpaceKind::Panel);
            if blocks && in_the_way(&moved, own_way(site, place, way), &solid(&there.space)) {
                graph.add_edge(NodeIndex::new(lot), NodeIndex::new(other), ());
            }
        }
    }
    graph
}

/// What stands directly in a lot's way.
fn direct(graph: &DiGraph<(), ()>, lot: usize) -> Vec<u32> {
    let mut all: Vec<u32> = graph.neighbors(NodeIndex::new(lot)).map(number).collect();
    all.sort_unstable();
    all
}

fn number(node: NodeIndex) -> u32 {
    node.index() as u32
}

/// All that can be reached from a lot, itself not counted.
fn closure(graph: &DiGraph<(), ()>, lot: usize) -> Vec<u32> {
    let mut all = Vec::new();
    let mut walk = Dfs::new(graph, NodeIndex::new(lot));
    while let Some(next) = walk.next(graph) {
        if next.index() != lot {
            all.push(number(next));
        }
    }
    all.sort_unstable();
    all
}

/// The start of a cart, its things then moved to other legal places so that the order of use no longer shows.
fn shuffled<'s>(site: &'s Site, dice: &mut Dice, moves: usize) -> Board<'s> {
    let mut board = toolberth::solve::start(site);
    let (mut clearing, mut touched) = (Clearing::default(), Touched::default());
    for _ in 0..moves {
        let lot = dice.whole(0, site.lots.len() as i64 - 1) as usize;
        if site.lots[lot].homes.is_empty() {
            continue;
        }
        let home = dice.one(&site.lots[lot].homes);
        let mut places = Vec::new();
        for_each_corner(&board, lot, &home, &mut clearing, |place| {
            places.push(place);
            true
        });
        if !places.is_empty() {
            let to = Some(dice.one(&places));
            board.apply(Change { lot, to }, &mut touched);
        }
    }
    board
}

/// How many lots wait for others, and for how many the board says something else than the reference.
#[derive(Default)]
struct Compared {
    waiting: usize,
    direct: Vec<String>,
    closure: Vec<String>,
    order: Vec<String>,
}

/// Compares what the board says with the reference, lot by lot and way by way.
fn compare(name: &str, board: &Board, all: &mut Compared) {
    for way in Face::ALL {
        let graph = graph(board, way);
        let ringless = toposort(&graph, None).is_ok();
        for (lot, w) in leaving(board, way) {
            let lot_name = board.site().lots[lot].name(&board.site().items);
            let told = format!("{name}, {lot_name} to the {}", way.name());
            let mut before = board.blockers(lot, w).to_vec();
            before.sort_unstable();
            if before != direct(&graph, lot) {
                all.direct.push(told.clone());
            }
            let mut found = Closure::default();
            found.find(board, lot, w);
            let mut first = found.lots.clone();
            first.sort_unstable();
            // In a ring a lot is in its own way too.
            first.retain(|l| *l as usize != lot);
            if first != closure(&graph, lot) {
                all.closure.push(told.clone());
            }
            all.waiting += usize::from(!first.is_empty());
            let order = found.order(board, way);
            let works = order.iter().enumerate().all(|(n, next)| {
                let gone = |other: &u32| order[..n].contains(other);
                direct(&graph, *next as usize).iter().all(gone)
            });
            let whole = !ringless || (order.len() == first.len() && !found.is_ring(board, way));
            if !(works && whole) {
                all.order.push(told);
            }
        }
    }
}

/// The lots whose space opens to a face, with the number of that way.
fn leaving(board: &Board, way: Face) -> Vec<(usize, usize)> {
    let number = |lot: usize| {
        let space = &board.site().spaces[board.space_of(lot)?];
        Some((lot, space.ways.iter().position(|v| *v == way)?))
    };
    (0..board.places().len()).filter_map(number).collect()
}

/// What must be moved first is all that can be reached in a graph of what each sweep meets.
fn moved_first(topic: &mut Topic) {
    let mut all = Compared::default();
    for seed in 0..90 {
        let size = if seed % 3 == 0 { Size::Large } else { Size::Middle };
        let workspace =
            if seed % 5 == 0 { carts::packed(seed, 40, 0.6) } else { carts::cart(seed, size) };
        let site = Site::new(&workspace).expect("a sound cart");
        let mut dice = Dice::new(seed);
        for round in 0..3 {
            let board = shuffled(&site, &mut dice, round * 40);
            compare(&format!("cart {seed}, round {round}"), &board, &mut all);
        }
    }
    let many = all.waiting > 1000;
    topic
        .against("score::Closure", Status::Computed, GRAPHS)
        .none("what stands directly in the way of each thing of 270 layouts", &all.direct)
        .none("all that must be moved first, by depth-first search", &all.closure)
        .none("an order in which it can be moved, by topological sort", &all.order)
        .holds("over a thousand things of these layouts wait for others", many);
}

const REARRANGED: &str = "rearrangement inequality (Hardy, Littlewood and Pólya, Inequalities, theorem 368; cited from memory), sums computed";
const GRAPHS: &str = "the graph library petgraph on boxes swept in the test's own way";

/// All checks of this file.
pub fn checks() -> Topic {
    let mut topic = Topic::new("storage and order");
    pairing(&mut topic);
    example(&mut topic);
    places_alike(&mut topic);
    moved_first(&mut topic);
    topic
}
