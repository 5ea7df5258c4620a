//! What is drawn, as entities of the model space.

use super::frame::{MODEL_SPACE, STYLE, line_type};
use super::tags::Tags;
use crate::drawing::{Align, Dash, Item, Layer, Pen};
use crate::geometry::{Point2, Vertex};

pub(super) fn entity(tags: &mut Tags, item: &Item) {
    match item {
        Item::Path {
            layer,
            points,
            closed,
            pen,
            dash,
            fill,
        } => {
            let seen = pen.is_some() || fill.is_some_and(|grey| grey < 0.9);
            let finite = points
                .iter()
                .all(|v| (v.at.x + v.at.y + v.bulge).is_finite());
            if seen && finite && points.len() > 1 {
                polyline(
                    tags,
                    *layer,
                    points,
                    *closed || fill.is_some(),
                    pen.unwrap_or(Pen::Fine),
                    *dash,
                );
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
                lettering(tags, *layer, *at, text, *height, *align, *angle);
            }
        }
        Item::Dimension(dimension) => {
            dimension
                .primitives()
                .iter()
                .for_each(|item| entity(tags, item));
        }
    }
}

fn begin(tags: &mut Tags, kind: &str, layer: Layer) {
    let handle = tags.handle();
    tags.record(kind, &handle, MODEL_SPACE, &["AcDbEntity"]);
    tags.text(8, layer.name());
}

fn polyline(tags: &mut Tags, layer: Layer, points: &[Vertex], closed: bool, pen: Pen, dash: Dash) {
    begin(tags, "LWPOLYLINE", layer);
    tags.text(6, line_type(dash));
    tags.whole(370, (pen.width() * 100.0).round() as i64);
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

fn lettering(
    tags: &mut Tags,
    layer: Layer,
    at: Point2,
    text: &str,
    height: f64,
    align: Align,
    angle: f64,
) {
    begin(tags, "TEXT", layer);
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
