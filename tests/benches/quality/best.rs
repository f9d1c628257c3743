//! The best layouts known, in a folder: `best.tsv` with a line for each cart, and each layout in a file of its own.
//!
//! What a layout is worth is always weighed anew by the ledger: the lines are for the reader, and tell how long was
//! searched. A layout is only ever replaced by one of less.

use std::fs;
use std::io::{self, Write};
use std::path::Path;
use toolberth::geometry::Box3;
use toolberth::score::{Ledger, Score};
use toolberth::site::{Board, Place, Site};
use toolberth::units::Length;

const HEAD: &str = "cart\tcost_us\toff_cart_us\tseeds\tseconds";

/// A layout: where everything is, and how high the shelves are.
#[derive(Clone, Debug, PartialEq)]
pub struct Layout {
    /// The top of each shelf.
    pub shelves: Vec<Length>,
    /// Where each lot is.
    pub places: Vec<Option<Place>>,
}

/// What is known of a cart.
#[derive(Clone, Debug)]
pub struct Known {
    /// The best layout and its worth, where one is known.
    pub layout: Option<(Score, Layout)>,
    /// How many seeds were searched from.
    pub seeds: u64,
    /// For how many seconds altogether.
    pub seconds: u64,
}

impl Layout {
    /// What it costs by the model as it is now.
    pub fn score(&self, site: &Site) -> Score {
        Ledger::new(&Board::set_up(site, &self.shelves, &self.places)).score()
    }

    fn write(&self) -> String {
        let mut out = String::from("# lot, surface, form, least x y z in nm; shelf, top in nm\n");
        for (k, top) in self.shelves.iter().enumerate() {
            out += &format!("shelf\t{k}\t{}\n", top.as_nm());
        }
        for (lot, place) in self.places.iter().enumerate() {
            if let Some(Place { home, space }) = place {
                let [x, y, z] = space.min.map(Length::as_nm);
                out += &format!("lot\t{lot}\t{}\t{}\t{x}\t{y}\t{z}\n", home.surface, home.form);
            }
        }
        out
    }

    /// Reads it for a site; nothing where it is of another.
    fn read(site: &Site, text: &str) -> Option<Layout> {
        let mut layout = Layout {
            shelves: site.boards.iter().map(|b| b.solid.max[2]).collect(),
            places: vec![None; site.lots.len()],
        };
        for line in text.lines().filter(|l| !l.starts_with('#')) {
            let mut cells = line.split('\t');
            let kind = cells.next()?;
            let numbers: Vec<i64> = cells.map(str::parse).collect::<Result<_, _>>().ok()?;
            match (kind, numbers.as_slice()) {
                ("shelf", &[k, top]) => *layout.shelves.get_mut(k as usize)? = Length::nm(top),
                ("lot", &[lot, surface, form, x, y, z]) => {
                    let homes = &site.lots.get(lot as usize)?.homes;
                    let here = (surface as u32, form as u32);
                    let home = *homes.iter().find(|h| (h.surface, h.form) == here)?;
                    let min = [x, y, z].map(Length::nm);
                    let max = [0, 1, 2].map(|a| min[a] + home.extents[a]);
                    layout.places[lot as usize] = Some(Place { home, space: Box3 { min, max } });
                }
                _ => return None,
            }
        }
        Some(layout)
    }
}

/// What a folder knows of a cart.
pub fn known(folder: &Path, cart: &str, site: &Site) -> Known {
    let text = fs::read_to_string(folder.join(format!("{cart}.tsv"))).unwrap_or_default();
    let layout = Layout::read(site, &text).filter(|_| !text.is_empty());
    let line = lines(folder).into_iter().find(|l| l[0] == cart);
    let number = |k: usize| line.as_ref().and_then(|l| l[k].parse().ok()).unwrap_or(0);
    Known { layout: layout.map(|l| (l.score(site), l)), seeds: number(3), seconds: number(4) }
}

/// Writes what is known of a cart, whole: the layout first, so that a line never tells of one that is not there.
///
/// # Errors
/// What the disk says.
pub fn keep(folder: &Path, cart: &str, known: &Known) -> io::Result<()> {
    fs::create_dir_all(folder)?;
    if let Some((_, layout)) = &known.layout {
        whole(&folder.join(format!("{cart}.tsv")), &layout.write())?;
    }
    let score = known.layout.as_ref().map(|(score, _)| *score).unwrap_or_default();
    let mut all = lines(folder);
    all.retain(|l| l[0] != cart);
    let numbers = [score.cost, score.off_cart, known.seeds as i64, known.seconds as i64];
    let mut line = vec![cart.to_owned()];
    line.extend(numbers.iter().map(i64::to_string));
    all.push(line);
    all.sort_by_key(|l| (l[0].split('-').next().and_then(|n| n.parse::<u32>().ok()), l[0].clone()));
    let rows = all.iter().map(|l| format!("{}\n", l.join("\t")));
    whole(&folder.join("best.tsv"), &format!("{HEAD}\n{}", rows.collect::<String>()))
}

/// The cells of each line under the head.
fn lines(folder: &Path) -> Vec<Vec<String>> {
    let text = fs::read_to_string(folder.join("best.tsv")).unwrap_or_default();
    let cells = |line: &str| line.split('\t').map(str::to_owned).collect::<Vec<_>>();
    text.lines().skip(1).map(cells).filter(|l| l.len() == 5).collect()
}

/// Writes a file beside and moves it into place, so that a run that is stopped leaves the old one or the new one.
fn whole(path: &Path, text: &str) -> io::Result<()> {
    let beside = path.with_extension("new");
    fs::File::create(&beside)?.write_all(text.as_bytes())?;
    fs::rename(beside, path)
}
