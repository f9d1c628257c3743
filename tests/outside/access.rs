//! How far a seated person reaches, and what can be seen: the accessibility standard and similar triangles.

use crate::check::{Status, Topic};
use toolberth::physics::body::{Body, Grip, Posture};
use toolberth::site::{
    Board, Change, Place, SIGHT_LINES, Site, Touched, box_at, free_sight_lines, is_seen,
};
use toolberth::units::Length;

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
      - {name: low, at: [50, 200], opening: [900, 600], depth: 450}
";

/// Two boxes: one 100 mm wide, 300 deep and 300 high, one as wide and high as said.
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

/// A lot put onto the floor of a bay, its box beginning at x and y, in mm.
fn put(board: &mut Board, lot: usize, bay: &str, at: [i64; 2]) {
    let site = board.site();
    let surface = site
        .surfaces
        .iter()
        .position(|s| s.name == "floor" && site.spaces[s.space].name == bay)
        .expect("the bay");
    let home =
        *site.lots[lot].homes.iter().find(|h| h.surface as usize == surface).expect("a home");
    let corner = at.map(Length::mm);
    let space = box_at(site, &home, board.free(surface), corner);
    board.apply(Change { lot, to: Some(Place { home, space }) }, &mut Touched::default());
}

/// Lines of sight to a thing 120 mm each way, by similar triangles from an eye 1613 mm high (0.9342 × 1700 + 25) and
/// 400 mm before the front, in the middle of the bay.
fn sight(topic: &mut Topic) {
    let lines = |bay: &str, wanted: [i64; 2], before: Option<(i64, i64, [i64; 2])>| {
        let (wide, high) = before.map_or((60, 60), |(wide, high, _)| (wide, high));
        let site = site(wide, high);
        let mut board = Board::new(&site);
        put(&mut board, 0, bay, wanted);
        if let Some((_, _, at)) = before {
            put(&mut board, 1, bay, at);
        }
        (free_sight_lines(&board, 0, 0), is_seen(&board, 0, 0))
    };
    let all = (SIGHT_LINES, true);
    topic
        .against("site::free_sight_lines", Status::Computed, "similar triangles")
        .holds("alone on a floor at 1000 mm", lines("high", [390, 100], None) == all)
        // 230 mm high 100 mm nearer: the line to the top row, 1100 mm high at 300 mm, is at 1173 mm over y = 200.
        .holds(
            "wholly behind something higher",
            lines("high", [390, 300], Some((300, 230, [300, 200]))) == (0, false),
        )
        // 60 mm high at y = 200 to 260: the line to the row at 1020 mm passes y = 260 at 1054 mm, and is cut; those to
        // 1060 and 1100 mm pass it at 1092 and 1129 mm, over its top at 1060.
        .holds(
            "its lowest third behind something low",
            lines("high", [390, 300], Some((300, 60, [300, 200]))) == (6, true),
        )
        // Its top at 320 mm, 300 mm in: the line comes under the opening's upper edge, 800 mm, only where
        // 1613 − (1613 − v) · 400 / 700 is under it, v < 190: never for v from 220 up.
        .holds(
            "deep in a low bay, over whose edge the eye looks",
            lines("low", [390, 300], None) == (0, false),
        )
        // At the front edge there is nothing to look over.
        .holds("at the front of a low bay", lines("low", [390, 0], None) == all);
}
