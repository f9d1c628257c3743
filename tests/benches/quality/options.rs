//! What is asked for on the command line.

use crate::carts::{Cart, all};
use std::path::{Path, PathBuf};

/// What to do.
pub enum Wish {
    /// Print the tables.
    Table,
    /// Search long, for so many seconds with each of so many seeds.
    Lower {
        /// Seconds for each seed.
        seconds: u64,
        /// How many seeds.
        seeds: u64,
    },
    /// Take over what another folder knows better.
    Take(PathBuf),
}

/// The command line, read.
pub struct Options {
    /// What to do.
    pub wish: Wish,
    /// On which carts.
    pub carts: Vec<Cart>,
    /// Threads of a long search.
    pub threads: usize,
    /// Where the best known layouts are.
    pub best: PathBuf,
    /// Where open instances are.
    pub open: PathBuf,
}

impl Options {
    /// Reads the arguments after the name of the program.
    ///
    /// # Errors
    /// What cannot be understood, in words.
    pub fn read(mut args: impl Iterator<Item = String>) -> Result<Options, String> {
        let here = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/benches/quality");
        let (best, open) = (here.join("best"), here.join("open"));
        let (mut seconds, mut seeds, mut take) = (None, 8, None);
        let mut options = Options { wish: Wish::Table, carts: all(), threads: 1, best, open };
        while let Some(arg) = args.next() {
            // Cargo adds it for benches of its own harness.
            if arg == "--bench" {
                continue;
            }
            let value = args.next().ok_or_else(|| format!("{arg} wants a value"))?;
            match arg.as_str() {
                "--lower" => seconds = Some(number(&arg, &value)?),
                "--seeds" => seeds = number(&arg, &value)?,
                "--threads" => options.threads = number(&arg, &value)? as usize,
                "--carts" => options.carts = named(&value)?,
                "--best" => options.best = value.into(),
                "--open" => options.open = value.into(),
                "--take" => take = Some(PathBuf::from(value)),
                _ => return Err(format!("{arg} is not known")),
            }
        }
        options.wish = match (seconds, take) {
            (Some(seconds), _) => Wish::Lower { seconds, seeds },
            (None, Some(folder)) => Wish::Take(folder),
            (None, None) => Wish::Table,
        };
        Ok(options)
    }
}

fn number(arg: &str, value: &str) -> Result<u64, String> {
    value.parse().map_err(|_| format!("{arg} wants a whole number, not {value}"))
}

/// The carts of these names, in the order of the names; `none` is none.
fn named(names: &str) -> Result<Vec<Cart>, String> {
    let known = all();
    let cart = |name: &str| {
        known.iter().find(|c| c.name == name).cloned().ok_or_else(|| {
            let names: Vec<&str> = known.iter().map(|c| c.name).collect();
            format!("no cart is called {name}; there are {}", names.join(", "))
        })
    };
    names.split(',').filter(|name| *name != "none").map(|name| cart(name.trim())).collect()
}
