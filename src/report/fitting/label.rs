//! Labels on stock of any size: name, slot, family mark and the footprint to scale, with marks to cut by.

use super::badge::badge;
use crate::report::drawing::area::Area;
use crate::report::drawing::lettering::{LEADING, SMALL, broken, lines, shortened};
use crate::report::drawing::scale::Scale;
use crate::report::sheet::{Anchor, Fill, Mark, Paper, Pen, Sheet, Size, Text, Tie, Weight, font};
use crate::tasks::fit_out::{FitOut, Label};
use crate::units::Unit;

/// Free paper within the edge of a label.
const PAD: f64 = 1.8;
/// Length of the marks to cut by.
const TICK: f64 = 2.0;
/// Sizes that a name is tried in, the largest first.
const SIZES: [f64; 9] = [7.0, 6.0, 5.0, 4.2, 3.6, 3.2, 2.8, 2.5, SMALL];

/// A sheet of labels by its sizes, in mm.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Stock {
    /// How many labels stand beside and over one another.
    pub grid: [usize; 2],
    /// Width and height of one.
    pub size: [f64; 2],
    /// Where the first one begins: from the left and from the upper edge of the paper.
    pub margin: [f64; 2],
    /// From one label to the next: across and down.
    pub pitch: [f64; 2],
}

impl Stock {
    /// As many labels of that size as a plain sheet takes, edge to edge and within what a printer reaches.
    pub fn plain(paper: Size, size: [f64; 2]) -> Stock {
        const REACH: f64 = 10.0;
        let whole = sides(paper);
        let many = |k: usize| ((whole[k] - 2.0 * REACH) / size[k]).max(1.0) as usize;
        Stock::of(paper, size, [many(0), many(1)], None, None)
    }
    /// Label stock: in the middle of the paper where no margin is told, edge to edge where no pitch is.
    pub fn of(
        paper: Size,
        size: [f64; 2],
        grid: [usize; 2],
        margin: Option<[f64; 2]>,
        pitch: Option<[f64; 2]>,
    ) -> Stock {
        let (whole, pitch) = (sides(paper), pitch.unwrap_or(size));
        let middle = |k: usize| {
            let wide = pitch[k] * (grid[k] as f64 - 1.0) + size[k];
            ((whole[k] - wide) / 2.0).max(0.0)
        };
        Stock { grid, size, margin: margin.unwrap_or([middle(0), middle(1)]), pitch }
    }
    /// Why it does not fit on that paper, in words; nothing where it does.
    pub fn misfit(&self, paper: Size) -> Option<String> {
        let whole = sides(paper);
        let names = [("across", "wide"), ("down", "high")];
        for (k, (way, wide)) in names.into_iter().enumerate() {
            let far = self.margin[k] + self.pitch[k] * (self.grid[k] as f64 - 1.0) + self.size[k];
            if far > whole[k] + 0.05 {
                let whole = whole[k];
                return Some(format!(
                    "{} labels {way} end at {far:.1} mm, and the paper is {whole:.1} mm {wide}",
                    self.grid[k]
                ));
            }
            if self.pitch[k] + 1e-9 < self.size[k] && self.grid[k] > 1 {
                return Some(format!(
                    "labels {:.1} mm {wide} overlap at a pitch of {:.1} mm",
                    self.size[k], self.pitch[k]
                ));
            }
        }
        None
    }
    /// How many are on a sheet.
    pub fn many(&self) -> usize {
        self.grid[0] * self.grid[1]
    }
    /// Where a label of a sheet is, row by row.
    fn area(&self, k: usize) -> Area {
        let (column, row) = (k % self.grid[0], k / self.grid[0]);
        let x = self.margin[0] + self.pitch[0] * column as f64;
        let y = self.margin[1] + self.pitch[1] * row as f64;
        Area::new(x, y, x + self.size[0], y + self.size[1])
    }
}

fn sides(paper: Size) -> [f64; 2] {
    let paper = Paper::upright(paper);
    [paper.width(), paper.height()]
}

/// The labels of all placements, sheet by sheet.
pub fn label_sheets(fit: &FitOut, paper: Size, stock: &Stock) -> Vec<Sheet> {
    let sheets = fit.labels.chunks(stock.many().max(1));
    let sheet = |(n, labels): (usize, &[Label])| {
        let mut marks = Vec::new();
        for (k, label) in labels.iter().enumerate() {
            let area = stock.area(k);
            marks.push(ticks(&area));
            let tie = Tie::class("label").placed(label.placement).named(label.name.clone());
            marks.push(Mark::group(tie, draw(label, &area, fit.units)));
        }
        Sheet {
            id: format!("fit-out-labels-{}", n + 1),
            title: format!("{}: labels {}", fit.plan.name, n + 1),
            paper: Paper::upright(paper),
            marks,
        }
    };
    sheets.enumerate().map(sheet).collect()
}

