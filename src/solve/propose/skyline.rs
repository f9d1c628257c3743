//! Filling a rectangle with rectangles from one side: the lowest gap of the skyline takes what suits it best.
//!
//! How well a piece suits a gap is told by which of its edges come to lie flush: one that is as wide as the gap and as
//! high as its walls leaves nothing jagged. Of those that suit equally well the first in the order is taken, so that the
//! order decides the filling, and a search can go over orders. The order in which pieces were put is again an order, and
//! leads to the same filling.

/// What there is to put into the rectangle.
#[derive(Clone, Debug, Default)]
pub(super) struct Pieces {
    /// Along the rectangle and across it, for each form of each piece.
    sizes: Vec<[i64; 2]>,
    /// Where the forms of each piece begin; one more than there are pieces.
    first: Vec<usize>,
    /// What it is worth to have each piece in.
    worth: Vec<i64>,
}

/// A piece that was put, in which of its forms and where.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) struct Put {
    pub piece: usize,
    pub form: usize,
    pub at: [i64; 2],
}

/// A level stretch of what is filled: from where, how high and how long.
#[derive(Clone, Copy, Debug)]
struct Step {
    from: i64,
    level: i64,
    long: i64,
}

/// A rectangle being filled, with room to work in.
#[derive(Clone, Debug, Default)]
pub(super) struct Skyline {
    steps: Vec<Step>,
    left: Vec<usize>,
    /// What was put, in the order of putting.
    pub put: Vec<Put>,
}

impl Pieces {
    pub fn clear(&mut self) {
        self.sizes.clear();
        self.worth.clear();
        self.first.clear();
        self.first.push(0);
    }
    /// One piece more, in any of those forms.
    pub fn add(&mut self, worth: i64, forms: impl Iterator<Item = [i64; 2]>) {
        self.sizes.extend(forms);
        self.first.push(self.sizes.len());
        self.worth.push(worth);
    }
    pub fn len(&self) -> usize {
        self.worth.len()
    }
    fn forms(&self, piece: usize) -> &[[i64; 2]] {
        &self.sizes[self.first[piece]..self.first[piece + 1]]
    }
}

impl Skyline {
    /// Fills a rectangle so long and so high; tells what all that found room is worth.
    pub fn fill(&mut self, size: [i64; 2], pieces: &Pieces, order: &[usize]) -> i64 {
        self.steps.clear();
        self.steps.push(Step { from: 0, level: 0, long: size[0] });
        self.left.clear();
        self.left.extend_from_slice(order);
        self.put.clear();
        while !self.left.is_empty() {
            let gap = self.lowest();
            if self.steps[gap].level >= size[1] {
                break;
            }
            match self.best(gap, size[1], pieces) {
                Some((n, form)) => self.lay(gap, n, form, pieces),
                None => self.raise(gap, size[1]),
            }
        }
        self.put.iter().map(|p| pieces.worth[p.piece]).sum()
    }

    /// What was put and then what was not: an order that leads to the same filling.
    pub fn order_into(&self, order: &mut Vec<usize>) {
        order.clear();
        order.extend(self.put.iter().map(|p| p.piece));
        order.extend_from_slice(&self.left);
    }

    fn lowest(&self) -> usize {
        let steps = self.steps.iter().enumerate();
        steps.min_by_key(|(_, step)| step.level).map_or(0, |(k, _)| k)
    }

    /// How high the walls of a gap are, on both sides.
    fn walls(&self, gap: usize) -> [i64; 2] {
        let level = self.steps[gap].level;
        let wall = |k: Option<usize>| {
            k.and_then(|k| self.steps.get(k)).map_or(i64::MAX, |step| step.level - level)
        };
        [wall(gap.checked_sub(1)), wall(Some(gap + 1))]
    }

    /// The best suited piece that is left, as its number among those, and its form.
    fn best(&self, gap: usize, high: i64, pieces: &Pieces) -> Option<(usize, usize)> {
        let step = self.steps[gap];
        let over = high - step.level;
        let [one, other] = self.walls(gap);
        let (high, low) = (one.max(other).min(over), one.min(other));
        let mut best: Option<(u8, usize, usize)> = None;
        for (n, &piece) in self.left.iter().enumerate() {
            for (form, &[long, tall]) in pieces.forms(piece).iter().enumerate() {
                if long > step.long || tall > over {
                    continue;
                }
                let flush = tall == one || tall == other || tall == over;
                let suits = match (long == step.long, flush) {
                    (true, _) if tall == high => 5,
                    (true, true) => 4,
                    (true, false) if tall < low => 3,
                    (true, false) => 2,
                    (false, true) => 1,
                    (false, false) => 0,
                };
                if best.is_none_or(|b| suits > b.0) {
                    best = Some((suits, n, form));
                }
            }
            if best.is_some_and(|b| b.0 == 5) {
                break;
            }
        }
        best.map(|(_, n, form)| (n, form))
    }

