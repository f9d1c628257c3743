//! Judging a layout as it stands: remedies are the best there are, and gain what is said.

use super::standing::{entry, planned, quick};
use crate::support::carts::{self, Dice, Size};
use toolberth::domain::{Layout, Workspace};
use toolberth::score::{Ledger, RULES, Score};
use toolberth::site::{Board, Change, Clearing, Place, Site, box_at, fits_at, for_each_corner};
use toolberth::solve::{Watch, Wrong, advise};
use toolberth::tasks::audit::{Audit, AuditKind, audit};
use toolberth::tasks::standing::standing;

fn judge(workspace: &Workspace, layout: &Layout) -> Audit {
    audit(workspace, layout, &quick(), &Watch::default()).expect("a sound cart")
}

/// A planned layout with some of its entries put elsewhere at random, legal or not.
fn shuffled(workspace: &Workspace, seed: u64) -> Layout {
    let (mut layout, _) = planned(workspace);
    let mut dice = Dice::new(seed);
    let n = layout.entries.len() as i64;
    for _ in 0..4 {
        if n < 2 {
            break;
        }
        let (a, b) = (dice.whole(0, n - 1) as usize, dice.whole(0, n - 1) as usize);
        let (one, other) = (layout.entries[a].clone(), layout.entries[b].clone());
        let e = &mut layout.entries[a];
        (e.face, e.bay, e.surface, e.at) = (other.face, other.bay, other.surface, other.at);
        (e.pose, e.turned) = (None, None);
        let e = &mut layout.entries[b];
        (e.face, e.bay, e.surface, e.at) = (one.face, one.bay, one.surface, one.at);
        (e.pose, e.turned) = (None, None);
    }
    layout
}

/// The value of a board weighed afresh, and every excess.
fn weigh(board: &Board) -> (Score, Vec<i64>) {
    let ledger = Ledger::new(board);
    let all = (0..RULES.len())
        .flat_map(|r| (0..ledger.rule_subjects(r)).map(move |s| (r, s)))
        .map(|(r, s)| ledger.excess(r, s))
        .collect();
    (ledger.score(), all)
}

fn with(board: &Board, changes: &[Change]) -> Vec<Option<Place>> {
    let mut places = board.places().to_vec();
    changes.iter().for_each(|c| places[c.lot] = c.to);
    places
}

/// Every legal single move and swap, by the definition alone.
fn singles(site: &Site, board: &Board) -> Vec<Vec<Change>> {
    let free = |l: &usize| site.lots[*l].fixed.is_none() && !site.items[site.lots[*l].item].fixed;
    let lots: Vec<usize> = (0..site.lots.len()).filter(free).collect();
    let mut clearing = Clearing::default();
    let mut all = Vec::new();
    for &lot in &lots {
        for home in &site.lots[lot].homes {
            for_each_corner(board, lot, home, &mut clearing, |place| {
                if board.place(lot) != Some(&place) {
                    all.push(vec![Change { lot, to: Some(place) }]);
                }
                true
            });
        }
    }
    for &one in &lots {
        for &other in lots.iter().filter(|&&o| o > one) {
            let (Some(a), Some(b)) = (board.place(one), board.place(other)) else { continue };
            let same = site.lots[one].item == site.lots[other].item
                && site.lots[one].copies == site.lots[other].copies;
            if same {
                continue;
            }
            let lifted = Board::with(
                site,
                &with(board, &[Change { lot: one, to: None }, Change { lot: other, to: None }]),
            );
            for to_b in corners(site, one, b) {
                if !fits_at(&lifted, one, &to_b, &mut clearing) {
                    continue;
                }
                let half =
                    Board::with(site, &with(&lifted, &[Change { lot: one, to: Some(to_b) }]));
                for to_a in corners(site, other, a) {
                    let still = to_b == *a && to_a == *b;
                    if !still && fits_at(&half, other, &to_a, &mut clearing) {
                        all.push(vec![
                            Change { lot: one, to: Some(to_b) },
                            Change { lot: other, to: Some(to_a) },
                        ]);
                    }
                }
            }
        }
    }
    all
}

