//! The openings that let air through the walls of a room, with what is known of their free area.

use super::spaces::{Space, Way};
use crate::design::OpeningKind;
use crate::geometry::Vector2;
use crate::plan::Plan;

/// An area that is known, or known to lie between two values, square millimetres.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Between {
    pub(super) least: f64,
    pub(super) most: f64,
}

impl Between {
    /// A known area.
    #[cfg(test)]
    pub(super) fn known(area: f64) -> Self {
        Self {
            least: area,
            most: area,
        }
    }

    /// The smaller of two.
    pub(super) fn min(self, other: Self) -> Self {
        Self {
            least: self.least.min(other.least),
            most: self.most.min(other.most),
        }
    }

    /// The larger of two.
    pub(super) fn max(self, other: Self) -> Self {
        Self {
            least: self.least.max(other.least),
            most: self.most.max(other.most),
        }
    }
}

impl std::iter::Sum for Between {
    fn sum<I: Iterator<Item = Self>>(items: I) -> Self {
        items.fold(Self::default(), |a, b| Self {
            least: a.least + b.least,
            most: a.most + b.most,
        })
    }
}

/// A vent.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Vent {
    /// Its name.
    pub(super) name: String,
    /// The direction out of the room.
    pub(super) outward: Vector2,
    /// Its lower edge above the datum.
    pub(super) low: f64,
    /// Its upper edge.
    pub(super) high: f64,
    /// Its free area.
    pub(super) free: Between,
    /// Its number among the openings of the design.
    pub(super) opening: usize,
}

/// The vents of a room. Only openings of the kind `vent` count: gaps round a door are not counted on.
pub(super) fn vents(plan: &Plan, space: &Space) -> Vec<Vent> {
    let is_vent = |w: &Way| w.hole.kind == Some(OpeningKind::Vent);
    let ways = space.ways(plan).into_iter().filter(is_vent);
    ways.map(|w| {
        let gross = (w.hole.s1 - w.hole.s0) * (w.hole.z1 - w.hole.z0) * w.share;
        let part = plan.design.openings[w.hole.index]
            .hardware
            .free_area
            .as_ref();
        let share = part.map(|p| p.value.clamp(0.0, 1.0));
        Vent {
            name: w.hole.name.clone(),
            outward: w.face.outward,
            low: w.hole.z0.max(space.floor),
            high: w.hole.z1.min(space.top),
            free: Between {
                least: gross * share.unwrap_or(0.0),
                most: gross * share.unwrap_or(1.0),
            },
            opening: w.hole.index,
        }
    })
    .collect()
}

/// The best that two of some vents do, each: the free area of the smaller one. `apart` says whether two stand as they must.
pub(super) fn best_pair(vents: &[&Vent], apart: impl Fn(&Vent, &Vent) -> bool) -> Between {
    let mut best = Between::default();
    for (i, a) in vents.iter().enumerate() {
        for b in &vents[i + 1..] {
            if apart(a, b) {
                best = best.max(a.free.min(b.free));
            }
        }
    }
    best
}

/// True when two vents are in opposite sides.
pub(super) fn opposite(a: &Vent, b: &Vent) -> bool {
    a.outward.dot(&b.outward) < -0.999
}

/// True when two vents are in sides at least 90 degrees apart.
pub(super) fn quarter_apart(a: &Vent, b: &Vent) -> bool {
    a.outward.dot(&b.outward) < 1e-3
}
