//! The survey of the ground as the file writes it.

use super::{Dimension, Given, LevelText};
use schemars::JsonSchema;
use serde::Deserialize;

/// The ground as it was measured: spot levels, scattered or in a grid, with the shims that pack the sleepers to level.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Survey {
    /// Whether the levels are heights of the ground, or readings taken down from a level line: usually up.
    #[serde(default)]
    pub measured: Given<Measured>,
    /// How finely a level was read: usually 1/8 in or 3 mm.
    #[serde(default)]
    pub reading: Given<Dimension>,
    /// Spot levels wherever they were taken.
    #[serde(default)]
    pub points: Given<Vec<Given<SpotLevel>>>,
    /// Spot levels in rows and columns.
    #[serde(default)]
    pub grid: Given<LevelGrid>,
    /// Ground farther than this from every level counts as sparsely measured: usually 4 ft or 1.2 m.
    #[serde(default)]
    pub sparse_beyond: Given<Dimension>,
    /// Thicknesses of the shims at hand: usually 1/16, 1/8, 1/4 and 1/2 in, or 1, 2, 5 and 10 mm.
    #[serde(default)]
    pub shims: Given<Vec<Given<Dimension>>>,
    /// The highest pack of shims that is allowed under a sleeper: usually 2 in or 50 mm.
    #[serde(default)]
    pub most_packing: Given<Dimension>,
}

/// Which way levels were measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Measured {
    /// Heights: a larger one is higher ground.
    Up,
    /// Readings down from a level line, a laser or the water in a water level: a larger one is lower ground.
    Down,
}

/// One spot level.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SpotLevel {
    /// Along the first run from the left end of its frame, to the right as the cook sees it.
    pub x: Given<LevelText>,
    /// From the working face of the first run's frame, away from the cook; negative where the cook stands.
    pub y: Given<LevelText>,
    /// The level, from wherever the survey counts.
    pub z: Given<LevelText>,
}

/// Spot levels in rows and columns.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct LevelGrid {
    /// Where the first level of the first row was taken.
    pub from: Given<Across>,
    /// From one level of a row to the next along x, and from one row to the next along y.
    pub step: Given<Across>,
    /// The rows, each with its levels from left to right; `~` or '-' where none was taken.
    pub rows: Given<Vec<Given<Vec<Given<LevelText>>>>>,
}

/// Two distances in plan.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Across {
    /// Along the first run, to the right as the cook sees it.
    pub x: Given<Dimension>,
    /// Away from the cook.
    pub y: Given<Dimension>,
}
