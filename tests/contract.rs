//! The program as a process: exit codes, what goes to stdout, files read and written, and what it makes of bad input.

#[path = "support/shell.rs"]
mod shell;

use serde_json::Value;
use shell::{CARCASS, Folder, INVENTORY, program, run};
use std::fs;
use std::io::Read;
use std::process::Stdio;
use std::time::{Duration, Instant};

// ------------------------------------------------------------------ plans

#[test]
fn a_good_workspace_gives_a_complete_plan() {
    let json = Folder::good().plan(&["--json"]).ends(0).json();
    assert_eq!(json["status"], "complete");
    assert_eq!(json["left_out"], Value::Array(Vec::new()));
    let copies: u64 = list(&json["placements"]).iter().filter_map(|p| p["copies"].as_u64()).sum();
    assert_eq!(copies, 12);
}

#[test]
fn the_text_report_names_every_thing() {
    let run = Folder::good().plan(&[]).ends(0);
    for name in ["soldering station", "flux", "try square", "case of screws", "hand vice"] {
        assert!(run.out.contains(name), "{name} is not in the report:\n{}", run.out);
    }
}

fn list(value: &Value) -> &[Value] {
    value.as_array().map(Vec::as_slice).unwrap_or_default()
}

/// Keys of each part of the document; a part in brackets is a list whose every element has them.
const KEYS: [(&str, &str); 13] = [
    (
        "",
        "status seed placements left_out reserve surfaces solids mass casters tip score handling cautions start bound search",
    ),
    (
        "[placements]",
        "item copy copies face way bay surface slot pose turned min max grip_height reach_zone moved_first weight uses_per_week seconds_per_fetch seconds_per_week",
    ),
    ("[left_out]", "item copy why"),
    ("[reserve]", "family face bay surface min max mass"),
    ("[surfaces]", "face bay surface kind min max load limit"),
    ("[solids]", "what min max"),
    ("mass", "total centre carcass carcass_centre"),
    ("[casters]", "at load worst hanging limit"),
    ("[tip]", "side case degrees limit"),
    ("score", "seconds_per_week off_cart terms broken_rules"),
    ("start", "seconds_per_week off_cart broken"),
    ("bound", "seconds_per_week gap gap_with_handling proof"),
    ("search", "moves priced seconds restarts"),
];

#[test]
fn the_json_has_the_keys_of_the_contract() {
    let big = "  - {name: ladder, size: [3000, 80, 80], weight: 9 kg, use: weekly}\n";
    let folder = Folder::with(CARCASS, &format!("{INVENTORY}{big}"));
    folder.write("shop.yaml", "reserve: {share: 10%}\n");
    let json = folder.plan(&["--json"]).ends(1).json();
    for (part, keys) in KEYS {
        let name = part.trim_matches(['[', ']']);
        let parts = match part {
            "" => vec![&json],
            _ if part.starts_with('[') => list(&json[name]).iter().collect(),
            _ => vec![&json[name]],
        };
        for key in keys.split(' ') {
            assert!(parts.iter().all(|p| p.get(key).is_some()), "{name} has no {key}");
        }
    }
    for term in ["access", "reach", "blocked", "balance"] {
        assert!(json["score"]["terms"][term].is_number(), "no term {term}");
    }
    assert!(json["handling"]["seconds_per_week"].is_number());
    assert!(!list(&json["placements"]).is_empty() && !list(&json["left_out"]).is_empty());
}

#[test]
fn a_sixty_fourth_of_an_inch_survives() {
    let folder = Folder::with(
        CARCASS,
        "items:\n  - {name: gauge, size: 1 1/64 in x 2 in x 3 in, weight: 2 oz, use: daily, keep: [stand], turn: false}\n",
    );
    let json = folder.plan(&["--json"]).ends(0).json();
    let placement = &json["placements"][0];
    let [low, high] = ["min", "max"].map(|end| placement[end][0].as_f64().expect("a number"));
    // The way in and out along x or y depends on the face; width is 25.4 × 65/64 mm.
    let deep = ["min", "max"].map(|end| placement[end][1].as_f64().expect("a number"));
    let sides = [high - low, deep[1] - deep[0]];
    assert!(sides.iter().any(|s| (s - 25.796_875).abs() < 1e-9), "{sides:?}");
}

#[test]
fn the_text_report_is_the_same_again() {
    let folder = Folder::good();
    let [one, two] = [0; 2].map(|_| folder.plan(&["--seed", "9"]).ends(0).out);
    assert_eq!(one, two);
}

#[test]
fn json_stands_alone_on_stdout_whatever_the_colour() {
    let json = Folder::good().plan(&["--json", "--color", "always"]).ends(0);
    assert!(!json.out.contains('\x1b'));
    json.json();
}

