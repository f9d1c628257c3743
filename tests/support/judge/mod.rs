//! Works a plan out again from its workspace, with its own geometry, statics and sums, and says what disagrees.
//!
//! It takes from the plan only what no file says: the mass of a carcass where none is stated, heights of shelves that
//! may be moved, zones of reach, prices. Lengths are whole nanometres, so contact is exact; statics run in mm and kg.

mod bodies;
mod carried;
mod frame;
mod homes;
mod ledger;
mod lifting;
mod room;
mod rules;
mod site;
mod spots;
mod statics;
mod ties;
mod tours;
mod ways;

pub use room::{better_left_out, overlooked};

use frame::Block;
use site::Site;
use std::collections::BTreeSet;
use toolberth::domain::{Item, Workspace};
use toolberth::tasks::outcome::{Placement, Plan};

/// All that is wrong with a plan; empty where it is good.
///
/// A breach of a rule that the plan itself names as broken is no complaint; a rule that is named without need is one.
pub fn judge(workspace: &Workspace, plan: &Plan) -> Vec<String> {
    let mut case = Case::open(workspace, plan);
    case.surfaces();
    case.counts();
    case.overlaps();
    case.clearances();
    case.homes();
    case.bodies();
    case.entries();
    case.kept();
    case.loads();
    case.carried();
    case.statics();
    case.ways();
    case.hazards();
    case.lifts();
    case.at_hand();
    case.sums();
    case.ties();
    case.spots();
    case.start_and_bound();
    case.verdict();
    case.complaints
}

/// One placement with its box and its home.
pub(crate) struct Thing<'a> {
    placement: &'a Placement,
    item: Option<&'a Item>,
    block: Block,
    /// Index of its surface.
    surface: Option<usize>,
}

impl Thing<'_> {
    fn name(&self) -> String {
        format!("{} {}", self.placement.item, self.placement.copy)
    }
    fn middle(&self) -> [f64; 3] {
        let [low, high] = self.block;
        [0, 1, 2].map(|k| (low[k] + high[k]) as f64 / 2e6)
    }
    fn kilograms(&self) -> f64 {
        self.placement.weight.as_kg()
    }
}

/// A breach of a rule as the judge found it.
pub(crate) struct Breach {
    rule: &'static str,
    names: BTreeSet<String>,
    words: String,
    /// Whether it must be named; otherwise it may be.
    sure: bool,
}

/// A plan before the judge.
pub(crate) struct Case<'a> {
    workspace: &'a Workspace,
    plan: &'a Plan,
    site: Site,
    things: Vec<Thing<'a>>,
    breaches: Vec<Breach>,
    complaints: Vec<String>,
    /// Things whose place is so wrong that what stands in their way cannot be told.
    tangled: BTreeSet<usize>,
    /// Per thing what must be moved for it.
    closures: Vec<BTreeSet<usize>>,
}

impl<'a> Case<'a> {
    fn open(workspace: &'a Workspace, plan: &'a Plan) -> Case<'a> {
        let (site, complaints) = Site::build(workspace, &plan.solids);
        let thing = |placement: &'a Placement| {
            let block = frame::block(&placement.space);
            Thing {
                placement,
                item: workspace.items.iter().find(|i| i.name == placement.item),
                block,
                surface: site.home(placement.face, &placement.bay, &placement.surface, &block),
            }
        };
        let things: Vec<Thing> = plan.placements.iter().map(thing).collect();
        let closures = vec![BTreeSet::new(); things.len()];
        let (breaches, tangled) = (Vec::new(), BTreeSet::new());
        Case { workspace, plan, site, things, breaches, complaints, tangled, closures }
    }

    fn complain(&mut self, words: impl Into<String>) {
        self.complaints.push(words.into());
    }

    /// Says so unless it holds.
    fn expect(&mut self, holds: bool, words: impl FnOnce() -> String) {
        if !holds {
            self.complaints.push(words());
        }
    }

    /// A breach that the plan must name.
    fn breach<S: Into<String>>(
        &mut self,
        rule: &'static str,
        names: impl IntoIterator<Item = S>,
        words: String,
    ) {
        let names = names.into_iter().map(Into::into).collect();
        self.breaches.push(Breach { rule, names, words, sure: true });
    }

    /// A breach that the plan may name: the contract leaves the figure open.
    fn doubt<S: Into<String>>(&mut self, rule: &'static str, names: impl IntoIterator<Item = S>) {
        let names = names.into_iter().map(Into::into).collect();
        self.breaches.push(Breach { rule, names, words: String::new(), sure: false });
    }

    fn surface(&self, thing: &Thing) -> Option<&site::Surface> {
        thing.surface.map(|s| &self.site.surfaces[s])
    }

    fn space(&self, thing: &Thing) -> Option<&site::Space> {
        self.surface(thing).map(|s| &self.site.spaces[s.space])
    }
}

/// Openings that share volume, or lie outside the cart.
pub fn collisions(workspace: &Workspace) -> Vec<String> {
    let (site, _) = Site::build(workspace, &[]);
    let [wide, deep, tall] = frame::outside(&workspace.carcass);
    let whole = [[0; 3], [wide, deep, tall]];
    let spaces: Vec<_> = site
        .spaces
        .iter()
        .filter(|s| matches!(s.sort, site::Sort::Bay | site::Sort::Drawer))
        .collect();
    let mut out = Vec::new();
    for (n, a) in spaces.iter().enumerate() {
        let solid = (0..3).all(|k| a.inside[0][k] < a.inside[1][k]);
        if frame::sticks_out(&a.inside, &whole) > 0 || !solid {
            out.push(format!("{} lies outside: {:?}", a.name, a.inside));
        }
        let met = spaces[n + 1..].iter().filter(|b| frame::overlap(&a.inside, &b.inside));
        out.extend(met.map(|b| format!("{} and {} collide", a.name, b.name)));
    }
    out
}

/// Clear volume of all bays.
pub fn litres_of_bays(workspace: &Workspace) -> f64 {
    let (site, _) = Site::build(workspace, &[]);
    let bays = site.spaces.iter().filter(|s| s.sort == site::Sort::Bay);
    bays.map(|s| (0..3).map(|k| (s.inside[1][k] - s.inside[0][k]) as f64 / 1e8).product::<f64>())
        .sum()
}
