//! The floor round the cart, and the person who walks on it.

use super::super::outcome::{Band, Ground, Person, StationWays, Walk, Zone};
use crate::domain::Workspace;
use crate::physics::body::Grip;
use crate::site::{Site, surroundings};
use crate::units::Length;

/// Stations, walls, obstacles and ways on foot.
pub(super) fn ground(site: &Site, workspace: &Workspace) -> Ground {
    let found = surroundings(site, workspace);
    let told = workspace.shop.stations.iter().zip(found.stations);
    let stations = told.map(|(station, (at, ways))| StationWays {
        name: station.name.clone(),
        share: station.share,
        work: station.work,
        at,
        walls: station.walls.clone(),
        ways: ways
            .into_iter()
            .map(|way| Walk {
                face: way.face,
                bay: site.spaces[way.space].name.clone(),
                route: way.route,
                length: way.length,
                rolled_out: way.rolled_out,
                time: way.time,
            })
            .collect(),
    });
    Ground {
        stations: stations.collect(),
        room: found.room,
        cart: found.cart,
        hung: found.hung,
        obstacles: found.obstacles,
    }
}

/// The person's heights, and how each height before a face is reached.
pub(super) fn person(site: &Site) -> Person {
    let body = &site.body;
    let mut heights = [body.knee, body.knuckle, body.shoulder, body.overhead_grip];
    heights.sort_unstable();
    let mut bands: Vec<Band> = Vec::new();
    let ends = heights.iter().copied().map(Some).chain([None]);
    let mut from = Length::ZERO;
    for to in ends {
        if to == Some(from) {
            continue;
        }
        let within = to.map_or(from + Length::mm(1), |to| Length::nm((from + to).as_nm() / 2));
        let at_the_face = Grip { height: within, depth: Length::ZERO, sill: Length::ZERO };
        let zone = Zone::from(body.posture(&at_the_face));
        match bands.last_mut() {
            Some(last) if last.zone == zone => last.to = to,
            _ => bands.push(Band { zone, from, to }),
        }
        from = to.unwrap_or(from);
    }
    Person {
        crown: body.crown,
        eye: body.eye,
        shoulder: body.shoulder,
        elbow: body.elbow,
        knuckle: body.knuckle,
        knee: body.knee,
        overhead: body.overhead_grip,
        arm: body.arm,
        seated: body.seated,
        bands,
    }
}
