//! Templates: read back from the page, every hole is where the mounting list has it, and the check line is true.

use crate::ground::{DEMOS, Fitted};
use std::collections::BTreeMap;
use toolberth::report::fitting::{OVERLAP, Stock, sheets, tiles};
use toolberth::report::sheet::{Size, svg};
use toolberth::tasks::fit_out::{Mount, MountKind};

/// A page read back from its SVG: the millimetres of its groups of a class, each with the text of its elements.
struct Page {
    /// Its row and column among the tiles of its board.
    place: [i32; 2],
    text: String,
}

/// The value of an attribute in the text of an element.
fn number(element: &str, name: &str) -> f64 {
    let from = element.find(&format!(" {name}=\"")).expect(name) + name.len() + 3;
    let end = element[from..].find('"').expect("the value ends") + from;
    element[from..end].parse().expect("the value is a number")
}

impl Page {
    /// The parts of the page that begin a group of that class, up to its end.
    fn groups<'a>(&'a self, class: &str) -> Vec<&'a str> {
        let open = format!("<g class=\"{class}\"");
        let mut found = Vec::new();
        for (at, _) in self.text.match_indices(&open) {
            let rest = &self.text[at..];
            let end = rest.find("</g>").expect("the group ends");
            found.push(&rest[..end]);
        }
        found
    }
    /// Where the lower left corner of the board is on the page.
    fn origin(&self) -> [f64; 2] {
        let board = self.groups("board")[0];
        let from = board.find("data-origin=\"").expect("the frame is told") + 13;
        let end = board[from..].find('"').expect("it ends") + from;
        let parts: Vec<f64> =
            board[from..end].split(' ').map(|p| p.parse().expect("a number")).collect();
        assert!((number(board, "data-scale") - 1.0).abs() < 1e-12, "full size");
        [parts[0], parts[1]]
    }
    /// Number and place on the board of each hole.
    fn holes(&self) -> Vec<(u32, [f64; 2])> {
        let [x, y] = self.origin();
        let one = |group: &str| {
            let circle = &group[group.find("<circle").expect("a hole is a circle")..];
            let at = [number(circle, "cx") - x, y - number(circle, "cy")];
            let name = group.find("<title>hole ").expect("it has a number") + 12;
            let digits: String = group[name..].chars().take_while(char::is_ascii_digit).collect();
            (digits.parse().expect("a number"), at)
        };
        self.groups("hole").into_iter().map(one).collect()
    }
}

/// The pages of each template, by its number from 1.
fn pages(cart: &Fitted, size: Size) -> BTreeMap<usize, Vec<Page>> {
    let stock = Stock::plain(size, [60.0, 36.0]);
    let mut all: BTreeMap<usize, Vec<Page>> = BTreeMap::new();
    for sheet in sheets(&cart.fit, size, &stock) {
        let Some(rest) = sheet.id.strip_prefix("fit-out-template-") else { continue };
        let number = rest.split('-').next().and_then(|n| n.parse().ok()).expect("its number");
        all.entry(number).or_default().push(Page { place: place(rest), text: svg(&sheet) });
    }
    all
}

/// Row and column of a page whose name ends so: `2-b3` is the second row and the third column.
fn place(rest: &str) -> [i32; 2] {
    let name = rest.rsplit('-').next().expect("it has a place");
    let row = name.bytes().next().expect("it has a row") - b'a';
    [i32::from(row), name[1..].parse().expect("it has a column")]
}

fn faces(cart: &Fitted) -> impl Iterator<Item = &Mount> {
    cart.fit.mounts.iter().filter(|m| m.kind != MountKind::Edge)
}

