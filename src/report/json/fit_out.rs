//! The document of `fit-out`.

use super::part::{Corners, clean, mm, text};
use super::worth::CautionRow;
use crate::tasks::fit_out::{Buy, Card, CardLine, FitOut, Holder, Holding, Hole, Label, Mount};
use serde::Serialize;

/// What fitting a cart out takes as one document, ending with a line break.
pub fn fit_out(fit: &FitOut) -> String {
    text(&FitOutDoc::of(fit))
}

#[derive(Serialize)]
struct FitOutDoc<'a> {
    name: &'a str,
    status: &'static str,
    holders: Vec<HolderRow<'a>>,
    mounts: Vec<MountRow<'a>>,
    shopping: Vec<BuyRow<'a>>,
    sequence: Vec<StageRow<'a>>,
    cautions: Vec<CautionRow<'a>>,
    assumed: &'a [String],
    wants: &'a [String],
    findings: &'a [String],
    labels: Vec<LabelRow<'a>>,
    card: CardRow<'a>,
    source: &'a str,
}

impl<'a> FitOutDoc<'a> {
    fn of(fit: &'a FitOut) -> FitOutDoc<'a> {
        FitOutDoc {
            name: &fit.plan.name,
            status: if fit.wants.is_empty() { "complete" } else { "partial" },
            holders: fit.holders.iter().map(|h| HolderRow::of(fit, h)).collect(),
            mounts: fit.mounts.iter().map(MountRow::of).collect(),
            shopping: fit.shopping.iter().map(BuyRow::of).collect(),
            sequence: fit.stages.iter().map(|s| StageRow { text: &s.text, why: s.why }).collect(),
            cautions: fit.cautions.iter().map(CautionRow::of).collect(),
            assumed: &fit.assumed,
            wants: &fit.wants,
            findings: &fit.findings,
            labels: fit.labels.iter().map(|l| LabelRow::of(fit, l)).collect(),
            card: CardRow::of(&fit.card),
            source: &fit.source,
        }
    }
}

#[derive(Serialize)]
struct HolderRow<'a> {
    kind: &'static str,
    /// `null` where it is for a whole panel, drawer or shelf.
    item: Option<&'a str>,
    copy: Option<u32>,
    #[serde(rename = "for")]
    of: &'a str,
    text: &'a str,
    mount: Option<usize>,
    screw: Option<ScrewRow>,
    holding: Option<HoldingRow>,
}

impl<'a> HolderRow<'a> {
    fn of(fit: &'a FitOut, holder: &'a Holder) -> HolderRow<'a> {
        let placement = holder.placement.map(|p| &fit.plan.placements[p]);
        HolderRow {
            kind: holder.kind.name(),
            item: placement.map(|p| p.item.as_str()),
            copy: placement.map(|p| p.copy),
            of: &holder.of,
            text: &holder.told,
            mount: holder.mount,
            screw: holder.screw.map(|(screw, count)| ScrewRow {
                number: screw.gauge.number,
                diameter: mm(screw.gauge.diameter),
                length: mm(screw.sold.length()),
                pilot: mm(screw.gauge.pilot),
                count,
            }),
            holding: holder.holding.as_ref().map(HoldingRow::of),
        }
    }
}

#[derive(Serialize)]
struct ScrewRow {
    number: u8,
    diameter: f64,
    length: f64,
    pilot: f64,
    count: u32,
}

#[derive(Serialize)]
struct HoldingRow {
    load: f64,
    reach: f64,
    share: Option<f64>,
    wire: Option<f64>,
    rated: f64,
}

impl HoldingRow {
    fn of(holding: &Holding) -> HoldingRow {
        HoldingRow {
            load: holding.load.as_kg(),
            reach: mm(holding.reach),
            share: clean(holding.share),
            wire: holding.wire.map(mm),
            rated: holding.rated.as_kg(),
        }
    }
}

#[derive(Serialize)]
struct MountRow<'a> {
    name: String,
    face: &'static str,
    bay: &'a str,
    surface: &'a str,
    size: [f64; 2],
    behind: &'a [String],
    outlines: Vec<OutlineRow>,
    holes: Vec<HoleRow<'a>>,
}

