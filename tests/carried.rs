//! Shelves that sag, walls that hold: what the rule `supported` says of real loads at their real places.

use std::fs;
use toolberth::domain::Workspace;
use toolberth::files::load;
use toolberth::score::{Ledger, broken};
use toolberth::site::Board;
use toolberth::solve::{Effort, Settings, Watch};
use toolberth::tasks::audit::audit;
use toolberth::tasks::outcome::{Mark, Plan};
use toolberth::tasks::standing::standing;

/// A cart with one wide bay and a panel, with more words in their lines, and a layout of one entry a line.
fn cart(board: &str, shelf: &str, wall: &str, items: &str, places: &str) -> Workspace {
    let carcass = format!(
        "size: {{width: 900, depth: 500, height: 900}}
mass: 30 kg
{board}
casters: {{height: 100, rating: 90 kg, at: [[50, 50], [850, 50], [50, 450], [850, 450]]}}
faces:
  front:
    bays:
      - {{name: bay, at: [50, 300], opening: [800, 500], depth: 200, shelves: [{{height: 150, {shelf}}}], hang: {{back: ~, ceiling: ~}}, {wall}}}
  back:
    panels:
      - {{name: rack, at: [50, 300], size: [800, 500], room: 250, {wall}}}
"
    );
    let folder = tempfile::tempdir().expect("a temporary folder");
    for (name, text) in [
        ("carcass.yaml", carcass),
        ("inventory.yaml", format!("items:\n{items}")),
        ("layout.yaml", format!("placements:\n{places}")),
    ] {
        fs::write(folder.path().join(name), text).expect("written");
    }
    let loaded = load(folder.path());
    assert!(!loaded.findings.iter().any(|f| f.is_fault()), "{:#?}", loaded.findings);
    loaded.workspace.expect("the files can be read")
}

/// What the rule says of the layout as it stands.
fn unsupported(workspace: &Workspace) -> Vec<String> {
    let layout = workspace.layout.as_ref().expect("a layout");
    let standing = standing(workspace, layout).expect("a sound cart");
    let board = Board::with(&standing.site, &standing.places);
    let all = broken(&board, &Ledger::new(&board));
    all.into_iter().filter(|b| b.rule == "supported").map(|b| b.told).collect()
}

fn told(workspace: &Workspace) -> Plan {
    let settings = Settings { seed: 1, effort: Effort::Quick, threads: 1 };
    let layout = workspace.layout.clone().expect("a layout");
    audit(workspace, &layout, &settings, &Watch::default()).expect("a sound cart").plan
}

const PLYWOOD: &str = "board: {material: plywood, thickness: 15}";

/// A case of so many kilograms on the shelf, so far from its left end.
fn case_at(board: &str, shelf: &str, kilograms: f64, at: i64) -> Workspace {
    let item = format!(
        "  - {{name: case, size: [200, 200, 100], weight: {kilograms} kg, use: weekly, keep: [stand]}}\n"
    );
    let place =
        format!("  - {{item: case, face: front, bay: bay, surface: shelf 1, at: [{at}, 0]}}\n");
    cart(board, shelf, "", &item, &place)
}

#[test]
fn what_sags_a_shelf_at_its_middle_does_not_near_its_end() {
    assert_eq!(
        unsupported(&case_at(PLYWOOD, "", 8.0, 300)),
        ["front / bay / shelf 1 ends up sagging 4.2 mm, and 3.3 mm is the most for its span"]
    );
    assert!(unsupported(&case_at(PLYWOOD, "", 8.0, 0)).is_empty());
    assert!(unsupported(&case_at(PLYWOOD, "", 8.0, 600)).is_empty());
}

#[test]
fn ends_thickness_span_and_material_of_the_shelf_count() {
    let sags = |shelf: &str| !unsupported(&case_at(PLYWOOD, shelf, 8.0, 300)).is_empty();
    assert!(sags(""));
    assert!(!sags("ends: fixed"));
    assert!(!sags("thickness: 18"));
    assert!(!sags("span: depth"));
    assert!(!sags("material: oak"));
    assert!(sags("material: particleboard, thickness: 18"));
    assert!(sags("material: chipboard, thickness: 18"));
}

#[test]
fn without_a_material_the_stated_limit_alone_counts() {
    assert!(unsupported(&case_at("", "", 60.0, 300)).is_empty());
    assert!(unsupported(&case_at("board: {thickness: 6}", "", 60.0, 300)).is_empty());
    assert_eq!(
        unsupported(&case_at("", "limit: 50 kg", 60.0, 300)),
        ["front / bay / shelf 1 carries 60.0 kg of 50.0 kg"]
    );
    assert_eq!(unsupported(&case_at("", "material: MDF", 20.0, 300)).len(), 1);
}

