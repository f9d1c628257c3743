//! Drilling templates in full size: tiles that overlap, with crosses to lay them on one another, and lines to check the
//! print by.

use super::lists::{from_edge, tape, told};
use crate::report::drawing::area::Area;
use crate::report::drawing::border::{Draft, room};
use crate::report::drawing::lettering::{NOTE, SMALL, fitted, shortened};
use crate::report::sheet::{
    Anchor, Fill, Frame, Mark, Paper, Pen, Point, Size, Text, Tie, Weight, font,
};
use crate::tasks::fit_out::{FitOut, Mount, MountKind, tape_step};
use crate::units::{Length, Unit, show_length};

/// How much of a tile the next one repeats, in mm.
pub const OVERLAP: f64 = 12.0;
/// What is seen beyond the edge of a board, in steps of the tape that are about a millimetre.
const BEYOND: f64 = 4.0;
/// The strip at the foot of a tile for the check lines and the map.
const STRIP: f64 = 15.0;
/// Half a cross.
const ARM: f64 = 4.0;

/// A tile: which part of a board is on one page.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Tile {
    /// Its column and row, from the left and from the top.
    pub place: [usize; 2],
    /// How many columns and rows there are.
    pub of: [usize; 2],
    /// Its lower left corner on the board and its size, in mm.
    pub at: [f64; 2],
    /// Its width and height, in mm.
    pub size: [f64; 2],
}

impl Tile {
    /// Whether a place of the board is on it.
    pub fn shows(&self, at: [f64; 2]) -> bool {
        (0..2).all(|k| self.at[k] <= at[k] && at[k] <= self.at[k] + self.size[k])
    }
}

/// The tiles of a board of that size, in mm, on windows of at most that size: row by row from the top, each repeating a
/// strip of the one before it and beginning a whole number of steps of the tape after it.
pub fn tiles(board: [f64; 2], window: [f64; 2], step: f64) -> Vec<Tile> {
    let window = window.map(|side| libm::floor((side - OVERLAP) / step) * step + OVERLAP);
    let whole = board.map(|side| side + 2.0 * beyond(step));
    let of = [0, 1].map(|k| {
        let more = ((whole[k] - window[k]) / (window[k] - OVERLAP)).max(0.0);
        1 + libm::ceil(more - 1e-9) as usize
    });
    let mut all = Vec::new();
    for row in 0..of[1] {
        for column in 0..of[0] {
            let x = -beyond(step) + column as f64 * (window[0] - OVERLAP);
            let top = board[1] + beyond(step) - row as f64 * (window[1] - OVERLAP);
            all.push(Tile { place: [column, row], of, at: [x, top - window[1]], size: window });
        }
    }
    all
}

/// What is seen beyond the edge of a board, in mm.
fn beyond(step: f64) -> f64 {
    BEYOND * step
}

/// The templates of all boards that have holes in their face; an edge is marked by measuring.
pub fn drafts(fit: &FitOut, size: Size) -> Vec<Draft> {
    let drilled = fit.mounts.iter().filter(|m| m.kind != MountKind::Edge);
    drilled.enumerate().flat_map(|(k, mount)| board(fit, mount, k + 1, size)).collect()
}

fn window(paper: Paper) -> [f64; 2] {
    let area = room(paper);
    [area.wide(), area.high() - STRIP]
}

/// The tiles of a board that show a hole; the others need no printing.
fn needed(fit: &FitOut, mount: &Mount, paper: Paper) -> Vec<Tile> {
    let board = mount.size.map(|l| l.as_mm());
    let mut all = tiles(board, window(paper), tape_step(fit.units).as_mm());
    all.retain(|t| mount.holes.iter().any(|h| t.shows(h.at.map(|l| l.as_mm()))));
    all
}

/// The tiles of one board, on paper upright or on its side as fewer pages need.
fn board(fit: &FitOut, mount: &Mount, number: usize, size: Size) -> Vec<Draft> {
    let (up, flat) = (Paper::upright(size), Paper::landscape(size));
    let lying = needed(fit, mount, flat).len() < needed(fit, mount, up).len();
    let paper = if lying { flat } else { up };
    let all = needed(fit, mount, paper);
    let of = all.len();
    let letter = |tile: &Tile| format!("{}{}", row_letter(tile.place[1]), tile.place[0] + 1);
    let draft = |(k, tile): (usize, &Tile)| Draft {
        id: format!("fit-out-template-{number}-{}", letter(tile)).to_lowercase(),
        title: format!(
            "Template {number}, page {} ({} of {of}): {}",
            letter(tile),
            k + 1,
            mount.name()
        ),
        note: told(mount, fit.units),
        paper,
        scale: None,
        marks: page(fit, mount, tile, &all, paper),
    };
    all.iter().enumerate().map(draft).collect()
}

fn row_letter(row: usize) -> String {
    let letter = char::from(b'A' + (row % 26) as u8);
    letter.to_string().repeat(row / 26 + 1)
}

