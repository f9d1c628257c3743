use super::page;
use crate::report::sample;
use crate::report::sheet::{Fill, Mark, Paper, Pen, Sheet, Size, Tie};

fn sheet() -> Sheet {
    let boxed = Mark::rect([10.0, 10.0], [60.0, 40.0], Pen::Thin, Fill::Tint(2));
    let name = Mark::text([12.0, 20.0], 3.0, "cordless drill");
    let tie = Tie::class("item").named("cordless drill").placed(0);
    let paper = Paper::landscape(Size::A4);
    Sheet {
        id: "front".into(),
        title: "Front".into(),
        paper,
        marks: vec![Mark::group(tie, vec![boxed, name])],
    }
}

#[test]
fn everything_has_a_story_and_every_link_leads_somewhere() {
    let plan = sample::plan();
    let text = page(&plan, &[sheet()]);
    for k in 0..plan.placements.len() {
        assert_eq!(text.matches(&format!("id=\"item-{k}\"")).count(), 1, "{k}");
    }
    for to in text.split("href=\"#").skip(1).map(|rest| &rest[..rest.find('"').expect("it ends")]) {
        assert_eq!(text.matches(&format!("id=\"{to}\"")).count(), 1, "{to}");
    }
}
