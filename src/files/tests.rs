//! What good files mean: defaults, starters, and a layout written and read again.

use super::*;
use crate::domain::{Depth, Dims, Entry, Experience, Face, Pose, Wall};
use crate::finding::{Severity, Span};
use crate::units::{Length, Mass, Share, Time, Unit, Uses};
use std::fs;

const CARCASS: &str = "\
units: in
size: {width: 24, depth: 16, height: 33}
casters: {height: 3, rating: 90, at: [[2, 2], [22, 2], [2, 14], [22, 14]]}
faces:
  front:
    bays:
      - {name: Low Bay, at: [1, 4], opening: [22, 11], depth: 8, hang: {back: , left: 5 kg}}
      - {name: high bay, at: [1, 16], opening: [22, 11], depth: through, shelves: [{height: 5}]}
    drawers: [{name: drawer, at: [1, 28], opening: [9, 3], depth: 14}]
    panels: [{name: rail, at: [10, 28], size: [9, 3], room: 2, overhang: {down: 60 mm}}]
  back: {bays: [{name: rear, behind: low bay, gap: 15 mm}]}
";

/// The workspace of these files, which must have no fault.
fn workspace(inventory: &str, others: &[(&str, &str)]) -> Workspace {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let mut files = vec![("carcass.yaml", CARCASS), ("inventory.yaml", inventory)];
    files.extend(others);
    files
        .iter()
        .for_each(|(name, text)| fs::write(folder.path().join(name), text).expect("written"));
    let loaded = load(folder.path());
    let bad: Vec<&Finding> =
        loaded.findings.iter().filter(|f| f.severity != Severity::Note).collect();
    assert!(bad.is_empty(), "{bad:#?}");
    loaded.workspace.expect("usable")
}

fn item(rest: &str) -> Item {
    let text = format!(
        "units: mm\nitems: [{{name: thing, size: [100, 20, 60], weight: 1, use: 1{rest}}}]\n"
    );
    workspace(&text, &[]).items.remove(0)
}

fn dims(w: i64, d: i64, h: i64) -> Option<Dims> {
    Some(Dims { w: Length::mm(w), d: Length::mm(d), h: Length::mm(h) })
}

#[test]
fn poses_not_named_keep_their_default() {
    let (stand, lie, hung) = (dims(100, 20, 60), dims(100, 60, 20), dims(60, 20, 100));
    for (rest, expected) in [
        ("", [stand, lie, None]),
        (", hazards: [liquid]", [stand, None, None]),
        (", hazards: [sharp]", [stand, lie, None]),
        (", size: [100, 20, 61]", [None, dims(100, 61, 20), None]),
        (", size: [100, 20, 61], hazards: [hot]", [dims(100, 20, 61), None, None]),
        (", keep: hang", [None, None, stand]),
        (", keep: [lie, hang]", [None, lie, stand]),
        (", keep: {hang: [60, 20, 100]}", [stand, lie, hung]),
        (", keep: {hang: 60 x 20 x 100, lie: false}", [stand, None, hung]),
        (", hazards: [electric], keep: {lie: true}", [stand, lie, None]),
    ] {
        let rest = rest.to_owned();
        let text = format!(
            "units: mm\nitems: [{{name: thing, size: [100, 20, 60], weight: 1, use: 1{rest}}}]\n"
        );
        let text =
            if rest.contains("size") { text.replace("size: [100, 20, 60], ", "") } else { text };
        let poses = workspace(&text, &[]).items[0].poses;
        assert_eq!(poses, expected, "{rest}");
    }
    assert_eq!(item("").pose(Pose::Lie), lie);
}

#[test]
fn an_item_with_four_keys_is_enough() {
    let thing = item("");
    assert_eq!((thing.count, thing.stack, thing.hands, thing.take_all), (1, 1, 1, false));
    assert!(thing.turn && thing.fetched && !thing.guarded && !thing.urgent && !thing.fixed);
    assert_eq!((thing.weight, thing.uses), (Mass::kg(1), Uses::per_week(1)));
    assert_eq!((thing.pitch, thing.grip, thing.clearance, thing.family), (None, None, None, None));
}

