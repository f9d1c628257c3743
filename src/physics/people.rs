//! Measured people: heights and reaches by sex and percentile.
//!
//! Source: ANSUR II, the 2012 survey of US Army personnel (report NATICK/TR-15/007, approved for public release, US
//! government work), 1986 women and 4082 men, unshod, public data files. Each measure was formed person by person and
//! then ranked, for percentiles of parts do not add up: all values in order, the percentile p at the place (n − 1)·p/100
//! counted from nought, linear between two neighbours. The tables keep every percentile up to 10 and from 90 up and each
//! fifth between; in between, linear, they are within 3 mm of the data. Soldiers are fit and 17 to 58 years old; hardly
//! any are very old or disabled.

use crate::units::Length;

/// Whose measurements.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Sex {
    /// Women.
    Female,
    /// Men.
    Male,
}

/// What is measured, standing and unshod; heights are over the floor.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Measure {
    /// The whole body.
    Stature,
    /// The eye: stature − sitting height + sitting eye height.
    Eye,
    /// The shoulder (acromion).
    Shoulder,
    /// The elbow: shoulder − upper arm (acromion to radiale).
    Elbow,
    /// The grip of the hanging arm: elbow − forearm to the centre of the grip.
    Knuckle,
    /// The middle of the kneecap.
    Knee,
    /// The highest grip: stature − sitting height + sitting overhead fingertip reach, less 60 % of the hand's length,
    /// which closes round a thing (one reference gives that figure).
    OverheadGrip,
    /// The arm before the chest: thumb tip reach from a wall behind the back − depth of the chest.
    Arm,
}

/// How many measures there are.
const MEASURES: usize = 8;

impl Measure {
    /// All measures, in the order of the tables.
    pub const ALL: [Measure; MEASURES] = [
        Measure::Stature,
        Measure::Eye,
        Measure::Shoulder,
        Measure::Elbow,
        Measure::Knuckle,
        Measure::Knee,
        Measure::OverheadGrip,
        Measure::Arm,
    ];

    /// Its mean share of stature in ten thousandths, women and men: each ratio formed person by person, then the mean.
    const fn shares(self) -> [i64; 2] {
        match self {
            Measure::Stature => [10_000, 10_000],
            Measure::Eye => [9_331, 9_352],
            Measure::Shoulder => [8_198, 8_203],
            Measure::Elbow => [6_287, 6_294],
            Measure::Knuckle => [4_336, 4_307],
            Measure::Knee => [2_756, 2_780],
            Measure::OverheadGrip => [12_113, 12_233],
            Measure::Arm => [3_049, 3_177],
        }
    }
}

/// Stature where nothing is said: the mean of the medians of women (1626 mm) and men (1755 mm).
pub const DEFAULT: Length = Length::nm(1_690_500_000);

/// What people of a stature measure on the average; the mean of women and men, who differ by at most 1.3 % of stature,
/// where the sex is not said.
pub fn of_stature(measure: Measure, sex: Option<Sex>, stature: Length) -> Length {
    let [women, men] = measure.shares();
    let ten_thousandths = match sex {
        Some(Sex::Female) => women,
        Some(Sex::Male) => men,
        None => (women + men + 1) / 2,
    };
    Length::nm(stature.as_nm() / 10_000 * ten_thousandths)
}

/// A measure at its own percentile from 1 to 99 (others count as the nearest of these); the mean of women and men where
/// the sex is not said.
pub fn of_percentile(measure: Measure, sex: Option<Sex>, percentile: u8) -> Length {
    let table = match sex {
        Some(Sex::Female) => &WOMEN,
        Some(Sex::Male) => &MEN,
        None => {
            let of = |sex| of_percentile(measure, Some(sex), percentile);
            return (of(Sex::Female) + of(Sex::Male)).half();
        }
    };
    let row = &table[measure as usize];
    let asked = percentile.clamp(1, 99);
    let next = PERCENTILES.partition_point(|p| *p < asked);
    let tenth = |column: usize| i64::from(row[column]) * 100_000;
    if PERCENTILES[next] == asked {
        return Length::nm(tenth(next));
    }
    let (from, to) = (i64::from(PERCENTILES[next - 1]), i64::from(PERCENTILES[next]));
    let rise = tenth(next) - tenth(next - 1);
    Length::nm(tenth(next - 1) + rise * (i64::from(asked) - from) / (to - from))
}

