//! The contract of the documents.

use serde_json::Value;

use super::{findings, plan};
use crate::finding::{Finding, Source, Span};
use crate::report::sample;
use crate::units::Length;

fn read(text: &str) -> Value {
    serde_json::from_str(text).expect("one document")
}

#[test]
fn the_contract_of_a_plan_is_kept() {
    let text = plan(&sample::unsafe_plan());
    let read = read(&text);
    assert!(text.ends_with("}\n"));
    assert_eq!(read["status"], "unsafe");
    let first = &read["placements"][0];
    assert_eq!(first["min"], serde_json::json!([20.0, 0.0, 670.0]));
    assert_eq!((&first["reach_zone"], &first["weight"]), (&"easy".into(), &2.6.into()));
    assert_eq!(read["placements"][6]["moved_first"][0]["copy"], 1);
    assert_eq!(read["left_out"][0]["item"], "mitre saw");
    assert_eq!(read["surfaces"][4]["limit"], Value::Null);
    assert_eq!(read["casters"][2]["hanging"], Value::Null);
    assert_eq!(read["score"]["broken_rules"][0]["items"][0], "belt sander");
    assert_eq!(read["start"]["broken"], 0);
    assert_eq!(read["bound"]["gap"], Value::Null);
    assert_eq!(read["search"]["moves"], 400_000);
}

#[test]
fn terms_stand_in_the_order_of_the_plan() {
    let text = plan(&sample::plan());
    let places = ["\"access\": 41.2", "\"reach\": 38.5", "\"blocked\": 11.9", "\"together\": 6.4"]
        .map(|term| text.find(term).expect(term));
    assert!(places.is_sorted());
}

#[test]
fn a_sixty_fourth_of_an_inch_survives() {
    let mut sample = sample::plan();
    sample.placements[0].space.min[0] = Length::nm(396_875);
    sample.tips[0].degrees = f64::NAN;
    sample.tips[1].degrees = -0.0;
    let text = plan(&sample);
    assert_eq!(read(&text)["placements"][0]["min"][0], 0.396875);
    assert_eq!(read(&text)["tip"][0]["degrees"], Value::Null);
    assert!(!text.contains("-0.0"));
}

#[test]
fn faults_tell_where_they_are() {
    let text = String::from("items:\n  - nmae: saw\n");
    let source = std::sync::Arc::new(Source { name: "inventory.yaml".into(), text });
    let span = Span::new(&source, 11..15);
    let fault = Finding::fault("unknown key").at(&span).found("nmae").near("nmae", ["name"]);
    let read = read(&findings(&[fault, Finding::note("nothing else")]));
    assert_eq!(read["status"], "fault");
    let row = &read["findings"][0];
    assert_eq!(
        (&row["line"], &row["column"], &row["nearest"]),
        (&2.into(), &5.into(), &"name".into())
    );
    assert_eq!(read["findings"][1]["file"], Value::Null);
}
