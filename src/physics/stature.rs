//! Body heights of people by percentile.
//!
//! Source: ANSUR II, the 2012 survey of US Army personnel (report NATICK/TR-15/007, approved for public release, US
//! government work), 1986 women and 4082 men, unshod. The tables were computed from the public data files: all
//! statures in order, the percentile p at the place (n − 1)·p/100 counted from nought, linear between two neighbours.
//! Soldiers are fit and 17 to 58 years old; hardly any are very old or disabled.

use crate::units::Length;

/// Whose measurements.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Sex {
    /// Women.
    Female,
    /// Men.
    Male,
}

/// Stature where nothing is said: the mean of the medians of women (1626 mm) and men (1755 mm).
pub const DEFAULT: Length = Length::nm(1_690_500_000);

/// Unshod stature at a percentile from 1 to 99 (others count as the nearest of these); the mean of women and men where
/// the sex is not said.
pub fn of_percentile(sex: Option<Sex>, percentile: u8) -> Length {
    let row = usize::from(percentile.clamp(1, 99) - 1);
    let hundredths = match sex {
        Some(Sex::Female) => i64::from(WOMEN[row]),
        Some(Sex::Male) => i64::from(MEN[row]),
        None => {
            return (of_percentile(Some(Sex::Female), percentile)
                + of_percentile(Some(Sex::Male), percentile))
            .half();
        }
    };
    Length::nm(hundredths * 10_000)
}

/// Stature of women at the percentiles 1 to 99, in hundredths of a millimetre.
#[rustfmt::skip]
const WOMEN: [u32; 99] = [
    148_255, 149_870, 150_955, 151_900, 152_500, 153_000, 153_400, 153_900, 154_300, 154_700,
    155_200, 155_620, 155_900, 156_100, 156_300, 156_600, 156_800, 157_100, 157_300, 157_500,
    157_800, 158_200, 158_300, 158_500, 158_625, 158_800, 159_000, 159_100, 159_300, 159_500,
    159_600, 159_800, 159_900, 160_090, 160_300, 160_400, 160_600, 160_800, 160_900, 161_100,
    161_200, 161_400, 161_500, 161_600, 161_725, 161_900, 162_000, 162_300, 162_500, 162_600,
    162_800, 162_900, 163_100, 163_200, 163_400, 163_600, 163_700, 163_900, 164_100, 164_300,
    164_500, 164_600, 164_800, 165_000, 165_300, 165_400, 165_600, 165_800, 165_900, 166_100,
    166_300, 166_500, 166_705, 167_000, 167_200, 167_360, 167_500, 167_600, 167_900, 168_100,
    168_300, 168_500, 168_800, 169_000, 169_600, 169_900, 170_295, 170_580, 170_900, 171_300,
    171_735, 172_000, 172_800, 173_200, 174_000, 174_500, 175_200, 176_460, 177_760,
];

/// Stature of men at the percentiles 1 to 99, in hundredths of a millimetre.
#[rustfmt::skip]
const MEN: [u32; 99] = [
    160_162, 162_100, 163_400, 164_000, 164_800, 165_300, 165_700, 166_100, 166_500, 166_900,
    167_300, 167_500, 167_900, 168_100, 168_500, 168_700, 168_977, 169_300, 169_600, 169_900,
    170_200, 170_400, 170_600, 170_800, 171_000, 171_200, 171_400, 171_600, 171_800, 172_000,
    172_200, 172_300, 172_500, 172_700, 172_900, 173_000, 173_300, 173_500, 173_600, 173_800,
    173_921, 174_000, 174_300, 174_400, 174_500, 174_726, 174_900, 175_100, 175_300, 175_500,
    175_700, 175_900, 176_100, 176_300, 176_400, 176_600, 176_717, 177_000, 177_200, 177_300,
    177_400, 177_700, 177_900, 178_000, 178_200, 178_400, 178_500, 178_708, 178_900, 179_100,
    179_300, 179_500, 179_800, 180_000, 180_200, 180_400, 180_500, 180_800, 181_000, 181_300,
    181_500, 181_800, 182_100, 182_300, 182_700, 183_000, 183_300, 183_600, 184_000, 184_400,
    184_800, 185_300, 185_800, 186_300, 187_000, 187_876, 189_000, 190_438, 192_700,
];
