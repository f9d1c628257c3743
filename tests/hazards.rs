//! Hazards: for each word, rule and caution a cart where it speaks and one where it is silent.

// A part of it is enough here.
#[allow(unused_imports)]
mod support;

use std::collections::BTreeSet;
use std::fmt::Write as _;
use std::fs;
use support::planner;
use toolberth::domain::{Hazard, Hazards, Layout, Workspace};
use toolberth::files::load;
use toolberth::score::{Ledger, broken};
use toolberth::site::Board;
use toolberth::solve::{Effort, Settings, Watch};
use toolberth::tasks::audit::audit;
use toolberth::tasks::check::check;
use toolberth::tasks::outcome::Caution;
use toolberth::tasks::question::questions;
use toolberth::tasks::standing::standing;

/// Two bays over each other in front, one through, one at the back; a drawer, a panel and a bench.
const CARCASS: &str = "\
name: cart of hazards
size: {width: 1000, depth: 600, height: 1800}
mass: 30 kg
casters: {height: 100, rating: 200 kg, locks: 4, at: [[20, 20], [980, 20], [20, 580], [980, 580]]}
faces:
  front:
    bays:
      - {name: low, at: [20, 700], opening: [460, 500], depth: 250, shelves: [{height: 250, depth: 100}]}
      - {name: high, at: [20, 1400], opening: [460, 300], depth: 250}
      - {name: tunnel, at: [520, 150], opening: [460, 300], depth: through}
    drawers:
      - {name: tray, at: [520, 500], opening: [460, 150], depth: 400, mass: 4 kg}
    panels:
      - {name: rack, at: [520, 700], size: [400, 600], room: 200}
  back:
    bays:
      - {name: rear, at: [520, 700], opening: [460, 500], depth: 250}
  top: {keep_clear: 50%}
";

const SHOP: &str = "\
person: {stature: 1700 mm, experience: old hand}
stations: [{name: work, work: front}]
";

/// A thing by name, what its entry says beside the usual, and where it is: bay, surface, corner; nothing off the cart.
type Thing<'a> = (&'a str, &'a str, &'a str);

fn inventory(things: &[Thing]) -> String {
    let mut text = String::from("items:\n");
    for (name, says, place) in things {
        let bench = if place.starts_with("bench") { ", place: top" } else { "" };
        let usual = if says.contains("size:") { "" } else { "size: [100, 100, 100], " };
        let weight = if says.contains("weight:") { "" } else { "weight: 1 kg, " };
        let comma = if says.is_empty() { "" } else { ", " };
        let _ =
            writeln!(text, "  - {{name: {name}, {usual}{weight}use: weekly{comma}{says}{bench}}}");
    }
    text
}

fn layout(things: &[Thing]) -> String {
    let mut text = String::from("placements:\n");
    for (name, _, place) in things.iter().filter(|(_, _, place)| !place.is_empty()) {
        let (home, at) = place.split_once('@').unwrap_or((place, ""));
        let (bay, surface) = home.split_once('/').unwrap_or((home, ""));
        let surface =
            if surface.is_empty() { String::new() } else { format!(", surface: {surface}") };
        let at = if at.is_empty() { String::new() } else { format!(", at: [{at}]") };
        let _ = writeln!(text, "  - {{item: {name}, bay: {bay}{surface}{at}}}");
    }
    text
}

/// The workspace with those things; `shop` is added to the usual one.
fn workspace(things: &[Thing], shop: &str) -> (Workspace, Layout) {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let placed = things.iter().any(|(_, _, place)| !place.is_empty());
    let files = [
        ("carcass.yaml", CARCASS.to_owned()),
        ("inventory.yaml", inventory(things)),
        ("shop.yaml", format!("{}{shop}", if shop.contains("stations") { "" } else { SHOP })),
        ("layout.yaml", if placed { layout(things) } else { "placements: []\n".to_owned() }),
    ];
    for (name, text) in files {
        fs::write(folder.path().join(name), text).expect("written");
    }
    let loaded = load(folder.path());
    let told: Vec<&str> = loaded.findings.iter().map(|f| f.text.as_str()).collect();
    let mut workspace = loaded.workspace.unwrap_or_else(|| panic!("{told:?}"));
    let layout = workspace.layout.take().unwrap_or_default();
    (workspace, layout)
}

/// Rules that a layout breaks, with what is told of each.
fn breaks(workspace: &Workspace, layout: &Layout) -> Vec<(&'static str, String)> {
    let standing = standing(workspace, layout).expect("a sound cart");
    let placed = standing.places.iter().flatten().count();
    assert_eq!(placed, layout.entries.len(), "{:?}", standing.findings);
    let board = Board::with(&standing.site, &standing.places);
    broken(&board, &Ledger::new(&board)).into_iter().map(|b| (b.rule, b.told)).collect()
}

