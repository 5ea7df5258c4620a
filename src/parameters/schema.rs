//! The JSON Schema of the parameter file, made from the types that read it.

use super::{File, TradeFile};
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
    spelt(&schema())
}

/// The schema of a trade file as text, as `docs/trade.schema.json` holds it.
///
/// # Errors
/// When it cannot be spelt as JSON, which the tests rule out.
pub fn trade_schema_text() -> Result<String, serde_json::Error> {
    spelt(&schemars::schema_for!(TradeFile))
}

fn spelt(schema: &Schema) -> Result<String, serde_json::Error> {
    let mut text = serde_json::to_string_pretty(schema)?;
    text.push('\n');
    Ok(text)
}
