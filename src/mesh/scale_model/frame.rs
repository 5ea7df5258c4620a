//! The frame as it is printed: every member a solid bar, all of them one solid.

use super::rough::{Rough, Sizes};
use super::{Layer, members};
use crate::mesh::body::Body;
use crate::parts::Assembly;

/// The frame on the ground; `None` when there is none.
pub(super) fn frame(assembly: &Assembly, sizes: &Sizes) -> Option<Rough> {
    let bars = members::bars(assembly, sizes, 0.0);
    let bodies = bars.iter().filter_map(|b| Body::cuboid(&b.bounds));
    Some(Rough {
        layer: Layer::Frame,
        body: Body::union_of(bodies.collect())?,
        bars,
    })
}