#[test]
fn a_plan_leaves_the_files_of_the_user_alone() {
    let folder = Folder::good();
    folder.plan(&[]).ends(0);
    assert_eq!(folder.read("carcass.yaml"), CARCASS);
    assert_eq!(folder.read("inventory.yaml"), INVENTORY);
    assert_eq!(fs::read_dir(folder.path()).expect("it can be listed").count(), 2);
}

#[test]
fn a_plan_is_written_and_reads_back() {
    let (folder, out) = (Folder::good(), Folder::empty());
    let path = out.path().to_str().expect("a plain path");
    folder.plan(&["--out", path]).ends(0);
    assert!(out.read("report.txt").contains("soldering station"));
    folder.write("layout.yaml", out.read("layout.yaml"));
    let check = folder.run("check", &[]).ends(0);
    assert!(!check.err.contains("layout.yaml"), "{}", check.err);
}

#[test]
fn a_layout_is_not_overwritten_unasked() {
    let (folder, out) = (Folder::good(), Folder::empty());
    let path = out.path().to_str().expect("a plain path");
    out.write("layout.yaml", "# mine\n");
    let refused = folder.plan(&["--out", path]).ends_in(&[2, 3]);
    assert!(refused.err.contains("--overwrite"), "{}", refused.err);
    assert_eq!(out.read("layout.yaml"), "# mine\n");
    folder.plan(&["--out", path, "--overwrite"]).ends(0);
    assert!(out.read("layout.yaml").contains("placements"));
}

#[test]
fn a_folder_is_made_for_what_is_written() {
    let (folder, out) = (Folder::good(), Folder::empty());
    let path = out.file("new").join("deeper");
    folder.plan(&["--out", path.to_str().expect("a plain path")]).ends(0);
    assert!(path.join("layout.yaml").is_file());
}

#[test]
fn a_file_in_the_place_of_the_folder_ends_with_3() {
    let (folder, out) = (Folder::good(), Folder::empty());
    out.write("plain", "a file");
    let path = out.file("plain");
    folder.plan(&["--out", path.to_str().expect("a plain path")]).ends(3);
}

#[test]
fn a_full_disk_ends_with_3() {
    let Ok(full) = fs::OpenOptions::new().write(true).open("/dev/full") else {
        eprintln!("skipped: no full disk to write to here");
        return;
    };
    let folder = Folder::good();
    let path = folder.path().to_str().expect("a plain path");
    let output =
        program(&["plan", path, "--effort", "quick"]).stdout(full).output().expect("it starts");
    let err = String::from_utf8_lossy(&output.stderr).into_owned();
    assert_eq!(output.status.code(), Some(3), "{err}");
    assert!(!err.contains("panicked"), "{err}");
}

#[test]
fn a_closed_pipe_is_no_fault() {
    let folder = Folder::good();
    let path = folder.path().to_str().expect("a plain path");
    for flags in [
        &["plan", path, "--effort", "quick", "--json"][..],
        &["plan", path, "--effort", "quick"],
        &["man"],
    ] {
        let mut child = program(flags)
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .expect("it starts");
        drop(child.stdout.take());
        let mut err = String::new();
        let mut pipe = child.stderr.take().expect("a pipe");
        pipe.read_to_string(&mut err).expect("what it prints is UTF-8");
        assert_eq!(child.wait().expect("it ends").code(), Some(0), "{flags:?}: {err}");
        assert!(!err.contains("panicked"), "{err}");
    }
}

// ------------------------------------------------------------------ inputs of odd sizes

fn inventory(items: &str) -> Folder {
    Folder::with(CARCASS, &format!("items:\n{items}"))
}

#[test]
fn one_thing_is_enough() {
    let json = inventory("  - {name: rule, size: [300, 30, 2], weight: 0.1 kg, use: daily}\n")
        .plan(&["--json"])
        .ends(0)
        .json();
    assert_eq!(list(&json["placements"]).len(), 1);
}

#[test]
fn no_thing_at_all_is_said_or_planned() {
    let run = Folder::with(CARCASS, "items: []\n").plan(&["--json"]).ends_in(&[0, 2]);
    if run.code == 0 {
        assert_eq!(list(&run.json()["placements"]).len(), 0);
    } else {
        assert!(run.err.contains("inventory.yaml"), "{}", run.err);
    }
}

