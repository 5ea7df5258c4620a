//! `completions`: a script for a shell.

use super::args::{Cli, CompletionsArgs};
use super::console;
use super::outcome::Outcome;
use clap::CommandFactory;

pub(super) fn run(args: &CompletionsArgs) -> Outcome {
    let mut script = Vec::new();
    clap_complete::generate(args.shell, &mut Cli::command(), "islandwright", &mut script);
    console::out(&String::from_utf8_lossy(&script));
    Outcome::Done
}
