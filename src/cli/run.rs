//! From the arguments to the exit code.

use super::args::{Cli, Command};
use super::outcome::{Outcome, Trouble};
use super::{
    build, check, compare, completions, console, explain, new, pour, schema, takeoff, watch,
};
use clap::Parser;
use std::process::ExitCode;

/// Runs the command that the arguments name.
pub fn main() -> ExitCode {
    let cli = match Cli::try_parse() {
        Ok(cli) => cli,
        Err(error) => {
            let _ = error.print();
            return ExitCode::from(if error.use_stderr() { 2 } else { 0 });
        }
    };
    // A fault of the program must not look like a verdict on the design.
    let ended = std::panic::catch_unwind(|| command(&cli.command));
    let outcome = ended.unwrap_or_else(|_| {
        let what = "the program has a fault and stopped; no output was changed after that";
        Err(Trouble::new(what, "report it with the parameter file"))
    });
    let outcome = outcome.unwrap_or_else(|trouble| {
        console::trouble(&trouble);
        Outcome::Unusable
    });
    ExitCode::from(outcome.code())
}

fn command(command: &Command) -> Result<Outcome, Trouble> {
    match command {
        Command::New(args) => new::run(args),
        Command::Check(args) => check::run(args),
        Command::Explain(args) => explain::run(args),
        Command::Build(args) => build::run(args),
        Command::Takeoff(args) => takeoff::run(args),
        Command::Pour(args) => pour::run(args),
        Command::Compare(args) => compare::run(args),
        Command::Watch(args) => watch::run(args),
        Command::Schema(args) => schema::run(args),
        Command::Completions(args) => Ok(completions::run(args)),
    }
}
