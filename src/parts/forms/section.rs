//! Sections of edge forms: x is the inset from the slab's outermost line, y the height above its underside.

use crate::geometry::{Outline, Vertex};
use crate::plan::{FORM_THICKNESS, Plan};

/// Which strip of an edge form.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Strip {
    /// Outside, against the edge profile.
    Wall,
    /// Under the turndown.
    Floor,
    /// Inside the turndown, below the substrate.
    Upstand,
}

impl Strip {
    /// All strips, in the order they are set.
    pub(super) const ALL: [Self; 3] = [Self::Floor, Self::Wall, Self::Upstand];

    /// Its name on lists.
    pub(super) fn name(self) -> &'static str {
        match self {
            Self::Wall => "edge form wall",
            Self::Floor => "edge form floor",
            Self::Upstand => "edge form upstand",
        }
    }
}

/// Whether the overhang of a side leaves room for an upstand that has something to close.
pub(super) fn has_upstand(plan: &Plan, side: usize) -> bool {
    let counter = &plan.counter;
    let s = &counter.sides[side];
    let below = counter.turndown_depth - plan.design.trade.substrate_thickness.mm();
    s.dropped && below > 1.0 && s.room - counter.turndown_width >= FORM_THICKNESS
}

/// The section of a strip of a side; `None` where the side takes none.
pub(super) fn section(plan: &Plan, side: usize, strip: Strip) -> Option<Outline> {
    let counter = &plan.counter;
    let s = &counter.sides[side];
    let (depth, width) = (counter.turndown_depth, counter.turndown_width);
    match strip {
        Strip::Wall => Some(wall(plan, side)),
        Strip::Floor => {
            let reach = width.min(s.room);
            let floor = Outline::rectangle(-FORM_THICKNESS, -depth - FORM_THICKNESS, reach, -depth);
            (s.dropped && reach > 1.0).then_some(floor)
        }
        Strip::Upstand => {
            let top = -plan.design.trade.substrate_thickness.mm();
            let upstand =
                Outline::rectangle(width, -depth - FORM_THICKNESS, width + FORM_THICKNESS, top);
            has_upstand(plan, side).then_some(upstand)
        }
    }
}

/// How low the wall of a side without turndown reaches: over the substrate's edge, and over the end of a neighbour's
/// turndown, unless the cladding stands out there.
fn foot(plan: &Plan, side: usize) -> f64 {
    let counter = &plan.counter;
    let substrate = plan.design.trade.substrate_thickness.mm();
    let drops = counter.sides.iter().any(|s| s.dropped);
    if drops && counter.sides[side].room >= 0.0 {
        -substrate.max(counter.turndown_depth)
    } else {
        -substrate
    }
}

fn wall(plan: &Plan, side: usize) -> Outline {
    let counter = &plan.counter;
    let profile = &counter.slab.edges[side].profile;
    let top = counter.slab.thickness;
    let dropped = counter.sides[side].dropped;
    let mut vertices = vec![Vertex::sharp(-FORM_THICKNESS, top)];
    let count = if dropped {
        // The wall ends where the profile reaches its lowest.
        let low = -counter.turndown_depth + 1e-9;
        profile
            .iter()
            .position(|p| p.z <= low)
            .map_or(profile.len(), |k| k + 1)
    } else {
        profile.len()
    };
    if dropped {
        vertices.push(Vertex::sharp(-FORM_THICKNESS, -counter.turndown_depth));
    } else {
        let foot = foot(plan, side);
        vertices.push(Vertex::sharp(-FORM_THICKNESS, foot));
        vertices.push(Vertex::sharp(0.0, foot));
        if profile.last().is_some_and(|p| p.inset > 1e-6) {
            vertices.push(Vertex::sharp(0.0, 0.0));
        }
    }
    for k in (0..count).rev() {
        let bulge = k
            .checked_sub(1)
            .map_or(0.0, |before| -profile[before].bulge);
        vertices.push(Vertex::bent(profile[k].inset, profile[k].z, bulge));
    }
    Outline::new(vertices)
}
