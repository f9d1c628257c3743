//! The JSON documents of the program: lengths in mm to the nanometre, masses in kg, times in s.
//!
//! The keys are a contract: more may be added, those that are here stay.

mod asking;
mod boards;
mod drawn;
mod extreme;
mod fit_out;
mod growth;
mod lifts;
mod rolling;
mod shelves;
mod stability;
mod ties;

pub use asking::{compare, room, why};
pub use drawn::drawn;
pub use fit_out::fit_out;

use serde::{Serialize, Serializer, ser::SerializeMap};

use crate::finding::{Finding, Severity, Span};
use crate::geometry::{Box3, Point3};
use crate::tasks::audit::{Audit, AuditFinding, Value};
use crate::tasks::check::Understood;
use crate::tasks::outcome::{
    Balance, Bound, Broken, CasterLoad, Caution, Copy, Effort, Kept, LeftOut, Placement, Plan,
    Solid, Start, Step, SurfaceLoad, TermPart, Tip, Worth,
};
use crate::tasks::question::Question;
use crate::tasks::replan::{Leaving, Point, Replan, Spot, Step as Move};
use crate::units::{Length, Mass, Price};

/// A plan as one document, ending with a line break.
pub fn plan(plan: &Plan) -> String {
    text(&PlanDoc::of(plan))
}

/// A replan as one document, ending with a line break.
pub fn replan(replan: &Replan) -> String {
    text(&ReplanDoc::of(replan))
}

/// An audit as one document, ending with a line break.
pub fn audit(audit: &Audit) -> String {
    text(&AuditDoc::of(audit))
}

/// What was understood of a workspace as one document, ending with a line break.
pub fn check(understood: &Understood, notes: &[Finding]) -> String {
    text(&CheckDoc::of(understood, notes))
}

/// What is wrong with the input as one document, ending with a line break.
pub fn findings(all: &[Finding]) -> String {
    text(&FaultDoc { status: verdict(all), findings: all.iter().map(FindingRow::of).collect() })
}

fn text(document: &impl Serialize) -> String {
    // Every key is a string and every number is cleaned, so that writing cannot fail.
    let mut text = serde_json::to_string_pretty(document).unwrap_or_else(|_| String::from("null"));
    text.push('\n');
    text
}

/// A number as JSON can say it: nothing for what is no number, and no negative nought.
fn clean(number: f64) -> Option<f64> {
    number.is_finite().then_some(number + 0.0)
}

fn mm(length: Length) -> f64 {
    length.as_mm()
}

fn point(at: Point3) -> [f64; 3] {
    at.map(mm)
}

#[derive(Serialize)]
struct PlanDoc<'a> {
    name: &'a str,
    status: &'static str,
    seed: u64,
    placements: Vec<PlacementRow<'a>>,
    left_out: Vec<LeftOutRow<'a>>,
    reserve: Vec<ReserveRow<'a>>,
    growth: Vec<growth::GrowthRow<'a>>,
    companions: Vec<ties::CompanionsRow<'a>>,
    families: Vec<ties::FamilyRow<'a>>,
    jobs: Vec<ties::JobRow<'a>>,
    surfaces: Vec<SurfaceRow<'a>>,
    solids: Vec<SolidRow<'a>>,
    mass: MassRow<'a>,
    casters: Vec<CasterRow<'a>>,
    tip: Vec<TipRow<'a>>,
    boards: Vec<boards::BoardRow<'a>>,
    fixings: Vec<boards::FixingRow<'a>>,
    extremes: Vec<extreme::Row<'a>>,
    stability: stability::Row<'a>,
    rolling: rolling::Row<'a>,
    score: ScoreRow<'a>,
    handling: Cost,
    lifts: Vec<lifts::LiftRow<'a>>,
    cautions: Vec<CautionRow<'a>>,
    start: StartRow,
    bound: BoundRow,
    search: SearchRow,
    #[serde(skip_serializing_if = "Option::is_none")]
    shelves: Option<shelves::ShelvesRow<'a>>,
    loading: Vec<StepRow<'a>>,
    earning_least: Vec<EarningRow<'a>>,
    notes: Vec<FindingRow<'a>>,
    from_memory: &'a [&'static str],
}

