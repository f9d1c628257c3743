//! Faulty workspaces: what is said, where, and which name was probably meant.

use std::fs;
use std::path::Path;
use toolberth::files::{Loaded, load};
use toolberth::finding::{Finding, Severity};

const CARCASS: &str = "\
name: small cart
units: mm
size: {width: 600, depth: 400, height: 800}
mass: 20 kg
casters: {height: 100, rating: 40 kg, at: [[50, 50], [550, 50], [50, 350], [550, 350]]}
faces:
  front:
    bays:
      - {name: upper, at: [20, 450], opening: [560, 300], depth: 250, shelves: [{height: 150}], hang: {left: 5 kg}}
      - {name: lower, at: [20, 120], opening: [560, 300], depth: through}
";

const INVENTORY: &str = "\
items:
  - {name: hammer, size: [300, 110, 30], weight: 0.6 kg, use: daily, family: striking}
  - {name: chisel, size: [250, 30, 30], weight: 200 g, use: weekly, hazards: [sharp]}
";

/// A workspace of those files beside a good carcass and inventory.
fn loaded<T: AsRef<[u8]>>(files: &[(&str, T)]) -> Loaded {
    let folder = tempfile::tempdir().expect("a temporary folder");
    fs::write(folder.path().join("carcass.yaml"), CARCASS).expect("written");
    fs::write(folder.path().join("inventory.yaml"), INVENTORY).expect("written");
    for (name, text) in files {
        fs::write(folder.path().join(name), text).expect("written");
    }
    load(folder.path())
}

/// `file:line:column what is wrong (nearest name)`, warnings marked, notes left out; further places after `and`.
fn told(findings: &[Finding]) -> Vec<String> {
    findings.iter().filter(|f| f.severity != Severity::Note).map(line).collect()
}

fn line(finding: &Finding) -> String {
    let place = |span: &toolberth::finding::Span| {
        let file = Path::new(&span.source.name).file_name().unwrap_or_default().to_string_lossy();
        format!("{file}:{}:{}", span.line(), span.column())
    };
    let places: Vec<String> = finding.at.iter().map(place).collect();
    let warning = if finding.severity == Severity::Warning { " warning:" } else { "" };
    let near = finding.nearest.as_ref().map_or(String::new(), |n| format!(" (nearest {n})"));
    format!("{}{warning} {}{near}", places.join(" and "), finding.text)
}