    /// Lays a piece into a gap: on the left, or on the right where it is flush with the wall there alone.
    fn lay(&mut self, gap: usize, n: usize, form: usize, pieces: &Pieces) {
        let piece = self.left.remove(n);
        let [long, tall] = pieces.forms(piece)[form];
        let Step { from, level, long: whole } = self.steps[gap];
        let [one, other] = self.walls(gap);
        let right = tall == other && tall != one;
        let start = if right { from + whole - long } else { from };
        self.put.push(Put { piece, form, at: [start, level] });
        let laid = Step { from: start, level: level + tall, long };
        if long == whole {
            self.steps[gap] = laid;
            self.join(gap);
            return;
        }
        let rest = Step { from: if right { from } else { from + long }, level, long: whole - long };
        self.steps[gap] = rest;
        let at = if right { gap + 1 } else { gap };
        self.steps.insert(at, laid);
        self.join(at);
    }

    /// Nothing goes into a gap: it is given up as far as its lower wall.
    fn raise(&mut self, gap: usize, high: i64) {
        let [one, other] = self.walls(gap);
        let most = high - self.steps[gap].level;
        self.steps[gap].level += one.min(other).min(most);
        self.join(gap);
    }

    /// Joins a step with those beside it that are level with it.
    fn join(&mut self, k: usize) {
        if self.steps.get(k + 1).is_some_and(|next| next.level == self.steps[k].level) {
            self.steps[k].long += self.steps.remove(k + 1).long;
        }
        if k > 0 && self.steps[k - 1].level == self.steps[k].level {
            self.steps[k - 1].long += self.steps.remove(k).long;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use rand::rngs::Xoshiro256PlusPlus;
    use rand::{RngExt, SeedableRng};

    fn pieces(all: &[[i64; 2]]) -> Pieces {
        let mut pieces = Pieces::default();
        pieces.clear();
        all.iter().for_each(|&[a, b]| pieces.add(a * b, [[a, b], [b, a]].into_iter()));
        pieces
    }

    #[test]
    fn what_fits_flush_is_taken_first() {
        let all = pieces(&[[3, 1], [4, 2], [1, 1]]);
        let mut skyline = Skyline::default();
        assert_eq!(skyline.fill([4, 3], &all, &[2, 0, 1]), 12);
        assert_eq!(skyline.put[0], Put { piece: 1, form: 0, at: [0, 0] });
    }

    #[test]
    fn nothing_overlaps_or_sticks_out_and_the_order_of_putting_leads_to_the_same() {
        let mut rng = Xoshiro256PlusPlus::seed_from_u64(1);
        let mut full = 0;
        for _ in 0..200 {
            let sizes: Vec<[i64; 2]> =
                (0..30).map(|_| [rng.random_range(1..9i64), rng.random_range(1..9i64)]).collect();
            let all = pieces(&sizes);
            let mut skyline = Skyline::default();
            let order: Vec<usize> = (0..30).collect();
            let worth = skyline.fill([20, 20], &all, &order);
            let boxes: Vec<[[i64; 2]; 2]> = skyline
                .put
                .iter()
                .map(|p| {
                    let [a, b] = all.forms(p.piece)[p.form];
                    [[p.at[0], p.at[0] + a], [p.at[1], p.at[1] + b]]
                })
                .collect();
            for (n, b) in boxes.iter().enumerate() {
                assert!(b.iter().all(|r| r[0] >= 0 && r[1] <= 20));
                let meets =
                    |a: &[[i64; 2]; 2]| (0..2).all(|k| a[k][0] < b[k][1] && b[k][0] < a[k][1]);
                assert!(!boxes[..n].iter().any(meets));
            }
            let area: i64 = boxes.iter().map(|b| (b[0][1] - b[0][0]) * (b[1][1] - b[1][0])).sum();
            assert_eq!(worth, area);
            full += i64::from(area >= 360);
            let (before, mut again) = (skyline.put.clone(), Vec::new());
            skyline.order_into(&mut again);
            skyline.fill([20, 20], &all, &again);
            assert_eq!(skyline.put, before);
        }
        assert!(full > 150, "only {full} of 200 are nearly full");
    }
}