/// One cart against what is said of it: all of the words, or nothing of that rule.
fn judge(rule: &str, what: &str, things: &[Thing], shop: &str, words: Option<&str>) {
    let (workspace, layout) = workspace(things, shop);
    let all = breaks(&workspace, &layout);
    let other: Vec<_> = all.iter().filter(|(r, _)| *r != rule).collect();
    assert!(other.is_empty(), "{what}: {other:?}");
    match words {
        Some(words) => {
            assert!(all.iter().any(|(_, told)| told.contains(words)), "{what}: {all:?} of {words}");
        }
        None => assert!(all.is_empty(), "{what}: {all:?}"),
    }
}

// ------------------------------------------------------------------ hazards apart: two things

/// How two places lie to each other, and how far that keeps things apart.
struct Relation {
    what: &'static str,
    places: [&'static str; 2],
    one_face: bool,
    one_space: bool,
}

const RELATIONS: &[Relation] = &[
    Relation {
        what: "one deck",
        places: ["low/floor@0,0", "low/floor@200,0"],
        one_face: true,
        one_space: true,
    },
    Relation {
        what: "two decks of a bay",
        places: ["low/floor@0,0", "low/shelf 1@200,0"],
        one_face: true,
        one_space: true,
    },
    Relation {
        what: "two bays of a face",
        places: ["low/floor@0,0", "high/floor@200,0"],
        one_face: true,
        one_space: false,
    },
    Relation {
        what: "a bay and a panel before it",
        places: ["tunnel/floor@0,0", "rack@0,0"],
        one_face: true,
        one_space: false,
    },
    Relation {
        what: "a bay and a drawer of its face",
        places: ["low/floor@0,0", "tray@0,0"],
        one_face: true,
        one_space: false,
    },
    Relation {
        what: "one drawer",
        places: ["tray@0,0", "tray@200,0"],
        one_face: true,
        one_space: true,
    },
    Relation {
        what: "the two ends of a through bay",
        places: ["tunnel/floor@0,0", "tunnel/floor@0,400"],
        one_face: true,
        one_space: true,
    },
    Relation {
        what: "a through bay and the front",
        places: ["tunnel/floor@0,400", "low/floor@0,0"],
        one_face: true,
        one_space: false,
    },
    Relation {
        what: "a through bay and the back",
        places: ["tunnel/floor@0,0", "rear/floor@0,0"],
        one_face: true,
        one_space: false,
    },
    Relation {
        what: "front and back",
        places: ["low/floor@0,0", "rear/floor@0,0"],
        one_face: false,
        one_space: false,
    },
    Relation {
        what: "the bench and a face",
        places: ["bench@0,0", "low/floor@0,0"],
        one_face: false,
        one_space: false,
    },
    Relation {
        what: "the bench",
        places: ["bench@0,0", "bench@200,0"],
        one_face: true,
        one_space: true,
    },
];

/// Written out afresh: which two hazards ask for different faces.
fn asks_for_faces(a: Hazard, b: Hazard) -> bool {
    let lights = |h| matches!(h, Hazard::Ignition | Hazard::Hot);
    let burns = |h| matches!(h, Hazard::Flammable | Hazard::Aerosol | Hazard::SelfHeating);
    lights(a) && burns(b) || lights(b) && burns(a)
}

/// Which two ask for different spaces.
fn asks_for_spaces(a: Hazard, b: Hazard) -> bool {
    use Hazard::{Battery, Corrosive, Flammable, Hot, Oxidiser};
    matches!(
        (a, b),
        (Oxidiser | Corrosive, Flammable)
            | (Flammable, Oxidiser | Corrosive)
            | (Battery, Hot)
            | (Hot, Battery)
    )
}

/// Every two of the eleven words in every relation of places: 12 × 121 carts.
#[test]
fn every_two_hazards_are_kept_apart_as_far_as_they_ask_and_no_farther() {
    for relation in RELATIONS {
        let [here, there] = relation.places;
        let canned = "inside: closed metal can, keep: {hang: true}, guarded: true";
        let (mut workspace, layout) =
            workspace(&[("one", canned, here), ("two", canned, there)], "");
        for a in Hazard::ALL {
            for b in Hazard::ALL {
                workspace.items[0].hazards = Hazards::of(&[a]);
                workspace.items[1].hazards = Hazards::of(&[b]);
                let expected = asks_for_faces(a, b) && relation.one_face
                    || asks_for_spaces(a, b) && relation.one_space;
                let all = breaks(&workspace, &layout);
                let found = all.iter().any(|(rule, _)| *rule == "hazards apart");
                assert_eq!(found, expected, "{a:?} and {b:?}, {}: {all:?}", relation.what);
                assert!(all.len() <= 1, "{a:?} and {b:?}, {}: {all:?}", relation.what);
                if found {
                    let told = &all[0].1;
                    assert!(told.contains("one") && told.contains("two"), "{told}");
                }
            }
        }
    }
}

/// Who, where and why, word for word.
#[test]
fn a_broken_distance_is_told_with_its_place_and_reason() {
    for (a, b, places, words) in [
        (
            "hot",
            "flammable",
            ["low/floor@0,0", "high@0,0"],
            "x and y are both on the front: sparks or heat beside what burns",
        ),
        (
            "ignition",
            "aerosol",
            ["tunnel/floor@0,0", "rear@0,0"],
            "x and y are both on the back: sparks or heat beside what burns",
        ),
        (
            "hot",
            "flammable",
            ["bench@0,0", "bench@200,0"],
            "x and y are both on the bench: sparks or heat beside what burns",
        ),
        (
            "battery",
            "hot",
            ["low/floor@0,0", "low/floor@200,0"],
            "x and y are in one space (low): heat beside a battery",
        ),
        (
            "hot",
            "battery",
            ["rear@0,0", "rear@200,0"],
            "x and y are in one space (rear): heat beside a battery",
        ),
        (
            "flammable",
            "oxidiser",
            ["tray@0,0", "tray@200,0"],
            "x and y are in one space (tray): what feeds a fire beside what burns",
        ),
        (
            "corrosive",
            "flammable",
            ["low/floor@0,0", "low/floor@200,0"],
            "x and y are in one space (low): what eats its can beside what burns",
        ),
        (
            "liquid",
            "electric",
            ["low/shelf 1@0,0", "low/floor@0,150"],
            "x can drip on y below it (low)",
        ),
    ] {
        let says = [a, b].map(|h| format!("hazards: [{h}]"));
        let things = [("x", says[0].as_str(), places[0]), ("y", says[1].as_str(), places[1])];
        let (workspace, layout) = workspace(&things, "");
        let all = breaks(&workspace, &layout);
        let told: Vec<&str> = all.iter().map(|(_, told)| told.as_str()).collect();
        let told: Vec<&str> = told.into_iter().filter(|t| t.contains("x ")).collect();
        assert!(told.contains(&words), "{told:?} for {words}");
    }
}

/// Each hazard that is kept apart with others is so whatever else the thing is.
#[test]
fn a_thing_of_many_hazards_keeps_the_distance_of_each() {
    let many = "hazards: [electric, sharp, hot], guarded: true";
    let fuel = "hazards: [liquid, flammable]";
    let case = |what, a, b, words| {
        judge("hazards apart", what, &[("iron", many, a), ("varnish", fuel, b)], "", words)
    };
    case("one face", "low/floor@0,0", "high@0,0", Some("iron and varnish are both on the front"));
    case("other faces", "low/floor@0,0", "rear@0,0", None);
    let both = "hazards: [ignition, flammable], count: 2, stack: 2";
    judge(
        "hazards apart",
        "a pile of torches has no one to be kept from",
        &[("torch", both, "low/floor@0,0")],
        "",
        None,
    );
}

/// Two copies are two lots; a lot off the cart is near nothing.
#[test]
fn copies_count_each_and_what_is_off_the_cart_does_not() {
    let far = [
        ("iron", "hazards: [hot]", "low/floor@0,0"),
        ("varnish", "hazards: [flammable], count: 2", "rear@0,0"),
    ];
    judge("hazards apart", "the other copy is off the cart", &far, "", None);
    let (workspace, mut layout) = workspace(&far, "");
    let mut second = layout.entries[1].clone();
    (second.copy, second.bay, second.face) = (2, "high".to_owned(), None);
    layout.entries.push(second);
    let all = breaks(&workspace, &layout);
    assert_eq!(all.len(), 1, "{all:?}");
    assert!(all[0].1.contains("varnish 2"), "{all:?}");
}

/// What is fixed is a neighbour like any other.
#[test]
fn a_fixed_thing_is_kept_apart_too() {
    let (hot, fuel) = ("hazards: [hot], fixed: true", "hazards: [flammable]");
    let case = |what, place, words| {
        judge(
            "hazards apart",
            what,
            &[("kiln", hot, "low/floor@0,0"), ("varnish", fuel, place)],
            "",
            words,
        )
    };
    case("on its face", "high@0,0", Some("kiln and varnish"));
    case("behind", "rear@0,0", None);
}

#[test]
fn no_liquid_stands_above_what_is_electric() {
    let (wet, live) = ("hazards: [liquid]", "hazards: [electric]");
    let hung = "hazards: [liquid], keep: [hang]";
    let hung_live = "hazards: [electric], keep: [hang]";
    for (what, glue, lamp, says, words) in [
        (
            "right above in one bay",
            "low/shelf 1@0,0",
            "low/floor@0,150",
            [wet, live],
            Some("glue can drip on lamp"),
        ),
        (
            "a little over its edge",
            "low/shelf 1@99,0",
            "low/floor@0,150",
            [wet, live],
            Some("glue can drip on lamp"),
        ),
        ("just past its edge", "low/shelf 1@100,0", "low/floor@0,150", [wet, live], None),
        ("under it", "low/floor@0,150", "low/shelf 1@0,0", [wet, live], None),
        ("beside it", "low/floor@0,150", "low/floor@100,150", [wet, live], None),
        ("in the bay above", "high@0,0", "low/floor@0,150", [wet, live], None),
        (
            "above on one panel",
            "rack@0,300",
            "rack@0,0",
            [hung, hung_live],
            Some("glue can drip on lamp"),
        ),
        (
            "touching it from above",
            "rack@0,100",
            "rack@0,0",
            [hung, hung_live],
            Some("glue can drip on lamp"),
        ),
        ("beside it on the panel", "rack@200,300", "rack@0,0", [hung, hung_live], None),
    ] {
        let things = [("glue", says[0], glue), ("lamp", says[1], lamp)];
        judge("hazards apart", what, &things, "", words);
        // The order in the inventory does not matter.
        judge("hazards apart", what, &[things[1], things[0]], "", words);
    }
}

// ------------------------------------------------------------------ hazards apart: one thing

#[test]
fn what_heats_itself_is_kept_in_a_closed_metal_can_or_not_at_all() {
    for (inside, words) in [
        ("", Some("must be kept `inside: closed metal can`")),
        (", inside: closed metal can", None),
        (", inside: '  Closed   Metal CAN '", None),
        (", inside: closed-metal-can", Some("not `closed-metal-can`")),
        (", inside: metal can", Some("not `metal can`")),
        (", inside: closed metal cans", Some("not `closed metal cans`")),
        (", inside: plastic tub", Some("not `plastic tub`")),
    ] {
        let says = format!("hazards: [self-heating]{inside}");
        judge("hazards apart", inside, &[("rags", &says, "low/floor@0,0")], "", words);
        judge(
            "hazards apart",
            "off the cart",
            &[("rags", &says, ""), ("mallet", "", "high")],
            "",
            None,
        );
    }
    judge("hazards apart", "no rag", &[("tin", "hazards: [flammable]", "low/floor@0,0")], "", None);
}

#[test]
fn nobody_moves_a_bare_edge_in_passing() {
    const BEFORE: &str = "low/floor@0,0";
    const BEHIND: &str = "low/floor@0,120";
    let bare = "hazards: [sharp]";
    for (what, edge, edge_at, other, other_at, words) in [
        (
            "a bare edge before a box",
            bare,
            BEFORE,
            "",
            BEHIND,
            Some("saw has an uncovered edge and must be moved for box"),
        ),
        ("a covered one", "hazards: [sharp], guarded: true", BEFORE, "", BEHIND, None),
        (
            "said to be bare",
            "hazards: [sharp], guarded: false",
            BEFORE,
            "",
            BEHIND,
            Some("saw has"),
        ),
        ("behind the box", bare, BEHIND, "", BEFORE, None),
        ("beside the box", bare, "low/floor@200,0", "", BEHIND, None),
        ("before what is used where it is", bare, BEFORE, "fetched: false", BEHIND, None),
        (
            "before what is fixed and fetched all the same",
            bare,
            BEFORE,
            "fixed: true",
            BEHIND,
            Some("moved for box"),
        ),
        ("in a drawer beside", bare, "tray@0,0", "", "tray@200,0", None),
        (
            "hung before a bay",
            "hazards: [sharp], keep: [hang]",
            "rack@0,0",
            "",
            "tunnel/floor@0,0",
            None,
        ),
        ("guarded but for no reason", "guarded: false", BEFORE, "", BEHIND, None),
    ] {
        judge(
            "hazards apart",
            what,
            &[("saw", edge, edge_at), ("box", other, other_at)],
            "",
            words,
        );
    }
    let row = [
        ("saw", bare, BEFORE),
        ("plane", bare, "low/floor@100,0"),
        ("box", "size: [200, 100, 100]", BEHIND),
    ];
    let (workspace, layout) = workspace(&row, "");
    let standing = standing(&workspace, &layout).expect("a sound cart");
    let board = Board::with(&standing.site, &standing.places);
    let all = broken(&board, &Ledger::new(&board));
    assert_eq!(all.len(), 1, "{all:?}");
    assert_eq!((all[0].against.value, all[0].against.limit), (2.0, 0.0));
    assert_eq!(all[0].lots.len(), 3, "the box and both edges");
}

/// The shoulder of a person of 1700 mm is about 1419 mm over the floor; the bay's floor is at 1400.
#[test]
fn nothing_over_ten_kilograms_is_gripped_above_the_shoulder() {
    for (what, says, place, words) in [
        (
            "heavy and high",
            "weight: 10.1 kg, grip: 60",
            "high@0,0",
            Some("weighs 10.1 kg and is gripped at 1460 mm, above the shoulder at 1419 mm"),
        ),
        ("ten kilograms are not over ten", "weight: 10 kg, grip: 60", "high@0,0", None),
        ("gripped below the shoulder", "weight: 12 kg, grip: 15", "high@0,0", None),
        (
            "the middle counts where no grip is said",
            "weight: 12 kg",
            "high@0,0",
            Some("gripped at 1450 mm"),
        ),
        ("heavy and low", "weight: 12 kg", "low/floor@0,0", None),
        ("each copy of a pile by itself", "weight: 6 kg, count: 2, stack: 2", "high@0,0", None),
        (
            "used where it is, it is high all the same",
            "weight: 12 kg, fetched: false",
            "high@0,0",
            Some("above the shoulder"),
        ),
    ] {
        judge("hazards apart", what, &[("anvil", says, place)], "", words);
    }
}

// ------------------------------------------------------------------ at hand

#[test]
fn what_is_urgent_is_at_hand() {
    let walls = |faces: &str| {
        format!(
            "person: {{stature: 1700 mm}}\nstations: [{{name: a, share: 90%, work: front}}, {{name: b, share: 10%, work: front, walls: [{faces}]}}]\n"
        )
    };
    let free = String::new();
    let urgent = "urgent: true";
    for (what, says, place, other, shop, words) in [
        ("in the open", urgent, "low/floor@0,0", "", &free, None),
        ("not urgent behind something", "", "low/floor@0,120", "low/floor@0,0", &free, None),
        (
            "behind something",
            urgent,
            "low/floor@0,120",
            "low/floor@0,0",
            &free,
            Some("something stands before it"),
        ),
        ("beside something", urgent, "low/floor@0,120", "low/floor@200,0", &free, None),
        ("in a drawer", urgent, "tray@0,0", "", &free, Some("it is in a drawer")),
        ("stretched for", urgent, "high@0,0", "", &free, Some("one must stretch for it")),
        (
            "at a wall now and then",
            urgent,
            "rear@0,0",
            "",
            &walls("back"),
            Some("its face stands at a wall"),
        ),
        ("another face at the wall", urgent, "low/floor@0,0", "", &walls("back"), None),
        ("through, one end at the wall", urgent, "tunnel/floor@0,0", "", &walls("back"), None),
        // The bench of this cart is at 1800 mm.
        (
            "on the bench",
            urgent,
            "bench@0,0",
            "",
            &walls("back, left, right"),
            Some("one must stretch for it"),
        ),
        (
            "used where it is, behind something",
            "urgent: true, fetched: false",
            "low/floor@0,120",
            "low/floor@0,0",
            &free,
            Some("something stands before it"),
        ),
        ("off the cart", urgent, "", "low/floor@0,0", &free, None),
    ] {
        let mut things = vec![("first aid box", says, place)];
        if !other.is_empty() {
            things.push(("mallet", "", other));
        }
        judge("at hand", what, &things, shop, words);
    }
    let twice = [("first aid box", urgent, "tray@0,0"), ("eye wash", urgent, "rear@0,0")];
    let (workspace, layout) = workspace(&twice, &walls("back"));
    let rules = breaks(&workspace, &layout);
    assert_eq!(rules.len(), 2, "{rules:?}");
}

// ------------------------------------------------------------------ cautions

/// Cautions of a cart as it stands.
fn cautions(things: &[Thing], shop: &str) -> Vec<Caution> {
    let (workspace, layout) = workspace(things, shop);
    let settings = Settings { effort: Effort::Quick, ..Settings::default() };
    audit(&workspace, &layout, &settings, &Watch::default()).expect("a sound cart").plan.cautions
}

/// A caution known by some words of it: carts on which it is given, with the items it names, and one on which it is not.
struct Told<'a> {
    words: &'a str,
    things: &'a [Thing<'a>],
    shop: &'a str,
    /// The items named; nothing where it may not be given.
    names: Option<&'a [&'a str]>,
}

