//! The order of work as the file writes it.

use super::{CountText, Given, MomentText, ShareText, TimeSpanText};
use schemars::JsonSchema;
use serde::Deserialize;

/// Who works when, and how fast. All usual values are invented.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Work {
    /// The first day of work: 2027-05-08. Left out, the steps are listed without dates.
    #[serde(default)]
    pub start: Given<MomentText>,
    /// The day by which all should be done.
    #[serde(default)]
    pub done_by: Given<MomentText>,
    /// The days of the week on which the crew works: mon, tue, wed, thu, fri, sat, sun. Usual: mon to fri.
    #[serde(default)]
    pub days: Given<Vec<Given<String>>>,
    /// From when to when it works: 08:00 to 17:00. Usual: 08:00 to 17:00.
    #[serde(default)]
    pub hours: Given<String>,
    /// Days on which nobody works.
    #[serde(default)]
    pub off: Given<Vec<Given<MomentText>>>,
    /// How many pairs of hands there are. Usual: 2.
    #[serde(default)]
    pub crew: Given<CountText>,
    /// How fast they are: at 50 % everything takes twice as long. Usual: 100 %.
    #[serde(default)]
    pub pace: Given<ShareText>,
    /// When licensed trades and inspectors come.
    #[serde(default)]
    pub trades: Given<Trades>,
    /// Steps that take another time, other hands or another order than is usual.
    #[serde(default)]
    pub steps: Given<Vec<Given<StepChange>>>,
}

/// When licensed trades and inspectors come.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Trades {
    /// The days of the week on which they come. Usual: mon to fri.
    #[serde(default)]
    pub days: Given<Vec<Given<String>>>,
    /// From when to when. Usual: 08:00 to 16:00.
    #[serde(default)]
    pub hours: Given<String>,
}

/// One step of the work otherwise than is usual.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct StepChange {
    /// The step by its name, such as base-coat; docs/work.md lists them all.
    pub step: Given<String>,
    /// How many hours of work it takes, whatever the pace.
    #[serde(default)]
    pub takes: Given<TimeSpanText>,
    /// How many pairs of hands it needs.
    #[serde(default)]
    pub hands: Given<CountText>,
    /// The steps that must be done before it, instead of the usual ones, each with the time that must pass in between where
    /// there is any: [tape + 24 h, strip]. Hold points stay before it, and usual waits where no time is written.
    #[serde(default)]
    pub after: Given<Vec<Given<String>>>,
}
