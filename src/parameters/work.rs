//! The order of work as the file writes it.

use schemars::JsonSchema;
use serde::Deserialize;

/// Who works when, and how fast.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Work {}