fn page(fit: &FitOut, mount: &Mount, tile: &Tile, all: &[Tile], paper: Paper) -> Vec<Mark> {
    let area = room(paper);
    let window = Area { x1: area.x0 + tile.size[0], y1: area.y0 + tile.size[1], ..area };
    // The tile's lower left corner stands at the lower left of the window.
    let origin = [window.x0 - tile.at[0], window.y1 + tile.at[1]];
    let frame = Frame { origin, scale: 1.0 };
    let mut marks = vec![edges(mount, &frame, &window)];
    marks.extend(crosses(tile, &window));
    let (holes, taken) = holes(fit, mount, &frame, &window);
    marks.extend(outlines(fit, mount, &frame, &window, &taken));
    marks.push(Mark::group(Tie::class("board").named(mount.name()).framed(frame), holes));
    marks.extend(strip(fit.units, tile, all, &Area { y0: area.y1 - STRIP, ..area }));
    marks
}

/// A straight line as far as it lies within an area; level or upright.
fn clipped([a, b]: [Point; 2], area: &Area) -> Option<[Point; 2]> {
    let low = [a[0].min(b[0]).max(area.x0), a[1].min(b[1]).max(area.y0)];
    let high = [a[0].max(b[0]).min(area.x1), a[1].max(b[1]).min(area.y1)];
    (low[0] <= high[0] && low[1] <= high[1]).then_some([low, high])
}

fn rectangle([left, right, low, high]: [f64; 4], frame: &Frame, window: &Area) -> Vec<[Point; 2]> {
    let [a, b, c, d] =
        [frame.at(left, low), frame.at(right, low), frame.at(right, high), frame.at(left, high)];
    [[a, b], [b, c], [c, d], [d, a]].into_iter().filter_map(|l| clipped(l, window)).collect()
}

fn edges(mount: &Mount, frame: &Frame, window: &Area) -> Mark {
    let [wide, high] = mount.size.map(|l| l.as_mm());
    let pieces = rectangle([0.0, wide, 0.0, high], frame, window);
    Mark::group(Tie::class("edge"), vec![Mark::Lines { pieces, pen: Pen::Thick }])
}

/// Crosses in the strips that two tiles share: both show them at the same place of the board.
fn crosses(tile: &Tile, window: &Area) -> Vec<Mark> {
    let half = OVERLAP / 2.0;
    let [wide, high] = tile.size;
    let mut at = Vec::new();
    for share in [0.25, 0.75] {
        if tile.place[0] > 0 {
            at.push([half, high * share]);
        }
        if tile.place[0] + 1 < tile.of[0] {
            at.push([wide - half, high * share]);
        }
        if tile.place[1] > 0 {
            at.push([wide * share, half]);
        }
        if tile.place[1] + 1 < tile.of[1] {
            at.push([wide * share, high - half]);
        }
    }
    at.into_iter().map(|[x, y]| cross([window.x0 + x, window.y0 + y])).collect()
}

fn cross([x, y]: Point) -> Mark {
    let pieces = vec![[[x - ARM, y], [x + ARM, y]], [[x, y - ARM], [x, y + ARM]]];
    let ring = Mark::Circle { centre: [x, y], radius: ARM / 2.0, pen: Pen::Thin, fill: Fill::None };
    Mark::group(Tie::class("cross"), vec![Mark::Lines { pieces, pen: Pen::Thin }, ring])
}

/// The holes of a tile, each with its number and its distances; and what paper that takes.
fn holes(fit: &FitOut, mount: &Mount, frame: &Frame, window: &Area) -> (Vec<Mark>, Vec<Area>) {
    let (mut marks, mut taken) = (Vec::new(), Vec::new());
    for hole in &mount.holes {
        let [x, y] = frame.at(hole.at[0].as_mm(), hole.at[1].as_mm());
        if x < window.x0 || x > window.x1 || y < window.y0 || y > window.y1 {
            continue;
        }
        let radius = hole.screw.gauge.pilot.as_mm() / 2.0;
        let pieces = vec![[[x - ARM, y], [x + ARM, y]], [[x, y - ARM], [x, y + ARM]]]
            .into_iter()
            .filter_map(|l| clipped(l, window))
            .collect();
        let number = hole.number.to_string();
        let wide = font::width_in(&number, NOTE, Weight::Bold);
        // The number stands to the upper right, or to the left where the page ends.
        let right = x + 1.8 + wide <= window.x1;
        let at = [if right { x + 1.4 } else { x - 1.4 - wide }, y - 1.4];
        let name = format!(
            "hole {number}: {}, {}, for {}",
            from_edge(hole, 0, fit.units),
            from_edge(hole, 1, fit.units),
            fit.holders[hole.holder].of
        );
        let one = vec![
            Mark::Lines { pieces, pen: Pen::Thin },
            Mark::Circle { centre: [x, y], radius, pen: Pen::Medium, fill: Fill::None },
            Text::new(at, NOTE, number).bold().into(),
        ];
        marks.push(Mark::group(Tie::class("hole").named(name), one));
        taken.push(Area::new(x - ARM, y - ARM, x + ARM, y + ARM));
    }
    (marks, taken)
}

