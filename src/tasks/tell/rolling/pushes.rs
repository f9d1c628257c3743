//! What rolling asks of the person behind the cart, against what protects most people.

use super::super::figures::Figures;
use crate::domain::Workspace;
use crate::geometry::Way;
use crate::physics::casters::MOST;
use crate::physics::leaning::GRAVITY;
use crate::physics::rolling::{Effort, over_step, protects_half, protects_most, push, turning};
use crate::site::Board;
use crate::tasks::outcome::{Amount, Push};
use crate::units::Length;

/// Casters that lie so near to the foremost one meet a threshold with it, in mm: design choice.
const ABREAST: f64 = 10.0;

/// The efforts, where the casters are known and the cart stands.
pub(super) fn pushes(board: &Board, workspace: &Workspace, figures: &Figures) -> Vec<Push> {
    let statics = &board.site().statics;
    let closed = board.closed();
    let [x, y, _] = closed.moments;
    let mut loads = [0.0; MOST];
    let stands = statics.supports.as_ref().is_some_and(|s| s.loads(closed.total, x, y, &mut loads));
    if !stands {
        return Vec::new();
    }
    let loads: Vec<f64> = loads[..statics.at.len()].iter().map(|l| l * GRAVITY).collect();
    let at: Vec<[f64; 2]> = statics.at.iter().map(|p| p.map(Length::as_mm)).collect();
    let (weight, hands) = (closed.total * GRAVITY, workspace.carcass.height.as_mm());
    let about = [x / closed.total, y / closed.total];
    let level = push(weight, figures.rolling.value);
    let turned = turning(&loads, &at, about, figures.rolling.value);
    vec![
        effort("pushed with both hands, level".to_owned(), Some(level), Effort::Push, hands),
        effort("pulled with one hand, level".to_owned(), Some(level), Effort::OneHand, hands),
        effort("turned on the spot".to_owned(), Some(turned), Effort::Turn, hands),
        threshold(&loads, &at, figures, hands),
    ]
}

fn effort(case: String, force: Option<f64>, effort: Effort, hands: f64) -> Push {
    let amount =
        |of: f64| if effort == Effort::Turn { Amount::Moment(of) } else { Amount::Force(of) };
    Push {
        case,
        force: force.map(amount),
        most: amount(protects_most(effort, hands)),
        half: amount(protects_half(effort, hands)),
    }
}

/// Over the threshold with whichever side first is easiest; the casters of that side meet it together.
fn threshold(loads: &[f64], at: &[[f64; 2]], figures: &Figures, hands: f64) -> Push {
    let sides = [Way::Front, Way::Back, Way::Left, Way::Right];
    let met = sides.map(|way| (way, foremost(loads, at, way)));
    let easiest = met.iter().fold(met[0], |best, one| if one.1 < best.1 { *one } else { best });
    let hardest = met.iter().map(|m| m.1).fold(0.0, f64::max);
    let share = over_step(figures.radius.value, figures.threshold.value);
    let high = format!("over a threshold of {:.0} mm", figures.threshold.value);
    let case = match share {
        Some(share) => format!(
            "{high}, its {} first (another side first: up to {:.0} N)",
            easiest.0.name(),
            hardest * share
        ),
        None => format!("{high}: as high as its axles, it has to be lifted"),
    };
    effort(case, share.map(|share| easiest.1 * share), Effort::Push, hands)
}

/// What the casters carry that are foremost when it is rolled that way, in newtons.
pub(super) fn foremost(loads: &[f64], at: &[[f64; 2]], way: Way) -> f64 {
    let along = |p: &[f64; 2]| if way.rising() { p[way.axis()] } else { -p[way.axis()] };
    let first = at.iter().map(along).fold(f64::NEG_INFINITY, f64::max);
    loads.iter().zip(at).filter(|(_, p)| along(p) >= first - ABREAST).map(|(load, _)| load).sum()
}
