//! The room that the cart stands in.

use super::{About, Caution, OURS, caution};
use crate::domain::{Hazard, Hazards};
use crate::physics::fire::{GALLON, HOUSE, WAY_OUT};

/// What a room is to those who are in it.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
enum Use {
    /// People flee through it.
    WayOut,
    /// People live or sleep in it.
    Lived,
    /// Many people meet in it.
    Met,
    /// Only work is done in it.
    Work,
}

/// Words of a room's kind; the first that is found counts.
const ROOMS: &[(Use, &[&str])] = &[
    (Use::Work, &["workshop", "garage", "shed", "barn", "outbuilding", "store", "works"]),
    (
        Use::Met,
        &[
            "village hall",
            "church hall",
            "school hall",
            "town hall",
            "sports hall",
            "club",
            "classroom",
            "school",
            "church",
            "theatre",
            "library",
            "shop",
        ],
    ),
    (
        Use::WayOut,
        &[
            "landing",
            "stairs",
            "stair",
            "staircase",
            "stairwell",
            "stairway",
            "hall",
            "hallway",
            "corridor",
            "passage",
            "lobby",
            "entrance",
            "porch",
            "exit",
            "escape",
            "way out",
        ],
    ),
    (
        Use::Lived,
        &[
            "flat",
            "apartment",
            "house",
            "home",
            "living room",
            "lounge",
            "sitting room",
            "bedroom",
            "bedsit",
            "kitchen",
            "dining room",
            "study",
            "studio",
            "caravan",
            "dormitory",
            "conservatory",
            "utility room",
            "attic",
            "loft",
            "basement",
            "cellar",
            "boat",
        ],
    ),
];

const BURNS: Hazards = Hazards::of(&[Hazard::Flammable, Hazard::Aerosol, Hazard::SelfHeating]);
const CHARGED: Hazards = Hazards::of(&[Hazard::Battery]);

pub(super) fn cautions(about: &About) -> Vec<Caution> {
    let kind = about.workspace.shop.room.kind.as_deref();
    let told = match kind.map(use_of) {
        Some(Some(Use::Work)) => None,
        Some(Some(Use::WayOut)) => Some(way_out(about)),
        Some(Some(Use::Lived)) => lived_in(about),
        Some(Some(Use::Met)) => met_in(about),
        Some(None) | None => unknown(about, kind),
    };
    told.into_iter().collect()
}

/// What people do in a room of that kind; nothing where no word of it is known.
fn use_of(kind: &str) -> Option<Use> {
    let words: Vec<String> = kind
        .split(|c: char| !c.is_alphanumeric())
        .filter(|part| !part.is_empty())
        .map(str::to_lowercase)
        .collect();
    let said = |phrase: &str| {
        let wanted: Vec<&str> = phrase.split(' ').collect();
        words.windows(wanted.len()).any(|w| w == wanted)
    };
    ROOMS.iter().find(|(_, names)| names.iter().any(|n| said(n))).map(|(to, _)| *to)
}

fn way_out(about: &About) -> Caution {
    let items = about.meeting(Hazards::of(&[
        Hazard::Flammable,
        Hazard::Aerosol,
        Hazard::SelfHeating,
        Hazard::Battery,
    ]));
    let free = format!(
        "The cart stands in a way out: {:.0} mm (28 in) at least stay free beside it, or what the local code asks, with every drawer out.",
        WAY_OUT.as_mm()
    );
    match items {
        None => caution(Vec::new(), free, "29 CFR 1910.36(g)(2), read as quoted"),
        Some(items) => {
            let text = format!(
                "{free} No fuel, finish or battery is kept or charged in a way out, not even shut in: off the cart."
            );
            let source = "29 CFR 1926.152(a)(2) and 1910.36(g)(2), read as quoted; fire services' advice on batteries, read";
            caution(items, text, source)
        }
    }
}

fn lived_in(about: &About) -> Option<Caution> {
    let items = about.meeting(BURNS)?;
    let text = format!(
        "People live here: fuels, finishes and oily rags belong off the cart, outside the rooms that people live and sleep in, where the local code allows it. One state's code lets a house with its garage have {:.1} litres ({HOUSE:.0} US gal) of the most easily lit: to be below that proves nothing.",
        HOUSE * GALLON
    );
    let source =
        "34 Pa. Code § 14a.44(b)(1), read, for the amount; the local fire code comes first";
    Some(caution(items, text, source))
}

/// Whether people live or sleep where the cart stands.
pub(super) fn is_lived_in(about: &About) -> bool {
    about.workspace.shop.room.kind.as_deref().and_then(use_of) == Some(Use::Lived)
}

fn met_in(about: &About) -> Option<Caution> {
    let items = about.meeting(BURNS)?;
    let text = "People meet here: when they do, fuels, finishes and oily rags belong off the cart, shut away where the local fire code and whoever runs the house allow it.";
    Some(caution(items, text, OURS))
}

/// No kind is said, or none that is known.
fn unknown(about: &About, kind: Option<&str>) -> Option<Caution> {
    let items = about.meeting(BURNS.or(CHARGED))?;
    let kind = match kind {
        Some(kind) => format!("What people do in a {kind} is not known"),
        None => "The shop file does not say what room this is (`room: {kind: …}`)".to_owned(),
    };
    let text = format!(
        "{kind}: where people live or sleep, and in a way out, fuels, finishes, oily rags and charging belong off the cart."
    );
    Some(caution(
        items,
        text,
        "29 CFR 1926.152(a)(2), read as quoted; the local fire code comes first",
    ))
}

#[cfg(test)]
mod tests {
    use super::{ROOMS, Use, use_of};

    #[test]
    fn a_room_is_known_by_the_first_word_of_the_table() {
        for (kind, to) in [
            ("village hall", Some(Use::Met)),
            ("hall", Some(Use::WayOut)),
            ("Landing", Some(Use::WayOut)),
            ("rented flat", Some(Use::Lived)),
            ("theatre workshop", Some(Use::Work)),
            ("shed", Some(Use::Work)),
            ("cave", None),
            ("", None),
            ("flatland", None),
        ] {
            assert_eq!(use_of(kind), to, "{kind}");
        }
    }

    #[test]
    fn no_word_stands_in_the_table_twice() {
        let mut all: Vec<&str> =
            ROOMS.iter().flat_map(|(_, names)| names.iter().copied()).collect();
        let count = all.len();
        all.sort_unstable();
        all.dedup();
        assert_eq!(all.len(), count);
    }
}