impl<'a> PlanDoc<'a> {
    fn of(plan: &'a Plan) -> PlanDoc<'a> {
        PlanDoc {
            name: &plan.name,
            status: plan.status.name(),
            seed: plan.seed,
            placements: plan.placements.iter().map(PlacementRow::of).collect(),
            left_out: plan.left_out.iter().map(LeftOutRow::of).collect(),
            reserve: plan.reserve.iter().map(ReserveRow::of).collect(),
            growth: plan.growth.iter().map(growth::GrowthRow::of).collect(),
            companions: plan.companions.iter().map(ties::CompanionsRow::of).collect(),
            families: plan.families.iter().map(ties::FamilyRow::of).collect(),
            jobs: plan.jobs.iter().map(ties::JobRow::of).collect(),
            surfaces: plan.surfaces.iter().map(SurfaceRow::of).collect(),
            solids: plan.solids.iter().map(SolidRow::of).collect(),
            mass: MassRow::of(&plan.balance),
            casters: plan.casters.iter().map(CasterRow::of).collect(),
            tip: plan.tips.iter().map(TipRow::of).collect(),
            boards: plan.boards.iter().map(boards::BoardRow::of).collect(),
            fixings: plan.fixings.iter().map(boards::FixingRow::of).collect(),
            extremes: plan.extremes.iter().map(extreme::Row::of).collect(),
            stability: stability::Row::of(&plan.stability),
            rolling: rolling::Row::of(&plan.rolling),
            score: ScoreRow::of(&plan.worth),
            handling: Cost { seconds_per_week: plan.handling.as_s() },
            lifts: plan.lifts.iter().map(lifts::LiftRow::of).collect(),
            cautions: plan.cautions.iter().map(CautionRow::of).collect(),
            start: StartRow::of(&plan.start),
            bound: BoundRow::of(&plan.bound),
            search: SearchRow::of(&plan.effort),
            shelves: plan.shelves.as_ref().map(shelves::ShelvesRow::of),
            loading: plan.loading.iter().map(|step| StepRow::of(plan, step)).collect(),
            earning_least: EarningRow::all(plan),
            notes: plan.notes.iter().map(FindingRow::of).collect(),
            from_memory: &plan.from_memory,
        }
    }
}

#[derive(Serialize)]
struct Cost {
    seconds_per_week: f64,
}

#[derive(Serialize)]
struct CopyRow<'a> {
    item: &'a str,
    copy: u32,
}

