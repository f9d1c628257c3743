//! What to buy or cut.

use super::screw::Screw;
use super::work::Work;
use crate::domain::Hazard;
use crate::units::show_length;

/// So many screws of a hundred are bought to spare: common practice, no source.
const SPARE: u32 = 10;

/// One line of the shopping list.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Buy {
    /// What.
    pub what: String,
    /// How many are used.
    pub count: u32,
    /// How many more to have.
    pub spare: u32,
    /// What for.
    pub used: Vec<String>,
}

/// The whole list: what holds things, then screws and drills, then what every cart wants.
pub fn list(work: &Work, labels: usize) -> Vec<Buy> {
    let mut all = Vec::new();
    for holder in &work.holders {
        for (what, n) in &holder.parts {
            add(&mut all, what, *n, &holder.of);
        }
    }
    // Things of a kind beside one another, kinds in the order in which they are first met.
    let kind = |what: &str| what.split(' ').next().map(str::to_owned);
    let kinds: Vec<Option<String>> = all.iter().map(|b: &Buy| kind(&b.what)).collect();
    all.sort_by_key(|b| kinds.iter().position(|k| *k == kind(&b.what)));
    all.extend(screws(work));
    all.extend(drills(work));
    all.extend(always(work, labels));
    all
}

/// The screws with their spare, the thinnest and shortest first; what each is for stands in the mounting list.
fn screws(work: &Work) -> Vec<Buy> {
    let mut used: Vec<(Screw, u32)> = Vec::new();
    for (screw, n) in work.holders.iter().filter_map(|h| h.screw) {
        match used.iter_mut().find(|u| u.0 == screw) {
            Some(same) => same.1 += n,
            None => used.push((screw, n)),
        }
    }
    used.sort_unstable();
    let buy = |(screw, count): (Screw, u32)| Buy {
        what: format!("wood screw {}", screw.told(work.unit())),
        count,
        spare: (count * SPARE).div_ceil(100).max(2),
        used: Vec::new(),
    };
    used.into_iter().map(buy).collect()
}

fn add(all: &mut Vec<Buy>, what: &str, count: u32, used: &str) {
    match all.iter_mut().find(|b| b.what == what) {
        Some(buy) => {
            buy.count += count;
            if !buy.used.iter().any(|u| u == used) {
                buy.used.push(used.to_owned());
            }
        }
        None => {
            all.push(Buy { what: what.to_owned(), count, spare: 0, used: vec![used.to_owned()] })
        }
    }
}

fn once(what: String, used: &str) -> Buy {
    Buy { what, count: 1, spare: 0, used: vec![used.to_owned()] }
}

fn drills(work: &Work) -> Vec<Buy> {
    let mut gauges: Vec<_> =
        work.holders.iter().filter_map(|h| h.screw.map(|s| s.0.gauge)).collect();
    gauges.sort_unstable();
    gauges.dedup();
    let drill = |g: &super::screw::Gauge| {
        let used = format!("pilot holes for No. {}", g.number);
        once(format!("drill {} with a stop", g.drill(work.unit())), &used)
    };
    gauges.iter().map(drill).collect()
}

fn always(work: &Work, labels: usize) -> Vec<Buy> {
    let unit = work.unit();
    let [wide, deep, _] = work.site().size.map(|l| show_length(l, unit));
    let mut all = vec![once(
        format!("sheet of hardboard {wide} × {deep} for the bench top, screwed at its edges"),
        "it takes the cuts and the glue, and is replaced",
    )];
    let on = |name: &str| work.plan.placements.iter().any(|p| p.item == name);
    if work.workspace.items.iter().any(|i| i.hazards.has(Hazard::Sharp) && on(&i.name)) {
        all.push(once(
            "closed container that no blade pierces, with a slot".to_owned(),
            "used blades",
        ));
    }
    if labels > 0 {
        all.push(Buy {
            what: "label".to_owned(),
            count: labels as u32,
            spare: 0,
            used: vec!["one for each place".to_owned()],
        });
    }
    all
}
