//! The slab's volume run by run.

use crate::geometry::{Bounds2, Region, SlabEdge};
use crate::plan::Plan;
use crate::takeoff::territory::{length_within, slack, territories};

/// The volume of one run's share of the slab, mm³.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct ShareOfSlab {
    /// Its plan area, cutouts taken off, mm².
    pub area: f64,
    /// That area times the slab's thickness.
    pub flat: f64,
    /// What the edge profile and the turndown add to that; negative where eased edges take more off than hangs below.
    pub rim: f64,
}

impl ShareOfSlab {
    /// Both together.
    pub fn volume(self) -> f64 {
        self.flat + self.rim
    }
}

/// The slab in plan with its cutouts.
pub(super) fn outline(plan: &Plan) -> Region {
    Region {
        outer: plan.counter.outline.clone(),
        holes: plan.counter.slab.cutouts.clone(),
    }
}

/// Each run's share of the slab; together they are the slab's exact volume `whole`.
///
/// The flat part is cut exactly. Of the rim each run gets its sides' length times what their profile differs from a plain
/// edge; what the corners make of it is shared by the length of those sides.
pub(super) fn slab_shares(plan: &Plan, whole: f64) -> Vec<ShareOfSlab> {
    let (outline, thickness) = (outline(plan), plan.counter.slab.thickness);
    let bounds = territories(plan);
    let mut areas: Vec<f64> = bounds.iter().map(|b| outline.area_within(b)).collect();
    if plan.as_built.as_ref().and_then(|f| f.planned()).is_some() {
        // A counter on the frame as measured passes the runs' own rectangles a little: together they are the whole.
        let (whole, sum) = (outline.area(), areas.iter().sum::<f64>());
        for area in &mut areas {
            *area *= whole / sum.max(1.0);
        }
    }
    let mut found: Vec<ShareOfSlab> = areas
        .into_iter()
        .map(|area| ShareOfSlab {
            area,
            flat: area * thickness,
            rim: 0.0,
        })
        .collect();
    let sides: Vec<(f64, f64)> = bounds.iter().map(|b| sides(plan, b)).collect();
    let rest = whole - found.iter().map(|s| s.flat).sum::<f64>();
    let straight: f64 = sides.iter().map(|s| s.0).sum();
    let length: f64 = sides.iter().map(|s| s.1).sum();
    let count = found.len().max(1) as f64;
    for (share, (own, its_length)) in found.iter_mut().zip(&sides) {
        let part = if length > 0.0 {
            its_length / length
        } else {
            1.0 / count
        };
        share.rim = own + (rest - straight) * part;
    }
    found
}

/// Of the shaped sides in a rectangle: the sum of length times profile area, and of length.
fn sides(plan: &Plan, bounds: &Bounds2) -> (f64, f64) {
    let counter = &plan.counter;
    let all = counter.sides.iter().zip(&counter.slab.edges);
    all.map(|(side, edge)| {
        let length = length_within(side.start, side.end, bounds, slack(plan));
        let profile = profile_area(edge);
        let shaped = profile.abs() > 1e-9;
        (length * profile, if shaped { length } else { 0.0 })
    })
    .fold((0.0, 0.0), |sum, s| (sum.0 + s.0, sum.1 + s.1))
}

/// What an edge profile has more than a plain edge, mm² of cross-section: ∫ inset dz from the top to the underside.
fn profile_area(edge: &SlabEdge) -> f64 {
    edge.stretches()
        .map(|s| {
            let bow = s.arc().map_or(0.0, |a| {
                a.radius * a.radius * (a.sweep - a.sweep.sin()) / 2.0
            });
            f64::midpoint(s.from.x, s.to.x) * (s.to.y - s.from.y) + bow
        })
        .sum()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::{CornerShape, Point2, ProfilePoint};

    fn edge(profile: Vec<ProfilePoint>) -> SlabEdge {
        SlabEdge {
            corner: Point2::origin(),
            shape: CornerShape::Sharp,
            profile,
        }
    }

    #[test]
    fn a_turndown_adds_its_section_and_an_easing_takes_its_own() {
        let p = ProfilePoint::straight;
        // A turndown 25 deep and 40 wide.
        let turndown = [p(0.0, 50.0), p(0.0, -25.0), p(40.0, -25.0), p(40.0, 0.0)];
        assert_eq!(profile_area(&edge(turndown.to_vec())), 1000.0);
        // A chamfer of 10 takes 50; a quarter round of 10 takes (1 − π/4) · 100.
        let chamfer = [p(10.0, 50.0), p(0.0, 40.0), p(0.0, 0.0)];
        assert_eq!(profile_area(&edge(chamfer.to_vec())), -50.0);
        // Outwards and down: from (10, 50) about (10, 40) to (0, 40), a turn to the left.
        let quarter = (std::f64::consts::PI / 8.0).tan();
        let mut round = chamfer.to_vec();
        round[0] = ProfilePoint::bent(10.0, 50.0, quarter);
        let taken = 100.0 * (1.0 - std::f64::consts::FRAC_PI_4);
        assert!((profile_area(&edge(round)) + taken).abs() < 1e-9);
    }
}