impl<'a> CopyRow<'a> {
    fn of(copy: &'a Copy) -> CopyRow<'a> {
        CopyRow { item: &copy.item, copy: copy.copy }
    }
    fn placed(plan: &'a Plan, index: usize) -> Option<CopyRow<'a>> {
        plan.placements.get(index).map(|p| CopyRow { item: &p.item, copy: p.copy })
    }
}

#[derive(Serialize)]
struct Corners {
    min: [f64; 3],
    max: [f64; 3],
}

impl Corners {
    fn of(space: &Box3) -> Corners {
        Corners { min: point(space.min), max: point(space.max) }
    }
}

#[derive(Serialize)]
struct PlacementRow<'a> {
    item: &'a str,
    copy: u32,
    copies: u32,
    of: u32,
    face: &'static str,
    way: &'static str,
    bay: &'a str,
    surface: &'a str,
    slot: u32,
    pose: &'static str,
    turned: bool,
    #[serde(flatten)]
    corners: Corners,
    grip_height: f64,
    reach_zone: &'static str,
    moved_first: Vec<CopyRow<'a>>,
    weight: f64,
    uses_per_week: f64,
    seconds_per_fetch: f64,
    seconds_per_week: f64,
    terms: Vec<TermRow<'a>>,
    holds: &'a [String],
}

impl<'a> PlacementRow<'a> {
    fn of(placed: &'a Placement) -> PlacementRow<'a> {
        PlacementRow {
            item: &placed.item,
            copy: placed.copy,
            copies: placed.copies,
            of: placed.of,
            face: placed.face.name(),
            way: placed.way.name(),
            bay: &placed.bay,
            surface: &placed.surface,
            slot: placed.slot,
            pose: placed.pose.name(),
            turned: placed.turned,
            corners: Corners::of(&placed.space),
            grip_height: mm(placed.grip_height),
            reach_zone: placed.zone.name(),
            moved_first: placed.moved_first.iter().map(CopyRow::of).collect(),
            weight: placed.weight.as_kg(),
            uses_per_week: placed.uses.as_week(),
            seconds_per_fetch: placed.per_fetch.as_s(),
            seconds_per_week: placed.per_week.as_s(),
            terms: placed.terms.iter().map(TermRow::of).collect(),
            holds: &placed.holds,
        }
    }
}

#[derive(Serialize)]
struct TermRow<'a> {
    term: &'static str,
    seconds_per_week: f64,
    text: &'a str,
}

impl<'a> TermRow<'a> {
    fn of(part: &'a TermPart) -> TermRow<'a> {
        TermRow { term: part.term, seconds_per_week: part.price.as_s(), text: &part.told }
    }
}

#[derive(Serialize)]
struct LeftOutRow<'a> {
    item: &'a str,
    copy: u32,
    why: &'a str,
    seconds_per_week: f64,
}

impl<'a> LeftOutRow<'a> {
    fn of(left: &'a LeftOut) -> LeftOutRow<'a> {
        LeftOutRow {
            item: &left.copy.item,
            copy: left.copy.copy,
            why: &left.why,
            seconds_per_week: left.price.as_s(),
        }
    }
}

#[derive(Serialize)]
struct ReserveRow<'a> {
    family: Option<&'a str>,
    face: &'static str,
    bay: &'a str,
    surface: &'a str,
    #[serde(flatten)]
    corners: Corners,
    mass: f64,
}

impl<'a> ReserveRow<'a> {
    fn of(kept: &'a Kept) -> ReserveRow<'a> {
        ReserveRow {
            family: kept.family.as_deref(),
            face: kept.face.name(),
            bay: &kept.bay,
            surface: &kept.surface,
            corners: Corners::of(&kept.space),
            mass: kept.mass.as_kg(),
        }
    }
}

#[derive(Serialize)]
struct SurfaceRow<'a> {
    face: &'static str,
    bay: &'a str,
    surface: &'a str,
    kind: &'static str,
    #[serde(flatten)]
    corners: Corners,
    load: f64,
    limit: Option<f64>,
}

impl<'a> SurfaceRow<'a> {
    fn of(surface: &'a SurfaceLoad) -> SurfaceRow<'a> {
        SurfaceRow {
            face: surface.face.name(),
            bay: &surface.bay,
            surface: &surface.surface,
            kind: surface.kind.name(),
            corners: Corners::of(&surface.space),
            load: surface.load.as_kg(),
            limit: surface.limit.map(Mass::as_kg),
        }
    }
}

#[derive(Serialize)]
struct SolidRow<'a> {
    what: &'a str,
    #[serde(flatten)]
    corners: Corners,
}

impl<'a> SolidRow<'a> {
    fn of(solid: &'a Solid) -> SolidRow<'a> {
        SolidRow { what: &solid.what, corners: Corners::of(&solid.space) }
    }
}

#[derive(Serialize)]
struct MassRow<'a> {
    total: f64,
    centre: [f64; 3],
    carcass: f64,
    carcass_centre: [f64; 3],
    assumed: &'a [String],
}

impl<'a> MassRow<'a> {
    fn of(balance: &'a Balance) -> MassRow<'a> {
        MassRow {
            total: balance.total.as_kg(),
            centre: point(balance.centre),
            carcass: balance.carcass.as_kg(),
            carcass_centre: point(balance.carcass_centre),
            assumed: &balance.assumed,
        }
    }
}

#[derive(Serialize)]
struct CasterRow<'a> {
    at: [f64; 2],
    load: Option<f64>,
    worst: Option<f64>,
    worst_case: &'a str,
    hanging: Option<f64>,
    limit: Option<f64>,
}

impl<'a> CasterRow<'a> {
    fn of(caster: &'a CasterLoad) -> CasterRow<'a> {
        CasterRow {
            at: caster.at.map(mm),
            load: caster.load.map(Mass::as_kg),
            worst: caster.worst.map(Mass::as_kg),
            worst_case: &caster.worst_case,
            hanging: caster.hanging.map(Mass::as_kg),
            limit: caster.limit.map(Mass::as_kg),
        }
    }
}

#[derive(Serialize)]
struct TipRow<'a> {
    side: &'a str,
    case: &'a str,
    degrees: Option<f64>,
    limit: Option<f64>,
}

impl<'a> TipRow<'a> {
    fn of(tip: &'a Tip) -> TipRow<'a> {
        TipRow {
            side: &tip.side,
            case: &tip.case,
            degrees: clean(tip.degrees),
            limit: clean(tip.limit),
        }
    }
}

#[derive(Serialize)]
struct ScoreRow<'a> {
    seconds_per_week: f64,
    off_cart: f64,
    terms: Terms<'a>,
    broken_rules: Vec<BrokenRow<'a>>,
}

impl<'a> ScoreRow<'a> {
    fn of(worth: &'a Worth) -> ScoreRow<'a> {
        ScoreRow {
            seconds_per_week: worth.cost.as_s(),
            off_cart: worth.off_cart.as_s(),
            terms: Terms(&worth.terms),
            broken_rules: worth.broken.iter().map(BrokenRow::of).collect(),
        }
    }
}

/// The terms as one object whose keys stand in the order of the plan.
struct Terms<'a>(&'a [(&'static str, Price)]);

impl Serialize for Terms<'_> {
    fn serialize<S: Serializer>(&self, out: S) -> Result<S::Ok, S::Error> {
        let mut map = out.serialize_map(Some(self.0.len()))?;
        for (term, price) in self.0 {
            map.serialize_entry(term, &price.as_s())?;
        }
        map.end()
    }
}

#[derive(Serialize)]
struct BrokenRow<'a> {
    rule: &'static str,
    items: &'a [String],
    text: &'a str,
    value: Option<f64>,
    limit: Option<f64>,
    source: &'static str,
}

impl<'a> BrokenRow<'a> {
    fn of(broken: &'a Broken) -> BrokenRow<'a> {
        BrokenRow {
            rule: broken.rule,
            items: &broken.items,
            text: &broken.told,
            value: clean(broken.value),
            limit: clean(broken.limit),
            source: broken.source,
        }
    }
}

#[derive(Serialize)]
struct CautionRow<'a> {
    items: &'a [String],
    text: &'a str,
    source: &'a str,
}

impl<'a> CautionRow<'a> {
    fn of(caution: &'a Caution) -> CautionRow<'a> {
        CautionRow { items: &caution.items, text: &caution.text, source: &caution.source }
    }
}

#[derive(Serialize)]
struct StartRow {
    seconds_per_week: f64,
    off_cart: f64,
    broken: usize,
    same_items: bool,
}

impl StartRow {
    fn of(start: &Start) -> StartRow {
        StartRow {
            seconds_per_week: start.cost.as_s(),
            off_cart: start.off_cart.as_s(),
            broken: start.broken,
            same_items: start.same_items,
        }
    }
}

#[derive(Serialize)]
struct BoundRow {
    seconds_per_week: Option<f64>,
    gap: Option<f64>,
    gap_with_handling: Option<f64>,
}

impl BoundRow {
    fn of(bound: &Bound) -> BoundRow {
        BoundRow {
            seconds_per_week: bound.cost.map(Price::as_s),
            gap: bound.gap.and_then(clean),
            gap_with_handling: bound.gap_with_handling.and_then(clean),
        }
    }
}

#[derive(Serialize)]
struct SearchRow {
    moves: u64,
    priced: u64,
    seconds: Option<f64>,
    restarts: u32,
    ended_early: bool,
}

impl SearchRow {
    fn of(effort: &Effort) -> SearchRow {
        SearchRow {
            moves: effort.moves,
            priced: effort.priced,
            seconds: clean(effort.seconds),
            restarts: effort.restarts,
            ended_early: effort.ended_early,
        }
    }
}

#[derive(Serialize)]
struct StepRow<'a> {
    text: &'a str,
    placements: Vec<CopyRow<'a>>,
}

impl<'a> StepRow<'a> {
    fn of(plan: &'a Plan, step: &'a Step) -> StepRow<'a> {
        let placements = step.placements.iter().filter_map(|&i| CopyRow::placed(plan, i)).collect();
        StepRow { text: &step.text, placements }
    }
}

#[derive(Serialize)]
struct EarningRow<'a> {
    #[serde(flatten)]
    placed: CopyRow<'a>,
    seconds_per_week_off_cart: f64,
}

