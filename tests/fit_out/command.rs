//! The command: exit codes, what it prints, and that it replaces nothing unasked.

use crate::shell::{Folder, run};

fn planned() -> Folder {
    let folder = Folder::good();
    let path = folder.path().to_str().expect("a plain path").to_owned();
    folder.plan(&["--out", &path]).ends(0);
    folder
}

#[test]
fn without_a_layout_it_says_to_plan_first() {
    let run = Folder::good().run("fit-out", &[]).ends(2);
    assert!(run.err.contains("plan"), "{}", run.err);
}

#[test]
fn the_json_has_what_the_report_has() {
    let folder = planned();
    let json = folder.run("fit-out", &["--json"]).ends(0).json();
    for key in ["holders", "mounts", "shopping", "sequence", "cautions", "labels", "card"] {
        assert!(!json[key].is_null(), "no {key}");
    }
    let text = folder.run("fit-out", &["--width", "120"]).ends(0).out;
    for part in ["What to build", "Mounting list", "Shopping list", "In this order", "Mind"] {
        assert!(text.contains(part), "no {part}:\n{text}");
    }
    for hole in json["mounts"][0]["holes"].as_array().expect("holes") {
        assert!(hole["from"][0]["distance"].is_number());
    }
}

#[test]
fn sheets_are_written_and_not_replaced_unasked() {
    let folder = planned();
    let out = folder.file("sheets");
    let out = out.to_str().expect("a plain path");
    folder.run("fit-out", &["--out", out]).ends(0);
    let card = folder.read("sheets/fit-out-card.svg");
    assert!(card.contains("Borrower"));
    let again = folder.run("fit-out", &["--out", out]).ends(2);
    assert!(again.err.contains("--overwrite"), "{}", again.err);
    folder.run("fit-out", &["--out", out, "--overwrite"]).ends(0);
    assert_eq!(folder.read("sheets/fit-out-card.svg"), card, "the same bytes again");
}

#[test]
fn label_stock_is_told_by_its_sizes() {
    let folder = planned();
    let out = folder.file("labels");
    let out = out.to_str().expect("a plain path");
    let stock = ["--labels", "63.5x33.9", "--label-grid", "3x8", "--label-margin", "7.2x12.9"];
    folder.run("fit-out", &[&["--out", out], &stock[..]].concat()).ends(0);
    let wide = ["--labels", "4x2 in", "--label-grid", "3x5"];
    let run = folder.run("fit-out", &[&["--out", out, "--overwrite"], &wide[..]].concat()).ends(2);
    assert!(run.err.contains("does not fit the paper"), "{}", run.err);
    run_bad(&folder, &["--labels", "wide"]);
    run_bad(&folder, &["--label-grid", "0x3"]);
    run_bad(&folder, &["--label-margin", "7x13"]);
}

fn run_bad(folder: &Folder, flags: &[&str]) {
    let path = folder.path().to_str().expect("a plain path");
    run(&[&["fit-out", path], flags].concat()).ends(2);
}

#[test]
fn one_document_has_a_name_of_its_own_and_what_was_not_built_is_told() {
    let folder = planned();
    let out = folder.file("paper");
    let out = out.to_str().expect("a plain path");
    for name in ["fit-out.html", "fit-out.pdf"] {
        let format = name.rsplit('.').next().expect("it has an ending");
        folder.run("fit-out", &["--out", out, "--format", format]).ends(0);
        assert!(folder.file("paper").join(name).is_file(), "no {name}");
    }
    if !cfg!(feature = "print") {
        let run = folder.run("fit-out", &["--out", out, "--format", "png"]).ends(2);
        assert!(run.err.contains("--features print"), "{}", run.err);
    }
}
