//! How far the cart is from going over or sliding: every case that the rules ask for and those that they do not.

mod loads;
mod raise;
mod trials;

use super::super::outcome::{Amount, Mark, Placement, Stability, Step, Trial};
use super::figures::{Figure, Figures, assumed};
use crate::domain::Workspace;
use crate::physics::leaning::GRAVITY;
use crate::score::Ledger;
use crate::site::{Board, CaseKind, Change, Touched};
use trials::{Deed, Stance, Weighed, of_case};

const OUR_ANGLES: &str = "our own: no standard for a workshop cart was found; IEC 60601-1 asks 10 degrees in transport and 5 else of mobile medical equipment, as summarised";

/// Tries the cart.
pub(super) fn stability(board: &Board, ledger: &Ledger, workspace: &Workspace) -> Stability {
    let figures = Figures::new(workspace);
    let Some(footprint) = &board.site().statics.footprint else { return Stability::default() };
    let stance = Stance::new(board, footprint, &figures, workspace);
    let mut trials: Vec<Trial> =
        told_deeds(&stance.weigh()).into_iter().map(|w| tell(&stance, &w)).collect();
    trials.extend(slide(&stance, workspace));
    let unloaded = Board::new(board.site());
    let bare = Stance { board: &unloaded, ..stance };
    let asked = |w: &Weighed| matches!(w.deed, Deed::Closed | Deed::Out(_));
    let empty =
        bare.weigh().into_iter().filter(asked).min_by(|a, b| a.margin().total_cmp(&b.margin()));
    Stability {
        trials,
        casters: loads::casters(&stance),
        loading: None,
        raise: raise::raise(&stance, ledger, workspace.carcass.units),
        empty: empty.filter(|w| w.margin() < 1.0).map(|w| tell(&bare, &w)),
        assumed: assumptions(&figures, workspace),
    }
}

/// Of the heavy things only the one whose absence is worst.
fn told_deeds(all: &[Weighed]) -> Vec<Weighed> {
    let away = |w: &&Weighed| matches!(w.deed, Deed::Away(_));
    let worst = all.iter().filter(away).min_by(|a, b| a.margin().total_cmp(&b.margin()));
    let told = |w: &&Weighed| !away(w) || worst.is_some_and(|worst| worst.deed == w.deed);
    all.iter().filter(told).copied().collect()
}

/// One case in words.
fn tell(stance: &Stance, weighed: &Weighed) -> Trial {
    let site = stance.board.site();
    let (ours, rule) =
        ((OUR_ANGLES, Mark::Ours), matches!(weighed.deed, Deed::Closed | Deed::Out(_)));
    let of = |figure: &Figure| (figure.source, figure.mark);
    let (case, (source, mark)) = match weighed.deed {
        Deed::Closed => ("everything closed".to_owned(), ours),
        Deed::Out(space) => (format!("{} out", site.spaces[space].name), ours),
        Deed::AllOut => ("all drawers out".to_owned(), ours),
        Deed::Away(lot) => (format!("{} away", site.lots[lot as usize].name(&site.items)), ours),
        Deed::Push => (
            "pushed at bench height, its casters stopped dead".to_owned(),
            of(&stance.figures.push),
        ),
        Deed::Lean => {
            ("someone leans on the edge of the bench".to_owned(), of(&stance.figures.lean))
        }
    };
    let force = matches!(weighed.deed, Deed::Push | Deed::Lean);
    let amount = |of: f64| if force { Amount::Force(of) } else { Amount::Degrees(of) };
    Trial {
        case,
        side: Some(stance.footprint.way(weighed.side).name()),
        value: amount(weighed.value),
        limit: amount(weighed.limit),
        margin: weighed.margin(),
        rule,
        source: source.to_owned(),
        mark,
    }
}

/// Sawing or planing on top against what the locked casters hold.
fn slide(stance: &Stance, workspace: &Workspace) -> Option<Trial> {
    let locks = workspace.carcass.casters.locks as usize;
    let value = stance.slides(locks)?;
    let work = &stance.figures.work;
    let held = match locks.min(stance.board.site().statics.at.len()) {
        0 => "no caster locked".to_owned(),
        n if n == stance.board.site().statics.at.len() => "all casters locked".to_owned(),
        n => format!("locked at the {n} casters that carry least"),
    };
    Some(Trial {
        case: format!("work on top slides it, {held}"),
        side: None,
        value: Amount::Force(value),
        limit: Amount::Force(work.value),
        margin: value / work.value,
        rule: false,
        source: format!("the force of sawing or planing: {}", work.source),
        mark: work.mark,
    })
}

/// The least margin while the cart is filled step by step: closed, and with the drawer out that is being filled.
pub(super) fn loading(
    board: &Board,
    workspace: &Workspace,
    order: &[(usize, u32)],
    placements: &[Placement],
    steps: &[Step],
) -> Option<Trial> {
    let footprint = board.site().statics.footprint.as_ref()?;
    let figures = Figures::new(workspace);
    let mut filled = Board::new(board.site());
    let mut least: Option<Trial> = None;
    let numbered =
        steps.iter().enumerate().flat_map(|(k, s)| s.placements.iter().map(move |&n| (k, n)));
    for (step, n) in numbered {
        let lot = order[n].0;
        let to = board.place(lot).copied();
        filled.apply(Change { lot, to }, &mut Touched::default());
        let stance = Stance::new(&filled, footprint, &figures, workspace);
        let pulled = filled.space_of(lot).map(Deed::Out);
        let asked = |w: &Weighed| w.deed == of_case(CaseKind::Closed) || Some(w.deed) == pulled;
        for weighed in stance.weigh().into_iter().filter(asked) {
            if least.as_ref().is_none_or(|l| weighed.margin() < l.margin) {
                let trial = tell(&stance, &weighed);
                let case = format!(
                    "{}, when {} is put in (step {})",
                    trial.case,
                    placements[n].item,
                    step + 1
                );
                least = Some(Trial { case, rule: false, ..trial });
            }
        }
    }
    least
}

/// What was taken because no file says it.
fn assumptions(figures: &Figures, workspace: &Workspace) -> Vec<String> {
    let newtons = |f: &Figure, what: &str| {
        assumed(f, &format!("{what}, {:.0} N (the weight of {:.1} kg)", f.value, f.value / GRAVITY))
    };
    let chip = format!("a chip of {:.0} mm may lie under one caster", figures.chip.value);
    let gives = format!(
        "a corner sinks {:.1} to {:.1} mm under 10 kg",
        figures.gives[0].value, figures.gives[1].value
    );
    let locks = workspace.carcass.casters.locks > 0;
    let mut all = vec![
        newtons(&figures.push, "a push on the way"),
        newtons(&figures.lean, "someone leaning on the edge"),
        newtons(&figures.work, "work on top"),
    ];
    let grip = format!("a locked caster holds {:.0} % of its load", figures.friction.value * 100.0);
    all.push(locks.then(|| assumed(&figures.friction, &grip)).flatten());
    all.extend([assumed(&figures.chip, &chip), assumed(&figures.gives[0], &gives)]);
    all.into_iter().flatten().collect()
}
