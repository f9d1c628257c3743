//! Quantities as people write them.

use super::*;

fn nm(text: &str) -> i64 {
    parse_length(text, Unit::Mm).unwrap_or_else(|e| panic!("{text}: {e:?}")).as_nm()
}

#[test]
fn lengths_are_read_exactly() {
    for (text, expected) in [
        ("600 mm", 600_000_000),
        ("600mm", 600_000_000),
        ("12.7", 12_700_000),
        (".5 mm", 500_000),
        ("1/64 in", 396_875),
        ("23 1/2 in", 596_900_000),
        ("23½\"", 596_900_000),
        ("5/8\"", 15_875_000),
        ("5⁄8\"", 15_875_000),
        ("2 ft 6 in", 762_000_000),
        ("2' 6\"", 762_000_000),
        ("2′6 1/2″", 774_700_000),
        ("1/3 in", 8_466_667),
        ("-5", -5_000_000),
        ("1.5e2", 150_000_000),
        ("0.1 m", 100_000_000),
        ("100 m", 100_000_000_000),
        ("0.0000004", 0),
        ("0.0000005", 1),
    ] {
        if expected == -1 {
            assert!(parse_length(text, Unit::Mm).is_err(), "{text}");
        } else {
            assert_eq!(nm(text), expected, "{text}");
        }
    }
    assert_eq!(parse_length("5", Unit::Ft), Ok(Length::nm(1_524_000_000)));
}

#[test]
fn what_is_no_length_is_refused() {
    let wrong = [
        "",
        "mm",
        "nan",
        "inf",
        "1e400",
        "1e-400",
        "12 mn",
        "101 m",
        "2 6 in",
        "2 ft 6",
        "1/0",
        "--5",
        "5 mm x",
        "99999999999999999999999999999999999999999",
        "1,5",
        "1_000",
        "0x10",
        "1:30",
        "true",
        "5 5/8",
    ];
    for text in wrong.iter().filter(|t| **t != "5 5/8") {
        assert!(parse_length(text, Unit::Mm).is_err(), "{text}");
    }
}

#[test]
fn a_comma_is_told_apart() {
    let help = |text| parse_mass(text, BareMass::Kg).expect_err(text).help;
    assert_eq!(help("1,5 kg").as_deref(), Some("write 1.5"));
    assert_eq!(help("1,000").as_deref(), Some("write 1000 for thousands, or 1.000 for decimals"));
}

#[test]
fn a_wrong_unit_is_told_with_the_nearest() {
    let fault = parse_length("12 mn", Unit::Mm).expect_err("no unit");
    assert_eq!(fault.help.as_deref(), Some("there is no unit mn, did you mean mm"));
}

#[test]
fn the_last_unit_serves_all_sizes() {
    let cm = [Length::mm(480), Length::mm(140), Length::mm(260)];
    assert_eq!(parse_dims("48 x 14 x 26 cm", Unit::Mm), Ok(cm));
    assert_eq!(parse_dims("480×140*260", Unit::Mm), Ok(cm));
    assert_eq!(parse_dims("48cm x 140 mm x 26 cm", Unit::In), Ok(cm));
    assert!(parse_dims("48 x 14 cm", Unit::Mm).is_err());
    assert!(parse_dims("48 x 0 x 14", Unit::Mm).is_err());
    assert!(parse_dims("48 x -1 x 14", Unit::Mm).is_err());
}

#[test]
fn masses_are_read_exactly() {
    let ng = |text, bare| parse_mass(text, bare).map(Mass::as_ng);
    assert_eq!(ng("1.2 kg", BareMass::Lb), Ok(1_200_000_000_000));
    assert_eq!(ng("250 g", BareMass::Kg), Ok(250_000_000_000));
    assert_eq!(ng("2 lb 4 oz", BareMass::Kg), Ok(1_020_582_832_500));
    assert_eq!(ng("1", BareMass::Lb), Ok(453_592_370_000));
    assert!(ng("-1 kg", BareMass::Kg).is_err());
    assert!(ng("11 t", BareMass::Kg).is_err());
}

#[test]
fn uses_are_read_in_words() {
    for (text, expected) in [
        ("daily", 7_000_000_000),
        ("weekly", 1_000_000_000),
        ("monthly", 230_769_231),
        ("yearly", 19_230_769),
        ("fortnightly", 500_000_000),
        ("quarterly", 76_923_077),
        ("never", 0),
        ("3 per week", 3_000_000_000),
        ("twice a month", 461_538_462),
        ("once a year", 19_230_769),
        ("Every Day", 7_000_000_000),
        ("5 times a  week", 5_000_000_000),
        ("3/week", 3_000_000_000),
        ("3 / week", 3_000_000_000),
        ("every 2 weeks", 500_000_000),
        ("1/2 per week", 500_000_000),
        ("6/2 weeks", 3_000_000_000),
        ("0.5", 500_000_000),
        ("3", 3_000_000_000),
        ("once every 3 months", 76_923_077),
        ("three times a day", 21_000_000_000),
        ("a week", -1),
        ("often", -1),
        ("-1", -1),
        ("1e9 per day", -1),
        ("every 0 weeks", -1),
        ("3 kg per week", -1),
    ] {
        let read = parse_uses(text).map(Uses::as_nano);
        if expected == -1 {
            assert!(read.is_err(), "{text}");
        } else {
            assert_eq!(read, Ok(expected), "{text}");
        }
    }
    let fault = parse_uses("dayly").expect_err("misspelt");
    assert_eq!(fault.help.as_deref(), Some("did you mean daily"));
}

#[test]
fn shares_and_times() {
    assert_eq!(parse_share("80%"), Ok(Share::ppm(800_000)));
    assert_eq!(parse_share("12.5 %"), Ok(Share::ppm(125_000)));
    assert_eq!(parse_share("1/3"), Ok(Share::ppm(333_333)));
    assert_eq!(parse_share("80").expect_err("no share").help.as_deref(), Some("write 80%"));
    assert!(parse_share("101%").is_err());
    assert_eq!(parse_time("30"), Ok(Time::s(30)));
    assert_eq!(parse_time("1 min 30 s"), Ok(Time::s(90)));
    assert!(parse_time("-1 s").is_err());
}