fn told(cases: &[Told]) {
    for case in cases {
        let all = cautions(case.things, case.shop);
        let found = all.iter().find(|c| c.text.contains(case.words));
        let names = found.map(|c| c.items.iter().map(String::as_str).collect::<Vec<_>>());
        let texts: Vec<&str> = all.iter().map(|c| c.text.as_str()).collect();
        assert_eq!(names.as_deref(), case.names, "{} of {:?}: {texts:#?}", case.words, case.things);
        for caution in &all {
            assert!(!caution.source.is_empty(), "{}", caution.text);
        }
    }
}

const MALLET: Thing = ("mallet", "", "high@0,0");

#[test]
fn no_hazard_word_is_never_told_as_no_hazard() {
    let silent = "That is not the same as having none";
    told(&[
        Told { words: silent, things: &[MALLET], shop: "", names: Some(&[]) },
        Told {
            words: silent,
            things: &[("mallet", "hazards: []", "high@0,0")],
            shop: "",
            names: Some(&[]),
        },
        Told {
            words: silent,
            things: &[("lamp", "hazards: [electric]", "high@0,0")],
            shop: "",
            names: None,
        },
    ]);
}

/// Each of the eleven words has a caution that names its items, and none of it without the word.
#[test]
fn every_hazard_has_a_caution_that_names_its_items() {
    for (hazard, words) in [
        ("sharp", "A bare edge or point"),
        ("ignition", "keep watch for 30 minutes"),
        ("hot", "They come back hot"),
        ("flammable", "Keep here what is in use"),
        ("liquid", "on a tray that holds what leaks"),
        ("electric", "Unplug before"),
        ("battery", "Charge off the cart"),
        ("aerosol", "Keep here what is in use"),
        ("self-heating", "only in a covered metal can"),
        ("oxidiser", "Never mix"),
        ("corrosive", "Never mix"),
    ] {
        let says = format!("hazards: [{hazard}]");
        let other = if hazard == "electric" { "hazards: [liquid]" } else { "hazards: [electric]" };
        told(&[
            Told {
                words,
                things: &[MALLET, ("thing", &says, "low/floor@0,0")],
                shop: "",
                names: Some(&["thing"]),
            },
            Told {
                words,
                things: &[MALLET, ("thing", other, "low/floor@0,0")],
                shop: "",
                names: None,
            },
        ]);
    }
}