/// How many columns a table has.
const COLUMNS: usize = 35;

/// The percentiles of the columns.
#[rustfmt::skip]
const PERCENTILES: [u8; COLUMNS] = [
    1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 15, 20, 25, 30, 35, 40, 45, 50,
    55, 60, 65, 70, 75, 80, 85, 90, 91, 92, 93, 94, 95, 96, 97, 98, 99,
];

/// Women, in tenths of a millimetre: a row for each of [`Measure::ALL`], a column for each of [`PERCENTILES`].
#[rustfmt::skip]
const WOMEN: [[u16; COLUMNS]; MEASURES] = [
    [
        14826, 14987, 15096, 15190, 15250, 15300, 15340, 15390, 15430, 15470, 15630, 15750, 15863, 15950, 16030, 16110, 16173, 16260,
        16340, 16430, 16530, 16610, 16720, 16810, 16960, 17130, 17174, 17200, 17280, 17320, 17400, 17450, 17520, 17646, 17776,
    ],
    [
        13789, 13920, 14046, 14144, 14213, 14260, 14290, 14340, 14380, 14420, 14560, 14700, 14790, 14880, 14950, 15010, 15100, 15170,
        15260, 15340, 15423, 15510, 15610, 15710, 15830, 16010, 16050, 16090, 16150, 16189, 16260, 16316, 16410, 16513, 16600,
    ],
    [
        12019, 12190, 12280, 12354, 12420, 12450, 12500, 12550, 12580, 12620, 12760, 12890, 12980, 13060, 13140, 13190, 13250, 13320,
        13388, 13470, 13560, 13640, 13740, 13830, 13943, 14110, 14180, 14202, 14250, 14280, 14338, 14396, 14500, 14590, 14730,
    ],
    [
        9219, 9330, 9426, 9470, 9510, 9550, 9580, 9600, 9630, 9660, 9770, 9870, 9943, 10010, 10060, 10110, 10160, 10220,
        10280, 10330, 10400, 10470, 10530, 10610, 10710, 10830, 10864, 10890, 10940, 10979, 11000, 11066, 11130, 11200, 11322,
    ],
    [
        6259, 6347, 6410, 6440, 6480, 6510, 6540, 6558, 6577, 6590, 6690, 6770, 6820, 6880, 6920, 6970, 7010, 7060,
        7100, 7140, 7190, 7245, 7300, 7360, 7430, 7530, 7550, 7570, 7590, 7629, 7660, 7690, 7750, 7800, 7932,
    ],
    [
        3900, 3967, 4020, 4050, 4080, 4100, 4130, 4140, 4150, 4170, 4240, 4280, 4320, 4350, 4380, 4420, 4450, 4480,
        4510, 4540, 4580, 4620, 4660, 4710, 4770, 4820, 4843, 4860, 4880, 4910, 4930, 4956, 4990, 5043, 5132,
    ],
    [
        17616, 17798, 17971, 18115, 18234, 18322, 18368, 18440, 18503, 18570, 18769, 18936, 19096, 19235, 19358, 19466, 19589, 19693,
        19810, 19924, 20053, 20178, 20358, 20538, 20743, 20994, 21041, 21119, 21202, 21279, 21350, 21403, 21535, 21624, 21848,
    ],
    [
        3974, 4107, 4186, 4228, 4283, 4320, 4350, 4370, 4400, 4420, 4530, 4600, 4660, 4730, 4790, 4850, 4900, 4950,
        5010, 5070, 5120, 5190, 5260, 5340, 5420, 5530, 5560, 5590, 5620, 5670, 5700, 5760, 5810, 5870, 5970,
    ],
];

