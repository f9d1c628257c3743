//! One thing with a place of its own.

use crate::finding::Span;
use crate::units::{Length, Mass, Uses};

/// Width, depth and height, in that order.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug, Default)]
pub struct Dims {
    /// Width.
    pub w: Length,
    /// Depth; of a hung thing, how far it stands out from the wall.
    pub d: Length,
    /// Height.
    pub h: Length,
}

/// How an item is kept.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Pose {
    /// Upright on a deck.
    Stand,
    /// Tipped on its back on a deck.
    Lie,
    /// On a wall.
    Hang,
}

impl Pose {
    /// All poses, in the order in which they are told.
    pub const ALL: [Pose; 3] = [Pose::Stand, Pose::Lie, Pose::Hang];
    /// The word for it in files and reports.
    pub const fn name(self) -> &'static str {
        match self {
            Pose::Stand => "stand",
            Pose::Lie => "lie",
            Pose::Hang => "hang",
        }
    }
}

/// What makes a thing dangerous to keep beside others.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Hazard {
    /// Has an edge or a point.
    Sharp,
    /// Makes sparks or a flame.
    Ignition,
    /// Is put away hot.
    Hot,
    /// Burns easily.
    Flammable,
    /// Can spill.
    Liquid,
    /// Runs on the mains.
    Electric,
    /// Holds a charge.
    Battery,
    /// Is under pressure.
    Aerosol,
    /// Can heat itself, as oily rags do.
    SelfHeating,
    /// Feeds a fire.
    Oxidiser,
    /// Eats skin and metal.
    Corrosive,
}

impl Hazard {
    /// All hazards, in the order in which they are told.
    pub const ALL: [Hazard; 11] = [
        Hazard::Sharp,
        Hazard::Ignition,
        Hazard::Hot,
        Hazard::Flammable,
        Hazard::Liquid,
        Hazard::Electric,
        Hazard::Battery,
        Hazard::Aerosol,
        Hazard::SelfHeating,
        Hazard::Oxidiser,
        Hazard::Corrosive,
    ];
    /// The word for it in files and reports.
    pub const fn name(self) -> &'static str {
        match self {
            Hazard::Sharp => "sharp",
            Hazard::Ignition => "ignition",
            Hazard::Hot => "hot",
            Hazard::Flammable => "flammable",
            Hazard::Liquid => "liquid",
            Hazard::Electric => "electric",
            Hazard::Battery => "battery",
            Hazard::Aerosol => "aerosol",
            Hazard::SelfHeating => "self-heating",
            Hazard::Oxidiser => "oxidiser",
            Hazard::Corrosive => "corrosive",
        }
    }
}

/// The container that a self-heating thing is kept in, as files name it.
pub const CLOSED_METAL_CAN: &str = "closed metal can";

/// How well both hands hold a thing when it is lifted.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Handles {
    /// Handles or cut-outs that the hand closes round.
    Good,
    /// Lesser ones, or fingers bent under it.
    Fair,
    /// None: bulky, smooth or sagging.
    Poor,
}

/// A set of hazards.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, Default)]
pub struct Hazards(u16);

impl Hazards {
    /// A set of those.
    pub const fn of(all: &[Hazard]) -> Hazards {
        let mut bits = 0;
        let mut k = 0;
        while k < all.len() {
            bits |= 1 << all[k] as u16;
            k += 1;
        }
        Hazards(bits)
    }
    /// The same with one more.
    pub const fn with(self, hazard: Hazard) -> Hazards {
        Hazards(self.0 | 1 << hazard as u16)
    }
    /// Whether it holds this one.
    pub const fn has(self, hazard: Hazard) -> bool {
        self.0 & (1 << hazard as u16) != 0
    }
    /// Whether the two share one.
    pub const fn meets(self, other: Hazards) -> bool {
        self.0 & other.0 != 0
    }
    /// Those of either.
    pub const fn or(self, other: Hazards) -> Hazards {
        Hazards(self.0 | other.0)
    }
    /// Whether there is none.
    pub const fn is_empty(self) -> bool {
        self.0 == 0
    }
    /// Those in the set, in order.
    pub fn iter(self) -> impl Iterator<Item = Hazard> {
        Hazard::ALL.into_iter().filter(move |h| self.has(*h))
    }
}

/// Where an item is ordered or wished to: a face, a bay, `face/bay` or `face/bay/surface`.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Home {
    /// Its parts in lower case, without outer blanks.
    pub parts: Vec<String>,
    /// Where the file says so.
    pub span: Span,
}

/// One thing with a place of its own, or several alike.
#[derive(Clone, Debug)]
pub struct Item {
    /// What it is called; unique in the inventory.
    pub name: String,
    /// Where the file says its name.
    pub span: Span,
    /// Size as it stands.
    pub size: Dims,
    /// Mass of one copy, as it is kept.
    pub weight: Mass,
    /// Fetches a week of all copies together.
    pub uses: Uses,
    /// How many there are.
    pub count: u32,
    /// Whether one fetch brings all copies.
    pub take_all: bool,
    /// Most copies in one pile.
    pub stack: u32,
    /// Width that each further copy of a row needs, where they may be kept in a row.
    pub pitch: Option<Length>,
    /// Size in each allowed pose, in the order of [`Pose::ALL`].
    pub poses: [Option<Dims>; 3],
    /// Whether it may be turned.
    pub turn: bool,
    /// The family it belongs to.
    pub family: Option<String>,
    /// Companions, by name.
    pub with: Vec<(String, Span)>,
    /// What is dangerous about it.
    pub hazards: Hazards,
    /// Whether the file says its hazards: an empty list says that somebody looked and found none.
    pub hazards_said: bool,
    /// Whether its edge is covered as kept.
    pub guarded: bool,
    /// The container that its hazard asks for, where it is in one.
    pub inside: Option<String>,
    /// Hands needed to lift it: 1 or 2.
    pub hands: u8,
    /// How well the hands hold it when it is lifted, where the file says it.
    pub handles: Option<Handles>,
    /// Height of the grip above its bottom as it stands, where the file says it.
    pub grip: Option<Length>,
    /// Whether it is taken out to be used.
    pub fetched: bool,
    /// Whether it must be at hand at once.
    pub urgent: bool,
    /// Where it must be; empty means anywhere.
    pub place: Vec<Home>,
    /// Where it would rather be.
    pub prefer: Vec<Home>,
    /// Whether it stays where layout.yaml has it.
    pub fixed: bool,
    /// What is in it.
    pub holds: Vec<String>,
    /// Free height above it on a deck, where the file says it.
    pub clearance: Option<Length>,
}

impl Item {
    /// Its size in a pose, where the pose is allowed.
    pub fn pose(&self, pose: Pose) -> Option<Dims> {
        self.poses[pose as usize]
    }
    /// Whether it is kept in the container that a self-heating thing asks for.
    pub fn is_canned(&self) -> bool {
        self.inside.as_deref().is_some_and(|i| i.trim().eq_ignore_ascii_case(CLOSED_METAL_CAN))
    }
}
