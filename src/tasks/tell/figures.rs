//! What the files may say about forces, floor and wheels, and what is taken where they do not.

use super::super::outcome::Mark;
use crate::domain::Workspace;
use crate::physics::furniture::ON_DRAWER;
use crate::physics::leaning::GRAVITY;
use crate::physics::rolling::{Effort, protects_most};
use crate::units::{Length, Mass, Share};

/// One figure, in newtons, mm, metres a second or a share.
#[derive(Clone, Copy, Debug)]
pub(super) struct Figure {
    pub value: f64,
    pub mark: Mark,
    pub source: &'static str,
}

impl Figure {
    const fn new(value: f64, mark: Mark, source: &'static str) -> Figure {
        Figure { value, mark, source }
    }
    /// What a file states; else this.
    fn unless(self, stated: Option<f64>) -> Figure {
        stated.map_or(self, |value| Figure::new(value, Mark::Stated, "the shop or carcass file"))
    }
}

/// All of them.
#[derive(Clone, Debug)]
pub(super) struct Figures {
    /// A level push at the height of the bench, N.
    pub push: Figure,
    /// A press on the edge of the bench, N.
    pub lean: Figure,
    /// A level push from work on top, N.
    pub work: Figure,
    /// What a locked caster holds, as a share of its load.
    pub friction: Figure,
    /// Rolling resistance, as a share of the weight.
    pub rolling: Figure,
    /// The threshold, mm.
    pub threshold: Figure,
    /// How fast it is rolled, m/s.
    pub speed: Figure,
    /// What may lie under a caster, mm.
    pub chip: Figure,
    /// Radius of a wheel, mm.
    pub radius: Figure,
    /// How far a corner sinks under 10 kg, least and most, mm.
    pub gives: [Figure; 2],
    /// Friction of things on a deck.
    pub deck: Figure,
}

const GUIDE: &str = "the push at that height that protects 80 % of people (Ohio BWC / Ohio State University guidelines, 2018, in a public transcription)";
const FURNITURE: &str = "the weight on an open drawer of furniture, 27.2 kg (ASTM F2057-23, as summarised by a test laboratory), borrowed for the edge of a bench";
const MOBILE: &str = "IEC 60601-1 amendment 1, for mobile medical equipment, as summarised";
const ASSUMED: &str = "an assumption";

impl Figures {
    pub(super) fn new(workspace: &Workspace) -> Figures {
        let (cart, shop) = (&workspace.carcass, &workspace.shop);
        let force = |mass: Option<Mass>| mass.map(|m| m.as_kg() * GRAVITY);
        let share = |share: Option<Share>| share.map(Share::as_fraction);
        let mm = |length: Option<Length>| length.map(Length::as_mm);
        let give = |k: usize, usual: f64| {
            let stated = cart.casters.gives.map(|gives| gives[k].as_mm());
            Figure::new(usual, Mark::Ours, ASSUMED).unless(stated)
        };
        let bench = cart.height.as_mm();
        let usual_wheel = cart.casters.height.as_mm() * 0.75;
        let wheel = Figure::new(
            usual_wheel / 2.0,
            Mark::Practice,
            "a wheel of three quarters of the casters' height",
        );
        Figures {
            push: Figure::new(protects_most(Effort::Push, bench), Mark::Read, GUIDE)
                .unless(force(shop.forces.push)),
            lean: Figure::new(ON_DRAWER * GRAVITY, Mark::Read, FURNITURE)
                .unless(force(shop.forces.lean)),
            work: Figure::new(15.0 * GRAVITY, Mark::Ours, ASSUMED).unless(force(shop.forces.work)),
            friction: Figure::new(0.5, Mark::Ours, ASSUMED).unless(share(shop.forces.friction)),
            rolling: Figure::new(0.03, Mark::Ours, ASSUMED).unless(share(shop.forces.rolling)),
            threshold: Figure::new(10.0, Mark::Read, MOBILE).unless(mm(shop.room.threshold)),
            speed: Figure::new(0.8, Mark::Read, MOBILE),
            chip: Figure::new(3.0, Mark::Ours, ASSUMED).unless(mm(shop.room.chip)),
            radius: wheel.unless(mm(cart.casters.wheel).map(|w| w / 2.0)),
            gives: [give(0, 0.5), give(1, 5.0)],
            deck: Figure::new(0.4, Mark::Ours, ASSUMED),
        }
    }
}

/// A figure that no file states, in words; nothing where one does.
pub(super) fn assumed(figure: &Figure, what: &str) -> Option<String> {
    (figure.mark != Mark::Stated)
        .then(|| format!("{what}: {} ({})", figure.source, figure.mark.name()))
}
