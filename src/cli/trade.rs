//! The trade files that the command line names.

use super::args::TradeArgs;
use super::input::{self, Input};
use super::outcome::{Outcome, Trouble};
use crate::diagnostics::Finding;
use crate::pipeline::{self, TradeData};
use crate::write::Report;

/// The trade data that comes with the program with what the named files say, and what was found about them.
pub(super) struct Trade {
    /// Everything that is sold.
    pub(super) data: TradeData,
    files: Vec<(Input, Vec<Finding>)>,
}

/// Reads the files in the order they are named: a later one replaces what an earlier one says of the same name.
pub(super) fn read(args: &TradeArgs) -> Result<Trade, Trouble> {
    let mut data = pipeline::shipped_trade().clone();
    let mut files = Vec::new();
    for path in &args.trade {
        let input = input::read(path)?;
        let findings = pipeline::add_trade(&mut data, &input.text);
        files.push((input, findings));
    }
    Ok(Trade { data, files })
}

impl Trade {
    /// What they come to, together with what was found about parameter files.
    pub(super) fn outcome(&self, more: &[Finding]) -> Outcome {
        let all = self.files.iter().flat_map(|(_, findings)| findings);
        Outcome::of(&all.chain(more).cloned().collect::<Vec<_>>())
    }

    /// Says on standard error what was found about them. Gives the outcome when one of them cannot be used.
    pub(super) fn say(&self) -> Option<Outcome> {
        for (input, findings) in &self.files {
            input.say(findings);
        }
        let outcome = self.outcome(&[]);
        (outcome == Outcome::Unusable).then_some(outcome)
    }

    /// What was found about each.
    pub(super) fn reports(&self) -> impl Iterator<Item = Report<'_>> {
        self.files
            .iter()
            .map(|(input, findings)| input.report(findings, &[]))
    }
}
