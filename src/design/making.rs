//! How the counter is cast, the frame braced and the coats laid.

use super::Placed;
use crate::units::{Length, Stress};

/// What is in the slab beside concrete.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Reinforcement {
    /// Diameter of a wire or bar of the mesh; `None` without mesh.
    pub mesh: Option<Placed<Length>>,
    /// From the middle of one wire of the mesh to the next.
    pub mesh_spacing: Option<Placed<Length>>,
    /// From the mesh to the face of the slab that is pulled; over an overhang that is the top.
    pub cover: Option<Placed<Length>>,
    /// True when bars lie diagonally at inward corners.
    pub corner_bars: Option<Placed<bool>>,
    /// Diameter of bars across the overhang.
    pub bars: Option<Placed<Length>>,
    /// From one of these bars to the next.
    pub bar_spacing: Option<Placed<Length>>,
}

/// Brackets under an overhang.
#[derive(Clone, Debug, PartialEq)]
pub struct Brackets {
    /// From one to the next, at most.
    pub spacing: Placed<Length>,
    /// How far they reach out from the finished face.
    pub reach: Placed<Length>,
}

/// How the counter is made. What the file does not say is `None`.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Casting {
    /// Specified compressive strength.
    pub strength: Option<Placed<Stress>>,
    /// Whether the mix is air-entrained.
    pub air_entrained: Option<Placed<bool>>,
    /// Mesh and bars.
    pub reinforcement: Reinforcement,
    /// Brackets under the overhang on the seating side.
    pub brackets: Option<Placed<Brackets>>,
    /// Crack-control joints: distances from the left end, by number of run.
    pub joints: Vec<(usize, Placed<Length>)>,
    /// Fall of the top, as a share of the length.
    pub fall: Option<Placed<f64>>,
    /// True when the turndown has a drip groove on its underside.
    pub drip: Option<Placed<bool>>,
    /// True when it is cast elsewhere and lifted on; cast in place where the file does not say.
    pub elsewhere: Option<Placed<bool>>,
    /// How many people carry or lift it, where it is cast elsewhere.
    pub lifters: Option<Placed<u32>>,
}

/// What keeps the frame from leaning.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bracing {
    /// Boards screwed to it.
    Boards,
    /// Flat straps across the panels.
    Straps,
}

/// What the coats lie on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
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

/// Choices of the trade that only the checks read. What the file does not say is `None`.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Making {
    /// What keeps the frame from leaning.
    pub bracing: Option<Placed<Bracing>>,
    /// Depth of the base channel that receives board and coats.
    pub base_channel: Option<Placed<Length>>,
    /// What the coats lie on.
    pub backing: Option<Placed<Backing>>,
    /// From one movement joint to the next in coats, at most.
    pub coat_joints: Option<Placed<Length>>,
    /// From one movement joint to the next in the tile band, at most.
    pub tile_joints: Option<Placed<Length>>,
    /// Width of the movement joints in the tile band.
    pub tile_joint_width: Option<Placed<Length>>,
}

/// A limit that the file sets otherwise than the rule does, with where it comes from.
#[derive(Clone, Debug, PartialEq)]
pub struct OwnLimit {
    /// The name of the limit.
    pub name: Placed<String>,
    /// Its value as written; the rule knows its unit.
    pub value: Placed<String>,
    /// Where it comes from, as written; empty where the file does not say.
    pub source: String,
}
