//! The survey of the ground as the file writes it.

use schemars::JsonSchema;
use serde::Deserialize;

/// The ground as it was measured.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Survey {}
