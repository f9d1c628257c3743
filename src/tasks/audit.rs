//! The layout as it stands, judged: what is broken, what is wrong in the file, what costs most, and what would help.

mod causes;
mod words;

use super::outcome::{Effort, Plan};
use super::standing::{EntryFinding, Standing, standing};
use super::{plan, tell};
use crate::domain::{Layout, Workspace};
use crate::finding::Finding;
use crate::score::{Ledger, Score};
use crate::site::{Board, Change, Site};
use crate::solve::{self, Advice, Remedy, Settings, Watch, advise, series, solve, take};
use crate::units::Price;
use causes::{Cause, causes};

/// A remedy that gains less a week is not worth the work: design choice.
const LEAST_GAIN: i64 = 100_000;
/// How many remedies are applied one after another to see how far they go.
const FIRST: usize = 3;

/// What kind of finding.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum AuditKind {
    /// A rule is broken.
    Rule,
    /// Layout and inventory do not agree.
    Entry,
    /// It may stay so, but costs time.
    Cost,
}

impl AuditKind {
    /// The word for it in reports.
    pub const fn name(self) -> &'static str {
        match self {
            AuditKind::Rule => "rule",
            AuditKind::Entry => "entry",
            AuditKind::Cost => "cost",
        }
    }
}

/// What would help.
#[derive(Clone, Debug)]
pub struct AuditRemedy {
    /// In words.
    pub text: String,
    /// What it gains a week by all that is priced, fetching from elsewhere included; under nought where it costs.
    pub gain: Price,
    /// What is moved, in order; empty where the carcass is to be changed.
    pub changes: Vec<Change>,
}

/// Something that the audit found.
#[derive(Clone, Debug)]
pub struct AuditFinding {
    /// The item concerned, where it is one.
    pub item: Option<String>,
    /// What kind.
    pub kind: AuditKind,
    /// Measured value, limit and source, in words.
    pub what: String,
    /// What it costs a week.
    pub price: Price,
    /// The best single remedy, the shortest series or the smallest change of the carcass.
    pub remedy: Option<AuditRemedy>,
}

/// What a layout is worth.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Value {
    /// How many rules are broken.
    pub broken: i64,
    /// All terms.
    pub cost: Price,
    /// Fetching from elsewhere what is not on the cart.
    pub off_cart: Price,
}

impl Value {
    fn of(score: Score) -> Value {
        Value {
            broken: score.broken,
            cost: Price::us(score.cost),
            off_cart: Price::us(score.off_cart),
        }
    }
    /// Terms and fetching from elsewhere together.
    pub fn total(&self) -> Price {
        self.cost + self.off_cart
    }
}

/// Things that are wanted daily and stand at a wall in one station.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct AtWall {
    /// The station.
    pub station: String,
    /// The items.
    pub items: Vec<String>,
}

/// A layout as it stands, judged.
#[derive(Clone, Debug)]
pub struct Audit {
    /// Everything that is told of a plan, told of this layout.
    pub plan: Plan,
    /// What was found: broken rules first, then entries, then what costs most.
    pub findings: Vec<AuditFinding>,
    /// The layout now.
    pub now: Value,
    /// The best that was found for the same things.
    pub best: Value,
    /// The layout with the first remedies that gain, one after the other.
    pub after: Value,
    /// How many they are.
    pub applied: usize,
    /// What is wanted daily and stands at a wall, station by station.
    pub at_wall: Vec<AtWall>,
    /// The question as the layout divides its copies: what the changes of the remedies speak of.
    pub site: Site,
    /// Where everything is.
    pub places: Vec<Option<crate::site::Place>>,
}

impl Audit {
    /// Whether nothing is broken, nothing is wrong in the file and nothing is left out.
    pub fn is_good(&self) -> bool {
        self.plan.left_out.is_empty() && self.findings.iter().all(|f| f.kind == AuditKind::Cost)
    }
}

