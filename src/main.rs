//! The command; see the library for how it works.

use std::process::ExitCode;

fn main() -> ExitCode {
    islandwright::cli::main()
}
