//! A small cart with a plan worked out by hand, to try the judge on.
//!
//! Four casters at the corners of a rectangle: for those, loads, hanging and tipping follow from closed formulas.

use super::carts;
use toolberth::domain::{
    Bay, Depth, Dims, Drawer, Entry, Face, Hazard, Hazards, Layout, Overhang, Panel, Pose, Shelf,
    Workspace,
};
use toolberth::finding::Span;
use toolberth::geometry::Box3;
use toolberth::tasks::outcome::{
    Balance, Bound, CasterLoad, Copy, Effort, Ground, Kind, LeftOut, Person, Placement, Plan,
    Rolling, Solid, Stability, Start, Status, SurfaceLoad, TermPart, Tip, Worth, Zone,
};
use toolberth::units::{Length, Mass, Price, Time, Unit, Uses};

/// Middle of the casters and half their distances, in millimetres.
const MIDDLE: [f64; 2] = [500.0, 250.0];
const HALF: [f64; 2] = [450.0, 200.0];
/// Empty cart with its drawer, and where that acts.
const EMPTY: f64 = 44.0;
const CENTRE: [f64; 3] = [550.0, 260.0, 400.0];
/// What moves with the drawer: itself and what lies in it.
const PULLED: f64 = 4.5;
const REACH: f64 = 400.0;

fn mm(values: [i64; 2]) -> [Length; 2] {
    values.map(Length::mm)
}

fn solid(min: [i64; 3], max: [i64; 3]) -> Box3 {
    Box3::new(min.map(Length::mm), max.map(Length::mm))
}

/// A bay with a shelf, a drawer beside it and a panel on the left side; six things.
pub fn workspace() -> Workspace {
    let mut made = carts::empty(1000, 500, 800, 100);
    made.mass = Some(Mass::kg(40));
    made.casters.at = vec![mm([50, 50]), mm([950, 50]), mm([50, 450]), mm([950, 450])];
    made.casters.rating = Some(Mass::kg(30));
    made.bays.push(Bay {
        face: Face::Front,
        name: "left".to_owned(),
        at: mm([15, 125]),
        opening: mm([470, 600]),
        depth: Depth::Deep(Length::mm(300)),
        limit: Some(Mass::kg(20)),
        shelves: vec![Shelf {
            height: Length::mm(300),
            depth: Some(Length::mm(200)),
            front: None,
            thickness: None,
            limit: None,
            adjust: None,
            material: None,
            ends: Default::default(),
            span_along: Default::default(),
            span: Span::none(),
        }],
        hang: Vec::new(),
        fixing: Default::default(),
        ends: Default::default(),
        span: Span::none(),
    });
    made.drawers.push(Drawer {
        face: Face::Front,
        name: "small parts".to_owned(),
        at: mm([500, 125]),
        opening: mm([400, 100]),
        depth: Length::mm(400),
        limit: None,
        extends: None,
        mass: Some(Mass::kg(4)),
        catch: false,
        span: Span::none(),
    });
    made.panels.push(Panel {
        face: Face::Left,
        name: "rack".to_owned(),
        at: mm([50, 200]),
        size: mm([300, 300]),
        room: Length::mm(100),
        limit: Some(Mass::kg(5)),
        overhang: Overhang::default(),
        material: None,
        thickness: None,
        fixing: Default::default(),
        span: Span::none(),
    });
    let thing = |name: &str, size: [i64; 3], kilograms: i64| {
        carts::plain(name, size.map(Length::mm), Mass::kg(kilograms), Uses::per_week(2))
    };
    let mut items = vec![
        thing("plane", [200, 80, 100], 2),
        thing("glue", [60, 60, 150], 1),
        thing("tin", [100, 100, 80], 1),
        thing("square", [150, 20, 200], 1),
        thing("bits", [100, 100, 40], 1),
        thing("lamp", [300, 300, 900], 3),
    ];
    items[1].hazards = Hazards::of(&[Hazard::Liquid]);
    (items[2].count, items[2].stack) = (2, 2);
    items[2].weight = Mass::from_kg(1.5);
    items[3].weight = Mass::from_kg(0.3);
    let flat = Dims { w: Length::mm(150), d: Length::mm(20), h: Length::mm(200) };
    items[3].poses = [None, None, Some(flat)];
    items[4].weight = Mass::from_kg(0.5);
    items[5].hazards = Hazards::of(&[Hazard::Ignition]);
    Workspace { carcass: made, items, shop: carts::plain_shop(), layout: None }
}

/// What a placement of the plan by hand says, before its figures follow.
struct Said {
    item: &'static str,
    copies: u32,
    home: (Face, &'static str, &'static str),
    slot: u32,
    pose: Pose,
    space: Box3,
    at: [i64; 2],
    kilograms: f64,
    first: &'static [&'static str],
    seconds: [i64; 3],
}