/// Judges a layout as it stands. The best possible is looked for with a small fixed effort, whatever the settings say.
///
/// # Errors
/// Every way in which the carcass contradicts itself.
pub fn audit(
    workspace: &Workspace,
    layout: &Layout,
    settings: &Settings,
    watch: &Watch,
) -> Result<Audit, Vec<Finding>> {
    let Standing { workspace, site, places, findings: entries, arranged, .. } =
        standing(workspace, layout)?;
    let workspace = &workspace;
    let board = Board::with(&site, &places);
    let ledger = Ledger::new(&board);
    let causes = causes(&board, &ledger);
    let wrongs: Vec<_> = causes.iter().map(|c| c.wrong.clone()).collect();
    let advice = advise(&board, &ledger, &wrongs);
    let judged = Judged { workspace, board: &board, ledger: &ledger, advice: &advice };
    let mut findings = judged.rules(&causes);
    findings.extend(entries.iter().map(|e| judged.entry(e)));
    findings.extend(judged.costs());
    let (after, applied) = apply_first(&board, &ledger, &findings);
    let small = Settings { effort: solve::Effort::Quick, ..*settings };
    let found = solve(&Site::new(workspace)?, &small, watch);
    let best = found.score.min(after).min(ledger.score());
    let mut plan = whole(&judged, settings.seed, &entries);
    plan.effort = Effort::of(found.spent, found.end, &small);
    plan.effort.moves += advice.priced;
    plan.effort.priced += advice.priced;
    let guessed = arranged.iter().filter(|a| **a).count();
    if guessed > 0 {
        let text =
            format!("{guessed} entries name no position: a fitting arrangement was found for them");
        plan.notes.push(Finding::note(text));
    }
    let (now, at_wall) = (Value::of(ledger.score()), words::at_wall(&board, &ledger, workspace));
    let (best, after) = (Value::of(best), Value::of(after));
    drop(ledger);
    drop(board);
    Ok(Audit { plan, findings, now, best, after, applied, at_wall, site, places })
}

/// The layout as a plan tells it.
fn whole(judged: &Judged, seed: u64, entries: &[EntryFinding]) -> Plan {
    let Judged { workspace, board, ledger, .. } = *judged;
    let mut plan = tell::plan(board, ledger, workspace);
    let site = board.site();
    plan.seed = seed;
    plan.start = plan::compare(site, board);
    let kept = ledger.score().broken == 0 && all_at_home(board);
    plan.bound = plan::proof(site, ledger.score(), plan.handling, kept, None);
    for left in &mut plan.left_out {
        if let Some(entry) = entries.iter().find(|e| e.item == left.copy.item) {
            left.why.clone_from(&entry.what);
        }
    }
    plan
}

/// Whether everything on the cart is where the inventory lets it be: only then does the lower bound hold.
fn all_at_home(board: &Board) -> bool {
    let site = board.site();
    (0..site.lots.len()).all(|l| {
        board.place(l).is_none_or(|p| site.lots[l].homes.contains(&p.home))
            && site.lots[l].fixed.is_none()
    })
}

/// Applies the first remedies that gain, one after the other; what an earlier one made impossible is passed over.
fn apply_first(board: &Board, ledger: &Ledger, findings: &[AuditFinding]) -> (Score, usize) {
    let (mut board, mut ledger) = (board.clone(), ledger.clone());
    let mut done: Vec<&[Change]> = Vec::new();
    for remedy in findings.iter().filter_map(|f| f.remedy.as_ref()) {
        let fresh = !remedy.changes.is_empty() && !done.contains(&remedy.changes.as_slice());
        if done.len() == FIRST || remedy.gain <= Price::ZERO || !fresh {
            continue;
        }
        if take(&mut board, &mut ledger, &remedy.changes) {
            done.push(&remedy.changes);
        }
    }
    (ledger.score(), done.len())
}

/// A broken rule as it is told: several breaches where one remedy mends them all.
struct Told {
    rule: &'static str,
    source: &'static str,
    words: Vec<String>,
    mended: bool,
    changes: Vec<Change>,
    at: usize,
}

impl Told {
    fn what(&self) -> String {
        let none = match self.mended {
            true => "",
            false => "; no move, swap or short series was found that mends it",
        };
        format!("{}: {} ({}){none}", self.rule, self.words.join("; "), self.source)
    }
}

/// What the findings are told from.
struct Judged<'a, 's> {
    workspace: &'a Workspace,
    board: &'a Board<'s>,
    ledger: &'a Ledger,
    advice: &'a Advice,
}

impl Judged<'_, '_> {
    fn remedy(&self, remedy: &Remedy) -> AuditRemedy {
        let score = self.ledger.score();
        AuditRemedy {
            text: words::changes(self.board, &remedy.changes),
            gain: Price::us(score.cost + score.off_cart - remedy.total()),
            changes: remedy.changes.clone(),
        }
    }

