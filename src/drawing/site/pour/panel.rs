//! One panel of the strip: an area with a scale along its left edge and named lines.

use super::scale::Values;
use crate::drawing::page::{LETTERS, Page};
use crate::drawing::{Align, Dash, Layer, Pen};
use crate::geometry::{Bounds2, Point2, Vertex};

/// Between two names at the right edge.
const APART: f64 = 3.6;
/// From the panel's edge to its lettering.
const AIR: f64 = 1.5;
/// How far a mark stands out.
const TICK: f64 = 1.0;

/// How a line of a panel is drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Stroke(pub Pen, pub Dash);

/// A panel being drawn.
pub(super) struct Panel {
    /// Its area on the sheet.
    pub area: Bounds2,
    /// Its scale.
    pub values: Values,
    /// What is named at its right edge: the value and the name.
    names: Vec<(f64, String)>,
}

impl Panel {
    /// A panel with its frame, its scale and its title above it.
    pub fn begin(page: &mut Page, area: Bounds2, values: Values, title: &str) -> Self {
        let panel = Self {
            area,
            values,
            names: Vec::new(),
        };
        frame(page, &area);
        let above = Point2::new(area.low.x, area.high.y + AIR);
        page.text(Layer::Note, title, LETTERS, (above, Align::Left, 0.0));
        let marks = values.marks();
        let apart = area.height() / (marks.len().max(2) - 1) as f64;
        let every = (APART / apart.max(1e-6)).ceil().clamp(1.0, 100.0) as usize;
        for (value, letters) in marks.iter().step_by(every) {
            let y = panel.y(*value);
            let (from, to) = (
                Point2::new(area.low.x - TICK, y),
                Point2::new(area.low.x, y),
            );
            page.line(Layer::Detail, Pen::Thin, Dash::Solid, from, to);
            let at = Point2::new(area.low.x - TICK - 0.8, y - LETTERS / 2.6);
            page.text(Layer::Note, letters, LETTERS, (at, Align::Right, 0.0));
        }
        panel
    }

    /// The height of a value on the sheet.
    pub fn y(&self, value: f64) -> f64 {
        self.area.low.y + self.values.part(value) * self.area.height()
    }

    /// A level line through the panel, named at its right edge.
    pub fn level(&mut self, page: &mut Page, value: f64, name: &str, stroke: Stroke) {
        let y = self.y(value);
        let (from, to) = (
            Point2::new(self.area.low.x, y),
            Point2::new(self.area.high.x, y),
        );
        page.line(Layer::Detail, stroke.0, stroke.1, from, to);
        self.names.push((value, name.to_owned()));
    }

    /// A line through stretches of points, named at its right edge where its last one ends.
    pub fn line(&mut self, page: &mut Page, runs: &[Vec<Point2>], name: &str, stroke: Stroke) {
        let mut last = None;
        for run in runs {
            let points: Vec<Vertex> = run
                .iter()
                .map(|p| Vertex::sharp(p.x, self.y(p.y)))
                .collect();
            last = run.last().map(|p| p.y).or(last);
            if points.len() > 1 {
                page.path(
                    Layer::Outline,
                    Some(stroke.0),
                    stroke.1,
                    points,
                    false,
                    None,
                );
            }
        }
        if let (Some(value), false) = (last, name.is_empty()) {
            self.names.push((value, name.to_owned()));
        }
    }

    /// Letters the names at the right edge, each as near its line as the others let it.
    pub fn finish(mut self, page: &mut Page) {
        self.names.sort_by(|a, b| b.0.total_cmp(&a.0));
        let mut below = self.area.high.y + APART;
        let mut places: Vec<f64> = Vec::new();
        for (value, _) in &self.names {
            below = (below - APART).min(self.y(*value));
            places.push(below);
        }
        let under = places.last().map_or(0.0, |y| self.area.low.y - y).max(0.0);
        let up = under.min((self.area.high.y - places.first().copied().unwrap_or(0.0)).max(0.0));
        for ((_, name), y) in self.names.iter().zip(places) {
            let at = Point2::new(self.area.high.x + AIR, y + up - LETTERS / 2.6);
            page.text(Layer::Note, name, LETTERS, (at, Align::Left, 0.0));
        }
    }
}

/// A thin line round an area.
pub(super) fn frame(page: &mut Page, area: &Bounds2) {
    let points = corners(area);
    page.path(
        Layer::Detail,
        Some(Pen::Thin),
        Dash::Solid,
        points,
        true,
        None,
    );
}

/// The corners of an area.
pub(super) fn corners(area: &Bounds2) -> Vec<Vertex> {
    let Bounds2 { low, high } = *area;
    [
        (low.x, low.y),
        (high.x, low.y),
        (high.x, high.y),
        (low.x, high.y),
    ]
    .map(|(x, y)| Vertex::sharp(x, y))
    .to_vec()
}
