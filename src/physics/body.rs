//! Body heights, and how hard a place is to reach.
//!
//! Shares of stature: means of women and men in ANSUR II (see [`super::stature`]), each ratio formed person by person
//! from the public data, then the mean of both sexes; the two differ by at most 1.3 % of stature. The data are unshod,
//! so heights over the floor get a shoe.

use super::motion::{self, bend_and_arise, kneel_and_arise};
use super::stature::{self, Sex};
use crate::units::{Length, Mass, Time};

/// A shoe's sole, common practice, no source.
pub const SHOE: Length = Length::mm(25);

/// What leaning in adds to the arm, common practice, no source.
pub const LEAN: Length = Length::mm(300);

/// The reach from the standing place to the face that every fetch has anyhow: what lies beyond it is extra.
pub const NEAREST_REACH: Length = Length::mm(400);

/// Lowest and highest grip for a seated person, and the highest beyond [`SEATED_NEAR`] (2010 ADA Standards, 308.2).
const SEATED_BAND: [Length; 3] = [Length::mm(380), Length::mm(1220), Length::mm(1120)];
/// Depth up to which a seated person reaches the whole band: 20 in (2010 ADA Standards, 308.2.2).
const SEATED_NEAR: Length = Length::mm(510);
/// Depth beyond which the standard lets a seated person reach nothing: 25 in (2010 ADA Standards, 308.2.2).
const SEATED_DEEPEST: Length = Length::mm(635);
/// Height of a wheelchair's seat, common practice, no source.
const SEAT: Length = Length::mm(485);

/// A person's heights over the floor, with shoes, and how far the arm goes in.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Body {
    /// Of the top of the head.
    pub crown: Length,
    /// Of the eye.
    pub eye: Length,
    /// Of the shoulder (acromion).
    pub shoulder: Length,
    /// Of the elbow.
    pub elbow: Length,
    /// Of the centre of the grip with the arm hanging; seated, the lowest grip.
    pub knuckle: Length,
    /// Of the middle of the kneecap; seated, the lowest grip.
    pub knee: Length,
    /// Of the highest grip.
    pub overhead_grip: Length,
    /// Thumb tip before the chest, arm stretched out level.
    pub arm: Length,
    /// Whether they fetch seated.
    pub seated: bool,
}

/// How a thing is reached, easiest first.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Posture {
    /// Upright, between knuckle and shoulder.
    Easy,
    /// Bent down.
    Bend,
    /// On both knees.
    Kneel,
    /// Stretched up, or leaned in.
    Stretch,
    /// Not at all.
    Out,
}

impl Posture {
    /// All of them, easiest first.
    pub const ALL: [Posture; 5] =
        [Posture::Easy, Posture::Bend, Posture::Kneel, Posture::Stretch, Posture::Out];

    /// The word for it in files and reports.
    pub const fn name(self) -> &'static str {
        match self {
            Posture::Easy => "easy",
            Posture::Bend => "bend",
            Posture::Kneel => "kneel",
            Posture::Stretch => "stretch",
            Posture::Out => "out",
        }
    }
}

/// A share of stature in ten thousandths.
fn share(stature: Length, ten_thousandths: i64) -> Length {
    Length::nm(stature.as_nm() / 10_000 * ten_thousandths)
}

impl Body {
    /// A standing person of an unshod stature. Shares of women / men beside each (computed from the data).
    pub fn standing(stature: Length) -> Body {
        let over_floor = |ten_thousandths| share(stature, ten_thousandths) + SHOE;
        Body {
            crown: stature + SHOE,
            eye: over_floor(9_342),      // .9331 / .9352
            shoulder: over_floor(8_201), // .8198 / .8203
            elbow: over_floor(6_291),    // .6287 / .6294
            knuckle: over_floor(4_322),  // .4336 / .4307
            knee: over_floor(2_768),     // .2756 / .2780
            // Fingertip reach (1.2781 / 1.2893) less 60 % of the hand's length, which closes round a thing (one
            // reference gives that figure), person by person: 1.2113 / 1.2233.
            overhead_grip: over_floor(12_173),
            // Thumb tip reach from a wall behind the back (.4569 / .4623) less the depth of the chest, person by
            // person: .3049 / .3177.
            arm: share(stature, 3_113),
            seated: false,
        }
    }

    /// A standing person at a percentile of stature, 1 to 99; the mean of women and men where the sex is not said.
    pub fn of_percentile(sex: Option<Sex>, percentile: u8) -> Body {
        Body::standing(stature::of_percentile(sex, percentile))
    }