#[test]
fn fire_is_told_with_its_figures() {
    let iron = ("iron", "hazards: [hot, ignition]", "rear@0,0");
    let varnish = (
        "varnish",
        "hazards: [flammable, liquid], count: 2, size: [100, 100, 150]",
        "low/floor@0,0",
    );
    let drum = ("drum", "hazards: [flammable, liquid], size: [160, 160, 160]", "low/floor@0,0");
    let torch = ("torch", "hazards: [ignition, aerosol]", "low/floor@0,0");
    let cordless = ("cordless iron", "hazards: [hot, battery]", "rear@0,0");
    told(&[
        Told {
            words: "Without the can (rags): off the cart",
            things: &[
                ("rags", "hazards: [self-heating]", "low/floor@0,0"),
                ("tin of rags", "hazards: [self-heating], inside: closed metal can", "high@0,0"),
            ],
            shop: "",
            names: Some(&["rags", "tin of rags"]),
        },
        Told {
            words: "Without the can",
            things: &[(
                "rags",
                "hazards: [self-heating], inside: closed metal can",
                "low/floor@0,0",
            )],
            shop: "",
            names: None,
        },
        Told {
            words: "what burns (varnish): 10.7 m (35 ft) at least, and keep watch for 30 minutes",
            things: &[iron, varnish],
            shop: "",
            names: Some(&["iron"]),
        },
        Told {
            words: "all that can burn within 10.7 m (35 ft)",
            things: &[iron, MALLET],
            shop: "",
            names: Some(&["iron"]),
        },
        Told { words: "all that can burn within", things: &[iron, varnish], shop: "", names: None },
        Told { words: "10.7 m", things: &[varnish], shop: "", names: None },
        Told {
            words: "At most 3.0 litres, by their outer sizes",
            things: &[varnish],
            shop: "",
            names: Some(&["varnish"]),
        },
        Told {
            words: "94.6 litres (25 US gal)",
            things: &[varnish],
            shop: "",
            names: Some(&["varnish"]),
        },
        Told { words: "94.6 litres (25 US gal)", things: &[iron], shop: "", names: None },
        Told {
            words: "Over 3.8 litres outside",
            things: &[drum, varnish],
            shop: "",
            names: Some(&["drum"]),
        },
        Told { words: "Over 3.8 litres outside", things: &[varnish], shop: "", names: None },
        Told {
            words: "both the flame and the fuel",
            things: &[torch],
            shop: "",
            names: Some(&["torch"]),
        },
        Told {
            words: "both the flame and the fuel",
            things: &[iron, varnish],
            shop: "",
            names: None,
        },
        Told {
            words: "Take the battery out first (cordless iron)",
            things: &[cordless],
            shop: "",
            names: Some(&["cordless iron"]),
        },
        Told { words: "Take the battery out first", things: &[iron], shop: "", names: None },
    ]);
}

