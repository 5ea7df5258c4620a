//! The command line: one file a command. Only here are files, the clock and the environment touched.
//!
//! Exit codes: 0 clean or cautions only, 1 a check fails, 2 the input could not be used or the program could not do
//! its work.

mod args;
mod build;
mod check;
mod compare;
mod completions;
mod console;
mod explain;
mod folder;
mod input;
mod manifest;
mod new;
mod outcome;
mod pour;
mod printed;
mod progress;
mod run;
mod schema;
mod summary;
mod takeoff;
mod trade;
mod watch;

pub use run::main;
