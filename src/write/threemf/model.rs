//! The model's XML.
//!
//! Every object has a number: 1 is the list of materials, then come the meshes, then the named placings of meshes.
//! An item under its object's own name needs none of the last.

use super::document::{Document, Item, Material, Object};
use crate::geometry::{Faceted, Placement};
use crate::write::xml::escaped;
use std::fmt::Write as _;

/// The list of materials.
const MATERIALS: usize = 1;
/// The first mesh.
const FIRST: usize = 2;

/// Spells a document; what it says of lengths is in millimetres.
pub(super) fn spell(document: &Document) -> String {
    let triangles: usize = document
        .objects
        .iter()
        .map(|o| o.mesh.triangles.len())
        .sum();
    let mut out = String::with_capacity(1000 + 70 * triangles);
    out.push_str("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
    out.push_str(
        "<model unit=\"millimeter\" xml:lang=\"en\" xmlns=\"http://schemas.microsoft.com/3dmanufacturing/core/2015/02\">\n",
    );
    metadata(&mut out, "Title", document.title);
    metadata(&mut out, "Description", &document.description);
    metadata(&mut out, "Application", "islandwright");
    out.push_str("<resources>\n");
    let materials = distinct(&document.objects);
    base_materials(&mut out, &materials);
    for (number, object) in document.objects.iter().enumerate() {
        let material = materials.iter().position(|m| **m == object.material);
        mesh_object(&mut out, FIRST + number, object, material.unwrap_or(0));
    }
    let placed = placed(document);
    for (number, item) in &placed {
        if *number != FIRST + item.object {
            named_object(&mut out, *number, item);
        }
    }
    out.push_str("</resources>\n<build>\n");
    for (number, item) in &placed {
        build_item(&mut out, *number, item);
    }
    out.push_str("</build>\n</model>\n");
    out
}

fn metadata(out: &mut String, name: &str, text: &str) {
    if !text.is_empty() {
        line(
            out,
            format_args!("<metadata name=\"{name}\">{}</metadata>", escaped(text)),
        );
    }
}

/// Writing to a text cannot fail.
fn line(out: &mut String, text: std::fmt::Arguments) {
    let _ = out.write_fmt(text);
    out.push('\n');
}

/// The materials in the order in which they come.
fn distinct<'a>(objects: &'a [Object]) -> Vec<&'a Material> {
    let mut materials: Vec<&Material> = Vec::new();
    for object in objects {
        if !materials.contains(&&object.material) {
            materials.push(&object.material);
        }
    }
    materials
}

fn base_materials(out: &mut String, materials: &[&Material]) {
    if materials.is_empty() {
        return;
    }
    line(out, format_args!("<basematerials id=\"{MATERIALS}\">"));
    for material in materials {
        let [red, green, blue] = material.srgb;
        let name = escaped(&material.name);
        line(
            out,
            format_args!(
                "<base name=\"{name}\" displaycolor=\"#{red:02X}{green:02X}{blue:02X}\"/>"
            ),
        );
    }
    out.push_str("</basematerials>\n");
}

fn mesh_object(out: &mut String, id: usize, object: &Object, material: usize) {
    let name = escaped(&object.name);
    line(
        out,
        format_args!(
            "<object id=\"{id}\" type=\"model\" name=\"{name}\" pid=\"{MATERIALS}\" pindex=\"{material}\"><mesh><vertices>"
        ),
    );
    vertices(out, object.mesh);
    out.push_str("</vertices><triangles>\n");
    for triangle in &object.mesh.triangles {
        let [a, b, c] = triangle.corners;
        line(
            out,
            format_args!("<triangle v1=\"{a}\" v2=\"{b}\" v3=\"{c}\"/>"),
        );
    }
    out.push_str("</triangles></mesh></object>\n");
}

fn vertices(out: &mut String, mesh: &Faceted) {
    for point in &mesh.points {
        out.push_str("<vertex x=\"");
        number(out, point.x);
        out.push_str("\" y=\"");
        number(out, point.y);
        out.push_str("\" z=\"");
        number(out, point.z);
        out.push_str("\"/>\n");
    }
}

/// Each item whose object there is, with the number of what stands in its place.
fn placed<'a, 'b>(document: &'b Document<'a>) -> Vec<(usize, &'b Item<'a>)> {
    let mut next = FIRST + document.objects.len();
    let mut placed = Vec::with_capacity(document.items.len());
    for item in &document.items {
        let Some(object) = document.objects.get(item.object) else {
            continue;
        };
        if object.name == item.name {
            placed.push((FIRST + item.object, item));
        } else {
            placed.push((next, item));
            next += 1;
        }
    }
    placed
}

