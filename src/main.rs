//! The program.

fn main() -> std::process::ExitCode {
    toolberth::cli::main()
}
