//! What is drawn, as entities of the model space or of a block.

use super::dimension::weight;
use super::frame::{Owner, STYLE};
use super::tables::{line_type, line_type_scale, usual};
use super::tags::Tags;
use crate::drawing::{Align, Dash, Item, Layer, Pen};
use crate::geometry::{Point2, Vertex};

pub(super) fn entity(tags: &mut Tags, owner: &Owner, item: &Item) {
    match item {
        Item::Path {
            layer,
            points,
            closed,
            pen,
            dash,
            fill,
        } => {
            let finite = points
                .iter()
                .all(|v| (v.at.x + v.at.y + v.bulge).is_finite());
            if !finite || points.len() < 2 {
                return;
            }
            // White only hides what lies below on paper.
            if let Some(grey) = fill.filter(|grey| *grey < WHITE) {
                begin(tags, owner, "HATCH", *layer);
                solid(tags, points, grey);
            }
            if let Some(pen) = pen {
                begin(tags, owner, "LWPOLYLINE", *layer);
                look(tags, *layer, *pen, *dash);
                polyline(tags, points, *closed);
            }
        }
        Item::Text {
            layer,
            at,
            text,
            height,
            align,
            angle,
        } => {
            if !text.trim().is_empty() && (at.x + at.y + angle).is_finite() && *height > 0.0 {
                begin(tags, owner, "TEXT", *layer);
                lettering(tags, *at, text, *height, *align, *angle);
            }
        }
        // Those that measure are entities of their own; see `Dimensions::entity`.
        Item::Dimension(dimension) => {
            for item in dimension.primitives() {
                entity(tags, owner, &item);
            }
        }
    }
}

/// Fills at least so light are white.
const WHITE: f64 = 0.98;

/// The greys of the format, by their index and how light they are; black is the layer's own colour.
const GREYS: [(i64, f64); 5] = [
    (250, 0.2),
    (251, 0.36),
    (252, 0.52),
    (253, 0.68),
    (254, 0.84),
];

/// A solid hatch.
fn solid(tags: &mut Tags, points: &[Vertex], grey: f64) {
    let off = |light: f64| (light - grey).abs();
    let nearest = (GREYS.into_iter()).min_by(|a, b| off(a.1).total_cmp(&off(b.1)));
    if let Some((index, _)) = nearest.filter(|_| grey > 0.1) {
        tags.whole(62, index);
    }
    tags.text(100, "AcDbHatch");
    tags.point(10, 0.0, 0.0);
    for (code, z) in [(210, 0.0), (220, 0.0), (230, 1.0)] {
        tags.number(code, z);
    }
    tags.text(2, "SOLID");
    // Solid, not tied to other entities, one boundary: a polyline on the outside, with bulges, closed.
    for (code, value) in [(70, 1), (71, 0), (91, 1), (92, 3), (72, 1), (73, 1)] {
        tags.whole(code, value);
    }
    tags.count(93, points.len());
    for vertex in points {
        tags.number(10, vertex.at.x);
        tags.number(20, vertex.at.y);
        tags.number(42, vertex.bulge);
    }
    for (code, value) in [(97, 0), (75, 0), (76, 1), (98, 0)] {
        tags.whole(code, value);
    }
}

pub(super) fn begin(tags: &mut Tags, owner: &Owner, kind: &str, layer: Layer) {
    let handle = tags.handle();
    tags.record(kind, &handle, owner.0, &["AcDbEntity"]);
    tags.text(8, layer.name());
}

/// Line type and width, where they are not the layer's own.
fn look(tags: &mut Tags, layer: Layer, pen: Pen, dash: Dash) {
    let (usual_pen, usual_dash) = usual(layer);
    if dash != usual_dash {
        tags.text(6, line_type(dash));
    }
    let scale = line_type_scale(dash, pen);
    if (scale - 1.0).abs() > 1e-9 {
        tags.number(48, scale);
    }
    if pen != usual_pen {
        tags.whole(370, weight(pen));
    }
}

fn polyline(tags: &mut Tags, points: &[Vertex], closed: bool) {
    tags.text(100, "AcDbPolyline");
    tags.count(90, points.len());
    tags.whole(70, i64::from(closed));
    tags.number(43, 0.0);
    for (i, vertex) in points.iter().enumerate() {
        tags.number(10, vertex.at.x);
        tags.number(20, vertex.at.y);
        // The last vertex of an open line leads nowhere.
        if vertex.bulge != 0.0 && (closed || i + 1 < points.len()) {
            tags.number(42, vertex.bulge);
        }
    }
}

fn lettering(tags: &mut Tags, at: Point2, text: &str, height: f64, align: Align, angle: f64) {
    tags.text(100, "AcDbText");
    tags.point(10, at.x, at.y);
    tags.number(40, height);
    tags.text(1, text);
    tags.number(50, angle.rem_euclid(360.0));
    tags.text(7, STYLE);
    let stand = match align {
        Align::Left => 0,
        Align::Centre => 1,
        Align::Right => 2,
    };
    if stand != 0 {
        tags.whole(72, stand);
        tags.point(11, at.x, at.y);
    }
    tags.text(100, "AcDbText");
}