/// A mesh under a name of its own.
fn named_object(out: &mut String, id: usize, item: &Item) {
    let (name, mesh) = (escaped(item.name), FIRST + item.object);
    line(
        out,
        format_args!(
            "<object id=\"{id}\" type=\"model\" name=\"{name}\" partnumber=\"{name}\"><components><component objectid=\"{mesh}\"/></components></object>"
        ),
    );
}

fn build_item(out: &mut String, id: usize, item: &Item) {
    let name = escaped(item.name);
    let _ = write!(
        out,
        "<item objectid=\"{id}\" partnumber=\"{name}\" transform=\""
    );
    transform(out, &item.placement);
    out.push_str("\"/>\n");
}

/// Where the three axes go, then where the origin goes: the format's points are rows, from the left of the matrix.
fn transform(out: &mut String, placement: &Placement) {
    let turn = placement.rotation.to_rotation_matrix();
    for entry in turn.matrix().iter() {
        number(out, *entry);
        out.push(' ');
    }
    let shift = placement.translation;
    number(out, shift.x);
    out.push(' ');
    number(out, shift.y);
    out.push(' ');
    number(out, shift.z);
}

/// How finely a number is spelt: a millionth, finer than the single precision that readers keep.
const STEP: f64 = 1e6;

/// A number with at most six decimals, without trailing zeros or a negative zero.
fn number(out: &mut String, value: f64) {
    let steps = (value * STEP).round() as i64;
    if steps < 0 {
        out.push('-');
    }
    let steps = steps.unsigned_abs();
    let _ = write!(out, "{}", steps / 1_000_000);
    let mut rest = steps % 1_000_000;
    let mut width = 6;
    if rest == 0 {
        return;
    }
    while rest.is_multiple_of(10) {
        rest /= 10;
        width -= 1;
    }
    let _ = write!(out, ".{rest:0width$}");
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::{Solid, Vector3};
    use std::f64::consts::FRAC_PI_2;

    fn spelt(value: f64) -> String {
        let mut out = String::new();
        number(&mut out, value);
        out
    }

    #[test]
    fn numbers_are_short_and_never_a_negative_zero() {
        let cases = [
            (0.1 + 0.2, "0.3"),
            (-1e-9, "0"),
            (25.4, "25.4"),
            (-100.0, "-100"),
            (-0.000_05, "-0.00005"),
            (2.0 / 3.0, "0.666667"),
        ];
        for (value, text) in cases {
            assert_eq!(spelt(value), text);
        }
    }

    #[test]
    fn a_quarter_turn_about_z_sends_x_to_y() {
        let mut out = String::new();
        let turn = Placement::new(Vector3::new(10.0, 20.5, -3.0), Vector3::z() * FRAC_PI_2);
        transform(&mut out, &turn);
        // Rows: x goes to +y, y goes to −x, z stays; then the shift.
        assert_eq!(out, "0 1 0 -1 0 0 0 0 1 10 20.5 -3");
    }

    #[test]
    fn a_mesh_is_written_once_and_only_placings_of_another_name_get_an_object() {
        let mesh = Solid::cuboid(1.0, 2.0, 3.0).faceted(0.1);
        let object = |name: &str, srgb| Object {
            name: name.to_owned(),
            mesh: &mesh,
            material: Material {
                name: "steel & zinc".to_owned(),
                srgb,
            },
        };
        let item = |name, object| Item {
            name,
            object,
            placement: Placement::identity(),
        };
        let text = spell(&Document {
            title: "A <small> box",
            description: String::new(),
            objects: vec![object("box", [255, 128, 9]), object("other", [0; 3])],
            items: vec![
                item("box", 0),
                item("A1", 0),
                item("A2", 1),
                item("no such", 7),
            ],
        });
        let count = |what: &str| text.matches(what).count();
        assert_eq!(count("<mesh>"), 2);
        assert_eq!(count("<vertex "), 16);
        assert_eq!(count("<base name=\"steel &amp; zinc\""), 2);
        assert!(text.contains("displaycolor=\"#FF8009\""));
        assert!(text.contains("A &lt;small&gt; box") && !text.contains("Description"));
        // Objects 2 and 3 are the meshes, 4 and 5 their placings under other names.
        assert!(text.contains("<item objectid=\"2\" partnumber=\"box\""));
        assert!(text.contains("<item objectid=\"4\" partnumber=\"A1\""));
        assert!(text.contains("<object id=\"5\" type=\"model\" name=\"A2\" partnumber=\"A2\"><components><component objectid=\"3\"/>"));
        assert_eq!(count("<item "), 3);
    }
}
