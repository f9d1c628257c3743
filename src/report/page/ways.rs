//! The ways on foot and the heights that are reached alike: what the drawings of them show, as tables.

use super::link::DOT;
use super::table::{Column, Group, Kind, grouped, table};
use crate::report::figure::length;
use crate::tasks::outcome::{Band, Plan, StationWays, Walk};
use crate::units::show_seconds;
use maud::{Markup, html};

/// Both tables.
pub fn ways(plan: &Plan) -> Markup {
    html! {
        section #ways aria-labelledby="ways-head" {
            h2 #ways-head { "Ways and reach" }
            (on_foot(plan))
            (reach(plan))
        }
    }
}

fn on_foot(plan: &Plan) -> Markup {
    const COLUMNS: [Column; 4] = [
        ("to", Kind::Name),
        ("one way", Kind::Figure),
        ("a fetch", Kind::Figure),
        ("rolled out first", Kind::Words),
    ];
    let row = |walk: &Walk| {
        vec![
            html! { (walk.face.name()) (DOT) (walk.bay) },
            html! { (length(walk.length, plan.units)) },
            html! { (show_seconds(walk.time.as_s())) },
            html! { @if walk.rolled_out { "yes" } },
        ]
    };
    let group = |station: &StationWays| Group {
        head: Some(html! { (told(station)) }),
        rows: station.ways.iter().map(row).collect(),
    };
    let groups: Vec<Group> = plan.ground.stations.iter().map(group).collect();
    grouped("Ways from each place of work", &COLUMNS, &groups)
}

/// A station in words.
fn told(station: &StationWays) -> String {
    let share = station.share.as_fraction() * 100.0;
    let walls: Vec<&str> = station.walls.iter().map(|face| face.name()).collect();
    let walls = match walls.is_empty() {
        true => String::new(),
        false => format!(", at a wall: {}", walls.join(", ")),
    };
    format!(
        "{}, {share:.0}\u{a0}% of all fetches, work at the {}{walls}",
        station.name,
        station.work.name()
    )
}

fn reach(plan: &Plan) -> Markup {
    const COLUMNS: [Column; 3] =
        [("grip at the face", Kind::Name), ("from", Kind::Figure), ("to", Kind::Figure)];
    let row = |band: &Band| {
        let to = band.to.map_or_else(|| "up".to_owned(), |to| length(to, plan.units));
        vec![
            html! { (band.zone.name()) },
            html! { (length(band.from, plan.units)) },
            html! { (to) },
        ]
    };
    let rows = plan.person.bands.iter().map(row).collect();
    let how = if plan.person.seated { "seated" } else { "standing" };
    let crown = length(plan.person.crown, plan.units);
    table(&format!("How heights are reached, {how}, {crown} tall in shoes"), &COLUMNS, rows)
}
