//! One face to scale: the boards of the cart in thick lines, what stands and hangs there in thin ones, each with its
//! slot's number.

use super::canvas::{Canvas, Frame, Letter, Run, Stroke};
use super::wrap::{columns, shorten, wrap};
use crate::tasks::outcome::{Elevation, Part, Plan, Rect};
use crate::units::Length;

/// A terminal's cell is about twice as high as it is wide.
const CELL_ASPECT: f64 = 2.0;
/// The most rows that a drawing takes, so that it can be seen at once.
const MOST_ROWS: f64 = 40.0;

/// Terminal columns to the millimetre: the same for all faces of a plan, so that they can be compared.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Scale(f64);

impl Scale {
    /// The largest scale at which every face fits within so many columns.
    pub fn fitting(plan: &Plan, width: usize) -> Scale {
        let most = plan.elevations.iter().map(|face| {
            let all = extent(face);
            let wide = (width.saturating_sub(1)) as f64 / (all.u1 - all.u0).as_mm().max(1.0);
            wide.min(MOST_ROWS * CELL_ASPECT / (all.v1 - all.v0).as_mm().max(1.0))
        });
        Scale(most.fold(f64::INFINITY, f64::min))
    }
    fn columns(self, length: Length) -> usize {
        libm::round(length.as_mm() * self.0).max(0.0) as usize
    }
    fn rows(self, length: Length) -> usize {
        libm::round(length.as_mm() * self.0 / CELL_ASPECT).max(0.0) as usize
    }
}

/// A drawn face.
pub struct Drawing {
    /// Its rows in runs of cells of one kind; the owners are placements of the plan.
    pub rows: Vec<Vec<Run>>,
    /// Numbers of the slots that nothing can be seen of.
    pub behind: Vec<u32>,
    /// Numbers of the slots that can be seen but have no room for their number.
    pub small: Vec<u32>,
}

/// Draws a face, in ASCII where that is asked for.
pub fn draw(plan: &Plan, face: &Elevation, scale: Scale, ascii: bool) -> Drawing {
    let mut sheet = Sheet::new(plan, face, scale, if ascii { "." } else { "…" });
    sheet.boards();
    sheet.items(false);
    sheet.panels();
    sheet.items(true);
    let (behind, small) = sheet.numbers();
    Drawing { rows: sheet.canvas.rows(ascii), behind, small }
}

/// The rectangle around everything on a face.
fn extent(face: &Elevation) -> Rect {
    let parts = face.parts.iter().map(|(_, _, rect)| rect);
    let slots = face.slots.iter().map(|(_, rect)| rect);
    parts.chain(slots).fold(face.outline, |all, rect| Rect {
        u0: all.u0.min(rect.u0),
        u1: all.u1.max(rect.u1),
        v0: all.v0.min(rect.v0),
        v1: all.v1.max(rect.v1),
    })
}

struct Sheet<'a> {
    plan: &'a Plan,
    face: &'a Elevation,
    scale: Scale,
    all: Rect,
    canvas: Canvas,
    /// What stands for the rest of a name that is too long.
    mark: &'static str,
}

