//! Exact shapes: plane outlines with arcs and holes, and the solids made of them.
//!
//! Everything here is in millimetres and right-handed. A solid is a *description* ([`Solid`]); its volume, its mesh
//! and its boundary representation are all derived from that one description.

mod adjustment;
mod bend;
mod best_plane;
mod bounds;
mod brep;
mod clip;
mod cut;
mod difference;
mod extrusion;
mod faceted;
mod faceting;
mod key;
mod leaning_box;
mod moments;
mod outline;
mod overlay;
#[cfg(test)]
pub(crate) mod proof;
mod region;
mod slab;
mod solid;
mod soundness;
mod straight;
mod tabbed;
mod wall;

pub use adjustment::{Adjusted, Measured, Network, Observation};
pub use best_plane::{BestPlane, NoPlane};
pub use bounds::{Bounds2, Bounds3};
pub use brep::{Along, Axes, Boundary, Curve, Edge, Face, Oval, Surface};
pub use cut::Cut;
pub use faceted::{Faceted, Triangle};
pub use leaning_box::LeaningBox;
pub use moments::Moments;
pub use outline::{Arc, Outline, Segment, Vertex};
pub use region::Region;
pub use slab::{CornerShape, ProfilePoint, Slab, SlabCorner, SlabEdge, SlabFault, SlabTrouble};
pub use solid::{Bend, EndPlane, Extrusion, Slot, Solid, Tab, Tabbed, Wall};
pub use soundness::Unsound;
pub use straight::{cross, distance, sides};
pub use wall::WallFrame;

/// A point in a plane, millimetres.
pub type Point2 = nalgebra::Point2<f64>;
/// A direction or displacement in a plane, millimetres.
pub type Vector2 = nalgebra::Vector2<f64>;
/// A point in space, millimetres.
pub type Point3 = nalgebra::Point3<f64>;
/// A direction or displacement in space, millimetres.
pub type Vector3 = nalgebra::Vector3<f64>;
/// A placement: a rotation and a shift, never a mirror or a scale.
pub type Placement = nalgebra::Isometry3<f64>;
