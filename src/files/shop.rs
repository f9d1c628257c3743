//! shop.yaml.

use super::carcass::units;
use super::decode::{Field, fold};
use super::findings::Findings;
use super::keys;
use super::station::{station_at_front, stations};
use crate::domain::{
    CartPlace, Experience, Forces, Hand, Job, Obstacle, Person, Rates, Reserve, Room, Sex, Shop,
};
use crate::units::{Length, Share, Time, Unit, Uses};

/// Free height above a thing on a deck, from memory: a hand over its top.
const CLEARANCE: Length = Length::mm(25);
/// The lifting index that may be lowered and not raised: above it no lift is allowed.
const HIGHEST_INDEX: u32 = 3;
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
            lifting_limit: None,
        },
        stations: vec![station_at_front()],
        room: empty_room(),
        reserve: Reserve { share: usual_reserve(experience), families: Vec::new() },
        jobs: Vec::new(),
        rates: Rates::default(),
        clearance: CLEARANCE,
        forces: Forces::default(),
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
        shop.jobs = field.list(out).into_iter().filter_map(|one| job(one, out)).collect();
    }
    if let Some(field) = table.get("rates", out) {
        rates(field, &mut shop.rates, out);
    }
    if let Some(field) = table.get("forces", out) {
        shop.forces = forces(field, units, out);
    }
    shop.clearance =
        table.get("clearance", out).and_then(|f| f.distance(units, out)).unwrap_or(CLEARANCE);
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

fn empty_room() -> Room {
    Room {
        kind: None,
        children: false,
        uneven: false,
        door: None,
        threshold: None,
        chip: None,
        size: None,
        cart: None,
        obstacles: Vec::new(),
    }
}

fn person(field: Field, person: &mut Person, units: Unit, out: &mut Findings) {
    let Some(table) = field.table(&keys::PERSON, out) else {
        return;
    };
    person.stature = table.get("stature", out).and_then(|f| stature(f, units, out));
    person.percentile =
        table.get("percentile", out).and_then(|f| f.count(1, 99, out)).map(|n| n as u8);
    person.sex = table
        .get("sex", out)
        .and_then(|f| f.choice(&[("female", Sex::Female), ("male", Sex::Male)], out));
    let hands = [("left", Hand::Left), ("right", Hand::Right)];
    person.hand = table.get("hand", out).and_then(|f| f.choice(&hands, out)).unwrap_or(Hand::Right);
    let known = [
        ("beginner", Experience::Beginner),
        ("settled", Experience::Settled),
        ("old hand", Experience::OldHand),
    ];
    let experience = table.get("experience", out).and_then(|f| f.choice(&known, out));
    person.experience = experience.unwrap_or(Experience::Settled);
    person.seated = table.get("seated", out).and_then(|f| f.truth(out)).unwrap_or(false);
    person.lifting_limit =
        table.get("lifting_limit", out).and_then(|f| f.number(HIGHEST_INDEX, out));
}

fn stature(field: Field, units: Unit, out: &mut Findings) -> Option<Length> {
    let stature = field.size(units, out)?;
    if stature < STATURES[0] || stature > STATURES[1] {
        out.say(field.wrong("a body height from 500 mm to 2500 mm").help("check the unit"));
    }
    Some(stature)
}

fn room(field: Field, room: &mut Room, units: Unit, out: &mut Findings) {
    let Some(table) = field.table(&keys::ROOM, out) else {
        return;
    };
    room.kind = table.get("kind", out).and_then(|f| f.text(out)).map(|t| fold(&t.text));
    room.children = table.get("children", out).and_then(|f| f.truth(out)).unwrap_or(false);
    let floors = [("even", false), ("uneven", true)];
    room.uneven = table.get("floor", out).and_then(|f| f.choice(&floors, out)).unwrap_or(false);
    room.door = table.get("door", out).and_then(|f| f.size(units, out));
    room.threshold = table.get("threshold", out).and_then(|f| f.distance(units, out));
    room.chip = table.get("chip", out).and_then(|f| f.distance(units, out));
    room.size = table.get("size", out).and_then(|f| f.rectangle(units, out));
    room.cart = table.get("cart", out).and_then(|f| cart(f, units, out));
    let obstacles = table.get("obstacles", out).map_or_else(Vec::new, |f| f.list(out));
    room.obstacles = obstacles.into_iter().filter_map(|one| obstacle(one, units, out)).collect();
}

fn cart(field: Field, units: Unit, out: &mut Findings) -> Option<CartPlace> {
    let table = field.table(&keys::CART, out)?;
    let quarters = [("0", 0), ("90", 1), ("180", 2), ("270", 3)];
    Some(CartPlace {
        at: table.need("at", out)?.place(units, out)?,
        quarter_turns: table.get("turned", out).and_then(|f| f.choice(&quarters, out)).unwrap_or(0),
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
        reserve.families.push((name.text.clone(), count, name.span.clone()));
    }
}

fn job(field: Field, out: &mut Findings) -> Option<Job> {
    let mut table = field.table(&keys::JOB, out)?;
    if let Some(name) = table.name() {
        table.what = format!("the job {name}");
    }
    let name = table.need("name", out).and_then(|f| f.text(out));
    let items = table.need("items", out).map_or_else(Vec::new, |f| f.texts(out));
    Some(Job {
        name: name.map_or_else(String::new, |t| t.text),
        items: items.into_iter().map(|t| (t.text, t.span)).collect(),
        uses: table.need("use", out).and_then(|f| f.uses(out)).unwrap_or(Uses::ZERO),
    })
}

fn rates(field: Field, rates: &mut Rates, out: &mut Findings) {
    let Some(table) = field.table(&keys::RATES, out) else {
        return;
    };
    let usual = Rates::default();
    let time = |key, usual: Time, out: &mut Findings| {
        table.get(key, out).and_then(|f| f.time(out)).unwrap_or(usual)
    };
    rates.roll_out = time("roll_out", usual.roll_out, out);
    rates.elsewhere = time("elsewhere", usual.elsewhere, out);
    rates.look_for = time("look_for", usual.look_for, out);
    rates.together = time("together", usual.together, out);
    rates.family = time("family", usual.family, out);
    rates.jobs = time("jobs", usual.jobs, out);
    rates.sight = time("sight", usual.sight, out);
    rates.reserve = time("reserve", usual.reserve, out);
    rates.wish = time("wish", usual.wish, out);
}

fn forces(field: Field, units: Unit, out: &mut Findings) -> Forces {
    let Some(table) = field.table(&keys::FORCES, out) else {
        return Forces::default();
    };
    let force = |key, out: &mut Findings| table.get(key, out).and_then(|f| f.mass(units, out));
    let share = |key, out: &mut Findings| table.get(key, out).and_then(|f| f.share(out));
    Forces {
        push: force("push", out),
        lean: force("lean", out),
        work: force("work", out),
        friction: share("friction", out),
        rolling: share("rolling", out),
    }
}
