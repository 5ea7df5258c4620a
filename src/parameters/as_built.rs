//! The frame as it was measured as the file writes it.

use schemars::JsonSchema;
use serde::Deserialize;

/// The frame as it stands, measured after framing.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AsBuilt {}
