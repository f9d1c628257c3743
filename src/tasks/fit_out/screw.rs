//! Wood screws, the lengths they are sold in, and which length goes into which stack of boards.
//!
//! Sizes, drills and rules of length: common practice, no source, unless another word stands beside them.

use crate::units::{Length, Unit};

/// A thickness of wood screw.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub struct Gauge {
    /// The trade's number.
    pub number: u8,
    /// Outside the thread: 0.060 in + 0.013 in for each number, from memory; the numbers of the outside checks agree.
    pub diameter: Length,
    /// The drill for its pilot hole: six tenths of the thread.
    pub pilot: Length,
    /// The drill in sixty-fourths of an inch.
    pub pilot_64ths: i64,
}

/// The screws that are used, the thinnest first.
pub const GAUGES: [Gauge; 3] = [
    Gauge { number: 6, diameter: Length::nm(3_500_000), pilot: Length::mm(2), pilot_64ths: 5 },
    Gauge {
        number: 8,
        diameter: Length::nm(4_170_000),
        pilot: Length::nm(2_500_000),
        pilot_64ths: 6,
    },
    Gauge { number: 10, diameter: Length::nm(4_830_000), pilot: Length::mm(3), pilot_64ths: 7 },
];

/// A length that screws are sold in, as each system of units calls it.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub struct Sold {
    /// In whole millimetres.
    pub mm: i64,
    /// In eighths of an inch.
    pub eighths: i64,
}

/// The lengths that are used, the shortest first: few, so that few boxes are bought.
pub const LENGTHS: [Sold; 7] = [
    Sold { mm: 13, eighths: 4 },
    Sold { mm: 16, eighths: 5 },
    Sold { mm: 19, eighths: 6 },
    Sold { mm: 25, eighths: 8 },
    Sold { mm: 32, eighths: 10 },
    Sold { mm: 51, eighths: 16 },
    Sold { mm: 76, eighths: 24 },
];

impl Sold {
    /// Its length.
    pub const fn length(self) -> Length {
        Length::mm(self.mm)
    }
    /// The word for it in the user's units.
    pub fn told(self, unit: Unit) -> String {
        if unit.imperial() {
            crate::units::show_length(Length::nm(self.eighths * 3_175_000), Unit::In)
        } else {
            format!("{} mm", self.mm)
        }
    }
}

/// What must be left of the last board behind the point of a screw.
pub const COVER: Length = Length::mm(2);
/// How far a screw that joins boards goes into the last of them, at least.
pub const BITE: Length = Length::mm(12);

/// Why a screw does not go into a stack of boards.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Refusal {
    /// Its point comes out, or nearly, at the far side: by so much too long.
    PokesThrough(Length),
    /// It hardly reaches the last board: by so much too short.
    TooShort(Length),
}

/// Whether a screw driven in flush joins boards of those thicknesses, the near one first.
///
/// # Errors
/// Why it does not.
pub fn joins(screw: Length, boards: &[Length]) -> Result<(), Refusal> {
    let last = boards.last().copied().unwrap_or_default();
    let all: Length = boards.iter().copied().sum();
    let most = all - COVER;
    let least = all - last + BITE.min(last.half());
    if screw > most {
        Err(Refusal::PokesThrough(screw - most))
    } else if screw < least {
        Err(Refusal::TooShort(least - screw))
    } else {
        Ok(())
    }
}

/// The lengths that join boards of those thicknesses, the shortest first.
pub fn joining(boards: &[Length]) -> Vec<Sold> {
    LENGTHS.into_iter().filter(|s| joins(s.length(), boards).is_ok()).collect()
}

/// The lengths that hold something thin of that thickness on a board, or on boards that lie on one another, without
/// coming out behind.
pub fn holding(thin: Length, boards: Length) -> Vec<Sold> {
    let fits = |s: &Sold| s.length() > thin && s.length() - thin <= boards - COVER;
    LENGTHS.into_iter().filter(fits).collect()
}

/// How a hole in the edge of a board is made.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct EdgeHole {
    /// How far from either face of the board its middle sits.
    pub from_face: Length,
    /// The drill for its pilot, which an edge never goes without.
    pub pilot: Length,
}

/// The hole for a screw in the edge of a board; `None` where the board is under three and a half screws thick and splits.
pub fn in_edge(board: Length, gauge: &Gauge) -> Option<EdgeHole> {
    let enough = board * 2 >= gauge.diameter * 7;
    enough.then_some(EdgeHole { from_face: board.half(), pilot: gauge.pilot })
}

/// A screw of one gauge and length.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub struct Screw {
    /// How thick.
    pub gauge: Gauge,
    /// How long.
    pub sold: Sold,
}

impl Screw {
    /// Its name in the user's units: `No. 8 × 32 mm`.
    pub fn told(&self, unit: Unit) -> String {
        format!("No. {} × {}", self.gauge.number, self.sold.told(unit))
    }
    /// The drill for its pilot hole in the user's units.
    pub fn drill(&self, unit: Unit) -> String {
        self.gauge.drill(unit)
    }
}

impl Gauge {
    /// The drill for its pilot hole in the user's units: to half a millimetre or a sixty-fourth of an inch.
    pub fn drill(&self, unit: Unit) -> String {
        if unit.imperial() {
            let (mut over, mut under) = (self.pilot_64ths, 64);
            while over % 2 == 0 {
                (over, under) = (over / 2, under / 2);
            }
            format!("{over}/{under} in")
        } else {
            crate::units::show_length(self.pilot, Unit::Mm)
        }
    }
}