    /// Whether a remedy gains enough to be told.
    fn gains(&self, remedy: &Remedy) -> bool {
        let score = self.ledger.score();
        score.cost + score.off_cart - remedy.total() >= LEAST_GAIN
    }

    /// What is broken, each with the single remedy, else the series, else the change of the carcass that mends it.
    fn rules(&self, causes: &[Cause]) -> Vec<AuditFinding> {
        let mut all: Vec<AuditFinding> = Vec::new();
        let mut told: Vec<Told> = Vec::new();
        for (n, cause) in causes.iter().enumerate() {
            let single = self.advice.of_wrong[n].as_ref().map(|r| self.remedy(r));
            let several = || series(self.board, self.ledger, &cause.wrong).map(|r| self.remedy(&r));
            let carcass = || {
                words::carcass(self.board, cause, self.workspace.carcass.units)
                    .map(|text| AuditRemedy { text, gain: Price::ZERO, changes: Vec::new() })
            };
            let remedy = single.or_else(several).or_else(carcass);
            let changes = remedy.as_ref().map_or(Vec::new(), |r| r.changes.clone());
            let alike = |t: &&mut Told| {
                t.rule == cause.rule && t.source == cause.source && t.changes == changes
            };
            // What one and the same remedy mends is told as one.
            match told.iter_mut().find(alike).filter(|_| !changes.is_empty()) {
                Some(one) => {
                    one.words.push(cause.told.clone());
                    all[one.at].what = one.what();
                }
                None => {
                    let one = Told {
                        rule: cause.rule,
                        source: cause.source,
                        words: vec![cause.told.clone()],
                        mended: remedy.is_some(),
                        changes,
                        at: all.len(),
                    };
                    all.push(AuditFinding {
                        item: cause.item.clone(),
                        kind: AuditKind::Rule,
                        what: one.what(),
                        price: Price::ZERO,
                        remedy,
                    });
                    told.push(one);
                }
            }
        }
        all
    }

    fn entry(&self, entry: &EntryFinding) -> AuditFinding {
        let lot = entry.lot;
        let off = lot.filter(|&l| self.board.place(l).is_none());
        AuditFinding {
            item: Some(entry.item.clone()),
            kind: AuditKind::Entry,
            what: entry.what.clone(),
            price: off.map_or(Price::ZERO, |l| self.board.site().lots[l].off_cart),
            remedy: lot.and_then(|l| self.advice.of_lot[l].as_ref()).map(|r| self.remedy(r)),
        }
    }

    /// What costs, the dearest first.
    fn costs(&self) -> Vec<AuditFinding> {
        let lots = 0..self.board.site().lots.len();
        let mut all: Vec<AuditFinding> = lots.filter_map(|l| self.lot(l)).collect();
        all.extend(self.whole_cart());
        all.extend(words::ties(self.board, self.ledger).into_iter().map(|(what, price)| {
            AuditFinding { item: None, kind: AuditKind::Cost, what, price, remedy: None }
        }));
        all.sort_by(|a, b| b.price.cmp(&a.price).then_with(|| a.item.cmp(&b.item)));
        all
    }

    /// What one lot's place costs, where it is worth a word.
    fn lot(&self, lot: usize) -> Option<AuditFinding> {
        let site = self.board.site();
        self.board.place(lot)?;
        let what = words::place(self.board, self.ledger, lot, self.workspace)?;
        let price = words::price(self.board, self.ledger, lot);
        Some(AuditFinding {
            item: Some(site.items[site.lots[lot].item].name.clone()),
            kind: AuditKind::Cost,
            what,
            price,
            remedy: self.advice.of_lot[lot]
                .as_ref()
                .filter(|r| self.gains(r))
                .map(|r| self.remedy(r)),
        })
    }

    /// Casters and tipping: what they cost, and margins that are nearly used up.
    fn whole_cart(&self) -> Option<AuditFinding> {
        let price = self.ledger.whole_cart();
        let what = words::margins(self.board, price > Price::ZERO)?;
        Some(AuditFinding {
            item: None,
            kind: AuditKind::Cost,
            what,
            price,
            remedy: self.advice.of_cart.as_ref().filter(|r| self.gains(r)).map(|r| self.remedy(r)),
        })
    }
}