impl<'a> EarningRow<'a> {
    fn all(plan: &'a Plan) -> Vec<EarningRow<'a>> {
        plan.earning_least
            .iter()
            .filter_map(|&(index, price)| {
                let placed = CopyRow::placed(plan, index)?;
                Some(EarningRow { placed, seconds_per_week_off_cart: price.as_s() })
            })
            .collect()
    }
}

#[derive(Serialize)]
struct FaultDoc<'a> {
    status: &'static str,
    findings: Vec<FindingRow<'a>>,
}

#[derive(Serialize)]
struct FindingRow<'a> {
    severity: &'static str,
    text: &'a str,
    file: Option<&'a str>,
    line: Option<usize>,
    column: Option<usize>,
    field: Option<&'a str>,
    found: Option<&'a str>,
    expected: Option<&'a str>,
    nearest: Option<&'a str>,
    help: Option<&'a str>,
}

impl<'a> FindingRow<'a> {
    fn of(finding: &'a Finding) -> FindingRow<'a> {
        let at = finding.at.first();
        FindingRow {
            severity: severity(finding.severity),
            text: &finding.text,
            file: at.map(|span| span.source.name.as_str()),
            line: at.map(Span::line),
            column: at.map(Span::column),
            field: finding.field.as_deref(),
            found: finding.found.as_deref(),
            expected: finding.expected.as_deref(),
            nearest: finding.nearest.as_deref(),
            help: finding.help.as_deref(),
        }
    }
}

/// `fault` where the input cannot be used, else `good`.
fn verdict(all: &[Finding]) -> &'static str {
    if all.iter().any(Finding::is_fault) { "fault" } else { "good" }
}

