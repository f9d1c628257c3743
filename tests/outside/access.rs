//! How far a seated person reaches, and what can be seen: the accessibility standard and similar triangles.

use crate::check::{Status, Topic};
use toolberth::physics::body::{Body, Grip, Posture};
use toolberth::score::{COSTS, Ledger};
use toolberth::site::{Board, Change, Place, Site, Touched, box_at};
use toolberth::units::{Length, Price};

const STANDARD: &str = "2010 ADA Standards 308.2-308.3, read on an accessibility-standards site (mm are rounded there)";

pub fn checks() -> Topic {
    let mut topic = Topic::new("access");
    seated(&mut topic);
    sight(&mut topic);
    topic
}

/// A seated reach to a grip so high and so deep over a sill so high, in mm.
fn reached(height: f64, depth: f64, sill: f64) -> Posture {
    let [height, depth, sill] = [height, depth, sill].map(Length::from_mm);
    Body::seated().posture(&Grip { height, depth, sill })
}

fn within(height: f64, depth: f64, sill: f64) -> bool {
    reached(height, depth, sill) != Posture::Out
}

/// Each limit from both sides. A cart is reached facing it or beside it: the lower of both counts.
fn seated(topic: &mut Topic) {
    topic
        .against("physics::body::posture (seated)", Status::Read, STANDARD)
        .holds(
            "highest, nothing in the way: 1220 mm",
            within(1220.0, 0.0, 0.0) && !within(1220.1, 0.0, 0.0),
        )
        .holds(
            "lowest, nothing in the way: 380 mm",
            within(380.0, 0.0, 0.0) && !within(379.9, 0.0, 0.0),
        )
        .holds(
            "beside, up to 255 mm deep: 1220 mm",
            within(1220.0, 255.0, 860.0) && !within(1220.0, 255.1, 860.0),
        )
        .holds(
            "beside, 255 to 610 mm deep: 1170 mm",
            within(1170.0, 255.1, 860.0)
                && within(1170.0, 510.0, 860.0)
                && !within(1170.1, 300.0, 860.0),
        )
        .holds(
            "beside, over at most 864 mm",
            within(1000.0, 300.0, 864.0) && !within(1000.0, 300.0, 864.1),
        )
        .holds("beside, over anything up to 255 mm deep", within(1000.0, 255.0, 950.0))
        .holds(
            "beside, deepest 610 mm",
            within(800.0, 610.0, 700.0) && !within(800.0, 610.1, 700.0),
        )
        .holds(
            "facing, over 510 to 635 mm: 1120 mm",
            within(1120.0, 510.1, 700.0) && !within(1120.1, 510.1, 700.0),
        )
        .holds(
            "the same lowest over depth",
            within(380.0, 600.0, 300.0) && !within(379.9, 600.0, 300.0),
        )
        .holds("near places are easy", reached(800.0, 255.0, 700.0) == Posture::Easy)
        .holds("deep places are stretched for", reached(800.0, 255.1, 700.0) == Posture::Stretch)
        .holds(
            "nothing is bent or knelt for",
            (0..1300).step_by(10).all(|h| {
                (0..700).step_by(35).all(|d| {
                    !matches!(
                        reached(f64::from(h), f64::from(d), 0.0),
                        Posture::Bend | Posture::Kneel
                    )
                })
            }),
        );
}

const CART: &str = "units: mm
size: {width: 1000, depth: 500, height: 1900}
mass: 30 kg
casters: {height: 100, at: [[50, 50], [950, 50], [50, 450], [950, 450]]}
faces:
  front:
    bays:
      - {name: high, at: [50, 1000], opening: [900, 800], depth: 450}
";

/// Two things: one of 120 mm each way, and one as wide and high as said and 60 mm deep.
fn site(wide: i64, high: i64) -> Site {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let write =
        |name: &str, text: &str| std::fs::write(folder.path().join(name), text).expect("written");
    write("carcass.yaml", CART);
    write("shop.yaml", "person: {stature: 1700}\n");
    let items = format!(
        "items:\n  - {{name: wanted, size: [120, 120, 120], weight: 1, use: daily}}\n  - {{name: before it, size: [{wide}, 60, {high}], weight: 1, use: daily, keep: [stand]}}\n"
    );
    write("inventory.yaml", &items);
    let loaded = toolberth::files::load(folder.path());
    Site::new(&loaded.workspace.expect("a good workspace")).expect("a good carcass")
}

/// A lot put onto the floor of the bay, its box beginning so far from its left side and its front, in mm.
fn put(board: &mut Board, lot: usize, at: [i64; 2]) {
    let home = *board.site().lots[lot].homes.first().expect("a home");
    let (site, surface) = (board.site(), home.surface as usize);
    let corner = at.map(Length::mm);
    let space = box_at(site, &home, board.free(surface), corner);
    board.apply(Change { lot, to: Some(Place { home, space }) }, &mut Touched::default());
}

/// Whether the eye, 1613 mm high (0.9342 × 1700 + 25) and 400 mm before the front, sees the middle of the front of a thing
/// 120 mm each way that stands at 1000 mm and 300 mm in, past one 60 mm deep that stands 200 mm in: by similar triangles
/// the line to it, 1060 mm high at 700 mm from the eye, is 1613 − 553 · 660 / 700 = 1091.6 mm high over the rear edge of
/// that other one, which so may be 91 mm high and not 92.
fn sight(topic: &mut Topic) {
    let hidden = |wide: i64, high: i64, left: i64| {
        let site = site(wide, high);
        let mut board = Board::new(&site);
        put(&mut board, 0, [390, 300]);
        put(&mut board, 1, [left, 200]);
        let term = COSTS.iter().position(|c| c.name == "sight").expect("the term");
        Ledger::new(&board).term(term) > Price::ZERO
    };
    topic
        .against("score::cost::sight", Status::Computed, "similar triangles")
        .holds("wholly behind something higher", hidden(300, 230, 300))
        .holds("behind something just high enough", hidden(300, 92, 300))
        .holds("over something not quite so high", !hidden(300, 91, 300))
        .holds("half its breadth covered", hidden(300, 230, 151))
        .holds("less than half of it", !hidden(300, 230, 149));
}
