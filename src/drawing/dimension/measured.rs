//! One measured gap as the sheet records it.

use crate::drawing::{Align, Dash, Item, Layer, Pen};
use crate::geometry::{Point2, Vector2, Vertex};

/// One dimension: what is measured, its line, its lettering. Extension lines are not part of it: chains share them, and
/// the sheet has each once.
///
/// Invariant: `line` runs level or upright; `measured` is the distance of its ends divided by `scale`, to rounding.
#[derive(Clone, Debug, PartialEq)]
pub struct Dimension {
    /// Ends of the dimension line on the sheet, as read from left to right or from below upwards.
    pub line: [Point2; 2],
    /// Millimetres built between its ends.
    pub measured: f64,
    /// Millimetres on the sheet for one built.
    pub scale: f64,
    /// What is lettered: the measured length as the set spells it, rounded so that its chain adds up. Empty when it found
    /// no room.
    pub text: String,
    /// The point on the baseline that `align` speaks of.
    pub at: Point2,
    /// Height of a capital, millimetres.
    pub height: f64,
    /// How the text stands to its point.
    pub align: Align,
    /// Turned counter-clockwise, degrees.
    pub angle: f64,
    /// From the line to a text that had to move outside.
    pub leader: Option<[Point2; 2]>,
}

impl Dimension {
    /// Half of an oblique stroke, along and across, millimetres.
    pub const TICK: f64 = 0.9;

    /// The lines and the lettering it is drawn with: dimension line, an oblique stroke at either end, leader, text.
    pub fn primitives(&self) -> Vec<Item> {
        let [from, to] = self.line;
        let half = Vector2::new(Self::TICK, Self::TICK);
        let mut items = vec![line(Pen::Fine, from, to)];
        items.extend(
            self.line
                .map(|end| line(Pen::Medium, end - half, end + half)),
        );
        items.extend(self.leader.map(|[from, to]| line(Pen::Fine, from, to)));
        if !self.text.is_empty() {
            items.push(Item::Text {
                layer: Layer::Dimension,
                at: self.at,
                text: self.text.clone(),
                height: self.height,
                align: self.align,
                angle: self.angle,
            });
        }
        items
    }
}

fn line(pen: Pen, from: Point2, to: Point2) -> Item {
    Item::Path {
        layer: Layer::Dimension,
        points: vec![Vertex::sharp(from.x, from.y), Vertex::sharp(to.x, to.y)],
        closed: false,
        pen: Some(pen),
        dash: Dash::Solid,
        fill: None,
    }
}
