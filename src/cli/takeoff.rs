//! `takeoff`: quantities, cut lists and what to buy, printed.

use super::args::TakeoffArgs;
use super::outcome::{Outcome, Trouble};
use super::{console, input, printed, trade};
use crate::pipeline;

pub(super) fn run(args: &TakeoffArgs) -> Result<Outcome, Trouble> {
    let trade = trade::read(&args.trade)?;
    let input = input::read(&args.file)?;
    if let Some(outcome) = trade.say() {
        return Ok(outcome);
    }
    let reckoned = match pipeline::reckon(&input.text, &trade.data) {
        Ok(reckoned) => reckoned,
        Err(findings) => {
            input.say(&findings);
            return Ok(trade.outcome(&findings));
        }
    };
    let text = printed::tables(reckoned.tables(), args.table.as_deref(), args.format)?;
    console::out(&text);
    let findings = reckoned.findings();
    input.say(&findings);
    Ok(trade.outcome(&findings))
}
