//! Edge profiles: from their names to their points.

use crate::design::EdgeProfile;
use crate::geometry::ProfilePoint;
use std::f64::consts::PI;

/// The edge that a profile is laid on, millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Edge {
    /// Thickness of the slab.
    pub thickness: f64,
    /// Depth and width of the turndown, where there is one.
    pub drop: Option<(f64, f64)>,
    /// Whether the bottom arris is eased too: not beside a turndown that goes on below it.
    pub ease_bottom: bool,
}

impl Edge {
    /// From top to bottom.
    pub(super) fn height(&self) -> f64 {
        self.thickness + self.drop.map_or(0.0, |d| d.0)
    }

    /// z of the lowest point.
    fn bottom(&self) -> f64 {
        -self.drop.map_or(0.0, |d| d.0)
    }
}

/// How far in from the outermost line a profile shapes an edge.
pub(super) fn reach(profile: EdgeProfile, edge: &Edge) -> f64 {
    match profile {
        EdgeProfile::Square { eased } => eased.mm(),
        EdgeProfile::Chamfer { size } => size.mm(),
        EdgeProfile::HalfRound => edge.height() / 2.0,
        EdgeProfile::QuarterRound { radius } | EdgeProfile::Cove { radius } => radius.mm(),
    }
}

/// The largest reach that an edge has room for.
pub(super) fn room(profile: EdgeProfile, edge: &Edge) -> f64 {
    let width = edge.drop.map_or(f64::INFINITY, |d| d.1);
    match profile {
        EdgeProfile::Square { .. } => (edge.height() / 2.0).min(width),
        EdgeProfile::HalfRound => width,
        EdgeProfile::Chamfer { .. } | EdgeProfile::QuarterRound { .. } => {
            edge.height().min(edge.thickness + width)
        }
        EdgeProfile::Cove { .. } => edge.height().min(width),
    }
}

/// The points of a profile from the top face outwards, down, and back in to the underside.
pub(super) fn points(profile: EdgeProfile, edge: &Edge) -> Vec<ProfilePoint> {
    let quarter = (PI / 8.0).tan();
    let (top, bottom) = (edge.thickness, edge.bottom());
    let r = reach(profile, edge);
    let straight = ProfilePoint::straight;
    let bent = ProfilePoint::bent;
    let mut points = match profile {
        EdgeProfile::Square { .. } if !edge.ease_bottom => {
            vec![
                bent(r, top, quarter),
                straight(0.0, top - r),
                straight(0.0, bottom),
            ]
        }
        EdgeProfile::Square { .. } => vec![
            bent(r, top, quarter),
            straight(0.0, top - r),
            bent(0.0, bottom + r, quarter),
            straight(r, bottom),
        ],
        EdgeProfile::Chamfer { .. } => {
            vec![
                straight(r, top),
                straight(0.0, top - r),
                straight(0.0, bottom),
            ]
        }
        EdgeProfile::QuarterRound { .. } => {
            vec![
                bent(r, top, quarter),
                straight(0.0, top - r),
                straight(0.0, bottom),
            ]
        }
        EdgeProfile::HalfRound => vec![
            bent(r, top, quarter),
            bent(0.0, top - r, quarter),
            straight(r, bottom),
        ],
        EdgeProfile::Cove { .. } => vec![
            straight(0.0, top),
            bent(0.0, bottom + r, -quarter),
            straight(r, bottom),
        ],
    };
    if let Some((depth, width)) = edge.drop {
        points.extend([straight(width, -depth), straight(width, 0.0)]);
    }
    without_repeats(points)
}

/// Keeps the last of points that fall together: it says how the profile goes on.
fn without_repeats(points: Vec<ProfilePoint>) -> Vec<ProfilePoint> {
    let mut kept: Vec<ProfilePoint> = Vec::with_capacity(points.len());
    for p in points {
        match kept.last_mut() {
            Some(last) if (last.inset - p.inset).hypot(last.z - p.z) < 1e-6 => {
                *last = ProfilePoint {
                    bulge: p.bulge,
                    ..*last
                };
            }
            _ => kept.push(p),
        }
    }
    kept
}
