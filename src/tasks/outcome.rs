//! What a plan says: everything that the reports set out, already computed.
//!
//! Frame of all coordinates: millimetres from the floor under the front-left corner of the carcass, x right, y back, z up.

mod boards;
mod effort;
mod extreme;
mod ground;
mod growth;
mod lift;
mod person;
mod rolling;
mod shelf;
mod stability;
mod ties;

use crate::domain::{Face, Hazards, Layout, Pose};
use crate::finding::Finding;
use crate::geometry::{Box3, Point3};
use crate::physics::body::Posture;
pub use crate::site::Kind;
pub use crate::solve::{End, Progress};
use crate::units::{Length, Mass, Price, Time, Unit, Uses};
pub use boards::{BoardLoad, FixingLoad};
pub use effort::Effort;
pub use extreme::{Amount, Extreme, Limit, Mark, weighing};
pub use ground::{Ground, Rect2, StationWays, Walk};
pub use growth::Growth;
pub use lift::{Assessed, LIFT_SOURCE, Lift};
pub use person::{Band, Person};
pub use rolling::{Before, Door, Push, Rolling};
pub use shelf::{ShelfHeight, Shelves};
pub use stability::{CasterTrial, Raise, Stability, Trial};
pub use ties::{Companions, Family, Job, Missing};

/// Whether a plan may be used as it is.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Status {
    /// Everything has a place and no rule is broken.
    Complete,
    /// No rule is broken, but something is left out.
    Partial,
    /// A rule is broken.
    Unsafe,
}

impl Status {
    /// The word for it in reports.
    pub const fn name(self) -> &'static str {
        match self {
            Status::Complete => "complete",
            Status::Partial => "partial",
            Status::Unsafe => "unsafe",
        }
    }
}

/// How well an item can be reached where it is.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum Zone {
    /// Standing upright, arm below the shoulder.
    Easy,
    /// With a bent back.
    Bend,
    /// On the knees.
    Kneel,
    /// With the arm above the shoulder or fully stretched.
    Stretch,
    /// Not at all.
    Out,
}

impl Zone {
    /// The word for it in reports.
    pub const fn name(self) -> &'static str {
        match self {
            Zone::Easy => "easy",
            Zone::Bend => "bend",
            Zone::Kneel => "kneel",
            Zone::Stretch => "stretch",
            Zone::Out => "out",
        }
    }
}

impl From<Posture> for Zone {
    fn from(posture: Posture) -> Zone {
        match posture {
            Posture::Easy => Zone::Easy,
            Posture::Bend => Zone::Bend,
            Posture::Kneel => Zone::Kneel,
            Posture::Stretch => Zone::Stretch,
            Posture::Out => Zone::Out,
        }
    }
}

/// One copy of an item, by name and number from 1.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub struct Copy {
    /// The item.
    pub item: String,
    /// The copy, from 1.
    pub copy: u32,
}

/// Where one copy, pile or row lives.
#[derive(Clone, Debug)]
pub struct Placement {
    /// The item.
    pub item: String,
    /// Its copy, or the first of a pile or row; from 1.
    pub copy: u32,
    /// How many copies the box holds.
    pub copies: u32,
    /// How many copies there are of the item in all.
    pub of: u32,
    /// The face it belongs to.
    pub face: Face,
    /// The way it is taken out.
    pub way: Face,
    /// The bay, drawer or panel; `bench` on top.
    pub bay: String,
    /// The surface.
    pub surface: String,
    /// Its number on its face: surface by surface from the top down, on each from the viewer's left.
    pub slot: u32,
    /// How it is kept.
    pub pose: Pose,
    /// Whether it is turned.
    pub turned: bool,
    /// Its box.
    pub space: Box3,
    /// Height of its grip above the floor.
    pub grip_height: Length,
    /// How it is reached.
    pub zone: Zone,
    /// What must be moved first, in the order of removal.
    pub moved_first: Vec<Copy>,
    /// Mass of all copies in the box.
    pub weight: Mass,
    /// Fetches a week.
    pub uses: Uses,
    /// What the place costs at each fetch.
    pub per_fetch: Time,
    /// What the place costs a week.
    pub per_week: Price,
    /// The same term by term (access, reach, blocked), each with its sentence.
    pub terms: Vec<TermPart>,
    /// What is in it.
    pub holds: Vec<String>,
    /// The family it belongs to.
    pub family: Option<String>,
    /// What is dangerous about it.
    pub hazards: Hazards,
    /// Whether its edge is covered as kept.
    pub guarded: bool,
    /// The container that its hazard asks for, where it is in one.
    pub inside: Option<String>,
    /// Whether it must be at hand at once.
    pub urgent: bool,
    /// Whether it stays where the layout has it.
    pub fixed: bool,
}

