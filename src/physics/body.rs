//! Where a person's hand gets to, and what that costs.

use super::motion::{self, Move, Reach, bend_and_arise, kneel_and_arise};
use super::people::{self, Measure, Sex};
use crate::units::{Length, Mass, Time};

/// A shoe's sole, common practice, no source: the people measured were unshod.
pub const SHOE: Length = Length::mm(25);

/// What leaning in adds to the arm, up to the height of the elbow; common practice, no source.
pub const LEAN: Length = Length::mm(300);

/// The reach from the standing place to the face that every fetch has anyhow: what lies beyond it is extra.
pub const NEAREST_REACH: Length = Length::mm(400);

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
    /// Thumb tip before the chest, arm stretched out level; seated, how deep the whole band is reached.
    pub arm: Length,
    /// Whether they fetch seated.
    pub seated: bool,
}

/// Where a hand goes to take a thing.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Grip {
    /// Of the hand, over the floor.
    pub height: Length,
    /// Behind the face that the person stands before.
    pub depth: Length,
    /// Height over the floor of what the hand reaches over.
    pub sill: Length,
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

impl Body {
    /// A standing person of an unshod stature, built as people of that stature are on the average.
    pub fn standing(stature: Length, sex: Option<Sex>) -> Body {
        Body::shod(|measure| people::of_stature(measure, sex, stature))
    }

    /// A standing person each of whose measures is at that percentile, 1 to 99, of its own: that share of people is no
    /// taller, and that share reaches no farther. The mean of women and men where the sex is not said.
    pub fn of_percentile(sex: Option<Sex>, percentile: u8) -> Body {
        Body::shod(|measure| people::of_percentile(measure, sex, percentile))
    }

    /// A standing person from measures that were taken unshod.
    fn shod(of: impl Fn(Measure) -> Length) -> Body {
        let over_floor = |measure| of(measure) + SHOE;
        Body {
            crown: over_floor(Measure::Stature),
            eye: over_floor(Measure::Eye),
            shoulder: over_floor(Measure::Shoulder),
            elbow: over_floor(Measure::Elbow),
            knuckle: over_floor(Measure::Knuckle),
            knee: over_floor(Measure::Knee),
            overhead_grip: over_floor(Measure::OverheadGrip),
            arm: of(Measure::Arm),
            seated: false,
        }
    }

    /// A person in a wheelchair: the band of the accessibility standard, 380 to 1220 mm, whatever the stature.
    ///
    /// Eye, shoulder and elbow over the seat are the mean of the medians of women and men in ANSUR II (748 / 804,
    /// 564 / 603, 253 / 268 mm, computed from the data); the crown likewise (857 / 918 mm, from memory).
    pub fn seated() -> Body {
        Body {
            crown: SEAT + Length::mm(888),
            eye: SEAT + Length::mm(776),
            shoulder: SEAT + Length::nm(583_500_000),
            elbow: SEAT + Length::nm(260_500_000),
            knuckle: seated::LOWEST,
            knee: seated::LOWEST,
            overhead_grip: seated::HIGHEST,
            arm: seated::NEAR,
            seated: true,
        }
    }

    /// How a grip is reached.
    ///
    /// Standing: knuckle to shoulder easy, knee to knuckle bent, below on both knees, above the shoulder stretched up to
    /// the highest grip. Deeper than the arm: leaned in, a stretch upright and kneeling below; deeper than arm and
    /// lean: out. Seated: the standard's ranges, never bent nor kneeling.
    pub fn posture(&self, grip: &Grip) -> Posture {
        match self.seated {
            true => seated::posture(grip),
            false => self.standing_posture(grip.height, grip.depth),
        }
    }

    fn standing_posture(&self, height: Length, depth: Length) -> Posture {
        if height > self.shoulder {
            return if self.stretches_to(height, depth) { Posture::Stretch } else { Posture::Out };
        }
        match (depth > self.arm, depth > self.arm + self.lean(height)) {
            (_, true) => Posture::Out,
            // Nobody leans deep into a low opening on their feet.
            (true, _) if height < self.knuckle => Posture::Kneel,
            (true, _) => Posture::Stretch,
            _ if height >= self.knuckle => Posture::Easy,
            _ if height >= self.knee => Posture::Bend,
            _ => Posture::Kneel,
        }
    }

    /// How far a body leans in towards a grip: all the way up to the elbow's height, then less, and not at all at the
    /// shoulder's, for whoever leans from the hips brings the shoulder down (our own choice).
    fn lean(&self, height: Length) -> Length {
        let (room, whole) = (self.shoulder - height, self.shoulder - self.elbow);
        if room >= whole {
            return LEAN;
        }
        // Micrometres, so that no product overflows.
        let [room, whole] = [room, whole].map(|l| l.as_nm().max(0) / 1_000);
        Length::nm(LEAN.as_nm() / 1_000 * room / whole.max(1) * 1_000)
    }

    /// Whether a raised arm gets there: a quarter ellipse about the shoulder, straight up to the highest grip and
    /// straight in to the arm's end.
    fn stretches_to(&self, height: Length, depth: Length) -> bool {
        let part = |length: Length, whole: Length| {
            length.as_nm().max(0) as f64 / whole.as_nm().max(1) as f64
        };
        let up = part(height - self.shoulder, self.overhead_grip - self.shoulder);
        let deep = part(depth, self.arm);
        up * up + deep * deep <= 1.0
    }

