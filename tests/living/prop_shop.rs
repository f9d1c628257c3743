//! The prop shop's layout, written by hand with faults of many kinds: the audit names them all, and no false one.

use std::path::Path;
use toolberth::domain::Workspace;
use toolberth::files;
use toolberth::score::Ledger;
use toolberth::site::Board;
use toolberth::solve::{Settings, Watch, take};
use toolberth::tasks::audit::{Audit, AuditKind, audit};
use toolberth::units::Price;

fn shop() -> Workspace {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("demo-data/prop-shop");
    let loaded = files::load(&folder);
    loaded.workspace.unwrap_or_else(|| panic!("{:?}", loaded.findings))
}

fn judged() -> Audit {
    let shop = shop();
    let layout = shop.layout.clone().expect("it has a layout");
    audit(&shop, &layout, &Settings::default(), &Watch::default()).expect("a sound cart")
}

/// Kind, item where it is one, and words of every planted fault.
const PLANTED: [(AuditKind, &str, &str); 15] = [
    (AuditKind::Rule, "carving knives", "uncovered edge"),
    (AuditKind::Rule, "staple gun", "in one place"),
    (AuditKind::Rule, "stage weights", "above the shoulder"),
    (AuditKind::Rule, "wood stain", "can drip on extension reel"),
    (AuditKind::Rule, "upper right / shelf 1", "carries"),
    (AuditKind::Rule, "first aid box", "in a drawer"),
    (AuditKind::Rule, "small extinguisher", "at a wall"),
    (AuditKind::Rule, "hot glue gun", "sparks or heat beside what burns"),
    (AuditKind::Entry, "wig block", "does not fit"),
    (AuditKind::Entry, "smoke machine", "not in the inventory"),
    (AuditKind::Entry, "claw hammer", "entered twice"),
    (AuditKind::Entry, "mallet", "did you mean panel"),
    (AuditKind::Entry, "multimeter", "nowhere in the layout"),
    (AuditKind::Cost, "screwdriver rack", "hidden behind"),
    (AuditKind::Cost, "goggle box", "in the wings"),
];

#[test]
fn every_planted_fault_is_named() {
    let audit = judged();
    for (kind, item, words) in PLANTED {
        let named = audit
            .findings
            .iter()
            .any(|f| f.kind == kind && f.what.contains(item) && f.what.contains(words));
        assert!(named, "{item}: {words}");
    }
    assert!(!audit.is_good());
}

#[test]
fn no_rule_is_called_broken_that_is_kept() {
    for found in judged().findings.iter().filter(|f| f.kind == AuditKind::Rule) {
        let planted = PLANTED.iter().any(|(kind, item, words)| {
            *kind == AuditKind::Rule && found.what.contains(item) && found.what.contains(words)
        });
        assert!(planted, "{}", found.what);
    }
}

#[test]
fn the_first_remedies_really_gain_what_is_said() {
    let audit = judged();
    let mut board = Board::with(&audit.site, &audit.places);
    let mut ledger = Ledger::new(&board);
    let first = audit.findings.iter().filter_map(|f| f.remedy.as_ref());
    let (mut applied, mut gained) = (0, Price::ZERO);
    for remedy in first.filter(|r| r.gain > Price::ZERO && !r.changes.is_empty()) {
        // Alone it gains what it says.
        let (mut alone, mut weighed) = (
            Board::with(&audit.site, &audit.places),
            Ledger::new(&Board::with(&audit.site, &audit.places)),
        );
        let before = weighed.score();
        assert!(take(&mut alone, &mut weighed, &remedy.changes), "{}", remedy.text);
        let after = weighed.score();
        let gain = before.cost + before.off_cart - after.cost - after.off_cart;
        assert_eq!(gain, remedy.gain.as_us(), "{}", remedy.text);
        let before = ledger.score();
        if applied < audit.applied && take(&mut board, &mut ledger, &remedy.changes) {
            let after = ledger.score();
            gained += Price::us(before.cost + before.off_cart - after.cost - after.off_cart);
            applied += 1;
        }
    }
    assert_eq!(applied, audit.applied);
    assert_eq!(audit.now.total() - gained, audit.after.total());
}