/// The corners of a label, to cut by.
fn ticks(area: &Area) -> Mark {
    let corner = |x: f64, y: f64, dx: f64, dy: f64| {
        [[[x, y], [x + dx * TICK, y]], [[x, y], [x, y + dy * TICK]]]
    };
    let pieces = [
        corner(area.x0, area.y0, 1.0, 1.0),
        corner(area.x1, area.y0, -1.0, 1.0),
        corner(area.x1, area.y1, -1.0, -1.0),
        corner(area.x0, area.y1, 1.0, -1.0),
    ];
    Mark::group(Tie::class("cut"), vec![Mark::Lines { pieces: pieces.concat(), pen: Pen::Faint }])
}

fn draw(label: &Label, area: &Area, unit: Unit) -> Vec<Mark> {
    let inner = area.inset(PAD);
    let foot = inner.high() >= 4.0 * SMALL * LEADING;
    let footer = if foot { SMALL * LEADING } else { 0.0 };
    let body = Area { y1: inner.y1 - footer, ..inner };
    let picture = (body.high() * 0.9).min(inner.wide() * 0.3);
    let mut marks = outline(label, &Area { x0: inner.x1 - picture, ..body }, unit);
    let left = Area { x1: inner.x1 - picture - 1.5, ..body };
    let slot = (left.high() * 0.32).clamp(SMALL, 6.0);
    marks.extend(head(label, &left, slot));
    let below = Area { y0: left.y0 + slot * LEADING, ..left };
    marks.extend(name(&label.name, &below));
    if foot {
        let family = label.family.as_deref().map_or(String::new(), |f| format!("{f} · "));
        let text =
            shortened(&format!("{family}{}", label.place), SMALL, Weight::Regular, inner.wide());
        let y = inner.y1 - font::DESCENT * SMALL;
        marks.push(Mark::text([inner.x0, y], SMALL, text));
    }
    marks
}

/// The family mark and the slot.
fn head(label: &Label, area: &Area, size: f64) -> Vec<Mark> {
    let side = size * 0.85;
    let y = area.y0 + size * font::ASCENT;
    let mut marks = Vec::new();
    let mut x = area.x0;
    if let Some(mark) = label.mark {
        marks.extend(badge(mark, [x + side / 2.0, y - font::CAPITAL * size / 2.0], side));
        x += side + 1.5;
    }
    let slot = shortened(&label.slot, size, Weight::Bold, area.x1 - x);
    marks.push(Text::new([x, y], size, slot).bold().into());
    marks
}

/// The name in the largest letters that let all of it in; where none do, as much of it as there is room for.
fn name(name: &str, area: &Area) -> Vec<Mark> {
    let wide = area.wide();
    let rows = |size: f64| {
        let more = area.high() - size * (font::ASCENT + font::DESCENT);
        if more < 0.0 { 0 } else { 1 + (more / (size * LEADING)) as usize }
    };
    let whole = SIZES.iter().find_map(|&size| {
        let set = lines(name, size, Weight::Bold, wide)?;
        (set.len() <= rows(size)).then_some((size, set))
    });
    let (size, set) = whole.unwrap_or_else(|| {
        let most = rows(SMALL).max(1);
        let mut set = broken(name, SMALL, Weight::Bold, wide);
        if set.len() > most {
            let rest = set.split_off(most - 1).join(" ");
            set.push(shortened(&rest, SMALL, Weight::Bold, wide));
        }
        (SMALL, set)
    });
    let first = area.y0 + size * font::ASCENT;
    let line = |(k, line): (usize, String)| {
        let at = [area.x0, first + k as f64 * size * LEADING];
        Mark::from(Text::new(at, size, line).bold())
    };
    set.into_iter().enumerate().map(line).collect()
}

/// The outline of the footprint to scale, with the scale.
fn outline(label: &Label, area: &Area, unit: Unit) -> Vec<Mark> {
    let told = SMALL * LEADING;
    let room = Area { y1: area.y1 - told, ..*area };
    if room.high() < 2.0 || room.wide() < 2.0 {
        return Vec::new();
    }
    let size = label.footprint.map(|l| l.as_mm());
    let scale = Scale::fitting(unit, size, room.size());
    let drawn = size.map(|side| side * scale.share());
    let middle = room.middle();
    let at = [0, 1].map(|k| middle[k] - drawn[k] / 2.0);
    let ratio = scale.ratio();
    let text = shortened(&ratio, SMALL, Weight::Regular, area.wide());
    let foot = [area.x1, area.y1 - font::DESCENT * SMALL];
    vec![
        Mark::group(Tie::class("footprint"), vec![Mark::rect(at, drawn, Pen::Medium, Fill::None)]),
        Text::new(foot, SMALL, text).anchored(Anchor::End).into(),
    ]
}