#[test]
fn a_thing_larger_than_the_cart_is_left_out_with_the_nearest_miss() {
    let folder = inventory(
        "  - {name: ladder, size: [3000, 80, 80], weight: 9 kg, use: weekly}
  - {name: rule, size: [300, 30, 2], weight: 0.1 kg, use: daily}\n",
    );
    let json = folder.plan(&["--json"]).ends(1).json();
    assert_eq!(json["status"], "partial");
    assert_eq!(json["left_out"][0]["item"], "ladder");
    let why = json["left_out"][0]["why"].as_str().expect("a text");
    assert!(why.contains("3000"), "{why}");
    let check = folder.run("check", &[]).ends_in(&[0, 1]);
    assert!(format!("{}{}", check.out, check.err).contains("ladder"));
}

#[test]
fn five_thousand_things_are_checked_in_seconds() {
    let line = |n: usize| {
        format!("  - {{name: bit {n}x, size: [20, 20, 60], weight: 0.05 kg, use: weekly}}\n")
    };
    let folder = inventory(&(0..5000).map(line).collect::<String>());
    let began = Instant::now();
    folder.run("check", &[]).ends_in(&[0, 1]);
    assert!(began.elapsed() < Duration::from_secs(20), "{:?}", began.elapsed());
}

// ------------------------------------------------------------------ faults of the input

/// A faulty workspace ends with 2 in `check` and in `plan`, says these words, and prints no broken document.
fn faulty(folder: &Folder, words: &[&str]) {
    for command in ["check", "plan"] {
        let run = folder.run(command, &[]).ends(2);
        for word in words {
            assert!(run.err.contains(word), "{command}: {word:?} is not in\n{}", run.err);
        }
        let json = folder.run(command, &["--json"]).ends(2);
        assert!(json.out.is_empty() || json.json().is_object(), "{}", json.out);
    }
}

#[test]
fn a_size_that_cannot_be_is_a_fault() {
    for size in [
        "[-160, 190, 130]",
        "[0, 190, 130]",
        "[1e30, 10, 10]",
        "[.nan, 10, 10]",
        "[10, 10]",
        "large",
    ] {
        let folder =
            inventory(&format!("  - {{name: brush, size: {size}, weight: 1 kg, use: daily}}\n"));
        faulty(&folder, &["inventory.yaml", "size"]);
    }
}

#[test]
fn a_weight_below_nought_is_a_fault() {
    let folder = inventory("  - {name: brush, size: [10, 10, 10], weight: -1 kg, use: daily}\n");
    faulty(&folder, &["inventory.yaml", "weight"]);
}

#[test]
fn all_faults_are_told_at_once() {
    let folder = inventory(
        "  - {name: brush, size: [10, 10, 10], weight: heavy, use: daily}
  - {name: comb, size: [10, 10, 10], weight: 1 kg, use: whenever}\n",
    );
    folder.write("shop.yaml", "stations: [{name: bench, share: 100%, work: frint}]\n");
    faulty(&folder, &["heavy", "whenever", "frint"]);
}

#[test]
fn an_unknown_key_is_a_fault_with_the_nearest_one() {
    let folder = inventory("  - {name: brush, size: [10, 10, 10], wieght: 1 kg, use: daily}\n");
    faulty(&folder, &["wieght", "weight", "inventory.yaml"]);
}

#[test]
fn a_cart_without_casters_is_a_fault() {
    let none = CARCASS.replace("at: [[55, 55], [945, 55], [55, 505], [945, 505]]", "at: []");
    assert_ne!(none, CARCASS);
    faulty(&Folder::with(&none, INVENTORY), &["carcass.yaml", "caster"]);
}

#[test]
fn a_cart_of_no_size_is_a_fault() {
    for size in ["{width: -1000, depth: 560, height: 880}", "{width: 0, depth: 560, height: 880}"] {
        let odd = CARCASS.replace("{width: 1000, depth: 560, height: 880}", size);
        faulty(&Folder::with(&odd, INVENTORY), &["carcass.yaml", "width"]);
    }
}

#[test]
fn bays_that_collide_are_a_fault() {
    let deep = CARCASS.replace("at: [510, 130]", "at: [400, 130]");
    faulty(&Folder::with(&deep, INVENTORY), &["fixings", "lower left"]);
}

#[test]
fn two_things_of_one_name_are_a_fault() {
    let line = "  - {name: brush, size: [10, 10, 10], weight: 1 kg, use: daily}\n";
    faulty(&inventory(&line.repeat(2)), &["brush", "inventory.yaml"]);
}

#[test]
fn a_file_that_is_no_text_is_a_fault() {
    let folder = Folder::good();
    folder.write("inventory.yaml", [0x80, 0xff, 0x00, 0x41, 0xfe]);
    faulty(&folder, &["inventory.yaml"]);
    folder.write("inventory.yaml", [0xff, 0xfe, b'i', 0, b't', 0]);
    faulty(&folder, &["inventory.yaml"]);
}

