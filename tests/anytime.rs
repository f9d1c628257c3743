//! How long a search goes on, what ends it, and that neither threads nor a watching eye change what it finds.

#[path = "support/shell.rs"]
#[allow(dead_code)]
mod shell;

use serde_json::Value;
use shell::{CARCASS, Folder, program, run};
use std::process::Stdio;
use std::time::{Duration, Instant};

const DEMOS: [&str; 2] = ["demo-data/first-flat", "demo-data/village-hall"];

/// What a command answers, without what the clock says.
fn answer(arguments: &[&str]) -> Value {
    let mut json = run(arguments).ends_in(&[0, 1]).json();
    json["search"]["seconds"] = Value::Null;
    json
}

/// Without how long it was allowed to take, too.
fn free_of_time(mut json: Value) -> Value {
    json["search"]["time_allowed"] = Value::Null;
    json
}

fn text<'a>(json: &'a Value, key: &str) -> &'a str {
    json["search"][key].as_str().expect("it is said")
}

#[test]
fn threads_change_no_byte_of_a_plan_and_of_a_replan() {
    for demo in DEMOS {
        let plan = |threads: &str| {
            let common = ["--json", "--effort", "quick", "--seed", "3", "--threads", threads];
            answer(&[&["plan", demo][..], &common].concat()).to_string()
        };
        let one = plan("1");
        assert!(one == plan("2") && one == plan("5"), "{demo}: threads change the plan");
    }
    let folder = outgrown();
    let replan = |threads: &str| {
        answer(&["replan", folder.name(), "--json", "--effort", "quick", "--threads", threads])
            .to_string()
    };
    let one = replan("1");
    assert!(one == replan("2") && one == replan("5"), "threads change the replan");
}

/// The smaller demo with its layout, and one thing more.
fn outgrown() -> Folder {
    let folder = Folder::empty();
    for file in ["carcass.yaml", "inventory.yaml", "shop.yaml"] {
        let text = std::fs::read_to_string(format!("{}/{file}", DEMOS[0])).expect("it is there");
        folder.write(file, &text);
    }
    run(&["plan", folder.name(), "--effort", "quick", "--out", folder.name()]).ends_in(&[0, 1]);
    let bought = "  - {name: hand drill, size: 12 x 4 x 3 in, weight: 2 lb, use: weekly}\n";
    folder.write("inventory.yaml", &(folder.read("inventory.yaml") + bought));
    folder
}

#[test]
fn a_time_alone_is_used_up_in_growing_cycles() {
    let began = Instant::now();
    let json = answer(&["plan", DEMOS[1], "--json", "--time", "1.5"]);
    let took = began.elapsed();
    assert!(took >= Duration::from_millis(1400), "{took:?}");
    assert!(took < Duration::from_secs(20), "{took:?}");
    assert!(json["search"]["cycles"].as_u64().expect("a number") >= 2, "{}", json["search"]);
    assert_eq!((text(&json, "end"), &json["search"]["ended_early"]), ("time up", &true.into()));
    assert_eq!(json["search"]["time_allowed"], 1.5);
}

#[test]
fn a_plan_that_was_cut_short_says_so_wherever_it_is_told() {
    let folder = Folder::good();
    let out = Folder::empty();
    let told = folder.run("plan", &["--time", "0.2", "--out", out.name()]).ends(0).out;
    let says = |text: &str| {
        let text = text.replace('\u{a0}', " ").split_whitespace().collect::<Vec<_>>().join(" ");
        text.contains("The 0.2 s of time for the search was up in cycle ")
            && text.contains("with more time the plan may get better.")
    };
    assert!(says(&told), "{told}");
    assert!(says(&out.read("report.txt")) && says(&out.read("cart.html")));
    let whole = folder.plan(&[]).ends(0).out;
    assert!(!whole.contains("with more time"), "{whole}");
}

