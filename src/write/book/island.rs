//! The island for the page's picture: shapes as bytes, parts as JSON.

use super::Shown;
use super::packed::packed;
use crate::geometry::{Bounds3, Faceted, Placement, Point3};
use crate::mesh::{Appearances, Instance, Viewpoint};
use crate::parts::Part;
use serde_json::{Value, json};
use std::collections::BTreeMap;

/// What the page's script reads.
#[derive(Clone, Debug, PartialEq)]
pub struct IslandData {
    /// Groups, looks, shapes, parts and views.
    pub json: Value,
    /// The corners and triangles of all shapes, deflated, in base 64.
    pub shapes: String,
}

/// The largest share of a box that a 16-bit number spells.
const WHOLE: f64 = 65535.0;

/// Writes the island for the picture.
///
/// Each corner is three 16-bit shares of its shape's box: for a run of 3 m that is a twentieth of a millimetre.
///
/// # Errors
/// When the shapes cannot be deflated, which has no reason in memory.
pub fn island_data(shown: &Shown) -> std::io::Result<IslandData> {
    let mut shapes = Shapes::default();
    let parts: Vec<Value> = (shown.parts.iter().enumerate())
        .map(|(i, instance)| part(shown, i, instance, shapes.number(instance)))
        .collect();
    let groups = shown.groups.iter();
    let json = json!({
        "groups": groups.map(|(name, label)| json!({"name": name, "label": label})).collect::<Vec<_>>(),
        "looks": looks(shown.appearances),
        "shapes": shapes.listed,
        "parts": parts,
        "views": shown.views.iter().map(view).collect::<Vec<_>>(),
    });
    Ok(IslandData {
        json,
        shapes: packed(&shapes.bytes)?,
    })
}

/// The shapes that parts have, each once.
#[derive(Default)]
struct Shapes {
    numbers: BTreeMap<usize, usize>,
    listed: Vec<Value>,
    bytes: Vec<u8>,
}

impl Shapes {
    /// The number of a part's shape, written when it is met first.
    fn number(&mut self, instance: &Instance) -> usize {
        let next = self.numbers.len();
        let number = *self.numbers.entry(instance.part.solid.0).or_insert(next);
        if number == next {
            self.write(instance.mesh);
        }
        number
    }

    fn write(&mut self, mesh: &Faceted) {
        let bounds = mesh.bounds().unwrap_or(Bounds3 {
            low: Point3::origin(),
            high: Point3::origin(),
        });
        for point in &mesh.points {
            let size = bounds.high - bounds.low;
            for axis in 0..3 {
                let share = (point[axis] - bounds.low[axis]) / size[axis].max(f64::MIN_POSITIVE);
                self.bytes
                    .extend(((share * WHOLE).round() as u16).to_le_bytes());
            }
        }
        self.align();
        let is_wide = mesh.points.len() > 65535;
        for corner in mesh.triangles.iter().flat_map(|t| t.corners) {
            if is_wide {
                self.bytes.extend(corner.to_le_bytes());
            } else {
                self.bytes.extend((corner as u16).to_le_bytes());
            }
        }
        self.align();
        self.listed.push(json!({
            "corners": mesh.points.len(),
            "triangles": mesh.triangles.len(),
            "low": numbers(bounds.low.coords.as_slice(), 4),
            "high": numbers(bounds.high.coords.as_slice(), 4),
        }));
    }

    /// Every array begins at a multiple of four bytes.
    fn align(&mut self) {
        while !self.bytes.len().is_multiple_of(4) {
            self.bytes.push(0);
        }
    }
}

fn part(shown: &Shown, number: usize, instance: &Instance, shape: usize) -> Value {
    let part: &Part = instance.part;
    let Placement {
        rotation,
        translation,
    } = &part.placement;
    let turned = rotation.coords;
    let mut value = json!({
        "mark": part.mark,
        "kind": part.kind.name(),
        "group": part.group.name(),
        "look": Appearances::number(part.kind),
        "shape": shape,
        "turned": numbers(turned.as_slice(), 7),
        "at": numbers(translation.vector.as_slice(), 3),
        "material": part.material,
        "section": part.section,
        "length": shown.notation.spell_with_unit(part.length),
        "where": shown.wheres.get(number).map_or("", String::as_str),
    });
    if let Some(out) = part.face.and_then(|f| shown.outwards.get(f)) {
        value["outward"] = numbers(out, 6);
    }
    value
}

fn looks(appearances: &Appearances) -> Value {
    let looks = appearances.all().iter().map(|look| {
        let rgb = look.srgb.0.map(|c| f64::from(c) / 255.0);
        json!({"name": look.name, "rgb": numbers(&rgb, 4)})
    });
    Value::Array(looks.collect())
}

fn view(view: &Viewpoint) -> Value {
    json!({
        "name": view.name,
        "eye": numbers(view.eye.coords.as_slice(), 1),
        "target": numbers(view.target.coords.as_slice(), 1),
    })
}

/// Numbers with so many decimals at most; what is not finite is zero.
fn numbers(values: &[f64], decimals: i32) -> Value {
    let size = 10_f64.powi(decimals);
    let spelt = values.iter().map(|v| {
        let rounded = (v * size).round() / size + 0.0;
        json!(if rounded.is_finite() { rounded } else { 0.0 })
    });
    Value::Array(spelt.collect())
}
