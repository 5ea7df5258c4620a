//! The trade's order of work: every step that an island can take, what comes before it, and what it asks for.
//!
//! Hours and hands are invented defaults; waits say where they come from. None of it is code.

mod boards;
mod coats;
mod counter;
mod frame;
mod ground;
mod last;
mod services;
mod step;
mod table;

pub use step::{
    After, Case, Caution, Doer, Due, Fitness, Hands, Heaviest, Item, Measure, Pace, Phase, Pieces,
    Wait, WorkStep,
};
pub use table::{work_step, work_steps};
