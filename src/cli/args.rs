//! What can be typed.

use crate::report::sheet::Size;
use crate::solve::{Effort, Settings};
use crate::units::{Length, Unit, parse_dims, parse_length};
use clap::{Args as Group, Parser, Subcommand, ValueEnum};
use std::path::PathBuf;

/// Decides where every tool lives on a rolling workshop cart.
///
/// A workspace is a folder with carcass.yaml (the box), inventory.yaml (the things) and, where there are, shop.yaml
/// (person, room and work) and layout.yaml (where things are now).
#[derive(Parser, Debug)]
#[command(name = "toolberth", version, after_help = EXITS)]
pub struct Args {
    /// What to do.
    #[command(subcommand)]
    pub command: Command,
    /// When to use colour.
    #[command(flatten)]
    pub color: colorchoice_clap::Color,
}

const EXITS: &str = "Exit codes: 0 good; 1 computed, but a rule is broken, something is left out, \
an entry of the layout is at fault or a wish finds no place; 2 the input or the command line is wrong; 3 reading or writing failed; 130 interrupted twice.";

/// What the program can do.
#[derive(Subcommand, Debug)]
pub enum Command {
    /// Read everything, explain every fault, foresee what cannot fit
    Check {
        #[command(flatten)]
        workspace: Workspace,
    },
    /// Decide where every tool lives
    Plan {
        #[command(flatten)]
        workspace: Workspace,
        #[command(flatten)]
        search: Search,
        /// Write layout.yaml, report.txt, cart.html and drawings.pdf into this folder
        #[arg(long, value_name = "DIR")]
        out: Option<PathBuf>,
        /// Let --out replace files that are there already
        #[arg(long, requires = "out")]
        overwrite: bool,
    },
    /// Judge the layout as it stands, with the best single remedy for each finding
    Audit {
        #[command(flatten)]
        workspace: Workspace,
        #[command(flatten)]
        search: Search,
    },
    /// Fit the layout to a changed inventory with few moves
    Replan {
        #[command(flatten)]
        workspace: Workspace,
        #[command(flatten)]
        search: Search,
        /// Move at most so many things, instead of as many as pay best
        #[arg(long, value_name = "N")]
        most_moves: Option<usize>,
        /// Write layout.yaml, report.txt, cart.html and drawings.pdf into this folder
        #[arg(long, value_name = "DIR")]
        out: Option<PathBuf>,
        /// Let --out replace files that are there already
        #[arg(long, requires = "out")]
        overwrite: bool,
    },
    /// Tell how much can still be bought, and which wishes fit
    Room {
        #[command(flatten)]
        workspace: Workspace,
        /// A file with things that are wished for, written like an inventory
        #[arg(long, value_name = "FILE")]
        wish: Option<PathBuf>,
    },
    /// Tell why a thing is where it is, and what would change that
    Why {
        #[command(flatten)]
        workspace: Workspace,
        /// The thing, or something that is inside one
        item: String,
    },
    /// Set two layouts of a workspace side by side
    Compare {
        #[command(flatten)]
        workspace: Workspace,
        /// One layout file
        a: PathBuf,
        /// The other
        b: PathBuf,
    },
    /// Draw the layout: faces to scale, places from above, ways on foot, the whole cart
    Draw {
        #[command(flatten)]
        workspace: Workspace,
        /// The folder for the drawings; without it the faces are drawn in the terminal
        #[arg(long, value_name = "DIR")]
        out: Option<PathBuf>,
        /// What to write
        #[arg(long, value_enum, default_value_t = Format::Html, requires = "out")]
        format: Format,
        /// The size of the sheets
        #[arg(long, value_enum, default_value_t = PaperArg::A4, requires = "out")]
        paper: PaperArg,
        /// Replace files that are there already
        #[arg(long, requires = "out")]
        overwrite: bool,
    },
    /// Tell what to build, drill and buy so that every tool hangs and stands
    FitOut {
        #[command(flatten)]
        workspace: Workspace,
        #[command(flatten)]
        paper: FitOutPaper,
    },
    /// Print completions for a shell
    Completions {
        /// The shell
        shell: clap_complete::Shell,
    },
    /// Print the manual page
    Man,
}

/// Where the files are, and how to print.
#[derive(Group, Debug)]
pub struct Workspace {
    /// Folder with carcass.yaml and inventory.yaml
    pub workspace: PathBuf,
    /// Print one JSON document and nothing else
    #[arg(long)]
    pub json: bool,
    /// Draw with plain characters only
    #[arg(long)]
    pub ascii: bool,
    /// Columns to print to, instead of the terminal's (40 to 400)
    #[arg(long, value_name = "N", value_parser = clap::value_parser!(u16).range(40..=400))]
    pub width: Option<u16>,
}

/// What drawings are written as.
#[derive(ValueEnum, Clone, Copy, PartialEq, Eq, Debug)]
pub enum Format {
    /// One page for a browser that needs nothing else
    Html,
    /// A picture a sheet, for a browser or a drawing program
    Svg,
    /// One document, to print
    Pdf,
    /// A picture a sheet, 300 dots to the inch (needs a build with the feature `print`)
    Png,
}

/// A size of paper.
#[derive(ValueEnum, Clone, Copy, PartialEq, Eq, Debug)]
pub enum PaperArg {
    /// 210 x 297 mm
    A4,
    /// 8 1/2 x 11 in
    Letter,
}

impl From<PaperArg> for Size {
    fn from(paper: PaperArg) -> Size {
        match paper {
            PaperArg::A4 => Size::A4,
            PaperArg::Letter => Size::Letter,
        }
    }
}

