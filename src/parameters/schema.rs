//! The JSON Schema of the parameter file, made from the types that read it.

use super::File;
use schemars::Schema;

/// The schema.
pub fn schema() -> Schema {
    schemars::schema_for!(File)
}

/// The schema as text, as `docs/islandwright.schema.json` holds it.
///
/// # Errors
/// When it cannot be spelt as JSON, which the tests rule out.
pub fn schema_text() -> Result<String, serde_json::Error> {
    let mut text = serde_json::to_string_pretty(&schema())?;
    text.push('\n');
    Ok(text)
}
