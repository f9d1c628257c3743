//! Hooks, rails and brackets for what hangs.

use super::hole::place;
use super::mount::{Mount, MountKind};
use super::screw::{COVER, GAUGES, Screw, holding};
use super::work::Work;
use super::{Holder, Holding, Kind};
use crate::physics::fasteners::{Grain, Ground, Hung, WEIGHT, WIRE_STRESS, share_below, wire_load};
use crate::units::{Length, Mass, Unit, show_length, show_mass};

/// What a hook is reckoned to carry, against the mass at rest: a cart rolls over thresholds, and hands pull. Design choice,
/// ours.
pub const ROUGH: i64 = 2;
/// The plate of a hook or bracket, under the heads of its screws: common practice, no source.
pub const PLATE: Length = Length::mm(2);
/// Round steel that hooks are bent from, in mm.
const WIRES: [i64; 5] = [4, 5, 6, 8, 10];
/// Wider things take two hooks, and still wider ones three: common practice, no source.
const TWO: Length = Length::mm(120);
const THREE: Length = Length::mm(800);
/// Heavier and thicker things stand on brackets rather than hang from hooks: common practice, no source.
const HEAVY: Mass = Mass::kg(2);
const THICK: Length = Length::mm(60);
/// So many hooks are tried beyond the usual number.
const MORE: u32 = 2;

/// What is to hang: one placement on its board.
struct Load {
    placement: usize,
    mount: usize,
    mass: Mass,
    outline: [Length; 4],
    /// How far it stands out.
    out: Length,
}

/// Finds the hooks of a placement, and the places of their holes.
pub fn hang(work: &mut Work, placement: usize) {
    let Some(load) = load(work, placement) else { return };
    let (kind, usual) = usual(work, &load);
    let fewer = (1..usual).rev();
    let found = (usual..=usual + MORE).chain(fewer).find_map(|n| fixed(work, &load, kind, n));
    match found {
        Some((holder, holes)) => work.screw_on(load.mount, holder, &holes),
        None => none_holds(work, &load, kind),
    }
}

fn load(work: &mut Work, placement: usize) -> Option<Load> {
    let p = &work.plan.placements[placement];
    let (space, mass) = (p.space, p.weight);
    let mount = work.mount_of(placement)?;
    let m = &work.mounts[mount];
    let outline = m.outline(&space);
    let out = space.extent(m.into.axis);
    Some(Load { placement, mount, mass, outline, out })
}

/// What a thing usually hangs from.
fn usual(work: &Work, load: &Load) -> (Kind, u32) {
    let p = &work.plan.placements[load.placement];
    let wide = load.outline[1] - load.outline[0];
    let n = 1 + u32::from(wide > TWO) + u32::from(wide > THREE);
    if p.copies > 1 {
        (Kind::Rail, n.max(2))
    } else if load.mass > HEAVY && load.out >= THICK {
        (Kind::Bracket, 2)
    } else {
        (Kind::Hook, n)
    }
}

/// A number of hooks with screws that hold, at places that are free; the thinnest and shortest screws first.
fn fixed(work: &Work, load: &Load, kind: Kind, n: u32) -> Option<(Holder, Vec<[Length; 2]>)> {
    let mount = &work.mounts[load.mount];
    let (spacing, holes) = holes(work, load, kind, n)?;
    let boards = holes.iter().map(|at| work.behind(load.mount, *at).0).min()?;
    let each = load.mass.as_kg() * ROUGH as f64 / f64::from(n);
    let hung = Hung {
        mass: each,
        reach: (load.out.as_mm() / 2.0).max(4.0),
        drop: spacing.as_mm().max(8.0),
    };
    let below = mount.kind == MountKind::Ceiling;
    let rested = Mass::ng(load.mass.as_ng() / i64::from(n));
    if mount.hook.is_some_and(|most| kind == Kind::Hook && rested > most) {
        return None;
    }
    let wire = wire(mount, kind, &hung)?;
    let rated = if mount.hook.is_some() { rested } else { rested * ROUGH };
    for gauge in GAUGES {
        for sold in holding(PLATE, boards) {
            let screw = Screw { gauge, sold };
            let share = share(&hung, below, &screw, &mount.ground);
            if share <= 1.0 {
                let held =
                    Holding { load: load.mass * ROUGH, reach: load.out.half(), share, wire, rated };
                return Some((holder(work, load, kind, n, screw, holes.len(), held), holes));
            }
        }
    }
    None
}

