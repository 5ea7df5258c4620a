//! The file as a whole, its project and its levels.

use super::{
    Appliance, AsBuilt, Buying, Compartment, Counter, Dimension, Drawings, Electricity, Gas, Given,
    Opening, OwnLimit, People, Pour, Printing, Run, ScaleModel, Site, Supply, TileBand, Trade,
    Work,
};
use schemars::JsonSchema;
use serde::Deserialize;

/// The parameter file of one island.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(rename = "Island")]
pub struct File {
    /// What the title block of the drawings says, and which units they are in.
    pub project: Given<Project>,
    /// What the island is built of. Whatever is left out gets a usual value.
    #[serde(default)]
    pub trade: Given<Trade>,
    /// Heights above the survey datum.
    #[serde(default)]
    pub levels: Given<Levels>,
    /// The straight stretches of the island, in order from left to right as the cook sees them.
    pub runs: Given<Vec<Given<Run>>>,
    /// What drops into the counter: grill, side burner, sink, ice well and the like.
    #[serde(default)]
    pub appliances: Given<Vec<Given<Appliance>>>,
    /// Holes in the faces: doors, drawers, hatches, built-in appliances, vents, receptacle boxes.
    #[serde(default)]
    pub openings: Given<Vec<Given<Opening>>>,
    /// The cast concrete counter.
    #[serde(default)]
    pub counter: Given<Counter>,
    /// A band of tile at the top of the finished faces; leave it out for none.
    #[serde(default)]
    pub tile_band: Given<TileBand>,
    /// How the full-size template is printed.
    #[serde(default)]
    pub printing: Given<Printing>,
    /// How the drawing set is drawn.
    #[serde(default)]
    pub drawings: Given<Drawings>,
    /// The printable scale model.
    #[serde(default)]
    pub scale_model: Given<ScaleModel>,
    /// Stretches that are closed off inside. Left out, the whole inside is one compartment.
    #[serde(default)]
    pub compartments: Given<Vec<Given<Compartment>>>,
    /// The gas supply, for the checks.
    #[serde(default)]
    pub gas: Given<Gas>,
    /// The electric supply within the island, for the checks.
    #[serde(default)]
    pub electricity: Given<Electricity>,
    /// Where the island stands, for the checks.
    #[serde(default)]
    pub site: Given<Site>,
    /// Who uses the island, for the checks.
    #[serde(default)]
    pub people: Given<People>,
    /// Limits of the checks that are set otherwise here.
    #[serde(default)]
    pub limits: Given<Vec<Given<OwnLimit>>>,
    /// The frame as it stands, measured after framing: counter, forms, boards and template then follow it.
    #[serde(default)]
    pub as_built: Given<AsBuilt>,
    /// How the concrete is mixed and placed, and the weather it is placed in.
    #[serde(default)]
    pub pour: Given<Pour>,
    /// Who works when, and how fast.
    #[serde(default)]
    pub work: Given<Work>,
    /// How it is bought and cut: currency, tax, spares, tools.
    #[serde(default)]
    pub buying: Given<Buying>,
    /// What shops sell, beside or instead of the trade data that comes with the program.
    #[serde(default)]
    pub supplies: Given<Vec<Given<Supply>>>,
}

/// What the title block says.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Project {
    /// What is built, one line.
    pub title: Given<String>,
    /// Where it stands.
    #[serde(default)]
    pub place: Given<String>,
    /// Who drew it.
    #[serde(default)]
    pub drawn_by: Given<String>,
    /// Which revision this is, such as A.
    #[serde(default)]
    pub revision: Given<String>,
    /// The date as text; no clock is read.
    #[serde(default)]
    pub date: Given<String>,
    /// How drawings spell lengths, and which usual values fill what is left out. Imperial unless said.
    #[serde(default)]
    pub units: Given<Units>,
}

/// Feet, inches and fractions, or millimetres.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Units {
    /// Feet, inches and sixteenths.
    Imperial,
    /// Millimetres.
    Metric,
}

/// Heights above the survey datum.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Levels {
    /// Top of the finished counter above the datum. Usual: 36 in, or 900 mm.
    #[serde(default)]
    pub counter: Given<Dimension>,
    /// From the datum to the underside of the frame; sleepers and shims stand in it. Usual: 2 in, or 50 mm.
    #[serde(default)]
    pub base_gap: Given<Dimension>,
}
