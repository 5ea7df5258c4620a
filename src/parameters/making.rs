//! How the counter is cast, the frame braced and the coats laid, as the file writes it.

use super::{Dimension, Given};
use schemars::JsonSchema;
use serde::Deserialize;

/// What is in the slab beside concrete. What is left out is not there.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Reinforcement {
    /// Diameter of a wire of the mesh.
    #[serde(default)]
    pub mesh: Given<Dimension>,
    /// From one wire of the mesh to the next. Usual: 6 in, or 150 mm.
    #[serde(default)]
    pub mesh_spacing: Given<Dimension>,
    /// Concrete between the steel and the nearest face of the slab: over an overhang, the top.
    #[serde(default)]
    pub cover: Given<Dimension>,
    /// Whether bars lie diagonally at inward corners.
    #[serde(default)]
    pub corner_bars: Given<bool>,
    /// Diameter of bars across the overhang.
    #[serde(default)]
    pub bars: Given<Dimension>,
    /// From one of these bars to the next. Usual: 12 in, or 300 mm.
    #[serde(default)]
    pub bar_spacing: Given<Dimension>,
}

/// Brackets under the overhang on the seating side.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Brackets {
    /// From one to the next, at most.
    pub spacing: Given<Dimension>,
    /// How far they reach out from the finished face.
    pub reach: Given<Dimension>,
}

/// A crack-control joint in the counter.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Joint {
    /// The name of its run. May be left out when there is only one run.
    #[serde(default)]
    pub run: Given<String>,
    /// From the run's left end.
    pub at: Given<Dimension>,
}

/// What keeps the frame from leaning.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Bracing {
    /// Boards screwed to it.
    Boards,
    /// Flat straps across the panels.
    Straps,
}

/// What the coats lie on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Backing {
    /// Cement board, joints taped.
    Board,
    /// Metal lath.
    Lath,
    /// Masonry.
    Masonry,
    /// Cast concrete.
    Concrete,
}
