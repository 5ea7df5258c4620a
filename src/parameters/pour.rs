//! The pour and the forecast as the file writes them.

use schemars::JsonSchema;
use serde::Deserialize;

/// How and when the concrete is mixed and placed.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Pour {}