#[test]
fn an_extinguisher_is_not_beside_what_it_puts_out() {
    let words = "On one face with what it may have to put out (varnish)";
    let any = "On one face with what";
    let varnish = ("varnish", "hazards: [flammable]", "low/floor@0,0");
    let here = ("small extinguisher", "urgent: true", "low/floor@200,0");
    let there = ("small extinguisher", "urgent: true", "rear@0,0");
    let through = ("fire blanket", "", "tunnel/floor@0,400");
    told(&[
        Told { words, things: &[varnish, here], shop: "", names: Some(&["small extinguisher"]) },
        Told { words: any, things: &[varnish, there], shop: "", names: None },
        Told { words, things: &[varnish, through], shop: "", names: Some(&["fire blanket"]) },
        Told { words: any, things: &[MALLET, here], shop: "", names: None },
        Told {
            words: any,
            things: &[varnish, ("mallet", "urgent: true", "low/floor@200,0")],
            shop: "",
            names: None,
        },
    ]);
}

#[test]
fn bleach_and_acid_share_no_space_unwarned() {
    let words = "an acid that meets bleach";
    let acid = ("descaler", "hazards: [corrosive]", "low/floor@0,0");
    let beside = ("bleach", "hazards: [oxidiser]", "low/shelf 1@0,0");
    let away = ("bleach", "hazards: [oxidiser]", "high@0,0");
    told(&[
        Told { words, things: &[acid, beside], shop: "", names: Some(&["descaler", "bleach"]) },
        Told { words, things: &[acid, away], shop: "", names: None },
        Told {
            words,
            things: &[("etchant", "hazards: [corrosive, oxidiser]", "high@0,0"), acid],
            shop: "",
            names: None,
        },
    ]);
}

