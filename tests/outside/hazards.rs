//! Figures of the hazards' rules and cautions, against the texts they are from.

use super::check::{Status, Topic};
use toolberth::physics::{fire, furniture};
use toolberth::units::Length;

pub fn checks() -> Topic {
    let mut topic = Topic::new("hazards");
    distance(&mut topic);
    amounts(&mut topic);
    ways(&mut topic);
    classes(&mut topic);
    chests(&mut topic);
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
    let formula = "physics::fire: amounts";
    let room = "29 CFR 1926.152(b)(1), read as quoted on three supplier pages; litres computed";
    topic.against(formula, Status::Read, room).near(
        "in a room outside an approved cabinet, litres",
        litres(fire::ROOM),
        94.6,
        0.1,
    );
    let table = "29 CFR 1910.106 Table H-12, read as reprinted in a safety manual; litres computed";
    topic
        .against(formula, Status::Read, table)
        .table(
            "largest containers, litres",
            [
                ("glass or plastic, class IC to III", litres(fire::BOTTLE), 3.785, 0.01),
                ("metal can, other than class IA", litres(fire::CAN), 18.927, 0.01),
                ("safety can, other than class IA", litres(fire::CAN), 18.927, 0.01),
            ],
        )
        .holds("no class has a larger bottle: 1/8 gal for IA, 1/4 for IB", fire::BOTTLE >= 0.25)
        .holds("no class has a larger can: 1 gal for IA", fire::CAN >= 1.0);
    topic
        .against(formula, Status::Read, "34 Pa. Code § 14a.44(b)(1), read")
        .near("class I in a house and its garage, gallons", fire::HOUSE, 5.0, 0.0)
        .near("the same in litres", litres(fire::HOUSE), 18.93, 0.01);
    topic.against(formula, Status::Computed, "definition: 231 cubic inches of 25.4 mm").near(
        "a gallon in litres",
        fire::GALLON,
        231.0 * 0.254_f64.powi(3),
        1e-9,
    );
}

fn ways(topic: &mut Topic) {
    let formula = "physics::fire: ways";
    topic
        .against(
            formula,
            Status::Read,
            "29 CFR 1910.36(g)(2), read as quoted by a compliance publisher",
        )
        .near("narrowest way out, mm", fire::WAY_OUT.as_mm(), 711.0, 1.0)
        .near("narrowest way out, in", fire::WAY_OUT.as_mm() / 25.4, 28.0, 1e-9);
    topic
        .against(formula, Status::Read, "29 CFR 1910.157(d)(4), read as quoted on three pages")
        .near(
            "to an extinguisher for burning liquids, m",
            fire::TO_EXTINGUISHER.as_mm() / 1e3,
            15.2,
            0.05,
        )
        .near("the same in ft", fire::TO_EXTINGUISHER.as_mm() / 304.8, 50.0, 1e-9);
}

/// Classes of flammable liquids: the flash point that parts the most easily lit from the others.
fn classes(topic: &mut Topic) {
    let source = "GHS and 29 CFR 1910.1200 App. B, read on three pages";
    let below = |limit: f64| fire::FLASH <= limit;
    topic
        .against("physics::fire::FLASH", Status::Read, source)
        .near("categories 1 and 2 flash below, °C", fire::FLASH, 23.0, 0.0)
        .holds("category 3 goes on to 60 °C", below(60.0))
        .holds("category 4 goes on to 93 °C", below(93.0));
}

/// The borrowed test of chests.
fn chests(topic: &mut Topic) {
    let summary = "ASTM F2057-23, read as summarised by a test laboratory";
    topic
        .against("physics::furniture: the load", Status::Read, summary)
        .near("weight on an open drawer, kg", furniture::ON_DRAWER, 27.2, 0.0)
        .near("the same in pounds", furniture::ON_DRAWER / 0.453_592_37, 60.0, 0.05)
        .near("block under the rear, mm", furniture::BLOCK.as_mm(), 10.9, 0.0);
    topic
        .against(
            "physics::furniture: scope",
            Status::Read,
            "ASTM F2057-23 1.1, read in a standards catalogue",
        )
        .near("height, mm", furniture::SCOPE_HEIGHT.as_mm(), 686.0, 0.0)
        .near("height, in", furniture::SCOPE_HEIGHT.as_mm() / 25.4, 27.0, 0.01)
        .near("mass, kg", furniture::SCOPE_MASS, 13.6, 0.0)
        .near("mass, lb", furniture::SCOPE_MASS / 0.453_592_37, 30.0, 0.02)
        .near("enclosed volume, litres", furniture::SCOPE_LITRES, 90.6, 0.0)
        .near("enclosed volume, cubic feet", furniture::SCOPE_LITRES / 28.316_846_592, 3.2, 0.001);
    let tilt = |mm| furniture::tilt(Length::mm(mm));
    topic
        .against(
            "physics::furniture::tilt",
            Status::Computed,
            "geometry: the tangent is 10.9 mm / depth",
        )
        .near("a unit 450 mm deep", tilt(450), 1.38756, 0.001)
        .near("as deep as the block is high", furniture::tilt(furniture::BLOCK), 45.0, 1e-9)
        .near("small angles: half the depth, twice the angle", tilt(300) / tilt(600), 2.0, 0.002);
}
