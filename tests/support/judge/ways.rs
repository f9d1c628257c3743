//! What must be moved first: sweeps, their closure and the order of removal.

use super::Case;
use super::frame::{Block, out_of, over_each_other, shared};
use super::site::Sort;
use std::collections::{BTreeMap, BTreeSet};
use toolberth::domain::Face;

/// Direct blockers by thing and way.
type Known = BTreeMap<(usize, Face), BTreeSet<usize>>;

/// What taking a thing out by one way would need.
struct Errand {
    first: BTreeSet<usize>,
    /// Why it cannot be done.
    hindrance: Option<String>,
}

impl Case<'_> {
    pub(super) fn ways(&mut self) {
        let mut known = Known::new();
        for n in 0..self.things.len() {
            if self.things[n].surface.is_some() && !self.tangled.contains(&n) {
                self.way(n, &mut known);
            }
        }
        self.blocked();
    }

    fn way(&mut self, n: usize, known: &mut Known) {
        let thing = &self.things[n];
        let (name, item, told) = (thing.name(), thing.placement.item.clone(), thing.placement.way);
        let space = self.space(thing).expect("it has a surface");
        let mut ways = vec![space.face];
        ways.extend(space.through.then(|| space.face.opposite()));
        if !ways.contains(&told) {
            self.complain(format!(
                "{name} is taken out by the {}, which its bay does not open to",
                told.name()
            ));
            return;
        }
        let errands: Vec<Errand> = ways.iter().map(|w| self.errand(n, *w, known)).collect();
        let mine = ways.iter().position(|w| *w == told).expect("just looked");
        let still = self.things[n].item.is_some_and(|i| i.fixed || !i.fetched);
        if self.tangled.is_disjoint(&errands[mine].first) {
            if !still && errands.iter().all(|e| e.hindrance.is_some()) {
                let why = errands[mine].hindrance.clone().unwrap_or_default();
                self.breach("retrievable", [item], format!("{name}: {why}"));
            } else if let (false, Some(why)) = (still, &errands[mine].hindrance) {
                self.complain(format!("{name} is taken out by the {} though {why}", told.name()));
            }
            self.first(n, &errands[mine], still, known);
        }
        self.closures[n] = errands.into_iter().nth(mine).expect("just looked").first;
    }

    /// The list that the plan gives against the closure, and its order.
    fn first(&mut self, n: usize, errand: &Errand, still: bool, known: &mut Known) {
        let told = &self.things[n].placement.moved_first;
        let label =
            |k: &usize| (self.things[*k].placement.item.clone(), self.things[*k].placement.copy);
        let listed: Vec<(String, u32)> = told.iter().map(|c| (c.item.clone(), c.copy)).collect();
        let want: BTreeSet<(String, u32)> = errand.first.iter().map(label).collect();
        let have: BTreeSet<(String, u32)> = listed.iter().cloned().collect();
        let unfetched = self.things[n].item.is_some_and(|i| !i.fetched);
        let right =
            if unfetched { have.is_empty() } else { have == want || (still && have.is_empty()) };
        let name = self.things[n].name();
        self.expect(right, || format!("{name}: moved first {have:?}, should be {want:?}"));
        self.expect(listed.len() == have.len(), || format!("{name}: one is moved twice"));
        if !right || errand.hindrance.is_some() {
            return;
        }
        let order: Vec<usize> = listed
            .iter()
            .filter_map(|l| errand.first.iter().copied().find(|k| label_of(self, *k) == *l))
            .collect();
        let mut gone = BTreeSet::from([n]);
        for k in order {
            let before = self.blockers(k, self.own_way(k, self.things[n].placement.way), known);
            if let Some(other) = before.difference(&gone).next() {
                let words = format!(
                    "{name}: {} is taken before {}",
                    self.things[k].name(),
                    self.things[*other].name()
                );
                self.complain(words);
                return;
            }
            gone.insert(k);
        }
    }

    /// Everything that must go for one thing along one way.
    fn errand(&self, n: usize, way: Face, known: &mut Known) -> Errand {
        let mut first = BTreeSet::new();
        let mut open: Vec<usize> = self.blockers(n, way, known).into_iter().collect();
        while let Some(k) = open.pop() {
            if first.insert(k) {
                open.extend(self.blockers(k, self.own_way(k, way), known));
            }
        }
        let nailed = first.iter().find(|k| self.things[**k].item.is_some_and(|i| i.fixed));
        let hindrance = if self.ring(&first, way, known) || first.contains(&n) {
            Some("things stand in each other's way in a ring".to_owned())
        } else if let Some(board) = self.board_before(n, way) {
            Some(format!("{board} is in the way"))
        } else {
            nailed.map(|k| format!("{} is fixed", self.things[*k].name()))
        };
        Errand { first, hindrance }
    }

    /// Whether some of these can never be taken, whatever the order.
    fn ring(&self, all: &BTreeSet<usize>, way: Face, known: &mut Known) -> bool {
        let mut left = all.clone();
        loop {
            let free = left
                .iter()
                .copied()
                .find(|k| self.blockers(*k, self.own_way(*k, way), known).is_disjoint(&left));
            match free {
                Some(k) => left.remove(&k),
                None => return !left.is_empty(),
            };
        }
    }

    /// A shelf board that the sweep of a thing would have to cross.
    fn board_before(&self, n: usize, way: Face) -> Option<&str> {
        let thing = &self.things[n];
        let swept = self.space(thing).is_some_and(|s| matches!(s.sort, Sort::Bay | Sort::Panel));
        let mut boards = self.site.boards.iter().filter(|_| swept);
        boards.find(|(_, b)| ahead(&thing.block, b, way)).map(|(what, _)| what.as_str())
    }

    /// The way by which another thing leaves while one is wanted along `way`.
    fn own_way(&self, n: usize, way: Face) -> Face {
        match self.space(&self.things[n]) {
            Some(s) if s.through && out_of(way).0 == out_of(s.face).0 => way,
            Some(s) => s.face,
            None => self.things[n].placement.face,
        }
    }

    /// What stands directly before a thing.
    fn blockers(&self, n: usize, way: Face, known: &mut Known) -> BTreeSet<usize> {
        known.entry((n, way)).or_insert_with(|| self.look(n, way)).clone()
    }

    fn look(&self, n: usize, way: Face) -> BTreeSet<usize> {
        let thing = &self.things[n];
        let Some(space) = self.space(thing) else {
            return BTreeSet::new();
        };
        let in_way = |swept: &Block, way: Face| -> BTreeSet<usize> {
            let blocks = |k: usize| {
                let sort = self.space(&self.things[k]).map(|s| s.sort);
                k != n
                    && matches!(sort, Some(Sort::Bay | Sort::Panel))
                    && ahead(swept, &self.things[k].block, way)
            };
            (0..self.things.len()).filter(|k| blocks(*k)).collect()
        };
        match space.sort {
            Sort::Bench => BTreeSet::new(),
            Sort::Drawer => {
                let over = |k: &usize| {
                    let other = &self.things[*k];
                    let here = self.space(other).is_some_and(|s| std::ptr::eq(s, space));
                    here && *k != n
                        && over_each_other(&thing.block, &other.block)
                        && other.block[0][2] >= thing.block[1][2]
                };
                let mut all: BTreeSet<usize> = (0..self.things.len()).filter(over).collect();
                all.extend(in_way(&space.inside, space.face));
                all
            }
            Sort::Bay | Sort::Panel => in_way(&thing.block, way),
        }
    }

    /// Moving things costs something, and only that does.
    fn blocked(&mut self) {
        let term =
            self.plan.worth.terms.iter().find(|(t, _)| *t == "blocked").map(|(_, p)| p.as_s());
        let moves: f64 = self
            .things
            .iter()
            .map(|t| t.placement.uses.as_week() * t.placement.moved_first.len() as f64)
            .sum();
        let Some(term) = term.filter(|_| self.tangled.is_empty()) else {
            return;
        };
        let good = if moves > 0.0 { term >= 0.5 * moves - 1e-3 } else { term == 0.0 };
        self.expect(good, || format!("blocked costs {term} s for {moves} moves a week"));
    }
}

fn label_of(case: &Case, k: usize) -> (String, u32) {
    (case.things[k].placement.item.clone(), case.things[k].placement.copy)
}

/// Whether a box lies ahead of another on its way out.
fn ahead(swept: &Block, other: &Block, way: Face) -> bool {
    let (axis, rising) = out_of(way);
    let beyond =
        if rising { other[0][axis] >= swept[1][axis] } else { other[1][axis] <= swept[0][axis] };
    beyond && (0..3).all(|k| k == axis || shared(swept, other, k) > 0)
}
