//! What is put on one page, and where its lettering finds room.

use crate::drawing::{Align, Dash, Item, Layer, Pen, lettering};
use crate::geometry::{Bounds2, Point2, Segment, Vector2, Vertex};

/// A page being drawn. It remembers what lies where, so that lettering keeps clear of lines and of other lettering.
pub(super) struct Ink {
    items: Vec<Item>,
    texts: Vec<Item>,
    room: Bounds2,
    strokes: Vec<Stroke>,
    boxes: Vec<Bounds2>,
}

/// A straight bit of a drawn line, and the line's number.
struct Stroke {
    from: Point2,
    to: Point2,
    line: usize,
}

/// A place where a text might stand: its middle, and whether it reads upwards.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Spot {
    pub(super) middle: Point2,
    pub(super) upwards: bool,
}

/// A text looking for its place.
pub(super) struct Label<'t> {
    pub(super) text: &'t str,
    /// Height of a capital.
    pub(super) height: f64,
    pub(super) layer: Layer,
    /// The line that it belongs to and may stand on.
    pub(super) own: Option<usize>,
    /// How many lines it may cover where there is no free place.
    pub(super) covers: usize,
}

/// White left round lettering, millimetres.
const AIR: f64 = 0.8;

impl Ink {
    /// An empty page whose labels must stay in `room`.
    pub(super) fn new(room: Bounds2) -> Self {
        Self {
            items: Vec::new(),
            texts: Vec::new(),
            room,
            strokes: Vec::new(),
            boxes: Vec::new(),
        }
    }

    /// Everything drawn: lines first, lettering over them.
    pub(super) fn into_items(mut self) -> Vec<Item> {
        self.items.append(&mut self.texts);
        self.items
    }

    /// Draws a line that labels keep clear of; `line` is its number.
    pub(super) fn line(
        &mut self,
        style: (Layer, Pen, Dash),
        points: Vec<Vertex>,
        closed: bool,
        line: usize,
    ) {
        let next = points
            .iter()
            .skip(1)
            .chain(points.first().filter(|_| closed));
        for (from, to) in points.iter().zip(next) {
            let s = Segment {
                from: from.at,
                to: to.at,
                bulge: from.bulge,
            };
            let n = s.chords(0.5);
            let at = |i: usize| s.at(i as f64 / n as f64);
            self.strokes.extend((0..n).map(|i| Stroke {
                from: at(i),
                to: at(i + 1),
                line,
            }));
        }
        self.items.push(path(style, points, closed, None));
    }

    /// Draws a straight line.
    pub(super) fn straight(
        &mut self,
        style: (Layer, Pen, Dash),
        from: Point2,
        to: Point2,
        line: usize,
    ) {
        let points = vec![Vertex::sharp(from.x, from.y), Vertex::sharp(to.x, to.y)];
        self.line(style, points, false, line);
    }

    /// Draws a box, filled with a grey or open.
    pub(super) fn block(&mut self, b: Bounds2, layer: Layer, pen: Option<Pen>, fill: Option<f64>) {
        self.items.push(rectangle(b, layer, pen, fill));
    }

    /// Keeps labels out of a box.
    pub(super) fn keep_out(&mut self, b: Bounds2) {
        self.boxes.push(b);
    }

    /// An arrowhead at `tip` that points along `out`, a unit vector.
    pub(super) fn arrow(&mut self, tip: Point2, out: Vector2) {
        let side = Vector2::new(-out.y, out.x);
        let back = tip - out * 3.0;
        let points = [tip, back + side * 0.6, back - side * 0.6];
        let points = points.iter().map(|p| Vertex::sharp(p.x, p.y)).collect();
        let style = (Layer::Dimension, Pen::Fine, Dash::Solid);
        self.items.push(path(style, points, true, Some(0.0)));
    }

    /// Writes a text where it is told to, whatever lies there.
    pub(super) fn text(&mut self, layer: Layer, at: Point2, text: &str, height: f64, align: Align) {
        self.texts.push(Item::Text {
            layer,
            at,
            text: text.to_owned(),
            height,
            align,
            angle: 0.0,
        });
    }