fn said() -> Vec<Said> {
    let bay = |surface| (Face::Front, "left", surface);
    vec![
        Said {
            item: "tin",
            copies: 2,
            home: bay("shelf 1"),
            slot: 1,
            pose: Pose::Stand,
            space: solid([15, 200, 425], [115, 300, 585]),
            at: [0, 100],
            kilograms: 3.0,
            first: &[],
            seconds: [0, 1, 0],
        },
        Said {
            item: "plane",
            copies: 1,
            home: bay("floor"),
            slot: 2,
            pose: Pose::Stand,
            space: solid([15, 100, 125], [215, 180, 225]),
            at: [0, 100],
            kilograms: 2.0,
            first: &["glue"],
            seconds: [0, 2, 3],
        },
        Said {
            item: "glue",
            copies: 1,
            home: bay("floor"),
            slot: 3,
            pose: Pose::Stand,
            space: solid([15, 0, 125], [75, 60, 275]),
            at: [0, 0],
            kilograms: 1.0,
            first: &[],
            seconds: [0, 2, 0],
        },
        Said {
            item: "bits",
            copies: 1,
            home: (Face::Front, "small parts", "drawer"),
            slot: 4,
            pose: Pose::Stand,
            space: solid([500, 0, 125], [600, 100, 165]),
            at: [0, 0],
            kilograms: 0.5,
            first: &[],
            seconds: [0, 4, 0],
        },
        Said {
            item: "square",
            copies: 1,
            home: (Face::Left, "rack", "panel"),
            slot: 1,
            pose: Pose::Hang,
            space: solid([-20, 150, 200], [0, 300, 400]),
            at: [150, 0],
            kilograms: 0.3,
            first: &[],
            seconds: [6, 1, 0],
        },
    ]
}

fn placement(said: &Said) -> Placement {
    let names = ["access", "reach", "blocked"];
    let uses = Uses::per_week(2);
    let part = |(term, seconds): (&'static str, i64)| TermPart {
        term,
        price: uses.cost(Time::s(seconds)),
        told: "so it is".to_owned(),
    };
    let each = Time::s(said.seconds.iter().sum());
    let (face, bay, surface) = said.home;
    Placement {
        item: said.item.to_owned(),
        copy: 1,
        copies: said.copies,
        of: said.copies,
        face,
        way: face,
        bay: bay.to_owned(),
        surface: surface.to_owned(),
        slot: said.slot,
        pose: said.pose,
        turned: false,
        space: said.space,
        grip_height: said.space.middle(2),
        zone: Zone::Bend,
        moved_first: said.first.iter().map(|n| Copy { item: (*n).to_owned(), copy: 1 }).collect(),
        weight: Mass::from_kg(said.kilograms),
        uses,
        per_fetch: each,
        per_week: uses.cost(each),
        terms: names.into_iter().zip(said.seconds).map(part).collect(),
        holds: Vec::new(),
        family: None,
        hazards: Hazards::default(),
        guarded: false,
        inside: None,
        urgent: false,
        fixed: false,
    }
}

fn entry(said: &Said) -> Entry {
    let (face, bay, surface) = said.home;
    Entry {
        item: said.item.to_owned(),
        copy: 1,
        copies: said.copies,
        face: Some(face),
        bay: bay.to_owned(),
        surface: Some(surface.to_owned()),
        pose: Some(said.pose),
        turned: Some(false),
        at: Some(mm(said.at)),
        span: Span::none(),
    }
}

fn surface(
    home: (Face, &str, &str),
    kind: Kind,
    space: Box3,
    load: f64,
    limit: Option<i64>,
) -> SurfaceLoad {
    SurfaceLoad {
        face: home.0,
        bay: home.1.to_owned(),
        surface: home.2.to_owned(),
        kind,
        space,
        load: Mass::from_kg(load),
        limit: limit.map(Mass::kg),
    }
}

fn surfaces() -> Vec<SurfaceLoad> {
    let (front, left) = (Face::Front, Face::Left);
    let drawer = solid([500, 0, 125], [900, 400, 225]);
    let rack = solid([-100, 150, 200], [0, 450, 500]);
    vec![
        surface(
            (front, "left", "floor"),
            Kind::Deck,
            solid([15, 0, 125], [485, 300, 725]),
            3.0,
            Some(20),
        ),
        surface(
            (front, "left", "shelf 1"),
            Kind::Deck,
            solid([15, 100, 425], [485, 300, 725]),
            3.0,
            None,
        ),
        surface((front, "small parts", "drawer"), Kind::Drawer, drawer, 0.5, None),
        surface((left, "rack", "panel"), Kind::Wall, rack, 0.3, Some(5)),
    ]
}

/// Loads of four casters at the corners of a rectangle, the middle of mass being off theirs by so much of half sides.
fn corners(total: f64, off: [f64; 2]) -> [f64; 4] {
    SIGNS.map(|[x, y]| total / 4.0 * (1.0 + x * off[0] + y * off[1]))
}

/// On which side of the middle each caster stands.
const SIGNS: [[f64; 2]; 4] = [[-1.0, -1.0], [1.0, -1.0], [-1.0, 1.0], [1.0, 1.0]];