#[test]
fn an_effort_that_is_done_in_time_is_the_effort_and_no_more() {
    let folder = Folder::good();
    let alone = folder.plan(&["--json"]).ends(0).json();
    let timed = folder.plan(&["--json", "--time", "600"]).ends(0).json();
    let bare = |mut json: Value| {
        json["search"]["seconds"] = Value::Null;
        free_of_time(json).to_string()
    };
    assert_eq!(bare(alone), bare(timed));
}

#[test]
fn an_effort_that_takes_longer_ends_when_its_time_is_up() {
    let began = Instant::now();
    let json = answer(&["plan", DEMOS[1], "--json", "--effort", "thorough", "--time", "1"]);
    assert!(began.elapsed() < Duration::from_secs(20), "{:?}", began.elapsed());
    assert_eq!((text(&json, "end"), &json["search"]["cycles"]), ("time up", &Value::Null));
}

#[test]
fn a_replan_uses_its_time_and_says_when_it_was_up() {
    let folder = outgrown();
    let began = Instant::now();
    let json = answer(&["replan", folder.name(), "--json", "--time", "2"]);
    assert!(began.elapsed() < Duration::from_secs(30), "{:?}", began.elapsed());
    assert_eq!(text(&json, "end"), "time up");
    let told: Vec<f64> = json["curve"]
        .as_array()
        .expect("a curve")
        .iter()
        .map(|p| {
            p["seconds_per_week"].as_f64().expect("a number")
                + p["off_cart"].as_f64().expect("a number")
        })
        .collect();
    assert!(told.windows(2).all(|w| w[1] <= w[0] + 1e-9), "the curve rises: {told:?}");
}

#[test]
fn what_cannot_get_better_ends_by_itself() {
    // An empty cart that does not stand evenly: it costs something all the same.
    let hall = std::fs::read_to_string(format!("{}/carcass.yaml", DEMOS[1])).expect("it is there");
    let nothing = Folder::with(&hall, "items: []\n");
    let one = Folder::with(
        CARCASS,
        "items:\n  - {name: mallet, size: [300, 110, 90], weight: 0.9 kg, use: weekly}\n",
    );
    for (what, folder) in [("nothing", nothing), ("one thing", one)] {
        let began = Instant::now();
        let json = folder.run("plan", &["--json", "--time", "120"]).ends(0).json();
        assert!(began.elapsed() < Duration::from_secs(60), "{what}");
        assert_eq!(text(&json, "end"), "nothing better", "{what}");
        assert_eq!(json["search"]["ended_early"], false, "{what}");
        assert_eq!(json["bound"]["gap"], 0.0, "{what}");
        assert!(json["score"]["seconds_per_week"].as_f64() > Some(0.0), "{what}");
    }
}

#[test]
fn nothing_is_said_beside_the_answer_where_nobody_watches() {
    let folder = Folder::good();
    for more in [&["--json"][..], &[]] {
        let told = folder.run("plan", &[&["--time", "1"], more].concat()).ends(0);
        assert_eq!(told.err, "", "{more:?}");
    }
}

#[cfg(unix)]
#[test]
fn an_interrupt_ends_with_the_best_so_far() {
    let mut child = program(&["plan", DEMOS[1], "--json", "--time", "600"])
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("the program starts");
    std::thread::sleep(Duration::from_millis(1500));
    let pid = child.id().to_string();
    let sent = std::process::Command::new("kill").args(["-INT", &pid]).status();
    if !sent.is_ok_and(|status| status.success()) {
        child.kill().expect("it can be ended");
        panic!("the interrupt was not sent");
    }
    let output = child.wait_with_output().expect("it ends");
    assert!(output.status.code().is_some_and(|code| code < 2), "{:?}", output.status);
    assert!(output.stderr.is_empty());
    let json: Value = serde_json::from_slice(&output.stdout).expect("one document");
    assert_eq!((text(&json, "end"), &json["search"]["ended_early"]), ("interrupted", &true.into()));
    assert!(!json["placements"].as_array().expect("a list").is_empty());
}
