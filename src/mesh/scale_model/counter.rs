//! The slab as it is printed: as it is, turned over so that its turndown stands up and nothing hangs over.

use super::rough::{Rough, Sizes};
use super::{Layer, members};
use crate::mesh::body::Body;
use crate::parts::{Assembly, PartKind};

/// How far a chord of the print may lie from its curve, millimetres of the print.
pub(super) const CHORD: f64 = 0.02;

/// The slab; `None` when there is none or its surface is not closed.
pub(super) fn counter(assembly: &Assembly, sizes: &Sizes) -> Option<Rough> {
    let part = assembly.parts.iter().find(|p| p.kind == PartKind::Slab)?;
    let whole = assembly.solid(part).faceted(CHORD * sizes.scale);
    let mut small = whole.moved(&part.placement);
    for point in &mut small.points {
        *point = members::smaller(point, sizes);
    }
    Some(Rough {
        layer: Layer::Counter,
        body: Body::of(&small)?,
        bars: Vec::new(),
    })
}
