//! What the lots share: everything of which there is only so much.

use super::fold::Fold;
use std::collections::BTreeMap;

/// What is shared. There is one of each; a choice takes a part of it.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum Key {
    /// The area of a surface, folded along both of its axes.
    Area(u32, Fold, Fold),
    /// A strip of a surface, folded along it.
    Strip(u32, u8, Fold),
    /// The breadth of a bay at the height of one of its decks, as seen from a way out, folded.
    Front(u32, u8, Fold),
    /// The volume of a bay, folded along the three axes.
    Volume(u32, [Fold; 3]),
    /// What a surface carries.
    Load(u32),
    /// The value of what is left out.
    LeftOut,
}

/// A part of what is shared that a choice takes.
#[derive(Clone, Copy)]
pub struct Take {
    /// What.
    pub share: u32,
    /// How much of it.
    pub amount: f64,
}

/// The numbers of all that is shared.
#[derive(Default)]
pub struct Shares {
    numbers: BTreeMap<Key, u32>,
}

impl Shares {
    /// The number of a share.
    pub fn number(&mut self, key: Key) -> u32 {
        let next = self.numbers.len() as u32;
        *self.numbers.entry(key).or_insert(next)
    }
    /// How many there are.
    pub fn count(&self) -> usize {
        self.numbers.len()
    }
}