/// Men, in tenths of a millimetre: a row for each of [`Measure::ALL`], a column for each of [`PERCENTILES`].
#[rustfmt::skip]
const MEN: [[u16; COLUMNS]; MEASURES] = [
    [
        16016, 16210, 16340, 16400, 16480, 16530, 16570, 16610, 16650, 16690, 16850, 16990, 17100, 17200, 17290, 17380, 17450, 17550,
        17640, 17730, 17820, 17910, 18020, 18130, 18270, 18440, 18480, 18530, 18580, 18630, 18700, 18788, 18900, 19044, 19270,
    ],
    [
        14920, 15116, 15224, 15310, 15361, 15430, 15470, 15510, 15540, 15570, 15730, 15870, 15990, 16070, 16160, 16244, 16320, 16400,
        16490, 16590, 16677, 16770, 16858, 16960, 17110, 17270, 17320, 17360, 17400, 17461, 17530, 17610, 17706, 17870, 18090,
    ],
    [
        12968, 13120, 13260, 13330, 13390, 13460, 13490, 13530, 13570, 13610, 13750, 13880, 13980, 14083, 14160, 14240, 14320, 14390,
        14470, 14556, 14640, 14730, 14810, 14930, 15050, 15210, 15250, 15290, 15340, 15400, 15460, 15550, 15650, 15774, 15962,
    ],
    [
        9910, 10050, 10140, 10210, 10250, 10309, 10340, 10370, 10393, 10420, 10530, 10630, 10710, 10780, 10860, 10924, 10980, 11040,
        11110, 11180, 11240, 11310, 11380, 11468, 11560, 11700, 11730, 11760, 11800, 11840, 11900, 11960, 12060, 12160, 12282,
    ],
    [
        6680, 6770, 6830, 6870, 6920, 6960, 7000, 7030, 7040, 7070, 7160, 7230, 7290, 7350, 7400, 7460, 7510, 7560,
        7610, 7660, 7710, 7760, 7830, 7890, 7970, 8070, 8090, 8120, 8150, 8190, 8220, 8270, 8330, 8410, 8502,
    ],
    [
        4280, 4340, 4380, 4410, 4431, 4460, 4480, 4495, 4510, 4520, 4600, 4650, 4690, 4730, 4770, 4810, 4840, 4870,
        4910, 4950, 4980, 5020, 5070, 5120, 5170, 5250, 5267, 5280, 5300, 5330, 5360, 5400, 5440, 5500, 5562,
    ],
    [
        19268, 19500, 19658, 19782, 19868, 19954, 20015, 20076, 20122, 20196, 20438, 20636, 20811, 20980, 21102, 21225, 21347, 21474,
        21596, 21715, 21854, 21990, 22131, 22304, 22534, 22770, 22822, 22889, 22961, 23052, 23156, 23269, 23414, 23650, 23917,
    ],
    [
        4678, 4760, 4830, 4880, 4920, 4960, 4990, 5010, 5040, 5060, 5150, 5220, 5280, 5340, 5410, 5470, 5520, 5570,
        5620, 5670, 5730, 5790, 5858, 5920, 6010, 6140, 6160, 6190, 6220, 6251, 6290, 6350, 6406, 6490, 6650,
    ],
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_measure_rises_with_its_percentile() {
        for measure in Measure::ALL {
            for sex in [Some(Sex::Female), Some(Sex::Male), None] {
                let at = |p| of_percentile(measure, sex, p);
                assert!((1..99).all(|p| at(p) <= at(p + 1)), "{measure:?} {sex:?}");
                assert_eq!((at(0), at(255)), (at(1), at(99)));
            }
        }
    }

    #[test]
    fn between_two_columns_a_percentile_is_linear() {
        let at = |p| of_percentile(Measure::Stature, Some(Sex::Female), p);
        assert_eq!(at(12), at(10) + Length::nm((at(15) - at(10)).as_nm() * 2 / 5));
        assert_eq!(at(10), Length::nm(1_547_000_000));
    }

    #[test]
    fn without_a_sex_it_is_the_mean_of_both() {
        for measure in Measure::ALL {
            let [women, men, both] =
                [Some(Sex::Female), Some(Sex::Male), None].map(|s| of_percentile(measure, s, 5));
            assert_eq!(both, (women + men).half());
            let [women, men, both] = [Some(Sex::Female), Some(Sex::Male), None]
                .map(|s| of_stature(measure, s, Length::mm(1700)).as_mm());
            assert!((both - (women + men) / 2.0).abs() < 0.1);
        }
    }

    /// Of women the eye is at 0.9331, of men at 0.9352 of stature: 0.93415, which is 0.9342 in ten thousandths.
    #[test]
    fn half_a_ten_thousandth_of_stature_counts_as_a_whole_one() {
        assert_eq!(of_stature(Measure::Eye, None, Length::mm(1_000)), Length::nm(934_200_000));
    }
}
