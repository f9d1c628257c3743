//! A grid of terminal cells on which lines of two weights meet, and nearer things cover farther ones.

/// How a line is drawn.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum Stroke {
    /// An item's edge.
    Thin = 1,
    /// A board of the cart.
    Thick = 2,
}

/// A rectangle of cells, edges included: columns from the left, rows from the top.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Frame {
    /// First column.
    pub left: usize,
    /// Last column.
    pub right: usize,
    /// First row.
    pub top: usize,
    /// Last row.
    pub bottom: usize,
}

impl Frame {
    /// The columns from edge to edge.
    pub fn columns(self) -> std::ops::RangeInclusive<usize> {
        self.left..=self.right
    }
    /// The rows from edge to edge.
    pub fn rows(self) -> std::ops::RangeInclusive<usize> {
        self.top..=self.bottom
    }
    /// Whether a cell lies within its edges.
    pub fn holds_inside(self, column: usize, row: usize) -> bool {
        self.left < column && column < self.right && self.top < row && row < self.bottom
    }
}

/// Where the arms of a cell's lines lead.
#[derive(Clone, Copy)]
enum Arm {
    Left = 0,
    Right = 1,
    Up = 2,
    Down = 3,
}

/// What a letter on the canvas belongs to.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Letter {
    /// The name of a part of the cart.
    Part,
    /// The number of a slot.
    Slot,
    /// The name of an item.
    Item,
}

/// Cells beside each other that are alike.
pub struct Run {
    /// What they spell, where they spell something.
    pub letter: Option<Letter>,
    /// Whose they are.
    pub owner: Option<usize>,
    /// Their signs.
    pub text: String,
}

#[derive(Clone, Default)]
struct Cell {
    arms: [u8; 4],
    dashed: bool,
    letter: Option<(Letter, char)>,
    owner: Option<usize>,
}

/// The grid.
pub struct Canvas {
    width: usize,
    height: usize,
    cells: Vec<Cell>,
}

impl Canvas {
    /// An empty grid.
    pub fn new(width: usize, height: usize) -> Canvas {
        Canvas { width, height, cells: vec![Cell::default(); width * height] }
    }
    /// The edges of a frame, joined to whatever lines they meet.
    pub fn edges(&mut self, frame: Frame, stroke: Stroke, dashed: bool) {
        for row in [frame.top, frame.bottom] {
            self.level(frame.left, frame.right, row, stroke, dashed);
        }
        for column in [frame.left, frame.right] {
            for row in frame.top..frame.bottom {
                self.join(column, row, Arm::Down, stroke, dashed);
                self.join(column, row + 1, Arm::Up, stroke, dashed);
            }
        }
    }
    /// A level line.
    pub fn level(&mut self, left: usize, right: usize, row: usize, stroke: Stroke, dashed: bool) {
        for column in left..right {
            self.join(column, row, Arm::Right, stroke, dashed);
            self.join(column + 1, row, Arm::Left, stroke, dashed);
        }
    }
    /// Hides what lies behind a frame and makes its cells its owner's; what leads up to its edges stays.
    pub fn cover(&mut self, frame: Frame, owner: usize) {
        for row in frame.rows() {
            for column in frame.columns() {
                let floor = row == frame.bottom;
                let cell = &mut self.cells[row * self.width + column];
                if frame.holds_inside(column, row) {
                    *cell = Cell::default();
                }
                clear_inward(cell, frame, column, row);
                // What it stands on is nobody's, so that no number is written there.
                cell.owner = if floor { None } else { Some(owner) };
            }
        }
    }
    /// Whether a cell belongs to that owner and carries no letter yet.
    pub fn is_free(&self, column: usize, row: usize, owner: usize) -> bool {
        let cell = self.cell(column, row);
        cell.letter.is_none() && cell.owner == Some(owner)
    }
    /// Whether anything of that owner can be seen.
    pub fn is_seen(&self, owner: usize) -> bool {
        self.cells.iter().any(|cell| cell.owner == Some(owner))
    }
    /// Whether a cell carries neither a letter nor a line.
    pub fn is_blank(&self, column: usize, row: usize) -> bool {
        let cell = self.cell(column, row);
        cell.letter.is_none() && cell.arms == [0; 4]
    }
    /// Whether a cell carries a digit of a slot's number.
    pub fn is_number(&self, column: usize, row: usize) -> bool {
        column < self.width && matches!(self.cell(column, row).letter, Some((Letter::Slot, _)))
    }
    /// Letters from a cell to the right, as far as the grid goes.
    pub fn write(&mut self, column: usize, row: usize, text: &str, kind: Letter) {
        for (place, letter) in (column..self.width).zip(text.chars()) {
            self.cells[row * self.width + place].letter = Some((kind, letter));
        }
    }
    /// Its rows in runs of cells of one kind.
    pub fn rows(&self, ascii: bool) -> Vec<Vec<Run>> {
        (0..self.height).map(|row| self.row(row, ascii)).collect()
    }