/// The word for how grave a finding is.
const fn severity(severity: Severity) -> &'static str {
    match severity {
        Severity::Fault => "fault",
        Severity::Warning => "warning",
        Severity::Note => "note",
    }
}

#[cfg(test)]
mod tests {
    use serde_json::Value;

    use super::*;
    use crate::finding::Source;
    use crate::report::sample;

    fn read(text: &str) -> Value {
        serde_json::from_str(text).expect("one document")
    }

    #[test]
    fn the_contract_of_a_plan_is_kept() {
        let text = plan(&sample::unsafe_plan());
        let read = read(&text);
        assert!(text.ends_with("}\n"));
        assert_eq!(read["status"], "unsafe");
        let first = &read["placements"][0];
        assert_eq!(first["min"], serde_json::json!([20.0, 0.0, 670.0]));
        assert_eq!((&first["reach_zone"], &first["weight"]), (&"easy".into(), &2.6.into()));
        assert_eq!(read["placements"][6]["moved_first"][0]["copy"], 1);
        assert_eq!(read["left_out"][0]["item"], "mitre saw");
        assert_eq!(read["surfaces"][4]["limit"], Value::Null);
        assert_eq!(read["casters"][2]["hanging"], Value::Null);
        assert_eq!(read["score"]["broken_rules"][0]["items"][0], "belt sander");
        assert_eq!(read["start"]["broken"], 0);
        assert_eq!(read["bound"]["gap"], Value::Null);
        assert_eq!(read["search"]["moves"], 400_000);
    }

