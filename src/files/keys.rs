//! Every key that the files know, and which of them are read but not priced yet.

use super::decode::Keys;

pub(super) const CARCASS: Keys = Keys {
    what: "the carcass",
    keys: &["name", "units", "size", "mass", "board", "casters", "faces"],
};
pub(super) const OUTSIDE: Keys =
    Keys { what: "the size of the carcass", keys: &["width", "depth", "height"] };
pub(super) const BOARD: Keys = Keys { what: "the board", keys: &["material", "thickness"] };
pub(super) const CASTERS: Keys = Keys {
    what: "the casters",
    keys: &["height", "rating", "trail", "locks", "at", "wheel", "gives"],
};
pub(super) const FACES: Keys =
    Keys { what: "the list of faces", keys: &["front", "back", "left", "right", "top"] };
pub(super) const FACE: Keys = Keys { what: "a face", keys: &["bays", "drawers", "panels"] };
pub(super) const TOP: Keys =
    Keys { what: "the top", keys: &["bays", "drawers", "keep_clear", "zones", "limit"] };
pub(super) const BAY: Keys = Keys {
    what: "a bay",
    keys: &[
        "name", "at", "opening", "depth", "limit", "shelves", "hang", "behind", "gap", "hook",
        "screw", "grain", "ends",
    ],
};
pub(super) const SHELF: Keys = Keys {
    what: "a shelf",
    keys: &["height", "depth", "thickness", "limit", "front", "adjust", "material", "ends", "span"],
};
pub(super) const HANG: Keys =
    Keys { what: "the list of walls", keys: &["back", "left", "right", "ceiling"] };
pub(super) const DRAWER: Keys = Keys {
    what: "a drawer",
    keys: &["name", "at", "opening", "depth", "limit", "extends", "mass", "catch"],
};
pub(super) const PANEL: Keys = Keys {
    what: "a panel",
    keys: &[
        "name",
        "at",
        "size",
        "room",
        "limit",
        "overhang",
        "material",
        "thickness",
        "hook",
        "screw",
        "grain",
    ],
};
pub(super) const SCREW: Keys = Keys { what: "a screw", keys: &["diameter", "thread", "each"] };
pub(super) const OVERHANG: Keys =
    Keys { what: "an overhang", keys: &["down", "up", "left", "right"] };
pub(super) const ZONE: Keys = Keys { what: "a zone", keys: &["at", "size"] };
pub(super) const INVENTORY: Keys =
    Keys { what: "the inventory", keys: &["units", "include", "items"] };
pub(super) const ITEM: Keys = Keys {
    what: "an item",
    keys: &[
        "name",
        "size",
        "weight",
        "use",
        "count",
        "take",
        "stack",
        "pitch",
        "keep",
        "turn",
        "family",
        "with",
        "hazards",
        "guarded",
        "inside",
        "hands",
        "handles",
        "grip",
        "fetched",
        "urgent",
        "place",
        "prefer",
        "fixed",
        "holds",
        "clearance",
    ],
};
pub(super) const KEEP: Keys = Keys { what: "the list of poses", keys: &["stand", "lie", "hang"] };
pub(super) const SHOP: Keys = Keys {
    what: "the shop",
    keys: &[
        "units",
        "person",
        "stations",
        "room",
        "reserve",
        "jobs",
        "rates",
        "clearance",
        "forces",
    ],
};
pub(super) const PERSON: Keys = Keys {
    what: "the person",
    keys: &["stature", "percentile", "sex", "hand", "experience", "seated", "lifting_limit"],
};
pub(super) const STATION: Keys =
    Keys { what: "a station", keys: &["name", "share", "work", "walls"] };
pub(super) const ROOM: Keys = Keys {
    what: "the room",
    keys: &["kind", "children", "floor", "door", "size", "cart", "obstacles", "threshold", "chip"],
};
pub(super) const CART: Keys = Keys { what: "the place of the cart", keys: &["at", "turned"] };
pub(super) const OBSTACLE: Keys = Keys { what: "an obstacle", keys: &["at", "size"] };
pub(super) const RESERVE: Keys = Keys { what: "the reserve", keys: &["share", "families"] };
pub(super) const JOB: Keys = Keys { what: "a job", keys: &["name", "items", "use"] };
pub(super) const RATES: Keys = Keys {
    what: "the list of rates",
    keys: &[
        "roll_out",
        "elsewhere",
        "look_for",
        "together",
        "family",
        "jobs",
        "sight",
        "reserve",
        "wish",
    ],
};
pub(super) const FORCES: Keys =
    Keys { what: "the list of forces", keys: &["push", "lean", "work", "friction", "rolling"] };
pub(super) const LAYOUT: Keys =
    Keys { what: "the layout", keys: &["units", "shelves", "placements"] };
pub(super) const SHELF_ENTRY: Keys =
    Keys { what: "a shelf of the layout", keys: &["face", "bay", "surface", "height"] };
pub(super) const PLACEMENT: Keys = Keys {
    what: "a placement",
    keys: &["item", "copy", "copies", "face", "bay", "surface", "pose", "turned", "at"],
};

/// All of them, those first whose keys are most often indented wrongly.
pub(super) const ALL: [&Keys; 31] = [
    &ITEM,
    &BAY,
    &DRAWER,
    &PANEL,
    &SHELF,
    &CASTERS,
    &CARCASS,
    &FACE,
    &TOP,
    &OUTSIDE,
    &BOARD,
    &FACES,
    &HANG,
    &OVERHANG,
    &ZONE,
    &INVENTORY,
    &KEEP,
    &SHOP,
    &PERSON,
    &STATION,
    &ROOM,
    &CART,
    &OBSTACLE,
    &RESERVE,
    &JOB,
    &RATES,
    &FORCES,
    &LAYOUT,
    &PLACEMENT,
    &SHELF_ENTRY,
    &SCREW,
];

/// Keys that are read and checked but not priced yet: what they stand in, the key, what to call it.
///
/// When a term arrives, its line goes.
pub(super) const NOT_PRICED: [(&str, &str, &str); 0] = [];
