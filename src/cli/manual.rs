//! The manual page: one page with all commands, for there are no others.

use super::args::Args;
use clap::{Command, CommandFactory};
use clap_mangen::Man;
use std::io::{self, Write};

/// Renders it.
///
/// # Errors
/// Never in practice: it is written to memory.
pub fn page() -> io::Result<Vec<u8>> {
    let mut program = Args::command();
    program.build();
    let mut out = Vec::new();
    head(&program, &mut out)?;
    for command in program.get_subcommands().filter(|c| c.get_name() != "help") {
        section(command, &mut out)?;
    }
    let mut exits = Vec::new();
    Man::new(program).render_extra_section(&mut exits)?;
    out.write_all(&renamed(&exits, ".SH EXTRA", ".SH \"EXIT STATUS\""))?;
    Ok(out)
}

fn head(program: &Command, out: &mut Vec<u8>) -> io::Result<()> {
    let man = Man::new(program.clone());
    man.render_title(out)?;
    man.render_name_section(out)?;
    man.render_synopsis_section(out)?;
    man.render_description_section(out)?;
    man.render_options_section(out)
}

/// What one command does and which flags it has.
fn section(command: &Command, out: &mut Vec<u8>) -> io::Result<()> {
    let name = command.get_name().to_uppercase();
    writeln!(out, ".SH {name}")?;
    let mut text = Vec::new();
    let man = Man::new(command.clone());
    man.render_description_section(&mut text)?;
    man.render_options_section(&mut text)?;
    let text = renamed(&text, ".SH DESCRIPTION\n", "");
    out.write_all(&renamed(&text, ".SH OPTIONS\n", ".PP\n"))
}

fn renamed(text: &[u8], from: &str, to: &str) -> Vec<u8> {
    String::from_utf8_lossy(text).replacen(from, to, 1).into_bytes()
}
