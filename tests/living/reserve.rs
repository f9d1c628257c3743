//! Room kept free on purpose: a beginner's cart keeps it, an old hand's does not (common practice, no source).

use std::fs;
use std::path::Path;
use toolberth::files::load;
use toolberth::solve::{Effort, Settings, Watch};
use toolberth::tasks::outcome::Plan;
use toolberth::tasks::plan::plan;

/// The plan of the first flat with its shop file changed.
fn planned(change: impl Fn(&str) -> String) -> Plan {
    let demo = Path::new(env!("CARGO_MANIFEST_DIR")).join("demo-data/first-flat");
    let folder = tempfile::tempdir().expect("a folder");
    for name in ["carcass.yaml", "inventory.yaml", "shop.yaml"] {
        let text = fs::read_to_string(demo.join(name)).expect("the demo");
        let text = if name == "shop.yaml" { change(&text) } else { text };
        fs::write(folder.path().join(name), text).expect("a file");
    }
    let loaded = load(folder.path());
    let workspace = loaded.workspace.expect("the demo reads well");
    let settings = Settings { effort: Effort::Quick, ..Settings::default() };
    plan(&workspace, &settings, &Watch::default()).expect("the demo is sound")
}

fn without_reserve(text: &str) -> String {
    text.lines().filter(|l| !l.starts_with("reserve:")).map(|l| format!("{l}\n")).collect()
}

fn growth(plan: &Plan) -> bool {
    plan.notes.iter().any(|n| n.text.contains("to stay free for growth"))
}

#[test]
fn a_beginners_cart_keeps_room_for_each_thing_that_is_wished_for() {
    let plan = planned(str::to_owned);
    let of =
        |family: &str| plan.reserve.iter().filter(|k| k.family.as_deref() == Some(family)).count();
    assert_eq!((of("wood"), of("measuring"), of("electrical")), (2, 1, 1));
    assert!(growth(&plan));
    // What is kept stands in nobody's place and is counted in the worst load of the casters.
    for (n, kept) in plan.reserve.iter().enumerate() {
        assert!(plan.placements.iter().all(|p| !p.space.overlaps(&kept.space)));
        assert!(plan.reserve[..n].iter().all(|k| !k.space.overlaps(&kept.space)));
    }
    let bare = planned(without_reserve);
    let most = |p: &Plan| p.casters.iter().filter_map(|c| c.worst).max();
    assert!(most(&plan) > most(&bare));
}

#[test]
fn without_a_wish_a_beginner_still_keeps_a_share_and_an_old_hand_nothing() {
    assert!(growth(&planned(without_reserve)));
    let old = planned(|text| without_reserve(text).replace("beginner", "old hand"));
    assert!(old.reserve.is_empty());
    assert!(!growth(&old));
}