    fn row(&self, row: usize, ascii: bool) -> Vec<Run> {
        let mut runs: Vec<Run> = Vec::new();
        for cell in &self.cells[row * self.width..(row + 1) * self.width] {
            let (letter, sign) = match cell.letter {
                Some((kind, letter)) => (Some(kind), letter),
                None => (None, line_sign(cell.arms, cell.dashed, ascii)),
            };
            match runs.last_mut() {
                Some(last) if (last.letter, last.owner) == (letter, cell.owner) => {
                    last.text.push(sign)
                }
                _ => runs.push(Run { letter, owner: cell.owner, text: String::from(sign) }),
            }
        }
        runs
    }

    fn cell(&self, column: usize, row: usize) -> &Cell {
        &self.cells[row * self.width + column]
    }

    fn join(&mut self, column: usize, row: usize, arm: Arm, stroke: Stroke, dashed: bool) {
        let cell = &mut self.cells[row * self.width + column];
        cell.dashed = dashed && (cell.dashed || cell.arms == [0; 4]);
        let weight = &mut cell.arms[arm as usize];
        *weight = (*weight).max(stroke as u8);
    }
}

/// Takes away the arms that lead from a frame's edge into it.
fn clear_inward(cell: &mut Cell, frame: Frame, column: usize, row: usize) {
    let level = frame.left < column && column < frame.right;
    let upright = frame.top < row && row < frame.bottom;
    if column == frame.left && upright {
        cell.arms[Arm::Right as usize] = 0;
    }
    if column == frame.right && upright {
        cell.arms[Arm::Left as usize] = 0;
    }
    if row == frame.top && level {
        cell.arms[Arm::Down as usize] = 0;
    }
    if row == frame.bottom && level {
        cell.arms[Arm::Up as usize] = 0;
    }
}

/// The line signs by the weights of their arms (left, right, up, down; each 0 to 2), left counting most.
const LINES: [&str; 3] =
    [" ╷╻╵│╽╹╿┃╶┌┎└├┟┖┞┠╺┍┏┕┝┢┗┡┣", "╴┐┒┘┤┧┚┦┨─┬┰┴┼╁┸╀╂╼┮┲┶┾╆┺╄╊", "╸┑┓┙┥┪┛┩┫╾┭┱┵┽╅┹╃╉━┯┳┷┿╈┻╇╋"];

/// The sign in which the arms of a cell's lines meet.
fn line_sign(arms: [u8; 4], dashed: bool, ascii: bool) -> char {
    let level = arms[0].max(arms[1]);
    let upright = arms[2].max(arms[3]);
    match (level, upright, ascii) {
        (0, 0, _) => ' ',
        (_, 0, true) => {
            if dashed {
                '.'
            } else if level == 2 {
                '='
            } else {
                '-'
            }
        }
        (0, _, true) => {
            if dashed {
                ':'
            } else {
                '|'
            }
        }
        (_, _, true) => '+',
        (1, 0, false) if dashed => '┄',
        (0, 1, false) if dashed => '┆',
        _ => {
            let [left, right, up, down] = arms.map(usize::from);
            LINES[left].chars().nth(right * 9 + up * 3 + down).unwrap_or('+')
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn shown(canvas: &Canvas, ascii: bool) -> Vec<String> {
        let join = |runs: Vec<Run>| runs.into_iter().map(|run| run.text).collect();
        canvas.rows(ascii).into_iter().map(join).collect()
    }

    fn frame(left: usize, right: usize, top: usize, bottom: usize) -> Frame {
        Frame { left, right, top, bottom }
    }

    #[test]
    fn lines_of_two_weights_meet() {
        let mut canvas = Canvas::new(5, 3);
        canvas.edges(frame(0, 4, 0, 2), Stroke::Thick, false);
        canvas.edges(frame(0, 2, 1, 2), Stroke::Thin, false);
        assert_eq!(shown(&canvas, false), ["┏━━━┓", "┠─┐ ┃", "┗━┷━┛"]);
        assert_eq!(shown(&canvas, true), ["+===+", "+-+ |", "+=+=+"]);
    }

    #[test]
    fn what_is_nearer_covers_what_is_behind() {
        let mut canvas = Canvas::new(7, 5);
        canvas.edges(frame(0, 4, 0, 3), Stroke::Thin, false);
        canvas.cover(frame(2, 6, 1, 4), 1);
        canvas.edges(frame(2, 6, 1, 4), Stroke::Thin, false);
        assert_eq!(shown(&canvas, false), ["┌───┐  ", "│ ┌─┴─┐", "│ │   │", "└─┤   │", "  └───┘"]);
        assert!(canvas.is_free(3, 2, 1) && !canvas.is_free(1, 1, 1));
    }

    #[test]
    fn all_joints_have_a_sign_of_their_own() {
        let mut signs: Vec<char> = LINES.concat().chars().collect();
        assert_eq!(signs.len(), 81);
        signs.sort_unstable();
        signs.dedup();
        assert_eq!(signs.len(), 81);
    }
}
