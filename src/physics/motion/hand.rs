//! Grasping, positioning and turning what the hand holds.

use super::tenths;
use crate::units::{Length, Mass, Time};

/// How a thing is grasped (read in a poor scan of a textbook's MTM-1 table 14.4 b, where nothing else is said).
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Grasp {
    /// G1A: a single thing, picked up easily.
    Easy,
    /// G1B: very small, or flat on the deck.
    Flat,
    /// G1C: a cylinder of this diameter that others lie against.
    Cylinder(Length),
    /// G2 and G3: grasped anew, or taken over from the other hand (from memory; the scan is illegible).
    Again,
    /// G4: jumbled with others, of about this greatest side (G4B and G4C from memory).
    Jumbled(Length),
    /// G5: touched, hooked or slid.
    Contact,
}

/// Time of a grasp.
pub fn grasp(grasp: Grasp) -> Time {
    tenths(match grasp {
        Grasp::Easy => 20,
        Grasp::Flat => 35,
        Grasp::Cylinder(across) if across > Length::mm(13) => 73,
        Grasp::Cylinder(across) if across >= Length::mm(6) => 87,
        Grasp::Cylinder(_) => 108,
        Grasp::Again => 56,
        Grasp::Jumbled(side) if side > Length::mm(25) => 73,
        Grasp::Jumbled(side) if side >= Length::mm(6) => 91,
        Grasp::Jumbled(_) => 129,
        Grasp::Contact => 0,
    })
}

/// In how many ways round a thing goes into its place.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Symmetry {
    /// Any.
    Any,
    /// Some.
    Some,
    /// One.
    One,
}

/// Placing a thing loosely (class of fit 1), easy or awkward to handle: P1 (all from memory).
pub fn position(symmetry: Symmetry, awkward: bool) -> Time {
    tenths(match (symmetry, awkward) {
        (Symmetry::Any, false) => 56,
        (Symmetry::Any, true) => 112,
        (Symmetry::Some, false) => 91,
        (Symmetry::Some, true) => 147,
        (Symmetry::One, false) => 104,
        (Symmetry::One, true) => 160,
    })
}

/// Turning the hand by 30, 45 … 180°, empty or with up to 1 kg, up to 5 kg, up to 16 kg, in tenths of a TMU (MTM-1 data
/// card 2019, read).
const TURNS: [[i64; 11]; 3] = [
    [28, 35, 41, 48, 54, 61, 68, 74, 81, 87, 94],
    [44, 55, 65, 75, 85, 96, 106, 116, 127, 137, 148],
    [84, 105, 123, 144, 162, 183, 204, 222, 243, 261, 282],
];

/// Turning the hand about the forearm by whole degrees: linear between rows; less than 30° counts as 30, more than 180 as
/// 180, and more than 16 kg as that (the card ends there).
pub fn turn(degrees: u32, in_hand: Mass) -> Time {
    let class = usize::from(in_hand > Mass::kg(1)) + usize::from(in_hand > Mass::kg(5));
    let beyond = i64::from(degrees.clamp(30, 180)) - 30;
    let row = (beyond / 15) as usize;
    let [from, to] = [row, (row + 1).min(10)].map(|r| tenths(TURNS[class][r]).as_us());
    Time::us(from + (to - from) * (beyond % 15) / 15)
}