/// One item's part in a term, with the sentence that explains it.
#[derive(Clone, Debug)]
pub struct TermPart {
    /// The term.
    pub term: &'static str,
    /// What it costs a week.
    pub price: Price,
    /// Why.
    pub told: String,
}

/// A copy that has no place.
#[derive(Clone, Debug)]
pub struct LeftOut {
    /// Which.
    pub copy: Copy,
    /// Why, with the nearest miss.
    pub why: String,
    /// What it costs to fetch it from elsewhere.
    pub price: Price,
}

/// Room kept free on purpose.
#[derive(Clone, Debug)]
pub struct Kept {
    /// For which family, where it is for one.
    pub family: Option<String>,
    /// The face.
    pub face: Face,
    /// The bay.
    pub bay: String,
    /// The surface.
    pub surface: String,
    /// The box that stays free.
    pub space: Box3,
    /// The mass that the casters and the surface allow for.
    pub mass: Mass,
}

/// A surface with what it carries.
#[derive(Clone, Debug)]
pub struct SurfaceLoad {
    /// The face.
    pub face: Face,
    /// The bay, drawer or panel; `bench` on top.
    pub bay: String,
    /// The surface.
    pub surface: String,
    /// What kind.
    pub kind: Kind,
    /// Its free box.
    pub space: Box3,
    /// What it carries.
    pub load: Mass,
    /// What it may carry, where the file says so.
    pub limit: Option<Mass>,
}

/// A shelf board.
#[derive(Clone, Debug)]
pub struct Solid {
    /// What it is.
    pub what: String,
    /// Its box.
    pub space: Box3,
}

/// Masses and where they act.
#[derive(Clone, Debug)]
pub struct Balance {
    /// Everything.
    pub total: Mass,
    /// Where it acts.
    pub centre: Point3,
    /// The empty cart with its closed drawers.
    pub carcass: Mass,
    /// Where that acts.
    pub carcass_centre: Point3,
    /// What of it was assumed rather than said.
    pub assumed: Vec<String>,
}

/// One caster.
#[derive(Clone, Debug)]
pub struct CasterLoad {
    /// Its swivel axis, x and y.
    pub at: [Length; 2],
    /// Load, closed and level; `None` where the cart tips.
    pub load: Option<Mass>,
    /// The most it carries in any case of the rule that stands.
    pub worst: Option<Mass>,
    /// That case in words.
    pub worst_case: String,
    /// The most it carries with another one hanging free.
    pub hanging: Option<Mass>,
    /// What it may carry.
    pub limit: Option<Mass>,
}

/// How far the cart may lean before it goes over one side of its casters.
#[derive(Clone, Debug)]
pub struct Tip {
    /// The side that it goes over.
    pub side: String,
    /// `closed`, or the drawer that is out.
    pub case: String,
    /// In degrees; under nought it goes over by itself.
    pub degrees: f64,
    /// The least that is allowed.
    pub limit: f64,
}

/// A broken rule.
#[derive(Clone, Debug)]
pub struct Broken {
    /// Its name.
    pub rule: &'static str,
    /// The items concerned.
    pub items: Vec<String>,
    /// What is wrong, in words.
    pub told: String,
    /// Measured value, in the unit of the words (mm, kg, degrees or a count).
    pub value: f64,
    /// Its limit.
    pub limit: f64,
    /// Where the limit comes from.
    pub source: &'static str,
}

/// The value of a layout.
#[derive(Clone, Debug)]
pub struct Worth {
    /// All terms together.
    pub cost: Price,
    /// What the left-out copies cost.
    pub off_cart: Price,
    /// Term by term.
    pub terms: Vec<(&'static str, Price)>,
    /// What is broken.
    pub broken: Vec<Broken>,
}

/// The layout that a careful person makes by going through the list.
#[derive(Clone, Debug)]
pub struct Start {
    /// Its cost.
    pub cost: Price,
    /// What it leaves out.
    pub off_cart: Price,
    /// How many rules it breaks.
    pub broken: usize,
    /// Whether it places the very same copies as the plan: only then may a saving be told.
    pub same_items: bool,
}

/// What no layout can cost less than.
#[derive(Clone, Debug)]
pub struct Bound {
    /// By this model's prices.
    pub cost: Option<Price>,
    /// (cost − bound) / cost.
    pub gap: Option<f64>,
    /// (cost − bound) / (cost + handling).
    pub gap_with_handling: Option<f64>,
    /// What was shown.
    pub proof: Proof,
}

/// What was shown of how good a layout is.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub enum Proof {
    /// A lower bound and no more.
    #[default]
    Bound,
    /// Every corner place was tried: no layout whose things are pushed against edges, boards and each other costs less.
    Corners,
    /// The bound meets the cost.
    Optimal,
}

