//! The shapes of the examples built once more by another library: outlines drawn out there have our volumes and boxes.

#![expect(clippy::unwrap_used, reason = "the examples are sound")]

use islandwright::geometry::{Extrusion, Outline, Solid};
use islandwright::{design, parts, plan};
use std::path::Path;
use truck_meshalgo::prelude::*;
use truck_modeling::{Vector3, Vertex, Wire, builder};

/// Truck's tolerance, millimetres: finer takes long over curves.
const TOLERANCE: f64 = 0.02;

fn wire(outline: &Outline, z: f64, forwards: bool) -> Wire {
    let sides: Vec<_> = outline.segments().collect();
    let point = |p: islandwright::geometry::Point2| Point3::new(p.x, p.y, z);
    let corners: Vec<Vertex> = sides
        .iter()
        .map(|s| builder::vertex(point(s.from)))
        .collect();
    let edges = sides.iter().enumerate().map(|(i, side)| {
        let (front, back) = (&corners[i], &corners[(i + 1) % corners.len()]);
        if side.bulge == 0.0 {
            builder::line(front, back)
        } else {
            builder::circle_arc(front, back, point(side.at(0.5)))
        }
    });
    let wire: Wire = edges.collect();
    if forwards { wire } else { wire.inverse() }
}

/// The same extrusion, made by that library.
fn made(shape: &Extrusion) -> truck_modeling::Solid {
    let low = shape.start.offset;
    let mut wires = vec![wire(&shape.profile.outer, low, true)];
    wires.extend(shape.profile.holes.iter().map(|h| wire(h, low, false)));
    let face = builder::try_attach_plane(&wires).unwrap();
    builder::tsweep(&face, Vector3::unit_z() * (shape.end.offset - low))
}

/// Plain ones: square ends, nothing cut through their walls.
fn is_plain(shape: &Extrusion) -> bool {
    let square = shape.start.slope == [0.0; 2] && shape.end.slope == [0.0; 2];
    square && shape.slots.is_empty()
}

fn agrees(example: &str) {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("params")
        .join(example);
    let text = std::fs::read_to_string(path).unwrap();
    let plan = plan::lay_out(design::from_text(&text).unwrap()).unwrap();
    let assembly = parts::build(&plan);
    let plain = assembly.solids.iter().filter_map(|solid| match solid {
        Solid::Extrusion(shape) if is_plain(shape) => Some((solid, shape)),
        _ => None,
    });
    let mut compared = 0;
    for (solid, shape) in plain {
        let mesh = made(shape).triangulation(TOLERANCE).to_polygon();
        let (found, ours) = (mesh.volume(), solid.volume());
        assert!(
            (found - ours).abs() < 1e-3 * ours,
            "{found} for {ours}: {solid:?}"
        );
        let (found, ours) = (mesh.bounding_box(), solid.bounds());
        for (f, o) in [(found.min(), ours.low), (found.max(), ours.high)] {
            let off = (f.x - o.x)
                .abs()
                .max((f.y - o.y).abs())
                .max((f.z - o.z).abs());
            assert!(off < 2.0 * TOLERANCE, "{off} mm off: {solid:?}");
        }
        compared += 1;
    }
    assert!(compared >= 10, "{example}: {compared}");
}

#[test]
fn the_garden_corner_agrees() {
    agrees("garden-corner.yaml");
}

#[test]
fn the_straight_terrace_agrees() {
    agrees("terrace-straight.yaml");
}