#[test]
fn a_file_without_units_takes_those_of_the_carcass() {
    let mine = workspace("items: [{name: a, size: [1, 1, 1], weight: 1, use: 1}]\n", &[]);
    assert_eq!(mine.items[0].size.w, Length::nm(25_400_000));
    assert_eq!(mine.items[0].weight, Mass::ng(453_592_370_000));
    let inventory = "include: other\nitems: [{name: a, size: [1, 1, 1], weight: 1, use: 1}]\n";
    let other =
        "units: cm\nitems: [{name: b, size: [1, 1, 1], weight: 1, use: 1, place: back/REAR}]\n";
    let both = workspace(inventory, &[("other.yaml", other)]);
    assert_eq!(both.items.iter().map(|i| i.name.as_str()).collect::<Vec<_>>(), ["b", "a"]);
    assert_eq!((both.items[0].size.w, both.items[0].weight), (Length::mm(10), Mass::kg(1)));
    assert_eq!(both.items[0].place[0].parts, ["back", "rear"]);
}

#[test]
fn a_carcass_in_full() {
    let cart = workspace("items: []\n", &[]).carcass;
    assert_eq!((cart.units, cart.width), (Unit::In, Length::nm(609_600_000)));
    assert_eq!((cart.bays.len(), cart.drawers.len(), cart.panels.len()), (3, 1, 1));
    assert_eq!(cart.bays[0].hang, [(Wall::Back, None), (Wall::Left, Some(Mass::kg(5)))]);
    assert_eq!(cart.bays[1].depth, Depth::Through);
    assert_eq!(cart.bays[1].shelves[0].thickness, None);
    assert_eq!(cart.bays[2].depth, Depth::Behind { name: "low bay".into(), gap: Length::mm(15) });
    assert_eq!(cart.panels[0].overhang.down, Length::mm(60));
    assert_eq!(cart.casters.rating, Some(Mass::ng(90 * 453_592_370_000)));
    assert_eq!((cart.casters.trail, cart.bench.keep_clear), (Length::ZERO, Share::ALL));
}

#[test]
fn a_shop_with_and_without_a_file() {
    let usual = workspace("items: []\n", &[]).shop;
    assert_eq!((usual.person.stature, usual.person.experience), (None, Experience::Settled));
    assert_eq!((usual.stations.len(), usual.stations[0].share), (1, Share::ALL));
    assert_eq!((usual.rates.roll_out, usual.rates.elsewhere), (Time::s(30), Time::s(60)));
    assert_eq!((usual.clearance, usual.reserve.share), (Length::mm(25), Share::ppm(100_000)));
    let text = "units: mm\nperson: {stature: 1700, experience: Old Hand, lifting_limit: 2.5}\nclearance: 0\nrates: {elsewhere: 2 min, look_for: 3 s}\n\
                stations: [{share: 1/3}, {share: 1/3, work: back}, {share: 1/3, walls: [left]}]\n\
                room: {floor: uneven, cart: {at: [900, 900], turned: 270}}\n";
    let shop = workspace("items: []\n", &[("shop.yaml", text)]).shop;
    let shares: Vec<i64> = shop.stations.iter().map(|s| s.share.as_ppm()).collect();
    assert_eq!(shares, [333_334, 333_333, 333_333]);
    assert_eq!(
        (shop.reserve.share, shop.clearance, shop.rates.elsewhere),
        (Share::ZERO, Length::ZERO, Time::s(120))
    );
    assert_eq!((shop.person.lifting_limit, shop.rates.look_for), (Some(2.5), Time::s(3)));
    assert!(shop.room.uneven && shop.room.cart.is_some_and(|c| c.quarter_turns == 3));
}

#[test]
fn every_starter_can_be_included_by_name() {
    for starter in starters() {
        let name = starter.name.replace(' ', "-").to_uppercase();
        let items = workspace(&format!("include: [{name}]\n"), &[]).items;
        assert!(!items.is_empty(), "{}", starter.name);
        let twice = workspace(&format!("include: [{name}, {}]\n", starter.name), &[]).items;
        assert_eq!(twice.len(), items.len());
    }
    let all: Vec<&str> = starters().iter().map(|s| s.name).collect();
    let items = workspace(&format!("include: [{}]\n", all.join(", ")), &[]).items;
    assert!(items.len() >= 4);
}

#[test]
fn companions_families_wishes_and_jobs_are_priced() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let item = "{name: a, size: [1, 1, 1], weight: 1, use: 1, with: [b], family: f, prefer: front}";
    let items =
        format!("items:\n  - {item}\n  - {{name: b, size: [1, 1, 1], weight: 1, use: 1}}\n");
    fs::write(folder.path().join("carcass.yaml"), CARCASS).expect("written");
    fs::write(folder.path().join("inventory.yaml"), items).expect("written");
    let shop = "jobs: [{name: j, items: [a], use: 1}]\nreserve: {share: 10%, families: {f: 1}}\n";
    fs::write(folder.path().join("shop.yaml"), shop).expect("written");
    let notes: Vec<String> = load(folder.path()).findings.into_iter().map(|f| f.text).collect();
    assert!(!notes.iter().any(|n| n.contains("not priced")), "{notes:?}");
}