/// The share of what may be counted on that the most loaded screw of a hook uses.
fn share(hung: &Hung, below: bool, screw: &Screw, ground: &Ground) -> f64 {
    let wood = crate::physics::fasteners::Screw {
        diameter: screw.gauge.diameter.as_mm(),
        thread: (screw.sold.length() - PLATE).as_mm(),
    };
    let holds = wood.holds(ground);
    if below { share_below(hung.mass, &holds) } else { hung.share(&holds) }
}

/// The thinnest round steel that carries a hook's load so far out; nothing where the hook's own rating counts.
fn wire(mount: &Mount, kind: Kind, hung: &Hung) -> Option<Option<Length>> {
    if kind != Kind::Hook || mount.hook.is_some() {
        return Some(None);
    }
    let holds = |d: &&i64| wire_load(hung.reach, **d as f64) >= hung.mass * WEIGHT;
    WIRES.iter().find(holds).map(|d| Some(Length::mm(*d)))
}

/// Where the screws of so many hooks go: pairs one above the other, or single ones under a ceiling. Also how far apart
/// those of a pair are.
fn holes(work: &Work, load: &Load, kind: Kind, n: u32) -> Option<(Length, Vec<[Length; 2]>)> {
    let mount = &work.mounts[load.mount];
    let taken: Vec<[Length; 2]> = mount.holes.iter().map(|h| h.at).collect();
    let unit = work.unit();
    let [left, right, low, high] = load.outline;
    let reach = [(right - left).half(), (high - low).half().max(Length::mm(30))];
    if mount.kind == MountKind::Ceiling {
        let spots: Vec<_> = middles(mount, load, n, (low + high).half());
        return place(mount, &spots, reach, &taken, unit).map(|p| (Length::ZERO, p));
    }
    let inset = (high - low).min(Length::mm(100));
    let top = high - Length::nm(inset.as_nm() / 4);
    spacings(kind, high - low).into_iter().find_map(|spacing| {
        let upper = middles(mount, load, n, top);
        let pairs: Vec<_> = upper
            .into_iter()
            .flat_map(|[x, y]| {
                let y = y.max(super::hole::FROM_EDGE + spacing);
                [[x, y], [x, y - spacing]]
            })
            .collect();
        place(mount, &pairs, reach, &taken, unit).map(|p| (p[0][1] - p[1][1], p))
    })
}

/// How far apart the two screws of a hook are tried, the widest first: what is pulled less holds more.
fn spacings(kind: Kind, high: Length) -> Vec<Length> {
    let widest = if kind == Kind::Hook { 40 } else { 60 };
    let all = [60, 40, 25, 16].map(Length::mm);
    let fits = |s: &Length| *s <= Length::mm(widest) && (*s + *s <= high || *s == Length::mm(16));
    all.into_iter().filter(fits).collect()
}

/// The middles of so many hooks at that height, evenly over the width and within what the board allows.
fn middles(mount: &Mount, load: &Load, n: u32, y: Length) -> Vec<[Length; 2]> {
    let edge = super::hole::FROM_EDGE;
    let [left, right, ..] = load.outline;
    let clamp = |v: Length, size: Length| v.min(size - edge).max(edge);
    let wide = right - left;
    (0..i64::from(n))
        .map(|k| {
            let x = left + Length::nm(wide.as_nm() * (2 * k + 1) / (2 * i64::from(n)));
            [clamp(x, mount.size[0]), clamp(y, mount.size[1])]
        })
        .collect()
}

