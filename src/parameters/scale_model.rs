//! The printable scale model as the file writes it.

use super::{Dimension, Given, ScaleText};
use schemars::JsonSchema;
use serde::Deserialize;

/// The island as a small model, printed layer by layer from plastic.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ScaleModel {
    /// How many times smaller it is. Usual: the largest of 1:10, 1:12, 1:16, 1:20, 1:24, 1:25, 1:32, 1:48, 1:50, 1:96 and
    /// 1:100 at which every piece fits the bed whole.
    #[serde(default)]
    pub scale: Given<ScaleText>,
    /// What the printer can do. The usual values are common practice for printers that lay down melted plastic.
    #[serde(default)]
    pub printer: Given<Printer>,
}

/// What the printer can do.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Printer {
    /// The room a print may take up.
    #[serde(default)]
    pub bed: Given<Bed>,
    /// The bore of the nozzle. Usual: 0.4 mm.
    #[serde(default)]
    pub nozzle: Given<Dimension>,
    /// The thinnest wall it prints soundly; no thinner than the nozzle. Usual: two lines, twice the nozzle.
    #[serde(default)]
    pub wall: Given<Dimension>,
    /// The gap left on each side where pieces go into each other. Usual: 0.2 mm.
    #[serde(default)]
    pub clearance: Given<Dimension>,
}

/// The room a print may take up.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Bed {
    /// From left to right. Usual: 220 mm.
    #[serde(default)]
    pub x: Given<Dimension>,
    /// From front to back. Usual: 220 mm.
    #[serde(default)]
    pub y: Given<Dimension>,
    /// Upwards. Usual: 250 mm.
    #[serde(default)]
    pub z: Given<Dimension>,
}
