//! Several small pictures on as few pages as they need, in rows.

use super::area::Area;
use crate::report::sheet::Point;

/// Between two pictures, in mm.
pub const GAP: f64 = 7.0;

/// The page of each picture, from 0, and its upper left corner.
pub fn flowed(sizes: &[[f64; 2]], room: &Area) -> Vec<(usize, Point)> {
    let (mut page, mut x, mut y, mut row) = (0, room.x0, room.y0, 0.0f64);
    let mut out = Vec::new();
    for &[wide, high] in sizes {
        if x > room.x0 && x + wide > room.x1 {
            (x, y, row) = (room.x0, y + row + GAP, 0.0);
        }
        if y > room.y0 && y + high > room.y1 {
            (page, x, y, row) = (page + 1, room.x0, room.y0, 0.0);
        }
        out.push((page, [x, y]));
        x += wide + GAP;
        row = row.max(high);
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn pictures_go_into_rows_and_then_onto_further_pages() {
        let room = Area::new(0.0, 0.0, 100.0, 50.0);
        let placed = flowed(&[[60.0, 20.0], [30.0, 10.0], [50.0, 20.0], [50.0, 20.0]], &room);
        let at = |page, x, y| (page, [x, y]);
        assert_eq!(placed, [at(0, 0.0, 0.0), at(0, 67.0, 0.0), at(0, 0.0, 27.0), at(1, 0.0, 0.0)]);
    }
}
