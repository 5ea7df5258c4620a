//! Resolving: from the file as written to the design with nothing left open.

mod counter;
mod gather;
mod island;
mod marks;
mod openings;
mod project;
mod runs;
mod station;
#[cfg(test)]
mod tests;
mod things;
mod trade;

pub use island::{from_text, resolve};
