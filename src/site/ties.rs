//! What belongs together: companions, families, jobs.
//!
//! Ties are between items. Of several copies the nearest will do, but where one fetch brings all, all are gone for.

use super::Site;
use crate::domain::{Shop, Workspace};
use crate::units::Uses;

/// Two items that are used together.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Companions {
    /// One item, as an index; the lower one.
    pub one: u32,
    /// The other.
    pub other: u32,
    /// How often both are wanted: as often as the one that is wanted less.
    pub uses: Uses,
}

/// Items that people look for in one place.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Family {
    /// What it is called.
    pub name: String,
    /// Its items, as indices.
    pub items: Vec<u32>,
}

/// Items that are fetched in one tour.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Job {
    /// What it is called.
    pub name: String,
    /// Its items, as indices, each once.
    pub items: Vec<u32>,
    /// How often.
    pub uses: Uses,
}

/// The ties of one item, as indices.
#[derive(Clone, Default, PartialEq, Eq, Debug)]
pub struct Bonds {
    /// Its pairs of companions.
    pub companions: Vec<u32>,
    /// Its family.
    pub family: Option<u32>,
    /// The jobs that ask for it.
    pub jobs: Vec<u32>,
}

/// Everything that belongs together.
#[derive(Clone, Default, PartialEq, Eq, Debug)]
pub struct Ties {
    /// Pairs of companions.
    pub companions: Vec<Companions>,
    /// Families, in the order of their first items.
    pub families: Vec<Family>,
    /// Jobs, in the order of the shop file.
    pub jobs: Vec<Job>,
    /// For each item, what it is part of.
    pub of: Vec<Bonds>,
}

/// Finds all ties of a site's items.
pub(super) fn tie(site: &mut Site, workspace: &Workspace) {
    let mut ties = Ties {
        companions: companions(site),
        families: families(site),
        jobs: jobs(site, &workspace.shop),
        of: vec![Bonds::default(); site.items.len()],
    };
    for (n, pair) in ties.companions.iter().enumerate() {
        for item in [pair.one, pair.other] {
            ties.of[item as usize].companions.push(n as u32);
        }
    }
    for (n, family) in ties.families.iter().enumerate() {
        family.items.iter().for_each(|&item| ties.of[item as usize].family = Some(n as u32));
    }
    for (n, job) in ties.jobs.iter().enumerate() {
        job.items.iter().for_each(|&item| ties.of[item as usize].jobs.push(n as u32));
    }
    site.ties = ties;
}

fn named(site: &Site, name: &str) -> Option<u32> {
    site.items.iter().position(|i| i.name == name).map(|n| n as u32)
}

/// Each pair once, whichever of the two names the other.
fn companions(site: &Site) -> Vec<Companions> {
    let mut all: Vec<Companions> = Vec::new();
    for (n, item) in site.items.iter().enumerate() {
        for (name, _) in &item.with {
            let Some(with) = named(site, name).filter(|&w| w != n as u32) else { continue };
            let (one, other) = (with.min(n as u32), with.max(n as u32));
            if !all.iter().any(|c| (c.one, c.other) == (one, other)) {
                let uses = item.uses.min(site.items[with as usize].uses);
                all.push(Companions { one, other, uses });
            }
        }
    }
    all
}

fn families(site: &Site) -> Vec<Family> {
    let mut all: Vec<Family> = Vec::new();
    for (n, item) in site.items.iter().enumerate() {
        let Some(name) = &item.family else { continue };
        match all.iter_mut().find(|f| f.name == *name) {
            Some(family) => family.items.push(n as u32),
            None => all.push(Family { name: name.clone(), items: vec![n as u32] }),
        }
    }
    all
}

fn jobs(site: &Site, shop: &Shop) -> Vec<Job> {
    let one = |job: &crate::domain::Job| {
        let mut items: Vec<u32> = job.items.iter().filter_map(|(n, _)| named(site, n)).collect();
        items.sort_unstable();
        items.dedup();
        Job { name: job.name.clone(), items, uses: job.uses }
    };
    shop.jobs.iter().map(one).collect()
}