    /// Writes a text at the best of some places, earlier ones first among equals; false when none will do.
    pub(super) fn place(&mut self, label: &Label, spots: &[Spot]) -> bool {
        let size = Vector2::new(lettering::width(label.text, label.height), label.height);
        let mut best: Option<(usize, Spot, Bounds2)> = None;
        for spot in spots {
            let space = space(*spot, size);
            let Some(cost) = self.cost(&space, label.own) else {
                continue;
            };
            if best.as_ref().is_none_or(|b| cost < b.0) {
                best = Some((cost, *spot, space));
            }
            if cost == 0 {
                break;
            }
        }
        let Some((_, spot, space)) = best.filter(|b| b.0 <= label.covers) else {
            return false;
        };
        self.texts
            .push(rectangle(space, label.layer, None, Some(1.0)));
        self.texts.push(lettered(label, spot));
        self.boxes.push(space);
        true
    }

    /// How many lines a text would cover; `None` where it does not fit or would meet another.
    fn cost(&self, space: &Bounds2, own: Option<usize>) -> Option<usize> {
        let fits = super::trace::contains(&self.room, space.low)
            && super::trace::contains(&self.room, space.high);
        if !fits || self.boxes.iter().any(|b| b.overlaps(space, 0.0)) {
            return None;
        }
        let met = self
            .strokes
            .iter()
            .filter(|s| Some(s.line) != own && s.meets(space));
        Some(met.count())
    }
}

impl Stroke {
    /// True when it passes through a box.
    fn meets(&self, b: &Bounds2) -> bool {
        let (mut enter, mut leave) = (0.0_f64, 1.0_f64);
        for axis in 0..2 {
            let (from, run) = (self.from[axis], self.to[axis] - self.from[axis]);
            if run == 0.0 {
                if from < b.low[axis] || from > b.high[axis] {
                    return false;
                }
                continue;
            }
            let (a, z) = ((b.low[axis] - from) / run, (b.high[axis] - from) / run);
            enter = enter.max(a.min(z));
            leave = leave.min(a.max(z));
        }
        enter <= leave
    }
}

/// The box that a text with its white takes up.
fn space(spot: Spot, size: Vector2) -> Bounds2 {
    // Tails of letters reach below the line they stand on.
    let half = Vector2::new(size.x / 2.0 + AIR, size.y * 0.75 + AIR / 2.0);
    let half = if spot.upwards {
        Vector2::new(half.y, half.x)
    } else {
        half
    };
    Bounds2 {
        low: spot.middle - half,
        high: spot.middle + half,
    }
}

fn lettered(label: &Label, spot: Spot) -> Item {
    let down = label.height / 2.0;
    let (shift, angle) = if spot.upwards {
        (Vector2::new(down, 0.0), 90.0)
    } else {
        (Vector2::new(0.0, -down), 0.0)
    };
    Item::Text {
        layer: label.layer,
        at: spot.middle + shift,
        text: label.text.to_owned(),
        height: label.height,
        align: Align::Centre,
        angle,
    }
}

fn path(
    (layer, pen, dash): (Layer, Pen, Dash),
    points: Vec<Vertex>,
    closed: bool,
    fill: Option<f64>,
) -> Item {
    Item::Path {
        layer,
        points,
        closed,
        pen: Some(pen),
        dash,
        fill,
    }
}

fn rectangle(b: Bounds2, layer: Layer, pen: Option<Pen>, fill: Option<f64>) -> Item {
    let corners = [
        (b.low.x, b.low.y),
        (b.high.x, b.low.y),
        (b.high.x, b.high.y),
        (b.low.x, b.high.y),
    ];
    Item::Path {
        layer,
        points: corners.iter().map(|(x, y)| Vertex::sharp(*x, *y)).collect(),
        closed: true,
        pen,
        dash: Dash::Solid,
        fill,
    }
}