impl<'a> Sheet<'a> {
    fn new(plan: &'a Plan, face: &'a Elevation, scale: Scale, mark: &'static str) -> Sheet<'a> {
        let all = extent(face);
        let canvas =
            Canvas::new(scale.columns(all.u1 - all.u0) + 1, scale.rows(all.v1 - all.v0) + 1);
        Sheet { plan, face, scale, all, canvas, mark }
    }

    fn frame(&self, rect: Rect) -> Frame {
        let up = |v: Length| {
            self.scale.rows(self.all.v1 - self.all.v0) - self.scale.rows(v - self.all.v0)
        };
        let along = |u: Length| self.scale.columns(u - self.all.u0);
        Frame { left: along(rect.u0), right: along(rect.u1), top: up(rect.v1), bottom: up(rect.v0) }
    }

    /// The same for an item, never without breadth or height: it grows to the side on which more of it lies.
    fn item_frame(&self, rect: Rect) -> Frame {
        let mut frame = self.frame(rect);
        let middle = (rect.u0.as_mm() + rect.u1.as_mm()) / 2.0 - self.all.u0.as_mm();
        if frame.left == frame.right {
            let is_right = middle * self.scale.0 >= frame.left as f64;
            if is_right && frame.right < self.last_column() || frame.left == 0 {
                frame.right += 1;
            } else {
                frame.left -= 1;
            }
        }
        if frame.top == frame.bottom {
            frame.top = frame.top.saturating_sub(1);
            frame.bottom = frame.top + 1;
        }
        frame
    }

    fn last_column(&self) -> usize {
        self.scale.columns(self.all.u1 - self.all.u0)
    }

    fn boards(&mut self) {
        self.canvas.edges(self.frame(self.face.outline), Stroke::Thick, false);
        for (part, name, rect) in &self.face.parts {
            let frame = self.frame(*rect);
            match part {
                Part::Shelf => {
                    self.canvas.level(frame.left, frame.right, frame.top, Stroke::Thick, false)
                }
                Part::Bay | Part::Drawer => {
                    self.canvas.edges(frame, Stroke::Thick, false);
                    self.name(frame, name);
                }
                Part::Bench => {
                    self.canvas.edges(frame, Stroke::Thin, true);
                    self.name(frame, name);
                }
                Part::Panel => {}
            }
        }
    }

    /// Panels hang before the face, but one sees past them: their edges are dashed.
    fn panels(&mut self) {
        for (part, name, rect) in &self.face.parts {
            if *part == Part::Panel {
                let frame = self.frame(*rect);
                self.canvas.edges(frame, Stroke::Thin, true);
                self.name(frame, name);
            }
        }
    }

    /// A part's name in its upper edge.
    fn name(&mut self, frame: Frame, name: &str) {
        let room = frame.right.saturating_sub(frame.left + 5);
        if room >= 4 && is_plain(name) {
            let text = format!(" {} ", shorten(name, room, self.mark));
            self.canvas.write(frame.left + 2, frame.top, &text, Letter::Part);
        }
    }

    fn items(&mut self, on_panels: bool) {
        for &(index, rect) in &self.face.slots {
            let placed = self.plan.placements.get(index);
            if placed.is_some_and(|p| p.surface == "panel") == on_panels {
                let frame = self.item_frame(rect);
                self.canvas.cover(frame, index);
                self.canvas.edges(frame, Stroke::Thin, false);
            }
        }
    }

    /// Writes every number where its item can be seen; gives those that are hidden and those without room.
    fn numbers(&mut self) -> (Vec<u32>, Vec<u32>) {
        let (mut behind, mut small) = (Vec::new(), Vec::new());
        for &(index, rect) in &self.face.slots {
            let Some(placed) = self.plan.placements.get(index) else { continue };
            if placed.face != self.face.face {
                continue;
            }
            let frame = self.item_frame(rect);
            let words = inner_words(frame, &placed.item);
            if !self.canvas.is_seen(index) {
                behind.push(placed.slot);
            } else if !self.number(frame, index, placed.slot, &words) {
                small.push(placed.slot);
            }
        }
        behind.sort_unstable();
        small.sort_unstable();
        (behind, small)
    }

    /// Writes a number, and below it the name where there is room; whether the number had room.
    fn number(&mut self, frame: Frame, index: usize, slot: u32, words: &[String]) -> bool {
        let text = slot.to_string();
        let Some((column, row)) = self.best_place(frame, index, text.len(), words.len()) else {
            return false;
        };
        self.canvas.write(column, row, &text, Letter::Slot);
        let lines: Vec<(usize, usize, &String)> = (row + 1..)
            .zip(words)
            .map(|(row, line)| ((frame.left + frame.right + 1 - columns(line)) / 2, row, line))
            .collect();
        let is_clear = |&(column, row, line): &(usize, usize, &String)| {
            (column..column + columns(line)).all(|c| {
                frame.holds_inside(c, row)
                    && self.canvas.is_blank(c, row)
                    && self.canvas.is_free(c, row, index)
            })
        };
        if lines.iter().all(is_clear) {
            for (column, row, line) in lines {
                self.canvas.write(column, row, line, Letter::Item);
            }
        }
        true
    }

    /// The place for a number of so many digits: on no line if possible, then nearest to the middle of its block.
    fn best_place(
        &self,
        frame: Frame,
        index: usize,
        digits: usize,
        lines: usize,
    ) -> Option<(usize, usize)> {
        let middle = (frame.left + frame.right + 1 - digits.min(frame.right)) / 2;
        let level = (frame.top + frame.bottom - lines) / 2;
        let mut best = None;
        for row in frame.rows() {
            for column in frame.columns() {
                if !self.has_room(column, row, digits, index) {
                    continue;
                }
                let lined =
                    (column..column + digits).filter(|&c| !self.canvas.is_blank(c, row)).count();
                let off = column.abs_diff(middle) + 2 * row.abs_diff(level);
                let rank = (lined, off, row, column);
                best = best.filter(|found| *found <= rank).or(Some(rank));
            }
        }
        best.map(|(_, _, row, column)| (column, row))
    }

    /// Whether a number fits from a cell on, and touches no other number.
    fn has_room(&self, column: usize, row: usize, digits: usize, index: usize) -> bool {
        let end = column + digits;
        end <= self.last_column() + 1
            && (column..end).all(|c| self.canvas.is_free(c, row, index))
            && !(column > 0 && self.canvas.is_number(column - 1, row))
            && !self.canvas.is_number(end, row)
    }
}

/// The name in lines that fit inside the frame below a number, or none.
fn inner_words(frame: Frame, name: &str) -> Vec<String> {
    let width = (frame.right - frame.left).saturating_sub(1);
    let height = (frame.bottom - frame.top).saturating_sub(1);
    let lines = wrap(name, width);
    let whole = name.split_ascii_whitespace().all(|word| columns(word) <= width);
    if whole && is_plain(name) && lines.len() < height { lines } else { Vec::new() }
}

/// Whether every letter takes one cell.
fn is_plain(name: &str) -> bool {
    columns(name) == name.chars().count()
}
