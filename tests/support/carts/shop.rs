//! The person, the room and where the work is.

use super::Dice;
use toolberth::domain::{
    Carcass, CartPlace, Experience, Face, Forces, Hand, Item, Job, Obstacle, Person, Rates,
    Reserve, Room, Shop, Station,
};
use toolberth::finding::Span;
use toolberth::units::{Length, Share, Time, Uses};

const SIDES: [Face; 4] = [Face::Front, Face::Back, Face::Left, Face::Right];

/// A shop as it is where nothing is said.
pub fn plain() -> Shop {
    Shop {
        person: Person {
            stature: Some(Length::mm(1700)),
            percentile: None,
            sex: None,
            hand: Hand::Right,
            experience: Experience::OldHand,
            seated: false,
            lifting_limit: None,
        },
        stations: vec![station("bench work", Share::ALL, Face::Front)],
        room: Room {
            kind: None,
            children: false,
            uneven: false,
            door: None,
            threshold: None,
            chip: None,
            size: None,
            cart: None,
            obstacles: Vec::new(),
        },
        reserve: Reserve { share: Share::ZERO, families: Vec::new() },
        jobs: Vec::new(),
        rates: Rates::default(),
        clearance: Length::mm(25),
        forces: Forces::default(),
    }
}

fn station(name: &str, share: Share, work: Face) -> Station {
    Station { name: name.to_owned(), share, work, walls: Vec::new(), span: Span::none() }
}

/// Any shop.
pub fn shop(dice: &mut Dice, made: &Carcass, items: &[Item]) -> Shop {
    let mut shop = plain();
    shop.person.stature = dice.perhaps(90, |d| d.mm(1500, 1950));
    shop.person.seated = dice.luck(8);
    shop.person.hand = dice.one(&[Hand::Left, Hand::Right]);
    shop.stations = stations(dice);
    shop.room.uneven = dice.luck(20);
    if dice.luck(25) {
        furnish(dice, made, &mut shop.room);
    }
    shop.reserve = reserve(dice, items);
    shop.jobs.extend(dice.perhaps(25, |d| job(d, items)));
    shop.rates.roll_out = Time::s(dice.one(&[30, 30, 45]));
    shop.clearance = Length::mm(dice.one(&[25, 25, 0, 40]));
    for n in 0..dice.whole(0, 2) {
        let name = format!("job {}", n + 1);
        shop.jobs.push(Job { name, ..job(dice, items) });
    }
    if dice.luck(30) {
        rates(dice, &mut shop.rates);
    }
    shop
}

/// Rates that somebody chose, nought among them.
fn rates(dice: &mut Dice, rates: &mut Rates) {
    let any = |dice: &mut Dice, usual: f64| Time::from_s(usual * dice.one(&[0.0, 0.25, 4.0]));
    rates.together = any(dice, 3.0);
    rates.family = any(dice, 5.0);
    rates.jobs = any(dice, 1.0);
    rates.sight = any(dice, 1.0);
    rates.reserve = any(dice, 1.0);
    rates.wish = any(dice, 5.0);
}

/// One to three places of work, each with some faces at a wall but never the one worked from.
fn stations(dice: &mut Dice) -> Vec<Station> {
    let shares: &[i64] = match dice.whole(0, 3) {
        0 | 1 => &[1_000_000],
        2 => &[800_000, 200_000],
        _ => &[500_000, 300_000, 200_000],
    };
    shares
        .iter()
        .enumerate()
        .map(|(n, share)| {
            let work = if n == 0 { Face::Front } else { dice.one(&SIDES) };
            let walls = SIDES.into_iter().filter(|f| *f != work && dice.luck(25)).collect();
            let name = format!("place {}", ["a", "b", "c"][n]);
            Station { walls, ..station(&name, Share::ppm(*share), work) }
        })
        .collect()
}

/// A room large enough to turn the cart in, with things along its edges only.
fn furnish(dice: &mut Dice, made: &Carcass, room: &mut Room) {
    let reach = made.width + made.depth;
    let middle = reach + Length::mm(1000);
    room.kind = Some("shed".to_owned());
    room.size = Some([middle * 2; 2]);
    room.cart = Some(CartPlace {
        at: [middle; 2],
        quarter_turns: dice.whole(0, 3) as u8,
        span: Span::none(),
    });
    for n in 0..dice.whole(0, 3) {
        let size = [dice.mm(300, 1500), dice.mm(200, 800)];
        let at = if n % 2 == 0 {
            [dice.mm(0, 500), Length::ZERO]
        } else {
            [Length::ZERO, dice.mm(900, 1500)]
        };
        room.obstacles.push(Obstacle { at, size, span: Span::none() });
    }
}

fn reserve(dice: &mut Dice, items: &[Item]) -> Reserve {
    let families: Vec<String> = items.iter().filter_map(|i| i.family.clone()).collect();
    let wanted = if families.is_empty() || !dice.luck(30) {
        Vec::new()
    } else {
        vec![(dice.one(&families), dice.whole(1, 2) as u32, Span::none())]
    };
    Reserve { share: Share::ppm(dice.one(&[0, 0, 100_000, 200_000])), families: wanted }
}

fn job(dice: &mut Dice, items: &[Item]) -> Job {
    let wanted = dice.whole(2, 4) as usize;
    let first = dice.whole(0, items.len() as i64 - 1) as usize;
    let named = items.iter().cycle().skip(first).take(wanted.min(items.len()));
    Job {
        name: "mend a chair".to_owned(),
        items: named.map(|i| (i.name.clone(), Span::none())).collect(),
        uses: Uses::from_week(dice.spread(0.1, 3.0)),
    }
}