impl<'a> MountRow<'a> {
    fn of(mount: &'a Mount) -> MountRow<'a> {
        MountRow {
            name: mount.name(),
            face: mount.face.name(),
            bay: &mount.bay,
            surface: &mount.surface,
            size: mount.size.map(mm),
            behind: &mount.behind,
            outlines: mount
                .outlines
                .iter()
                .map(|(placement, edges)| OutlineRow {
                    placement: *placement,
                    edges: edges.map(mm),
                })
                .collect(),
            holes: mount.holes.iter().map(HoleRow::of).collect(),
        }
    }
}

#[derive(Serialize)]
struct OutlineRow {
    placement: usize,
    /// Left, right, lower and upper distance from the left and the lower edge.
    edges: [f64; 4],
}

#[derive(Serialize)]
struct HoleRow<'a> {
    number: u32,
    holder: usize,
    /// From the left and the lower edge.
    at: [f64; 2],
    /// From the nearer edges, as the tape shows it.
    from: [FromRow; 2],
    pilot: f64,
    deep: f64,
    through: bool,
    behind: &'a str,
}

#[derive(Serialize)]
struct FromRow {
    edge: &'static str,
    distance: f64,
}

impl<'a> HoleRow<'a> {
    fn of(hole: &'a Hole) -> HoleRow<'a> {
        HoleRow {
            number: hole.number,
            holder: hole.holder,
            at: hole.at.map(mm),
            from: hole.from.map(|(edge, far)| FromRow { edge, distance: mm(far) }),
            pilot: mm(hole.screw.gauge.pilot),
            deep: mm(hole.deep),
            through: hole.through,
            behind: &hole.behind,
        }
    }
}

#[derive(Serialize)]
struct BuyRow<'a> {
    what: &'a str,
    count: u32,
    spare: u32,
    #[serde(rename = "for")]
    used: &'a [String],
}

impl<'a> BuyRow<'a> {
    fn of(buy: &'a Buy) -> BuyRow<'a> {
        BuyRow { what: &buy.what, count: buy.count, spare: buy.spare, used: &buy.used }
    }
}

#[derive(Serialize)]
struct StageRow<'a> {
    text: &'a str,
    why: &'a str,
}

#[derive(Serialize)]
struct LabelRow<'a> {
    item: &'a str,
    copy: u32,
    #[serde(flatten)]
    corners: Corners,
    name: &'a str,
    slot: &'a str,
    place: &'a str,
    family: Option<&'a str>,
    /// The mark's filling and shape.
    mark: Option<[&'static str; 2]>,
    footprint: [f64; 2],
}

impl<'a> LabelRow<'a> {
    fn of(fit: &'a FitOut, label: &'a Label) -> LabelRow<'a> {
        let p = &fit.plan.placements[label.placement];
        LabelRow {
            item: &p.item,
            copy: p.copy,
            corners: Corners::of(&p.space),
            name: &label.name,
            slot: &label.slot,
            place: &label.place,
            family: label.family.as_deref(),
            mark: label.mark.map(|m| [m.fill.name(), m.shape.name()]),
            footprint: label.footprint.map(mm),
        }
    }
}

#[derive(Serialize)]
struct CardRow<'a> {
    urgent: &'a [String],
    faces: Vec<CardFaceRow<'a>>,
    never: &'a [String],
    care: &'a [String],
}

#[derive(Serialize)]
struct CardFaceRow<'a> {
    face: &'static str,
    theme: &'a str,
    lines: Vec<CardLineRow<'a>>,
}

#[derive(Serialize)]
struct CardLineRow<'a> {
    bay: &'a str,
    slot: &'a str,
    name: &'a str,
    holds: &'a [String],
    moved_first: &'a [String],
}

impl<'a> CardRow<'a> {
    fn of(card: &'a Card) -> CardRow<'a> {
        let line = |l: &'a CardLine| CardLineRow {
            bay: &l.bay,
            slot: &l.slot,
            name: &l.name,
            holds: &l.holds,
            moved_first: &l.first,
        };
        let face = |f: &'a crate::tasks::fit_out::CardFace| CardFaceRow {
            face: f.face.name(),
            theme: &f.theme,
            lines: f.lines.iter().map(line).collect(),
        };
        CardRow {
            urgent: &card.urgent,
            faces: card.faces.iter().map(face).collect(),
            never: &card.never,
            care: &card.care,
        }
    }
}
