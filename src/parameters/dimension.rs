//! A length as the file writes it.

use crate::units::{Length, parse_length};
use serde::de::{Deserialize, Deserializer, Error, Visitor};

/// A length with its unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dimension(pub Length);

impl<'de> Deserialize<'de> for Dimension {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_str(LengthVisitor)
    }
}

struct LengthVisitor;

impl Visitor<'_> for LengthVisitor {
    type Value = Dimension;

    fn expecting(&self, f: &mut std::fmt::Formatter) -> std::fmt::Result {
        f.write_str("a length with its unit")
    }

    fn visit_str<E: Error>(self, text: &str) -> Result<Dimension, E> {
        parse_length(text).map(Dimension).map_err(E::custom)
    }
}

impl schemars::JsonSchema for Dimension {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Length".into()
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({
            "type": "string",
            "description": "A length with its unit: 24 in, 24\", 3' 6-1/2\", 3 ft 6 1/2 in, 610 mm, 61 cm or 1.2 m.",
            "pattern": "^\\s*[+-]?\\s*[0-9.]+.*(mm|cm|m|in|inch|inches|ft|foot|feet|['\"’”′″])\\.?\\s*$",
            "examples": ["24 in", "3' 6-1/2\"", "610 mm"]
        })
    }
}
