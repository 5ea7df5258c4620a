//! The work in its order.

use crate::catalog::work::WorkStep;
use crate::units::{Moment, TimeSpan};

/// The work in its order.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Order {
    /// True when the file asks for it by the group `work`.
    pub is_asked: bool,
    /// The steps in the order in which they begin; in the trade's order where there are no dates.
    pub steps: Vec<Step>,
    /// What each step waits for.
    pub waits: Vec<Waiting>,
    /// How many pairs of hands there are.
    pub crew: u32,
    /// How fast they are, 1 for the usual.
    pub pace: f64,
    /// When the first step begins and the last one ends, where the file has a first day.
    pub span: Option<(Moment, Moment)>,
    /// What must be known beside it, a sentence each.
    pub notes: Vec<String>,
}

/// One step.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// The step as the trade knows it.
    pub what: &'static WorkStep,
    /// Hours of work.
    pub takes: TimeSpan,
    /// Where that comes from.
    pub source: Source,
    /// How many pairs of hands it needs, which may be more than there are.
    pub hands: u32,
    /// What it handles, such as `12 boards`.
    pub pieces: Vec<String>,
    /// What can hurt, a sentence each.
    pub cautions: Vec<String>,
    /// What is ticked off, a sentence each.
    pub checks: Vec<String>,
    /// When it is done, where there is a first day and it comes to an end.
    pub times: Option<Times>,
}

/// When a step is done.
#[derive(Clone, Debug, PartialEq)]
pub struct Times {
    /// The stretches in which it is worked on, in order; at least one.
    pub stretches: Vec<(Moment, Moment)>,
    /// When it begins.
    pub start: Moment,
    /// When it ends.
    pub end: Moment,
    /// How many hours of work it can slip before the end of all moves.
    pub float: TimeSpan,
    /// True for a step of the chain that decides when all is done: each begins as soon as the one before it lets it.
    ///
    /// A step of the chain can still have some float where working hours end before it would hold the next one up.
    pub is_critical: bool,
}

/// Where the length of a step comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Source {
    /// The file.
    File,
    /// Batches and setting clock of the pour.
    Pour,
    /// Invented defaults and the island's amounts.
    Default,
}

impl Source {
    /// In words.
    pub fn name(self) -> &'static str {
        match self {
            Self::File => "file",
            Self::Pour => "pour plan",
            Self::Default => "invented default",
        }
    }
}

/// One step waits for another.
#[derive(Clone, Debug, PartialEq)]
pub struct Waiting {
    /// The place of the earlier one among the steps.
    pub from: usize,
    /// The place of the later one.
    pub to: usize,
    /// What passes in between, day and night.
    pub wait: TimeSpan,
    /// Why, with the source; empty without a wait.
    pub why: String,
}

impl Order {
    /// True when a step needs more hands than there are.
    pub fn is_short_of_hands(&self, step: &Step) -> bool {
        step.what.by == crate::catalog::work::Doer::Crew && step.hands > self.crew
    }
}
