//! The command line: arguments, reading and writing, exit codes, progress.

mod args;
mod draw;
mod fitting;
mod living;
mod manual;
mod output;
mod progress;
mod run;

use clap::Parser;
use std::process::ExitCode;

/// How the program ends. The numbers are part of the contract.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Exit {
    /// All is good.
    Good = 0,
    /// It was computed, but a rule is broken or something is left out.
    Wanting = 1,
    /// The input or the command line is wrong.
    Wrong = 2,
    /// Reading or writing failed.
    Failed = 3,
}

/// Runs the program.
pub fn main() -> ExitCode {
    let args = match args::Args::try_parse() {
        Ok(args) => args,
        Err(error) => {
            let code = if error.use_stderr() { Exit::Wrong } else { Exit::Good };
            // Nothing can be done where even this cannot be printed.
            let _ = error.print();
            return ExitCode::from(code as u8);
        }
    };
    args.color.write_global();
    let exit = run::run(&args).unwrap_or_else(|error| output::complain(&error));
    ExitCode::from(exit as u8)
}