impl Proof {
    /// The word for it.
    pub const fn name(self) -> &'static str {
        match self {
            Proof::Bound => "bound",
            Proof::Corners => "optimal among corner places",
            Proof::Optimal => "optimal",
        }
    }
}

/// A caution that concerns this inventory.
#[derive(Clone, Debug)]
pub struct Caution {
    /// The items concerned; empty where it is the whole cart.
    pub items: Vec<String>,
    /// What to mind.
    pub text: String,
    /// Where it comes from.
    pub source: String,
}

/// A rectangle of a face as seen: u from the viewer's left, v up from the floor.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Rect {
    /// Left edge.
    pub u0: Length,
    /// Right edge.
    pub u1: Length,
    /// Lower edge.
    pub v0: Length,
    /// Upper edge.
    pub v1: Length,
}

/// What a rectangle of an elevation stands for.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Part {
    /// An opening.
    Bay,
    /// A shelf board.
    Shelf,
    /// A drawer front.
    Drawer,
    /// An outside panel.
    Panel,
    /// The part of the bench where things may stand.
    Bench,
}

/// One face to scale.
#[derive(Clone, Debug)]
pub struct Elevation {
    /// Which.
    pub face: Face,
    /// Its theme in a word or two: the families that most of its things belong to.
    pub theme: String,
    /// Its outline.
    pub outline: Rect,
    /// Openings, shelves, drawers and panels, with their names.
    pub parts: Vec<(Part, String, Rect)>,
    /// Index into `placements` with the item's rectangle as seen, those behind first.
    pub slots: Vec<(usize, Rect)>,
}

/// A step of loading the cart.
#[derive(Clone, Debug)]
pub struct Step {
    /// What to put in, in words.
    pub text: String,
    /// The placements concerned, as indices into `placements`.
    pub placements: Vec<usize>,
}

/// Everything a plan says.
#[derive(Clone, Debug)]
pub struct Plan {
    /// The cart's name.
    pub name: String,
    /// The unit of the user's files.
    pub units: Unit,
    /// Whether it may be used as it is.
    pub status: Status,
    /// The seed of the search.
    pub seed: u64,
    /// Where everything lives: face by face, slot by slot.
    pub placements: Vec<Placement>,
    /// What has no place.
    pub left_out: Vec<LeftOut>,
    /// Room kept free.
    pub reserve: Vec<Kept>,
    /// Room that is to stay free, for anything or for a family.
    pub growth: Vec<Growth>,
    /// What is used together.
    pub companions: Vec<Companions>,
    /// Families with their faces.
    pub families: Vec<Family>,
    /// Jobs with their tours.
    pub jobs: Vec<Job>,
    /// All surfaces.
    pub surfaces: Vec<SurfaceLoad>,
    /// All shelf boards.
    pub solids: Vec<Solid>,
    /// Masses.
    pub balance: Balance,
    /// Casters, in the order of the file.
    pub casters: Vec<CasterLoad>,
    /// Tip angles: the least side of each case.
    pub tips: Vec<Tip>,
    /// How far the cart is from going over or sliding.
    pub stability: Stability,
    /// Rolling it, where it passes and fits, and what moves at a stop.
    pub rolling: Rolling,
    /// Shelves and floors whose material is named, the one that uses most of the sag it may have first.
    pub boards: Vec<BoardLoad>,
    /// What hangs where it is known what holds, the hardest asked first.
    pub fixings: Vec<FixingLoad>,
    /// The worst of each kind, each with its case.
    pub extremes: Vec<Extreme>,
    /// What it is worth.
    pub worth: Worth,
    /// What grasping, bringing and letting go cost a week, alike in every place.
    pub handling: Price,
    /// What fetching each thing asks of the back.
    pub lifts: Vec<Lift>,
    /// What to mind.
    pub cautions: Vec<Caution>,
    /// The start it is compared with.
    pub start: Start,
    /// What no layout can cost less than.
    pub bound: Bound,
    /// What the search did.
    pub effort: Effort,
    /// The faces to scale.
    pub elevations: Vec<Elevation>,
    /// The floor round the cart: stations, walls and ways on foot.
    pub ground: Ground,
    /// The person's heights, and how each is reached.
    pub person: Person,
    /// How to load it: heavy and low first.
    pub loading: Vec<Step>,
    /// Placements that earn their place least, as indices with what keeping them off the cart would cost a week.
    pub earning_least: Vec<(usize, Price)>,
    /// Shelves that may be moved; nothing where there are none.
    pub shelves: Option<Shelves>,
    /// The layout as a file says it.
    pub layout: Layout,
    /// What is read but not priced yet, and other notes.
    pub notes: Vec<Finding>,
    /// Which of the prices come from memory rather than from a source that was read.
    pub from_memory: Vec<&'static str>,
}
