//! Site, people and own limits as the file writes them.

use super::{CountText, Dimension, Given, StressText, Survey};
use schemars::JsonSchema;
use serde::Deserialize;

/// Where the island stands. What is left out is not known, and the checks that need it say so.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Site {
    /// The ground that carries the island.
    #[serde(default)]
    pub ground: Given<Ground>,
    /// What the ground bears, where somebody has found out.
    #[serde(default)]
    pub bearing: Given<StressText>,
    /// What lies on the ground under the island.
    #[serde(default)]
    pub surface: Given<Surface>,
    /// The ground as it was measured.
    #[serde(default)]
    pub survey: Given<Survey>,
    /// Whether it freezes there.
    #[serde(default)]
    pub freezing: Given<bool>,
    /// What stands around: posts, beams, walls, fences, roofs, walkways. An empty list says that nothing does.
    #[serde(default)]
    pub objects: Given<Vec<Given<SiteObject>>>,
}

/// The ground, by the classes of the usual table of bearing values.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Ground {
    /// Crystalline bedrock.
    Bedrock,
    /// Sedimentary or foliated rock.
    SedimentaryRock,
    /// Sandy gravel or gravel.
    Gravel,
    /// Sand, silty sand, clayey sand, silty or clayey gravel.
    Sand,
    /// Clay, sandy clay, silt and the like.
    Clay,
}

/// What lies on the ground under the island.
#[derive(Clone, Debug, PartialEq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub enum Surface {
    /// Nothing: the sleepers stand on the ground.
    Bare,
    /// A slab of concrete.
    Slab {
        /// Its thickness.
        thickness: Given<Dimension>,
    },
    /// Pavers on bedding.
    Pavers {
        /// The shorter side of one.
        size: Given<Dimension>,
        /// Its thickness.
        thickness: Given<Dimension>,
    },
    /// A deck of wood on joists.
    Deck,
}

/// Something that stands around the island, as a box that may lean.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SiteObject {
    /// Its name, unique among the objects.
    pub name: Given<String>,
    /// What it is.
    pub kind: Given<ObjectKind>,
    /// Whether it can burn.
    #[serde(default)]
    pub combustible: Given<bool>,
    /// Its corner with the smallest distances.
    pub at: Given<Point>,
    /// How large it is.
    pub size: Given<Point>,
    /// Where the same corner is at its top, or as high as it could be measured: how far it leans.
    #[serde(default)]
    pub top: Given<Point>,
}

/// What an object is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum ObjectKind {
    /// A post.
    Post,
    /// A beam.
    Beam,
    /// A wall.
    Wall,
    /// A fence or hedge.
    Fence,
    /// A roof or ceiling.
    Roof,
    /// A way that people walk.
    Walkway,
    /// Anything else.
    Other,
}

/// Three distances.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Point {
    /// Along the first run from the left end of its frame, to the right as the cook sees it.
    pub x: Given<Dimension>,
    /// From the working face of the first run's frame, away from the cook; negative where the cook stands.
    pub y: Given<Dimension>,
    /// Up from the highest point of the ground.
    pub z: Given<Dimension>,
}

/// Who uses the island.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct People {
    /// How many sit at the seating sides, all runs together.
    #[serde(default)]
    pub seats: Given<CountText>,
    /// Who passes behind those who sit.
    #[serde(default)]
    pub behind_seats: Given<Passage>,
    /// Whether a part of the counter is to be used from a wheelchair.
    #[serde(default)]
    pub accessible: Given<bool>,
}

/// How people pass behind those who sit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Passage {
    /// Nobody passes.
    Nobody,
    /// People edge past.
    Edging,
    /// People walk past.
    Walking,
}

/// A limit of a check set otherwise. docs/checks.md names the limits and their usual values.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct OwnLimit {
    /// The name of the limit, such as seat-width.
    pub name: Given<String>,
    /// Its value with its unit.
    pub value: Given<String>,
    /// Where the value comes from: your building department, an engineer, a standard. The findings show it.
    #[serde(default)]
    pub source: Given<String>,
}