    #[test]
    fn terms_stand_in_the_order_of_the_plan() {
        let text = plan(&sample::plan());
        let places =
            ["\"access\": 41.2", "\"reach\": 38.5", "\"blocked\": 11.9", "\"together\": 6.4"]
                .map(|term| text.find(term).expect(term));
        assert!(places.is_sorted());
    }

    #[test]
    fn a_sixty_fourth_of_an_inch_survives() {
        let mut sample = sample::plan();
        sample.placements[0].space.min[0] = Length::nm(396_875);
        sample.tips[0].degrees = f64::NAN;
        sample.tips[1].degrees = -0.0;
        let text = plan(&sample);
        assert_eq!(read(&text)["placements"][0]["min"][0], 0.396875);
        assert_eq!(read(&text)["tip"][0]["degrees"], Value::Null);
        assert!(!text.contains("-0.0"));
    }

    #[test]
    fn faults_tell_where_they_are() {
        let text = String::from("items:\n  - nmae: saw\n");
        let source = std::sync::Arc::new(Source { name: "inventory.yaml".into(), text });
        let span = Span::new(&source, 11..15);
        let fault = Finding::fault("unknown key").at(&span).found("nmae").near("nmae", ["name"]);
        let read = read(&findings(&[fault, Finding::note("nothing else")]));
        assert_eq!(read["status"], "fault");
        let row = &read["findings"][0];
        assert_eq!(
            (&row["line"], &row["column"], &row["nearest"]),
            (&2.into(), &5.into(), &"name".into())
        );
        assert_eq!(read["findings"][1]["file"], Value::Null);
    }
}

/// A workspace as it was understood.
#[derive(Serialize)]
struct CheckDoc<'a> {
    status: &'static str,
    name: &'a str,
    items: usize,
    copies: u32,
    lots: usize,
    mass: f64,
    uses_per_week: f64,
    carcass: f64,
    assumed: &'a [String],
    litres: f64,
    room: Vec<RoomRow>,
    never_fits: Vec<NeverRow<'a>>,
    at_least_out: &'a [String],
    questions: Vec<QuestionRow<'a>>,
    cautions: Vec<CautionRow<'a>>,
    notes: Vec<FindingRow<'a>>,
}

#[derive(Serialize)]
struct RoomRow {
    reach_zone: &'static str,
    litres: f64,
    wall_dm2: f64,
}

/// A hazard that a name lets one ask about.
#[derive(Serialize)]
struct QuestionRow<'a> {
    item: &'a str,
    hazards: Vec<&'static str>,
    words: Vec<&'static str>,
    text: String,
}

impl<'a> QuestionRow<'a> {
    fn of(question: &'a Question) -> QuestionRow<'a> {
        QuestionRow {
            item: &question.item,
            hazards: question.sounds.iter().map(|(hazard, _)| hazard.name()).collect(),
            words: question.sounds.iter().map(|(_, word)| *word).collect(),
            text: question.text(),
        }
    }
}

#[derive(Serialize)]
struct NeverRow<'a> {
    item: &'a str,
    why: &'a str,
}