#[test]
fn an_empty_file_is_a_fault() {
    for text in ["", "# nothing yet\n", "items: [\n", "- just\n- a list\n"] {
        faulty(&Folder::with(text, INVENTORY), &["carcass.yaml"]);
    }
}

#[test]
fn a_byte_order_mark_and_foreign_line_ends_do_no_harm() {
    let foreign = |text: &str| format!("\u{feff}{}", text.replace('\n', "\r\n"));
    Folder::with(&foreign(CARCASS), &foreign(INVENTORY)).run("check", &[]).ends(0);
}

#[test]
fn what_is_not_there_is_named() {
    let folder = Folder::good();
    let gone = folder.file("gone");
    let run = run(&["check", gone.to_str().expect("a plain path")]).ends_in(&[2, 3]);
    assert!(run.err.contains("gone"), "{}", run.err);
    fs::remove_file(folder.file("inventory.yaml")).expect("it can be removed");
    let check = folder.run("check", &[]).ends_in(&[2, 3]);
    assert!(check.err.contains("inventory.yaml"), "{}", check.err);
}

#[cfg(unix)]
#[test]
fn a_file_that_may_not_be_read_ends_with_3() {
    use std::os::unix::fs::PermissionsExt;
    let folder = Folder::good();
    let file = folder.file("inventory.yaml");
    fs::set_permissions(&file, fs::Permissions::from_mode(0o000)).expect("its mode can be set");
    if fs::read(&file).is_ok() {
        eprintln!("skipped: this user may read everything");
        return;
    }
    folder.run("check", &[]).ends(3);
}

#[test]
fn a_folder_in_the_place_of_a_file_ends_with_3() {
    let folder = Folder::good();
    fs::remove_file(folder.file("inventory.yaml")).expect("it can be removed");
    fs::create_dir(folder.file("inventory.yaml")).expect("a folder can be made");
    let check = folder.run("check", &[]).ends_in(&[2, 3]);
    assert!(check.err.contains("inventory.yaml"), "{}", check.err);
}

// ------------------------------------------------------------------ the command line

#[test]
fn a_wrong_command_line_ends_with_2() {
    let folder = Folder::good();
    for flags in [
        &["--seed", "x"][..],
        &["--seed=-1"],
        &["--time", "nan"],
        &["--time=-1"],
        &["--time", "inf"],
        &["--threads=-1"],
        &["--threads", "many"],
        &["--effort", "heroic"],
        &["--width", "0"],
        &["--color", "mauve"],
        &["--unknown"],
    ] {
        let refused = folder.run("plan", flags).ends(2);
        assert!(!refused.err.is_empty() && refused.out.is_empty(), "{flags:?}");
    }
    run(&[]).ends(2);
    run(&["plan"]).ends(2);
    run(&["completions", "tortoise"]).ends(2);
    let slip = run(&["paln", "."]).ends(2);
    assert!(slip.err.contains("plan"), "{}", slip.err);
}

#[test]
fn help_and_version_end_with_0() {
    for flags in [&["--help"][..], &["--version"], &["plan", "--help"], &["help", "check"]] {
        assert!(!run(flags).ends(0).out.is_empty(), "{flags:?}");
    }
}

#[test]
fn shells_get_completions_and_man_gets_a_page() {
    for shell in ["bash", "zsh", "fish"] {
        assert!(run(&["completions", shell]).ends(0).out.contains("toolberth"), "{shell}");
    }
    assert!(run(&["man"]).ends(0).out.contains(".TH toolberth"));
}

#[test]
fn colour_comes_only_when_asked() {
    let folder = Folder::good();
    assert!(!folder.plan(&[]).ends(0).out.contains('\x1b'));
    assert!(!folder.plan(&["--color", "never"]).ends(0).out.contains('\x1b'));
    let faulty = inventory("  - {name: brush, size: [10, 10, 10], wieght: 1 kg, use: daily}\n");
    let plain = faulty.run("check", &["--color", "never"]).ends(2);
    let bright = faulty.run("check", &["--color", "always"]).ends(2);
    assert!(!plain.err.contains('\x1b') && bright.err.contains('\x1b'));
}

#[test]
fn plain_letters_suffice_when_asked() {
    let run = Folder::good().plan(&["--ascii"]).ends(0);
    let odd: Vec<&str> = run.out.lines().filter(|l| !l.is_ascii()).collect();
    assert!(odd.is_empty(), "{odd:#?}");
}

#[test]
fn lines_keep_within_the_width() {
    for width in [72, 100] {
        let run = Folder::good().plan(&["--width", &width.to_string()]).ends(0);
        let long: Vec<&str> = run.out.lines().filter(|l| l.chars().count() > width).collect();
        assert!(long.is_empty(), "wider than {width}: {long:#?}");
    }
}
