//! How often each kind of move is tried: by what it has brought so far in this run, within bounds.

use rand::RngExt;
use rand::rngs::Xoshiro256PlusPlus;

/// A kind of move.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) enum Kind {
    /// One lot to a free corner place anywhere.
    Relocate,
    /// Two lots change places.
    Swap,
    /// One lot to another corner place on its own surface.
    Nudge,
    /// Two lots change places, and who is in the way is pushed on.
    Trade,
    /// One lot into a place where others are, who are pushed on.
    PushIn,
    /// One lot into a place where others are, who look for another.
    Barge,
    /// A few lots are taken out and put back where they cost least.
    Ruin,
    /// A space is emptied and filled anew.
    Rebuild,
    /// A surface is packed anew.
    Repack,
}

/// A kind, how often it is tried at first, and how much work a try is.
type First = (Kind, u32, u32);

/// For a lot that is on the cart.
const ON_CART: &[First] = &[
    (Kind::Relocate, 2440, 2),
    (Kind::Swap, 970, 1),
    (Kind::Nudge, 1940, 1),
    (Kind::Trade, 200, 2),
    (Kind::PushIn, 200, 2),
    (Kind::Barge, 4000, 2),
    (Kind::Ruin, 200, 20),
    (Kind::Rebuild, 25, 20),
    (Kind::Repack, 25, 20),
];
/// For a lot that is off the cart.
const OFF_CART: &[First] = &[
    (Kind::Relocate, 450, 1),
    (Kind::Barge, 450, 2),
    (Kind::PushIn, 50, 2),
    (Kind::Ruin, 20, 20),
    (Kind::Repack, 10, 20),
];
/// Tries between two looks at what they brought.
const LOOK: u32 = 4096;
/// A kind is tried at most so many times as often as at first, and at least as many times less often.
const BOUND: u64 = 4;

/// How often each kind is tried, and what it brought since that was last set.
#[derive(Clone, Debug)]
struct Shares {
    kinds: &'static [First],
    share: Vec<u32>,
    tried: Vec<u32>,
    useful: Vec<u32>,
    since: u32,
    last: usize,
}

impl Shares {
    fn new(kinds: &'static [First]) -> Shares {
        let none = vec![0; kinds.len()];
        let share = kinds.iter().map(|k| k.1).collect();
        Shares { kinds, share, tried: none.clone(), useful: none, since: 0, last: 0 }
    }

    fn draw(&mut self, rng: &mut Xoshiro256PlusPlus) -> Kind {
        let mut draw = rng.random_range(0..self.share.iter().sum::<u32>());
        let mut k = 0;
        while draw >= self.share[k] {
            draw -= self.share[k];
            k += 1;
        }
        self.since += 1;
        if self.since == LOOK {
            self.set();
        }
        self.tried[k] += 1;
        self.last = k;
        self.kinds[k].0
    }

    /// Sets the shares by what each kind brought for the work that it was.
    fn set(&mut self) {
        let rate = |k: usize| {
            let work = u64::from(self.tried[k].max(1)) * u64::from(self.kinds[k].2);
            (u64::from(self.useful[k]) * 1_000_000 + 1000) / work
        };
        let rates: Vec<u64> = (0..self.kinds.len()).map(rate).collect();
        let firsts = || self.kinds.iter().map(|k| u64::from(k.1));
        let mean = rates.iter().zip(firsts()).map(|(r, f)| r * f).sum::<u64>()
            / firsts().sum::<u64>().max(1);
        for ((share, first), rate) in self.share.iter_mut().zip(firsts()).zip(rates) {
            let aim = (first * rate / mean.max(1)).clamp(first / BOUND, first * BOUND) as u32;
            *share = (*share * 3 + aim).div_ceil(4);
        }
        self.tried.fill(0);
        self.useful.fill(0);
        self.since = 0;
    }
}

/// Which kind of move is tried next, for lots on the cart and for those off it.
#[derive(Clone, Debug)]
pub(super) struct Kinds {
    on_cart: Shares,
    off_cart: Shares,
    /// For which of them the last one was drawn; nothing where none was.
    last: Option<bool>,
}

impl Default for Kinds {
    fn default() -> Kinds {
        let (on_cart, off_cart) = (Shares::new(ON_CART), Shares::new(OFF_CART));
        Kinds { on_cart, off_cart, last: None }
    }
}

impl Kinds {
    /// Draws a kind for a lot.
    pub fn draw(&mut self, is_on_cart: bool, rng: &mut Xoshiro256PlusPlus) -> Kind {
        self.last = Some(is_on_cart);
        let shares = if is_on_cart { &mut self.on_cart } else { &mut self.off_cart };
        shares.draw(rng)
    }

    /// The next move is of none of these kinds.
    pub fn pass(&mut self) {
        self.last = None;
    }

    /// The last move made the best layout of the run.
    pub fn note_useful(&mut self) {
        let shares = match self.last {
            Some(true) => &mut self.on_cart,
            Some(false) => &mut self.off_cart,
            None => return,
        };
        shares.useful[shares.last] += 1;
    }
}
