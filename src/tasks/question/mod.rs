//! What a name lets one ask: a rag, a can of thinner or a blade whose hazards nobody has said.

mod words;

use crate::domain::{Hazard, Item};
use words::{BLADE, BLADE_BOX, EXTINGUISHER, HARMLESS, SOUNDS, Sounds};

/// An item whose name, or the name of something in it, sounds like a hazard that the file does not say.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Question {
    /// The item.
    pub item: String,
    /// What it sounds like, and by which words.
    pub sounds: Vec<(Hazard, &'static str)>,
}

impl Question {
    /// The question, with how to answer it.
    pub fn text(&self) -> String {
        let each = self.sounds.iter().map(|(hazard, word)| format!("{} (`{word}`)", hazard.name()));
        let can = match self.sounds.iter().any(|(h, _)| *h == Hazard::SelfHeating) {
            true => "; oily rags also need `inside: closed metal can`",
            false => "",
        };
        format!(
            "is it {}? Read the label and add the words to `hazards`{can}; `hazards: []` says that somebody looked and found none.",
            each.collect::<Vec<_>>().join(" or "),
        )
    }
}

/// Every question, in the order of the inventory.
pub fn questions(items: &[Item]) -> Vec<Question> {
    items
        .iter()
        .map(|item| Question { item: item.name.clone(), sounds: sounds(item) })
        .filter(|question| !question.sounds.is_empty())
        .collect()
}

fn sounds(item: &Item) -> Vec<(Hazard, &'static str)> {
    if item.hazards_said && item.hazards.is_empty() {
        return Vec::new();
    }
    let mut all: Vec<(Hazard, &'static str)> = Vec::new();
    for row in SOUNDS.iter().filter(|row| !answered(item, row)) {
        let word = texts(item).find_map(|text| heard(text, row.words));
        let known = |hazard: Hazard| all.iter().any(|(h, _)| *h == hazard);
        if let Some(word) = word.filter(|_| !known(row.hazard)) {
            all.push((row.hazard, word));
        }
    }
    all
}

fn answered(item: &Item, row: &Sounds) -> bool {
    item.hazards.has(row.hazard) || row.unless.iter().any(|h| item.hazards.has(*h))
}

/// The name and what is in it.
fn texts(item: &Item) -> impl Iterator<Item = &str> {
    std::iter::once(item.name.as_str()).chain(item.holds.iter().map(String::as_str))
}

/// Whether it is something that puts out a fire.
pub(super) fn puts_out_fire(item: &Item) -> bool {
    heard(&item.name, EXTINGUISHER).is_some()
}

/// Whether it is an edge that is thrown away and replaced, or holds one.
pub(super) fn has_blades(item: &Item) -> bool {
    texts(item).any(|text| heard(text, BLADE).is_some())
}

/// Whether it is a container for used blades.
pub(super) fn keeps_used_blades(item: &Item) -> bool {
    heard(&item.name, BLADE_BOX).is_some()
}

/// The first of those words or phrases that stands in a text, harmless phrases passed over.
fn heard(text: &str, words: &[&'static str]) -> Option<&'static str> {
    let mut spoken = tokens(text);
    for phrase in HARMLESS {
        while let Some(at) = find(&spoken, phrase) {
            spoken[at..at + phrase.split(' ').count()].fill(String::new());
        }
    }
    words.iter().copied().find(|word| find(&spoken, word).is_some())
}

fn tokens(text: &str) -> Vec<String> {
    let parts = text.split(|c: char| !c.is_alphanumeric()).filter(|part| !part.is_empty());
    parts.map(str::to_lowercase).collect()
}

/// Where a phrase begins in a row of words.
fn find(spoken: &[String], phrase: &str) -> Option<usize> {
    let wanted: Vec<&str> = phrase.split(' ').collect();
    spoken.windows(wanted.len()).position(|w| w.iter().zip(&wanted).all(|(s, w)| is_word(s, w)))
}

/// Whether it is the word or its plural.
fn is_word(spoken: &str, word: &str) -> bool {
    let singular = |plural: &str, end: &str| {
        spoken.strip_suffix(plural).is_some_and(|s| word.strip_suffix(end) == Some(s))
    };
    spoken == word
        || singular("s", "")
        || singular("es", "")
        || singular("ies", "y")
        || singular("ves", "fe")
}
