//! Rectangles on the paper, and the room that is left between them.

use crate::report::sheet::{Frame, Point};
use crate::tasks::outcome::Rect;

/// A rectangle on the paper, in mm: left, top, right, bottom.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Area {
    /// Left edge.
    pub x0: f64,
    /// Upper edge.
    pub y0: f64,
    /// Right edge.
    pub x1: f64,
    /// Lower edge.
    pub y1: f64,
}

impl Area {
    /// Between two corners.
    pub const fn new(x0: f64, y0: f64, x1: f64, y1: f64) -> Area {
        Area { x0, y0, x1, y1 }
    }
    /// A rectangle of a view where its frame puts it.
    pub fn of(rect: &Rect, frame: &Frame) -> Area {
        let [x0, y0] = frame.at(rect.u0.as_mm(), rect.v1.as_mm());
        let [x1, y1] = frame.at(rect.u1.as_mm(), rect.v0.as_mm());
        Area { x0, y0, x1, y1 }
    }
    /// Its width.
    pub fn wide(&self) -> f64 {
        self.x1 - self.x0
    }
    /// Its height.
    pub fn high(&self) -> f64 {
        self.y1 - self.y0
    }
    /// Its middle.
    pub fn middle(&self) -> Point {
        [(self.x0 + self.x1) / 2.0, (self.y0 + self.y1) / 2.0]
    }
    /// Its upper left corner.
    pub fn corner(&self) -> Point {
        [self.x0, self.y0]
    }
    /// Width and height.
    pub fn size(&self) -> [f64; 2] {
        [self.wide(), self.high()]
    }
    /// The same with all edges moved in.
    #[must_use]
    pub fn inset(&self, by: f64) -> Area {
        Area::new(self.x0 + by, self.y0 + by, self.x1 - by, self.y1 - by)
    }
    /// The rectangle round both.
    #[must_use]
    pub fn with(&self, other: &Area) -> Area {
        Area::new(
            self.x0.min(other.x0),
            self.y0.min(other.y0),
            self.x1.max(other.x1),
            self.y1.max(other.y1),
        )
    }
    /// Whether they share more than an edge.
    pub fn overlaps(&self, other: &Area) -> bool {
        const TOUCH: f64 = 1e-6;
        self.x0 < other.x1 - TOUCH
            && other.x0 < self.x1 - TOUCH
            && self.y0 < other.y1 - TOUCH
            && other.y0 < self.y1 - TOUCH
    }

    /// The largest rectangles of it that touch nothing, each as large as it can be, the widest room first.
    pub fn free(&self, taken: &[Area]) -> Vec<Area> {
        let taken: Vec<&Area> = taken.iter().filter(|t| t.overlaps(self)).collect();
        let xs = edges(self.x0, self.x1, taken.iter().flat_map(|t| [t.x0, t.x1]));
        let ys = edges(self.y0, self.y1, taken.iter().flat_map(|t| [t.y0, t.y1]));
        let grid = Grid::new(&xs, &ys, &taken);
        let mut all = Vec::new();
        let (columns, rows) = (xs.len() - 1, ys.len() - 1);
        for left in 0..columns {
            for right in left + 1..=columns {
                for top in 0..rows {
                    for bottom in top + 1..=rows {
                        if grid.is_largest([left, right], [top, bottom]) {
                            all.push(Area::new(xs[left], ys[top], xs[right], ys[bottom]));
                        }
                    }
                }
            }
        }
        all.sort_by(|a, b| (b.wide() * b.high()).total_cmp(&(a.wide() * a.high())));
        all
    }
}

/// The two ends and what lies between them, in order.
fn edges(from: f64, to: f64, between: impl Iterator<Item = f64>) -> Vec<f64> {
    let mut all: Vec<f64> = between.filter(|e| from < *e && *e < to).collect();
    all.extend([from, to]);
    all.sort_by(f64::total_cmp);
    all.dedup_by(|a, b| (*a - *b).abs() < 1e-9);
    if all.len() < 2 {
        all = vec![from, to];
    }
    all
}

/// How many taken cells lie to the upper left of each crossing.
struct Grid {
    taken: Vec<Vec<u32>>,
}

impl Grid {
    fn new(xs: &[f64], ys: &[f64], taken: &[&Area]) -> Grid {
        let mut sums = vec![vec![0; xs.len()]; ys.len()];
        for row in 1..ys.len() {
            for column in 1..xs.len() {
                let cell = Area::new(xs[column - 1], ys[row - 1], xs[column], ys[row]);
                let here = u32::from(taken.iter().any(|t| t.overlaps(&cell)));
                sums[row][column] = here + sums[row - 1][column] + sums[row][column - 1]
                    - sums[row - 1][column - 1];
            }
        }
        Grid { taken: sums }
    }
    fn is_free(&self, [left, right]: [usize; 2], [top, bottom]: [usize; 2]) -> bool {
        let at = |row: usize, column: usize| self.taken[row][column];
        at(bottom, right) + at(top, left) == at(top, right) + at(bottom, left)
    }
    /// Free, and not so with another row or column.
    fn is_largest(&self, x: [usize; 2], y: [usize; 2]) -> bool {
        let (rows, columns) = (self.taken.len() - 1, self.taken[0].len() - 1);
        let more = [
            (x[0] > 0).then(|| ([x[0].saturating_sub(1), x[1]], y)),
            (x[1] < columns).then(|| ([x[0], x[1] + 1], y)),
            (y[0] > 0).then(|| (x, [y[0].saturating_sub(1), y[1]])),
            (y[1] < rows).then(|| (x, [y[0], y[1] + 1])),
        ];
        self.is_free(x, y) && !more.into_iter().flatten().any(|(x, y)| self.is_free(x, y))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_free_beside_and_above() {
        let whole = Area::new(0.0, 0.0, 10.0, 6.0);
        assert_eq!(whole.free(&[]), [whole]);
        let free = whole.free(&[Area::new(6.0, 2.0, 12.0, 9.0)]);
        assert_eq!(free, [Area::new(0.0, 0.0, 6.0, 6.0), Area::new(0.0, 0.0, 10.0, 2.0)]);
        assert!(whole.free(&[Area::new(-1.0, -1.0, 11.0, 7.0)]).is_empty());
    }
}
