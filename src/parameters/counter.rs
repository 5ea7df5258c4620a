//! Counter and tile band as the file writes them.

use super::{
    Brackets, CountText, Dimension, Given, Joint, Reinforcement, Side, SlopeText, StressText,
};
use schemars::JsonSchema;
use serde::Deserialize;

/// The cast concrete counter.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Counter {
    /// Thickness of the slab away from its turndown edge. Usual: 2 in, or 50 mm.
    #[serde(default)]
    pub thickness: Given<Dimension>,
    /// How far it passes the finished faces. There is none along walls.
    #[serde(default)]
    pub overhang: Given<Overhang>,
    /// The thicker rim. There is none along walls and at cutouts.
    #[serde(default)]
    pub turndown: Given<Turndown>,
    /// The shape of the exposed edge. Usual: square, eased 1/8 in, or 3 mm.
    #[serde(default)]
    pub edge: Given<Edge>,
    /// The shape of outward corners in plan. Usual: sharp.
    #[serde(default)]
    pub corners: Given<Corners>,
    /// Specified compressive strength of the concrete.
    #[serde(default)]
    pub strength: Given<StressText>,
    /// Whether the mix is air-entrained, as concrete that freezes wet should be.
    #[serde(default)]
    pub air_entrained: Given<bool>,
    /// Mesh and bars in the slab.
    #[serde(default)]
    pub reinforcement: Given<Reinforcement>,
    /// Brackets under the overhang on the seating side.
    #[serde(default)]
    pub brackets: Given<Brackets>,
    /// Crack-control joints.
    #[serde(default)]
    pub joints: Given<Vec<Given<Joint>>>,
    /// Fall of the top, so that water runs off.
    #[serde(default)]
    pub fall: Given<SlopeText>,
    /// Whether the turndown has a drip groove on its underside.
    #[serde(default)]
    pub drip: Given<bool>,
    /// Whether it is cast elsewhere and lifted on. Usual: false, cast in place.
    #[serde(default)]
    pub elsewhere: Given<bool>,
    /// How many people lift it, where it is cast elsewhere.
    #[serde(default)]
    pub lifters: Given<CountText>,
}

/// How far the counter passes the finished face, by side.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Overhang {
    /// Past the working faces. Usual: 1-1/2 in, or 40 mm.
    #[serde(default)]
    pub working: Given<Dimension>,
    /// Past the seating faces; 10 to 12 in where people sit. Usual: as the working side.
    #[serde(default)]
    pub seating: Given<Dimension>,
    /// Past the island's left end. Usual: as the working side.
    #[serde(default)]
    pub left: Given<Dimension>,
    /// Past the island's right end. Usual: as the working side.
    #[serde(default)]
    pub right: Given<Dimension>,
}

/// The thicker rim of the slab.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Turndown {
    /// How far it reaches below the slab's underside. Usual: 1 in, or 25 mm.
    #[serde(default)]
    pub depth: Given<Dimension>,
    /// How thick it is, from the edge inwards. Usual: 1-1/2 in, or 40 mm.
    #[serde(default)]
    pub width: Given<Dimension>,
    /// Which sides have it; an empty list for none. Usual: all four.
    #[serde(default)]
    pub sides: Given<Vec<Given<Side>>>,
}

/// The shape of the slab's exposed edge.
#[derive(Clone, Debug, PartialEq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub enum Edge {
    /// Square, its arrises eased by a small radius.
    Square {
        /// Radius of the arris; 0 in leaves it sharp. Usual: 1/8 in, or 3 mm.
        #[serde(default)]
        eased: Given<Dimension>,
    },
    /// A 45 degree chamfer at the top.
    Chamfer {
        /// Its legs.
        size: Given<Dimension>,
    },
    /// A half circle over the whole height of the edge.
    HalfRound,
    /// A quarter circle at the top.
    QuarterRound {
        /// Its radius.
        radius: Given<Dimension>,
    },
    /// A quarter circle hollowed out of the bottom.
    Cove {
        /// Its radius.
        radius: Given<Dimension>,
    },
}

/// The shape of outward corners in plan.
#[derive(Clone, Debug, PartialEq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub enum Corners {
    /// The sides meet.
    Sharp,
    /// Cut off at 45 degrees.
    Chamfered {
        /// The legs of the cut.
        size: Given<Dimension>,
    },
    /// Rounded.
    Rounded {
        /// The radius.
        radius: Given<Dimension>,
    },
}

/// A band of tile at the top of the finished faces.
#[derive(Clone, Debug, Default, PartialEq, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TileBand {
    /// False keeps the numbers but leaves the band off. Usual: true.
    #[serde(default)]
    pub laid: Given<bool>,
    /// Height of the band, downwards from the top of the cladding. Usual: one row of tile.
    #[serde(default)]
    pub height: Given<Dimension>,
    /// A tile along the face. Usual: 4-1/4 in, or 100 mm.
    #[serde(default)]
    pub tile_width: Given<Dimension>,
    /// A tile up the face. Usual: 4-1/4 in, or 100 mm.
    #[serde(default)]
    pub tile_height: Given<Dimension>,
    /// A tile with its bed, measured from the base coat. Usual: 3/8 in, or 10 mm.
    #[serde(default)]
    pub tile_thickness: Given<Dimension>,
    /// The joint between tiles. Usual: 3/16 in, or 5 mm.
    #[serde(default)]
    pub joint: Given<Dimension>,
    /// From one movement joint in the band to the next, at most.
    #[serde(default)]
    pub joint_every: Given<Dimension>,
    /// Width of these movement joints.
    #[serde(default)]
    pub joint_width: Given<Dimension>,
}