impl<'a> CheckDoc<'a> {
    fn of(u: &'a Understood, notes: &'a [Finding]) -> CheckDoc<'a> {
        let fits = u.never.is_empty() && u.at_least_out.is_empty();
        let room = u.room.iter().map(|r| RoomRow {
            reach_zone: r.zone.name(),
            litres: r.litres,
            wall_dm2: r.wall,
        });
        CheckDoc {
            status: if fits { "fits" } else { "cannot fit" },
            name: &u.name,
            items: u.items,
            copies: u.copies,
            lots: u.lots,
            mass: u.mass.as_kg(),
            uses_per_week: u.uses.as_week(),
            carcass: u.carcass.as_kg(),
            assumed: &u.assumed,
            litres: u.volume,
            room: room.collect(),
            never_fits: u.never.iter().map(|(item, why)| NeverRow { item, why }).collect(),
            at_least_out: &u.at_least_out,
            questions: u.questions.iter().map(QuestionRow::of).collect(),
            cautions: u.cautions.iter().map(CautionRow::of).collect(),
            notes: notes.iter().map(FindingRow::of).collect(),
        }
    }
}

/// A plan with the way that leads to it.
#[derive(Serialize)]
struct ReplanDoc<'a> {
    #[serde(flatten)]
    plan: PlanDoc<'a>,
    curve: Vec<PointRow>,
    knee: usize,
    chosen: usize,
    steps: Vec<MoveRow<'a>>,
    would_have_to_leave: Vec<LeavingRow<'a>>,
    findings: Vec<EntryRow<'a>>,
}

impl<'a> ReplanDoc<'a> {
    fn of(replan: &'a Replan) -> ReplanDoc<'a> {
        // Both are told as numbers of moves, as the curve is.
        let moves = |k: usize| replan.curve.get(k).map_or(0, |p| p.moves);
        ReplanDoc {
            plan: PlanDoc::of(&replan.plan),
            curve: replan.curve.iter().map(PointRow::of).collect(),
            knee: moves(replan.knee),
            chosen: moves(replan.chosen),
            steps: replan.steps.iter().map(MoveRow::of).collect(),
            would_have_to_leave: replan.leaving.iter().map(LeavingRow::of).collect(),
            findings: replan
                .findings
                .iter()
                .map(|f| EntryRow { item: &f.item, kind: "entry", what: &f.what })
                .collect(),
        }
    }
}

#[derive(Serialize)]
struct PointRow {
    moves: usize,
    seconds_per_week: f64,
    off_cart: f64,
    broken: i64,
    gain: f64,
    given_up: f64,
}

impl PointRow {
    fn of(point: &Point) -> PointRow {
        PointRow {
            moves: point.moves,
            seconds_per_week: point.cost.as_s(),
            off_cart: Price::us(point.score.off_cart).as_s(),
            broken: point.score.broken,
            gain: point.gain.as_s(),
            given_up: point.given_up.as_s(),
        }
    }
}

/// One thing taken from one place to another; the boxes are told where it is on the cart.
#[derive(Serialize)]
struct MoveRow<'a> {
    item: &'a str,
    copy: u32,
    copies: u32,
    from: String,
    to: String,
    temporary: bool,
    from_box: Option<Corners>,
    to_box: Option<Corners>,
    pose: Option<&'static str>,
    turned: Option<bool>,
    aside: Vec<CopyRow<'a>>,
}

