//! Whole-number ratios: decimals and fractions without a binary rounding.

/// A ratio of nought or more. `None` from its arithmetic means too large.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) struct Ratio {
    over: i128,
    under: i128,
}

impl Ratio {
    pub(super) const fn new(over: i128, under: i128) -> Ratio {
        Ratio { over, under }
    }
    pub(super) fn times(self, factor: i64) -> Option<Ratio> {
        Some(Ratio::new(self.over.checked_mul(factor.into())?, self.under))
    }
    pub(super) fn by(self, other: Ratio) -> Option<Ratio> {
        let over = self.over.checked_mul(other.over)?;
        Some(Ratio::new(over, self.under.checked_mul(other.under)?))
    }
    pub(super) fn plus(self, other: Ratio) -> Option<Ratio> {
        let left = self.over.checked_mul(other.under)?;
        let right = other.over.checked_mul(self.under)?;
        Some(Ratio::new(left.checked_add(right)?, self.under.checked_mul(other.under)?))
    }
    /// The nearest whole number, halves away from nought.
    pub(super) fn rounded(self) -> Option<i64> {
        let doubled = self.over.checked_mul(2)?.checked_add(self.under)?;
        i64::try_from(doubled / self.under.checked_mul(2)?).ok()
    }
}

/// Digits with so many of them behind the point, times a power of ten.
pub(super) fn decimal_ratio(digits: &str, behind: usize, power: i32) -> Option<Ratio> {
    let digits = digits.trim_start_matches('0');
    if digits.is_empty() {
        return Some(Ratio::new(0, 1));
    }
    let over: i128 = digits.parse().ok()?;
    let shift = power.checked_sub(i32::try_from(behind).ok()?)?;
    let scale = 10i128.checked_pow(shift.unsigned_abs())?;
    if shift < 0 {
        Some(Ratio::new(over, scale))
    } else {
        Some(Ratio::new(over.checked_mul(scale)?, 1))
    }
}
