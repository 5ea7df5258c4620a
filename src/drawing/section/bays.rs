//! Between which members a run can be cut.

use crate::design::Side;
use crate::plan::{CrossingKind, PanelOf, Plan};

/// A cut keeps so far from members, millimetres: none is split lengthwise.
const CLEAR: f64 = 6.0;

/// The stretches of one run, along it, that members and openings take.
pub(super) struct Bays {
    /// Where both its long faces run.
    faced: (f64, f64),
    /// Uprights of the long panels, ties, trimmers, bulkheads and end panels.
    members: Vec<(f64, f64)>,
    /// Cutouts and the openings of the long faces.
    holes: Vec<(f64, f64)>,
}

impl Bays {
    pub fn of(plan: &Plan, number: usize) -> Self {
        let Some(run) = plan.runs.get(number) else {
            return Self {
                faced: (0.0, 0.0),
                members: Vec::new(),
                holes: Vec::new(),
            };
        };
        let mut members = Vec::new();
        for panel in plan.panels.iter().filter(|p| p.run == number) {
            let u = |p: f64, inwards: f64| run.local(panel.point(p, inwards)).x;
            let long = matches!(panel.of, PanelOf::Side(Side::Working | Side::Seating));
            if long {
                members.extend(panel.uprights.iter().map(|q| (u(q.p0, 0.0), u(q.p1, 0.0))));
            } else {
                members.push((u(0.0, 0.0), u(0.0, plan.sizes.panel)));
            }
        }
        let across = plan.crossings.iter().filter(|c| c.run == number);
        members.extend(
            across
                .filter(|c| c.kind != CrossingKind::Blocking)
                .map(|c| c.u),
        );
        let cutouts = plan.cutouts.iter().filter(|c| c.run == number);
        let mut holes: Vec<_> = cutouts.map(|c| (c.u0, c.u1)).collect();
        let long = |side: Side| matches!(side, Side::Working | Side::Seating);
        let mut faced = run.framed;
        for face in plan
            .faces
            .iter()
            .filter(|f| f.run == number && long(f.side))
        {
            let u = |s: f64| run.local(face.point(s, 0.0)).x;
            let (low, high) = rising((u(0.0), u(face.length)));
            faced = (faced.0.max(low), faced.1.min(high));
            holes.extend(face.openings.iter().map(|o| (u(o.s0), u(o.s1))));
        }
        Self {
            faced,
            members: members.into_iter().map(rising).collect(),
            holes: holes.into_iter().map(rising).collect(),
        }
    }

    /// The place nearest to `wanted` within a stretch at which no member is split.
    pub fn nearest_to(&self, wanted: f64, (low, high): (f64, f64)) -> Option<f64> {
        let free = |u: &f64| *u > low && *u < high && is_clear(&self.members, *u, CLEAR);
        let edges = self
            .members
            .iter()
            .flat_map(|(a, b)| [a - CLEAR, b + CLEAR]);
        let tries = std::iter::once(wanted).chain(edges);
        let near = |u: f64| (u - wanted).abs();
        tries
            .filter(free)
            .min_by(|a, b| near(*a).total_cmp(&near(*b)))
    }

    /// The middle of the widest bay between its long faces without cutouts and openings.
    pub fn plain(&self) -> Option<f64> {
        let mut edges: Vec<(f64, f64)> = self.members.iter().chain(&self.holes).copied().collect();
        edges.sort_by(|a, b| a.0.total_cmp(&b.0));
        let mut widest: Option<(f64, f64)> = None;
        let mut from = self.faced.0;
        for (low, high) in edges.into_iter().chain([(self.faced.1, self.faced.1)]) {
            let wide = low.min(self.faced.1) - from;
            // Of bays of one width the first: they are alike.
            if wide > widest.map_or(2.0 * CLEAR, |(a, b)| b - a + 1.0) {
                widest = Some((from, from + wide));
            }
            from = from.max(high);
        }
        widest.map(|(a, b)| f64::midpoint(a, b))
    }
}

fn rising((a, b): (f64, f64)) -> (f64, f64) {
    (a.min(b), a.max(b))
}

fn is_clear(spans: &[(f64, f64)], u: f64, by: f64) -> bool {
    spans
        .iter()
        .all(|(a, b)| u <= a - by + 1e-9 || u >= b + by - 1e-9)
}
