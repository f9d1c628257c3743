//! The cart on its casters, on its way and at its place.

use super::{About, Caution, OURS, caution};
use crate::tasks::outcome::{Amount, Push};
use crate::units::{Length, show_length};

/// How much broader than the cart a door should be for hands and a crooked way: design choice.
const HANDS: Length = Length::mm(50);
/// The step that furniture casters are tested over, as a share of the wheel (EN 12530 / ISO 22881, read as summarised).
const TESTED_STEP: f64 = 0.03;

const STOP: &str = "statics of a dead stop at the speed at which mobile medical equipment meets a threshold (IEC 60601-1, as summarised); friction assumed";

pub(super) fn cautions(about: &About) -> Vec<Caution> {
    let mut all = Vec::new();
    let casters = &about.workspace.carcass.casters;
    let text = match casters.locks {
        0 => "No caster locks: do not saw, plane or lean on this cart. Fit locking casters.",
        _ => {
            "Lock the casters before working on the cart or pulling a drawer; roll it slowly, with both hands, over flat floor."
        }
    };
    all.push(caution(Vec::new(), text, OURS));
    if casters.rating.is_none() {
        let text = "The casters' rating is not stated: whether they carry this cart cannot be judged. Read it off the casters.";
        all.push(caution(Vec::new(), text, "the carcass file"));
    }
    // A threshold that no file speaks of is told in the table and is no caution.
    let stated = about.rolling.threshold.is_some_and(|(_, _, stated)| stated);
    let level = about.rolling.pushes.iter().filter(|p| stated || !p.case.contains("threshold"));
    all.extend(level.filter_map(|push| heavy(about, push)));
    all.extend(step(about));
    all.extend(door(about));
    all.extend(place(about));
    all.extend(stop(about));
    all
}

/// A push that protects fewer than most people.
fn heavy(about: &About, push: &Push) -> Option<Caution> {
    let newtons = |a: Amount| match a {
        Amount::Force(of) | Amount::Moment(of) => of,
        _ => 0.0,
    };
    let text = match (push.force, push.most) {
        (None, _) => format!("The cart cannot be pushed {}.", push.case),
        (Some(force), most) if newtons(force) > newtons(most) => {
            let unit = if matches!(force, Amount::Moment(_)) { "N m" } else { "N" };
            let few =
                if newtons(force) > newtons(push.half) { ", and fewer than half" } else { "" };
            format!(
                "The cart, {}, asks for {:.0} {unit}: more than the {:.0} {unit} that protect 80 % of people{few}. Take something off first, or get help.",
                push.case,
                newtons(force),
                newtons(most)
            )
        }
        _ => return None,
    };
    Some(caution(Vec::new(), text, about.rolling.source))
}

/// A threshold that the wheels are not made for.
fn step(about: &About) -> Option<Caution> {
    let (high, wheel, stated) = about.rolling.threshold?;
    if !stated || high.as_mm() <= TESTED_STEP * wheel.as_mm() {
        return None;
    }
    let [high, wheel] = [high, wheel].map(|l| show_length(l, about.unit()));
    let text = format!(
        "The threshold of {high} is more than 3 % of the wheels ({wheel}): furniture casters are not tested over that. Lay a wedge, or cross it slowly and straight with heavy and loose things off."
    );
    Some(caution(
        Vec::new(),
        text,
        "EN 12530 / ISO 22881, read as summarised on a caster maker's page",
    ))
}

/// A door that is too narrow, or nearly.
fn door(about: &About) -> Option<Caution> {
    let door = about.rolling.door?;
    let [broad, clear, spare] =
        [door.broad, door.clear, door.clear - door.broad].map(|l| show_length(l, about.unit()));
    let text = if door.broad > door.clear {
        format!(
            "With what hangs on it the cart is {broad} broad and does not pass the door of {clear}: take off what hangs first."
        )
    } else if door.clear - door.broad < HANDS {
        format!(
            "The door leaves {spare} round the cart ({broad} of {clear}): push it from behind and keep hands off its sides."
        )
    } else {
        return None;
    };
    Some(caution(Vec::new(), text, "geometry; the room for hands is ours"))
}

/// A place that is too small.
fn place(about: &About) -> Vec<Caution> {
    let rolling = about.rolling;
    let mut all: Vec<Caution> = Vec::new();
    if !rolling.in_the_way.is_empty() {
        let text = format!(
            "The cart does not fit its place with what hangs on it: {}.",
            rolling.in_the_way.join(", ")
        );
        all.push(caution(Vec::new(), text, "the room of the shop file"));
    }
    let tight: Vec<String> = rolling
        .before
        .iter()
        .filter(|b| b.free < b.needs)
        .map(|b| {
            let [free, needs] = [b.free, b.needs].map(|l| show_length(l, about.unit()));
            format!("the {} ({free} of {needs})", b.face.name())
        })
        .collect();
    if !tight.is_empty() {
        let text = format!(
            "Where it stands there is too little floor for its drawers and a person before {}: roll it out first.",
            tight.join(", ")
        );
        all.push(caution(Vec::new(), text, "the room of the shop file; 500 mm for a person, ours"));
    }
    all
}

/// What moves when the cart stops dead.
fn stop(about: &About) -> Vec<Caution> {
    let rolling = about.rolling;
    let [slide, swing] =
        rolling.at_a_stop.map(|l| show_length(Length::from_mm(l.as_mm().round()), about.unit()));
    let mut all = Vec::new();
    if !rolling.opens.is_empty() {
        let text = format!(
            "{} can roll open on the way: fit a catch (and say `catch: true`), or tie them shut.",
            rolling.opens.join(", ")
        );
        all.push(caution(Vec::new(), text, OURS));
    }
    if !rolling.slides.is_empty() {
        let text = format!(
            "At a dead stop things slide {slide} on their deck, and nothing stands before these: a lip or a strap keeps them on."
        );
        all.push(caution(rolling.slides.clone(), text, STOP));
    }
    if !rolling.swings.is_empty() {
        let text = format!(
            "At a dead stop what hangs can swing up by {swing}: closed hooks or a bar for these, or take them off before rolling."
        );
        all.push(caution(rolling.swings.clone(), text, STOP));
    }
    all
}