/// The highest load of each with another one hanging free: three supports, so plain leverage.
fn hanging(total: f64, off: [f64; 2]) -> [f64; 4] {
    let mut most = [0.0_f64; 4];
    for [x, y] in SIGNS {
        let across = -total * (x * off[0] + y * off[1]) / 2.0;
        if across < 0.0 {
            continue; // it tips
        }
        for (k, s) in SIGNS.into_iter().enumerate() {
            let load = match s {
                s if s == [x, y] => 0.0,
                s if s == [-x, -y] => across,
                s if s[0] == x => total * (1.0 + x * off[0]) / 2.0,
                _ => total * (1.0 + y * off[1]) / 2.0,
            };
            most[k] = most[k].max(load);
        }
    }
    most
}

/// The least angle over the four sides.
fn angle(off: [f64; 2], height: f64) -> f64 {
    let sides = [0, 1].map(|k| HALF[k] * (1.0 - off[k].abs()));
    sides[0].min(sides[1]).atan2(height).to_degrees()
}

/// The plan: five things placed, one left out.
pub fn plan() -> Plan {
    let all = said();
    let placements: Vec<Placement> = all.iter().map(placement).collect();
    let total = EMPTY + all.iter().map(|s| s.kilograms).sum::<f64>();
    let centre = [0, 1, 2].map(|k| {
        let things: f64 = all.iter().map(|s| s.kilograms * s.space.middle(k).as_mm()).sum();
        (EMPTY * CENTRE[k] + things) / total
    });
    let off = [0, 1].map(|k| (centre[k] - MIDDLE[k]) / HALF[k]);
    let open = [off[0], off[1] - PULLED * REACH / total / HALF[1]];
    let terms: Vec<(&'static str, Price)> = [
        "access", "reach", "blocked", "balance", "together", "jobs", "family", "sight", "reserve",
        "wish",
    ]
    .into_iter()
    .map(|t| {
        (t, placements.iter().flat_map(|p| &p.terms).filter(|x| x.term == t).map(|x| x.price).sum())
    })
    .collect();
    let cost: Price = terms.iter().map(|(_, p)| *p).sum();
    let left = Price::from_s((2.0 + 1.0 / 52.0) * 60.0);
    let bound = Price::from_s(cost.as_s() / 2.0);
    let handling = Price::from_s(10.0);
    let gap = |whole: Price| Some((cost - bound).as_s() / whole.as_s());
    let tip = |case: &str, off, limit| Tip {
        side: "front".to_owned(),
        case: case.to_owned(),
        degrees: angle(off, centre[2]),
        limit,
    };
    Plan {
        shelves: None,
        boards: Vec::new(),
        fixings: Vec::new(),
        name: "test cart".to_owned(),
        units: Unit::Mm,
        status: Status::Partial,
        seed: 1,
        left_out: vec![LeftOut {
            copy: Copy { item: "lamp".to_owned(), copy: 1 },
            why: "needs 900 mm, the tallest opening is 600 mm".to_owned(),
            price: left,
        }],
        reserve: Vec::new(),
        surfaces: surfaces(),
        solids: vec![Solid {
            what: "left / shelf 1".to_owned(),
            space: solid([15, 100, 410], [485, 300, 425]),
        }],
        balance: Balance {
            total: Mass::from_kg(total),
            centre: centre.map(Length::from_mm),
            carcass: Mass::from_kg(EMPTY),
            carcass_centre: CENTRE.map(Length::from_mm),
            assumed: Vec::new(),
        },
        casters: casters(total, off, open),
        tips: vec![tip("closed", off, 10.0), tip("small parts", open, 5.0)],
        stability: Stability::default(),
        rolling: Rolling::default(),
        extremes: Vec::new(),
        worth: Worth { cost, off_cart: left, terms, broken: Vec::new() },
        handling,
        lifts: Vec::new(),
        cautions: Vec::new(),
        start: Start { cost, off_cart: left, broken: 0, same_items: true },
        bound: Bound {
            cost: Some(bound),
            gap: gap(cost),
            gap_with_handling: gap(cost + handling),
            proof: Default::default(),
        },
        effort: Effort { moves: 10, priced: 5, seconds: 0.1, restarts: 1, ..Effort::default() },
        elevations: Vec::new(),
        ground: Ground::default(),
        person: Person::default(),
        loading: Vec::new(),
        earning_least: Vec::new(),
        layout: Layout { entries: all.iter().map(entry).collect(), ..Layout::default() },
        growth: Vec::new(),
        companions: Vec::new(),
        families: Vec::new(),
        jobs: Vec::new(),
        notes: Vec::new(),
        from_memory: Vec::new(),
        placements,
    }
}

fn casters(total: f64, off: [f64; 2], open: [f64; 2]) -> Vec<CasterLoad> {
    let (closed, out, free) = (corners(total, off), corners(total, open), hanging(total, off));
    let one = |k: usize| CasterLoad {
        at: [0, 1].map(|a| Length::from_mm(MIDDLE[a] + SIGNS[k][a] * HALF[a])),
        load: Some(Mass::from_kg(closed[k])),
        worst: Some(Mass::from_kg(closed[k].max(out[k]))),
        worst_case: "closed or small parts out".to_owned(),
        hanging: Some(Mass::from_kg(free[k])),
        limit: Some(Mass::kg(30)),
    };
    (0..4).map(one).collect()
}
