//! `compare`: what differs between two designs.

use super::args::{CompareArgs, Lines};
use super::outcome::{Outcome, Trouble};
use super::{console, input, trade};
use crate::pipeline;
use crate::write::{differences_text, tables_json};

pub(super) fn run(args: &CompareArgs) -> Result<Outcome, Trouble> {
    let trade = trade::read(&args.trade)?;
    let inputs = [input::read(&args.first)?, input::read(&args.second)?];
    if let Some(outcome) = trade.say() {
        return Ok(outcome);
    }
    let reckoned = inputs
        .each_ref()
        .map(|i| pipeline::reckon(&i.text, &trade.data));
    let [first, second] = reckoned;
    let (first, second) = match (first, second) {
        (Ok(first), Ok(second)) => (first, second),
        (first, second) => {
            // Both are read before either is refused, so that all is said at once.
            let refused = [first.err(), second.err()].map(Option::unwrap_or_default);
            let said = inputs.iter().zip(&refused);
            said.for_each(|(input, findings)| input.say(findings));
            return Ok(trade.outcome(&refused.concat()));
        }
    };
    let differences = first.differences(&second);
    let text = match args.format {
        Lines::Json => tables_json(&[differences]),
        Lines::Table if differences.rows.is_empty() => {
            let [a, b] = &inputs;
            format!("{} and {}: nothing differs\n", a.path, b.path)
        }
        Lines::Table => differences_text(&differences),
    };
    console::out(&text);
    Ok(trade.outcome(&[first.findings(), second.findings()].concat()))
}
