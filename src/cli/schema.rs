//! `schema`: the parameter file or a trade file described, for editors or for people.

use super::args::{Described, DescribedFile, SchemaArgs};
use super::console;
use super::outcome::{Outcome, Trouble};
use crate::parameters;

pub(super) fn run(args: &SchemaArgs) -> Result<Outcome, Trouble> {
    let json = match args.of {
        DescribedFile::Parameters => parameters::schema_text(),
        DescribedFile::Trade => parameters::trade_schema_text(),
    };
    let text = match args.format {
        Described::Json => {
            json.map_err(|e| Trouble::new(format!("the schema cannot be spelt: {e}"), ""))?
        }
        // A trade file's only list is described with the parameter file's.
        Described::Markdown => parameters::reference(),
    };
    console::out(&text);
    Ok(Outcome::Done)
}
