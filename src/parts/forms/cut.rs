//! How the strips of an edge form end at corners.

use super::section::{Strip, has_upstand};
use crate::geometry::SlabCorner;
use crate::plan::{FORM_THICKNESS, Plan, SideKind};

/// The plane that ends a strip, measured along its edge from the corner: at inset x it stands `offset + slope · x` from
/// there.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Cut {
    /// At no inset.
    pub offset: f64,
    /// Per millimetre of inset.
    pub slope: f64,
}

impl Cut {
    fn square(offset: f64) -> Self {
        Self { offset, slope: 0.0 }
    }
}

/// How a strip of side `own` ends at a corner beyond which `other` goes on.
///
/// Square at walls and notches and, for what hangs below, at a neighbour without turndown; mitred otherwise; at an eased
/// corner the strips that follow its curve stop where it begins.
pub(super) fn cut(plan: &Plan, corner: &SlabCorner, [own, other]: [usize; 2], strip: Strip) -> Cut {
    let counter = &plan.counter;
    let (mine, its) = (&counter.sides[own], &counter.sides[other]);
    let half = (corner.turn / 2.0).tan();
    let mitre = Cut {
        offset: 0.0,
        slope: half,
    };
    if its.kind != SideKind::Exposed || (strip != Strip::Wall && mine.dropped != its.dropped) {
        return Cut::square(0.0);
    }
    let inner = counter.turndown_width;
    match (strip, corner.easing) {
        (Strip::Wall, Some(easing)) => follow(corner, easing.round),
        (Strip::Upstand, Some(easing)) if easing.vanishes > inner => {
            if follows(easing.vanishes, inner) {
                follow(corner, easing.round)
            } else {
                Cut::square((inner + FORM_THICKNESS) * half)
            }
        }
        (Strip::Upstand, None) if !corner.is_convex() && !has_upstand(plan, other) => {
            Cut::square(inner * half)
        }
        _ => mitre,
    }
}

/// Whether an upstand can follow an easing that vanishes at this inset.
pub(super) fn follows(vanishes: f64, inner: f64) -> bool {
    vanishes >= inner + FORM_THICKNESS + 0.5
}

fn follow(corner: &SlabCorner, round: bool) -> Cut {
    Cut {
        offset: corner.leg(),
        slope: if round {
            0.0
        } else {
            (corner.turn / 4.0).tan()
        },
    }
}