#[test]
fn every_hole_is_on_a_page_within_a_tenth_of_a_millimetre() {
    for cart in DEMOS.iter() {
        for size in [Size::A4, Size::Letter] {
            let pages = pages(cart, size);
            for (k, mount) in faces(cart).enumerate() {
                let mut seen = vec![0; mount.holes.len()];
                for page in &pages[&(k + 1)] {
                    for (number, at) in page.holes() {
                        let hole = &mount.holes[number as usize - 1];
                        seen[number as usize - 1] += 1;
                        for (found, meant) in at.iter().zip(hole.at) {
                            let off = found - meant.as_mm();
                            assert!(off.abs() < 0.1, "{}: hole {number} by {off}", mount.name());
                        }
                    }
                }
                assert!(seen.iter().all(|n| *n > 0), "{}: {seen:?}", mount.name());
            }
        }
    }
}

#[test]
fn the_check_line_is_100_mm_and_for_inches_4_in_too() {
    let mut inches = 0;
    for cart in DEMOS.iter() {
        for page in pages(cart, Size::A4).values().flatten() {
            let long: Vec<f64> = page
                .groups("check")
                .iter()
                .map(|g| {
                    let path = &g[g.find(" d=\"M").expect("a line") + 5..];
                    let ends: Vec<f64> = path[..path.find('M').expect("its ends")]
                        .split(['L', ' '])
                        .map(|n| n.parse().expect("a number"))
                        .collect();
                    ends[2] - ends[0]
                })
                .collect();
            let wanted: &[f64] = if cart.fit.units.imperial() { &[100.0, 101.6] } else { &[100.0] };
            inches += usize::from(wanted.len() == 2);
            assert_eq!(long.len(), wanted.len());
            assert!(long.iter().zip(wanted).all(|(l, w)| (l - w).abs() < 0.01), "{long:?}");
        }
    }
    assert!(inches > 0);
}

#[test]
fn neighbouring_pages_show_the_same_crosses() {
    let centre = |g: &str| {
        let circle = &g[g.find("<circle").expect("a ring")..];
        [number(circle, "cx"), number(circle, "cy")]
    };
    let mut shared = 0;
    for cart in DEMOS.iter() {
        for pages in pages(cart, Size::A4).values() {
            let crosses: Vec<Vec<[f64; 2]>> = pages
                .iter()
                .map(|page| {
                    let [x, y] = page.origin();
                    let on_board = |[a, b]: [f64; 2]| [a - x, y - b];
                    page.groups("cross").iter().map(|g| on_board(centre(g))).collect()
                })
                .collect();
            for (k, mine) in crosses.iter().enumerate() {
                for (j, other) in crosses[..k].iter().enumerate() {
                    let same = |a: &&[f64; 2]| {
                        other
                            .iter()
                            .any(|b| (a[0] - b[0]).abs() < 0.01 && (a[1] - b[1]).abs() < 0.01)
                    };
                    let n = mine.iter().filter(same).count();
                    let [row, column] = [0, 1].map(|a| pages[k].place[a] - pages[j].place[a]);
                    let meant = if row.abs() + column.abs() == 1 { 2 } else { 0 };
                    assert_eq!(n, meant, "{}: crosses that two pages share", cart.name);
                    shared += n;
                }
            }
        }
    }
    assert!(shared > 10, "only {shared} crosses are shared");
}

#[test]
fn tiles_cover_the_board_and_overlap() {
    for (board, window) in [
        ([520.0, 460.0], [185.0, 244.0]),
        ([90.0, 60.0], [185.0, 244.0]),
        ([181.0, 700.0], [190.9, 226.4]),
    ] {
        let all = tiles(board, window, 1.0);
        for x in 0..=10 {
            for y in 0..=10 {
                let at = [board[0] * f64::from(x) / 10.0, board[1] * f64::from(y) / 10.0];
                assert!(all.iter().any(|t| t.shows(at)), "{board:?} {at:?}");
            }
        }
        for a in &all {
            for b in &all {
                if b.place == [a.place[0] + 1, a.place[1]] {
                    assert!((a.at[0] + a.size[0] - b.at[0] - OVERLAP).abs() < 1e-9);
                }
            }
        }
    }
}
