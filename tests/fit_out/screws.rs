//! Facts of the trade about screws and boards: common practice, no source.

use toolberth::tasks::fit_out::screw::{GAUGES, Refusal, holding, in_edge, joining, joins};
use toolberth::units::Length;

fn mm(all: &[i64]) -> Vec<Length> {
    all.iter().map(|t| Length::mm(*t)).collect()
}

fn lengths(boards: &[i64]) -> Vec<i64> {
    joining(&mm(boards)).iter().map(|s| s.mm).collect()
}

#[test]
fn a_19_mm_panel_on_a_38_mm_batten_takes_32_or_51_mm() {
    assert_eq!(lengths(&[19, 38]), [32, 51]);
}

#[test]
fn panel_and_batten_into_a_second_batten_take_76_mm() {
    assert_eq!(lengths(&[19, 38, 38]), [76]);
}

#[test]
fn a_76_mm_screw_pokes_through_one_panel_and_batten() {
    let refused = joins(Length::mm(76), &mm(&[19, 38]));
    assert!(matches!(refused, Err(Refusal::PokesThrough(_))), "{refused:?}");
}

#[test]
fn a_short_screw_does_not_reach_the_batten() {
    let refused = joins(Length::mm(25), &mm(&[19, 38]));
    assert!(matches!(refused, Err(Refusal::TooShort(_))), "{refused:?}");
}

#[test]
fn a_hole_in_an_edge_sits_at_half_the_thickness_and_has_a_pilot() {
    for thick in [13, 15, 18, 19, 25] {
        let hole = in_edge(Length::mm(thick), &GAUGES[0]).expect("the board is thick enough");
        assert_eq!(hole.from_face * 2, Length::mm(thick));
        assert!(hole.pilot > Length::ZERO && hole.pilot < GAUGES[0].diameter);
    }
    assert_eq!(in_edge(Length::mm(9), &GAUGES[2]), None, "a thin board splits");
}

#[test]
fn nothing_comes_out_behind_the_board_that_a_hook_is_screwed_to() {
    for board in 3..80 {
        for screw in holding(Length::mm(2), Length::mm(board)) {
            assert!(screw.mm - 2 < board, "{} mm in {board} mm", screw.mm);
        }
    }
    assert!(holding(Length::mm(2), Length::mm(6)).is_empty());
}
