//! `schema`: the parameter file described, for editors or for people.

use super::args::{Described, SchemaArgs};
use super::console;
use super::outcome::{Outcome, Trouble};
use crate::parameters;

pub(super) fn run(args: &SchemaArgs) -> Result<Outcome, Trouble> {
    let text = match args.format {
        Described::Json => parameters::schema_text()
            .map_err(|e| Trouble::new(format!("the schema cannot be spelt: {e}"), ""))?,
        Described::Markdown => parameters::reference(),
    };
    console::out(&text);
    Ok(Outcome::Done)
}
