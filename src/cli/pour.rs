//! `pour`: the pour plan, printed.

use super::args::PourArgs;
use super::outcome::{Outcome, Trouble};
use super::{console, input, printed, trade};
use crate::pipeline::{self, PourAsked};

pub(super) fn run(args: &PourArgs) -> Result<Outcome, Trouble> {
    let trade = trade::read(&args.trade)?;
    let input = input::read(&args.file)?;
    let forecast = args.forecast.as_deref().map(input::read).transpose()?;
    if let Some(outcome) = trade.say() {
        return Ok(outcome);
    }
    let asked = PourAsked {
        at: args.at.clone(),
        forecast: forecast.map(|f| f.text),
    };
    let planned = match pipeline::pour(&input.text, &trade.data, &asked) {
        Ok(planned) => planned,
        Err(findings) => {
            input.say(&findings);
            return Ok(trade.outcome(&findings));
        }
    };
    let text = printed::tables(planned.tables, args.table.as_deref(), args.format)?;
    console::out(&text);
    input.say(&planned.findings);
    Ok(trade.outcome(&planned.findings))
}