/// The corners of another's box for a lot, in every form.
fn corners(site: &Site, lot: usize, there: &Place) -> Vec<Place> {
    let mut all = Vec::new();
    for home in site.lots[lot].homes.iter().filter(|h| h.surface == there.home.surface) {
        let free = site.free(home.surface as usize);
        let [p, q] = site.surfaces[home.surface as usize].free_axes();
        // Any box in that home touches the surface; its free axes are set below.
        let mut space = box_at(site, home, &free, [Default::default(); 2]);
        for high_p in [false, true] {
            for high_q in [false, true] {
                for (axis, high) in [(p, high_p), (q, high_q)] {
                    let extent = home.extents[axis];
                    let at =
                        if high { there.space.max[axis] - extent } else { there.space.min[axis] };
                    (space.min[axis], space.max[axis]) = (at, at + extent);
                }
                all.push(Place { home: *home, space });
            }
        }
    }
    all
}

fn total(score: Score) -> i64 {
    score.cost + score.off_cart
}

#[test]
fn remedies_are_the_best_of_all_single_moves_and_swaps() {
    let (mut mended, mut gained) = (0, 0);
    for seed in 0..60 {
        let workspace = carts::cart(seed, Size::Small);
        let layout = shuffled(&workspace, seed);
        let read = standing(&workspace, &layout).expect("a sound cart");
        let board = Board::with(&read.site, &read.places);
        let ledger = Ledger::new(&board);
        let wrongs: Vec<Wrong> = (0..RULES.len())
            .flat_map(|r| (0..ledger.rule_subjects(r)).map(move |s| (r, s)))
            .filter(|&(r, s)| ledger.excess(r, s) > 0)
            .map(|subject| Wrong { subjects: vec![subject] })
            .collect();
        let advice = advise(&board, &ledger, &wrongs);
        let (_, before) = weigh(&board);
        let mut of_lot: Vec<Option<i64>> = vec![None; read.site.lots.len()];
        let mut of_wrong: Vec<Option<i64>> = vec![None; wrongs.len()];
        let less = |best: &mut Option<i64>, t: i64| *best = Some(best.map_or(t, |b| b.min(t)));
        for changes in singles(&read.site, &board) {
            let after = Board::with(&read.site, &with(&board, &changes));
            let (score, excess) = weigh(&after);
            if excess.iter().zip(&before).any(|(a, b)| a > b) {
                continue;
            }
            changes.iter().for_each(|c| less(&mut of_lot[c.lot], total(score)));
            let weighed = Ledger::new(&after);
            for (wrong, best) in wrongs.iter().zip(&mut of_wrong) {
                let (r, s) = wrong.subjects[0];
                if weighed.excess(r, s) == 0 {
                    less(best, total(score));
                }
            }
        }
        let found = |r: &Option<toolberth::solve::Remedy>| r.as_ref().map(|r| r.total());
        assert_eq!(advice.of_lot.iter().map(found).collect::<Vec<_>>(), of_lot, "seed {seed}");
        assert_eq!(advice.of_wrong.iter().map(found).collect::<Vec<_>>(), of_wrong, "seed {seed}");
        mended += of_wrong.iter().flatten().count();
        gained += of_lot.iter().flatten().filter(|t| **t < total(ledger.score())).count();
    }
    assert!(mended > 10 && gained > 50, "the carts are too tame: {mended} mended, {gained} gained");
}