/// What fitting out is told beyond the files.
#[derive(Group, Debug)]
pub struct FitOutPaper {
    /// Write card, lists, drilling templates and labels into this folder
    #[arg(long, value_name = "DIR")]
    pub out: Option<PathBuf>,
    /// What to write
    #[arg(long, value_enum, default_value_t = Format::Svg, requires = "out")]
    pub format: Format,
    /// The size of the sheets
    #[arg(long, value_enum, default_value_t = PaperArg::A4, requires = "out")]
    pub paper: PaperArg,
    /// Let --out replace files that are there already
    #[arg(long, requires = "out")]
    pub overwrite: bool,
    /// Size of a label: `small` (48x25 mm), `middle` (60x36 mm), `large` (95x55 mm), or any such as `70x37` or `4x2 in`
    #[arg(long, value_name = "SIZE", default_value = "middle", value_parser = label)]
    pub labels: Pair,
    /// Labels across and down a sheet of label stock, such as `3x8`; without it labels are cut from plain paper
    #[arg(long, value_name = "GRID", value_parser = grid)]
    pub label_grid: Option<Grid>,
    /// From the left and the upper edge of the stock to the first label, such as `7.2x13`
    #[arg(long, value_name = "PAIR", value_parser = pair, requires = "label_grid")]
    pub label_margin: Option<Pair>,
    /// From label to label, across and down; without it they stand edge to edge
    #[arg(long, value_name = "PAIR", value_parser = pair, requires = "label_grid")]
    pub label_pitch: Option<Pair>,
}

/// Two lengths: across and down.
pub type Pair = [Length; 2];
/// Two numbers: across and down.
pub type Grid = [usize; 2];

/// How to search.
#[derive(Group, Debug)]
pub struct Search {
    /// Everything random comes from it: the same seed gives the same plan
    #[arg(long, value_name = "N", default_value_t = 1)]
    pub seed: u64,
    /// How many trial moves to make [default: normal, or as many as --time allows]
    #[arg(long, value_enum)]
    pub effort: Option<EffortArg>,
    /// Search for so many seconds, in growing cycles, and take the best; with --effort, for no longer than that. The plan
    /// then depends on the machine
    #[arg(long, value_name = "SECONDS", value_parser = seconds)]
    pub time: Option<std::time::Duration>,
    /// Threads to use; the plan is the same for any number (0: as many as the machine has)
    #[arg(long, value_name = "N", default_value_t = 0, value_parser = clap::value_parser!(u16).range(0..=256))]
    pub threads: u16,
}

impl Search {
    /// The same for the search itself: where only a time is said, it goes on until it is ended.
    pub fn settings(&self) -> Settings {
        let effort = match (self.effort, self.time) {
            (Some(effort), _) => effort.into(),
            (None, Some(_)) => Effort::UntilEnded,
            (None, None) => Effort::default(),
        };
        Settings { seed: self.seed, effort, threads: usize::from(self.threads) }
    }
}

/// How many trial moves to make.
#[derive(ValueEnum, Clone, Copy, PartialEq, Eq, Debug)]
pub enum EffortArg {
    /// A tenth of the usual moves
    Quick,
    /// The usual moves
    Normal,
    /// Ten times the usual moves
    Thorough,
}

impl From<EffortArg> for Effort {
    fn from(effort: EffortArg) -> Effort {
        match effort {
            EffortArg::Quick => Effort::Quick,
            EffortArg::Normal => Effort::Normal,
            EffortArg::Thorough => Effort::Thorough,
        }
    }
}

/// The size of a label: a word or two lengths over a centimetre.
fn label(text: &str) -> Result<Pair, String> {
    let size = match text.trim() {
        "small" => [48, 25].map(Length::mm),
        "middle" => [60, 36].map(Length::mm),
        "large" => [95, 55].map(Length::mm),
        other => pair(other)?,
    };
    let fits = size.iter().all(|s| *s >= Length::mm(10) && *s <= Length::mm(190));
    if fits { Ok(size) } else { Err("a label is 10 to 190 mm wide and high".to_owned()) }
}

/// Two lengths such as `7.2x13` or `4 x 2 in`, none under nought; millimetres where no unit is said.
fn pair(text: &str) -> Result<Pair, String> {
    let refused = || format!("`{text}` is not two lengths such as `7.2x13` or `4x2 in`");
    let (a, b) = text.split_once(['x', '×']).ok_or_else(refused)?;
    let none = |t: &str| parse_length(t, Unit::Mm).is_ok_and(|l| l == Length::ZERO);
    let some = |t: &str, unit: &str| match none(t) {
        true => Ok(Length::ZERO),
        // The last unit serves the part that has none.
        false => {
            parse_dims(&format!("{t}x1x{unit}"), Unit::Mm).map(|d| d[0]).map_err(|_| refused())
        }
    };
    Ok([some(a, if none(b) { "1" } else { b })?, some(b, if none(b) { "1" } else { b })?])
}

/// How many across and down, such as `3x8`.
fn grid(text: &str) -> Result<Grid, String> {
    let refused = || format!("`{text}` is not a number across and one down such as `3x8`");
    let (a, b) = text.split_once(['x', '×']).ok_or_else(refused)?;
    let one = |t: &str| t.trim().parse().ok().filter(|n| (1..=40).contains(n)).ok_or_else(refused);
    Ok([one(a)?, one(b)?])
}

/// A positive number of seconds, up to a day; not `nan`, not `inf`.
fn seconds(text: &str) -> Result<std::time::Duration, String> {
    let number: f64 = text.parse().map_err(|_| format!("`{text}` is not a number of seconds"))?;
    if number.is_finite() && number > 0.0 && number <= 86_400.0 {
        Ok(std::time::Duration::from_secs_f64(number))
    } else {
        Err("seconds go from over 0 to 86400".to_owned())
    }
}
