//! The members of the frame as bars.

use super::rough::Sizes;
use crate::geometry::{Bounds3, Placement, Point3, Solid};
use crate::mesh::body::point_on_grid;
use crate::parts::{Assembly, Group, Part};

/// A member as it is printed: a solid bar of its outer size, in the model's place, millimetres of the print.
#[derive(Clone, Debug, PartialEq)]
pub struct Bar {
    /// The member's mark.
    pub mark: String,
    /// The bar. Runs meet at right angles, so bars lie along the axes.
    pub bounds: Bounds3,
}

/// A point of the island in the model.
pub(super) fn smaller(point: &Point3, sizes: &Sizes) -> Point3 {
    point_on_grid(point / sizes.scale)
}

/// The members of the frame, in order. A member thinner than the smallest wall is thickened about its middle.
pub(super) fn bars(assembly: &Assembly, sizes: &Sizes, ground: f64) -> Vec<Bar> {
    let framing = assembly.parts.iter().filter(|p| p.group == Group::Framing);
    framing
        .map(|part| Bar {
            mark: part.mark.clone(),
            bounds: bar(assembly.solid(part), part, sizes, ground),
        })
        .collect()
}

fn bar(solid: &Solid, part: &Part, sizes: &Sizes, ground: f64) -> Bounds3 {
    let mut outer = placed(&outer_size(solid), &part.placement);
    if part.kind == crate::parts::PartKind::Sleeper {
        // What packs it to level is part of the print, or the frame would stand on nothing.
        outer.low.z = outer.low.z.min(ground);
    }
    let mut small = Bounds3 {
        low: smaller(&outer.low, sizes),
        high: smaller(&outer.high, sizes),
    };
    for i in 0..3 {
        let missing = sizes.wall - (small.high[i] - small.low[i]);
        if missing > 0.0 {
            let low = small.low[i] - missing / 2.0;
            small.low[i] = (low * crate::mesh::body::GRID).floor() / crate::mesh::body::GRID;
            small.high[i] = small.low[i] + sizes.wall;
        }
    }
    small
}

/// The box of a member's section over its length: tabs that are folded over do not make it larger.
fn outer_size(solid: &Solid) -> Bounds3 {
    let whole = solid.bounds();
    let Solid::Tabbed(tabbed) = solid else {
        return whole;
    };
    let section = tabbed.body.bounds();
    Bounds3 {
        low: Point3::new(section.low.x, section.low.y, whole.low.z),
        high: Point3::new(section.high.x, section.high.y, whole.high.z),
    }
}

fn placed(bounds: &Bounds3, placement: &Placement) -> Bounds3 {
    let (a, b) = (placement * bounds.low, placement * bounds.high);
    Bounds3 {
        low: a.inf(&b),
        high: a.sup(&b),
    }
}