fn holder(
    work: &Work,
    load: &Load,
    kind: Kind,
    n: u32,
    screw: Screw,
    screws: usize,
    holding: Holding,
) -> Holder {
    let unit = work.unit();
    let what = part(kind, &holding, load, unit);
    let wide = show_length(load.outline[1] - load.outline[0], unit);
    let (told, parts) = match kind {
        Kind::Rail => {
            let rail = format!("rail {wide} long");
            (format!("a {rail} on {n} × {what}"), vec![(what, n), (rail, 1)])
        }
        _ => (format!("{n} × {what}"), vec![(what, n)]),
    };
    Holder {
        kind,
        placement: Some(load.placement),
        of: work.name_of(load.placement),
        told,
        parts,
        mount: Some(load.mount),
        screw: Some((screw, screws as u32)),
        holding: Some(holding),
    }
}

/// One hook, rail bracket or bracket in words: of few lengths of arm and few ratings, so that few kinds are bought.
fn part(kind: Kind, holding: &Holding, load: &Load, unit: Unit) -> String {
    let (arm, rated) = (arm(load.out, unit), rating(holding.rated, unit));
    match (kind, holding.wire) {
        (Kind::Hook, Some(wire)) => format!(
            "hook of {} round steel, arm {arm}, or a bought one rated for {rated}",
            show_length(wire, Unit::Mm)
        ),
        (Kind::Hook, None) => format!("hook with an arm of {arm}, rated for {rated}"),
        (Kind::Rail, _) => format!("rail bracket with an arm of {arm}, rated for {rated}"),
        _ => format!("shelf bracket with an arm of {arm}, rated for {rated}"),
    }
}

/// The arm for a thing that stands out so far: up to the next centimetre or half inch.
fn arm(out: Length, unit: Unit) -> String {
    let (step, shown) = match unit.imperial() {
        true => (Unit::In.one().half(), Unit::In),
        false => (Length::mm(10), Unit::Mm),
    };
    let steps = (out.as_nm() + step.as_nm() - 1) / step.as_nm();
    show_length(step * steps.max(1), shown)
}

/// The next rating of a bought hook.
fn rating(mass: Mass, unit: Unit) -> String {
    const RATINGS: [i64; 9] = [1, 2, 3, 5, 8, 12, 20, 30, 45];
    const POUND: i64 = 453_592_370_000;
    let one = if unit.imperial() { Mass::ng(POUND) } else { Mass::kg(1) };
    let next = RATINGS.iter().map(|r| one * *r).find(|r| *r >= mass);
    show_mass(next.unwrap_or(mass), unit.imperial())
}

/// Says that nothing holds a thing, and why.
fn none_holds(work: &mut Work, load: &Load, kind: Kind) {
    let (name, mount) = (work.name_of(load.placement), work.mounts[load.mount].name());
    let unit = work.unit();
    let boards =
        work.behind(load.mount, middles(&work.mounts[load.mount], load, 1, load.outline[3])[0]).0;
    let why = if work.mounts[load.mount].ground.grain == Grain::End {
        format!("screws on {mount} go into sawn ends, where nothing is counted on")
    } else if boards <= COVER {
        format!("there is no board behind {mount} that takes a screw")
    } else if holes(work, load, kind, 1).is_none() {
        format!("its holes find no place on {mount} clear of edges and of other holes")
    } else {
        format!(
            "no screw holds {} so far out in {} of board, and none may come out behind",
            show_mass(load.mass, unit.imperial()),
            show_length(boards, unit)
        )
    };
    work.wants.push(format!("{name} cannot be hung: {why}"));
}

/// Where the figures of the holding come from.
pub fn source() -> String {
    format!(
        "pull and shear of wood screws by a building design handbook, p. 170 (read); wire to {WIRE_STRESS:.0} N/mm² (yield from memory, margin ours); reckoned for {ROUGH} times the mass (design choice, ours)"
    )
}
