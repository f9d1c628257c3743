//! shop.yaml.

use super::carcass::units;
use super::decode::{Field, Table, fold};
use super::findings::Findings;
use super::keys;
use crate::domain::{
    CartPlace, Experience, Face, Hand, Job, Obstacle, Person, Rates, Reserve, Room, Sex, Shop,
    Station,
};
use crate::finding::{Finding, Span};
use crate::units::{Length, Share, Time, Unit, Uses};

/// Free height above a thing on a deck, from memory: a hand over its top.
const CLEARANCE: Length = Length::mm(25);
/// To roll the cart away from a wall and back (common practice, no source).
const ROLL_OUT: Time = Time::s(30);
/// To fetch a thing from a cupboard elsewhere (common practice, no source).
const ELSEWHERE: Time = Time::s(60);
/// Body heights that are believed; others are likely in another unit.
const STATURES: [Length; 2] = [Length::mm(500), Length::mm(2500)];

/// What is taken where there is no shop.yaml.
pub(super) fn usual() -> Shop {
    let experience = Experience::Settled;
    Shop {
        person: Person {
            stature: None,
            percentile: None,
            sex: None,
            hand: Hand::Right,
            experience,
            seated: false,
        },
        stations: vec![station_at_front()],
        room: empty_room(),
        reserve: Reserve {
            share: usual_reserve(experience),
            families: Vec::new(),
        },
        jobs: Vec::new(),
        rates: Rates {
            roll_out: ROLL_OUT,
            elsewhere: ELSEWHERE,
        },
        clearance: CLEARANCE,
    }
}

/// The shop; where a fault was noted, parts of it are stand-ins.
pub(super) fn shop(root: Field, above: Unit, out: &mut Findings) -> Option<Shop> {
    let table = root.table(&keys::SHOP, out)?;
    let units = units(&table, above, out);
    let mut shop = usual();
    if let Some(field) = table.get("person", out) {
        person(field, &mut shop.person, units, out);
    }
    shop.reserve.share = usual_reserve(shop.person.experience);
    if let Some(field) = table.get("reserve", out) {
        reserve(field, &mut shop.reserve, out);
    }
    if let Some(field) = table.get("stations", out) {
        shop.stations = stations(field, out);
    }
    if let Some(field) = table.get("room", out) {
        room(field, &mut shop.room, units, out);
    }
    if let Some(field) = table.get("jobs", out) {
        shop.jobs = field
            .list(out)
            .into_iter()
            .filter_map(|one| job(one, out))
            .collect();
    }
    if let Some(field) = table.get("rates", out) {
        rates(field, &mut shop.rates, out);
    }
    shop.clearance = table
        .get("clearance", out)
        .and_then(|f| f.distance(units, out))
        .unwrap_or(CLEARANCE);
    Some(shop)
}

/// By experience (common practice, no source).
fn usual_reserve(experience: Experience) -> Share {
    match experience {
        Experience::Beginner => Share::ppm(200_000),
        Experience::Settled => Share::ppm(100_000),
        Experience::OldHand => Share::ZERO,
    }
}

fn station_at_front() -> Station {
    Station {
        name: "work".into(),
        share: Share::ALL,
        work: Face::Front,
        walls: Vec::new(),
        span: Span::none(),
    }
}

fn empty_room() -> Room {
    Room {
        kind: None,
        children: false,
        uneven: false,
        door: None,
        size: None,
        cart: None,
        obstacles: Vec::new(),
    }
}

fn person(field: Field, person: &mut Person, units: Unit, out: &mut Findings) {
    let Some(table) = field.table(&keys::PERSON, out) else {
        return;
    };
    person.stature = table
        .get("stature", out)
        .and_then(|f| stature(f, units, out));
    person.percentile = table
        .get("percentile", out)
        .and_then(|f| f.count(1, 99, out))
        .map(|n| n as u8);
    person.sex = table
        .get("sex", out)
        .and_then(|f| f.choice(&[("female", Sex::Female), ("male", Sex::Male)], out));
    let hands = [("left", Hand::Left), ("right", Hand::Right)];
    person.hand = table
        .get("hand", out)
        .and_then(|f| f.choice(&hands, out))
        .unwrap_or(Hand::Right);
    let known = [
        ("beginner", Experience::Beginner),
        ("settled", Experience::Settled),
        ("old hand", Experience::OldHand),
    ];
    let experience = table
        .get("experience", out)
        .and_then(|f| f.choice(&known, out));
    person.experience = experience.unwrap_or(Experience::Settled);
    person.seated = table
        .get("seated", out)
        .and_then(|f| f.truth(out))
        .unwrap_or(false);
}