    /// Time of a fetch (taken and put back) beyond one at the face in the easy band, with so much in the hand; out of
    /// reach counts on by the same rule, so that farther is never cheaper.
    ///
    /// Down and up again twice where the posture asks for it, and 2 × (reach + move) over the depth and the height
    /// over the shoulder, beyond the nearest reach. A bend or kneel brings the hand down with the body, so the depth
    /// of a low place alone counts.
    pub fn extra(&self, grip: &Grip, in_hand: Mass) -> Time {
        let over = (grip.height - self.easy_top()).max(Length::ZERO) + grip.depth.max(Length::ZERO);
        (self.lowering(grip) + farther(over, in_hand)) * 2
    }

    /// The upper end of the easy band.
    fn easy_top(&self) -> Length {
        if self.seated { self.overhead_grip } else { self.shoulder }
    }

    /// Down and up again, once.
    fn lowering(&self, grip: &Grip) -> Time {
        match grip.height {
            _ if self.seated || grip.height >= self.knuckle => Time::ZERO,
            height if height >= self.knee && grip.depth <= self.arm => bend_and_arise(),
            _ => kneel_and_arise(),
        }
    }
}

/// Reach in and move out again over `over` beyond the nearest reach, with nothing and with so much in the hand.
fn farther(over: Length, in_hand: Mass) -> Time {
    let once = |distance| {
        motion::reach(Reach::Single, distance) + motion::moved(Move::Near, distance, in_hand)
    };
    once(NEAREST_REACH + over) - once(NEAREST_REACH)
}

/// The reach ranges of the accessibility standard (2010 ADA Standards 308, read).
///
/// One comes up to a cart facing it (308.2) or beside it (308.3). To reach far in facing it the standard asks for room
/// for the knees below, which a cart has not, and beside it there must be floor to stand along it. So a place counts as
/// within reach where both ranges hold it.
mod seated {
    use super::{Grip, Length, Posture};

    /// Lowest grip, either way: 15 in (308.2.1, 308.3.1).
    pub const LOWEST: Length = Length::mm(380);
    /// Highest grip, either way: 48 in (308.2.1, 308.3.1).
    pub const HIGHEST: Length = Length::mm(1220);
    /// Depth up to which the whole band is reached: 10 in from the side (308.3.1).
    pub const NEAR: Length = Length::mm(255);
    /// Depth beyond which nothing is reached: 24 in from the side (308.3.2).
    const DEEPEST: Length = Length::mm(610);
    /// Highest grip beyond [`NEAR`]: 46 in from the side (308.3.2).
    const HIGHEST_BESIDE: Length = Length::mm(1170);
    /// What one reaches over from the side beyond [`NEAR`] is at most 34 in high (308.3.2).
    const SILL: Length = Length::mm(864);
    /// Depth beyond which facing it, over what is in the way, one reaches less high: 20 in (308.2.2).
    const FACING: Length = Length::mm(510);
    /// Highest grip beyond [`FACING`]: 44 in (308.2.2).
    const HIGHEST_FACING: Length = Length::mm(1120);

    pub fn posture(grip: &Grip) -> Posture {
        let Grip { height, depth, sill } = *grip;
        if height < LOWEST || height > HIGHEST || depth > DEEPEST {
            return Posture::Out;
        }
        let highest = if depth > FACING { HIGHEST_FACING } else { HIGHEST_BESIDE };
        match depth > NEAR {
            false => Posture::Easy,
            true if height > highest || sill > SILL => Posture::Out,
            true => Posture::Stretch,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_posture_has_its_word() {
        let words = Posture::ALL.map(Posture::name);
        assert_eq!(words, ["easy", "bend", "kneel", "stretch", "out"]);
    }

    /// Seated medians of women and men over the seat, and the seat over the floor, all in mm.
    #[test]
    fn a_seated_body_stands_on_its_seat() {
        let seated = Body::seated();
        for (what, height, [women, men]) in [
            ("crown", seated.crown, [857.0, 918.0]),
            ("eye", seated.eye, [748.0, 804.0]),
            ("shoulder", seated.shoulder, [564.0, 603.0]),
            ("elbow", seated.elbow, [253.0, 268.0]),
        ] {
            let expected = 485.0 + (women + men) / 2.0;
            assert!((height.as_mm() - expected).abs() <= 0.5, "{what}: {} mm", height.as_mm());
        }
    }

    /// Halfway between elbow and shoulder half the lean is left, 150 mm, also for a body hundreds of metres high.
    #[test]
    fn no_size_of_body_is_too_great_to_lean() {
        for size in [1_i64, 1_000] {
            let high = |mm: i64| Length::mm(mm * size);
            let body = Body {
                shoulder: high(1400),
                elbow: high(1000),
                arm: Length::mm(600),
                ..Body::standing(Length::mm(1700), None)
            };
            let at = |mm| {
                let depth = Length::mm(mm);
                body.posture(&Grip { height: high(1200), depth, sill: Length::ZERO })
            };
            assert_eq!([600, 750, 751].map(at), [Posture::Easy, Posture::Stretch, Posture::Out]);
        }
    }
}
