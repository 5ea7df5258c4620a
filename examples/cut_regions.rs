//! Prints what level and upright planes go through in every part of a parameter file, as JSON. The outside readers run it.
//!
//! `cargo run --example cut_regions params/garden-corner.yaml`
//!
//! For each plane: `axis` (0 x, 1 y, 2 z), `at` (millimetres), and `parts`: by mark the polygons that are cut, each an outer
//! ring and its holes, in the two other axes in rising order.

use islandwright::geometry::{Bounds3, Outline, Placement, Region, Vector3};
use islandwright::parts::Assembly;
use islandwright::{design, parts, plan};
use serde_json::{Map, Value, json};
use std::f64::consts::TAU;

/// Chords stay so near to curves, millimetres: as the outside readers have the models written.
const TOLERANCE: f64 = 0.02;

/// Where the whole is cut along each axis, as shares of its length: no part begins or ends there by rule.
const SHARES: [f64; 5] = [0.0571, 0.2713, 0.4937, 0.7129, 0.9407];

/// The turn that brings an axis upright, the next two after it level in turn.
fn upright(axis: usize) -> Placement {
    let turn = Vector3::repeat(1.0).normalize() * (TAU / 3.0);
    match axis {
        0 => Placement::rotation(-turn),
        1 => Placement::rotation(turn),
        _ => Placement::identity(),
    }
}

/// A ring in the two other axes in rising order: for y they come as z and x.
fn ring(outline: &Outline, axis: usize) -> Value {
    let points = outline.vertices().iter().map(|v| v.at);
    let pair = |p: islandwright::geometry::Point2| match axis {
        1 => json!([p.y, p.x]),
        _ => json!([p.x, p.y]),
    };
    points.map(pair).collect()
}

fn polygon(region: &Region, axis: usize) -> Value {
    let rings = std::iter::once(&region.outer).chain(&region.holes);
    rings.map(|r| ring(r, axis)).collect()
}

fn plane(assembly: &Assembly, axis: usize, at: f64) -> Value {
    let mut cut = Map::new();
    for part in &assembly.parts {
        let solid = assembly.solid(part).faceted(TOLERANCE);
        let standing = solid.moved(&(upright(axis) * part.placement));
        let regions = standing.cut_at(at).region;
        if !regions.is_empty() {
            let polygons = regions.iter().map(|r| polygon(r, axis)).collect();
            cut.insert(part.mark.clone(), polygons);
        }
    }
    json!({ "axis": axis, "at": at, "parts": cut })
}

fn main() -> Result<(), String> {
    let path = std::env::args().nth(1).ok_or("name a parameter file")?;
    let text = std::fs::read_to_string(&path).map_err(|e| format!("{path}: {e}"))?;
    let design = design::from_text(&text).map_err(|e| format!("{e:?}"))?;
    let plan = plan::lay_out(design).map_err(|e| format!("{e:?}"))?;
    let assembly = parts::build(&plan);
    let boxes = assembly.parts.iter().filter_map(|part| {
        let solid = assembly.solid(part).faceted(TOLERANCE);
        solid.moved(&part.placement).bounds()
    });
    let whole = boxes.reduce(Bounds3::union).ok_or("there are no parts")?;
    let mut planes = Vec::new();
    for axis in 0..3 {
        let (low, high) = (whole.low[axis], whole.high[axis]);
        planes.extend(SHARES.map(|share| plane(&assembly, axis, low + (high - low) * share)));
    }
    println!("{}", Value::Array(planes));
    Ok(())
}