#[test]
fn blades_ask_for_a_container_when_they_are_worn() {
    let words = "no container for used and broken blades";
    let knife = ("snap-off knife", "hazards: [sharp], guarded: true", "low/floor@0,0");
    let chisel = ("chisel", "hazards: [sharp], guarded: true", "high@0,0");
    let tin = ("used blade tin", "", "high@200,0");
    told(&[
        Told { words, things: &[knife, chisel], shop: "", names: Some(&["snap-off knife"]) },
        Told { words, things: &[chisel], shop: "", names: Some(&["chisel"]) },
        Told { words, things: &[knife, tin], shop: "", names: None },
        Told { words, things: &[MALLET], shop: "", names: None },
        Told { words: "A bare edge or point", things: &[knife], shop: "", names: None },
    ]);
}

#[test]
fn the_room_decides_what_belongs_off_the_cart() {
    let varnish = ("varnish", "hazards: [flammable]", "low/floor@0,0");
    let drill = ("drill", "hazards: [battery]", "low/floor@200,0");
    let both: &[Thing] = &[varnish, drill];
    let all: Option<&[&str]> = Some(&["varnish", "drill"]);
    let room = |kind: &str| format!("room: {{kind: {kind}}}\n");
    let [landing, flat, hall, shed, cave] =
        ["landing", "rented flat", "village hall", "shed", "cave"].map(room);
    told(&[
        Told {
            words: "No fuel, finish or battery is kept or charged in a way out",
            things: both,
            shop: &landing,
            names: all,
        },
        Told {
            words: "The cart stands in a way out: 711 mm (28 in)",
            things: &[MALLET],
            shop: &landing,
            names: Some(&[]),
        },
        Told { words: "way out: 711", things: both, shop: &flat, names: None },
        Told {
            words: "People live here, so not while they sleep: charge off the cart",
            things: both,
            shop: &flat,
            names: Some(&["drill"]),
        },
        Told { words: "so not while they sleep", things: both, shop: &shed, names: None },
        Told {
            words: "18.9 litres (5 US gal)",
            things: &[varnish],
            shop: &flat,
            names: Some(&["varnish"]),
        },
        Told { words: "Charge off", things: &[varnish], shop: &flat, names: None },
        Told { words: "18.9 litres", things: &[drill], shop: &flat, names: None },
        Told { words: "People live here", things: &[MALLET], shop: &flat, names: None },
        Told { words: "People meet here", things: both, shop: &hall, names: Some(&["varnish"]) },
        Told { words: "People meet here", things: &[drill], shop: &hall, names: None },
        Told { words: "belong off the cart.", things: both, shop: &cave, names: all },
        Told {
            words: "What people do in a cave is not known",
            things: both,
            shop: &cave,
            names: all,
        },
        Told { words: "What people do in a cave", things: &[MALLET], shop: &cave, names: None },
        Told { words: "does not say what room this is", things: both, shop: "", names: all },
        Told { words: "does not say what room this is", things: both, shop: &shed, names: None },
        Told { words: "People", things: both, shop: &shed, names: None },
    ]);
}