#[test]
fn a_short_thick_shelf_is_bent_before_it_sags() {
    // 44 130 N over 200 mm, ends fixed, 24 mm thick: 735 N m where 647 N m may be counted on; it sags 0.5 mm of 0.8.
    let shelf =
        |kilograms| case_at(PLYWOOD, "span: depth, thickness: 24, ends: fixed", kilograms, 300);
    assert_eq!(
        unsupported(&shelf(4500.0)),
        ["front / bay / shelf 1 is bent to 1.14 times what its strength allows"]
    );
    assert!(unsupported(&shelf(3900.0)).is_empty());
}

#[test]
fn a_shelf_tells_how_far_it_sags_and_by_what() {
    let plan = told(&case_at(PLYWOOD, "", 8.0, 300));
    let shelf = plan.boards.iter().find(|b| b.surface == "shelf 1").expect("told");
    // By hand: 78.45 N over the middle 200 of 800 mm, E I = 6960 × 56250; itself 14.1 N spread; shear, E / 16.
    let bending = 6960.0 * 56_250.0;
    let thing = 78.453 * (8.0 * 800f64.powi(3) - 4.0 * 800.0 * 200f64.powi(2) + 200f64.powi(3))
        / (384.0 * bending);
    let board = 5.0 * 14.122 * 800f64.powi(3) / (384.0 * bending);
    let shear = (78.453 * (800.0 / 4.0 - 200.0 / 8.0) + 14.122 * 100.0) / (6960.0 / 16.0 * 2500.0);
    let sag = thing + board + shear;
    assert!((shelf.sag - sag).abs() < 0.001, "{} for {sag}", shelf.sag);
    assert!((shelf.sag_later - 1.8 * sag).abs() < 0.002);
    assert!((shelf.limit - 800.0 / 240.0).abs() < 1e-9);
    let stress = (78.453 * (800.0 / 4.0 - 200.0 / 8.0) + 14.122 * 100.0) / (200.0 * 225.0 / 6.0);
    assert!((shelf.strength_used - stress / (33.72 / 4.0)).abs() < 1e-4);
    let (by, part) = shelf.most_by.clone().expect("something stands there");
    assert_eq!(by, "case");
    assert!(part < shelf.sag_later && part > 0.8 * shelf.sag_later);
    assert_eq!(plan.boards[0].surface, "shelf 1");
    let worst = plan.extremes.iter().find(|e| e.kind == "most-sagging shelf").expect("told");
    assert!(worst.case.starts_with("front / bay / shelf 1, plywood crept"), "{}", worst.case);
}

#[test]
fn the_least_thickness_that_carries_it_is_told() {
    let workspace = case_at(PLYWOOD, "", 20.0, 300);
    let settings = Settings { seed: 1, effort: Effort::Quick, threads: 1 };
    let layout = workspace.layout.clone().expect("a layout");
    let found = audit(&workspace, &layout, &settings, &Watch::default()).expect("a sound cart");
    let texts: Vec<&str> =
        found.findings.iter().filter_map(|f| f.remedy.as_ref()).map(|r| r.text.as_str()).collect();
    let thick = "make the board of front / bay / shelf 1 22 mm thick, or prop it in the middle";
    assert!(texts.iter().any(|t| t.contains(thick)), "{texts:#?}");
    assert!(!unsupported(&case_at(PLYWOOD, "thickness: 21", 20.0, 300)).is_empty());
    assert!(unsupported(&case_at(PLYWOOD, "thickness: 22", 20.0, 300)).is_empty());
}

/// A thing that hangs on the panel, standing out so far and so high, of so many kilograms.
fn hung(board: &str, wall: &str, kilograms: f64, out: i64, high: i64) -> Workspace {
    let item = format!(
        "  - {{name: tool, size: [100, {out}, {high}], weight: {kilograms} kg, use: weekly, keep: {{hang: true}}}}\n"
    );
    let place = "  - {item: tool, face: back, bay: rack, surface: panel, pose: hang, at: [0, 0]}\n";
    cart(board, "", wall, &item, place)
}

#[test]
fn a_hook_carries_what_the_user_says() {
    assert!(unsupported(&hung("", "hook: 2 kg", 2.0, 40, 300)).is_empty());
    assert_eq!(
        unsupported(&hung("", "hook: 2 kg", 3.0, 40, 300)),
        ["back / rack / panel: tool asks its fixing for 1.50 times what it may hold"]
    );
    assert!(unsupported(&hung("", "hook: 2 kg, screw: {each: 2}", 3.0, 40, 300)).is_empty());
    assert!(unsupported(&hung("", "", 90.0, 40, 300)).is_empty());
}