fn stature(field: Field, units: Unit, out: &mut Findings) -> Option<Length> {
    let stature = field.size(units, out)?;
    if stature < STATURES[0] || stature > STATURES[1] {
        out.say(
            field
                .wrong("a body height from 500 mm to 2500 mm")
                .help("check the unit"),
        );
    }
    Some(stature)
}

fn stations(field: Field, out: &mut Findings) -> Vec<Station> {
    let fields = field.list(out);
    let mut all: Vec<Station> = fields
        .iter()
        .enumerate()
        .filter_map(|(k, one)| station(one, k + 1, out))
        .collect();
    let sum: i64 = all.iter().map(|s| s.share.as_ppm()).sum();
    if all.is_empty() {
        return vec![station_at_front()];
    }
    if sum == 0 {
        out.say(
            field
                .fault("the shares of the stations add up to nothing")
                .expected("shares that add up to 100%"),
        );
        return all;
    }
    if (sum - Share::ALL.as_ppm()).abs() > 20_000 {
        let percent = sum as f64 / 10_000.0;
        let warning = field.warning(format!("the shares of the stations add up to {percent} %"));
        out.say(warning.help("they are taken in this proportion"));
    }
    let parts = in_proportion(&all.iter().map(|s| s.share.as_ppm()).collect::<Vec<_>>());
    all.iter_mut()
        .zip(parts)
        .for_each(|(s, part)| s.share = Share::ppm(part));
    all
}

/// The parts scaled to add up to exactly a million: what rounding leaves goes to the largest remainders.
fn in_proportion(parts: &[i64]) -> Vec<i64> {
    let sum: i64 = parts.iter().sum();
    let all = Share::ALL.as_ppm();
    let mut scaled: Vec<i64> = parts.iter().map(|p| p * all / sum).collect();
    let mut order: Vec<usize> = (0..parts.len()).collect();
    order.sort_by_key(|k| std::cmp::Reverse(parts[*k] * all % sum));
    let missing = (all - scaled.iter().sum::<i64>()) as usize;
    order.into_iter().take(missing).for_each(|k| scaled[k] += 1);
    scaled
}

fn station(field: &Field, number: usize, out: &mut Findings) -> Option<Station> {
    let table = field.table(&keys::STATION, out)?;
    let name = table.get("name", out).and_then(|f| f.text(out));
    let walls = table.get("walls", out);
    Some(Station {
        name: name.map_or_else(|| format!("station {number}"), |t| t.text),
        share: table
            .get("share", out)
            .and_then(|f| f.share(out))
            .unwrap_or(Share::ALL),
        work: table
            .get("work", out)
            .and_then(|f| f.choice(&sides(), out))
            .unwrap_or(Face::Front),
        walls: walls.map_or_else(Vec::new, |f| faces(f, out)),
        span: table.span.clone(),
    })
}

