//! Compartments, gas and electricity as the file writes them.

use super::{Dimension, Fuel, Given, MassText, StressText};
use schemars::JsonSchema;
use serde::Deserialize;

/// A stretch of a run that is closed off from the rest inside, such as the room for a cylinder.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Compartment {
    /// Its name, unique among the compartments.
    pub name: Given<String>,
    /// The name of its run. May be left out when there is only one run.
    #[serde(default)]
    pub run: Given<String>,
    /// Where it begins, from the run's left end.
    pub from: Given<Dimension>,
    /// Where it ends, from the run's left end.
    pub to: Given<Dimension>,
    /// Its floor above the datum. Usual: as the underside of the frame.
    #[serde(default)]
    pub floor: Given<Dimension>,
}

/// The gas supply. A licensed gas fitter decides; this is for checking what was planned.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Gas {
    /// natural-gas or propane.
    pub fuel: Given<Fuel>,
    /// The drop in pressure that may be used up from the supply to the farthest appliance. Left out, 0.5 in w.c.
    #[serde(default)]
    pub allowed_drop: Given<StressText>,
    /// The pipes, from the supply to each appliance.
    #[serde(default)]
    pub pipes: Given<Vec<Given<GasPipe>>>,
    /// A propane cylinder in or beside the island.
    #[serde(default)]
    pub cylinder: Given<Cylinder>,
    /// Which edition of the standard for cylinder enclosures holds where you build.
    #[serde(default)]
    pub enclosure_edition: Given<EnclosureEdition>,
    /// Where the main shut-off valve is reached.
    #[serde(default)]
    pub shut_off: Given<ShutOff>,
    /// Whether each pipe has a sleeve or bushing where it passes through steel.
    #[serde(default)]
    pub sleeves: Given<bool>,
}

/// One stretch of gas pipe between two branchings.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct GasPipe {
    /// Its name, unique among the pipes.
    pub name: Given<String>,
    /// The name of the pipe that it branches from, written above it; left out for the one that starts at the supply.
    #[serde(default)]
    pub from: Given<String>,
    /// Its length, fittings included as your gas fitter counts them.
    pub length: Given<Dimension>,
    /// Its nominal size: 1/2 in, 3/4 in, 1 in or 1-1/4 in.
    pub size: Given<Dimension>,
    /// Usual: steel.
    #[serde(default)]
    pub material: Given<PipeMaterial>,
    /// The name of the appliance at its end.
    #[serde(default)]
    pub serves: Given<String>,
}

/// Of what a gas pipe is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum PipeMaterial {
    /// Schedule 40 steel.
    Steel,
    /// Corrugated flexible tubing: sized only by its maker's tables.
    Corrugated,
}

/// A propane cylinder.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Cylinder {
    /// How much propane it holds.
    pub capacity: Given<MassText>,
    /// The name of the compartment that it stands in; left out when it stands outside the island.
    #[serde(default)]
    pub compartment: Given<String>,
    /// Height of its valve above its foot. Usual: 15 in, or 380 mm.
    #[serde(default)]
    pub valve: Given<Dimension>,
}

/// Which edition of the standard for cylinder enclosures holds; both are in circulation.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum EnclosureEdition {
    /// Openings on opposite sides at valve level and at the floor.
    A,
    /// Openings near the top, 90 degrees apart, and at the floor.
    B,
}

/// Where the main shut-off valve is reached.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ShutOff {
    /// The name of the opening that it is behind.
    pub behind: Given<String>,
    /// How far behind the frame's face it is.
    #[serde(default)]
    pub depth: Given<Dimension>,
}

/// The electric supply within the island. A licensed electrician decides; this is for checking what was planned.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Electricity {
    /// Outside diameter of the conduit or cable.
    #[serde(default)]
    pub conduit: Given<Dimension>,
    /// Height of its path above the datum.
    #[serde(default)]
    pub height: Given<Dimension>,
    /// Whether there are bushings where it passes through steel.
    #[serde(default)]
    pub bushings: Given<bool>,
    /// The names of the openings that it feeds, in the order in which it runs through the frame.
    #[serde(default)]
    pub feeds: Given<Vec<Given<String>>>,
}
