//! What instructions say of an appliance, and what fills an opening, as the file writes it.

use super::{CountText, Dimension, Given, VolumeText};
use schemars::JsonSchema;
use serde::Deserialize;

/// What an appliance runs on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Fuel {
    /// Natural gas, lighter than air.
    NaturalGas,
    /// Propane, heavier than air.
    Propane,
    /// Charcoal.
    Charcoal,
    /// Wood.
    Wood,
    /// Electricity.
    Electricity,
    /// Nothing, such as a sink or an ice well.
    Nothing,
}

/// Distances to what can burn, from the appliance's own instructions. What is left out is not known.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Clearance {
    /// Behind its body.
    #[serde(default)]
    pub back: Given<Dimension>,
    /// Beside its body.
    #[serde(default)]
    pub sides: Given<Dimension>,
    /// Above the counter.
    #[serde(default)]
    pub above: Given<Dimension>,
    /// Below its body.
    #[serde(default)]
    pub below: Given<Dimension>,
}

/// The drain pipe of a sink or an ice well.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Drain {
    /// Its nominal diameter.
    pub size: Given<Dimension>,
    /// How long it runs before it drops into what takes the water.
    pub length: Given<Dimension>,
    /// How much it falls over that length.
    pub fall: Given<Dimension>,
    /// Whether it has a trap.
    #[serde(default)]
    pub trapped: Given<bool>,
}

/// How a leaf is hung, as seen from outside.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Hinge {
    /// On its left edge.
    Left,
    /// On its right edge.
    Right,
    /// Two leaves, each on its outer edge.
    Pair,
    /// On its lower edge.
    Bottom,
    /// On its upper edge.
    Top,
    /// Not at all: it is lifted off.
    None,
}

/// How it opens.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Opens {
    /// Without tools.
    ByHand,
    /// With tools.
    WithTools,
}

/// What shuts off a receptacle's circuit when current leaks to earth.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Protection {
    /// A ground-fault circuit interrupter, or residual-current device.
    GroundFault,
    /// Nothing.
    None,
}

/// What keeps the weather off a receptacle.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Cover {
    /// Weatherproof while something is plugged in.
    InUse,
    /// Weatherproof only when shut.
    Flap,
    /// Nothing.
    None,
}

/// What is in a receptacle's box.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct BoxFill {
    /// The volume marked in the box.
    pub volume: Given<VolumeText>,
    /// The wire's size, American wire gauge: 14, 12 or 10.
    pub gauge: Given<CountText>,
    /// Conductors that come in from outside and end or are spliced there, earthing conductors not counted.
    pub conductors: Given<CountText>,
    /// Earthing (grounding) conductors. Usual: 1.
    #[serde(default)]
    pub grounds: Given<CountText>,
    /// Receptacles and switches on a yoke. Usual: 1.
    #[serde(default)]
    pub devices: Given<CountText>,
    /// Whether cable clamps are inside the box. Usual: true.
    #[serde(default)]
    pub clamps: Given<bool>,
}
