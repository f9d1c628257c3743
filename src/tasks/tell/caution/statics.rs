//! Casters overloaded and the cart going over or sliding, in cases that no rule forbids.

use super::{About, Caution, caution};
use crate::tasks::outcome::{Amount, Trial, weighing};
use crate::units::{show_length, show_mass};

pub(super) fn cautions(about: &About) -> Vec<Caution> {
    let mut all: Vec<Caution> = hanging(about).into_iter().collect();
    let stability = about.stability;
    all.extend(
        stability.trials.iter().filter(|t| !t.rule && t.margin < 1.0).map(|t| short(about, t)),
    );
    all.extend(stability.loading.iter().filter(|t| t.margin < 1.0).map(|t| short(about, t)));
    all.extend(over(about));
    all
}

/// One caster hanging free.
fn hanging(about: &About) -> Option<Caution> {
    let site = about.board.site();
    let hung = about.casters.iter().filter_map(|c| Some((c.hanging?, c.limit?)));
    let (most, rating) = hung.filter(|(most, rating)| most > rating).max()?;
    if site.uneven {
        return None;
    }
    let [most, rating] = [most, rating].map(|m| show_mass(m, about.unit().imperial()));
    let text = format!(
        "On uneven floor one caster can hang free and another then carries {most}, over its rating of {rating}: keep to level floor."
    );
    Some(caution(Vec::new(), text, "statics of three supports on a hard floor"))
}

/// A way of tipping or sliding it that takes less than it should.
fn short(about: &About, trial: &Trial) -> Caution {
    let amount = |a: Amount| match a {
        Amount::Force(newtons) => {
            format!("{newtons:.0} N ({})", show_mass(weighing(newtons), about.unit().imperial()))
        }
        Amount::Degrees(degrees) => format!("{degrees:.1} degrees"),
        _ => String::new(),
    };
    let [value, limit] = [trial.value, trial.limit].map(amount);
    let text = match trial.side {
        Some(side) => format!(
            "{}: the cart goes over its {side} at {value}, where {limit} should be held. See what raises it; till then do not let it come to that.",
            capital(&trial.case)
        ),
        None => format!(
            "{}: it gives way at {value}, and sawing or planing may push with {limit}. Lock more casters, wedge it, or work elsewhere.",
            capital(&trial.case)
        ),
    };
    caution(
        Vec::new(),
        text,
        &format!("statics; the limit: {} ({})", trial.source, trial.mark.name()),
    )
}

/// Casters over their rating in cases that no rule asks for.
fn over(about: &About) -> Vec<Caution> {
    let all = about.stability.casters.iter();
    let over = all.filter_map(|t| t.rating.filter(|r| t.load > *r).map(|r| (t, r)));
    over.map(|(trial, rating)| {
        let [load, rating] = [trial.load, rating].map(|m| show_mass(m, about.unit().imperial()));
        let [x, y] = trial.at.map(|a| show_length(a, about.unit()));
        let text = format!(
            "{}: the caster at {x}, {y} then carries {load}, over its rating of {rating}.",
            capital(&trial.case)
        );
        caution(
            Vec::new(),
            text,
            "equal elastic supports with lift-off; the figures assumed are told under tipping",
        )
    })
    .collect()
}

/// With a capital at its beginning.
fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
