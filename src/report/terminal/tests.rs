use super::wrap::columns;
use super::*;
use crate::report::sample;
use crate::tasks::outcome::Start;
use crate::units::Price;

fn look(width: usize) -> Look {
    Look { width, ..Look::default() }
}

/// The part of a report from one heading to the next.
fn between<'a>(text: &'a str, from: &str, to: &str) -> &'a str {
    let start = text.find(from).expect(from);
    let end = text[start..].find(to).expect(to);
    &text[start..start + end]
}

#[test]
fn no_line_is_wider_than_the_terminal() {
    for width in [40, 59, 60, 80, 120, 200] {
        for line in plan(&sample::unsafe_plan(), &look(width)).lines() {
            assert!(columns(line) <= width, "{width}: {line}");
        }
    }
}

#[test]
fn what_is_wrong_comes_before_what_it_costs() {
    let text = plan(&sample::unsafe_plan(), &look(100));
    let places = [
        "Unsafe: 1 rule",
        "mitre saw: needs 340 mm",
        "Cost",
        "From memory",
        "Front",
        "Room kept free",
        "Casters",
        "Tipping",
        "Cautions",
        "Loading",
        "Earning",
        "Notes",
    ]
    .map(|part| text.find(part).expect(part));
    assert!(places.is_sorted(), "{places:?}");
}

#[test]
fn every_slot_is_in_the_drawing_or_listed_under_it() {
    for width in [60, 80, 120] {
        let text = plan(&sample::plan(), &look(width));
        let drawing = between(&text, "Front · ", "#  item");
        let numbers: Vec<u32> = drawing
            .split(|c: char| !c.is_ascii_digit())
            .filter_map(|number| number.parse().ok())
            .collect();
        for slot in 1..=17 {
            assert_eq!(numbers.iter().filter(|&&n| n == slot).count(), 1, "slot {slot} at {width}");
        }
        assert!(drawing.contains("behind: 7, 16"), "{drawing}");
    }
}

#[test]
fn faces_are_drawn_to_one_scale() {
    let text = plan(&sample::plan(), &look(80));
    let edge = |name: &str| {
        let at = text.find(name).expect(name);
        columns(text[at..].lines().nth(1).expect("a drawing"))
    };
    // 1050 mm take 80 columns, that is 79 steps from edge to edge; 560 mm take 42.
    assert_eq!(edge("Front · "), 80);
    assert_eq!(edge("Right · "), 43);
}

#[test]
fn names_are_wrapped_and_not_cut() {
    let text = plan(&sample::plan(), &look(80));
    let words: Vec<&str> = text.split_whitespace().collect();
    for word in ["heat-shrink", "sleeves,", "colours"] {
        assert_eq!(
            words.iter().filter(|w| **w == word).count(),
            2,
            "{word}: the item and what it blocks"
        );
    }
}

#[test]
fn a_narrow_page_has_a_list_and_no_drawing() {
    let text = plan(&sample::plan(), &look(59));
    assert!(!text.contains('┏') && !text.contains("s a week\n1"));
    assert!(text.contains("  8 cordless drill, stand, grip 615 mm, easy, 20.0 s a week"), "{text}");
}

/// How the legends begin that explain colours.
const LEGENDS: [&str; 2] = ["Numbers in reverse", "Shaded by s a week"];

#[test]
fn ascii_and_colour_are_asked_for() {
    let plain = plan(&sample::unsafe_plan(), &look(80));
    assert!(!plain.contains('\x1b') && !plain.is_ascii());
    assert!(plan(&sample::unsafe_plan(), &Look { ascii: true, ..look(80) }).is_ascii());
    for (colour, number) in [
        (Colour::Sixteen, "\x1b[1;36m10\x1b[0m"),
        (Colour::Full, "\x1b[1;38;2;32;40;44;48;2;206;224;216m10\x1b[0m"),
    ] {
        let coloured = plan(&sample::unsafe_plan(), &Look { colour, ..look(80) });
        assert!(coloured.contains(number), "slots are coloured");
        let stripped = anstream::adapter::strip_str(&coloured).to_string();
        let legend = LEGENDS[usize::from(colour == Colour::Full)];
        let (before, rest) = stripped.split_once(legend).expect("a legend");
        let (_, after) = rest.split_once("\n\n").expect("a gap below it");
        assert!(before.to_owned() + after == plain, "colour changes nothing else");
    }
}

#[test]
fn a_saving_is_told_only_against_a_like_start() {
    let mut sample = sample::plan();
    assert!(plan(&sample, &look(100)).contains("25 % less"));
    sample.start.broken = 2;
    let text = plan(&sample, &look(200));
    assert!(
        !text.contains("% less")
            && text.contains("costs 132 s, but breaks 2 rules; so no saving is told")
    );
    sample.start = Start { broken: 0, same_items: false, ..sample.start };
    assert!(!plan(&sample, &look(100)).contains("% less"));
}

#[test]
fn the_bound_is_told_in_words() {
    let mut sample = sample::plan();
    let told = "no layout on this cart can cost less than 90.4 s a week; this one costs 98.0 s";
    assert!(plan(&sample, &look(200)).contains(told));
    sample.bound.cost = Some(Price::from_s(98.0));
    assert!(plan(&sample, &look(200)).contains("proven optimal"));
}
