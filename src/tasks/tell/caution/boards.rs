//! Boards too limp by themselves or that go on sagging, and hooks of which nothing is known.

use super::{About, Caution, OURS, caution};
use crate::physics::boards::sag_limit;
use crate::site::Span;
use crate::units::Mass;

/// A creep over this makes more than three times the first sag.
const CREEPS: f64 = 2.0;
/// A shelf that creeps so is worth a word from this share of the sag that it may have: design choice.
const WORTH: f64 = 0.5;
/// A thing over this on a hook of which nothing is known is worth a word: design choice.
const HEAVY: Mass = Mass::kg(2);

pub(super) fn cautions(about: &About) -> Vec<Caution> {
    let surfaces = 0..about.board.site().surfaces.len();
    surfaces
        .filter_map(|s| limp(about, s).or_else(|| creeping(about, s)).or_else(|| hooks(about, s)))
        .collect()
}

/// A board that sags too far with nothing on it.
fn limp(about: &About, s: usize) -> Option<Caution> {
    let span = span(about, s)?;
    let alone = span.crept(span.beam.sag(std::iter::once(span.own)));
    let limit = sag_limit(span.beam.span);
    (alone > limit).then(|| {
        let name = about.board.site().surface_name(s);
        let text = format!(
            "{name} of {} ends up sagging {alone:.1} mm by its own weight, and {limit:.1} mm is the most for its span: make it thicker, glue a batten under its front edge or prop it in the middle.",
            span.plank.material.name()
        );
        caution(Vec::new(), text, "span / 240, a habit of cabinet makers; stiffness after the Wood Handbook")
    })
}

/// A board that sags on to over three times its first sag.
fn creeping(about: &About, s: usize) -> Option<Caution> {
    let span = span(about, s).filter(|span| span.timber.creep.value > CREEPS)?;
    let sag = span.beam.sag(span.loads(about.board, s));
    (span.crept(sag) > WORTH * sag_limit(span.beam.span)).then(|| {
        let name = about.board.site().surface_name(s);
        let text = format!(
            "{name} of {} sags on under its load, from {sag:.1} mm at first to {:.1} mm: turn the board over once a year, or prop it.",
            span.plank.material.name(),
            span.crept(sag)
        );
        caution(items(about, s, Mass::ZERO), text, "EN 1995-1-1 Table 3.2, creep of such boards, from memory")
    })
}

/// Heavy things on hooks of which no load is stated, in a wall of which no material is.
fn hooks(about: &About, s: usize) -> Option<Caution> {
    let surface = &about.board.site().surfaces[s];
    let items = items(about, s, HEAVY);
    if surface.kind != crate::site::Kind::Wall || surface.hold.is_some() || items.is_empty() {
        return None;
    }
    let name = about.board.site().surface_name(s);
    let text = format!(
        "Whether the hooks of {name} hold this cannot be judged: read their load off the label and state it as `hook:`, or name the material that screws go into."
    );
    Some(caution(items, text, OURS))
}

fn span<'a>(about: &'a About, s: usize) -> Option<&'a Span> {
    about.board.site().surfaces[s].span.as_ref()
}

/// Names of what is on a surface and heavier than so much, in the order of the inventory.
fn items(about: &About, s: usize, over: Mass) -> Vec<String> {
    let site = about.board.site();
    let mut items: Vec<usize> = about
        .board
        .on(s)
        .map(|(lot, _)| &site.lots[lot])
        .filter(|lot| lot.unit > over)
        .map(|lot| lot.item)
        .collect();
    items.sort_unstable();
    items.dedup();
    items.into_iter().map(|i| site.items[i].name.clone()).collect()
}
