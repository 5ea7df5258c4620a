//! What the sheets of the order of work show.

use crate::units::{Moment, TimeSpan};

/// What the sheets show.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct WorkSheet {
    /// The steps in order.
    pub tasks: Vec<Task>,
    /// When the first one begins and the last one ends, where they have dates.
    pub span: Option<(Moment, Moment)>,
    /// How many pairs of hands there are.
    pub crew: u32,
    /// What must be known beside it, a sentence each.
    pub notes: Vec<String>,
}

/// One step.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Task {
    /// What is done.
    pub name: String,
    /// Its name in the file.
    pub id: String,
    /// The heading it belongs under.
    pub chapter: String,
    /// True where nothing goes on before all is ticked and signed.
    pub is_hold: bool,
    /// Who does it.
    pub by: String,
    /// True when it is the crew.
    pub is_own: bool,
    /// How many pairs of hands.
    pub hands: u32,
    /// True when those are more than there are.
    pub is_short_of_hands: bool,
    /// Hours of work.
    pub takes: TimeSpan,
    /// Where that comes from; empty where the file says it.
    pub source: String,
    /// What weather it needs; empty for any.
    pub weather: String,
    /// What must lie ready.
    pub tools: String,
    /// What it handles.
    pub pieces: String,
    /// What can hurt.
    pub cautions: Vec<String>,
    /// What is ticked.
    pub checks: Vec<String>,
    /// The waits that begin at its end.
    pub waits: Vec<(TimeSpan, String)>,
    /// When it is worked on, where it has a date.
    pub bar: Option<Bar>,
}

/// When a step is worked on.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Bar {
    /// The stretches, in order.
    pub stretches: Vec<(Moment, Moment)>,
    /// True when it decides when all is done.
    pub is_critical: bool,
    /// How far it can slip.
    pub float: TimeSpan,
}

impl Bar {
    /// When it begins.
    pub fn start(&self) -> Option<Moment> {
        self.stretches.first().map(|s| s.0)
    }

    /// When it ends.
    pub fn end(&self) -> Option<Moment> {
        self.stretches.last().map(|s| s.1)
    }
}

/// A wait in words: `45 min`, `21 h 30 min`, `7 d`, `20 d 4 h`: the more there is of it, the less exact.
pub fn spell_wait(time: TimeSpan) -> String {
    let hours = time.in_hours().clamp(0.0, 1e7);
    if hours < 48.0 {
        return spell(time);
    }
    let whole = hours.ceil() as i64;
    match whole % 24 {
        0 => format!("{} d", whole / 24),
        h => format!("{} d {h} h", whole / 24),
    }
}

/// Hours of work in words: `45 min`, `3 h`, `3 h 30 min`.
pub fn spell(time: TimeSpan) -> String {
    let minutes = (time.in_hours() * 60.0).round().clamp(0.0, 1e9) as i64;
    match (minutes / 60, minutes % 60) {
        (0, m) => format!("{m} min"),
        (h, 0) => format!("{h} h"),
        (h, m) => format!("{h} h {m} min"),
    }
}