/// One faulty file beside good ones, and all that is said of it.
fn check(file: &str, cases: &[(&str, &[&str])]) {
    let mut wrong = Vec::new();
    for (text, expected) in cases {
        let found = told(&loaded(&[(file, text)]).findings);
        if found != *expected {
            wrong.push(format!("{text}\n  expected {expected:#?}\n  found {found:#?}"));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n\n"));
}

#[test]
fn good_files_give_no_fault() {
    let loaded = loaded::<&str>(&[]);
    assert_eq!(told(&loaded.findings), Vec::<String>::new());
    assert_eq!(loaded.workspace.map(|w| w.items.len()), Some(2));
}

#[test]
fn keys_and_words_of_an_item() {
    let item = |rest: &str| {
        format!("items:\n  - {{name: saw, size: [1, 2, 3], weight: 1, use: 1, {rest}}}\n")
    };
    check(
        "inventory.yaml",
        &[
            (
                "items:\n  - name: saw\n    size: [1, 2, 3]\n    wieght: 1\n    use: 1\n",
                &["inventory.yaml:4:5 an item has no key `wieght` (nearest weight)"],
            ),
            (
                "items:\n  - name: saw\n",
                &[
                    "inventory.yaml:2:5 saw has no size",
                    "inventory.yaml:2:5 saw has no weight",
                    "inventory.yaml:2:5 saw has no use",
                ],
            ),
            (
                "items:\n  - size: [1, 2, 3]\n    weight: 1\n    use: 1\n",
                &["inventory.yaml:2:5 an item has no name"],
            ),
            (
                &item("weight: 2"),
                &["inventory.yaml:2:53 and inventory.yaml:2:34 weight is given twice in one place"],
            ),
            (
                &item("hazards: [shrap]"),
                &["inventory.yaml:2:63 there is no hazard `shrap` (nearest sharp)"],
            ),
            (&item("keep: [lay]"), &["inventory.yaml:2:60 there is no pose `lay`"]),
            (
                &item("keep: {hnag: true}"),
                &["inventory.yaml:2:60 the list of poses has no key `hnag` (nearest hang)"],
            ),
            (
                &item("keep: {stand: false, lie: no}"),
                &["inventory.yaml:2:60 saw may be kept in no pose"],
            ),
            (&item("turn: maybe"), &["inventory.yaml:2:59 turn cannot be maybe"]),
            (
                &item("with: [hamer]"),
                &["inventory.yaml:2:60 saw has a companion that is not there"],
            ),
            (
                &item("place: fornt"),
                &[
                    "inventory.yaml:2:60 saw is sent to `fornt`, which this cart has not (nearest front)",
                ],
            ),
            (
                &item("prefer: front/uper"),
                &[
                    "inventory.yaml:2:61 saw is sent to `uper`, which this cart has not (nearest upper)",
                ],
            ),
            (&item("count: 0"), &["inventory.yaml:2:60 count cannot be 0"]),
            (&item("hands: 3"), &["inventory.yaml:2:60 hands cannot be 3"]),
            (
                &item("fixed: true"),
                &["inventory.yaml:2:12 saw is fixed, but layout.yaml does not say where"],
            ),
        ],
    );
}

#[test]
fn an_inventory_as_a_whole() {
    check(
        "inventory.yaml",
        &[
            (
                "items:\n  - {name: saw, size: [1, 2, 3], weight: 1, use: 1}\n  - {name: saw, size: [1, 2, 3], weight: 1, use: 1}\n",
                &["inventory.yaml:3:12 and inventory.yaml:2:12 two items are named saw"],
            ),
            (
                "include: [marking and mesuring]\n",
                &[
                    "inventory.yaml:1:11 there is neither a file nor a starter inventory named `marking and mesuring` (nearest marking and measuring)",
                ],
            ),
            ("units: imches\nitems: []\n", &["inventory.yaml:1:8 units cannot be imches"]),
            (
                "item:\n  - {name: saw}\n",
                &["inventory.yaml:1:1 the inventory has no key `item` (nearest items)"],
            ),
        ],
    );
}

#[test]
fn quantities_of_an_item() {
    let saw = |size: &str, weight: &str, uses: &str| {
        format!("items:\n  - name: saw\n    size: {size}\n    weight: {weight}\n    use: {uses}\n")
    };
    check(
        "inventory.yaml",
        &[
            (&saw("[1, 0, 3]", "1", "1"), &["inventory.yaml:3:15 size cannot be 0"]),
            (&saw("[1, 2]", "1", "1"), &["inventory.yaml:3:12 size cannot be a list of 2"]),
            (&saw("1 x 2 mm", "1", "1"), &["inventory.yaml:3:11 size cannot be 1 x 2 mm"]),
            (
                &saw("[1, .nan, 1e400]", "1", "1"),
                &[
                    "inventory.yaml:3:15 size cannot be .nan",
                    "inventory.yaml:3:21 size cannot be 1e400",
                ],
            ),
            (
                &saw("[1, 2, 101 m]", "11 t", "1e6"),
                &[
                    "inventory.yaml:3:18 size cannot be 101 m",
                    "inventory.yaml:4:13 weight cannot be 11 t",
                    "inventory.yaml:5:10 use cannot be 1e6",
                ],
            ),
            (
                &saw("[1, 2, 3]", "-1", "often"),
                &[
                    "inventory.yaml:4:13 weight cannot be -1",
                    "inventory.yaml:5:10 use cannot be often",
                ],
            ),
            (&saw("", "1", "1"), &["inventory.yaml:3:5 size is empty"]),
            (
                &saw("{w: 1}", "[1]", "1"),
                &[
                    "inventory.yaml:3:12 size cannot be a mapping",
                    "inventory.yaml:4:14 weight cannot be a list of 1",
                ],
            ),
        ],
    );
}

#[test]
fn a_carcass() {
    let cart = |from: &str, to: &str| CARCASS.replace(from, to);
    check(
        "carcass.yaml",
        &[
            (
                &cart("units: mm", "units: mn"),
                &["carcass.yaml:2:8 units cannot be mn (nearest mm)"],
            ),
            (&cart("depth: 400, ", ""), &["carcass.yaml:3:8 the size of the carcass has no depth"]),
            (
                &cart("  front:", "  frnot:"),
                &["carcass.yaml:7:3 the list of faces has no key `frnot` (nearest front)"],
            ),
            (
                &cart(", [50, 350], [550, 350]", ""),
                &["carcass.yaml:5:45 a cart cannot stand on 2 casters"],
            ),
            (
                &cart("[50, 50], [550, 50], [50, 350], [550, 350]", ""),
                &["carcass.yaml:5:43 a cart cannot stand on 0 casters"],
            ),
            (
                &cart(" rating: 40 kg,", ""),
                &[
                    "carcass.yaml:5:11 warning: the casters have no rating: whether they carry the load cannot be judged",
                ],
            ),
            (
                &cart("name: lower", "name: upper"),
                &[
                    "carcass.yaml:10:16 and carcass.yaml:9:16 two bays, drawers or panels of the front are named upper",
                ],
            ),
            (
                &cart("depth: through", "depth: thruogh"),
                &["carcass.yaml:10:66 depth cannot be thruogh"],
            ),
            (
                &cart("depth: through", "depth: through, hang: {back: 1 kg}"),
                &["carcass.yaml:10:88 a through bay has no back wall"],
            ),
            (&cart("depth: 250, ", ""), &["carcass.yaml:9:10 front / upper has no depth"]),
            (
                &format!("{CARCASS}  back:\n    bays: [{{name: rear, behind: uper}}]\n"),
                &[
                    "carcass.yaml:12:19 there is no bay with a depth of its own on the front, named `uper` (nearest upper)",
                ],
            ),
            ("- name: cart\n", &["carcass.yaml:1:3 the file cannot be a list of 1"]),
        ],
    );
}

#[test]
fn a_shop() {
    check(
        "shop.yaml",
        &[
            (
                "person: {stature: 170, hand: rihgt}\n",
                &[
                    "shop.yaml:1:19 stature cannot be 170",
                    "shop.yaml:1:30 hand cannot be rihgt (nearest right)",
                ],
            ),
            (
                "stations:\n  - {name: bench, share: 80, work: top}\n",
                &["shop.yaml:2:26 share cannot be 80", "shop.yaml:2:36 work cannot be top"],
            ),
            (
                "jobs: [{name: mend, items: [hamer, chisel], use: weekly}]\n",
                &[
                    "shop.yaml:1:29 the job mend asks for an item that is not there (nearest hammer)",
                ],
            ),
            (
                "reserve: {families: {striking: 2, strikng: 1}}\n",
                &["shop.yaml:1:35 no item is of the family strikng (nearest striking)"],
            ),
            ("room: {cart: {at: [0, 0], turned: 45}}\n", &["shop.yaml:1:35 turned cannot be 45"]),
            ("rates: {roll_out: -1 s}\n", &["shop.yaml:1:19 roll_out cannot be -1 s"]),
        ],
    );
}

#[test]
fn a_material_is_known_by_any_of_its_names() {
    let board = |words: &str| {
        let text = CARCASS.replace("mass: 20 kg", &format!("mass: 20 kg\nboard: {{{words}}}"));
        told(&loaded(&[("carcass.yaml", text)]).findings)
    };
    assert!(board("material: Chipboard, thickness: 15").is_empty());
    assert!(board("material: particle  board, thickness: 15").is_empty());
    assert!(board("thickness: 15").is_empty());
    assert_eq!(
        board("material: plywod, thickness: 15"),
        ["carcass.yaml:5:19 there is no material `plywod` (nearest plywood)"]
    );
    assert_eq!(
        board("material: glass, thickness: 15"),
        ["carcass.yaml:5:19 there is no material `glass`"]
    );
}

#[test]
fn how_things_are_held_is_read_word_by_word() {
    let bay = |words: &str| {
        let text = CARCASS.replace("hang: {left: 5 kg}", &format!("hang: {{left: 5 kg}}, {words}"));
        told(&loaded(&[("carcass.yaml", text)]).findings)
    };
    assert!(bay("hook: 2 kg, grain: end, ends: fixed, screw: {thread: 12, each: 2}").is_empty());
    let text = |words: &str| bay(words).join("; ");
    assert!(text("grain: ends").contains("grain cannot be ends (nearest end)"));
    assert!(text("ends: fixd").contains("ends cannot be fixd (nearest fixed)"));
    assert!(text("hook: -2 kg").contains("hook cannot be -2 kg"));
    assert!(
        text("screw: {diametr: 4}").contains("a screw has no key `diametr` (nearest diameter)")
    );
    assert!(text("screw: {each: 0}").contains("each cannot be 0"));
}

#[test]
fn a_layout_is_warned_of_what_is_not_there() {
    let text = "placements:\n  - {item: hamer, bay: upper, surface: floor}\n  - {item: chisel, face: front, bay: uper}\n  \
                - {item: chisel, bay: upper, surface: shelf 2}\n  - {item: hammer, bay: bench}\n";
    let loaded = loaded(&[("layout.yaml", text)]);
    assert_eq!(
        told(&loaded.findings),
        [
            "layout.yaml:2:12 warning: there is no item `hamer` (nearest hammer)",
            "layout.yaml:3:12 warning: there is no bay of the front `uper` (nearest upper)",
            "layout.yaml:4:12 warning: there is no surface of upper `shelf 2` (nearest shelf 1)",
        ]
    );
    assert!(loaded.workspace.is_some_and(|w| w.layout.is_some_and(|l| l.entries.len() == 4)));
}

#[test]
fn a_faulty_entry_of_a_layout_is_left_out() {
    let text = "placements:\n  - {item: hammer, bay: upper}\n  - {itm: chisel, bay: upper}\n";
    let loaded = loaded(&[("layout.yaml", text)]);
    assert_eq!(
        told(&loaded.findings),
        ["layout.yaml:3:6 a placement has no key `itm` (nearest item)"]
    );
    assert!(loaded.workspace.is_some_and(|w| w.layout.is_some_and(|l| l.entries.len() == 1)));
}

#[test]
fn yaml_that_cannot_be_read() {
    check(
        "inventory.yaml",
        &[
            (
                "items:\n  - name: saw\n    size: [1, 2, 3]\n   weight: 2\n",
                &["inventory.yaml:4:4 this line is indented differently from those it belongs to"],
            ),
            (
                "items:\n - name: saw\n\tsize: 1\n",
                &["inventory.yaml:3:1 a tab stands where blanks belong"],
            ),
            (
                "items:\n  - name: \"5/8\" chisel\"\n",
                &["inventory.yaml:2:17 more text follows the closing quote"],
            ),
            ("items: [1, 2\nname: 3\n", &["inventory.yaml:2:5 a `[` or `{` above is not closed"]),
            ("items:\n  - name: saw: big\n", &["inventory.yaml:2:14 a `:` stands where none can"]),
            (
                "items:\n  - name: \"saw\n",
                &["inventory.yaml:2:11 a quote is opened here and never closed"],
            ),
            (
                "items:\n  - name: @saw\n",
                &["inventory.yaml:2:11 a text may not begin with this sign"],
            ),
            ("items:\n  - name: *saw\n", &["inventory.yaml:2:11 this alias points to nothing"]),
            ("items: []\n---\nitems: []\n", &["inventory.yaml:3:1 a second document begins here"]),
            ("", &["inventory.yaml:1:1 the file is empty"]),
            ("# nothing yet\n", &["inventory.yaml:1:1 the file is empty"]),
            ("just text\n", &["inventory.yaml:1:1 the file cannot be just text"]),
            ("items:\n  - [a, b]: 1\n", &["inventory.yaml:2:6 a key must be a word"]),
        ],
    );
}

#[test]
fn a_comment_that_swallows_part_of_a_text_is_told() {
    check(
        "inventory.yaml",
        &[
            (
                "items:\n  - name: bit #2\n    size: 10 x 10 x 90 #mm\n    weight: 10 g # with its case\n    use: 1\n",
                &[
                    "inventory.yaml:2:11 warning: `bit #2` reads as `bit`",
                    "inventory.yaml:3:11 warning: `10 x 10 x 90 #mm` reads as `10 x 10 x 90`",
                ],
            ),
            (
                "items:\n  - name: \"bit #2\"\n    size: [10, 10, 90] # mm\n    weight: 10 g\n    use: 1 #often\n",
                &["inventory.yaml:5:10 warning: `1 #often` reads as `1`"],
            ),
            (
                "items:\n  - name: #2\n    size: [10, 10, 90]\n    weight: 10 g\n    use: 1\n",
                &["inventory.yaml:2:5 name is empty"],
            ),
        ],
    );
    let loaded = loaded(&[("inventory.yaml", "items:\n  - name: #2\n    size: 1\n")]);
    assert!(loaded.findings[0].help.as_ref().is_some_and(|help| help.contains("in quotes")));
}

#[test]
fn names_keep_their_text() {
    let names = [
        "012",
        "no",
        "1.50",
        "0x10",
        "1:30",
        "~5",
        "null and void",
        "1e3",
        "\"bit #2\"",
        "'it''s'",
        "5/8\" chisel",
    ];
    let expected = [
        "012",
        "no",
        "1.50",
        "0x10",
        "1:30",
        "~5",
        "null and void",
        "1e3",
        "bit #2",
        "it's",
        "5/8\" chisel",
    ];
    let line =
        |name: &str| format!("  - name: {name}\n    size: [1, 2, 3]\n    weight: 1\n    use: 1\n");
    let text = format!("items:\n{}", names.iter().map(|n| line(n)).collect::<String>());
    for text in [text.clone(), text.replace('\n', "\r\n"), format!("\u{feff}{text}")] {
        let loaded = loaded(&[("inventory.yaml", text)]);
        assert_eq!(told(&loaded.findings), Vec::<String>::new());
        let items = loaded.workspace.expect("usable").items;
        assert_eq!(items.iter().map(|i| i.name.as_str()).collect::<Vec<_>>(), expected);
        assert!(
            items.iter().all(
                |i| i.span.text().contains(i.name.trim_start_matches("it")) || i.name == "it's"
            )
        );
    }
}

#[test]
fn places_are_right_behind_a_byte_order_mark_line_ends_and_umlauts() {
    check(
        "inventory.yaml",
        &[
            (
                "\u{feff}itms: []\n",
                &["inventory.yaml:1:1 the inventory has no key `itms` (nearest items)"],
            ),
            (
                "items:\r\n  - {name: Säge, size: [1, 2, x], weight: 1, use: 1}\r\n",
                &["inventory.yaml:2:31 size cannot be x"],
            ),
            (
                "items:\r\n  - name: Säge\r\n   use: 1\r\n",
                &["inventory.yaml:3:4 this line is indented differently from those it belongs to"],
            ),
        ],
    );
}

#[test]
fn a_slip_of_indentation_is_explained() {
    let help = |text: &str| {
        loaded(&[("inventory.yaml", text)]).findings[0].help.clone().unwrap_or_default()
    };
    let slipped = "items:\n  - name: saw\n    size: [1, 2, 3]\n   weight: 2\n";
    assert_eq!(help(slipped), "`weight` begins in column 4, the line above it in column 5");
    let outside = "items:\n  - name: saw\nweight: 2\n";
    let loaded = loaded(&[("inventory.yaml", outside)]);
    let key = loaded.findings.iter().find(|f| f.text.contains("no key")).expect("told");
    assert_eq!(
        key.help.as_deref(),
        Some("`weight` is a key of an item: check how far the line is indented")
    );
}

#[test]
fn a_file_that_is_no_utf8_is_placed() {
    let latin: &[u8] = b"items:\n  - name: \xbd in chisel\n";
    assert_eq!(
        told(&loaded(&[("inventory.yaml", latin)]).findings),
        ["inventory.yaml:2:11 here the file stops being UTF-8"]
    );
    let wide: Vec<u8> = "\u{feff}items: []\n".encode_utf16().flat_map(u16::to_le_bytes).collect();
    assert_eq!(
        told(&loaded(&[("inventory.yaml", wide)]).findings),
        ["inventory.yaml:1:1 the file is UTF-16"]
    );
}

#[test]
fn hostile_files_are_refused_quickly() {
    let mut bomb = String::from("a0: &a0 [x, x, x, x, x, x, x, x, x]\n");
    (1..9).for_each(|k| {
        bomb += &format!("a{k}: &a{k} [{}]\n", vec![format!("*a{}", k - 1); 9].join(", "))
    });
    let deep = format!("items: {}{}\n", "[".repeat(5000), "]".repeat(5000));
    let itself = "items: &a\n  - *a\n".to_owned();
    for text in [bomb, deep, itself] {
        let began = std::time::Instant::now();
        let loaded = loaded(&[("inventory.yaml", &text)]);
        assert_eq!(loaded.findings.len(), 1, "{:?}", told(&loaded.findings));
        assert!(loaded.findings[0].is_fault() && loaded.workspace.is_none() && !loaded.unreadable);
        assert!(began.elapsed().as_secs() < 2);
    }
    let large = format!("items: []\n{}", "#".repeat(4 * 1024 * 1024));
    assert!(
        told(&loaded(&[("inventory.yaml", large)]).findings)[0].ends_with("is larger than 4 MiB")
    );
}

#[test]
fn missing_files_and_folders_are_named() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let empty = load(folder.path());
    assert_eq!(empty.findings.len(), 2);
    assert!(
        empty.findings[0].text.ends_with("carcass.yaml")
            && empty.findings[1].text.ends_with("inventory.yaml")
    );
    assert!(empty.findings.iter().all(|f| {
        f.help.as_ref().is_some_and(|h| h.contains("carcass.yaml and inventory.yaml"))
    }));
    assert!(!empty.unreadable);
    let nowhere = load(&folder.path().join("nowhere"));
    assert!(nowhere.findings[0].text.starts_with("there is no folder"));
    fs::create_dir(folder.path().join("carcass.yaml")).expect("made");
    let blocked = load(folder.path());
    assert!(blocked.unreadable && blocked.findings[0].text.ends_with("is not a file"));
}

#[test]
fn all_faults_of_all_files_are_told_in_one_run_in_order() {
    let loaded = loaded(&[
        ("layout.yaml", "placements:\n  - {item: hammer}\n"),
        ("shop.yaml", "jobs: [{name: mend, items: [saw], use: dayly}]\nroom: {flor: even}\n"),
        (
            "carcass.yaml",
            &CARCASS.replace("height: 800", "hieght: 800").replace("depth: 250", "depth: -250"),
        ),
        (
            "inventory.yaml",
            &format!("{INVENTORY}  - {{name: rule, size: [1], weight: 1,5 kg, use: 1}}\n")
                .replace("1,5 kg", "\"1,5 kg\""),
        ),
    ]);
    assert_eq!(
        told(&loaded.findings),
        [
            "carcass.yaml:3:32 the size of the carcass has no key `hieght` (nearest height)",
            "carcass.yaml:9:66 depth cannot be -250",
            "inventory.yaml:4:25 size cannot be a list of 1",
            "inventory.yaml:4:37 weight cannot be 1,5 kg",
            "shop.yaml:1:29 the job mend asks for an item that is not there",
            "shop.yaml:1:40 use cannot be dayly",
            "shop.yaml:2:8 the room has no key `flor` (nearest floor)",
            "layout.yaml:2:6 the placement of hammer has no bay",
        ]
    );
    assert!(loaded.workspace.is_none());
    let helps: Vec<&str> = loaded.findings.iter().filter_map(|f| f.help.as_deref()).collect();
    assert!(helps.contains(&"write 1.5") && helps.contains(&"did you mean daily"));
}

#[test]
fn any_slip_of_a_key_leaves_places_that_exist() {
    let signs = [
        ":", " ", "\n", "\"", "'", "[", "]", "{", "}", "#", "\t", "½", "\u{feff}", "*", "&", "- ",
        ", ", "!", "|", "%", "\0", "\r", "\n \n",
    ];
    let folder = tempfile::tempdir().expect("a temporary folder");
    fs::write(folder.path().join("carcass.yaml"), CARCASS).expect("written");
    for (k, _) in INVENTORY.char_indices() {
        for sign in signs.iter().skip(k % 3).step_by(3) {
            let slip = format!("{}{sign}{}", &INVENTORY[..k], &INVENTORY[k..]);
            fs::write(folder.path().join("inventory.yaml"), &slip).expect("written");
            let loaded = load(folder.path());
            for span in loaded.findings.iter().flat_map(|f| &f.at) {
                assert!(
                    span.source.text.get(span.range.clone()).is_some(),
                    "{slip}: {:?}",
                    span.range
                );
            }
            assert_eq!(
                loaded.workspace.is_none(),
                loaded.findings.iter().any(Finding::is_fault),
                "{slip}"
            );
        }
    }
}

#[cfg(unix)]
#[test]
fn a_file_that_may_not_be_read_is_told_apart() {
    use std::os::unix::fs::PermissionsExt;
    let folder = tempfile::tempdir().expect("a temporary folder");
    let path = folder.path().join("carcass.yaml");
    fs::write(&path, CARCASS).expect("written");
    fs::write(folder.path().join("inventory.yaml"), INVENTORY).expect("written");
    fs::set_permissions(&path, fs::Permissions::from_mode(0o000)).expect("set");
    if fs::read(&path).is_ok() {
        return; // the superuser may read everything
    }
    let loaded = load(folder.path());
    assert!(loaded.unreadable && loaded.findings[0].text.ends_with("may not be read by this user"));
}
