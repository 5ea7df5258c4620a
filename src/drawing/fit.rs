//! Where a view lies on its sheet, and at which scale.

use super::Scale;
use super::hidden::{Stroke, behind, merge};
use super::page::Page;
use super::{Dash, Layer, Pen};
use crate::geometry::{Bounds2, Outline, Point2, Vector2, Vertex};
use crate::units::Notation;

/// Lines nearer to each other than this on the sheet are drawn as one, millimetres: less than the finest pen's width.
const ONE_LINE: f64 = 0.12;

/// A hidden edge nearer to a visible line than this is left out, millimetres on the sheet: the two could not be told
/// apart on a print (common practice).
const APART: f64 = 0.7;

/// Hidden pieces shorter than one dash and a gap say nothing, millimetres on the sheet.
const DASH: f64 = 3.0;

/// Room beside a view for its dimensions, millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Margins {
    /// To the left.
    pub left: f64,
    /// To the right.
    pub right: f64,
    /// Below.
    pub below: f64,
    /// Above.
    pub above: f64,
}

/// A view's place: its scale and where its origin is on the sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct Fit {
    /// The scale.
    pub scale: Scale,
    origin: Vector2,
}

impl Fit {
    /// The largest standard scale at which what is `built` fits into a room with margins, in the middle of it.
    pub fn new(notation: Notation, built: &Bounds2, room: &Bounds2, margins: Margins) -> Self {
        let free = Bounds2 {
            low: room.low + Vector2::new(margins.left, margins.below),
            high: room.high - Vector2::new(margins.right, margins.above),
        };
        let size = (built.width(), built.height());
        let scale = Scale::fitting(notation, size, (free.width(), free.height()));
        let origin = free.centre() - built.centre() * scale.factor;
        Self { scale, origin }
    }

    /// The view at a scale, the middle of what is `built` in the middle of an area of the sheet.
    pub fn at(scale: Scale, built: &Bounds2, area: &Bounds2) -> Self {
        let origin = area.centre() - built.centre() * scale.factor;
        Self { scale, origin }
    }

    /// A point of the view on the sheet.
    pub fn point(&self, at: Point2) -> Point2 {
        at * self.scale.factor + self.origin
    }

    /// The point of the view that is drawn at a point of the sheet.
    pub fn back(&self, at: Point2) -> Point2 {
        (at - self.origin) / self.scale.factor
    }

    /// A coordinate across.
    pub fn x(&self, x: f64) -> f64 {
        x * self.scale.factor + self.origin.x
    }

    /// A coordinate up.
    pub fn y(&self, y: f64) -> f64 {
        y * self.scale.factor + self.origin.y
    }

    /// A box of the view on the sheet.
    pub fn area(&self, area: &Bounds2) -> Bounds2 {
        Bounds2 {
            low: self.point(area.low),
            high: self.point(area.high),
        }
    }

    /// Points of an outline on the sheet.
    pub fn outline(&self, outline: &Outline) -> Vec<Vertex> {
        self.vertices(outline.vertices())
    }

    /// Points of a line of straight segments and arcs on the sheet.
    pub fn vertices(&self, vertices: &[Vertex]) -> Vec<Vertex> {
        let moved = vertices.iter().map(|v| Vertex {
            at: self.point(v.at),
            bulge: v.bulge,
        });
        moved.collect()
    }

    /// Draws strokes of the view, each line once; `pens` says layer and pen of each weight. What is on the layer of
    /// hidden edges is dashed and gives way to visible lines.
    pub fn draw(&self, page: &mut Page, strokes: &[Stroke], pens: &[(Layer, Pen)]) {
        let (visible, hidden) = self.merged(strokes, pens);
        let dashes = [(visible, Dash::Solid), (hidden, Dash::Dashed)];
        for (strokes, dash) in dashes {
            for stroke in strokes {
                let Some(&(layer, pen)) = pens.get(usize::from(stroke.weight)) else {
                    continue;
                };
                let (from, to) = (self.point(stroke.from), self.point(stroke.to));
                page.line(layer, pen, dash, from, to);
            }
        }
    }

    /// True when [`Fit::draw`] draws anything dashed.
    pub fn shows_hidden(&self, strokes: &[Stroke], pens: &[(Layer, Pen)]) -> bool {
        !self.merged(strokes, pens).1.is_empty()
    }

    /// The visible lines and the hidden ones that are drawn.
    fn merged(&self, strokes: &[Stroke], pens: &[(Layer, Pen)]) -> (Vec<Stroke>, Vec<Stroke>) {
        let is_hidden = |stroke: &&Stroke| {
            let pen = pens.get(usize::from(stroke.weight));
            pen.is_some_and(|(layer, _)| *layer == Layer::Hidden)
        };
        let (hidden, visible): (Vec<Stroke>, Vec<Stroke>) = strokes.iter().partition(is_hidden);
        let factor = self.scale.factor;
        let visible = merge(&visible, ONE_LINE / factor);
        let hidden = behind(&hidden, &visible, APART / factor, DASH / factor);
        (visible, hidden)
    }
}
