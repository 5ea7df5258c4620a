//! `explain`: what a check asks, why, and how it is reckoned.

use super::args::ExplainArgs;
use super::console;
use super::outcome::{Outcome, Trouble};
use crate::{parameters, pipeline};

pub(super) fn run(args: &ExplainArgs) -> Result<Outcome, Trouble> {
    let text = match &args.code {
        _ if args.all => pipeline::rule_page(),
        None => pipeline::rule_list(),
        Some(code) => pipeline::explain(code).ok_or_else(|| unknown(code))?,
    };
    console::out(&text);
    Ok(Outcome::Done)
}

fn unknown(code: &str) -> Trouble {
    let hint = parameters::nearest(code, pipeline::codes()).map_or_else(
        || "'islandwright explain' lists the checks".to_owned(),
        |near| format!("did you mean '{near}'? 'islandwright explain' lists the checks"),
    );
    Trouble::new(format!("there is no check '{}'", code.escape_debug()), hint)
}