#[test]
fn a_remedy_gains_exactly_what_is_said_and_breaks_nothing() {
    let mut applied = 0;
    for seed in 100..130 {
        let workspace = carts::cart(seed, Size::Middle);
        let layout = shuffled(&workspace, seed);
        let audit = judge(&workspace, &layout);
        let board = Board::with(&audit.site, &audit.places);
        let (before, excess) = weigh(&board);
        assert_eq!(total(before), audit.now.total().as_us());
        for remedy in audit.findings.iter().filter_map(|f| f.remedy.as_ref()) {
            if remedy.changes.is_empty() {
                continue;
            }
            let after = Board::with(&audit.site, &with(&board, &remedy.changes));
            let (score, now) = weigh(&after);
            assert_eq!(
                total(before) - total(score),
                remedy.gain.as_us(),
                "seed {seed}: {}",
                remedy.text
            );
            assert!(now.iter().zip(&excess).all(|(a, b)| a <= b), "seed {seed}: {}", remedy.text);
            applied += 1;
        }
        assert!(audit.after.total() <= audit.now.total(), "seed {seed}");
        assert!(audit.best.broken <= audit.now.broken, "seed {seed}");
    }
    assert!(applied > 100, "{applied}");
}

#[test]
fn a_rule_with_a_remedy_of_moves_is_kept_after_them() {
    let mut mended = 0;
    for seed in 200..230 {
        let workspace = carts::cart(seed, Size::Middle);
        let audit = judge(&workspace, &shuffled(&workspace, seed));
        let board = Board::with(&audit.site, &audit.places);
        let (before, _) = weigh(&board);
        for found in audit.findings.iter().filter(|f| f.kind == AuditKind::Rule) {
            let Some(remedy) = found.remedy.as_ref().filter(|r| !r.changes.is_empty()) else {
                continue;
            };
            let after = Board::with(&audit.site, &with(&board, &remedy.changes));
            let (score, _) = weigh(&after);
            assert!(score.broken < before.broken, "seed {seed}: {}", found.what);
            mended += 1;
        }
    }
    assert!(mended > 20, "{mended}");
}

#[test]
fn findings_come_in_order_and_a_sound_plan_has_none_but_costs() {
    for seed in 0..20 {
        let workspace = carts::cart(seed, Size::Middle);
        let audit = judge(&workspace, &shuffled(&workspace, seed + 7));
        assert!(audit.findings.is_sorted_by_key(|f| f.kind), "seed {seed}");
        let costs = audit.findings.iter().filter(|f| f.kind == AuditKind::Cost);
        assert!(costs.clone().map(|f| f.price).is_sorted_by(|a, b| a >= b), "seed {seed}");
        let (layout, plan) = planned(&workspace);
        let good = plan.left_out.is_empty() && plan.worth.broken.is_empty();
        assert_eq!(judge(&workspace, &layout).is_good(), good, "seed {seed}");
    }
}

#[test]
fn it_holds_on_empty_overlapping_overfull_and_strange_layouts() {
    for seed in 0..20 {
        let workspace = carts::cart(seed, Size::Middle);
        let empty = judge(&workspace, &Layout::default());
        assert!(empty.places.iter().all(Option::is_none));
        assert_eq!(
            empty.plan.left_out.len(),
            workspace.items.iter().map(|i| i.count as usize).sum::<usize>()
        );
        assert!(!empty.is_good());
        let (mut layout, _) = planned(&workspace);
        let Some(first) = layout.entries.first().cloned() else { continue };
        // Everything in one place.
        for e in &mut layout.entries {
            (e.face, e.bay, e.surface) = (first.face, first.bay.clone(), first.surface.clone());
            e.at = first.at;
        }
        let heap = judge(&workspace, &layout);
        if layout.entries.len() > 1 {
            assert!(heap.findings.iter().any(|f| f.kind == AuditKind::Rule), "seed {seed}");
        }
        // The same without positions: more than fits.
        layout.entries.iter_mut().for_each(|e| e.at = None);
        judge(&workspace, &layout);
        layout.entries.push(entry("stranger", "nowhere"));
        let strange = judge(&workspace, &layout);
        assert!(strange.findings.iter().any(|f| f.item.as_deref() == Some("stranger")));
    }
}