impl<'a> MoveRow<'a> {
    fn of(step: &'a Move) -> MoveRow<'a> {
        let (pose, turned) = match &step.to {
            Spot::On { pose, turned, .. } => (Some(pose.name()), Some(*turned)),
            _ => (None, None),
        };
        MoveRow {
            item: &step.item,
            copy: step.copy,
            copies: step.copies,
            from: spot(&step.from),
            to: spot(&step.to),
            temporary: step.temporary,
            from_box: corners(&step.from),
            to_box: corners(&step.to),
            pose,
            turned,
            aside: step.aside.iter().map(CopyRow::of).collect(),
        }
    }
}

fn spot(spot: &Spot) -> String {
    match spot {
        Spot::New => "new".to_owned(),
        Spot::Off => "off the cart".to_owned(),
        Spot::Floor => "floor".to_owned(),
        Spot::Bench(_) => "bench".to_owned(),
        Spot::On { face, bay, surface, .. } => format!("{} / {bay} / {surface}", face.name()),
    }
}

fn corners(spot: &Spot) -> Option<Corners> {
    match spot {
        Spot::Bench(space) | Spot::On { space, .. } => Some(Corners::of(space)),
        _ => None,
    }
}

#[derive(Serialize)]
struct LeavingRow<'a> {
    item: &'a str,
    copy: u32,
    leave: Vec<CopyRow<'a>>,
    seconds_per_week: f64,
}

impl<'a> LeavingRow<'a> {
    fn of(leaving: &'a Leaving) -> LeavingRow<'a> {
        LeavingRow {
            item: &leaving.item.item,
            copy: leaving.item.copy,
            leave: leaving.leave.iter().map(CopyRow::of).collect(),
            seconds_per_week: leaving.price.as_s(),
        }
    }
}

#[derive(Serialize)]
struct EntryRow<'a> {
    item: &'a str,
    kind: &'static str,
    what: &'a str,
}

// ---- audit

#[derive(Serialize)]
struct AuditDoc<'a> {
    #[serde(flatten)]
    plan: PlanDoc<'a>,
    findings: Vec<AuditRow<'a>>,
    now: ValueRow,
    best: ValueRow,
    first_remedies: FirstRow,
    at_wall: Vec<AtWallRow<'a>>,
}

#[derive(Serialize)]
struct AuditRow<'a> {
    item: Option<&'a str>,
    kind: &'static str,
    what: &'a str,
    seconds_per_week: f64,
    remedy: Option<RemedyRow<'a>>,
}

#[derive(Serialize)]
struct RemedyRow<'a> {
    text: &'a str,
    gain: f64,
}

/// What a layout is worth: broken rules, terms, and fetching from elsewhere what is not on the cart.
#[derive(Serialize)]
struct ValueRow {
    broken: i64,
    seconds_per_week: f64,
    off_cart: f64,
}

#[derive(Serialize)]
struct FirstRow {
    applied: usize,
    #[serde(flatten)]
    after: ValueRow,
}

#[derive(Serialize)]
struct AtWallRow<'a> {
    station: &'a str,
    items: &'a [String],
}

impl<'a> AuditRow<'a> {
    fn of(found: &'a AuditFinding) -> AuditRow<'a> {
        AuditRow {
            item: found.item.as_deref(),
            kind: found.kind.name(),
            what: &found.what,
            seconds_per_week: found.price.as_s(),
            remedy: found.remedy.as_ref().map(|r| RemedyRow { text: &r.text, gain: r.gain.as_s() }),
        }
    }
}

impl ValueRow {
    fn of(value: &Value) -> ValueRow {
        ValueRow {
            broken: value.broken,
            seconds_per_week: value.cost.as_s(),
            off_cart: value.off_cart.as_s(),
        }
    }
}

impl<'a> AuditDoc<'a> {
    fn of(audit: &'a Audit) -> AuditDoc<'a> {
        let at_wall = audit.at_wall.iter();
        AuditDoc {
            plan: PlanDoc::of(&audit.plan),
            findings: audit.findings.iter().map(AuditRow::of).collect(),
            now: ValueRow::of(&audit.now),
            best: ValueRow::of(&audit.best),
            first_remedies: FirstRow { applied: audit.applied, after: ValueRow::of(&audit.after) },
            at_wall: at_wall.map(|w| AtWallRow { station: &w.station, items: &w.items }).collect(),
        }
    }
}
