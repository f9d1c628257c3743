//! Lengths folded so that what cannot stand side by side is seen to be too much.
//!
//! Three things of 0.4 of a shelf's length seem to need 1.2 of it; two of 0.6 seem to need 1.2 as well, but two of 0.4 and
//! one of 0.2 fit exactly. Folding by halves counts all above one half as a whole and all below as nothing: whatever
//! lengths fit side by side, their folded lengths still add up to no more than the whole. The same in two or three
//! dimensions: where boxes do not overlap, the sum of products of folded lengths is no more than one (dual feasible
//! functions and conservative scales, Fekete and Schepers 2004, from memory).

use crate::units::Length;

/// How a length is folded.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum Fold {
    /// Not at all.
    Plain,
    /// Into so many and one more equal parts, of which it must cover whole ones to count.
    Parts(i64),
}

impl Fold {
    /// All that are used.
    pub const ALL: [Fold; 4] = [Fold::Plain, Fold::Parts(1), Fold::Parts(2), Fold::Parts(3)];

    /// What a length counts of a whole, 0 to 1.
    pub fn of(self, part: Length, whole: Length) -> f64 {
        let (part, whole) = (i128::from(part.as_nm()), i128::from(whole.as_nm()));
        let plain = part as f64 / whole as f64;
        match self {
            Fold::Plain => plain,
            Fold::Parts(k) if part * i128::from(k + 1) % whole == 0 => plain,
            Fold::Parts(k) => (part * i128::from(k + 1) / whole) as f64 / k as f64,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_fits_side_by_side_still_fits_when_folded() {
        let whole = Length::mm(60);
        for fold in Fold::ALL {
            for a in 1..=60 {
                for b in 0..=60 - a {
                    for c in 0..=60 - a - b {
                        let sum: f64 =
                            [a, b, c].iter().map(|&l| fold.of(Length::mm(l), whole)).sum();
                        assert!(sum <= 1.0 + 1e-12, "{fold:?}: {a} {b} {c}");
                    }
                }
            }
        }
    }
}