#[test]
fn children_ask_for_locks_and_for_a_cart_that_stands_with_one_on_a_drawer() {
    let (children, none) = ("room: {kind: shed, children: true}\n", "room: {kind: shed}\n");
    let saw = ("saw", "hazards: [sharp]", "low/floor@0,0");
    let stands = "the cart stands by each drawer in turn";
    let over = "the cart goes over by tray";
    let ballast = ("vice", "weight: 40 kg, size: [400, 200, 100]", "rear@0,0");
    told(&[
        Told {
            words: "Children come in",
            things: &[saw, MALLET],
            shop: children,
            names: Some(&["saw"]),
        },
        Told { words: "Children come in", things: &[saw], shop: none, names: None },
        Told { words: over, things: &[saw], shop: children, names: Some(&[]) },
        Told { words: stands, things: &[saw, ballast], shop: children, names: Some(&[]) },
        Told { words: over, things: &[saw, ballast], shop: children, names: None },
        Told { words: stands, things: &[saw, ballast], shop: none, names: None },
        Told {
            words: "27.2 kg on its front, out, and 10.9 mm under the far casters",
            things: &[saw],
            shop: children,
            names: Some(&[]),
        },
    ]);
}

/// What needs no layout is told before there is one.
#[test]
fn check_tells_what_needs_no_layout() {
    let things: &[Thing] =
        &[("iron", "hazards: [hot]", ""), ("oily rags", "", ""), ("saw", "hazards: [sharp]", "")];
    let (workspace, _) = workspace(things, "room: {kind: flat, children: true}\n");
    let check = check(&workspace).expect("a sound cart");
    let text: String = check.cautions.iter().map(|c| format!("{}\n", c.text)).collect();
    for words in ["They come back hot", "A bare edge", "Children come in", "By their names"] {
        assert!(text.contains(words), "{words}: {text}");
    }
    for words in ["goes over", "Lock the casters before", "extinguisher"] {
        assert!(!text.contains(words), "{words}: {text}");
    }
    assert_eq!(check.questions.len(), 1);
    assert_eq!(check.questions[0].item, "oily rags");
}

