//! The list of the scale model's prints as JSON.

use crate::geometry::{Bounds3, Placement, Point3};
use crate::mesh::scale_model::{Bar, Piece, Plate, ScaleModel};
use serde_json::{Value, json};

/// The scale, the printer, each print with its size and where it belongs, the plates, and the members of the frame as bars;
/// lengths in millimetres of the print.
pub fn pieces_list(model: &ScaleModel) -> String {
    let list = json!({
        "unit": "mm",
        "scale": model.scale,
        "printer": {
            "bed": model.bed,
            "nozzle": model.nozzle,
            "wall": model.wall,
            "clearance": model.clearance,
        },
        "frame_inside_base": model.frame_inside,
        "simplified": model.simplified,
        "pieces": model.pieces.iter().map(piece).collect::<Vec<_>>(),
        "plates": model.plates.iter().map(|p| plate(model, p)).collect::<Vec<_>>(),
        "bars": model.bars.iter().map(bar).collect::<Vec<_>>(),
    });
    format!("{list:#}\n")
}

fn piece(piece: &Piece) -> Value {
    let surface = &piece.surface;
    let size = surface
        .bounds()
        .map_or([0.0; 3], |b| point(&Point3::from(b.high - b.low)));
    json!({
        "name": piece.name,
        "layer": piece.layer.name(),
        "file": format!("scale-model/{}.stl", piece.name),
        "size": size,
        "volume": rounded(surface.volume()),
        "over_air": rounded(piece.over_air),
        "thinnest": rounded(piece.thinnest),
        "to_model": rows(&piece.back),
        "members": piece.members,
    })
}

fn plate(model: &ScaleModel, plate: &Plate) -> Value {
    let placed = plate.pieces.iter().filter_map(|(i, placement)| {
        let piece = model.pieces.get(*i)?;
        Some(json!({ "piece": piece.name, "to_bed": rows(placement) }))
    });
    placed.collect()
}

fn bar(bar: &Bar) -> Value {
    let Bounds3 { low, high } = &bar.bounds;
    json!({ "mark": bar.mark, "low": point(low), "high": point(high) })
}

fn point(point: &Point3) -> [f64; 3] {
    [point.x, point.y, point.z]
}

/// Three rows of four: what a point's coordinates and 1 are multiplied by.
fn rows(placement: &Placement) -> Value {
    let m = placement.to_homogeneous();
    let row = |i: usize| json!([0, 1, 2, 3].map(|j: usize| rounded(m[(i, j)])));
    (0..3).map(row).collect()
}

/// To a millionth, without a negative nothing.
fn rounded(value: f64) -> f64 {
    (value * 1e6).round() / 1e6 + 0.0
}