/// The faces that can turn to a wall or to the work.
fn sides() -> [(&'static str, Face); 4] {
    [Face::Front, Face::Back, Face::Left, Face::Right].map(|face| (face.name(), face))
}

fn faces(field: Field, out: &mut Findings) -> Vec<Face> {
    let mut all = Vec::new();
    for text in field.texts(out) {
        match sides().iter().find(|(name, _)| *name == fold(&text.text)) {
            Some((_, face)) => all.push(*face),
            None => out.say(field.unknown(&text, sides().iter().map(|(name, _)| *name))),
        }
    }
    all
}

fn room(field: Field, room: &mut Room, units: Unit, out: &mut Findings) {
    let Some(table) = field.table(&keys::ROOM, out) else {
        return;
    };
    room.kind = table
        .get("kind", out)
        .and_then(|f| f.text(out))
        .map(|t| fold(&t.text));
    room.children = table
        .get("children", out)
        .and_then(|f| f.truth(out))
        .unwrap_or(false);
    let floors = [("even", false), ("uneven", true)];
    room.uneven = table
        .get("floor", out)
        .and_then(|f| f.choice(&floors, out))
        .unwrap_or(false);
    room.door = table.get("door", out).and_then(|f| f.size(units, out));
    room.size = table.get("size", out).and_then(|f| f.rectangle(units, out));
    room.cart = table.get("cart", out).and_then(|f| cart(f, units, out));
    let obstacles = table
        .get("obstacles", out)
        .map_or_else(Vec::new, |f| f.list(out));
    room.obstacles = obstacles
        .into_iter()
        .filter_map(|one| obstacle(one, units, out))
        .collect();
}

fn cart(field: Field, units: Unit, out: &mut Findings) -> Option<CartPlace> {
    let table = field.table(&keys::CART, out)?;
    let quarters = [("0", 0), ("90", 1), ("180", 2), ("270", 3)];
    Some(CartPlace {
        at: table.need("at", out)?.place(units, out)?,
        quarter_turns: table
            .get("turned", out)
            .and_then(|f| f.choice(&quarters, out))
            .unwrap_or(0),
        span: table.span.clone(),
    })
}

fn obstacle(field: Field, units: Unit, out: &mut Findings) -> Option<Obstacle> {
    let table = field.table(&keys::OBSTACLE, out)?;
    Some(Obstacle {
        at: table.need("at", out)?.place(units, out)?,
        size: table.need("size", out)?.rectangle(units, out)?,
        span: table.span.clone(),
    })
}

fn reserve(field: Field, reserve: &mut Reserve, out: &mut Findings) {
    let Some(table) = field.table(&keys::RESERVE, out) else {
        return;
    };
    if let Some(share) = table.get("share", out).and_then(|f| f.share(out)) {
        reserve.share = share;
    }
    let Some(families) = table.get("families", out) else {
        return;
    };
    for (name, count) in families.names("the list of families", out) {
        let count = count.count(0, 1000, out).unwrap_or(0);
        reserve
            .families
            .push((name.text.clone(), count, name.span.clone()));
    }
}

fn job(field: Field, out: &mut Findings) -> Option<Job> {
    let mut table = field.table(&keys::JOB, out)?;
    if let Some(name) = table.name() {
        table.what = format!("the job {name}");
    }
    let name = table.need("name", out).and_then(|f| f.text(out));
    let items = table
        .need("items", out)
        .map_or_else(Vec::new, |f| f.texts(out));
    Some(Job {
        name: name.map_or_else(String::new, |t| t.text),
        items: items.into_iter().map(|t| (t.text, t.span)).collect(),
        uses: table
            .need("use", out)
            .and_then(|f| f.uses(out))
            .unwrap_or(Uses::ZERO),
    })
}

fn rates(field: Field, rates: &mut Rates, out: &mut Findings) {
    let Some(table) = field.table(&keys::RATES, out) else {
        return;
    };
    let rate =
        |table: &Table, key, out: &mut Findings| table.get(key, out).and_then(|f| f.time(out));
    rates.roll_out = rate(&table, "roll_out", out).unwrap_or(ROLL_OUT);
    rates.elsewhere = rate(&table, "elsewhere", out).unwrap_or(ELSEWHERE);
}

/// Faults of what the shop says about items: jobs and families that do not exist.
pub(super) fn known_items(shop: &Shop, items: &[crate::domain::Item], out: &mut Findings) {
    let named = |name: &str| items.iter().any(|i| i.name == name);
    for job in &shop.jobs {
        for (name, span) in job.items.iter().filter(|(name, _)| !named(name)) {
            let fault = Finding::fault(format!(
                "the job {} asks for an item that is not there",
                job.name
            ));
            let fault = fault.at(span).field("jobs.items").found(name.clone());
            out.say(fault.near(name, items.iter().map(|i| i.name.as_str())));
        }
    }
    let families = || items.iter().filter_map(|i| i.family.as_deref());
    for (name, _, span) in &shop.reserve.families {
        if !families().any(|f| f == name) {
            let fault = Finding::fault(format!("no item is of the family {name}"));
            out.say(
                fault
                    .at(span)
                    .field("reserve.families")
                    .found(name.clone())
                    .near(name, families()),
            );
        }
    }
}