// ------------------------------------------------------------------ questions

/// What each name lets one ask, and what is passed over.
#[test]
fn names_of_the_trade_are_asked_about() {
    for (name, says, asked) in [
        ("oily rags", "", "self-heating"),
        ("oily rags", "hazards: [self-heating], inside: closed metal can", ""),
        ("oily rags", "hazards: [flammable]", "self-heating"),
        ("rag bundle", "hazards: []", ""),
        ("clean rags", "", ""),
        ("dragon stencil", "", ""),
        ("can of thinner", "", "flammable liquid"),
        ("White Spirit", "hazards: [liquid]", "flammable"),
        ("water varnish", "hazards: [liquid]", ""),
        ("varnish", "", "flammable liquid"),
        ("cordless drill", "", "battery"),
        ("battery charger", "hazards: [electric]", ""),
        ("spare batteries", "", "battery"),
        ("carving knives", "", "sharp"),
        ("knife block", "hazards: [sharp], guarded: true", ""),
        ("saw horse", "", ""),
        ("paint brush", "", ""),
        ("glue stick box", "", ""),
        ("glue gun", "", "hot electric liquid"),
        ("glue gun", "hazards: [hot, electric]", ""),
        ("soldering station", "hazards: [hot, electric]", "ignition"),
        ("drain cleaner", "", "corrosive liquid"),
        ("bleach", "", "oxidiser"),
        ("spray paint", "hazards: [aerosol, flammable]", ""),
        ("spray bottle", "", ""),
        ("mallet", "", ""),
        ("tin", "holds: [scalpel blades, pencils]", "sharp"),
        ("tin", "holds: [glue sticks]", ""),
    ] {
        let (workspace, _) = workspace(&[(name, says, "")], "");
        let found = questions(&workspace.items);
        let words: BTreeSet<&str> =
            found.iter().flat_map(|q| &q.sounds).map(|(h, _)| h.name()).collect();
        let wanted: BTreeSet<&str> = asked.split_whitespace().collect();
        assert_eq!(words, wanted, "{name} {says}");
        for question in &found {
            let text = question.text();
            assert!(question.sounds.iter().all(|(_, word)| text.contains(word)), "{text}");
            assert_eq!(text.contains("closed metal can"), words.contains("self-heating"), "{text}");
        }
    }
}

/// What sounds dangerous and is not said warns with the plan too; what only spills does not.
#[test]
fn a_plan_names_what_sounds_dangerous() {
    let words = "By their names these may have hazards";
    told(&[
        Told {
            words,
            things: &[("rag bundle", "", "low/floor@0,0"), MALLET],
            shop: "",
            names: Some(&["rag bundle"]),
        },
        Told { words, things: &[("wood glue", "", "low/floor@0,0")], shop: "", names: None },
        Told {
            words,
            things: &[("rag bundle", "hazards: []", "low/floor@0,0")],
            shop: "",
            names: None,
        },
    ]);
}

// ------------------------------------------------------------------ plans

/// Room kept for a family keeps the rules that any of it has to keep.
#[test]
fn room_kept_for_a_family_is_kept_apart_like_the_family() {
    let things: &[Thing] = &[
        ("varnish", "hazards: [flammable], family: finish, place: front", ""),
        ("stain", "hazards: [flammable], family: finish, place: front", ""),
        ("iron", "hazards: [hot, ignition], family: heat, place: back", ""),
        ("tips", "family: heat", ""),
    ];
    let (workspace, _) =
        workspace(things, "reserve: {share: 0%, families: {heat: 2, finish: 2}}\n");
    let plan = planner::plan(&workspace, 1, 1);
    assert_eq!(plan.reserve.len(), 4, "{:?}", plan.notes);
    for kept in &plan.reserve {
        let fine = match kept.family.as_deref() {
            Some("heat") => kept.face.name() == "back",
            _ => kept.face.name() == "front" && kept.bay != "tunnel",
        };
        assert!(fine || kept.bay == "bench", "{kept:?}");
    }
}

/// A rule is never traded for seconds: what it leaves no place for stays off the cart.
#[test]
fn a_plan_leaves_out_what_it_cannot_keep_apart() {
    let things: &[Thing] = &[
        ("varnish", "hazards: [flammable], place: front", ""),
        ("iron", "hazards: [hot], place: front", ""),
        ("rags", "hazards: [self-heating]", ""),
        ("mallet", "", ""),
    ];
    let plan = planner::plan(&workspace(things, "").0, 1, 1);
    assert!(plan.worth.broken.is_empty(), "{:?}", plan.worth.broken);
    let left: BTreeSet<&str> = plan.left_out.iter().map(|l| l.copy.item.as_str()).collect();
    assert!(left.contains("rags") && left.len() == 2, "{left:?}");
    assert!(left.contains("iron") != left.contains("varnish"), "{left:?}");
}