    /// A person in a wheelchair: the band of the accessibility standard, 380 to 1220 mm, whatever the stature.
    ///
    /// Eye, shoulder and elbow over the seat are the mean of the medians of women and men in ANSUR II (748 / 804,
    /// 564 / 603, 253 / 268 mm, computed from the data); the crown likewise (857 / 918 mm, from memory).
    pub fn seated() -> Body {
        let [lowest, highest, _] = SEATED_BAND;
        Body {
            crown: SEAT + Length::mm(888),
            eye: SEAT + Length::mm(776),
            shoulder: SEAT + Length::nm(583_500_000),
            elbow: SEAT + Length::nm(260_500_000),
            knuckle: lowest,
            knee: lowest,
            overhead_grip: highest,
            arm: SEATED_NEAR,
            seated: true,
        }
    }

    /// How a grip at a height over the floor and a depth behind the face is reached.
    ///
    /// Standing: knuckle to shoulder easy, knee to knuckle bent, below on both knees, above the shoulder stretched up to
    /// the highest grip. Deeper than the arm: leaned in, a stretch upright and kneeling below; deeper than arm and
    /// lean: out. Seated: the standard's band, never bent nor kneeling.
    pub fn posture(&self, grip: Length, depth: Length) -> Posture {
        if self.seated { seated_posture(grip, depth) } else { self.standing_posture(grip, depth) }
    }

    fn standing_posture(&self, grip: Length, depth: Length) -> Posture {
        if grip > self.shoulder {
            return if self.stretches_to(grip, depth) { Posture::Stretch } else { Posture::Out };
        }
        match (depth > self.arm, depth > self.arm + LEAN) {
            (_, true) => Posture::Out,
            // Nobody leans deep into a low opening on their feet.
            (true, _) if grip < self.knuckle => Posture::Kneel,
            (true, _) => Posture::Stretch,
            _ if grip >= self.knuckle => Posture::Easy,
            _ if grip >= self.knee => Posture::Bend,
            _ => Posture::Kneel,
        }
    }

    /// Whether a raised arm gets there: a quarter ellipse about the shoulder, straight up to the highest grip and
    /// straight in to the arm's end. With the arm above the shoulder nobody leans in (our own choice).
    fn stretches_to(&self, grip: Length, depth: Length) -> bool {
        let part = |length: Length, whole: Length| {
            length.as_nm().max(0) as f64 / whole.as_nm().max(1) as f64
        };
        let up = part(grip - self.shoulder, self.overhead_grip - self.shoulder);
        let deep = part(depth, self.arm);
        up * up + deep * deep <= 1.0
    }

    /// Time of a fetch (taken and put back) beyond one at the face in the easy band; out of reach counts on by the same
    /// rule, so that farther is never cheaper.
    ///
    /// Down and up again twice where the posture asks for it, and 2 × (reach + move) over the depth and the height
    /// over the shoulder, beyond the nearest reach. A bend or kneel brings the hand down with the body, so the depth
    /// of a low place alone counts. Weight is not looked at: it is told elsewhere.
    pub fn extra(&self, grip: Length, depth: Length) -> Time {
        let over = (grip - self.easy_top()).max(Length::ZERO) + depth.max(Length::ZERO);
        (self.lowering(grip, depth) + farther(over)) * 2
    }

    /// The upper end of the easy band.
    fn easy_top(&self) -> Length {
        if self.seated { self.overhead_grip } else { self.shoulder }
    }

    /// Down and up again, once.
    fn lowering(&self, grip: Length, depth: Length) -> Time {
        match grip {
            _ if self.seated || grip >= self.knuckle => Time::ZERO,
            _ if grip >= self.knee && depth <= self.arm => bend_and_arise(),
            _ => kneel_and_arise(),
        }
    }
}

/// A seated person by the standard alone (2010 ADA Standards 308.2, forward reach over what is in the way).
fn seated_posture(grip: Length, depth: Length) -> Posture {
    let [lowest, highest, highest_deep] = SEATED_BAND;
    if grip < lowest || grip > highest || depth > SEATED_DEEPEST {
        return Posture::Out;
    }
    match depth > SEATED_NEAR {
        false => Posture::Easy,
        true if grip > highest_deep => Posture::Out,
        true => Posture::Stretch,
    }
}

/// Reach in and move out again over `over` beyond the nearest reach, empty-handed and lightly laden.
fn farther(over: Length) -> Time {
    let once = |distance| motion::reach_b(distance) + motion::move_b(distance, Mass::ZERO);
    once(NEAREST_REACH + over) - once(NEAREST_REACH)
}
