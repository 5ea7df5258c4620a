//! Which panels a framing elevation is of, and which parts belong to them.

use crate::drawing::hidden::View;
use crate::drawing::scene::Scene;
use crate::geometry::Bounds3;
use crate::parts::{Group, Part};
use crate::plan::{Corner, Face, Panel, Plan, UprightKind};

/// The panels in one plane, seen from outside: those of a face, or one bulkhead.
#[derive(Clone, Debug)]
pub struct PanelView {
    /// The face, or for a bulkhead one made of it.
    pub face: Face,
    /// Numbers of the panels.
    panels: Vec<usize>,
    /// Number of the face; `None` for a bulkhead.
    number: Option<usize>,
    /// From where to where the panels and the face reach, in the face's s.
    reach: (f64, f64),
}

impl PanelView {
    /// The panels of a face.
    pub fn of_face(plan: &Plan, number: usize) -> Option<Self> {
        let face = plan.faces.get(number)?.clone();
        let panels: Vec<usize> = (0..plan.panels.len())
            .filter(|&p| plan.panels[p].face == Some(number))
            .collect();
        let reach = panels
            .iter()
            .fold((0.0, face.length), |reach: (f64, f64), &p| {
                let panel = &plan.panels[p];
                let (low, high) = panel.on_face(&face, 0.0, panel.length);
                (reach.0.min(low), reach.1.max(high))
            });
        Some(Self {
            face,
            panels,
            number: Some(number),
            reach,
        })
    }

    /// A bulkhead, seen on its outer plane; `None` for a panel that stands on a face.
    pub fn of_bulkhead(plan: &Plan, number: usize) -> Option<Self> {
        let panel = plan.panels.get(number).filter(|p| p.face.is_none())?;
        let outward = -panel.inward;
        // s runs from left to right as seen against `outward`.
        let along = nalgebra::Vector2::new(-outward.y, outward.x);
        let start = if along.dot(&panel.along) > 0.0 {
            panel.start
        } else {
            panel.point(panel.length, 0.0)
        };
        Some(Self {
            face: Face {
                run: panel.run,
                side: crate::design::Side::Left,
                mark: String::new(),
                name: String::new(),
                start,
                along,
                outward,
                length: panel.length,
                wall: true,
                corner: Corner::Convex,
                openings: Vec::new(),
            },
            panels: vec![number],
            number: None,
            reach: (0.0, panel.length),
        })
    }

    /// The view from outside.
    pub fn view(&self) -> View {
        View::of_face(&self.face)
    }

    /// From where to where it is drawn.
    pub fn reach(&self) -> (f64, f64) {
        self.reach
    }

    /// True for the members of the panels.
    pub fn owns(&self, plan: &Plan, scene: &Scene, part: &Part) -> bool {
        if part.group != Group::Framing {
            return false;
        }
        if self.number.is_some() {
            return part.face == self.number;
        }
        let bounds = scene.bounds(&self.view(), part);
        part.face.is_none() && bounds.is_some_and(|b| self.is_in_bulkhead(&b, plan))
    }

    /// True for what is drawn: the members themselves and the ends of what meets them.
    pub fn shows(&self, plan: &Plan, scene: &Scene, part: &Part) -> bool {
        if part.group != Group::Framing {
            return false;
        }
        let meets = || {
            scene
                .bounds(&self.view(), part)
                .is_some_and(|b| self.holds(&b, plan))
        };
        self.owns(plan, scene, part) || (self.number.is_some() && meets())
    }

    /// True for what is as thick as the bulkhead, or its sleeper, and stands in its middle. The sleeper reaches past the
    /// ends, under the long panels.
    fn is_in_bulkhead(&self, b: &Bounds3, plan: &Plan) -> bool {
        let panel = plan.sizes.panel;
        let width = plan.design.trade.sleeper_width.mm().max(panel);
        let middle = f64::midpoint(b.low.z, b.high.z);
        let thick = b.high.z - b.low.z < width + 1.0;
        let here = b.low.x > self.reach.0 - panel && b.high.x < self.reach.1 + panel;
        thick && here && (middle + panel / 2.0).abs() < panel / 4.0
    }

    /// True for what stands in the panels' thickness, between their ends.
    fn holds(&self, b: &Bounds3, plan: &Plan) -> bool {
        let near = b.high.z > -plan.sizes.panel + 1.0 && b.high.z < 1.0;
        near && b.low.x > self.reach.0 - 1.0 && b.high.x < self.reach.1 + 1.0
    }

    /// From where to where each upright stands, from left to right.
    pub fn uprights(&self, plan: &Plan) -> Vec<(f64, f64)> {
        self.spans(plan).into_iter().map(|(span, _)| span).collect()
    }

    fn spans(&self, plan: &Plan) -> Vec<((f64, f64), UprightKind)> {
        let on_face = |panel: &Panel| {
            let spans = panel.uprights.iter();
            let spans = spans.map(|u| (panel.on_face(&self.face, u.p0, u.p1), u.kind));
            spans.collect::<Vec<_>>()
        };
        let panels = self.panels.iter().filter_map(|p| plan.panels.get(*p));
        let mut uprights: Vec<_> = panels.flat_map(on_face).collect();
        uprights.sort_by(|a, b| a.0.0.total_cmp(&b.0.0));
        uprights
    }

    /// The middles of the uprights that stand free: what stands against another upright or an end needs no dimension
    /// of its own.
    pub fn grid(&self, plan: &Plan) -> Vec<f64> {
        let uprights = self.spans(plan);
        let free = |(low, high): (f64, f64)| {
            let touches = |a: f64, b: f64| (a - b).abs() < plan.sizes.stud_flange / 2.0;
            let neighbour = uprights.iter().any(|((l, h), _)| {
                (touches(*h, low) && *l < low) || (touches(*l, high) && *h > high)
            });
            !neighbour && !touches(low, self.reach.0) && !touches(high, self.reach.1)
        };
        let stations = uprights
            .iter()
            .filter(|(_, kind)| *kind != UprightKind::Jamb);
        stations
            .filter(|(span, _)| free(*span))
            .map(|((low, high), _)| f64::midpoint(*low, *high))
            .collect()
    }
}