#[test]
fn a_layout_reads_back_as_it_was_written() {
    let names = [
        "no",
        "012",
        "bit #2",
        "a, b",
        "5/8\" chisel",
        "it's",
        "tab\there",
        "[x]",
        "ü: ö",
        "~",
        "plain name",
        "-x",
        "# y",
    ];
    let quote = |name: &str| serde_json::to_string(name).expect("text");
    let line = |name: &&str| {
        format!("  - {{name: {}, size: [1, 1, 1], weight: 1, use: 1}}\n", quote(name))
    };
    let inventory = format!("items:\n{}", names.iter().map(line).collect::<String>());
    let entry = |(k, name): (usize, &&str)| Entry {
        item: (*name).to_owned(),
        copy: k as u32 + 1,
        copies: k as u32 % 3 + 1,
        face: [Some(Face::Front), None][k % 2],
        bay: "high bay".into(),
        surface: [Some("shelf 1".to_owned()), None][k % 2].clone(),
        pose: [Some(Pose::Lie), None][k % 2],
        turned: [None, Some(true)][k % 2],
        at: [Some([Length::nm(396_875 * k as i64), Length::nm(-(k as i64))]), None]
            [usize::from(k % 3 == 2)],
        span: Span::none(),
    };
    let layout =
        Layout { entries: names.iter().enumerate().map(entry).collect(), ..Layout::default() };
    let text = write_layout(&layout, Unit::In, "written by a test");
    let read = workspace(&inventory, &[("layout.yaml", &text)]).layout.expect("a layout");
    let bare = |layout: &Layout| -> Vec<String> {
        layout
            .entries
            .iter()
            .map(|e| format!("{:?}", Entry { span: Span::none(), ..e.clone() }))
            .collect()
    };
    assert_eq!(bare(&read), bare(&layout), "{text}");
}

#[test]
fn one_line_a_placement() {
    let entry = Entry {
        item: "soldering station".into(),
        copy: 1,
        copies: 1,
        face: Some(Face::Front),
        bay: "upper left".into(),
        surface: Some("floor".into()),
        pose: Some(Pose::Stand),
        turned: Some(false),
        at: Some([Length::mm(12), Length::ZERO]),
        span: Span::none(),
    };
    let text = write_layout(
        &Layout { entries: vec![entry], ..Layout::default() },
        Unit::Mm,
        "hall cart\nmade by hand",
    );
    let expected = "# hall cart\n# made by hand\nunits: mm\nplacements:\n  - {item: soldering station, copy: 1, face: front, \
                    bay: upper left, surface: floor, pose: stand, turned: false, at: [12, 0]}\n";
    assert_eq!(text, expected);
    assert_eq!(write_layout(&Layout::default(), Unit::Mm, ""), "units: mm\nplacements: []\n");
}

#[test]
fn other_layouts_and_wish_lists_are_read_beside_a_workspace() {
    let mine = workspace("items: [{name: a, size: [1, 1, 1], weight: 1, use: 1}]\n", &[]);
    let folder = tempfile::tempdir().expect("a temporary folder");
    let path = folder.path().join("other.yaml");
    fs::write(&path, "placements: [{item: a, bay: rear, at: [1, 2]}, {item: b, bay: rear}]\n")
        .expect("written");
    let layout = load_layout(&path, &mine);
    assert_eq!(layout.value.map(|l| l.entries.len()), Some(2));
    assert_eq!(layout.findings.len(), 1);
    fs::write(&path, "items: [{name: b, size: [1, 1, 1], weight: 1, use: 1, with: [a]}]\n")
        .expect("written");
    assert_eq!(load_wishes(&path, &mine).value.map(|w| w.len()), Some(1));
    fs::write(&path, "items: [{name: a, size: [1, 1, 1], weight: 1, use: 1}]\n").expect("written");
    let twice = load_wishes(&path, &mine);
    assert!(twice.value.is_none() && twice.findings[0].text == "two items are named a");
    let nowhere = load_layout(&folder.path().join("none.yaml"), &mine);
    assert!(nowhere.value.is_none() && !nowhere.unreadable && nowhere.findings.len() == 1);
}
