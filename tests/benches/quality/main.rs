//! How good the search is: on carts of our own against the best layouts known, and on open instances of problems akin.
//!
//! ```text
//! cargo bench --bench quality                        the table of carts, and the open instances kept here
//! cargo bench --bench quality -- --open FOLDER       all families of open instances in a folder
//! cargo bench --bench quality -- --carts 24-tight,60-tight
//! cargo bench --bench quality -- --lower SECONDS --seeds N [--carts …] [--threads T] [--best FOLDER]
//!                                                    searches long and lowers what is known
//! cargo bench --bench quality -- --take FOLDER       takes over what was found lower elsewhere
//! ```
//!
//! Seconds are those of a processor, so that other work on the machine does not count. A search does not look at the
//! clock: it is stopped from outside, and what it has found by then depends on how fast the machine is.

mod best;
mod carts;
mod clock;
mod gap;
mod instances;
mod lower;
mod options;
mod qap;
mod rect;
mod table;
mod walks;

// A part of it is enough here.
#[allow(unused_imports)]
#[path = "../../support/mod.rs"]
mod support;

use options::{Options, Wish};

fn main() {
    let options = Options::read(std::env::args().skip(1)).unwrap_or_else(|fault| {
        eprintln!("{fault}");
        std::process::exit(2);
    });
    match options.wish {
        Wish::Lower { seconds, seeds } => lower::lower(&options, seconds, seeds),
        Wish::Take(ref folder) => lower::take(&options, folder),
        Wish::Table => {
            table::table(&options);
            instances::all(&options.open);
        }
    }
}
