//! What a rule is: one question asked of a design, with its documentation, its limits and what it was held against.

use super::{Answers, Subject};
use crate::units::Unit;

/// A group of rules.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Family {
    /// Does everything find its place.
    Fit,
    /// Does the counter hold.
    Slab,
    /// Does the frame hold.
    Frame,
    /// Does it stand.
    Ground,
    /// Heat and gas.
    Gas,
    /// Electricity and water.
    Services,
    /// Can people work and sit at it.
    People,
    /// Weather and coats.
    Weather,
}

impl Family {
    /// All families in the order they are printed.
    pub const ALL: [Self; 8] = [
        Self::Fit,
        Self::Slab,
        Self::Frame,
        Self::Ground,
        Self::Gas,
        Self::Services,
        Self::People,
        Self::Weather,
    ];

    /// Its name.
    pub fn name(self) -> &'static str {
        match self {
            Self::Fit => "Fit",
            Self::Slab => "Slab",
            Self::Frame => "Frame",
            Self::Ground => "Ground and stability",
            Self::Gas => "Heat and gas",
            Self::Services => "Electricity and water",
            Self::People => "People",
            Self::Weather => "Weather and coats",
        }
    }

    /// What the codes of its rules begin with.
    pub fn prefixes(self) -> &'static [&'static str] {
        match self {
            Self::Fit => &["fit-"],
            Self::Slab => &["slab-"],
            Self::Frame => &["frame-"],
            Self::Ground => &["ground-"],
            Self::Gas => &["heat-", "gas-"],
            Self::Services => &["power-", "water-"],
            Self::People => &["people-"],
            Self::Weather => &["weather-"],
        }
    }

    /// The caution that stands over everything its rules say.
    pub fn caution(self) -> &'static str {
        match self {
            Self::Fit => "the appliance's own instructions decide its opening and its clearances",
            Self::Slab | Self::Frame | Self::Ground => {
                "this reckoning does not license a structure: the local code and an engineer decide"
            }
            Self::Gas => {
                "heat and gas can kill: the local code, the appliance's own instructions and a licensed gas fitter decide"
            }
            Self::Services => {
                "electricity can kill: the local code and a licensed electrician or plumber decide"
            }
            Self::People => {
                "the people who use it decide; where access is required by law, the local code does"
            }
            Self::Weather => {
                "the makers' instructions for mix, board, coats and tile decide; wet cement burns skin and eyes"
            }
        }
    }
}

/// A limit of a rule: what a file may set otherwise under `limits:`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limit {
    /// Its name in the file, unique among all rules, such as `seat-width`.
    pub name: &'static str,
    /// What it limits, one clause.
    pub what: &'static str,
    /// The usual value in the base unit of `unit`.
    pub usual: f64,
    /// Its unit.
    pub unit: Unit,
    /// Where the usual value comes from: a standard with edition and section, `common practice`, or `value from memory`.
    pub source: &'static str,
}

/// Where the value comes from that a rule was held against in a test.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Origin {
    /// A published table or worked example.
    Published,
    /// A library that nobody here wrote.
    Library,
    /// A published value given from memory.
    Memory,
    /// Common practice, without a source.
    Practice,
    /// Worked by hand from a named formula: it catches slips of the code, but is no value from outside by itself.
    Worked,
}

impl Origin {
    /// Its name in the table.
    pub fn name(self) -> &'static str {
        match self {
            Self::Published => "published",
            Self::Library => "outside library",
            Self::Memory => "value from memory",
            Self::Practice => "common practice",
            Self::Worked => "worked by hand from the formula",
        }
    }
}

/// One check of a rule against something that nobody here wrote.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Outside {
    /// What was compared with what, one clause that names the table, the example or the library.
    pub what: &'static str,
    /// Where the value comes from.
    pub origin: Origin,
    /// The test that compares: the name of its function.
    pub test: &'static str,
}

/// What a rule is about, in Markdown. No part is empty.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct About {
    /// What it checks and when it passes, cautions and fails.
    pub checks: &'static str,
    /// Why it matters to somebody who builds.
    pub why: &'static str,
    /// How it is reckoned: the formula with its symbols, and its source.
    pub reckoned: &'static str,
    /// An example with numbers.
    pub example: &'static str,
}

/// One question asked of a design.
#[derive(Clone, Copy)]
pub struct Rule {
    /// Its stable code; it begins with a prefix of its family.
    pub code: &'static str,
    /// Its family.
    pub family: Family,
    /// What it asks, one line.
    pub title: &'static str,
    /// Its documentation.
    pub about: About,
    /// What it measures against; empty where it only tells.
    pub limits: &'static [&'static Limit],
    /// The keys of the file whose change may turn a failure to a pass, such as `counter.thickness` or `openings[].sill`.
    pub levers: &'static [&'static str],
    /// What its tests hold it against; never empty.
    pub outside: &'static [Outside],
    /// Asks it. At least one answer for every design.
    pub check: fn(&Subject, &mut Answers),
}
