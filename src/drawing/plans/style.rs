//! Line styles of plans: layer, pen and line type of what a plan shows.

use crate::drawing::page::Page;
use crate::drawing::{Dash, Layer, Pen};
use crate::geometry::{Bounds2, Outline, Point2, Vertex};

/// How a line is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Style(pub Layer, pub Pen, pub Dash);

/// What is seen from above and ends there.
pub(super) const EDGE: Style = Style(Layer::Outline, Pen::Thick, Dash::Solid);
/// What lies on it.
pub(super) const LYING: Style = Style(Layer::Detail, Pen::Thin, Dash::Solid);
/// What is cut out of it.
pub(super) const CUT: Style = Style(Layer::Cut, Pen::Medium, Dash::Solid);
/// What lies below.
pub(super) const HIDDEN: Style = Style(Layer::Hidden, Pen::Thin, Dash::Dashed);
/// A leaf that stands open, and what lies about.
pub(super) const OPEN: Style = Style(Layer::Detail, Pen::Thin, Dash::Solid);
/// The way of something that moves, and fine strokes.
pub(super) const FINE: Style = Style(Layer::Detail, Pen::Fine, Dash::Solid);
/// Limits and neighbours.
pub(super) const LIMIT: Style = Style(Layer::Detail, Pen::Fine, Dash::Phantom);
/// What stands on the site and is cut.
pub(super) const STANDING: Style = Style(Layer::Site, Pen::Heavy, Dash::Solid);
/// What lies on the ground of the site.
pub(super) const GROUND: Style = Style(Layer::Site, Pen::Thin, Dash::Solid);
/// What hangs overhead.
pub(super) const OVERHEAD: Style = Style(Layer::Site, Pen::Medium, Dash::Dashed);
/// The ends of a section plane.
pub(super) const PLANE: Style = Style(Layer::Symbol, Pen::Heavy, Dash::Solid);
/// Heads of arrows.
pub(super) const ARROWHEAD: Style = Style(Layer::Symbol, Pen::Fine, Dash::Solid);
/// Symbols.
pub(super) const SYMBOL: Style = Style(Layer::Symbol, Pen::Medium, Dash::Solid);
/// Steel that is cut.
pub(super) const STEEL: Style = Style(Layer::Section, Pen::Thick, Dash::Solid);
/// Joints in the slab.
pub(super) const JOINT: Style = Style(Layer::Centre, Pen::Medium, Dash::Centre);
/// Bars in the slab.
pub(super) const BAR: Style = Style(Layer::Hidden, Pen::Heavy, Dash::Solid);

impl Style {
    /// A straight line on the sheet.
    pub fn line(self, page: &mut Page, from: Point2, to: Point2) {
        page.line(self.0, self.1, self.2, from, to);
    }

    /// A line through points on the sheet.
    pub fn open(self, page: &mut Page, points: Vec<Vertex>) {
        page.path(self.0, Some(self.1), self.2, points, false, None);
    }

    /// A line round an area of the sheet.
    pub fn closed(self, page: &mut Page, points: Vec<Vertex>) {
        page.path(self.0, Some(self.1), self.2, points, true, None);
    }

    /// A line round a box on the sheet.
    pub fn boxed(self, page: &mut Page, area: &Bounds2) {
        self.closed(page, corners(area));
    }

    /// An area filled with a grey, with a line round it.
    pub fn filled(self, page: &mut Page, points: Vec<Vertex>, grey: f64) {
        page.path(self.0, Some(self.1), self.2, points, true, Some(grey));
    }

    /// A circle on the sheet.
    pub fn circle(self, page: &mut Page, middle: Point2, radius: f64) {
        self.closed(page, circle(middle, radius));
    }
}

/// The corners of a box.
pub(super) fn corners(area: &Bounds2) -> Vec<Vertex> {
    let (low, high) = (area.low, area.high);
    Outline::rectangle(low.x, low.y, high.x, high.y)
        .vertices()
        .to_vec()
}

/// A circle of two arcs.
pub(super) fn circle(middle: Point2, radius: f64) -> Vec<Vertex> {
    [radius, -radius]
        .map(|r| Vertex::bent(middle.x + r, middle.y, 1.0))
        .to_vec()
}

/// Sharp points.
pub(super) fn sharp(points: &[Point2]) -> Vec<Vertex> {
    points.iter().map(|p| Vertex::sharp(p.x, p.y)).collect()
}
