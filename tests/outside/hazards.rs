//! Figures of the hazards' rules and cautions, against the texts they are from.

use super::check::{Status, Topic};
use toolberth::physics::fire;

pub fn checks() -> Topic {
    let mut topic = Topic::new("hazards");
    distance(&mut topic);
    amounts(&mut topic);
    topic
}

fn distance(topic: &mut Topic) {
    let metres = fire::HOT_WORK.as_mm() / 1000.0;
    let minutes = fire::WATCH.as_s() / 60.0;
    topic
        .against(
            "physics::fire: hot work",
            Status::Read,
            "29 CFR 1910.252(a)(2), NFPA 51B; read in WAC 296-307-49503 and as quoted in answers of the agency",
        )
        .near("combustibles nearer than 35 ft need removal, guards or a watch, in metres", metres, 10.67, 0.02)
        .near("the watch afterwards, in minutes", minutes, 30.0, 0.0)
        .holds("a watch of less than half an hour is too short", minutes >= 30.0);
}

fn amounts(topic: &mut Topic) {
    let litres = |gallons: f64| gallons * fire::GALLON;
    topic
        .against(
            "physics::fire: amounts",
            Status::Read,
            "29 CFR 1926.152(b)(1), read as quoted on three supplier pages; litres computed",
        )
        .near("in a room outside an approved cabinet, litres", litres(fire::ROOM), 94.6, 0.1);
    topic
        .against(
            "physics::fire: amounts",
            Status::Read,
            "29 CFR 1910.106 Table H-12, read as reprinted in a safety manual; litres computed",
        )
        .table(
            "largest containers, litres",
            [
                ("glass or plastic", litres(fire::BOTTLE), 3.785, 0.01),
                ("metal can", litres(fire::CAN), 18.927, 0.01),
            ],
        )
        .holds("a metal can may be larger than a bottle", fire::CAN > fire::BOTTLE);
}