/// What will hang or stand there, with its name where there is room.
fn outlines(
    fit: &FitOut,
    mount: &Mount,
    frame: &Frame,
    window: &Area,
    holes: &[Area],
) -> Vec<Mark> {
    let mut marks = Vec::new();
    for (placement, outline) in &mount.outlines {
        let outline = outline.map(|l| l.as_mm());
        let pieces = rectangle(outline, frame, window);
        let ([x0, y0], [x1, y1]) =
            (frame.at(outline[0], outline[3]), frame.at(outline[1], outline[2]));
        let seen =
            Area::new(x0.max(window.x0), y0.max(window.y0), x1.min(window.x1), y1.min(window.y1));
        let mut one = vec![Mark::Lines { pieces, pen: Pen::Dashed }];
        if seen.wide() > 0.0 && seen.high() > 0.0 {
            let name = &fit.labels[*placement].name;
            let rooms = seen.inset(1.0).free(holes);
            let block = fitted(name, Weight::Regular, &rooms);
            one.extend(block.into_iter().flat_map(|b| b.lines).map(Mark::Text));
        }
        marks.push(Mark::group(Tie::class("outline").placed(*placement), one));
    }
    marks
}

/// The foot of a page: lines to check the print by, which way is up, and which page of the board it is.
fn strip(unit: Unit, tile: &Tile, all: &[Tile], area: &Area) -> Vec<Mark> {
    let mut marks = check([area.x0, area.y0 + 6.0], 100.0, "100 mm");
    if unit.imperial() {
        marks.extend(check([area.x0, area.y0 + 12.0], 101.6, "4 in"));
    }
    let x = area.x0 + 106.0;
    let lines = [
        "Print at 100 %, then measure the check line.".to_owned(),
        "This edge down; cross on cross. On the board this page:".to_owned(),
        begins(tile, unit),
    ];
    let most = area.x1 - x - 19.0;
    for (k, line) in lines.into_iter().enumerate() {
        let y = area.y0 + 4.4 + 3.6 * k as f64;
        let line = shortened(&line, SMALL, Weight::Regular, most);
        marks.push(Mark::text([x, y], SMALL, line));
    }
    marks.extend(map(tile, all, &Area::new(area.x1 - 18.0, area.y0 + 1.5, area.x1, area.y1)));
    marks
}

/// Where on its board a page begins.
fn begins(tile: &Tile, unit: Unit) -> String {
    let far = |k: usize, side: &str| {
        let told = show_length(Length::from_mm(tile.at[k]), tape(unit));
        (tile.at[k] > 0.0).then(|| format!("{told} from {side}"))
    };
    match (far(0, "the left"), far(1, "below")) {
        (None, None) => "Has its lower left corner.".to_owned(),
        (Some(one), None) | (None, Some(one)) => format!("Begins {one}."),
        (Some(a), Some(b)) => format!("Begins {a}, {b}."),
    }
}

fn check([x, y]: Point, long: f64, told: &str) -> Vec<Mark> {
    let end = |x: f64| [[x, y - 1.8], [x, y + 1.8]];
    let pieces = vec![[[x, y], [x + long, y]], end(x), end(x + long)];
    let line = Mark::Lines { pieces, pen: Pen::Medium };
    let text = Text::new([x + long / 2.0, y - 0.9], NOTE, told).anchored(Anchor::Middle);
    vec![Mark::group(Tie::class("check").named(told), vec![line, text.into()])]
}

/// All tiles in small: this one in solid ink, those that are printed with a frame, those without holes crossed out.
fn map(tile: &Tile, all: &[Tile], area: &Area) -> Vec<Mark> {
    let of = tile.of.map(|n| n as f64);
    let ratio = tile.size[0] / tile.size[1];
    let high = (area.high() / of[1]).min(area.wide() / of[0] / ratio);
    let cell = [high * ratio, high];
    let left = area.x1 - cell[0] * of[0];
    let mut marks = Vec::new();
    for row in 0..tile.of[1] {
        for column in 0..tile.of[0] {
            let at = [left + cell[0] * column as f64, area.y0 + cell[1] * row as f64];
            let fill = if tile.place == [column, row] { Fill::Ink } else { Fill::None };
            marks.push(Mark::rect(at, cell, Pen::Thin, fill));
            if !all.iter().any(|t| t.place == [column, row]) {
                let [x, y] = at;
                let across = [[x, y], [x + cell[0], y + cell[1]]];
                let back = [[x + cell[0], y], [x, y + cell[1]]];
                marks.push(Mark::Lines { pieces: vec![across, back], pen: Pen::Faint });
            }
        }
    }
    vec![Mark::group(Tie::class("map"), marks)]
}
