//! `schema`: the JSON Schema of the parameter file.

use super::console;
use super::outcome::{Outcome, Trouble};
use crate::parameters;

pub(super) fn run() -> Result<Outcome, Trouble> {
    let schema = parameters::schema_text()
        .map_err(|e| Trouble::new(format!("the schema cannot be spelt: {e}"), ""))?;
    console::out(&schema);
    Ok(Outcome::Done)
}
