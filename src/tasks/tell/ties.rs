//! Companions, families and jobs, as a layout has them.

use crate::domain::Face;
use crate::score::{COSTS, Ledger, Scope, subject};
use crate::site::{Board, Faces, Tour};
use crate::tasks::outcome::{Companions, Family, Job, Missing};
use crate::units::Price;

/// Every pair of companions, in the order of the inventory.
pub(super) fn companions(board: &Board, ledger: &Ledger) -> Vec<Companions> {
    let site = board.site();
    let name = |item: u32| site.items[item as usize].name.clone();
    let faces = |item: u32| ledger.tally().item(item).iter().collect();
    let pairs = site.ties.companions.iter().enumerate();
    pairs
        .map(|(n, pair)| {
            let both = [pair.one, pair.other];
            let (price, told) = priced(board, ledger, Scope::Companions, n);
            Companions {
                items: both.map(name),
                faces: both.map(faces),
                uses: pair.uses,
                price,
                told,
            }
        })
        .collect()
}

/// What the cards of a scope say of one subject, all together.
fn priced(board: &Board, ledger: &Ledger, scope: Scope, n: usize) -> (Price, String) {
    let cards = (0..COSTS.len()).filter(|&c| COSTS[c].scope == scope);
    let parts: Vec<_> = cards.map(|c| subject(board, ledger, c, n)).collect();
    let told: Vec<String> = parts.iter().map(|p| p.told.clone()).collect();
    (parts.iter().map(|p| p.price).sum(), told.join("; "))
}

/// Every family that has something on the cart, in the order of the inventory.
pub(super) fn families(board: &Board, ledger: &Ledger) -> Vec<Family> {
    let site = board.site();
    let all = site.ties.families.iter().enumerate().map(|(n, family)| {
        let here = |face: &Face| {
            let of = |l: &usize| family.items.contains(&(site.lots[*l].item as u32));
            let on = |l: &usize| ledger.tally().seat(*l).is_some_and(|s| s.face == *face);
            (*face, (0..site.lots.len()).filter(of).filter(on).count())
        };
        let faces = Face::ALL.iter().map(here).filter(|(_, n)| *n > 0).collect();
        let (price, _) = priced(board, ledger, Scope::Family, n);
        Family { name: family.name.clone(), faces, price }
    });
    all.filter(|f| !f.faces.is_empty()).collect()
}

/// Every job, in the order of the shop file.
pub(super) fn jobs(board: &Board, ledger: &Ledger) -> Vec<Job> {
    let site = board.site();
    let one = |(n, job): (usize, &crate::site::Job)| {
        let faces = ledger.tally().round(site, n);
        let (station, Tour { faces: tour, walk }) = tour(board, faces);
        let (price, _) = priced(board, ledger, Scope::Job, n);
        let missing = job.items.iter().filter_map(|&item| missing(board, item as usize));
        Job {
            name: job.name.clone(),
            uses: job.uses,
            missing: missing.collect(),
            tour,
            station,
            walk,
            price,
        }
    };
    site.ties.jobs.iter().enumerate().map(one).collect()
}

/// The station where most is fetched, and the tour round those faces there.
fn tour(board: &Board, faces: Faces) -> (String, Tour) {
    let main = board.site().tours.main();
    main.map_or_else(Default::default, |legs| (legs.station.clone(), legs.tour(faces)))
}

/// What a job that asks for an item misses of it: all copies, or where one fetch brings all, those that are off.
fn missing(board: &Board, item: usize) -> Option<Missing> {
    let site = board.site();
    let lots = (0..site.lots.len()).filter(|&l| site.lots[l].item == item);
    let off: u32 = lots.filter(|&l| board.place(l).is_none()).map(|l| site.lots[l].copies).sum();
    let it = &site.items[item];
    let enough = if it.take_all { off == 0 } else { off < it.count };
    (!enough).then(|| Missing { item: it.name.clone(), copies: off, of: it.count })
}