#[test]
fn a_screw_is_asked_harder_the_further_a_thing_stands_out() {
    let used = |out: i64, high: i64| {
        let plan = told(&hung(PLYWOOD, "", 4.0, out, high));
        plan.fixings[0].used
    };
    // By hand: a 4 mm screw, 12 mm of thread in plywood of gravity 0.42, halved: 83.2 N out; across, 3240 D² lb × 12/28.
    let pull = 0.5 * 2850.0 * 0.006_894_757 * 0.42 * 0.42 * 4.0 * 12.0;
    let across = 3240.0 * (4.0f64 / 25.4).powi(2) * 4.448_222 * 12.0 / 28.0;
    let share = |out: f64, high: f64| 39.2266 * out / 2.0 / high / pull + 39.2266 / across;
    for (out, high) in [(40, 300), (200, 300), (200, 100)] {
        let right = share(out as f64, high as f64);
        assert!((used(out, high) - right).abs() < 1e-3, "{out} {high}: {right}");
    }
    assert!(used(200, 300) > used(40, 300) && used(200, 100) > used(200, 300));
    assert!(!unsupported(&hung(PLYWOOD, "", 16.0, 240, 100)).is_empty());
    assert!(unsupported(&hung(PLYWOOD, "", 4.0, 240, 100)).is_empty());
    assert!(
        unsupported(&hung(PLYWOOD, "screw: {diameter: 6, each: 4}", 16.0, 240, 100)).is_empty()
    );
}

#[test]
fn end_grain_never_counts() {
    assert_eq!(
        unsupported(&hung(PLYWOOD, "grain: end", 0.1, 10, 300)),
        ["back / rack / panel: tool hangs from screws in end grain, which do not count"]
    );
    assert!(unsupported(&hung(PLYWOOD, "grain: side", 0.1, 10, 300)).is_empty());
    // Nothing is known of the wood: the hook's own load counts.
    assert!(unsupported(&hung("", "grain: end, hook: 1 kg", 0.1, 10, 300)).is_empty());
}

#[test]
fn under_a_ceiling_a_screw_is_pulled_straight_out() {
    let on = |kilograms: f64| {
        let item = format!(
            "  - {{name: tool, size: [100, 40, 200], weight: {kilograms} kg, use: weekly, keep: {{hang: true}}}}\n"
        );
        let place =
            "  - {item: tool, face: front, bay: bay, surface: ceiling, pose: hang, at: [0, 0]}\n";
        cart(PLYWOOD, "", "", &item, place)
    };
    let pull = 0.5 * 2850.0 * 0.006_894_757 * 0.42 * 0.42 * 4.0 * 12.0;
    let plan = told(&on(4.0));
    assert!((plan.fixings[0].used - 39.2266 / pull).abs() < 1e-3);
    assert!((plan.fixings[0].pull - 39.2266).abs() < 1e-3);
    // The gravity of plywood is recalled, so what the screw holds is too.
    assert_eq!(plan.fixings[0].mark, Mark::Memory);
    assert!(unsupported(&on(8.0)).is_empty());
    assert!(!unsupported(&on(9.0)).is_empty());
}

#[test]
fn each_copy_of_a_row_hangs_by_itself() {
    let item = "  - {name: clamp, size: [60, 40, 300], weight: 1.5 kg, use: weekly, count: 4, pitch: 70, keep: {hang: true}}\n";
    let place = "  - {item: clamp, copy: 1, copies: 4, face: back, bay: rack, surface: panel, pose: hang, at: [0, 0]}\n";
    let row = |hook: &str| cart("", "", hook, item, place);
    assert!(unsupported(&row("hook: 1.5 kg")).is_empty());
    assert_eq!(unsupported(&row("hook: 1.4 kg")).len(), 1);
    let plan = told(&row("hook: 3 kg"));
    assert!((plan.fixings[0].used - 0.5).abs() < 1e-9);
    assert_eq!(plan.fixings[0].by, "one hook for 3.0 kg each");
}

#[test]
fn cautions_on_boards_and_hooks_come_where_they_concern() {
    let says = |workspace: &Workspace, words: &str| {
        told(workspace).cautions.iter().any(|c| c.text.contains(words))
    };
    let limp = "by its own weight";
    assert!(says(&case_at("", "material: MDF, thickness: 6", 1.0, 0), limp));
    assert!(!says(&case_at(PLYWOOD, "", 1.0, 0), limp));
    let creeps = "turn the board over";
    assert!(says(&case_at("", "material: MDF, thickness: 18", 4.0, 300), creeps));
    assert!(!says(&case_at("", "material: MDF, thickness: 18", 0.2, 0), creeps));
    assert!(!says(&case_at(PLYWOOD, "", 8.0, 300), creeps));
    let hooks = "cannot be judged: read their load";
    assert!(says(&hung("", "", 2.1, 40, 300), hooks));
    assert!(!says(&hung("", "", 1.9, 40, 300), hooks));
    assert!(!says(&hung("", "hook: 3 kg", 2.1, 40, 300), hooks));
    assert!(!says(&hung(PLYWOOD, "", 2.1, 40, 300), hooks));
}
