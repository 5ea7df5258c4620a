//! The frame as it was measured as the file writes it.

use super::{Dimension, Given};
use schemars::JsonSchema;
use serde::Deserialize;

/// The frame as it stands, measured after framing. Left and right are as the cook sees them, standing at the working side.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AsBuilt {
    /// How finely the tape was read. Usual: 1/16 in, or 1 mm.
    #[serde(default)]
    pub tape: Given<Dimension>,
    /// What was measured, a run an entry.
    #[serde(default)]
    pub runs: Given<Vec<Given<MeasuredRun>>>,
}

/// Sides, diagonals and heights of one run, its corner squares included.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct MeasuredRun {
    /// Name of the run; may be left out when there is only one.
    #[serde(default)]
    pub run: Given<String>,
    /// Along the working side, from the left corner to the right.
    #[serde(default)]
    pub working: Given<Dimension>,
    /// Along the seating side, from the left corner to the right.
    #[serde(default)]
    pub seating: Given<Dimension>,
    /// Across at the left end, from the working side to the seating side.
    #[serde(default)]
    pub left: Given<Dimension>,
    /// Across at the right end.
    #[serde(default)]
    pub right: Given<Dimension>,
    /// Both diagonals.
    #[serde(default)]
    pub diagonals: Given<Diagonals>,
    /// How high the frame's top stands at the corners.
    #[serde(default)]
    pub heights: Given<CornerHeights>,
}

/// The diagonals of a run, each named by the corner on the working side where it begins.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Diagonals {
    /// From the working side's left corner to the seating side's right corner.
    #[serde(default)]
    pub from_working_left: Given<Dimension>,
    /// From the working side's right corner to the seating side's left corner.
    #[serde(default)]
    pub from_working_right: Given<Dimension>,
}

/// Heights of the frame's top at the corners of a run, all from one mark or level line; below it they are negative.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct CornerHeights {
    /// At the working side's left corner.
    #[serde(default)]
    pub working_left: Given<Dimension>,
    /// At the working side's right corner.
    #[serde(default)]
    pub working_right: Given<Dimension>,
    /// At the seating side's right corner.
    #[serde(default)]
    pub seating_right: Given<Dimension>,
    /// At the seating side's left corner.
    #[serde(default)]
    pub seating_left: Given<Dimension>,
}
