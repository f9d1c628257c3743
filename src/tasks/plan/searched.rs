//! A search for places for everything, with piles and rows taken apart where they find none whole.

use crate::domain::{Layout, Workspace};
use crate::finding::Finding;
use crate::site::{Board, Site};
use crate::solve::{Cycle, Found, Restarts, Settings, Watch};
use crate::tasks::tell;

/// How many items are tried in single copies in a cycle, where a pile or a row of them found no place.
const SPLITS: usize = 4;

/// A site and what was found on it.
pub(in crate::tasks) struct Searched {
    /// The site, with the piles and rows taken apart.
    pub site: Site,
    /// The items whose piles and rows were taken apart.
    pub apart: Vec<usize>,
    restarts: Restarts,
    settings: Settings,
    /// Whether it is not the question itself that is searched.
    aside: bool,
}

impl Searched {
    /// A search that has not begun.
    ///
    /// # Errors
    /// Every way in which the carcass contradicts itself.
    pub fn new(workspace: &Workspace, settings: &Settings) -> Result<Searched, Vec<Finding>> {
        let site = Site::new(workspace)?;
        let restarts = Restarts::new(&site, settings);
        Ok(Searched { site, apart: Vec::new(), restarts, settings: *settings, aside: false })
    }

    /// The same beside another search that may do all that this one may.
    pub fn aside(self) -> Searched {
        Searched { restarts: self.restarts.aside(true), aside: true, ..self }
    }

    /// One more cycle; then one for each of the piles that found no place, in single copies.
    pub fn cycle(&mut self, workspace: &Workspace, cycle: Cycle, watch: &Watch) {
        self.restarts.cycle(&self.site, cycle, watch);
        for item in self.left_out_piles(watch).into_iter().take(SPLITS) {
            let finer = self.site.split(item, workspace);
            let mut again = Restarts::new(&finer, &self.settings).aside(true);
            again.cycle(&finer, cycle, watch);
            if again.score() < self.restarts.score() {
                again.add(&self.restarts);
                self.restarts = again.aside(self.aside);
                self.site = finer;
                self.apart.push(item);
            } else {
                self.restarts.add(&again);
            }
        }
    }

    /// What was found so far.
    pub fn found(&self, watch: &Watch) -> Found {
        self.restarts.found(watch)
    }

    /// What was found so far, as a file says it.
    pub fn layout(&self, workspace: &Workspace, watch: &Watch) -> Layout {
        let places = self.found(watch).places;
        tell::layout(&Board::with(&self.site, &places), workspace)
    }

    /// Whether nothing can be better.
    pub fn is_best(&self) -> bool {
        self.restarts.is_best()
    }

    /// The items of which a pile or a row is left out, the most valuable first.
    fn left_out_piles(&self, watch: &Watch) -> Vec<usize> {
        let (lots, places) = (&self.site.lots, self.found(watch).places);
        let mut piles: Vec<usize> = (0..lots.len())
            .filter(|&l| places[l].is_none() && lots[l].copies > 1 && lots[l].fixed.is_none())
            .collect();
        piles.sort_by_key(|&l| (std::cmp::Reverse(lots[l].off_cart), l));
        let mut items: Vec<usize> = Vec::new();
        for l in piles {
            if !items.contains(&lots[l].item) {
                items.push(lots[l].item);
            }
        }
        items
    }
}
