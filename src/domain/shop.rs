//! The person, the room and where the work is.

use super::Face;
use crate::finding::Span;
use crate::units::{Length, Mass, Share, Time, Uses};

/// Everything about the place and its user.
#[derive(Clone, Debug)]
pub struct Shop {
    /// Who fetches.
    pub person: Person,
    /// Where they work, shares adding up to one.
    pub stations: Vec<Station>,
    /// The room.
    pub room: Room,
    /// Room to be kept free.
    pub reserve: Reserve,
    /// Sets fetched in one tour.
    pub jobs: Vec<Job>,
    /// Rates that are a matter of taste.
    pub rates: Rates,
    /// Free height above a thing on a deck.
    pub clearance: Length,
    /// What pushes and leans on the cart, and how it rolls.
    pub forces: Forces,
}

/// What pushes and leans on the cart, and how it rolls, each where the file says it. A force is told by the mass that
/// weighs as much, as a luggage scale shows it.
#[derive(Clone, Debug, Default)]
pub struct Forces {
    /// A level push at the height of the bench, on the way.
    pub push: Option<Mass>,
    /// Someone's weight on the edge of the bench.
    pub lean: Option<Mass>,
    /// A level push at the height of the bench from sawing or planing.
    pub work: Option<Mass>,
    /// What a locked caster holds, as a share of its load.
    pub friction: Option<Share>,
    /// What it takes to keep the cart rolling, as a share of its weight.
    pub rolling: Option<Share>,
}

/// Which hand.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Hand {
    /// The left.
    Left,
    /// The right.
    Right,
}

/// How far the collection has grown.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Experience {
    /// Much is still to be bought.
    Beginner,
    /// Something is.
    Settled,
    /// Nothing is.
    OldHand,
}

/// Whose measurements.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Sex {
    /// Women.
    Female,
    /// Men.
    Male,
}

/// Who fetches.
#[derive(Clone, Debug)]
pub struct Person {
    /// Body height, where the file says it.
    pub stature: Option<Length>,
    /// Percentile of stature, where that is said instead.
    pub percentile: Option<u8>,
    /// Whose percentile.
    pub sex: Option<Sex>,
    /// The better hand.
    pub hand: Hand,
    /// How far the collection has grown.
    pub experience: Experience,
    /// Whether they fetch seated.
    pub seated: bool,
    /// The lifting index that no lift may exceed, where the file lowers it.
    pub lifting_limit: Option<f64>,
}

/// A place where work is done with the cart standing there.
#[derive(Clone, Debug)]
pub struct Station {
    /// What it is called.
    pub name: String,
    /// The share of all fetches made there; all shares add up to one.
    pub share: Share,
    /// The face towards the work.
    pub work: Face,
    /// Faces that stand at a wall there.
    pub walls: Vec<Face>,
    /// Where the file says so.
    pub span: Span,
}

/// The room.
#[derive(Clone, Debug)]
pub struct Room {
    /// shed, garage, flat, … as the user names it.
    pub kind: Option<String>,
    /// Whether children come in.
    pub children: bool,
    /// Whether the floor is uneven.
    pub uneven: bool,
    /// Clear width of the door.
    pub door: Option<Length>,
    /// Height of the threshold that the cart is rolled over.
    pub threshold: Option<Length>,
    /// What may lie under a caster: a chip, a cable, a joint of the floor.
    pub chip: Option<Length>,
    /// Inside width and depth.
    pub size: Option<[Length; 2]>,
    /// Where the cart stands in it.
    pub cart: Option<CartPlace>,
    /// What stands about.
    pub obstacles: Vec<Obstacle>,
}

/// Where the cart's front-left corner stands in the room.
#[derive(Clone, Debug)]
pub struct CartPlace {
    /// The corner's place in the room, x and y.
    pub at: [Length; 2],
    /// By how many quarter turns to the left, seen from above.
    pub quarter_turns: u8,
    /// Where the file says so.
    pub span: Span,
}

/// Something on the floor of the room.
#[derive(Clone, Debug)]
pub struct Obstacle {
    /// Its corner with the least x and y, in the room's frame.
    pub at: [Length; 2],
    /// Along x and y.
    pub size: [Length; 2],
    /// Where the file says so.
    pub span: Span,
}

/// Room to be kept free for things not bought yet.
#[derive(Clone, Debug)]
pub struct Reserve {
    /// Share of the free deck volume in easy and bend reach.
    pub share: Share,
    /// How many further things of which family.
    pub families: Vec<(String, u32, Span)>,
}

/// A set of items fetched in one tour round the faces.
#[derive(Clone, Debug)]
pub struct Job {
    /// What it is called.
    pub name: String,
    /// Its items, by name.
    pub items: Vec<(String, Span)>,
    /// How often.
    pub uses: Uses,
}

/// Rates that are a matter of taste.
#[derive(Clone, Debug)]
pub struct Rates {
    /// What it costs to roll the cart away from a wall.
    pub roll_out: Time,
    /// What it costs to fetch a thing that is not on the cart.
    pub elsewhere: Time,
    /// What it costs to look for a thing at each fetch.
    pub look_for: Time,
    /// What it costs to turn to a further face, each time that two companions on two faces are wanted, besides the walk.
    pub together: Time,
    /// What each further face that a family stands on costs a week.
    pub family: Time,
    /// What it costs to turn to a further face on a job's tour, besides the walk.
    pub jobs: Time,
    /// What it costs to look for a thing that is hidden by another, each time.
    pub sight: Time,
    /// What each litre of room to grow that is missing costs a week.
    pub reserve: Time,
    /// What each thing that is not where it would rather be costs a week.
    pub wish: Time,
}

impl Default for Rates {
    /// What is taken where nothing is said: each is common practice, no source.
    fn default() -> Rates {
        Rates {
            roll_out: Time::s(30),
            elsewhere: Time::s(60),
            look_for: Time::s(2),
            together: Time::s(5),
            family: Time::s(5),
            jobs: Time::s(1),
            sight: Time::s(1),
            reserve: Time::s(1),
            wish: Time::s(10),
        }
    }
}
